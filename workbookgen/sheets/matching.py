"""Matching: a yarn that exists, from its label or from what it measures and weighs, and the singles that would make
it again."""

from collections.abc import Mapping

from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import GRIST_METRIC, GRIST_US, LENGTH, MASS, NUMBER, SHARE, TEX, TWIST
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING
from workbookgen.reference import plying, yarn_count
from workbookgen.settings import Settings
from workbookgen.sheets import plausible, singles, tabs, usual
from workbookgen.sheets.card_view import asked_and_answered, in_the_planners_unit
from workbookgen.sheets.limits import LARGE, NONE_OR_TWISTED, SHRINKAGE, STRANDS

SHEET = tabs.YARN
CHAPTER = "Matching"


def chapter(settings: Settings) -> Chapter:
    singles_in = in_the_planners_unit(settings, "singles", "singles_m")
    return Chapter(CHAPTER, (MATCH,), (
        asked_and_answered(MATCH, singles_in, "twist", captions=("Spin each single to", "With turns per inch"), hidden="shrinkage_used tex singles_tex", is_printed=False),
    ))


def _twisted(word: str, label: str, tex: str) -> Rule:
    """Turns that no yarn, or single, of this tex has. Its last digits do not decide."""
    least, most = usual.TWIST_FACTOR.ends
    factor = f"ROUND({word} / 100 * SQRT(1000 * {tex}), 9)"

    def is_unusual(values: Mapping) -> bool:
        return not least <= round(values[word] / 2.54 * values[tex] ** 0.5, 9) <= most

    return Rule(
        f"AND({word} > 0, OR({factor} < {least}, {factor} > {most}))",
        lambda values: values[word] > 0 and is_unusual(values),
        f"{ASKING} {label}: far from what a yarn of this grist has. Look at the turns, in an inch, and at its length and weight.",
    )


MATCH = Card(
    "match",
    "Spin a yarn that you have seen",
    about="By its label, or a length of it that you measure and weigh.",
    groups=(
        Group("You type", (
            Input("length", "Length on the label", LARGE, LENGTH, needed=True),
            Input("mass", "Weight on the label", LARGE, MASS, needed=True),
            Input("strands", "Strands in it", STRANDS, NUMBER, needed=True, starts_as=2.0, help="Untwist an end and count them."),
            singles.take_up(),
            Input("shrinkage", "Your shrinkage", SHRINKAGE, SHARE, usual=usual.SHRUNK,
                  help="Share of the length that washing takes of your yarn; from a sample. Empty takes the usual one on the sheet Sureness."),
            Input("ply", "Twist of its ply", NONE_OR_TWISTED, TWIST, help="Turns to untwist it until its strands lie side by side, over that length: you may type =32/10."),
            Input("left", "Twist of a strand", NONE_OR_TWISTED, TWIST,
                  help="Of one strand alone after that: turns until its fibers lie side by side, over its length."),
            Input("wanted", "Yarn wanted", LARGE, LENGTH, help="Washed and ready."),
        )),
        Group("Worked out", (
            Result("tex", "Tex of the yarn", "mass / length", yarn_count.linear_density, TEX),
            Result("grist", "Grist of the yarn", "length / mass", yarn_count.grist, GRIST_US, digits=0),
            Result("grist_m", "Grist of the yarn", "length / mass", yarn_count.grist, GRIST_METRIC),
            singles.shrinkage_used(),
            Result("singles_tex", "Tex of each single", "tex * (1 - shrinkage_used) * (1 - take_up) / strands", plying.singles_for, TEX,
                   uses={"plied": "tex", "shrinkage": "shrinkage_used"}),
            Result("singles", "Grist of each single", "1 / singles_tex", yarn_count.grist_of_density, GRIST_US, digits=0, uses={"linear_density": "singles_tex"},
                   note="Before plying and washing."),
            Result("singles_m", "Grist of each single", "1 / singles_tex", yarn_count.grist_of_density, GRIST_METRIC, uses={"linear_density": "singles_tex"}),
            Result("twist", "Twist of the singles", "left * (1 - shrinkage_used)", plying.twist_to_insert, TWIST, uses={"counted": "left", "shrinkage": "shrinkage_used"},
                   note="Before plying and washing: a strand whose ply is undone has again all the turns that it was spun with."),
            Result("ply_twist", "Twist of the ply", "ply * (1 - shrinkage_used)", plying.twist_to_insert, TWIST, uses={"counted": "ply", "shrinkage": "shrinkage_used"},
                   note="Before washing, which shortens the yarn and not its turns."),
            Result("strand", "Spin of each single", "wanted / ((1 - shrinkage_used) * (1 - take_up))", plying.strand_to_spin, LENGTH, uses={"shrinkage": "shrinkage_used"}),
            Result("weight", "All singles weigh", "strand * strands * singles_tex", plying.strands_mass, MASS, uses={"length": "strand", "linear_density": "singles_tex"}),
        )),
    ),
    rules=(
        plausible.thick_by_tex("Weight on the label", sentence=plausible.HEAVY),
        plausible.thin_by_tex("Weight on the label"),
        plausible.no_take_up(),
        _twisted("ply", "Twist of its ply", "tex"),
        _twisted("left", "Twist of a strand", "singles_tex"),
    ),
)
