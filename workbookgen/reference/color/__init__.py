"""Color: how a dyed top is divided so that its colors keep their order, and how long each becomes.

A top that was dyed in repeats holds each color as often as there are repeats. `dividing` goes from the top to the
strands, `plies` says whether their colors meet, `colors` takes each color by itself.
"""

from workbookgen.reference.color.colors import color_weight, least_share, share_of_top, stripe_rows, stripe_width, whole_words
from workbookgen.reference.color.dividing import order_words, part, repeats_of_strand, run, strand_length, strips
from workbookgen.reference.color.plies import meeting_words, out_of_step

__all__ = [
    "color_weight",
    "least_share",
    "meeting_words",
    "order_words",
    "out_of_step",
    "part",
    "repeats_of_strand",
    "run",
    "share_of_top",
    "strand_length",
    "stripe_rows",
    "stripe_width",
    "strips",
    "whole_words",
]
