"""Executors of every kind give the same tables, and a worker that dies loses nothing."""

import multiprocessing
import os
import signal
from concurrent.futures import ProcessPoolExecutor, ThreadPoolExecutor
from pathlib import Path

import pandas as pd
import pytest

from workbookgen.errors import FileError
from workbookgen.gather import workers
from workbookgen.gather.gathered import gather
from workbookgen.gather.reading import read_batch
from workbookgen.gather.workers import Engine

from .invented import copies


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    """Twenty planners that differ in the name of a lot."""
    return copies(tmp_path_factory.mktemp("twenty"), 20, "metric")


@pytest.fixture(scope="module")
def expected(files, here):
    return gather(files, here)


def same(one, other) -> bool:
    return all(one.tables[name].equals(other.tables[name]) for name in one.tables) and one.planners.equals(
        other.planners
    )


def deadly_once(marker: str, batch):
    """A worker that is killed in the middle of its work, the first time that it meets file 11."""
    if any(number == 11 for number, _ in batch) and not Path(marker).exists():
        Path(marker).write_text("killed")
        os.kill(os.getpid(), signal.SIGKILL)
    return read_batch(batch)


def deadly_always(batch):
    """A worker that file 11 kills every time, as one that needs more memory than there is would."""
    if any(number == 11 for number, _ in batch):
        os.kill(os.getpid(), signal.SIGKILL)
    return read_batch(batch)


class Instead:
    """An executor whose workers run another reader."""

    def __init__(self, executor, reader, *before):
        self.executor, self.reader, self.before = executor, reader, before

    def __enter__(self):
        self.executor.__enter__()
        return self

    def __exit__(self, *ending):
        self.executor.__exit__(*ending)

    def submit(self, _, batch):
        return self.executor.submit(self.reader, *self.before, batch)


def test_twenty_planners_in_order(expected, files):
    assert expected.tables["lots"]["lot"].tolist() == [f"Lot {number}" for number in range(20)]
    assert expected.planners["file"].tolist() == [file.name for file in files]


def test_the_pool_of_this_machine_gives_the_same(files, expected):
    steps = []
    assert same(gather(files, step=steps.append), expected)
    assert sum(steps) == 20


def test_workers_need_nothing_from_their_parent(files, expected):
    # As on Windows and macOS, where a worker starts from nothing.
    engine = Engine(lambda: ProcessPoolExecutor(2, mp_context=multiprocessing.get_context("spawn")), 4)
    assert same(gather(files, engine), expected)


def test_order_does_not_come_from_who_is_first(files, expected):
    assert same(gather(files, Engine(lambda: ThreadPoolExecutor(4), 8)), expected)


def test_a_worker_killed_half_way_loses_nothing(files, expected, tmp_path):
    marker, steps = tmp_path / "marker", []
    engine = Engine(lambda: Instead(ProcessPoolExecutor(2), deadly_once, str(marker)), 4)
    assert same(gather(files, engine, steps.append), expected)
    assert marker.exists()
    assert sum(steps) == 20


def test_a_file_that_kills_its_worker_is_given_up_and_the_others_are_read(files, expected):
    steps = []
    gathered = gather(files, Engine(lambda: Instead(ProcessPoolExecutor(2), deadly_always), 4), steps.append)
    assert [str(fault) for fault in gathered.unread] == [f"11.xlsx: {workers.GIVEN_UP}"]
    assert gathered.tables["lots"]["lot"].tolist() == [f"Lot {number}" for number in range(20) if number != 11]
    assert gathered.planners["planner"].tolist() == list(range(1, 20))
    assert sum(steps) == 20


def test_workers_that_never_start_are_told(files):
    class Stillborn(Instead):
        def submit(self, *arguments):
            raise workers.BrokenExecutor()

    with pytest.raises(FileError, match="cannot be started"):
        gather(files, Engine(lambda: Stillborn(ThreadPoolExecutor(1), read_batch), 4))


def test_no_more_processes_than_work_or_cores(monkeypatch):
    monkeypatch.setattr(workers, "cores", lambda: 4)
    assert [workers.this_machine(files).batches for files in (1, 16, 17, 1000)] == [2, 2, 4, 8]


@pytest.mark.parametrize(
    "files, batches", [(1, [1]), (16, [16]), (40, [20, 20]), (64, [32, 32]), (65, [17, 17, 17, 14]), (200, [25] * 8)]
)
def test_every_process_gets_as_much(files, batches, monkeypatch):
    monkeypatch.setattr(workers, "cores", lambda: 2)
    size = workers.this_machine(files).a_batch
    assert [min(size, files - start) for start in range(0, files, size)] == batches


@pytest.mark.parametrize("count", [0, 1])
def test_frames_of_a_batch_have_the_kinds_of_the_whole(files, count):
    batch = read_batch([(number, str(file)) for number, file in enumerate(files[:count])])
    assert all(
        str(frame["planner"].dtype) == "int64" and pd.api.types.is_string_dtype(frame["message"])
        for frame in batch.tables.values()
    )
