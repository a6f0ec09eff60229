"""How twist is inserted: a wheel and its whorls, by treadles per draft; and a spindle, by its rolls or by time."""

from workbookgen.language.domains import Name, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Log
from workbookgen.language.quantities import LOOP, NUMBER, SECONDS, SHARE, TWIST, TWIST_PER_METER
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, MISSING, UNKNOWN
from workbookgen.language.usual import Usual
from workbookgen.language.views import Band, Listing, LogView, Prose, Sentences, band
from workbookgen.reference import overview
from workbookgen.reference import twist as trade
from workbookgen.settings import Settings
from workbookgen.sheets import plausible, usual
from workbookgen.sheets.card_view import asked_and_answered
from workbookgen.sheets.limits import LOSS, PIECES, RATIO, REACH, TURNS, TWISTED
from workbookgen.sheets.lookup import lookup

TREADLES = (1, 2, 3, 4, 6, 8)  # columns of the table

CAUTIONS = (
    "Tie back long hair, sleeves and scarves before the wheel turns. Keep fingers, children and animals away from the band, the spokes and the flyer's hooks; "
    "stop the wheel with your foot or on its rim, never by the flyer. Stand up and stretch every half hour; stop when wrist, shoulder, back or knee hurts.",
)


def bands() -> tuple[Band, ...]:
    """The bands of wheel, whorls and spindle, with the caution first."""
    return (
        band(Prose(title="Before the wheel turns", sentences=CAUTIONS, is_caution=True)),
        asked_and_answered(WHEEL, "inserted", hidden="at best best_treadles best_twist best_exact nearest"),
        band(Listing(title="Your whorls, and the turns they give", block="whorls", view=VIEW,
                     aside="With the draft length, the wheel and the slip above. Counting is the best way to a ratio.")),
        band(Sentences(fields=("wheel_nearest",))),
        asked_and_answered(SPINDLE, "twist", hidden="by_roll by_time"),
    )


VIEW = LogView(
    typed="name stamped flyer turns across",
    answers=(("Turns per inch by treadles to a draft", "ratio " + " ".join(f"twist_{number}" for number in TREADLES)),),
)

WHEEL = Card(
    "wheel",
    "What the wheel puts in",
    groups=(
        Group("You type", (
            Input("flyer", "Turns of the flyer, counted", TURNS, NUMBER,
                  help="Best: mark the flyer, turn the wheel slowly by hand, count. The slip is in it, and it wins over the rest."),
            Input("turns", "In turns of the wheel", TURNS, NUMBER, blank_means=10, help="While you counted; empty means ten."),
            Input("stamped", "Or the ratio stamped on it", RATIO, NUMBER, help="Wins over the diameters: 8 for 8 to 1."),
            Input("wheel", "Drive wheel across", REACH, LOOP, usual=usual.WHEELS, help="Diameter of its groove, where the drive band runs."),
            Input("whorl", "Whorl across", REACH, LOOP, help="Diameter of its groove."),
            Input("band", "Thickness of the band", Number(least=0, most=100), LOOP, blank_means=0, help="It bends along its middle: on a small whorl this counts."),
            Input("slip", "Slip", LOSS, SHARE, blank_means=0, help="Share of the turns that the drive band loses."),
            Input("draft", "Draft length", REACH, LOOP, usual=usual.DRAFT, help="Yarn drafted in one go."),
            Input("treadles", "Treadles for it", PIECES, NUMBER, usual=Usual(most=50), help="Turns of the drive wheel while you draft that length."),
            Input("wanted", "Twist wanted", TWISTED, TWIST, usual=usual.TWISTS, help="The table of whorls finds the nearest to it."),
            Input("wanted_ratio", "Ratio wanted", RATIO, NUMBER, help="To find the whorl for it."),
        )),
        Group("Worked out", (
            Result("geared", "Ratio by the diameters", "(wheel + band) / (whorl + band)", trade.geared, NUMBER, note="Each with the band's thickness."),
            Result("counted", "Ratio by counting", "flyer / turns", trade.counted_ratio, NUMBER),
            Result("ratio", "Drive ratio", "or_else(counted, or_else(stamped, geared) * (1 - slip))", trade.drive_ratio, NUMBER,
                   only_if="OR(given(counted), given(stamped), given(geared))", note="Turns of the flyer for one of the wheel."),
            Result("inserted", "Twist you get", "ratio * treadles / draft", trade.inserted, TWIST, usual=usual.TWISTS_COUNTED),
            Result("treadles_wanted", "Treadles for wanted twist", "wanted * draft / ratio", trade.treadles_for, NUMBER, digits=1, uses={"twist": "wanted"}),
            Result("draft_wanted", "Or draft, for your treadles", "ratio * treadles / wanted", trade.draft_for, LOOP, digits=1, uses={"twist": "wanted"}),
            Result("whorl_wanted", "Whorl for the wanted ratio", "(wheel + band) * (1 - slip) / wanted_ratio - band", trade.whorl_for, LOOP, uses={"ratio": "wanted_ratio"},
                   only_if="(wheel + band) * (1 - slip) > wanted_ratio * band", note="Across its groove; with the slip above, if you typed it."),
            Result("at", "Line of the nearest whorl", "MATCH(MIN(whorls_off), whorls_off, 0)", trade.place_of_least, NUMBER, uses={"amounts": "whorls_off"},
                   only_if="COUNT(whorls_off) > 0", digits=0),
            Result("best", "Nearest whorl", "INDEX(whorls_listed, at)", overview.nth, None, uses={"names": "whorls_listed", "place": "at"}),
            lookup("best_treadles", "With so many treadles", "whorls_nearest", "best", NUMBER, digits=0),
            lookup("best_twist", "It gives", "whorls_gives", "best", TWIST_PER_METER),
            lookup("best_exact", "The twist wanted takes", "whorls_exact", "best", NUMBER, digits=1),
            Result("nearest", "Of your whorls",
                   '"Nearest to the twist wanted: " & best & ", " & IF(best_treadles = 1, "1 treadle", best_treadles & " treadles") & " to a draft: " & '
                   'ROUND(ROUND(best_twist * 0.0254, 9), 1) & " turns per inch (" & ROUND(ROUND(best_twist, 9), 0) & " per meter)" & '
                   'IF(ABS(ROUND(best_treadles / best_exact - 1, 6)) > 0.2, ". That is not near: the twist wanted takes " & ROUND(ROUND(best_exact, 9), 1) & " treadles", "")',
                   trade.nearest_words, None, uses={"name": "best", "treadles": "best_treadles", "twist": "best_twist", "exact": "best_exact"},
                   only_if="AND(best_twist < 1000 / 0.0254, best_exact > 0)", width=40),
        )),
    ),
    rules=(
        Rule("AND(OR(given(treadles), given(whorl)), NOT(given(stamped)), NOT(given(flyer)), NOT(AND(given(wheel), given(whorl))))",
             lambda values: (values["treadles"] is not None or values["whorl"] is not None) and values["stamped"] is None and values["flyer"] is None
             and (values["wheel"] is None or values["whorl"] is None),
             f"{MISSING}: drive wheel and whorl, the ratio stamped on it, or the turns of the flyer."),
        Rule("AND(OR(given(treadles), given(wanted)), NOT(given(draft)))",
             lambda values: (values["treadles"] is not None or values["wanted"] is not None) and values["draft"] is None, f"{MISSING}: draft length."),
        Rule("AND(given(wanted), NOT(given(ratio)), NOT(given(at)))", lambda values: values["wanted"] is not None and values["ratio"] is None and values["at"] is None,
             f"{UNKNOWN}: type the ratio in one of these ways, or your whorls below."),
        Rule("AND(given(wanted_ratio), NOT(given(wheel)))", lambda values: values["wanted_ratio"] is not None and values["wheel"] is None,
             f"{MISSING}: Drive wheel across, for the whorl of the ratio wanted."),
        Rule("stamped < 1", lambda values: values["stamped"] < 1, f"{ASKING} Or the ratio stamped on it: the flyer turns more than the wheel does. Type 8 for 8 to 1."),
        Rule("whorl >= wheel", lambda values: values["whorl"] >= values["wheel"], f"{ASKING} Whorl across: the drive wheel is no larger. Were the two exchanged?"),
    ),
)


def whorls(settings: Settings) -> Log:
    """The log of whorls; slip, band, wheel and draft are on the card."""
    return Log(
        "whorls",
        title="",
        rows=settings.rows.whorls,
        groups=(
            Group("You type", (
                Input("name", "Whorl", Name(), needed=True, width=14, help="What you call this whorl."),
                Input("stamped", "Stamped", RATIO, NUMBER, help="The ratio stamped on it: 8 for 8 to 1."),
                Input("flyer", "Or flyer, counted", TURNS, NUMBER, help="Best: turns of the flyer, counted while you turn the wheel by hand. The slip is in it."),
                Input("turns", "In turns of wheel", TURNS, NUMBER, blank_means=10, help="Turns of the wheel while you counted; empty means ten."),
                Input("across", "Or across", REACH, LOOP, help="Diameter of its groove; wheel and band stand above."),
            )),
            Group("Worked out", (
                Result("ratio", "Ratio", "or_else(counted, or_else(stamped, geared) * (1 - wheel_slip))", trade.drive_ratio, NUMBER,
                       uses={"slip": "wheel_slip"}, only_if="OR(given(counted), given(stamped), given(geared))", digits=1),
                *(
                    Result(f"twist_{number}", "1 treadle" if number == 1 else f"{number} treadles", f"ratio * {number} / wheel_draft", trade.inserted, TWIST,
                           uses={"draft": "wheel_draft"}, fixed={"treadles": float(number)})
                    for number in TREADLES
                ),
            )),
            Group("For other sheets", (
                repeated("listed", "Called", "name", width=14),
                Result("counted", "By counting", "flyer / turns", trade.counted_ratio, NUMBER),
                Result("geared", "By the diameters", "(wheel_wheel + wheel_band) / (across + wheel_band)", trade.geared, NUMBER,
                       uses={"wheel": "wheel_wheel", "whorl": "across", "band": "wheel_band"}),
                Result("exact", "Treadles for wanted twist", "wheel_wanted * wheel_draft / ratio", trade.treadles_for, NUMBER,
                       uses={"twist": "wheel_wanted", "draft": "wheel_draft"}),
                Result("nearest", "Nearest treadles", "MAX(1, MIN(8, ROUNDUP(ROUND(exact, 6) - 0.5, 0)))", trade.nearest_treadles, NUMBER, uses={"treadles": "exact"}, digits=0),
                Result("gives", "They give", "ratio * nearest / wheel_draft", trade.inserted, TWIST_PER_METER, uses={"treadles": "nearest", "draft": "wheel_draft"}),
                Result("off", "Off the wanted", "ROUND(ABS(gives - wheel_wanted), 6)", trade.off_the_wanted, TWIST_PER_METER,
                       uses={"twist": "gives", "wanted": "wheel_wanted"}),
            ), printed=False),
        ),
        rules=(
            Rule("AND(NOT(given(stamped)), NOT(given(flyer)), NOT(given(across)))",
                 lambda values: values["stamped"] is None and values["flyer"] is None and values["across"] is None,
                 f"{MISSING}: its ratio as stamped, the turns of the flyer, or how far it is across."),
            Rule("stamped < 1", lambda values: values["stamped"] < 1, f"{ASKING} Stamped: the flyer turns more than the wheel does. Type 8 for 8 to 1."),
            Rule("AND(given(across), NOT(given(ratio)))", lambda values: values["across"] is not None and values["ratio"] is None,
                 f"{UNKNOWN}: type Drive wheel across, above."),
            Rule("AND(given(ratio), NOT(given(twist_1)))", lambda values: values["ratio"] is not None and values["twist_1"] is None,
                 f"{UNKNOWN}: type Draft length, above."),
        ),
    )


SPINDLE = Card(
    "spindle",
    "What a spindle puts in",
    groups=(
        Group("You type", (
            Input("draft", "Draft length", REACH, LOOP, usual=usual.DRAFT, needed=True, help="Yarn drafted before you wind on."),
            Input("rolled", "Shaft rolled along", REACH, LOOP,
                  help="How far the shaft rolls along the thigh, half as far as the hand goes; for a spindle that stops with the roll."),
            Input("shaft", "Shaft across", REACH, LOOP, help="Its diameter where you roll it."),
            Input("rolls", "Rolls to a draft", PIECES, NUMBER, blank_means=1, help="Empty means one."),
            Input("counted", "Or turns counted", TURNS, NUMBER, help="Best for a spindle that flies on: film it slowly, with a mark on the whorl."),
            Input("seconds", "In so many seconds", TURNS, SECONDS, help="While you counted."),
            Input("lasting", "It spins for", TURNS, SECONDS, help="Time for one draft. It slows down: count to the end, or the turns come out too many."),
            Input("wanted", "Twist wanted", TWISTED, TWIST, usual=usual.TWISTS),
        )),
        Group("Worked out", (
            Result("by_roll", "Turns by the roll", "rolls * rolled / (PI() * shaft)", trade.turns_by_roll, NUMBER, digits=1, note="The shaft turns once in its own circumference."),
            Result("by_time", "Turns by counting", "counted / seconds * lasting", trade.turns_by_time, NUMBER, digits=1),
            Result("turns", "Turns to a draft", "or_else(by_time, by_roll)", trade.spindle_turns, NUMBER, digits=1, only_if="OR(given(by_time), given(by_roll))",
                   note="Counted, or by the roll: once in the shaft's circumference."),
            Result("twist", "Twist you get", "turns / draft", trade.turns_counted, TWIST, usual=usual.TWISTS_COUNTED, uses={"length": "draft"}),
            Result("twist_m", "Twist you get", "turns / draft", trade.turns_counted, TWIST_PER_METER, uses={"length": "draft"}),
            Result("draft_wanted", "Draft for wanted twist", "turns / wanted", trade.draft_of_turns, LOOP, digits=1, uses={"twist": "wanted"}),
            Result("rolls_wanted", "Or rolls, for your draft", "wanted * draft * PI() * shaft / rolled", trade.rolls_for, NUMBER, digits=1, uses={"twist": "wanted"}),
            Result("seconds_wanted", "Or seconds, for your draft", "wanted * draft / counted * seconds", trade.seconds_for, SECONDS, digits=1, uses={"twist": "wanted"}),
        )),
    ),
    rules=(
        Rule("NOT(OR(AND(given(rolled), given(shaft)), AND(given(counted), given(seconds), given(lasting))))",
             lambda values: (values["rolled"] is None or values["shaft"] is None) and None in (values["counted"], values["seconds"], values["lasting"]),
             f"{MISSING}: the shaft and how far it rolls, or turns counted, with both times."),
        plausible.fast(),
        Rule("shaft > rolled", lambda values: values["shaft"] > values["rolled"],
             f"{ASKING} Shaft across: more than it is rolled along. Inches or cm, not mm."),
    ),
)
