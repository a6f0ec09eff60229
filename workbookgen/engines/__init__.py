"""The programs that evaluate a workbook, all behind the same four verbs.

`engine(name)` gives one of them. An adapter is imported only when it is asked for, so
that a person who never checks against LibreOffice never waits for it. The floor knows
nothing of the workbook's subject and imports nothing of this project but its errors.
"""

from importlib import import_module

from ..errors import PlannerError
from .engine import Area, Engine, ErrorValue, Reading, Rows, Session, Typed, Value

_ADAPTERS = {
    "formualizer": ("formualizer_engine", "Formualizer"),
    "ironcalc": ("ironcalc_engine", "IronCalc"),
    "libreoffice": ("libreoffice", "LibreOffice"),
    "gnumeric": ("gnumeric", "Gnumeric"),
}

# The embedded default first, then the others in the order of their speed.
ENGINES = tuple(_ADAPTERS)


def engine(name: str) -> Engine:
    """The engine of this name."""
    if name not in _ADAPTERS:
        raise PlannerError.at(
            name, f"There is no engine of this name. Choose from {', '.join(ENGINES)}."
        )
    module, adapter = _ADAPTERS[name]
    return getattr(import_module(f".{module}", __package__), adapter)()


__all__ = [
    "ENGINES", "Area", "Engine", "ErrorValue", "Reading", "Rows", "Session", "Typed", "Value",
    "engine",
]
