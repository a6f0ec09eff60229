"""Dimensional analysis: do a result and its reference use the same kinds of quantity?

A reference function declares dimensions in its annotations; a field has a unit. No engine would object to a mass shown
in yards, so the mismatch is reported here, when a sheet is described.
"""

import inspect
from collections.abc import Callable, Mapping
from functools import lru_cache
from typing import get_args

from pint import UndefinedUnitError
from pint.errors import DefinitionSyntaxError
from pint.util import UnitsContainer

from workbookgen.units import Alike, ureg

TEXT = "text"
Dimension = UnitsContainer | str  # of a quantity; or TEXT
RETURNED = "return"

WORDS = {
    "[]": "a plain number",
    "[length]": "a length",
    "[mass]": "a mass",
    "[length]/[mass]": "a grist",
    "[mass]/[length]": "a linear density",
    "[length]**2": "an area",
    "[mass]**2": "a mass squared",
    "[length]**3": "a volume",
    "[mass]/[length]**3": "a density",
    "1/[length]": "a number per length",
    "1/[mass]": "a number per mass",
    "1/[length]**2": "a number per area",
    "[time]": "a time",
    "[temperature]": "a temperature",
    "[length]/[time]": "a pace",
    "[mass]/[time]": "a mass per time",
    "[length]**2/[mass]**2": "a grist squared",
}


@lru_cache(None)
def dimension(name: str) -> UnitsContainer:
    """The dimension of a unit in the registry, such as "yard / pound", or of an annotation, such as "[length]"."""
    if name == "[]":
        return UnitsContainer()
    return ureg.get_dimensionality(name) if "[" in name else ureg.Unit(name).dimensionality


def is_unit(name: str) -> bool:
    """Whether the registry knows a unit of this name."""
    try:
        ureg.Unit(name)
        return True
    except (UndefinedUnitError, DefinitionSyntaxError):
        return False


def objections(
    reference: Callable, arguments: Mapping[str, str], words: Mapping[str, Dimension], shown: Dimension
) -> list[str]:
    """The mismatches between a reference and the field that uses it, as sentences.

    `arguments` maps the reference's parameters to words, `words` gives the dimension of each word, and `shown` that of
    the result. A parameter without an annotation accepts anything.
    """
    stated, found, looked_up = _stated_by(reference), [], None
    for name, given in [*((name, words[word]) for name, word in arguments.items()), (RETURNED, shown)]:
        wanted = stated.get(name)
        if isinstance(wanted, Alike):
            looked_up = _left_open(wanted, given) if looked_up is None else looked_up
            wanted = _filled_in(wanted, looked_up)
        if wanted is None or wanted == given:
            continue
        if name == RETURNED:
            found.append(f"it is shown as {in_words(given)}, but its reference gives {in_words(wanted)}")
        else:
            word = f"its word {arguments[name]} is {in_words(given)}"
            found.append(f"{word}, but its reference takes {in_words(wanted)} for {name}")
    return found


def unstated(reference: Callable) -> list[str]:
    """The parameters of a reference that have no annotation, and "return" if it has none."""
    return [name for name, wanted in _stated_by(reference).items() if wanted is None]


def in_words(kind: Dimension) -> str:
    """A dimension in words, such as "a length"."""
    if kind == TEXT:
        return "a text"
    return next((word for name, word in WORDS.items() if dimension(name) == kind), f"a quantity of {kind}")


@lru_cache(None)
def _stated_by(reference: Callable) -> dict[str, Dimension | Alike | None]:
    signature = inspect.signature(reference)
    parameters = {name: _stated(parameter.annotation) for name, parameter in signature.parameters.items()}
    return parameters | {RETURNED: _stated(signature.return_annotation)}


def _stated(annotation: object) -> Dimension | Alike | None:
    """The dimension in an annotation; in that of a sequence or a union, the first one found."""
    if hasattr(annotation, "__metadata__"):
        said = annotation.__metadata__[0]
        return said if isinstance(said, Alike) else dimension(said)
    if annotation is str:
        return TEXT
    if annotation in (float, int):
        return dimension("[]")
    return next((said for part in get_args(annotation) if (said := _stated(part)) is not None), None)


def _left_open(alike: Alike, given: Dimension) -> Dimension:
    """The dimension that was left open, worked out from what is given for it."""
    return given if given == TEXT else (given * dimension(alike.over)) ** (1 / alike.power)


def _filled_in(alike: Alike, looked_up: Dimension) -> Dimension:
    if looked_up == TEXT:
        return TEXT
    return looked_up**alike.power / dimension(alike.over)
