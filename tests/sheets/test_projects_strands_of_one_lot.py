"""Two strands of one yarn, spun from one lot: what the lot gives is divided between them, by what each is of the yarn.

By hand: two strands of one component and one of another, all of 4,000 yd/lb, are a yarn of 1,333 1/3 yd/lb, two thirds
and a third of its weight. 1,000 yd of it are 12 oz, 8 and 4. A lot that gives 10 oz lasts for 833 1/3 yd, with 6 2/3 oz
for the one and 3 1/3 for the other: 1 1/3 and 2/3 oz short.
"""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

US = described(Settings(units="us"))
FOG = {"name": "Fog", "state": "prepared fiber", "weight": 10.0, "own_spinning": 0.0}
GULL = FOG | {"name": "Gull", "weight": 5.0}
CONE = {"name": "Cone", "state": "yarn or thread", "weight": 4.0}
SINGLE = {"design": "Tweed", "number": 4000.0, "system": "yards per pound", "feed": 1.0}
TWO = SINGLE | {"name": "Two", "place": 1.0, "strands": 2.0, "lot": "Fog"}
ONE = SINGLE | {"name": "One", "place": 2.0, "lot": "Fog"}
SHAWL = {"name": "Shawl", "wanted": 1000.0, "margin": 0.0, "design": "Tweed", "grist": 4000 / 3}
PLAIN = {"name": "Shawl", "wanted": 1000.0, "margin": 0.0, "lot_1": "Fog", "grist": 4000 / 3}
HAT = {"name": "Hat", "wanted": 300.0, "margin": 0.0, "lot_1": "Fog", "grist": 1000.0}  # 4.8 oz


def told(*keys, fiber=(FOG,), components=(TWO, ONE), projects=(SHAWL,), **records):
    """These columns, of which one that names a part (@) is told of the first and the second."""
    logs = {"fiber": fiber, "designs": [{"name": "Tweed", "shrinkage": 0.0}], "components": components, "projects": projects} | records
    entries = entries_with(US, logs)
    every = [key.replace("@", f"projects_part_{part}") for key in keys for part in ((1, 2) if "@" in key else (1,))]
    [values] = expected_of_keys(US, [entries], every)
    return [values[key] for key in every]


def first(*keys, **records):
    return [values[0] for values in told(*keys, **records)]


def oz(*amounts):
    return [pytest.approx(each) for each in amounts]


def test_each_has_its_part_of_the_lot_and_is_short_by_its_part():
    assert first("@_needs", "@_left") == oz(8, 4, 20 / 3, 10 / 3)
    assert first("@_over", "@_come") == oz(-4 / 3, -2 / 3, 2500 / 3, 2500 / 3)
    assert first("projects_have", "projects_spare") == oz(2500 / 3, -500 / 3)
    assert told("components_message")[0][:2] == (None, None), "there is nothing to ask"


def test_what_is_over_is_divided_as_well():
    """Of 18 oz 6 are over: 4 and 2, and the yarn is 1,500 yd."""
    assert first("@_over", "projects_have", fiber=[FOG | {"weight": 18.0}]) == oz(4, 2, 1500)


def test_it_is_as_sure_as_of_one_strand():
    """By hand: the lot's own figure leaves 3% of 10 oz in doubt, and the grist √(0.08² + 0.08² / 4 1/6) = 8.908% of it:
    √(0.3² + 0.8908²) = 0.94 oz, 78.33 yd. With 0.5% of 833 1/3 yd by the scale that is 78.44 yd, with 5% of the need
    93.02: the chance is that of 166 2/3 / 93.02 = 1.7917 below, 3.66%. Strands that fail apart would be less sure."""
    assert first("projects_doubt_have", "projects_chance") == [pytest.approx(78.44, abs=0.01), pytest.approx(0.0366, abs=0.0001)]
    keys = [f"projects_{key}" for key in ("have", "spare", "doubt_have", "doubt_spare", "chance", "verdict", "more", "level", "answer")]
    assert first(*keys) == [each if isinstance(each, str) else pytest.approx(each) for each in first(*keys, projects=[PLAIN])]


def test_what_to_buy_is_what_one_strand_would_take():
    """Both together, in the unit in which the lot was bought; each by its part."""
    two, one = first("@_buy")
    assert two + one == pytest.approx(first("projects_part_1_buy", projects=[PLAIN])[0]) and two == pytest.approx(2 * one)


def test_another_project_on_the_lot_meets_the_whole_yarn():
    """Of 20 oz the hat takes 4.8 and leaves 15.2; the shawl takes 12 and leaves the hat 8, 3.2 more than it needs."""
    both = {"fiber": [FOG | {"weight": 20.0}], "projects": [SHAWL, HAT]}
    two, one = told("@_left", **both)
    assert [two[0], one[0]] == oz(15.2 * 2 / 3, 15.2 / 3) and two[1] == pytest.approx(8)
    assert first("fiber_promised", **both) == oz(16.8 / 20)
    # The need is off by 5%: 50 yd of the shawl are 0.6 oz, 15 of the hat 0.24.
    squares = told("@_others_square", **both)
    assert [squares[0][0], squares[1][0]] == oz((0.24 * 2 / 3) ** 2, (0.24 / 3) ** 2) and squares[0][1] == pytest.approx(0.36)
    assert told("projects_shared", **both)[0][:2] == (2, 1)
    assert first("projects_shared") == [0], "its own strands are no other project"


def test_skeins_that_suffice_take_no_more_of_it():
    """6 oz in the only skein, of more yards than the shawl takes, leave 4 oz: 2 2/3 and 1 1/3."""
    skein = {"name": "One", "reel": "Reel", "wraps": 600.0, "washed_loop": 72.0, "gross": 6.0, "design": "Tweed", "project": "Shawl"}
    records = {"reels": [{"name": "Reel", "rated": 72.0}], "skeins": [skein]}
    assert first("@_needs", "@_left", **records) == oz(0, 0, 8 / 3, 4 / 3)


def test_a_third_strand_of_another_lot_may_still_run_out_first():
    """A thread of 8,000 yd/lb beside two components of the lot: 5 oz of it last for 2,500 yd, 2 oz for 1,000. Of the
    rest, which the lot gives, there are 10 / 12 of what 1,000 yd take."""
    thread = {"design": "Tweed", "name": "Thread", "number": 8000.0, "system": "yards per pound", "place": 3.0, "lot": "Cone"}
    strands, shawl = [TWO, ONE, thread], SHAWL | {"grist": 8000 / 7}
    keys = ("@_come", "projects_part_3_come", "projects_scarcest")
    assert first(*keys, fiber=[FOG, CONE | {"weight": 5.0}], components=strands, projects=[shawl]) == [*oz(2500 / 3, 2500 / 3, 2500), "Two"]
    assert first(*keys, fiber=[FOG | {"weight": 18.0}, CONE | {"weight": 2.0}], components=strands, projects=[shawl]) == [*oz(1500, 1500, 1000), "Thread"]


def test_two_lots_that_both_strands_may_take_are_divided_alike():
    """10 and 5 oz are 3 over: 2 and 1. In the other order they are the same two, and are divided so, too."""
    either, lots = {"other_lot": "Gull"}, [FOG, GULL]
    assert first("@_over", fiber=lots, components=[TWO | either, ONE | either]) == oz(2, 1)


THREAD = {"design": "Tweed", "number": 8000.0, "system": "yards per pound", "package": 500.0, "lot": "Cone"}  # a cone of 1 oz
CORE, BINDER = THREAD | {"name": "Core", "place": 2.0}, THREAD | {"name": "Binder", "place": 3.0}
CONES = {"fiber": [FOG | {"weight": 90.0}, CONE], "designs": [{"name": "Tweed", "shrinkage": 0.0, "wanted": 1200.0}], "projects": [SHAWL | {"grist": 2000.0, "wanted": 3000.0}]}


def test_two_strands_of_one_bought_thread_take_whole_spools_together():
    """1,200 yd of yarn take 1,200 of the core and 1,200 of the binder, 2.4 cones of each: 4.8, which are 5 and not 6,
    2.5 for each. The single of the lot fills bobbins of its own: of 500 yd, three."""
    single = {"design": "Tweed", "name": "Single", "number": 4000.0, "system": "yards per pound", "place": 1.0, "lot": "Fog", "package": 500.0}
    assert told("components_packages", components=[single, CORE, BINDER], **CONES)[0][:3] == (3, *oz(2.5, 2.5))
    apart = told("components_packages", components=[single, CORE, BINDER | {"lot": "Fog", "number": 4000.0}], **CONES)[0][:3]
    assert apart == (3, 3, 3), "two that are spun"


def test_what_to_buy_for_two_strands_of_one_thread_is_told_once_in_whole_cones():
    """They were told apart, each in whole cones: one too many where both end in less than half a cone."""
    single = {"design": "Tweed", "name": "Single", "number": 4000.0, "system": "yards per pound", "place": 1.0, "lot": "Fog"}
    strands = {"components": [single, CORE, BINDER]}
    core, binder = first("projects_part_2_buy", "projects_part_3_buy", **CONES, **strands)
    keys = [f"projects_part_{part}_{key}" for key in ("get", "balls") for part in (2, 3)]
    assert core == pytest.approx(binder) and first(*keys, **CONES, **strands)[:2] == oz(core + binder, 0)
    cones = -(-(core + binder) // 1)
    assert first(*keys[2:], **CONES, **strands) == [cones, 0]
    advice = first("projects_advice", **CONES, **strands)[0]
    assert f": {cones:.0f} spools of Cone." in advice and "Core" not in advice and "Binder" not in advice
    alone = first("projects_advice", **CONES, components=[single, CORE | {"strands": 2.0}])[0]
    assert alone == advice.replace("of Cone", "of Core"), "one component with two strands says the same"


ASKED = ("Is it right? Its lot: another component draws on it, too, and not on the same lots in the same order: each counts on all of it. "
         "Make their lots alike, or give each its part of it as a line of its own on the sheet Fiber.")


@pytest.mark.parametrize(("lots", "asked"), [
    ((("Fog", None), ("Fog", "Gull")), (True, True)),  # one may take of both, the other of one
    ((("Fog", None), ("Gull", "Fog")), (True, True)),
    ((("Fog", "Gull"), ("Gull", "Fog")), (True, True)),
    ((("Fog", None), ("Fog", None)), (False, False)),
    ((("Fog", "Gull"), ("fog", "GULL")), (False, False)),
    ((("Fog", "Gull"), ("Cone", None)), (False, False)),
    ((("Fog", None), ("Gull", None)), (False, False)),
    ((("Fog", None), (None, None)), (False, False)),
    (((None, None), (None, None)), (False, False)),
])
def test_lots_that_two_strands_share_only_in_part_are_asked_about(lots, asked):
    strands = [each | {"lot": lot, "other_lot": other} for each, (lot, other) in zip((TWO, ONE), lots, strict=True)]
    found = told("components_message", fiber=[FOG, GULL, CONE], components=strands)[0][:2]
    assert found == tuple(ASKED if each else None for each in asked)


def test_a_lot_that_two_designs_take_of_is_not_asked_about():
    other = [each | {"design": "Other", "other_lot": "Gull"} for each in (TWO, ONE)]
    found = told("components_message", fiber=[FOG, GULL], designs=[{"name": "Tweed"}, {"name": "Other"}], components=[TWO, ONE, *other])[0][:4]
    assert found == (None,) * 4
