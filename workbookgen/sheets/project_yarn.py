"""Projects: questions about the yarn that a piece is to be made of.

Each is asked where the answer looks sound and yet would send someone to the shop for nothing, or promise too much.
"""

from collections.abc import Iterator, Mapping

from workbookgen.language.fields import Result
from workbookgen.language.quantities import LENGTH, NUMBER
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, UNKNOWN
from workbookgen.reference import belongings, planning, project, sharing, strands, uncertainty, used_up
from workbookgen.settings import Settings
from workbookgen.sheets import another_grist, yarn
from workbookgen.sheets.lookup import lookup
from workbookgen.sheets.strand import PARTS

ANOTHER_YARN = 1.6  # times as fine: even first skeins come nearer to their plan; common practice, no source
TIMED = 1.75  # times as fine, for a third more hours: more than a pace is usually off by; common practice, no source
BOUGHT = 5  # the stage of yarn and thread
USED_UNSEEN = 0.25  # of a lot's yarn; common practice, no source: more than its losses are usually off by
OTHER_LOTS = ("lot_2", "lot_3")
PLAIN = {True: "NOT(given(design)), ", False: ""}  # a rule that names what a planner lacks would go


def chosen() -> tuple[Result, ...]:
    """What its skeins look up, to ask whether theirs is another."""
    lots = (("by_lot", "lot_1"), ("by_lot_2", "lot_2"), ("by_lot_3", "lot_3"))
    return (repeated("by_design", "Plied by", "design", width=16), *(repeated(key, "Spun from", lot, width=16) for key, lot in lots))


def asked_about() -> Iterator[Result]:
    """What the questions need to know of its lots."""
    yield Result("wanting", "Still to get yarn", "IF(AND(NOT(given(used)), more >= 0.5), 1, 0)", project.is_wanting, NUMBER, digits=0)
    yield Result("seen_finer", "Fine, beside the plan", "grist_so_far / planned", uncertainty.beside_the_plan, NUMBER, uses={"seen": "grist_so_far"},
                 only_if="AND(grist_so_far > 0, planned > 0)", note="How many times as fine as planned its skeins are.")
    yield Result("beside_timed", "Fine, beside the pace", "planned / pace_timed_grist", planning.fine_beside_the_timed, NUMBER,
                 uses={"timed": "pace_timed_grist", "own": "pace_spinning"}, only_if="AND(planned > 0, pace_timed_grist > 0, NOT(given(pace_spinning)))",
                 note="How many times as fine as the sample by which its hours are reckoned.")
    first, *others = (f"IF(AND(part_{part}_needs > 0, part_{part}_more > 0.05 * part_{part}_needs), 1, 0)" for part in PARTS)
    others = (f"IF(AND(given(part_{part}_more), given(part_{part}_needs)), {each}, 0)" for part, each in zip(PARTS[1:], others, strict=True))
    yield Result("on_the_last", "Strands on the last of a lot", " + ".join((first, *others)), sharing.on_the_last, NUMBER, digits=0,
                 uses={f"{key}_{part}": f"part_{part}_{key}" for part in PARTS for key in ("more", "needs")},
                 note="That count on more of it than is reckoned.")
    for lot in OTHER_LOTS:
        yield lookup(f"{lot}_stage", "Stage", "fiber_stage", lot, NUMBER, digits=0)
    unlike = " + ".join(f"IF(given({lot}_stage), IF(ABS(IF({lot}_stage > {BOUGHT - 0.5}, 1, 0) - part_1_bought) > 0.5, 1, 0), 0)" for lot in OTHER_LOTS)
    yield Result("unlike_lots", "Lots of another kind", unlike, strands.unlike_lots, NUMBER, digits=0, only_if="given(lot_1)",
                 uses={"lot": "lot_1", "bought": "part_1_bought", "stage_2": "lot_2_stage", "stage_3": "lot_3_stage"},
                 note="Bought yarn where the first is to be spun, or the other way round.")
    free = " + ".join(f"IF(given(part_{part}_lot_a), sum_where(fiber_free_length, fiber_listed, part_{part}_lot_a), 0)" for part in PARTS)
    yield Result("strands_free", "In free skeins of its strands", free, belongings.free_of_strands, LENGTH,
                 only_if=f"AND(given(design), OR({', '.join(f'given(part_{part}_lot_a)' for part in PARTS)}))",
                 uses={"lots": "fiber_listed", "of_lots": "fiber_free_length"} | {f"lot_{part}": f"part_{part}_lot_a" for part in PARTS},
                 note="Of the lot of a component alone, and of no project.")
    further = " + ".join(f"IF(AND(given(part_{part}_share), NOT(given(part_{part}_lot_a))), 1, 0)" for part in PARTS[1:])
    yield Result("no_lots", "Components of no lot", f"IF(wanting > 0.5, IF(given(part_1_lot_a), 0, 1) + {further}, 0)", strands.without_a_lot, NUMBER, digits=0,
                 only_if="given(design)",
                 uses={f"share_{part}": f"part_{part}_share" for part in PARTS[1:]} | {f"lot_{part}": f"part_{part}_lot_a" for part in PARTS})
    unseen = " + ".join(f"IF(given(part_{part}_lot_a), IF(sum_where(fiber_unseen, fiber_listed, part_{part}_lot_a) > {USED_UNSEEN}, 1, 0), 0)" for part in PARTS)
    yield Result("unseen", "Strands of it in no skein", f"IF(wanting > 0.5, {unseen}, 0)", used_up.unseen_of_strands, NUMBER, digits=0,
                 uses={"lots": "fiber_listed", "of_lots": "fiber_unseen"} | {f"lot_{part}": f"part_{part}_lot_a" for part in PARTS},
                 note="Whose rest is used, while much of its yarn is in no skein.")


def design_unknown(settings: Settings) -> tuple[Rule, ...]:
    """A note on a design whose shares cannot be worked out. It comes before any about its lots."""
    if yarn.CHAPTER in settings.without:
        return ()
    return (Rule("AND(given(design), NOT(given(used)), NOT(given(part_1_share)))",
                 lambda values: bool(values["design"]) and values["used"] is None and values["part_1_share"] is None,
                 f"{UNKNOWN}: its design is not complete, or no component of it has the No. 1. Look at its lines on the sheet Yarn."),)


def questions(settings: Settings) -> tuple[Rule, ...]:
    has_designs = yarn.CHAPTER not in settings.without
    of_designs = (_of_no_lot(), _skeins_of_a_strand(), another_grist.question()) if has_designs else ()
    return (*of_designs, _used_unseen(), _fiber_and_bought(has_designs=has_designs), _another_yarn(), _nearly_spun())


def _another_yarn() -> Rule:
    """A question about skeins whose grist is far from the planned one: either may be a slip."""
    return Rule(f"AND(NOT(given(used)), OR(ROUND(seen_finer, 9) > {ANOTHER_YARN}, ROUND(seen_finer, 9) < {1 / ANOTHER_YARN}))",
                lambda values: values["used"] is None and not 1 / ANOTHER_YARN <= round(values["seen_finer"], 9) <= ANOTHER_YARN,
                f"{ASKING} Its skeins are far finer than planned, or far coarser. "
                "Look at their wraps and weights, and at the grist planned. Log singles once they are plied.")


def _nearly_spun() -> Rule:
    """A question about a lot whose rest is smaller than its own uncertainty: a look into the basket tells more."""
    return Rule("on_the_last > 0.5", lambda values: values["on_the_last"] > 0.5,
                f"{ASKING} By its weights, a lot of it is nearly spun. If nothing is left of that, say so on the sheet Fiber: its rest is used.")


def timed_on_another() -> Rule:
    """A question about a pace that was timed on a yarn far thicker or finer, so that its hours are another yarn's."""
    return Rule(f"AND(NOT(given(used)), OR(ROUND(beside_timed, 9) > {TIMED}, ROUND(beside_timed, 9) < {1 / TIMED}))",
                lambda values: values["used"] is None and not 1 / TIMED <= round(values["beside_timed"], 9) <= TIMED,
                f"{ASKING} Its hours go by the pace of a sample far thicker or finer than it, on the sheet Time. Four times as fine takes about twice as long: "
                "time a sample of this yarn.")


def _of_no_lot() -> Rule:
    """A question about a component without a lot: none of it counts as there, so it would be bought again."""
    return Rule("no_lots > 0.5", lambda values: values["no_lots"] > 0.5,
                f"{ASKING} A component of its design has no lot, so none of it counts as there. If you have it, choose its lot on the sheet Yarn.")


def _used_unseen() -> Rule:
    """A question about a lot marked as used up while its yarn is still on bobbins, which count nowhere."""
    return Rule("unseen > 0.5", lambda values: values["unseen"] > 0.5,
                f"{ASKING} A lot of it is used, and much of its yarn is in no skein. What is on bobbins counts once it is logged; until then, empty Rest gone.")


def _skeins_of_a_strand() -> Rule:
    """A question about plied skeins that were logged with the lot of one strand, so that no project counts them."""
    return Rule("AND(strands_free > 0.5, wanting > 0.5)", lambda values: values["strands_free"] > 0.5 and values["wanting"] > 0.5,
                f"{ASKING} Skeins of a lot of its design belong to no project. If they are of its yarn, choose this project and its design beside them, "
                "in place of the lot.")


def _fiber_and_bought(*, has_designs: bool) -> Rule:
    """A question about a bought thread among the lots to spin from: it would count as more of the same fiber."""
    together = "choose their design, from the sheet Yarn, at Its yarn" if has_designs else "choose only the one that runs out first"
    return Rule(f"AND({PLAIN[has_designs]}NOT(given(used)), unlike_lots > 0.5)", _is_fiber_and_bought,
                f"{ASKING} Its lots are fiber and bought yarn, and count as if either can replace the other. Plied together? Then {together}.")


def _is_fiber_and_bought(values: Mapping) -> bool:
    return not values.get("design") and values["used"] is None and values["unlike_lots"] > 0.5
