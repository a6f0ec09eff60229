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


@pytest.mark.parametrize("stage, share", [(5, 0.3), (4, 0.2), (None, 0.2)])
def test_in_a_finer_yarn_a_thread_has_more_of_the_weight_and_singles_have_less(stage, share):
    of = {"found": 0.25, "thread": 1.2, "singles": 0.8}
    assert strands.component_share(GRIST, stage=stage, **of) == share
    assert strands.component_share(GRIST, stage=np.array([stage or 0, 5]), **of).tolist() == [share, 0.3]


# A thread of 100 tex beside a single of 300 makes 400 tex, 2.5 m/g; as it is washed, that loses a tenth, 2.25 m/g. At 3
# m/g there are 300 tex as plied, so that the thread is a third; at 2 m/g, 450 tex, it is 2/9.
@pytest.mark.parametrize("grist, off, thread", [(3, 1 / 3, 1 / 3), (2.25, 0, 1 / 4), (2, -1 / 9, 2 / 9)])
def test_the_shares_of_a_thread_and_a_single_in_a_yarn_of_another_grist(grist, off, thread):
    planned = Quantity(grist, "m/g")
    for known in ({"own": planned}, {"sample": planned}, {"own": planned, "sample": Quantity(1, "m/g")}):
        assert strands.off_the_design(planned, Quantity(400, "tex"), 0.1, 0.25, **known) == pytest.approx(off)
    times = strands.share_of_thread_times(off, 0.25)
    assert 0.25 * times == pytest.approx(thread)
    assert 0.75 * strands.share_of_singles_times(times, 0.25) == pytest.approx(1 - thread)


@pytest.mark.parametrize("off, thread, times", [(5, 0.25, 3.96), (2.96, 0.25, 3.96), (2.9, 0.25, 3.9), (0.5, 0.995, 1)])
def test_something_is_left_for_the_singles(off, thread, times):
    assert strands.share_of_thread_times(off, thread) == pytest.approx(times)


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
    assert which_yarn.made_alike("Aster", "Vest", 24) == "Aster / Vest / 24"
    keys = [
        which_yarn.made_alike(*each) for each in (("Aster",), ("Aster", "", 2), ("Aster", "Vest"), ("Aster", "Vest", 2))
    ]
    assert keys == ["Aster /  / 0", "Aster /  / 2", "Aster / Vest / 0", "Aster / Vest / 2"]


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: strands.component_share(0 * GRIST), "grist"),
        (lambda: strands.component_share(GRIST, design="Marl"), "no such component"),
        (lambda: strands.off_the_design(GRIST, Quantity(400, "tex"), 0, 0.2), "by its design"),
        (lambda: strands.off_the_design(GRIST, Quantity(400, "tex"), 1, 0.2, own=GRIST), "leaves something"),
        (lambda: strands.off_the_design(GRIST, Quantity(400, "tex"), 0, 0, own=GRIST), "singles and bought"),
        (lambda: strands.off_the_design(GRIST, Quantity(400, "tex"), 0, 1, own=GRIST), "singles and bought"),
        (lambda: strands.off_the_design(0 * GRIST, Quantity(400, "tex"), 0, 0.2, own=GRIST), "grist"),
        (lambda: strands.off_the_design(GRIST, Quantity(0, "tex"), 0, 0.2, own=GRIST), "linear density"),
        (lambda: strands.share_of_thread_times(-1, 0.2), "has a grist"),
        (lambda: strands.share_of_thread_times(-1.5, 0.2), "has a grist"),
        (lambda: strands.off_the_design(GRIST, Quantity(400, "tex"), 1.2, 0.2, own=GRIST), "leaves something"),
        (lambda: strands.share_of_singles_times(1.5, 0.8), "no singles"),
        (lambda: strands.share_of_singles_times(0.5, 1), "no singles"),
        (lambda: strands.share_of_thread_times(0, 0), "share"),
        (lambda: strands.share_of_singles_times(1, 1), "thread alone"),
        (lambda: strands.share_of_singles_times(4, 0.25), "thread alone"),
        (lambda: strands.share_of_singles_times(1, 1.1), "share"),
        (lambda: strands.lot_in_use(), "no lot"),
        (lambda: strands.lot_in_use(own="Aster", design="Marl"), "no lot"),
        (lambda: strands.lot_in_use(own=" "), "blank"),
        (lambda: strands.lot_in_use(picked=" "), "blank"),
        (lambda: which_yarn.of_no_lot("Vest", lot="Aster"), "is known"),
        (lambda: which_yarn.of_no_lot("Vest", design="Marl"), "is known"),
        (lambda: which_yarn.of_no_lot(" "), "blank"),
        (lambda: which_yarn.made_alike("Aster", design="Marl"), "of a design"),
        (lambda: which_yarn.made_alike(" "), "blank"),
        (lambda: which_yarn.made_alike("Aster", "Vest", 25), "from 0 to 24"),
        (lambda: which_yarn.made_alike("Aster", singles=2.5), "singles"),
        (lambda: strands.strand_name(0), "share"),
        (lambda: strands.is_bought(0), "share"),
        (lambda: strands.bought_share(1, 0), "share"),
    ],
)
def test_what_nobody_can_tell_is_refused(wrong, words):
    with pytest.raises(OutOfValidity, match=words):
        wrong()
