"""Tickets as they come out of a printer: real pages, drawn by LibreOffice, measured in millimeters.

Sizes of paper: ISO 216 for A4; ANSI/ASME Y14.1 for a letter (both from memory).
"""

import subprocess
from dataclasses import replace

import numpy as np
import pytest
from PIL import Image

from chapters import all_but
from entries import entries_with
from planners import rows_of
from workbookgen.build import layout_of, workbook
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.expected import expected_values
from workbookgen.engines.libreoffice import convert
from workbookgen.errors import DescriptionError, Disagreement
from workbookgen.language.domains import Note, Number
from workbookgen.language.fields import Group, Input
from workbookgen.language.parts import Log
from workbookgen.language.repeated import repeated
from workbookgen.settings import Reel, Settings

PAGE = {"letter": (215.9, 279.4), "a4": (210, 297)}  # mm
FEW = rows_of(4, skeins=20, labels=10)
DOTS = 150  # to the inch
LONG = "Skein of a long name, forty letters long"
WORDS = "Washed by hand in cool water and laid flat to dry. " * 3


def settings(paper: str) -> Settings:
    return Settings(
        paper=paper,
        rows=FEW,
        fibers="",
        reels=(Reel(name="Clock reel", loop="72 in"),),
        leave_out=all_but("Labels", "Yarn", "Components", "Twist", "Counts", "Figures"),
    )


def entries_of(planner):
    skeins = [
        {"name": f"Ticket {number}", "reel": "Clock reel", "wraps": 100.0 + number, "gross": 4.0, "lot": "Gray"}
        for number in range(1, 11)
    ]
    skeins[3] |= {"name": LONG, "design": "Both"}
    del skeins[3]["lot"]
    labels = [{"skein": each["name"], "words": WORDS.strip()} for each in skeins if each["name"] != "Ticket 6"]
    strands = [
        {"design": "Both", "place": float(place), "lot": lot} for place, lot in enumerate(("Gray", "Thread"), start=1)
    ]
    logs = {
        "skeins": skeins,
        "fiber": [{"name": "Gray"}, {"name": "Thread"}],
        "designs": [{"name": "Both"}],
        "components": strands,
        "labels": [*labels[:5], {}, *labels[5:]],
    }
    return entries_with(planner, logs)


@pytest.fixture(scope="module", params=["letter", "a4"])
def printed(request, tmp_path_factory):
    """The paper, the workbook, and the texts and pictures of the pages with tickets and the form."""
    folder = tmp_path_factory.mktemp(request.param)
    layout = layout_of(settings(request.param))
    path = folder / "planner.xlsx"
    path.write_bytes(workbook(layout, entries_of(layout.planner)))
    convert(path, folder / "planner.pdf", recalculate=False)
    pages = subprocess.run(
        ["pdftotext", "-layout", folder / "planner.pdf", "-"], capture_output=True, text=True, check=True
    ).stdout.split("\f")
    first = next(number for number, page in enumerate(pages, start=1) if "wraps per inch" in page and "yd/lb (" in page)
    subprocess.run(
        [
            "pdftoppm",
            "-r",
            str(DOTS),
            "-gray",
            "-f",
            str(first),
            "-l",
            str(first + 2),
            folder / "planner.pdf",
            folder / "page",
        ],
        check=True,
    )
    pictures = [np.asarray(Image.open(each)) for each in sorted(folder.glob("page*.pgm"))]
    return request.param, layout, path, pages[first - 1 : first + 2], pictures


def ink(picture) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of all that is on a page, in mm."""
    rows, columns = np.nonzero(picture < 160)
    return tuple(edge * 25.4 / DOTS for edge in (columns.min(), rows.min(), columns.max() + 1, rows.max() + 1))


def test_eight_tickets_are_on_the_first_page_and_two_on_the_next(printed):
    _, _, _, pages, _ = printed
    named = [
        [f"Ticket {number}" for number in range(1, 11) if f"Ticket {number} " in page.replace("\n", " ")]
        for page in pages
    ]
    assert named == [
        ["Ticket 1", "Ticket 2", "Ticket 3", "Ticket 5", "Ticket 7", "Ticket 8"],
        ["Ticket 9", "Ticket 10"],
        [],
    ]
    assert LONG in pages[0] and "Gray and Thread" in pages[0]
    assert pages[0].count("wraps per inch") == pages[0].count("yd/lb") == 7, "an empty line leaves an empty ticket"
    assert "By the wheel" in pages[2] and "By the wheel" not in pages[1]


def test_a_ticket_has_the_size_that_is_said_beside_it(printed):
    paper, layout, _, _, pictures = printed
    across, down = PAGE[paper]
    for picture in pictures[:2]:
        left, top, right, bottom = ink(picture)
        assert 84 < (right - left) / 2 < 92
        assert (bottom - top) / 4 == pytest.approx(61, abs=0.6)
        assert left + right == pytest.approx(across, abs=1), "in the middle of the page"
        assert min(left, across - right) > 8 and min(top, down - bottom) > 8, "printers leave an edge free"
    assert ink(pictures[0]) == pytest.approx(ink(pictures[1]), abs=0.3)


def test_nothing_that_is_on_a_ticket_reaches_into_the_next(printed):
    # Along both sides of the cut between two tickets, nothing but the marks: they are 11 pixels wide, 21 high.
    _, _, _, _, pictures = printed
    left, top, right, bottom = (round(edge / 25.4 * DOTS) for edge in ink(pictures[0]))
    middle, high = (left + right) // 2, (bottom - top) / 4
    for ticket in range(4):
        inside = slice(round(top + (ticket + 0.12) * high), round(top + (ticket + 0.88) * high))
        assert (pictures[0][inside, middle - 8 : middle + 8] > 200).all()
        assert (pictures[0][inside, middle + 30 : right - 30] < 160).any() == (ticket != 2), "the sixth is empty"
    for cut in range(5):
        line = slice(max(0, round(top + cut * high) - 6), round(top + cut * high) + 7)
        assert (pictures[0][line, left + 30 : middle - 30] > 200).all()


def test_a_ticket_stays_white(printed):
    _, _, _, _, pictures = printed
    shades = np.unique(pictures[0][pictures[0] > 215])
    assert shades.max() == 255 and (pictures[0] == 255).mean() > 0.9


def test_the_own_words_are_there_whole(printed):
    _, _, _, pages, _ = printed
    words = " ".join(pages[1].split())
    assert words.count("Washed by hand in") >= 2 and len([each for each in pages[1].split() if each == "Washed"]) == 6


def test_the_form_has_its_lines_on_one_page(printed):
    paper, _, _, _, pictures = printed
    across, down = PAGE[paper]
    picture = pictures[2]
    left, top, right, bottom = ink(picture)
    assert left > 8 and across - right > 8 and down - bottom > 8
    dark = (picture < 220).mean(axis=1) > 0.6 * (right - left) / across
    lines = np.flatnonzero(dark[1:] & ~dark[:-1])
    assert len(lines) == 27, "the rule over the heads, and 26 to write on"
    apart = np.diff(lines)[1:] * 25.4 / DOTS
    assert apart == pytest.approx(33 * 25.4 / 96, abs=0.4)


def test_each_cell_of_a_ticket_is_checked(printed):
    _, layout, path, _, _ = printed
    report = check(FileToCheck(path, layout), scenarios=3)
    assert [each for each in report.findings if each.cell.startswith("Print!")] == []
    shown = expected_values(layout.planner, entries_of(layout.planner))
    assert shown["labels_called_on_4"] == (LONG,) and shown["labels_made_of_on_4"] == ("Gray and Thread",)
    assert shown["labels_called_on_6"] == (None,) and shown["labels_own_words_on_10"] == (WORDS.strip(),)


def test_a_ticket_that_shows_another_record_is_found(printed, tmp_path):
    _, layout, _, _, _ = printed
    placed = layout.placements["labels_called_on_2"]
    wrong = replace(placed, formulas=layout.placements["labels_called_on_3"].formulas)
    other = replace(layout, placements=layout.placements | {placed.key: wrong})
    with pytest.raises(Disagreement, match="Ticket 2"):
        workbook(other, entries_of(layout.planner))


def test_only_results_that_are_texts_can_be_repeated():
    fields = (Input("words", "Words", Note()), Input("number", "Number", Number(least=0, most=9)))
    said = repeated("said", "Said", "words")
    assert Log("notes", "", (Group("", (*fields, said)),), rows=2, repeated=("said",)).repeats[1].key == "said_on_2"
    for key in ("words", "number", "nothing"):
        with pytest.raises(DescriptionError, match=f"field {key}: it is repeated"):
            _ = Log("notes", "", (Group("", (*fields, said)),), rows=2, repeated=(key,)).repeats
