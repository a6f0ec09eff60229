"""Whether everybody can use it: without color vision, without color, without a mouse, without seeing.

Color vision is simulated with the matrices of Machado, Oliveira and Fernandes 2009 for full
severity, applied to linear light (from memory). Contrasts are those of WCAG 2.
"""

import re
import zipfile
from itertools import combinations

import openpyxl
import pytest

from workbookgen.book import charts, look
from workbookgen.language.fields import Input
from workbookgen.language.parts import Card, Chart, Log, Text

from .test_looks import STYLES, WHITE, contrast

SIGHTS = {
    "protanopia": ((0.152286, 1.052583, -0.204868), (0.114503, 0.786281, 0.099216), (-0.003882, -0.048116, 1.051998)),
    "deuteranopia": ((0.367322, 0.860646, -0.227968), (0.280085, 0.672501, 0.047413), (-0.011820, 0.042940, 0.968881)),
    "tritanopia": ((1.255528, -0.076749, -0.178779), (-0.078411, 0.930809, 0.147602), (0.004733, 0.691367, 0.303900)),
    "grayscale": ((0.2126, 0.7152, 0.0722),) * 3,
}


def seen(color: str, sight: str) -> str:
    """What a color looks like to such an eye."""
    linear = [_linear(int(color[index : index + 2], 16) / 255) for index in (1, 3, 5)]
    mixed = [sum(share * light for share, light in zip(row, linear, strict=True)) for row in SIGHTS[sight]]
    return "#" + "".join(f"{round(255 * _shown(min(1, max(0, light)))):02X}" for light in mixed)


def _linear(share: float) -> float:
    return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4


def _shown(light: float) -> float:
    return 12.92 * light if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055


@pytest.mark.parametrize("sight", SIGHTS)
def test_the_matrices_leave_white_and_gray_as_they_are(sight):
    assert all(sum(row) == pytest.approx(1, abs=1e-5) for row in SIGHTS[sight])
    assert seen(WHITE, sight) == WHITE and seen("#808080", sight) == "#808080"


def test_the_matrices_do_something():
    # Red and green of like lightness are told apart by the usual eye alone.
    red, green = "#C00000", "#007A00"
    assert abs(int(seen(red, "deuteranopia")[1:3], 16) - int(seen(green, "deuteranopia")[1:3], 16)) < 0xC0 - 0x20


@pytest.mark.parametrize("sight", SIGHTS)
@pytest.mark.parametrize("name", STYLES)
def test_text_can_be_read_by_every_eye(name, sight):
    style = STYLES[name]
    assert contrast(seen(style["font_color"], sight), seen(style.get("bg_color", WHITE), sight)) >= 4.5


@pytest.mark.parametrize("sight", SIGHTS)
def test_a_box_and_a_column_have_an_edge_for_every_eye(sight):
    # WCAG 2.2, 1.4.11: 3 to 1 for what is needed to understand a graphic or find a control (from memory).
    for edge in (look.INPUT_BOX, look.ACCENT):
        assert contrast(seen(edge, sight), seen(WHITE, sight)) >= 3


@pytest.mark.parametrize("sight", SIGHTS)
def test_columns_side_by_side_differ_in_lightness_for_every_eye(sight):
    for one, other in combinations(charts.COLUMN_FILLS, 2):
        assert contrast(seen(one, sight), seen(other, sight)) >= 3


@pytest.mark.parametrize("sight", SIGHTS)
def test_marks_are_seen_on_the_columns_and_differ_in_shape(sight, layout):
    for shape, color in charts.MARK_COLORS.items():
        assert all(contrast(seen(color, sight), seen(fill, sight)) >= 3 for fill in (*charts.UNDER_MARKS, WHITE)), shape
    for _, chart in of_kind(layout, Chart):
        shapes = [series.marks for series in chart.series if series.marks]
        assert len(shapes) == len(set(shapes)) and set(shapes) <= charts.MARK_COLORS.keys()
        assert len(chart.series) - len(shapes) <= len(charts.UNDER_MARKS if shapes else charts.COLUMN_FILLS)


def of_kind(layout, kind):
    return [(sheet, part) for sheet in layout.planner.sheets for part in sheet.parts if isinstance(part, kind)]


def test_every_chart_says_what_it_shows(blank, layout):
    with zipfile.ZipFile(blank) as package:
        drawings = "".join(package.read(name).decode() for name in package.namelist() if re.fullmatch(r"xl/drawings/drawing\d+\.xml", name))
    told = [part.about for _, part in of_kind(layout, Chart)]
    assert re.findall(r'descr="([^"]+)"', drawings) == told and len(told) == drawings.count("<xdr:graphicFrame ")


@pytest.fixture(scope="module")
def book(blank):
    return openpyxl.load_workbook(blank)


def test_no_cells_are_merged(book):
    assert [sheet.title for sheet in book if sheet.merged_cells.ranges] == []


def test_a_sheet_reads_from_its_title_down(book, layout):
    for sheet in layout.planner.sheets:
        page = book[sheet.name]
        assert (page["A1"].value, page["A2"].value) == (sheet.title, sheet.about)
        for placed in layout.parts[sheet.name]:
            heading = placed.part.heading if isinstance(placed.part, Text) else placed.part.title
            if heading and not isinstance(placed.part, Chart):
                assert page.cell(placed.row, 1).value == heading


def test_the_tab_key_goes_where_the_work_goes(layout):
    """Programs go through the unlocked cells row by row, and a card's are below each other."""
    for sheet, part in [*of_kind(layout, Card), *of_kind(layout, Log)]:
        inputs = [each for each in layout.of(part) if isinstance(each.field, Input)]
        assert [each.field.key for each in inputs] == [each.key for each in part.inputs]
        places = [(each.row, each.column) for each in inputs]
        assert places == sorted(places), sheet.name


def test_the_headings_of_a_log_stay_in_sight(book, layout):
    for sheet, log in of_kind(layout, Log):
        first = min(each.row for each in layout.of(log))
        assert book[sheet.name].freeze_panes == f"B{first}", sheet.name


def test_sheets_stand_in_the_order_of_the_work(book):
    names = book.sheetnames
    assert names[0] == "Start"
    for one, other in (
        ("Reels", "Skeins"), ("Fiber", "Samples"), ("Samples", "Skeins"), ("Skeins", "Labels"), ("Knitting", "Projects"),
        ("Weaving", "Projects"), ("Projects", "Time"), ("Time", "Cost"), ("Cost", "Methods"), ("Methods", "Lists"),
    ):
        assert names.index(one) < names.index(other)
