"""Several readings of one thing, and several skeins of one lot, in a few numbers.

`readings` takes up to five readings on one piece of yarn: their mean, their standard deviation, and the uncertainty of
the mean; `enough` says how many more to take, and `steps` how finely they were read. `groups` finds the mean of a lot's
skeins, the one that stands out, and whether two skeins may share a piece; `one_out` holds one skein against the others;
`joined` adds up the variation of groups from sums that a log can keep. `trend` tells whether skeins become finer or
coarser, one after another.
"""

from workbookgen.reference.statistics.enough import inches_each, more_readings, readings_in_all
from workbookgen.reference.statistics.groups import (
    GRUBBS_TABLE,
    as_good_as_alike,
    difference,
    group_mean,
    grubbs_limit,
    limit_high,
    limit_low,
    may_share,
    relative_deviation,
    stands_out,
)
from workbookgen.reference.statistics.joined import beside_the_usual, pooled_variation, square_of, variation_of_sums
from workbookgen.reference.statistics.one_out import beyond_the_others, off_the_others
from workbookgen.reference.statistics.readings import (
    T_TABLE,
    count,
    deviation,
    half_width,
    mean,
    specimens,
    standard_error,
    t_quantile,
    variation,
)
from workbookgen.reference.statistics.steps import read_to, within
from workbookgen.reference.statistics.trend import (
    beyond_chance,
    change_ahead,
    change_by_place,
    from_first_to_last,
    place_of,
    spread_of_places,
    weighted_by_place,
)
