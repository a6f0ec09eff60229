"""Builds the blank planners beside their settings: python templates/build_all.py

A test holds the committed files against what this writes, byte for byte.
"""

from pathlib import Path

from workbookgen.build import build
from workbookgen.settings import load

FOLDER = Path(__file__).parent
NAMES = ("us", "us-grams", "metric", "us-small", "us-grams-small", "metric-small")


def main(target: Path = FOLDER) -> None:
    for name in NAMES:
        build(load(FOLDER / f"{name}.toml"), target / f"{name}.xlsx")


if __name__ == "__main__":
    main()
