"""What every formula cell should show, worked out from the inputs alone.

The reference functions are called with the quantities that the inputs stand for, whole
columns at a time; never with anything an engine computed. A record's result is blank
where a needed input is missing or outside its domain, and where the reference refuses
the values. Records are grouped by which optional inputs they have, since a function
takes an absent one by leaving it out.
"""

import inspect
from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from workbookgen.checking.messages import messages
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import MESSAGE, Block, Column, Meaning, Planner, Proof, unit_of
from workbookgen.units import Quantity


def expected_values(planner: Planner, entries: Entries) -> dict[str, tuple[Entry, ...]]:
    """Full key of every formula -> the value each of its cells should show."""
    return expected_of_proofs(planner) | expected_of_blocks(planner, entries)


def expected_of_proofs(planner: Planner) -> dict[str, tuple[Entry, ...]]:
    """The expected values of the proofs, which no input changes."""
    values = {}
    for key, table in planner.proof_tables.items():
        answers = tuple(computed(planner, proof) for proof in table.proofs)
        values[f"{key}_computed"] = answers
        values[f"{key}_verdict"] = tuple(
            table.verdict.reference(computed=answer, printed=proof.printed, tolerance=proof.tolerance)
            for answer, proof in zip(answers, table.proofs, strict=True)
        )
    return values


def expected_of_blocks(planner: Planner, entries: Entries, proofs: dict | None = None) -> dict[str, tuple[Entry, ...]]:
    """The expected values of all blocks. `proofs` are those of the proofs, where they are known already."""
    proofs = expected_of_proofs(planner) if proofs is None else proofs
    evaluation = _Evaluation(planner, entries, {key: _objects(column) for key, column in proofs.items()})
    values = {}
    for block in planner.blocks.values():
        for result in block.results:
            key = f"{block.key}_{result.key}"
            values[key] = tuple(evaluation.column(key))
        if block.inputs:
            values[f"{block.key}_{MESSAGE}"] = tuple(evaluation.messages(block))
    return values


def computed(planner: Planner, proof: Proof) -> Entry:
    """The reference library's answer to a published example, in the printed unit."""
    _, result = planner.by_key[proof.result]
    arguments = {
        parameter: _given(*proof.given[word]) for parameter, word in result.arguments.items() if word in proof.given
    }
    answer = result.reference(**arguments)
    return answer if result.is_text else float(_magnitude(answer, proof.unit))


@dataclass
class _Evaluation:
    """The columns of one planner with one set of entries, each worked out once."""

    planner: Planner
    entries: Entries
    columns: dict[str, np.ndarray]
    states: dict[str, tuple[np.ndarray, np.ndarray]] = field(default_factory=dict)
    accepted: dict[tuple[str, object], bool] = field(default_factory=dict)

    def column(self, key: str) -> np.ndarray:
        """All values of a field, as shown; None where blank, and as typed where an input."""
        if key not in self.columns:
            self.columns[key] = self._column(key)
        return self.columns[key]

    def messages(self, block: Block) -> list[str | None]:
        columns = {each.key: self.column(f"{block.key}_{each.key}") for each in block.inputs}
        listed = self.column(block.names_column) if block.names_column in self.planner.by_key else ()
        return messages(block, columns, self.accepts, listed, self.planner.system)

    def _column(self, key: str) -> np.ndarray:
        holder, each = self.planner.by_key[key]
        if isinstance(each, Column):
            return _objects(each.values)
        if isinstance(each, Input):
            return _objects(self.entries[key], empty_text_is_blank=False)
        return self._results(holder, each)

    def _results(self, block: Block, result: Result) -> np.ndarray:
        meanings = {parameter: self.planner.meaning(block, word) for parameter, word in result.arguments.items()}
        columns = {parameter: self._whole(each) for parameter, each in meanings.items() if each.is_column}
        singles = {parameter: each for parameter, each in meanings.items() if not each.is_column}
        spoken = _needing_their_blanks(result, singles)
        eligible = np.ones(block.rows, dtype=bool)
        present: dict[str, np.ndarray] = {}
        for parameter, meaning in singles.items():
            filled, usable = self._state(meaning, block.rows)
            missable = result.may_miss(result.arguments[parameter], meaning.field)
            eligible &= usable | (~filled & missable)
            present[parameter] = usable | (~filled & (parameter in spoken))
        values = np.full(block.rows, None, dtype=object)
        for rows, names in _patterns(eligible, present, block.rows):
            def call(chosen: np.ndarray, names=names):
                arguments = {name: self._values(singles[name], chosen) for name in names}
                return result.reference(**arguments, **columns)

            unit = result.unit.unit(self.planner.system).pint if result.unit else None
            _fill(values, rows, call, unit)
        return values

    def _state(self, meaning: Meaning, rows: int) -> tuple[np.ndarray, np.ndarray]:
        """Which records have something there, and which have something that can be used."""
        if meaning.key not in self.states:
            column = self.column(meaning.key)
            filled = usable = np.array([value is not None for value in column], dtype=bool)
            if isinstance(meaning.field, Input):
                usable = np.array([value is not None and self.accepts(meaning.field, value) for value in column], dtype=bool)
            self.states[meaning.key] = filled, usable
        filled, usable = self.states[meaning.key]
        return np.broadcast_to(filled, rows), np.broadcast_to(usable, rows)

    def accepts(self, each: Input, value) -> bool:
        """Whether an input takes this value; names are looked up once each."""
        if not isinstance(each.domain, Choice):
            return each.domain.accepts(value)
        if (each.domain.of, value) not in self.accepted:
            self.accepted[each.domain.of, value] = each.domain.accepts(value, self.column(each.domain.of))
        return self.accepted[each.domain.of, value]

    def _values(self, meaning: Meaning, rows: np.ndarray):
        column = self.column(meaning.key)
        chosen = column[rows] if len(column) > 1 or meaning.holder.rows > 1 else np.repeat(column, len(rows))
        if isinstance(meaning.field, Input) and meaning.field.blank_means is not None:
            chosen = [meaning.field.blank_means if value is None else value for value in chosen]
        return self._quantity(meaning, chosen)

    def _whole(self, meaning: Meaning):
        column = self.column(meaning.key)
        if _is_text(meaning.field):
            return [value if isinstance(value, str) else "" for value in column]
        usable = self._state(meaning, len(column))[1]
        return self._quantity(meaning, [value if good else np.nan for value, good in zip(column, usable, strict=True)])

    def _quantity(self, meaning: Meaning, values):
        if _is_text(meaning.field):
            return np.array(values, dtype=object)
        numbers = np.array(values, dtype=float)
        unit = unit_of(meaning.field, self.planner.system)
        return Quantity(numbers, unit.pint) if unit and unit.pint != "dimensionless" else numbers


def _needing_their_blanks(result: Result, singles: dict[str, Meaning]) -> set[str]:
    """Parameters that have no default of their own, so that a blank cell is told by what it stands for."""
    parameters = inspect.signature(result.reference).parameters
    return {
        name
        for name, meaning in singles.items()
        if parameters[name].default is inspect.Parameter.empty
        and isinstance(meaning.field, Input)
        and meaning.field.blank_means is not None
    }


def _patterns(eligible: np.ndarray, present: dict[str, np.ndarray], rows: int):
    """The eligible records by which of their optional values are there."""
    names = list(present)
    if not names:
        yield np.arange(rows)[eligible], ()
        return
    table = np.array([present[name] for name in names])
    kinds, which = np.unique(table[:, eligible], axis=1, return_inverse=True)
    indices = np.flatnonzero(eligible)
    for index in range(kinds.shape[1]):
        yield indices[which.ravel() == index], tuple(np.array(names)[kinds[:, index]])


def _fill(values: np.ndarray, rows: np.ndarray, call: Callable, unit: str | None) -> None:
    """Put the answers in their rows. A refusal of many leaves out those it is meant for."""
    if not len(rows):
        return
    try:
        answer = call(rows)
    except ValueError as refusal:
        holds = getattr(refusal, "holds", np.asarray(False))
        if holds.shape == rows.shape:
            _fill(values, rows[holds.astype(bool)], call, unit)
        elif len(rows) > 1:
            half = len(rows) // 2
            _fill(values, rows[:half], call, unit)
            _fill(values, rows[half:], call, unit)
        return
    shown = _magnitude(answer, unit) if unit else answer
    for row, value in zip(rows, np.broadcast_to(np.asarray(shown, dtype=object), len(rows)), strict=True):
        values[row] = value if unit is None else float(value)


def _magnitude(answer, unit: str):
    if isinstance(answer, Quantity):
        return answer.to(unit).magnitude
    return answer


def _given(value: float | str, unit: str):
    return Quantity(value, unit) if unit and unit != "dimensionless" else value


def _objects(values, empty_text_is_blank: bool = True) -> np.ndarray:
    """A column. To a person an empty text is blank, but an input that holds one was filled in, with a formula."""
    column = np.empty(len(values), dtype=object)
    column[:] = [None if value == "" and empty_text_is_blank else value for value in values]
    return column


def _is_text(each: Input | Result | Column) -> bool:
    if isinstance(each, Column):
        return isinstance(each.values[0], str)
    return each.is_text


