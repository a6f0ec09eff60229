"""How a page is broken onto paper, and what size it has there."""

from types import SimpleNamespace

import pytest

from workbookgen.book.printing import _broken, _scale
from workbookgen.build import layout_of
from workbookgen.settings import Settings

ROW = 20  # pixels


def page(*bands: int):
    """A page of bands of so many rows each, from its second row on."""
    starts = [2 + sum(bands[:number]) for number in range(len(bands))]
    narrow = SimpleNamespace(grid=SimpleNamespace(widths=()))  # with one line of links, which is not printed
    plan = SimpleNamespace(sheet=narrow, bands=tuple(starts), printed_to=1 + sum(bands))
    return SimpleNamespace(plan=plan, height_of=lambda row: ROW)


@pytest.mark.parametrize(
    ("bands", "down", "begun", "pages"),
    [
        ((40, 20), 60 * ROW, [], 1),
        ((40, 20), 59 * ROW, [42], 2),
        ((10, 95), 50 * ROW, [], 3),  # the second is longer than a page, and begins on what is left of the first
        ((40, 95), 50 * ROW, [42], 3),  # too little is left
    ],
)
def test_a_band_is_not_cut_unless_it_is_longer_than_a_page(bands, down, begun, pages):
    assert _broken(page(*bands), down) == (begun, pages)


def test_a_sheet_is_printed_smaller_only_where_that_saves_a_page():
    assert _scale(page(40, 20), 1.0, 59 * ROW) == 0.97
    assert _scale(page(40, 20), 1.0, 54 * ROW) == pytest.approx(0.88)
    assert _scale(page(40, 20), 1.0, 50 * ROW) == 1.0  # two pages all the same
    assert _scale(page(40, 20), 0.56, 0.56 * 59 * ROW) == 0.56  # smaller could not be read


def test_a_long_page_leads_to_titles_within_its_chapters():
    plan = layout_of(Settings()).plans["Twist"]
    begun, further = ([each.section.title for each in places] for places in (plan.starts, plan.further))
    assert "What the wheel puts in" in further and not set(begun) & set(further)
    assert "Before the wheel turns" not in further  # a caution is no place to look for
