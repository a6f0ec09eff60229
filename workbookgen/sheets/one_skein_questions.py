"""The log's questions about a skein (`skein_questions`), asked of one that is tried out on the sheet Measure."""

from workbookgen.language.cases import first_of
from workbookgen.language.fields import Result
from workbookgen.language.sentences import ASKING
from workbookgen.reference import measuring
from workbookgen.sheets import plausible, skein_questions


def unusual() -> Result:
    """The first of them that applies to what was measured."""
    questions = (
        (f"given_and(used_loop, used_loop < {plausible.SHORTEST_LOOP})",
         "Loop: under 20 cm (8 in) all the way around. Look at the unit: yards or meters are too large for it."),
        (f"given_and(net, net > {skein_questions.HEAVY_SKEIN})", "Weight: more than a kilogram (2 lb) for one skein. Look at the unit: grams, or ounces?"),
        (f"given_and(net, net < {skein_questions.LIGHT_SKEIN})", "Weight: less than 3 g (0.1 oz) for a skein. Look at the unit: grams, or ounces?"),
        (_is_far("used_washed_loop", "used_loop", skein_questions.SHORTEST_WASHED, skein_questions.LONGEST_WASHED),
         "Loop washed: far from the loop of its reel. Was it wound on another? Measure one full loop, all the way around, not the length of the folded skein."),
        (_is_far("used_counted_wpi", "expected_wpi", skein_questions.FEWEST_WRAPS, skein_questions.MOST_WRAPS),
         "Wraps counted: far from what its length and weight suggest. Look at the wraps, the weight, and the count on the ruler."),
        (_is_long("used_rest", "used_loop", "used_wraps"), f"Rest: more than {skein_questions.LONGEST_REST} turns of its reel. Look at its unit."),
    )
    return Result("unusual", "Unlike most skeins", f'"{ASKING} " & ' + first_of(*((condition, f'"{sentence}"') for condition, sentence in questions)), measuring.unusual, None,
                  uses={"loop": "used_loop", "mass": "net", "washed_loop": "used_washed_loop", "counted": "used_counted_wpi", "expected": "expected_wpi", "rest": "used_rest",
                        "wraps": "used_wraps"},
                  only_if=f"OR({', '.join(condition for condition, _ in questions)})")


def _is_long(rest: str, loop: str, wraps: str) -> str:
    is_longer = f"AND({wraps} > 0, ROUND({rest} - {skein_questions.LONGEST_REST} * {loop}, 9) > 0)"
    return f"IF(AND(given({rest}), given({loop}), given({wraps})), {is_longer}, 1 = 0)"


def _is_far(word: str, expected: str, least: float, most: float) -> str:
    share = f"ROUND({word} / {expected}, 9)"
    return f"IF(AND(given({word}), given({expected})), IF({expected} > 0, OR({share} < {least}, {share} > {most}), 1 = 0), 1 = 0)"
