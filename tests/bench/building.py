"""Building a planner, whole and by stage, against stock XlsxWriter writing the same cells once."""

import io
from pathlib import Path

import openpyxl
import xlsxwriter
from figure import Figure, seconds, workbookgen

from workbookgen.book.layout import place
from workbookgen.book.write import write
from workbookgen.build import DRAWN, EMBEDDED, workbook
from workbookgen.checking.driving import read
from workbookgen.checking.expected import expected_values
from workbookgen.engines import engine
from workbookgen.language.entries import starting_entries
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner

STOCK = "stock XlsxWriter"


def figures(folder: Path) -> list[Figure]:
    settings = Settings()
    described = planner(settings)
    layout = place(described)
    entries = starting_entries(described)
    built = workbook(layout)
    file = folder / "built.xlsx"
    file.write_bytes(built)
    draft = folder / "draft.xlsx"
    draft.write_bytes(write(layout, entries, {}))
    with engine(EMBEDDED).open(draft) as session:
        cached = read(session, layout, layout.formulas)
    cells = cells_of(file)
    stock = seconds(lambda: stock_write(cells))

    def whole():
        workbook(place(planner(settings)), drawn=DRAWN)

    def evaluate():
        with engine(EMBEDDED).open(draft) as session:
            read(session, layout, layout.formulas)

    stages = (
        ("  describe", lambda: planner(settings)),
        ("  lay out and bind", lambda: place(described)),
        ("  write a draft", lambda: write(layout, entries, {})),
        ("  evaluate", evaluate),
        ("  expected values", lambda: expected_values(described, entries)),
        ("  write with cached values", lambda: write(layout, entries, cached)),
    )
    lines = [Figure("build, whole", seconds(whole), "s", STOCK, stock, aim=1)]
    lines += [Figure(name, seconds(work), "s", STOCK, stock) for name, work in stages]
    lines.append(Figure(f"{STOCK}, {sum(map(len, cells.values())):,} cells", stock))
    lines.append(Figure("size of the blank planner", len(built) / 1000, "kB", aim=400))
    _, memory = workbookgen("build", "-o", str(folder / "memory.xlsx"))
    lines.append(Figure("peak memory of the command build", memory, "MB", aim=200))
    return lines


def cells_of(file: Path) -> dict[str, list[tuple]]:
    """Every cell of a planner: row, column, content, the value it shows, and the number of its style."""
    formulas, values = openpyxl.load_workbook(file), openpyxl.load_workbook(file, data_only=True)
    return {
        sheet.title: [
            (cell.row - 1, cell.column - 1, cell.value, values[sheet.title].cell(cell.row, cell.column).value, cell.style_id)
            for row in sheet.iter_rows()
            for cell in row
            if cell.has_style or cell.value is not None
        ]
        for sheet in formulas
    }


def stock_write(cells: dict[str, list[tuple]]) -> bytes:
    """These cells with XlsxWriter as it comes, each with a format, formulas with their values."""
    stream = io.BytesIO()
    book = xlsxwriter.Workbook(stream, {"in_memory": True})
    formats = {style: book.add_format({"indent": style % 15}) for style in {cell[4] for each in cells.values() for cell in each}}
    for name, each in cells.items():
        sheet = book.add_worksheet(name)
        for row, column, content, value, style in each:
            if content is None:
                sheet.write_blank(row, column, None, formats[style])
            elif isinstance(content, str) and content.startswith("="):
                sheet.write_formula(row, column, content, formats[style], "" if value is None else value)
            elif isinstance(content, str):
                sheet.write_string(row, column, content, formats[style])
            else:
                sheet.write_number(row, column, content, formats[style])
    book.close()
    return stream.getvalue()
