"""Asked to stop while further processes try their shares of a check: one sentence, and nothing is left of any of
them."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from workbookgen.processes import cores

ROOT = Path(__file__).parents[2]
pytestmark = [
    pytest.mark.skipif(
        not Path("/proc/self/task").exists(),
        reason="NOT TRIED: this system does not tell which processes another one started",
    ),
    pytest.mark.skipif(cores() < 2, reason="NOT TRIED: on a single core nothing is divided"),
]


def processes_of(group: int) -> list[int]:
    """All that run in a process group, which the command shares with what it starts."""
    found = []
    for each in Path("/proc").iterdir():
        try:
            state, _, its_group = (each / "stat").read_text().rpartition(")")[2].split()[:3]
        except (OSError, ValueError):
            continue
        if int(its_group) == group and state != "Z":
            found.append(int(each.name))
    return found


def helper_of(command: subprocess.Popen) -> int:
    """The process that tries a share, as soon as it is there."""
    until = time.monotonic() + 120
    while time.monotonic() < until and command.poll() is None:
        for each in processes_of(command.pid):
            if b"spawn_main" in Path(f"/proc/{each}/cmdline").read_bytes():
                return each
        time.sleep(0.01)
    raise AssertionError("no process was started")


def heeding() -> None:
    """As from a terminal: what a shell runs in the background ignores Control-C, and so would all that it starts."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


@pytest.fixture
def checking(little_file, tmp_path):
    """A check of many sets under way, its helper, and how it ends: the exit code, what it said, what runs still,
    what lies about."""
    (tmp_path / "temporary").mkdir()
    command = subprocess.Popen(
        [sys.executable, "-m", "workbookgen", "check", little_file, "--scenarios", "4000"],
        cwd=ROOT,
        start_new_session=True,
        env=os.environ | {"TMPDIR": str(tmp_path / "temporary")},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        preexec_fn=heeding,
    )

    def ended():
        out, err = command.communicate(timeout=120)
        time.sleep(0.2)  # until what follows the processes about is gone too
        return command.returncode, out, err, processes_of(command.pid), os.listdir(tmp_path / "temporary")

    yield command, helper_of(command), ended
    if command.poll() is None:
        os.killpg(command.pid, signal.SIGKILL)


@pytest.mark.parametrize("after", [0.0, 0.4, 2.0])
def test_control_c(checking, after):
    """A terminal sends it to every process there: also to a helper that is just starting, or at work."""
    command, _, ended = checking
    time.sleep(after)
    os.killpg(command.pid, signal.SIGINT)
    assert ended() == (2, "", "\nStopped.\n", [], [])  # the terminal has shown ^C on that line


STARTED_BY_HALF = """
import os, signal, sys, threading, time
from functools import partial
from multiprocessing import resource_tracker, util
from workbookgen.processes import helpers

spawn = util.spawnv_passfds

def and_a_request(*words):
    started = spawn(*words)
    os.kill(os.getpid(), signal.{name})
    time.sleep(0.2)  # until it has reached whichever thread it reaches
    return started

def nothing():
    pass

if __name__ == "__main__":
    resource_tracker.ensure_running()  # which is started like the helper
    util.spawnv_passfds = and_a_request
    signal.signal(signal.{name}, signal.default_int_handler)
    threading.Thread(target=threading.Event().wait, daemon=True).start()  # which gets the request that the main thread lets wait
    try:
        with helpers([partial(sorted, "ba")], nothing):
            print("went on")
    except KeyboardInterrupt:
        print("stopped")
"""


@pytest.mark.parametrize("name", ["SIGINT", "SIGTERM", "SIGHUP"])
def test_a_request_between_the_start_of_a_helper_and_its_work(tmp_path, name):
    """It waits until the helper can end by itself; which thread of the process gets the signal does not matter."""
    (tmp_path / "started.py").write_text(STARTED_BY_HALF.format(name=name))
    done = subprocess.run(
        [sys.executable, tmp_path / "started.py"],
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        timeout=60,
        preexec_fn=heeding,
    )
    assert (done.returncode, done.stdout, done.stderr) == (0, "stopped\n", "")


def test_a_request_to_the_command_alone(checking):
    command, _, ended = checking
    time.sleep(1.5)
    command.terminate()
    assert ended() == (2, "", "\nStopped.\n", [], [])  # the terminal has shown ^C on that line


def test_a_helper_that_is_killed(checking):
    _, helper, ended = checking
    time.sleep(1.5)
    os.kill(helper, signal.SIGKILL)
    code, out, err, running, lying = ended()
    assert (code, out, running, lying) == (2, "", [], [])
    assert err.startswith("A process that did part of the work was stopped from outside") and err.count("\n") == 1
