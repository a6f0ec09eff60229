"""The formulas that a workbook file holds, as each cell has them.

A formula that cells share is written in the first of them; the others get theirs from
openpyxl, which knows how a formula changes when it moves.
"""

from functools import cached_property, lru_cache
from pathlib import Path
from xml.parsers import expat
from zipfile import ZipFile

from openpyxl.formula.translate import Translator

from .formula_cells import FormulaCell, scan
from .package import sheet_parts, unreadable

FAR = 999_983  # a row that no formula names


def formulas(path: Path) -> dict[tuple[str, str], str]:
    """Sheet and cell -> formula, with "=", for the whole workbook."""
    found: dict[tuple[str, str], str] = {}
    with ZipFile(path) as package:
        for sheet, part in sheet_parts(path).items():
            shared: dict[str, SharedFormula] = {}

            def keep(cell: FormulaCell, sheet=sheet, shared=shared) -> None:
                text = f"={cell.text}"
                if cell.kind.get("t") == "shared":
                    number = cell.kind.get("si")
                    if cell.text or number not in shared:
                        shared[number] = SharedFormula(text, cell.reference)
                    text = shared[number].moved_to(cell.reference)
                found[sheet, cell.reference] = text

            try:
                scan(package.read(part), keep)
            except expat.ExpatError as reason:
                raise unreadable(path, "The formula reader", reason) from None
    return found


class SharedFormula:
    """A formula that several cells share. Down its own column it is mostly the same but for the row's number."""

    def __init__(self, text: str, origin: str):
        self.text, self.origin, self.column = text, origin, _column(origin)
        self.down = _down(text, origin)

    def moved_to(self, place: str) -> str:
        if self.down and _column(place) == self.column:
            return self.down.replace("{row}", place[len(self.column) :])
        return self._translator.translate_formula(place)

    @cached_property
    def _translator(self) -> Translator:
        return Translator(self.text, self.origin)


@lru_cache(maxsize=4096)
def _down(text: str, origin: str) -> str:
    """The formula with "{row}" for its row's number, or nothing where that is not all that changes. Planners have the same ones again and again."""
    column = _column(origin)
    down = Translator(text, origin).translate_formula(f"{column}{FAR}").replace(str(FAR), "{row}")
    return down if down.replace("{row}", origin[len(column) :]) == text else ""


def _column(place: str) -> str:
    return place.rstrip("0123456789")
