"""The formulas of automatic fields: the mark of each record, its line in a list, the head of a log, and the like.

The mark is "!" for something wrong, "…" for something missing, "?" for a question. The head of a log counts the records
with something wrong and repeats the first such message. If nothing is wrong it repeats the last message, since one
types at the bottom and a question stays even if its answer is yes. The messages themselves are in `messages`. The
Python twins of these formulas are in `workbookgen.checking.automatic`; only the sentences are shared.
"""

from workbookgen.book.areas import filled
from workbookgen.book.messages import fault_formula, message_formula, message_words
from workbookgen.book.operands import Columns
from workbookgen.language.automatic import (
    FAULT,
    FILLED,
    FIRST,
    LINE,
    MARK,
    MESSAGE,
    OPEN,
    OWN_LINE,
    QUESTIONS,
    SPOILED,
    UNFINISHED,
    Automatic,
)
from workbookgen.language.parts import AGAIN, LISTED, Block
from workbookgen.language.positions import Position
from workbookgen.language.profile import MOST_ARGUMENTS
from workbookgen.language.sentences import ASKING, MISSING, UNKNOWN

COUNTED = {QUESTIONS: "?", UNFINISHED: "…"}  # by the marks of their records


def automatic_words(field: Automatic, block: Block, folded: tuple[str, ...]) -> set[str]:
    """The words of the formula of an automatic field."""
    if isinstance(field, Position):
        return {field.names, field.name, *filter(None, [field.follows])}
    if field in (MESSAGE, FAULT):
        return message_words(block)
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
        return fault_formula(block, columns, system)
    if field == MARK:
        return _mark(columns.ref(MESSAGE.key))
    if field == FILLED:
        typed = filled(list(map(columns.ref, folded))) if folded else ""
        return f'=IF({typed}=0,"",{typed})' if typed else '=""'
    if field == SPOILED:
        return _spoiled(block, columns)
    marks = columns.ref(block.full_key(MARK.key))
    if field == OPEN:
        return f'=COUNTIF({marks},"!")'
    if field in COUNTED:  # not by COUNTIF, to which ? is any sign
        return f'=SUMPRODUCT(({marks}="{COUNTED[field]}")*1)'
    return _first(block, columns, marks)


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
