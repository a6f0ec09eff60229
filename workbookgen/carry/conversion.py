"""From the unit system of one planner to that of another.

A value is converted in full, never rounded; its cell may show fewer digits. Where that would hide what was typed, a
note on the cell states it, and when the planner returns to the first unit system the note gives back exactly that
number.
"""

import math
import re
from dataclasses import dataclass

from workbookgen.language.quantities import Kind, Unit
from workbookgen.units import Quantity

SHOWN_DIGITS = 4  # after the point, of an input
SAME = 1e-12  # relative: two values that differ by rounding alone
NOISE = 4e-15  # relative: the last digits of one conversion
_WAS = re.compile(r"Was (\S+) (.+) in the old planner\.")


@dataclass(frozen=True)
class Converted:
    """A value in the unit of its new cell, and the note that the cell needs, if any."""

    value: float
    note: str = ""


def converted(value: float, kind: Kind | None, old: str, new: str, note: str = "") -> Converted:
    """A typed number of one unit system in another. `note` is that of its cell, perhaps of an earlier conversion."""
    if kind is None or kind.unit(old).pint == kind.unit(new).pint:
        return Converted(value, note)
    typed, unit = _as_first_typed(value, kind, kind.unit(old), note)
    if unit == kind.unit(new):
        return Converted(typed)
    result = in_unit(value, kind.unit(old), kind.unit(new))
    rounded = round(result, SHOWN_DIGITS)
    if math.isclose(result, rounded, rel_tol=NOISE) and _without_noise(in_unit(rounded, kind.unit(new), unit)) == typed:
        # The last digits were arithmetic noise, and converting back gives exactly the same number.
        return Converted(rounded)
    return Converted(result, f"Was {repr(typed).removesuffix('.0')} {unit.symbol} in the old planner.")


def _without_noise(value: float) -> float:
    """A converted value without the noise in its last digits."""
    rounded = round(value, SHOWN_DIGITS)
    return rounded if math.isclose(value, rounded, rel_tol=NOISE) else value


def is_conversion(note: str) -> bool:
    """Whether a note on a cell was written here, and not by a user."""
    return _WAS.fullmatch(note) is not None


def in_unit(value: float, old: Unit, new: Unit) -> float:
    return value if old.pint == new.pint else float(Quantity(value, old.pint).to(new.pint).magnitude)


def _as_first_typed(value: float, kind: Kind, unit: Unit, note: str) -> tuple[float, Unit]:
    """The number and unit that were first typed: the note states them, unless the cell has been changed since."""
    if found := _WAS.fullmatch(note):
        for first in kind.units:
            if first.symbol == found[2] and math.isclose(in_unit(float(found[1]), first, unit), value, rel_tol=SAME):
                return float(found[1]), first
    return value, unit
