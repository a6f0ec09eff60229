"""Reviewing what was carried: does the new planner show the same as the old one?

What the old planner shows is in its file, stored by the program that saved it. If nothing was stored, the reference
library calculates it from the entries, as it calculates the new planner. Results of the same field and record must
agree after conversion. If they do not, because a line or a figure that they depend on differs, or because a newer
version calculates differently, that is reported. So is every entry that the new planner does not accept.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from workbookgen.carry.conversion import in_unit
from workbookgen.carry.earlier_units import in_todays_unit
from workbookgen.carry.leftovers import IN_ITS_CELL, Leftover
from workbookgen.carry.matching import Matched, readable
from workbookgen.checking.compare import agree, are_same_words
from workbookgen.checking.expected import expected_of_blocks
from workbookgen.engines import ErrorValue
from workbookgen.filled.planner import FilledPlanner
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import AGAIN, Block, Column, Log
from workbookgen.language.planner import Meaning, Planner
from workbookgen.language.proofs import ProofTable
from workbookgen.language.sentences import doubled, refusal
from workbookgen.texts import folded, repeated_names

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
    tables = planner.proof_tables.values()
    proofs = {table.full_key(key): (None,) * table.rows for table in tables for key in ("computed", "verdict")}
    return expected_of_blocks(planner, entries, proofs)


def results_of_old(old: FilledPlanner) -> Values:
    """The calculated results of an old planner. A field that it lacks is as in a new planner, or blank in a log."""

    def new_column(block: Block, each: Input) -> tuple[Entry, ...]:
        return (None,) * block.rows if isinstance(block, Log) else (each.first(old.planner.system),)

    blocks = old.planner.blocks.values()
    absent = {block.full_key(each.key): new_column(block, each) for block in blocks for each in block.inputs}
    return results(old.planner, absent | dict(old.entries))


def shown_by_old(old: FilledPlanner) -> Values:
    """The results that are stored in an old planner's file; none if the program that saved it stored none."""
    shown: Values = {}
    for block in old.planner.blocks.values():
        for each in block.results:
            key = block.full_key(each.key)
            if key in old.ranges:
                values = (_shown_in(old, key, row) for row in range(block.rows))
                shown[key] = in_todays_unit(key, each, values, old.version, old.settings.units)
    return shown if any(value is not None for column in shown.values() for value in column) else {}


def _shown_in(old: FilledPlanner, key: str, row: int) -> Entry:
    cell = old.cell(key, row) if row < old.ranges[key].rows else None
    if cell is None or cell.value == "":
        return None
    return str(cell.value) if isinstance(cell.value, ErrorValue) else cell.value


def differences(old: FilledPlanner, before: Values, new: Planner, after: Values, matched: Matched) -> list[Difference]:
    """Results that were calculated before and differ now."""
    found = []
    of_proofs = _depending_on_proofs(old.planner)
    sheets = {holder.key: sheet.name for sheet in new.sheets for holder in sheet.holders}
    comparing = _Comparing(old, new, before, after, matched)
    for block in old.planner.blocks.values():
        target = new.blocks.get(block.key)
        for result in block.results if target else ():
            key, other = block.full_key(result.key), target.by_key.get(result.key)
            is_repeated = result.key.startswith(AGAIN)  # the same result, calculated a second time
            is_there = key in before and isinstance(other, Result) and result.is_text == other.is_text
            if is_there and not is_repeated and key not in of_proofs:
                found += comparing.differences(sheets[block.key], block, result, other)
    return found


def _depending_on_proofs(planner: Planner) -> set[str]:
    """The results that count the published examples, or depend on such a count, and so on nothing that was entered."""
    words = {
        block.full_key(result.key): [planner.meaning(block, word) for word in result.words]
        for block in planner.blocks.values()
        for result in block.results
    }
    found: set[str] = set()
    before = None
    while found != before:
        before = found
        found = {key for key, meant in words.items() if any(_is_of_proofs(each, before) for each in meant)}
    return found


def _is_of_proofs(meant: Meaning, known: set[str]) -> bool:
    return isinstance(meant.holder, ProofTable) or meant.key in known


def refused(old: FilledPlanner, new: Planner, after: Values, matched: Matched) -> Iterator[Leftover]:
    """Entries that are in their cells, although the new planner does not accept them."""
    names = {**after, **matched.entries}
    for block in new.blocks.values():
        lines = matched.rows.get(block.key, {}).items()
        for each in block.inputs:
            key = block.full_key(each.key)
            if key not in old.entries:
                continue
            twice = repeated_names(matched.entries[key]) if block.names_its_records(each) else ()
            for row, place in sorted(lines, key=lambda line: line[1]):
                entry = matched.entries[key][place]
                if entry is None:
                    continue
                if not _accepts(each, entry, new, names):
                    why = f"the new planner does not accept it. {refusal(each, new.system)}"
                elif folded(str(entry)) in twice:
                    why = f"nothing can choose this name now. {doubled(each)}"
                else:
                    continue
                if isinstance(entry, str) and not each.is_text and old.settings.units != new.system:
                    why += f" The old planner was for {old.settings.units}."
                stood, unit = readable(each, old.entries[key][row], old.settings.units)
                label = f"{each.label} ({unit})" if unit else each.label
                yield Leftover(*old.place(key, row), label, stood, why, IN_ITS_CELL)


def _accepts(each: Input, entry: Entry, planner: Planner, values: Values) -> bool:
    if not isinstance(each.domain, Choice):
        return each.domain.accepts(entry)
    _, listed = planner.by_key[each.domain.of]
    return each.domain.accepts(entry, listed.values if isinstance(listed, Column) else values[each.domain.of])


@dataclass(frozen=True)
class _Comparing:
    """Two planners with what each shows, compared result by result."""

    old: FilledPlanner
    new: Planner
    before: Values
    after: Values
    matched: Matched

    def differences(self, sheet: str, block: Block, result: Result, other: Result) -> Iterator[Difference]:
        """The records in which a result of the old planner and its `other` in the new one differ."""
        key, units = block.full_key(result.key), self.old.settings.units
        before, after = self.before[key], self.after[key]  # once: what is expected makes its column anew each time
        rows = self.matched.rows.get(block.key, {}) if block.inputs else {0: 0}
        for row, place in rows.items():
            if (block.key, row) in self.matched.renewed:
                continue  # its inputs are not the same
            value, now = before[row], after[place]
            if other.is_text and units != self.new.system and any(letter.isdigit() for letter in str(value or "")):
                continue  # it states an amount, in its planner's own units
            if isinstance(value, float) and result.unit:
                value = in_unit(value, result.unit.unit(units), other.unit.unit(self.new.system))
            if not (agree(value, now) or are_same_words(value, now)):
                named = result.label or f"{block.key}, {result.key}"  # what the desk says needs a look has no label
                label = ", ".join(filter(None, (sheet, block.title, named)))
                yield Difference(key, row, label, value, now, isinstance(block, Log))


def _shown(value: Entry) -> str:
    if value is None:
        return "nothing"
    return f'"{value}"' if isinstance(value, str) else f"{value:,.10g}"
