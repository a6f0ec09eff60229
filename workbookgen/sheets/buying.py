"""Buying: from the yarn that is wanted back to the fiber to buy."""

from workbookgen.language.domains import Choice
from workbookgen.language.fields import Group, Input, Result, Rule
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import FLEECE, GRIST, LENGTH, MASS, NUMBER
from workbookgen.language.sentences import UNKNOWN
from workbookgen.reference import fiber, yarn_count
from workbookgen.settings import Settings
from workbookgen.sheets import guide, lists, plausible, stages, tabs
from workbookgen.sheets.limits import AMOUNT, LARGE
from workbookgen.sheets.lookup import lookup
from workbookgen.sheets.shown import asked_and_answered

SHEET = tabs.FLEECE
CHAPTER = "Buying"


def chapter(settings: Settings) -> Chapter:
    card = buying(settings)
    return Chapter(CHAPTER, (card,), (asked_and_answered(card, "to_buy", hidden="second_loss"),))


def buying(settings: Settings) -> Card:
    return Card(
        "buying",
        "Yarn wanted, fiber needed",
        groups=(
            Group("You type", (
                Input("kind", "Breed or fiber", Choice("guide_listed", guide.SHEET), help="From the guide on the sheet Guide; its usual losses are expected."),
                Input("state", "Buy it as", lists.one_of(lists.STATES), needed=True, starts_as="raw fleece",
                      help="Raw fleece is as shorn, not skirted. Or skirted, washed, prepared, or yarn."),
                Input("length", "Length of yarn wanted", LARGE, LENGTH, needed=True, help="Finished yarn, margin included."),
                Input("grist", "Grist wanted", AMOUNT, GRIST, needed=True, help="Grist of the finished yarn."),
                stages.way(),
                stages.second_way(),
                *stages.own_losses(),
                stages.own_second(),
            )),
            Group("Worked out", (
                Result("yarn", "Weight of yarn", "length / grist", yarn_count.mass_of_length, MASS, note="Length over grist."),
                stages.stage(),
                *stages.guide_losses(),
                stages.guide_yield("expected_yield"),
                stages.second_loss(),
                *stages.weights_up(),
                lookup("fleece_low", "A fleece, from", "guide_fleece_low", "kind", FLEECE, note="Grease weight of one fleece, by the guide."),
                lookup("fleece_high", "A fleece, to", "guide_fleece_high", "kind", FLEECE),
                Result("fleeces", "Fleeces of middle weight", "ROUNDUP(ROUND(to_buy / ((fleece_low + fleece_high) / 2), 6), 0)", fiber.fleeces, NUMBER,
                       uses={"weight": "to_buy"}, only_if="AND(stage = 1, fleece_low <= fleece_high)", digits=0,
                       note="Whole raw fleeces, each of the middle weight. Of light ones you need more: go by the weight to buy."),
            )),
        ),
        rules=(
            Rule("AND(given(stage), given(yarn), NOT(given(to_buy)))", lambda values: None not in (values["stage"], values["yarn"]) and values["to_buy"] is None,
                 f"{UNKNOWN}: a loss or the yield is not known. Choose a breed or fiber, or type your own figures."),
            *plausible.thick(settings.units, grist="Grist wanted"),
        ),
    )
