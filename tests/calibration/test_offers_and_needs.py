"""Prices of offered fleeces with their ±, a need estimated from a swatch, and the guide that learns.

Each ± is one standard uncertainty: of a bell it covers 68%, twice it 95%. The middle of a range in which every value
is as likely is covered by one in 58% and by two always; what is made of such ranges lies between.
"""

import numpy as np
import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.language.entries import with_records
from workbookgen.reference import statistics
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner

from .answers import give_or_take, said
from .purchases import fleece_kept, top_kept
from .worlds import BREED, Draw

FLEECES, SWATCHES = 2_000, 1_500


def offered(draw: Draw, state: str) -> tuple[dict, float, float]:
    """A fleece as it is offered, and what it really keeps as clean fiber and as yarn."""
    skirted = 1 - draw.uniform(0.05, 0.25) if state == "raw fleece" else 1.0
    clean = skirted * draw.uniform(0.45, 0.65)
    return (
        {"kind": BREED["name"], "state": state, "weight": 3000.0, "price": 60.0},
        clean,
        clean * (1 - draw.uniform(0.02, 0.10)) * top_kept(draw),
    )


@pytest.mark.parametrize("state", ["raw fleece", "skirted fleece"])
def test_a_price_lies_as_near_as_stated(state):
    draw = np.random.default_rng(12)
    records, clean, yarn = zip(*(offered(draw, state) for _ in range(FLEECES)), strict=True)
    named = [{"name": f"Offer {number}"} | record for number, record in enumerate(records)]
    columns = said(
        {"offers": named},
        "offers_clean_price",
        "offers_clean_price_doubt",
        "offers_yarn_price",
        "offers_yarn_price_doubt",
    )
    for price, doubt, kept in ((columns[0], columns[1], np.array(clean)), (columns[2], columns[3], np.array(yarn))):
        true = 60.0 / (3000.0 * kept) * 100  # money per 100 g
        off = np.abs(true - price) / doubt
        error = give_or_take(0.6, FLEECES)
        assert 0.57 - error <= np.mean(off <= 1) <= 0.70 + error
        # A fleece that gives less costs more than one that gives more saves.
        assert np.mean(off <= 2) >= 0.95 - give_or_take(0.95, FLEECES) - 0.02


def test_prices_nearer_than_their_uncertainty_say_little():
    """Of two fleeces that differ by less than their ±, the dearer is often the cheaper; at three times that, seldom."""
    draw = np.random.default_rng(13)
    records, _, kept = zip(*(offered(draw, "raw fleece") for _ in range(FLEECES)), strict=True)
    asked = draw.uniform(35, 85, size=FLEECES)
    named = [
        record | {"name": f"Offer {number}", "price": round(money, 2)}
        for number, (record, money) in enumerate(zip(records, asked, strict=True))
    ]
    price, doubt = said({"offers": named}, "offers_yarn_price", "offers_yarn_price_doubt")
    true = asked / np.array(kept)
    apart = np.abs(price[::2] - price[1::2]) / np.maximum(doubt[::2], doubt[1::2])
    wrong = (price[::2] < price[1::2]) != (true[::2] < true[1::2])
    assert 0.3 <= wrong[apart < 1].mean() <= 0.45
    assert wrong[apart > 3].mean() <= 0.03


KINDS = {  # what is expected to be kept, and what is
    "raw fleece": (0.85 * 0.55 * 0.94 * 0.97, fleece_kept),
    "washed fiber": (0.94 * 0.97, lambda draw: (1 - draw.uniform(0.02, 0.10)) * top_kept(draw)),
    "prepared fiber": (0.97, top_kept),
}


@pytest.mark.parametrize("states", [("prepared fiber",) * 2 + ("raw fleece",) * 2, tuple(KINDS), ("raw fleece",) * 3])
def test_what_is_said_to_cost_least_does(states):
    """As it was, only the next one was compared: of tops that were said to cost least beside fleeces, 95% did; with
    prices half as far apart 85%, and a quarter as far 64%."""
    draw, described = np.random.default_rng(19), planner(Settings(units="metric", fibers=""))
    known = entries_with(described, {"guide": [BREED | {"source": "invented"}]})
    scenarios, least = [], []
    for _ in range(500):
        records, true = [], []
        for number, state in enumerate(states):
            expected, kept = KINDS[state]
            price = round(50 * expected * np.exp(0.2 * draw.normal()), 2)
            records.append(
                {"name": f"Offer {number}", "kind": BREED["name"], "state": state, "weight": 1000.0, "price": price}
            )
            true.append(price / kept(draw))
        scenarios.append(with_records(described, known, "offers", records))
        least.append(f"Offer {int(np.argmin(true))} costs least")
    told = [each["best_words"][0] for each in expected_of_keys(described, scenarios, ["best_words"])]
    right = [words.startswith(true) for words, true in zip(told, least, strict=True) if " costs least" in words]
    assert len(right) >= 20 and np.mean(right) >= 0.95 - give_or_take(0.95, len(right))


def swatched(side: float, step: float, worlds: int = SWATCHES) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """What was estimated, its ±, and what the piece took: knitted not quite as firmly as its swatch, which was
    measured and weighed."""
    draw = np.random.default_rng(14)
    projects, estimates, pieces, took = [], [], [], []
    for number in range(worlds):
        per_area, area, name = draw.uniform(0.025, 0.045), draw.uniform(8_000, 14_000), f"Piece {number}"
        swatch = [side + draw.uniform(-1, 1), side + draw.uniform(-1, 1)]
        weighs = max(step, round(round(swatch[0] * swatch[1] * per_area / step) * step, 6))
        read = [round((each + draw.uniform(-0.2, 0.2)) * 2) / 2 for each in swatch]
        projects.append({"name": name, "grist": 200.0})
        estimates.append(
            {"project": name, "grist": 200.0, "swatch_width": read[0], "swatch_height": read[1], "swatch_mass": weighs}
        )
        pieces.append(
            {"project": name, "part": "all", "shape": "rectangle", "width": 100.0, "height": round(area / 100, 3)}
        )
        took.append(area * per_area * (1 + 0.03 * draw.normal()) * 2)
    need, doubt = said(
        {"projects": projects, "estimates": estimates, "pieces": pieces}, "projects_need", "projects_doubt_need"
    )
    return need, doubt, np.array(took)


@pytest.mark.parametrize(
    "side, step, low, high",
    [
        pytest.param(20.0, 0.1, 0.95, 1.0, id="20 cm, weighed to 0.1 g"),
        pytest.param(15.0, 0.1, 0.95, 1.0, id="15 cm, weighed to 0.1 g"),
        pytest.param(20.0, 1.0, 0.93, 1.0, id="20 cm, weighed to 1 g"),
        # 5% do not hold what a small swatch hides on a coarse scale: the sheet asks about such a weight.
        pytest.param(10.0, 1.0, 0.55, 0.8, id="10 cm, weighed to 1 g"),
    ],
)
def test_a_need_from_a_swatch_is_as_sure_as_stated(side, step, low, high):
    need, doubt, took = swatched(side, step)
    right = float(np.mean(np.abs(took - need) <= 2 * doubt))
    error = give_or_take(0.95, SWATCHES)
    assert low - error <= right <= high, f"{right:.1%}"


def gauged(worlds: int = SWATCHES) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """The same by a gauge: with the yarn of some stitches that were unraveled, or by Munden's relation alone, which is
    within 10 to 15%."""
    draw = np.random.default_rng(16)
    projects, estimates, pieces, took, by_rule = [], [], [], [], []
    for number in range(worlds):
        name, area = f"Piece {number}", draw.uniform(8_000, 14_000)
        stitches, rows = draw.uniform(1.6, 2.8), draw.uniform(2.2, 3.8)  # in a centimeter
        stitch = (1 + draw.uniform(-0.125, 0.125)) * np.sqrt(21.6 / (stitches * rows))
        how = {"relaxed": "wet relaxed"}
        if number % 2:
            how = {"unraveled": round(20 * stitch * (1 + 0.02 * draw.normal())), "unraveled_stitches": 20.0}
        projects.append({"name": name, "grist": 200.0})
        gauge = {"stitches": float(round(stitches * 10)), "rows": float(round(rows * 10))}
        estimates.append({"project": name, "grist": 200.0} | gauge | how)
        pieces.append(
            {"project": name, "part": "all", "shape": "rectangle", "width": 100.0, "height": round(area / 100, 3)}
        )
        took.append(area * stitches * rows * stitch / 100 * (1 + 0.03 * draw.normal()))
        by_rule.append(not number % 2)
    need, doubt = said(
        {"projects": projects, "estimates": estimates, "pieces": pieces}, "projects_need", "projects_doubt_need"
    )
    return need, doubt, np.array(took), np.array(by_rule)


def test_a_need_from_a_gauge_is_as_sure_as_stated():
    """By rule alone it was stated as sure as from a swatch, and twice its doubt held 76%."""
    need, doubt, took, by_rule = gauged()
    right = np.abs(took - need) <= 2 * doubt
    for those in (by_rule, ~by_rule):
        assert right[those].mean() >= 0.95 - give_or_take(0.95, int(those.sum())), f"{right[those].mean():.1%}"


USUAL_CLOTH = {"weave": "plain", "draw_in": 0.07, "shrinkage": 0.1, "take_up": 0.1, "weft_lost": 0.075}


def woven() -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """What cloths were reckoned to take by usual losses, its ±, and what they took: the warp is wound as reckoned, and
    woven until all pieces are done or it ends; the weft is beaten closer or more openly than the sett."""
    draw, typed, took = np.random.default_rng(17), [], []
    for number in range(SWATCHES):
        cloth = {
            "project": f"Cloth {number}",
            "grist": round(draw.uniform(150, 500)),
            "pieces": float(draw.integers(1, 5)),
        }
        cloth |= {"width": round(draw.uniform(25, 90)), "length": round(draw.uniform(60, 220))}
        waste, sett = draw.uniform(40, 90), round(draw.uniform(3, 9) * 2) / 2
        typed.append(cloth | USUAL_CLOTH | {"loom_waste": round(waste / 5) * 5.0, "own_sett": sett})
        wanted = cloth["length"] * cloth["pieces"] / 0.9
        warp, in_reed = wanted / 0.9 + typed[-1]["loom_waste"], cloth["width"] / (0.93 * 0.9)
        beaten = sett * (1 + 0.07 * draw.normal())
        to_weave = min(1.02 * wanted, (warp - waste) * (1 - draw.uniform(0.08, 0.12)))
        weft = beaten * to_weave * in_reed / (1 - draw.uniform(0.05, 0.10))
        took.append((np.ceil(in_reed * sett) * warp * (1 + 0.01 * draw.normal()) + weft) / 100)
    projects = [{"name": each["project"], "grist": each["grist"]} for each in typed]
    return *said({"projects": projects, "weavings": typed}, "projects_need", "projects_doubt_need"), np.array(took)


def woven_of_two_yarns() -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """The wefts of cloths whose warps are of another yarn: as they are beaten in, with no warp to make that less."""
    draw, typed, took = np.random.default_rng(20), [], []
    for number in range(SWATCHES):
        cloth = {"project": f"Warp {number}", "weft_project": f"Weft {number}", "pieces": float(draw.integers(1, 5))}
        cloth |= {"grist": round(draw.uniform(150, 500)), "weft_grist": round(draw.uniform(150, 500))}
        cloth |= {"width": round(draw.uniform(25, 90)), "length": round(draw.uniform(60, 220))}
        sett = round(draw.uniform(3, 9) * 2) / 2
        picks = round(sett * draw.uniform(0.8, 1.2) * 2) / 2
        typed.append(cloth | USUAL_CLOTH | {"loom_waste": 60.0, "own_sett": sett, "own_picks": picks})
        wanted, in_reed = cloth["length"] * cloth["pieces"] / 0.9, cloth["width"] / (0.93 * 0.9)
        to_weave = min(1.02 * wanted, wanted / 0.9 * (1 - draw.uniform(0.08, 0.12)))
        beaten = picks * (1 + 0.07 * draw.normal())
        took.append(beaten * to_weave * in_reed / (1 - draw.uniform(0.05, 0.10)) / 100)
    projects = [
        {"name": each[f"{yarn}project"], "grist": each[f"{yarn}grist"]} for yarn in ("", "weft_") for each in typed
    ]
    need, doubt = said({"projects": projects, "weavings": typed}, "projects_need", "projects_doubt_need")
    return need[SWATCHES:], doubt[SWATCHES:], np.array(took)


def like_another() -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """The same of a piece like one that was weighed in air damper or drier, on a kitchen scale, of a yarn whose grist
    is known to 3%, made a little larger or more firmly."""
    draw, typed, took = np.random.default_rng(18), [], []
    for number in range(SWATCHES):
        mass, grist = np.exp(draw.uniform(np.log(60), np.log(900))), draw.uniform(120, 450)
        weighed = float(round(mass * (1 + draw.uniform(-0.03, 0.03))))
        known = round(grist * (1 + 0.03 * draw.normal()), 1)
        typed.append({"project": f"Piece {number}", "grist": known, "piece_mass": weighed})
        took.append(mass * grist / 100 * (1 + 0.03 * draw.normal()))
    projects = [{"name": each["project"], "grist": each["grist"]} for each in typed]
    return *said({"projects": projects, "estimates": typed}, "projects_need", "projects_doubt_need"), np.array(took)


@pytest.mark.parametrize("world", [woven, woven_of_two_yarns, like_another])
def test_a_need_of_a_cloth_and_of_a_piece_like_it_is_as_sure_as_stated(world):
    """A weft of its own was stated as sure as a whole cloth, and twice its doubt held 84%."""
    need, doubt, took = world()
    assert np.mean(np.abs(took - need) <= 2 * doubt) >= 0.95 - give_or_take(0.95, SWATCHES)


def test_two_lots_leave_the_mean_three_times_as_uncertain_as_three():
    """What the sheet Guide says of its own mean: by the half width of lots of one flock, on average."""
    draw = np.random.default_rng(15)

    def half_width(lots: int) -> float:
        yields = 0.55 * (1 + 0.1 * draw.normal(size=(4_000, lots)))
        return float(np.mean(statistics.half_width(yields.std(axis=1, ddof=1), float(lots))))

    assert 2.9 <= half_width(2) / half_width(3) <= 3.6
