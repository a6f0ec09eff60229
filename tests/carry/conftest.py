"""Planners of few lines, filled and carried over; what was invented for them is nobody's."""

from dataclasses import dataclass
from pathlib import Path

import pytest

from chapters import all_but
from entries import entries_with
from planners import laid_out, rows_of
from workbookgen.book.write import write
from workbookgen.carry.carry import Carried, carry
from workbookgen.filled.planner import FilledPlanner, read_filled
from workbookgen.settings import Reel, Settings

LINES = 4
REELS = (Reel(name="Clock reel", loop="72 in"), Reel(name="Spare", loop="54 in"))
RECORDS = {
    "reels": [{"name": "Clock reel", "rated": 72.0, "cord": 600.0, "turns": 8.25}, {"name": "Spare", "rated": 54.0}],
    "fiber": [
        {
            "name": "Clover",
            "state": "raw fleece",
            "weight": 104.0,
            "grist": 850.0,
            "own_skirting": 0.15,
            "note": "=cmd|calc",
        },
        {"name": "Gray thread", "state": "yarn or thread", "weight": 2.2, "grist": 9000.0},
    ],
    "skeins": [
        {"name": "First", "reel": "Clock reel", "wraps": 104.0, "gross": 4.02, "tare": 0.12, "lot": "Clover"},
        {
            "name": "Second",
            "reel": "Spare",
            "wraps": 142.0,
            "part_wrap": 0.5,
            "gross": 3.74,
            "washed_loop": 51.3,
            "lot": "Clover",
        },
        {
            "name": "Third",
            "reel": "Clock reel",
            "wraps": 98.0,
            "rest": 1.5,
            "gross": 3.88,
            "counted_wpi": 12.5,
            "lot": "Clover",
        },
    ],
    "projects": [{"name": "Hat", "wanted": 200.0, "margin": 0.1, "grist": 850.0, "lot_1": "Clover"}],
}
CARDS = {
    "buying_length": 2400.0,
    "counts_number": 20.0,
    "weighed_mass": 0.35,
    "pace_start": 46357.0,
    "scouring_hot": 140.0,
}


LEFT_OUT = all_but("Guide", "Buying", "Counts", "Time", "Figures", "Scouring", "Uses")  # what is filled in below stays


def small(units: str = "us", lines: int = LINES, **more) -> Settings:
    """Settings with few lines, an empty guide, two reels of inches, and the chapters that are filled in below."""
    return Settings(
        **{"units": units, "fibers": "", "reels": REELS, "leave_out": LEFT_OUT, "rows": rows_of(lines)} | more
    )


def filled(settings: Settings, records=RECORDS, cards=CARDS) -> dict:
    """The entries of a planner with these records."""
    planner = laid_out(settings).planner
    entries = entries_with(planner, records)
    return entries | {key: (value,) for key, value in cards.items()}


def written(path: Path, settings: Settings, entries, notes=None) -> Path:
    """A planner as the generator writes it; its cached values are left out, since nobody here reads them."""
    path.write_bytes(write(laid_out(settings), entries, {}, notes))
    return path


def cell(key: str, row: int = 0, settings: Settings | None = None) -> str:
    """Where a record's field stands in a small planner, as "Skeins!A8"."""
    placement = laid_out(settings or small()).placements[key]
    return f"{placement.sheet}!{placement.cell(row)}"


@dataclass(frozen=True)
class Outcome:
    """What carrying reported, and the new planner as it is read again."""

    carried: Carried
    new: FilledPlanner

    @property
    def leftovers(self) -> dict[str, tuple]:
        """Old sheet and cell -> what stood there, and where it is now."""
        return {f"{each.sheet}!{each.cell}": (each.what, each.now) for each in self.carried.leftovers}


@pytest.fixture
def carried(tmp_path):
    """Carry a file over and read the new planner."""

    def carrying(path: Path, settings: Settings | None = None, name: str = "new.xlsx") -> Outcome:
        return Outcome(carry(path, tmp_path / name, settings), read_filled(tmp_path / name))

    return carrying


@pytest.fixture(scope="session")
def old_settings():
    return small()


@pytest.fixture(scope="session")
def old_entries(old_settings):
    return filled(old_settings)


@pytest.fixture(scope="session")
def old_file(old_settings, old_entries, tmp_path_factory):
    return written(tmp_path_factory.mktemp("old") / "old.xlsx", old_settings, old_entries)
