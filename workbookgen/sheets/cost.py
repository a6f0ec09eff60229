"""Cost and price: what went into a project, and a fair price for it."""

from workbookgen.language.domains import Choice, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log
from workbookgen.language.quantities import HOURS, LENGTH, NUMBER, SHARE, Kind, Unit, always, by_length
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Distinct, Rule
from workbookgen.language.sentences import ASKING, UNKNOWN
from workbookgen.language.views import Listing, LogView, band
from workbookgen.reference import cost as trade
from workbookgen.reference import planning
from workbookgen.settings import Settings
from workbookgen.sheets import tabs
from workbookgen.sheets.limits import LOSS, NONE_OR_AMOUNT, NONE_OR_LARGE
from workbookgen.sheets.lookup import lookup

SHEET = tabs.TIME
CHAPTER = "Cost"
MANY_HOURS = 1000  # half a year of working days; common practice, no source


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (costs(settings),), (band(Listing(title="Cost and price", block="costs", view=VIEW, aside="Hours come from above unless you type your own.")),))


VIEW = LogView(
    typed="project fiber thread dye tools rate",
    answers=(("It costs", "material hours price pays_for per_skein"),),
)


def money(settings: Settings) -> Kind:
    """Amounts of money: plain numbers, shown with the currency of the settings."""
    return always(Unit(settings.currency, "dimensionless"))


def per_length(settings: Settings) -> Kind:
    """Money per yard or per meter."""
    yard = Unit(f"{settings.currency}/yd", "1 / yard", "1/0.9144", 3)
    return by_length(yard, Unit(f"{settings.currency}/m", "1 / meter", digits=3))


def costs(settings: Settings) -> Log:
    amount = money(settings)
    return Log(
        "costs",
        title="",
        rows=settings.rows.projects,
        groups=(
            Group("You type", (
                Input("project", "Project", Choice("projects_listed", tabs.PROJECTS), needed=True, width=24),
                Input("fiber", "Fiber", NONE_OR_LARGE, amount, blank_means=0, help="What the fiber in it cost."),
                Input("thread", "Thread", NONE_OR_LARGE, amount, blank_means=0, help="Bought thread or yarn in it."),
                Input("dye", "Dye and wash", NONE_OR_LARGE, amount, blank_means=0),
                Input("tools", "Tools", NONE_OR_LARGE, amount, blank_means=0, help="Its share of wheel, cards, reel."),
                Input("own_hours", "Own hours", NONE_OR_AMOUNT, HOURS, help="Instead of the hours on the sheet Time."),
                Input("rate", "Your hour", NONE_OR_LARGE, amount, help="What an hour of your work is to earn."),
                Input("margin", "On top", Number(least=0, most=20), SHARE, blank_means=0, help="For postage, and the skein that failed: a share of material and work."),
                Input("fees", "Fees", LOSS, SHARE, blank_means=0, help="What the market, shop or card keeps: a share of the price."),
                Input("skeins", "Skeins", Number(least=1, most=10_000, whole=True), NUMBER, help="How many skeins it is sold in."),
            )),
            Group("Cost and price", (
                Result("material", "Material", "fiber + thread + dye + tools", trade.material_cost, amount,
                       only_if="OR(given(fiber), given(thread), given(dye), given(tools))"),
                Result("planned_hours", "Hours planned", "sum_where(times_paid, times_listed, project)", planning.hours_planned, HOURS,
                       uses={"projects": "times_listed", "hours": "times_paid"}, only_if="sum_where(times_paid, times_listed, project) > 0",
                       note="As planned, or more where more is done; of a finished piece the hours done."),
                Result("hours", "Hours", "or_else(own_hours, planned_hours)", planning.hours_in_use, HOURS,
                       uses={"own": "own_hours", "planned": "planned_hours"}, only_if="OR(given(own_hours), given(planned_hours))"),
                Result("labor", "Work", "hours * rate", trade.labor, amount),
                Result("price", "Fair price", "(or_else(material, 0) + or_else(labor, 0)) * (1 + margin) / (1 - fees)", trade.price, amount,
                       uses={"cost": "material"}, only_if="OR(given(material), given(labor))", note="Of what is known: without hours or your hour, it is the material alone."),
                Result("pays_for", "It pays for", 'IF(given(labor), IF(given(material), "both", "work only"), "material only")', trade.paid_for, None,
                       uses={"cost": "material"}, only_if="OR(given(material), given(labor))", width=16),
                lookup("length", "Yarn", "projects_length", "project", LENGTH),
                Result("per_length", "Price of a length", "price / length", trade.per_length, per_length(settings), uses={"money": "price"}),
                Result("per_skein", "Price of a skein", "price / skeins", trade.per_skein, amount, uses={"money": "price"}),
            )),
            Group("For other sheets", (repeated("of", "Of the project", "project", width=24),), printed=False),
        ),
        distinct=(Distinct("of", f"{ASKING} Project: it has another line here, and each counts all its hours. Put all of its cost into one line."),),
        rules=(
            Rule("AND(given(rate), NOT(given(hours)))", lambda values: values["rate"] is not None and values["hours"] is None,
                 f"{UNKNOWN} for your work: its hours are not known. Type them here, or your pace at Your pace above."),
            Rule("margin > 1", lambda values: values["margin"] > 1, f"{ASKING} On top: more than material and work once more. Type 20% with its sign."),
            Rule(f"own_hours > {MANY_HOURS}", lambda values: values["own_hours"] > MANY_HOURS, f"{ASKING} Own hours: more than 1,000. Hours, not minutes."),
        ),
    )
