"""Expected values: what every formula cell should show, calculated from the inputs alone.

The reference functions are called with the quantities that the inputs represent, whole columns at a time, and never
with anything that an engine computed. A record's result is blank if a needed input is missing or outside its domain, or
if the reference refuses the values. Records are grouped by the optional inputs they have, since a missing one is left
out of the call.
"""

import inspect
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from itertools import chain

import numpy as np

from workbookgen.checking.automatic import Records, automatic
from workbookgen.errors import DescriptionError
from workbookgen.language.automatic import Repeat
from workbookgen.language.domains import Choice
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Block, Column, unit_of
from workbookgen.language.planner import Meaning, Planner
from workbookgen.language.positions import Position
from workbookgen.language.proofs import Proof, ProofTable
from workbookgen.texts import folded, lines_by_name, unique_names
from workbookgen.units import Quantity, registered

MOST_BITS = 62  # of a 64-bit integer, without its sign and one to spare


def expected_values(planner: Planner, entries: Entries) -> Mapping[str, tuple[Entry, ...]]:
    """Full key of every formula -> the value each of its cells should show; each is calculated on first use."""
    return _Expected(_Evaluation(planner, [entries]))


def expected_of_proofs(planner: Planner) -> dict[str, tuple[Entry, ...]]:
    """The expected values of the proofs, which do not depend on any input."""
    values = {}
    for table in planner.proof_tables.values():
        answers = (*(computed(planner, proof) for proof in table.proofs), *(trial.printed for trial in table.trials))
        values[table.full_key("computed")] = answers
        values[table.full_key("verdict")] = tuple(
            table.verdict.reference(computed=answer, printed=proof.printed, tolerance=proof.tolerance)
            for answer, proof in zip(answers, table.lines, strict=True)
        )
    return values


def expected_of_blocks(planner: Planner, entries: Entries, proofs: dict | None = None) -> dict[str, tuple[Entry, ...]]:
    """The expected values of all blocks. `proofs` are those of the proofs, if they are known already."""
    return expected_of_scenarios(planner, [entries], proofs)[0]


def expected_of_scenarios(
    planner: Planner, scenarios: Sequence[Entries], proofs: dict | None = None
) -> list[dict[str, tuple[Entry, ...]]]:
    """The same for several sets of entries together, which takes little longer than one."""
    evaluation = _Evaluation(planner, scenarios, proofs)
    keys = list(_formulas(planner))
    return [{key: tuple(evaluation.part(key, number)) for key in keys} for number in range(len(scenarios))]


def expected_of_keys(
    planner: Planner, scenarios: Sequence[Entries], keys: Iterable[str]
) -> list[dict[str, tuple[Entry, ...]]]:
    """The expected values of only some fields of the blocks; those of inputs are as typed."""
    evaluation = _Evaluation(planner, scenarios)
    return [{key: tuple(evaluation.part(key, number)) for key in keys} for number in range(len(scenarios))]


def _formulas(planner: Planner) -> Iterator[str]:
    """The full keys of the formulas of all blocks."""
    for block in planner.blocks.values():
        yield from (block.full_key(each.key) for each in (*block.results, *block.automatic))


def computed(planner: Planner, proof: Proof) -> Entry:
    """The reference library's answer to a published example, in the printed unit."""
    _, result = planner.by_key[proof.result]
    arguments = {
        parameter: _given(*proof.given[word]) for parameter, word in result.arguments.items() if word in proof.given
    }
    answer = result.reference(**arguments, **result.fixed)
    return answer if result.is_text else float(_magnitude(answer, proof.unit))


@dataclass
class _Evaluation:
    """The columns of one planner, each calculated once.

    A column has the records of all scenarios, one after another: to a reference function they are simply more values.
    Only a function that takes a whole column of a log is called separately for each scenario.
    """

    planner: Planner
    scenarios: Sequence[Entries]
    known: dict[str, tuple[Entry, ...]] | None = None  # the expected values of the proofs
    columns: dict[str, np.ndarray] = field(default_factory=dict)
    states: dict[str, tuple[np.ndarray, np.ndarray]] = field(default_factory=dict)
    listed: dict[tuple[int, str], frozenset[str]] = field(default_factory=dict)
    said: dict[tuple[str, int], dict[str, tuple]] = field(default_factory=dict)

    @cached_property
    def proofs(self) -> dict[str, tuple[Entry, ...]]:
        return expected_of_proofs(self.planner) if self.known is None else self.known

    def column(self, key: str) -> np.ndarray:
        """All values of a field as shown, None for a blank; those of an input as typed."""
        if key not in self.columns:
            self.columns[key] = self._column(key)
        return self.columns[key]

    def part(self, key: str, number: int) -> np.ndarray:
        """The values of a field in one scenario; those of a table are the same in all."""
        if key in self.planner.automatic:
            block, each = self.planner.automatic[key]
            if isinstance(each, Position):
                return self.position(block, each, number)
            return self.automatic(block, number)[each.key]
        holder, _ = self.planner.absent.get(key) or self.planner.by_key[key]
        column = self.column(key)
        return column[number * holder.rows : (number + 1) * holder.rows] if isinstance(holder, Block) else column

    def position(self, block: Block, place: Position, number: int) -> tuple[float | None, ...]:
        """The line of each record's name in a list, in one scenario; None unless it occurs exactly once."""
        names = self.planner.meaning(block, place.names)
        lines = lines_by_name(self.part(names.key, number))
        looked_for = self.part(block.full_key(place.name), number)
        found = [lines.get(folded(name), []) if isinstance(name, str) and name else [] for name in looked_for]
        return tuple(float(each[0] + 1) if len(each) == 1 else None for each in found)

    def automatic(self, block: Block, number: int) -> dict[str, tuple]:
        """The values of a block's automatic fields in one scenario."""
        if (block.key, number) not in self.said:
            self.said[block.key, number] = self._automatic(block, number)
        return self.said[block.key, number]

    def _automatic(self, block: Block, number: int) -> dict[str, tuple]:
        def columns(fields: Iterable) -> dict[str, np.ndarray]:
            return {each.key: self.part(block.full_key(each.key), number) for each in fields}

        is_listed = block.inputs and block.names_column in self.planner.by_key
        records = Records(
            block,
            columns((*block.inputs, *block.questioned)),
            listed=self.part(block.names_column, number) if is_listed else (),
            distinct=columns(block.distinct),
            accepts=lambda each, value: self.accepts(each, value, number),
        )
        said = automatic(records, self.planner.folded.get(block.key, ()), self.planner.system)
        repeats = (each for each in block.automatic if isinstance(each, Repeat))
        return said | {each.key: (self.part(block.full_key(each.of), number)[each.record],) for each in repeats}

    def _column(self, key: str) -> np.ndarray:
        if key in self.planner.absent:
            holder, _ = self.planner.absent[key]
            times = len(self.scenarios) if isinstance(holder, Block) else 1
            return _objects([None] * (holder.rows * times))
        if key in self.planner.automatic:
            return _objects([value for number in range(len(self.scenarios)) for value in self.part(key, number)])
        holder, each = self.planner.by_key[key]
        if isinstance(holder, ProofTable):
            return _objects(self.proofs[key])
        if isinstance(each, Column):
            return _objects(each.values)
        if isinstance(each, Input):
            return _objects([value for entries in self.scenarios for value in entries[key]])
        return self._results(holder, each)

    def _results(self, block: Block, result: Result) -> np.ndarray:
        """The column of a result: its reference is called once for all records that have the same words."""
        meanings = {parameter: self.planner.meaning(block, word) for parameter, word in result.arguments.items()}
        whole = {parameter: each for parameter, each in meanings.items() if each.is_column}
        singles = {parameter: each for parameter, each in meanings.items() if not each.is_column}
        eligible, present = self._present(block, result, singles)
        values = np.full(len(eligible), None, dtype=object)
        unit = result.unit.unit(self.planner.system).pint if result.unit else None
        for number, records in self._together(block, whole):
            columns = {parameter: self._whole(each, number) for parameter, each in whole.items()}
            for chosen, names in _patterns(eligible, present, records):

                def call(some: np.ndarray, names=names, columns=columns):
                    arguments = {name: self._values(singles[name], block, some) for name in names}
                    return result.reference(**arguments, **columns, **result.fixed)

                try:
                    _fill(values, chosen if names else chosen[:1], call, unit)
                except (TypeError, AttributeError, LookupError) as slip:  # what the library refuses is a ValueError
                    raise DescriptionError.at(
                        f"field {block.full_key(result.key)}", f"its reference {result.reference_path} fails: {slip}."
                    ) from slip
                if not names:  # the result depends on no word of a single record, so one call serves all
                    values[chosen] = values[chosen[:1]]
        return values

    def _present(
        self, block: Block, result: Result, singles: Mapping[str, Meaning]
    ) -> tuple[np.ndarray, dict[str, np.ndarray]]:
        """Which records have what a result needs, and of each parameter, for which records it is passed."""
        spoken = _needing_their_blanks(result, singles)
        eligible = np.ones(block.rows * len(self.scenarios), dtype=bool)
        present: dict[str, np.ndarray] = {}
        for parameter, meaning in singles.items():
            filled, usable = (_spread(state, meaning, block) for state in self._state(meaning))
            missable = result.may_miss(result.arguments[parameter], meaning.field)
            eligible &= usable | (~filled & missable)
            present[parameter] = usable | (~filled & (parameter in spoken))
        return eligible, present

    def _together(self, block: Block, whole: Mapping[str, Meaning]) -> Iterator[tuple[int, range]]:
        """The records that one call can handle: all of them, or those of one scenario if it takes a log's column."""
        if not any(isinstance(each.holder, Block) for each in whole.values()):
            yield 0, range(block.rows * len(self.scenarios))
            return
        for number in range(len(self.scenarios)):
            yield number, range(number * block.rows, (number + 1) * block.rows)

    def _state(self, meaning: Meaning) -> tuple[np.ndarray, np.ndarray]:
        """Which values are there, and which of them its domain accepts."""
        if meaning.key not in self.states:
            column = self.column(meaning.key)
            filled = usable = np.array([value is not None for value in column], dtype=bool)
            if isinstance(meaning.field, Input):
                accepted = [
                    value is not None and self.accepts(meaning.field, value, row // meaning.rows)
                    for row, value in enumerate(column)
                ]
                usable = np.array(accepted, dtype=bool)
            self.states[meaning.key] = filled, usable
        return self.states[meaning.key]

    def accepts(self, each: Input, value: object, number: int) -> bool:
        """Whether an input accepts this value in a scenario."""
        if not isinstance(each.domain, Choice):
            return each.domain.accepts(value)
        listed = number, each.domain.of
        if listed not in self.listed:
            self.listed[listed] = unique_names(self.part(each.domain.of, number))
        return each.domain.is_among(value, self.listed[listed])

    def _values(self, meaning: Meaning, block: Block, rows: np.ndarray) -> np.ndarray | Quantity:
        """The values of a word for these records of a block; a card's value is the same for every record."""
        chosen = self.column(meaning.key)[rows if meaning.rows == block.rows else rows // block.rows]
        if isinstance(meaning.field, Input) and meaning.field.blank_means is not None:
            chosen = [meaning.field.blank_means if value is None else value for value in chosen]
        return self._quantity(meaning, chosen)

    def _whole(self, meaning: Meaning, number: int) -> list[str] | np.ndarray | Quantity:
        """The whole column that a word stands for, in one scenario; values that its domain refuses are NaN."""
        column = self.part(meaning.key, number)
        if meaning.field.is_text:
            return [value if isinstance(value, str) else "" for value in column]
        usable = self._state(meaning)[1]
        if isinstance(meaning.holder, Block):
            usable = usable[number * meaning.rows : (number + 1) * meaning.rows]
        return self._quantity(meaning, [value if good else np.nan for value, good in zip(column, usable, strict=True)])

    def _quantity(self, meaning: Meaning, values: Sequence) -> np.ndarray | Quantity:
        if meaning.field.is_text:
            return np.array(values, dtype=object)
        numbers = np.array(values, dtype=float)
        unit = unit_of(meaning.field, self.planner.system)
        return Quantity(numbers, registered(unit.pint)) if unit and unit.pint != "dimensionless" else numbers


class _Expected(Mapping[str, tuple[Entry, ...]]):
    """The expected values in an evaluation of one scenario, by full key."""

    def __init__(self, evaluation: _Evaluation):
        self._evaluation = evaluation
        self._keys = dict.fromkeys(_formulas(evaluation.planner))

    def __getitem__(self, key: str) -> tuple[Entry, ...]:
        return tuple(self._evaluation.part(key, 0)) if key in self._keys else self._evaluation.proofs[key]

    def __iter__(self) -> Iterator[str]:
        return chain(self._evaluation.proofs, self._keys)

    def __len__(self) -> int:
        return len(self._evaluation.proofs) + len(self._keys)


def _spread(state: np.ndarray, meaning: Meaning, block: Block) -> np.ndarray:
    """The state of a word for each record of a block."""
    return state if meaning.rows == block.rows else np.repeat(state, block.rows)


def _needing_their_blanks(result: Result, singles: dict[str, Meaning]) -> set[str]:
    """The parameters without a default, to which a blank cell is passed as what it stands for."""
    parameters = inspect.signature(result.reference).parameters
    return {
        name
        for name, meaning in singles.items()
        if parameters[name].default is inspect.Parameter.empty
        and isinstance(meaning.field, Input)
        and meaning.field.blank_means is not None
    }


def _patterns(
    eligible: np.ndarray, present: dict[str, np.ndarray], records: range
) -> Iterator[tuple[np.ndarray, tuple[str, ...]]]:
    """The eligible records, grouped by the optional values they have: their indices, and the parameters to pass."""
    indices = records.start + np.flatnonzero(eligible[records.start : records.stop])
    names = list(present)
    if not names or not len(indices):
        yield indices, ()
        return
    bits = object if len(names) > MOST_BITS else np.int64
    numbered = sum(present[name][indices].astype(bits) << place for place, name in enumerate(names))
    for number in np.unique(numbered):
        yield indices[numbered == number], tuple(name for place, name in enumerate(names) if int(number) >> place & 1)


def _fill(values: np.ndarray, rows: np.ndarray, call: Callable, unit: str | None) -> None:
    """Call for some rows and fill in the answers; if the reference refuses some of the rows, only those stay blank."""
    if not len(rows):
        return
    try:
        answer = call(rows)
    except ValueError as refusal:
        if getattr(refusal, "is_of_all", False):  # it is about which arguments are given, the same for all these rows
            return
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


def _magnitude(answer: object, unit: str) -> object:
    if isinstance(answer, Quantity):
        return answer.to(registered(unit)).magnitude
    if not registered(unit).dimensionless:
        raise TypeError(f"it gives a plain number, and is shown in {unit}")
    return answer


def _given(value: float | str, unit: str) -> float | str | Quantity:
    return Quantity(value, unit) if unit and unit != "dimensionless" else value


def _objects(values: Sequence) -> np.ndarray:
    """A column of values. An empty text counts as blank, since it looks so."""
    column = np.empty(len(values), dtype=object)
    column[:] = [None if value == "" else value for value in values]
    return column
