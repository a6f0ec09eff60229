"""One planner, or a few, as rows of the tables: what a worker does.

Inputs are read from the file; results are worked out from them by the reference library.
What a file has stored beside its formulas is not used: some programs store nothing, and a
stored number is nobody's proof. A file that cannot be read costs one sentence, never the run.
Workers get the path and send back small frames, so they can live anywhere that sees the file.
"""

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np
import pandas as pd

from workbookgen.checking.expected import expected_of_keys
from workbookgen.errors import PlannerError
from workbookgen.filled.planner import FilledPlanner, described, read_filled
from workbookgen.gather.columns import FILE, MESSAGE, PLANNER, TABLES, Column, Table
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input
from workbookgen.language.parts import Block, Planner, unit_of
from workbookgen.settings import Settings
from workbookgen.units import Quantity


@dataclass(frozen=True)
class Told:
    """What is said of one file: whose it is, or why it could not be read."""

    number: int
    file: str
    digest: str = ""
    title: str = ""
    units: str = ""
    version: str = ""
    notes: tuple[str, ...] = ()
    fault: str = ""


@dataclass(frozen=True)
class Batch:
    """Several planners as rows, and what is to be told of each."""

    tables: dict[str, pd.DataFrame]
    told: tuple[Told, ...]


def read_batch(numbered: Sequence[tuple[int, str]]) -> Batch:
    """Read some planners, each with the number by which its rows are known."""
    rows = {table.name: {name: [] for name in names_of(table)} for table in TABLES}
    told = tuple(_read(number, Path(path), rows) for number, path in numbered)
    return Batch({table.name: frame(table, rows[table.name]) for table in TABLES}, told)


def names_of(table: Table) -> tuple[str, ...]:
    return PLANNER, FILE, *(column.name for column in table.columns), MESSAGE


def frame(table: Table, columns: dict[str, list] | None = None) -> pd.DataFrame:
    """Rows as a frame: whole numbers for the planner, numbers, and words. Without columns, an empty one."""
    words = {FILE, MESSAGE} | {column.name for column in table.columns if column.is_text}
    kinds = {name: "string" if name in words else "float64" for name in names_of(table)} | {PLANNER: "int64"}
    columns = columns or {}
    return pd.DataFrame({name: pd.Series(columns.get(name, []), dtype=kind) for name, kind in kinds.items()})


def _read(number: int, path: Path, rows: dict[str, dict[str, list]]) -> Told:
    try:
        digest = hashlib.sha256(path.read_bytes()).hexdigest() if path.is_file() else ""
        filled = read_filled(path, _blocks())
        found, notes = _worked_out(filled)
    except PlannerError as problem:
        return Told(number, path.name, fault=" ".join(fault.sentence for fault in problem.faults))
    except MemoryError:
        return Told(number, path.name, fault="this file needs more memory than there is.")
    except Exception as problem:  # one file that trips us must not cost the others
        return Told(number, path.name, fault=f"workbookgen itself failed on this file, which is our fault ({type(problem).__name__}: {problem}).")
    for name, columns in found.items():
        count = len(columns[MESSAGE])
        for column, values in (columns | {PLANNER: (number,) * count, FILE: (path.name,) * count}).items():
            rows[name][column].extend(values)
    return Told(number, path.name, digest, filled.settings.title, filled.settings.units, filled.version, notes)


def _worked_out(filled: FilledPlanner) -> tuple[dict[str, dict[str, tuple]], tuple[str, ...]]:
    """The rows of one planner, by table and column, and what is odd about them."""
    planner = _alike(filled.settings)
    entries = _whole(planner, filled.entries)
    tables = [table for table in TABLES if table.block in planner.blocks]
    keys = [key for table in tables for key in [*map(table.key, table.columns), f"{table.block}_{MESSAGE}"]]
    known = [key for key in keys if key in planner.by_key or key.endswith(f"_{MESSAGE}")]
    values = expected_of_keys(planner, entries, known)
    found, notes = {}, [str(note) for note in filled.notes]
    for table in tables:
        block = planner.blocks[table.block]
        lines = [row for row in range(block.rows) if any(entries[f"{block.key}_{each.key}"][row] is not None for each in block.inputs)]
        found[table.name] = {MESSAGE: _words(values[f"{block.key}_{MESSAGE}"], lines)}
        for column in table.columns:
            shown = values.get(table.key(column), (None,) * block.rows)
            if column.is_text:
                found[table.name][column.name] = _words(shown, lines)
            else:
                found[table.name][column.name], strange = _numbers(column, shown, lines, _factor(planner, table, column))
                notes += [f"{column.name} of the {table.name}: something other than a number in {strange} of the cells; empty here."] if strange else []
    return found, tuple(notes)


def _words(values: Sequence, lines: list[int]) -> tuple[str | None, ...]:
    chosen = (values[line] for line in lines)
    return tuple(each if each is None or isinstance(each, str) else f"{each:.15g}" if isinstance(each, float) else str(each) for each in chosen)


def _numbers(column: Column, values: Sequence, lines: list[int], factor: float) -> tuple[np.ndarray, int]:
    """The numbers in the table's unit, and how many cells had something else in them."""
    chosen = [values[line] for line in lines]
    good = [isinstance(each, int | float) and not isinstance(each, bool) for each in chosen]
    numbers = np.array([each if is_good else np.nan for each, is_good in zip(chosen, good, strict=True)], dtype=float)
    return numbers * factor, sum(each is not None and not is_good for each, is_good in zip(chosen, good, strict=True))


def _factor(planner: Planner, table: Table, column: Column) -> float:
    block = planner.blocks[table.block]
    if column.field not in block.by_key:
        return 1.0
    unit = unit_of(block.by_key[column.field], planner.system)
    return _ratio(unit.pint, column.unit) if unit and column.unit else 1.0


@cache
def _ratio(unit: str, wanted: str) -> float:
    return Quantity(1.0, unit).m_as(wanted)


def _alike(settings: Settings) -> Planner:
    """The planner of these settings. What it started with is told by the file itself, so only units and rows count."""
    return described(settings.model_copy(update={"title": "-", "fibers": "", "reels": ()}))


@cache
def _blocks() -> frozenset[str]:
    """The blocks that the tables hang on; no other sheet of a planner need be read."""
    planner = _alike(Settings())
    keys = [table.key(column) for table in TABLES for column in table.columns]
    seen, blocks = set(), {table.block for table in TABLES}
    while keys:
        key = keys.pop()
        if key in seen or key not in planner.by_key:
            continue
        seen.add(key)
        holder, field = planner.by_key[key]
        if isinstance(holder, Block):
            blocks.add(holder.key)
            keys += _words_of(planner, holder, field)
    return frozenset(blocks)


def _words_of(planner: Planner, block: Block, field) -> list[str]:
    """The full keys that a field hangs on."""
    if isinstance(field, Input):
        return [field.domain.of] if isinstance(field.domain, Choice) else []
    return [planner.meaning(block, word).key for word in field.words]


def _whole(planner: Planner, entries: Entries) -> dict[str, tuple[Entry, ...]]:
    """The entries of every input, blank where the file was not read or has no such field."""
    return {
        f"{block.key}_{field.key}": entries.get(f"{block.key}_{field.key}", (None,) * block.rows)
        for block in planner.blocks.values()
        for field in block.inputs
    }
