"""Whether everybody can use it: without color vision, without color, without a mouse, without seeing.

Color vision is simulated with the matrices of Machado, Oliveira and Fernandes 2009 for full
severity, applied to linear light (from memory). Contrasts are those of WCAG 2.
"""

import re
import zipfile
from html import unescape
from itertools import combinations, pairwise

import pytest

from workbookgen import colors
from workbookgen.book import charts
from workbookgen.book.log_plan import FIRST_RECORD, INK_LINE
from workbookgen.language.views import (
    Answers,
    Chart,
    Entries,
    Examples,
    Facts,
    Listing,
    Picture,
    Prose,
    Sentences,
    SheetKind,
)

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
    for edge in (colors.EDGE, colors.ACCENT):
        assert contrast(seen(edge, sight), seen(WHITE, sight)) >= 3


def fills(chart: Chart) -> dict[str, str]:
    """Look -> color of what a chart fills, whose edges are drawn too where they are pale."""
    return {series.look: charts.FILLS[series.look] for series in chart.series if series.look in charts.FILLS}


def of_kind(layout, *kinds):
    sections = [
        each
        for sheet in layout.planner.sheets
        for section in sheet.sections
        for each in (section, getattr(section, "chart", None))
    ]
    return [section for section in sections if isinstance(section, kinds)]


@pytest.mark.parametrize("sight", SIGHTS)
def test_columns_of_a_chart_are_told_apart_by_every_eye(sight, layout):
    """Each is seen on white and beside the others: by its lightness, three to one, or by an edge that dark."""
    seen_pairs = 0
    for chart in of_kind(layout, Chart):
        colors_ = fills(chart)
        assert len(colors_) == len([series for series in chart.series if series.look in charts.FILLS]), (
            "none is used twice"
        )
        for color in colors_.values():
            assert color == colors.ACCENT or contrast(seen(colors.QUIET, sight), seen(color, sight)) >= 3
            assert (
                contrast(seen(colors.ACCENT if color == colors.ACCENT else colors.QUIET, sight), seen(WHITE, sight))
                >= 3
            )
        for one, other in combinations(colors_.values(), 2):
            assert contrast(seen(one, sight), seen(other, sight)) >= (3 if colors.ACCENT in (one, other) else 1.4)
            seen_pairs += 1
    assert seen_pairs > 1


def test_pale_columns_are_drawn_with_an_edge(blank):
    with zipfile.ZipFile(blank) as package:
        drawn = "".join(
            package.read(name).decode() for name in package.namelist() if name.startswith("xl/charts/chart")
        )
    pale = re.findall(
        r'<c:spPr><a:solidFill><a:srgbClr val="(A9BACF|CFC9B8|E3E0D7)"/></a:solidFill><a:ln[^>]*><a:solidFill><a:srgbClr val="([0-9A-F]{6})"/>',
        drawn,
    )
    assert pale and {edge for _, edge in pale} == {colors.QUIET.removeprefix("#")}


@pytest.mark.parametrize("sight", SIGHTS)
def test_points_and_lines_are_seen_on_the_band(sight):
    for color in (colors.ACCENT, colors.QUIET):
        assert all(contrast(seen(color, sight), seen(ground, sight)) >= 3 for ground in (colors.BAND, WHITE))


def test_the_limits_of_a_control_chart_are_dashed_and_its_mean_is_not(blank):
    """They differ in more than their place; the mean is the axis."""
    with zipfile.ZipFile(blank) as package:
        drawn = [package.read(name).decode() for name in package.namelist() if name.startswith("xl/charts/chart")]
    [control] = [each for each in drawn if "<c:scatterChart>" in each]
    limits = [each for each in re.findall(r"<c:ser>.*?</c:ser>", control) if re.search(r"<c:tx>.*limit.*</c:tx>", each)]
    assert len(limits) == 2 and all('<a:prstDash val="dash"/>' in each for each in limits)
    mean = re.search(r'<c:valAx>(?:(?!</c:valAx>).)*?<c:axPos val="b"/>.*?<c:spPr>(.*?)</c:spPr>', control)[1]
    assert f'<a:srgbClr val="{colors.QUIET.removeprefix("#")}"/>' in mean and "prstDash" not in mean


def test_every_picture_says_what_it_shows(blank, layout):
    with zipfile.ZipFile(blank) as package:
        drawings = "".join(
            package.read(name).decode()
            for name in package.namelist()
            if re.fullmatch(r"xl/drawings/drawing\d+\.xml", name)
        )
    told = [each.about for each in of_kind(layout, Chart, Picture)]
    assert sorted(map(unescape, re.findall(r'descr="([^"]+)"', drawings))) == sorted(told) and told
    assert len(told) == drawings.count("<xdr:graphicFrame ") + drawings.count("<xdr:pic>")


def test_a_sheet_reads_from_its_title_down(book, layout):
    headed = 0
    for sheet in layout.planner.sheets:
        page, plan = book[sheet.name], layout.plans[sheet.name]
        assert page.cell(2 if sheet.log_view else 3, 2).value == sheet.title, sheet.name
        said = [cell.value for row in page.iter_rows(1, 4) for cell in row]
        assert sheet.about in said, sheet.name
        top = {id(placed.section): placed.row for placed in plan.placed}
        bands = [[(top[id(section)], section.across) for section in band.sections] for band in sheet.bands]
        assert sum(map(len, bands)) == len(plan.placed)
        for above, below in pairwise(bands):
            assert max(row for row, _ in above) < min(row for row, _ in below), (
                "bands stand on the page in the order in which they are written"
            )
        for band in bands:
            for (row, across), (next_row, next_across) in pairwise(band):
                beside = across[1] < next_across[0]
                assert next_row <= row if beside else next_row > row, (
                    "and so do the sections of each, beside or below the one before"
                )
        for placed in plan.placed:
            section = placed.section
            title = section.title or (layout.planner.tables[section.table].title if isinstance(section, Facts) else "")
            if title and isinstance(
                section, Answers | Entries | Examples | Facts | Listing | Prose | Sentences | Chart
            ):
                assert title in [cell.value for cell in page[placed.row]], (sheet.name, title)
                headed += 1
    assert headed > 40


def test_one_goes_down_from_entry_to_entry(layout):
    """The Enter key goes down, and what belongs together is typed from the top down, in one column."""
    for sheet in layout.planner.sheets:
        for section in (each for each in sheet.sections if isinstance(each, Entries)):
            places = [(layout.placements[key].row, layout.placements[key].column) for key in section.fields]
            assert [row for row, _ in places] == list(range(places[0][0], places[0][0] + len(places))), sheet.name
            assert len({column for _, column in places}) == 1, sheet.name


def test_the_headings_of_a_log_stay_in_sight(book, layout):
    for sheet in layout.planner.sheets:
        of_a_page = "A3" if sheet.name == "Reference" else "A2"  # whose columns are wide: two lines of links
        assert book[sheet.name].freeze_panes == (f"C{FIRST_RECORD}" if sheet.log_view else of_a_page), sheet.name


def test_the_low_line_above_the_records_refuses_what_nobody_would_see(book, layout):
    """The arrow keys lead there; of a sheet 4 pixels are seen of it."""
    for sheet in (each for each in layout.planner.sheets if each.log_view):
        low, rules = book[sheet.name][INK_LINE], book[sheet.name].data_validations.dataValidation
        seen = [cell for cell in low if cell.column <= layout.plans[sheet.name].last_column]
        refusing = [[rule for rule in rules if cell.coordinate in rule.cells] for cell in seen]
        assert {(rule.formula1, rule.errorStyle or "stop", rule.allow_blank) for [rule] in refusing} == {
            ("1=0", "stop", False)
        }


def test_the_links_of_a_page_are_in_sight_on_a_small_laptop(book, layout):
    """On the sheet Reference they stood above its wide columns, most of them off a screen of 1366 pixels."""
    for sheet in layout.planner.sheets:
        if sheet.log_view or sheet.name == "Print":  # that has the columns of its tickets
            continue
        widths = layout.plans[sheet.name].widths
        leads = [cell for row in book[sheet.name].iter_rows(min_row=1, max_row=4) for cell in row if cell.hyperlink]
        assert {cell.value for cell in leads} >= {"Desk", "Measure", "Skeins", "Projects"} - {sheet.name}, sheet.name
        starts = {cell.value: sum(widths[column] for column in range(1, cell.column)) for cell in leads}
        assert 1.12 * max(starts.values()) <= 1300, starts  # as LibreOffice draws them
    reference = {
        cell.value for row in book["Reference"].iter_rows(min_row=4, max_row=4) for cell in row if cell.hyperlink
    }
    assert {"Words and signs", "Proofs", "Calculations"} <= reference, "and so are those to its parts"


def test_sheets_stand_in_the_order_of_the_work(book, layout):
    names = book.sheetnames
    assert names[0] == "Desk" and names[-1] == "Reference"
    for one, other in (
        ("Skeins", "Print"),
        ("Fiber", "Samples"),
        ("Samples", "Projects"),
        ("Projects", "Need"),
        ("Projects", "Time"),
        ("Twist", "Time"),
        ("Print", "Reference"),
    ):
        assert names.index(one) < names.index(other)
    kinds = [sheet.kind for sheet in layout.planner.sheets]
    assert kinds == sorted(kinds, key=list(SheetKind).index), (
        "the desk, pages, logs, aids, paper: each kind has a color of its own"
    )
    tabs = {sheet.kind: book[sheet.name].sheet_properties.tabColor.rgb for sheet in layout.planner.sheets}
    assert len(set(tabs.values())) == len(tabs) == len(SheetKind)
    for sheet in layout.planner.sheets:
        assert book[sheet.name].sheet_properties.tabColor.rgb == tabs[sheet.kind]
