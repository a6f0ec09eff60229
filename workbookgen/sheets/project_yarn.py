"""Projects: questions about the yarn that a piece is to be made of.

Each is asked where the answer would be taken for true, and would send to the shop for nothing, or promise too much.
"""

from collections.abc import Iterator, Mapping

from workbookgen.language.fields import Result, Rule
from workbookgen.language.quantities import LENGTH, NUMBER
from workbookgen.language.sentences import ASKING, UNKNOWN
from workbookgen.reference import belongings
from workbookgen.settings import Settings
from workbookgen.sheets import yarn
from workbookgen.sheets.lookup import lookup
from workbookgen.sheets.supply import PARTS

BOUGHT = 5  # the stage of yarn and thread
OTHER_LOTS = ("lot_2", "lot_3")
PLAIN = {True: "NOT(given(design)), ", False: ""}  # a rule that names what a planner lacks would go


def asked_about() -> Iterator[Result]:
    """What the questions need to know of its lots."""
    for lot in OTHER_LOTS:
        yield lookup(f"{lot}_stage", "Stage", "fiber_stage", lot, NUMBER, digits=0)
    free = " + ".join(f"IF(given(part_{part}_lot_a), sum_where(fiber_free_length, fiber_listed, part_{part}_lot_a), 0)" for part in PARTS)
    yield Result("strands_free", "In free skeins of its strands", free, belongings.free_of_strands, LENGTH,
                 only_if=f"AND(given(design), OR({', '.join(f'given(part_{part}_lot_a)' for part in PARTS)}))",
                 uses={"lots": "fiber_listed", "of_lots": "fiber_free_length"} | {f"lot_{part}": f"part_{part}_lot_a" for part in PARTS},
                 note="Of the lot of a component alone, and of no project.")


def design_unknown(settings: Settings) -> tuple[Rule, ...]:
    """What a design lacks whose shares nobody can tell. It comes before what its lots lack."""
    if yarn.CHAPTER in settings.without:
        return ()
    return (Rule("AND(given(design), NOT(given(used)), NOT(given(part_1_share)))",
                 lambda values: bool(values["design"]) and values["used"] is None and values["part_1_share"] is None,
                 f"{UNKNOWN}: its design is not complete, or no component of it has the No. 1. Look at its lines on the sheet Yarn."),)


def questions(settings: Settings) -> tuple[Rule, ...]:
    has_designs = yarn.CHAPTER not in settings.without
    return (*((_skeins_of_a_strand(),) if has_designs else ()), _fiber_and_bought(has_designs))


def _skeins_of_a_strand() -> Rule:
    """Skeins of a design that were logged with the lot of one of its strands: nobody finds them."""
    return Rule("AND(NOT(given(used)), strands_free > 0.5, more >= 0.5)",
                lambda values: values["used"] is None and values["strands_free"] > 0.5 and values["more"] >= 0.5,
                f"{ASKING} Skeins of a lot of its design belong to no project. If they are of its yarn, choose this project and its design beside them, "
                "in place of the lot.")


def _fiber_and_bought(has_designs: bool) -> Rule:
    """A thread among the lots to spin from: plied along, it would count as so much more of the same yarn."""
    others = ", ".join(f"IF(given({lot}_stage), ABS(IF({lot}_stage >= {BOUGHT}, 1, 0) - part_1_bought) > 0.5, 1 = 0)" for lot in OTHER_LOTS)
    together = "choose their design, from the sheet Yarn, at Its yarn" if has_designs else "choose only the one that runs out first"
    return Rule(f"AND(given(lot_1), {PLAIN[has_designs]}NOT(given(used)), OR({others}))", _is_fiber_and_bought,
                f"{ASKING} Its lots are fiber and bought yarn, and count as if either can replace the other. If they are plied together, {together}.")


def _is_fiber_and_bought(values: Mapping) -> bool:
    stages = [values[f"{lot}_stage"] for lot in OTHER_LOTS]
    differ = any(stage is not None and (stage >= BOUGHT) != (values["part_1_bought"] > 0.5) for stage in stages)
    return bool(values["lot_1"]) and not values.get("design") and values["used"] is None and differ
