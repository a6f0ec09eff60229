"""Whether each column of the gathered tables is a field of the planner, in a unit of its kind.

A slip in `columns` would otherwise come out as a number in ounces or yards among grams and meters.
"""

from collections import Counter
from collections.abc import Iterator

from workbookgen.errors import DescriptionError, Fault
from workbookgen.gather.columns import TABLES, Column, Table
from workbookgen.language import dimensions
from workbookgen.language.parts import dimension_of
from workbookgen.language.planner import Planner


def require_fields(planner: Planner) -> None:
    """Refuse columns that are no fields of this planner, or not in a unit of their fields' kinds."""
    faults = [
        Fault(f"gather/columns.py, {column.name} of the {table.name}", f"{sentence}.")
        for table in TABLES
        for column in table.columns
        for sentence in _objections(planner, table, column)
    ]
    if faults:
        raise DescriptionError(*faults)


def _objections(planner: Planner, table: Table, column: Column) -> Iterator[str]:
    if Counter(each.name for each in table.columns)[column.name] > 1:
        yield "another column of this table has this name"
    field = planner.blocks[table.block].by_key.get(column.field)
    if field is None:
        yield f"{table.full_key(column.field)} is no field"
        return
    if column.unit and not dimensions.is_unit(column.unit):
        yield f"the registry knows no unit {column.unit}"
        return
    shown, wanted = dimension_of(field, planner.system), _dimension(column)
    if shown != wanted:
        kinds = f"{dimensions.in_words(shown)}, and its unit says {dimensions.in_words(wanted)}"
        yield f"the field {table.full_key(column.field)} is {kinds}"


def _dimension(column: Column) -> dimensions.Dimension:
    return dimensions.TEXT if column.is_text else dimensions.dimension(column.unit or "[]")
