"""What is unlike what people usually have is asked about: the result stays, and the mark is a question's."""

import pytest

from workbookgen.checking.expected import expected_values
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner

US = planner(Settings(units="us"))
METRIC = planner(Settings(units="metric"))


def filled(described, **records):
    entries = starting_entries(described)
    for block, lines in records.items():
        entries = with_records(described, entries, block, lines)
    return expected_values(described, entries)


def skein(described, weight):
    loop = 72.0 if described is US else 180.0
    return filled(
        described, reels=[{"name": "Porch", "rated": loop}], skeins=[{"name": "One", "reel": "Porch", "wraps": 100.0, "gross": weight}],
    )


@pytest.mark.parametrize(
    ("described", "weight", "asked"),
    [(US, 58.0, "more than a kilogram"), (US, 2.05, None), (METRIC, 58.0, None), (METRIC, 2.0, "less than 3 g"), (US, 0.05, "less than 3 g")],
)
def test_a_weight_in_another_unit_is_asked_about_and_reckoned_with(described, weight, asked):
    values = skein(described, weight)
    message, mark = values["skeins_message"][0], values["skeins_mark"][0]
    assert values["skeins_net"][0] == pytest.approx(weight), "the result stays"
    assert (asked in message and message.startswith("Is it right?") and mark == "?") if asked else (message is None and mark is None)


@pytest.mark.parametrize(("number", "asked"), [(46358.0, True), (46358.5, False), (1200.0, False), (45291.0, False)])
def test_a_count_that_became_a_date(number, asked):
    # 12/2 typed in 2026 becomes December 2 of that year, day 46,358 as programs count.
    entries = starting_entries(US) | {"counts_number": (number,)}
    values = expected_values(US, entries)
    assert values["counts_grist"][0] == pytest.approx(number)
    assert ("date" in (values["counts_message"][0] or "")) == asked


@pytest.mark.parametrize(("given", "message"), [
    ({"cord": 300.0}, "Still to fill in: the cord's length and the turns it makes go together."),
    ({"height": 15.0, "arm_a": 14.0}, "Still to fill in: height and both arms go together."),
    ({"height": 15.0, "arm_a": 14.0, "arm_b": 14.0}, None),
    ({"rated": 72.0}, None),
])
def test_a_reel_says_which_measure_it_lacks(given, message):
    assert filled(US, reels=[{"name": "Porch", **given}])["reels_message"][0] == message
