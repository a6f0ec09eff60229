"""Plied yarns: W. Davis's examples, weighed by hand, and back from the yarn to its singles."""

import math

import numpy as np
import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from workbookgen.reference import balls, plying, twist
from workbookgen.reference.diameter.wraps import threads_side_by_side
from workbookgen.units import Quantity

from .quantities import meters, tex

positive = st.floats(1e-2, 1e4)
losses = st.floats(0, 0.9)


def worsted(count):
    return 1 / Quantity(count, "worsted_count")


def plied(*densities):
    names = ["yarn"] * len(densities)
    return plying.resultant("yarn", names, Quantity.from_list(list(densities), "tex"))


@pytest.mark.parametrize(
    "counts, printed",
    [
        ((60, 40), 24.0),  # W. Davis, Hosiery Manufacture, example 27 (read)
        ((64, 48, 32), 14.76923077),  # example 30 (read)
        ((90, 20), 16.36363636),  # example 31 (read)
        ((80, 40, 20), 11.42857143),  # example 35 (read)
        ((300, 300, 300), 100.0),  # C. P. Brooks, Cotton Manufacturing, 3/300s (read)
        ((20, 15, 12), 5.0),  # worked by hand; an exam item prints 10s, which is wrong
    ],
)
def test_count_of_a_folded_yarn(counts, printed):
    found = plied(*(plying.contribution(worsted(count)) for count in counts))
    assert (1 / found).m_as("worsted_count") == approx(printed, rel=1e-8)


def test_strands_and_feed():
    # Worked by hand: two strands of 50 tex, each fed 1.25 to 1.
    assert plying.contribution(tex(50), 2, 1.25).m_as("tex") == approx(125)
    # 100 tex that loses 2 per cent with 40 tex that loses 8: 100/0.98 + 40/0.92, worked by hand.
    found = plied(
        plying.contribution(tex(100), feed=plying.feed_ratio(0.02)),
        plying.contribution(tex(40), feed=plying.feed_ratio(Quantity(8, "percent"))),
    )
    assert found.m_as("tex") == approx(145.519, rel=1e-5)


def test_each_design_has_its_own_components():
    designs = ["Sock", "lace", "", "SOCK"]
    contributions = Quantity([100.0, 30.0, 7.0, np.nan], "tex")
    assert plying.resultant("sock", designs, contributions).m_as("tex") == approx(100)
    assert plying.resultant(["lace", "sock"], designs, contributions).m_as("tex") == approx([30, 100])


def test_a_design_is_known_only_when_all_its_components_are():
    designs, contributions = ["Sock", "lace", "", "SOCK"], Quantity([100.0, 30.0, np.nan, np.nan], "tex")
    lacking = [plying.not_known("Sock", tex(100)), 0.0, np.nan, plying.not_known("SOCK")]
    with pytest.raises(ValueError, match="a component is not known yet"):
        plying.resultant("sock", designs, contributions, lacking)
    assert plying.resultant("lace", designs, contributions, lacking).m_as("tex") == approx(30)


@given(loss=losses)
def test_feed_and_take_up_undo_each_other(loss):
    assert twist.take_up(plying.feed_ratio(loss)) == approx(loss, abs=1e-12)


@given(
    components=st.lists(st.tuples(positive, st.integers(1, 4), st.floats(1, 3)), min_size=1, max_size=4),
    length=st.floats(1, 1e4),
)
def test_components_weigh_what_the_yarn_weighs(components, length):
    # Weighed out strand by strand: the balance is the outside witness.
    brought = [plying.contribution(tex(density), strands, feed) for density, strands, feed in components]
    yarn = plied(*brought)
    masses = [
        plying.component_mass(plying.component_length(meters(length), strands, feed), tex(density)).m_as("g")
        for density, strands, feed in components
    ]
    assert math.fsum(masses) == approx((yarn * meters(length)).m_as("g"))
    shares = [plying.weight_share(each, yarn) for each in brought]
    assert shares == approx([mass / math.fsum(masses) for mass in masses])


@pytest.mark.parametrize(
    "wanted, known, printed",
    [
        (10, (48, 24), 26.66666667),  # W. Davis, Hosiery Manufacture, example 39 (read)
        (10, (40, 30), 24.0),  # example 40 (read)
        (12, (16,), 48.0),  # example 42 (read)
        (11, (18,), 28.28571429),  # example 43 (read)
    ],
)
def test_the_missing_component(wanted, known, printed):
    found = plying.missing_component(worsted(wanted), plied(*map(worsted, known)))
    assert (1 / found).m_as("worsted_count") == approx(printed, rel=1e-8)


@given(density=positive, strands=st.integers(2, 12))
def test_the_strands_beside_one_make_up_the_rest(density, strands):
    each = plying.each_other_strand(tex(density), strands)
    assert (each * (strands - 1)).m_as("tex") == approx(density)


def test_share_of_a_component():
    # W. Davis, Hosiery Manufacture, example 46: three sevenths of an 8s are an 18 2/3s (read).
    assert plying.weight_share(worsted(18.66666667), worsted(8)) == approx(3 / 7, rel=1e-8)


@given(density=positive, strands=st.integers(1, 12), loss=losses)
def test_the_singles_make_the_yarn(density, strands, loss):
    single = plying.singles_for(tex(density), strands, loss)
    assert plying.contribution(single, strands, plying.feed_ratio(loss)).m_as("tex") == approx(density)


@given(density=positive, strands=st.integers(1, 12), loss=losses)
def test_all_strands_are_so_many_singles(density, strands, loss):
    single = plying.singles_for(tex(density), strands, loss)
    assert plying.all_strands(tex(density), loss).m_as("tex") == approx(single.m_as("tex") * strands)


def test_one_strand_that_goes_straight_is_as_long_as_the_yarn():
    assert plying.component_length(meters(120)).m_as("m") == 120


def test_singles_with_the_loss_told_either_way():
    # An exam paper, GATE TF 1992 (read): 2-fold 16s, singles 1.10 times as long as the yarn, so 35.2s.
    yarn = 1 / Quantity(16, "number_english")
    single = plying.singles_for(yarn, 2, twist.take_up(1.10))
    assert (1 / single).m_as("number_english") == approx(35.2)
    # Told of the original length, 10 per cent is more: 2 · 16 / 0.9, worked by hand.
    assert (1 / plying.singles_for(yarn, 2, 0.10)).m_as("number_english") == approx(35.5556, rel=1e-5)


@given(wraps=st.floats(2, 60), k=st.floats(0.4, 1.2))
def test_the_grist_gives_the_wraps(wraps, k):
    grist = plying.grist_for_wraps(Quantity(wraps, "1/inch"), k)
    assert threads_side_by_side(grist, k).m_as("1/inch") == approx(wraps)


@given(length=positive, loss=losses)
def test_the_singles_needed_lose_what_they_have_over(length, loss):
    # Definition of take-up: what plying leaves of the singles is the length wanted.
    needed = plying.component_length(meters(length), 1, plying.feed_ratio(loss))
    assert (1 - loss) * needed.m_as("m") == approx(length)


@pytest.mark.parametrize(
    "need, package, count",
    [
        (meters(100), meters(50), 2),
        (meters(100.01), meters(50), 3),
        (Quantity(300, "yard"), Quantity(0.1, "yard"), 3000),
        (meters(0.3), meters(0.1), 3),  # 2.9999999999999996 by its last digits
        (Quantity(1.1, "kg"), Quantity(100, "g"), 11),  # 11.000000000000002 by its last digits
        (Quantity(100, "g"), Quantity(4, "oz"), 1),
        (meters(0), meters(50), 0),
        (7, 2, 4),
    ],
)
def test_packages_are_bought_whole(need, package, count):
    assert plying.packages(need, package) == count


@given(need=st.floats(0, 1e5), package=st.floats(0.5, 1e3))
def test_packages_hold_the_need_and_one_less_does_not(need, package):
    count = plying.packages(meters(need), meters(package))
    assert count == int(count)
    assert count * package >= need - 1e-6 * package
    assert (count - 1) * package < need or count == 0


def test_spools_of_one_bought_thread_are_whole_together():
    # 1,200 m twice from spools of 500 m: 4.8, which are 5.
    lots, lengths = ["Duo / Cone", "", "Duo / Cone"], meters([1200.0, 700.0, 1200.0])
    both = plying.spools(meters(1200), meters(500), lots, lengths, own="Duo / Cone", form="yarn or thread")
    assert both == approx(2.5)
    assert plying.spools(meters(1200), meters(500), lots, lengths, own="Duo / Cone", form="prepared fiber") == 3
    alone = plying.spools(
        meters(700), meters(500), ["Duo / Silk"], meters([700.0]), own="Duo / Silk", form="yarn or thread"
    )
    assert alone == plying.spools(meters(700), meters(500)) == 2
    assert plying.spools(meters(700), meters(500), lots, lengths, form="yarn or thread") == 2


def test_what_is_got_of_one_thread_is_told_once():
    gram = Quantity(1.0, "g")
    assert [balls.to_get(60 * gram, 1, 0.5, before).m_as("g") for before in (0, 1)] == [120, 0]
    assert balls.to_get(60 * gram, 1).m_as("g") == balls.to_get(60 * gram, 0, 0.5, 1).m_as("g") == 60
    named = [balls.got_as("core", bought, part, "Cone") for bought, part in ((1, 0.5), (1, 1.0), (0, 0.5))]
    assert named == ["Cone", "core", "core"] and balls.got_as("the yarn", 0) == "the yarn"


def test_packages_of_another_kind_are_refused():
    with pytest.raises(pint.DimensionalityError):
        plying.packages(meters(1), Quantity(1, "g"))
    with pytest.raises(pint.DimensionalityError):
        plying.packages(meters(1), 2.0)


@pytest.mark.parametrize(
    "form, is_bought", [(None, 0), ("prepared fiber", 0), ("yarn or thread", 1), ("Yarn or Thread", 1)]
)
def test_a_bought_thread_is_not_spun_and_all_else_is(form, is_bought):
    spun = 1 - is_bought
    assert plying.bought_part(tex(60), form).m_as("tex") == 60 * is_bought
    assert plying.strands_to_spin(3, form) == 3 * spun
    assert plying.fed_to_spin(3, form=form) == 3 * spun and plying.fed_to_spin(3, 1.25, form) == 3.75 * spun
    forms = np.array([form or "raw fleece", "yarn or thread"], dtype=object)
    assert plying.bought_part(tex(60), forms).m_as("tex").tolist() == [60 * is_bought, 60]
    assert plying.strands_to_spin(3, forms).tolist() == [3 * spun, 0]


@pytest.mark.parametrize("strands, fed, take_up", [(2, 4, 0.5), (3, 3.75, 0.2), (0, 1, 1)])
def test_feeds_say_what_plying_takes_up(strands, fed, take_up):
    assert plying.take_up_of_feeds(strands, fed) == approx(take_up)


def taken(part, is_thread, mass, **changed):
    """What 400 m of skeins took, 300 m of them weighed: a yarn of 250 tex, of which 50 and 30 tex are threads."""
    yarn = {"resultant": tex(250), "all_bought": tex(80), "length": meters(400), "weighed": meters(300)} | changed
    return plying.strand_taken(tex(part), own_bought=tex(part * is_thread), mass=Quantity(mass, "g"), **yarn).m_as("g")


@pytest.mark.parametrize(
    "part, is_thread, mass, grams",
    [
        (50, 1, 120, 20),  # 400 m of 50 tex
        (30, 1, 120, 12),
        (50, 1, 10, 20),
        # Threads weigh 24 g of 120; of 96 g, 85 parts of 170; and 100 m not yet weighed have 8.5 g of it.
        (85, 0, 120, 48 + 8.5),
        (170, 0, 120, 96 + 17),
        (85, 0, 10, 8.5),  # the weighed ones are lighter than their threads alone
    ],
)
def test_of_a_thread_skeins_took_their_length_and_of_singles_what_they_weigh_besides(part, is_thread, mass, grams):
    assert taken(part, is_thread, mass) == approx(grams)


@pytest.mark.parametrize("weighed", [400.0, 400.0 * (1 + 1e-12)])
def test_where_all_is_weighed_the_design_adds_nothing(weighed):
    assert taken(170, 0, 132, weighed=meters(weighed)) == approx(100)  # threads weigh 32 g of it


def test_a_skein_will_weigh_what_its_length_lets_expect():
    """200 m at 4 m/g are 50 g, at 2.5 m/g 80 g."""
    planned, mean = Quantity(4, "m/g"), Quantity(2.5, "m/g")
    for known, grams in (({}, 50), ({"planned": None}, 80)):
        expected = plying.expected_weight(meters(200), **{"planned": planned, "mean": mean} | known)
        assert expected.m_as("g") == approx(grams)
    for sentence, known in (
        ("nothing says", {}),
        ("grist", {"planned": 0 * planned}),
        ("weighed", {"net": Quantity(60, "g")}),
    ):
        with pytest.raises(ValueError, match=sentence):
            plying.expected_weight(meters(200), **known)


@pytest.mark.parametrize("other, grams", [(None, 200), (Quantity(100, "g"), 150), (Quantity(0.3, "kg"), 100)])
def test_two_lots_of_a_component_are_used_in_proportion(other, grams):
    drawn = plying.drawn_from_lot(Quantity(200, "g"), Quantity(300, "g"), other)
    assert drawn.m_as("g") == approx(grams)


BOBBIN, SINGLE = Quantity(50, "g"), Quantity(4, "m/g")


@pytest.mark.parametrize(
    "known, length", [({"mass": BOBBIN, "grist": SINGLE}, 200), ({"length": meters(90), "mass": BOBBIN}, 90)]
)
def test_a_bobbin_holds_what_was_measured_or_what_it_weighs(known, length):
    assert plying.bobbin_has(**known).m_as("m") == approx(length)


@pytest.mark.parametrize(
    "known, lacking", [({"mass": BOBBIN}, 1), ({"length": meters(9)}, 1), ({"mass": BOBBIN, "has": meters(9)}, 0)]
)
def test_a_bobbin_is_not_known_until_its_length_is(known, lacking):
    assert plying.bobbin_lacking(**known) == lacking


def test_bobbins_are_counted_and_the_shortest_ends_the_ply():
    lengths = meters([200.0, np.nan, 180.0, 190.0])
    assert plying.bobbins_plied(lengths) == plying.bobbins_plied(lengths, 0, 0) == 3
    assert plying.bobbins_plied(meters([0.5])) == 1
    assert plying.shortest_of(lengths).m_as("m") == 180 and plying.shortest_of(meters([90.0])).m_as("m") == 90


@pytest.mark.parametrize("shrinkage, grist", [(0, 4), (0.05, 3.8), (-0.25, 5)])
def test_what_washing_takes_of_the_length_stays_in_the_weight(shrinkage, grist):
    assert plying.washed_grist(tex(250), shrinkage).m_as("m/g") == approx(grist)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: plying.feed_ratio(1), "contraction"),
        (lambda: plying.feed_ratio(-0.1), "contraction"),
        (lambda: plying.contribution(tex(0)), "linear density"),
        (lambda: plying.contribution(tex(1), 0), "whole number"),
        (lambda: plying.contribution(tex(1), 1.5), "whole number"),
        (lambda: plying.contribution(tex(1), 1, 0.9), "1 or more"),
        (lambda: plying.resultant("sock", ["lace"], Quantity([1.0], "tex")), '"sock" has no component'),
        (lambda: plying.resultant("sock", ["sock"], Quantity([np.nan], "tex")), "no component"),
        (lambda: plying.resultant(" ", ["sock"], Quantity([1.0], "tex")), "blank"),
        (lambda: plying.resultant("sock", ["sock"], tex(1.0)), "one contribution"),
        (lambda: plying.resultant("sock", ["sock", ""], Quantity([1.0], "tex")), "beside it"),
        (lambda: plying.not_known(" "), "blank"),
        (lambda: plying.not_known("Sock", tex(0)), "contribution"),
        (lambda: plying.component_length(meters(-1)), "length wanted"),
        (lambda: plying.component_length(meters(1), 0), "whole number"),
        (lambda: plying.component_length(meters(1), 1, 0.9), "1 or more"),
        (lambda: plying.component_mass(meters(-1), tex(1)), "length"),
        (lambda: plying.component_mass(meters(1), tex(0)), "linear density"),
        (lambda: plying.weight_share(tex(0), tex(1)), "weigh something"),
        (lambda: plying.weight_share(tex(2), tex(1)), "more than the whole"),
        (lambda: plying.packages(meters(-1), meters(1)), "needed"),
        (lambda: plying.packages(meters(1), meters(0)), "package"),
        (lambda: plying.each_other_strand(tex(0), 2), "rest"),
        (lambda: plying.each_other_strand(tex(1), 1), "strands"),
        (lambda: plying.each_other_strand(tex(1), 2.5), "strands"),
        (lambda: plying.missing_component(tex(1), tex(1)), "finer"),
        (lambda: plying.missing_component(tex(1), tex(0)), "weigh something"),
        (lambda: plying.singles_for(tex(0), 2), "linear density"),
        (lambda: plying.singles_for(tex(1), 0), "whole number"),
        (lambda: plying.singles_for(tex(1), 2, 1), "take-up"),
        (lambda: plying.all_strands(tex(0)), "linear density"),
        (lambda: plying.all_strands(tex(1), 1), "take-up"),
        (lambda: plying.grist_for_wraps(Quantity(0, "1/inch"), 1), "wraps"),
        (lambda: plying.grist_for_wraps(Quantity(1, "1/inch"), 0), "factor K"),
        (lambda: plying.bought_part(tex(0), "yarn or thread"), "weigh something"),
        (lambda: plying.strands_to_spin(1.5), "strands"),
        (lambda: plying.strands_to_spin(0), "strands"),
        (lambda: plying.fed_to_spin(2, 0.9), "1 or more"),
        (lambda: plying.fed_to_spin(1.5, 1), "strands"),
        (lambda: plying.take_up_of_feeds(2, 2), "above 1"),
        (lambda: plying.take_up_of_feeds(-1, 2), "strands"),
        (lambda: taken(0, 0, 1), "weigh something"),
        (lambda: taken(50, 0, 1, resultant=tex(0)), "weigh something"),
        (lambda: taken(50, 0, 1, all_bought=tex(-1)), "bought"),
        (lambda: taken(50, -1, 1), "bought"),
        (lambda: taken(50, 0, -1), "mass"),
        (lambda: taken(50, 0, 1, length=meters(-1)), "length"),
        (lambda: taken(50, 0, 1, weighed=meters(-1)), "length"),
        (lambda: plying.drawn_from_lot(-BOBBIN, BOBBIN), "mass"),
        (lambda: plying.drawn_from_lot(BOBBIN, 0 * BOBBIN), "lot must weigh"),
        (lambda: plying.drawn_from_lot(BOBBIN, BOBBIN, 0 * BOBBIN), "lot must weigh"),
        (lambda: plying.bobbin_has(), "Give the length"),
        (lambda: plying.bobbin_has(mass=BOBBIN), "Give the length"),
        (lambda: plying.bobbin_has(grist=SINGLE), "Give the length"),
        (lambda: plying.bobbin_has(meters(0)), "something on it"),
        (lambda: plying.bobbin_lacking(has=meters(9)), "State the length"),
        (lambda: plying.bobbins_plied(meters([np.nan])), "at least one"),
        (lambda: plying.bobbins_plied(meters([9.0]), 1), "not known"),
        (lambda: plying.bobbins_plied(meters([9.0]), 0, 1), "not known"),
        (lambda: plying.shortest_of(meters([np.nan])), "at least one"),
        (lambda: plying.washed_grist(tex(0), 0), "linear density"),
        (lambda: plying.washed_grist(tex(1), 0.9), "shrinkage"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()


@pytest.mark.parametrize(
    ("number", "unit", "ends", "notation", "count", "counted"),
    [  # Taylor and Davis (read): 2/40s cotton and worsted, 40/2 spun silk; metric 28/2 and R tex (from memory)
        (40, "number_english", 2, "of each end", 20, "number_english"),
        (40, "worsted_count", 2, "of each end", 20, "worsted_count"),
        (40, "number_english", 2, "of the folded yarn", 40, "number_english"),
        (28, "number_meter", 2, "Of Each End", 14, "number_meter"),
        (25, "m/g", 2, "of the folded yarn", 25, "m/g"),  # R 40 tex/2
    ],
)
def test_folded_counts_are_read_as_the_trade_writes_them(number, unit, ends, notation, count, counted):
    assert plying.folded_grist(Quantity(number, unit), ends, notation).m_as(counted) == approx(count)


def test_a_notation_that_nobody_writes():
    with pytest.raises(ValueError, match="not a notation"):
        plying.folded_grist(Quantity(1, "m/g"), 2, "both")
    with pytest.raises(ValueError, match="ends"):
        plying.folded_grist(Quantity(1, "m/g"), 2.5, "of each end")


def test_singles_are_spun_finer_by_what_ply_and_washing_take():
    # R 200 tex, 5% lost in washing, 4% in plying, two strands: 200 · 0.95 · 0.96 / 2.
    assert plying.singles_for(tex(200), 2, 0.04, 0.05).m_as("tex") == approx(91.2)
    assert plying.all_strands(tex(200), 0.04, 0.05).m_as("tex") == approx(182.4)


@pytest.mark.parametrize("place", [1, 4])
def test_a_component_is_found_by_its_place_and_called_by_its_name(place):
    assert plying.component_key("Marl", place) == plying.component_label("Marl", place) == f"Marl / {place}"
    assert plying.component_label("Marl", place, "silk") == "silk" and plying.component_key("Marl") == "Marl / 1"


@pytest.mark.parametrize(
    "design, place, name", [(" ", 1, "silk"), ("Marl", 0, "silk"), ("Marl", 5, "silk"), ("Marl", 1, " ")]
)
def test_a_component_without_a_name_or_a_place_is_refused(design, place, name):
    with pytest.raises(ValueError, match="blank|whole number from 1 to 4"):
        plying.component_label(design, place, name)
