"""A sample whose ply came out longer than one of its singles: they grew as plying took their twist.

By hand: 20 yd of each single gave 20.4 yd of ply, a take-up of -2%. A vest of 950 yd, no reserve, is 1,000 yd before
washing; of two strands that is 2,000 / 1.02 = 1,960.78 yd of single, 19.6078 hours at 100 yd an hour, and 980.39 yd
of each strand. Plying takes 5 hours at 200, washing 2.5 at 400: 27.1078 hours.
"""

import pytest

from entries import entries_with, shown_in
from planners import rows_of
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

PLANNER = described(Settings(fibers="", rows=rows_of(4)))
SAMPLE = {"name": "Swatch", "singles_length": 20.0, "plied_length": 20.4}
VEST = {"name": "Vest", "wanted": 950.0, "margin": 0.0, "sample": "Swatch", "grist": 1000.0}
CARDS = {"pace_spinning": (100.0,), "pace_plying": (200.0,), "pace_sample": ("Swatch",), "bobbin_weighed": (8.0,), "bobbin_project": ("Vest",)}
TOP = {"name": "Top", "state": "prepared fiber", "weight": 16.0, "grist": 1000.0, "own_spinning": 0.05}  # 950 yd washed, 1,000 before


def told(*keys, sample=SAMPLE, **cards):
    entries = entries_with(PLANNER, {"samples": [sample], "projects": [VEST], "fiber": [TOP]}) | CARDS | cards
    return shown_in(PLANNER, entries, keys)


def test_hours_and_bobbins_are_told():
    singles, spinning, whole = told("times_singles", "times_spinning", "times_whole")
    assert singles * 1.02 == pytest.approx(2000) and spinning == pytest.approx(19.607843) and whole == pytest.approx(27.107843)
    # 1,000 yd/lb in two strands, before 5% are lost in washing: 1000 · 2 / (0.95 · 1.02) yd/lb. A bobbin holds half a
    # pound.
    strand, grist, on_one, bobbins = told("bobbin_strand", "bobbin_singles", "bobbin_length", "bobbin_bobbins")
    assert strand == pytest.approx(980.392157) and grist == pytest.approx(2063.983488)
    assert on_one == pytest.approx(1031.991744) and bobbins == 2


def test_so_are_the_weeks_of_the_stock():
    straight, grown = (told("pace_stock_singles", sample=SAMPLE | {"plied_length": plied})[0] for plied in (20.0, 20.4))
    assert straight == pytest.approx(2000) and grown == pytest.approx(1960.784314)


def test_a_ply_far_longer_than_its_singles_is_asked_about():
    assert told("samples_message", sample=SAMPLE | {"plied_length": 40.0})[0].startswith("Is it right? Take-up: usually")
