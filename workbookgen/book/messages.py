"""The formulas of automatic fields: the message of each record, its mark, and the head of a log.

The message is a sentence about the first thing that is wrong in a record, in the order of its fields, or else about the
first that is missing. A record that was not started has none: a blank one, or a card still as in a new planner. The
mark is "!" for something wrong, "…" for something missing, "?" for a question. The head of a log counts the records
with something wrong and repeats the first such message. If nothing is wrong it repeats the last message, since one
types at the bottom and a question stays even if its answer is yes. The Python twins of these formulas are in
`workbookgen.checking.messages`; only the sentences are shared.
"""

from collections.abc import Iterable

from workbookgen.book.guard import blank_or_inside
from workbookgen.book.operands import Columns, filled
from workbookgen.language.cases import first_of
from workbookgen.language.fields import (
    FAULT,
    FILLED,
    FIRST,
    LINE,
    MARK,
    MESSAGE,
    OPEN,
    OWN_LINE,
    SPOILED,
    Automatic,
    Rule,
)
from workbookgen.language.parts import AGAIN, LISTED, Block
from workbookgen.language.positions import Position
from workbookgen.language.profile import MOST_ARGUMENTS
from workbookgen.language.sentences import ASKING, MISSING, UNKNOWN, doubled, missing, refusal


def automatic_words(field: Automatic, block: Block, folded: tuple[str, ...]) -> set[str]:
    """The words of the formula of an automatic field."""
    if isinstance(field, Position):
        return {field.names, field.name, *filter(None, [field.follows])}
    if field in (MESSAGE, FAULT):
        return _words_of_a_message(block)
    if field == MARK:
        return {MESSAGE.key}
    if field == FILLED:
        return set(folded)
    if field == OWN_LINE:
        return {each.key for each in block.inputs} or {block.full_key(LINE.key)}
    if field == SPOILED:
        return {block.full_key(each.key) for each in block.results}
    said = {block.full_key(MESSAGE.key), block.full_key(MARK.key)}
    return said | {*filter(None, [_names(block)])} if field == FIRST else said


def _words_of_a_message(block: Block) -> set[str]:
    words = {each.key for each in block.inputs} | {word for rule in block.rules for word in rule.text.words}
    words |= {FAULT.key} if FAULT in block.automatic else set()
    words |= {word for each in block.distinct for word in (each.key, block.full_key(each.key))}
    return words | {block.names_column} if any(map(block.names_its_records, block.inputs)) else words


def automatic_formula(
    field: Automatic, block: Block, columns: Columns, *, system: str, folded: tuple[str, ...], own_line: str
) -> str:
    """The bound formula of an automatic field, of each record or of the whole log.

    `folded` are the keys of the inputs that the log's view folds; `own_line` is formula text of the record's number.
    """
    if isinstance(field, Position):
        return f"={_line_formula(field, block, columns, own_line)}"
    if field == MESSAGE:
        return message_formula(block, columns, system)
    if field == OWN_LINE:
        return _own_line(block, columns, own_line)
    if field == FAULT:
        return f"={_if_begun(block, columns, system, _faults(block, columns, system))}"
    if field == MARK:
        return _mark(columns.ref(MESSAGE.key))
    if field == FILLED:
        typed = filled(list(map(columns.ref, folded))) if folded else ""
        return f'=IF({typed}=0,"",{typed})' if typed else '=""'
    if field == SPOILED:
        return _spoiled(block, columns)
    marks = columns.ref(block.full_key(MARK.key))
    return f'=COUNTIF({marks},"!")' if field == OPEN else _first(block, columns, marks)


def _own_line(block: Block, columns: Columns, own_line: str) -> str:
    """In which line a record stands: where nobody types, counted from the first, which nobody deletes alone."""
    if block.inputs:
        return f"=IF({filled([columns.ref(each.key) for each in block.inputs])}=0,0,{own_line})"
    first, _, _ = columns.ref(block.full_key(LINE.key)).partition(":")
    return f"=ROW()-ROW({first})+1"


def _mark(message: str) -> str:
    """The mark of a record, by how its message begins."""
    begins = {each: f'LEFT({message},{len(each)})="{each}"' for each in (MISSING, UNKNOWN, ASKING)}
    return f'=IF(LEN({message})=0,"",IF(OR({begins[MISSING]},{begins[UNKNOWN]}),"…",IF({begins[ASKING]},"?","!")))'


def _first(block: Block, columns: Columns, marks: str) -> str:
    """The first message about something wrong, or else the last message."""
    last = f'SUMPRODUCT(LARGE(({marks}<>"")*{columns.lines(block)},1))'
    said_wrong, said_last = (_of_line(block, columns, line) for line in (f'MATCH("!",{marks},0)', last))
    return f'=IF(COUNTIF({marks},"!")>0,{said_wrong},IF(SUMPRODUCT(({marks}<>"")*1)>0,{said_last},""))'


def _of_line(block: Block, columns: Columns, line: str) -> str:
    """The message of a record, preceded by its name, or by its line if it has none."""
    whose = f'"Line "&{line}'
    if names := _names(block):
        name = f"INDEX({columns.ref(names)},{line})"
        whose = f"IF(LEN({name})>0,{name},{whose})"
    return f'{whose}&": "&INDEX({columns.ref(block.full_key(MESSAGE.key))},{line})'


def _line_formula(field: Position, block: Block, columns: Columns, own_line: str) -> str:
    """The position of a record's name in a list.

    A long list is searched with MATCH, which takes some characters for wildcards and folds case in its own way. So
    what it finds is compared with the name; if that differs, or if it finds none, all names are compared. Whether a
    name occurs only once, the list knows from the positions of its own names.
    """
    name = columns.ref(field.name)
    if field.follows:
        return f'IF(LEN({name})>0,{columns.ref(field.follows)},"")'
    is_own = field.names == block.full_key(field.name)
    line = own_line if is_own else columns.line(field.names, name)
    found = f'IF({columns.once(field.names, name)},{line},"")'
    if not is_own and (lines := columns.lines_of.get(field.names)):
        names = columns.ref(field.names)
        first = f"MATCH({name},{names},0)"
        found = f"IF(IF(ISNUMBER({first}),INDEX({names},{first})={name},1=0),INDEX({lines},{first}),{found})"
    return f'IF(ISTEXT({name}),IF(LEN({name})>0,{found},""),"")'


def _spoiled(block: Block, columns: Columns) -> str:
    """How many calculated cells are empty, or differ from the same answer calculated again; and how many rows were
    inserted between the head of the log and its first record, so that its lines are counted wrongly.

    A program may keep some stored numbers and recalculate others, which then differ in their last digits. So cells are
    compared one by one only if the sums or counts of the two columns differ.
    """
    refs = {each.key: columns.ref(block.full_key(each.key)) for each in block.results}
    differ = [
        _differing(refs[key], again, is_text=block.by_key[key].is_text)
        for name, again in refs.items()
        if (key := name.removeprefix(AGAIN)) != name
    ]
    every = list(refs.values())
    some = [every[first : first + MOST_ARGUMENTS] for first in range(0, len(every), MOST_ARGUMENTS)]
    counted = "-".join(f"COUNTA({','.join(each)})" for each in some)
    return "+".join([f"={len(refs) * block.rows}-{counted}", *differ, _inserted(every[0].partition(":")[0])])


def _inserted(first: str) -> str:
    """How many rows were inserted above the first cell of a column, below the blank cell from which lines are counted.

    If the first record was deleted, nothing was.
    """
    above = int(first.rpartition("$")[2]) - 1
    return f"IF(ISNUMBER(ROW({first})),ABS(ROW({first})-ROW($A${above})-1),0)"


def _differing(ref: str, again: str, *, is_text: bool) -> str:
    """How many cells of a column differ from their second calculation."""
    each = f'SUMPRODUCT(({ref}<>{again})*({ref}<>"")*1)'
    alike = f"AND(COUNT({ref})=COUNT({again}),ABS(SUM({ref})-SUM({again}))<=0.000000001*(1+ABS(SUM({again}))))"
    return each if is_text else f"IF({alike},0,{each})"


def _names(block: Block) -> str:
    """Full key of the column with the records' names; "" if they have none."""
    return block.names_column if LISTED in block.by_key else ""


def sentences(block: Block, system: str) -> list[str]:
    """Every sentence that can be the message of a record."""
    said = [refusal(each, system) for each in block.inputs] + [rule.sentence for rule in block.rules]
    said += [missing(each) for each in block.inputs if each.needed]
    return said + [doubled(each) for each in block.inputs if block.names_its_records(each)]


def message_formula(block: Block, columns: Columns, system: str) -> str:
    """The bound message formula of one record of a block.

    A log may ask so much that one formula cannot hold it, so what is wrong has a column of its own there.
    """
    questions = [(_broken(rule, columns), rule.sentence) for rule in block.rules if rule.asks]
    if FAULT not in block.automatic:
        return f"={_if_begun(block, columns, system, [*_faults(block, columns, system), *questions])}"
    fault = columns.ref(FAULT.key)
    return f"=IF(LEN({fault})>0,{fault},{_if_begun(block, columns, system, questions)})"


Case = tuple[str, str]  # a condition, and the sentence that is said where it holds


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


def _broken(rule: Rule, columns: Columns) -> str:
    """Condition that a rule is broken, once all the words are there that it does not test with given()."""
    needed = [columns.operands[word] for word in rule.text.words if word not in rule.text.optional]
    numbers = [each.ref for each in needed if not each.is_text]
    condition = columns.written(rule.text.nodes)
    return f"IF(COUNT({','.join(numbers)})={len(numbers)},{condition},1=0)" if numbers else condition
