"""A text that a person typed is written as that text: never a formula, a number, a date or another text."""

import openpyxl
import pytest

from workbookgen.build import workbook
from workbookgen.engines import Area, engine
from workbookgen.language.entries import starting_entries

TEXTS = (
    "=1+1", "=cmd|'/c calc'!A0", '=HYPERLINK("http://example.com","x")', "+1+1", "-1+1", "- a dash", "@SUM(A1)", "\tafter a tab", "  blanks  ",
    "'quoted", '"double"', "a\nsecond line", "0042", "1e5", "12,5", "5/6/2026", "TRUE", "#N/A", "1 2/3", "{=A1}", "<b>&amp;</b>", "]]>",
    "שלום עולם", "مغزل", "\u202eright to left", "🧶🐑👩‍🌾", "手紡ぎ", "Größe", "e\u0301", "x" * 4_000,
)

ESCAPE = "_x0041_"  # the format's own code for the letter A, typed as a text; Gnumeric does not know the code


@pytest.fixture(scope="module")
def noted(small_layout, tmp_path_factory):
    """A planner with these as the sources of the guide, whose words may be anything; its path, and each text's cell."""
    rows = small_layout.planner.blocks["guide"].rows
    folder = tmp_path_factory.mktemp("texts")
    cells = {}
    placement = small_layout.placements["guide_source"]
    for number in range(0, len(TEXTS) + 1, rows):
        texts = (*TEXTS, ESCAPE)[number : number + rows]
        column = tuple(texts) + (None,) * (rows - len(texts))
        path = folder / f"{number}.xlsx"
        path.write_bytes(workbook(small_layout, starting_entries(small_layout.planner) | {"guide_source": column}))
        cells |= {text: (path, placement.sheet, placement.row + row, placement.column) for row, text in enumerate(texts)}
    return cells


@pytest.mark.parametrize("text", [*TEXTS, ESCAPE], ids=lambda text: ascii(text[:20]))
def test_a_library_reads_the_same_text(noted, text):
    path, sheet, row, column = noted[text]
    cell = openpyxl.load_workbook(path)[sheet].cell(row, column)
    assert (cell.data_type, cell.value) == ("s", text)


@pytest.mark.parametrize("name", [
    "formualizer", pytest.param("libreoffice", marks=pytest.mark.programs), pytest.param("gnumeric", marks=pytest.mark.programs),
])
def test_programs_read_the_same_text(noted, name):
    differing = {}
    for path in dict.fromkeys(path for path, *_ in noted.values()):
        with engine(name).open(path) as session:
            for text, (where, sheet, row, column) in noted.items():
                if where == path:
                    ((shown,),) = session.read(Area(sheet, row, column))
                    if shown != text and (name, text) != ("gnumeric", ESCAPE):
                        differing[text[:40]] = shown
    assert differing == {}
