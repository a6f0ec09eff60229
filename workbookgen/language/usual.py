"""What people usually type into an input: what lies outside is asked about, and counts all the same.

A range is declared once, beside its input. `is_left_by` tests a shown value in Python for the check; the condition of
the message's formula is written in `book.messages`, independently.
"""

from dataclasses import dataclass
from functools import cache

from workbookgen.errors import DescriptionError
from workbookgen.language.quantities import Unit
from workbookgen.language.type_checks import require_types
from workbookgen.units import Quantity

Bound = Quantity | float | None


@dataclass(frozen=True, eq=False)
class Usual:
    """A range of numbers or, for fields with a unit, of quantities; either end may be open.

    `hint` is a sentence about where a slip would be; of an input it is the number itself, unless the hint says more.
    Two are equal only if they are the same object, so what is derived from one can be cached.
    """

    least: Bound = None
    most: Bound = None
    hint: str = ""

    def __post_init__(self):
        place = "a usual range"
        require_types(place, self)
        if self.least is None and self.most is None:
            raise DescriptionError.at(place, "it has no end: give it a least, a most, or both.")

    @property
    def ends(self) -> tuple[Quantity | float, ...]:
        return tuple(end for end in (self.least, self.most) if end is not None)

    def shown(self, unit: Unit) -> tuple[float | None, float | None]:
        """Both ends as numbers in the unit of a cell."""
        return _shown(self, unit)

    def is_left_by(self, value: float, unit: Unit) -> bool:
        """Whether a shown value lies outside; its last digits do not decide."""
        least, most = self.shown(unit)
        value = round(value, 9)
        return (least is not None and value < least) or (most is not None and value > most)

    def words(self, unit: Unit) -> str:
        """The words after "usually", such as "10 to 100 L/kg" or "up to 30%"."""
        least, most = (_plain(end, unit) for end in self.shown(unit))
        symbol = f" {unit.symbol}" if unit.symbol not in ("", "%") else ""
        if not least or not most:
            return f"up to {most}{symbol}" if most else f"{least}{symbol} or more"
        return f"{least} to {most}{symbol}"


@cache
def _shown(usual: Usual, unit: Unit) -> tuple[float | None, float | None]:
    least, most = (
        round(unit.typed(end), 9) if isinstance(end, Quantity) else end  # 32 °F are not quite 0 °C
        for end in (usual.least, usual.most)
    )
    return least, most


def _plain(end: float | None, unit: Unit) -> str:
    if end is None:
        return ""
    told = f"{end * 100:g}%" if unit.symbol == "%" else f"{end:,.10g}"
    return told.replace("-", "−")
