"""Cards: what one is about stands on its sheet, and its large answer is in the planner's units."""

import pytest

from workbookgen.filled.planner import described
from workbookgen.language.parts import Card
from workbookgen.language.views import Answers, Prose
from workbookgen.settings import Settings

# The answers that cards give in yards per pound and in meters per 100 grams.
BOTH = {
    "counts": ("grist", "grist_m_100g"),
    "folded": ("grist", "grist_m_100g"),
    "weighed": ("grist", "grist_m_100g"),
    "finest": ("grist", "grist_m"),
    "backwards": ("singles", "singles_m"),
    "match": ("singles", "singles_m"),
    "wrapped": ("grist", "grist_m"),
}


@pytest.mark.parametrize(("system", "place"), [("us", 0), ("us-grams", 0), ("metric", 1)])
def test_a_grist_is_large_in_the_unit_of_the_planner(system, place):
    """In meters, "Spin each single to" was in yards per pound, and what a spinner reads in small letters below."""
    planner = described(Settings(units=system))
    views = [chapter.view for sheet in planner.sheets for chapter in sheet.chapters if isinstance(chapter.view, tuple)]
    answers = [each for view in views for band in view for each in band.sections if isinstance(each, Answers)]
    large, lines = {head.field for each in answers for head in each.large}, {key for each in answers for key in each.lines}
    for card, keys in BOTH.items():
        assert f"{card}_{keys[place]}" in large and f"{card}_{keys[1 - place]}" in lines, card


@pytest.mark.parametrize("units", ["us", "metric"])
def test_what_a_card_is_about_stands_with_it(units):
    """How to count, and what a number on a label means, helps nobody elsewhere."""
    planner = described(Settings(units=units))
    cards = [each for each in planner.blocks.values() if isinstance(each, Card) and each.about]
    told = {sentence for sheet in planner.sheets for section in sheet.sections if isinstance(section, Prose) for sentence in section.sentences}
    assert {"counted", "folded", "plying", "weighed"} <= {each.key for each in cards}
    assert [each.key for each in cards if each.about not in told] == []
