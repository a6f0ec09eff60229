"""Whose a skein is: worked by hand."""

import pytest

from workbookgen.reference import belongings
from workbookgen.reference.calculation import OutOfValidity
from workbookgen.units import Quantity

FREE = {
    "designs": ["Tweed", "Marl"],
    "of_designs": Quantity([100.0, 30.0], "m"),
    "lots": ["Aster", "Birch", "Cloud"],
    "of_lots": Quantity([80.0, 60.0, 9.0], "m"),
}


@pytest.mark.parametrize(
    "yarn, meters",
    [
        ({"design": "Marl"}, 30),
        ({"lot_1": "Birch"}, 60),
        ({"lot_1": "Aster", "lot_3": "Cloud"}, 89),
        ({"lot_2": "Birch", "design": "Tweed"}, 160),
    ],
)
def test_free_skeins_of_a_yarn_are_those_of_its_design_and_of_each_of_its_lots(yarn, meters):
    assert belongings.free_skeins(**FREE, **yarn).m_as("m") == meters


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: belongings.free_skeins(**FREE), "Name the yarn"),
        (lambda: belongings.weighed("Tweed", Quantity(0, "g")), "not weighed"),
        (lambda: belongings.how_many_aside([]), "a list"),
    ],
)
def test_what_nobody_can_tell_is_refused(wrong, words):
    with pytest.raises(OutOfValidity, match=words):
        wrong()
