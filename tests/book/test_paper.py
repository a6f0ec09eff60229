"""What a whole planner takes on paper: real pages, drawn by LibreOffice, counted and looked at."""

import re
import subprocess
from collections import Counter

import numpy as np
import pytest
from PIL import Image

from demo_planner import demo_entries, demo_settings
from planners import opened
from workbookgen.engines.libreoffice import convert
from workbookgen.settings import load, templates

FOOTER = re.compile(r"(\S+)\s+(\d+) / (\d+)\s*$")
DOTS = 60  # to the inch
LONG = {"Need", "Fleece", "Twist", "Print", "Reference"}  # of more than one page


@pytest.fixture(scope="module", params=["us", "metric", "demo"])
def paper(request, built, tmp_path_factory):
    """What is printed, the workbook, and of each page its text and its picture."""
    folder = tmp_path_factory.mktemp(request.param)
    if request.param == "demo":
        path = built(demo_settings(), demo_entries())
    else:
        path = built(load(templates() / f"{request.param}.toml"))
    convert(path, folder / "planner.pdf", recalculate=False)
    text = subprocess.run(
        ["pdftotext", "-layout", folder / "planner.pdf", "-"], capture_output=True, text=True, check=True
    ).stdout
    subprocess.run(["pdftoppm", "-r", str(DOTS), "-gray", folder / "planner.pdf", folder / "page"], check=True)
    return (
        request.param,
        path,
        text.split("\f")[:-1],
        [np.asarray(Image.open(each)) for each in sorted(folder.glob("page*.pgm"))],
    )


def sheet_of(page: str) -> str:
    """The sheet of a page, from its foot. Papers in their true size have none."""
    found = FOOTER.search(page.strip())
    return found[1] if found else "Print"


def test_a_planner_takes_few_pages(paper):
    name, _, pages, _ = paper
    assert len(pages) <= (40 if name == "demo" else 30)


def test_a_sheet_is_one_page_unless_it_is_long(paper):
    _, path, pages, _ = paper
    counted = Counter(map(sheet_of, pages))
    assert set(counted) == set(opened(path).sheetnames)
    assert {sheet for sheet, number in counted.items() if number > 1} <= LONG
    assert counted["Print"] == 3, "two pages of labels, and the paper for the wheel"


def test_no_page_is_empty_or_reaches_to_its_edge(paper):
    _, _, pages, pictures = paper
    assert len(pages) == len(pictures)
    for page, picture in zip(pages, pictures, strict=True):
        edge = round(0.3 * DOTS)
        assert (picture < 200).any(), page
        inside = np.zeros_like(picture, dtype=bool)
        inside[edge:-edge, edge:-edge] = True
        assert (picture[~inside] > 200).all(), page


def test_what_is_for_the_screen_is_not_printed(paper):
    _, path, pages, _ = paper
    whole = "\n".join(pages)
    assert "Words and signs" in whole and "Conventions" in whole
    assert "What this planner was made with" not in whole and "Published examples" not in whole


def test_a_large_answer_is_not_cut_by_the_end_of_a_page(paper):
    """A band that fits on a page is whole on one: each of its headings has its first line below it."""
    _, path, pages, _ = paper
    assert sum("Worked out" in page for page in pages) > 5
    for page in pages:
        lines = [line for line in page.splitlines() if line.strip()]
        assert not any("Worked out" in line for line in lines[-2:-1]), page


def test_footers_hold_no_font_codes(paper):
    _, path, _, _ = paper
    for sheet in opened(path).worksheets:
        for part in (sheet.oddFooter.left, sheet.oddFooter.center, sheet.oddFooter.right):
            assert part.font is None and part.size is None and part.color is None, sheet.title


def test_a_log_prints_what_is_seen_of_it(paper):
    name, path, pages, _ = paper
    if name != "demo":
        return
    [skeins] = [page for page in pages if sheet_of(page) == "Skeins"]
    assert "Clover 1" in skeins and "You type" in skeins
    assert "Part wrap" not in skeins and "tex" not in skeins.lower().split(), "it is folded away"
