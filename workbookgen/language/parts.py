"""The parts of a planner: holders of fields, the chapters that they make up, and the sheets made of chapters.

A holder is a Card of single values, a Log with one record per row, a Table of fixed facts, or a ProofTable, which
computes published examples with the planner's own formulas. It does not say where its fields are shown: the views do
(`views`). A chapter is the smallest unit that can be left out of a planner: holders, and the bands that show them.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from workbookgen.errors import DescriptionError, Fault
from workbookgen.language import dimensions
from workbookgen.language.automatic import (
    FAULT,
    FILLED,
    FIRST,
    LINE,
    MARK,
    MESSAGE,
    OPEN,
    OWN_LINE,
    QUESTIONS,
    SPOILED,
    UNFINISHED,
    Automatic,
    Repeat,
    repeats,
)
from workbookgen.language.domains import Name
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.keys import Keyed, check_keys, require_word
from workbookgen.language.positions import Position, position_of, positions_needed
from workbookgen.language.proofs import ProofTable
from workbookgen.language.quantities import NUMBER_UNIT, Unit
from workbookgen.language.rules import Distinct, Rule
from workbookgen.language.type_checks import require_types
from workbookgen.language.views import Band, Grid, LogView, Section, SheetKind

LISTED = "listed"
AGAIN = "again_"  # prefix for the key of an answer that is calculated a second time


@dataclass(frozen=True)
class Block(Keyed):
    """The fields of one kind of record, and the rules that a record must keep."""

    key: str
    title: str  # empty where the sheet's title says it all
    groups: tuple[Group, ...]
    rules: tuple[Rule, ...] = ()
    about: str = ""
    rows: int = 1
    distinct: tuple[Distinct, ...] = ()  # the results that no two records may share

    def __post_init__(self):
        require_types(f"block {self.key}", self)
        require_word(f"block {self.key}", self.key)
        check_keys(f"block {self.key}", [each.key for each in self.fields])
        if faults := [Fault(f"block {self.key}", sentence) for sentence in self._objections()]:
            raise DescriptionError(*faults)

    def _objections(self) -> Iterator[str]:
        """Rules and texts that refer to fields it does not have, and the like."""
        if self.rows < 1:
            yield f"it has {self.rows} lines; give it one or more."
        for each in self.distinct:
            if each.key not in self.by_key:
                yield f"no two records may share {each.key}, which is no field of it."
        for rule in self.rules:
            kind, called = (Input | Result, "field") if rule.asks else (Input, "input")
            for word in rule.text.words:
                if not isinstance(self.by_key.get(word), kind):
                    yield f"the rule {rule.sentence!r} looks at {word}, which is no {called} of it."

    @cached_property
    def fields(self) -> tuple[Input | Result, ...]:
        return tuple(each for group in self.groups for each in group.fields)

    @cached_property
    def inputs(self) -> tuple[Input, ...]:
        return tuple(each for each in self.fields if isinstance(each, Input))

    @cached_property
    def results(self) -> tuple[Result, ...]:
        return tuple(each for each in self.fields if isinstance(each, Result))

    @cached_property
    def by_key(self) -> dict[str, Input | Result]:
        return {each.key: each for each in self.fields}

    @cached_property
    def ranged(self) -> tuple[Input | Result, ...]:
        """The fields with a usual range."""
        return tuple(each for each in self.fields if each.usual)

    @cached_property
    def questioned(self) -> tuple[Result, ...]:
        """The results that its questions read."""
        words = {word for rule in self.rules for word in rule.text.words} | {each.key for each in self.ranged}
        return tuple(each for each in self.results if each.key in words)

    @property
    def asks(self) -> bool:
        """Whether it asks anything about a record in which nothing is wrong."""
        return bool(self.ranged) or any(rule.asks for rule in self.rules)

    @cached_property
    def automatic(self) -> tuple[Automatic, ...]:
        """The fields that the planner adds by itself."""
        return (*((MESSAGE,) if self.inputs else ()), *self.positions)

    @cached_property
    def positions(self) -> tuple[Position, ...]:
        """The positions of its records' names in the lists that they choose from or look into."""
        return positions_needed([(self.full_key(key), key) for key in self.unique_keys], self.by_key)

    @property
    def unique_keys(self) -> tuple[str, ...]:
        """Keys of the results that no two records may share; each is a list in which a record can be found."""
        listed = (LISTED,) if any(map(self.names_its_records, self.inputs)) else ()
        return (*listed, *(each.key for each in self.distinct))

    def position_of(self, key: str, names: str) -> Position | None:
        """The position of a field's text in a list."""
        return position_of(self.positions, self.by_key, key, names)

    @cached_property
    def automatic_by_key(self) -> dict[str, Automatic]:
        return {each.key: each for each in self.automatic}

    @property
    def names_column(self) -> str:
        """Full key of the column of names by which other sheets find its records."""
        return self.full_key(LISTED)

    def names_its_records(self, field: Input) -> bool:
        """Whether this input is the name by which other sheets find a record."""
        return isinstance(field.domain, Name) and field.domain.unique and LISTED in self.by_key


@dataclass(frozen=True)
class Card(Block):
    """Single values, one below another."""


@dataclass(frozen=True)
class Log(Block):
    """A table with one record per row. `starts_with` are its records in a new planner."""

    starts_with: Sequence[Mapping[str, float | str]] = ()
    repeated: tuple[str, ...] = ()  # keys of the results that each record also shows on its ticket

    @cached_property
    def automatic(self) -> tuple[Automatic, ...]:
        said = (
            (MARK, MESSAGE, FILLED, OWN_LINE, FIRST, OPEN, QUESTIONS, UNFINISHED, SPOILED)
            if self.inputs
            else (LINE, OWN_LINE)
        )
        asked = (FAULT,) if self.asks else ()
        return (*said, *asked, *self.positions, *self.repeats)

    @property
    def lines_column(self) -> str:
        """Full key of the column that tells in which of its lines a record stands."""
        return self.full_key(OWN_LINE.key)

    @cached_property
    def repeats(self) -> tuple[Repeat, ...]:
        return repeats(self.by_key, self.repeated, self.rows)


@dataclass(frozen=True)
class Column:
    """One column of a table of fixed facts."""

    key: str
    label: str
    values: tuple[float | str, ...]
    unit: Unit | None = None
    width: int = 12
    runs_on: bool = False  # a last column of one-line texts, which may extend over the free cells to their right

    def __post_init__(self):
        require_types(f"column {self.key}", self)

    @property
    def is_text(self) -> bool:
        return not self.values or isinstance(self.values[0], str)  # proofs have a column of either, computed


def unit_of(field: Input | Result | Automatic | Column, system: str) -> Unit | None:
    """The unit in which a unit system shows a field; None for texts."""
    if isinstance(field, Column) or field.unit is None:
        return field.unit
    return field.unit.unit(system)


def dimension_of(field: Input | Result | Automatic | Column, system: str) -> dimensions.Dimension:
    """The dimension of a field, or TEXT."""
    return dimensions.TEXT if field.is_text else dimensions.dimension((unit_of(field, system) or NUMBER_UNIT).pint)


@dataclass(frozen=True)
class Table(Keyed):
    """Fixed facts. Nobody types here."""

    key: str
    title: str
    columns: tuple[Column, ...]
    about: str = ""

    def __post_init__(self):
        require_types(f"table {self.key}", self)
        require_word(f"table {self.key}", self.key)

    @property
    def rows(self) -> int:
        return len(self.columns[0].values)

    @cached_property
    def by_key(self) -> dict[str, Column]:
        return {each.key: each for each in self.columns}


Holder = Block | Table | ProofTable


@dataclass(frozen=True)
class Chapter:
    """A part of a sheet that is kept or left out as a whole; settings and texts call it by its `name`.

    If the chapter is left out, its `cautions` move to the desk.
    """

    name: str
    holders: tuple[Holder, ...]
    view: LogView | tuple[Band, ...]
    cautions: tuple[str, ...] = ()

    def __post_init__(self):
        require_types(f"chapter {self.name}", self)


@dataclass(frozen=True)
class Sheet:
    """One worksheet: its chapters, one below another, or a single log with a view of its own."""

    name: str
    title: str
    about: str  # what it is for, in one sentence
    chapters: tuple[Chapter, ...]
    kind: SheetKind = SheetKind.AID
    related: tuple[str, ...] = ()  # sheets that its first line links to, besides the desk
    grid: Grid = Grid()
    is_added: bool = False  # made besides the sheets that settings ask for; no other sheet links to it

    def __post_init__(self):
        require_types(f"sheet {self.name}", self)
        views = [chapter.view for chapter in self.chapters]
        if any(isinstance(view, LogView) for view in views) and (len(views) > 1 or len(self.logs) != 1):
            alone = "a log that has a view of its own needs the sheet to itself."
            raise DescriptionError.at(f"sheet {self.name}", alone)
        for section in self.sections:
            first, last = section.across
            if not 1 <= first <= last <= self.grid.last:
                columns = f"it goes across {section.across}, and the grid has the columns 1 to {self.grid.last}."
                raise DescriptionError.at(f"section {section.title!r}", columns)

    @property
    def holders(self) -> tuple[Holder, ...]:
        return tuple(holder for chapter in self.chapters for holder in chapter.holders)

    @property
    def logs(self) -> tuple[Log, ...]:
        return tuple(holder for holder in self.holders if isinstance(holder, Log))

    @property
    def log_view(self) -> LogView | None:
        """The view of its log, if that has the sheet to itself."""
        view = self.chapters[0].view if self.chapters else ()
        return view if isinstance(view, LogView) else None

    def answered_twice(self) -> "Sheet":
        """The sheet with its log's answers calculated a second time in hidden columns, to notice an overwritten one."""
        if not (view := self.log_view):
            return self
        [log], [chapter] = self.logs, self.chapters
        answers = dict.fromkeys(key for _, words in view.answers for key in words.split())
        # A key that is no result is reported by the planner.
        found = (each for key in answers if isinstance(each := log.by_key.get(key), Result))
        again = tuple(replace(each, key=f"{AGAIN}{each.key}", note="", usual=None) for each in found)
        twice = replace(log, groups=(*log.groups, Group("Worked out again", again, printed=False)))
        holders = tuple(twice if each is log else each for each in chapter.holders)
        return replace(self, chapters=(replace(chapter, holders=holders),))

    @property
    def bands(self) -> tuple[Band, ...]:
        return () if self.log_view else tuple(band for chapter in self.chapters for band in chapter.view)

    @property
    def sections(self) -> tuple[Section, ...]:
        return tuple(section for band in self.bands for section in band.sections)

    @cached_property
    def shown(self) -> tuple[str, ...]:
        """Full keys of the fields that its views show."""
        if self.log_view:
            return self.log_view.shown(self.logs[0].key)
        return (*filter(None, [self.grid.chosen]), *(key for section in self.sections for key in section.shown))
