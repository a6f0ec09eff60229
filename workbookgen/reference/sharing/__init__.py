"""Several projects drawing on one lot: what each takes, and what it leaves for the others.

`lots` shares out the mass, `squares` the uncertainty of it; `known` is about lots that are not known yet.
"""

from workbookgen.reference.sharing.known import if_known, shared_components, unknown_in_all, unknown_lots
from workbookgen.reference.sharing.lots import claim, left_by_others, pool, share_promised, taken_by_pieces
from workbookgen.reference.sharing.squares import need_square, others_square, squares_on_lot
