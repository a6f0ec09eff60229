"""How thick a yarn is: diameter, threads side by side, wraps, weight class.

Thickness follows the square root of the mass in a length, with a factor for how firmly the
fibers lie. A yarn yields under the ruler, and the eye judges it differently each time, so every
figure here is an indication; grist, which is weighed, is not. The factor is an argument
throughout: one fitted to your own samples beats every table. `wraps` counts threads side by
side, `thickness` works out diameters, and what fills them.
"""

from workbookgen.reference.diameter.thickness import (
    diameter_in_use,
    fiber_linear_density,
    fibers_in_section,
    packing,
    yarn_diameter,
)
from workbookgen.reference.diameter.wraps import (
    WEIGHT_CLASSES,
    fitted_k,
    threads_side_by_side,
    touching_width,
    wrap_width,
    wraps_expected,
    wraps_in_use,
    yarn_weight_class,
)
