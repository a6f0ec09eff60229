"""A description of each column of the gathered tables, in the words of the planner's own fields."""

import pandas as pd

from workbookgen.filled.planner import records_of
from workbookgen.gather.columns import FILE, MESSAGE, PLANNER, TABLES, Column, Table
from workbookgen.language.fields import Input
from workbookgen.settings import Settings

HEADS = ("table", "column", "unit", "meaning")
ABOUT_MESSAGE = "What the planner says of this record, where something in it is missing or cannot be right."
IN_EVERY_TABLE = (
    ("every table", PLANNER, "", "The planner's number on the sheet Planners."),
    ("every table", FILE, "", "The planner's file."),
    ("every table", MESSAGE, "", ABOUT_MESSAGE),
)


def meanings() -> pd.DataFrame:
    """One row per column of the tables."""
    planner = records_of(Settings())
    rows = [
        (table.name, column.name, column.unit or "", _meaning(planner, table, column))
        for table in TABLES
        for column in table.columns
    ]
    return pd.DataFrame([*IN_EVERY_TABLE, *rows], columns=HEADS, dtype="string")


def _meaning(planner, table: Table, column: Column) -> str:
    """Group and label of the field, and the note of its cell."""
    block = planner.blocks[table.block]
    field = block.by_key[column.field]
    group = next(group.heading for group in block.groups if field in group.fields)
    said = field.help if isinstance(field, Input) else field.note
    return f"{group}: {field.label}. {said}".strip()
