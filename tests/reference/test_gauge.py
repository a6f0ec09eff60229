"""The gauge to expect, against the yarn trade's table."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbookgen.reference import diameter, gauge

from .quantities import per_inch


# Standard yarn weight system of the yarn trade (read as reproduced): wraps of one class, or of two or three that
# overlap, and their stitches in 4 inches.
@pytest.mark.parametrize(
    "wraps, stitches",
    [
        (35, (33, 40)),
        (20, (27, 32)),
        (16, (23, 32)),
        (13, (21, 26)),
        (11.5, (16, 24)),
        (10, (16, 20)),
        (12, (16, 26)),
        (7, (12, 15)),
        (5.5, (7, 11)),
        (3, (0, 6)),
    ],
)
def test_stitches_in_print(wraps, stitches):
    assert (gauge.fewest_stitches(per_inch(wraps)), gauge.most_stitches(per_inch(wraps))) == stitches


@given(wraps=st.floats(0.5, 60), finer=st.floats(0, 20))
def test_finer_yarn_never_has_fewer_stitches(wraps, finer):
    coarse, fine = per_inch(wraps), per_inch(wraps + finer)
    assert gauge.fewest_stitches(coarse) <= gauge.fewest_stitches(fine)
    assert gauge.most_stitches(coarse) <= gauge.most_stitches(fine)
    assert gauge.fewest_stitches(coarse) < gauge.most_stitches(coarse)


def test_every_class_has_its_stitches_and_they_rise_with_it():
    names = [name for name, *_ in diameter.WEIGHT_CLASSES]
    assert list(gauge.KNIT_STITCHES) == names
    fewest, most = zip(*gauge.KNIT_STITCHES.values(), strict=True)
    assert list(fewest) == sorted(fewest) and list(most) == sorted(most)


def test_a_usual_gauge_is_said_with_its_caution():
    assert gauge.gauge_words(16, 20).startswith("16 to 20 stitches in 4 in (10 cm)")
    assert gauge.gauge_words(0, 6).startswith("up to 6 stitches")
    assert gauge.gauge_words(16, 20).endswith("a swatch decides")


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda: gauge.fewest_stitches(per_inch(0)), "wraps"),
        (lambda: gauge.most_stitches(per_inch(0)), "wraps"),
        (lambda: gauge.gauge_words(20, 16), "fewest"),
        (lambda: gauge.gauge_words(-1, 16), "fewest"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call, sentence):
    with pytest.raises(ValueError, match=sentence):
        call()
