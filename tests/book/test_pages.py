"""Where a printed sheet goes on to the next page."""

import pytest

from workbookgen.book.pages import (
    LETTERS_OF_A_HEADING,
    LETTERS_ON_A_PAGE,
    even_starts,
    page_starts,
    stacked,
)

NAME = 20


def test_what_fits_stays_on_one_page():
    widths = dict.fromkeys(range(1, 10), NAME)
    assert 9 * NAME == LETTERS_ON_A_PAGE
    assert page_starts([[1, 2, 3], [4, 5, 6, 7, 8, 9]], widths) == []
    assert page_starts([[1, 2, 3], [4, 5, 6, 7, 8, 9, 10]], widths | {10: 1}) == [10]


def test_a_group_does_not_begin_where_its_heading_would_be_cut():
    first = LETTERS_ON_A_PAGE - NAME - LETTERS_OF_A_HEADING + 1
    widths = {1: NAME, 2: first, 3: 10, 4: 50}
    assert page_starts([[1, 2], [3, 4]], widths) == [3]
    assert page_starts([[1, 2], [3, 4]], widths | {2: first - 1}) == [4]


def test_every_page_repeats_the_first_column():
    widths = {1: NAME} | dict.fromkeys(range(2, 30), 40)
    assert page_starts([list(range(1, 30))], widths) == list(range(6, 30, 4))


# A letter page upright, less its margins, is 7.5 by 9.7 inches. One column of 100 digits is 705 pixels, 528.75
# points, which 93% of 540 points hold at 94%: 743 points, 49 rows of 15.
ACROSS, ROWS = (100,), 49


def stack(*lengths: int, paper: str = "letter", is_wide: bool = False):
    return stacked(paper, is_wide, ACROSS, [[15.0] * length for length in lengths])


def test_what_fits_is_as_wide_as_the_page():
    assert stack(20, ROWS - 20) == stack(ROWS + 1), "the free row at the end may fall off"
    assert (stack(10).scale, stack(10).starts) == (94, ())


def test_a_narrow_sheet_is_not_blown_up():
    assert stacked("letter", False, (10,), [[15.0] * 5]).scale == 100


def test_what_is_a_little_too_long_is_printed_smaller():
    little = stack(30, ROWS - 26)
    assert little.starts == () and 94 * 0.9 < little.scale < 94
    assert stack(30, 30).starts == (30,)


def test_a_part_is_not_cut_that_fits_on_a_page():
    assert stack(30, 30, 15, 30) == stacked("letter", False, ACROSS, [[15.0] * each for each in (30, 30, 15, 30)])
    assert stack(30, 30, 15, 30).starts == (30, 75)


def test_a_part_longer_than_a_page_begins_where_ten_of_its_rows_fit():
    assert stack(ROWS - 10, 200).starts == ()
    assert stack(ROWS - 8, 200).starts == (ROWS - 8,)


def test_after_a_long_part_the_next_one_goes_on_where_it_ended():
    assert stack(ROWS + 20, 20, 30).starts == (ROWS + 40,)


def test_a_higher_row_counts_as_high_as_it_is():
    assert stacked("letter", False, ACROSS, [[15.0] * 10, [15.0 * ROWS, 15.0]]).starts == (10,)


def test_other_paper_holds_other_parts():
    # A4 is 8.27 by 11.69 inches, less its margins 523 by 748 points: at 92%, 54 rows of 15.
    assert (stack(40, 15, paper="a4").scale, stack(40, 15).scale) == (92, 86)
    assert stack(40, 18, paper="a4").starts == () and stack(40, 18).starts == (40,)


@pytest.mark.parametrize(("lines", "starts"), [(1, []), (40, []), (47, []), (48, [24]), (95, [32, 63]), (200, [40, 80, 120, 160])])
def test_the_pages_of_a_log_are_about_as_full(lines, starts):
    # Landscape, 7.2 of 8.5 inches at 66% are 785 points: 713 below a heading of 72, 47 rows of 15.
    assert even_starts("letter", [15.0] * lines, 72) == starts


def test_a_page_of_a_log_with_high_lines_holds_fewer():
    assert even_starts("letter", [45.0] * 10 + [15.0] * 20, 72) == [8], "360 points are nearer to half of 750 than 405"
