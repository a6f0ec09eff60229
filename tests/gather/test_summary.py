"""What a guild's lots show together, against figures worked by hand."""

import numpy as np
import pytest
from pytest import approx

from workbookgen.gather.gathered import gather
from workbookgen.gather.summary import ALL_LOTS, evenness, observed
from workbookgen.settings.fiber_table import load_fibers

from .invented import REELS, WORK, fleece, q, settings, write_planner

FIBERS = load_fibers(settings("us"))


def spun(name: str, lot: str, wraps: float) -> dict:
    """A skein of 100 g, washed: its loop is as long as it was on the reel, so that nothing is taken off for washing."""
    return {
        "name": name,
        "reel": "Post reel",
        "wraps": wraps,
        "gross": q(100, "g"),
        "washed_loop": q(2, "yd"),
        "lot": lot,
    }


@pytest.fixture(scope="module")
def lots(tmp_path_factory, here):
    """Three Romney lots of two planners with yields of 50, 60 and 70%, a raw fleece, and breeds with one lot each."""
    place = tmp_path_factory.mktemp("guild")
    own_breed = {"guide": ({"name": "Fog"}, {"name": "romney"})}
    files = [
        write_planner(
            place / "a.xlsx",
            settings("us"),
            {
                "reels": REELS,
                "fiber": (
                    fleece("One", "Romney", 500),
                    fleece("Two", "Romney", 600, spun=540),
                    fleece("Other", "Cheviot", 480),
                ),
                # 100 and 120 turns in one lot, 100 and 100 in the other: CVs of 0.128565 and 0.
                "skeins": (
                    spun("1", "One", 100),
                    spun("2", "One", 120),
                    spun("3", "Two", 100),
                    spun("4", "Two", 100),
                    spun("5", "Other", 80),
                ),
            },
        ),
        write_planner(
            place / "b.xlsx",
            settings("metric"),
            own_breed | {"fiber": (fleece("Three", "romney", 700), fleece("Mine", "fog", 650))},
        ),
        write_planner(place / "c.xlsx", settings("us-grams"), {"fiber": WORK["fiber"]}),
    ]
    return gather(files, here).tables["lots"]


def told(frame, **which):
    for name, value in which.items():
        frame = frame[frame[name] == value]
    (found,) = frame.to_dict("records")
    return found


def test_the_yield_of_a_breed(lots):
    romney = told(observed(lots, FIBERS), kind="Romney", stage="scoured yield")
    # 500, 600 and 700 of 1,000, and the raw fleece's 540 of 900: 50, 60, 70 and 60%.
    assert romney["lots"] == 4 and romney["planners"] == 3
    assert romney["mean"] == approx(0.6) and romney["least"] == approx(0.5) and romney["most"] == approx(0.7)
    # Squared deviations 0.01 + 0.01, over 3 degrees of freedom, of which t is 3.182 (NIST/SEMATECH, read).
    assert romney["deviation"] == approx((0.02 / 3) ** 0.5)
    assert romney["mean_doubt95"] == approx(3.182 * (0.02 / 3) ** 0.5 / 2)
    assert romney["published"] == approx(0.625)  # 55 to 70% in the table
    assert romney["in_use"] == approx(0.6)


def test_a_single_lot_has_no_spread_and_changes_nothing(lots):
    cheviot = told(observed(lots, FIBERS), kind="Cheviot", stage="scoured yield")
    assert cheviot["lots"] == 1 and cheviot["mean"] == approx(0.48)
    assert np.isnan(cheviot["deviation"]) and np.isnan(cheviot["mean_doubt95"])
    assert cheviot["in_use"] == cheviot["published"] == approx(0.55)


def test_a_breed_that_nobody_published(lots):
    fog = told(observed(lots, FIBERS), kind="fog", stage="scoured yield")
    assert fog["mean"] == approx(0.65) and np.isnan(fog["published"]) and np.isnan(fog["in_use"])


def test_yarn_from_raw_fleece_needs_both_ends_weighed(lots):
    found = observed(lots, FIBERS)
    whole = found[found["stage"] == "yarn from raw fleece"]
    # Of all lots only Heather was bought raw and its yarn weighed: 437.4 of 1,000 g. Lot Two was bought skirted.
    assert (
        whole["kind"].tolist() == ["Romney"]
        and whole["lots"].tolist() == [1]
        and whole["mean"].tolist() == approx([0.4374])
    )


def test_every_loss_is_told_of_its_own_stage(lots):
    found = observed(lots, FIBERS)
    spinning = told(found, kind="Romney", stage="spinning loss")
    # Two: 540 of 600, a tenth lost; Heather: 437.4 of 486, a tenth lost.
    assert spinning["lots"] == 2 and spinning["mean"] == approx(0.1) and spinning["deviation"] == approx(0, abs=1e-12)
    assert told(found, kind="Romney", stage="skirting loss")["lots"] == 1  # only raw fleece is skirted
    assert told(found, kind="Corriedale", stage="skirting loss")["mean"] == approx(0.2)


def test_evenness_within_lots(lots):
    even = evenness(lots, FIBERS)
    romney = told(even, kind="Romney")
    assert romney["planners"] == 1 and romney["lots"] == 2 and romney["skeins"] == 4 and romney["lots_compared"] == 2
    # Grists of 1.8288, 2.19456 | 1.8288, 1.8288 m/g: lot means 2.01168 and 1.8288.
    assert romney["mean_grist_m_per_g"] == approx(1.92024) and romney["least_grist_m_per_g"] == approx(1.8288)
    # CVs of 20/√2/110 and 0 over two skeins each: the root of half their squares.
    assert romney["grist_cv"] == approx(20 / 2**0.5 / 110 / 2**0.5) and romney["least_cv"] == approx(0, abs=1e-9)
    cheviot = told(even, kind="Cheviot")
    assert cheviot["skeins"] == 1 and cheviot["lots_compared"] == 0 and np.isnan(cheviot["grist_cv"])
    everyone = told(even, kind=ALL_LOTS)
    assert everyone["lots"] == 3 and everyone["skeins"] == 5 and everyone["grist_cv"] == approx(romney["grist_cv"])


def test_nothing_weighed_is_nothing_observed(lots):
    for summed in (observed, evenness):
        nothing = summed(lots.iloc[:0], FIBERS)
        assert nothing.empty and nothing.dtypes.equals(summed(lots, FIBERS).dtypes)
