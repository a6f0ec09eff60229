"""Scouring: loads, water, heat and detergent for a fleece washed by hand."""


from workbookgen.language.cases import first_of
from workbookgen.language.domains import Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import (
    DOSE,
    FINE_MASS,
    HOURS,
    LIQUID,
    LIQUOR,
    MASS,
    MINUTES,
    NUMBER,
    SHARE,
    TEMPERATURE,
    VOLUME,
)
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import MISSING
from workbookgen.language.usual import Usual
from workbookgen.language.views import Prose, band
from workbookgen.reference import cost, scouring
from workbookgen.settings import Settings
from workbookgen.sheets import tabs, usual
from workbookgen.sheets.card_view import asked_and_answered
from workbookgen.sheets.limits import AMOUNT, BATH, HEAT, NONE_OR_AMOUNT, NONE_OR_PART, PART
from workbookgen.units import Quantity

SHEET = tabs.FLEECE
CHAPTER = "Scouring"
LARGEST_BATH = Usual(most=Quantity(200, "liter"), hint="Look at the unit of the weight of a load: grams, or ounces?")  # more than a bathtub holds; common practice, no source
# Four heavy fleeces, a kilogram at a time; common practice, no source.
MOST_LOADS = Usual(most=40.0, hint="Look at the unit of both weights: pounds or kilograms are too large for it.")


def chapter(settings: Settings) -> Chapter:
    bands = (
        band(Prose(title="Read this first", sentences=CAUTIONS, is_caution=True)),
        asked_and_answered(WATER, "loads", "clean"),
        asked_and_answered(WATERS, "becomes", "to_add"),
        band(Prose(title="In the bath", sentences=IN_THE_BATH, is_small=True)),
    )
    return Chapter(CHAPTER, (WATER, WATERS), bands, CAUTIONS)


CAUTIONS = (
    "Scalds: a severe burn of grown skin takes some minutes at 49 °C (120 °F), half a minute at 54 °C (130 °F), less than 5 seconds at 60 °C (140 °F) "
    "by published tables of burns (read). Children burn sooner. No bath that melts wool grease is safe for bare hands: long gloves, "
    "a tool to press and lift with, no children or animals near, and never lift a full pot.",
    "Raw fleece and its dust can carry disease (Q fever, orf, ringworm, anthrax where it occurs): gloves, a dust mask, no dry shaking or sweeping indoors, "
    "no eating, washed hands. If you are pregnant, your defenses are weak, or a heart valve is damaged, keep away and ask a doctor.",
    "Grease and dirt block drains and septic tanks: strain the water, and follow your local rules for waste water. Detergent by its label.",
    "Wet wool is heavy: lift it in a net or a basket, a part at a time.",
)

IN_THE_BATH = (
    "Wool grease melts at about 40 °C (104 °F): keep the water well above that until the fleece is out of it, or the grease sets again. "
    "Fine wool is washed with soap at 54 to 60 °C (130 to 140 °F), by a published handbook of dyeing (read): that burns bare hands. The rest is common practice.",
    "With a tool, press the fleece under and leave it. Rubbing, stirring, and sudden changes of heat felt it: let the next water be as warm as the last.",
    "To warm a bath again, lift the fleece out with a tool, add hot water slowly at the rim, stir, and measure before it goes back: hot water poured on wool felts it, "
    "and what splashes scalds. Pot and wool take some of the heat: believe the thermometer.",
)

BURNS = (
    (101, "hotter than water boils: °F or °C?"),
    (60, "scalds in under 5 seconds: gloves, tools"),
    (57, "scalds in 5 to 10 seconds: gloves, tools"),
    (54, "scalds in 10 to 30 seconds: gloves, tools"),
    (52, "scalds in 30 to 120 seconds: gloves, tools"),
    (48.8, "scalds in minutes: gloves, tools"),  # tables have 120 °F, which is a little less than 49 °C
    (45, "can scald if it lasts: gloves, tools"),
)


def _at(heat: str, cool: str = "too cool: wool grease sets") -> str:
    """Formula text of a caution about water of this temperature."""
    return first_of(*((f"ROUND({heat}, 9) >= {least}", f'"{words}"') for least, words in BURNS), otherwise=f'"{cool}"')


WATER = Card(
    "scouring",
    "Water, heat, detergent",
    groups=(
        Group("You type", (
            Input("mass", "Fleece to wash", AMOUNT, MASS, needed=True, help="Grease weight."),
            Input("load", "In one load", AMOUNT, MASS, needed=True, help="What your pot or tub holds loosely."),
            Input("ratio", "Water to wool", BATH, LIQUOR, usual=usual.WATER_TO_GOODS, needed=True, starts_as=Quantity(30, "liter / kilogram"),
                  help="20 to 40 liters a kilogram, 2.4 to 4.8 gallons a pound (common practice, no source)."),
            Input("washes", "Washes", Number(least=1, most=20, whole=True), NUMBER, usual=Usual(most=6), needed=True, starts_as=2.0,
                  help="Two with detergent (F. Beech 1902, read; common practice since)."),
            Input("rinses", "Rinses", Number(least=0, most=20, whole=True), NUMBER, usual=Usual(least=1, most=8), needed=True, starts_as=2.0),
            Input("minutes", "Minutes each", Number(above=0, most=1000), MINUTES, usual=usual.MINUTES_IN_A_BATH, needed=True, starts_as=Quantity(30, "minute"),
                  help="About half an hour (F. Beech 1902, read)."),
            Input("hot", "Hot tap or kettle", HEAT, TEMPERATURE, usual=usual.LIQUID_WATER, needed=True, starts_as=Quantity(140, "degree_Fahrenheit")),
            Input("cold", "Cold tap", HEAT, TEMPERATURE, usual=usual.LIQUID_WATER, needed=True, starts_as=Quantity(55, "degree_Fahrenheit")),
            Input("target", "Bath wanted", HEAT, TEMPERATURE, needed=True, starts_as=Quantity(135, "degree_Fahrenheit"),
                  help="130 to 140 °F, 54 to 60 °C, not above with alkali (F. Beech 1902, read)."),
            Input("detergent", "Detergent", NONE_OR_PART, SHARE, usual=Usual(most=0.1), needed=True, starts_as=0.02,
                  help="Share of the grease weight, 1 to 3% (common practice), or as its label says."),
            Input("by_water", "Or liquid, by the water", Number(above=0, most=200), DOSE,
                  help="As the label of a liquid detergent says; it then counts instead of the share above."),
            Input("yield_expected", "Scoured yield expected", PART, SHARE, usual=usual.SCOURED_YIELD, needed=True, starts_as=0.55, help="See the guide on the sheet Guide."),
            Input("price_water", "Cost of a load", NONE_OR_AMOUNT, NUMBER, help="Water, heat and detergent, in your currency."),
        )),
        Group("Worked out", (
            Result("loads", "Loads", "ROUNDUP(ROUND(mass / load, 6), 0)", scouring.loads, NUMBER, digits=0, usual=MOST_LOADS),
            Result("full", "A full load", "MIN(load, mass)", scouring.full_load, MASS),
            Result("liquor", "Water for one bath", "full * ratio", scouring.liquor, VOLUME, usual=LARGEST_BATH, uses={"mass": "full", "liquor_ratio": "ratio"},
                   note="For a full load."),
            Result("hot_water", "Of it hot", "liquor * (target - cold) / (hot - cold)", scouring.hot_water, VOLUME,
                   uses={"volume": "liquor"}, only_if="AND(cold <= target, target <= hot, cold < hot)", note="Heat of the mix is the heat of its parts."),
            Result("cold_water", "Of it cold", "liquor - hot_water", scouring.cold_water, VOLUME, uses={"volume": "liquor"}),
            Result("baths", "Baths for a load", "washes + rinses", scouring.baths_in_all, NUMBER, digits=0),
            Result("water_load", "Water for a load", "liquor * baths", scouring.water_in_all, VOLUME),
            Result("dose", "Detergent for a wash", "full * detergent", scouring.detergent, FINE_MASS, uses={"mass": "full", "share": "detergent"}, only_if="NOT(given(by_water))"),
            Result("liquid", "Liquid for a wash", "liquor * by_water", scouring.liquid_detergent, LIQUID, uses={"dose": "by_water"}, note="For a full load."),
            Result("time_load", "Time for a load", "baths * minutes", scouring.bath_time, HOURS, uses={"minutes_each": "minutes"},
                   note="In the water, without filling and drying."),
            Result("water_all", "Water for the fleece", "mass * ratio * baths", scouring.water_of_fleece, VOLUME, uses={"liquor_ratio": "ratio"}, note="All loads, all baths."),
            Result("dose_all", "Detergent for the fleece", "mass * detergent * washes", scouring.detergent_of_fleece, FINE_MASS, uses={"share": "detergent"},
                   only_if="NOT(given(by_water))", note="All loads, all washes."),
            Result("liquid_all", "Liquid for the fleece", "mass * ratio * by_water * washes", scouring.liquid_of_fleece, LIQUID,
                   uses={"liquor_ratio": "ratio", "dose": "by_water"}, note="All loads, all washes."),
            Result("time_all", "Time for the fleece", "loads * time_load", scouring.time_of_fleece, HOURS, uses={"time_each": "time_load"},
                   note="In the water, one load after the other."),
            Result("clean", "Clean wool expected", "mass * yield_expected", scouring.clean_mass, MASS, uses={"scoured_yield": "yield_expected"}),
            Result("removed", "Grease and dirt", "mass * (1 - yield_expected)", scouring.removed, MASS, uses={"scoured_yield": "yield_expected"},
                   note="All of it goes into your water."),
            Result("cost", "Cost in all", "loads * price_water", cost.in_all, NUMBER, uses={"count": "loads", "each": "price_water"}, note="In your currency."),
            Result("words", "The bath", _at("target"), scouring.temperature_words, None, uses={"temperature": "target"}),
            Result("hot_words", "The hot water", _at("hot"), scouring.temperature_words, None, uses={"temperature": "hot"}),
        )),
    ),
    rules=(
        Rule("hot <= cold", lambda values: values["hot"] <= values["cold"], "Hot tap or kettle: it must be hotter than the cold tap."),
        Rule("OR(target < cold, target > hot)", lambda values: values["target"] < values["cold"] or values["target"] > values["hot"],
             "Bath wanted: it must lie between cold and hot."),
    ),
)


def _lacks_water(values: dict) -> bool:
    is_there = {key: values[key] is not None for key in ("volume", "added", "target", "wanted")}
    return not (is_there["volume"] and (is_there["added"] or is_there["target"]) or is_there["wanted"] and is_there["target"])


FROM_POT, TO_ADDED = "(target - temperature)", "(added_temperature - target)"

WATERS = Card(
    "waters",
    "Hot and cold water together",
    groups=(
        Group("You type", (
            Input("volume", "Water in the pot", AMOUNT, VOLUME),
            Input("temperature", "Its temperature", HEAT, TEMPERATURE, usual=usual.LIQUID_WATER, help="Measured, not guessed."),
            Input("added", "Water you add", AMOUNT, VOLUME, help="To see what it becomes."),
            Input("added_temperature", "Temperature of that", HEAT, TEMPERATURE, usual=usual.LIQUID_WATER, help="Hotter than what is in the pot, or colder."),
            Input("target", "Temperature wanted", HEAT, TEMPERATURE, help="To see how much to add."),
            Input("wanted", "Or water wanted in all", AMOUNT, VOLUME, help="To fill an empty pot from both."),
        )),
        Group("Worked out", (
            Result("becomes", "It becomes", "(volume * temperature + added * added_temperature) / (volume + added)", scouring.mixed_temperature, TEMPERATURE),
            Result("to_add", "To add for the wanted", f"volume * {FROM_POT} / {TO_ADDED}", scouring.to_add, VOLUME,
                   only_if=f"AND({FROM_POT} * {TO_ADDED} >= 0, ABS({TO_ADDED}) > 0.000001)", note="Of what you add, to all that is in the pot."),
            Result("part", "In all: of what you add", f"wanted * {FROM_POT} / (added_temperature - temperature)", scouring.part_of_mix, VOLUME, uses={"volume": "wanted"},
                   only_if=f"AND({FROM_POT} * {TO_ADDED} >= 0, ABS(added_temperature - temperature) > 0.000001)"),
            Result("rest", "and of the other", "wanted - part", scouring.cold_water, VOLUME, uses={"volume": "wanted", "hot_water": "part"}),
            Result("words", "What it becomes", _at("becomes"), scouring.temperature_words, None, uses={"temperature": "becomes"}),
            Result("target_words", "What you want", _at("target"), scouring.temperature_words, None, uses={"temperature": "target"}),
            Result("added_words", "What you add", _at("added_temperature", cool="cool: look at what it becomes"), scouring.added_words, None,
                   uses={"temperature": "added_temperature"}),
        )),
    ),
    rules=(
        Rule("NOT(given(temperature))", lambda values: values["temperature"] is None, f"{MISSING}: Its temperature, of the water in the pot."),
        Rule("NOT(given(added_temperature))", lambda values: values["added_temperature"] is None, f"{MISSING}: Temperature of that, of the water you add."),
        Rule("NOT(OR(AND(given(volume), OR(given(added), given(target))), AND(given(wanted), given(target))))", _lacks_water,
             f"{MISSING}: how much water, and what you add to it or the temperature wanted."),
        Rule(f"{FROM_POT} * {TO_ADDED} < 0", lambda values: (values["target"] - values["temperature"]) * (values["added_temperature"] - values["target"]) < 0,
             "Temperature wanted: it must lie between that of the pot and that of what you add."),
    ),
)
