"""Where a printed log goes on to the next page."""

from workbookgen.book.pages import LETTERS_OF_A_HEADING, LETTERS_ON_A_PAGE, page_starts

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
