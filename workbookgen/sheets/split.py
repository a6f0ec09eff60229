"""A purchase divided among several people: weights to the scale's step, money to the coin, with nothing left over."""

from workbookgen.language.automatic import MESSAGE
from workbookgen.language.domains import Name, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Block, Card, Log
from workbookgen.language.quantities import FINE_MASS, MASS, NUMBER
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Rule
from workbookgen.language.views import LEFT, RIGHT, Answers, Band, Entries, Listing, LogView, Sentences, band
from workbookgen.reference import records, split
from workbookgen.settings import Settings
from workbookgen.sheets.cost import money
from workbookgen.sheets.limits import AMOUNT, PIECES
from workbookgen.sheets.lookup import lookup
from workbookgen.unit_systems import UNIT_SYSTEMS
from workbookgen.units import Quantity


def blocks(settings: Settings) -> tuple[Block, ...]:
    return together(settings), members(settings)


def bands() -> tuple[Band, ...]:
    return (
        band(
            Entries(title="Bought together, and divided", fields=tuple(f"split_{key}" for key in ("mass", "money", "step", "coin"))),
            Answers(title="Divided", lines=("split_divided", "split_paid"), message=f"split_{MESSAGE.key}", across=LEFT, is_below=True),
            Listing(title="Who gets what", block="members", view=VIEW, across=RIGHT),
        ),
        band(Sentences(fields=("split_words",))),
    )


VIEW = LogView(typed="name wanted parts", answers=(("Gets", "weight pays"),))


MOST_STEPS = 10_000_000  # a hundred kilograms by hundredths of a gram; the sixth decimal of more steps is noise


def together(settings: Settings) -> Card:
    amount, in_ounces = money(settings), UNIT_SYSTEMS[settings.units].masses == "ounces"
    return Card("split", "Bought together, and divided", groups=(
        Group("You type", (
            Input("mass", "Weight in all", AMOUNT, MASS, needed=True, help="As your scale shows it, without packing."),
            Input("money", "Money in all", AMOUNT, amount, help="With the shipping."),
            Input("step", "Step of your scale", Number(least=0.01 if in_ounces else 0.1, most=1000), MASS, needed=True,
                  starts_as=Quantity(0.1, "ounce") if in_ounces else Quantity(1, "gram"),
                  help="The smallest difference that it shows."),
            Input("coin", "Smallest coin", Number(least=0.01, most=1000), amount, needed=True, starts_as=0.01, help="What money is rounded to."),
        )),
        Group("Worked out", (
            Result("divided", "Weight divided", "sum(members_weight)", split.handed_out, FINE_MASS, uses={"amounts": "members_weight"}, only_if="COUNT(members_weight) > 0"),
            Result("paid", "Money divided", "sum(members_pays)", split.handed_out, amount, uses={"amounts": "members_pays"}, only_if="COUNT(members_pays) > 0"),
            Result("words", "In words",
                   'IF(given(fit), IF(ROUND(fit, 9) < 1, "They want more than there is: each gets less than wanted, all in proportion" '
                   '& IF(parts > 0, ", and nothing is left for the others.", "."), '
                   'IF(parts > 0, IF(ROUND(fit, 9) > 1, "Each gets the weight wanted, and the others divide the rest.", "Each gets the weight wanted, '
                   'and nothing is left for the others."), '
                   'IF(ROUND(fit, 9) > 1, "They want less than there is: each gets more than wanted, all in proportion. '
                   'To keep the rest apart, give it a line without a weight.", "Each gets the weight wanted."))), '
                   '"All of it is divided by parts.") & '
                   'IF(OR(mass_left > 0, given_and(money_left, money_left > 0)), " What is less than " & IF(mass_left > 0, "a step of the scale", "") & '
                   'IF(AND(mass_left > 0, given_and(money_left, money_left > 0)), " and ", "") & IF(given_and(money_left, money_left > 0), "a coin", "") '
                   '& " stays undivided.", "")',
                   split.split_in_words, None, uses={"in_all": "due"}, only_if="due > 0", width=60),
        )),
        _steps_and_parts(),
    ), rules=(
        Rule(f"mass / step > {MOST_STEPS}", lambda values: values["mass"] / values["step"] > MOST_STEPS, "Step of your scale: too fine for so much. Type a coarser one."),
        Rule(f"money / coin > {MOST_STEPS}", lambda values: values["money"] / values["coin"] > MOST_STEPS, "Smallest coin: too small for so much. Type a larger one."),
    ))


def _steps_and_parts() -> Group:
    """What the division is reckoned from: whole steps and coins, what is wanted, and what is left over."""
    return Group("", (
        Result("steps", "Steps of the scale", "ROUNDDOWN(ROUND(ROUND(mass / step, 9), 6), 0)", split.whole_steps, NUMBER, uses={"amount": "mass"}, digits=0,
               only_if=f"mass / step <= {MOST_STEPS}"),
        Result("mass_left", "Less than a step", "ROUND(ROUND(mass / step - steps, 9), 6)", split.undivided, NUMBER, uses={"amount": "mass"}),
        Result("coins", "Coins", "ROUNDDOWN(ROUND(ROUND(money / coin, 9), 6), 0)", split.whole_steps, NUMBER, uses={"amount": "money", "step": "coin"}, digits=0,
               only_if=f"money / coin <= {MOST_STEPS}"),
        Result("money_left", "Less than a coin", "ROUND(ROUND(money / coin - coins, 9), 6)", split.undivided, NUMBER,
               uses={"amount": "money", "step": "coin", "steps": "coins"}),
        Result("wanted", "Weights wanted", "sum(members_asked)", records.sum_of, MASS, uses={"amounts": "members_asked"}),
        Result("fit", "Of the weights wanted", "mass / wanted", split.of_the_wanted, NUMBER, only_if="wanted > 0"),
        Result("parts", "Parts", "sum(members_part)", records.sum_of, NUMBER, uses={"amounts": "members_part"}),
        Result("rest", "For parts", "MAX(0, mass - wanted)", split.for_parts, MASS),
        Result("due", "Due to all", "sum(members_claim)", records.sum_of, MASS, uses={"amounts": "members_claim"}),
        Result("left", "Steps left", "steps - sum(members_whole)", split.steps_left, NUMBER, uses={"amounts": "members_whole"}, digits=0),
        Result("last", "Last turn", "LARGE(members_turn, left)", split.last_turn, NUMBER, uses={"amounts": "members_turn"}, digits=0,
               only_if="AND(left >= 1, left <= COUNT(members_turn))"),
        Result("left_coins", "Coins left", "coins - sum(members_coins_whole)", split.steps_left, NUMBER, uses={"steps": "coins", "amounts": "members_coins_whole"}, digits=0),
        Result("last_coin", "Last turn, coins", "LARGE(members_coins_turn, left_coins)", split.last_turn, NUMBER, digits=0,
               uses={"left": "left_coins", "amounts": "members_coins_turn"}, only_if="AND(left_coins >= 1, left_coins <= COUNT(members_coins_turn))"),
    ), printed=False)


def members(settings: Settings) -> Log:
    amount = money(settings)
    return Log(
        "members",
        title="Members",
        rows=settings.rows.members,
        groups=(
            Group("You type", (
                Input("name", "Who", Name(), needed=True, width=13, help="One line for each, and one for what is kept apart."),
                Input("wanted", "Wants", AMOUNT, MASS, help="A weight; or leave it empty, to take a part of what the others leave."),
                Input("parts", "Or parts", PIECES, NUMBER, blank_means=1, help="Of what is not wanted by weight: 2 is twice as much as 1. Empty: one part."),
            )),
            Group("Gets", (
                Result("weight", "Gets", "got * split_step", split.of_steps, FINE_MASS, uses={"steps": "got", "step": "split_step"}, note="In whole steps of the scale."),
                Result("pays", "Pays", "coins * split_coin", split.of_steps, amount, uses={"steps": "coins", "step": "split_coin"},
                       note="By the weight that is got, in whole coins."),
            )),
            Group("Worked out", (
                lookup("line", "Line", "members_own_line", "name", NUMBER, digits=0),
                Result("asked", "Asks for", "wanted", split.asked, MASS, only_if="line >= 1"),
                Result("part", "Parts", "IF(given(wanted), 0, parts)", split.part, NUMBER, only_if="line >= 1"),
                Result("claim", "Is due", "or_else(wanted, split_rest * part / split_parts)", split.claim, MASS, uses={"rest": "split_rest", "parts": "split_parts"},
                       only_if="IF(given(wanted), 1 = 1, split_parts > 0)"),
                *_shared("", "split_steps", due="claim", in_all="split_due", last="split_last"),
                *_shared("coins_", "split_coins", due="got", in_all="split_steps", last="split_last_coin"),
                repeated("listed", "Called", "name", width=13),
            ), printed=False),
        ),
        rules=(
            Rule("AND(given(wanted), given(parts))", lambda values: values["wanted"] is not None and values["parts"] is not None,
                 "Or parts: leave it empty where a weight is wanted."),
        ),
    )


def _shared(key: str, steps: str, *, due: str, in_all: str, last: str) -> tuple[Result, ...]:
    """Whole steps for each member, by the method of largest remainders."""
    exact, whole, turn = f"{key}exact", f"{key}whole", f"{key}turn"
    return (
        Result(exact, "Exact share", f"ROUND(ROUND({steps} * ({due} / {in_all}), 9), 6)", split.exact, NUMBER, uses={"steps": steps, "due": due, "in_all": in_all},
               only_if=f"{in_all} > 0"),
        Result(whole, "Whole steps", f"ROUNDDOWN({exact}, 0)", split.whole, NUMBER, uses={"exact": exact}, digits=0),
        Result(turn, "Turn", f"ROUND(({exact} - {whole}) * 1000000, 0) * 1000 + 1000 - line", split.turn, NUMBER, uses={"exact": exact, "whole": whole}, digits=0),
        Result("got" if not key else "coins", "Steps", f"{whole} + IF(given({last}), IF({turn} >= {last}, 1, 0), 0)", split.given_out, NUMBER, digits=0,
               uses={"whole": whole, "turn": turn, "last": last}),
    )
