"""A blank planner made from a filled one, to pass on: its settings and reels, and nothing else.

The planner is built anew rather than emptied, so nothing that a person entered, pinned to a cell, put beside it, or
left in the file's properties can get into it. It has the names and measures of the reels, and the guide that a new
planner starts with, or on request the guide of the filled one.
"""

from collections.abc import Mapping, Sequence
from pathlib import Path

from workbookgen.build import build, layout_of
from workbookgen.filled.planner import read_filled
from workbookgen.filled.replacing import require_no_entries
from workbookgen.language.domains import Name
from workbookgen.language.entries import Entries, Entry, starting_entries, with_records
from workbookgen.language.parts import Block
from workbookgen.saving import require_another, require_workbook_name
from workbookgen.settings import Settings
from workbookgen.texts import folded

REELS, GUIDE = "reels", "guide"


def blank(path: Path, target: Path, *, guide: bool = False) -> dict[str, int]:
    """Build the blank planner. Returns the number of its reels and, if it has a guide, of the lines in that."""
    require_workbook_name(target)
    require_another(target, [path])
    require_no_entries(target)
    filled = read_filled(path, [REELS, GUIDE] if guide else [REELS])
    settings = _handed_on(filled.settings, filled.entries)
    planner = layout_of(settings).planner
    entries = starting_entries(planner)
    has = [block for block in (REELS, GUIDE) if block in planner.blocks]
    for block in has if guide else [REELS]:
        entries = with_records(planner, entries, block, _records(planner.blocks[block], filled.entries))
    build(settings, target, entries)
    return {block: sum(name is not None for name in entries[f"{block}_name"]) for block in has}


def _handed_on(settings: Settings, entries: Entries) -> Settings:
    """The settings without reels that were deleted from the sheet, and without the path of a fiber table."""
    names = {folded(name) for name in entries.get(f"{REELS}_name", ()) if isinstance(name, str)}
    kept = tuple(reel for reel in settings.reels if folded(reel.name) in names)
    return settings.model_copy(update={"reels": kept} | ({"fibers": ""} if settings.fibers else {}))


def _records(block: Block, entries: Entries) -> list[Mapping[str, Entry]]:
    """The lines that have a name, each with those of its values that its cells accept."""
    columns = {field.key: entries.get(block.full_key(field.key), ()) for field in block.inputs}
    lines = ({key: _at(column, row) for key, column in columns.items()} for row in range(block.rows))
    fields = [(field.key, field.domain) for field in block.inputs]
    fitting = [{key: line[key] for key, domain in fields if domain.accepts(line[key])} for line in lines]
    names = [key for key, domain in fields if isinstance(domain, Name)]
    return [record for record in fitting if any(name in record for name in names)]


def _at(column: Sequence[Entry], row: int) -> Entry:
    return column[row] if row < len(column) else None
