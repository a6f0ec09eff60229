"""How much is drawn: a sample of it at each push, all of it in a long run.

    WORKBOOKGEN_LONG=1 python3 tests/run_all.py

takes an hour or two; CI can be asked for it by the same variable.
"""

import os

LONG = bool(os.environ.get("WORKBOOKGEN_LONG"))


def drawn(at_a_push: int, in_a_long_run: int) -> int:
    """How many cases to draw."""
    return in_a_long_run if LONG else at_a_push
