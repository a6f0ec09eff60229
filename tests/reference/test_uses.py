"""What a yarn is enough for: by hand, and as the planner says it."""

import numpy as np
import pytest
from pytest import approx

from entries import entries_with
from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.reference import uses
from workbookgen.settings import Settings
from workbookgen.units import Quantity

US = described(Settings(units="us"))
PIECES = [
    {"name": "hat", "size": "grown", "length": 180.0, "wraps": 10.0},
    {"name": "scarf", "length": 400.0, "wraps": 10.0},
    {"name": "mitts", "length": 80.0, "wraps": 10.0},
]


def test_yarn_laid_side_by_side_covers_its_length_times_its_width():
    # 100 m of a yarn 2 mm wide: 0.2 square meters (geometry).
    assert uses.covers(Quantity(100.0, "m"), Quantity(5.0, "1/cm")) == approx(0.2)


def test_twice_as_fine_takes_twice_as_much():
    assert uses.in_this_yarn(Quantity(180.0, "yard"), Quantity(10.0, "1/inch"), Quantity(20.0, "1/inch")).m_as(
        "yard"
    ) == approx(360)


def said(wraps, wpi):
    """What the page of one skein says of so many two-yard wraps at so many per inch, washed with nothing lost."""
    entries = entries_with(US, {"uses": [*PIECES, *[dict.fromkeys(PIECES[0])] * 21]})
    entries |= {
        "measure_loop": (72.0,),
        "measure_wraps": (wraps,),
        "measure_washed_loop": (72.0,),
        "measure_counted_wpi": (wpi,),
    }
    return expected_values(US, entries)["measure_enough"][0]


@pytest.mark.parametrize(
    ("wraps", "wpi", "text"),
    [
        (30.0, 10.0, "not enough for mitts"),
        (34.0, 10.0, "not enough for mitts"),  # 80 yd are more than 1.15 times 68
        (35.0, 10.0, "perhaps enough for mitts, not for hat (grown)"),  # and less than 1.15 times 70
        (45.0, 10.0, "perhaps enough for mitts, not for hat (grown)"),
        (47.0, 10.0, "usually enough for mitts, not for hat (grown)"),  # 94 yd, and 1.15 times 80 are 92
        (90.0, 10.0, "usually enough for mitts, perhaps for hat (grown), not for scarf"),
        (200.0, 10.0, "usually enough for hat (grown), perhaps for scarf"),
        (60.0, 10.0, "usually enough for mitts, not for hat (grown)"),
        (105.0, 10.0, "usually enough for hat (grown), not for scarf"),
        (100.0, 20.0, "usually enough for mitts, not for hat (grown)"),  # half as thick: as much as 100 yd of the other
        (250.0, 10.0, "usually enough for scarf"),
    ],
)
def test_a_skein_is_told_its_largest_piece_and_the_next(wraps, wpi, text):
    assert said(wraps, wpi) == text


def test_of_two_pieces_that_take_the_same_the_first_is_named():
    assert (
        uses.enough_words(2, 2, ["hat", "cowl", "scarf"], [0.5, 0.5, 0.75], 3)
        == "usually enough for hat, not for scarf"
    )


def test_blank_lines_are_no_pieces():
    assert uses.how_many_fit(0.3, [np.nan, 0.25, np.nan], 1) == 1
    assert uses.how_many_may_fit(0.2, [np.nan, 0.25, 0.23], 1) == 1
    with pytest.raises(ValueError, match="a piece to compare"):
        uses.enough_words(0, 0, [""], [np.nan], 0)


def test_the_very_edge_of_what_patterns_differ_by_counts():
    assert uses.how_many_fit(1.15, [1.0], 1) == 1 and uses.how_many_may_fit(1.0, [1.15], 1) == 1
    with pytest.raises(ValueError, match="it may be enough for"):
        uses.enough_words(2, 1, ["hat", "cowl"], [0.5, 0.6], 2)
    with pytest.raises(ValueError, match="more pieces than there are"):
        uses.enough_words(1, 3, ["hat", "cowl"], [0.5, 0.6], 2)


def test_a_lot_is_told_of_what_is_still_to_spin():
    entries = with_records(
        US,
        starting_entries(US),
        "fiber",
        [
            {
                "name": "Moss",
                "state": "prepared fiber",
                "kind": "Awassi",
                "weight": 4.0,
                "grist": 1000.0,
                "own_spinning": 0.0,
            }
        ],
    )
    values = expected_values(US, entries | {"way_lot": ("Moss",)})
    assert values["way_reach"][0] == approx(250)
    assert values["way_enough_words"][0] == f"What is still to spin is {values['way_enough'][0]}."


def test_a_piece_covers_what_its_yarn_does_and_has_a_name():
    assert uses.covers_piece(Quantity(100.0, "m"), Quantity(5.0, "1/cm"), "hat") == approx(0.2)
    with pytest.raises(ValueError, match="blank"):
        uses.covers_piece(Quantity(100.0, "m"), Quantity(5.0, "1/cm"), " ")


def test_a_piece_is_called_by_its_name_and_its_size():
    assert uses.called("hat") == "hat" and uses.called("hat", "grown") == "hat (grown)"
