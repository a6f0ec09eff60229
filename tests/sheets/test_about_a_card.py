"""What a card is about is on its sheet: how to count, and what a number on a label means, helps nobody elsewhere."""

import pytest

from workbookgen.filled.planner import described
from workbookgen.language.parts import Card
from workbookgen.language.views import Prose
from workbookgen.settings import Settings


@pytest.mark.parametrize("units", ["us", "metric"])
def test_it_stands_with_the_card(units):
    planner = described(Settings(units=units))
    cards = [each for each in planner.blocks.values() if isinstance(each, Card) and each.about]
    told = {sentence for sheet in planner.sheets for section in sheet.sections if isinstance(section, Prose) for sentence in section.sentences}
    assert {"counted", "folded", "plying", "weighed"} <= {each.key for each in cards}
    assert [each.key for each in cards if each.about not in told] == []
