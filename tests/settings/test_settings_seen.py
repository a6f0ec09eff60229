"""What the settings ask for, found in the workbook: note, title, colors, reels, and no text taken for more than text."""

import zipfile

import openpyxl
import pytest

from workbookgen.build import layout_of, workbook
from workbookgen.checking.check import check
from workbookgen.planner_file import read_planner
from workbookgen.settings import Colors, Settings
from workbookgen.settings.reels import Reel

STRANGE = ["=1+1", "+cmd|' /C calc'!A0", "@SUM(A1)", "&L&\"Arial\"&99 &P", "9 lives", "{row}", "שלום 🧶 Ω", "a_x0041_b", '"quoted" \\ & <b>', "\u2028 and \x85"]


@pytest.fixture(scope="module")
def planner_of(small, tmp_path_factory):
    """The path of a small planner with some settings changed."""

    def built(**changes):
        path = tmp_path_factory.mktemp("seen") / "planner.xlsx"
        settings = Settings.model_validate(small.model_dump() | changes)
        path.write_bytes(workbook(layout_of(settings)))
        return path

    return built


def first_sheet(path):
    return openpyxl.load_workbook(path)["Start"]


def test_a_note_stands_under_the_title(planner_of):
    sheet = first_sheet(planner_of(title="Ours", note="Bring your wheel.\n\n  Tea at four; do not be late.  \n"))
    assert [sheet.cell(row, 1).value for row in range(1, 8)] == [
        "Ours", "From wraps and weights to yarn you can plan with.", None, "Before you begin", "Bring your wheel.", "Tea at four; do not be late.", None,
    ]
    assert sheet["A8"].value == "Three steps"


def test_without_a_note_the_steps_come_first(planner_of):
    assert first_sheet(planner_of())["A4"].value == "Three steps"


def test_a_long_note_is_broken_into_lines_and_loses_nothing(planner_of):
    note = " ".join(f"word{number}" for number in range(70))
    sheet = first_sheet(planner_of(note=note))
    lines = [sheet.cell(row, 1).value for row in range(5, 10)]
    assert " ".join(filter(None, lines)) == note and all(len(line) <= 120 for line in lines if line)


@pytest.mark.parametrize("text", STRANGE)
def test_a_strange_text_is_a_text_everywhere(planner_of, text):
    path = planner_of(title=text, note=f"{text}\nand {text}", currency="=1&2", reels=(Reel(name=text[:40], loop="2 yd").model_dump(),))
    sheet = first_sheet(path)
    assert (sheet["A1"].value, sheet["A1"].data_type) == (text, "s")
    assert sheet["A5"].data_type == "s" and sheet["A5"].value == " ".join(text.split())
    reel = openpyxl.load_workbook(path)["Reels"]["A7"]
    assert (reel.value, reel.data_type) == (text, "s")
    planner = read_planner(path)
    assert planner.settings.title == text and planner.settings.note == f"{text}\nand {text}" and planner.settings.currency == "=1&2"
    report = check(path, planner.layout, scenarios=1, formulas_in_file=planner.formulas)
    assert report.findings == []


@pytest.mark.parametrize(("title", "shown"), [("Spin & dye", "Spin && dye"), ("2026 guild", " 2026 guild"), ("&P&D", "&&P&&D")])
def test_a_footer_shows_the_title_and_runs_no_code_in_it(planner_of, title, shown):
    with zipfile.ZipFile(planner_of(title=title)) as package:
        text = package.read("xl/worksheets/sheet1.xml").decode()
    footer = text.partition("<oddFooter>")[2].partition("</oddFooter>")[0].replace("&amp;", "&")
    assert footer == f"&L&9{shown}&C&9&A&R&9Page &P of &N"


def test_chosen_colors_are_seen(planner_of):
    chosen = Colors(accent="#5A2A5E", band="#F0E0F2", edge="#7A5A7E", ground="#FFFFF0")
    path = planner_of(colors=chosen.model_dump())
    book = openpyxl.load_workbook(path)
    start, reels = book["Start"], book["Reels"]
    assert start["A1"].font.color.rgb == "FF5A2A5E"
    assert reels["A4"].fill.fgColor.rgb == "FFF0E0F2" and reels["A4"].border.bottom.color.rgb == "FF5A2A5E"
    assert reels["A7"].fill.fgColor.rgb == "FFFFFFF0" and reels["A7"].border.left.color.rgb == "FF7A5A7E"
    with zipfile.ZipFile(path) as package:
        everything = "".join(package.read(part).decode() for part in package.namelist() if part.endswith(".xml"))
    assert "5A2A5E" in everything.partition("<c:chart>")[2], "the columns of the charts"
    for usual in ("1D4E57", "E4ECED", "9C8A57", "FBF4E2"):
        assert usual not in everything.replace("#", "\0").replace(f"\0{usual}", ""), usual


def test_the_usual_colors_are_what_they_were(planner_of):
    sheet = openpyxl.load_workbook(planner_of())["Reels"]
    assert sheet["A7"].fill.fgColor.rgb == "FFFBF4E2" and sheet["A7"].border.left.color.rgb == "FF9C8A57"
    assert sheet["A4"].fill.fgColor.rgb == "FFE4ECED" and sheet["A1"].font.color.rgb == "FF1D4E57"


@pytest.mark.parametrize(("units", "cord", "basis"), [("us", 360.0, "in"), ("metric", 914.4, "cm")])
def test_a_reel_measured_with_a_cord_is_known(planner_of, units, cord, basis):
    # 10 yards are 360 inches, and 914.4 centimeters: the yard is 0.9144 m (NIST SP 811, from memory).
    path = planner_of(units=units, reels=({"name": "Box", "cord": "10 yd", "turns": 6.5},))
    typed = openpyxl.load_workbook(path)["Reels"]
    shown = openpyxl.load_workbook(path, data_only=True)["Reels"]
    head = {shown.cell(5, column).value: column for column in range(1, 30)}
    assert typed.cell(7, head["Cord length"]).value == pytest.approx(cord) and typed.cell(7, head["Cord turns"]).value == 6.5
    assert shown.cell(7, head["Loop in use"]).value == pytest.approx(cord / 6.5)
    assert shown.cell(7, head["Known from"]).value == "measured with a cord" and shown.cell(6, head["Loop in use"]).value == basis
