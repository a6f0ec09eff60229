"""Planners filled with invented work, in any unit system, for the tests of gathering.

Amounts are told as quantities and typed in as the planner shows them, so that the same work
can be kept in yards and ounces, or in meters and grams. The files are written without stored
results, as a program saves them that does not calculate.
"""

import zipfile
from collections.abc import Mapping
from pathlib import Path

from chapters import all_but
from workbookgen.book.write import write
from workbookgen.build import layout_of
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.language.parts import unit_of
from workbookgen.settings import Rows, Settings
from workbookgen.units import Quantity

STRINGS = "xl/sharedStrings.xml"
ROWS = Rows(**dict.fromkeys(Rows.model_fields, 6) | {"guide": 44, "skeins": 8})


def q(number: float, unit: str) -> Quantity:
    return Quantity(float(number), unit)


# One spinner's work. The reel's loop is 2 yd, which is 1.8288 m.
REELS = ({"name": "Post reel", "rated": q(2, "yd"), "tolerance": q(0.01, "m")},)
LOTS = (
    # Romney from raw fleece to yarn: 10% lost in skirting, 60% kept in scouring, then 10% and 10% lost.
    {
        "name": "Heather",
        "kind": "Romney",
        "state": "raw fleece",
        "weight": q(1000, "g"),
        "skirted_weighed": q(900, "g"),
        "scoured_weighed": q(540, "g"),
        "prepared_weighed": q(486, "g"),
        "yarn_weighed": q(437.4, "g"),
    },
    # Only skirted yet.
    {
        "name": "Bramble",
        "kind": "Corriedale",
        "state": "raw fleece",
        "weight": q(2, "kg"),
        "skirted_weighed": q(1.6, "kg"),
        "grist": q(3, "m/g"),
    },
)
SKEINS = (
    # 100.5 turns are 201 yd, 183.7944 m; a tenth of the loop is lost in washing; 100 g.
    {
        "name": "Heather 1",
        "reel": "Post reel",
        "wraps": 100.0,
        "part_wrap": 0.5,
        "gross": q(104, "g"),
        "tare": q(4, "g"),
        "washed_loop": q(1.8, "yd"),
        "counted_wpi": q(10, "1/inch"),
        "lot": "Heather",
    },
    # 110.5 turns unwashed, no tare, 100 g.
    {
        "name": "Heather 2",
        "reel": "Post reel",
        "wraps": 110.0,
        "part_wrap": 0.5,
        "gross": q(100, "g"),
        "lot": "Heather",
    },
)
SAMPLES = (
    {
        "name": "Heather 2-ply",
        "lot": "Heather",
        "wpi_1": q(10, "1/inch"),
        "wpi_2": q(12, "1/inch"),
        "wpi_3": q(11, "1/inch"),
        "length": q(20, "m"),
        "mass": q(10, "g"),
        "fiber_in": q(12, "g"),
        "yarn_out": q(10.8, "g"),
        "singles_turns": 60.0,
        "singles_piece": q(0.1, "m"),
    },
)
PROJECTS = ({"name": "Mittens", "wanted": q(200, "m"), "margin": 0.1, "grist": q(2, "m/g"), "lot_1": "Heather"},)
WORK = {"reels": REELS, "fiber": LOTS, "skeins": SKEINS, "samples": SAMPLES, "projects": PROJECTS}


def settings(units: str, **changed) -> Settings:
    """Of the chapters those that hold such work."""
    return Settings(
        **{"units": units, "rows": ROWS, "leave_out": all_but("Guide", "Samples", "Yarn", "Components", "Figures")}
        | changed
    )


FIGURES = {
    "doubts_tape": q(1, "cm"),
    "doubts_skein": q(200, "m"),
}  # not the starting values, which are round in each unit system


def write_planner(
    path: Path, chosen: Settings, work: Mapping[str, tuple[Mapping, ...]] = WORK, cached: Mapping | None = None
) -> Path:
    """A planner in which this work was typed in."""
    layout = layout_of(chosen)
    entries = starting_entries(layout.planner) | {
        key: (value.m_as(unit_of(layout.planner.by_key[key][1], layout.planner.system).pint),)
        for key, value in FIGURES.items()
    }
    for block, records in work.items():
        entries = with_records(
            layout.planner, entries, block, [_typed(layout.planner, block, record) for record in records]
        )
    path.write_bytes(write(layout, entries, cached or {}))
    return path


def copies(folder: Path, count: int, units: str) -> list[Path]:
    """Planners that differ in the name of their only lot, and so in their bytes: Lot 0, Lot 1, ..."""
    original = write_planner(folder / "original.part", settings(units), {"fiber": (LOTS[0] | {"name": "Lot N"},)})
    with zipfile.ZipFile(original) as package:
        parts = {name: package.read(name) for name in package.namelist()}
    paths = [folder / f"{number:02}.xlsx" for number in range(count)]
    for number, path in enumerate(paths):
        changed = parts | {STRINGS: parts[STRINGS].replace(b"Lot N", f"Lot {number}".encode())}
        with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as package:
            for name, content in changed.items():
                package.writestr(name, content)
    return paths


def _typed(planner, block: str, record: Mapping) -> dict:
    fields = planner.blocks[block].by_key
    return {
        key: value.m_as(unit_of(fields[key], planner.system).pint) if isinstance(value, Quantity) else value
        for key, value in record.items()
    }


def fleece(name: str, kind: str, scoured: float, spun: float | None = None) -> dict:
    """A lot of 1,000 g bought skirted, of which so many grams were left after scouring, and so many grams of yarn."""
    lot = {
        "name": name,
        "kind": kind,
        "state": "skirted fleece",
        "weight": q(1000, "g"),
        "skirted_weighed": q(1000, "g"),
        "scoured_weighed": q(scoured, "g"),
    }
    return lot if spun is None else lot | {"prepared_weighed": q(scoured, "g"), "yarn_weighed": q(spun, "g")}
