"""From a layout to an .xlsx file, with XlsxWriter.

Everything that people see is written here, and nothing is decided here: places come from the plans, looks from
`look`. The same layout, entries and cached values give the same bytes.
"""

import io
import warnings
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from typing import IO

import xlsxwriter
from xlsxwriter.exceptions import FileCreateError

from workbookgen import __version__
from workbookgen.book import awake, frame, log_sheet, look, page_sheet
from workbookgen.book.canvas import Cached, Canvas, Formats, WithoutFields
from workbookgen.book.placement import Layout
from workbookgen.book.worksheet import PlainWorksheet
from workbookgen.errors import DescriptionError
from workbookgen.language.entries import Entries, starting_entries
from workbookgen.temporary import temporary_folder

CREATED = datetime(2026, 1, 1)  # fixed, so that the same settings give the same bytes
NOTE_SIZE = {"font_name": look.TYPEFACE, "font_size": 9, "width": 220, "height": 60}

Notes = Mapping[tuple[str, int], str]


def write(layout: Layout, entries: Entries, cached: Cached, notes: Notes | None = None) -> bytes:
    """The workbook as bytes. `cached` holds the value that each formula cell shows until it is recalculated.

    `notes` are pinned to inputs, by full key and record.
    """
    stream = io.BytesIO()
    # A large planner's parts take a hundred megabytes, so they are kept in a folder until they are packed.
    with temporary_folder("workbookgen") as parts, _drawn(layout, entries, cached, Canvas, stream, parts) as book:
        made_with = f"Made with workbookgen {__version__}."
        book.set_properties({"title": layout.planner.title, "comments": made_with, "created": CREATED})
        book.set_calc_mode("auto")
        for (key, row), note in (notes or {}).items():
            placement = layout.placements[key]
            book.get_worksheet_by_name(placement.sheet).write_comment(placement.cell(row), note, NOTE_SIZE)
        fields = {name: f"={area}" for name, area in layout.names.items()}
        for name, formula in (fields | awake.names(layout)).items():
            if book.define_name(name, formula) == -1:
                raise DescriptionError.at(name, "a workbook cannot hold a name like this.")
        _close(book)
    return stream.getvalue()


def _close(book: xlsxwriter.Workbook) -> None:
    """Pack the parts. XlsxWriter wraps what the system says, such as that no room is left; it is raised as it was."""
    try:
        book.close()
    except FileCreateError as problem:
        raise problem.args[0].with_traceback(None) from None  # and lets go of the package while its stream is there


def beside_fields(layout: Layout) -> dict[str, dict[tuple[int, int], float | str]]:
    """Sheet -> the texts and numbers that a planner has beside its fields, by row and column from 1."""
    with _drawn(layout, starting_entries(layout.planner), {}, WithoutFields) as book:
        return {sheet.name: sheet.single_cells() for sheet in book.worksheets()}


class _Workbook(xlsxwriter.Workbook):
    """XlsxWriter's, without its second list of all defined names among the document's properties.

    ECMA-376 leaves that list free; it is a fiftieth of the file.
    """

    def _extract_named_ranges(self, defined_names):
        return []


@contextmanager
def _drawn(
    layout: Layout,
    entries: Entries,
    cached: Cached,
    surface: type[Canvas],
    stream: IO[bytes] | None = None,
    parts: Path | None = None,
) -> Iterator[xlsxwriter.Workbook]:
    """All sheets with what is on them, to be closed by who wants them in the stream; a folder holds the parts."""
    with warnings.catch_warnings():
        warnings.filterwarnings("error", module="xlsxwriter")  # it warns and continues where it should refuse
        book = _Workbook(stream, {"tmpdir": parts, "default_format_properties": look.FACE})
        formats = Formats(book, layout.planner.colors)
        for sheet in layout.planner.sheets:
            worksheet = book.add_worksheet(sheet.name, PlainWorksheet)
            canvas = surface(worksheet, layout.plans[sheet.name], layout, entries, cached, formats)
            (log_sheet if sheet.log_view else page_sheet).draw(canvas)
            frame.finish(canvas)
        yield book
