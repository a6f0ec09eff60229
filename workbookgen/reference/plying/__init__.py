"""A plied yarn from its components, and components for a wanted yarn.

`design` says which yarn comes of which strands, and backwards. `amounts` says how much of
each strand a wanted length takes, and how many packages that is. `bobbins` and `leftovers` say
what bobbins hold, and what stays on them. `structures` turns singles into yarn of any build,
and `matching` makes a yarn again that exists.
"""

from workbookgen.reference.plying.amounts import component_key, component_label, component_length, component_mass, drawn_from_lot, packages
from workbookgen.reference.plying.binder import binder_feed, bound_density, turns_left
from workbookgen.reference.plying.bobbins import (
    bobbin_gets,
    bobbin_holds,
    bobbin_mass,
    bobbins_to_fill,
    plying_bobbins,
    plying_words,
    singles_grist,
    still_to_ply,
    strands_to_ply,
    take_up_to_ply,
)
from workbookgen.reference.plying.design import all_strands, contribution, feed_ratio, folded_grist, grist_for_wraps, missing_component, resultant, singles_for, weight_share
from workbookgen.reference.plying.leftovers import bobbin_has, left_in_all, left_over, leftover_words, plied_from, plied_to_the_end, shared_evenly, shortest_of
from workbookgen.reference.plying.matching import ply_to_insert, singles_to_insert, strand_to_spin, strands_mass
from workbookgen.reference.plying.structures import built_grist, built_length, ends_in, kept_in, single_for_grist, single_for_length, wrapped_density, wrapper_feed

__all__ = [
    "all_strands",
    "binder_feed",
    "bobbin_gets",
    "bobbin_has",
    "bobbin_holds",
    "bobbin_mass",
    "bobbins_to_fill",
    "bound_density",
    "built_grist",
    "built_length",
    "component_key",
    "component_label",
    "component_length",
    "component_mass",
    "contribution",
    "drawn_from_lot",
    "ends_in",
    "feed_ratio",
    "folded_grist",
    "grist_for_wraps",
    "kept_in",
    "left_in_all",
    "left_over",
    "leftover_words",
    "missing_component",
    "packages",
    "plied_from",
    "plied_to_the_end",
    "ply_to_insert",
    "plying_bobbins",
    "plying_words",
    "resultant",
    "shared_evenly",
    "shortest_of",
    "single_for_grist",
    "single_for_length",
    "singles_for",
    "singles_grist",
    "singles_to_insert",
    "still_to_ply",
    "strand_to_spin",
    "strands_mass",
    "strands_to_ply",
    "take_up_to_ply",
    "turns_left",
    "weight_share",
    "wrapped_density",
    "wrapper_feed",
]
