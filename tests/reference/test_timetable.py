"""The weeks of a project, step by step: worked by hand."""

import numpy as np
import pytest

from workbookgen.reference import planning

from .quantities import hours

STEP_HOURS = (hours(1), hours(2), hours(4), hours(8))


@pytest.mark.parametrize(
    "place, name, takes, before",
    [(1, "Preparing", 1, 0), (2, "Spinning", 2, 1), (3, "Plying", 4, 3), (4, "Finishing", 8, 7)],
)
def test_each_step_takes_its_own_hours_after_those_before_it(place, name, takes, before):
    assert planning.step_in_words(place) == name
    for calculation, expected in ((planning.hours_of_step, takes), (planning.hours_before_step, before)):
        assert calculation(place, *STEP_HOURS).m_as("hour") == expected
        assert calculation(place, *STEP_HOURS, left=0.5).m_as("hour") == expected / 2
        column = calculation(np.array([place, 4.0]), *STEP_HOURS).m_as("hour")
        assert column.tolist() == [expected, {1: 8, 0: 7}[calculation is planning.hours_of_step]]


@pytest.mark.parametrize(
    "before, of_weeks", [(4, [4, 8, 8, 0]), (0, [8, 8, 4, 0]), (9, [0, 7, 8, 5]), (8, [0, 8, 8, 4]), (40, [0, 0, 0, 0])]
)
def test_a_step_of_20_hours_goes_on_from_week_to_week(before, of_weeks):
    each = [planning.hours_in_week(hours(before), hours(20), hours(8), week).m_as("hour") for week in (1, 2, 3, 4)]
    assert each == of_weeks


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: planning.step_in_words(0), "whole number from 1 to 4"),
        (lambda: planning.step_in_words(5), "whole number from 1 to 4"),
        (lambda: planning.hours_of_step(0, *STEP_HOURS), "whole number from 1 to 4"),
        (lambda: planning.hours_of_step(1.5, *STEP_HOURS), "whole number from 1 to 4"),
        (lambda: planning.hours_of_step(5, *STEP_HOURS), "whole number from 1 to 4"),
        (lambda: planning.hours_before_step(0, *STEP_HOURS), "whole number from 1 to 4"),
        (lambda: planning.hours_before_step(5, *STEP_HOURS), "whole number from 1 to 4"),
        (lambda: planning.hours_in_week(hours(0), hours(1), hours(1), 0), "week 1"),
        (lambda: planning.hours_in_week(hours(-1), hours(1), hours(1), 1), "Hours"),
        (lambda: planning.hours_in_week(hours(0), hours(-1), hours(1), 1), "Hours"),
    ],
)
def test_what_is_no_step_or_no_week_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()
