"""One skein at a time: tried out beside the log, described in words, and drawn among the skeins of its lot.

`tried` takes what was typed before what is in the log; `unusual` asks about what is unlike most skeins. `likely` and
`sureness` give the range in which length and grist very likely lie, `comparison` says what a skein is good for beside
others, `dyes` whether their dye lots allow it. `group` and `chart_points` put the skeins of its lot into a chart.
"""

from workbookgen.reference.measuring.chart_points import (
    dots,
    high_on_the_chart,
    limit_off,
    low_on_the_chart,
    number_on_the_chart,
    on_the_chart,
    where_drawn,
)
from workbookgen.reference.measuring.comparison import (
    alternates_with,
    apart_from,
    difference_words,
    goes_with,
    lot_words,
    project_words,
    share_of_need,
)
from workbookgen.reference.measuring.dyes import by_dye_lots, two_dye_lots
from workbookgen.reference.measuring.group import of_another, place, place_in_group
from workbookgen.reference.measuring.likely import least_likely, likely_words, most_likely
from workbookgen.reference.measuring.sureness import grist_within, grist_words, is_coarse, scale_step
from workbookgen.reference.measuring.tried import (
    fault_in_log,
    of_the_reel,
    tried_or_logged,
    weight_in_use,
    wraps_in_use,
    wrong_words,
)
from workbookgen.reference.measuring.unusual import unusual
