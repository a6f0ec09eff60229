"""The formulas of messages: in a record, what is wrong, or missing, or asked.

The message is a sentence about the first thing that is wrong in a record, in the order of its fields, or else about the
first that is missing. A record that was not started has none: a blank one, or a card still as in a new planner.
"""

from collections.abc import Iterable

from workbookgen.book.areas import filled
from workbookgen.book.guard import blank_or_inside
from workbookgen.book.operands import Columns
from workbookgen.language.automatic import FAULT
from workbookgen.language.cases import first_of
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Block
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import doubled, missing, refusal, unit_of, unusual

Case = tuple[str, str]  # a condition, and the sentence that is said where it holds


def message_words(block: Block) -> set[str]:
    """The words of the formula of a message."""
    words = {each.key for each in block.inputs} | {word for rule in block.rules for word in rule.text.words}
    words |= {each.key for each in block.ranged}
    words |= {FAULT.key} if FAULT in block.automatic else set()
    words |= {word for each in block.distinct for word in (each.key, block.full_key(each.key))}
    return words | {block.names_column} if any(map(block.names_its_records, block.inputs)) else words


def message_formula(block: Block, columns: Columns, system: str) -> str:
    """The bound message formula of one record of a block.

    A log may ask so much that one formula cannot hold it, so what is wrong has a column of its own there.
    """
    questions = _questions(block, columns, system)
    if FAULT not in block.automatic:
        return f"={_if_begun(block, columns, system, [*_faults(block, columns, system), *questions])}"
    fault = columns.ref(FAULT.key)
    return f"=IF(LEN({fault})>0,{fault},{_if_begun(block, columns, system, questions)})"


def fault_formula(block: Block, columns: Columns, system: str) -> str:
    """The bound formula of what is wrong or missing in one record of a block."""
    return f"={_if_begun(block, columns, system, _faults(block, columns, system))}"


def sentences(block: Block, system: str) -> list[str]:
    """Every sentence that can be the message of a record."""
    said = [refusal(each, system) for each in block.inputs] + [rule.sentence for rule in block.rules]
    said += [missing(each) for each in block.inputs if each.needed]
    said += [unusual(each, system) for each in block.ranged]
    return said + [doubled(each) for each in block.inputs if block.names_its_records(each)]


def _faults(block: Block, columns: Columns, system: str) -> list[Case]:
    """What may be wrong or missing in a record, first things first."""
    ref = columns.ref
    named = [each for each in block.inputs if block.names_its_records(each)]
    return [
        *((f"NOT({blank_or_inside(each, ref(each.key), columns)})", refusal(each, system)) for each in block.inputs),
        *((_doubled(ref(each.key), ref(block.names_column)), doubled(each)) for each in named),
        *((_doubled(ref(each.key), ref(block.full_key(each.key))), each.sentence) for each in block.distinct),
        *((_broken(rule, columns), rule.sentence) for rule in block.rules if not rule.asks),
        *((f"COUNTBLANK({ref(each.key)})=1", missing(each)) for each in block.inputs if each.needed),
    ]


def _questions(block: Block, columns: Columns, system: str) -> list[Case]:
    """What may be asked about a record; its rules know more of it than the usual range of an input does."""
    return [
        *((_broken(rule, columns), rule.sentence) for rule in block.rules if rule.asks),
        *((_unusual(each, columns.ref(each.key), system), unusual(each, system)) for each in block.ranged),
    ]


def _if_begun(block: Block, columns: Columns, system: str, cases: Iterable[Case]) -> str:
    """Formula text of the sentence of the first case that holds, or "" if none does or the record was not started."""
    said = first_of(*((condition, f'"{sentence}"') for condition, sentence in cases))
    return f'IF({_begun(block, columns, system)},{said},"")'


def _begun(block: Block, columns: Columns, system: str) -> str:
    """Condition that something was typed, beyond the starting values of a new planner."""
    typed = filled([columns.ref(each.key) for each in block.inputs])
    if not (starts := [each for each in block.inputs if each.starts_as is not None]):
        return f"{typed}>0"
    as_new = [_as_new(each.first(system), columns.ref(each.key)) for each in starts]
    return f"AND({typed}>0,NOT(AND({','.join([f'{typed}={len(starts)}', *as_new])})))"


def _as_new(first: float | str, ref: str) -> str:
    """Condition that a cell still has its starting value; its type is tested first, since it may be an error."""
    if isinstance(first, str):
        return f'IF(ISTEXT({ref}),{ref}="{first}",1=0)'
    return f"IF(ISNUMBER({ref}),{ref}={first:.15g},1=0)"


def _doubled(ref: str, column: str) -> str:
    """Condition that a text occurs in a column more than once."""
    return f"IF(ISTEXT({ref}),IF(LEN({ref})>0,SUMPRODUCT(({column}={ref})*1)>1,1=0),1=0)"


def _unusual(field: Input | Result, ref: str, system: str) -> str:
    """Condition that a cell holds a number outside of its usual range, whose last digits do not decide."""
    least, most = field.usual.shown(unit_of(field, system))
    low = [] if least is None else [f"ROUND({ref},9)<{least:.15g}"]
    high = [] if most is None else [f"ROUND({ref},9)>{most:.15g}"]
    outside = f"OR({low[0]},{high[0]})" if low and high else (low or high)[0]
    return f"IF(ISNUMBER({ref}),{outside},1=0)"


def _broken(rule: Rule, columns: Columns) -> str:
    """Condition that a rule is broken, once all the words are there that it does not test with given()."""
    needed = [columns.operands[word] for word in rule.text.words if word not in rule.text.optional]
    numbers = [each.ref for each in needed if not each.is_text]
    condition = columns.written(rule.text.nodes)
    return f"IF(COUNT({','.join(numbers)})={len(numbers)},{condition},1=0)" if numbers else condition
