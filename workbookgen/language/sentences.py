"""The sentences that a planner shows about entries, shared by the formulas and by the check."""

from workbookgen.language.automatic import Automatic
from workbookgen.language.domains import Choice, Number
from workbookgen.language.fields import Input, Result
from workbookgen.language.quantities import NUMBER, Unit

# How the messages begin that are about nothing wrong:
MISSING = "Still to fill in"  # an entry that the record needs
ASKING = "Is it right?"  # begins a question: the entry is accepted, and its results stay
UNKNOWN = "No answer yet"  # begins a message about something missing outside the record's own cells

NO_ERROR, AN_ERROR = "no error", "an error"  # in the cells of a chapter


def unit_of(field: Input | Result, system: str) -> Unit:
    """The unit in which a number is shown."""
    return (field.unit or NUMBER).unit(system)


def symbol_of(field: Input | Result | Automatic, system: str) -> str:
    """The symbol of the unit in which a field is shown."""
    return field.unit.unit(system).symbol if field.unit else ""


def request(field: Input, system: str) -> str:
    """What to type into a cell."""
    verb = "choose" if isinstance(field.domain, Choice) else "type"
    symbol = symbol_of(field, system)
    digits = ", in digits" if isinstance(field.domain, Number) and symbol != "%" else ""
    return f"{field.label}: {verb} {field.domain.wanted(symbol)}{digits}."


def refusal(field: Input, system: str) -> str:
    """What to do about an entry that cannot be used: a stroke or "n/a" is meant for nothing, which is a way, too."""
    asked = request(field, system)
    says_so = isinstance(field.domain, Choice) and field.domain.or_none
    return asked if field.needed or says_so else f"{asked.removesuffix('.')}, or empty it."


def unusual(field: Input | Result, system: str) -> str:
    """The question about a number outside of the usual range of its field."""
    unit = unit_of(field, system)
    hint = field.usual.hint or f"Look at its digits{'' if unit.symbol in ('', '%') else ' and its unit'}."
    return f"{ASKING} {field.label}: usually {field.usual.words(unit)}. {hint}"


def missing(field: Input) -> str:
    """That a record still needs this input."""
    return f"{MISSING}: {field.label}."


def doubled(field: Input) -> str:
    """That another record has the same name."""
    return f"{field.label}: another line has this name; give each its own."
