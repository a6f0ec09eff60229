"""How often a planner asks "Is it right?" of those who did everything right, and tells them that something is wrong."""

from collections import Counter
from functools import cache

import numpy as np
import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner
from workbookgen.unit_systems import UNIT_SYSTEMS

from .households import Household

HOUSEHOLDS, SEED = 60, 1
OF_THE_SCALE = "so light a"  # true of any small weight on a coarse scale, and told to be weighed better
MOST_LINES = 0.01  # of all lines typed
MOST_OF_A_KIND = 0.04  # of the lines of a log, for any one question


@cache
def told(system: str) -> tuple[Counter, Counter]:
    """How many lines the households typed into each log, and how often each log told each sentence."""
    described = planner(Settings(units=system))
    houses = [Household(described, np.random.default_rng([SEED, number])) for number in range(HOUSEHOLDS)]
    typed, scenarios = Counter(), []
    for house in houses:
        typed.update({log: len(records) for log, records in house.logs.items()})
        scenarios.append(entries_with(described, house.logs))
    keys = [f"{log}_message" for log in typed]
    said = Counter(
        (key.removesuffix("_message"), message)
        for values in expected_of_keys(described, scenarios, keys)
        for key in keys
        for message in values[key]
        if message
    )
    return typed, said


@pytest.mark.parametrize("system", UNIT_SYSTEMS)
def test_who_does_everything_right_is_asked_little(system):
    typed, said = told(system)
    asked = Counter({each: times for each, times in said.items() if each[1].startswith("Is it right?")})
    by_the_way = sum(times for (_, sentence), times in asked.items() if OF_THE_SCALE not in sentence)
    assert by_the_way <= MOST_LINES * typed.total(), asked.most_common()
    for (log, sentence), times in asked.items():
        assert OF_THE_SCALE in sentence or times <= max(2, MOST_OF_A_KIND * typed[log]), (
            log,
            sentence,
            times,
            typed[log],
        )


@pytest.mark.parametrize("system", UNIT_SYSTEMS)
def test_nothing_is_wrong_with_what_they_typed(system):
    _, said = told(system)
    wrong = [each for each in said if not each[1].startswith(("Is it right?", "No answer yet", "Still to fill in"))]
    assert wrong == []
