"""From fleece to yarn and back: what each step leaves, and how much to buy.

A lot goes through the steps that were still ahead of it when it was bought: skirting, scouring, preparation, spinning.
`stages` knows the steps, `forwards` and `backwards` go along them, `seen` reads losses and yields off your own
weighings, `asked` finds odd ones. `preparing` distinguishes carding from combing, `fed` says what either gives,
`sampled` how many samples speak for it, `uncertainty` how sure the result is, and `fleece` reads what is published
about breeds. As in the trade, skirting, preparation and spinning are stated by what they lose, scouring by what it
yields.
"""

from workbookgen.reference.fiber.asked import beside_expected, hardly_washed, not_counted, spun_of_lot
from workbookgen.reference.fiber.backwards import (
    before_preparation,
    before_scouring,
    before_skirting,
    before_spinning,
    surely_before,
)
from workbookgen.reference.fiber.fed import share_of_fed, waste_of_fed, waste_share
from workbookgen.reference.fiber.fleece import (
    WOOL_GRADES,
    clean_fleece,
    fleeces,
    midpoint,
    rectangular_uncertainty,
    wool_grade,
)
from workbookgen.reference.fiber.forwards import after_preparation, after_scouring, after_skirting, after_spinning
from workbookgen.reference.fiber.preparing import (
    WAYS,
    preparation_loss,
    preparation_uncertainty,
    second_loss,
    second_uncertainty,
    seen_in_preparing,
    spinning_loss_in_use,
    yield_in_use,
    yield_uncertainty,
)
from workbookgen.reference.fiber.sampled import counted_on
from workbookgen.reference.fiber.seen import seen_loss, seen_skirting, seen_yield, share_kept, share_lost
from workbookgen.reference.fiber.stages import STATES, stage
from workbookgen.reference.fiber.uncertainty import clean_uncertainty, kept_uncertainty, rest_square, yarn_uncertainty
