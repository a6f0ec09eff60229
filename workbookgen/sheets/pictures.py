"""Pictures: a lot's way from fleece to yarn, skeins by grist, have against need, and the weeks ahead."""

from workbookgen.language.domains import Choice
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chart, Series, Sheet
from workbookgen.language.quantities import MASS
from workbookgen.reference import stock
from workbookgen.settings import Settings
from workbookgen.sheets import fiber

SHEET = "Pictures"
SKEINS_SHOWN = 24


def sheet(settings: Settings) -> Sheet:
    return Sheet(
        SHEET,
        "Pictures",
        "The same numbers, to look at.",
        (WAY, WAY_PICTURE, skeins_picture(settings), HAVE_AND_NEED, WEEKS_AHEAD),
        wide=False,
    )


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

WAY_PICTURE = Chart(
    "From fleece to yarn: weight after each stage",
    "Columns that show the weight of the chosen lot as bought, skirted, washed, prepared, as yarn, and spun so far.",
    categories=("way_bought", "way_spun"),
    series=(Series("Weight", ("way_bought", "way_spun")),),
)


def skeins_picture(settings: Settings) -> Chart:
    shown = min(SKEINS_SHOWN, settings.rows.skeins)
    return Chart(
        f"Grist of the first {shown} skeins, with mean and limits of the lot",
        "Columns that show the grist of each skein in yards per pound, with marks for the mean of its lot and for two standard deviations below and above it.",
        categories=("skeins_name",),
        series=(
            Series("Grist, yd/lb", ("skeins_grist_yd_lb",)),
            Series("Mean of its lot", ("skeins_lot_mean",), marks="square"),
            Series("Limit, low", ("skeins_limit_low",), marks="triangle"),
            Series("Limit, high", ("skeins_limit_high",), marks="diamond"),
        ),
        rows=shown,
    )


HAVE_AND_NEED = Chart(
    "Have against need, project by project",
    "Pairs of columns that show for each project the yarn needed with its margin, and the yarn that the chosen lots give.",
    categories=("projects_name",),
    series=(Series("Needed, margin in", ("projects_length",)), Series("The chosen lots give", ("projects_have",))),
)

WEEKS_AHEAD = Chart(
    "Weeks ahead, project by project",
    "Columns that show how many weeks of work each project still takes at your hours a week.",
    categories=("times_listed",),
    series=(Series("Weeks", ("times_weeks",)),),
)
