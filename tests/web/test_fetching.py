"""How the command that runs all tests gets HyperFormula, and what it says where it cannot.

npm is played by a small script.
"""

import os
import sys

import pytest

import run_all


@pytest.fixture
def clone(tmp_path, monkeypatch):
    """A folder with a lock, and an npm before all others that does what it is told."""
    (tmp_path / "package-lock.json").write_text("{}")
    monkeypatch.setattr(run_all, "WEB", tmp_path)
    monkeypatch.setenv("PATH", f"{tmp_path / 'bin'}{os.pathsep}{os.environ['PATH']}")
    (tmp_path / "bin").mkdir()

    def npm(script):
        (tmp_path / "bin" / "npm").write_text(f"#!/bin/sh\n{script}\n")
        (tmp_path / "bin" / "npm").chmod(0o755)

    npm("echo run >> runs && mkdir -p node_modules && echo > node_modules/.package-lock.json")
    return tmp_path, npm


def test_it_is_fetched_once_and_again_after_a_newer_lock(clone):
    folder, _ = clone
    assert run_all.fetched() and run_all.fetched()
    assert (folder / "runs").read_text() == "run\n"
    later = (folder / "node_modules" / ".package-lock.json").stat().st_mtime + 10
    os.utime(folder / "package-lock.json", (later, later))
    assert run_all.fetched()
    assert (folder / "runs").read_text() == "run\nrun\n"


class Run:
    """In place of pytest: what it was told."""

    returncode = 0


@pytest.mark.parametrize(("programs", "left_out"), [([], "not web"), (["LibreOffice"], "not programs")])
def test_where_it_cannot_be_had_it_is_not_tried(clone, monkeypatch, capfd, programs, left_out):
    _, npm = clone
    npm("echo 'npm: no way out' >&2; exit 1")
    told, run = [], run_all.subprocess.run
    monkeypatch.setattr(run_all, "python_with", lambda extra: "python-of-the-tests")
    monkeypatch.setattr(run_all, "missing", lambda: programs)
    monkeypatch.setattr(run_all, "without", lambda commands: [])
    monkeypatch.setattr(run_all, "install", lambda packages: None)
    monkeypatch.setattr(
        run_all.subprocess,
        "run",
        lambda words, **how: told.append(words) or Run() if words[0] == "python-of-the-tests" else run(words, **how),
    )
    monkeypatch.setattr(sys, "argv", ["run_all.py"])
    assert run_all.main() == 3
    assert told[0][-2:] == ["-m", left_out]
    said = capfd.readouterr().out
    assert f"NOT TRIED: {', '.join([*programs, 'HyperFormula'])} is missing" in said and said.endswith(
        "HyperFormula.\n"
    )


def test_without_node_its_packages_are_asked_for(monkeypatch):
    asked = []
    monkeypatch.setattr(run_all, "python_with", lambda extra: "python-of-the-tests")
    monkeypatch.setattr(run_all, "missing", list)
    monkeypatch.setattr(run_all, "without", lambda commands: list(commands.values()))
    monkeypatch.setattr(run_all, "install", asked.append)
    monkeypatch.setattr(run_all.subprocess, "run", lambda words, **how: Run())
    assert run_all.main() == 3
    assert asked == [("nodejs", "npm")]


def test_the_quick_ones_are_there_and_need_no_program(monkeypatch):
    told = []
    monkeypatch.setattr(run_all, "python_with", lambda extra: "python-of-the-tests")
    monkeypatch.setattr(run_all.subprocess, "run", lambda words, **how: told.append(words) or Run())
    monkeypatch.setattr(sys, "argv", ["run_all.py", "--quick", "-x"])
    assert run_all.main() == 0
    [words] = told
    assert words[0] == "python-of-the-tests" and words[-1] == "-x" and {*run_all.QUICK} < {*words}
    files = [
        file
        for each in run_all.QUICK
        for path in [run_all.ROOT / each]
        for file in (path.rglob("test_*.py") if path.is_dir() else [path])
    ]
    assert len(files) > 15 and [file for file in files if "mark.programs" in file.read_text(encoding="utf-8")] == []
