"""A project that has skeins and no lot, as after the three steps on the desk: it is told whether they are enough."""

import pytest
from pytest import approx

from entries import entries_with
from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

REELS = [{"name": "Post reel", "rated": 72.0, "tolerance": 0.25}]  # inches
SKEINS = [
    {"name": "A", "reel": "Post reel", "wraps": 100.0, "gross": 3.1, "project": "Hat"},
    {"name": "B", "reel": "Post reel", "wraps": 60.0, "gross": 2.1, "project": "Shawl"},
    {"name": "C", "reel": "Post reel", "wraps": 50.0, "gross": 1.9},
]
HAT, SHAWL = {"name": "Hat", "wanted": 150.0}, {"name": "Shawl", "wanted": 250.0}
NONE_KNOWN = "No answer yet: it has no yarn. Choose its lot here, or this project beside its skeins on the sheet Skeins."
GIVEN_UP = "If it is given up, type 0 at Yarn used, behind the + above the columns: then its skeins are free."
NO_MORE = "If there is no more of it: make the piece smaller, or work part of it in another yarn."


@pytest.fixture(scope="module", params=["small", "whole"])
def told(request):
    """What a planner shows of its first project, by field."""
    planner = described(Settings(size=request.param, fibers=""))

    def telling(*projects, lots=()):
        entries = entries_with(planner, {"reels": REELS, "skeins": SKEINS, "fiber": lots, "projects": projects}) | {"project_name": (projects[0]["name"],)}
        shown = expected_values(planner, entries)
        return {key.removeprefix("projects_"): column[0] for key, column in shown.items() if key.startswith(("projects_", "project_", "glance_"))}

    telling.is_small = request.param == "small"
    return telling


def test_its_skeins_are_enough(told):
    hat = told(HAT, SHAWL)
    # 100 wraps of 2 yd, less the usual 5%. ±: a wrap in 100 over the root of 3, a quarter inch in 72 over it, 3% of
    # what is left of 200 yd.
    assert hat["have"] == approx(190) and hat["doubt_have"] == approx((1.09697**2 + 0.38090**2 + 6.0**2) ** 0.5, rel=1e-4)
    assert (hat["verdict"], hat["chance_words"], hat["message"]) == ("enough", "over 98%", None)  # 40 yd over, which are four times √(6.11² + 7.5²)
    assert hat["answer"] == "There is 190 yd, very likely 178 yd to 202 yd; it takes 150 yd: 40 yd over. Chance that it is enough: over 98%."
    assert hat["project_in_short"] == "Enough: 40 yd over" and hat["advice"] == "That is as sure as you ask."
    assert hat["instead"] is hat["project_instead"] is None, "nothing is lacking"
    assert hat["glance_projects"] == "1 of 2"


def test_its_skeins_are_too_few(told):
    shawl = told(SHAWL)
    assert (shawl["verdict"], shawl["chance_words"]) == ("short", "under 2%")
    assert shawl["message"] == (
        "Is it right? No lot is chosen, so only its skeins count. If more is to be spun for it, choose that lot at First lot"
        + ("." if told.is_small else ", or its design at Its yarn.")
    )
    # 136 yd are lacking. ±: a wrap in 60, the reel, 3% of 120 yd, together 3.8 yd; and 5% of 250 yd. 136 + 1.2816 ·
    # √(3.8² + 12.5²) = 152.7.
    assert shawl["advice"] == "To be 90% sure, get 153 yd more."
    # The planner cannot know whether there is more of a handspun yarn, or of a fleece.
    assert shawl["instead"] == shawl["project_instead"] == NO_MORE


def test_what_is_likely_enough_is_not_told_to_be_made_smaller(told):
    """114 yd ± 3.8 for 110 yd ± 5.5 (5%): 4 yd over, which are 0.6 of √(3.8² + 5.5²) = 6.7, a chance of 73%."""
    cap = told({"name": "Shawl", "wanted": 110.0})
    assert (cap["verdict"], cap["chance_words"]) == ("likely enough", "73%")
    assert cap["instead"] == "If there is no more of it: it is likely enough as it is."


def test_a_lot_that_is_not_known_hides_no_skeins_that_cover_all(told):
    lot = {"name": "Clover", "state": "raw fleece", "weight": 80.0}
    assert told(HAT | {"lot_1": "Clover"}, lots=[lot])["verdict"] == "enough"
    assert told(SHAWL | {"lot_1": "Clover"}, lots=[lot])["verdict"] is None, "who knows what the lot gives"


@pytest.mark.parametrize("more", [{}, {"grist": 900.0}])
def test_a_project_without_any_yarn_has_one_story(told, more):
    """It was told to be short, with a chance under 2%, beside "No answer yet", and with a grist to be short and nothing
    else. Of 120 yards ± 6 all are still to get: 120 + 1.2816 · 6 = 127.7 by the middle figures."""
    scarf = told({"name": "Scarf", "wanted": 120.0} | more)
    assert (scarf["verdict"], scarf["project_in_short"], scarf["chance_words"]) == ("no yarn yet", "No yarn yet", None)
    # The desk: "… that something is still missing", and its yarn is. "?" is for an entry that is not as usual.
    assert (scarf["message"], scarf["mark"], scarf["project_log_says"]) == (NONE_KNOWN, "…", NONE_KNOWN)
    assert scarf["instead"] is None, "where there is none, there is no more of it either"
    assert scarf["answer"] == "It takes 120 yd, and no yarn for it is known yet."
    assert scarf["open_have"] == 0 and scarf["open_spare"] == -120 and scarf["glance_projects"] == "0 of 1", "it is one that has not enough"
    assert more or scarf["advice"] == "To be 90% sure, get 128 yd."


@pytest.mark.parametrize("more", [{"used": 2.0}, {"lot_2": "Top", "grist": 900.0}, {"lot_1": "Bag", "grist": 900.0}, {"name": "Hat"}])
def test_a_project_that_is_finished_or_has_a_lot_is_not_asked_about(told, more):
    lots = [{"name": "Top", "state": "yarn or thread", "weight": 2.0}, {"name": "Bag", "state": "yarn or thread", "weight": 2.0, "gone": "lost"}]
    scarf = told({"name": "Scarf", "wanted": 120.0} | more, lots=lots)
    assert (scarf["message"] or "").startswith("Is it right? The rest of its first lot is gone") == (more.get("lot_1") == "Bag")
    assert bool(scarf["message"]) == (more.get("lot_1") == "Bag") and scarf["verdict"] != "no yarn yet"
    assert scarf["instead"] == (None if "used" in more or "name" in more else NO_MORE)


def test_a_project_of_a_name_alone_says_what_it_wants(told):
    estimated = "" if told.is_small else ", or work it out on the sheet Need"
    hat = told({"name": "Hat"})
    assert (hat["message"], hat["mark"]) == (f"No answer yet: type the yarn wanted{estimated}. {GIVEN_UP}", "…")
    assert told({"name": "Cap", "used": 3.0})["message"] is None
