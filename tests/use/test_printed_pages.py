"""Pages of paper, counted in the file that LibreOffice prints: of a small planner; in a long run also of a whole one
and of the demo.

`tests/book/test_paper.py` counts those at each push, by the feet of their pages.
"""

import re
import sys
from pathlib import Path

import pytest

from long_run import LONG
from workbookgen.build import build
from workbookgen.engines.libreoffice import convert
from workbookgen.settings import Settings

pytestmark = pytest.mark.programs
in_a_long_run = pytest.mark.skipif(not LONG, reason="in a long run")
ROOT = Path(__file__).resolve().parents[2]
MOST_OF_A_BLANK_ONE, MOST_OF_THE_DEMO, MOST_OF_A_SMALL_ONE = 30, 40, 16


def printed(planner: Path, folder: Path) -> bytes:
    """The pages as LibreOffice prints them into a PDF."""
    target = folder / f"{planner.stem}.pdf"
    convert(planner, target, recalculate=False)
    return target.read_bytes()


def pages(content: bytes) -> int:
    """The number of pages, as the root of the tree of pages has it (ISO 32000-1, 7.7.3, from memory)."""
    return max(int(count) for count in re.findall(rb"/Type\s*/Pages\b.*?/Count (\d+)", content, re.DOTALL))


@pytest.mark.parametrize(
    ("settings", "most"),
    [
        pytest.param(Settings(), MOST_OF_A_BLANK_ONE, id="letter", marks=in_a_long_run),
        pytest.param(Settings(units="metric", paper="a4"), MOST_OF_A_BLANK_ONE, id="a4", marks=in_a_long_run),
        pytest.param(Settings(size="small"), MOST_OF_A_SMALL_ONE, id="small"),
    ],
)
def test_a_blank_planner(settings, most, tmp_path):
    planner = tmp_path / "planner.xlsx"
    sheets = len(build(settings, planner).planner.sheets)
    assert sheets <= pages(printed(planner, tmp_path)) <= most


@in_a_long_run
def test_the_filled_demo(tmp_path, monkeypatch):
    monkeypatch.syspath_prepend(str(ROOT / "demo"))
    sys.modules.pop("make", None)
    import make

    planner = tmp_path / "demo.xlsx"
    make.make(planner)
    assert 16 <= pages(printed(planner, tmp_path)) <= MOST_OF_THE_DEMO
