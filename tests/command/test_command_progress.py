"""What takes longer than a moment says how far it is, where somebody is looking."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

import workbookgen
from workbookgen.build import STEPS, build

pty = pytest.importorskip("pty", reason="a terminal can be played only where there are such")


def seen_on_a_terminal(*words: str) -> str:
    """What the command writes to standard error when that is a terminal."""
    ours, theirs = pty.openpty()
    root = str(Path(workbookgen.__file__).parent.parent)
    process = subprocess.Popen(
        [sys.executable, "-m", "workbookgen", *words],
        stderr=theirs,
        stdout=subprocess.PIPE,
        env=os.environ | {"PYTHONPATH": root, "TERM": "xterm"},
    )
    os.close(theirs)
    seen = b""
    try:
        while piece := os.read(ours, 4096):
            seen += piece
    except OSError:  # Linux says so where others say nothing more
        pass
    os.close(ours)
    process.communicate()
    assert process.returncode == 0, seen
    return seen.decode()


def test_building_and_checking_show_how_far_they_are(little, tmp_path):
    settings, planner = tmp_path / "small.toml", tmp_path / "planner.xlsx"
    settings.write_text(little.as_toml(), encoding="utf-8")
    shown = seen_on_a_terminal("build", "--settings", str(settings), "-o", str(planner))
    assert "Building" in shown and "25%" in shown and "100%" in shown
    shown = seen_on_a_terminal("check", str(planner), "--scenarios", "2")
    assert "Checking" in shown and "50%" in shown and "100%" in shown


def test_gathering_shows_how_far_it_is(little_file, tmp_path):
    shown = seen_on_a_terminal("gather", *[str(little_file)] * 20, "-o", str(tmp_path / "guild.csv"))
    assert "Reading" in shown and "100%" in shown


def test_every_step_of_a_build_is_counted(little, tmp_path):
    counted = []
    build(little, tmp_path / "planner.xlsx", step=lambda: counted.append(1))
    assert len(counted) == STEPS
