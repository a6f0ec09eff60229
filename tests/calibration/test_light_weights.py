"""Lengths wound off and weighed on the scales people have: who is asked nothing has the grist to 5%.

True weights are drawn over three decades; a scale shows the nearest of its steps. The rule of the sheet is not copied:
it is only seen whether it asks.
"""

import numpy as np
import pytest

from workbookgen.checking.expected import expected_of_keys
from workbookgen.language.entries import starting_entries
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner

WORLDS, SEED = 400, 5
STEPS = {"us": (0.1, 0.05, 0.01), "us-grams": (1.0, 0.1), "metric": (1.0, 0.1)}  # of kitchen and letter scales
HEAVIEST = {"us": 4.0, "us-grams": 100.0, "metric": 100.0}


@pytest.mark.parametrize("system", STEPS)
def test_who_is_asked_nothing_has_the_grist_to_a_twentieth(system):
    described, drawn = planner(Settings(units=system)), np.random.default_rng([SEED, len(system)])
    true = HEAVIEST[system] * 10 ** drawn.uniform(-3, 0, WORLDS)
    steps = drawn.choice(STEPS[system], WORLDS)
    shown = np.round(np.round(true / steps) * steps, 9)
    weighed = shown > 0
    true, shown = true[weighed], shown[weighed]
    length = 1000 * HEAVIEST[system]  # fine enough that no yarn is a rope
    scenarios = [
        starting_entries(described) | {"weighed_length": (length,), "weighed_mass": (float(mass),)} for mass in shown
    ]
    told = expected_of_keys(described, scenarios, ["weighed_message", "weighed_tex"])
    asked = np.array(["so light a length" in (values["weighed_message"][0] or "") for values in told])
    off = np.abs(shown / true - 1)
    assert off[~asked].max() <= 0.05 / 0.95 + 1e-9 and asked.any() and (~asked).sum() > WORLDS / 4
    assert (off[asked] > 0.05).mean() > 0.2, "and it is not asked for nothing"
    assert all(values["weighed_tex"][0] > 0 for values in told), "what was weighed is reckoned with"
