"""The benchmarks: python3 tests/bench/run.py [building checking opening growing gathering starting]

Prints a table of ratios, each of two things measured in this run. Growing takes several
minutes. The exit code is 1 where an aim is missed.
"""

import os
import sys
import tempfile
from importlib import import_module
from pathlib import Path

HERE = Path(__file__).resolve().parent
PARTS = ("starting", "building", "checking", "opening", "gathering", "growing")


def main(wanted: list[str]) -> int:
    missed = 0
    for part in wanted or PARTS:
        module = import_module(part)
        print(module.__doc__.splitlines()[0], flush=True)
        with tempfile.TemporaryDirectory(prefix="workbookgen-bench-") as folder:
            for figure in module.figures(Path(folder)):
                print(figure, flush=True)
                missed += figure.verdict == "MISSED"
    print(f"{missed} aims missed." if missed else "Every aim is met.")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.path[:0] = [str(HERE), str(HERE.parent.parent)]
    unknown = set(sys.argv[1:]) - set(PARTS)
    if unknown:
        sys.exit(f"There is no benchmark {', '.join(sorted(unknown))}. Choose from {', '.join(PARTS)}.")
    os.chdir(HERE.parent.parent)
    sys.exit(main(sys.argv[1:]))
