"""Placements: fields with their cells and formulas, as the layout hands them to the writer and the check."""

from collections.abc import Container, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum
from functools import cached_property

from xlsxwriter.utility import quote_sheetname, xl_col_to_name

from workbookgen.book.copied import CopiedDown
from workbookgen.book.plan import Plan
from workbookgen.language.automatic import SPOILED, Automatic
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Column, Holder
from workbookgen.language.planner import Planner
from workbookgen.language.quantities import Unit


class ProofColumn(IntEnum):
    """The columns of a proof's row. The given values follow from VALUES on, one per column."""

    NUMBER = 2
    WHAT = 3
    SOURCE = 4
    GIVEN = 5
    COMPUTED = 6
    PRINTED = 7
    UNIT = 8
    WITHIN = 9
    VERDICT = 10
    VALUES = 11


@dataclass(frozen=True)
class Placement:
    """A field, its cells, one below another and counted from 1, and their formulas; inputs have none."""

    key: str
    holder: Holder
    field: Input | Result | Automatic | Column
    sheet: str
    row: int
    column: int
    rows: int
    unit: Unit | None
    formulas: Sequence[str] = ()

    @property
    def range(self) -> str:
        """The absolute reference to its cells, with the sheet, as its defined name has it."""
        return f"{quote_sheetname(self.sheet)}!{self.area}"

    @property
    def letter(self) -> str:
        return xl_col_to_name(self.column - 1)

    @property
    def area(self) -> str:
        first = f"${self.letter}${self.row}"
        return first if self.rows == 1 else f"{first}:${self.letter}${self.row + self.rows - 1}"

    @property
    def line(self) -> str:
        """Formula text of the number of the record in whose row the formula stands.

        It is counted from a blank cell above the first record, which moves along with rows inserted above the log.
        """
        return f"ROW()-ROW($A${self.row - 1})" if self.row > 1 else "ROW()-ROW($A$1)+1"

    def cell(self, index: int) -> str:
        """The cell of a record, such as B9."""
        return f"{self.letter}{self.row + index}"

    def address(self, index: int) -> str:
        """The cell of a record with its sheet, as it is told to people: Skeins!B9."""
        return f"{self.sheet}!{self.cell(index)}"

    def first_lines(self, lines: int) -> "Placement":
        """The same field with only the first cells of its column."""
        formulas = self.formulas.first_lines(lines) if isinstance(self.formulas, CopiedDown) else self.formulas[:lines]
        return replace(self, rows=min(lines, self.rows), formulas=formulas)

    def with_fewer(self, cells: int) -> "Placement":
        """The count of emptied cells (SPOILED), of a layout that lacks so many cells."""
        all_of_them, counted = self.formulas[0].removeprefix("=").split("-", 1)
        return replace(self, formulas=(f"={int(all_of_them) - cells}-{counted}",))


@dataclass(frozen=True, eq=False)
class Layout:
    """A planner with everything in its place.

    Two are equal only if they are the same object, so what is derived from one can be cached.
    """

    planner: Planner
    plans: dict[str, Plan]  # by sheet name
    placements: dict[str, Placement]  # by full key
    whole: "Layout | None" = None  # the complete layout, if this one has only the first lines of some columns

    def first_lines(self, lines: int, keys: Container[str]) -> "Layout":
        """The same layout, with formulas only in the first cells of some columns.

        References to such a column still mean the whole of it. Its other cells are blank, and do not count as emptied.
        """
        shorter = {key: each.first_lines(lines) if key in keys else each for key, each in self.placements.items()}
        for key, each in self.placements.items():
            if each.field is SPOILED:
                worked_out = [each.holder.full_key(result.key) for result in each.holder.results]
                shorter[key] = each.with_fewer(sum(self.placements[one].rows - shorter[one].rows for one in worked_out))
        return Layout(self.planner, self.plans, shorter, self)

    @cached_property
    def inputs(self) -> tuple[Placement, ...]:
        return tuple(each for each in self.placements.values() if isinstance(each.field, Input))

    @cached_property
    def formulas(self) -> tuple[Placement, ...]:
        return tuple(each for each in self.placements.values() if each.formulas)

    @cached_property
    def formula_cells(self) -> int:
        return sum(len(each.formulas) for each in self.formulas)

    @cached_property
    def names(self) -> dict[str, str]:
        """Every defined name and its range."""
        return self.whole.names if self.whole else {key: each.range for key, each in self.placements.items()}

    def placements_of(self, holder: Holder) -> tuple[Placement, ...]:
        return tuple(each for each in self.placements.values() if each.holder is holder)
