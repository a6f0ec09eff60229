"""Questions about a skein: counted, weighed or measured another way than was meant, or chosen for another yarn.

Each is a rule that asks, as those in `plausible` are.
"""

from collections.abc import Mapping

from workbookgen.language.quantities import LENGTH, LOOP, MASS
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, UNKNOWN
from workbookgen.texts import folded

LONGEST_WASHED, SHORTEST_WASHED = 1.1, 0.75  # of the loop on the reel: another reel, of a yard and a half for two, is out; common practice, no source
MOST_WRAPS, FEWEST_WRAPS = 1.75, 0.55  # of the wraps expected from the grist; common practice, no source
LONGEST_REST = 3  # turns of the reel; common practice, no source
HEAVY_SKEIN, LIGHT_SKEIN = 1000, 3  # grams; common practice, no source
# A skein beside those made alike: times what they differ by, and times their mean grist; common practice, no source.
BEYOND_CHANCE, TIMES_THE_OTHERS = 2.8, 1.55


def skein_weight(system: str) -> tuple[Rule, ...]:
    """A skein so heavy or so light that its weight may have been typed in another unit."""
    grams = MASS.unit(system).value
    return (
        Rule(f"gross > {HEAVY_SKEIN}", lambda values: values["gross"] * grams > HEAVY_SKEIN,
             f"{ASKING} Weight: more than a kilogram (2 lb) for one skein. Look at the unit above: grams, or ounces?"),
        Rule(f"gross < {LIGHT_SKEIN}", lambda values: values["gross"] * grams < LIGHT_SKEIN,
             f"{ASKING} Weight: less than 3 g (0.1 oz) for a skein. Look at the unit above: grams, or ounces?"),
    )


def washed_loop() -> Rule:
    """A washed loop half as long as the reel's, since it lay double, or that of another reel; or one clearly longer,
    which no washing makes it.

    Its last digits do not decide.
    """
    return Rule(
        f"OR(ROUND(washed_loop / loop, 9) > {LONGEST_WASHED}, ROUND(washed_loop / loop, 9) < {SHORTEST_WASHED})",
        lambda values: not SHORTEST_WASHED <= round(values["washed_loop"] / values["loop"], 9) <= LONGEST_WASHED,
        f"{ASKING} Loop washed: far from the loop of its reel. Was it wound on another? Measure one full loop, all the way around, not the length of the folded skein.",
    )


def wraps_counted() -> Rule:
    """Wraps counted on a ruler that do not go with the grist."""
    return Rule(
        f"OR(ROUND(counted_wpi / expected_wpi, 9) > {MOST_WRAPS}, ROUND(counted_wpi / expected_wpi, 9) < {FEWEST_WRAPS})",
        lambda values: not FEWEST_WRAPS <= round(values["counted_wpi"] / values["expected_wpi"], 9) <= MOST_WRAPS,
        f"{ASKING} Wraps counted: far from what its length and weight suggest. Look at the wraps, the weight, and the count on the ruler.",
    )


def off_the_like() -> Rule:
    """A skein so far from those made alike that its wraps, reel or weight may be another skein's.

    Other yarns spun from the lot, for another project or of more singles, are not compared. Beside two skeins and more
    it is what they differ by that decides, beside one how many times as fine it is; last digits do not.
    """

    def is_far(values: Mapping[str, float]) -> bool:
        times, beyond = round(values["off_others"] + 1, 9), values["beyond_others"]
        return not 1 / TIMES_THE_OTHERS <= times <= TIMES_THE_OTHERS or beyond is not None and round(beyond, 9) > BEYOND_CHANCE

    return Rule(
        f"OR(ROUND(off_others + 1, 9) > {TIMES_THE_OTHERS}, ROUND(off_others + 1, 9) < {1 / TIMES_THE_OTHERS}, "
        f"given_and(beyond_others, ROUND(beyond_others, 9) > {BEYOND_CHANCE}))",
        is_far,
        f"{ASKING} Its grist is far off that of the other skeins of its lot with its project and plies. Look at the wraps, the reel and the weight.",
    )


def of_a_lot_alone() -> Rule:
    """A skein of one lot for a project whose yarn is plied of several.

    What the other strands took would still count as there.
    """
    return Rule(
        "AND(given(lot), NOT(given(design)), given(project_design))",
        lambda values: bool(values["lot"]) and not values["design"] and bool(values["project_design"]),
        f"{ASKING} Fiber lot: its project is plied by a design. Choose the design here instead, so that each strand is counted.",
    )


def of_no_lot() -> tuple[Rule, ...]:
    """A skein that does not say what it is spun from, though its project does: both its yarn and its fiber would count.

    A rule of its own for designs, since a small planner has none.
    """
    return tuple(
        Rule(f"AND(given(lotless), given({of}))", lambda values, of=of: bool(values["lotless"]) and bool(values[of]), f"{ASKING} {sentence}")
        for of, sentence in (
            ("project_lot", "Fiber lot: without it, its fiber counts twice for its project: as still to spin, too. Choose it; leave it empty for yarn of no lot."),
            ("project_design", "Design: without it, its fiber counts twice for its project: as still to spin, too. Choose it; leave it empty for yarn of no lot."),
        )
    )


def of_another_lot() -> Rule:
    """A skein for a project that is spun from other lots.

    One of the two is chosen wrong, and a lot looks fuller than it is.
    """

    def is_none_of_them(values: Mapping) -> bool:
        lots = {folded(values[each]) for each in ("project_lot", "project_lot_2", "project_lot_3") if values[each]}
        return bool(values["lot"]) and bool(values["project_lot"]) and folded(values["lot"]) not in lots

    others = (f"IF(given({each}), IF(lot = {each}, 0, 1), 1)" for each in ("project_lot_2", "project_lot_3"))
    return Rule(
        f"IF(AND(given(lot), given(project_lot)), IF(lot = project_lot, 0, 1) * {' * '.join(others)}, 0) > 0.5",
        is_none_of_them,
        f"{ASKING} Fiber lot: its project is spun from others. Choose the right lot or project, or add this lot to the project.",
    )


def long_rest(system: str) -> Rule:
    """A leftover of several turns besides the wraps: it is in another unit. Its last digits do not decide."""
    meters, of_a_loop = LENGTH.unit(system).value, LOOP.unit(system).value
    return Rule(
        f"AND(wraps > 0, ROUND(rest / loop, 9) > {LONGEST_REST})",
        lambda values: values["wraps"] > 0 and round(values["rest"] * meters / (values["loop"] * of_a_loop), 9) > LONGEST_REST,
        f"{ASKING} Rest: more than {LONGEST_REST} turns of its reel. Look at its unit.",
    )


def of_singles() -> Rule:
    """Singles that were logged for a project whose yarn is plied: once they are plied, they would count again."""
    return Rule(
        "AND(plied_of < 1.5, project_plies > 1.5)",
        lambda values: values["plied_of"] < 1.5 < values["project_plies"],
        f"{ASKING} Plied of: these are singles, and its project's yarn is plied. Log only the plied yarn, or both count.",
    )


def without_length() -> Rule:
    """A bobbin that is not full, logged without wraps: its fiber would be gone without any yarn."""
    return Rule(
        "AND(length_yd <= 0, net > 0)",
        lambda values: values["length_yd"] <= 0 and values["net"] > 0,
        f"{ASKING} Wraps: none, so it has no length, and still its weight is taken off its lot. Log what is on a bobbin once it is reeled.",
    )


def not_weighed() -> tuple[Rule, ...]:
    """A skein of a lot, or of a design, that was not weighed: what it took of the fiber is only expected.

    A small planner has no designs.
    """
    return tuple(
        Rule(f"AND(given({of}), NOT(given(gross)))", lambda values, of=of: bool(values[of]) and values["gross"] is None, f"{UNKNOWN}: {sentence}")
        for of, sentence in (
            ("lot", "what it took of its fiber is expected by the grist of its project or its lot's skeins, if known. Type its weight once it is dry."),
            ("design", "what it took of its fiber is expected by its design. Type its weight once it is dry."),
        )
    )
