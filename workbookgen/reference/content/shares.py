"""What all shares have in common."""

from workbookgen.reference.calculation import require_numbers
from workbookgen.reference.limits import NOT_NEGATIVE, require_within


def require_shares(*shares) -> None:
    """Refuse shares that are not a number, or negative. One that is not given at all is not a fault."""
    require_numbers(*shares)
    for share in shares:
        if share is not None:
            require_within(NOT_NEGATIVE, "A share", share)
