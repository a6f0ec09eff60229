"""What is typed first into a planner that was just opened changes every result that depends on it, on all sheets.

Where cells share a formula, LibreOffice works out those with a blank stored result only when it shows them, and until
then nothing typed passes through them. `book.awake` has it show all cells. Here a planner is opened in sight, as people
open it.
"""

import zipfile
from io import BytesIO

import pytest

from workbookgen.book import awake
from workbookgen.build import workbook

from .conftest import Planner

pytestmark = pytest.mark.programs
FIRST = [
    ("fiber_name", 0, "Renamed"),  # on another sheet 32 results of before would stay
    ("fiber_weight", 1, "3.25"),  # the desk would not count what is now wrong
]


@pytest.fixture(scope="module")
def made(filled, told, tmp_path_factory):
    file = tmp_path_factory.mktemp("first") / "planner.xlsx"
    file.write_bytes(workbook(filled, told))
    return file


@pytest.fixture(scope="module")
def saved(english, filled, made, tmp_path_factory):
    """The planner as LibreOffice saves it while another sheet than the desk is open, by the file's kind."""
    opened, folder = Planner(english, filled, made), tmp_path_factory.mktemp("saved")
    opened.select(opened.area("samples_name"))
    files = {kind: opened.save(folder / f"planner{kind}") for kind in (".xlsx", ".ods")}
    opened.close()
    return files


def sheets_that_ask(content):
    with zipfile.ZipFile(BytesIO(content)) as package:
        parts = [package.read(name) for name in package.namelist() if name.startswith("xl/worksheets/sheet")]
    return sum(f"<formula>{awake.NAME}</formula>".encode() in part for part in parts)


def left_behind(office, layout, file, key, row, words):
    """Cells that show something wrong after a first entry."""
    planner = Planner(office, layout, file, in_sight=True)
    planner.type(key, row, words)
    faults = planner.faults()
    planner.close()
    return faults


@pytest.mark.parametrize(("key", "row", "words"), FIRST)
def test_the_first_entry_changes_all_that_depends_on_it(english, filled, made, key, row, words):
    assert left_behind(english, filled, made, key, row, words) == []


@pytest.mark.parametrize("kind", [".xlsx", ".ods"])
def test_it_does_once_libreoffice_saved_the_planner_too(english, filled, saved, kind):
    for first in FIRST:
        assert left_behind(english, filled, saved[kind], *first) == []


def test_without_the_format_results_of_before_would_stay(english, filled, told, tmp_path, monkeypatch):
    monkeypatch.setattr(awake, "keep", lambda canvas: None)
    file = tmp_path / "asleep.xlsx"
    file.write_bytes(workbook(filled, told))
    assert len(left_behind(english, filled, file, *FIRST[0])) > 10


def test_in_a_large_planner_only_the_desk_asks_for_all_cells(filled, told, monkeypatch):
    """It would take seconds for each entry elsewhere."""
    assert sheets_that_ask(workbook(filled, told)) == len(filled.planner.sheets)
    monkeypatch.setattr(awake, "MOST_CELLS", filled.formula_cells - 1)
    assert sheets_that_ask(workbook(filled, told)) == 1
