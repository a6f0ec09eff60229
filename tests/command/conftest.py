"""The command, run in this process or in one of its own, on a planner of few lines."""

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

import openpyxl
import pytest

from chapters import all_but
from workbookgen import cli
from workbookgen.settings import Rows

ROOT = Path(__file__).parents[2]
SMALL = "\n".join(
    (
        'fibers = "fibers.csv"',
        f"leave_out = {json.dumps(all_but('Guide', 'Counts'))}",
        "[rows]",
        *(f"{log} = {4 if log == 'reels' else 3}" for log in Rows.model_fields),
        "[[reels]]",
        'name = "Clock reel"',
        'loop = "2 yd"',
    )
)
FIBERS = (
    "name,fleece_low,fleece_high,yield_low,yield_high,diameter_low,diameter_high,"
    "staple_low,staple_high,regain,skirting,preparation,spinning,source\n"
    "Fog,4,7,0.6,0.7,30,45,6,8,0.136,0.15,0.06,0.03,invented for this test\n"
)


class Outcome(NamedTuple):
    """What a run left: its exit code, and what it said on both outputs."""

    code: int
    out: str
    err: str

    @property
    def json(self):
        return json.loads(self.out)


@pytest.fixture
def run(capsys):
    """Run the command in this process, as `python -m workbookgen` does."""

    def running(*arguments) -> Outcome:
        capsys.readouterr()
        try:
            cli.main([str(each) for each in arguments])
            code = 0
        except SystemExit as end:
            code = end.code or 0
        return Outcome(code, *capsys.readouterr())

    return running


@pytest.fixture
def run_apart():
    """Run the command in a process of its own, with some environment variables changed."""

    def running(*arguments, **changed: str) -> Outcome:
        done = subprocess.run(
            [sys.executable, "-m", "workbookgen", *map(str, arguments)],
            cwd=ROOT,
            env=os.environ | changed,
            capture_output=True,
            encoding="utf-8",
            timeout=300,
        )
        return Outcome(done.returncode, done.stdout, done.stderr)

    return running


@pytest.fixture(scope="package")
def small_settings(tmp_path_factory):
    """A settings file for a planner that is built in a blink."""
    folder = tmp_path_factory.mktemp("settings")
    (folder / "fibers.csv").write_text(FIBERS, encoding="utf-8")
    path = folder / "small.toml"
    path.write_text(SMALL, encoding="utf-8")
    return path


@pytest.fixture(scope="package")
def planner(small_settings, tmp_path_factory):
    """A blank planner of few lines. Nobody may write to it."""
    path = tmp_path_factory.mktemp("planner") / "planner.xlsx"
    cli.main(["build", "--settings", str(small_settings), "-o", str(path)])
    return path


@pytest.fixture
def altered(planner, tmp_path):
    """A copy of the planner with some cells set, by defined name, as a spreadsheet program would save it."""

    def made(**values) -> Path:
        book = openpyxl.load_workbook(planner)
        for name, value in values.items():
            first_cell(book, name).value = value
        path = tmp_path / "altered.xlsx"
        book.save(path)
        return path

    return made


def first_cell(book, name: str):
    """The first cell of a defined name's range."""
    ((sheet, area),) = book.defined_names[name].destinations
    return book[sheet][area.replace("$", "").split(":")[0]]
