"""Dyeing: cautions first; then dye, stock, bath and assistants for goods of a known weight."""

from dataclasses import replace

from workbookgen.language.domains import Choice, Note, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter, Log
from workbookgen.language.quantities import DYE, DYE_BATH, LIQUOR, MASS, NUMBER, SHARE, STOCK
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, UNKNOWN
from workbookgen.language.views import LEFT, RIGHT, Listing, LogView, Prose, Sentences, band
from workbookgen.reference import dyeing, scouring
from workbookgen.settings import Rows, Settings
from workbookgen.sheets import fiber, plausible, skeins, tabs, usual
from workbookgen.sheets.card_view import asked_and_answered
from workbookgen.sheets.limits import AMOUNT, BATH, PART
from workbookgen.sheets.lookup import lookup
from workbookgen.units import Quantity

SHEET = tabs.FLEECE
CHAPTER = "Dyeing"
# A program may take .5 in a cell of percentages for 50% (from memory). Powders are 4% of the goods for a black, stocks
# 0.1 to 2% (common practice, no source).
DEEP = STRONG = 0.1
LARGEST_BATH = 60  # liters, of which two people hardly lift the pot; common practice, no source
SPUN_BEFORE = 0.02  # of a lot's washed weight; common practice, no source

CAUTIONS = (
    "Dye, mordant and acid in powder: a dust mask for fine dust, gloves and eye protection while you weigh and stir, in still air, and the lid back on at once. "
    "First read the label and the safety data sheet of each product: they come before anything here.",
    "Pots, spoons, jars and scales that dye has touched are never used for food again. No eating or drinking there; children and animals stay away. "
    "Label every jar with what is in it, how strong, and the date, and keep it out of reach.",
    "A hot bath scalds: long gloves, a tool to lift with, and nobody lifts a full pot. Keep the lid on and the room aired, and do not breathe the steam.",
    "Add acid to water, never water to acid. Do not mix products unless their labels say so: acid and bleach make a poisonous gas.",
    "Chrome, tin and copper as mordants harm people and water: leave them out. Alum and iron too go by their labels, and iron is poison to small children.",
    "Spent baths and rinse water: follow the label and your local rules for waste. Do not pour them on the ground or into a stream.",
)


def chapter(settings: Settings) -> Chapter:
    bands = (
        band(Prose(title="Before you dye", sentences=CAUTIONS, is_caution=True)),
        asked_and_answered(BATH, "dye", "stock", hidden="of_skein of_lot lot_spun lot_stage lot_washed shares shade"),
        band(
            Listing(title="What goes in", block="recipe", view=VIEW, across=LEFT, aside="One dye alone needs no line for itself."),
            Sentences(fields=("dyeing_shade",), across=RIGHT),
        ),
    )
    return Chapter(CHAPTER, (BATH, replace(RECIPE, rows=settings.rows.recipe)), bands, CAUTIONS)


VIEW = LogView(typed="name . of_shade of_goods", answers=(("For this bath", "mass volume"),))


BATH = Card(
    "dyeing",
    "Dye, stock and bath",
    groups=(
        Group("You type", (
            Input("mass", "Goods, weighed dry", AMOUNT, MASS, help="Or choose below."),
            Input("skein", "Or a skein", Choice("skeins_listed", skeins.SHEET), help="Its net weight is taken."),
            Input("lot", "Or a washed lot", Choice("fiber_listed", fiber.SHEET), help="Its washed weight, weighed or expected."),
            Input("depth", "Depth of shade", Number(above=0, most=10), SHARE, help="Dye as a share of the dry goods; its label says how much."),
            Input("strength", "Strength of stock", PART, SHARE, needed=True, starts_as=0.01, help="1 g in 100 mL is 1%."),
            Input("ratio", "Bath to goods", BATH, LIQUOR, usual=usual.WATER_TO_GOODS, needed=True, starts_as=Quantity(30, "liter / kilogram"),
                  help="20 to 40 liters a kilogram (common practice, no source)."),
            Input("made", "Stock to make", AMOUNT, STOCK, help="How much of it you want to have."),
        )),
        Group("Worked out", (
            lookup("of_skein", "The skein weighs", "skeins_net", "skein", MASS),
            lookup("of_lot", "The lot weighs", "fiber_scoured", "lot", MASS),
            lookup("lot_spun", "The lot is spun", "fiber_spun", "lot", MASS),
            lookup("lot_stage", "Its stage", "fiber_stage", "lot", NUMBER, digits=0),
            lookup("lot_washed", "Weighed, washed", "fiber_scoured_weighed", "lot", MASS),
            Result("goods", "Goods", "or_else(mass, or_else(of_skein, of_lot))", dyeing.goods, MASS,
                   uses={"weighed": "mass", "skein": "of_skein", "lot": "of_lot"},
                   only_if="OR(given(mass), given(of_skein), given(of_lot))", note="Dry, as weighed."),
            Result("dye", "Dye", "goods * depth", dyeing.dye, DYE),
            Result("stock", "As stock", "dye / strength / 1000", dyeing.stock, STOCK, digits=1),
            Result("bath", "Bath in all", "goods * ratio", scouring.liquor, DYE_BATH, uses={"mass": "goods", "liquor_ratio": "ratio"}),
            Result("water", "Of it water", "bath - stock", dyeing.water, DYE_BATH, only_if="stock <= bath", note="Besides the stock."),
            Result("shares", "Dyes come to", "sum(recipe_counted)", dyeing.whole_of, SHARE, uses={"shares": "recipe_counted"}, only_if="sum(recipe_counted) > 0"),
            Result("shade", "The shade",
                   'IF(ABS(shares - 1) < 0.000000001, "The dyes make up the whole shade.", IF(shares < 1, '
                   '"The dyes come to less than 100%: weighed so, the shade will be paler than you asked for.", '
                   '"The dyes come to more than 100%: weighed so, the shade will be deeper than you asked for."))',
                   dyeing.shade_words, None, uses={"total": "shares"}),
            Result("powder", "Powder for the stock", "made * 1000 * strength", dyeing.powder, DYE, uses={"volume": "made"},
                   note="Dissolve it, then fill up to the volume."),
            Result("colors", "That stock dyes", "powder / depth", dyeing.dyes, MASS, note="Of dry goods."),
        )),
    ),
    rules=(
        Rule("AND(given(depth), NOT(given(mass)), NOT(given(skein)), NOT(given(lot)))",
             lambda values: values["depth"] is not None and values["mass"] is None and values["skein"] is None and values["lot"] is None,
             "Still to fill in: the goods, or choose a skein or a lot."),
        Rule("AND(given(skein), given(lot))", lambda values: values["skein"] is not None and values["lot"] is not None,
             "Choose a skein or a lot, not both."),
        Rule("AND(given(mass), OR(given(skein), given(lot)))", lambda values: values["mass"] is not None and bool(values["skein"] or values["lot"]),
             f"{ASKING} Goods: the weight that is typed wins over the skein or the lot. Empty it to take that of the chosen one."),
        Rule("AND(OR(given(skein), given(lot)), NOT(given(goods)))", lambda values: bool(values["skein"] or values["lot"]) and values["goods"] is None,
             f"{UNKNOWN}: what is chosen has no weight yet. Weigh it, or type the goods."),
        Rule("AND(NOT(given(mass)), lot_stage < 2.5, NOT(given(lot_washed)))",
             lambda values: values["mass"] is None and values["lot_stage"] < 2.5 and values["lot_washed"] is None,
             f"{ASKING} Or a washed lot: it was not weighed when washed. What is expected of a fleece may be off by a quarter, and the shade with it. Weigh what you dye."),
        Rule(f"AND(NOT(given(mass)), ROUND(lot_spun / of_lot, 9) > {SPUN_BEFORE})",
             lambda values: values["mass"] is None and round(values["lot_spun"] / values["of_lot"], 9) > SPUN_BEFORE,
             f"{ASKING} Or a washed lot: some of it is spun, and all of it is taken here. Type the weight of what you dye."),
        Rule(f"depth >= {DEEP}", lambda values: values["depth"] >= DEEP,
             f"{ASKING} Depth of shade: a tenth of the weight of the goods or more may be right for plants, not for a dye powder. Type 2% with its sign."),
        Rule(f"strength >= {STRONG}", lambda values: values["strength"] >= STRONG,
             f"{ASKING} Strength of stock: 1 g in 100 mL is 1%. Type it with its sign."),
        Rule(f"bath > {LARGEST_BATH}", lambda values: values["bath"] > LARGEST_BATH,
             f"{ASKING} Goods: their bath would be more than 60 liters (16 gallons). Look at the unit: grams, or ounces? Or dye a part at a time."),
        Rule("stock > bath", lambda values: values["stock"] > 1000 * values["bath"],  # milliliters, liters
             f"{ASKING} More stock than the whole bath: make it stronger, or the bath larger."),
    ),
)


RECIPE = Log(
    "recipe",
    title="",
    rows=Rows().recipe,
    groups=(
        Group("You type", (
            Input("name", "What", Note(), width=20, help="A dye, or what helps it: acid, salt, alum."),
            Input("of_shade", "A dye: of the shade", PART, SHARE, help="Dyes mixed in one shade come to 100% together."),
            Input("of_goods", "Other: of the goods", Number(above=0, most=10), SHARE, help="As its label or your recipe says, of the dry weight."),
        )),
        Group("For this bath", (
            Result("mass", "Weigh", "IF(given(of_shade), dyeing_dye * of_shade, dyeing_goods * of_goods)", dyeing.to_weigh, DYE,
                   uses={"dye": "dyeing_dye", "goods": "dyeing_goods"},
                   only_if="OR(AND(given(dyeing_dye), given(of_shade)), AND(given(dyeing_goods), given(of_goods), NOT(given(of_shade))))"),
            Result("volume", "Or of its stock", "dyeing_dye * of_shade / dyeing_strength / 1000", dyeing.stock_of, STOCK, digits=1,
                   uses={"dye": "dyeing_dye", "strength": "dyeing_strength"}),
        )),
        Group("For the card", (
            Result("counted", "Counted in the shade", "of_shade", dyeing.in_shade, SHARE),
        ), printed=False),
    ),
    rules=(
        Rule("AND(given(of_shade), given(of_goods))", lambda values: values["of_shade"] is not None and values["of_goods"] is not None,
             "A line is a dye or something else: give one of the two shares."),
        Rule("AND(given(name), NOT(given(of_shade)), NOT(given(of_goods)))",
             lambda values: values["name"] is not None and values["of_shade"] is None and values["of_goods"] is None,
             "Still to fill in: its share of the shade, or of the goods."),
        Rule("AND(given(of_shade), NOT(given(mass)))", lambda values: values["of_shade"] is not None and values["mass"] is None,
             f"{UNKNOWN}: type the goods and the depth of shade above."),
        Rule("AND(given(of_goods), NOT(given(mass)))", lambda values: values["of_goods"] is not None and values["mass"] is None,
             f"{UNKNOWN}: type the goods above, or choose a skein or a lot there."),
        plausible.helper_of_dye(),
    ),
)
