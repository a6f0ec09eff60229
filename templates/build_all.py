"""Builds the blank planners beside their settings: python templates/build_all.py

A test holds the committed files against what this writes, byte for byte.
"""

from pathlib import Path

from workbookgen.build import build
from workbookgen.settings import load
from workbookgen.unit_systems import UNIT_SYSTEMS

FOLDER = Path(__file__).parent
NAMES = tuple(f"{units}{size}" for size in ("", "-small") for units in UNIT_SYSTEMS)


def main(target: Path = FOLDER) -> None:
    for name in NAMES:
        build(load(FOLDER / f"{name}.toml"), target / f"{name}.xlsx")


if __name__ == "__main__":
    main()
