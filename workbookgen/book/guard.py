"""The guard around a formula: blank until everything it needs is there, of the right type, and inside its domain.

The conditions are nested IFs, since only IF is sure not to evaluate a branch that it does not need.
"""

from collections.abc import Mapping

from workbookgen.book.operands import Columns, Operand
from workbookgen.language.domains import SMALLEST_AMOUNT, Choice, Date, Domain, Name, Note, Number
from workbookgen.language.fields import Input, Result
from workbookgen.language.tokens import Call

SAID_BELOW = {"said": 999_999, "said_in_all": 99_999_999}  # the limits of these forms; larger numbers give a blank


def guard(result: Result, columns: Columns, value: str) -> str:
    """Formula text of the value or a blank: nested conditions, each safe to evaluate if the outer ones hold."""
    operands = {word: columns.operands[word] for word in result.words}
    single = {word: each for word, each in operands.items() if not each.meaning.is_column}
    looked_up = [
        conditions
        for step in reversed(result.text.lookup_steps)
        for conditions in (_found_inside(step, columns), _found(step, columns), _listed_once(step, columns))
    ]
    only_if = [columns.written(result.condition.nodes)] if result.only_if else []
    typed = (_sayable(result, single), _inside(result, single, columns), _typed(result, single, columns))
    for conditions in (*looked_up, only_if, *typed):
        if conditions:
            value = f'IF({all_of(conditions)},{value},"")'
    return value


def all_of(conditions: list[str]) -> str:
    """Formula text of whether all these conditions hold."""
    return conditions[0] if len(conditions) == 1 else f"AND({','.join(conditions)})"


def _typed(result: Result, single: Mapping[str, Operand], columns: Columns) -> list[str]:
    """Conditions that needed words are there, and other entries blank or usable; safe whatever the cells hold."""
    numbers, conditions = [], []
    for word, each in single.items():
        field = each.meaning.field
        if result.may_miss(word, field):
            conditions += [blank_or_inside(field, each.ref, columns)] if isinstance(field, Input) else []
        elif each.is_text:
            conditions.append(f"ISTEXT({each.ref})")
        else:
            numbers.append(each.ref)
    return [*conditions, f"COUNT({','.join(numbers)})={len(numbers)}"] if numbers else conditions


def _sayable(result: Result, single: Mapping[str, Operand]) -> list[str]:
    """Conditions that every amount put into words is below the limit of its form."""
    tests = {
        call.keys[0]: f"{single[call.keys[0]].ref}<{below}"
        for form, below in SAID_BELOW.items()
        for call in result.text.calls_to(form)
        if call.keys[0] in single
    }
    return [
        f"IF(ISNUMBER({single[word].ref}),{test},1=1)" if result.may_miss(word, single[word].meaning.field) else test
        for word, test in tests.items()
    ]


def _inside(result: Result, single: Mapping[str, Operand], columns: Columns) -> list[str]:
    """Conditions that every needed input is inside its domain, and no needed text is empty."""
    conditions = []
    for word, each in single.items():
        field = each.meaning.field
        if result.may_miss(word, field):
            continue
        if isinstance(field, Input):
            conditions += inside_domain(field.domain, each.ref, columns)
        elif each.is_text:
            conditions.append(f"LEN({each.ref})>0")
    return conditions


def _listed_once(lookups: tuple[Call, ...], columns: Columns) -> list[str]:
    """Conditions that each name occurs once in its list, unless it was chosen from that very list."""
    return [
        columns.once(call.keys[1], columns.name(call))
        for call in lookups
        if _chosen_from(call.keys[2], columns) != call.keys[1]
    ]


def _chosen_from(key: str, columns: Columns) -> str | None:
    """The list that a name is chosen from; None if it is not chosen."""
    field = columns.operands[key].meaning.field if key else None
    return field.domain.of if isinstance(field, Input) and isinstance(field.domain, Choice) else None


def _found(lookups: tuple[Call, ...], columns: Columns) -> list[str]:
    """Conditions that every looked-up cell has a value of the right type."""

    def found(call: Call) -> str:
        cell = columns.looked_up(call)
        return f"LEN({cell})>0" if columns.operands[call.keys[0]].is_text else f"ISNUMBER({cell})"

    return [found(call) for call in lookups]


def _found_inside(lookups: tuple[Call, ...], columns: Columns) -> list[str]:
    """Conditions that every looked-up input is inside its domain; its type was tested, since it may be an error."""
    return [
        condition
        for call in lookups
        if isinstance(field := columns.operands[call.keys[0]].meaning.field, Input)
        for condition in inside_domain(field.domain, columns.looked_up(call), columns)
    ]


def blank_or_inside(field: Input, ref: str, columns: Columns) -> str:
    """Condition that a cell is blank or holds what its input accepts; safe whatever it holds.

    COUNTBLANK takes a cell with an empty text for blank, as people do; it comes with what is pasted from formulas.
    """
    is_blank, inside = f"COUNTBLANK({ref})=1", all_of(inside_domain(field.domain, ref, columns))
    if field.is_text:
        return f"IF({is_blank},1=1,IF(ISTEXT({ref}),{inside},1=0))"
    return f"IF(ISNUMBER({ref}),{inside},{is_blank})"


def inside_domain(domain: Domain, ref: str, columns: Columns) -> list[str]:
    """The conditions of a domain on a cell that is known to have the right type."""
    if isinstance(domain, Choice):
        listed, once = columns.operands[domain.of], columns.once(domain.of, ref)
        if (domain.of, ref) in columns.positions:
            return [once]
        # An empty text would match the one blank line of a log.
        return [f"LEN({ref})>0", once] if isinstance(listed.meaning.field, Result) else [once]
    if isinstance(domain, Name | Note):
        letters = f'SUBSTITUTE({ref}," ","")' if isinstance(domain, Name) else ref  # spaces alone are not a name
        return [f"LEN({letters})>0", f"LEN({ref})<={domain.longest}"]
    if isinstance(domain, Date):
        domain = Number(least=domain.least, most=domain.most)
    limits = (("<=", domain.most), ("<", domain.below), (">=", domain.least or None), (">", domain.above or None))
    tests = [f"{ref}{sign}{limit:.15g}" for sign, limit in limits if limit is not None]
    first = f"{ref}>={SMALLEST_AMOUNT:f}"
    if domain.least == 0:
        tests.append(f"OR(SIGN({ref})=0,{first})")  # by its sign, since to IronCalc a tiny number equals 0
    if domain.above == 0:
        tests.append(first)
    if domain.whole:
        tests.append(f"{ref}=ROUND({ref},0)")
    return tests
