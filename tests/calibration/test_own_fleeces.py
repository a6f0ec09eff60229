"""What the guide has learned of one's own fleeces, and how sure it is of that: how often one more gave so much."""

import pytest

from .answers import give_or_take
from .own_fleeces import after, published, unpublished
from .test_there_is import COVERED, WORLDS, found


@pytest.mark.parametrize("breed", [published, unpublished])
@pytest.mark.parametrize("fleeces", [3, 4, 8])
def test_one_more_fleece_gives_what_it_very_likely_does(fleeces, breed):
    each = found(after(fleeces, breed))
    right = float(each.within.mean())
    assert abs(right - COVERED) <= 0.015 + give_or_take(COVERED, WORLDS), f"{right:.1%}"
    assert abs(each.sure() - 0.9) <= 0.015 + give_or_take(0.9, WORLDS), f"{each.sure():.1%}"
