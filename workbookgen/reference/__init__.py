"""The trade's calculations as tested Python functions, one module a subject.

Quantities go in and quantities come out, single or as arrays, each function with its law,
its validity and its source. The library knows nothing of spreadsheets: that is why it can
bear witness against one.
"""

from workbookgen.reference import (
    agreement,
    cost,
    diameter,
    fiber,
    knitting,
    labels,
    learning,
    moisture,
    planning,
    plying,
    project,
    reeling,
    scouring,
    sharing,
    statistics,
    stock,
    twist,
    uncertainty,
    weaving,
    yarn_count,
)

__all__ = [
    "agreement",
    "cost",
    "diameter",
    "fiber",
    "knitting",
    "labels",
    "learning",
    "moisture",
    "planning",
    "plying",
    "project",
    "reeling",
    "scouring",
    "sharing",
    "statistics",
    "stock",
    "twist",
    "uncertainty",
    "weaving",
    "yarn_count",
]
