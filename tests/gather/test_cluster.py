"""The same readers on a Dask cluster: a local one, of two worker processes."""

import os
import signal
import threading

import pytest

from workbookgen.errors import FileError
from workbookgen.gather.gathered import gather
from workbookgen.gather.workers import cluster

from .invented import copies

distributed = pytest.importorskip("distributed")


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    return copies(tmp_path_factory.mktemp("federation"), 40, "us")


@pytest.fixture(scope="module")
def federation():
    with distributed.LocalCluster(n_workers=2, threads_per_worker=1, processes=True, dashboard_address=None) as local:
        yield local


@pytest.fixture(scope="module")
def expected(files, here):
    return gather(files, here)


def test_a_cluster_gives_the_same_tables(files, federation, expected):
    steps = []
    gathered = gather(files, cluster(federation.scheduler_address), steps.append)
    assert all(gathered.tables[name].equals(expected.tables[name]) for name in expected.tables)
    assert gathered.planners.equals(expected.planners)
    assert sum(steps) == 40


def test_a_worker_killed_half_way_loses_nothing(files, federation, expected):
    victim = next(iter(federation.workers.values())).pid
    killed = threading.Event()

    def kill_one(count: int) -> None:
        if not killed.is_set():  # some are read, the others are not
            os.kill(victim, signal.SIGKILL)
            killed.set()

    gathered = gather(files, cluster(federation.scheduler_address), kill_one)
    assert killed.is_set() and not gathered.unread
    assert all(gathered.tables[name].equals(expected.tables[name]) for name in expected.tables)


def test_no_cluster_is_told(monkeypatch, files):
    monkeypatch.setattr("workbookgen.gather.workers.PATIENCE", 1)
    with pytest.raises(FileError, match="no cluster answers at tcp://127.0.0.1:9"):
        gather(files, cluster("tcp://127.0.0.1:9"))
