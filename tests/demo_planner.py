"""The demo as demo/make.py tells it, for tests: a planner with all sheets, in which something is typed everywhere."""

import sys
from functools import cache
from pathlib import Path

from workbookgen.language.entries import Entries
from workbookgen.settings import Settings, load

FOLDER = Path(__file__).parent.parent / "demo"
sys.path.insert(0, str(FOLDER))

import make  # noqa: E402, F401


@cache
def demo_settings() -> Settings:
    return load(FOLDER / "settings.toml")


@cache
def demo_entries() -> Entries:
    """What its spinner typed; never change it."""
    return make.entries(demo_settings())
