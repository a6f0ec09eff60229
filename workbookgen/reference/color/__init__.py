"""Color: how a dyed top is divided so that its colors keep their order, and how long each becomes.

A top dyed in repeats holds each color once per repeat. `dividing` goes from the top to the strands, `plies` says
whether their colors meet, `colors` is about each color on its own.
"""

from workbookgen.reference.color.colors import (
    color_weight,
    least_share,
    share_of_top,
    stripe_rows,
    stripe_width,
    whole_words,
)
from workbookgen.reference.color.dividing import order_words, part, repeats_of_strand, run, strand_length, strips
from workbookgen.reference.color.plies import meeting_words, out_of_step
