"""From a plied yarn to its singles: what is typed and worked out alike wherever a sheet goes this way."""

from workbookgen.language.fields import Input, Result
from workbookgen.language.quantities import SHARE
from workbookgen.reference import reeling
from workbookgen.sheets import usual
from workbookgen.sheets.limits import LOSS


def take_up() -> Input:
    return Input("take_up", "Take-up", LOSS, SHARE, usual=usual.TAKE_UP, blank_means=0,
                 help="Share of the singles' length lost in plying; from a sample, 1 to 6% in an ordinary ply (common practice, no source).")


def shrinkage_used() -> Result:
    """The shrinkage typed as `shrinkage`, or else the usual one of the sheet Sureness."""
    return Result("shrinkage_used", "Shrinkage in use", "or_else(shrinkage, doubts_shrinkage)", reeling.expected_shrinkage, SHARE,
                  uses={"usual": "doubts_shrinkage", "sample": "shrinkage"})
