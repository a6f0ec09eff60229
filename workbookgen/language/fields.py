"""Fields: what the spinner fills in, and what the planner calculates.

A result carries its formula and, beside it, the reference function that it must agree with. The words of the formula
are the names of the function's parameters; `uses` pairs the two where they differ. Both are written by hand, and
neither is generated from the other.
"""

import inspect
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Date, Domain, Number
from workbookgen.language.formula import Formula, formula
from workbookgen.language.quantities import NUMBER, Kind
from workbookgen.language.type_checks import require_types
from workbookgen.language.usual import Usual
from workbookgen.units import Quantity


@dataclass(frozen=True)
class Input:
    """A cell, or a log's column, that the spinner fills in.

    `starts_as` is a quantity wherever its unit depends on the unit system.
    """

    key: str
    label: str
    domain: Domain
    unit: Kind | None = None
    needed: bool = False  # the record is unfinished without it
    blank_means: float | None = None  # what an empty cell stands for
    starts_as: float | str | Quantity | None = None  # what a new planner's card shows
    usual: Usual | None = None  # what lies outside is asked about
    help: str = ""
    width: int = 10

    def __post_init__(self):
        require_types(f"field {self.key}", self)
        if faults := list(self._objections()):
            raise DescriptionError.at(f"field {self.key}", "; ".join(faults) + ".")

    def _objections(self) -> Iterator[str]:
        """Arguments that contradict each other."""
        if not self.label.strip():
            yield "its label says nothing"
        has_dimension = self.unit is not None and self.unit.has_dimension
        unit = self.unit.customary if self.unit else NUMBER.customary
        if has_dimension and self.is_text:
            yield f"its domain {type(self.domain).__name__} is for texts, which have no unit"
        if has_dimension and isinstance(self.starts_as, float | int):
            yield "it starts as a bare number; give it as a quantity, with its unit"
        if isinstance(self.starts_as, Quantity) and not self.starts_as.is_compatible_with(unit.pint):
            yield f"it starts as {self.starts_as}, which no {unit.symbol or 'plain number'} can be"
        if faults := list(_ends_of_another_kind(self)):
            yield from faults
        elif self.usual:
            yield from self._ends_of_no_use()
        if has_dimension and self.blank_means:
            yield "a blank cell of a quantity can stand for nothing but 0"
        if self.blank_means is not None:
            if not isinstance(self.domain, Number) or not self.domain.accepts(self.blank_means):
                yield f"its blank_means {self.blank_means:g} is outside its domain"
            if self.needed:
                yield "it is needed, so a blank cell means nothing: leave needed or blank_means out"

    def _ends_of_no_use(self) -> Iterator[str]:
        """Ends of its usual range beyond which its domain accepts nothing that could be asked about."""
        for unit in (self.unit or NUMBER).units:
            least, most = self.usual.shown(unit)
            if least is not None and least <= self.domain.low:
                yield f"its domain has nothing below what is usual, {least:g}"
            if most is not None and most >= self.domain.high:
                yield f"its domain has nothing above what is usual, {most:g}"

    @property
    def is_text(self) -> bool:
        return not isinstance(self.domain, Number | Date)

    def first(self, system: str) -> float | str | None:
        """What its cell holds in a new planner of this unit system."""
        return self.unit.unit(system).typed(self.starts_as) if isinstance(self.starts_as, Quantity) else self.starts_as


@dataclass(frozen=True)
class Result:
    """A cell, or a column, with its formula and the reference function that it must agree with."""

    key: str
    label: str
    formula: str
    reference: Callable
    unit: Kind | None = NUMBER  # None: the result is a text
    uses: Mapping[str, str] = field(default_factory=dict)  # parameter -> word
    leaves: tuple[str, ...] = ()  # parameters that keep their defaults; the formula spells these out
    fixed: Mapping[str, float] = field(default_factory=dict)  # parameters with a constant value, likewise spelled out
    only_if: str = ""  # a condition on words of the same record; the cell is blank unless it holds
    note: str = ""
    digits: int | None = None
    width: int = 10
    is_signed: bool = False  # show a plus sign before numbers above zero
    is_range: bool = False  # a text of two numbers, shown at the right as numbers are
    usual: Usual | None = None  # what lies outside is asked about

    def __post_init__(self):
        require_types(f"field {self.key}", self)
        if faults := list(self._objections()):
            raise DescriptionError.at(f"field {self.key}", "; ".join(faults) + ".")

    def _objections(self) -> Iterator[str]:
        """Constructs that its formula may not use, and parameters that its reference does not have."""
        yield from self.text.objections
        yield from self.condition.objections
        if self.condition.lookup_steps:
            yield "its condition looks something up, which nothing guards there: look it up in a field of its own"
        strangers = {*self.uses, *self.leaves, *self.fixed} - {*inspect.signature(self.reference).parameters}
        for name in sorted(strangers):
            yield f"its reference has no parameter {name}"
        yield from _ends_of_another_kind(self)
        if self.usual and not self.usual.hint:
            yield "its usual range does not say where to look"

    @property
    def is_text(self) -> bool:
        return self.unit is None

    @cached_property
    def text(self) -> Formula:
        return formula(self.formula)

    @cached_property
    def condition(self) -> Formula:
        return formula(self.only_if)

    @cached_property
    def words(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(self.text.words + self.condition.words))

    @cached_property
    def optional(self) -> frozenset[str]:
        return self.text.optional | self.condition.optional

    @cached_property
    def arguments(self) -> dict[str, str]:
        """Reference parameter -> the word that it stands for."""
        parameters = inspect.signature(self.reference).parameters
        taken = (name for name in parameters if name not in self.leaves and name not in self.fixed)
        return {name: self.uses.get(name, name) for name in taken}

    def may_miss(self, word: str, field: object) -> bool:
        """Whether it has a value without this word: the formula tests for it, or a blank cell has a meaning."""
        return word in self.optional or (isinstance(field, Input) and field.blank_means is not None)

    @property
    def reference_path(self) -> str:
        return f"{self.reference.__module__}.{self.reference.__qualname__}"


def _ends_of_another_kind(field: Input | Result) -> Iterator[str]:
    """Ends of its usual range that cannot be compared with what is in its cells."""
    if field.usual is None:
        return
    if field.is_text or isinstance(field, Input) and isinstance(field.domain, Date):
        yield "it holds no plain numbers, so it has no usual range"
        return
    unit = (field.unit or NUMBER).customary
    for end in field.usual.ends:
        if (
            isinstance(end, Quantity)
            and not end.is_compatible_with(unit.pint)
            or not isinstance(end, Quantity)
            and unit.pint != "dimensionless"
        ):
            yield f"its usual range ends at {end}, which no {unit.symbol or 'plain number'} can be"


@dataclass(frozen=True)
class Group:
    """Fields under one heading. A group that is not `printed` serves other sheets only, and is hidden."""

    heading: str
    fields: tuple[Input | Result, ...]
    printed: bool = True

    def __post_init__(self):
        require_types(f"group {self.heading!r}", self)
