"""Blends: fibers mixed by weight, and what that makes of price, fineness and moisture."""

from workbookgen.language.automatic import MESSAGE
from workbookgen.language.domains import Name
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter, Log
from workbookgen.language.quantities import (
    DENSITY,
    DTEX,
    FIBER_DIAMETER,
    FINE_MASS,
    IN_METERS,
    MASS,
    SHARE,
    Kind,
    Unit,
    always,
)
from workbookgen.language.views import LEFT, Answers, Band, Entries, Headline, Listing, LogView
from workbookgen.reference import blends, overview, records
from workbookgen.settings import Settings
from workbookgen.sheets import tabs, usual
from workbookgen.sheets.cost import money
from workbookgen.sheets.limits import AMOUNT, CLOSE, DENSE, FINENESS, NONE_OR_AMOUNT, NONE_OR_PART
from workbookgen.sheets.offers import per_mass

SHEET = tabs.YARN
CHAPTER = "Blends"
SQUARE_METERS = always(Unit("m²", "meter ** 2"))
WOOL = "1310000"  # grams in a cubic meter


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (fibers(settings), mix(settings)), (
        Band((
            Listing(title="A blend", block="blend", view=VIEW, is_printed=False,
                    aside="Fineness in µm or in dtex. Where a price, a fineness or a regain is not known of every fiber, the blend has none."),
        )),
        Band((
            Entries(title="To lay out", fields=("mix_wanted",), across=LEFT, is_printed=False),
            Answers(title="The blend", large=(Headline("mix_price", "Price"), Headline("mix_diameter", "Mean fiber diameter")), lines=("mix_total", "mix_fineness", "mix_regain"),
                    message=f"mix_{MESSAGE.key}", is_printed=False),
        )),
    ))


VIEW = LogView(typed="name mass price diameter dtex density regain", answers=(("In the blend", "share lay_out"),))


def fibers(settings: Settings) -> Log:
    amount = money(settings)
    of_density = f"or_else(density, {WOOL})"
    return Log(
        "blend",
        title="",
        rows=settings.rows.blend,
        groups=(
            Group("You type", (
                Input("name", "Fiber", Name(), needed=True, help="What you call it."),
                Input("mass", "Weight", AMOUNT, MASS, needed=True, help="Of it in the blend. For shares, type 70 and 30."),
                Input("price", "Price", NONE_OR_AMOUNT, per_mass(settings)),
                Input("diameter", "Diameter", CLOSE, FIBER_DIAMETER, usual=usual.FIBERS, help="Of the fiber."),
                Input("dtex", "Or dtex", FINENESS, DTEX, help="Of one fiber, as mills state it; it wins."),
                Input("density", "Density", DENSE, DENSITY, help="Empty means wool, 1.31. Silk 1.34, cotton 1.52, nylon 1.14, polyester 1.39."),
                Input("regain", "Regain", NONE_OR_PART, SHARE, help="Wool 13.6%, silk 11%, flax and hemp 12%, cotton 8.5%."),
            )),
            Group("In the blend", (
                Result("share", "Share", "weighed / mix_total", blends.share_of_blend, SHARE, uses={"mass": "weighed", "total": "mix_total"}),
                Result("lay_out", "Lay out", "share * mix_wanted", blends.to_lay_out, FINE_MASS, uses={"wanted": "mix_wanted"}, note="For the weight wanted below."),
            )),
            Group("For the means", (
                Result("weighed", "Weight", "mass", blends.weighed, MASS, only_if='name <> ""'),
                Result("cost", "Cost", "weighed * price", blends.cost_of, amount, uses={"mass": "weighed"}),
                Result("fineness", "Fineness", f"or_else(dtex, PI() / 4 * diameter * diameter * {of_density})", blends.fineness, DTEX,
                       uses={"own": "dtex", "fiber_diameter": "diameter", "fiber_density": "density"}, only_if="OR(given(dtex), given(diameter))"),
                Result("thickness", "Thickness", f"or_else(diameter, SQRT(4 * fineness / (PI() * {of_density})))", blends.thickness, FIBER_DIAMETER,
                       uses={"linear_density": "fineness", "fiber_diameter": "diameter", "fiber_density": "density"}),
                Result("length", "All end to end", "weighed / fineness", blends.fiber_length, IN_METERS, uses={"mass": "weighed", "linear_density": "fineness"}),
                Result("side", "Length by thickness", "length * thickness", blends.fiber_side, SQUARE_METERS, uses={"fiber_diameter": "thickness"}),
                Result("dry", "Dry weight", "weighed / (1 + regain)", blends.dry_at_regain, MASS, uses={"mass": "weighed"}),
            ), printed=False),
        ),
    )


def mix(settings: Settings) -> Card:
    def sum_of(key: str, label: str, column: str, unit: Kind) -> Result:
        return Result(key, label, f"sum(blend_{column})", records.sum_of, unit, uses={"amounts": f"blend_{column}"})

    def count_of(column: str) -> Result:
        return Result(f"count_{column}", "Known of", f"COUNT(blend_{column})", overview.how_many, uses={"amounts": f"blend_{column}"}, digits=0)

    return Card("mix", "The blend", groups=(
        Group("You type", (
            Input("wanted", "Blend wanted", AMOUNT, MASS, help="To lay out of each fiber: for one batt, or for the whole lot."),
        )),
        Group("Worked out", (
            sum_of("total", "Fiber in all", "weighed", MASS),
            *(count_of(column) for column in ("weighed", "cost", "length", "dry")),
            sum_of("cost", "It costs", "cost", money(settings)),
            sum_of("length", "All end to end", "length", IN_METERS),
            sum_of("side", "Length by thickness", "side", SQUARE_METERS),
            sum_of("dry", "Dry weight", "dry", MASS),
            Result("price", "Price", "cost / total", blends.blend_price, per_mass(settings), uses={"known": "count_cost", "of": "count_weighed"},
                   only_if="AND(total > 0, count_cost = count_weighed)"),
            Result("fineness", "Mean fineness", "total / length", blends.mean_fineness, DTEX, digits=2, uses={"known": "count_length", "of": "count_weighed"},
                   only_if="AND(length > 0, count_length = count_weighed)", note="Of one fiber."),
            Result("diameter", "Mean fiber diameter", "side / length", blends.mean_diameter, FIBER_DIAMETER, uses={"known": "count_length", "of": "count_weighed"},
                   only_if="AND(length > 0, count_length = count_weighed)", note="By number of fibers: fine ones have more to a weight."),
            Result("regain", "Regain", "total / dry - 1", blends.blend_regain, SHARE, uses={"known": "count_dry", "of": "count_weighed"},
                   only_if="AND(dry > 0, count_dry = count_weighed)"),
        )),
    ))
