"""What is particular to LibreOffice: its recalculation habits, and leaving nothing behind."""

import os
import signal
import subprocess
import sys
import time

import openpyxl
import pytest
from questions import LOOKS

from workbookgen.engines import Area, Typed, engine, libreoffice
from workbookgen.engines.copies import POISON, with_poison
from workbookgen.engines.libreoffice import convert
from workbookgen.errors import FileError, PlannerError

pytestmark = pytest.mark.programs


def first_look(path):
    return openpyxl.load_workbook(path, data_only=True)["Worked out"]["C1"].value


@pytest.mark.filterwarnings("ignore:.*outside the limits for dates")
def test_the_poison_is_real(workbook, tmp_path):
    """A program with its default settings shows the stored result, so poison is a fair test."""
    poisoned = tmp_path / "poisoned.xlsx"
    with_poison(workbook, poisoned)
    convert(poisoned, tmp_path / "trusting.xlsx", recalculate=False)
    convert(poisoned, tmp_path / "careful.xlsx", recalculate=True)
    assert first_look(tmp_path / "trusting.xlsx") == POISON
    assert first_look(tmp_path / "careful.xlsx") == 1


def test_a_picture_of_the_workbook(workbook, tmp_path):
    convert(workbook, tmp_path / "printed.pdf", recalculate=True)
    assert (tmp_path / "printed.pdf").read_bytes().startswith(b"%PDF")


def test_a_conversion_that_makes_nothing_is_an_error(workbook, tmp_path):
    with pytest.raises(FileError, match="cannot read"):
        convert(workbook, tmp_path / "made.nonsense", recalculate=False)
    assert not list(tmp_path.iterdir())


def test_wherever_it_runs_a_number_in_a_text_has_a_point(workbook, monkeypatch):
    """On a German machine LibreOffice would write 3,5, which no answer of the reference library is."""
    monkeypatch.setenv("LC_ALL", "de_DE.UTF-8")
    monkeypatch.setattr(libreoffice, "_shared", [])
    try:
        with engine("libreoffice").open(workbook) as session:
            session.set(Area("Entries", 1, 1), [[Typed('=3.5&""')]])
            session.evaluate()
            assert session.read(Area("Entries", 1, 1)) == [["3.5"]]
    finally:
        libreoffice._leave_shared()


def test_one_that_does_not_answer_is_stopped_and_replaced(workbook, monkeypatch):
    session = engine("libreoffice").open(workbook)
    process = session._office._process
    monkeypatch.setattr(libreoffice, "TIME_LIMIT", 1)
    os.killpg(process.pid, signal.SIGSTOP)
    with pytest.raises(PlannerError, match="did not answer within 1 seconds"):
        session.read(LOOKS)
    assert process.poll() is not None
    with pytest.raises(PlannerError, match="did not answer"):
        session.read(LOOKS)
    session.close()
    monkeypatch.undo()
    with engine("libreoffice").open(workbook) as again:
        assert again.read(LOOKS)[0][2] == 1


OPEN_AND_WAIT = """
import sys, time
from pathlib import Path
from workbookgen.engines import engine
session = engine("libreoffice").open(Path(sys.argv[1]))
print("open", flush=True)
time.sleep({seconds})
"""


@pytest.mark.parametrize(("seconds", "killed"), [(0, False), (600, True)])
def test_nothing_stays_behind(workbook, tmp_path, seconds, killed):
    """Neither after an ordinary end with a session left open, nor after a sudden one."""
    process = subprocess.Popen(
        [sys.executable, "-c", OPEN_AND_WAIT.format(seconds=seconds), str(workbook)],
        stdout=subprocess.PIPE,
        env=os.environ | {"TMPDIR": str(tmp_path), "PYTHONPATH": os.pathsep.join(sys.path)},
    )
    assert process.stdout.readline() == b"open\n"
    if killed:
        process.kill()
    process.wait(60)
    process.stdout.close()
    deadline = time.monotonic() + 30
    while time.monotonic() < deadline and (left(tmp_path) or using(tmp_path)):
        time.sleep(0.1)
    assert left(tmp_path) == [] and using(tmp_path) == []


def left(folder):
    return [path.name for path in folder.glob("libreoffice-*")]


def using(folder):
    """The running processes whose command line names the folder."""
    listed = subprocess.run(["ps", "-eo", "args"], capture_output=True, text=True).stdout
    return [line for line in listed.splitlines() if f"{folder}/libreoffice-" in line]
