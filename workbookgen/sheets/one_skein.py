"""What a skein's length, weight and wraps say, both on the sheet Measure and in the log."""

from dataclasses import dataclass

from workbookgen.language.fields import Result
from workbookgen.language.forms import BETWEEN_THOUSANDS
from workbookgen.language.quantities import LENGTH, SQUARE_LENGTH
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import MISSING, UNKNOWN
from workbookgen.reference import diameter, uncertainty

# Its net weight in both units; under 10 g each with one decimal more. Hundredths are put together of whole numbers:
# joined to a text, Gnumeric writes a hundredth as 0.0099999999999999999998. Their mark is the program's own, as it puts
# it into 1.5.
_HUNDREDTHS = "ROUND(ROUND(ROUND(net / 28.349523125, 9), 2) * 100, 0)"
_LITTLE = (
    f'IF({_HUNDREDTHS} < 1, "0", "0" & MID(1.5 & "", 2, 1) & IF({_HUNDREDTHS} < 10, "0", "") & '
    f'IF(ABS({_HUNDREDTHS} - 10 * ROUND({_HUNDREDTHS} / 10, 0)) < 0.5, ROUND({_HUNDREDTHS} / 10, 0), {_HUNDREDTHS}))'
)


def parted(number: str) -> str:
    """Formula text of a whole number below a million as text, with its thousands parted."""
    thousands = f"ROUNDDOWN({number} / 1000, 0)"
    return f'IF({number} < 1000, {number} & "", {thousands} & {BETWEEN_THOUSANDS} & RIGHT("00" & ({number} - 1000 * {thousands}), 3))'


IT_WEIGHS = (
    f'IF(ROUND(net, 9) < 10, {_LITTLE}, ROUND(ROUND(net / 28.349523125, 9), 1)) & " oz (" & '
    f'IF(ROUND(net, 9) < 10, ROUND(ROUND(net, 9), 1) & "", {parted("ROUND(ROUND(net, 9), 0)")}) & " g)"'
)


@dataclass(frozen=True)
class Words:
    """What a block calls what a skein's length is known by."""

    finished: str
    wraps: str
    loop: str
    loop_doubt: str
    washed_loop: str
    shrinkage: str
    shrinkage_sample: str


def length_doubts(words: Words) -> dict[str, Result]:
    """How sure a skein's length is, part by part, by what it shares with other skeins; by key."""
    finished, washed = words.finished, words.washed_loop
    results = (
        Result("count_part", "± by wraps", f"{finished} / {words.wraps} * doubts_miscount", uncertainty.counted, LENGTH,
               uses={"finished": finished, "wraps": words.wraps, "u_wraps": "doubts_miscount"}, only_if=f"{words.wraps} > 0"),
        Result("tape_part", "± by tape", f"{finished} * doubts_taping / {washed}", uncertainty.taped, LENGTH,
               uses={"finished": finished, "washed_loop": washed, "u_tape": "doubts_taping"}),
        Result("own_square", "Its own ±²", "count_part * count_part + IF(given(tape_part), tape_part * tape_part, 0)", uncertainty.own_square, SQUARE_LENGTH),
        Result("reel_part", "± by reel", f"{finished} * {words.loop_doubt} / {words.loop}", uncertainty.by_reel, LENGTH,
               uses={"finished": finished, "loop": words.loop, "u_loop": words.loop_doubt, "washed_loop": washed}, only_if=f"NOT(given({washed}))",
               note="Where the washed loop is measured, the reel cancels."),
        Result("slack_part", "± by slack", f"{finished} * doubts_slack", uncertainty.by_slack, LENGTH,
               uses={"finished": finished, "u_slack": "doubts_slack", "washed_loop": washed}, only_if=f"{washed} > 0"),
        Result("shrink_part", "± by shrinkage", f"{finished} * IF(given({words.shrinkage_sample}), doubts_sampled, doubts_usual) / (1 - {words.shrinkage})",
               uncertainty.by_shrinkage, LENGTH,
               uses={"finished": finished, "shrinkage": words.shrinkage, "u_usual": "doubts_usual", "u_sampled": "doubts_sampled", "sampled": words.shrinkage_sample,
                     "washed_loop": washed},
               only_if=f"AND(NOT(given({washed})), {words.shrinkage} < 0.9)"),
        Result("doubt", "Length ±",
               "SQRT(own_square + IF(given(reel_part), reel_part * reel_part, 0) + IF(given(slack_part), slack_part * slack_part, 0) + IF(given(shrink_part), "
               "shrink_part * shrink_part, 0))",
               uncertainty.skein_uncertainty, LENGTH, uses={"own": "own_square"}, note="Standard uncertainty of this skein alone (JCGM 100)."),
    )
    return {each.key: each for each in results}


def weight_class(**more) -> Result:
    """The yarn weight classes that wraps per inch belong to: the coarsest and the finest, since they overlap."""
    coarsest = "class_of(classes_name, classes_past, wpi * 0.9999999)"
    finest = "class_of(classes_name, classes_from, wpi * 1.0000001)"
    return Result("weight_class", "Yarn weight class", f'IF({coarsest} = {finest}, {finest}, {coarsest} & " to " & {finest})',
                  diameter.yarn_weight_class, None, uses={"wraps": "wpi"}, **more)


def without_a_loop() -> tuple[Rule, ...]:
    """On the sheet Measure: wraps of an unknown loop give no length, whether the reel or the log lacks it."""
    return (
        Rule("AND(given(reel), NOT(given(loop)), NOT(given(reel_loop)))",
             lambda values: bool(values["reel"]) and values["loop"] is None and values["reel_loop"] is None,
             f"{UNKNOWN}: the loop of this reel is not known. Look at its line on the sheet Reels, or type one loop of it."),
        Rule("AND(given(skein), NOT(given(log_fault)), NOT(given(reel)), NOT(given(loop)), NOT(given(log_loop)))",
             lambda values: bool(values["skein"]) and not any(values[each] for each in ("log_fault", "reel", "loop", "log_loop")),
             f"{UNKNOWN}: its line on the sheet Skeins says what it still needs."),
        Rule("AND(given(wraps), NOT(given(skein)), NOT(given(reel)), NOT(given(loop)))",
             lambda values: values["wraps"] is not None and not any(values[each] for each in ("skein", "reel", "loop")),
             f"{MISSING}: the reel, or one loop of it."),
    )
