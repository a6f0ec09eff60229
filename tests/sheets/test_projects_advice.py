"""Who gets what the sheet Projects says to get, and types it in, is as sure as it was said."""

import pytest

from entries import entries_with
from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import described
from workbookgen.settings import Settings

US = described(Settings(units="us"))
SINGLES = [{"design": "Duo", "number": grist, "system": "yards per pound", "feed": 1.04, "lot": lot, "place": float(place)} for place, (grist, lot) in enumerate(
    ((2000.0, "Moss"), (3000.0, "River"), (2400.0, "Slate")), 1)]
LOTS = (("Moss", 10.0), ("River", 6.5), ("Slate", 8.2))


def told(strands: int, further=(0.0, 0.0, 0.0)) -> tuple[float, list[float]]:
    """The chance that it is enough, and what to get of each strand, in ounces."""
    records = {
        "fiber": [{"name": name, "kind": "Wool top or roving", "state": "prepared fiber", "weight": weight + more} for (name, weight), more in zip(LOTS, further, strict=True)],
        "designs": [{"name": "Duo", "shrinkage": 0.05}],
        "components": SINGLES[:strands],
        "projects": [{"name": "Shawl", "wanted": 1050.0 if strands == 2 else 1020.0, "design": "Duo"}],
    }
    values = expected_values(US, entries_with(US, records))
    return values["projects_chance"][0], [values[f"projects_part_{part}_buy"][0] for part in range(1, strands + 1)]


@pytest.mark.parametrize("strands", [2, 3])
def test_more_of_each_strand_makes_it_as_sure_as_asked(strands):
    """Brought to one length, either strand may run out first: of two, the yarn is 0.56 of their doubt shorter than
    each, not as long."""
    chance, more = told(strands)
    assert chance < 0.6 and min(more) > 0.4
    chance, _ = told(strands, (*more, 0.0)[:3])
    assert chance == pytest.approx(0.9, abs=0.012)
