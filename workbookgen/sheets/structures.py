"""Structures: how a yarn is built from singles, or from a core with its wrapper, and its length and grist."""

from workbookgen.language.domains import Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import (
    FINE_MASS,
    GRIST,
    GRIST_METRIC,
    GRIST_US,
    LENGTH,
    MASS,
    NUMBER,
    SHARE,
    TEX,
    THREADS,
    TWIST,
    YARN_DIAMETER,
)
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING
from workbookgen.reference import diameter, plying, yarn_count
from workbookgen.settings import Settings
from workbookgen.sheets import lists, plausible, tabs, usual
from workbookgen.sheets.card_view import asked_and_answered, in_the_planners_unit
from workbookgen.sheets.limits import CLOSE, LARGE, LOSS, NONE_OR_TWISTED, STRANDS
from workbookgen.texts import folded

SHEET = tabs.YARN
CHAPTER = "Structures"
MOST_FED = 10  # lengths of wrapper in one of yarn, and more than tight coils take; common practice, no source
ENDS = "lookup(structures_ends, structures_name, structure)"
CABLED = "lookup(structures_cabled, structures_name, structure)"


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (STRUCTURE, WRAPPED), (
        asked_and_answered(STRUCTURE, "plied", "singles", captions=("Yarn of your single", "Single for the yarn wanted"), hidden="kept", is_printed=False),
        asked_and_answered(WRAPPED, in_the_planners_unit(settings, "grist", "grist_m"), "feed", captions=("Grist", "Wrapper for one of yarn"),
                           hidden="core_tex wrapper_tex core_diameter wrapper_diameter two_tex binder_tex binder_diameter bound_tex", is_printed=False),
    ))


def _is_cabled_without_take_up(values: dict) -> bool:
    return isinstance(values["structure"], str) and folded(values["structure"]) == "a cable" and values["cabling"] is None


def _cables_nothing(values: dict) -> bool:
    built = values["structure"]
    return isinstance(built, str) and folded(built) != "a cable" and (values["plies"] is not None or values["cabling"] is not None)


def _has_its_own_strands(values: dict) -> bool:
    built = values["structure"]
    return isinstance(built, str) and folded(built) in ("a chain of three", "a ball on itself") and (values["strands"] is not None or values["plies"] is not None)


STRUCTURE = Card(
    "structure",
    "From single to yarn, however it is built",
    groups=(
        Group("You type", (
            Input("structure", "Built as", lists.one_of(lists.STRUCTURES), needed=True, starts_as="a chain of three",
                  help="A chain makes three ends of one single, a ball plied from both ends two."),
            Input("strands", "Strands", STRANDS, NUMBER, blank_means=2, help="Of a ply, or of each ply in a cable; empty means 2."),
            Input("plies", "Plies in a cable", STRANDS, NUMBER, blank_means=2, help="Plied yarns cabled together; empty means 2."),
            Input("take_up", "Take-up in plying", LOSS, SHARE, usual=usual.TAKE_UP, blank_means=0,
                  help="Share of the length lost; from a sample, 1 to 6% in an ordinary ply (common practice, no source)."),
            Input("cabling", "Take-up in cabling", LOSS, SHARE, blank_means=0, help="Share of the plies' length that the second twisting takes."),
            Input("length", "Single you have", LARGE, LENGTH, help="All of it together."),
            Input("grist", "Grist of the single", LARGE, GRIST),
            Input("wanted", "Yarn wanted", LARGE, LENGTH, help="To find the single for it; before washing."),
            Input("wanted_grist", "Grist wanted", LARGE, GRIST, help="Of the yarn, before washing."),
        )),
        Group("Worked out", (
            Result("ends", "Ends side by side", f"IF({ENDS} > 0, {ENDS}, strands * IF({CABLED} = 1, plies, 1))", plying.ends_in, NUMBER, digits=0),
            Result("kept", "Length kept", f"(1 - take_up) * IF({CABLED} = 1, 1 - cabling, 1)", plying.kept_in, SHARE),
            Result("plied", "Yarn of it", "length * kept / ends", plying.built_length, LENGTH, note="Length of yarn that your single gives."),
            Result("plied_grist", "Grist of the yarn", "grist * kept / ends", plying.built_grist, GRIST_US, digits=0),
            Result("plied_grist_m", "Grist of the yarn", "grist * kept / ends", plying.built_grist, GRIST_METRIC),
            Result("singles", "Single to spin", "wanted * ends / kept", plying.single_for_length, LENGTH, note="All ends together."),
            Result("singles_grist", "Grist of that single", "wanted_grist * ends / kept", plying.single_for_grist, GRIST_US, digits=0),
            Result("singles_grist_m", "Grist of that single", "wanted_grist * ends / kept", plying.single_for_grist, GRIST_METRIC),
            Result("mass", "It weighs", "wanted / wanted_grist", yarn_count.mass_of_length, MASS, uses={"length": "wanted", "grist": "wanted_grist"},
                   note="The yarn wanted, at the grist wanted."),
        )),
    ),
    rules=(
        Rule("AND(NOT(given(length)), NOT(given(grist)), NOT(given(wanted)), NOT(given(wanted_grist)))",
             lambda values: all(values[each] is None for each in ("length", "grist", "wanted", "wanted_grist")),
             "Still to fill in: the single you have, or the yarn wanted."),
        Rule('AND(OR(structure = "a chain of three", structure = "a ball on itself"), OR(given(strands), given(plies)))', _has_its_own_strands,
             f"{ASKING} Strands: a chain has three ends, a ball two, whatever is typed here. For a ply choose several strands above."),
        Rule('AND(structure <> "a cable", OR(given(plies), given(cabling)))', _cables_nothing,
             f"{ASKING} Plies, or take-up in cabling: only a cable has them, and here they count for nothing. Choose a cable above, or empty them."),
        plausible.no_take_up(strands="ends"),
        Rule('AND(structure = "a cable", NOT(given(cabling)))', _is_cabled_without_take_up,
             f"{ASKING} Take-up in cabling: an empty one counts as none, and the cable comes out short. Type yours, or 0 for none."),
    ),
)

WRAPPED = Card(
    "wrapped",
    "A core and its wrapper, and a binder",
    about="Wrapped, core and loop yarns.",
    groups=(
        Group("You type", (
            Input("core", "Grist of the core", LARGE, GRIST, needed=True),
            Input("wrapper", "Grist of the wrapper", LARGE, GRIST, needed=True),
            Input("core_wraps", "Wraps of the core", CLOSE, THREADS, needed=True, help="Wound on a ruler so that they touch."),
            Input("wrapper_wraps", "Wraps of the wrapper", CLOSE, THREADS, needed=True),
            Input("turns", "Turns of the wrapper", NONE_OR_TWISTED, TWIST, needed=True, help="How often it goes around the core, before a binder is plied on."),
            Input("slack", "Slack for loops", Number(least=0, most=20), SHARE, blank_means=0,
                  help="How much more wrapper is let in than lies flat; from a sample. Empty means none."),
            Input("binder", "Grist of a binder", LARGE, GRIST, help="Of a fine thread that is plied on in the other direction, to hold it. Empty for none."),
            Input("binder_wraps", "Wraps of the binder", CLOSE, THREADS),
            Input("binder_turns", "Turns of the binder", NONE_OR_TWISTED, TWIST, help="Each takes a turn out of the wrapper."),
            Input("wanted", "Yarn wanted", LARGE, LENGTH),
        )),
        Group("Worked out", (
            Result("core_tex", "Tex of the core", "1 / core", yarn_count.direct_count, TEX, uses={"grist": "core"}),
            Result("wrapper_tex", "Tex of the wrapper", "1 / wrapper", yarn_count.direct_count, TEX, uses={"grist": "wrapper"}),
            Result("core_diameter", "Core is thick", "1 / core_wraps", diameter.wrap_width, YARN_DIAMETER, uses={"wraps": "core_wraps"}),
            Result("wrapper_diameter", "Wrapper is thick", "1 / wrapper_wraps", diameter.wrap_width, YARN_DIAMETER, uses={"wraps": "wrapper_wraps"}),
            Result("feed", "Feed of the wrapper", "SQRT(1 + PI() * (core_diameter + wrapper_diameter) * turns * PI() * (core_diameter + wrapper_diameter) * turns) * (1 + slack)",
                   plying.wrapper_feed, NUMBER, note="Length of wrapper in one length of yarn: its feed, as a component of a design. The core's is 1."),
            Result("two_tex", "Core and wrapper", "core_tex + feed * wrapper_tex", plying.wrapped_density, TEX, uses={"core": "core_tex", "wrapper": "wrapper_tex"}),
            Result("binder_tex", "Tex of the binder", "1 / binder", yarn_count.direct_count, TEX, uses={"grist": "binder"}),
            Result("binder_diameter", "Binder is thick", "1 / binder_wraps", diameter.wrap_width, YARN_DIAMETER, uses={"wraps": "binder_wraps"}),
            Result("binder_feed", "Feed of the binder",
                   "SQRT(1 + PI() * (core_diameter + 2 * wrapper_diameter + binder_diameter) * binder_turns * PI() * (core_diameter + 2 * wrapper_diameter "
                   "+ binder_diameter) * binder_turns)",
                   plying.binder_feed, NUMBER, uses={"turns": "binder_turns"}, note="At most: over the wrapper all the way."),
            Result("bound_tex", "The binder adds", "binder_feed * binder_tex", plying.contribution, TEX, uses={"linear_density": "binder_tex", "feed": "binder_feed"},
                   leaves=("strands",)),
            Result("turns_left", "Turns left in the wrapper", "MAX(0, turns - binder_turns)", plying.turns_left, TWIST, note="Once the binder is on; at 0 its loops lie open."),
            Result("tex", "Tex", "two_tex + or_else(bound_tex, 0)", plying.bound_density, TEX,
                   uses={"wrapped": "two_tex", "bound": "bound_tex", "binder": "binder_tex"},
                   only_if="blank_or(binder_tex, given(bound_tex))"),
            Result("grist", "Grist", "1 / tex", yarn_count.grist_of_density, GRIST_US, digits=0, uses={"linear_density": "tex"}),
            Result("grist_m", "Grist", "1 / tex", yarn_count.grist_of_density, GRIST_METRIC, uses={"linear_density": "tex"}),
            Result("core_mass", "Core weighs", "wanted * core_tex", plying.component_mass, FINE_MASS, uses={"length": "wanted", "linear_density": "core_tex"},
                   note="As long as the yarn wanted."),
            Result("wrapper_length", "Wrapper needed", "wanted * feed", plying.component_length, LENGTH, leaves=("strands",)),
            Result("wrapper_mass", "Wrapper weighs", "wrapper_length * wrapper_tex", plying.component_mass, FINE_MASS,
                   uses={"length": "wrapper_length", "linear_density": "wrapper_tex"}),
            Result("binder_length", "Binder needed", "wanted * binder_feed", plying.component_length, LENGTH, uses={"feed": "binder_feed"}, leaves=("strands",)),
            Result("binder_mass", "Binder weighs", "binder_length * binder_tex", plying.component_mass, FINE_MASS,
                   uses={"length": "binder_length", "linear_density": "binder_tex"}),
        )),
    ),
    rules=(
        Rule("OR(AND(given(binder), NOT(AND(given(binder_wraps), given(binder_turns)))), AND(NOT(given(binder)), OR(given(binder_wraps), given(binder_turns))))",
             lambda values: len({values[each] is None for each in ("binder", "binder_wraps", "binder_turns")}) == 2,
             "Still to fill in: of the binder, its grist, wraps and turns; or empty all three."),
        Rule(f"ROUND(feed, 9) > {MOST_FED}", lambda values: round(values["feed"], 9) > MOST_FED,
             f"{ASKING} Turns of the wrapper: one length of yarn takes more than ten of it. Look at the turns, per inch, and at the wraps of both."),
    ),
)
