"""What to have of a yarn of several strands, as if all that is to come were got anew."""

import numpy as np
import pytest
from pytest import approx

from workbookgen.reference import uncertainty

from .quantities import meters


def test_yarn_got_anew_is_as_uncertain_as_its_least_known_strand():
    """(20 / 100)² = 0.04 of the second strand, beside 0.01; skeins of 500 ± 10 m teach half: (0.5 / 500 · 10)² =
    0.0001; a scale of 2 %: (0.5 · 0.02)² = 0.0001. A strand that lasts for less than its uncertainty is not known at
    all; of one that is not there, 0 ± 0 m, only what is got counts.
    """
    skeins = dict(weight=0.5, u_scale=0.02, in_skeins=meters(500.0), skeins_doubt=meters(10.0))
    first = dict(square_1=0.01, come_1=meters(300.0), u_come_1=meters(15.0))

    def square(come, u_come):
        return uncertainty.anew_square(**skeins, **first, square_2=0.02, come_2=meters(come), u_come_2=meters(u_come))

    assert uncertainty.anew_square(**skeins, **first) == approx(0.0102)
    assert [square(100.0, 20.0), square(100.0, 5.0), square(0.0, 0.0)] == approx([0.0402, 0.0202, 0.0202])
    assert [square(20.0, 20.0), square(-5.0, 20.0), square(0.0, 20.0)] == approx([1.0002] * 3)
    assert [square(1.0, 0.5), square(0.2, 0.5)] == approx([0.2502, 1.0002])
    alone = dict(weight=0.0, u_scale=0.02, in_skeins=meters(0.0), skeins_doubt=meters(0.0))
    assert uncertainty.anew_square(**alone, **first) == approx(0.0104)


def test_what_to_have_if_all_were_got_anew():
    """500 m of 800 m are in skeins, z = 1, u² = 60² + 80². T - 300 = √(10,000 + T² / 9): 8 T² - 5,400 T + 720,000 = 0
    at T = 492.12. By skeins that teach all, 60² / 500 = 7.2, and by balls of 100 m, 0.2² · 50 = 2.
    """
    known = dict(in_skeins=meters(500.0), need=meters(800.0), u_skeins=meters(60.0), u_need=meters(80.0), coverage=1.0)
    more = dict(to_come=meters([200.0, 492.12, -10.0]), square=1 / 9, weight=0.0, hold=meters(100.0))
    told = uncertainty.more_anew(**known, **more, variation=0.0, u_ball=0.0).m_as("m")
    assert told == approx(np.array([292.12, 0.0, 502.12]), abs=0.01)
    # T - 300 = √(10,000 + 2 · 9.2 · T + T² / 9): 8 T² - 5,565.6 T + 720,000 = 0 at T = 523.92
    one = more | dict(to_come=meters(200.0), weight=1.0)
    for doubts in (dict(variation=0.2, u_ball=0.1), dict(variation=0.1, u_ball=0.2)):
        assert uncertainty.more_anew(**known, **one, **doubts).m_as("m") == approx(323.92, abs=0.01)
    for square in (1.0, 1.21):
        with pytest.raises(ValueError, match="No amount is that certain"):
            uncertainty.more_anew(**known, **(one | {"square": square}), variation=0.0, u_ball=0.0)


def test_no_more_is_to_be_had_than_if_all_were_got_anew():
    both = [meters([20.0] * 6), meters([12.0, 30.0, -10.0, -0.5, 0.0, 0.5])]
    told = uncertainty.no_more_than_anew(*both, share=0.5).m_as("m")
    assert told == approx(np.array([12.0, 20.0, 20.0, 20.0, 20.0, 0.5]))
    assert uncertainty.no_more_than_anew(meters(20.0), meters(12.0)).m_as("m") == 20, "of one strand"
    assert uncertainty.no_more_than_anew(meters(20.0), None, 0.5).m_as("m") == 20
