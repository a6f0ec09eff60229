"""Several projects drawing on one lot: what each takes, and what it leaves for the others.

`lots` shares out the mass, `squares` the uncertainty of it, and `hands` that of the hand that spins it; `rest` is about
lots that are nearly spun, `strands` about strands of one yarn on the same lots, and `known` about lots that are not
known yet.
"""

from workbookgen.reference.sharing.hands import hand_of_needs, hands_on_lot, others_hand
from workbookgen.reference.sharing.known import if_known, shared_components, unknown_in_all, unknown_lots
from workbookgen.reference.sharing.lots import claim, left_by_others, pool, pool_square, share_promised, taken_by_pieces
from workbookgen.reference.sharing.rest import more_than_reckoned, on_the_last
from workbookgen.reference.sharing.squares import need_square, others_square, squares_on_lot
from workbookgen.reference.sharing.strands import counted_before, part_of_lots, strand_lots, strands_that_overlap
