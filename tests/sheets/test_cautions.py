"""What harms people is told in every planner, small or whole, and before one builds one."""

import re
from pathlib import Path

import pytest

from workbookgen.filled.planner import described
from workbookgen.language.views import Prose
from workbookgen.settings import Settings

README = Path(__file__).parents[2] / "README.md"


def cautions(size: str) -> str:
    planner = described(Settings(size=size))
    readings = [section for sheet in planner.sheets for section in sheet.sections if isinstance(section, Prose) and section.is_caution]
    return "\n".join(sentence for section in readings for sentence in section.sentences)


TOLD = {"whole": cautions("whole"), "small": cautions("small"), "README": README.read_text(encoding="utf-8").partition("## Take care")[2].partition("##")[0]}


@pytest.mark.parametrize("told", TOLD.values(), ids=TOLD)
@pytest.mark.parametrize(
    "danger",
    [
        r"60 °C \(140 °F\)",
        r"[Rr]aw fleece.*dust mask",
        # Q fever stays in people with a damaged heart valve and grows deadly there (a clinic's page on it, read).
        r"[Rr]aw fleece.*pregnant.*defenses are weak.*heart valve.*doctor|[Rr]aw fleece.*doctor.*pregnant.*defenses are weak.*heart valve",
        r"(?i)detergent.*mothproofing.*dye",
        r"(?i)do not mix products|mix products",
        r"(?i)dye.*apart from food",
        r"(?i)drains.*local rules",
        r"(?i)hair, sleeves.*fingers",
        r"(?i)combs, hackles and pickers are sharp",
        r"(?i)wrist.*shoulder",
        r"(?i)local codes, product labels",
    ],
)
def test_it_is_told_what_harms(told, danger):
    assert any(re.search(danger, line) for line in told.splitlines())
