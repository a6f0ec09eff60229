"""How much yarn a knitted piece takes, and whether the ball will last.

`piece` goes from the size of a piece to its yarn, by swatch, gauge or weight, and `estimate` chooses among these.
`stitch` is about the yarn in one stitch. `ball` helps while knitting.
"""

from workbookgen.reference.knitting.ball import lasts, rows_possible
from workbookgen.reference.knitting.estimate import by_rule_alone, estimate_basis, estimate_in_use, estimated_by_parts
from workbookgen.reference.knitting.piece import (
    SHAPES,
    area,
    area_in_all,
    from_gauge,
    from_piece,
    from_swatch,
    swatch_area,
)
from workbookgen.reference.knitting.stitch import (
    MUNDEN,
    munden_stitch_length,
    stitch_density,
    stitch_length,
    stitch_length_in_use,
    tightness,
)
