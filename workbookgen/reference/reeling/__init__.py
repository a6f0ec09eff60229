"""Length from a reel: loops, wraps, and what washing leaves of them.

`loop` is about the reel: how long one full turn of it is, and how surely. `skein` is about
the yarn wound on it: its length and its mass, on the reel and after washing.
"""

from workbookgen.reference.reeling.layers import growth, last_layer, layers_wound, mean_loop, turning
from workbookgen.reference.reeling.loop import (
    hundred_wraps_tolerance,
    loop_basis,
    loop_in_use,
    loop_uncertainty,
    measured_loop,
    misread_turns,
    niddy_noddy_loop,
    relative_tolerance,
)
from workbookgen.reference.reeling.skein import (
    as_bought,
    expected_shrinkage,
    finished_length,
    hundred_wraps,
    known_shrinkage,
    length,
    length_basis,
    net_mass,
    shrinkage,
)
