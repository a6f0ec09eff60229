"""Reading files in parallel, through Python's executor interface, so that the engine can be exchanged.

On one machine a pool of processes reads, one per core; for a federation of guilds the same calls go to a Dask
cluster. Only a few batches are in progress at a time, which limits the memory, and the number of files that may be to
blame when a worker dies. Those are then read again one by one, and a file that stops its worker a second time is given
up. The order of the rows is that of the files, whichever worker is first.
"""

from collections import deque
from collections.abc import Callable, Sequence
from concurrent.futures import FIRST_COMPLETED, BrokenExecutor, Executor, Future, ProcessPoolExecutor, wait
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass
from math import ceil
from pathlib import Path

from workbookgen.errors import FileError
from workbookgen.gather.reading import Batch, FileReport, named, read_batch
from workbookgen.gather.records import blocks_needed
from workbookgen.processes import cores

# Files that make it worth starting a process. Planners of one kind are calculated together, so a few at a time are
# faster than one.
A_BATCH = 16
MOST_IN_A_BATCH = 32
MOST_PROCESSES = 61  # Windows cannot wait for more
BATCHES_ON_A_CLUSTER = 512  # in progress at a time
PATIENCE = 20  # seconds that a cluster has to answer
GIVEN_UP = (
    "reading this file stopped the program twice, perhaps because memory ran out. "
    "Close other programs, and gather again."
)

Numbered = tuple[int, str]


@dataclass(frozen=True)
class Engine:
    """A way to read: how to open an executor, also after one broke, and how many batches it takes at a time."""

    open: Callable[[], AbstractContextManager[Executor]]
    batches: int
    a_batch: int = A_BATCH  # files


def this_machine(files: int) -> Engine:
    """A pool of processes, one per core but no more than there is work for, and batches of equal size."""
    processes = max(1, min(cores(), MOST_PROCESSES, ceil(files / A_BATCH)))
    rounds = max(1, ceil(files / (processes * MOST_IN_A_BATCH)))
    return Engine(lambda: ProcessPoolExecutor(processes), 2 * processes, max(1, ceil(files / (processes * rounds))))


def cluster(address: str) -> Engine:
    """The workers of a Dask cluster, all of which must see the files under the same paths."""
    try:
        from distributed import Client
    except ImportError:
        how = 'a cluster needs one more package: python -m pip install "workbookgen[cluster]".'
        raise FileError.at("--cluster", how) from None

    @contextmanager
    def connected():
        try:
            client = Client(address, timeout=PATIENCE, set_as_default=False)
        except (OSError, ValueError) as problem:
            raise FileError.at(
                "--cluster", f"no cluster answers at {address} ({problem}). Start it, or correct the address."
            ) from None
        with client:
            yield client.get_executor(pure=False)

    return Engine(connected, BATCHES_ON_A_CLUSTER)


def read_all(files: Sequence[str], engine: Engine, step: Callable[[int], None]) -> list[Batch]:
    """Read all files; their numbers are their places in the list. `step` is told how many more are done."""
    numbered = list(enumerate(files))
    waiting = deque(numbered[start : start + engine.a_batch] for start in range(0, len(numbered), engine.a_batch))
    blocks_needed()  # cached now, so that forked processes have it
    batches, doubtful = _rounds(waiting, engine, engine.batches, step)
    again, lost = _rounds(deque([each] for each in sorted(doubtful)), engine, 1, step)
    given_up = [Batch({}, (FileReport(number, named(Path(path)), fault=GIVEN_UP),)) for number, path in lost]
    step(len(lost))
    return sorted(batches + again + given_up, key=lambda batch: batch.reports[0].number)


def _rounds(
    waiting: deque, engine: Engine, most: int, step: Callable[[int], None]
) -> tuple[list[Batch], list[Numbered]]:
    """Have batches read, with a new executor whenever one breaks."""
    read: list[Batch] = []
    lost: list[Numbered] = []
    while waiting:
        left = len(waiting)
        with engine.open() as executor:
            done, gone = _work(executor, waiting, most, step)
        read, lost = read + done, lost + gone
        if len(waiting) == left:
            raise FileError.at(
                "gather", "the processes that read the files cannot be started. Close other programs, and try again."
            )
    return read, lost


def _work(
    executor: Executor, waiting: deque, most: int, step: Callable[[int], None]
) -> tuple[list[Batch], list[Numbered]]:
    """Have batches read until none waits or the executor breaks: those that were read, and the files of the others."""
    read: list[Batch] = []
    lost: list[Numbered] = []
    running: dict[Future, list[Numbered]] = {}
    is_broken = False
    while running or (waiting and not is_broken):
        while waiting and len(running) < most and not is_broken:
            try:
                running[executor.submit(read_batch, waiting[0])] = waiting[0]
                waiting.popleft()
            except BrokenExecutor:
                is_broken = True
        for future in wait(running, return_when=FIRST_COMPLETED).done:
            batch = running.pop(future)
            try:
                read.append(future.result())
                step(len(batch))
            except Exception as problem:  # every engine has its own error for a worker that died
                lost += batch
                is_broken = is_broken or isinstance(problem, BrokenExecutor)
    return read, lost
