"""The trade's calculations as tested Python functions, one module a subject.

Quantities go in and quantities come out, single or as arrays, each function with its law,
its validity and its source. The library knows nothing of spreadsheets: that is why it can
bear witness against one.
"""

from workbookgen.reference import (
    agreement,
    diameter,
    fiber,
    moisture,
    project,
    reeling,
    stock,
    yarn_count,
)

__all__ = [
    "agreement",
    "diameter",
    "fiber",
    "moisture",
    "project",
    "reeling",
    "stock",
    "yarn_count",
]
