"""How sure a figure is, and what that means for the question whether it is enough.

`budget` says where uncertainty comes from and how it adds up. `skeins` says what skeins share and what each has to
itself, and `together` adds that up. `learned` says what they tell of the yarn to come, `coming` how sure that is, be it
spun or bought, `adding` how sure what is still to be got, and `anew` what to get if nothing were there. `enough`
compares what there is with what is needed, each with its uncertainty, and gives a chance instead of a yes or no.
Everywhere u is a standard uncertainty: two of them cover about 95 percent.
"""

from workbookgen.reference.uncertainty.adding import added_square, added_with, strand_added_square, strand_added_with
from workbookgen.reference.uncertainty.anew import anew_square, more_anew, no_more_than_anew
from workbookgen.reference.uncertainty.apart import apart_in_common, apart_square, strands_apart
from workbookgen.reference.uncertainty.budget import combined, product_relative, rectangular, square
from workbookgen.reference.uncertainty.coming import coming_uncertainty, grist_uncertainty, in_hand_uncertainty
from workbookgen.reference.uncertainty.enough import (
    chance_enough,
    coverage,
    more_for,
    need_relative,
    need_uncertainty,
    surplus_uncertainty,
)
from workbookgen.reference.uncertainty.learned import (
    beside_the_plan,
    finer_than_planned,
    finer_to_come,
    hand_uncertainty,
    learned_weight,
)
from workbookgen.reference.uncertainty.shortest import hand_in_common, lesser, lesser_uncertainty, shared_by_all
from workbookgen.reference.uncertainty.skeins import by_reel, by_shrinkage, by_slack, by_washing, counted, taped
from workbookgen.reference.uncertainty.together import (
    bought_together,
    common_to_all,
    own_square,
    skein_uncertainty,
    skeins_uncertainty,
    with_its_reel,
)
