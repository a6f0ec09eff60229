"""Which chapters a planner of the tests leaves out.

Most tests try what is the same in any planner, and each takes as long as its planner. That all
chapters are right in all engines is tried where all are needed: `small` and `layout` in conftest.py.
"""

from typing import get_args

from workbookgen.settings import IN_SMALL, Leavable


def all_but(*staying: str) -> tuple[str, ...]:
    """The chapters that can go, but for those of a small planner and these."""
    return tuple(name for name in get_args(Leavable) if name not in (*IN_SMALL, *staying))
