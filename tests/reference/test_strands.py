"""How long strands last, what is left of them, and what to get: worked by hand."""

import numpy as np
import pytest
from pytest import approx

from workbookgen.reference import strands
from workbookgen.units import Quantity

# Half of the yarn's weight is this strand, and the yarn was planned at 2 m/g: a meter of it holds 0.25 g. Spun a
# quarter finer than planned, it holds 0.2 g; a bought thread is as it was made.
HALF = {"share": 0.5, "planned": Quantity(2, "m/g"), "finer": 1.25}


@pytest.mark.parametrize("bought, meters", [(0, 1000), (1, 800)])
def test_a_strand_that_is_spun_finer_lasts_longer_and_a_bought_one_does_not(bought, meters):
    assert strands.component_length(Quantity(200, "g"), bought=bought, **HALF).m_as("m") == approx(meters)


@pytest.mark.parametrize("bought, grams", [(0, 20), (1, 25)])
def test_what_is_left_of_a_strand_weighs_what_its_length_does(bought, grams):
    left = strands.left_in_the_end(Quantity(400, "m"), Quantity(300, "m"), bought=bought, **HALF)
    assert left.m_as("g") == approx(grams)


@pytest.mark.parametrize("bought, kept, grams", [(0, None, 20), (0, 0.8, 25), (1, None, 25), (1, 0.5, 50)])
def test_what_is_lost_on_the_way_is_got_as_well(bought, kept, grams):
    level, come = Quantity(400, "m"), Quantity(300, "m")
    assert strands.to_buy(level, come, bought=bought, kept=kept, **HALF).m_as("g") == approx(grams)
    assert strands.to_buy(come, level, bought=bought, kept=kept, **HALF).m_as("g") == 0


@pytest.mark.parametrize("lengths", [(300,), (300, 400), (400, 300), (500, 400, 300), (500, 400, 450, 300)])
def test_the_scarcest_strand_is_the_shortest(lengths):
    assert strands.least(*(Quantity(each, "m") for each in lengths)).m_as("m") == 300


def test_the_scarcest_strand_is_named_wherever_it_stands():
    names = ("Moss", "Fern", "Rush", "Sedge")
    for place, name in enumerate(names, start=1):
        lasts = {f"come_{each}": Quantity(300 if each == place else 400, "m") for each in (1, 2, 3, 4)}
        called = {f"name_{each}": other for each, other in enumerate(names, start=1)}
        assert strands.scarcest(Quantity(300, "m"), **lasts, **called) == name
    with pytest.raises(ValueError, match="needs a name"):
        strands.scarcest(Quantity(300, "m"), Quantity(300, "m"), "Moss", Quantity(400, "m"))


def test_strands_on_the_same_lots_are_uncertain_once():
    # 10 g are 40 m of a meter that holds a quarter of a gram, and 50 m of one spun finer.
    doubt = Quantity(10, "g")
    assert strands.length_in_doubt(doubt, bought=1, **HALF).m_as("m") == approx(40)
    assert strands.length_in_doubt(doubt, bought=0, before=0, **HALF).m_as("m") == approx(50)
    for earlier in (1, 2):
        with pytest.raises(ValueError, match="counts with that of an earlier"):
            strands.length_in_doubt(doubt, bought=0, before=earlier, **HALF)


@pytest.mark.parametrize(
    "first, others, unlike",
    [(0, (4, 1), 0), (0, (5, 4), 1), (0, (4, 5), 1), (0, (5, 5), 2), (1, (5, 5), 0), (1, (4, 5), 1), (1, (1, 4), 2)],
)
def test_lots_of_fiber_and_bought_yarn_do_not_replace_each_other(first, others, unlike):
    assert strands.unlike_lots(first, *others, lot="Aster") == unlike
    assert strands.unlike_lots(first, lot="Aster") == 0
    assert strands.unlike_lots(first, stage_3=others[1], lot="Aster") == (first == 1) ^ (others[1] == 5)


def test_strands_that_are_known_to_less_than_a_meter_may_run_out_first_as_well():
    """Two that may both end at 100 m, give or take half a meter: the first of them ends 0.5 / √π before, on average."""
    near = {"near_1": Quantity(0.25, "m^2"), "near_2": Quantity(0.25, "m^2")}
    level = strands.length_to_last(Quantity(100, "m"), Quantity(100, "m"), Quantity(10, "m"), **near)
    assert level.m_as("m") == approx(110 + 0.5 / 3.14159265**0.5)


@pytest.mark.parametrize(
    "in_skeins, used, meters", [(250, None, 750), (1000, None, 0), (1200, None, 0), (0, 400, 0), (0, 0, 0)]
)
def test_a_project_draws_what_its_skeins_lack_until_it_is_finished(in_skeins, used, meters):
    taken = None if used is None else Quantity(used, "g")
    assert strands.to_spin(Quantity(1000, "m"), Quantity(in_skeins, "m"), taken).m_as("m") == meters


@pytest.mark.parametrize("bought, grams", [(0, 200), (1, 250)])
def test_a_strand_that_is_spun_finer_takes_less_and_a_bought_one_does_not(bought, grams):
    assert strands.component_needs(Quantity(1000, "m"), bought=bought, **HALF).m_as("g") == approx(grams)
    both = strands.component_needs(Quantity(1000, "m"), bought=np.array([bought, 1]), **HALF)
    assert both.m_as("g") == approx(np.array([grams, 250]))


@pytest.mark.parametrize("logged, besides", [(350, 50), (0, 400), (400, 0), (450, 0)])
def test_what_a_piece_took_besides_its_skeins_is_nothing_where_skeins_were_left(logged, besides):
    assert strands.used_besides(Quantity(400, "g"), Quantity(logged, "g")).m_as("g") == besides


@pytest.mark.parametrize("of, grams", [({}, 50), ({"share": 0.4}, 20), ({"share": 0.4, "design": "Marl"}, 20)])
def test_a_piece_took_of_each_strand_its_share(of, grams):
    assert strands.taken_by_piece(Quantity(50, "g"), **of).m_as("g") == approx(grams)


@pytest.mark.parametrize("left, over, share", [(500, 250, 0.5), (200, -50, 1.25), (250, 0, 1)])
def test_above_all_of_its_supply_a_strand_is_short(left, over, share):
    assert strands.component_over(Quantity(left, "g"), Quantity(250, "g")).m_as("g") == over
    assert strands.share_used(Quantity(0.25, "kg"), Quantity(left, "g")) == approx(share)


def needs(**changed):
    return strands.component_needs(**{"to_spin": Quantity(1, "m"), "bought": 0} | HALF | changed)


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: strands.to_spin(Quantity(-1, "m"), Quantity(1, "m")), "length"),
        (lambda: strands.to_spin(Quantity(1, "m"), Quantity(-1, "m")), "length"),
        (lambda: strands.to_spin(Quantity(1, "m"), Quantity(1, "m"), Quantity(-1, "g")), "negative amount"),
        (lambda: needs(to_spin=Quantity(-1, "m")), "length"),
        (lambda: strands.component_over(Quantity(1, "g"), Quantity(-1, "g")), "negative amount"),
        (lambda: strands.share_used(Quantity(-1, "g"), Quantity(1, "g")), "negative amount"),
        (lambda: strands.share_used(Quantity(1, "g"), Quantity(0, "g")), "something left"),
        (lambda: needs(share=0), "share and the fineness"),
        (lambda: needs(finer=0), "share and the fineness"),
        (lambda: needs(planned=Quantity(0, "m/g")), "grist"),
        (lambda: strands.used_besides(Quantity(-1, "g"), Quantity(1, "g")), "mass"),
        (lambda: strands.used_besides(Quantity(1, "g"), Quantity(-1, "g")), "mass"),
        (lambda: strands.taken_by_piece(Quantity(-1, "g")), "mass"),
        (lambda: strands.taken_by_piece(Quantity(1, "g"), design="Marl"), "no such component"),
    ],
)
def test_what_nobody_can_have_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()
