"""A plied yarn from its components, and components for a wanted yarn.

`design` says which yarn results from which strands, `wanted` goes backward from it. `amounts` says how much of each
strand a wanted length takes, and how many packages that is, `drawn` how much of each skeins took. `to_ply`, `bobbins`,
`rack` and `leftovers` say what bobbins are to hold, what they hold, and what remains on them. `structures` turns
singles into yarn of any construction, `binder` adds a thread to a wrapped yarn, and `matching` reproduces an existing
yarn.
"""

from workbookgen.reference.plying.amounts import (
    component_key,
    component_label,
    component_length,
    component_mass,
    packages,
    spools,
)
from workbookgen.reference.plying.binder import binder_feed, bound_density, turns_left
from workbookgen.reference.plying.bobbins import (
    bobbin_gets,
    bobbin_holds,
    bobbin_mass,
    bobbins_to_fill,
    filled_to,
    of_one_bobbin,
    plying_bobbins,
    plying_words,
)
from workbookgen.reference.plying.design import (
    contribution,
    feed_ratio,
    folded_grist,
    not_known,
    resultant,
    washed_grist,
    weight_share,
)
from workbookgen.reference.plying.drawn import (
    bought_part,
    drawn_from_lot,
    expected_weight,
    fed_to_spin,
    strand_taken,
    strands_to_spin,
    take_up_of_feeds,
)
from workbookgen.reference.plying.leftovers import (
    left_in_all,
    left_over,
    leftover_words,
    plied_from,
    plied_to_the_end,
    shared_evenly,
)
from workbookgen.reference.plying.matching import strand_to_spin, strands_mass, twist_to_insert
from workbookgen.reference.plying.rack import bobbin_has, bobbin_lacking, bobbins_plied, shortest_of
from workbookgen.reference.plying.structures import (
    built_grist,
    built_length,
    ends_in,
    kept_in,
    single_for_grist,
    single_for_length,
    wrapped_density,
    wrapper_feed,
)
from workbookgen.reference.plying.to_ply import singles_grist, still_to_ply, strands_to_ply, take_up_to_ply
from workbookgen.reference.plying.wanted import (
    all_strands,
    each_other_strand,
    grist_for_wraps,
    missing_component,
    singles_for,
)
