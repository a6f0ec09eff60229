"""Buying: from the yarn that is wanted back to the fiber to buy."""

from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import FLEECE, GRIST, LENGTH, MASS, NUMBER, SHARE
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import UNKNOWN
from workbookgen.reference import fiber, yarn_count
from workbookgen.settings import Settings
from workbookgen.sheets import guide, lists, plausible, stages, tabs, usual
from workbookgen.sheets.card_view import asked_and_answered
from workbookgen.sheets.limits import AMOUNT, LARGE
from workbookgen.sheets.lookup import lookup
from workbookgen.sheets.offers import DOUBTED

SHEET = tabs.FLEECE
CHAPTER = "Buying"


def chapter(settings: Settings) -> Chapter:
    card = buying(settings)
    return Chapter(CHAPTER, (card,), (asked_and_answered(
        card, "sure", "to_buy", hidden="stage breed_carding breed_combing second_loss yield_spread yield_doubt preparation_doubt second_doubt kept_doubt",
        captions=("To buy, as sure as you ask", "To buy, by the middle figures"),
    ),))


COUNTED_ON = "1 - doubts_z * SQRT(kept_doubt * kept_doubt + POWER(IF(stage > 4, doubts_batch, doubts_grist), 2))"
SURE = {
    "uses": {"bought": "to_buy", "u_kept": "kept_doubt", "u_grist": "doubts_grist", "u_batch": "doubts_batch", "coverage": "doubts_z"},
    "only_if": f"{COUNTED_ON} > 0.1",
}


def _doubts() -> tuple[Result, ...]:
    """The uncertainty of what is kept, from the stages still ahead."""
    squares = (f"IF(stage > {number}, 0, POWER(IF(given({own}), doubts_own, {expected}), 2))" for number, own, expected in DOUBTED)
    return (
        lookup("yield_spread", "Yield ±", "guide_used_spread", "kind", SHARE),
        Result("yield_doubt", "Yield, relative ±", "IF(AND(given(yield_spread), given(expected_yield)), yield_spread / expected_yield, doubts_own)",
               fiber.yield_uncertainty, SHARE, uses={"u_own": "doubts_own", "spread": "yield_spread", "published": "expected_yield"}, fixed={"u_handful": 0.0},
               leaves=("samples",), only_if="blank_or(expected_yield, expected_yield > 0)"),
        Result("preparation_doubt", "Preparation, relative ±", f"IF({stages.COMBED}, doubts_combing, doubts_preparation)", fiber.preparation_uncertainty, SHARE,
               uses={"u_carding": "doubts_preparation", "u_combing": "doubts_combing"}),
        Result("second_doubt", "Second preparation, relative ±",
               f"IF(given(own_second), IF(own_second > 0, doubts_own, 0), IF(given(second_way), IF({stages.COMBED_AGAIN}, doubts_combing, doubts_preparation), 0))",
               fiber.second_uncertainty, SHARE,
               uses={"u_own": "doubts_own", "u_carding": "doubts_preparation", "u_combing": "doubts_combing", "own": "own_second", "way": "second_way"}),
        Result("kept_doubt", "Kept, relative ±", f"SQRT({' + '.join(squares)} + IF(stage > 4, 0, POWER(second_doubt, 2)))", fiber.kept_uncertainty, SHARE,
               uses={"u_skirting": "doubts_skirting", "u_yield": "yield_doubt", "u_preparation": "preparation_doubt", "u_second": "second_doubt",
                     "u_spinning": "doubts_spinning", "u_own": "doubts_own"}),
    )


def buying(settings: Settings) -> Card:
    skirting, *others = stages.guide_losses()
    return Card(
        "buying",
        "Yarn wanted, fiber needed",
        groups=(
            Group("You type", (
                guide.kind(),
                Input("state", "Buy it as", lists.one_of(lists.STATES), needed=True, starts_as="raw fleece",
                      help="Raw fleece is as shorn, not skirted. Or skirted, washed, prepared, or yarn."),
                Input("length", "Length of yarn wanted", LARGE, LENGTH, usual=usual.IN_A_PIECE, needed=True, help="Finished yarn, reserve included."),
                Input("grist", "Grist wanted", AMOUNT, GRIST, needed=True, help="Grist of the finished yarn."),
                stages.way(),
                stages.second_way(),
                *stages.own_losses(),
                stages.own_second(),
            )),
            Group("Worked out", (
                Result("yarn", "Weight of yarn", "length / grist", yarn_count.mass_of_length, MASS, note="Length over grist."),
                stages.stage(),
                skirting,
                stages.guide_yield("expected_yield"),  # in the order of the work
                *others,
                stages.second_loss(),
                *stages.weights_up(),
                *_doubts(),
                Result("sure", "To be as sure as you ask", f"to_buy / ({COUNTED_ON})", fiber.surely_before, MASS, **SURE,
                       note="By what the sheet Sureness says of the stages ahead and of your grist. To buy is the middle figure: half the time it gives less."),
                Result("sure_by_fleece", "To buy, as sure", f"to_buy / ({COUNTED_ON})", fiber.surely_before, FLEECE, **SURE,
                       note="The weight above, as fleeces are weighed."),
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
