"""The guard around a formula: blank until everything it needs is there, of the right type, and inside its domain.

The conditions are nested IFs, since only IF is sure not to evaluate a branch that it does not need.
"""

import operator
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
    typed = (_sayable(result, single), _inside(result, single, columns), _typed(result, single))
    for conditions in (*looked_up, only_if, *typed):
        if conditions:
            value = f'IF({all_of(conditions)},{value},"")'
    return value


def all_of(conditions: list[str]) -> str:
    """Formula text of whether all these conditions hold."""
    return conditions[0] if len(conditions) == 1 else f"AND({','.join(conditions)})"


def _typed(result: Result, single: Mapping[str, Operand]) -> list[str]:
    """Conditions that every needed word is there and no entry is of the wrong type; safe whatever the cells hold."""
    needed, spare, conditions = [], [], []
    for word, each in single.items():
        field = each.meaning.field
        if not result.may_miss(word, field):
            if each.is_text:
                conditions.append(f"ISTEXT({each.ref})")
            else:
                needed.append(each.ref)
        elif isinstance(field, Input):
            if each.is_text:
                conditions.append(f"OR(ISBLANK({each.ref}),ISTEXT({each.ref}))")
            else:
                spare.append(each.ref)
    if needed:
        conditions.append(f"COUNT({','.join(needed)})={len(needed)}")
    if spare:
        conditions.append(f"COUNTA({','.join(spare)})=COUNT({','.join(spare)})")
    return conditions


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
    """Conditions that every input is inside its domain, and no needed text is empty."""
    conditions = []
    for word, each in single.items():
        field = each.meaning.field
        may_miss = result.may_miss(word, field)
        if isinstance(field, Input):
            conditions += inside_domain(field, each.ref, columns, or_blank=may_miss)
        elif each.is_text and not may_miss:
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
        for condition in inside_domain(field, columns.looked_up(call), columns)
    ]


def inside_domain(field: Input, ref: str, columns: Columns, *, or_blank: bool = False) -> list[str]:
    """The domain of an input as conditions on a cell that is known to have the right type.

    A blank cell counts as 0 and as an empty text. So where the cell may be blank, a condition that these satisfy needs
    no exception for it.
    """
    return [
        f"OR(ISBLANK({ref}),{test})" if or_blank and not blank_keeps_it else test
        for test, blank_keeps_it in _conditions(field.domain, ref, columns)
    ]


def _conditions(domain: Domain, ref: str, columns: Columns) -> list[tuple[str, bool]]:
    """The conditions of a domain, each with whether a blank cell satisfies it."""
    if isinstance(domain, Choice):
        listed, once = columns.operands[domain.of], (columns.once(domain.of, ref), False)
        if (domain.of, ref) in columns.positions:
            return [once]
        # An empty text would match the one blank line of a log.
        return [(f"LEN({ref})>0", False), once] if isinstance(listed.meaning.field, Result) else [once]
    if isinstance(domain, Name | Note):
        letters = f'SUBSTITUTE({ref}," ","")' if isinstance(domain, Name) else ref  # spaces alone are not a name
        return [(f"LEN({letters})>0", False), (f"LEN({ref})<={domain.longest}", True)]
    if isinstance(domain, Date):
        domain = Number(least=domain.least, most=domain.most)
    limits = (("<=", domain.most), ("<", domain.below), (">=", domain.least or None), (">", domain.above or None))
    keeps = {"<=": operator.le, "<": operator.lt, ">=": operator.ge, ">": operator.gt}
    tests = [(f"{ref}{sign}{limit:.15g}", keeps[sign](0, limit)) for sign, limit in limits if limit is not None]
    first = f"{ref}>={SMALLEST_AMOUNT:f}"
    if domain.least == 0:
        tests.append((f"OR(SIGN({ref})=0,{first})", True))  # by its sign, since to IronCalc a tiny number equals 0
    if domain.above == 0:
        tests.append((first, False))
    if domain.whole:
        tests.append((f"{ref}=ROUND({ref},0)", True))
    return tests
