"""Runs of the generator, each in a forked process of its own that is stopped at a random moment.

A script, since a process that is to be forked must not have started threads, as test runs
may have: `python killing.py MODE SIGNAL TIMES SEED FOLDER` prints what was found, as JSON.
MODE `build` is a whole build by the command; `save` is a build of which only the saving is
left to do, so that every moment of that is hit.
"""

import gc
import json
import os
import random
import select
import signal
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path
from typing import get_args

from workbookgen import build, cli
from workbookgen.filled import replacing
from workbookgen.settings import Leavable, Reel, Rows, Settings

gc.set_threshold(50_000)  # as the command does
OLD = b"the old planner, as it was\n" * 4_000
SETTINGS = Settings(
    leave_out=get_args(Leavable),
    fibers="",
    rows=Rows(**dict.fromkeys(Rows.model_fields, 2)),
    reels=(Reel(name="Clock reel", loop="72 in"),),
)


def forked(work) -> tuple[int, int]:
    """Start work in a process of its own; its number, and a pipe that tells when it begins."""
    reader, writer = os.pipe()
    child = os.fork()
    if child:
        os.close(writer)
        return child, reader
    os.close(reader)
    code = 1
    try:
        os.write(writer, b"begun")
        work()
        code = 0
    except SystemExit as end:
        code = end.code or 0
    finally:
        sys.stdout.flush()
        sys.stderr.flush()
        os._exit(code)


def took(work) -> float:
    """How long the work takes when nobody stops it."""
    child, begun = forked(work)
    os.read(begun, 5)
    began = time.perf_counter()
    os.waitpid(child, 0)
    os.close(begun)
    return time.perf_counter() - began


def main(mode: str, name: str, times: str, seed: str, folder: str) -> None:
    target, chance, found = Path(folder) / "planner.xlsx", random.Random(int(seed)), Counter(old=0, new=0, half=0)
    stop = getattr(signal, name)
    if stop != signal.SIGKILL:  # whoever started the tests may have told them to ignore it, as nohup and a shell's & do
        signal.signal(stop, signal.default_int_handler if stop == signal.SIGINT else signal.SIG_DFL)
    tempfile.gettempdir()  # found by writing a file there, which a stop would leave: Python's doing, so it is done beforehand
    settings = target.with_name("settings.toml")
    settings.write_text(SETTINGS.as_toml(), encoding="utf-8")
    if mode == "save":  # the build is done once, beforehand, in a process that is not forked again
        whole = json.load(sys.stdin)["planner"].encode("latin-1")
        build.workbook = lambda *_, **__: whole
        layout = build.layout_of(SETTINGS)
        build.layout_of = lambda settings: layout
        replacing.require_no_entries = lambda *_, **__: None
    os.dup2(os.open(Path(folder) / "said.txt", os.O_CREAT | os.O_WRONLY | os.O_APPEND), 2)
    sys.stdout.flush()
    told = os.dup(1)
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)

    def work() -> None:
        cli.main(["build", "--settings", str(settings), "-o", str(target)])

    target.write_bytes(OLD)
    lasted = [took(work)]
    new = target.read_bytes()
    for number in range(int(times)):
        if (
            number and not number % 20
        ):  # others on this machine come and go, so what was measured does not hold for long
            target.write_bytes(OLD)
            lasted.append(took(work))
        target.write_bytes(OLD)
        child, begun = forked(work)
        os.read(begun, 5)
        began = time.perf_counter()
        if select.select([begun], [], [], chance.random() * max(lasted[-2:]) * 1.1)[
            0
        ]:  # closed, since it was done already
            lasted.append(time.perf_counter() - began)
        os.kill(child, stop)
        _, status = os.waitpid(child, 0)
        os.close(begun)
        now = target.read_bytes()
        found["old" if now == OLD else "new" if now == new else "half"] += 1
        found["finished"] += os.WIFEXITED(status) and os.WEXITSTATUS(status) == 0
        found["stopped"] += os.WIFEXITED(status) and os.WEXITSTATUS(status) == 2
        found["killed"] += os.WIFSIGNALED(status)
        found["drafts"] += len(drafts := list(target.parent.glob(".workbookgen-*")))
        found["many drafts"] += len(drafts) > 1
    work()  # the next run, which nobody stops
    found["left"] = len(
        {path.name for path in target.parent.iterdir()} - {"planner.xlsx", "settings.toml", "said.txt", "temporary"}
    )
    found["temporary"] = len(os.listdir(tempfile.gettempdir()))
    os.write(told, json.dumps(dict(found) | {"whole": target.read_bytes() == new}).encode())


if __name__ == "__main__":
    main(*sys.argv[1:])
