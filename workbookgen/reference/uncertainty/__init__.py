"""How sure a figure is, and what that means for the question whether it is enough.

`budget` says where doubt comes from and how doubts add up, `skeins` what skeins share and what
each has to itself, `coming` how sure the yarn is that is still to be spun or bought; `enough`
sets what there is against what is needed, each with its doubt, and tells a chance instead of a
yes or no. Everywhere u is a standard uncertainty: two of them cover about 95 per cent.
"""

from workbookgen.reference.uncertainty.budget import combined, length_relative, product_relative, rectangular, square
from workbookgen.reference.uncertainty.coming import coming_doubt, finer_than_planned, grist_doubt, in_hand_doubt, learned_weight, lesser, lesser_doubt
from workbookgen.reference.uncertainty.enough import chance_enough, coverage, more_for, need_uncertainty, surplus_uncertainty
from workbookgen.reference.uncertainty.skeins import by_reel, by_shrinkage, by_slack, counted, own_square, skein_doubt, skeins_doubt, taped, with_its_reel

__all__ = [
    "by_reel",
    "by_shrinkage",
    "by_slack",
    "chance_enough",
    "combined",
    "coming_doubt",
    "counted",
    "coverage",
    "finer_than_planned",
    "grist_doubt",
    "in_hand_doubt",
    "learned_weight",
    "length_relative",
    "lesser",
    "lesser_doubt",
    "more_for",
    "need_uncertainty",
    "own_square",
    "product_relative",
    "rectangular",
    "skein_doubt",
    "skeins_doubt",
    "square",
    "surplus_uncertainty",
    "taped",
    "with_its_reel",
]
