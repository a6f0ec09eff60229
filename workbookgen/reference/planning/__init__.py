"""How long it takes: hours at your own pace, and the day on which they are done.

`paces` is about the pace, `work` about the hours: those done and those ahead. `calendar` spreads them over weeks, to
the day on which they end, `likely` says how sure all this is. `steps` says what there is to do, `timetable` lays the
steps out in weeks.
"""

from workbookgen.reference.planning.calendar import counted_from, finish_day, weeks
from workbookgen.reference.planning.likely import (
    hours_by_need,
    hours_to_allow,
    least_hours,
    likely_hours,
    most_hours,
    pace_uncertainty,
    pace_variation,
)
from workbookgen.reference.planning.paces import (
    fine_beside_the_timed,
    pace,
    pace_in_use,
    singles_length,
    take_up_in_use,
)
from workbookgen.reference.planning.steps import (
    plying_hours,
    singles_in_ply,
    singles_in_skein,
    spinning_hours,
    steps_known,
    strands_in_use,
    usual_ply,
)
from workbookgen.reference.planning.timetable import hours_before_step, hours_in_week, hours_of_step, step_in_words
from workbookgen.reference.planning.work import (
    ahead_share,
    hours,
    hours_ahead,
    hours_in_all,
    hours_in_use,
    hours_planned,
    hours_with_spinning,
    length_ahead,
    still_to_spin,
)
