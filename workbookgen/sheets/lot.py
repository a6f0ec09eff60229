"""Lot: the life of one lot, from what was bought to yarn."""

from workbookgen.language.domains import Choice
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import MASS
from workbookgen.reference import stock
from workbookgen.settings import Settings
from workbookgen.sheets import fiber
from workbookgen.sheets.shown import asked_and_answered

SHEET = "Lot"
CHAPTER = "Lot"


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (WAY,), (asked_and_answered(WAY, "yarn"),))


def _of_lot(key: str, label: str, column: str) -> Result:
    return Result(key, label, f"pick({column}, fiber_listed, lot)", stock.pick, MASS,
                  uses={"name": "lot", "names": "fiber_listed", "values": column})


WAY = Card(
    "way",
    "One lot, from what was bought to yarn",
    groups=(
        Group("You type", (
            Input("lot", "Fiber lot", Choice("fiber_listed", fiber.SHEET), help="Choose a lot to see its way."),
        )),
        Group("Weights", (
            _of_lot("bought", "Bought", "fiber_weight"),
            _of_lot("skirted", "Skirted", "fiber_skirted"),
            _of_lot("washed", "Washed", "fiber_scoured"),
            _of_lot("prepared", "Prepared", "fiber_prepared"),
            _of_lot("yarn", "Yarn", "fiber_yarn"),
            _of_lot("spun", "Spun so far", "fiber_spun"),
        )),
    ),
)
