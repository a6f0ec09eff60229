"""Who is asked to weigh or to measure once more, and how far off one would be without it: a fleece that is dyed by what
is expected of it, and a sample so short that a tape hides what it shrank by."""

import numpy as np
import pytest

from .answers import give_or_take, said
from .worlds import BREED, SAMPLE_DOUBT, TAPE

FLEECES, PIECES = 1_000, 1_000
WHOLE = 2500.0


def test_a_fleece_that_was_not_weighed_takes_another_dose_of_dye():
    """Of a dose within 5% nobody sees it (common practice, no source): by an expected weight, three fleeces in ten
    get that, and one in seven is off by more than a fifth."""
    draw = np.random.default_rng(49)
    washed = WHOLE * (1 - draw.uniform(0.05, 0.25, FLEECES)) * draw.uniform(0.45, 0.65, FLEECES)
    lots = [{"name": "Expected", "kind": BREED["name"], "state": "raw fleece", "weight": WHOLE}]
    lots.append(lots[0] | {"name": "Weighed", "skirted_weighed": 2125.0, "scoured_weighed": 1200.0})
    lots.append({"name": "Bought washed", "kind": BREED["name"], "state": "washed fiber", "weight": 1200.0})
    [expected, *_] = said({"fiber": lots}, "fiber_scoured")[0]
    off = np.abs(washed / expected - 1)
    assert np.mean(off <= 0.05) < 0.35 and np.mean(off > 0.2) > 0.1
    for lot, is_asked in ((lots[0], True), (lots[1], False), (lots[2], False)):
        [message] = said({"fiber": lots}, "dyeing_message", dyeing_lot=lot["name"], dyeing_depth=0.02)[0]
        assert ("not weighed when washed" in str(message)) == is_asked


@pytest.mark.parametrize(
    "meters, is_asked, least", [((0.2, 0.6), True, 0.5), ((0.75, 1.5), False, 0.92), ((3, 10), False, 0.95)]
)
def test_a_sample_shows_its_shrinkage_or_is_asked_about(meters, is_asked, least):
    """Skeins shrink as their sample, give or take a hundredth, twice that 19 times in 20; and a tape is off by up to a
    quarter inch, before and after. Of pieces of 20 to 60 cm that held in 75%."""
    draw = np.random.default_rng(50)
    true, length = draw.uniform(0.02, 0.10, PIECES), draw.uniform(*meters, PIECES)
    unwashed, washed = (
        np.round(each + draw.uniform(-TAPE, TAPE, PIECES) / 100, 3) for each in (length, length * (1 - true))
    )
    pieces = zip(unwashed.tolist(), washed.tolist(), strict=True)
    samples = [
        {"name": f"Sample {number}", "unwashed": before, "washed": after}
        for number, (before, after) in enumerate(pieces)
    ]
    shrinkage, messages = said({"samples": samples}, "samples_shrinkage", "samples_message")
    skeins = true + SAMPLE_DOUBT * draw.normal(size=PIECES)
    right = float(np.mean(np.abs(skeins - shrinkage) <= 2 * SAMPLE_DOUBT))
    assert right >= least - give_or_take(least, PIECES) and (right < 0.85 or not is_asked), f"{right:.1%}"
    asked = ["shrinkage only to some percent" in str(message) for message in messages]
    assert np.mean(asked) >= 0.9 if is_asked else np.mean(asked) <= 0.05
