"""Planners to gather, written once; and an engine that reads in this process, which starts at once."""

from concurrent.futures import ThreadPoolExecutor

import pytest

from workbookgen.gather.workers import Engine

from .invented import settings, write_planner


@pytest.fixture(scope="session")
def here():
    """One thread of this process."""
    return Engine(lambda: ThreadPoolExecutor(1), 2)


@pytest.fixture(scope="session")
def folder(tmp_path_factory):
    """The same work, kept in each of the three unit systems."""
    place = tmp_path_factory.mktemp("guild")
    for units in ("metric", "us", "us-grams"):
        write_planner(place / f"{units}.xlsx", settings(units, title=f"In {units}"))
    return place
