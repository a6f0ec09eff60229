"""A plied yarn from its components, and components for a wanted yarn.

`design` says which yarn comes of which strands, and backwards. `amounts` says how much of
each strand a wanted length takes, and how many packages or bobbins that is.
"""

from workbookgen.reference.plying.amounts import (
    component_key,
    component_label,
    component_length,
    component_mass,
    drawn_from_lot,
    packages,
)
from workbookgen.reference.plying.design import (
    all_strands,
    contribution,
    feed_ratio,
    folded_grist,
    grist_for_wraps,
    missing_component,
    resultant,
    singles_for,
    weight_share,
)

__all__ = [
    "all_strands",
    "component_key",
    "component_label",
    "component_length",
    "component_mass",
    "contribution",
    "drawn_from_lot",
    "feed_ratio",
    "folded_grist",
    "grist_for_wraps",
    "missing_component",
    "packages",
    "resultant",
    "singles_for",
    "weight_share",
]
