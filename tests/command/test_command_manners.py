"""How the command behaves whatever it is asked: help, versions, and never a traceback."""

import os
import re
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from workbookgen import __version__
from workbookgen.sheets import quick_answers

from .conftest import ROOT

COMMANDS = ("build", "check", "fields", "carry", "blank", "gather")


@pytest.mark.parametrize("arguments", [("--help",), ()])
def test_help_lists_the_commands(run, arguments):
    code, out, err = run(*arguments)
    assert code == (0 if arguments else 2)
    assert all(f"\n  {name} " in out + err for name in COMMANDS)


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_its_help(run, name):
    code, out, _ = run(name, "--help")
    assert code == 0 and out.startswith(f"Usage: workbookgen {name} ") and "--help" in out


@pytest.mark.parametrize("name", ["mine.ods", "mine.csv", "mine"])
@pytest.mark.parametrize("command", ["build", "carry", "blank"])
def test_a_planner_has_the_name_of_a_workbook(run, planner, tmp_path, command, name):
    """Else a program would not know it, or take it for something else."""
    code, out, err = run(command, *([] if command == "build" else [planner]), "-o", tmp_path / name)
    assert (code, out, err) == (
        2,
        "",
        f"{tmp_path / name}: end the name with .xlsx; that is what a planner is written as.\n",
    )
    assert not (tmp_path / name).exists()


def test_the_version(run):
    assert run("--version") == (0, f"workbookgen, version {__version__}\n", "")


@pytest.mark.parametrize("arguments", [("spin",), ("check",), ("build", "--colour", "red"), ("fields", "a", "b")])
def test_what_it_does_not_know(run, arguments):
    code, out, err = run(*arguments)
    assert (code, out) == (2, "") and "Error: " in err and "Traceback" not in err


@pytest.mark.parametrize(
    "command, broken",
    [
        ("build", "workbookgen.build.build"),
        ("check", "workbookgen.checking.check.check"),
        ("fields", "workbookgen.fields.described"),
        ("blank", "workbookgen.blank.blank"),
    ],
)
def test_our_own_faults_are_told_as_ours(run, monkeypatch, planner, tmp_path, command, broken):
    def fail(*_, **__):
        raise RuntimeError("the belt came off")

    monkeypatch.setattr(broken, fail)
    monkeypatch.delenv("WORKBOOKGEN_TRACEBACK", raising=False)
    code, out, err = run(
        command,
        *(() if command == "build" else (planner,)),
        *(("-o", tmp_path / "x.xlsx") if command in ("build", "blank") else ()),
    )
    assert (code, out) == (2, "")
    assert re.fullmatch(
        r"workbookgen itself failed, which is our fault and not yours; nothing was changed\. "
        r"It says: RuntimeError: the belt came off \(workbookgen/cli\.py, line \d+\)\n",
        err,
    )


def test_a_slip_in_a_sheet_is_told_with_its_own_line(run, monkeypatch, tmp_path):
    """That of the field, not that of the function for the chapter, and none in the modules that describe sheets."""
    monkeypatch.delattr("workbookgen.reference.knitting.rows_possible")
    monkeypatch.delenv("WORKBOOKGEN_TRACEBACK", raising=False)
    code, _, err = run("build", "-o", tmp_path / "x.xlsx")
    sheet = Path(quick_answers.__file__).read_text(encoding="utf-8").splitlines()
    line = 1 + next(place for place, text in enumerate(sheet) if "knitting.rows_possible" in text)
    assert code == 2 and err.endswith(
        f"no attribute 'rows_possible' (workbookgen/sheets/quick_answers.py, line {line})\n"
    )


def test_a_refused_field_is_told_with_its_line(run, monkeypatch, tmp_path):
    """Its key alone may be that of a field on any sheet."""
    monkeypatch.setattr(quick_answers.knitting, "rows_possible", lambda left: left)
    code, _, err = run("build", "-o", tmp_path / "x.xlsx")
    assert code == 2 and "has no parameter" not in err
    monkeypatch.setattr(quick_answers, "TURNS", None)
    code, _, err = run("build", "-o", tmp_path / "x.xlsx")
    sheet = Path(quick_answers.__file__).read_text(encoding="utf-8").splitlines()
    line = 1 + next(place for place, text in enumerate(sheet) if "TURNS, NUMBER" in text)
    assert code == 2 and err.startswith("field rows: its domain must be a Number or ")
    assert err.endswith(f" and None is not. (workbookgen/sheets/quick_answers.py, line {line})\n")


def test_a_slip_in_a_module_that_the_command_needs_is_told_in_a_sentence(tmp_path):
    shutil.copytree(ROOT / "workbookgen", tmp_path / "workbookgen", ignore=shutil.ignore_patterns("__pycache__"))
    units = tmp_path / "workbookgen" / "unit_systems.py"
    units.write_text(units.read_text(encoding="utf-8").replace('("yards", "grams")', '("yards")'), encoding="utf-8")
    environment = {name: value for name, value in os.environ.items() if name != "WORKBOOKGEN_TRACEBACK"}
    ended = subprocess.run(
        [sys.executable, "-m", "workbookgen", "fields", "x.xlsx"],
        cwd=tmp_path,
        env=environment | {"PYTHONPATH": str(tmp_path)},
        capture_output=True,
        text=True,
    )
    assert (ended.returncode, ended.stdout, ended.stderr.count("\n")) == (2, "", 1)
    assert re.search(r"'masses' \(workbookgen/unit_systems\.py, line \d+\)$", ended.stderr)


def test_a_slip_in_python_is_told_with_its_own_line(run, monkeypatch, tmp_path):
    def fail(*_, **__):
        raise SyntaxError("'(' was never closed", (quick_answers.__file__, 7, 1, "Card("))

    monkeypatch.setattr("workbookgen.build.build", fail)
    monkeypatch.delenv("WORKBOOKGEN_TRACEBACK", raising=False)
    _, _, err = run("build", "-o", tmp_path / "x.xlsx")
    assert err.endswith(" SyntaxError: '(' was never closed (workbookgen/sheets/quick_answers.py, line 7)\n")


def test_whoever_mends_it_can_see_the_traceback(monkeypatch, planner):
    from workbookgen import cli

    def fail(*_, **__):
        raise RuntimeError("the belt came off")

    monkeypatch.setattr("workbookgen.fields.described", fail)
    monkeypatch.setenv("WORKBOOKGEN_TRACEBACK", "1")
    with pytest.raises(RuntimeError, match="the belt came off"):
        cli.main(["fields", str(planner)])


def test_stopping_it_is_no_fault(run, monkeypatch, planner):
    def stopped(*_, **__):
        raise KeyboardInterrupt

    monkeypatch.setattr("workbookgen.fields.described", stopped)
    code, out, err = run("fields", planner)
    assert (code, out) == (2, "") and err.strip() == "Stopped."


@pytest.mark.skipif(os.name == "nt", reason="NOT TRIED: signals are sent otherwise there")
@pytest.mark.parametrize(
    ("name", "usual"), [("SIGINT", signal.default_int_handler), ("SIGTERM", signal.SIG_DFL), ("SIGHUP", signal.SIG_DFL)]
)
def test_stopping_it_amid_a_library_is_no_fault(run, monkeypatch, planner, name, usual):
    """NumPy, stopped in a comparison, raises a TypeError."""
    asked = getattr(signal, name)

    def stopped(*_, **__):
        try:
            os.kill(os.getpid(), asked)
            time.sleep(5)
        except KeyboardInterrupt:
            raise TypeError("Cannot compare") from None

    monkeypatch.setattr("workbookgen.fields.described", stopped)
    before = signal.signal(asked, usual)
    try:
        code, out, err = run("fields", planner)
        assert signal.getsignal(asked) == usual
    finally:
        signal.signal(asked, before)
    assert (code, out) == (2, "") and err.strip() == "Stopped."


def test_as_a_module(run_apart, planner):
    code, out, err = run_apart("fields", planner, "--json")
    assert (code, err) == (0, "") and out.lstrip().startswith("[")


def test_a_sentence_and_no_traceback_as_a_module(run_apart, tmp_path):
    assert run_apart("check", tmp_path / "none.xlsx") == (2, "", f"{tmp_path / 'none.xlsx'}: there is no such file.\n")


@pytest.mark.parametrize("command", [("fields",), ("check", "--scenarios", "0"), ("fields", "--json")])
def test_a_reader_who_leaves_early_is_no_fault(planner, command):
    """As in `workbookgen fields planner.xlsx | head -1`: quiet, and neither agreement (0) nor findings (1)."""
    reader, writer = os.pipe()
    os.close(reader)
    done = subprocess.run(
        [sys.executable, "-m", "workbookgen", *command, str(planner)],
        cwd=ROOT,
        stdout=writer,
        stderr=subprocess.PIPE,
        timeout=300,
    )
    os.close(writer)
    assert (done.returncode, done.stderr) == (2, b"")


def test_a_terminal_that_cannot_spell_everything(planner):
    done = subprocess.run(
        [sys.executable, "-m", "workbookgen", "fields", str(planner)],
        cwd=ROOT,
        env=os.environ | {"PYTHONIOENCODING": "koi8-r"},
        capture_output=True,
        timeout=300,
    )
    assert (done.returncode, done.stderr) == (
        0,
        b"",
    ) and b"Loop \\xb1" in done.stdout  # Russian letters, and no plus-minus


def test_the_page_that_lies_ready_is_what_the_command_would_print(run, monkeypatch):
    monkeypatch.setenv("COLUMNS", "80")
    asked = subprocess.run([sys.executable, "-m", "workbookgen", "--help"], capture_output=True, text=True, check=True)
    code, printed, _ = run("--help")
    assert code == 0 and asked.stdout == printed and "carry" in printed


def test_a_command_seldom_looks_for_dead_objects():
    """It would spend a tenth of its time on it."""
    asked = "import gc, workbookgen.__main__; print(gc.get_threshold()[0])"
    assert int(subprocess.run([sys.executable, "-c", asked], cwd=ROOT, capture_output=True, text=True).stdout) >= 10_000


def test_help_loads_nothing_that_it_does_not_need():
    loaded = "import sys; sys.argv = ['workbookgen', '--help']; from workbookgen.__main__ import main; main(); print(sorted(sys.modules))"
    told = subprocess.run([sys.executable, "-c", loaded], capture_output=True, text=True, check=True).stdout
    assert "Usage: workbookgen" in told and not any(
        f"'{name}'" in told for name in ("click", "pint", "pandas", "numpy", "workbookgen.cli")
    )
