"""Methods: the words of the trade, and a page for every calculation, taken from the reference functions.

A page is a function's docstring: its title, its formula, where it is valid, and who says so. Nothing is written twice.
"""

import inspect
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache

import docstring_parser

from workbookgen.errors import DescriptionError, Fault
from workbookgen.language import dimensions
from workbookgen.language.parts import Block, Chapter, Column, Sheet, Table
from workbookgen.language.repeated import REPEATING
from workbookgen.language.views import Facts, Prose, band
from workbookgen.sheets import tabs
from workbookgen.sheets.glossary import glossary

SHEET = tabs.REFERENCE
CHAPTER = "Methods"
WORD, FORMULA = 21, 33  # widths of the first two columns, so that all fit on a page and their texts take about as many lines

ON_SCREEN = "From here on, this sheet is for the screen and is not printed."
CONVENTIONS = Prose(
    title="Conventions",
    sentences=(
        "Two conventions of contraction are in print. Here it is always the lost length over the original length. "
        "So is the weft take-up: what a straightened pick has beyond the width in the reed, over the pick.",
        "Read: the figure was read in the source named. From memory: a known source, not opened for this. Common practice: a rule of thumb without a source.",
        "On paper: of a log, what is folded away is left out, and the lines in use when the planner was built and eight more are printed, at least 24. "
        "For more, choose the print range in your program, or carry the planner over.",
    ),
)


@dataclass(frozen=True)
class Page:
    """The page of a reference function, from its docstring."""

    title: str
    formula: str
    symbols: str
    valid: str
    source: str


@cache
def page(function: Callable) -> Page:
    """The page of a reference function, with each section on one line."""
    parsed = _parsed(function)
    notes, references = ([each.description for each in parsed.meta if each.args[:1] == [name]] for name in ("notes", "references"))
    symbols = [f"{each.arg_name.replace('_', ' ')}: {each.type_name or each.description}" for each in parsed.params]
    return Page(
        _line(parsed.short_description),
        _line(parsed.long_description),
        "; ".join(_line(symbol) for symbol in symbols),
        _line(" ".join(filter(None, notes))),
        _line(" ".join(filter(None, references))),
    )


@cache
def _parsed(function: Callable) -> docstring_parser.Docstring:
    return docstring_parser.parse(function.__doc__ or "", style=docstring_parser.DocstringStyle.NUMPYDOC)


def lacking(function: Callable) -> Iterator[str]:
    """What the page of a reference function lacks; tests/reference/test_docstrings.py checks the whole form."""
    if not hasattr(function, "dimensions"):
        yield "it is not decorated with @calculation"
    if unstated := dimensions.unstated(function):
        yield f"it does not annotate {', '.join(unstated)} with a kind of units.py"
    if not function.__doc__:
        yield "it has no docstring"
        return
    named = {name for line in _parsed(function).params for name in line.arg_name.split(", ")}
    taken = set(inspect.signature(function).parameters)
    yield from (f"its docstring lists no parameter {name}" for name in sorted(taken - named))
    yield from (f"its docstring lists {name}, which is no parameter of it" for name in sorted(named - taken))
    if not page(function).title or not page(function).formula:
        yield "its docstring does not open with a title and, below it, the formula"
    if not _parsed(function).raises:
        yield "its docstring has no section Raises"
    if not page(function).valid.startswith("Valid for "):
        yield 'its Notes do not begin with "Valid for "'
    if not page(function).source:
        yield "its References name no source"


def _places(shown: list[str]) -> str:
    """Where a calculation is shown: every field, or only the sheets if there are many."""
    places = list(dict.fromkeys(shown))
    return "; ".join(places if len(places) <= 4 else dict.fromkeys(place.partition(":")[0] for place in places))


def _line(text: str | None) -> str:
    return " ".join((text or "").split())


def chapter(sheets: tuple[Sheet, ...]) -> Chapter:
    """The pages of all the results of these sheets, each function once."""
    shown: dict[object, list[str]] = {}
    for each in sheets:
        for block in (holder for holder in each.holders if isinstance(holder, Block)):
            for field in block.results:
                if field.reference not in REPEATING:
                    shown.setdefault(field.reference, []).append(f"{each.name}: {field.label}")
    if faults := [Fault(f"reference {each.__module__}.{each.__qualname__}", f"{sentence}.") for each in shown for sentence in lacking(each)]:
        raise DescriptionError(*faults)
    pages = [page(function) for function in shown]
    columns = (
        Column("what", "Calculation", tuple(each.title for each in pages)),
        Column("law", "How", tuple(each.formula for each in pages)),
        Column("where", "Shown as", tuple(_places(places) for places in shown.values())),
        Column("symbols", "Symbols", tuple(each.symbols for each in pages)),
        Column("valid", "Holds", tuple(each.valid.removeprefix("Valid ") for each in pages)),
        Column("source", "Source", tuple(each.source for each in pages)),
    )
    words, methods = glossary((WORD, FORMULA)), Table("methods", "Calculations", columns)
    return Chapter(CHAPTER, (words, methods), (
        band(CONVENTIONS), band(Facts(table=words.key, title=words.title)), band(Facts(table=methods.key, title=methods.title, aside=ON_SCREEN, is_printed=False)),
    ))
