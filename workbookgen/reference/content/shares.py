"""What all shares have in common."""

import numpy as np

from workbookgen.reference.calculation import require, require_numbers


def require_shares(*shares) -> None:
    """Refuse shares that are not a number, or negative. One that is not given at all is not a fault."""
    require_numbers(*shares)
    for share in shares:
        if share is not None:
            require(np.asarray(share) >= 0, "A share cannot be negative.")
