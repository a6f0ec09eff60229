"""The summary as a workbook to read and print: what was observed, how even the yarn is, which planners were read.

Its colors are those of the planners. Every text is written as text, so a name that begins like a
formula stays a name. If the tables are wanted as a workbook too, they are further sheets of it.
"""

import io
from datetime import datetime
from textwrap import wrap

import pandas as pd
import xlsxwriter
from xlsxwriter.utility import xl_col_to_name

from workbookgen.book import look
from workbookgen.errors import Fault
from workbookgen.gather.columns import TABLES
from workbookgen.gather.gathered import Gathered
from workbookgen.gather.meaning import meanings
from workbookgen.gather.summary import ENOUGH

CREATED = datetime(2026, 1, 1)  # fixed, so that the same planners give the same bytes
MOST_ROWS = 1_048_575  # of a sheet, below its heading
CHARTED = 20  # breeds in the chart: those with the most lots
FIRST = 3  # row of a table's first record, from 0
HEAD_HEIGHT = 28  # points, of two lines
LETTERS = 95  # characters in a line of text
SHARE, COUNT = "0.0%", "#,##0"
YIELDS = "Yields"  # the sheet of the chart
YIELD_COLUMNS = ("kind", "lots", "mean", "deviation", "published")
DRAWN, PALE = "scoured yield", "#B9C9CC"
ABOUT_THE_CHART = (
    "Columns: mean scoured yield of each breed's lots, with one standard deviation up and down. "
    "Diamonds: what the guide says."
)

HEADS = {
    "kind": ("Breed or fiber", 28, ""),
    "stage": ("What", 22, ""),
    "lots": ("Lots", 8, COUNT),
    "planners": ("Planners", 9, COUNT),
    "mean": ("Mean", 9, SHARE),
    "deviation": ("Spread", 9, SHARE),
    "least": ("Least", 9, SHARE),
    "most": ("Most", 9, SHARE),
    "mean_doubt95": ("Mean ±, 95%", 10, SHARE),
    "published": ("In the guide", 9, SHARE),
    "in_use": ("To plan with", 11, SHARE),
    "skeins": ("Skeins", 8, COUNT),
    "mean_grist_m_per_g": ("Mean grist, m/g", 10, "0.00"),
    "least_grist_m_per_g": ("Least", 9, "0.00"),
    "most_grist_m_per_g": ("Most", 9, "0.00"),
    "mean_grist_yd_per_lb": ("The same, yd/lb", 10, COUNT),
    "lots_compared": ("Lots of two skeins or more", 15, COUNT),
    "grist_cv": ("CV within a lot", 9, SHARE),
    "least_cv": ("Most even lot", 9, SHARE),
    "most_cv": ("Least even lot", 9, SHARE),
    "planner": ("Planner", 8, COUNT),
    "file": ("File", 34, ""),
    "title": ("Title", 34, ""),
    "units": ("Units", 10, ""),
    "version": ("Made with", 10, ""),
    "samples": ("Samples", 9, COUNT),
    "projects": ("Projects", 9, COUNT),
    "what": ("What to know", 110, ""),
    "table": ("Table", 12, ""),
    "column": ("Column", 26, ""),
    "unit": ("Unit", 10, ""),
    "meaning": ("What it is", 90, ""),
}

ABOUT = (
    (
        "What this is",
        (
            "The figures of several planners together, to compare and to plan with. Nothing here is a formula; gather again for newer figures.",
            "Each planner was calculated anew from what was typed into it. Files with the same bytes count once; "
            "several versions of one planner each count, so give only the latest.",
        ),
    ),
    (
        "Observed",
        (
            "Only what was weighed before and after counts. Lots count alike, large or small. A loss is a share of what went into that stage; a yield is the share that came out.",
            "Spread is the standard deviation: about two lots in three lie within one spread of the mean. The mean is known to within ± (95%, Student's t); "
            f"under {ENOUGH} lots this is left empty, since it would say next to nothing.",
            f"To plan with: the guild's own mean from {ENOUGH} lots on, until then what the guide says. Many lots of one planner are still one person's hands.",
        ),
    ),
    (
        "Evenness",
        (
            "CV is the standard deviation of the skeins' grist as a share of their mean, within one lot; over several lots it is pooled, so that lots of "
            "different grist do not count as uneven. 5 to 15% is usual for handspun (common practice, no source).",
        ),
    ),
    (
        "Units",
        (
            "Lengths are in meters and masses in grams, whatever a planner was kept in: 1 yd is 0.9144 m, 1 oz is 28.349523125 g, 1 m/g is 496 yd/lb. "
            "Shares are 0 to 1, shown as percent.",
        ),
    ),
)


def workbook(gathered: Gathered, observed: pd.DataFrame, evenness: pd.DataFrame, *, with_tables: bool) -> bytes:
    """The summary, and the tables behind it if they are wanted."""
    stream = io.BytesIO()
    as_they_are = dict.fromkeys(("strings_to_formulas", "strings_to_urls", "strings_to_numbers"), False)
    with xlsxwriter.Workbook(stream, as_they_are) as book:
        book.set_properties({"created": CREATED})
        pages = _Pages(book)
        pages.about(gathered)
        pages.table("Observed", "Yield and loss, as weighed", observed)
        pages.chart(observed)
        pages.table("Evenness", "Grist, and how even it is within a lot", evenness)
        pages.table("Planners", "The planners that were read", gathered.planners)
        pages.table("Not read", "Files and cells that are not in the tables", _not_read(gathered))
        if with_tables:
            for table in TABLES:
                pages.plain(table.name.capitalize(), gathered.tables[table.name])
        pages.table("Columns", "The columns of the tables", meanings())
    return stream.getvalue()


def _not_read(gathered: Gathered) -> pd.DataFrame:
    """Everything that is reported about the files, each sentence with its file."""
    faults = [*gathered.unread, *gathered.repeated, *gathered.notes]
    faults = faults or [Fault("", "Every file was read, and nothing was left out.")]
    return pd.DataFrame([(each.place, each.sentence) for each in faults], columns=["file", "what"], dtype="string")


def _drawn_from(column: str, last: int) -> dict:
    """A series of the chart: a column of the list beside it, down to its last row."""
    place = YIELD_COLUMNS.index(column)
    return {"categories": [YIELDS, FIRST, 0, last, 0], "values": [YIELDS, FIRST, place, last, place]}


class _Pages:
    """The sheets of the summary."""

    def __init__(self, book: xlsxwriter.Workbook):
        self.book = book
        self.formats: dict = {}

    def about(self, gathered: Gathered) -> None:
        sheet = self._sheet("About", landscape=False)
        sheet.set_column(0, 0, LETTERS)
        sheet.write_string(0, 0, "What several planners show together", self._format(look.TITLE))
        sheet.write_string(1, 0, f"{gathered.counts}.", self._format(look.ABOUT))
        row = 3
        for heading, sentences in ABOUT:
            sheet.write_string(row, 0, heading, self._format(look.HEAD))
            lines = [line for sentence in sentences for line in wrap(sentence, LETTERS)]
            for below, line in enumerate(lines, start=1):
                sheet.write_string(row + below, 0, line, self._format(look.PLAIN))
            row += len(lines) + 2

    def table(self, name: str, title: str, frame: pd.DataFrame) -> None:
        """A frame for reading: a title, headings in words, and its rows."""
        sheet = self._sheet(name)
        sheet.write_string(0, 0, title, self._format(look.TITLE))
        sheet.set_row(FIRST - 1, HEAD_HEIGHT)
        for column, key in enumerate(frame.columns):
            label, width, shown = HEADS[key]
            align = {"align": "right"} if shown else {"align": "left", "indent": 1}
            looks = look.FACT | align | ({"num_format": shown} if shown else {})
            sheet.set_column(column, column, width)
            sheet.write_string(FIRST - 1, column, label, self._format(look.LABEL | look.INK_LINE | align))
            self._fill(sheet, FIRST, column, frame[key], self._format(looks))
        sheet.freeze_panes(FIRST, 1)
        sheet.repeat_rows(FIRST - 1)

    def plain(self, name: str, frame: pd.DataFrame) -> None:
        """A frame for further work: its column names in the first row, and nothing around it."""
        sheet = self._sheet(name)
        # A format of whole columns takes no space in their cells.
        sheet.set_column(0, len(frame.columns) - 1, 14, self._format(look.PLAIN))
        for column, key in enumerate(frame.columns):
            sheet.write_string(0, column, key, self._format(look.LABEL | look.INK_LINE))
            self._fill(sheet, 1, column, frame[key])
        sheet.freeze_panes(1, 0)
        sheet.autofilter(0, 0, max(len(frame), 1), len(frame.columns) - 1)
        sheet.repeat_rows(0)

    def chart(self, observed: pd.DataFrame) -> None:
        """Chart the scoured yields of the breeds with the most lots, and their spread, from a list above the chart."""
        weighed = observed[(observed["stage"] == DRAWN) & (observed["lots"] >= ENOUGH)]
        drawn = weighed.nlargest(CHARTED, "lots").sort_values("kind")
        if drawn.empty:
            return
        self.table(YIELDS, "Scoured yield of the breeds with most lots", drawn[list(YIELD_COLUMNS)])
        last = FIRST + len(drawn) - 1
        chart = self._means(last)
        chart.combine(self._guide(last))
        font = {"name": look.TYPEFACE, "size": 9, "color": look.INK}
        lines = {"visible": True, "line": {"color": look.HAIR}}
        chart.set_title({"name": "Scoured yield, mean and spread of the lots", "name_font": font | {"size": 11}})
        chart.set_x_axis({"num_font": font})
        chart.set_y_axis({"num_font": font, "num_format": "0%", "min": 0, "max": 1, "major_gridlines": lines})
        chart.set_legend({"position": "bottom", "font": font})
        chart.set_size({"width": 860, "height": 330})
        self.book.get_worksheet_by_name(YIELDS).insert_chart(last + 2, 0, chart, {"description": ABOUT_THE_CHART})

    def _means(self, last: int):
        """Columns: the mean of each breed, with its spread."""
        chart = self.book.add_chart({"type": "column"})
        letter = xl_col_to_name(YIELD_COLUMNS.index("deviation"))
        spread = f"={YIELDS}!${letter}${FIRST + 1}:${letter}${last + 1}"
        bars = {"type": "custom", "plus_values": spread, "minus_values": spread, "line": {"color": look.INK}}
        looks = {"fill": {"color": PALE}, "border": {"color": look.ACCENT}, "gap": 60, "y_error_bars": bars}
        chart.add_series({"name": "Observed mean"} | _drawn_from("mean", last) | looks)
        return chart

    def _guide(self, last: int):
        """Marks without a line: what the guide says of each breed."""
        chart = self.book.add_chart({"type": "line"})
        mark = {"type": "diamond", "size": 8, "fill": {"color": look.INK}, "border": {"color": look.INK}}
        looks = {"line": {"none": True}, "marker": mark}
        chart.add_series({"name": "In the guide"} | _drawn_from("published", last) | looks)
        return chart

    def _sheet(self, name: str, *, landscape: bool = True):
        sheet = self.book.add_worksheet(name)
        if landscape:
            sheet.set_landscape()
        sheet.fit_to_pages(1, 0)
        sheet.hide_gridlines(2)
        sheet.set_footer(f"&L{name}&RPage &P of &N")
        return sheet

    def _fill(self, sheet, first: int, column: int, values: pd.Series, form=None) -> None:
        """Write the values of a column, one below another: texts always as texts, missing values as blanks."""
        write = sheet.write_number if pd.api.types.is_numeric_dtype(values) else sheet.write_string
        cells = zip(values.tolist(), values.isna().tolist(), strict=True)
        for row, (value, is_missing) in enumerate(cells, start=first):
            if not is_missing:
                write(row, column, value, form)
            elif form:
                sheet.write_blank(row, column, None, form)

    def _format(self, properties: dict):
        key = tuple(sorted(properties.items()))
        if key not in self.formats:
            self.formats[key] = self.book.add_format(properties)
        return self.formats[key]
