"""Whose a skein is: worked by hand."""

import pytest

from workbookgen.reference import belongings, which_yarn
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
    "strands, meters",
    [
        ({"lot_4": "Cloud"}, 9),
        ({"lot_1": "Aster", "lot_2": "Birch"}, 140),
        ({"lot_1": "Birch", "lot_2": "Aster", "lot_3": "Cloud"}, 149),
    ],
)
def test_free_skeins_of_the_strands_are_those_of_each_lot(strands, meters):
    of_lots = {each: FREE[each] for each in ("lots", "of_lots")}
    assert belongings.free_of_strands(**of_lots, **strands, design="Marl").m_as("m") == meters


def test_what_is_set_aside_is_not_gone():
    assert belongings.how_many_aside(["set aside"]) == 1
    assert belongings.how_many_aside(["used", "", "Set Aside", "set aside"]) == 2
    assert belongings.how_many_went([1, float("nan"), 1, 1], aside=2) == 1
    assert belongings.how_many_went([float("nan")], aside=0) == 0
    assert belongings.set_aside(Quantity(50, "g"), "Set aside") == Quantity(50, "g")
    assert which_yarn.of_one_lot("Aster") == "Aster"


@pytest.mark.parametrize(
    "fate, serves", [(None, 1), ("set aside", 1), ("Used", 1), ("sold", 0), ("given", 0), ("lost", 0)]
)
def test_a_skein_serves_its_project_until_it_is_sold_given_or_lost(fate, serves):
    if serves:
        assert belongings.belongs("Vest", fate) == "Vest"
        return
    with pytest.raises(OutOfValidity, match="sold or lost"):
        belongings.belongs("Vest", fate)


def test_a_skein_of_no_project_that_is_still_there_is_free():
    for took in (0, 120):  # of a project given up, and of a finished one
        assert belongings.is_free("Marl", project="Vest", took=Quantity(took, "g")) == "Marl"
    assert belongings.is_free("Marl") == "Marl" and which_yarn.pair("Vest", "Reel 1") == "Vest / Reel 1"
    assert which_yarn.weighed("Marl", Quantity(0.5, "g")) == "Marl"
    assert which_yarn.measured("Vest", Quantity(2, "m/g")) == "Vest"


@pytest.mark.parametrize("served, measured, without", [(300, 220, 80), (300, 300, 0), (300, 300.0000001, 0), (0, 0, 0)])
def test_skeins_that_were_only_weighed(served, measured, without):
    assert belongings.without_length(Quantity(served, "g"), Quantity(measured, "g")) == Quantity(without, "g")
    assert belongings.without_length(Quantity([served], "g"), Quantity([measured], "g"))[0].m_as("g") == without


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: belongings.free_skeins(**FREE), "Name the yarn"),
        (lambda: belongings.free_of_strands(["Aster"], Quantity([80], "m"), design="Marl"), "Name a lot"),
        (lambda: belongings.free_of_strands(["Aster"], Quantity([80], "m"), lot_1="Aster"), "Name the design"),
        (lambda: which_yarn.weighed("Tweed", Quantity(0, "g")), "not weighed"),
        (lambda: which_yarn.measured("Vest", Quantity(0, "m/g")), "grist"),
        (lambda: belongings.without_length(Quantity(-1, "g"), Quantity(0, "g")), "weight"),
        (lambda: belongings.without_length(Quantity(1, "g"), Quantity(-1, "g")), "with a length"),
        (lambda: belongings.how_many_aside([]), "a list"),
        (lambda: belongings.how_many_went([1], -1), "set aside"),
        (lambda: belongings.set_aside(Quantity(50, "g"), "sold"), "not set aside"),
        (lambda: belongings.set_aside(Quantity(-1, "g"), "set aside"), "left"),
        (lambda: which_yarn.of_one_lot("Aster", "Marl"), "of a design"),
        (lambda: which_yarn.of_one_lot(" "), "blank"),
        (lambda: belongings.belongs(" "), "blank"),
        (lambda: belongings.is_free("Marl", project="Vest"), "not free"),
        (lambda: belongings.is_free("Marl", gone="sold"), "not free"),
        (lambda: belongings.is_free("Marl", project="Vest", gone="used", took=Quantity(120, "g")), "not free"),
        (lambda: belongings.is_free("Aster", other="Marl"), "of a design"),
        (lambda: belongings.is_free(" "), "blank"),
        (lambda: which_yarn.pair("Vest", " "), "blank"),
        (lambda: which_yarn.pair(" ", "Reel 1"), "blank"),
    ],
)
def test_what_nobody_can_tell_is_refused(wrong, words):
    with pytest.raises(OutOfValidity, match=words):
        wrong()
