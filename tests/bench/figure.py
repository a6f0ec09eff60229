"""What a benchmark says: a figure beside what it is held against, and how to take one.

Machines differ, so only the ratio of two things measured in the same run is held to an aim.
A time is the processor's, of the process and of those it started: what else the machine
does then hardly matters. It is the best of a few tries, since disturbance only ever adds.
"""

import json
import os
import resource
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.dirname(os.path.dirname(HERE))
ALONE = os.path.join(HERE, "alone.py")
TRIES = 3  # of both sides of a ratio


@dataclass(frozen=True)
class Figure:
    """One line of the table. `base` is what it is measured against; `aim` the most that is wanted of the quotient."""

    what: str
    measured: float
    unit: str = "s"
    against: str = ""
    base: float | None = None
    aim: float | None = None

    @property
    def quotient(self) -> float:
        return self.measured / self.base if self.base else self.measured

    @property
    def verdict(self) -> str:
        return "" if self.aim is None else "met" if self.quotient <= self.aim else "MISSED"

    def __str__(self) -> str:
        shown = f"{self.measured:>10,.3f} {self.unit:<3}"
        ratio = f"{self.quotient:>7.2f} x {self.against}" if self.base else ""
        wanted = f" (aim {self.aim:g}: {self.verdict})" if self.aim is not None else ""
        return f"  {self.what:<44}{shown}{ratio}{wanted}"


def seconds(work: Callable[[], object], tries: int = TRIES) -> float:
    """The shortest time that the work took."""
    return min(timed(work)[0] for _ in range(tries))


def timed(work: Callable[[], object]) -> tuple[float, object]:
    began = busy()
    outcome = work()
    return busy() - began, outcome


def busy() -> float:
    """Seconds that processors have spent on this process, and on those it started that have ended."""
    used = (resource.getrusage(whose) for whose in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
    return sum(each.ru_utime + each.ru_stime for each in used)


def command(*words: str, tries: int = 1) -> tuple[float, float]:
    """Seconds and peak memory in MB of a run of Python with these words, in a process of its own: the least of a few
    tries."""
    runs = [_command(*words) for _ in range(tries)]
    return min(taken for taken, _ in runs), min(memory for _, memory in runs)


def _command(*words: str) -> tuple[float, float]:
    done = subprocess.run(
        [sys.executable, ALONE, *words], capture_output=True, text=True, env=os.environ | {"PYTHONPATH": ROOT}
    )
    if done.returncode:
        raise RuntimeError(f"python {' '.join(words)} ended with {done.returncode}: {done.stderr}")
    taken, memory = json.loads(done.stdout)
    return taken, memory


def workbookgen(*words: str, tries: int = 1) -> tuple[float, float]:
    """Seconds and peak memory of our command."""
    return command("-m", "workbookgen", *words, tries=tries)
