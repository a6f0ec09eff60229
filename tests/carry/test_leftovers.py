"""The sheet Leftovers: what is on it, that a planner with it is one, and that it comes along."""

import openpyxl
import pytest
from openxml_audit import AppPrediction, OpenXmlValidator, predict

from planners import rows_of
from workbookgen.carry.leftovers import BEFORE, COLUMNS, LONGEST, SHEET, TITLE, Leftover, with_leftovers
from workbookgen.checking.check import FileToCheck, check
from workbookgen.filled.foreign_cells import CHANGED, OUTSIDE, OVERWRITTEN
from workbookgen.filled.planner import described
from workbookgen.planner_file import read_planner

from .conftest import LINES, cell, filled, small, written

FEW = rows_of(2, uses=LINES)  # what pieces usually take comes over whole


@pytest.fixture(scope="module")
def untidy(old_settings, tmp_path_factory):
    """A planner with too many lines for the next, a wrong entry, and a text that looks like a formula."""
    lines = [{"name": "First", "wraps": "many"}, {"name": "Second", "wraps": 20.0}, {"name": "=HYPERLINK(1)"}]
    return written(
        tmp_path_factory.mktemp("untidy") / "old.xlsx", old_settings, filled(old_settings, {"skeins": lines}, {})
    )


def column(book, name: str) -> list:
    """The cells of one column of the leftovers, found by its name."""
    cells = book[SHEET][next(iter(book.defined_names[f"leftovers_{name}"].destinations))[1]]
    return [row[0] for row in cells] if isinstance(cells, tuple) else [cells]


def rows(path) -> list[tuple]:
    """The leftovers, their columns in the order of COLUMNS, wherever these stand."""
    book = openpyxl.load_workbook(path)
    return list(zip(*([each.value for each in column(book, name)] for name, _, _ in COLUMNS), strict=True))


def test_a_planner_with_leftovers_is_checked_like_any_other(untidy, carried, tmp_path):
    carried(untidy, small(lines=2))
    planner = read_planner(tmp_path / "new.xlsx")
    assert check(FileToCheck(planner.path, planner.layout, formulas=planner.formulas), scenarios=0).findings == []


def test_what_stands_on_the_sheet_and_comes_along(untidy, carried, tmp_path):
    carried(untidy, small(rows=FEW))
    told = rows(tmp_path / "new.xlsx")
    assert told == [
        (
            "Skeins",
            cell("skeins_name", 2).partition("!")[2],
            "Skein",
            "=HYPERLINK(1)",
            "the new planner has only 2 lines here",
            "only here",
        ),
        (
            "Skeins",
            cell("skeins_wraps").partition("!")[2],
            "Wraps",
            "many",
            "the new planner does not accept it. Wraps: type a number from 0 up to 100,000, in digits.",
            "in its cell",
        ),
    ]
    first = column(openpyxl.load_workbook(tmp_path / "new.xlsx"), "what")[0]
    assert (first.value, first.data_type) == ("=HYPERLINK(1)", "s"), "a text stays a text"
    carried(tmp_path / "new.xlsx", None, "again.xlsx")
    before = [(*told[0][:4], BEFORE + told[0][4], told[0][5]), told[1]]
    assert sorted(rows(tmp_path / "again.xlsx")) == sorted(before), (
        "its lines come along, and none twice; what was said of one is said to be of then"
    )
    mended = openpyxl.load_workbook(tmp_path / "again.xlsx")
    mended["Skeins"][cell("skeins_wraps").partition("!")[2]] = 104
    mended.save(tmp_path / "mended.xlsx")
    carried(tmp_path / "mended.xlsx", None, "last.xlsx")
    assert rows(tmp_path / "last.xlsx") == before[:1], (
        "what was seen to is told no more, and of which sheet a line comes is told once"
    )


def test_the_sheet_says_what_it_is_and_what_to_do_with_it(untidy, carried, tmp_path):
    """A spinner who never heard of fields and cells of programs reads what is there, why, and what to do."""
    carried(untidy, small(lines=2))
    [title] = [row for row in openpyxl.load_workbook(tmp_path / "new.xlsx")[SHEET] if row[1].value == TITLE]
    assert not any(each.value for each in title[2:]), "the column of the title is narrow, so it needs those beside it"
    cells = {each.value for row in openpyxl.load_workbook(tmp_path / "new.xlsx")[SHEET].iter_rows() for each in row}
    assert {
        "What your old planner held, and this one could not take over as it was.",
        'Where it says "only here", this planner has no cell for it, and nothing is worked out from it. '
        "What you still need, type where it belongs.",
        "No later carrying puts it there, even in a planner that has the cell again.",
        'Where it says "in its cell", it came over, but cannot be used or may not be what you meant. '
        "Read why, and correct it there.",
        "When you have seen to every line, delete this sheet: nothing else needs it.",
    } <= cells
    carried(tmp_path / "new.xlsx", None, "again.xlsx")
    texts = {what for _, _, _, what, _, _ in rows(tmp_path / "again.xlsx")}
    assert texts == {what for _, _, _, what, _, _ in rows(tmp_path / "new.xlsx")}, "its sentences are nothing left over"


def test_why_is_told_in_words_of_ones_own():
    assert (
        "program" not in OVERWRITTEN
        and OVERWRITTEN == "it was typed over a worked-out cell, which is as it should be here"
    )
    assert CHANGED == "a worked-out cell had this in place of its own formula, which it has again here"
    assert OUTSIDE == "it was typed beside the planner's own cells"


def test_a_deleted_sheet_is_gone(untidy, carried, tmp_path):
    carried(untidy, small(lines=2))
    book = openpyxl.load_workbook(tmp_path / "new.xlsx")
    del book[SHEET]
    book["Skeins"][cell("skeins_wraps").partition("!")[2]] = 104
    book.save(tmp_path / "tidy.xlsx")
    assert carried(tmp_path / "tidy.xlsx", None, "again.xlsx").carried.leftovers == ()
    assert SHEET not in openpyxl.load_workbook(tmp_path / "again.xlsx").sheetnames


def test_a_text_longer_than_a_cell_takes_several_lines(old_settings):
    planner = with_leftovers(described(old_settings), [Leftover("S", "A1", "Note", "x" * (LONGEST + 5), "too long")])
    table = planner.tables["leftovers"]
    assert [len(each) for each in table.by_key["what"].values] == [LONGEST, 5]
    assert table.by_key["label"].values == ("Note, part 1", "Note, part 2")


def test_without_leftovers_there_is_no_sheet(old_settings):
    assert with_leftovers(described(old_settings), []) is described(old_settings)


def test_a_planner_with_notes_and_leftovers_is_a_sound_file(untidy, carried, tmp_path):
    carried(untidy, small("metric", lines=2))
    result = OpenXmlValidator().validate(str(tmp_path / "new.xlsx"))
    assert result.is_valid and result.errors == []
    assert predict(result).prediction is AppPrediction.OPENS_CLEAN
