"""The forms: what a formula may ask of fields and columns, besides the functions of the profile.

- lookup(values, names, name): the value of the record with this name
- sum_where(amounts, names, name): the sum over all records with this name
- count_where(amounts, names, name): how many of these have an amount
- place(names, name, amounts, k): the line of the k-th record with this name and an amount
- class_of(names, limits, number): the name of the class that a number falls in
- sum(amounts): the sum of a whole column
- mean(first, ..., last): of repeated readings, inputs of one record, any of which may be blank
- stdev(first, ..., last): their sample standard deviation
- readings(first, ..., last): how many there are
- given(word): whether a word has a value; such a word may be blank
- or_else(word, otherwise): its value, or if it has none, what else
- given_and(word, condition): whether it has a value and the condition holds, which may ask of that value
- blank_or(word, condition): whether it has no value, or the condition holds
- said(word): an amount as text, with its unit: "2,300 yd"
- said_in_all(word): a total as text, which may run into millions: "4,280,000 yd"

Most arguments are fields, given by their keys. Where a form takes a formula, forms may be nested in it:
`lookup(prices, names, lookup(kinds, listed, lot))`.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from workbookgen.language.tokens import Call, Nodes, calls, parse, unparse


@dataclass(frozen=True)
class Form:
    """The names of a form's arguments. One with an asterisk may be any formula; the others are fields."""

    takes: tuple[str, ...]
    is_open: bool = False  # the last argument may be repeated

    def objections(self, call: Call) -> Iterator[str]:
        """Why a call does not fit this form."""
        given, taken = len(call.arguments), len(self.takes)
        if given < taken or given > taken and not self.is_open:
            names = ", ".join(each.strip("*") for each in self.takes)
            yield f"{call.name} takes {names}, and stands with {given} here: {unparse((call,))}"
            return
        for place, (argument, key) in enumerate(zip(call.arguments, call.keys, strict=True)):
            taken = self.takes[min(place, len(self.takes) - 1)]
            if not argument:
                yield f"{call.name} lacks the {taken.strip('*')} that it takes: {unparse((call,))}"
            elif not key and not taken.endswith("*"):
                yield f"{call.name} takes a field for its {taken}, and {unparse(argument)} is something worked out"


FORMS = {
    "given": Form(("word",)),
    "or_else": Form(("word", "otherwise*")),
    "given_and": Form(("word", "condition*")),
    "blank_or": Form(("word", "condition*")),
    "said": Form(("word",)),
    "said_in_all": Form(("word",)),
    "sum": Form(("amounts",)),
    "lookup": Form(("values", "names", "name*")),
    "sum_where": Form(("amounts", "names", "name*")),
    "count_where": Form(("amounts", "names", "name*")),
    "place": Form(("names", "name", "amounts", "number")),
    "class_of": Form(("names", "limits", "number*")),
    "mean": Form(("readings",), is_open=True),
    "stdev": Form(("readings",), is_open=True),
    "readings": Form(("readings",), is_open=True),
}
LOOKUP = "lookup"
SUMS = ("sum_where", "count_where")  # over the records with a name
ADDED = (*SUMS, "place", "sum")  # over a column; they give nothing where it is absent
READINGS = ("mean", "stdev", "readings")
BY_GIVEN = ("or_else", "given_and", "blank_or")  # each an IF of given(word); AND and OR would evaluate the rest anyway
# A program puts its country's decimal mark into a number that becomes text. Where that is a comma, a comma between
# thousands would read as one, so there a space stands, as ISO 80000-1 has it; it does not break a line.
BETWEEN_THOUSANDS = 'IF(MID(1.5&"",2,1)=".",",","\u00a0")'
TRUE, FALSE = parse("1 = 1"), parse("1 = 0")


def misused(found: Nodes) -> list[str]:
    """What is wrong with the forms in a formula."""
    return [sentence for call in calls(found) if call.name in FORMS for sentence in FORMS[call.name].objections(call)]


def in_full(text: str) -> str:
    """A formula's text with each of BY_GIVEN written out as the IF that it is; one with a slip stays as it is."""
    if not any(f"{name}(" in text for name in BY_GIVEN):
        return text
    try:
        found = parse(text)
    except ValueError:
        return text
    return text if misused(found) else unparse(_written_out(found))


def _written_out(found: Nodes) -> Nodes:
    return tuple(each if isinstance(each, str) else _call_written_out(each) for each in found)


def _call_written_out(call: Call) -> Call:
    arguments = tuple(map(_written_out, call.arguments))
    if call.name not in BY_GIVEN:
        return Call(call.name, arguments)
    word, other = arguments
    has_value = (Call("given", (word,)),)
    match call.name:
        case "or_else":
            return Call("IF", (has_value, word, other))
        case "given_and":
            return Call("IF", (has_value, other, FALSE))
    return Call("IF", (has_value, other, TRUE))
