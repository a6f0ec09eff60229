"""The strands of a project's yarn: what each is of, what it still takes, how far it lasts, and how much of it to get.

A plain yarn is one strand, a design has up to four components. They cannot replace each other: the one that lasts for
the least length ends the yarn, and the others leave a remainder. `sources` is about shares, lots and names,
`another_grist` about shares in a yarn that is planned finer or coarser than its design, `needs` about the mass that a
project takes, `lasting` about the length for which it lasts, `to_last` about the length for which it should.
"""

from workbookgen.reference.strands.another_grist import off_the_design, share_of_singles_times, share_of_thread_times
from workbookgen.reference.strands.lasting import (
    component_length,
    component_over,
    least,
    left_in_the_end,
    length_in_doubt,
    scarcest,
    share_used,
    to_buy,
)
from workbookgen.reference.strands.needs import component_needs, taken_by_piece, to_spin, used_besides
from workbookgen.reference.strands.sources import (
    bought_share,
    component_share,
    is_bought,
    lot_in_use,
    part_in_use,
    strand_name,
    unlike_lots,
    without_a_lot,
)
from workbookgen.reference.strands.to_last import length_to_last, may_run_out
