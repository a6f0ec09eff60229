"""What is marked as used, what has no lot, and whether a project is still to get yarn."""

import numpy as np
import pytest
from pytest import approx

from workbookgen.reference import project, strands, used_up
from workbookgen.units import Quantity

from .quantities import grams


def test_the_share_of_a_used_lot_that_is_in_no_skein():
    """Of 200 g, 150 g or 250 g are in skeins: a quarter is in none, or nothing."""
    assert used_up.in_no_skein(grams(200), grams([150.0, 250.0, 0.0]), "Used") == approx(np.array([0.25, 0, 1]))


def test_how_far_skeins_are_from_what_the_piece_took():
    """Of 200 g it took 150 g, so 50 g should be there; of 100 g it took all, and more."""
    told = used_up.off_its_marks(grams([200.0, 200.0, 200.0, 100.0]), grams([50.0, 100.0, 0.0, 0.0]), grams(150))
    assert told == approx(np.array([0, 0.25, 0.25, 0]))


@pytest.mark.parametrize(
    "lots, strands_of_it",
    [({}, 0), ({"lot_1": "aster"}, 0), ({"lot_1": "Birch", "lot_4": "BIRCH"}, 2), ({"lot_2": "Fern"}, 0)],
)
def test_strands_of_a_used_lot_that_is_in_no_skein(lots, strands_of_it):
    """A quarter may have been lost on the way; more than that is looked for, where yarn is wanting."""
    of_lots = dict(lots=["Aster", "Birch", ""], of_lots=[0.25, 0.26, np.nan])
    assert used_up.unseen_of_strands(1.0, **of_lots, **lots) == strands_of_it
    assert used_up.unseen_of_strands(0.0, **of_lots, **lots) == 0
    assert used_up.unseen_of_strands(0.5, **of_lots, **lots) == 0


@pytest.mark.parametrize(
    "given, lacking",
    [
        ({}, 1),
        ({"lot_1": "Aster"}, 0),
        ({"lot_1": "Aster", "share_2": 0.5, "share_4": 0.1}, 2),
        ({"share_2": 0.5, "share_3": 0.1, "lot_2": "Aster"}, 2),
        ({"lot_1": "Aster", "lot_2": "Birch", "share_2": 0.5}, 0),
    ],
)
def test_components_without_a_lot(given, lacking):
    assert strands.without_a_lot(1.0, design="Marl", **given) == lacking
    assert strands.without_a_lot(0.0, design="Marl", **given) == 0


def test_a_project_is_to_get_yarn_from_half_a_meter_on_until_it_is_finished():
    more = Quantity([0.49, 0.5, 80.0], "m")
    assert list(project.is_wanting(more)) == [0, 1, 1]
    assert list(project.is_wanting(more, grams(250))) == [0, 0, 0]


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: used_up.in_no_skein(grams(200), grams(50), "given"), "not used"),
        (lambda: used_up.in_no_skein(grams(200), grams(50), "worn"), "not used"),
        (lambda: used_up.in_no_skein(grams(0), grams(50), "used"), "yarn"),
        (lambda: used_up.off_its_marks(grams(0), grams(0), grams(1)), "skeins"),
        (lambda: strands.without_a_lot(1.0), "design"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
