"""The message of a record: in words, the first thing that is wrong or still missing.

One formula a record. It looks at what is wrong before what is missing, in the order of
the fields, and says nothing about a record nobody has begun: a blank one, or a card that is
still as a new planner brings it. Its twin in Python is `workbookgen.checking.messages`; only
the sentences are shared.
"""

from workbookgen.book.formula import Columns, inside_domain
from workbookgen.language.domains import Date, Number
from workbookgen.language.fields import Input
from workbookgen.language.parts import Block
from workbookgen.language.sentences import doubled, missing, refusal


def message_formula(block: Block, columns: Columns, system: str) -> str:
    """The bound message formula of one record of a block."""
    cases = [(_wrong(each, columns), refusal(each, system)) for each in block.inputs]
    cases += [
        (_doubled(block, each, columns), doubled(each))
        for each in block.inputs
        if block.names_its_records(each)
    ]
    cases += [(_broken(rule, columns), rule.sentence) for rule in block.rules]
    cases += [(f"ISBLANK({columns.operands[each.key].ref})", missing(each)) for each in block.inputs if each.needed]
    text = '""'
    for condition, sentence in reversed(cases):
        text = f'IF({condition},"{sentence}",{text})'
    return f'=IF({_begun(block, columns, system)},{text},"")'


def _begun(block: Block, columns: Columns, system: str) -> str:
    """Something is typed, and not only what a new planner starts with."""
    first, last = (columns.operands[block.inputs[index].key].ref for index in (0, -1))
    typed = f"COUNTA({first if first == last else f'{first}:{last}'})"
    if not (starts := [each for each in block.inputs if each.starts_as is not None]):
        return f"{typed}>0"
    as_new = ",".join([f"{typed}={len(starts)}", *(_as_new(each.first(system), columns.operands[each.key].ref) for each in starts)])
    return f"AND({typed}>0,NOT(AND({as_new})))"


def _as_new(first: float | str, ref: str) -> str:
    """The cell still holds what it starts with. It may hold an error, so that its type is tested before."""
    if isinstance(first, str):
        return f'IF(ISTEXT({ref}),{ref}="{first}",1=0)'
    return f"IF(ISNUMBER({ref}),{ref}={first:.15g},1=0)"


def _wrong(field: Input, columns: Columns) -> str:
    """Something is typed, and it is of the wrong type or outside the domain."""
    ref = columns.operands[field.key].ref
    right_type = f"ISNUMBER({ref})" if isinstance(field.domain, Number | Date) else f"ISTEXT({ref})"
    inside = inside_domain(field, ref, columns)
    test = inside[0] if len(inside) == 1 else f"AND({','.join(inside)})"
    return f"IF(ISBLANK({ref}),1=0,IF({right_type},NOT({test}),1=1))"


def _doubled(block: Block, field: Input, columns: Columns) -> str:
    ref = columns.operands[field.key].ref
    return f"IF(ISTEXT({ref}),SUMPRODUCT(({columns.operands[block.names_column].ref}={ref})*1)>1,1=0)"


def _broken(rule, columns: Columns) -> str:
    """A rule bites when all its words that are not asked for are there."""
    numbers = [
        columns.operands[word].ref
        for word in rule.text.words
        if word not in rule.text.asked and not columns.operands[word].is_text
    ]
    condition = columns.written(rule.when)
    return f"IF(COUNT({','.join(numbers)})={len(numbers)},{condition},1=0)" if numbers else condition

