"""The observed figures as a fiber table: the guide of the next planners.

Its columns are those of `templates/fibers.csv`, so that `fibers = "guild-fibers.csv"` in the
settings builds planners that expect what the guild has seen. A figure is the guild's own once enough lots support it;
until then it is the published one. A yield's range is chosen so that the guide derives from it the mean that was
observed, and how far the next fleece may be off it. Three lots may be alike by chance, which would make that look
certain: so the published spread counts as much as three more lots (common practice, no source). And their mean is
itself off.
"""

import re
from math import sqrt

import pandas as pd

from workbookgen.gather.summary import ENOUGH, STAGES, Fibers
from workbookgen.reference import fiber, own_records
from workbookgen.settings.fiber_table import NUMBERS, TEXTS
from workbookgen.texts import loosely

LONGEST_SOURCE = 200  # characters, in the guide's column
COLUMNS = ("name", *(name for name, _ in NUMBERS), *(name for name in TEXTS if name != "name"))
# The parts of a published source, and what each is about.
PARTS = {"Yield": {"yield"}, "Losses": {"skirting", "preparation", "combing", "spinning"}}
WORDS = {stage: word for stage, _, word in STAGES if word}
OBSERVED = "Observed {}, lots of planners"  # how the source of such a line begins, with the year


def was_gathered(fibers: Fibers) -> bool:
    """Whether a fiber table has figures that were observed: gathered again, their lots would count twice."""
    return any(re.match(OBSERVED.format(r"\d+"), record.get("source", "")) for record in fibers)


def fiber_table(observed: pd.DataFrame, fibers: Fibers, year: int) -> pd.DataFrame:
    """One row per fiber: the published ones, with what was observed of them, then those that only the guild has."""
    supported = observed[(observed["lots"] >= ENOUGH) & observed["stage"].isin(list(WORDS))]
    known = [_published(record) for record in fibers]
    names = {loosely(row["name"]) for row in known}
    new = [{"name": kind} for kind in supported["kind"].unique() if loosely(kind) not in names]
    usual = _usual_spread(known)
    rows = [row | _observed(supported[supported["kind"] == row["name"]], row, usual, year) for row in known + new]
    return pd.DataFrame(rows, columns=COLUMNS)


def _published(record: dict) -> dict:
    units = dict(NUMBERS)
    return {name: value.m_as(units[name]) if units.get(name) else value for name, value in record.items()}


def _usual_spread(rows: list[dict]) -> float:
    """The mean spread of the published yields, for a fiber of which none is published."""
    spreads = [_spread(row) for row in rows if "yield_low" in row]
    return sum(spreads) / len(spreads) if spreads else 0.0


def _spread(row: dict) -> float:
    return fiber.rectangular_uncertainty(row["yield_low"], row["yield_high"])


def _observed(supported: pd.DataFrame, row: dict, usual: float, year: int) -> dict:
    if supported.empty:
        return {}
    figures: dict = {}
    published = _spread(row) if "yield_low" in row else usual
    for each in supported.itertuples():
        word = WORDS[each.stage]
        if word == "yield":
            figures |= _range(each.mean, _next_fleece(each.mean, each.deviation, each.lots, published))
        else:
            figures[word] = each.mean
    return figures | {"source": _source(supported, row.get("source", ""), year)}


def _next_fleece(mean: float, deviation: float, lots: int, published: float) -> float:
    """How far the next fleece may be off the mean of these lots, as a planner's own guide has it."""
    squares = (lots - 1) * deviation**2 + lots * mean**2
    return own_records.spread_in_use(published, mean, squares, lots, ENOUGH)


def _range(mean: float, deviation: float) -> dict[str, float]:
    """The range around the mean that has this standard deviation as a rectangular distribution."""
    half = min(sqrt(3) * deviation, 1 - mean, mean / 2)  # a yield stays within 0 and 1
    return {"yield_low": mean - half, "yield_high": mean + half}


def _source(supported: pd.DataFrame, published: str, year: int) -> str:
    """What was observed, and as many sentences of the published source of the other figures as fit in the guide."""
    lots = ", ".join(f"{WORDS[each.stage]} {each.lots} of {each.planners}" for each in supported.itertuples())
    text = f"{OBSERVED.format(year)}: {lots}. Rest:"
    seen = {WORDS[each.stage] for each in supported.itertuples()}
    for sentence in re.split(r"(?<=\.) ", published):
        is_past = PARTS.get(sentence.partition(":")[0], {""}) <= seen
        if sentence and not is_past and len(text) + 1 + len(sentence) <= LONGEST_SOURCE:
            text = f"{text} {sentence}"
    return text if not text.endswith("Rest:") else f"{text} as in the guide before."
