"""Planners as the programs save them: by LibreOffice as .xlsx and .ods, by Gnumeric, and edited there."""

from pathlib import Path

import openpyxl
import pytest

from demo_planner import demo_entries, demo_settings
from planners import laid_out
from workbookgen.build import workbook
from workbookgen.carry.leftovers import IN_ITS_CELL, ONLY_HERE
from workbookgen.checking.check import FileToCheck, check
from workbookgen.engines import libreoffice
from workbookgen.engines.libreoffice import convert
from workbookgen.filled.planner import described
from workbookgen.planner_file import read_planner

from .conftest import cell, filled, small
from .programs import in_gnumeric, in_libreoffice

DESK = described(small()).sheets[0].name
FIRST, INSERTED, SECOND, THIRD, FREE = range(5)  # the lines of the skeins, with one that was inserted


def by_sheet(edits: dict[str, object]) -> dict[str, dict[str, object]]:
    """Edits by sheet and cell, from those by "Sheet!A1"."""
    found: dict[str, dict[str, object]] = {}
    for place, what in edits.items():
        sheet, _, address = place.partition("!")
        found.setdefault(sheet, {})[address] = what
    return found


EDITS = {
    "lines": {"Skeins": laid_out(small()).placements["skeins_name"].row + 1},  # before the second skein
    "cells": by_sheet(
        {
            cell("skeins_name", INSERTED): "New one",
            cell("skeins_reel", INSERTED): "Clock reel",
            cell("skeins_wraps", INSERTED): "=6.5*16",
            cell("skeins_gross", INSERTED): 4.25,
            cell("skeins_name", SECOND): "'=cmd",
            cell("skeins_wraps", THIRD): "7,5",
            cell("skeins_gross", THIRD): "'3.88",
            cell("skeins_name", FREE): "Last",
            "Skeins!ZZ3": "in the margin",
            cell("reels_name", 2): "Mill",
            cell("reels_rated", 2): 100.0,
            f"{DESK}!ZZ30": 12.5,
        }
    ),
    "notes": by_sheet({cell("skeins_name", FIRST): "the first I liked", f"{DESK}!A1": "read this"}),
}


@pytest.fixture(scope="module")
def demo(built):
    """The demo, as a spinner has it: its entries, and the file."""
    return demo_entries(), built(demo_settings(), demo_entries())


def by_libreoffice(ending: str):
    return lambda path, folder: (
        convert(path, folder / f"saved.{ending}", recalculate=False) or folder / f"saved.{ending}"
    )


def by_german_libreoffice(path: Path, folder: Path) -> Path:
    """Worked out anew, in the profile of somebody who writes 3,5: its words have commas, and 1 350 for 1,350."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(libreoffice, "_PROFILE", libreoffice._PROFILE.replace("en-US", "de-DE"))
        convert(path, folder / "deutsch.xlsx", recalculate=True)
    return folder / "deutsch.xlsx"


def by_gnumeric(path: Path, folder: Path) -> Path:
    in_gnumeric(path, folder / "saved.xlsx")
    return folder / "saved.xlsx"


def by_openpyxl(path: Path, folder: Path) -> Path:
    openpyxl.load_workbook(path).save(folder / "saved.xlsx")
    return folder / "saved.xlsx"


@pytest.mark.parametrize(
    "save",
    [
        pytest.param(by_openpyxl, id="openpyxl"),
        pytest.param(by_libreoffice("xlsx"), id="LibreOffice xlsx", marks=pytest.mark.programs),
        pytest.param(by_libreoffice("ods"), id="LibreOffice ods", marks=pytest.mark.programs),
        pytest.param(by_german_libreoffice, id="German LibreOffice", marks=pytest.mark.programs),
        pytest.param(by_gnumeric, id="Gnumeric", marks=pytest.mark.programs),
    ],
)
def test_the_demo_comes_over_whoever_saved_it(save, demo, tmp_path, carried):
    entries, path = demo
    outcome = carried(save(path, tmp_path))
    assert outcome.new.entries == entries
    assert outcome.carried.leftovers == outcome.carried.differences == outcome.carried.notes == ()


@pytest.fixture(scope="module")
def edited(tmp_path_factory):
    """A planner that somebody typed into with LibreOffice, by the ending that it was saved with."""
    folder = tmp_path_factory.mktemp("edited")
    (folder / "planner.xlsx").write_bytes(workbook(laid_out(small()), filled(small())))
    files = {ending: folder / f"edited.{ending}" for ending in ("xlsx", "ods")}
    in_libreoffice(
        folder, [EDITS | {"planner": str(folder / "planner.xlsx"), "saved": [str(each) for each in files.values()]}]
    )
    return files


@pytest.mark.programs
@pytest.mark.parametrize("ending", ["xlsx", "ods"])
def test_what_was_typed_in_libreoffice_comes_over(ending, edited, tmp_path, carried):
    outcome = carried(edited[ending])
    new = outcome.new.entries
    assert new["skeins_name"] == ("First", "New one", "=cmd", "Third", "Last")
    assert new["skeins_reel"][:2] == ("Clock reel", "Clock reel")
    assert new["skeins_wraps"] == (104.0, 104.0, 142.0, "7,5", None)
    assert new["skeins_gross"] == (4.02, 4.25, 3.74, "3.88", None)
    assert new["reels_name"] == ("Clock reel", "Spare", "Mill", None)
    assert outcome.new.settings.rows.skeins == 5
    assert outcome.leftovers == {
        cell("skeins_wraps", INSERTED): ("=6.5*16", ONLY_HERE),
        cell("skeins_wraps", THIRD): ("7,5", IN_ITS_CELL),
        cell("skeins_gross", THIRD): ("3.88", IN_ITS_CELL),
        "Skeins!ZZ3": ("in the margin", ONLY_HERE),
        f"{DESK}!ZZ30": (12.5, ONLY_HERE),
        f"{DESK}!A1": ("read this", ONLY_HERE),
    }
    assert list(outcome.new.book.comments["Skeins"].values()) == ["the first I liked"]
    assert outcome.new.position("skeins_name", 0)[1:] in outcome.new.book.comments["Skeins"]
    planner = read_planner(tmp_path / "new.xlsx")
    assert check(FileToCheck(planner.path, planner.layout, formulas=planner.formulas), scenarios=0).findings == []


@pytest.mark.programs
def test_the_notes_of_a_conversion_survive_libreoffice(old_file, tmp_path, carried):
    carried(old_file, small("metric"))
    back = carried(by_libreoffice("xlsx")(tmp_path / "new.xlsx", tmp_path), small("us"), "back.xlsx")
    assert back.new.entries["skeins_gross"][:3] == (4.02, 3.74, 3.88)
