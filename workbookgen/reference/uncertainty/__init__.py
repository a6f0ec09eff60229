"""How sure a figure is, and what that means for the question whether it is enough.

`budget` says where doubt comes from and how doubts add up; `enough` sets what there is
against what is needed, each with its doubt, and tells a chance instead of a yes or no.
Everywhere u is a standard uncertainty: two of them cover about 95 per cent.
"""

from workbookgen.reference.uncertainty.budget import (
    combined,
    length_relative,
    length_uncertainty,
    product_relative,
    rectangular,
    relative,
    square,
)
from workbookgen.reference.uncertainty.enough import (
    amount_for,
    chance_enough,
    coverage,
    have_doubt,
    margin_uncertainty,
    surplus_uncertainty,
)

__all__ = [
    "amount_for",
    "chance_enough",
    "combined",
    "coverage",
    "have_doubt",
    "length_relative",
    "length_uncertainty",
    "margin_uncertainty",
    "product_relative",
    "rectangular",
    "relative",
    "square",
    "surplus_uncertainty",
]
