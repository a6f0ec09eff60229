"""Joined areas hold the same cells, each once, in fewer rectangles."""

import random

from workbookgen.book.areas import joined


def cells(areas):
    return sorted(
        (row, column)
        for top, left, bottom, right in areas
        for row in range(top, bottom + 1)
        for column in range(left, right + 1)
    )


def test_neighbors_are_joined_side_by_side_and_one_below_another():
    assert joined([(0, 0, 3, 0), (0, 1, 3, 1), (4, 0, 9, 1), (0, 3, 3, 3)]) == [(0, 0, 9, 1), (0, 3, 3, 3)]
    assert joined([(2, 5, 2, 5)]) == [(2, 5, 2, 5)]
    assert joined([(0, 0, 3, 0), (1, 1, 4, 1)]) == [(0, 0, 3, 0), (1, 1, 4, 1)], "one that is shifted is no neighbor"


def test_whatever_is_joined_holds_the_same_cells_once():
    drawn = random.Random(7)
    for _ in range(200):
        singles = drawn.sample(
            [(row, column, row, column) for row in range(6) for column in range(6)], drawn.randint(1, 36)
        )
        assert cells(joined(singles)) == cells(singles)
        assert len(joined(singles)) <= len(singles)
