"""Components: the singles and threads of each yarn design, and how much of each it takes."""

from collections.abc import Mapping

from workbookgen.language.domains import Choice, Name, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log
from workbookgen.language.quantities import FINE_MASS, LENGTH, MASS, NUMBER, SHARE, TEX
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Distinct, Rule
from workbookgen.language.sentences import ASKING
from workbookgen.language.views import Listing, LogView, band
from workbookgen.reference import plying, records, sharing, which_yarn, yarn_count
from workbookgen.settings import Settings
from workbookgen.sheets import content, counts, fiber, lists, plausible, tabs, usual, yarn
from workbookgen.sheets.limits import LARGE, STRANDS
from workbookgen.sheets.lookup import lookup
from workbookgen.texts import folded

SHEET = tabs.YARN
CHAPTER = "Components"
MOST_FED = 3  # common practice, no source: loops and coils take most


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (components(settings),), (band(Listing(
        title="Components", block="components", view=VIEW,
        aside="Singles of yours or bought thread. Feed is its length in one length of yarn: 1 for a core, "
              "1.04 for a single that plying shortens by 4%, more for a thread that wraps.",
    )),))


VIEW = LogView(
    typed="design place name number system lot strands feed",
    answers=(("It takes", "share length mass packages"),),
)


# The length of all components of its design that are of the same lots, and whether there are others of a bought thread.
TOGETHER = "sum_where(components_length, components_lots, lots)"
SHARED = f'IF(AND(given(lots), or_else(lot_form, "") = "yarn or thread"), {TOGETHER} > length, 1 = 0)'


def components(settings: Settings) -> Log:
    return Log(
        "components",
        title="",
        rows=settings.rows.components,
        groups=(
            _you_type(),
            _what_it_takes(),
            _for_other_sheets(),
        ),
        distinct=(
            Distinct("key", "No.: another component of this design has this number; give each its own."),
        ),
        rules=(
            plausible.a_date("number", "Yarn number"),
            plausible.thick_by_tex("Yarn number", sentence=plausible.OTHER_SYSTEM),
            Rule(f"ROUND(feed, 9) > {MOST_FED}", lambda values: round(values["feed"], 9) > MOST_FED,
                 f"{ASKING} Feed: more than {MOST_FED} times the length of the yarn, as of a thread that wraps. A single that plying shortens by 4% has 1.04."),
            Rule("AND(given(lot), lot = other_lot)", _is_one_lot_twice, "Or lot: choose another one than the first."),
            Rule("overlapping > 0.5", lambda values: values["overlapping"] > 0.5,
                 f"{ASKING} Its lot: another component draws on it, too, and not on the same lots in the same order: each counts on all of it. "
                 "Make their lots alike, or give each its part of it as a line of its own on the sheet Fiber."),
            Rule("AND(NOT(given(feed)), OR(or_else(strands, 1) > 1.5, given_and(share, share < 0.999999)))", _is_plied_without_a_feed,
                 f"{ASKING} Feed: an empty one counts as 1, and an ordinary ply takes up 1 to 6%, so that the yarn comes out short. Type 1.04, or 1 for none."),
        ),
    )


def _is_one_lot_twice(values: Mapping[str, object]) -> bool:
    lot, other = values["lot"], values["other_lot"]
    return isinstance(lot, str) and isinstance(other, str) and bool(lot) and folded(lot) == folded(other)


def _is_plied_without_a_feed(values: Mapping[str, object]) -> bool:
    """Condition that a strand lies beside others, and that nothing says how much of it plying takes up."""
    return values["feed"] is None and ((values["strands"] or 1) > 1.5 or (values["share"] is not None and values["share"] < 0.999999))


def _you_type() -> Group:
    return Group("You type", (
        Input("design", "Of the design", Choice("designs_listed", yarn.SHEET), needed=True, width=24),
        Input("name", "Component", Name(), width=18, help="What it is: a single of yours, a bought thread."),
        Input("number", "Yarn number", LARGE, NUMBER, needed=True, help="In the system beside it."),
        Input("system", "System", lists.one_of(lists.SYSTEMS), needed=True, width=20),
        Input("strands", "Strands", STRANDS, NUMBER, blank_means=1, help="How many of it; empty means one."),
        Input("feed", "Feed", Number(least=1, most=20), NUMBER, blank_means=1, help="Its length in one length of yarn; empty means 1."),
        Input("package", "Spool holds", LARGE, LENGTH, usual=usual.ON_A_SPOOL, help="Length on one spool or bobbin."),
        Input("place", "No.", Number(least=1, most=4, whole=True), NUMBER, blank_means=1, width=6,
              help="1 for the first component of its design, 2 for the second, up to 4; empty means 1. No two of a design may share one."),
        Input("lot", "Its lot", Choice("fiber_listed", fiber.SHEET), width=20, help="The lot on the sheet Fiber that it is spun from, or the bought thread."),
        Input("other_lot", "Or lot", Choice("fiber_listed", fiber.SHEET), width=20, help="A second lot that may replace the first in this strand: both add up."),
    ))


def _what_it_takes() -> Group:
    return Group("What it takes", (
        counts.of_yarn_number("grist", "Grist", digits=0),
        Result("tex", "Tex", "1 / grist", yarn_count.direct_count, TEX),
        Result("contribution", "In the yarn", "feed * strands * tex", plying.contribution, TEX, uses={"linear_density": "tex"},
               note="What it adds to the tex of the yarn."),
        lookup("design_tex", "Whole yarn", "designs_tex", "design", TEX),
        Result("share", "Of the weight", "contribution / design_tex", plying.weight_share, SHARE, uses={"resultant": "design_tex"}),
        lookup("wanted", "Yarn to ply", "designs_unwashed", "design", LENGTH),
        Result("length", "Length needed", "wanted * strands * feed", plying.component_length, LENGTH, note="All strands together."),
        Result("mass", "Weight needed", "length * tex", plying.component_mass, FINE_MASS, uses={"linear_density": "tex"}),
        Result("packages", "Spools",
               f"IF({SHARED}, ROUNDUP(ROUND({TOGETHER} / package, 6), 0) * length / {TOGETHER}, ROUNDUP(ROUND(length / package, 6), 0))", plying.spools, NUMBER, digits=1,
               uses={"amounts": "components_length", "own": "lots", "lots": "components_lots", "form": "lot_form"},
               note="Whole ones; of a bought thread for all components of the design that are of it, each with its part of them."),
    ))


def _for_other_sheets() -> Group:
    fields = (*_called(), *_lots_in_common(), *_drawn_from(), *_skeins_of_the_design(), *_taken_by_them())
    return Group("For other sheets", fields, printed=False)


def _called() -> tuple[Result, ...]:
    """Its names, under which other sheets find it, and what a spool of it weighs."""
    return (
        Result("spool", "A spool weighs", "package * tex", plying.component_mass, FINE_MASS, uses={"length": "package", "linear_density": "tex"}),
        repeated("of", "Of", "design", width=24),
        Result("key", "Found as", 'design & " / " & place', plying.component_key, None, width=26, note="The name under which projects find this component."),
        Result("label", "Called", 'or_else(name, design & " / " & place)', plying.component_label, None, width=26),
    )


def _lots_in_common() -> tuple[Result, ...]:
    """Its lots, and what part of them it has where other components of its design have the same."""
    return (
        *(
            Result(key, "Of the design and lot", f'design & " / " & {lot}', which_yarn.pair, None, uses={"first": "design", "second": lot}, width=30)
            for key, lot in (("of_lot", "lot"), ("of_other", "other_lot"))
        ),
        Result("lots", "Its lots", 'design & " / " & lot & IF(given(other_lot), " / " & other_lot, "")', sharing.strand_lots, None, width=40),
        Result("part_of_lots", "Part of its lots", "IF(given(lots), share / sum_where(components_share, components_lots, lots), 1)", sharing.part_of_lots, SHARE,
               uses={"own": "lots", "lots": "components_lots", "shares": "components_share"}, note="Where other components of its design have the same lots."),
        Result("overlapping", "Lots shared in part",
               "count_where(components_contribution, components_of_lot, of_lot) + count_where(components_contribution, components_of_other, of_lot) "
               "+ IF(given(of_other), count_where(components_contribution, components_of_lot, of_other) + count_where(components_contribution, components_of_other, of_other), 0) "
               "- IF(given(of_other), 2, 1) * count_where(components_contribution, components_lots, lots)",
               sharing.strands_that_overlap, NUMBER, digits=0,
               uses={"own": "lots", "first": "of_lot", "spare": "of_other", "lots": "components_lots", "firsts": "components_of_lot",
                     "spares": "components_of_other", "amounts": "components_contribution"}),
    )


def _drawn_from() -> tuple[Result, ...]:
    """Its lots once more, each by itself, whether it is known, and its fibers."""
    return (
        *(
            repeated(f"from_{number}", "Drawn from", lot, width=20)
            for number, lot in ((1, "lot"), (2, "other_lot"))
        ),
        Result("lacking", "Not known", "IF(given(contribution), 0, 1)", plying.not_known, NUMBER, digits=0, only_if='design <> ""'),
        *content.of_component(),
    )


def _skeins_of_the_design() -> tuple[Result, ...]:
    """What there is of skeins of its design."""
    return (
        Result("in_skeins", "Skeins of the design", "sum_where(skeins_net, skeins_from_design, design)", records.sum_where, MASS,
               uses={"name": "design", "names": "skeins_from_design", "amounts": "skeins_net"}, note="Weight of all skeins of the design."),
        Result("skeins_length", "As plied", "sum_where(skeins_length_yd, skeins_from_design, design)", records.sum_where, LENGTH,
               uses={"name": "design", "names": "skeins_from_design", "amounts": "skeins_length_yd"}, note="Length of these skeins before washing."),
        Result("length_weighed", "Of it, weighed", "sum_where(skeins_length_yd, skeins_weighed_of, design)", records.sum_where, LENGTH,
               uses={"name": "design", "names": "skeins_weighed_of", "amounts": "skeins_length_yd"}, note="Length of those skeins that were weighed."),
    )


def _taken_by_them() -> tuple[Result, ...]:
    """What those skeins took of it, and of each of its lots."""
    return (
        lookup("lot_form", "Bought as", "fiber_bought_as", "lot", width=14),
        Result("bought_part", "Bought, in the yarn", 'IF(or_else(lot_form, "") = "yarn or thread", contribution, 0)', plying.bought_part, TEX,
               uses={"form": "lot_form"}),
        Result("to_spin", "Strands to spin", 'IF(or_else(lot_form, "") = "yarn or thread", 0, strands)', plying.strands_to_spin, NUMBER, digits=0,
               uses={"form": "lot_form"}),
        Result("spun_fed", "Of them, in a length", 'IF(or_else(lot_form, "") = "yarn or thread", 0, strands * feed)', plying.fed_to_spin, NUMBER,
               uses={"form": "lot_form"}, note="Length of its singles in one length of yarn; none of a bought thread."),
        Result("all_bought", "Bought, of all", "sum_where(components_bought_part, components_of, design)", records.sum_where, TEX,
               uses={"name": "design", "names": "components_of", "amounts": "components_bought_part"}),
        Result("taken", "Taken",
               "IF(bought_part > 0, skeins_length * contribution, MAX(0, in_skeins - length_weighed * all_bought) * contribution / (design_tex - all_bought) "
               "+ MAX(0, skeins_length - length_weighed) * contribution)",
               plying.strand_taken, MASS, uses={"resultant": "design_tex", "own_bought": "bought_part", "mass": "in_skeins", "length": "skeins_length",
                                                "weighed": "length_weighed"},
               note="By its length in the skeins of a bought thread; the singles took the rest of the weight, or of a skein not yet weighed what the design says."),
        *(
            lookup(f"lot_weight_{number}", "Lot bought", "fiber_weight", lot, MASS)
            for number, lot in ((1, "lot"), (2, "other_lot"))
        ),
        *(
            Result(f"drawn_{number}", "Used of it", f"taken * lot_weight_{number} / (lot_weight_{number} + IF(given(lot_weight_{other}), lot_weight_{other}, 0))",
                   plying.drawn_from_lot, MASS, uses={"weight": f"lot_weight_{number}", "other_weight": f"lot_weight_{other}"},
                   note="What the skeins of the design took from this lot.")
            for number, other in ((1, 2), (2, 1))
        ),
    )
