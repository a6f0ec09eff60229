"""Planners as the programs save them: by LibreOffice as .xlsx and .ods, by Gnumeric, and edited there."""

import json
import shutil
import subprocess
import sys
from pathlib import Path

import openpyxl
import pytest

from workbookgen.build import layout_of, workbook
from workbookgen.carry.leftovers import IN_ITS_CELL, ONLY_HERE
from workbookgen.checking.check import check
from workbookgen.engines.libreoffice import convert
from workbookgen.planner_file import read_planner
from workbookgen.settings import load

from .conftest import filled, small

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / "demo"))

from make import entries as demo_entries  # noqa: E402

EDITS = {
    "lines": {"Skeins": 8},  # before the second skein
    "cells": {
        "Skeins": {"A8": "New one", "B8": "Clock reel", "C8": "=6.5*16", "F8": 4.25, "A9": "'=cmd", "C10": "7,5", "F10": "'3.88", "A11": "Last", "ZZ3": "in the margin"},
        "Reels": {"A9": "Mill", "B9": 100.0},
        "Questions": {"H30": 12.5},
    },
    "notes": {"Skeins": {"A7": "the first I liked"}, "Start": {"A1": "read this"}},
}


@pytest.fixture(scope="module")
def demo(tmp_path_factory):
    """The demo, as a spinner has it: its entries, and the file."""
    settings = load(ROOT / "demo" / "settings.toml")
    entries = demo_entries(settings)
    path = tmp_path_factory.mktemp("demo") / "demo.xlsx"
    path.write_bytes(workbook(layout_of(settings), entries))
    return entries, path


def by_libreoffice(ending: str):
    return lambda path, folder: convert(path, folder / f"saved.{ending}", recalculate=False) or folder / f"saved.{ending}"


def by_gnumeric(path: Path, folder: Path) -> Path:
    subprocess.run([shutil.which("ssconvert"), path, folder / "saved.xlsx"], check=True, capture_output=True, timeout=120)
    return folder / "saved.xlsx"


def by_openpyxl(path: Path, folder: Path) -> Path:
    openpyxl.load_workbook(path).save(folder / "saved.xlsx")
    return folder / "saved.xlsx"


@pytest.mark.parametrize("save", [
    pytest.param(by_openpyxl, id="openpyxl"),
    pytest.param(by_libreoffice("xlsx"), id="LibreOffice xlsx", marks=pytest.mark.programs),
    pytest.param(by_libreoffice("ods"), id="LibreOffice ods", marks=pytest.mark.programs),
    pytest.param(by_gnumeric, id="Gnumeric", marks=pytest.mark.programs),
])
def test_the_demo_comes_over_whoever_saved_it(save, demo, tmp_path, carried):
    entries, path = demo
    outcome = carried(save(path, tmp_path))
    assert outcome.new.entries == entries
    assert outcome.carried.leftovers == outcome.carried.differences == outcome.carried.notes == ()


@pytest.fixture(scope="module")
def edited(tmp_path_factory):
    """A planner that somebody typed into with LibreOffice, by the ending that it was saved with."""
    python = next((each for each in (sys.executable, "/usr/bin/python3") if not subprocess.run([each, "-c", "import uno"], capture_output=True).returncode), None)
    if python is None or not shutil.which("soffice"):
        pytest.skip("LibreOffice with its Python is not here")
    folder = tmp_path_factory.mktemp("edited")
    (folder / "planner.xlsx").write_bytes(workbook(layout_of(small()), filled(small())))
    script = Path(__file__).with_name("libreoffice_edits.py")
    subprocess.run([python, script, folder / "planner.xlsx", folder, json.dumps(EDITS)], check=True, timeout=180)
    return {ending: folder / f"edited.{ending}" for ending in ("xlsx", "ods")}


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
        "Skeins!C8": ("=6.5*16", ONLY_HERE),
        "Skeins!C10": ("7,5", IN_ITS_CELL),
        "Skeins!F10": ("3.88", IN_ITS_CELL),
        "Skeins!ZZ3": ("in the margin", ONLY_HERE),
        "Questions!H30": (12.5, ONLY_HERE),
        "Start!A1": ("read this", ONLY_HERE),
    }
    assert outcome.new.book.comments["Skeins"] == {(7, 1): "the first I liked"}
    planner = read_planner(tmp_path / "new.xlsx")
    assert check(planner.path, planner.layout, scenarios=0, formulas_in_file=planner.formulas).findings == []


@pytest.mark.programs
def test_the_notes_of_a_conversion_survive_libreoffice(old_file, tmp_path, carried):
    carried(old_file, small("metric"))
    back = carried(by_libreoffice("xlsx")(tmp_path / "new.xlsx", tmp_path), small("us"), "back.xlsx")
    assert back.new.entries["skeins_gross"][:3] == (4.02, 3.74, 3.88)
