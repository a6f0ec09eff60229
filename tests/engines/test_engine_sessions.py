"""The same questions to every engine, and the same answers expected of each.

The expected answers are what a spreadsheet program shows for formulas so small that a
reader can check them by eye; the serial numbers of dates count days from 1899-12-30.
"""

import zipfile
from datetime import date

import pytest
from questions import BLOCK, BLOCK_SUMS, ENTRIES, LONG, LOOKS, RESULTS, ROWS, STALE

from workbookgen.engines import Area, ErrorValue, Typed, engine
from workbookgen.engines.copies import POISON, with_poison
from workbookgen.errors import FileError

SECOND_OF_JANUARY = float((date(2026, 1, 2) - date(1899, 12, 30)).days)

TEXTS = (
    "12,5",
    "=1+1",
    "5/6/2026",
    "12",
    "1e5",
    "TRUE",
    "#N/A",
    "'quoted",
    'a "b" & <c>',
    "Größe",
    " spaced ",
    "two\nlines",
)


def fill(session, values):
    session.set(ENTRIES, [[value] for value in values])
    session.evaluate()
    return session.read(LOOKS)


def test_a_text_stays_a_text_whatever_it_looks_like(each_engine, workbook):
    with each_engine.open(workbook) as session:
        looks = fill(session, TEXTS)
        assert looks == [[0, 1, 0, 1, text + "|", len(text), 1] for text in TEXTS]
        assert session.read(ENTRIES) == [[text] for text in TEXTS]


def test_a_number_is_a_number(each_engine, workbook):
    with each_engine.open(workbook) as session:
        numbers = [0, 1, -2, 0.5, 0.1 + 0.2, 1e-9, 1e15, 1 / 3, 12345.678, 46000, 2**53, -1e-300]
        looks = fill(session, numbers)
        assert [row[:4] for row in looks] == [[0, 0, 1, 1]] * ROWS
        assert session.read(ENTRIES) == [[number] for number in numbers]
        assert all(type(row[0]) is float for row in session.read(ENTRIES))


def test_true_is_no_number(each_engine, workbook):
    with each_engine.open(workbook) as session:
        looks = fill(session, [True, False] * (ROWS // 2))
        if each_engine.name == "libreoffice":  # to which they are numbers, and which shows them as such
            assert [row[:4] for row in looks] == [[0, 0, 1, 1]] * ROWS
            assert session.read(Area("Entries", 1, 1, 2)) == [[1], [0]]
        else:
            assert [row[:4] for row in looks] == [[0, 0, 0, 1]] * ROWS
            assert [value for (value,) in session.read(ENTRIES)] == [True, False] * (ROWS // 2)
            assert all(type(value) is bool for (value,) in session.read(ENTRIES))


def test_a_formula_that_is_typed_counts_as_its_result(each_engine, workbook):
    typed = ("=6.5*16", '="12,5"', "=1/0", "=NA()", '=""', "=1=1")
    with each_engine.open(workbook) as session:
        looks = fill(session, [Typed(formula) for formula in typed] * 2)
        assert [row[:4] for row in looks[:3]] == [[0, 0, 1, 1], [0, 1, 0, 1], [0, 0, 0, 1]]
        shown = [value for (value,) in session.read(ENTRIES)][: len(typed)]
        assert shown == [104.0, "12,5", ErrorValue("#DIV/0!"), ErrorValue("#N/A"), None, True]
        assert fill(session, [None] * ROWS) == [[1, 0, 0, 0, "|", 0, None]] * ROWS


@pytest.mark.parametrize("blank", [None, ""])
def test_a_cell_is_truly_emptied(each_engine, workbook, blank):
    with each_engine.open(workbook) as session:
        fill(session, TEXTS)
        assert fill(session, [blank] * ROWS) == [[1, 0, 0, 0, "|", 0, None]] * ROWS
        assert session.read(ENTRIES) == [[None]] * ROWS


def test_results_have_one_spelling(each_engine, workbook):
    with each_engine.open(workbook) as session:
        results = [value for (value,) in session.read(RESULTS)]
    assert results[:7] == [ErrorValue("#DIV/0!"), ErrorValue("#VALUE!"), ErrorValue("#N/A"), "#VALUE!", None, 1.0, 0.0]
    assert results[7:] == pytest.approx([SECOND_OF_JANUARY, 1 / 3, 1.75, SECOND_OF_JANUARY + 1 / 3, 46001], rel=1e-12)
    assert all(type(value) is float for value in results[6:])


def test_a_date_cell_takes_a_serial_number(each_engine, workbook):
    with each_engine.open(workbook) as session:
        session.set(Area("Entries", 1, 3), [[SECOND_OF_JANUARY]])
        session.evaluate()
        assert session.read(Area("Entries", 1, 3)) == [[SECOND_OF_JANUARY]]
        assert session.read(RESULTS)[-1] == [SECOND_OF_JANUARY + 1]


def test_stored_results_are_never_handed_back(each_engine, workbook, tmp_path):
    poisoned = tmp_path / "poisoned.xlsx"
    with_poison(workbook, poisoned)
    with each_engine.open(poisoned) as bad, each_engine.open(workbook) as good:
        for area in (LOOKS, RESULTS, BLOCK_SUMS):
            answer = bad.read(area)
            assert answer == good.read(area)
            assert not {POISON, float(STALE)} & {value for row in answer for value in row}
        assert bad.read(LOOKS)[0] == [0, 0, 1, 1, "7|", 1, 1]


def test_a_later_change_changes_the_result(each_engine, workbook):
    with each_engine.open(workbook) as session:
        first = [[row, row / 4, None] for row in range(LONG)]
        second = [[row, None, 1] for row in range(LONG)]
        for block in (first, second, first):
            session.set(BLOCK, block)
            session.evaluate()
            sums = [value for (value,) in session.read(BLOCK_SUMS)]
            assert sums == [10 * sum(value or 0 for value in row) for row in block]
            assert session.read(BLOCK) == block


def test_the_last_of_two_overlapping_areas_counts(each_engine, workbook):
    with each_engine.open(workbook) as session:
        whole, part = Area("Entries", 1, 5, 1, 3), Area("Entries", 1, 6)
        for area, values in ((whole, [[1, 1, 1]]), (part, [[5]]), (whole, [[2, 2, 2]])):
            session.set(area, values)
        session.evaluate()
        assert session.read(Area("Worked out", 1, 11)) == [[60]]


def test_cells_beyond_the_used_ones_are_blank(each_engine, workbook):
    with each_engine.open(workbook) as session:
        assert session.read(Area("Worked out", 5000, 300, 2, 3)) == [[None] * 3] * 2


def test_two_sessions_do_not_mix(each_engine, workbook):
    with each_engine.open(workbook) as one, each_engine.open(workbook) as other:
        fill(one, range(ROWS))
        assert fill(other, TEXTS)[0][4] == "12,5|"
        assert one.read(LOOKS)[0][4] == "0|"


def test_the_file_itself_is_never_touched(each_engine, workbook):
    before = workbook.read_bytes()
    with each_engine.open(workbook) as session:
        fill(session, TEXTS)
    assert workbook.read_bytes() == before
    assert [path.name for path in workbook.parent.iterdir()] == [workbook.name]


def test_an_unknown_sheet_is_a_sentence(each_engine, workbook):
    with each_engine.open(workbook) as session:
        for act in (lambda area: session.set(area, [[1]]), session.read):
            with pytest.raises(FileError, match="Its sheets are Entries, Worked out"):
                act(Area("Elsewhere", 1, 1))


def test_a_file_that_is_no_workbook_is_a_sentence(each_engine, tmp_path):
    letter = tmp_path / "letter.xlsx"
    letter.write_text("a,b\n1,2\n")
    with pytest.raises(FileError, match="cannot read this file"):
        each_engine.open(letter)
    with pytest.raises(FileError, match="no such workbook"):
        each_engine.open(tmp_path / "absent.xlsx")


def test_values_that_no_cell_can_hold_are_refused(each_engine, workbook):
    with each_engine.open(workbook) as session:
        for value in (float("nan"), float("inf"), "bell\x07", "lone\rreturn"):
            with pytest.raises(ValueError, match="value of a cell|cannot store"):
                session.set(Area("Entries", 1, 1), [[value]])
        with pytest.raises(ValueError, match="rows of lengths"):
            session.set(Area("Entries", 1, 1, 2), [[1]])


def test_the_version_is_a_version(each_engine):
    assert each_engine.version()[0].isdigit()


def test_the_embedded_engine_takes_a_sheet_as_large_as_the_gate_does(workbook, tmp_path):
    """By itself it takes no part of more than 128 MiB, and a log of 20,000 lines may have more."""
    large = tmp_path / "large.xlsx"
    with zipfile.ZipFile(workbook) as source, zipfile.ZipFile(large, "w", zipfile.ZIP_DEFLATED) as target:
        for name in source.namelist():
            text = source.read(name)
            target.writestr(name, text.replace(b"</sheetData>", b" " * 130 * 2**20 + b"</sheetData>", 1))
    with engine("formualizer").open(large) as session, engine("formualizer").open(workbook) as plain:
        assert session.read(RESULTS) == plain.read(RESULTS)
