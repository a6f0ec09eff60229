"""How much is drawn: a sample of it at each push, all of it in a long run.

    WORKBOOKGEN_LONG=1 python3 tests/run_all.py

takes an hour or two; CI can be asked for it by the same variable. A push draws by a seed that
the end of the run shows. It comes from the first two numbers of the version, so that everybody
tries the same cases, and later versions others; WORKBOOKGEN_SEED=N draws by another.
"""

import os
from collections.abc import Iterable, Sequence
from hashlib import sha256
from random import Random

from workbookgen import __version__

LONG = bool(os.environ.get("WORKBOOKGEN_LONG"))


def _seed() -> int:
    given = os.environ.get("WORKBOOKGEN_SEED")
    first = ".".join((*__version__.split(".")[:2], "0"))
    return int(given) if given else int(sha256(first.encode()).hexdigest()[:7], 16)


SEED = _seed()
# Processes that the run starts, and workers, draw the same.
os.environ["WORKBOOKGEN_SEED"] = str(SEED)


def drawn(at_a_push: int, in_a_long_run: int) -> int:
    """How many cases to draw."""
    return in_a_long_run if LONG else at_a_push


def some(cases: Iterable, at_a_push: int) -> list:
    """So many of the cases, in their order; in a long run all of them."""
    cases = list(cases)
    if LONG or at_a_push >= len(cases):
        return cases
    return [cases[place] for place in sorted(Random(SEED).sample(range(len(cases)), at_a_push))]


def dealt(cases: Iterable, hands: Sequence) -> list[tuple]:
    """(hand, case): each case is dealt to one of the hands; in a long run to every one."""
    cases = list(cases)
    if LONG:
        return [(hand, case) for hand in dict.fromkeys(hands) for case in cases]
    turns = [hands[number % len(hands)] for number in range(len(cases))]
    Random(SEED).shuffle(turns)
    return sorted(zip(turns, cases, strict=True), key=lambda pair: hands.index(pair[0]))
