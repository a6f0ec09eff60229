"""The programs that evaluate a workbook, all behind the same four verbs.

`engine(name)` gives one of them. An adapter is imported only when it is needed, so nobody waits for LibreOffice who
does not check against it. This package knows nothing about the subject of a workbook.
"""

from importlib import import_module

from workbookgen.engines.engine import Area, Engine, ErrorValue, Reading, Rows, Session, Typed, Value
from workbookgen.errors import PlannerError

# The adapter of each engine, in the module of its name.
_ADAPTERS = {"formualizer": "Formualizer", "ironcalc": "IronCalc", "libreoffice": "LibreOffice", "gnumeric": "Gnumeric"}

# The embedded engine first, which is the default, then the others in order of speed.
ENGINES = tuple(_ADAPTERS)
EMBEDDED = ENGINES[0]


def engine(name: str) -> Engine:
    """The engine of this name."""
    if name not in _ADAPTERS:
        raise PlannerError.at(name, f"There is no engine of this name. Choose from {', '.join(ENGINES)}.")
    return getattr(import_module(f".{name}", __package__), _ADAPTERS[name])()


__all__ = ["EMBEDDED", "ENGINES", "engine"]
__all__ += ["Area", "Engine", "ErrorValue", "Reading", "Rows", "Session", "Typed", "Value"]  # what they share
