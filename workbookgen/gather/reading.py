"""A few planners as rows of the tables: what a worker does.

Inputs are read from the file, and the reference library calculates the results from them. Stored results are not
used: some programs store none, and a stored number proves nothing. A file that cannot be read is reported in a
sentence and never ends the run. Workers get paths and send back small frames, so they can run on any machine that can
read the files.
"""

import hashlib
import os
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import pandas as pd

from workbookgen.errors import PlannerError
from workbookgen.filled import arithmetic
from workbookgen.filled.planner import FilledPlanner, read_filled, records_of
from workbookgen.gather.below import typed_below
from workbookgen.gather.columns import FILE, MESSAGE, PLANNER, TABLES, Table
from workbookgen.gather.records import Records, blocks_needed, calculated
from workbookgen.language.entries import Entries
from workbookgen.language.planner import Planner

OUR_FAULT = "workbookgen itself failed on this file, which is our fault ({}: {})."
TOO_BIG = "this file needs more memory than there is. Close other programs, and gather again."


@dataclass(frozen=True)
class FileReport:
    """What is reported about one file: the planner in it, or why it could not be read."""

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
    """Several planners as rows, with a report on each file."""

    tables: dict[str, pd.DataFrame]
    reports: tuple[FileReport, ...]


def read_batch(numbered: Sequence[tuple[int, str]]) -> Batch:
    """Read some planners, each with the number that marks its rows.

    Planners with the same fields and units are calculated together.
    """
    reports: dict[int, FileReport] = {}
    alike: dict[int, tuple[Planner, dict[int, Entries]]] = {}
    for number, path in numbered:
        reports[number], filled = _opened(number, Path(path))
        if filled:
            planner = records_of(filled.settings)
            alike.setdefault(id(planner), (planner, {}))[1][number] = filled.entries
    rows = {table.name: {name: [] for name in names_of(table)} for table in TABLES}
    for planner, entries in alike.values():
        for number, records in _together(planner, entries).items():
            if isinstance(records, str):
                reports[number] = replace(reports[number], fault=records)
            else:
                reports[number] = replace(reports[number], notes=(*reports[number].notes, *records.notes))
                _add(rows, records, reports[number])
    return Batch({table.name: frame(table, rows[table.name]) for table in TABLES}, tuple(reports.values()))


def names_of(table: Table) -> tuple[str, ...]:
    """The columns of a table, in their order."""
    return PLANNER, FILE, *(column.name for column in table.columns), MESSAGE


def frame(table: Table, columns: dict[str, list] | None = None) -> pd.DataFrame:
    """The rows of a table as a typed frame; without columns, an empty one."""
    words = {FILE, MESSAGE} | {column.name for column in table.columns if column.is_text}
    kinds = {name: "string" if name in words else "float64" for name in names_of(table)} | {PLANNER: "int64"}
    columns = columns or {}
    return pd.DataFrame({name: pd.Series(columns.get(name, []), dtype=kind) for name, kind in kinds.items()})


def named(path: Path) -> str:
    """A file's name as text: bytes that are no valid text are spelled out, so that two names never become one."""
    return os.fsencode(path.name).decode("utf-8", "backslashreplace")


def _opened(number: int, path: Path) -> tuple[FileReport, FilledPlanner | None]:
    """The report on one file, and its planner if it could be read."""
    try:
        filled = arithmetic.with_arithmetic_done(read_filled(path, blocks_needed()))
        digest = hashlib.sha256(path.read_bytes()).hexdigest()
    except PlannerError as problem:
        return FileReport(number, named(path), fault=" ".join(fault.sentence for fault in problem.faults)), None
    except Exception as problem:  # one file must not end the reading of the others
        return FileReport(number, named(path), fault=_sentence(problem)), None
    settings, notes = filled.settings, (*(str(note) for note in filled.notes), *typed_below(filled))
    return FileReport(number, named(path), digest, settings.title, settings.units, filled.version, notes), filled


def _together(planner: Planner, entries: dict[int, Entries]) -> dict[int, Records | str]:
    """The records of each planner, calculated together or, if that fails, one by one; a sentence for one that fails."""
    try:
        return dict(zip(entries, calculated(planner, list(entries.values())), strict=True))
    except Exception as problem:
        if len(entries) == 1:
            return dict.fromkeys(entries, _sentence(problem))
        alone = ({number: each} for number, each in entries.items())
        return {number: found for each in alone for number, found in _together(planner, each).items()}


def _sentence(problem: Exception) -> str:
    return TOO_BIG if isinstance(problem, MemoryError) else OUR_FAULT.format(type(problem).__name__, problem)


def _add(rows: dict[str, dict[str, list]], records: Records, report: FileReport) -> None:
    for name, columns in records.tables.items():
        count = len(columns[MESSAGE])
        whose = {PLANNER: [report.number] * count, FILE: [report.file] * count}
        for column, values in (columns | whose).items():
            rows[name][column].extend(values)
