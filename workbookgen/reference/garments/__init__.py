"""Garments and shawls: size and ease, a different gauge, rows that grow, fulling.

`size` goes from the body to the yarn, `fabric` from the yarn to the fabric it gives. `gauge` converts a pattern to
another gauge. `shawl` says how far the rest of the yarn goes. `fulled` is about what will shrink.
"""

from workbookgen.reference.garments.fabric import area_basis, area_by_gauge, area_by_swatch, area_in_use, far_at_width
from workbookgen.reference.garments.fulled import counted_over, lost_in_fulling, size_to_make
from workbookgen.reference.garments.gauge import same_size, size_of_its_numbers, stitches_for_one, yarn_in_gauge
from workbookgen.reference.garments.shawl import rest_lasts, rows_still, share_worked, yarn_for_rows, yarn_to_work
from workbookgen.reference.garments.size import finished_around, garment_area, panel_width, yarn_by_swatch
