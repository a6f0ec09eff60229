"""The sentences that a planner shows about what was typed. Declared once, for cell and check alike."""

from workbookgen.language.domains import Choice, Number
from workbookgen.language.fields import ASKING, UNKNOWN, Input


def symbol_of(field, system: str) -> str:
    """The unit in which a field is shown, as people read it."""
    return field.unit.unit(system).symbol if field.unit else ""


def refusal(field: Input, system: str) -> str:
    """What to type instead of something that cannot be used."""
    verb = "choose" if isinstance(field.domain, Choice) else "type"
    symbol = symbol_of(field, system)
    digits = ", in digits" if isinstance(field.domain, Number) and symbol != "%" else ""
    return f"{field.label}: {verb} {field.domain.wanted(symbol)}{digits}."


MISSING = "Still to fill in"


def missing(field: Input) -> str:
    """What a record still needs."""
    return f"{MISSING}: {field.label}."


def doubled(field: Input) -> str:
    """Two records have the same name."""
    return f"{field.label}: another line has this name; give each its own."


NO_ERROR, AN_ERROR = "no error", "an error"  # in the cells of a chapter

__all__ = ["ASKING", "MISSING", "NO_ERROR", "AN_ERROR", "UNKNOWN", "doubled", "missing", "refusal", "symbol_of"]
