"""One skein: "very likely a to b" of its length, "very likely within" of its grist.

A reel, a yarn that shrinks, a count that may be off, a tape and a scale with its steps. Two standard uncertainties
cover 95%; a part of them that is as likely anywhere within its limits, and not like a bell, is covered more often. What
is said is worked out by the planner from what was typed: it is the formula of the sheet Skeins for one skein alone,
with the ends and the words of the sheet Measure.
"""

from collections.abc import Callable

import numpy as np
import pytest

from workbookgen.reference import measuring
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner
from workbookgen.units import Quantity

from .answers import give_or_take, said
from .worlds import RATED, SAMPLE_DOUBT, SCALE, SLACK, TAPE, TOLERANCE, USUAL, USUAL_DOUBT, Draw

SKEINS, COVERED = 1_000, 0.95
OUNCE = 28.349523125


def rated(draw: Draw) -> tuple[dict, float]:
    return {"rated": RATED, "tolerance": TOLERANCE}, RATED + draw.uniform(-TOLERANCE, TOLERANCE)


def only_rated(draw: Draw) -> tuple[dict, float]:
    """A reel that nobody measured, and whose maker states no tolerance."""
    return {"rated": RATED}, RATED * draw.uniform(0.98, 1.02)


def corded(step: float) -> Callable[[Draw], tuple[dict, float]]:
    """Ten meters of cord, its turns read to a step; a thousandth of it stretches."""

    def reel(draw: Draw) -> tuple[dict, float]:
        loop = draw.uniform(120, 200)
        return {"cord": 1000.0, "turns": round(round(1000 / loop * (1 + 0.001 * draw.normal()) / step) * step, 3)}, loop

    return reel


def niddy_noddy(draw: Draw) -> tuple[dict, float]:
    """Its height and arms, measured from yarn to yarn, to 5 mm, give or take 3 mm more."""
    height, *arms = draw.uniform(35, 50), draw.uniform(30, 40), draw.uniform(30, 40)
    typed = [round((each + draw.uniform(-0.3, 0.3)) * 2) / 2 for each in (height, *arms)]
    return dict(zip(("height", "arm_a", "arm_b"), typed, strict=True)), 4 * np.sqrt(
        height**2 + arms[0] ** 2 / 4 + arms[1] ** 2 / 4
    )


def wound(
    reel,
    is_washed: bool = True,
    wraps: tuple[int, int] = (40, 140),
    step: float = 0.1,
    per_100_g: tuple[float, float] = (100, 400),
    is_sampled: bool = False,
):
    """Length and grist of a thousand skeins: as stated, their uncertainty, and in truth; and the weight as the scale
    shows it. All shrink as is usual, or each about as its sample did."""
    draw = np.random.default_rng(5)
    reels, skeins, samples, truth = [], [], [], []
    for number in range(SKEINS):
        typed, loop = reel(draw)
        shrinkage, grist, slack = USUAL + USUAL_DOUBT * draw.normal(), draw.uniform(*per_100_g), SLACK * draw.normal()
        if is_sampled:
            seen = round(10 * shrinkage, 2) / 10
            shrinkage = seen + SAMPLE_DOUBT * draw.normal()
            samples.append({"name": f"Sample {number}", "unwashed": 10.0, "washed": 10 * (1 - seen)})
        counted = float(draw.integers(*wraps))
        length = (counted + draw.uniform(-1, 1)) * loop / 100 * (1 - shrinkage)
        shown = max(step, round(round(length / grist * 100 * (1 + SCALE * draw.normal()) / step) * step, 6))
        washed = (
            {"washed_loop": round(loop * (1 - shrinkage) * (1 + slack) + draw.uniform(-TAPE, TAPE), 1)}
            if is_washed
            else {}
        )
        reels.append({"name": f"Reel {number}"} | typed)
        skeins.append({"name": f"Skein {number}", "reel": f"Reel {number}", "wraps": counted, "gross": shown} | washed)
        truth.append((length, grist))
    records = {"reels": reels, "skeins": skeins}
    if is_sampled:
        names = [f"Piece {number}" for number in range(SKEINS)]
        records |= {
            "samples": samples,
            "projects": [{"name": name, "sample": sample["name"]} for name, sample in zip(names, samples, strict=True)],
            "skeins": [skein | {"project": name} for skein, name in zip(skeins, names, strict=True)],
        }
    stated = said(records, "skeins_finished_m", "skeins_doubt", "skeins_grist_m_100g")
    return (*stated, *np.array(truth).T, np.array([skein["gross"] for skein in skeins]))


REELS = {
    "a rated reel": rated,
    "a rated reel without a tolerance": only_rated,
    "a cord read to a quarter turn": corded(0.25),
    "a cord read to a tenth": corded(0.1),
    "a cord read to a twentieth": corded(0.05),
    "a niddy-noddy's height and arms": niddy_noddy,
}


@pytest.mark.parametrize("is_washed", [True, False], ids=["washed loop measured", "usual shrinkage"])
@pytest.mark.parametrize("reel", REELS.values(), ids=REELS)
def test_a_length_lies_where_it_very_likely_does(reel, is_washed):
    length, doubt, _, true_length, *_ = wound(reel, is_washed)
    length, doubt = Quantity(length, "m"), Quantity(doubt, "m")
    least, most = measuring.least_likely(length, doubt).m_as("m"), measuring.most_likely(length, doubt).m_as("m")
    right = float(np.mean((true_length >= least) & (true_length <= most)))
    assert COVERED - 0.01 - give_or_take(COVERED, SKEINS) <= right <= COVERED + 0.03, f"{right:.1%}"


@pytest.mark.parametrize("reel", REELS.values(), ids=REELS)
def test_a_length_by_a_samples_shrinkage_lies_where_it_very_likely_does(reel):
    """What a sample tells of shrinkage leaves the reel in doubt: a cord of seven turns that was read to quarters was
    taken within half a percent, and "very likely" came true in 86%; a loop that was only rated, too, and it did in
    87%."""
    length, doubt, _, true_length, *_ = wound(reel, is_washed=False, is_sampled=True)
    right = float(np.mean(np.abs(true_length - length) <= 2 * doubt))
    assert COVERED - 0.01 - give_or_take(COVERED, SKEINS) <= right <= COVERED + 0.03, f"{right:.1%}"


@pytest.mark.parametrize("within_the_ends, least, most", [(0.0, 0.92, 0.97), (1.0, 0.70, 0.85)])
def test_a_niddy_noddy_is_measured_where_the_yarn_lies(within_the_ends, least, most):
    """As the sheet asked for it, each arm was measured from end to end, though in notches or behind lips the yarn lies
    about a centimeter within: then the loop is 1.5% too long, and "very likely" comes true in 79%."""

    def measured(draw: Draw) -> tuple[dict, float]:
        typed, loop = niddy_noddy(draw)
        return typed | {arm: typed[arm] + 2 * within_the_ends for arm in ("arm_a", "arm_b")}, loop

    length, doubt, _, true_length, *_ = wound(measured, is_washed=False, is_sampled=True)
    assert least <= np.mean(np.abs(true_length - length) <= 2 * doubt) <= most
    asked = {each.key: each.help for each in planner(Settings()).blocks["reels"].inputs}
    assert all("yarn" in asked[key] for key in ("height", "arm_a"))


def test_a_length_of_few_wraps_lies_where_it_very_likely_does():
    """Of ten wraps the count is all that matters, one off at most: such limits are covered nearly always."""
    length, doubt, _, true_length, *_ = wound(rated, wraps=(8, 20))
    right = float(np.mean(np.abs(true_length - length) <= 2 * doubt))
    assert right >= 0.98


def within(length, doubt, shown, is_in_ounces: bool):
    weight = Quantity(shown, "g")
    coarse = [measuring.is_coarse(each, float(is_in_ounces)) for each in weight]
    step = measuring.scale_step(weight, float(is_in_ounces), float(len(weight)), float(sum(coarse)))
    return measuring.grist_within(Quantity(length, "m"), Quantity(doubt, "m"), SCALE, weight, step)


@pytest.mark.parametrize("per_100_g", [(100, 200), (200, 400), (400, 1000)], ids=["thick", "middling", "fine"])
@pytest.mark.parametrize(
    "step, is_in_ounces",
    [
        pytest.param(0.1, False, id="0.1 g"),
        pytest.param(1.0, False, id="1 g"),
        pytest.param(5.0, False, id="5 g"),
        pytest.param(0.25 * OUNCE, True, id="a quarter ounce"),
        pytest.param(0.1 * OUNCE, True, id="0.1 oz"),
        pytest.param(0.05 * OUNCE, True, id="0.05 oz"),
        pytest.param(0.01 * OUNCE, True, id="0.01 oz"),
    ],
)
def test_a_grist_lies_as_near_as_it_very_likely_does(step, is_in_ounces, per_100_g):
    """The coarser the scale for so small a skein, the more its step is all, which covers it nearly always.

    As it was, on a scale that shows steps of 5 g it came true in 30 to 69%.
    """
    length, doubt, grist, _, true_grist, shown = wound(rated, step=step, per_100_g=per_100_g)
    right = float(np.mean(np.abs(true_grist / grist - 1) <= within(length, doubt, shown, is_in_ounces)))
    assert right >= COVERED - 0.02 - give_or_take(COVERED, SKEINS), f"{right:.1%}"


def test_the_test_would_notice_a_scale_whose_steps_are_forgotten():
    """As it was: of fine yarn on a scale that shows tenths of an ounce, "very likely" came true in three of ten."""
    length, doubt, grist, _, true_grist, shown = wound(rated, step=0.1 * OUNCE, per_100_g=(400, 1000))
    forgetful = measuring.grist_within(
        Quantity(length, "m"), Quantity(doubt, "m"), SCALE, Quantity(shown, "g"), Quantity(0.0, "g")
    )
    assert np.mean(np.abs(true_grist / grist - 1) <= forgetful) < 0.5
