"""What is odd about the weighings of a lot: of steps that were over, of wet wool. Worked by hand."""

import numpy as np
import pytest

from workbookgen.reference import fiber

from .quantities import grams


def test_a_weighing_of_a_step_that_was_over_counts_for_nothing():
    """Of 500 g in each of the five states, every step after which it was bought, and weighed less."""
    weighed = dict(skirted=grams(400.0), scoured=grams(300.0), prepared=grams(250.0), spun=grams(200.0))
    by_state = [fiber.not_counted(grams(500.0), stage, **weighed) for stage in (1, 2, 3, 4, 5)]
    assert by_state == [0, 1, 2, 3, 4]
    for step, stage in (("skirted", 2), ("scoured", 3), ("prepared", 4), ("spun", 5)):
        one = {step: grams(499.9)}
        assert fiber.not_counted(grams(500.0), stage, **one) == 1, step
        assert fiber.not_counted(grams(500.0), stage - 1, **one) == 0, step
        # The same weight once more, or a heavier one, does not say that there is less.
        for as_heavy in (500.0, 500.0 * (1 - 1e-12), 500.1):
            assert fiber.not_counted(grams(500.0), stage, **{step: grams(as_heavy)}) == 0, step
    assert fiber.not_counted(grams(500.0), 4) == 0


def test_top_that_is_combed_once_more_is_weighed_after_that():
    combed = dict(weight=grams(500.0), stage=4, prepared=grams(450.0))
    assert fiber.not_counted(**combed) == 1
    assert [fiber.not_counted(**combed, second=second) for second in (0.0, 0.1)] == [1, 0]
    assert fiber.not_counted(**combed, second_way="combing") == 0


def hardly(lost, **known):
    """Of 1,000 g of raw fleece; its yield is 60%, if nothing else is said."""
    return fiber.hardly_washed(grams(1000.0), 1, scoured=grams(1000.0 - lost), **{"own": 0.6} | known)


def test_a_fleece_that_lost_less_than_half_of_what_washes_out_may_be_wet():
    # 40% should wash out, so 20% is the least.
    assert [hardly(lost) for lost in (-50, 0, 150, 199, 200, 250, 400)] == [1, 1, 1, 1, 0, 0, 0]
    # Of a yield of 90%, 5%; your own figure beats the guide's, and where there is none, anything may be right.
    assert [hardly(lost, own=0.9) for lost in (40, 60)] == [1, 0]
    assert [hardly(lost, own=None, guide=0.9) for lost in (40, 60)] == [1, 0]
    assert hardly(60, own=0.9, guide=0.5) == 0
    assert [hardly(lost, own=None) for lost in (-50, 0, 50)] == [1, 0, 0]


def test_what_is_heavy_is_told_by_the_first_weighing_after_the_wash():
    raw = dict(weight=grams(1000.0), own=0.6)
    assert fiber.hardly_washed(**raw, stage=1, prepared=grams(900.0), spun=grams(500.0)) == 1
    assert fiber.hardly_washed(**raw, stage=1, spun=grams(900.0)) == 1
    assert fiber.hardly_washed(**raw, stage=2, scoured=grams(700.0), spun=grams(900.0)) == 0
    # Of 700 g that skirting left, 560 g would be the most.
    skirted = raw | dict(stage=1, skirted=grams(700.0))
    assert [fiber.hardly_washed(**skirted, scoured=grams(each)) for each in (570.0, 550.0)] == [1, 0]
    # Nothing was weighed yet, or it was bought washed.
    assert [fiber.hardly_washed(**raw, stage=stage) for stage in (1, 3)] == [0, 0]
    assert [fiber.hardly_washed(**raw, stage=stage, scoured=grams(950.0)) for stage in (2, 3, 5)] == [1, 0, 0]


def test_a_part_of_a_lot_that_was_weighed_gives_far_less_than_the_lot():
    """Of 1,000 g of raw fleece 0.9 · 0.5 · 0.8 · 0.95 is yarn, 342 g; combed once more, 0.75 of it."""
    guide = dict(guide_skirting=0.1, guide_yield=0.5, guide_preparation=0.2, guide_spinning=0.05)
    by_stage = [342.0, 380.0, 760.0, 950.0, 1000.0]  # fewer steps are ahead of it
    for stage, expected in enumerate(by_stage, start=1):
        told = fiber.beside_expected(grams(expected / 4), grams(1000.0), stage, 0.0, **guide)
        assert told == pytest.approx(0.25), stage
    assert fiber.beside_expected(grams(256.5), grams(1000.0), 1, 0.25, **guide) == pytest.approx(1)
    own = dict(own_skirting=0.0, own_yield=0.8, own_preparation=0.0, own_spinning=0.0)
    assert fiber.beside_expected(grams(200.0), grams(1000.0), 1, 0.0, **own, **guide) == pytest.approx(0.25)


def test_samples_of_a_lot_count_until_the_step_is_over_or_told_otherwise():
    for step in (2, 4):  # scouring and spinning, of a lot bought after that, or before
        counted = [fiber.counted_on(3, stage=stage, step=step) for stage in (1, 2, 3, 4, 5)]
        assert counted == [3 if stage <= step else 0 for stage in (1, 2, 3, 4, 5)], step
    for told in (dict(own=0.1), *({key: grams(90.0)} for key in ("scoured", "prepared", "spun"))):
        assert fiber.counted_on(3, stage=1, step=4, **told) == 0, told
        assert fiber.counted_on(3, stage=5, step=4, **told) == 0, told


def test_more_cannot_be_spun_than_was_bought():
    assert fiber.spun_of_lot(grams(np.array([0.0, 150.0])), grams(100.0)).tolist() == [0, 1.5]
    with pytest.raises(ValueError, match="mass as bought"):
        fiber.spun_of_lot(grams(10.0), grams(0.0))
