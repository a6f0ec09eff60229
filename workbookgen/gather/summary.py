"""What the planners of a guild show together: what a breed loses on the way to yarn, and how evenly it is spun.

Only weighed figures count as observed; figures that a planner merely expected are left out. Lots count equally, large
or small, as they do in a planner's own guide. With fewer than three lots no interval is given, since a mean of two
says next to nothing (the limit of `reference.learning.observed_or_published`).
"""

import numpy as np
import pandas as pd

from workbookgen.gather.columns import PLANNER
from workbookgen.reference import fiber, own_records, statistics
from workbookgen.texts import loosely
from workbookgen.units import Quantity

ENOUGH = 3
WHOLE = "yarn from raw fleece"
# What is observed, the column of the lots that has it, and the fiber table's column for it.
STAGES = (
    ("skirting loss", "seen_skirting_loss", "skirting"),
    ("scoured yield", "seen_scoured_yield", "yield"),
    ("preparation loss", "seen_preparation_loss", "preparation"),
    ("combing loss", "seen_combing_loss", "combing"),
    ("spinning loss", "seen_spinning_loss", "spinning"),
    (WHOLE, "seen_yarn_kept", ""),
)
ALL_LOTS = "all lots"
FIGURES = ("mean", "deviation", "least", "most", "mean_doubt95", "published", "in_use")
OBSERVED = ("kind", "stage", "lots", "planners", *FIGURES)
WORDS, COUNTS = ("kind", "stage"), ("lots", "planners", "skeins", "lots_compared")
GRISTS = ("mean_grist_m_per_g", "mean_grist_yd_per_lb", "least_grist_m_per_g", "most_grist_m_per_g")
EVENNESS = ("kind", "planners", "lots", "skeins", *GRISTS, "lots_compared", "grist_cv", "least_cv", "most_cv")

Fibers = tuple[dict, ...]  # the fiber table that the lots are compared with


def observed(lots: pd.DataFrame, fibers: Fibers) -> pd.DataFrame:
    """One row for each breed and stage with a weighed lot: what was observed, and what is published."""
    weighed = lots.assign(kind=_kinds(lots["seen_kind"], fibers), seen_yarn_kept=_whole_yield(lots))
    rows = [
        _figures(kind, stage, group[[PLANNER, column]].dropna(), column, _published(fibers, kind, word))
        for kind, group in weighed[weighed["kind"].notna()].groupby("kind", sort=True)
        for stage, column, word in STAGES
        if group[column].notna().any()
    ]
    return _of_kinds(rows, OBSERVED)


def _of_kinds(rows: list[dict], columns: tuple[str, ...]) -> pd.DataFrame:
    """Rows as a frame whose columns have the same types even if there are no rows."""
    kinds = {name: "string" if name in WORDS else "int64" if name in COUNTS else "float64" for name in columns}
    return pd.DataFrame(rows, columns=columns).astype(kinds)


def _figures(kind: str, stage: str, group: pd.DataFrame, column: str, published: float | None) -> dict:
    """The shares that some lots lost in a stage, or kept; `published` is the fiber table's figure."""
    shares, count = group[column], len(group)
    deviation = shares.std() if count > 1 else np.nan
    mean = shares.mean()
    is_known = published is not None or count >= ENOUGH
    return {
        "kind": kind,
        "stage": stage,
        "lots": count,
        "planners": group[PLANNER].nunique(),
        "mean": mean,
        "deviation": deviation,
        "least": shares.min(),
        "most": shares.max(),
        "mean_doubt95": statistics.half_width(deviation, count) if count >= ENOUGH else np.nan,
        "published": published,
        "in_use": own_records.observed_or_published(published, mean, count, ENOUGH) if is_known else np.nan,
    }


def _whole_yield(lots: pd.DataFrame) -> pd.Series:
    """The share of raw fleece that became yarn, if both were weighed; an expected weight of yarn does not count."""
    return lots["yarn_kept"].where((lots["stage"] == 1) & lots["yarn_weighed_g"].notna())


def _kinds(names: pd.Series, fibers: Fibers) -> pd.Series:
    """The names of breeds, each in one spelling: the fiber table's, or else the most frequent."""
    keys = names.map(loosely, na_action="ignore")
    spelled = {key: group.mode().iloc[0].strip() for key, group in names.groupby(keys)}
    spelled |= {loosely(each["name"]): each["name"] for each in fibers if "name" in each}
    return keys.map(spelled).astype("string")


def _published(fibers: Fibers, kind: str, word: str) -> float | None:
    record = next((each for each in fibers if loosely(each.get("name", "")) == loosely(kind)), {})
    if word == "yield":
        low, high = record.get("yield_low"), record.get("yield_high")
        return None if low is None or high is None else fiber.midpoint(low, high)
    return record.get(word)


def evenness(lots: pd.DataFrame, fibers: Fibers) -> pd.DataFrame:
    """One row for each breed with weighed skeins: their grist, and how even the skeins of one lot are."""
    spun = lots.assign(kind=_kinds(lots["seen_kind"], fibers))
    spun = spun[spun["mean_grist_m_per_g"].notna()]
    rows = [_even(kind, group) for kind, group in spun[spun["kind"].notna()].groupby("kind", sort=True)]
    rows += [_even(ALL_LOTS, spun)] if len(spun) else []
    return _of_kinds(rows, EVENNESS)


def _even(kind: str, group: pd.DataFrame) -> dict:
    """The grist of some lots, and its variation within each that has two skeins or more."""
    grists, compared = group["mean_grist_m_per_g"], group[group["grist_cv"].notna()]
    variations, skeins = compared["grist_cv"].to_numpy(), compared["skeins"].to_numpy()
    return {
        "kind": kind,
        "planners": group[PLANNER].nunique(),
        "lots": len(group),
        "skeins": int(group["skeins"].sum()),
        "mean_grist_m_per_g": grists.mean(),
        "mean_grist_yd_per_lb": Quantity(grists.mean(), "m/g").m_as("yard/pound"),
        "least_grist_m_per_g": grists.min(),
        "most_grist_m_per_g": grists.max(),
        "lots_compared": len(compared),
        "grist_cv": statistics.pooled_variation(variations, skeins) if len(compared) else np.nan,
        "least_cv": compared["grist_cv"].min(),
        "most_cv": compared["grist_cv"].max(),
    }
