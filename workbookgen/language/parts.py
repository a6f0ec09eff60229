"""The parts of a sheet, and the planner that holds all sheets.

A Card shows single labeled values, a Log one record a row; both are blocks of fields and
differ only in how they lie on the sheet. A Table holds fixed facts, Text is read, Links lead
to other sheets, and a ProofTable computes published examples with the planner's own formulas.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from graphlib import CycleError, TopologicalSorter
from textwrap import wrap

from workbookgen.errors import DescriptionError, Fault
from workbookgen.language import dimensions
from workbookgen.language.domains import Name
from workbookgen.language.fields import Group, Input, Result, Rule, check_keys
from workbookgen.language.quantities import NUMBER_UNIT, Unit

MESSAGE = "message"
LISTED = "listed"
LETTERS_A_LINE, FEWEST_LETTERS = 120, 40  # of a text; and of its last line


@dataclass(frozen=True)
class Block:
    """Fields of one kind of record, with the inputs first, and what can be wrong with one."""

    key: str
    title: str  # empty where the sheet's own title says it all
    groups: tuple[Group, ...]
    rules: tuple[Rule, ...] = ()
    about: str = ""
    rows: int = 1

    def __post_init__(self):
        check_keys(f"block {self.key}", self.fields)
        kinds = [isinstance(each, Input) for each in self.fields]
        if kinds != sorted(kinds, reverse=True):
            raise DescriptionError.at(f"block {self.key}", "its inputs must come before its results.")
        printed = [group.printed for group in self.groups]
        if printed != sorted(printed, reverse=True):
            raise DescriptionError.at(f"block {self.key}", "what is not printed must come last.")

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

    @property
    def names_column(self) -> str:
        """Full key of the column in which other sheets find this block's records by name."""
        return f"{self.key}_{LISTED}"

    def names_its_records(self, field: Input) -> bool:
        """Whether other sheets find a record by what is typed into this input."""
        return isinstance(field.domain, Name) and field.domain.unique and LISTED in self.by_key


@dataclass(frozen=True)
class Card(Block):
    """Single values, one below the other."""


@dataclass(frozen=True)
class Log(Block):
    """A table with one record a row. `starts_with` are the records a new planner brings along."""

    starts_with: Sequence[Mapping[str, float | str]] = ()
    rows_a_page: int | None = None  # printed to be cut out, so many records to a page, as high as they fill it


@dataclass(frozen=True)
class Column:
    """One column of a table of fixed facts."""

    key: str
    label: str
    values: tuple[float | str, ...]
    unit: Unit | None = None
    width: int = 12
    runs_on: bool = False  # a last column of texts in one line each, over whatever is free to its right


def unit_of(field: Input | Result | Column, system: str) -> Unit | None:
    """The unit in which a unit system shows a field; None for texts."""
    return field.unit if isinstance(field, Column) else field.unit.unit(system) if field.unit else None


def dimension_of(field: Input | Result | Column, system: str) -> dimensions.Dimension:
    """What kind of quantity a field shows, or that it is a text."""
    is_text = isinstance(field.values[0], str) if isinstance(field, Column) else field.is_text
    return dimensions.TEXT if is_text else dimensions.dimension((unit_of(field, system) or NUMBER_UNIT).pint)


@dataclass(frozen=True)
class Table:
    """Fixed facts: nobody types here."""

    key: str
    title: str
    columns: tuple[Column, ...]
    about: str = ""
    printed: bool = True  # one that only formulas look into is not, and stands last on its sheet

    @property
    def rows(self) -> int:
        return len(self.columns[0].values)

    @cached_property
    def by_key(self) -> dict[str, Column]:
        return {each.key: each for each in self.columns}


def _broken(sentence: str) -> list[str]:
    """A sentence in lines; where the last would hold a word or two, all are made shorter."""
    lines = wrap(sentence, LETTERS_A_LINE)
    letters = LETTERS_A_LINE
    while len(lines) > 1 and len(lines[-1]) < FEWEST_LETTERS and len(shorter := wrap(sentence, letters := letters - 5)) == len(lines):
        lines = shorter
    return lines


@dataclass(frozen=True)
class Text:
    """Something to read: sentences under a heading, broken into lines that fit an upright page."""

    heading: str
    sentences: tuple[str, ...]
    is_caution: bool = False

    @cached_property
    def lines(self) -> tuple[str, ...]:
        return tuple(line for each in self.sentences for line in _broken(each))


@dataclass(frozen=True)
class Links:
    """Ways to other sheets: the name of each, and what is done there."""

    title: str
    about: str
    places: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Proof:
    """A published worked example of one result.

    `given` are the printed values of the formula's words, each with its unit's name in the
    registry; `printed` is the printed answer.
    """

    number: str
    what: str
    result: str  # full key of the result whose formula is proven
    given: Mapping[str, tuple[float | str, str]]
    printed: float | str
    unit: str
    tolerance: float
    source: str
    provenance: str


@dataclass(frozen=True)
class ProofTable:
    """Published examples, each computed live beside its printed answer.

    `verdict` compares the two, in the words computed, printed and tolerance.
    """

    key: str
    title: str
    proofs: tuple[Proof, ...]
    verdict: Result
    about: str = ""

    @property
    def rows(self) -> int:
        return len(self.proofs)

    @property
    def most_given(self) -> int:
        return max(len(proof.given) for proof in self.proofs)

    @cached_property
    def by_key(self) -> dict[str, Result]:
        return {self.verdict.key: self.verdict}


@dataclass(frozen=True)
class Series:
    """What a chart draws: a column, or the lines of a card from one field to another; as columns, or as marks."""

    label: str
    keys: tuple[str, ...]  # full keys: one column, or the first and last field of a card
    marks: str = ""


@dataclass(frozen=True)
class Chart:
    """A picture of numbers that stand on the sheets. `about` says in words what it shows."""

    title: str
    about: str
    categories: tuple[str, ...]  # full keys, as a series has them; of a card, the labels are shown
    series: tuple[Series, ...]
    rows: int | None = None  # only the first so many records


Part = Card | Log | Table | Text | Links | ProofTable | Chart


@dataclass(frozen=True)
class Sheet:
    """One worksheet: its parts stand below each other."""

    name: str
    title: str
    about: str
    parts: tuple[Part, ...]
    wide: bool = True  # printed landscape

    def __post_init__(self):
        if any(isinstance(part, Log) for part in self.parts) and len(self.parts) > 1:
            raise DescriptionError.at(f"sheet {self.name}", "a log needs a sheet of its own, with columns as wide as it wants them.")
        if any(isinstance(part, Table) and not part.printed for part in self.parts[:-1]):
            raise DescriptionError.at(f"sheet {self.name}", "a table that is not printed must come last.")


Holder = Block | Table | ProofTable


@dataclass(frozen=True)
class Meaning:
    """What a word of a formula stands for: one value of a record, or a whole column."""

    key: str
    holder: Holder
    field: Input | Result | Column
    is_column: bool


@dataclass(frozen=True)
class Planner:
    """The whole workbook, described."""

    system: str
    paper: str
    title: str
    sheets: tuple[Sheet, ...]
    absent: Mapping[str, tuple[Block, Input | Result]] = field(default_factory=dict)  # full key -> a field left out: blank ever after
    colors: Mapping[str, str] = field(default_factory=dict)  # role -> a color other than the usual

    @cached_property
    def blocks(self) -> dict[str, Block]:
        return {part.key: part for sheet in self.sheets for part in sheet.parts if isinstance(part, Block)}

    @cached_property
    def tables(self) -> dict[str, Table]:
        return {part.key: part for sheet in self.sheets for part in sheet.parts if isinstance(part, Table)}

    @cached_property
    def proofs(self) -> tuple[Proof, ...]:
        return tuple(
            proof
            for sheet in self.sheets
            for part in sheet.parts
            if isinstance(part, ProofTable)
            for proof in part.proofs
        )

    @cached_property
    def proof_tables(self) -> dict[str, ProofTable]:
        return {part.key: part for sheet in self.sheets for part in sheet.parts if isinstance(part, ProofTable)}

    @cached_property
    def by_key(self) -> dict[str, tuple[Holder, Input | Result | Column]]:
        """Full key -> what holds the field, and the field."""
        return {
            f"{key}_{name}": (holder, each)
            for key, holder in (self.blocks | self.tables | self.proof_tables).items()
            for name, each in holder.by_key.items()
        }

    def meaning(self, block: Block | None, word: str) -> Meaning:
        """What a word stands for in a formula of `block`: a field of its own record, or a full key."""
        if block and word in block.by_key:
            return Meaning(f"{block.key}_{word}", block, block.by_key[word], is_column=False)
        if word in self.by_key:
            holder, each = self.by_key[word]
            return Meaning(word, holder, each, is_column=not isinstance(holder, Card))
        own = f"{block.key}_{word}" if block else ""
        if own in self.absent:
            return Meaning(own, *self.absent[own], is_column=False)
        if word in self.absent:
            holder, each = self.absent[word]
            return Meaning(word, holder, each, is_column=not isinstance(holder, Card))
        raise DescriptionError.at(f"block {block.key}" if block else "planner", f"{word} is no field.")

    def __post_init__(self):
        faults = [
            Fault(f"field {block.key}_{result.key}", f"{sentence}.")
            for block in self.blocks.values()
            for result in block.results
            for sentence in self._mismatches(block, result)
        ]
        faults += [
            Fault(f"field {block.key}_{each.key}", f"{each.key} is also the full key of another field.")
            for block in self.blocks.values()
            for each in block.fields
            if each.key in self.by_key
        ]
        names = {sheet.name for sheet in self.sheets}
        faults += [
            Fault(f"sheet {sheet.name}", f"its link to {place} leads nowhere.")
            for sheet in self.sheets
            for part in sheet.parts
            if isinstance(part, Links)
            for place, _ in part.places
            if place not in names
        ]
        keys = self._full_keys()
        faults += [Fault(f"field {key}", "another field has this full key too.") for key in sorted({key for key in keys if keys.count(key) > 1})]
        faults += [Fault(f"proof {proof.number}", f"{word} is not given.") for proof in self.proofs for word in self._lacking(proof)]
        faults += [Fault(f"proof {proof.number}", f"{sentence}.") for proof in self.proofs for sentence in self._misprinted(proof)]
        if faults:
            raise DescriptionError(*faults)
        try:
            TopologicalSorter(self._dependencies()).prepare()
        except CycleError as circle:
            raise DescriptionError.at(" < ".join(circle.args[1]), "these fields depend on each other in a circle.") from None

    def _full_keys(self) -> list[str]:
        """The full key of every field, messages included; each becomes a defined name."""
        parts = [part for sheet in self.sheets for part in sheet.parts if not isinstance(part, Text | Links | Chart)]
        return [f"{part.key}_{name}" for part in parts for name in part.by_key] + [
            f"{part.key}_{MESSAGE}" for part in parts if isinstance(part, Block) and part.inputs
        ]

    def _dependencies(self) -> dict[str, set[str]]:
        """Full key of every result -> the full keys that it is worked out from."""
        return {
            f"{block.key}_{result.key}": {self.meaning(block, word).key for word in result.words}
            for block in self.blocks.values()
            for result in block.results
        }

    def _mismatches(self, block: Block, result: Result) -> list[str]:
        """Words and parameters must be the same set; only a table's fixed facts need no parameter."""
        taken, words = set(result.arguments.values()), set(result.words)
        facts = {word for word in words if isinstance(self.meaning(block, word).holder, Table)}
        mismatches = [f"its formula never uses {word}, which the reference takes" for word in sorted(taken - words)] + [
            f"its formula uses {word}, which the reference does not take" for word in sorted(words - taken - facts)
        ]
        return mismatches or self._other_kinds(block, result)

    def _other_kinds(self, block: Block, result: Result) -> list[str]:
        """Words that are another kind of quantity than the reference takes, and a result that is shown as another one than it gives."""
        kinds = {word: dimension_of(self.meaning(block, word).field, self.system) for word in result.arguments.values()}
        return dimensions.objections(result.reference, result.arguments, kinds, dimension_of(result, self.system))

    def _lacking(self, proof: Proof) -> list[str]:
        """Words of a proven formula that are neither printed in the example nor a table's facts."""
        block, result = self.by_key[proof.result]
        return [
            word
            for word in result.words
            if word not in proof.given and not isinstance(self.meaning(block, word).holder, Table)
        ]

    def _misprinted(self, proof: Proof) -> list[str]:
        """Printed values of another kind than the reference takes or gives; it may take some that the field does not show."""
        _, result = self.by_key[proof.result]
        printed = {word: dimensions.dimension(unit) if unit else dimensions.TEXT for word, (_, unit) in (*proof.given.items(), ("", ("", proof.unit)))}
        arguments = {name: word for name, word in result.arguments.items() if word in printed}
        return dimensions.objections(result.reference, arguments, printed, printed[""])
