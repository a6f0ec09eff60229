"""Projects: what is not known of the hand that spins for the other projects on the same lots.

A project's own skeins tell how fine its hand spins; of a project that has none yet the plan alone is known. What the
others take of a lot is then off by as much as the plan is.
"""

from collections.abc import Iterator

from workbookgen.language.fields import Result
from workbookgen.language.quantities import MASS, SQUARE_MASS
from workbookgen.reference import sharing
from workbookgen.sheets.supply import STRANDS


def of_the_others() -> Iterator[Result]:
    """What the plan leaves open of a strand's needs, and of those of the other projects on its first lot."""
    others = "sum_where(fiber_needs_hand, fiber_listed, @_lot_a) * @_of_lots - @_hand"
    for strand in STRANDS:
        yield strand.result("hand", "Needs ± by hand", "IF(@_bought = 1, 0, @_needs * doubts_grist * SQRT(1 - learned))", sharing.hand_of_needs, MASS,
                            uses={"needs": "@_needs", "bought": "@_bought", "u_plan": "doubts_grist", "weight": "learned"})
        yield strand.result("others_hand", "Others by hand ±²", f"IF(given(@_lot_a), IF({others} > @_hand * 0.000001, learned * POWER({others}, 2), 0), 0)",
                            sharing.others_hand, SQUARE_MASS,
                            uses={"own": "@_hand", "names": "fiber_listed", "hands": "fiber_needs_hand", "weight": "learned", "lot": "@_lot_a", "part": "@_of_lots"})
