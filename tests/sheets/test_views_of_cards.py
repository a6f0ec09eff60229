"""Which answer of a card is the large one."""

import pytest

from workbookgen.build import layout_of
from workbookgen.language.views import Answers
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
    planner = layout_of(Settings(units=system)).planner
    views = [chapter.view for sheet in planner.sheets for chapter in sheet.chapters if isinstance(chapter.view, tuple)]
    answers = [each for view in views for band in view for each in band.sections if isinstance(each, Answers)]
    large, lines = {head.field for each in answers for head in each.large}, {key for each in answers for key in each.lines}
    for card, keys in BOTH.items():
        assert f"{card}_{keys[place]}" in large and f"{card}_{keys[1 - place]}" in lines, card
