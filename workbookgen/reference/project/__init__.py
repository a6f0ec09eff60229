"""What a piece of work needs, and whether it is there.

`yarn` turns a wanted length into yarn to spin, and compares it with what is in hand; `there`
states what that is and between what it lies; `fiber` turns yarn into fiber to have;
`precedence` chooses among figures that are known from several places.
"""

from workbookgen.reference.project.fiber import fiber_for, of_all_strands, per_bobbin, to_prepare
from workbookgen.reference.project.precedence import kept_in_spinning, planned_grist, wanted_in_use
from workbookgen.reference.project.there import is_wanting, least_there, most_there, there_is, without_yarn
from workbookgen.reference.project.yarn import (
    all_there_is,
    grist_expected,
    left_share,
    skein_holds,
    surplus,
    unwashed_length,
    used_of_need,
    while_open,
    yarn_length,
)
