"""Where everything lies: from the description of a planner to placements.

A placement is what the writer, the engines and the check hand to each other: a field, the
sheet and the cells it has, and the bound formula of each of them. The parts of a sheet
stand below each other from the top; a card's values stand in one column, a log's records
in rows, a proof in a row of its own.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum
from functools import cached_property

from xlsxwriter.utility import quote_sheetname, xl_col_to_name

from workbookgen.book.copied import CopiedDown
from workbookgen.book.formula import Columns, Operand, bound
from workbookgen.book.messages import message_formula
from workbookgen.errors import DescriptionError
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import (
    MESSAGE,
    Block,
    Card,
    Chart,
    Column,
    Holder,
    Links,
    Log,
    Meaning,
    Part,
    Planner,
    Proof,
    ProofTable,
    Sheet,
    Table,
    Text,
    unit_of,
)
from workbookgen.language.profile import bound_objections
from workbookgen.language.quantities import NUMBER_UNIT, Unit, unit_named

TITLE_ROWS = 3  # title, what the sheet is for, and a free row
HEADER_ROWS = 3  # group heading, label, unit
CARD_LABEL, CARD_VALUE, CARD_UNIT, CARD_NOTE = 1, 2, 3, 4
CHART_ROWS = 18
NUMBERS = "lists_number"
NOTHING = "nothing_cell"  # a cell that stays blank, where the words of left-out sheets are looked for


_FIRST_NUMBERS = re.compile(rf"\b{NUMBERS}_(\d+)\b")


def first_numbers(rows: int) -> str:
    """The name of the counting numbers from 1 to `rows`."""
    return f"{NUMBERS}_{rows}"


class ProofColumn(IntEnum):
    """What stands where in a proof's row; the values that its formula takes follow from VALUES on."""

    NUMBER = 1
    WHAT = 2
    SOURCE = 3
    GIVEN = 4
    COMPUTED = 5
    PRINTED = 6
    UNIT = 7
    WITHIN = 8
    VERDICT = 9
    VALUES = 10


@dataclass(frozen=True)
class Message:
    """The field in which a record says what is wrong with it."""

    key: str = MESSAGE
    label: str = "What to fix"
    note: str = ""


@dataclass(frozen=True)
class Placement:
    """A field, its cells (1-based, one below the other), and their formulas (none for inputs)."""

    key: str
    holder: Holder
    field: Input | Result | Message | Column
    sheet: str
    row: int
    column: int
    rows: int
    unit: Unit | None
    formulas: Sequence[str] = ()

    @property
    def range(self) -> str:
        """The cells with their sheet, absolute: what the defined name refers to."""
        return f"{quote_sheetname(self.sheet)}!{self.area}"

    @property
    def area(self) -> str:
        letter = xl_col_to_name(self.column - 1)
        first = f"${letter}${self.row}"
        return first if self.rows == 1 else f"{first}:${letter}${self.row + self.rows - 1}"

    def cell(self, index: int) -> str:
        return f"{xl_col_to_name(self.column - 1)}{self.row + index}"


@dataclass(frozen=True)
class PartPlace:
    """A part of a sheet and its first row."""

    part: Part
    row: int


@dataclass(frozen=True)
class Layout:
    """A planner with everything in its place."""

    planner: Planner
    parts: dict[str, tuple[PartPlace, ...]]  # by sheet name
    placements: dict[str, Placement]  # by full key

    @cached_property
    def inputs(self) -> tuple[Placement, ...]:
        return tuple(each for each in self.placements.values() if isinstance(each.field, Input))

    @cached_property
    def formulas(self) -> tuple[Placement, ...]:
        return tuple(each for each in self.placements.values() if each.formulas)

    @cached_property
    def names(self) -> dict[str, str]:
        """Every defined name and where it points: the fields, and the counting numbers that formulas ask for."""
        texts = [text for each in self.formulas for text in (each.formulas[:1] if isinstance(each.formulas, CopiedDown) else each.formulas)]
        asked = {int(rows) for text in texts for rows in _FIRST_NUMBERS.findall(text)}
        counted = {first_numbers(rows): replace(self.placements[NUMBERS], rows=rows).range for rows in sorted(asked)}
        return {key: each.range for key, each in self.placements.items()} | counted

    def of(self, holder: Holder) -> tuple[Placement, ...]:
        return tuple(each for each in self.placements.values() if each.holder is holder)


def place(planner: Planner) -> Layout:
    """Lay out a planner and bind all its formulas."""
    parts = {sheet.name: tuple(_stack(sheet)) for sheet in planner.sheets}
    unbound = {
        each.key: each
        for sheet in planner.sheets
        for part_place in parts[sheet.name]
        for each in _placements(planner, sheet, part_place)
    }
    binder = _Binder(planner, unbound)
    return Layout(planner, parts, {key: binder.bind(each) for key, each in unbound.items()})


def height(part: Part) -> int:
    """Rows that a part takes, its heading included and the free row after it left out."""
    match part:
        case Text():
            return 1 + len(part.lines)
        case Links():
            return 2 + len(part.places)
        case Chart():
            return CHART_ROWS
        case Card():
            return head(part) + len(part.fields) + bool(part.inputs)
        case _:
            return head(part) + HEADER_ROWS + part.rows


def head(part: Card | Log | Table | ProofTable) -> int:
    """Rows of a part's own title and of what it is about; the only part of a sheet needs neither."""
    return bool(part.title) + bool(part.about)


def first_record(part: Log | Table | ProofTable) -> int:
    """Rows between a part's first row and its first record."""
    return head(part) + HEADER_ROWS


def message_place(block: Block) -> int:
    """How many fields stand before the message: a block's inputs. What is printed to be cut out has it at its end."""
    cut_out = isinstance(block, Log) and block.rows_a_page
    return len(block.fields if cut_out else block.inputs)


def _stack(sheet: Sheet) -> Iterator[PartPlace]:
    row = 1 + TITLE_ROWS
    for part in sheet.parts:
        yield PartPlace(part, row)
        row += height(part) + 1


def _placements(planner: Planner, sheet: Sheet, placed: PartPlace) -> Iterator[Placement]:
    """The fields of one part where they lie, not yet bound."""
    part = placed.part

    def at(field, row: int, column: int, rows: int = 1, unit: Unit | None = None) -> Placement:
        return Placement(f"{part.key}_{field.key}", part, field, sheet.name, row, column, rows, unit)

    match part:
        case Card():
            top, before = placed.row + head(part), message_place(part)
            for index, field in enumerate(part.fields):
                yield at(field, top + index + (index >= before > 0), CARD_VALUE, 1, unit_of(field, planner.system))
            if part.inputs:
                yield at(Message(), top + before, CARD_VALUE)
        case Log():
            top, before = placed.row + first_record(part), message_place(part)
            for index, field in enumerate(part.fields):
                yield at(field, top, 1 + index + (index >= before), part.rows, unit_of(field, planner.system))
            yield at(Message(), top, 1 + before, part.rows)
        case Table():
            for index, field in enumerate(part.columns):
                yield at(field, placed.row + first_record(part), 1 + index, part.rows, field.unit)
        case ProofTable():
            top = placed.row + first_record(part)
            yield at(Column("computed", "Computed here", ()), top, ProofColumn.COMPUTED, part.rows)
            yield at(part.verdict, top, ProofColumn.VERDICT, part.rows)


@dataclass(frozen=True)
class _Binder:
    planner: Planner
    placements: dict[str, Placement]

    def bind(self, placement: Placement) -> Placement:
        """The placement with the formulas of its cells."""
        match placement.holder, placement.field:
            case Block() as block, Result() | Message():
                formulas = self._of_block(block, placement)
            case ProofTable() as table, Column():
                formulas = tuple(
                    self._of_proof(proof, placement.row + index) for index, proof in enumerate(table.proofs)
                )
            case ProofTable() as table, Result():
                formulas = CopiedDown(self._of_verdict(table), placement.row, table.rows)
            case _:
                formulas = ()
        for formula in formulas[:1]:  # the others differ from it in their row
            if faults := bound_objections(formula):
                raise DescriptionError.at(f"field {placement.key}", "; ".join(faults) + ".")
        return replace(placement, formulas=formulas)

    def _of_block(self, block: Block, placement: Placement) -> Sequence[str]:
        field = placement.field
        if isinstance(field, Message):
            words = {each.key for each in block.inputs} | {word for rule in block.rules for word in rule.text.words}
            if any(block.names_its_records(each) for each in block.inputs):
                words.add(block.names_column)
        else:
            words = set(field.words)
        columns = self._columns(block, words, placement.sheet)
        if isinstance(field, Message):
            text = message_formula(block, columns, self.planner.system)
        else:
            text = bound(field, columns, placement.unit)
        return CopiedDown(text, placement.row, placement.rows)

    def _of_proof(self, proof: Proof, row: int) -> str:
        """The very formula of the result, its words bound to the printed values in the proof's row."""
        block, result = self.planner.by_key[proof.result]
        operands = dict(self._columns(block, set(result.words), "").operands)
        for index, (word, (_, unit)) in enumerate(proof.given.items()):
            meaning = self.planner.meaning(block, word)
            ref = f"${xl_col_to_name(ProofColumn.VALUES + index - 1)}{row}"
            operands[word] = Operand(meaning, ref, unit_named(unit) if unit else NUMBER_UNIT)
        unit = unit_named(proof.unit) if proof.unit else None
        return bound(result, Columns(operands, first_numbers), unit, guarded=False)

    def _of_verdict(self, table: ProofTable) -> str:
        names = {"computed": ProofColumn.COMPUTED, "printed": ProofColumn.PRINTED, "tolerance": ProofColumn.WITHIN}
        operands = {
            word: Operand(Meaning(word, table, Column(word, word, (0.0,)), False), f"${xl_col_to_name(column - 1)}{{row}}")
            for word, column in names.items()
        }
        return bound(table.verdict, Columns(operands, first_numbers), None, guarded=False)

    def _columns(self, block: Block, words: set[str], sheet: str) -> Columns:
        """The words of a formula as operands, seen from a sheet, with the columns that choices name."""
        operands = {word: self._operand(block, word, sheet) for word in sorted(words)}
        for each in list(operands.values()):
            domain = getattr(each.meaning.field, "domain", None)
            if hasattr(domain, "of"):
                operands[domain.of] = self._operand(block, domain.of, sheet)
        return Columns(operands, first_numbers)

    def _operand(self, block: Block, word: str, sheet: str) -> Operand:
        meaning = self.planner.meaning(block, word)
        is_absent = meaning.key in self.planner.absent
        target = self.placements[NOTHING if is_absent else meaning.key]
        if target.sheet != sheet:  # a formula that cells share may hold the name of what is elsewhere, and no address
            ref = target.key
        elif meaning.is_column or is_absent or isinstance(meaning.holder, Card):
            ref = target.area
        else:
            ref = f"${xl_col_to_name(target.column - 1)}{{row}}"
        return Operand(meaning, ref, unit_of(meaning.field, self.planner.system) or NUMBER_UNIT)
