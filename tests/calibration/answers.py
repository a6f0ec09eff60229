"""What the planner says of many typed worlds at once, read by the names of its fields."""

import math

import numpy as np

from entries import entries_with
from workbookgen.checking.expected import expected_of_keys
from workbookgen.settings import Rows, Settings
from workbookgen.sheets.planner import planner

from .worlds import BREED


def said(records: dict[str, list[dict]], *keys: str, **typed_on_cards: float) -> list[np.ndarray]:
    """The columns that these keys name, after these records were typed: numbers, not a number where blank; texts as
    they are."""
    # Built past the limits that a person's settings have, so that many worlds stand in one planner.
    rows = Rows.model_construct(**Rows().model_dump() | {log: max(2, len(found)) for log, found in records.items()})
    described = planner(Settings(units="metric", fibers="", rows=rows))
    entries = entries_with(described, {"guide": [BREED | {"source": "invented"}]} | records)
    entries |= {key: (value,) for key, value in typed_on_cards.items()}
    [values] = expected_of_keys(described, [entries], keys)
    return [_column(values[key]) for key in keys]


def typed(worlds) -> dict[str, list[dict]]:
    """The records of many worlds, log by log. A world is anything with a `records` of its own."""
    together: dict[str, list[dict]] = {}
    for world in worlds:
        for log, found in world.records.items():
            together.setdefault(log, []).extend(found)
    return together


def _column(values) -> np.ndarray:
    column = np.asarray(values, dtype=object)
    if any(isinstance(each, str) and each for each in column):
        return column
    return np.array([np.nan if each is None or each == "" else each for each in column], dtype=float)


def give_or_take(said: float, worlds: int, times: float = 2.5) -> float:
    """How far the share of so many worlds may lie off a chance by the draw alone: so many binomial standard errors."""
    return times * math.sqrt(said * (1 - said) / worlds)
