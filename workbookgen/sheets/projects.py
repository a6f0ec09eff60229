"""Projects: how much yarn and fiber a piece needs, and whether the chosen lots give it."""

from workbookgen.language.domains import Choice, Name, Number
from workbookgen.language.fields import Group, Input, Result, Rule
from workbookgen.language.parts import Log, Sheet
from workbookgen.language.quantities import GRIST, LENGTH, MASS, SHARE
from workbookgen.reference import project, stock, yarn_count
from workbookgen.settings import Settings
from workbookgen.sheets import fiber

SHEET = "Projects"
LOTS = ("lot_1", "lot_2", "lot_3")
ANY_LOT = "OR(given(lot_1), given(lot_2), given(lot_3))"


def sheet(settings: Settings) -> Sheet:
    return Sheet(
        SHEET,
        "Project need",
        "One line for each project whose yardage you know. Choose up to three lots to spin it from; their finished skeins count first.",
        (projects(settings),),
    )


def projects(settings: Settings) -> Log:
    return Log(
        "projects",
        title="",
        rows=settings.rows.projects,
        groups=(
            Group("You type", (
                Input("name", "Project", Name(), needed=True, width=24),
                Input("wanted", "Yarn wanted", Number(above=0, most=10_000_000), LENGTH, needed=True, help="The yardage that the pattern or your own record states."),
                Input("margin", "Margin", Number(least=0, most=2), SHARE, blank_means=0.1, help="Reserve on top; empty means 10% (common practice: 10 to 15%)."),
                Input("grist", "Grist planned", Number(above=0, most=1_000_000), GRIST, needed=True, help="Grist of the finished yarn."),
                *(
                    Input(lot, label, Choice("fiber_listed", fiber.SHEET), width=20, help="A lot of the sheet Fiber to spin from.")
                    for lot, label in zip(LOTS, ("First lot", "Second lot", "Third lot"), strict=True)
                ),
            )),
            Group("Needed", (
                Result("length", "Yarn, margin in", "wanted * (1 + margin)", project.yarn_length, LENGTH, uses={"length_wanted": "wanted"}),
                Result("yarn", "Yarn", "length / grist", yarn_count.mass_of_length, MASS),
                Result("kept_of_prepared", "Kept in spinning", "pick(fiber_kept_of_prepared, fiber_listed, lot_1)", stock.pick, SHARE,
                       uses={"name": "lot_1", "names": "fiber_listed", "values": "fiber_kept_of_prepared"},
                       note="Of the first lot: share of prepared fiber that becomes yarn."),
                Result("prepared", "Prepared fiber", "yarn / kept_of_prepared", project.fiber_for, MASS, uses={"kept": "kept_of_prepared"}),
                Result("kept", "Kept of the lot", "pick(fiber_kept, fiber_listed, lot_1)", stock.pick, SHARE,
                       uses={"name": "lot_1", "names": "fiber_listed", "values": "fiber_kept"},
                       note="Of the first lot: share of the bought weight that becomes yarn."),
                Result("bought", "Fiber as bought", "yarn / kept", project.fiber_for, MASS,
                       note="Raw fleece or other fiber, in the state in which the first lot was bought."),
            )),
            Group("The chosen lots give", (
                Result("in_skeins", "In skeins", of_lots("fiber_spun_length"), stock.of_lots, LENGTH,
                       uses={"names": "fiber_listed", "amounts": "fiber_spun_length"}, only_if=ANY_LOT,
                       note="Finished length of the skeins already spun from them."),
                Result("to_come", "Still to spin", of_lots("fiber_to_come"), stock.of_lots, MASS,
                       uses={"names": "fiber_listed", "amounts": "fiber_to_come"}, only_if=ANY_LOT,
                       note="Yarn that they can still give."),
                Result("have", "Yarn in all", "in_skeins + to_come * grist", project.length_in_hand, LENGTH, uses={"spun_length": "in_skeins"},
                       note="Skeins, and the rest spun at the planned grist."),
            )),
            Group("Enough?", (
                Result("surplus", "Over or short", "have - length", project.surplus, LENGTH, uses={"need": "length"}),
                Result("verdict", "In words",
                       'IF(surplus >= 0, "enough, " & ROUND(ROUND(surplus / 0.9144, 9), 0) & " yd (" & ROUND(ROUND(surplus, 9), 0) & " m) to spare", '
                       '"short by " & ROUND(ROUND(0 - surplus / 0.9144, 9), 0) & " yd (" & ROUND(ROUND(0 - surplus, 9), 0) & " m)")',
                       project.verdict, None, width=36),
            )),
        ),
        rules=(
            Rule('OR(AND(given(lot_1), lot_1 = lot_2), AND(given(lot_1), lot_1 = lot_3), AND(given(lot_2), lot_2 = lot_3))',
                 _same_lot_twice, "Lots: choose each lot only once."),
        ),
    )


def of_lots(amounts: str) -> str:
    """The sum over the chosen lots, in words."""
    return " + ".join(f"IF(given({lot}), total({amounts}, fiber_listed, {lot}), 0)" for lot in LOTS)


def _same_lot_twice(values) -> bool:
    chosen = [values[lot].lower() for lot in LOTS if isinstance(values[lot], str) and values[lot]]
    return len(chosen) != len(set(chosen))
