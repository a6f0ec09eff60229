"""Sheets are renamed in sheets/tabs.py alone: whatever names them follows, whether log, page or calculators."""

import subprocess
import sys

RENAMED = """
from workbookgen.sheets import tabs
for each in [name for name in vars(tabs) if name.isupper()]:
    setattr(tabs, each, f"Our {getattr(tabs, each).lower()}")
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner
for size in ("whole", "small"):
    print(*(sheet.name for sheet in planner(Settings(size=size)).sheets), sep=", ")
"""


def test_every_sheet_can_be_renamed_in_one_place():
    ended = subprocess.run([sys.executable, "-c", RENAMED], capture_output=True, text=True)
    assert ended.stderr == ""
    whole, small = ended.stdout.splitlines()
    assert whole.startswith("Our desk, Our measure, Our lot, ") and whole.count("Our ") == 16
    assert small.count("Our ") == len(small.split(", ")) == 8
