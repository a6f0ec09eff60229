"""Reviewing what was carried: does the new planner say the same as the old one?

What the old planner shows is in its file, stored by the program that saved it; where nothing was stored, the
reference library calculates it from the entries. The library calculates the new one. Results of the same field and
record must agree after conversion; where they do not, because a line or a figure on which they rest differs, or
because a newer version calculates differently, it is reported. So is every entry that the new planner does not
accept.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from workbookgen.carry.conversion import in_unit
from workbookgen.carry.leftovers import IN_ITS_CELL, Leftover
from workbookgen.carry.matching import Matched, readable
from workbookgen.carry.told_before import in_todays_unit
from workbookgen.checking.compare import agree
from workbookgen.checking.expected import expected_of_blocks
from workbookgen.engines import ErrorValue
from workbookgen.filled.planner import FilledPlanner
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import AGAIN, Block, Column, Log
from workbookgen.language.planner import Planner
from workbookgen.language.proofs import ProofTable
from workbookgen.language.sentences import refusal

Values = dict[str, tuple[Entry, ...]]


@dataclass(frozen=True)
class Difference:
    """A result that the new planner shows differently from the old one."""

    key: str
    row: int
    label: str
    before: Entry
    after: Entry
    is_of_log: bool = True

    def __str__(self) -> str:
        line = f", line {self.row + 1}" if self.is_of_log else ""
        return f"{self.label}{line}: {_shown(self.before)} before, {_shown(self.after)} now"


def results(planner: Planner, entries: Entries) -> Values:
    """What the reference library calculates from entries; the proofs are the same in every planner."""
    proofs = {
        f"{key}_{name}": (None,) * table.rows
        for key, table in planner.proof_tables.items()
        for name in ("computed", "verdict")
    }
    return expected_of_blocks(planner, entries, proofs)


def results_of_old(old: FilledPlanner) -> Values:
    """The results of an old planner. A field that it does not have yet is as in a new one, or blank."""
    absent = {
        f"{block.key}_{each.key}": (None,) * block.rows if isinstance(block, Log) else (each.first(old.planner.system),)
        for block in old.planner.blocks.values()
        for each in block.inputs
    }
    return results(old.planner, absent | dict(old.entries))


def shown_by_old(old: FilledPlanner) -> Values:
    """The results as an old planner's file has them; none where the program that saved it stored none."""
    shown = {
        key: in_todays_unit(
            key, each, (_shown_in(old, key, row) for row in range(block.rows)), old.version, old.settings.units
        )
        for block in old.planner.blocks.values()
        for each in block.results
        if (key := f"{block.key}_{each.key}") in old.ranges
    }
    return shown if any(value is not None for column in shown.values() for value in column) else {}


def _shown_in(old: FilledPlanner, key: str, row: int) -> Entry:
    cell = old.cell(key, row) if row < old.ranges[key].rows else None
    value = cell.value if cell else None
    return str(value) if isinstance(value, ErrorValue) else None if value == "" else value


def differences(old: FilledPlanner, before: Values, new: Planner, after: Values, matched: Matched) -> list[Difference]:
    """Results that were calculated before and differ now."""
    found = []
    of_proofs = _hang_on_proofs(old.planner)
    sheets = {part.key: sheet.name for sheet in new.sheets for part in sheet.parts}
    for block in old.planner.blocks.values():
        target = new.blocks.get(block.key)
        for result in block.results if target else ():
            if result.key.startswith(AGAIN):
                continue  # the same, worked out a second time
            match = target.by_key.get(result.key)
            if (
                (key := f"{block.key}_{result.key}") in before
                and key not in of_proofs
                and isinstance(match, Result)
                and result.is_text == match.is_text
            ):
                found += _of_result(sheets[block.key], block, result, match, old, before, new, after, matched)
    return found


def _hang_on_proofs(planner: Planner) -> set[str]:
    """The results that count the published examples, or say something about the count: that does not depend on what
    was entered."""
    words = {
        f"{block.key}_{result.key}": [planner.meaning(block, word) for word in result.words]
        for block in planner.blocks.values()
        for result in block.results
    }
    found: set[str] = set()
    before = None
    while found != before:
        before = found
        found = {
            key
            for key, meant in words.items()
            if any(isinstance(each.holder, ProofTable) or each.key in before for each in meant)
        }
    return found


def refused(old: FilledPlanner, new: Planner, after: Values, matched: Matched) -> Iterator[Leftover]:
    """Entries that are in their cells, although the new planner does not accept them."""
    names = after | matched.entries
    for block in new.blocks.values():
        backwards = {place: row for row, place in matched.rows.get(block.key, {}).items()}
        for each in block.inputs:
            key = f"{block.key}_{each.key}"
            for place, entry in enumerate(matched.entries[key]):
                if (
                    entry is not None
                    and place in backwards
                    and key in old.entries
                    and not _accepts(each, entry, new, names)
                ):
                    why = f"the new planner does not take it. {refusal(each, new.system)}"
                    if isinstance(entry, str) and not each.is_text and old.settings.units != new.system:
                        why += f" The old planner was for {old.settings.units}."
                    stood, unit = readable(each, old.entries[key][backwards[place]], old.settings.units)
                    yield Leftover(
                        *old.place(key, backwards[place]),
                        each.label + (f" ({unit})" if unit else ""),
                        stood,
                        why,
                        IN_ITS_CELL,
                    )


def _accepts(each: Input, entry: Entry, planner: Planner, values: Values) -> bool:
    if not isinstance(each.domain, Choice):
        return each.domain.accepts(entry)
    _, listed = planner.by_key[each.domain.of]
    return each.domain.accepts(entry, listed.values if isinstance(listed, Column) else values[each.domain.of])


def _of_result(
    sheet: str,
    block: Block,
    result: Result,
    match: Result,
    old: FilledPlanner,
    before: Values,
    new: Planner,
    after: Values,
    matched: Matched,
) -> Iterator[Difference]:
    key = f"{block.key}_{result.key}"
    rows = matched.rows.get(block.key, {}) if block.inputs else {0: 0}
    for row, place in rows.items():
        if (block.key, row) in matched.renewed:
            continue  # its inputs are not the same
        value = before[key][row]
        if match.is_text and old.settings.units != new.system and any(letter.isdigit() for letter in str(value or "")):
            continue  # it states an amount, in its planner's own units
        if isinstance(value, float) and result.unit:
            value = in_unit(value, result.unit.unit(old.settings.units), match.unit.unit(new.system))
        if not agree(value, after[key][place]):
            label = ", ".join(filter(None, (sheet, block.title, result.label)))
            yield Difference(key, row, label, value, after[key][place], isinstance(block, Log))


def _shown(value: Entry) -> str:
    return "nothing" if value is None else f'"{value}"' if isinstance(value, str) else f"{value:,.10g}"
