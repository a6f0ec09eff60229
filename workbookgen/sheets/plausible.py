"""Questions about what was typed: accepted as it is, but unlike what people usually have.

Each is a rule that asks. Its condition is written for the formula in meters and grams, and once more in Python for
the values as they are shown.
"""

from collections.abc import Mapping

from workbookgen.language.quantities import GRIST, LENGTH, MASS
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING
from workbookgen.texts import folded

FIRST_DATE, LAST_DATE = 45_292, 55_153  # the days of 2024 to 2050, as programs count them
LIGHTEST_FLEECE = 225  # grams, where ounces are typed: half a pound, a quarter of the lightest fleece in the guide
LIGHTEST_BAG = 30  # grams, where grams are typed: a bag of fleece to try has 100 and more; common practice, no source
# Wool of 18.25% regain, the trade's for combed wool, weighs 4% more than of 13.6%, that of ASTM D1909-13 (both read).
IN_DAMP_AIR = 1.05
ANOTHER_YARN = 0.25  # of the planned grist: three times what a plan is usually off by; common practice, no source
FASTEST_SPINDLE = 50  # turns in a second; common practice, no source
SHORTEST_LOOP = 0.2  # meters; common practice, no source

LEAST_WANTED, MOST_WANTED = 20, 30_000  # meters in a piece; common practice, no source
THICKEST = 0.2  # meters in a gram, 100 yards in a pound: three to four wraps in an inch; common practice, no source
UNLIKE_ARMS = 1.6  # of the longer to the shorter; common practice, no source
OFF_THE_RATED = 0.15  # of a reel's rated loop; common practice, no source
HEAVY = "no yarn is so heavy for its length. Look at the unit of each: grams, or ounces?"
LIGHT = "hardly any yarn is so light for its length. Look at the unit of each: grams, or ounces?"
FINEST_TEX = 20  # cotton of 30s; common practice, no source: sewing thread is finer
OTHER_SYSTEM = "no yarn is so thick. Look at the system: wraps per inch are not one."
ROPE = "no yarn is so thick. It is yards in a pound, or meters in 100 g, and not wraps per inch."


def a_date(word: str, label: str) -> Rule:
    """A yarn number that a program has turned into a date: 12/2 typed as it stands on a cone."""
    return Rule(
        f"AND({word} = ROUND({word}, 0), {word} >= {FIRST_DATE}, {word} <= {LAST_DATE})",
        lambda values: values[word] == round(values[word]) and FIRST_DATE <= values[word] <= LAST_DATE,
        f"{ASKING} {label}: the program may have turned it into a date. Type 12/2 as the number 12, and its two ends apart.",
    )


def light_fleece(system: str) -> Rule:
    """A fleece lighter than any: pounds typed for ounces, or kilograms for grams.

    In grams no fleece is so light, nor a bag of one to try; in ounces a bag of 4 is as light as a fleece of 4 pounds.
    """
    least, words = _lightest(system)
    return Rule(f"AND({FLEECE}, weight < {least})", lambda values: _is_fleece(values) and _grams(system, values["weight"]) < least, f"{ASKING} Weight: {words}")


def light_for_projects(system: str) -> Rule:
    """The same of a lot, which may well be a bag to try: asked where projects take more than twice what it gives."""
    least, words = _lightest(system)
    return Rule(f"AND({FLEECE}, weight < {least}, ROUND(promised, 9) > {FAR_MORE})",
                lambda values: _is_fleece(values) and _grams(system, values["weight"]) < least and round(values["promised"], 9) > FAR_MORE, f"{ASKING} Weight: {words}")


def of_a_light_fleece(system: str) -> Rule:
    """The same question beside the project that takes more than twice what there is, and so asks for another fleece."""
    least, words = _lightest(system)
    return Rule(f"AND(wanting > 0.5, lot_stage < 2.5, lot_weight < {least}, ROUND(need - {FAR_MORE} * have, 9) > 0)",
                lambda values: values["wanting"] > 0.5 and values["lot_stage"] < 2.5 and _grams(system, values["lot_weight"]) < least
                and round(values["need"] - FAR_MORE * values["have"], 9) > 0,
                f"{ASKING} Its first lot: {words.partition('. ')[0]}. Look at its weight on the sheet Fiber, and at the unit there.")


FLEECE = 'OR(state = "raw fleece", state = "skirted fleece")'
FAR_MORE = 2  # times what a lot gives; common practice, no source: who has a tenth of it has typed pounds


def _lightest(system: str) -> tuple[int, str]:
    if MASS.unit(system).value == 1:
        return LIGHTEST_BAG, "under 30 g of a fleece. Look at the unit above: kilograms are too large for it."
    return LIGHTEST_FLEECE, "under half a pound (225 g) for a fleece. Look at the unit above: pounds are too large for it."


def _grams(system: str, mass: float) -> float:
    return mass * MASS.unit(system).value


def _is_fleece(values: Mapping) -> bool:
    return isinstance(values["state"], str) and folded(values["state"]) in ("raw fleece", "skirted fleece")


def more_than_the_lot() -> Rule:
    """Skeins that weigh more than their whole lot and damp air: one is in another unit, or of another lot."""
    return Rule(
        f"ROUND(spun_of_it, 9) > {IN_DAMP_AIR}",
        lambda values: round(values["spun_of_it"], 9) > IN_DAMP_AIR,
        f"{ASKING} Weight: its skeins weigh more than the whole lot. Look at their weight, and at the lot they are from.",
    )


def helper_of_dye() -> Rule:
    """Acid or alum of more than half the weight of the goods: 4 typed for 4%. Of vinegar or salt, it may be right."""
    return Rule(
        "of_goods > 0.5",
        lambda values: values["of_goods"] > 0.5,
        f"{ASKING} Of the goods: more than half their weight may be right for plants, vinegar or salt, not for alum or dry acid. Type 4% with its sign.",
    )


def thick(system: str, **labels: str) -> tuple[Rule, ...]:
    """The grist of a rope: wraps per inch were typed for it. One question for each word, with its label."""
    return tuple(_thick(GRIST.unit(system).value, word, label) for word, label in labels.items())


def _thick(meters_in_a_gram: float, word: str, label: str) -> Rule:
    return Rule(f"ROUND({word}, 9) < {THICKEST}", lambda values: round(values[word] * meters_in_a_gram, 9) < THICKEST, f"{ASKING} {label}: {ROPE}")


def thick_by_tex(label: str, sentence: str = ROPE) -> Rule:
    """The same question where the tex is calculated."""
    return Rule(f"ROUND(tex * {THICKEST}, 9) > 1", lambda values: round(values["tex"] / 1000 * THICKEST, 9) > 1, f"{ASKING} {label}: {sentence}")


def thin_by_tex(label: str) -> Rule:
    """A length that weighs next to nothing: ounces, typed for grams."""
    return Rule(f"ROUND(1000 * tex, 9) < {FINEST_TEX}", lambda values: round(values["tex"], 9) < FINEST_TEX, f"{ASKING} {label}: {LIGHT}")


def yarn_wanted(system: str) -> tuple[Rule, ...]:
    """A need so small or so large that balls, ounces or a date were typed for a length."""
    meters = LENGTH.unit(system).value
    return (
        Rule(f"AND(NOT(given(used)), wanted < {LEAST_WANTED})", lambda values: values["used"] is None and values["wanted"] * meters < LEAST_WANTED,
             f"{ASKING} Yarn wanted: under 20 m (22 yd). It is a length, not ounces, balls or skeins. For ten balls of 125 type =10*125."),
        Rule(f"AND(NOT(given(used)), wanted > {MOST_WANTED})", lambda values: values["used"] is None and values["wanted"] * meters > MOST_WANTED,
             f"{ASKING} Yarn wanted: more than 30 km (33,000 yd) in one piece. Look at its digits, and at the unit above."),
    )


def no_take_up(*elsewhere: str, strands: str = "strands", where: str = "") -> Rule:
    """A plied yarn whose take-up is neither typed nor found `elsewhere`, so that the singles would come out short.

    `where` is one more word that must be there.
    """
    missing = ("take_up", *elsewhere)
    conditions = [f"{strands} > 1", *(f"NOT(given({word}))" for word in missing), *([f"given({where})"] if where else [])]
    return Rule(
        f"AND({', '.join(conditions)})",
        lambda values: values[strands] > 1 and all(values[word] is None for word in missing) and (not where or values[where] is not None),
        f"{ASKING} Take-up: an empty one counts as none, and an ordinary ply loses 1 to 6%. Type yours, or 0 for none.",
    )


def counted_as_none(sentence: str, *words: str) -> Rule:
    """An empty cell for which a usual figure is used."""
    return Rule(
        f"OR({', '.join(f'NOT(given({word}))' for word in words)})",
        lambda values: any(values[word] is None for word in words),
        f"{ASKING} {sentence} Type 0 where you mean none.",
    )


def of_another_yarn(word: str, planned: str, label: str) -> Rule:
    """A need reckoned for a yarn that is far from the one its project plans: an old swatch, or a slip in one of them.

    Its last digits do not decide.
    """
    return Rule(
        f"ABS(ROUND({word} / {planned} - 1, 9)) > {ANOTHER_YARN}",
        lambda values: abs(round(values[word] / values[planned] - 1, 9)) > ANOTHER_YARN,
        f"{ASKING} {label}: over a quarter off the grist planned for its project, and the need goes by this one. Look at both.",
    )


def fast() -> Rule:
    """A spindle faster than any by hand: the turns of one draft typed for those of a few seconds."""
    return Rule(
        f"ROUND(counted / seconds / 3600, 9) > {FASTEST_SPINDLE}",
        lambda values: round(values["counted"] / values["seconds"], 9) > FASTEST_SPINDLE,
        f"{ASKING} Or turns counted: more than {FASTEST_SPINDLE} in a second. Look at the seconds in which they were counted.",
    )


def outside(word: str, least: float, most: float, sentence: str) -> Rule:
    """A question about what lies outside of what is usual; its last digits do not decide."""
    return Rule(
        f"OR(ROUND({word}, 9) < {least}, ROUND({word}, 9) > {most})",
        lambda values: not least <= round(values[word], 9) <= most,
        f"{ASKING} {sentence}",
    )


def off_the_rated() -> Rule:
    """A loop far from its rated length: half a turn counted as one, or a cord of another length."""
    return Rule(
        f"ABS(ROUND(loop / rated - 1, 9)) > {OFF_THE_RATED}",
        lambda values: abs(round(values["loop"] / values["rated"] - 1, 9)) > OFF_THE_RATED,
        f"{ASKING} Loop in use: far from the rated loop. One turn goes all the way around, back to where it starts.",
    )


def cord_and_arms() -> Rule:
    """A cord and the measures of a niddy-noddy that do not belong to one reel."""
    return Rule(
        f"ABS(ROUND(measured / from_arms - 1, 9)) > {OFF_THE_RATED}",
        lambda values: abs(round(values["measured"] / values["from_arms"] - 1, 9)) > OFF_THE_RATED,
        f"{ASKING} Cord turns: far from what height and arms suggest. One turn lies over each arm end once.",
    )


def unlike_arms() -> Rule:
    """Two arms of a niddy-noddy of which one is far longer: half of the other was measured, or in another unit.

    Their last digits do not decide.
    """
    return Rule(
        f"ROUND(MAX(arm_a, arm_b) / MIN(arm_a, arm_b), 9) > {UNLIKE_ARMS}",
        lambda values: round(max(values["arm_a"] / values["arm_b"], values["arm_b"] / values["arm_a"]), 9) > UNLIKE_ARMS,
        f"{ASKING} Other arm: far from the one arm, and both are about alike. Measure each whole, from end to end, in one unit.",
    )
