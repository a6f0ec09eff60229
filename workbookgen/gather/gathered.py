"""All planners together: their tables joined, each planner counted once, unreadable files reported.

Two files with the same bytes are one planner that was sent twice; it is counted once. Two
versions of one person's planner are two planners here. They share lots, which is reported.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

import pandas as pd

from workbookgen.errors import Fault, FileError, counted
from workbookgen.gather.columns import PLANNER, TABLES
from workbookgen.gather.reading import Batch, FileReport, frame
from workbookgen.gather.workers import Engine, read_all, this_machine
from workbookgen.texts import loosely

# The files that are taken from a folder. Those of the last four kinds cannot be read, and are taken to be reported.
SUFFIXES = (".xlsx", ".ods", ".xls", ".xlsm", ".xlsb", ".numbers")
SHARED = 2  # lots of one name and weight; one alone may be two people's by chance
LOCKS = ("~$", ".~lock", ".")  # how the names of files begin that programs put beside an open one


@dataclass(frozen=True)
class Gathered:
    """The tables, by name, and what is to be reported about the files. Places are files without their folders."""

    tables: dict[str, pd.DataFrame]
    planners: pd.DataFrame
    unread: tuple[Fault, ...] = ()
    repeated: tuple[Fault, ...] = ()
    notes: tuple[Fault, ...] = ()

    @property
    def counts(self) -> str:
        """The numbers of planners and records, in words."""
        numbers = {"planners": len(self.planners)} | {name: len(table) for name, table in self.tables.items()}
        return ", ".join(counted(number, name.removesuffix("s")) for name, number in numbers.items())


def gather(
    files: Sequence[Path], engine: Engine | None = None, step: Callable[[int], None] = lambda count: None
) -> Gathered:
    """Read planners into tables. A file that cannot be read is reported in `unread`, and the others are read."""
    batches = read_all([str(file.absolute()) for file in files], engine or this_machine(len(files)), step)
    return joined(batches)


def joined(batches: Sequence[Batch]) -> Gathered:
    """The batches joined; planners are numbered from 1 in the order of their files."""
    reports = [each for batch in batches for each in batch.reports]
    firsts: dict[str, FileReport] = {}
    for each in reports:
        if not each.fault:
            firsts.setdefault(each.digest, each)
    numbers = {each.number: number for number, each in enumerate(firsts.values(), start=1)}
    tables = {
        table.name: _joined([batch.tables[table.name] for batch in batches if batch.tables], frame(table), numbers)
        for table in TABLES
    }
    repeated = [each for each in reports if not each.fault and each.number not in numbers]
    files = [each.file for each in firsts.values()]
    return Gathered(
        tables,
        _planners(list(firsts.values()), tables),
        unread=tuple(Fault(each.file, each.fault) for each in reports if each.fault),
        repeated=tuple(
            Fault(each.file, f"the same, byte for byte, as {firsts[each.digest].file}; it counts once.")
            for each in repeated
        ),
        notes=(
            *(Fault(each.file, note) for each in firsts.values() for note in each.notes),
            *_other_versions(tables["lots"], files),
        ),
    )


def _other_versions(lots: pd.DataFrame, files: Sequence[str]) -> Iterator[Fault]:
    """Planners that share lots with an earlier one: two versions of one planner, all of whose records count twice."""
    named = lots.dropna(subset=["lot", "bought_g"])
    lot = pd.Series(list(zip(named["lot"].map(loosely), named["bought_g"].round(), strict=True)), named.index)
    first = named.groupby(lot)[PLANNER].transform("min")
    for (later, earlier), shared in named[named[PLANNER] > first].groupby([PLANNER, first]).size().items():
        if shared >= SHARED:
            yield Fault(
                files[later - 1],
                f"{shared} of its lots are in {files[earlier - 1]}, too, with the same name and weight. If these are two "
                "versions of one planner, all of it counts twice: give only the latest.",
            )


def _joined(frames: list[pd.DataFrame], empty: pd.DataFrame, numbers: dict[int, int]) -> pd.DataFrame:
    """The rows of the planners that count, under their new numbers."""
    whole = pd.concat([each for each in frames if len(each)] or [empty], ignore_index=True)
    whole = whole[whole[PLANNER].isin(list(numbers))]
    numbered = whole.assign(**{PLANNER: whole[PLANNER].map(numbers).astype("int64")})
    return numbered.sort_values(PLANNER, kind="stable", ignore_index=True)


def _planners(reports: list[FileReport], tables: dict[str, pd.DataFrame]) -> pd.DataFrame:
    """One row per planner: its file, title, units and version, and the numbers of its records."""
    columns = {PLANNER: pd.Series(range(1, len(reports) + 1), dtype="int64")}
    for name in ("file", "title", "units", "version"):
        columns[name] = pd.Series([getattr(each, name) for each in reports], dtype="string")
    listed = pd.DataFrame(columns)
    counts = {
        name: listed[PLANNER].map(table[PLANNER].value_counts()).fillna(0).astype("int64")
        for name, table in tables.items()
    }
    return listed.assign(**counts)


def planners_in(places: Sequence[Path], leave_out: Sequence[Path] = ()) -> list[Path]:
    """The files to read: each file that is named, and all workbooks of each folder, in order of their names."""
    out = {path.absolute() for path in leave_out}
    files = [file for place in places for file in (_in_folder(place, out) if place.is_dir() else [place])]
    if not files:
        raise FileError.at(", ".join(map(str, places)), "there is no .xlsx or .ods workbook in it.")
    return files


def _in_folder(folder: Path, leave_out: set[Path]) -> list[Path]:
    def is_meant(file: Path) -> bool:
        is_workbook = file.suffix.lower() in SUFFIXES and not file.name.startswith(LOCKS)
        return is_workbook and file.is_file() and file.absolute() not in leave_out

    return sorted(filter(is_meant, folder.iterdir()))
