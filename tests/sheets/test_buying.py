"""What to buy: the middle figure, and the weight that is as sure as one asks, worked out by hand."""

import pytest

from entries import shown_in
from workbookgen.filled.planner import described
from workbookgen.language.entries import starting_entries
from workbookgen.settings import Settings

PLANNER = described(Settings())
KEYS = ("buying_to_buy", "buying_sure")
WANTED = {"buying_state": "prepared fiber", "buying_length": 1600.0, "buying_grist": 1600.0, "buying_own_spinning": 0.05}


def told(**typed):
    entries = starting_entries(PLANNER) | {key: (value,) for key, value in (WANTED | typed).items()}
    return shown_in(PLANNER, entries, KEYS)


def test_more_is_bought_to_be_surer():
    # A pound of yarn, of which 5% are lost: 16 / 0.95 oz. Own figure ± 3%, grist ± 8%: together 8.5440%; 90% takes
    # 1.281552 of them, 10.9496%.
    assert told() == [pytest.approx(16.842105), pytest.approx(16.842105 / 0.890504, rel=1e-6)]
    # Bought as yarn only the label is in doubt, by 3%.
    assert told(buying_state="yarn or thread") == [pytest.approx(16.0), pytest.approx(16 / (1 - 1.281552 * 0.03), rel=1e-6)]
    # As likely as not is the middle figure.
    assert told(doubts_certainty=0.5) == [pytest.approx(16.842105)] * 2


def test_doubt_that_leaves_nothing_to_count_on_gives_no_weight():
    assert told(doubts_certainty=0.999, doubts_grist=0.3) == [pytest.approx(16.842105), None]
