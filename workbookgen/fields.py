"""The fields of a planner as plain records, for people and for other programs."""

from workbookgen.book.placement import Placement
from workbookgen.language.automatic import Automatic
from workbookgen.language.domains import Choice, Date, Domain, Name, Note, Number
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Column
from workbookgen.language.repeated import REPEATING
from workbookgen.planner_file import PlannerFile
from workbookgen.sheets.methods import page

MESSAGE_REFERENCE = "workbookgen.checking.automatic.automatic"
PROOF_REFERENCE = "workbookgen.checking.expected.computed"


def described(planner: PlannerFile) -> list[dict]:
    """One record per field: key, sheet, range, kind, unit, label, domain, reference, sources."""
    return [
        _record(placement, planner)
        for placement in planner.layout.placements.values()
        if isinstance(placement.field, Input) or placement.formulas
    ]


def _record(placement: Placement, planner: PlannerFile) -> dict:
    field = placement.field
    return {
        "key": placement.key,
        "sheet": placement.sheet,
        "range": planner.ranges.get(placement.key, placement.range),
        "kind": "input" if isinstance(field, Input) else "result",
        "unit": _unit(placement),
        # What only helps others stands under no heading; its key says what it is.
        "label": field.label or field.key.replace("_", " ").capitalize(),
        "domain": _domain(field.domain) | _use(field, planner.settings.units) if isinstance(field, Input) else None,
        "reference": _reference(field),
        "sources": _sources(field),
    }


def _unit(placement: Placement) -> str | None:
    """The unit of a number; a count that is shown without one, such as wraps, is a pure number and no text."""
    if placement.unit:
        return placement.unit.readable
    is_number = isinstance(placement.field, Input) and isinstance(placement.field.domain, Number)
    return "dimensionless" if is_number else None


def _reference(field: Input | Result | Automatic | Column) -> str | None:
    match field:
        case Result():
            return field.reference_path
        case Automatic():
            return MESSAGE_REFERENCE
        case Column():
            return PROOF_REFERENCE
    return None


def _sources(field: Input | Result | Automatic | Column) -> list[str]:
    """The sources of a result's calculation; a result that repeats an entry has none."""
    is_calculated = isinstance(field, Result) and field.reference not in REPEATING
    return [page(field.reference).source] if is_calculated else []


def _use(field: Input, system: str) -> dict:
    return {"needed": field.needed, "blank_means": field.blank_means, "default": field.first(system)}


def _domain(domain: Domain) -> dict:
    match domain:
        case Number():
            return {
                "kind": "number",
                "minimum": domain.least,
                "above": domain.above,
                "maximum": domain.most,
                "below": domain.below,
                "whole": domain.whole,
            }
        case Date():
            return {"kind": "date", "minimum": domain.least, "maximum": domain.most}
        case Choice():
            return {"kind": "choice", "of": domain.of, "choices": list(domain.names) or None}
        case Name():
            return {"kind": "name", "longest": domain.longest}
        case Note():
            return {"kind": "note", "longest": domain.longest}
