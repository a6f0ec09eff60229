"""What all shares have in common."""

from workbookgen.reference.calculation import require_numbers
from workbookgen.reference.limits import NOT_NEGATIVE, require_within


def require_shares(*shares) -> None:
    """Refuse shares that are negative or not a number; None, for a share that was not given, is fine."""
    require_numbers(*shares)
    for share in shares:
        if share is not None:
            require_within(NOT_NEGATIVE, "A share", share)
