"""The records of filled planners, calculated by the reference library, in the units of the tables.

Planners of one kind are calculated together: their records are only more values for the reference functions, and all
of them take little longer than one planner.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cache

import numpy as np

from workbookgen.checking.expected import expected_of_keys
from workbookgen.errors import counted
from workbookgen.filled.planner import records_of
from workbookgen.gather.columns import MESSAGE, TABLES, Column, Table
from workbookgen.gather.declared import require_fields
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input
from workbookgen.language.parts import Block, unit_of
from workbookgen.language.planner import Planner
from workbookgen.settings import Settings
from workbookgen.units import Quantity


@dataclass(frozen=True)
class Records:
    """The values of one planner in each table's columns, and notes on values that were left out."""

    tables: dict[str, dict[str, Sequence]] = field(default_factory=dict)
    notes: list[str] = field(default_factory=list)


def calculated(planner: Planner, filled: Sequence[Entries]) -> list[Records]:
    """The records of planners that differ in nothing but their entries."""
    entries = [_whole(planner, each) for each in filled]
    tables = [table for table in TABLES if table.block in planner.blocks]
    keys = [table.full_key(column.field) for table in tables for column in table.columns]
    messages = [table.full_key(MESSAGE) for table in tables]
    values = expected_of_keys(planner, entries, [key for key in keys if key in planner.by_key] + messages)
    return [_records(planner, tables, *each) for each in zip(entries, values, strict=True)]


@cache
def blocks_needed() -> frozenset[str]:
    """The blocks that the tables depend on; no other sheet of a planner needs to be read."""
    planner = records_of(Settings())
    require_fields(planner)
    keys = [table.full_key(column.field) for table in TABLES for column in table.columns]
    seen: set[str] = set()
    while keys:
        key = keys.pop()
        if key not in seen:
            seen.add(key)
            keys += _depends_on(planner, *planner.by_key[key])
    holders = (planner.by_key[key][0] for key in seen)
    return frozenset(holder.key for holder in holders if isinstance(holder, Block))


def _depends_on(planner: Planner, holder, each) -> list[str]:
    """The full keys of what a field depends on directly, besides the number of its own line."""
    if not isinstance(holder, Block):
        return []
    if isinstance(each, Input):
        return [each.domain.of] if isinstance(each.domain, Choice) else []
    found = (planner.meaning(holder, word).key for word in each.words)
    return [key for key in found if key in planner.by_key]


def _whole(planner: Planner, entries: Entries) -> dict[str, tuple[Entry, ...]]:
    """The entries of every input, blank where the file was not read or has no such field."""
    return {
        block.full_key(each.key): entries.get(block.full_key(each.key), (None,) * block.rows)
        for block in planner.blocks.values()
        for each in block.inputs
    }


def _records(
    planner: Planner, tables: Sequence[Table], entries: Entries, values: dict[str, tuple[Entry, ...]]
) -> Records:
    """The filled lines of one planner, as rows of the tables."""
    records = Records()
    for table in tables:
        block = planner.blocks[table.block]
        typed = [entries[block.full_key(each.key)] for each in block.inputs]
        lines = [line for line in range(block.rows) if any(column[line] is not None for column in typed)]
        columns = records.tables[table.name] = {MESSAGE: _words(values[table.full_key(MESSAGE)], lines)}
        for column in table.columns:
            shown = values.get(table.full_key(column.field), (None,) * block.rows)
            if column.is_text:
                columns[column.name] = _words(shown, lines)
                continue
            columns[column.name], strange = _numbers(shown, lines, _factor(block, column, planner.system))
            if strange:
                empty = f"not a number, or too large, in {counted(strange, 'cell')}; left empty here."
                records.notes.append(f"{column.name} of the {table.name}: {empty}")
    return records


def _words(values: Sequence[Entry], lines: list[int]) -> list[str | None]:
    chosen = (values[line] for line in lines)
    return [each if each is None or isinstance(each, str) else f"{each:.15g}" for each in chosen]


def _numbers(values: Sequence[Entry], lines: list[int], factor: float) -> tuple[np.ndarray, int]:
    """The numbers in the table's unit, and how many cells hold a text or too large a number."""
    chosen = [values[line] for line in lines]
    with np.errstate(over="ignore"):  # a number that was typed may be too large in other units
        numbers = np.array([each if isinstance(each, float | int) else np.nan for each in chosen], dtype=float) * factor
    beyond = np.isinf(numbers)
    return np.where(beyond, np.nan, numbers), sum(isinstance(each, str) for each in chosen) + int(beyond.sum())


def _factor(block: Block, column: Column, system: str) -> float:
    """The factor from the planner's unit to the table's."""
    unit = unit_of(block.by_key[column.field], system) if column.unit and column.field in block.by_key else None
    return _ratio(unit.pint, column.unit) if unit else 1.0


@cache
def _ratio(unit: str, wanted: str) -> float:
    return Quantity(1.0, unit).m_as(wanted)
