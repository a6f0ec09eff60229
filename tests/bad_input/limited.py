"""Runs the command on files, each run in a forked process with little memory and little time.

A script, since no thread of its process may be at work when it forks (numpy and pyarrow keep one each, which wait):
file names and commands come as JSON, and so do the outcomes go. Every run may use 10 seconds of the processor and 1.5
GB; carrying over may take longer, since it looks at every cell that a person may have filled.
"""

import gc
import json
import os
import resource
import sys
import tempfile
import time
from importlib import import_module

from workbookgen import cli
from workbookgen.build import layout_of
from workbookgen.settings import Settings

gc.set_threshold(50_000)  # as the command does
for module in ("blank", "carry.carry", "checking.check", "fields", "gather.files", "gather.gathered", "planner_file"):
    import_module(f"workbookgen.{module}")  # so that no run has to load it
layout_of(Settings(size="small"))  # nor to work out what is the same for every planner

SECONDS = {"carry": 40}
BYTES = 1_500 * 2**20


def run(arguments: list[str]) -> dict:
    """What a run ends with, what it says, and what it needs."""
    seconds = SECONDS.get(arguments[0], 10)
    with tempfile.TemporaryFile() as out, tempfile.TemporaryFile() as err:
        began = time.perf_counter()
        child = os.fork()
        if not child:
            os.dup2(out.fileno(), 1)
            os.dup2(err.fileno(), 2)
            code = 99
            try:
                resource.setrlimit(resource.RLIMIT_AS, (BYTES, BYTES))
                resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds + 1))
                cli.main(arguments)
                code = 0
            except SystemExit as end:
                code = end.code or 0
            except BaseException as escaped:
                os.write(2, f"Traceback: {escaped!r}".encode())
            finally:
                sys.stdout.flush()
                sys.stderr.flush()
                os._exit(code)
        _, status, used = os.wait4(child, 0)
        texts = []
        for stream in (out, err):
            stream.seek(0)
            texts.append(stream.read().decode("utf-8", "replace"))
    return {
        "code": os.waitstatus_to_exitcode(status),
        "out": texts[0],
        "err": texts[1],
        "seconds": used.ru_utime + used.ru_stime,
        "elapsed": time.perf_counter() - began,
        "megabytes": used.ru_maxrss / 1024,
    }


def main() -> None:
    asked = json.load(sys.stdin)
    told = os.fdopen(os.dup(1), "w")
    json.dump([run(arguments) for arguments in asked], told)
    told.flush()


if __name__ == "__main__":
    main()
