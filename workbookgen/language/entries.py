"""Entries: the content of a planner's inputs, by full key, one value per record, None for a blank cell."""

from collections.abc import Mapping

from workbookgen.language.fields import Input
from workbookgen.language.parts import Block, Log
from workbookgen.language.planner import Planner

Entry = float | str | bool | None
Entries = Mapping[str, tuple[Entry, ...]]


def starting_entries(planner: Planner) -> dict[str, tuple[Entry, ...]]:
    """The entries of a new planner: its reels, its guide, and the starting values of cards."""
    return {
        block.full_key(field.key): _column(block, field, planner.system)
        for block in planner.blocks.values()
        for field in block.inputs
    }


def with_records(planner: Planner, entries: Entries, block_key: str, records: list[Mapping[str, Entry]]) -> dict:
    """The entries with these records in the first lines of a block; its other lines are blank."""
    block = planner.blocks[block_key]
    if len(records) > block.rows:
        raise ValueError(f"{block_key} has {block.rows} lines, and {len(records)} records were given.")
    unknown = {key for record in records for key in record} - {field.key for field in block.inputs}
    if unknown:
        raise ValueError(f"{block_key} has no inputs {', '.join(sorted(unknown))}.")
    blank = (None,) * (block.rows - len(records))
    return dict(entries) | {
        block.full_key(field.key): (*(record.get(field.key) for record in records), *blank) for field in block.inputs
    }


def _column(block: Block, field: Input, system: str) -> tuple[Entry, ...]:
    if not isinstance(block, Log):
        return (field.first(system),)
    records = block.starts_with[: block.rows]
    return (*(record.get(field.key) for record in records), *(None,) * (block.rows - len(records)))
