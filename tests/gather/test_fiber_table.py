"""The observed figures as a guide: planners built with it expect what the guild has seen."""

import csv

import pandas as pd
import pytest
from pytest import approx

from workbookgen.build import build
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import read_filled
from workbookgen.gather.fiber_table import fiber_table
from workbookgen.gather.files import save
from workbookgen.gather.gathered import gather
from workbookgen.settings import templates
from workbookgen.settings.fiber_table import load_fibers
from workbookgen.sheets.planner import planner

from .invented import fleece, settings, write_planner

FIBERS = load_fibers(settings("us"))


def rows(kind, stage, lots, mean, deviation, planners=2):
    return {"kind": kind, "stage": stage, "lots": lots, "planners": planners, "mean": mean, "deviation": deviation}


def table(*observed):
    return fiber_table(pd.DataFrame(observed), FIBERS, 2026).set_index("name")


@pytest.fixture(scope="module")
def guide(tmp_path_factory, here):
    """The fiber table of a guild with three Romney lots, of 50, 60 and 70%, and three lots of a breed of its own."""
    place = tmp_path_factory.mktemp("guild")
    work = {
        "guide": ({"name": "Romney"}, {"name": "Fog"}),
        "fiber": (
            fleece("1", "Romney", 500),
            fleece("2", "Romney", 600),
            fleece("3", "Romney", 700),
            fleece("4", "Fog", 800),
            fleece("5", "Fog", 800),
            fleece("6", "Fog", 800),
        ),
    }
    gathered = gather([write_planner(place / "a.xlsx", settings("us"), work)], here)
    places, _ = save(gathered, place / "guild.csv", FIBERS, 2026)
    return places["fibers"]


def test_a_planner_built_with_it_expects_what_was_seen(guide, tmp_path):
    chosen = settings("metric", fibers=str(guide))
    build(chosen, tmp_path / "next.xlsx")
    filled = read_filled(tmp_path / "next.xlsx")
    described = planner(filled.settings)
    keys = ("guide_scoured_yield", "guide_yield_spread", "guide_used_yield", "guide_used_skirting")
    (values,) = expected_of_keys(described, [filled.entries], keys)
    line = filled.entries["guide_name"].index("Romney")
    middle, spread, used, skirting = (values[key][line] for key in keys)
    assert middle == used == approx(0.6)
    # The standard deviation of 50, 60 and 70% is 0.1; the published range, 55 to 70%, has 0.15 / √12 = 0.0433, and
    # counts as much: √((0.01 + 0.001875) / 2 · (1 + 1/3)), since the mean of three is itself off.
    assert spread == approx(0.08898, abs=1e-5)
    assert skirting == approx(0.15)  # nobody weighed it: as published
    assert filled.entries["guide_source"][line].startswith("Observed 2026, lots of planners: yield 3 of 1.")
    fog = filled.entries["guide_name"].index("Fog")
    assert values["guide_used_yield"][fog] == approx(0.8) and values["guide_used_skirting"][fog] is None
    # Three lots of 80% are alike by chance. Of their breed nothing is published: others spread so far on the average,
    # and what is seen and what is usual count alike.
    usual = [(each["yield_high"] - each["yield_low"]) / 12**0.5 for each in FIBERS if "yield_low" in each]
    assert values["guide_yield_spread"][fog] == approx(sum(usual) / len(usual) * (1 / 2 * 4 / 3) ** 0.5)


def test_its_columns_are_those_of_the_table_that_comes_along(guide):
    with guide.open(encoding="utf-8") as ours, (templates() / "fibers.csv").open(encoding="utf-8") as theirs:
        assert next(csv.reader(ours)) == next(csv.reader(theirs))


def test_what_was_not_observed_is_as_published(guide):
    ours = {each["name"]: each for each in load_fibers(settings("us", fibers=str(guide)))}
    for fiber in FIBERS:
        if fiber["name"] != "Romney":
            assert ours[fiber["name"]] == fiber
    assert ours["Romney"]["fleece_low"] == next(each for each in FIBERS if each["name"] == "Romney")["fleece_low"]


def test_two_lots_are_not_enough():
    assert table(rows("Romney", "scoured yield", 2, 0.5, 0.1)).loc["Romney", "yield_low"] == 0.55
    assert table(rows("Romney", "spinning loss", 3, 0.1, 0.01)).loc["Romney", "spinning"] == 0.1


def test_the_more_lots_were_seen_the_less_does_the_published_spread_count():
    def spread(lots: int) -> float:
        row = table(rows("Romney", "scoured yield", lots, 0.6, 0.01)).loc["Romney"]
        return (row["yield_high"] - row["yield_low"]) / 12**0.5

    # Lots nearly alike, u = 0.01, beside a published 0.0433: √((2 · 0.0001 + 2 · 0.001875) / 4 · 4/3) of three.
    assert spread(3) == approx(0.03629, abs=1e-5)
    assert spread(21) == approx(0.01655, abs=1e-5)  # √((20 · 0.0001 + 2 · 0.001875) / 22 · 22/21)


@pytest.mark.parametrize("mean, deviation", [(0.97, 0.1), (0.05, 0.2), (1.0, 0.0), (0.6, 0.0)])
def test_a_range_of_yield_stays_within_its_domain(mean, deviation):
    row = table(rows("Romney", "scoured yield", 5, mean, deviation)).loc["Romney"]
    assert 0 < row["yield_low"] <= row["yield_high"] <= 1
    assert (row["yield_low"] + row["yield_high"]) / 2 == approx(mean)


def test_a_source_fits_its_cell():
    observed = [
        rows("Romney", stage, 14, 0.1, 0.01, 6)
        for stage in ("skirting loss", "scoured yield", "preparation loss", "spinning loss")
    ]
    source = table(*observed).loc["Romney", "source"]
    seen = "Observed 2026, lots of planners: skirting 14 of 6, yield 14 of 6, preparation 14 of 6, spinning 14 of 6."
    # Of the published source, what it says of yield and losses is no longer of use.
    assert (
        source == f"{seen} Rest: Diameter: society (read). Fleece, staple: (from memory). Regain: ASTM D1909-13 (read)."
    )
    assert len(source) <= 200
    alone = table(rows("Ramie", "spinning loss", 3, 0.1, 0.01)).loc["Ramie", "source"]
    # One loss of three was seen, so the source of the others stays.
    assert (
        alone
        == "Observed 2026, lots of planners: spinning 3 of 2. Rest: Regain: (from memory). Losses: (common practice, no source)."
    )
