"""Several projects drawing on one lot: what each takes, and what it leaves for the others.

`lots` shares out the mass, `squares` the uncertainty of it.
"""

from workbookgen.reference.sharing.lots import claim, left_by_others, pool, share_promised, taken_by_pieces
from workbookgen.reference.sharing.squares import need_square, others_square, squares_on_lot
