"""Projects: what is not known of the hand that spins, for the other projects on the same lots and for all strands.

A project's own skeins tell how fine its hand spins; of a project that has none yet the plan alone is known. What the
others take of a lot is then off by as much as the plan is. Within a yarn, one hand spins all strands finer or thicker
together.
"""

from collections.abc import Iterator

from workbookgen.language.fields import Result
from workbookgen.language.quantities import LENGTH, MASS, NUMBER, SQUARE_LENGTH, SQUARE_MASS
from workbookgen.reference import records, sharing, uncertainty
from workbookgen.sheets.strand import PARTS, STRANDS


def of_the_others() -> Iterator[Result]:
    """What the plan leaves open of a strand's needs, and of those of the other projects on its first lot."""
    others = "sum_where(fiber_needs_hand, fiber_listed, @_lot_a) * @_of_lots - @_hand"
    for strand in STRANDS:
        yield strand.result("hand", "Needs ± by hand", "IF(@_bought = 1, 0, @_needs * doubts_grist * SQRT(1 - learned))", sharing.hand_of_needs, MASS,
                            uses={"needs": "@_needs", "bought": "@_bought", "u_plan": "doubts_grist", "weight": "learned"})
        yield strand.result("others_hand", "Others by hand ±²", f"IF(given(@_lot_a), IF({others} > @_hand * 0.000001, learned * POWER({others}, 2), 0), 0)",
                            sharing.others_hand, SQUARE_MASS,
                            uses={"own": "@_hand", "names": "fiber_listed", "hands": "fiber_needs_hand", "weight": "learned", "lot": "@_lot_a", "part": "@_of_lots"})


def apart() -> Iterator[Result]:
    """By how much one strand may be thicker and another finer, which their skeins do not tell."""
    others = " + ".join(f"IF(given(part_{part}_bought), IF(AND(part_{part}_bought = 0, or_else(part_{part}_before, 0) < 0.5), 1, 0), 0)" for part in PARTS[1:])
    yield Result("strands_apart", "Strands apart", f"IF(part_1_bought = 0, 1, 0) + {others}", uncertainty.strands_apart, NUMBER, digits=0,
                 uses={f"bought_{part}": f"part_{part}_bought" for part in PARTS} | {f"before_{part}": f"part_{part}_before" for part in PARTS[1:]})
    yield Result("apart", "Apart, ±²", "IF(strands_apart > 1, ROUND(learned * doubts_grist * doubts_grist / (2 * MAX(2, strands_apart)), 15), 0)",
                 uncertainty.apart_in_common, NUMBER, digits=5, uses={"u_plan": "doubts_grist", "weight": "learned", "count": "strands_apart"},
                 note="Relative: skeins are weighed as a whole, and do not tell which strand is the thicker one.")
    yield Result("in_its_yarn", "In skeins of its yarn", "sum_where(projects_in_skeins, projects_by_design, design)", records.sum_where, LENGTH,
                 uses={"name": "design", "names": "projects_by_design", "amounts": "projects_in_skeins"}, note="Of all projects of its design.")
    for strand in STRANDS:
        yield strand.result("apart", "By its skeins ±²", "IF(@_bought = 1, 0, MAX(0, strands_apart - 1) * apart * POWER(@_pool + in_its_yarn * @_share / (planned * finer), 2))",
                            uncertainty.apart_square, SQUARE_MASS, only_if="AND(planned > 0, finer > 0)",
                            uses={"count": "strands_apart", "apart": "apart", "in_skeins": "in_its_yarn", "planned": "planned", "ratio": "finer"}
                            | {key: f"@_{key}" for key in ("pool", "share", "bought")})


def in_common() -> Iterator[Result]:
    """What the shortest of the strands so far and the next one have in common, if all of them are spun."""
    shortest = "part_1_come"
    for part in PARTS[1:]:
        spun = ", ".join(f"part_{each}_bought = 0" for each in PARTS[:part])
        yield Result(f"lesser_{part}_shared", f"In common with {part}, ±²", f"IF(AND({spun}), hand_doubt * hand_doubt / 2 * MAX(0, {shortest}) * MAX(0, part_{part}_come) "
                     f"- apart * (MAX(0, {shortest}) + in_its_yarn) * (MAX(0, part_{part}_come) + in_its_yarn), 0)",
                     uncertainty.hand_in_common, SQUARE_LENGTH,
                     uses={"first": shortest, "second": f"part_{part}_come", "u_hand": "hand_doubt", "in_skeins": "in_its_yarn"}
                     | {f"bought_{each}": f"part_{each}_bought" for each in PARTS[:part]},
                     leaves=tuple(f"bought_{each}" for each in PARTS[part:]))
        shortest = f"lesser_{part}"
    any_bought = ", ".join(("part_1_bought = 1", *(f"or_else(part_{part}_bought, 0) = 1" for part in PARTS[1:])))
    yield Result("hand_shared", "All strands together, ±²", f"IF(OR({any_bought}), 0, hand_doubt * hand_doubt / 2)", uncertainty.shared_by_all, NUMBER, digits=5,
                 uses={"u_hand": "hand_doubt"} | {f"bought_{part}": f"part_{part}_bought" for part in PARTS},
                 note="Relative: what one hand spins finer or thicker, all strands alike.")
