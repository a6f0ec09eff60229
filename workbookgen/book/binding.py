"""Binding: from a formula in words to a formula in cell references.

Each word becomes a reference times its unit factor (`operands`), the outcome is converted to the unit shown, and a
guard is put around the whole (`guard`). A formula that only chooses among cells of that unit, or adds them up, is not
converted.
"""

from workbookgen.book.guard import guard
from workbookgen.book.operands import Columns
from workbookgen.language.fields import Result
from workbookgen.language.quantities import Unit


def bind(result: Result, columns: Columns, unit: Unit | None, *, guarded: bool = True) -> str:
    """A result's formula in references, with its "=". Proofs need no guard: their inputs are printed values."""
    value = columns.unconverted(result.text.nodes, unit) if unit else None
    if value is None:
        value = columns.written(result.text.nodes)
        value = unit.shown(value) if unit else value
    return "=" + (guard(result, columns, value) if guarded else value)
