"""Bobbins: what one holds, how many a yarn fills, and singles left over when the shortest runs out."""

from dataclasses import replace

from workbookgen.language.automatic import MESSAGE
from workbookgen.language.domains import Choice, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter, Log
from workbookgen.language.quantities import (
    DENSITY,
    GRIST,
    GRIST_METRIC,
    GRIST_US,
    IN_METERS,
    LENGTH,
    LOOP,
    MASS,
    NUMBER,
    SHARE,
)
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import UNKNOWN
from workbookgen.language.views import RIGHT, Answers, Band, Entries, Headline, Listing, LogView, Sentences
from workbookgen.reference import planning, plying, records, yarn_count
from workbookgen.settings import Rows, Settings
from workbookgen.sheets import plausible, singles, tabs, usual
from workbookgen.sheets.card_view import asked_and_answered
from workbookgen.sheets.limits import AMOUNT, LARGE, LOSS, PART, REACH, STRANDS
from workbookgen.sheets.lookup import of_project
from workbookgen.units import Quantity

SHEET = tabs.YARN
CHAPTER = "Bobbins"


def chapter(settings: Settings) -> Chapter:
    card = bobbin(settings)
    return Chapter(CHAPTER, (card, replace(ON_THE_RACK, rows=settings.rows.rack), RACK), (
        _with_a_sentence(asked_and_answered(card, "length", "bobbins", captions=("One holds", "Bobbins to fill"), hidden=OF_PROJECT, is_printed=False)),
        Band((
            Entries(title="Singles left over", fields=("ending_grist", "ending_take_up"), is_printed=False),
            Listing(title="Plied together: a bobbin a line", block="rack", across=(1, 3), is_below=True,
                    view=LogView(typed="length mass", answers=(("", "over"),)), is_printed=False),
            Answers(title="When the shortest runs out", large=(Headline("ending_plied", "Plied yarn"), Headline("ending_more", "More, from the rest")),
                    lines=("ending_rest", "ending_each"), message=f"ending_{MESSAGE.key}", is_printed=False),
            Sentences(fields=("ending_words",), across=RIGHT, is_below=True, is_printed=False),
        )),
    ))


def _with_a_sentence(card: Band) -> Band:
    """The card with its sentence below the answers, since it is too long for one of their lines."""
    return Band((*card.sections, Sentences(fields=("bobbin_words",), across=RIGHT, is_below=True, is_printed=False)))


SPUN_IN_PART = "blank_or(its_bought, its_bought < 0.999999)"
OF_PROJECT = (
    "estimated its_length its_left its_bought its_strands its_own_take_up its_take_up its_design_take_up its_grist its_shrinkage "
    "wanted_used strands_used take_up_used strand fills each_plied words"
)


def bobbin(settings: Settings) -> Card:
    return Card(
        "bobbin",
        "Bobbins and cops",
        about="By its measures, or better, by one that was full and was weighed.",
        groups=(
            _you_type(),
            _worked_out(),
        ),
        rules=(
            Rule("AND(NOT(given(weighed)), NOT(AND(given(outer), given(inner), given(height))))",
                 lambda values: values["weighed"] is None and any(values[each] is None for each in ("outer", "inner", "height")),
                 "Still to fill in: the three measures of the bobbin, or the yarn of a full one."),
            Rule("AND(given_and(its_bought, its_bought >= 0.999999), NOT(given(grist)))",
                 lambda values: values["its_bought"] is not None and values["its_bought"] >= 0.999999 and values["grist"] is None,
                 f"{UNKNOWN}: the yarn of this project is all bought, so there are no singles to spin."),
            *plausible.thick("us", singles="Grist of the singles"),  # in yards per pound in every planner
            plausible.no_take_up("its_own_take_up", "its_take_up", "its_design_take_up", strands="strands_used", where="strand"),
            Rule("outer <= inner", lambda values: values["outer"] <= values["inner"], "Across, when full: it must be more than across the bare shaft."),
        ),
    )


def _you_type() -> Group:
    return Group("You type", (
        Input("outer", "Across, when full", REACH, LOOP, usual=usual.BOBBIN, help="Across the yarn, up to the rim of the flange or to the flyer arms."),
        Input("inner", "Across the bare shaft", REACH, LOOP),
        Input("height", "Length that is wound", REACH, LOOP, help="Between the flanges."),
        Input("fullness", "Of that, filled", PART, SHARE, blank_means=0.9, help="Empty means 90% (common practice, no source). A cop that tapers is less full."),
        Input("package_density", "How densely it lies", Number(above=0, most=3), DENSITY, usual=usual.PACKED, needed=True, starts_as=Quantity(0.35, "gram / centimeter ** 3"),
              help="Grams of yarn in a cubic centimeter of the bobbin: 0.30 loose to 0.45 firm (common practice, no source)."),
        Input("weighed", "Or yarn of a full one", AMOUNT, MASS, help="Weight of a full bobbin less that of the bare one. It wins over the measures."),
        Input("project", "For the project", Choice("projects_listed", tabs.PROJECTS), help="Its yarn still to make, grist, strands and take-up are used where you type none."),
        Input("wanted", "Or for plied yarn", LARGE, LENGTH, help="Length before washing."),
        Input("grist", "Grist of the singles", AMOUNT, GRIST,
              help="As they lie on the bobbin, not washed: by the grist of washed singles, a bobbin would seem to hold too little."),
        Input("strands", "Strands", STRANDS, NUMBER, help="Empty takes the project's, or two."),
        Input("take_up", "Take-up", LOSS, SHARE, usual=usual.TAKE_UP,
              help="Share of the singles' length lost in plying; empty takes the project's, its sample's or its design's, or none."),
        Input("plying", "A plying bobbin holds", AMOUNT, MASS, help="Weight of yarn; empty means as much as above."),
    ))


def _worked_out() -> Group:
    return Group("Worked out", (*_it_holds(), *_of_the_project(), *_its_singles(), *_to_fill()))


def _it_holds() -> tuple[Result, ...]:
    """What one bobbin holds."""
    return (
        Result("estimated", "By its measures", "PI() / 4 * (outer * outer - inner * inner) * height * fullness * package_density", plying.bobbin_mass, MASS,
               only_if="outer > inner"),
        Result("holds", "One holds", "or_else(weighed, estimated)", plying.bobbin_holds, MASS, usual=usual.ON_A_BOBBIN, only_if="OR(given(weighed), given(estimated))"),
    )


def _of_the_project() -> tuple[Result, ...]:
    """What is used of the chosen project where nothing is typed."""
    return tuple(of_project(key, label, column, unit, chosen="project") for key, label, column, unit in (
        ("its_length", "Yarn of the project", "unwashed", LENGTH), ("its_left", "Still to make", "left_share", SHARE),
        ("its_bought", "Bought thread in it", "bought_share", SHARE), ("its_strands", "Its strands", "plies", NUMBER),
        ("its_own_take_up", "Its take-up", "take_up", SHARE), ("its_take_up", "Sample's take-up", "sample_take_up", SHARE),
        ("its_design_take_up", "Design's take-up", "design_take_up", SHARE), ("its_grist", "Grist planned", "planned", GRIST),
        ("its_shrinkage", "Shrinkage", "shrinkage_used", SHARE),
    ))


def _its_singles() -> tuple[Result, ...]:
    """The strands, the take-up, and the grist of the singles; what length of them one bobbin holds."""
    return (
        Result("strands_used", "Strands in use", "or_else(strands, or_else(its_strands, 2))", plying.strands_to_ply, NUMBER, digits=0,
               uses={"own": "strands", "project": "its_strands"}, leaves=("usual",),
               only_if="OR(given(strands), blank_or(its_strands, its_strands > 0.5))"),
        Result("take_up_used", "Take-up in use",
               "or_else(take_up, or_else(its_own_take_up, or_else(its_take_up, "
               "or_else(its_design_take_up, 0))))",
               plying.take_up_to_ply, SHARE,
               uses={"own": "take_up", "project": "its_own_take_up", "sample": "its_take_up", "design": "its_design_take_up"},
               only_if="OR(given(take_up), given(its_own_take_up), blank_or(its_take_up, its_take_up < 1))"),
        Result("singles", "Grist of the singles",
               "or_else(grist, its_grist * strands_used / ((1 - its_shrinkage) * (1 - take_up_used) * (1 - or_else(its_bought, 0))))",
               plying.singles_grist, GRIST_US, digits=0,
               uses={"own": "grist", "plied": "its_grist", "strands": "strands_used", "take_up": "take_up_used", "shrinkage": "its_shrinkage",
                     "bought": "its_bought"},
               only_if=f"OR(given(grist), AND(given(its_grist), given(its_shrinkage), {SPUN_IN_PART}))",
               note="As typed, or as the project's yarn needs it before washing."),
        Result("singles_m", "Grist of the singles", "singles", yarn_count.indirect_count, GRIST_METRIC, uses={"grist": "singles"}),
        Result("length", "That is", "holds * singles", yarn_count.length_of_mass, LENGTH, uses={"mass": "holds", "grist": "singles"},
               note="Length of single on one full bobbin."),
    )


def _to_fill() -> tuple[Result, ...]:
    """The bobbins to fill with singles, and those to ply onto."""
    return (
        Result("wanted_used", "Yarn to ply", "or_else(wanted, its_length * its_left)", plying.still_to_ply, LENGTH,
               uses={"own": "wanted", "project": "its_length", "left": "its_left"}, only_if="OR(given(wanted), AND(given(its_length), given(its_left)))"),
        Result("strand", "Length of each strand", "wanted_used / (1 - take_up_used)", planning.singles_length, LENGTH,
               uses={"length": "wanted_used", "take_up": "take_up_used"}, fixed={"strands": 1}),
        Result("bobbins", "Bobbins to fill", "strands_used * ROUNDUP(ROUND(strand / length, 6), 0)", plying.bobbins_to_fill, NUMBER, digits=0,
               uses={"length": "strand", "holds": "length", "strands": "strands_used"}, only_if="length > 0", note="Of all strands, each with bobbins of its own."),
        Result("filled_to", "Each is filled to", "strand * strands_used / (bobbins * length)", plying.filled_to, SHARE, digits=0,
               uses={"length": "strand", "holds": "length", "strands": "strands_used"}, only_if="bobbins >= 1",
               note="Above 85%, have one more at hand for each strand: what a bobbin holds is known to a tenth (common practice, no source)."),
        Result("all_singles", "Singles in all", "strand * strands_used", plying.component_length, LENGTH, uses={"wanted": "strand", "strands": "strands_used"},
               leaves=("feed",)),
        Result("mass", "They weigh", "all_singles / singles", yarn_count.mass_of_length, MASS, uses={"length": "all_singles", "grist": "singles"}),
        Result("plying_bobbins", "Plying bobbins", "ROUNDUP(ROUND(mass / (1 - or_else(its_bought, 0)) / or_else(plying, holds), 6), 0)",
               plying.plying_bobbins, NUMBER, digits=0, uses={"bought": "its_bought"}, only_if=f"AND(OR(given(plying), given(holds)), {SPUN_IN_PART})",
               note="For the plied yarn, which weighs what its singles weigh, and the bought thread of its design."),
        Result("fills", "Of one plying bobbin", "mass / (1 - or_else(its_bought, 0)) / or_else(plying, holds)", plying.of_one_bobbin, SHARE, digits=0,
               uses={"bought": "its_bought"}, only_if=f"AND(OR(given(plying), given(holds)), {SPUN_IN_PART})"),
        Result("each_plied", "Plied yarn on each", "wanted_used / plying_bobbins", plying.bobbin_gets, LENGTH, uses={"length": "wanted_used", "bobbins": "plying_bobbins"},
               only_if="plying_bobbins >= 1"),
        Result("words", "In words", 'IF(plying_bobbins <= 1, IF(ROUND(fills, 9) <= 0.85, "It all fits on one plying bobbin.", "It may not all fit on one plying bobbin."), '
                                    '"It fills " & said(plying_bobbins) & " plying bobbins of " '
                                    '& said(each_plied) & IF(ROUND(fills / plying_bobbins, 9) <= 0.85, " each.", " each, and may need one more."))',
               plying.plying_words, None, uses={"bobbins": "plying_bobbins", "each": "each_plied"}, only_if="plying_bobbins >= 1", width=40),
    )


ON_THE_RACK = Log(
    "rack",
    title="",
    rows=Rows().rack,
    groups=(
        Group("You type", (
            Input("length", "Length on it", LARGE, LENGTH, help="Of the single, a line for each bobbin that is plied at the same time. Or give its weight instead."),
            Input("mass", "Or weight", AMOUNT, MASS, usual=usual.A_BOBBIN, help="Of the yarn alone, without the bobbin. The grist above turns it into a length."),
        )),
        Group("In meters", (
            Result("has", "It has", "or_else(length, mass * ending_grist)", plying.bobbin_has, IN_METERS, uses={"grist": "ending_grist"},
                   # in meters, since SMALL reads the column as it is shown
                   only_if="OR(given(length), AND(given(mass), given(ending_grist)))"),
            Result("lacking", "Not known", "IF(given(has), 0, 1)", plying.bobbin_lacking, NUMBER, digits=0, only_if="OR(given(length), given(mass))"),
        ), printed=False),
        Group("Worked out", (
            Result("over", "Left over", "MAX(0, has - ending_shortest)", plying.left_over, LENGTH, uses={"shortest": "ending_shortest"}),
        )),
    ),
    rules=(
        Rule("AND(given(mass), NOT(given(has)))", lambda values: values["mass"] is not None and values["has"] is None,
             f"{UNKNOWN}: give the grist of the singles above, or the length."),
    ),
)

RACK = Card("ending", "Singles left over", groups=(
    Group("You type", (
        Input("grist", "Grist of the singles", AMOUNT, GRIST, help="For bobbins that are weighed: of the singles as they lie there, not washed."),
        singles.take_up(),
    )),
    Group("Worked out", (
        Result("unknown", "Bobbins not known", "sum(rack_lacking)", records.sum_of, NUMBER, digits=0, uses={"amounts": "rack_lacking"}),
        Result("strands", "Bobbins", "COUNT(rack_has)", plying.bobbins_plied, NUMBER, digits=0, uses={"amounts": "rack_has", "lacking": "unknown", "wrong": "rack_open"},
               only_if="AND(COUNT(rack_has) > 0, unknown < 0.5, rack_open = 0)"),
        Result("shortest", "The shortest has", "SMALL(rack_has, 1)", plying.shortest_of, LENGTH, uses={"amounts": "rack_has"}, only_if="COUNT(rack_has) > 0"),
        Result("total", "Singles in all", "sum(rack_has)", records.sum_of, LENGTH, uses={"amounts": "rack_has"}),
        Result("plied", "Plied yarn", "shortest * (1 - take_up)", plying.plied_to_the_end, LENGTH, only_if="strands >= 2",
               note="With the take-up; an empty one counts as none. Of bobbins that are weighed, 5% less is likelier: their singles differ in grist."),
        Result("rest", "Singles left", "MAX(0, total - strands * shortest)", plying.left_in_all, LENGTH, only_if="strands >= 2"),
        Result("more", "More, from the rest", "rest * (1 - take_up) / strands", plying.plied_from, LENGTH, uses={"length": "rest"}),
        Result("each", "Shared out first, each has", "total / strands", plying.shared_evenly, LENGTH, only_if="strands >= 2",
               note="If you wind over before you ply, all run out together."),
        Result("words", "In words",
               'IF(given(rest), said(strands) & IF(given(take_up), "-ply: ", "-ply, no take-up reckoned: ") & IF(rest / total < 0.01, '
               'IF(given(grist), "of one grist, the bobbins would run out together.", "the bobbins run out together."), '
               'IF(strands = 2, "wind the rest into a ball, and ply it from both ends.", IF(strands = 3, "chain-ply the rest.", "wind the rest over evenly, and ply on."))), '
               '"A ply takes two bobbins, a line each. As a chain, one gives a third of its length, less the take-up.")',
               plying.leftover_words, None, width=40, only_if="OR(strands < 1.5, given(rest))"),
    )),
))
