"""The tables of published values, read once, and a printed value made into a quantity.

`workbookgen/sheets/proofs.csv` holds what the planner computes itself, published_elsewhere.csv
what only the library, the registry or the fiber table can answer, and published_rows.csv
accounts for every value that was looked at.
"""

import csv
from pathlib import Path

from workbookgen.units import Quantity

HERE = Path(__file__).parent


def table(name: str) -> list[dict[str, str]]:
    """The lines of one of the tables beside this module."""
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def quantity(value: float | str, unit: str) -> Quantity | float | str:
    """A printed value as a reference function takes it: texts and plain numbers as they are."""
    return Quantity(value, unit) if unit not in ("", "dimensionless") else value


def in_unit(computed, unit: str) -> float | str:
    """A computed value as print shows it. One of the wrong kind does not convert, and fails."""
    if isinstance(computed, str):
        assert unit == ""
        return computed
    return float(Quantity(computed, "").m_as("") if unit == "dimensionless" else computed.m_as(unit))
