"""A text that a person typed is written as that text: never a formula, a number, a date or another text."""

import openpyxl
import pytest

from workbookgen.build import layout_of, workbook
from workbookgen.engines import Area, engine
from workbookgen.language.entries import starting_entries

TEXTS = (
    "=1+1",
    "=cmd|'/c calc'!A0",
    '=HYPERLINK("http://example.com","x")',
    "+1+1",
    "-1+1",
    "- a dash",
    "@SUM(A1)",
    "\tafter a tab",
    "  blanks  ",
    "'quoted",
    '"double"',
    "a\nsecond line",
    "0042",
    "1e5",
    "12,5",
    "5/6/2026",
    "TRUE",
    "#N/A",
    "1 2/3",
    "{=A1}",
    "<b>&amp;</b>",
    "]]>",
    "שלום עולם",
    "مغزل",
    "\u202eright to left",
    "🧶🐑👩‍🌾",
    "手紡ぎ",
    "Größe",
    "e\u0301",
    "x" * 4_000,
)

ESCAPE = "_x0041_"  # the format's own code for the letter A, typed as a text; Gnumeric does not know the code


@pytest.fixture(scope="module")
def noted(little, tmp_path_factory):
    """A planner with these as the sources of the guide, whose words may be anything; and the place of the first."""
    texts = (*TEXTS, ESCAPE)
    layout = layout_of(little.model_copy(update={"rows": little.rows.model_copy(update={"guide": len(texts)})}))
    path = tmp_path_factory.mktemp("texts") / "planner.xlsx"
    path.write_bytes(workbook(layout, starting_entries(layout.planner) | {"guide_source": texts}))
    return path, layout.placements["guide_source"]


def test_a_library_reads_the_same_texts(noted):
    path, place = noted
    sheet = openpyxl.load_workbook(path)[place.sheet]
    cells = [sheet.cell(place.row + row, place.column) for row in range(place.rows)]
    assert [(cell.data_type, cell.value) for cell in cells] == [("s", text) for text in (*TEXTS, ESCAPE)]


@pytest.mark.parametrize(
    "name",
    [
        "formualizer",
        pytest.param("libreoffice", marks=pytest.mark.programs),
        pytest.param("gnumeric", marks=pytest.mark.programs),
    ],
)
def test_programs_read_the_same_text(noted, name):
    path, place = noted
    with engine(name).open(path) as session:
        shown = [value for [value] in session.read(Area(place.sheet, place.row, place.column, place.rows))]
    assert shown[:-1] == list(TEXTS) and (shown[-1] == ESCAPE or name == "gnumeric")
