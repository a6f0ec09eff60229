"""A planner that is filled in entry by entry, as a person does it in LibreOffice, shows what the library says."""

from random import Random

import pytest

from long_run import SEED
from workbookgen.build import workbook
from workbookgen.language.entries import starting_entries

from .conftest import Planner

pytestmark = pytest.mark.programs
LOOKS = 4  # how often all results are looked at on the way


def test_all_entries_of_the_demo_typed_in_any_order(english, filled, told, tmp_path):
    """Six hundred entries all over the sheets; what a line lacks meanwhile, or asks, is compared too."""
    file, new = tmp_path / "planner.xlsx", starting_entries(filled.planner)
    file.write_bytes(workbook(filled))
    typed = [
        (key, row, value)
        for key, column in told.items()
        for row, value in enumerate(column)
        if value is not None and value != new[key][row]
    ]
    Random(SEED).shuffle(typed)
    planner = Planner(english, filled, file, in_sight=True)
    for number, (key, row, value) in enumerate(typed, 1):
        planner.type(key, row, value if isinstance(value, str) else repr(value))
        if number % (len(typed) // LOOKS) == 0:
            assert planner.faults() == [], f"after {number} entries"
    assert planner.entries() == told
    assert planner.faults() == []
    planner.close()
