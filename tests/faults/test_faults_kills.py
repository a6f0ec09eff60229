"""Stopped at any moment: the old planner or the new one, whole, and nothing lying about.

The stops are real signals to real processes, at random moments over the whole of a run.
"""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from long_run import drawn
from workbookgen.build import layout_of, workbook

from .killing import SETTINGS

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="NOT TRIED: this system cannot fork")
SCRIPT = Path(__file__).with_name("killing.py")


@pytest.fixture(scope="module")
def planner():
    return workbook(layout_of(SETTINGS)).decode("latin-1")


@pytest.fixture
def stopped(tmp_path, planner):
    (tmp_path / "temporary").mkdir()

    def stopping(mode: str, signal: str, times: int) -> tuple[dict, str]:
        done = subprocess.run(
            [sys.executable, "-W", "error::DeprecationWarning", SCRIPT, mode, signal, str(times), "1", tmp_path],
            input=json.dumps({"planner": planner if mode == "save" else ""}),
            capture_output=True,
            text=True,
            timeout=600,
            env=os.environ
            | {"TMPDIR": str(tmp_path / "temporary"), "PYTHONPATH": os.pathsep.join(filter(None, sys.path))},
        )
        assert done.returncode == 0, done.stderr + (tmp_path / "said.txt").read_text()
        return json.loads(done.stdout), (tmp_path / "said.txt").read_text()

    return stopping


def test_killed_while_it_saves(stopped):
    found, said = stopped("save", "SIGKILL", 200)
    assert said == "" and found["half"] == 0 and found["old"] + found["new"] == 200
    # The kills fell before, into, and after the saving; each run cleared away what the one before had left.
    assert found["killed"] > 50 and found["old"] > 20 and found["new"] > 20 and found["drafts"] > 5
    assert found["many drafts"] == 0 and found["left"] == 0 and found["whole"]


def test_killed_while_it_builds(stopped):
    times = drawn(8, 24)
    found, said = stopped("build", "SIGKILL", times)
    assert said == "" and found["half"] == 0 and found["old"] + found["new"] == times
    # How many fall into the run depends on what else keeps this machine busy; some always do.
    assert found["killed"] >= times // 4 and found["left"] == 0 and found["whole"]


@pytest.mark.parametrize("signal", ["SIGINT", "SIGTERM", "SIGHUP"])
def test_asked_to_stop(stopped, signal):
    """It says so, and leaves neither drafts nor temporary files."""
    times = drawn(4, 8)
    found, said = stopped("build", signal, times)
    assert found["half"] == 0 and found["old"] + found["new"] == times
    assert {what: found[what] for what in ("drafts", "left", "temporary")} == {"drafts": 0, "left": 0, "temporary": 0}
    assert found["whole"]
    assert found["stopped"] >= times // 4 and found["stopped"] + found["finished"] == times
    assert set(said.split("\n")) <= {"Stopped.", ""} and said.count("Stopped.") == found["stopped"]
