"""Views: where fields are shown on a sheet, independently of what they compute.

A block does not say where it is shown; a view does. A page is a stack of bands; a band holds sections side by side,
on a grid of twelve columns; a section shows fields of any block of its sheet, by their full keys. A field that no
section shows is calculated in a hidden column. A log's view names the inputs that one always types and the results
that one came for; the rest of the log is folded beside them, and what only other sheets need is hidden.

Every section says what it shows, where it links, and what remains of it when fields are left out.
"""

from collections.abc import Collection
from dataclasses import dataclass, replace
from enum import Enum
from typing import Literal, Self

from workbookgen.language.type_checks import require_types

COLUMNS = 12  # of the grid of a page
COLUMN = 93  # the usual width of one, in screen pixels
FREE = "."  # among the keys of a listing: a grid column into which the text before it may extend
LEFT, RIGHT, WHOLE = (1, 6), (8, 12), (1, COLUMNS)  # the columns of questions, of answers, and of the whole page


class SheetKind(Enum):
    """What a sheet is for. Each kind has a tab color."""

    DESK = "desk"  # the entrance to all others
    PAGE = "page"  # everything about one skein, lot or project
    LOG = "log"  # one line for each
    AID = "aid"  # calculators of the trade
    PAPER = "paper"  # to print, or to read


@dataclass(frozen=True)
class LogView:
    """What is always visible of a log: the inputs `typed`, the name first, and the `answers` under their headings.

    The other inputs are folded right behind those typed, so that all inputs are adjacent and can be pasted and sorted.
    The other results follow, folded by group. All these are keys of the log, separated by spaces; `in_head` is the
    full key of the sentence in its head that sums it up.
    """

    typed: str
    answers: tuple[tuple[str, str], ...] = ()  # heading -> keys
    in_head: str = ""

    def __post_init__(self):
        require_types(f"the view of {self.typed!r}", self)

    def shown(self, block: str) -> tuple[str, ...]:
        """Full keys of the fields of this log that it names."""
        words = " ".join((self.typed, *(keys for _, keys in self.answers))).split()
        return (*(f"{block}_{word}" for word in words if word != FREE), *filter(None, [self.in_head]))

    def without(self, block: str, absent: Collection[str]) -> "LogView":
        """The view without the fields of these full keys."""

        def left(words: str) -> str:
            return " ".join(word for word in words.split() if f"{block}_{word}" not in absent).strip(" .")

        answers = tuple((heading, left(words)) for heading, words in self.answers if left(words))
        return LogView(left(self.typed), answers, "" if self.in_head in absent else self.in_head)


@dataclass(frozen=True)
class Link:
    """A link to another sheet, there to the cell of the `field` with this full key, if one is given."""

    sheet: str
    words: str
    field: str = ""


@dataclass(frozen=True, kw_only=True)
class Section:
    """Something under a heading, `across` some columns of the grid. `aside` is a small text at the heading's end."""

    title: str = ""
    across: tuple[int, int] = WHOLE
    aside: str = ""
    is_below: bool = False  # below the previous section of its band, instead of beside it
    is_printed: bool = True  # sections that are not come last on their sheet

    def __post_init__(self):
        require_types(f"section {self.title!r}", self)

    @property
    def shown(self) -> tuple[str, ...]:
        """Full keys of the fields that it has cells for."""
        return ()

    @property
    def links(self) -> tuple[Link, ...]:
        """Its links to other sheets."""
        return ()

    def without(self, absent: Collection[str], absent_sheets: Collection[str]) -> Self | None:
        """What remains of it without these fields, by full key, and these sheets; None if nothing does."""
        return self


@dataclass(frozen=True, kw_only=True)
class Lines(Section):
    """Fields of one kind, one per line."""

    fields: tuple[str, ...]

    @property
    def shown(self) -> tuple[str, ...]:
        return self.fields

    def without(self, absent: Collection[str], absent_sheets: Collection[str]) -> Self | None:
        fields = tuple(each for each in self.fields if each not in absent)
        return replace(self, fields=fields) if fields else None


@dataclass(frozen=True, kw_only=True)
class Entries(Lines):
    """Inputs to fill in, one per line."""

    across: tuple[int, int] = LEFT


@dataclass(frozen=True)
class Headline:
    """One large answer, with a `caption` above it and further results `below` it, one per line."""

    field: str
    caption: str = ""
    below: tuple[str, ...] = ()
    columns: int = 0  # of the grid; 0 for an equal share of the section's


@dataclass(frozen=True, kw_only=True)
class Answers(Section):
    """Calculated results: large answers side by side, then lines. Its `message` says why they are blank."""

    large: tuple[Headline, ...] = ()
    lines: tuple[str, ...] = ()
    message: str = ""
    across: tuple[int, int] = RIGHT

    @property
    def shown(self) -> tuple[str, ...]:
        large = tuple(key for each in self.large for key in (each.field, *each.below))
        return (*((self.message,) if self.message else ()), *large, *self.lines)

    def without(self, absent: Collection[str], absent_sheets: Collection[str]) -> Self | None:
        large = tuple(
            replace(each, below=tuple(key for key in each.below if key not in absent))
            for each in self.large
            if each.field not in absent
        )
        lines = tuple(each for each in self.lines if each not in absent)
        return replace(self, large=large, lines=lines) if large or lines else None


@dataclass(frozen=True, kw_only=True)
class Matrix(Section):
    """Results in rows and columns. A row is a label and a full key under each head, "" for an empty cell."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]

    @property
    def shown(self) -> tuple[str, ...]:
        return tuple(key for _, keys in self.rows for key in keys if key)

    def without(self, absent: Collection[str], absent_sheets: Collection[str]) -> Self | None:
        left = tuple((label, tuple("" if key in absent else key for key in keys)) for label, keys in self.rows)
        left = tuple((label, keys) for label, keys in left if any(keys))
        return replace(self, rows=left) if left else None


@dataclass(frozen=True, kw_only=True)
class Sentences(Lines):
    """Results that are texts, one per line and without labels; the first may be large, and the last long."""

    is_large: bool = False
    is_long: bool = False  # the last may take two lines, and ends where the section does


@dataclass(frozen=True, kw_only=True)
class Listing(Section):
    """A log on a page: a record per row, a field per grid column."""

    block: str
    view: LogView
    chart: "Chart | None" = None  # beside the records, on the same rows
    filled: str = ""  # keys of the cells that are shaded by the number in them

    @property
    def shown(self) -> tuple[str, ...]:
        return self.view.shown(self.block)

    @property
    def drawn(self) -> tuple[str, ...]:
        """Full keys of what its chart draws."""
        return self.chart.drawn if self.chart else ()

    def without(self, absent: Collection[str], absent_sheets: Collection[str]) -> Self | None:
        """What remains of it; nothing, if that would be mere names of records."""
        left = self.view.without(self.block, absent)
        chart = self.chart and self.chart.without(absent, absent_sheets)
        filled = " ".join(key for key in self.filled.split() if f"{self.block}_{key}" not in absent)
        says_more = left.typed or len(left.shown(self.block)) > 1
        return replace(self, view=left, chart=chart, filled=filled) if says_more else None


@dataclass(frozen=True, kw_only=True)
class Facts(Section):
    """A table of fixed facts."""

    table: str


@dataclass(frozen=True, kw_only=True)
class Examples(Section):
    """Published examples, each computed next to its printed answer."""

    table: str


@dataclass(frozen=True, kw_only=True)
class Prose(Section):
    """Sentences to read, one per line. Cautions stand out, and are never left out."""

    sentences: tuple[str, ...]
    is_caution: bool = False
    is_small: bool = False
    is_verbatim: bool = False  # somebody's own words, which stay as they are whatever is left out


@dataclass(frozen=True, kw_only=True)
class Entrance(Section):
    """The entrance to another sheet: a link, a number, what it counts, and more links."""

    link: Link
    number: str
    counts: str
    more_links: tuple[Link, ...] = ()

    @property
    def shown(self) -> tuple[str, ...]:
        return self.number, self.counts

    @property
    def links(self) -> tuple[Link, ...]:
        return (self.link, *self.more_links)

    def without(self, absent: Collection[str], absent_sheets: Collection[str]) -> Self | None:
        """What remains of it. If its own link goes, the first of the others that stays takes its place."""
        stay = tuple(
            each
            for each in (self.link, *self.more_links)
            if each.sheet not in absent_sheets and each.field not in absent
        )
        if not stay or {self.number, self.counts} & set(absent):
            return None
        return replace(self, link=replace(stay[0], words=self.link.words), more_links=stay[1:])


@dataclass(frozen=True, kw_only=True)
class Links(Section):
    """Links, one per line, each with what is done there."""

    places: tuple[tuple[Link, str], ...]

    @property
    def links(self) -> tuple[Link, ...]:
        return tuple(link for link, _ in self.places)

    def without(self, absent: Collection[str], absent_sheets: Collection[str]) -> Self | None:
        places = tuple((link, what) for link, what in self.places if link.sheet not in absent_sheets)
        return replace(self, places=places) if places else None


@dataclass(frozen=True, kw_only=True)
class Alerts(Section):
    """Sentences about what needs a look, one per line, each with a link to where it is put right."""

    places: tuple[tuple[str, Link], ...]  # the full key of a sentence, and its link

    @property
    def shown(self) -> tuple[str, ...]:
        return tuple(key for key, _ in self.places)

    @property
    def links(self) -> tuple[Link, ...]:
        return tuple(link for _, link in self.places)

    def without(self, absent: Collection[str], absent_sheets: Collection[str]) -> Self | None:
        places = tuple(
            (key, link) for key, link in self.places if key not in absent and link.sheet not in absent_sheets
        )
        return replace(self, places=places) if places else None


@dataclass(frozen=True, kw_only=True)
class Picture(Section):
    """A drawing of our own, at its own size. `about` describes it to those who cannot see it."""

    file: str
    about: str


# How columns of a chart are drawn, or its lines and points.
Look = Literal["accent", "soft", "straw", "hair"] | Literal["points", "chosen", "limit"]


@dataclass(frozen=True)
class Series:
    """A series of a chart: a log's column, or the cells from a first field to a last one."""

    label: str
    keys: tuple[str, ...]  # full keys
    look: Look = "accent"
    whisker: tuple[str, ...] = ()  # full keys of its error bars, to either side
    at: tuple[str, ...] = ()  # full keys of its x values, if not the chart's categories

    def __post_init__(self):
        require_types(f"the series {self.label}", self)


@dataclass(frozen=True, kw_only=True)
class Chart(Section):
    """A chart of numbers on the sheets. `about` describes it to those who cannot see it."""

    about: str
    kind: Literal["bars", "shares", "stages", "control"]  # drawn in book/charts.py
    series: tuple[Series, ...]
    categories: tuple[str, ...] = ()  # full keys of the names below the columns
    heads: tuple[str, ...] = ()  # or, instead, the heads of a matrix on the same sheet
    records: int | None = None  # how many of the first records it draws; None for all
    rows: int = 10  # its height, in rows of the page

    @property
    def drawn(self) -> tuple[str, ...]:
        """Full keys of the fields that it draws; they may be on any sheet."""
        return (*self.categories, *(key for each in self.series for key in (*each.keys, *each.whisker)))

    def without(self, absent: Collection[str], absent_sheets: Collection[str]) -> Self | None:
        series = tuple(each for each in self.series if not set(absent) & {*each.keys, *each.whisker, *each.at})
        return replace(self, series=series) if series and not set(absent) & set(self.categories) else None


@dataclass(frozen=True, kw_only=True)
class PaperForm(Section):
    """A paper form to fill in by hand: headings, each over a number of grid columns, and empty lines."""

    heads: tuple[tuple[str, int], ...]
    lines: int


@dataclass(frozen=True)
class Band:
    """Sections side by side; the next band begins below the longest of them."""

    sections: tuple[Section, ...]

    def __post_init__(self):
        require_types("a band", self)

    def without(self, absent: Collection[str], absent_sheets: Collection[str]) -> "Band | None":
        left = tuple(each for section in self.sections if (each := section.without(absent, absent_sheets)))
        return Band(left) if left else None


def band(*sections: Section) -> Band:
    """A band of these sections, from left to right."""
    return Band(sections)


@dataclass(frozen=True)
class Grid:
    """The columns of a page, in screen pixels, and how it is printed.

    `chosen` is the full key of the input beside the title in which one chooses what the page is about. A sheet to cut
    up or to fill in by hand is printed in portrait at true size: `paper` is then its first and last printed column.
    """

    widths: tuple[int, ...] = (COLUMN,) * COLUMNS
    chosen: str = ""
    paper: tuple[int, int] | None = None

    @property
    def last(self) -> int:
        """The last column; there are at least the usual twelve, even if fewer have a width."""
        return max(COLUMNS, len(self.widths))
