"""Offers of fiber side by side: what each costs by what becomes of it, and which costs least.

`prices` works them out, with how sure they are; `comparing` sets them side by side, and `in_words` says which costs
least, or that nobody can tell.
"""

from workbookgen.reference.offers.comparing import (
    cheapest,
    costs_more,
    first_that_may,
    may_cost_less,
    of_others,
    told_apart,
    unpriced,
)
from workbookgen.reference.offers.in_words import cheapest_in_words
from workbookgen.reference.offers.prices import paid, per_mass, price_uncertainty
