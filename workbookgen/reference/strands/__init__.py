"""The strands of a project's yarn: what each still takes, how far it lasts, and how much of it to get.

A plain yarn is one strand, a design has up to four components. They cannot replace each other:
the one that lasts for the least length ends the yarn, and the others leave a remainder. `needs`
is about the mass that a project takes, `lasting` about the length for which it lasts,
`level` about the length for which it should.
"""

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
from workbookgen.reference.strands.level import level, may_run_out
from workbookgen.reference.strands.needs import component_needs, taken_by_piece, to_spin, used_besides
