"""What the settings ask for, found in the workbook: note, title, colors, reels, and no text taken for more than
text."""

import re
import zipfile
from pathlib import Path

import pytest

from long_run import some
from planners import laid_out, opened
from workbookgen import colors
from workbookgen.book.write import write
from workbookgen.checking.check import FileToCheck, check
from workbookgen.language.entries import starting_entries
from workbookgen.planner_file import read_planner
from workbookgen.settings import Settings
from workbookgen.settings.reels import Reel

STRANGE = [
    "=1+1",
    "+cmd|' /C calc'!A0",
    "@SUM(A1)",
    '&L&"Arial"&99 &P',
    "9 lives",
    "{row}",
    "שלום 🧶 Ω",
    "a_x0041_b",
    '"quoted" \\ & <b>',
    "\u2028 and \x85",
]


@pytest.fixture(scope="module")
def planner_of(little, built):
    """The path of a small planner with some settings changed."""
    return lambda **changes: built(Settings.model_validate(little.model_dump() | changes))


@pytest.fixture
def written(little, tmp_path):
    """The path of such a planner as it is written, unproven: for what nothing works out."""

    def writing(**changes) -> Path:
        layout = laid_out(Settings.model_validate(little.model_dump() | changes))
        path = tmp_path / f"{len(list(tmp_path.iterdir()))}.xlsx"
        path.write_bytes(write(layout, starting_entries(layout.planner), {}))
        return path

    return writing


def desk(path) -> list[tuple[str, str]]:
    """(text, kind of cell) of what stands on the first sheet, from the top, but for its line of links."""
    sheet = opened(path)["Desk"]
    return [
        (cell.value, cell.data_type)
        for row in sheet.iter_rows(min_row=2, max_col=13)
        for cell in row
        if cell.value is not None
    ]


def texts(path) -> list[str]:
    return [value for value, kind in desk(path) if kind == "s"]


def test_a_note_stands_under_the_title(written):
    shown = texts(written(title="Ours", note="Bring your wheel.\n\n  Tea at four; do not be late.  \n"))
    assert shown[0] == "Ours" and shown[2:5] == [
        "Before you begin",
        "Bring your wheel.",
        "Tea at four; do not be late.",
    ]


def test_without_a_note_nothing_stands_in_its_place(written):
    noted, bare = texts(written(note="Bring your wheel.")), texts(written())
    assert [text for text in noted if text not in bare] == ["Before you begin", "Bring your wheel."]


def test_a_long_note_is_broken_into_lines_and_loses_nothing(written):
    note = " ".join(f"word{number}" for number in range(70))
    lines = [text for text in texts(written(note=note)) if str(text).startswith("word")]
    assert " ".join(lines) == note and len(lines) > 2 and all(len(line) <= 240 for line in lines)


def test_strange_texts_are_texts(planner_of):
    """All of them in one planner, a line of the note and a reel each."""
    path = planner_of(
        note="\n".join(STRANGE),
        reels=tuple(Reel(name=text[:40], loop="2 yd").model_dump() for text in STRANGE),
        rows={"reels": len(STRANGE)},
    )
    shown = desk(path)
    assert [text for text in STRANGE if (" ".join(text.split()), "s") not in shown] == []
    planner = read_planner(path)
    placed = planner.layout.placements["reels_name"]
    sheet = opened(path)[placed.sheet]
    assert [(cell.value, cell.data_type) for cell in (sheet[placed.cell(row)] for row in range(placed.rows))] == [
        (text, "s") for text in STRANGE
    ]
    assert [reel.name for reel in planner.settings.reels] == STRANGE and planner.settings.note == "\n".join(STRANGE)
    assert check(FileToCheck(path, planner.layout, formulas=planner.formulas), scenarios=1).findings == []


@pytest.mark.parametrize("text", some(STRANGE, 4))
def test_a_strange_text_is_a_text_everywhere(planner_of, text):
    path = planner_of(
        title=text, note=f"{text}\nand {text}", currency="=1&2", reels=(Reel(name=text[:40], loop="2 yd").model_dump(),)
    )
    shown = desk(path)
    assert shown[0] == (text, "s")
    read = " ".join(text.split())
    assert (read, "s") in shown[1:] and (f"and {read}", "s") in shown
    planner = read_planner(path)
    placed = planner.layout.placements["reels_name"]
    reel = opened(path)[placed.sheet][placed.cell(0)]
    assert (reel.value, reel.data_type) == (text, "s")
    assert (
        planner.settings.title == text
        and planner.settings.note == f"{text}\nand {text}"
        and planner.settings.currency == "=1&2"
    )
    report = check(FileToCheck(path, planner.layout, formulas=planner.formulas), scenarios=1)
    assert report.findings == []


@pytest.mark.parametrize(
    ("title", "shown"), [("Spin & dye", "Spin && dye"), ("2026 guild", " 2026 guild"), ("&P&D", "&&P&&D")]
)
def test_a_footer_shows_the_title_and_runs_no_code_in_it(written, title, shown):
    with zipfile.ZipFile(written(title=title)) as package:
        text = package.read("xl/worksheets/sheet1.xml").decode()
    footer = text.partition("<oddFooter>")[2].partition("</oddFooter>")[0].replace("&amp;", "&")
    assert footer.replace('&"Arial,Regular"', "") == f"&L{shown}&C&A&R&P / &N"


def colors_of(path) -> tuple[str, set[str], set[str], set[str]]:
    """All parts of the file; and in the cells, the colors of letters, of grounds, and of lines, as XML has them."""
    with zipfile.ZipFile(path) as package:
        read = {part: package.read(part).decode() for part in package.namelist() if part.endswith(".xml")}
    styles = read["xl/styles.xml"]

    def within(tag: str) -> set[str]:
        return set(
            re.findall(
                r'(?:rgb="FF|<bgColor rgb="FF)([0-9A-F]{6})"',
                "".join(re.findall(rf"<{tag}\b.*?</{tag}>", styles, re.DOTALL)),
            )
        )

    return "".join(read.values()), within("fonts"), within("fills") | within("dxfs"), within("borders")


def test_chosen_colors_are_seen(written):
    chosen = {"accent": "#5A2A5E", "band": "#F0E0F2", "edge": "#7A5A7E", "ground": "#FFFFF0"}
    everything, letters, grounds, lines = colors_of(written(colors=chosen))
    assert "5A2A5E" in letters & lines and "FFFFF0" in grounds and "7A5A7E" in lines
    told = re.sub(r"#[0-9A-F]{6}", "", everything)  # what it was made with tells of colors, too
    for role, usual in colors.ROLES.items():
        assert usual.removeprefix("#") not in told, role


def test_the_usual_colors_are_what_they_are(written):
    _, letters, grounds, lines = colors_of(written())
    assert "26466D" in letters & lines and "F6F0E1" in grounds and "94855A" in lines


@pytest.mark.parametrize(("units", "cord", "basis"), [("us", 360.0, "in"), ("metric", 914.4, "cm")])
def test_a_reel_measured_with_a_cord_is_known(planner_of, units, cord, basis):
    # 10 yards are 360 inches, and 914.4 centimeters: the yard is 0.9144 m (NIST SP 811, from memory).
    path = planner_of(units=units, reels=({"name": "Box", "cord": "10 yd", "turns": 6.5},))
    typed, shown = opened(path), opened(path, values=True)
    placements = read_planner(path).layout.placements

    def first(book, key):
        return book[placements[key].sheet][placements[key].cell(0)].value

    assert first(typed, "reels_cord") == pytest.approx(cord) and first(typed, "reels_turns") == 6.5
    assert first(shown, "reels_loop") == pytest.approx(cord / 6.5)
    assert first(shown, "reels_basis") == "measured with a cord" and placements["reels_loop"].unit.symbol == basis
