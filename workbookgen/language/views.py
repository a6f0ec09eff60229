"""How a planner looks: where fields are on a sheet, independently of what they compute.

A block (a card's single values, a log's records) says nothing about place. A view does. A page is a stack of bands; a
band holds sections side by side, on a grid of twelve columns; a section shows fields of any block of its sheet, by
their full keys. A field that no section shows is calculated in hidden columns. A log's view names what one always
types and what one came for; everything else in the log is folded beside it, and what only other sheets need is
hidden.

Every section says what it shows, where it links, and what remains of it when fields are left out.
"""

from collections.abc import Collection
from dataclasses import dataclass, replace
from enum import Enum
from typing import Literal, Self

from workbookgen.language.type_checks import require_types

COLUMNS = 12  # of the grid of a page
COLUMN = 93  # width of one that is as usual, in screen pixels
FREE = "."  # in the keys of a listing: a column of the grid into which the one before may extend
LEFT, RIGHT, WHOLE = (1, 6), (8, 12), (1, COLUMNS)  # where questions stand, and answers


class SheetKind(Enum):
    """What a sheet is for; its tab has the color of its kind."""

    DESK = "desk"  # where one comes in
    PAGE = "page"  # one question about one thing
    LOG = "log"  # a line for each thing
    AID = "aid"  # questions of the trade
    PAPER = "paper"  # to be printed, or read


@dataclass(frozen=True)
class LogView:
    """What is always seen of a log: what one types, with the name first, and what one came for, under headings.

    All other inputs are folded right after those that one always types, so inputs are side by side and can be pasted
    into and sorted. The other results follow, folded by group. All are keys of the log; `sums` are full keys of cells
    in its head.
    """

    typed: str
    answers: tuple[tuple[str, str], ...] = ()  # heading -> keys
    sums: tuple[str, ...] = ()

    def __post_init__(self):
        require_types(f"the view of {self.typed!r}", self)

    def shown(self, block: str) -> tuple[str, ...]:
        """Full keys of what it names in this log."""
        words = " ".join((self.typed, *(keys for _, keys in self.answers))).split()
        return (*(f"{block}_{word}" for word in words if word != FREE), *self.sums)


@dataclass(frozen=True)
class Link:
    """A link to a place on another sheet; `field` is the full key of its target cell."""

    sheet: str
    words: str
    field: str = ""


@dataclass(frozen=True, kw_only=True)
class Section:
    """Something under a heading, on some columns of the grid. `aside` is shown small at the heading's other end."""

    title: str = ""
    across: tuple[int, int] = WHOLE
    aside: str = ""
    is_below: bool = False  # below the section before it in its band, instead of beside it
    is_printed: bool = True  # what is not comes last on its sheet

    def __post_init__(self):
        require_types(f"section {self.title!r}", self)

    @property
    def shown(self) -> tuple[str, ...]:
        """Full keys of the fields for which it has cells."""
        return ()

    @property
    def links(self) -> tuple[Link, ...]:
        """Where it leads."""
        return ()

    def without(self, fallen: Collection[str], names: Collection[str]) -> Self | None:
        """What remains of it without these fields and these sheets."""
        return self


@dataclass(frozen=True, kw_only=True)
class Entries(Section):
    """Inputs to fill in, one line each."""

    fields: tuple[str, ...]
    across: tuple[int, int] = LEFT

    @property
    def shown(self) -> tuple[str, ...]:
        return self.fields

    def without(self, fallen: Collection[str], names: Collection[str]) -> Self | None:
        fields = tuple(each for each in self.fields if each not in fallen)
        return replace(self, fields=fields) if fields else None


@dataclass(frozen=True)
class Headline:
    """One large answer: `caption` above it, and below it, one line each, the results that say more."""

    field: str
    caption: str = ""
    below: tuple[str, ...] = ()
    columns: int = 0  # of the grid; 0: its share of the section's


@dataclass(frozen=True, kw_only=True)
class Answers(Section):
    """Calculated results: large answers side by side, then lines. `message` can take their place."""

    large: tuple[Headline, ...] = ()
    lines: tuple[str, ...] = ()
    message: str = ""
    across: tuple[int, int] = RIGHT

    @property
    def shown(self) -> tuple[str, ...]:
        large = tuple(key for each in self.large for key in (each.field, *each.below))
        return (*((self.message,) if self.message else ()), *large, *self.lines)

    def without(self, fallen: Collection[str], names: Collection[str]) -> Self | None:
        large = tuple(
            replace(each, below=tuple(key for key in each.below if key not in fallen))
            for each in self.large
            if each.field not in fallen
        )
        lines = tuple(each for each in self.lines if each not in fallen)
        return replace(self, large=large, lines=lines) if large or lines else None


@dataclass(frozen=True, kw_only=True)
class Matrix(Section):
    """Results in rows and columns, under heads: of each row its label and full keys, an empty one for an empty cell."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]

    @property
    def shown(self) -> tuple[str, ...]:
        return tuple(key for _, keys in self.rows for key in keys if key)

    def without(self, fallen: Collection[str], names: Collection[str]) -> Self | None:
        left = tuple((label, tuple("" if key in fallen else key for key in keys)) for label, keys in self.rows)
        left = tuple((label, keys) for label, keys in left if any(keys))
        return replace(self, rows=left) if left else None


@dataclass(frozen=True, kw_only=True)
class Sentences(Section):
    """Text results, each on a line of its own without a label; the first may be large."""

    fields: tuple[str, ...]
    is_large: bool = False

    @property
    def shown(self) -> tuple[str, ...]:
        return self.fields

    def without(self, fallen: Collection[str], names: Collection[str]) -> Self | None:
        fields = tuple(each for each in self.fields if each not in fallen)
        return replace(self, fields=fields) if fields else None


@dataclass(frozen=True, kw_only=True)
class Listing(Section):
    """A log on a page: one record below another, one field per grid column."""

    block: str
    view: LogView
    chart: "Chart | None" = None  # on the same rows as the records, in its own columns
    filled: str = ""  # keys whose cells are filled in proportion to the number in them

    @property
    def shown(self) -> tuple[str, ...]:
        return self.view.shown(self.block)

    @property
    def drawn(self) -> tuple[str, ...]:
        """Full keys of what its chart draws."""
        return self.chart.drawn if self.chart else ()

    def without(self, fallen: Collection[str], names: Collection[str]) -> Self | None:
        """Mere names of records are not a listing."""
        left = view_without(self.view, self.block, fallen)
        chart = self.chart and self.chart.without(fallen, names)
        filled = " ".join(key for key in self.filled.split() if f"{self.block}_{key}" not in fallen)
        says_more = left.typed or len(left.shown(self.block)) > 1
        return replace(self, view=left, chart=chart, filled=filled) if says_more else None


@dataclass(frozen=True, kw_only=True)
class Facts(Section):
    """A table of fixed facts."""

    table: str


@dataclass(frozen=True, kw_only=True)
class Examples(Section):
    """Published examples, each computed beside its printed answer."""

    table: str


@dataclass(frozen=True, kw_only=True)
class Prose(Section):
    """Something to read, one line each. Cautions stand out, and are never left out."""

    sentences: tuple[str, ...]
    is_caution: bool = False
    is_small: bool = False
    is_verbatim: bool = False  # somebody's own words: nothing of them is changed, whatever is left out


@dataclass(frozen=True, kw_only=True)
class Entrance(Section):
    """The entrance to a page for one question: a link, one number, what it counts, and further links."""

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

    def without(self, fallen: Collection[str], names: Collection[str]) -> Self | None:
        """If its link goes, the first of the further links that stays takes its place."""
        stay = tuple(
            each for each in (self.link, *self.more_links) if each.sheet not in names and each.field not in fallen
        )
        if not stay or {self.number, self.counts} & set(fallen):
            return None
        return replace(self, link=replace(stay[0], words=self.link.words), more_links=stay[1:])


@dataclass(frozen=True, kw_only=True)
class Links(Section):
    """Links, one line each; beside each, what is done there."""

    places: tuple[tuple[Link, str], ...]

    @property
    def links(self) -> tuple[Link, ...]:
        return tuple(link for link, _ in self.places)

    def without(self, fallen: Collection[str], names: Collection[str]) -> Self | None:
        places = tuple((link, what) for link, what in self.places if link.sheet not in names)
        return replace(self, places=places) if places else None


@dataclass(frozen=True, kw_only=True)
class Alerts(Section):
    """What needs a look: texts, one line each, each with a link to where it is corrected."""

    places: tuple[tuple[str, Link], ...]  # full key -> where it links

    @property
    def shown(self) -> tuple[str, ...]:
        return tuple(key for key, _ in self.places)

    @property
    def links(self) -> tuple[Link, ...]:
        return tuple(link for _, link in self.places)

    def without(self, fallen: Collection[str], names: Collection[str]) -> Self | None:
        places = tuple((key, link) for key, link in self.places if key not in fallen and link.sheet not in names)
        return replace(self, places=places) if places else None


@dataclass(frozen=True, kw_only=True)
class Picture(Section):
    """A drawing of our own, at its size. `about` describes what it shows."""

    file: str
    about: str


# How columns are drawn, and how lines are.
Look = Literal["accent", "soft", "straw", "hair"] | Literal["points", "chosen", "limit"]


@dataclass(frozen=True)
class Series:
    """What a chart draws: a log's column, or the cells from a first field to a last one."""

    label: str
    keys: tuple[str, ...]  # full keys
    look: Look = "accent"
    whisker: tuple[str, ...] = ()  # full keys of its uncertainty, to either side
    at: tuple[str, ...] = ()  # full keys of its positions, if not the chart's categories

    def __post_init__(self):
        require_types(f"the series {self.label}", self)


@dataclass(frozen=True, kw_only=True)
class Chart(Section):
    """A chart of numbers on the sheets. `about` describes what it shows."""

    about: str
    kind: Literal["bars", "shares", "stages", "control"]  # drawn in book/charts.py
    series: tuple[Series, ...]
    categories: tuple[str, ...] = ()  # full keys of the names below the columns
    heads: tuple[str, ...] = ()  # or the heads of a matrix on the same sheet
    records: int | None = None  # only the first so many
    rows: int = 10  # of the page

    @property
    def drawn(self) -> tuple[str, ...]:
        """Full keys of the fields whose numbers it draws; they may be on any sheet."""
        return (*self.categories, *(key for each in self.series for key in (*each.keys, *each.whisker)))

    def without(self, fallen: Collection[str], names: Collection[str]) -> Self | None:
        series = tuple(each for each in self.series if not set(fallen) & {*each.keys, *each.whisker, *each.at})
        return replace(self, series=series) if series and not set(fallen) & set(self.categories) else None


@dataclass(frozen=True, kw_only=True)
class Form(Section):
    """A form to fill in by hand: headings, each over a number of grid columns, and empty lines."""

    heads: tuple[tuple[str, int], ...]
    lines: int


@dataclass(frozen=True)
class Band:
    """Sections side by side; the next band begins below the longest of them."""

    sections: tuple[Section, ...]

    def __post_init__(self):
        require_types("a band", self)

    def without(self, fallen: Collection[str], names: Collection[str]) -> "Band | None":
        left = tuple(each for section in self.sections if (each := section.without(fallen, names)))
        return Band(left) if left else None


def band(*sections: Section) -> Band:
    """A band of these sections, from left to right."""
    return Band(sections)


def view_without(view: LogView, block: str, fallen: Collection[str]) -> LogView:
    """A log's view without these fields."""

    def left(words: str) -> str:
        return " ".join(word for word in words.split() if f"{block}_{word}" not in fallen).strip(" .")

    answers = tuple((heading, left(words)) for heading, words in view.answers if left(words))
    return LogView(left(view.typed), answers, tuple(each for each in view.sums if each not in fallen))


@dataclass(frozen=True)
class Grid:
    """The columns of a page, in screen pixels, and how it is printed.

    `chosen` is the full key of the input in which one chooses what the page shows, beside its title. Of a sheet that is
    cut up or filled in by hand, `paper` is its first and last printed column, in portrait and at true size.
    """

    widths: tuple[int, ...] = (COLUMN,) * COLUMNS
    chosen: str = ""
    paper: tuple[int, int] | None = None

    @property
    def last(self) -> int:
        """Its last column: sections may go across as many as are usual."""
        return max(COLUMNS, len(self.widths))
