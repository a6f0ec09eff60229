"""The fiber guide: what is published about breeds and fibers, with its source, to be edited freely."""

from collections.abc import Iterator, Mapping

from workbookgen.errors import Fault, SettingsError
from workbookgen.language.domains import Choice, Name, Note
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log
from workbookgen.language.quantities import FIBER_DIAMETER, FLEECE, NUMBER, SHARE, STAPLE
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import missing, refusal
from workbookgen.language.usual import Usual
from workbookgen.language.views import Listing, LogView, band
from workbookgen.reference import fiber, own_records, records
from workbookgen.settings import Settings
from workbookgen.settings.fiber_table import FIRST_LINE, load_fibers
from workbookgen.sheets import tabs, usual
from workbookgen.sheets.limits import FINENESS, LOSS, NONE_OR_PART, PART, REACH

SHEET = tabs.FLEECE
CHAPTER = "Guide"


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (accepted(guide(settings), settings),),
                   (band(Listing(title="What fleeces give", block="guide", view=VIEW,
                                 aside="Published ranges. Fleeces differ widely: your own records beat them. Change any figure, or add a line.")),))


VIEW = LogView(
    typed="name fleece_low fleece_high yield_low yield_high diameter_low diameter_high staple_low staple_high",
    answers=(("In use", "used_yield used_skirting used_preparation used_combing used_spinning"),),
)


def kind(width: int = 10) -> Input:
    """The choice of a line of the guide, by which other sheets expect losses."""
    return Input("kind", "Breed or fiber", Choice("guide_listed", SHEET), width=width, help="From the guide on the sheet Guide; its usual losses are expected.")


def accepted(log: Log, settings: Settings) -> Log:
    """The guide. Raises SettingsError if it does not accept a line of the fiber table that it starts with."""
    faults = [
        Fault(f"{settings.fibers or 'the fiber table'}, line {line}, {key}", sentence)
        for line, record in enumerate(log.starts_with, start=FIRST_LINE)
        for key, sentence in _refused(log, record, settings.units)
    ]
    if faults:
        raise SettingsError(*faults)
    return log


def _refused(log: Log, record: Mapping, system: str) -> Iterator[tuple[str, str]]:
    for each in log.inputs:
        if each.key in record and not each.domain.accepts(record[each.key]):
            yield each.key, refusal(each, system)
        if each.needed and each.key not in record:
            yield each.key, missing(each)
    for rule in log.rules:
        if not rule.asks and set(rule.text.words) <= set(record) and rule.broken(record):
            yield rule.text.words[0], rule.sentence


def guide(settings: Settings) -> Log:
    return Log(
        "guide",
        title="",
        rows=settings.rows.guide,
        starts_with=tuple(_shown(record, settings.units) for record in load_fibers(settings)),
        groups=(
            _published(),
            _worked_out(),
            Group("For other sheets", (
                repeated("listed", "Listed as", "name", width=26,
                       note="The name under which fiber lots find this line."),
                repeated("generic", "On labels", "on_labels", width=16),
            ), printed=False),
        ),
        rules=tuple(
            Rule(f"{low} > {high}", _low_over_high(low, high), f"{label}: the first figure must not be above the second.")
            for low, high, label in (
                ("fleece_low", "fleece_high", "Fleece"),
                ("yield_low", "yield_high", "Yield"),
                ("diameter_low", "diameter_high", "Fiber"),
                ("staple_low", "staple_high", "Staple"),
            )
        ),
    )


def _published() -> Group:
    return Group("Grease fleece, scoured yield, fiber and staple (published ranges), and usual losses", (
        Input("name", "Breed or fiber", Name(), needed=True, width=24, help="Fiber lots choose it by this name."),
        Input("fleece_low", "Fleece from", REACH, FLEECE, help="Grease weight of one fleece."),
        Input("fleece_high", "Fleece to", REACH, FLEECE, help="Grease weight of one fleece."),
        Input("yield_low", "Yield from", PART, SHARE, usual=usual.SCOURED_YIELD, help="Scoured weight over grease weight, mostly of skirted wool."),
        Input("yield_high", "Yield to", PART, SHARE, help="Scoured weight over grease weight, mostly of skirted wool."),
        Input("diameter_low", "Fiber from", FINENESS, FIBER_DIAMETER, usual=usual.KINDS_OF_FIBER, help="Mean fiber diameter."),
        Input("diameter_high", "Fiber to", FINENESS, FIBER_DIAMETER, usual=usual.KINDS_OF_FIBER, help="Mean fiber diameter."),
        Input("staple_low", "Staple from", REACH, STAPLE),
        Input("staple_high", "Staple to", REACH, STAPLE),
        Input("regain", "Regain", NONE_OR_PART, SHARE, help="Water that the dry fiber takes up, as agreed in trade."),
        Input("skirting", "Skirting loss", LOSS, SHARE, usual=Usual(most=0.5), help="Usual share taken off a raw fleece."),
        Input("preparation", "Carding loss", LOSS, SHARE, usual=Usual(most=0.4), help="Usual share lost in carding: 2 to 10% (common practice, no source)."),
        Input("combing", "Combing loss", LOSS, SHARE, usual=usual.LOST_IN_COMBING, help="Usual share left in the comb: 20 to 40% (common practice, no source)."),
        Input("spinning", "Spinning loss", LOSS, SHARE, usual=Usual(most=0.2), help="Usual share lost in spinning and plying."),
        Input("on_labels", "On labels", Name(unique=False), width=16,
              help="Its generic name in the fiber content of a label, as the law where you sell has it: wool for every breed."),
        Input("source", "Source", Note(), width=154, help="Who says so, and whether it was read or remembered."),
    ))


def _worked_out() -> Group:
    return Group("Worked out", (
        Result("scoured_yield", "Yield, middle", "(yield_low + yield_high) / 2", fiber.midpoint, SHARE, width=9,
               uses={"low": "yield_low", "high": "yield_high"}, only_if="yield_low <= yield_high",
               note="Middle of the published range; fiber lots expect it."),
        Result("yield_spread", "Yield ±", "(yield_high - yield_low) / SQRT(12)", fiber.rectangular_uncertainty, SHARE, width=8,
               uses={"low": "yield_low", "high": "yield_high"}, only_if="yield_low <= yield_high",
               note="Standard uncertainty of a range in which every value is as likely."),
        *learned(),
        *_how_sure(),
        Result("clean_fleece", "Clean fleece",
               "(fleece_low + fleece_high) / 2 * (yield_low + yield_high) / 2", fiber.clean_fleece, FLEECE,
               only_if="AND(fleece_low <= fleece_high, yield_low <= yield_high)",
               note="Scoured weight of a fleece in the middle of both ranges, with nothing skirted off."),
        Result("diameter", "Fiber, middle", "(diameter_low + diameter_high) / 2", fiber.midpoint, FIBER_DIAMETER, width=9,
               uses={"low": "diameter_low", "high": "diameter_high"}, only_if="diameter_low <= diameter_high"),
        Result("grade", "Wool grade", "class_of(grades_name, grades_from, diameter)", fiber.wool_grade, None,
               uses={"fiber_diameter": "diameter"}, width=16,
               note="The US grade of wool of this mean diameter."),
    ))


# Of a yield of which no range is published: the mean of those in the fiber table. Common practice, no source.
USUAL_SPREAD = 0.04

LEARNED = (
    # the loss or yield, its label, the published figure, and the column of observed ones on the sheet Fiber
    ("skirting", "Skirting", "skirting", "fiber_seen_skirting"),
    ("yield", "Yield", "scoured_yield", "fiber_seen_yield"),
    ("preparation", "Carding", "preparation", "fiber_seen_preparation"),
    ("combing", "Combing", "combing", "fiber_seen_combing"),
    ("spinning", "Spinning", "spinning", "fiber_seen_spinning"),
)


def learned() -> tuple[Result, ...]:
    """The spinner's own lots beside the published figure: their mean, their number, and the figure in use."""
    return tuple(
        result
        for key, label, published, seen in LEARNED
        for result in (
            Result(f"lots_{key}", f"{label}, lots", f"count_where({seen}, fiber_seen_kind, name)", records.count_where, NUMBER, digits=0, width=9,
                   uses={"names": "fiber_seen_kind", "amounts": seen}, note="Your lots in which this was weighed."),
            Result(f"own_{key}", f"{label}, own", f"sum_where({seen}, fiber_seen_kind, name) / count_where({seen}, fiber_seen_kind, name)", own_records.observed, SHARE, width=9,
                   uses={"names": "fiber_seen_kind", "shares": seen}, only_if=f"count_where({seen}, fiber_seen_kind, name) > 0", note="Mean of your own lots."),
            Result(f"used_{key}", f"{label}, used", f"IF(AND(given(own_{key}), lots_{key} >= 3), own_{key}, {published})", own_records.observed_or_published, SHARE, width=9,
                   uses={"published": published, "observed": f"own_{key}", "observations": f"lots_{key}"}, leaves=("enough",),
                   only_if=f"OR(given({published}), AND(given(own_{key}), lots_{key} >= 3))",
                   note="Your own mean once three lots speak for it: two would still leave it three times as uncertain. Until then, what is published."),
        )
    )


def _how_sure() -> tuple[Result, ...]:
    """How far the next fleece may be off the yield in use, by one's own lots as far as there are enough."""
    return (
        Result("squares_yield", "Yields², summed", "sum_where(fiber_seen_yield_square, fiber_seen_kind, name)", records.sum_where, SHARE,
               uses={"names": "fiber_seen_kind", "amounts": "fiber_seen_yield_square"}),
        Result("used_spread", "Yield used ±",
               f"IF(AND(given(own_yield), lots_yield >= 3), SQRT((MAX(0, ROUND(squares_yield - lots_yield * own_yield * own_yield, 12)) "
               f"+ 2 * POWER(or_else(yield_spread, {USUAL_SPREAD}), 2)) / (lots_yield + 1) * (1 + 1 / lots_yield)), yield_spread)",
               own_records.spread_in_use, SHARE, width=9,
               uses={"published": "yield_spread", "observed": "own_yield", "squares": "squares_yield", "observations": "lots_yield"}, leaves=("enough", "usual"),
               only_if="OR(given(yield_spread), AND(given(own_yield), lots_yield >= 3))",
               note="One standard uncertainty of the next fleece's yield: of the published range, or by how far your own lots differ, beside that range."),
    )


def _low_over_high(low: str, high: str):
    return lambda values: values[low] > values[high]


def _shown(record: dict, system: str) -> dict[str, float | str]:
    """A fiber of the table as a record of the log, in the units of the planner and to three figures."""
    kinds = {"fleece": FLEECE, "staple": STAPLE, "diameter": FIBER_DIAMETER}
    return {
        key: float(f"{value.to(kinds[key.split('_')[0]].unit(system).pint).magnitude:.3g}") if hasattr(value, "to") else value
        for key, value in record.items()
    }
