"""Blends: what a mixture of fibers costs, how fine it is, and how much moisture it takes up.

`shares` is about weights and money, `by_number` about the number of fibers, `regain` about their moisture.
"""

from workbookgen.reference.blends.by_number import (
    fiber_length,
    fiber_side,
    fineness,
    mean_diameter,
    mean_fineness,
    thickness,
)
from workbookgen.reference.blends.regain import blend_regain, dry_at_regain
from workbookgen.reference.blends.shares import blend_price, cost_of, share_of_blend, to_lay_out, weighed
