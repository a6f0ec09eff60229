"""Operands: what the words of a formula become in a cell, and the forms written out in functions of the profile.

A word becomes a reference times the factor of its unit, so that the arithmetic happens in meters and grams.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from workbookgen.book.amounts import said, said_in_all
from workbookgen.book.areas import ranges
from workbookgen.language.fields import Input
from workbookgen.language.forms import FORMS
from workbookgen.language.parts import Log, Table
from workbookgen.language.planner import Meaning
from workbookgen.language.quantities import NUMBER_UNIT, Unit
from workbookgen.language.tokens import Call, Nodes, is_word

# COUNTIFS with "larger than this" counts the numbers of a column, and no blanks, in every program.
LESS_THAN_ALL = "-1000000000000"
BEYOND_ALL_LINES = 10_000_000  # more lines than a sheet has
READING_FUNCTIONS = {"mean": "AVERAGE", "stdev": "STDEV", "readings": "COUNT"}


@dataclass(frozen=True)
class Operand:
    """A word of a formula, its reference, and the unit shown there."""

    meaning: Meaning
    ref: str
    unit: Unit = NUMBER_UNIT
    is_absent: bool = False  # its field was left out of the planner, so a blank cell stands in for it

    @property
    def is_text(self) -> bool:
        return self.meaning.field.is_text

    @property
    def value(self) -> str:
        """Formula text of its value: a number in coherent units, or a text."""
        return self.unit.coherent(self.shown)

    @property
    def shown(self) -> str:
        """Formula text of its value in the unit shown, also where its cell is blank."""
        field = self.meaning.field
        if not isinstance(field, Input) or field.blank_means is None:
            return self.ref
        return f"IF(ISNUMBER({self.ref}),{self.ref},{field.blank_means:g})"


@dataclass(frozen=True)
class ByLine:
    """How to find the records with a name without comparing texts: by the name's position in its list.

    `lines` is the column of the records' positions, or "" if the records are the list itself, where each name occurs
    once.
    """

    lines: str
    line: str  # the position of the name
    is_own: bool  # the name is the record's own, so its position is never blank

    def if_found(self, text: str) -> str:
        """Formula text that gives 0 if the name is not in its list."""
        return text if self.is_own else f"IF(ISNUMBER({self.line}),{text},0)"


@dataclass(frozen=True)
class Columns:
    """The operands of a formula, and what its forms need besides."""

    operands: Mapping[str, Operand]
    lines: Callable[[Log], str]  # the column of the numbers of a log's records
    # A list, and the cell of a name -> the cell with its position.
    positions: Mapping[tuple[str, str], str] = field(default_factory=dict)
    # A list -> its column of the positions of its own names.
    lines_of: Mapping[str, str] = field(default_factory=dict)
    # The names and the name of a sum_where or count_where -> how to sum by position.
    by_line: Mapping[tuple[str, str], ByLine] = field(default_factory=dict)

    def ref(self, word: str) -> str:
        """The cell or the column that a word stands for."""
        return self.operands[word].ref

    def form(self, call: Call) -> str:
        """A form, written in functions of the profile."""
        fields = [self.operands[key] if key else None for key in call.keys]
        first = fields[0]
        match call.name:
            case "given":
                return f"(LEN({first.ref})>0)" if first.is_text else f"ISNUMBER({first.ref})"
            case "said":
                return said(first.ref, first.unit)
            case "said_in_all":
                return said_in_all(first.ref, first.unit)
            case "sum":
                return first.unit.coherent(f"SUM({first.ref})")
            case "lookup":
                return first.unit.coherent(self.looked_up(call))
            case "sum_where":
                return first.unit.coherent(self.sum_where(call))
            case "count_where":
                return self.count_where(call)
            case "place":
                names, name, amounts, number = fields
                others = f'(({names.ref}<>{name.ref})+({amounts.ref}="")>0)*{BEYOND_ALL_LINES}'
                return f"SUMPRODUCT(SMALL({others}+{self.lines(names.meaning.holder)},{number.ref}))"
            case "class_of":
                names, limits, _ = fields
                number = limits.unit.shown(self.written(call.arguments[2]))
                return f"INDEX({names.ref},MATCH(ROUND({number},9),{limits.ref},1))"
        cells = ",".join(ranges([each.ref for each in fields]))
        text = f"{READING_FUNCTIONS[call.name]}({cells})"
        if call.name == "stdev":  # of equal readings, some engines make it a tiny number above 0
            text = f"IF(MAX({cells})=MIN({cells}),0,{text})"
        return text if call.name == "readings" else first.unit.coherent(text)

    def sum_where(self, call: Call) -> str:
        """The sum of the amounts of the records with a name, in the unit shown."""
        amounts, names, name = call.keys
        if self.lacks(amounts, names):
            return "0"
        column, by = self.ref(amounts), self.by_line.get((names, name))
        if by is None:
            return f"SUMPRODUCT(({self.ref(names)}={self.name(call)})*1,{column})"
        if by.lines:
            return by.if_found(f"SUMIF({by.lines},{by.line},{column})")
        found = f"INDEX({column},{by.line})"
        return by.if_found(f"IF(ISNUMBER({found}),{found},0)")

    def count_where(self, call: Call) -> str:
        """The number of records with a name that have an amount."""
        amounts, names, name = call.keys
        if self.lacks(amounts, names):
            return "0"
        column, by = self.operands[amounts], self.by_line.get((names, name))
        if by and by.lines and not column.is_text:
            return by.if_found(f'COUNTIFS({by.lines},{by.line},{column.ref},">{LESS_THAN_ALL}")')
        return f'SUMPRODUCT(({self.ref(names)}={self.name(call)})*({column.ref}<>""))'

    def unconverted(self, found: Nodes, unit: Unit) -> str | None:
        """Formula text without unit factors, if the formula only chooses among or adds up cells shown in this unit.

        Conversion there and back would cost the last digits of such a number. None for any other formula.
        """
        match found:
            case (str() as word,) if is_word(word):
                return self._as_shown(word, unit, self.operands[word].shown)
            case (Call(name="lookup") as call,):
                return self._as_shown(call.keys[0], unit, self.looked_up(call))
            case (Call(name="sum" | "sum_where") as call,) if not unit.zero:
                text = self.sum_where(call) if call.name == "sum_where" else f"SUM({self.ref(call.keys[0])})"
                return self._as_shown(call.keys[0], unit, text)
            case (Call(name="IF", arguments=(condition, *branches)),):
                texts = [self.unconverted(branch, unit) for branch in branches]
                return None if None in texts else f"IF({','.join((self.written(condition), *texts))})"
        return None

    def _as_shown(self, word: str, unit: Unit, text: str) -> str | None:
        """The text, if the word's cells show this unit."""
        return text if self.operands[word].unit.converts_as(unit) else None

    def lacks(self, *keys: str) -> bool:
        """Whether one of these columns is absent, so that there is nothing to sum up.

        Gnumeric's SUMPRODUCT gives an error for the single blank cell that stands in for it.
        """
        return any(self.operands[key].is_absent for key in keys)

    def looked_up(self, call: Call) -> str:
        """The cell of the values in the one line with the name; names match exactly, except for case."""
        values, names, _ = call.keys
        name = self.name(call)
        return f"INDEX({self.ref(values)},{self.positions.get((names, name)) or self.line(names, name)})"

    def name(self, call: Call) -> str:
        """Formula text of the name that a form looks for."""
        return self.written(call.arguments[2])

    def line(self, names: str, ref: str) -> str:
        """Formula text of the position of a name in a list, provided that it occurs there once.

        The numbers stand beside the list, so that both have one length when a line was inserted or deleted. A name
        among facts has no letter that MATCH takes for a wildcard.
        """
        column = self.operands[names]
        if isinstance(column.meaning.holder, Table):
            return f"MATCH({ref},{column.ref},0)"
        return f"SUMPRODUCT(({column.ref}={ref})*1,{self.lines(column.meaning.holder)})"

    def once(self, names: str, ref: str) -> str:
        """Formula text of whether the name in a cell occurs exactly once in a list."""
        if place := self.positions.get((names, ref)):
            return f"ISNUMBER({place})"
        return f"SUMPRODUCT(({self.ref(names)}={ref})*1)=1"

    def written(self, found: Nodes) -> str:
        """Formula text of parsed nodes, with every word and form replaced."""
        return "".join(map(self._written, found))

    def _written(self, node: str | Call) -> str:
        if isinstance(node, Call):
            if node.name in FORMS:
                return self.form(node)
            return f"{node.name}({','.join(map(self.written, node.arguments))})"
        if not is_word(node):
            return node
        operand = self.operands[node]
        return operand.ref if operand.meaning.is_column else operand.value
