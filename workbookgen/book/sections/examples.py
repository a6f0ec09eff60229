"""Published examples, one per row, with the printed answer next to the computed one."""

from collections.abc import Iterator

from workbookgen.book import look, proof_lines
from workbookgen.book.canvas import Canvas
from workbookgen.book.placement import ProofColumn
from workbookgen.book.plan import Spot
from workbookgen.book.sections.facts import facts
from workbookgen.language.planner import Planner
from workbookgen.language.views import Examples

HEADS = 2


def rows(section: Examples, planner: Planner) -> int:
    return 1 + HEADS + planner.proof_tables[section.table].rows


def spots(section: Examples, planner: Planner, row: int, column: int) -> Iterator[tuple[str, Spot]]:
    table = planner.proof_tables[section.table]
    top = row + 1 + HEADS
    yield table.full_key("computed"), Spot(top, ProofColumn.COMPUTED, table.rows)
    yield table.full_key(table.verdict.key), Spot(top, ProofColumn.VERDICT, table.rows)


def draw(section: Examples, canvas: Canvas, row: int) -> None:
    table = canvas.layout.planner.proof_tables[section.table]
    canvas.heading(row, ProofColumn.NUMBER, ProofColumn.VERDICT, section.title, section.aside)
    if table.about:
        canvas.text(row + 1, ProofColumn.NUMBER, table.about, look.LITTLE)
    for column, title in proof_lines.HEADS.items():
        align = {"align": "right" if column in proof_lines.OF_NUMBERS else "left"}
        canvas.text(row + 2, column, title, look.LABEL | align | look.LINE)
    for place, proof in enumerate(table.lines):
        facts(canvas, row + 1 + HEADS + place, proof_lines.facts(canvas.layout, proof))
    for name, column in (("computed", ProofColumn.COMPUTED), (table.verdict.key, ProofColumn.VERDICT)):
        align = {"align": "right" if column in proof_lines.OF_NUMBERS else "left"}
        canvas.cells(table.full_key(name), look.FACT | align)
