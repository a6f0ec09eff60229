"""What many files of tests look at is made once: a layout in each worker, a finished planner in the whole run.

`built` in conftest.py hands it out. The workers of a run share a folder: who needs a planner first
builds it and puts it there whole, and each takes a copy. Two that need it at once both build it,
which does no harm; where building fails, it fails anew in each test that needs it.
"""

import shutil
from dataclasses import dataclass
from functools import cache, lru_cache
from hashlib import sha256
from pathlib import Path

import openpyxl

from workbookgen.book.placement import Layout
from workbookgen.build import layout_of, workbook
from workbookgen.language.entries import Entries
from workbookgen.saving import save
from workbookgen.settings import Rows, Settings


def rows_of(each: int, **others: int) -> Rows:
    """So many lines in each log, and as many as these in others."""
    return Rows(**dict.fromkeys(Rows.model_fields, each) | others)


@cache
def laid_out(settings: Settings) -> Layout:
    return layout_of(settings)


def opened(path: Path, values: bool = False) -> openpyxl.Workbook:
    """The planner as openpyxl reads it, with formulas or with the values stored for them.

    To be looked at only: who asks next gets the same.
    """
    return _read(path, values, path.stat().st_mtime_ns)


@lru_cache(maxsize=8)  # of the default planner openpyxl makes a hundred megabytes
def _read(path: Path, values: bool, saved: int) -> openpyxl.Workbook:
    return openpyxl.load_workbook(path, data_only=values)


@dataclass(frozen=True)
class Built:
    """The planner of these settings, with these entries: where a worker's own copy stands."""

    shared: Path
    own: Path

    def __call__(self, settings: Settings, entries: Entries | None = None) -> Path:
        asked = f"{settings.model_dump_json()} {entries}"
        name = f"{sha256(asked.encode()).hexdigest()[:16]}.xlsx"
        if not (self.own / name).exists():
            if not (self.shared / name).exists():
                save(self.shared / name, workbook(laid_out(settings), entries))
            shutil.copyfile(self.shared / name, self.own / name)
        return self.own / name
