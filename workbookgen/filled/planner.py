"""A filled planner: what was entered, whatever program saved it and whichever version made it.

Inputs are found by the defined names that every planner has, never by address: names keep their meaning across
versions, and move along when lines are inserted. A planner holds its settings (`made_with`), which determine what its
names mean.
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path

from workbookgen import __version__
from workbookgen.engines import Area
from workbookgen.errors import Fault, FileError
from workbookgen.filled.book import Book, Cell, ErrorValue, areas_of, open_book
from workbookgen.filled.headings import by_its_label, with_lines_above
from workbookgen.filled.made_with import ORIGIN, known_settings, made_with, origin_sheet
from workbookgen.language.domains import Date
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input
from workbookgen.language.parts import Block, Log
from workbookgen.language.planner import Planner
from workbookgen.ooxml.references import cell_name
from workbookgen.ooxml.values import Value
from workbookgen.settings import Colors, Settings
from workbookgen.sheets.planner import planner

ROWS_OF = {"costs": "projects"}  # logs whose length is the setting of another log
DAYS_FROM_1904 = 1462
LABEL_ONLY = "its name is gone from the file, so its cells were found by their label. Look at these entries."
NAME_GONE = (
    "its name is gone from the file, so nothing was read there. "
    "Another program may have dropped it: use an earlier copy of the file."
)
DELETED = "was deleted from the file, so nothing was read there. If you need it, use an earlier copy of the file."
NAMES_GONE = (
    "the names by which entries are found are gone, so nothing can be read. "
    "The program that saved it dropped them: give an earlier copy of the file."
)
MOST_LINES = 30_000  # of a log, inserted ones included; a name in a hostile file may point to a million


@dataclass(frozen=True)
class FilledPlanner:
    """What is in a planner's inputs, by full key, in the units of its settings.

    `entries` holds only fields that the file has. A log's columns have as many rows as its `settings` say, which are
    raised if lines were inserted and filled.
    """

    path: Path
    version: str
    made_with: Settings  # as they are in the file
    settings: Settings
    entries: Entries
    ranges: dict[str, Area]  # full key of an input, result or table -> its cells in the file
    book: Book
    notes: tuple[Fault, ...] = ()  # what was read differently from the file

    @property
    def planner(self) -> Planner:
        """The planner that these settings describe."""
        return described(self.settings)

    def position(self, key: str, row: int) -> tuple[str, int, int]:
        """Sheet, row and column of a record's field."""
        area = self.ranges[key]
        return area.sheet, area.row + row, area.column

    def place(self, key: str, row: int) -> tuple[str, str]:
        """Sheet and cell of a record's field."""
        sheet, line, column = self.position(key, row)
        return sheet, cell_name((line, column))

    def cell(self, key: str, row: int) -> Cell | None:
        sheet, line, column = self.position(key, row)
        return self.book.sheets.get(sheet, {}).get((line, column))


@lru_cache(maxsize=16)
def described(settings: Settings) -> Planner:
    """The planner that these settings describe; cached, since many planners of a guild have the same."""
    return planner(settings)


def records_of(settings: Settings) -> Planner:
    """The planner of these settings, without what makes no difference to its records, such as its title and reels."""
    plain = {"title": "-", "note": "", "fibers": "", "colors": Colors(), "reels": ()}
    return described(settings.model_copy(update=plain))


def read_filled(path: Path, blocks: Collection[str] | None = None) -> FilledPlanner:
    """Read a filled planner, or only the sheets of these blocks. Raises FileError for anything that is not one."""
    book = open_book(path, None if blocks is None else lambda names: _columns(names, blocks))
    ranges = dict(book.areas)
    made = made_with(path, book)
    settings, notes = known_settings("\n".join(made.texts), f"{path.name}, sheet {made.sheet}")
    # A caller that reads all of it needs the full description anyway.
    whole = described(settings) if blocks is None else records_of(settings)
    if not any(block.full_key(each.key) in book.names for block in whole.blocks.values() for each in block.inputs):
        raise FileError.at(str(path), NAMES_GONE)
    is_of_today = made.version == __version__  # a planner of another version may lack a field
    found = {
        key: _found(book, whole, block, ranges, is_of_today)
        for key, block in whole.blocks.items()
        if blocks is None or key in blocks
    }
    enough = _with_rows(settings, whole, {key: each.filled for key, each in found.items()})
    entries = {key: column for each in found.values() for key, column in each.entries.items()}
    ranges |= {key: area for each in found.values() for key, area in each.areas.items()}
    notes += [note for each in found.values() for note in each.notes]
    return FilledPlanner(
        path,
        made.version,
        made_with=settings,
        settings=enough,
        entries=entries,
        ranges=ranges,
        book=book,
        notes=tuple(notes),
    )


def _columns(names: dict[str, str], blocks: Collection[str]) -> dict[str, set[int] | None]:
    """Sheet -> the columns with the inputs of these blocks, or with fields that today's planner does not know."""
    areas = areas_of(names)
    origin_at = areas.get(ORIGIN)
    wanted: dict[str, set[int] | None] = {origin_at.sheet: {origin_at.column}} if origin_at else {**origin_sheet(names)}
    begins = tuple(f"{block}_" for block in blocks)
    for name, area in areas.items():
        if name.startswith(begins) and name not in _results_known():
            wanted.setdefault(area.sheet, set()).add(area.column)
    return wanted


@cache
def _results_known() -> frozenset[str]:
    """The results of today's planner, by full key."""
    blocks = records_of(Settings()).blocks.values()
    return frozenset(block.full_key(each.key) for block in blocks for each in (*block.results, *block.automatic))


@dataclass(frozen=True)
class _Found:
    """What a file has of a block: entries and their cells by full key, lines down to the last filled one, notes."""

    entries: dict[str, tuple[Entry, ...]]
    areas: dict[str, Area]
    filled: int
    notes: list[Fault]


def _found(book: Book, whole: Planner, block: Block, ranges: dict[str, Area], is_of_today: bool) -> _Found:
    """Read a block's inputs, also those whose names are gone, if their labels are there."""
    keys = [block.full_key(each.key) for each in block.inputs]
    areas = _areas(book, block, keys, ranges)
    gone = [key for key in keys if key in book.names and key not in ranges]
    lost = {key: key in areas for key in keys if key not in book.names} if is_of_today else {}
    notes = list(_unread(whole, block, gone, lost)) if gone or lost else []
    entries, filled = _records(book, block, areas, notes)
    if isinstance(block, Log) and areas:
        # All fields of a record are on one line, so all are counted from the same one.
        first, last = _lines(areas)
        areas = {key: Area(area.sheet, first, area.column, last - first + 1) for key, area in areas.items()}
    return _Found(entries, areas, filled, notes)


def _unread(whole: Planner, block: Block, gone: list[str], lost: dict[str, bool]) -> Iterator[Fault]:
    """What to say of fields whose cells are gone, and of those whose names are `lost`, with whether a label was found.

    They are called as a person knows them: "Time, Your pace, Hours a week".
    """
    keys = {block.full_key(each.key): each.label for each in block.inputs}
    title = ", ".join(filter(None, (whole.sheet_of(next(iter(keys))), block.title)))
    if len(gone) == len(keys) > 1:
        yield Fault(title, f"all of it {DELETED}")
    else:
        yield from (Fault(f"{title}, {keys[key]}", f"it {DELETED}") for key in gone)
    yield from (Fault(f"{title}, {keys[key]}", LABEL_ONLY if found else NAME_GONE) for key, found in lost.items())


def _areas(book: Book, block: Block, keys: list[str], ranges: dict[str, Area]) -> dict[str, Area]:
    """The cells of a block's inputs, by full key, also of those whose names are gone."""
    named = {key: ranges[key] for key in keys if key in ranges}
    lost = [key for key in keys if key not in book.names]
    if isinstance(block, Log) and named:
        within = {key.removeprefix(f"{block.key}_"): area for key, area in named.items()}
        taken = {(area.sheet, area.column) for area in ranges.values()} if lost else ()
        others = [key.removeprefix(f"{block.key}_") for key in lost]
        within |= {key: area for key in others if (area := by_its_label(book, block, within, key, taken))}
        named = {block.full_key(key): area for key, area in with_lines_above(book, block, within).items()}
    return named


def _records(
    book: Book, block: Block, areas: dict[str, Area], notes: list[Fault]
) -> tuple[dict[str, tuple[Entry, ...]], int]:
    """The entries of a block, and the number of its last filled line. Each line of a log's sheet is one record."""
    inputs = {block.full_key(each.key): each for each in block.inputs}
    if not isinstance(block, Log) or not areas:
        return {key: (_entry(book, inputs[key], area, area.row, notes),) for key, area in areas.items()}, block.rows
    first, last = _lines(areas)
    begun = [line - first + 1 for area in areas.values() for line in _begun(book, area, last)]
    filled = max(begun, default=0)
    length = max(filled, block.rows)
    entries: dict[str, tuple[Entry, ...]] = {}
    for key, area in areas.items():
        column: list[Entry] = [None] * length
        for line in sorted(_filled(book, area, last)):
            column[line - first] = _entry(book, inputs[key], area, line, notes)
        entries[key] = tuple(column)
    return entries, filled


def _filled(book: Book, area: Area, last: int) -> set[int]:
    """The lines in which a field's cells hold something."""
    cells = book.sheets.get(area.sheet, {})
    return {line for line in range(area.row, min(area.last_row, last) + 1) if (line, area.column) in cells}


def _begun(book: Book, area: Area, last: int) -> Iterator[int]:
    """The lines in which a field has something: an entry, a formula that shows nothing, or a note pinned to it."""
    for found in (book.sheets.get(area.sheet, {}), book.comments.get(area.sheet, {})):
        yield from (line for line in range(area.row, min(area.last_row, last) + 1) if (line, area.column) in found)


def _lines(areas: dict[str, Area]) -> tuple[int, int]:
    """The first and last line of a log, even if cells were deleted in some of its columns."""
    first = min(area.row for area in areas.values())
    return first, min(max(area.last_row for area in areas.values()), first + MOST_LINES - 1)


def _entry(book: Book, each: Input, area: Area, line: int, notes: list[Fault]) -> Entry:
    cell = book.sheets.get(area.sheet, {}).get((line, area.column))
    if cell and isinstance(cell.value, ErrorValue):
        place = f"{area.sheet}!{cell_name((line, area.column))}"
        notes.append(Fault(place, f"it shows the error {cell.value}, so it was read as empty."))
    return as_entry(cell.value, each, book) if cell else None


def as_entry(value: Value, each: Input, book: Book) -> Entry:
    """The entry in a cell of an input: an error and an empty text count as nothing, a truth value as a word."""
    match value:
        case None | "" | ErrorValue():
            return None
        case bool() as truth:
            return "TRUE" if truth else "FALSE"
        case str() as text:
            return text
        case number if isinstance(each.domain, Date) and book.counts_from_1904:
            return number + DAYS_FROM_1904
        case number:
            return number


def _with_rows(settings: Settings, whole: Planner, filled: dict[str, int]) -> Settings:
    """Settings with rows for all filled lines, perhaps more than a new planner may have."""
    more: dict[str, int] = {}
    for key, rows in filled.items():
        name = ROWS_OF.get(key, key)
        if rows > whole.blocks[key].rows:
            more[name] = max(rows, more.get(name, 0))
    return settings.model_copy(update={"rows": settings.rows.model_copy(update=more)}) if more else settings
