import pytest

from planners import opened


@pytest.fixture(scope="session")
def book(blank):
    """The default planner as openpyxl reads it, to be looked at only."""
    return opened(blank)
