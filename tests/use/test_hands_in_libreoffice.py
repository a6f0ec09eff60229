"""What a person does to a planner in LibreOffice, through its own menus; afterwards every result must still be right.

Where it cannot be right, the desk says what to do instead, and that something was emptied or
typed over; the check tells what happened.
"""

import re
import subprocess

import pytest

from long_run import drawn
from workbookgen.build import workbook
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.compare import agree, are_same_words
from workbookgen.checking.expected import expected_values
from workbookgen.engines import Area, ErrorValue, engine
from workbookgen.engines.libreoffice import convert
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.planner_file import read_planner

from .conftest import RECORDS, Planner

pytestmark = pytest.mark.programs
SKEINS = RECORDS["skeins"]
# In which line a skein stands, which changes when lines do, and what depends on it: whether a hand changes.
ITS_LINE = "skeins_line_of_listed", "skeins_own_line", "skeins_order"
SPACED = ("name", "lot", "lot_1")  # fields of RECORDS that hold a name
SORT = {
    "ByRows": True,
    "HasHeader": False,
    "CaseSensitive": False,
    "IncludeAttribs": False,
    "UserDefIndex": 0,
    "Ascending1": True,
}


def records(entries, block="skeins"):
    """The lines that are not blank, as sets of what stands in them."""
    columns = {key: column for key, column in entries.items() if key.startswith(f"{block}_")}
    lines = [
        frozenset((key, value) for key, value in zip(columns, line, strict=True) if value is not None)
        for line in zip(*columns.values(), strict=True)
    ]
    return [line for line in lines if line]


def results(planner):
    """What each skein shows, by its name."""
    entries, shown = planner.entries(), planner.shown()
    keys = [key for key in shown if key.startswith("skeins_") and len(shown[key]) > 1 and not key.startswith(ITS_LINE)]
    return {name: {key: shown[key][row] for key in keys} for row, name in enumerate(entries["skeins_name"]) if name}


def alike(shown, others):
    """The same values, but for the last digits."""
    return all(
        one == (pytest.approx(other, rel=1e-9) if isinstance(other, float) else other)
        for key in others
        for one, other in zip(shown[key], others[key], strict=True)
    )


def test_it_opens_with_the_right_numbers(planner):
    assert planner.faults() == []
    assert planner.shown()["skeins_length_yd"][0] == pytest.approx(208, rel=1e-12)  # 104 turns of 2 yd


def test_no_sheet_is_protected_and_the_desk_tells_of_a_formula_that_was_emptied(planner, tmp_path):
    assert not any(planner.do("is_protected", sheet=sheet) for sheet in planner.sheets)
    assert planner.shown()["skeins_spoiled"] in ((0,), (None,))
    looked = {key: value for key, value in planner.shown().items() if key.startswith("look_")}
    planner.select(planner.area("skeins_length_yd", 0, 3))
    planner.press("ClearContents")
    assert planner.shown()["skeins_spoiled"] == (4,)
    assert looked != {key: value for key, value in planner.shown().items() if key.startswith("look_")}
    saved = planner.save(tmp_path / "emptied.xlsx")
    assert check(FileToCheck(saved, planner.layout, formulas=read_planner(saved).formulas), scenarios=0).findings
    planner.press("Undo")
    assert planner.faults() == []


def test_typing_and_deleting(planner):
    for key, words in {
        "name": "Elder",
        "reel": "Clock reel",
        "wraps": "120",
        "part_wrap": "0.5",
        "gross": "3.5",
        "lot": "moss",
    }.items():
        planner.type(f"skeins_{key}", 4, words)
    assert planner.entries()["skeins_wraps"][4] == 120 and planner.faults() == []
    assert planner.shown()["skeins_length_yd"][4] == pytest.approx(241, rel=1e-12)
    planner.select(planner.lines("skeins", 1))
    planner.press("ClearContents")
    assert planner.entries()["skeins_name"][1] is None and planner.faults() == []


def test_undo_takes_it_back(planner):
    before = planner.shown()
    planner.type("skeins_wraps", 0, "10")
    assert not alike(planner.shown(), before)
    planner.press("Undo")
    assert alike(planner.shown(), before)


def test_a_percentage_is_typed_with_its_sign(planner):
    planner.type("projects_margin", 0, "25%")
    assert planner.entries()["projects_margin"][0] == 0.25 and planner.faults() == []


def test_lines_are_copied_and_pasted(planner):
    planner.select(planner.lines("skeins", 0, 2))
    planner.press("Copy")
    planner.select(planner.area("skeins_name", 4))
    planner.press("Paste")
    assert planner.entries()["skeins_name"][4:7] == ("Cedar", "Apple", "Birch") and planner.faults() == []
    assert planner.shown()["skeins_message"][4] == "Skein: another line has this name; give each its own."


def test_a_column_is_filled_down(planner):
    planner.select(planner.area("skeins_reel", 3, 6))
    planner.press("FillDown")
    assert planner.entries()["skeins_reel"][:7] == ("Clock reel",) * 7 and planner.faults() == []


def test_a_text_is_pasted_where_a_number_belongs(planner):
    planner.select(planner.area("skeins_name", 0))
    planner.press("Copy")
    planner.select(planner.area("skeins_wraps", 1))
    planner.press("Paste")
    assert planner.entries()["skeins_wraps"][1] == "Cedar" and planner.faults() == []
    assert planner.shown()["skeins_message"][1] == "Wraps: type a number from 0 up to 100,000, in digits."


@pytest.mark.parametrize(
    ("column", "rising", "order"),
    [
        ("name", True, ["Apple", "Birch", "Cedar", "Dogwood"]),
        ("name", False, ["Dogwood", "Cedar", "Birch", "Apple"]),
        ("wraps", True, ["Dogwood", "Birch", "Cedar", "Apple"]),
    ],
)
def test_sorting_a_log_keeps_every_record_together(planner, column, rising, order):
    before, alone = records(planner.entries()), results(planner)
    planner.select(planner.lines("skeins", 0, 7))
    planner.press("DataSort", Col1=planner.area(f"skeins_{column}")[1] + 1, **SORT | {"Ascending1": rising})
    entries = planner.entries()
    assert [name for name in entries["skeins_name"] if name] == order and set(records(entries)) == set(before)
    assert planner.faults() == []
    for name, shown in results(planner).items():
        assert alike(
            {key: [value] for key, value in shown.items()}, {key: [value] for key, value in alone[name].items()}
        ), name


def test_sorting_whole_rows(planner):
    place = planner.layout.placements["skeins_name"]
    rows = planner.lines("skeins", 0, 7)
    rows[3] = max(each.column for each in planner.layout.placements_of(place.holder)) - 1
    planner.select(rows)
    planner.press("DataSort", Col1=planner.area("skeins_name")[1] + 1, **SORT)
    assert planner.entries()["skeins_name"][:4] == ("Apple", "Birch", "Cedar", "Dogwood") and planner.faults() == []


def test_filtering_a_log_hides_lines_and_changes_nothing(planner):
    before, entries = planner.shown(), planner.entries()
    lines = planner.lines("skeins", 0, 7)
    visible = planner.do("filter", area=lines, column=planner.area("skeins_lot")[1] - lines[1], text="Clover")
    assert visible[:4] == [True, False, True, True]
    assert planner.entries() == entries and alike(planner.shown(), before) and planner.faults() == []


def test_an_inserted_row_computes_nothing_harms_no_other_and_is_told(planner, tmp_path):
    before = planner.shown()
    planner.select(planner.area("skeins_name", 2))
    planner.press("InsertRowsBefore")
    planner.type("skeins_name", 2, "Elder")
    planner.type("skeins_wraps", 2, "50")
    shown = planner.shown()
    assert shown["skeins_length_yd"][2] is None
    for key, column in before.items():
        now = shown[key]
        if key.startswith(("look_", "skeins_spoiled", *ITS_LINE)):
            continue
        if key.startswith("skeins_") and len(column) > 1:
            column, now = column[:-1], now[:2] + now[3:]
        assert alike({key: now}, {key: column}), key
    saved = planner.save(tmp_path / "inserted.xlsx")
    assert check(FileToCheck(saved, planner.layout, formulas=read_planner(saved).formulas), scenarios=0).findings


@pytest.mark.parametrize("log", ["fiber", "skeins", "projects"])
@pytest.mark.parametrize("strict", ["formualizer", "ironcalc"])
def test_a_deleted_line_leaves_no_error_even_where_columns_must_be_of_one_length(planner, tmp_path, log, strict):
    """LibreOffice takes columns of different lengths together; other programs answer with an error."""
    planner.type("skeins_gross", 0, "4000")  # which is asked about, at the head of the log
    planner.select(planner.area(f"{log}_name", 2))
    planner.press("DeleteRows")
    with engine(strict).open(planner.save(tmp_path / "deleted.xlsx")) as session:
        session.evaluate()
        for each in planner.layout.formulas:
            shown = session.read(Area(each.sheet, each.row, each.column, max(1, each.rows - 1)))
            assert not any(isinstance(value, ErrorValue) for [value] in shown), each.key


def test_a_row_inserted_above_a_log_changes_no_result(planner):
    """Every lot showed what belongs to the next one, since lines were counted from the top of the sheet."""
    before, head = planner.shown(), planner.area("fiber_name", 0)
    head[2] = head[4] = 2
    planner.select(head)
    planner.press("InsertRowsBefore")
    shown, on_it = planner.shown(), {key for key, each in planner.layout.placements.items() if each.sheet == head[0]}
    for key, column in before.items():
        if key not in on_it:
            assert alike({key: shown[key]}, {key: column}), key
        elif len(column) > 1:  # a line lower than they were
            assert alike({key: shown[key][1:]}, {key: column[:-1]}), key


def test_a_row_inserted_among_the_projects_on_the_desk_leaves_out_none(planner):
    before = planner.shown()
    planner.select(planner.area("first_projects_name", 1))
    planner.press("InsertRowsBefore")
    shown = planner.shown()
    for key, column in before.items():
        if planner.layout.placements[key].sheet != "Desk":
            assert alike({key: shown[key]}, {key: column}), key
        elif key.startswith("first_projects_") and key != "first_projects_own_line":  # a line lower than it was
            assert alike({key: shown[key][:1] + shown[key][2:]}, {key: column[:-1]}), key


def test_a_row_inserted_among_the_projects_is_no_project_called_0(planner):
    before = planner.shown()
    planner.select(planner.area("projects_name", 1))
    planner.press("InsertRowsBefore")
    name, *others = before["first_projects_name"]
    assert planner.shown()["first_projects_name"] == (name, None, *others[:-1])


def test_a_row_inserted_above_the_first_lot_is_told(planner):
    before = planner.shown()["look_fiber"]
    planner.select(planner.area("fiber_name", 0))
    planner.press("InsertRowsBefore")
    assert planner.shown()["look_fiber"] != before
    assert "moved: undo it" in planner.shown()["look_fiber"][0]
    planner.press("Undo")
    assert planner.shown()["look_fiber"] == before and planner.faults() == []


@pytest.mark.parametrize("whole_line", [False, True])
def test_cutting_takes_the_formulas_along_which_the_check_tells(planner, tmp_path, whole_line):
    """Every spreadsheet program moves the references with a cell that is cut or dragged: the first page says: copy."""
    planner.select(planner.lines("skeins", 1) if whole_line else planner.area("skeins_wraps", 1))
    planner.press("Cut")
    planner.select(planner.area("skeins_name" if whole_line else "skeins_wraps", 5))
    planner.press("Paste")
    assert planner.faults()
    saved = planner.save(tmp_path / "cut.xlsx")
    told = check(FileToCheck(saved, planner.layout, formulas=read_planner(saved).formulas), scenarios=0).findings
    assert {"the formula was changed", "the reference library disagrees"} == {each.reason for each in told}
    words = [
        sentence
        for section in planner.layout.planner.sheets[0].sections
        for sentence in getattr(section, "sentences", ())
    ]
    assert any("do not cut" in sentence.lower() for sentence in words)
    planner.press("Undo")
    planner.press("Undo")
    assert planner.faults() == []


@pytest.mark.parametrize("suffix", [".xlsx", ".ods"])
def test_saved_and_opened_again(planner, english, layout, tmp_path, suffix):
    planner.type("skeins_wraps", 3, "61")
    planner.type("skeins_name", 4, "Größe & <2>")
    shown = planner.shown()
    saved = planner.save(tmp_path / f"saved{suffix}")
    again = Planner(english, layout, saved)
    try:
        assert again.entries() == planner.entries() and again.faults() == []
        assert alike(again.shown(), shown)
    finally:
        again.close()
    xlsx = saved if suffix == ".xlsx" else tmp_path / "from-ods.xlsx"
    if suffix == ".ods":
        convert(saved, xlsx, recalculate=False)
    held = read_planner(xlsx)
    report = check(
        FileToCheck(xlsx, held.layout, formulas=held.formulas), ["formualizer", "libreoffice"], scenarios=drawn(1, 2)
    )
    assert [str(each) for each in report.findings[:5]] == []


def test_saved_by_gnumeric(path, tmp_path):
    saved = tmp_path / "gnumeric.xlsx"
    subprocess.run(["ssconvert", "--recalc", str(path), str(saved)], check=True, capture_output=True, timeout=120)
    held = read_planner(saved)
    report = check(
        FileToCheck(saved, held.layout, formulas=held.formulas),
        ["formualizer", "libreoffice", "gnumeric"],
        scenarios=drawn(1, 2),
    )
    assert [str(each) for each in report.findings[:5]] == []


def test_a_decimal_comma_is_a_number_where_people_write_one(german_planner):
    german_planner.type("skeins_gross", 0, "2,5")
    german_planner.type("projects_margin", 0, "12,5%")
    entries = german_planner.entries()
    assert entries["skeins_gross"][0] == 2.5 and entries["projects_margin"][0] == 0.125
    shown = german_planner.shown()
    assert shown["skeins_mass_words"][0] == "2,4 oz (67 g)"


def test_a_sentence_has_the_marks_of_the_place(german_planner):
    """There 1,450 yd would be less than two yards: between thousands stands a space."""
    german_planner.type("skeins_gross", 0, "2,5")
    german_planner.type("skeins_wraps", 1, "2000")
    shown = german_planner.shown()
    expected = expected_values(german_planner.layout.planner, german_planner.entries())
    apart = {
        key: (wanted, got)
        for key, column in expected.items()
        for wanted, got in zip(column, shown[key], strict=True)
        if not agree(wanted, got)
    }
    assert apart and all(are_same_words(*words) for words in apart.values())
    assert not [got for _, got in apart.values() if re.search("[0-9],[0-9]{3}(?![0-9])|[0-9][.][0-9]", got)]
    assert [got for _, got in apart.values() if re.search("[0-9]\u00a0[0-9]{3} yd", got)]


def test_a_name_that_ends_with_a_space_is_the_one_chosen_when_a_planner_is_opened(english, layout, tmp_path):
    """The stored result of a formula lost the space, and so no line found its lot, reel or project any more."""
    entries = starting_entries(layout.planner)
    for block, lines in RECORDS.items():
        named = [{key: f"{each} " if key in SPACED else each for key, each in line.items()} for line in lines]
        entries = with_records(layout.planner, entries, block, named)
    file = tmp_path / "spaces.xlsx"
    file.write_bytes(workbook(layout, entries))
    opened = Planner(english, layout, file)
    shown = opened.shown()
    assert opened.faults() == [] and opened.entries()["skeins_lot"][0] == "Clover "
    assert set(shown["skeins_message"]) <= {None, ""}
    opened.close()


def test_a_decimal_comma_is_told_where_people_write_a_point(planner):
    planner.select(planner.area("skeins_gross", 0))
    planner.press("ClearContents")
    planner.type("skeins_gross", 5, "2,5")
    assert planner.entries()["skeins_gross"][5] == "2,5" and planner.faults() == []


def test_a_german_program_saves_what_an_english_one_reads(german_planner, tmp_path):
    german_planner.type("skeins_gross", 0, "2,5")
    saved = german_planner.save(tmp_path / "deutsch.xlsx")
    held = read_planner(saved)
    report = check(FileToCheck(saved, held.layout, formulas=held.formulas), scenarios=1)
    assert [str(each) for each in report.findings[:5]] == []
    with engine("formualizer").open(saved) as session:
        gross = held.layout.placements["skeins_gross"]
        assert session.read(Area(gross.sheet, gross.row, gross.column)) == [[2.5]]
