"""Questions about a swatch, its gauge and what is knitted by it; see `plausible`."""

from collections.abc import Mapping

from workbookgen.language.quantities import GAUGE, GRIST, LOOP, MASS, PER_AREA
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, MISSING
from workbookgen.sheets import by_k

CLOSEST_STITCHES, WIDEST_STITCHES = 560, 39  # in a meter: 14 and 1 in an inch; common practice, no source
MOST_BY_SWATCH, LEAST_BY_SWATCH = 2, 0.5  # of the yarn by its gauge; common practice, no source: floats of another color take most, and Munden is within 15%
HEAVIEST_FABRIC, LIGHTEST_FABRIC = 3000, 20  # grams in a square meter: thick felt, and less than the airiest lace; common practice, no source
WET_RELAXED = 21.6  # Munden's constant of a swatch that was washed and laid flat to dry, from memory
SHORTEST_STITCH, LONGEST_STITCH = 0.6, 2  # of one by Munden's rule; common practice, no source: crochet takes up to 1.6 times as much
MOST_ROWS, FEWEST_ROWS = 3, 0.4  # rows for a stitch's width; common practice, no source: slipped stitches have most, crochet fewest
FEWEST_TALL_ROWS = 0.2  # the same of the tallest crochet, where the yarn of a stitch tells whether it is right
MOST_FULLED, MOST_WIDENED = 0.6, -0.25  # of a side; common practice, no source: thick felt loses 40 to 50%
FARTHEST_GAUGE = 2  # times the pattern's; common practice, no source: then it is another pattern
# How often its yarn, at its usual width, would cover a swatch: plain knitting 2 to 3 times, lace stretched to air
# nearly once, colors and felt up to 7 (geometry and Munden; the edges are common practice, no source). A swatch in
# centimeters, typed as inches, comes out at 0.4, the reverse at 15.
COVERED_MOST, COVERED_LEAST = 8, 0.5
# Two colors in centimeters, typed as inches, look like lace, and lace the other way round like felt: then the size
# tells, since hardly anybody makes so large a swatch of lace, or so small a one of felt. Meters; common practice, no
# source.
LARGE_SWATCH, WHOLE_PIECE, SMALL_SWATCH = 0.23, 0.5, 0.075
COVERED_BY_LACE, COVERED_BY_COLORS = 1, 5
# Grams in a square meter of loose knitting, for each meter of yarn in a stitch: Munden's constant, and a square root of
# tex of 9.5 to a centimeter of stitch. Common practice, no source: loose has 8, firm 14.
WEIGHT_BY_STITCH = 19_500
MOST_BY_GAUGE, LEAST_BY_GAUGE = 3, 0.35  # of that weight; common practice, no source
USUAL_K = 0.35  # of wraps as laid by hand; common practice, no source


def stitches(system: str, **labels: str) -> tuple[Rule, ...]:
    """A gauge over another length than the unit's: 20 over 4 inches, typed for an inch. One question for each word,
    by its label."""
    return tuple(_gauge(GAUGE.unit(system).value, word, label) for word, label in labels.items())


def _gauge(in_a_meter: float, word: str, label: str) -> Rule:
    return Rule(
        f"OR({word} > {CLOSEST_STITCHES}, {word} < {WIDEST_STITCHES})",
        lambda values: not WIDEST_STITCHES <= values[word] * in_a_meter <= CLOSEST_STITCHES,
        f"{ASKING} {label}: finer or coarser than most people knit. Look at the unit: over one inch, or over 4 in (10 cm)?",
    )


def swatch_weight(system: str, width: str = "swatch_width", height: str = "swatch_height") -> Rule:
    """A swatch too heavy or too light for its size: grams for ounces, or inches for centimeters."""
    grams, meters = MASS.unit(system).value, LOOP.unit(system).value
    return Rule(
        f"OR(swatch_mass > {HEAVIEST_FABRIC} * {width} * {height}, swatch_mass < {LIGHTEST_FABRIC} * {width} * {height})",
        lambda values: not LIGHTEST_FABRIC <= values["swatch_mass"] * grams / (values[width] * meters * values[height] * meters) <= HEAVIEST_FABRIC,
        f"{ASKING} Its weight: far from what a swatch of this size weighs. Look at the unit of each: grams, or ounces? Inches, or cm?",
    )


def fulled(lost: str, label: str) -> Rule:
    """A side that fulling made far longer, or took most of: before and after are in two units.

    Last digits do not decide.
    """
    return Rule(
        f"OR(ROUND({lost}, 9) > {MOST_FULLED}, ROUND({lost}, 9) < {MOST_WIDENED})",
        lambda values: not MOST_WIDENED <= round(values[lost], 9) <= MOST_FULLED,
        f"{ASKING} {label}: far from what it was before. Look at the unit of each: inches, or cm?",
    )


def fulled_weight(system: str) -> Rule:
    """A swatch to be fulled far from what its gauge says it weighs: its sides are in another unit.

    Last digits do not decide.
    """
    by_gauge = f"ROUND(swatch_mass / (before_width * before_height) / ({WEIGHT_BY_STITCH} * SQRT({WET_RELAXED} / (stitches * rows))), 9)"
    grams, meters, in_a_meter = MASS.unit(system).value, LOOP.unit(system).value, GAUGE.unit(system).value

    def is_far(values: Mapping[str, float]) -> bool:
        stitch = (WET_RELAXED / (values["stitches"] * values["rows"])) ** 0.5 / in_a_meter
        weight = values["swatch_mass"] * grams / (values["before_width"] * values["before_height"] * meters**2)
        return not LEAST_BY_GAUGE <= round(weight / (WEIGHT_BY_STITCH * stitch), 9) <= MOST_BY_GAUGE

    return Rule(
        f"OR({by_gauge} > {MOST_BY_GAUGE}, {by_gauge} < {LEAST_BY_GAUGE})",
        is_far,
        f"{ASKING} Its weight: far from what a swatch of this size and gauge weighs. Look at the unit of each: inches, or cm? Ounces, or grams?",
    )


def another_gauge() -> Rule:
    """Two gauges of which one has twice the stitches of the other: over two lengths.

    Last digits do not decide.
    """
    return Rule(
        f"OR(ROUND(kept, 9) > {FARTHEST_GAUGE} - 1, ROUND(kept, 9) < 1 / {FARTHEST_GAUGE} - 1)",
        lambda values: not 1 / FARTHEST_GAUGE - 1 <= round(values["kept"], 9) <= FARTHEST_GAUGE - 1,
        f"{ASKING} Stitches, by your swatch: over twice the pattern's, or under half. Look at the unit of both: over one inch, or over 4 in (10 cm)?",
    )


def covered_swatch(system: str, grist: str = "grist") -> Rule:
    """A swatch with far more yarn than its size holds, or far less: its size, weight or grist is in another unit.

    Last digits do not decide.
    """
    across = by_k.width(str(USUAL_K), grist)
    covered = f"ROUND(swatch_mass * {grist} * {across} / (swatch_width * swatch_height), 9)"
    sides = "swatch_width, swatch_height"
    large = f"AND({covered} < {COVERED_BY_LACE}, ROUND(MIN({sides}), 9) > {LARGE_SWATCH}, ROUND(MAX({sides}), 9) < {WHOLE_PIECE})"
    small = f"AND({covered} > {COVERED_BY_COLORS}, ROUND(MAX({sides}), 9) < {SMALL_SWATCH})"
    grams, meters, in_a_gram = MASS.unit(system).value, LOOP.unit(system).value, GRIST.unit(system).value

    def holds(values: Mapping[str, float]) -> bool:
        length = values["swatch_mass"] * grams * values[grist] * in_a_gram
        wraps = USUAL_K * (values[grist] * in_a_gram * 453.59237 / 0.9144) ** 0.5
        shorter, longer = sorted(round(values[side] * meters, 9) for side in ("swatch_width", "swatch_height"))
        covers = round(length * 0.0254 / wraps / (values["swatch_width"] * values["swatch_height"] * meters**2), 9)
        if LARGE_SWATCH < shorter and longer < WHOLE_PIECE and covers < COVERED_BY_LACE:
            return True
        return not COVERED_LEAST <= covers <= (COVERED_BY_COLORS if longer < SMALL_SWATCH else COVERED_MOST)

    return Rule(
        f"OR({covered} > {COVERED_MOST}, {covered} < {COVERED_LEAST}, {large}, {small})",
        holds,
        f"{ASKING} Its weight: yarn of this grist makes no swatch of this size that is so heavy, or so light. Look at the unit of each: inches, or cm? Ounces, or grams?",
    )


def stitches_and_rows() -> Rule:
    """Rules for a gauge, whose two figures mean nothing alone."""
    return Rule("OR(AND(given(stitches), NOT(given(rows))), AND(given(rows), NOT(given(stitches))))",
                lambda values: (values["stitches"] is None) != (values["rows"] is None), f"{MISSING}: stitches and rows go together.")


def uneven_gauge(stitches: str = "Stitches", rows: str = "Rows", unraveled: str = "") -> Rule:
    """Stitches and rows counted over two lengths: an inch, and 4 in or a centimeter.

    Tall crochet looks like that, too. Where the yarn of a stitch is known, `unlike_its_gauge` tells the two apart.
    Their last digits do not decide.
    """
    fewest = f"IF(given({unraveled}), {FEWEST_TALL_ROWS}, {FEWEST_ROWS})" if unraveled else FEWEST_ROWS

    def is_uneven(values: Mapping[str, float]) -> bool:
        is_known = bool(unraveled) and values[unraveled] is not None
        return not (FEWEST_TALL_ROWS if is_known else FEWEST_ROWS) <= round(values["rows"] / values["stitches"], 9) <= MOST_ROWS

    return Rule(
        f"OR(ROUND(rows / stitches, 9) > {MOST_ROWS}, ROUND(rows / stitches, 9) < {fewest})",
        is_uneven,
        f"{ASKING} {stitches} and {rows[0].lower()}{rows[1:]}: far from each other. Look at the unit of both: over one inch, or over 4 in (10 cm)? "
        "Of tall crochet it may be right.",
    )


def unlike_its_gauge(system: str, counted: str, label: str) -> Rule:
    """A stitch, unraveled, far from one of that gauge: another unit, or another number of stitches.

    Its last digits do not decide.
    """
    off = f"ROUND({counted} * SQRT(density / {WET_RELAXED}), 9)"
    length, area = LOOP.unit(system), PER_AREA.unit(system)

    def holds(values: Mapping[str, float]) -> bool:
        by_rule = (WET_RELAXED / (values["density"] * area.value)) ** 0.5 / length.value
        return not SHORTEST_STITCH <= round(values[counted] / by_rule, 9) <= LONGEST_STITCH

    return Rule(f"OR({off} > {LONGEST_STITCH}, {off} < {SHORTEST_STITCH})", holds,
                f"{ASKING} {label}: far from what stitches of this gauge take. Look at the unit of each, and at how many stitches were unraveled.")


def whole_swatch() -> Rule:
    """Rules for a weighed swatch, whose three figures are needed together."""
    words = ("swatch_width", "swatch_height", "swatch_mass")
    some, all_of_it = (f"{joined}({', '.join(f'given({word})' for word in words)})" for joined in ("OR", "AND"))
    return Rule(f"AND({some}, NOT({all_of_it}))", lambda values: len({values[word] is None for word in words}) == 2,
                f"{MISSING}: the swatch's width, height and weight go together.")


def swatch_against_gauge() -> Rule:
    """A swatch and a gauge that tell of two fabrics: a figure of theirs is in another unit.

    Their last digits do not decide.
    """
    return Rule(
        f"OR(ROUND(by_swatch / by_gauge, 9) > {MOST_BY_SWATCH}, ROUND(by_swatch / by_gauge, 9) < {LEAST_BY_SWATCH})",
        lambda values: not LEAST_BY_SWATCH <= round(values["by_swatch"] / values["by_gauge"], 9) <= MOST_BY_SWATCH,
        f"{ASKING} Its weight: by it the piece takes far more yarn, or far less, than by its gauge. Look at the unit of each, and at the grist.",
    )
