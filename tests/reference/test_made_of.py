"""What a yarn is made of: worked by hand."""

import numpy as np
import pytest

from workbookgen.reference import strands, which_yarn
from workbookgen.reference.calculation import OutOfValidity
from workbookgen.units import Quantity

GRIST = Quantity(900, "yd/lb")


@pytest.mark.parametrize("of, share", [({}, 1), ({"found": 0.75, "design": "Marl"}, 0.75), ({"found": 0.75}, 0.75)])
def test_a_plain_yarn_is_all_one_strand(of, share):
    assert strands.component_share(GRIST, **of) == share


def test_each_plain_yarn_is_all_one_strand():
    assert strands.component_share(Quantity([900.0, 1200.0], "yd/lb")).tolist() == [1, 1]


@pytest.mark.parametrize(
    "of, lot",
    [
        ({"own": "Aster"}, "Aster"),
        ({"picked": "Birch", "own": "Aster", "design": "Marl"}, "Birch"),
        ({"picked": "Birch", "design": "Marl"}, "Birch"),
    ],
)
def test_a_design_says_its_lots_and_a_plain_yarn_names_its_own(of, lot):
    assert strands.lot_in_use(**of) == lot


@pytest.mark.parametrize(
    "of, name", [({}, "the yarn"), ({"lot": "Aster"}, "Aster"), ({"label": "core", "lot": "Aster"}, "core")]
)
def test_a_strand_is_called_by_its_name_or_its_lot(of, name):
    assert strands.strand_name(0.5, **of) == name
    assert list(strands.strand_name(np.array([0.5, 0.25]), **of)) == [name, name]


@pytest.mark.parametrize("stage, bought", [(None, 0), (1, 0), (2, 0), (3, 0), (4, 0), (5, 1)])
def test_only_yarn_and_thread_are_bought_strands(stage, bought):
    assert strands.is_bought(0.25, stage) == bought
    assert strands.is_bought(np.array([0.25, 0.75]), stage).tolist() == [bought, bought]
    assert strands.is_bought(0.25, np.array([stage or 0, 5.0])).tolist() == [bought, 1]


def test_a_skein_of_which_nobody_says_what_it_is_made_of_still_has_its_project():
    assert which_yarn.of_no_lot("Vest") == "Vest"


SHARES = {"share_1": 0.1, "share_2": 0.2, "share_3": 0.3, "share_4": 0.4}


@pytest.mark.parametrize("place", [1, 2, 3, 4])
def test_each_bought_strand_counts_by_its_share(place):
    bought = {f"bought_{each}": float(each == place) for each in (1, 2, 3, 4)}
    assert strands.bought_share(**bought, **SHARES) == SHARES[f"share_{place}"]


@pytest.mark.parametrize(
    "others, share",
    [({}, 0.75), ({"bought_2": 1}, 0.75), ({"share_2": 0.25}, 0.75), ({"bought_2": 1, "share_2": 0.25}, 1)],
)
def test_a_strand_that_is_half_known_does_not_count(others, share):
    assert strands.bought_share(1, 0.75, **others) == share


def test_skeins_are_made_alike_of_one_lot_for_one_project_and_of_as_many_singles():
    keys = [
        which_yarn.made_alike(*each) for each in (("Aster",), ("Aster", "", 2), ("Aster", "Vest"), ("Aster", "Vest", 2))
    ]
    assert keys == ["Aster /  / 0", "Aster /  / 2", "Aster / Vest / 0", "Aster / Vest / 2"]


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: strands.component_share(0 * GRIST), "grist"),
        (lambda: strands.component_share(GRIST, design="Marl"), "no such component"),
        (lambda: strands.lot_in_use(), "no lot"),
        (lambda: strands.lot_in_use(own="Aster", design="Marl"), "no lot"),
        (lambda: strands.lot_in_use(own=" "), "blank"),
        (lambda: strands.lot_in_use(picked=" "), "blank"),
        (lambda: which_yarn.of_no_lot("Vest", lot="Aster"), "is known"),
        (lambda: which_yarn.of_no_lot("Vest", design="Marl"), "is known"),
        (lambda: which_yarn.of_no_lot(" "), "blank"),
        (lambda: which_yarn.made_alike("Aster", design="Marl"), "of a design"),
        (lambda: which_yarn.made_alike(" "), "blank"),
        (lambda: which_yarn.made_alike("Aster", singles=2.5), "singles"),
        (lambda: strands.strand_name(0), "share"),
        (lambda: strands.is_bought(0), "share"),
        (lambda: strands.bought_share(1, 0), "share"),
    ],
)
def test_what_nobody_can_tell_is_refused(wrong, words):
    with pytest.raises(OutOfValidity, match=words):
        wrong()
