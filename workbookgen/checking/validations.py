"""The data validations and conditional formats of a file, compared with those that the generator writes."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import fields, replace

from workbookgen.book.placement import Placement
from workbookgen.checking.compare import Finding
from workbookgen.checking.formula_spelling import spelled
from workbookgen.checking.runs import runs
from workbookgen.ooxml.formulas import SharedFormula
from workbookgen.ooxml.references import Range, cell_name, without_sheet_quotes
from workbookgen.ooxml.sheets import NO_VALIDATION, FileSheet, Rule, Validation

FAR = "XA500000"  # a cell far enough from the edges for every relative reference of a planner
MOST_CELLS = 500_000  # of a rule that are compared; no rule of a planner has as many
BY_FORMULA = ("expression", "cellIs")  # the kinds that are compared; others are decoration, which some programs drop

_WORDS = {
    "kind": "another kind of entry is asked for",
    "operator": "other limits are set for what may be typed",
    "formulas": "other limits or choices are set for what may be typed",
    "title": "the message shown while the cell is selected was changed",
    "said": "the message shown while the cell is selected was changed",
    "refusal": "the warning about an entry that does not fit was changed",
    "strictness": "an entry that does not fit is treated differently",
}


class Validations:
    """The data validations of a sheet, indexed by column."""

    def __init__(self, sheet: FileSheet):
        # By column, those of a single column, as nearly all are.
        self._narrow: defaultdict[int, list[tuple[Range, Validation]]] = defaultdict(list)
        self._wide: list[tuple[Range, Validation]] = []
        for ranges, validation in sheet.validations:
            plain = replace(
                validation, formulas=tuple(spelled(without_sheet_quotes(each)) for each in validation.formulas)
            )
            if plain == replace(NO_VALIDATION, strictness=plain.strictness):
                continue  # it neither says nor restricts anything
            for each in ranges:
                (self._narrow[each.left] if each.left == each.right else self._wide).append((each, plain))

    def areas(self, placement: Placement) -> frozenset[tuple[range, Validation]]:
        """The validations of a field's cells, each with the rows it applies to."""
        column = Range("", placement.row, placement.column, placement.row + placement.rows - 1, placement.column)
        return frozenset(
            (rows, each)
            for cells, each in (*self._narrow.get(placement.column, ()), *self._wide)
            if (rows := cells.rows_within(column))
        )

    def rows(self, placement: Placement) -> defaultdict[int, frozenset[Validation]]:
        """Row -> the validations of its cell."""
        found: defaultdict[int, frozenset[Validation]] = defaultdict(frozenset)
        for rows, validation in self.areas(placement):
            for row in rows:
                found[row] |= {validation}
        return found


def changed_validations(placement: Placement, our: Validations, their: Validations) -> Iterator[Finding]:
    """Findings about the validation of a field's cells."""
    if our.areas(placement) == their.areas(placement):
        return
    wanted, found = our.rows(placement), their.rows(placement)
    differences: dict[tuple, list[int]] = defaultdict(list)
    for row in range(placement.row, placement.row + placement.rows):
        if wanted[row] != found[row]:
            differences[_difference(wanted[row], found[row])].append(row)
    for (reason, expected, got), rows in differences.items():
        for first, last in runs(rows):
            where = Range(placement.sheet, first, placement.column, last, placement.column)
            yield Finding(reason, str(where), placement.key, expected=expected, got=got)


def _difference(wanted: frozenset[Validation], found: frozenset[Validation]) -> tuple[str, str | None, str | None]:
    """The reason of a finding, what was expected, and what is there."""
    if wanted and not found:
        return "the rule for what may be typed is gone", _listed(wanted), _listed(found)
    if len(wanted) != 1 or len(found) != 1:
        return "there is a rule for what may be typed that the planner does not have", _listed(wanted), _listed(found)
    (one,), (other,) = wanted, found
    part = next(each.name for each in fields(Validation) if getattr(one, each.name) != getattr(other, each.name))
    return _WORDS[part], _said(getattr(one, part)), _said(getattr(other, part))


def _said(part: str | tuple[str, ...]) -> str:
    return (" to ".join(part) if isinstance(part, tuple) else part) or "nothing"


def _listed(validations: frozenset[Validation]) -> str:
    said = sorted(" ".join((each.kind, each.operator, *each.formulas)).strip() for each in validations)
    return "; ".join(said) or "nothing"


def changed_rules(our: FileSheet, their: FileSheet) -> Iterator[Finding]:
    """Findings about conditional formats by formula: those that are new, and those that are gone."""
    if our.rules == their.rules:
        return
    wanted, found = (_cells_by_rule(sheet.rules) for sheet in (our, their))
    for rule, cells in found.items():
        if new := cells - wanted.get(rule, set()):
            where, added = (
                f"{our.name}!{cell_name(min(new))}",
                "a conditional format is here that the planner does not have",
            )
            yield Finding(added, where, expected="none", got=_shown(rule))
    for rule, cells in wanted.items():
        if gone := cells - found.get(rule, set()):
            where, lost = f"{our.name}!{cell_name(min(gone))}", "a conditional format of the planner is gone"
            yield Finding(lost, where, expected=_shown(rule), got="none")


def _cells_by_rule(rules: list[Rule]) -> dict[tuple, set]:
    """The meaning of each rule, wherever it is anchored -> the cells it applies to."""
    found: dict[tuple, set] = defaultdict(set)
    for rule in rules:
        if rule.kind in BY_FORMULA and rule.ranges:
            anchor = cell_name((min(each.top for each in rule.ranges), min(each.left for each in rule.ranges)))
            formulas = tuple(
                SharedFormula(f"={without_sheet_quotes(each)}", anchor).moved_to(FAR) for each in rule.formulas
            )
            meaning = rule.kind, rule.operator if rule.kind == "cellIs" else "", tuple(map(spelled, formulas))
            for each in rule.ranges:
                rows = range(each.top, min(each.bottom, each.top + MOST_CELLS // (each.right - each.left + 1)) + 1)
                found[meaning].update((row, column) for row in rows for column in range(each.left, each.right + 1))
    return found


def _shown(rule: tuple) -> str:
    kind, operator, formulas = rule
    return " ".join(filter(None, (operator, *formulas))) or kind
