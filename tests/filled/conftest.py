"""Small workbooks, and a small planner that was typed into."""

import re
import zipfile
from pathlib import Path

import openpyxl
import pytest

from chapters import all_but
from entries import entries_with
from planners import laid_out, rows_of
from workbookgen.book.write import write
from workbookgen.settings import Settings

ENTERED = {
    "skeins": [
        {"name": "First", "wraps": 104.0, "gross": 4.02},
        {"name": "Second", "wraps": "many"},
        {},
        {"name": "Fourth"},
    ]
}


@pytest.fixture(scope="session")
def few():
    return Settings(fibers="", rows=rows_of(4), leave_out=all_but("Guide", "Time", "Figures"))


@pytest.fixture(scope="session")
def entered(few):
    """The entries of the planner, with three skeins and a day."""
    planner = laid_out(few).planner
    return entries_with(planner, {"skeins": ENTERED["skeins"]}) | {"pace_start": (46357.0,)}


@pytest.fixture(scope="session")
def planner_file(few, entered, tmp_path_factory):
    path = tmp_path_factory.mktemp("filled") / "planner.xlsx"
    path.write_bytes(write(laid_out(few), entered, {}))
    return path


@pytest.fixture
def rewritten(planner_file, tmp_path):
    """The planner with a pattern replaced in one of its parts, as another program might have saved it."""

    def rewriting(part: str, pattern: str, text: str, source: Path | None = None) -> Path:
        target = tmp_path / f"rewritten-{len(list(tmp_path.iterdir()))}.xlsx"
        with zipfile.ZipFile(source or planner_file) as before, zipfile.ZipFile(target, "w") as after:
            for entry in before.infolist():
                content = before.read(entry).decode() if entry.filename == part else before.read(entry)
                if entry.filename == part:
                    content, times = re.subn(pattern, text, content)
                    assert times
                after.writestr(entry, content)
        return target

    return rewriting


WORKBOOK = "xl/workbook.xml"


def sheet_part(path: Path, name: str) -> str:
    """The part of a package in which a sheet stands."""
    return f"xl/worksheets/sheet{openpyxl.load_workbook(path, read_only=True).sheetnames.index(name) + 1}.xml"
