"""The lesser of two lengths far apart: what is left there of two tails of the normal distribution is noise."""

import pytest
from scipy.stats import norm

from workbookgen.reference import uncertainty
from workbookgen.units import Quantity


@pytest.mark.parametrize("apart", [0.0, 1.0, 3.0, 4.6557, 5.9])
def test_the_lesser_lies_below_by_whole_millionths_of_a_millionth(apart):
    # With nothing of one strand, 1.9 million of doubt in the other: 0.6 m below nothing, of which programs whose tail
    # is good to ten digits agreed on eight. Held against scipy's normal distribution.
    together = 1_878_507.9
    lengths = [Quantity(each, "m") for each in (0.0, 0.0, apart * together, together)]
    below = -uncertainty.lesser(*lengths).m_as("m") / together
    assert below == pytest.approx(norm.pdf(apart) - apart * norm.cdf(-apart), abs=1e-12)
    assert below * 1e12 == pytest.approx(round(below * 1e12), abs=1e-3)
