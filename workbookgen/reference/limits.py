"""Limits of the numbers in calculations, as data.

A record of limits tests a number, and puts into words what is wanted. A refusal carries its limits, so tests can try
their exact edges. The limits of what may be typed into a planner are separate, with its inputs.
"""

import operator
from dataclasses import dataclass
from functools import reduce

import numpy as np

from workbookgen.reference.calculation import OutOfValidity
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.units import Quantity, Ratio


@dataclass(frozen=True)
class Limits:
    """The numbers from `least` or above `above`, up to `most` or below `below`, all of them or only whole ones.

    Limits of zero serve every unit. Other limits are for plain numbers, such as a share or an angle in radians.
    """

    least: float | None = None
    above: float | None = None
    most: float | None = None
    below: float | None = None
    whole: bool = False

    def hold(self, value):
        """Whether a number is within the limits, or which elements of an array are. NaN never is."""
        number = self._number(value)
        lower = (operator.ge, self.least), (operator.gt, self.above)
        upper = (operator.le, self.most), (operator.lt, self.below)
        held = [compare(number, limit) for compare, limit in lower + upper if limit is not None]
        return reduce(operator.and_, [*held, number % 1 == 0] if self.whole else held)

    def _number(self, value):
        if not isinstance(value, Quantity):
            return value if isinstance(value, float | int) else np.asarray(value)
        if not any((self.least, self.above, self.most, self.below)):
            return value.magnitude
        return value.to("").magnitude

    @property
    def words(self) -> str:
        """The end of a sentence about a number within the limits: "must be from 0 to under 1"."""
        match self.least, self.above, self.most, self.below:
            case least, None, None, None if self.whole:
                return f"is a whole number, {least:g} or more"
            case least, None, most, None if self.whole:
                return f"is a whole number from {least:g} to {most:g}"
            case None, 0, None, None:
                return "must be above zero"
            case 0, None, None, None:
                return "cannot be negative"
            case float() | int() as least, None, None, None:
                return f"is {least:g} or more"
            case float() | int() as least, None, float() | int() as most, None:
                return f"must be between {least:g} and {most:g}"
            case float() | int() as least, None, None, below:
                return f"must be from {least:g} to under {below:g}"
        said = (("above", self.above), ("up to", self.most), ("under", self.below))
        return f"must be {' and '.join(f'{word} {limit:g}' for word, limit in said if limit is not None)}"


NOT_NEGATIVE, ABOVE_ZERO = Limits(least=0), Limits(above=0)
PART, SOME_PART = Limits(least=0, most=1), Limits(above=0, most=1)
# A share that was worked out may exceed 1 by rounding.
FOUND_PART = Limits(least=0, most=1 + ROUNDING)
SOME_FOUND_PART = Limits(above=0, most=1 + ROUNDING)
LESS_THAN_ALL = Limits(least=0, below=1)  # a loss: a total loss leaves nothing
UNDER_ONE = Limits(below=1)
ONE_EITHER_WAY = Limits(least=-1, most=1)
# Negative for growth. With a loss near 1, the length to spin would depend on its last digits.
SHRINKAGE = Limits(below=0.9)
AT_LEAST_ONE, AT_LEAST_TWO = Limits(least=1), Limits(least=2)
COUNTED_FROM_ZERO, COUNTED, COUNTED_FROM_TWO, COUNTED_FROM_THREE, COUNTED_FROM_FIVE = (
    Limits(least=number, whole=True) for number in (0, 1, 2, 3, 5)
)

# Zeros to start a sum from, or to be the floor of a maximum.
NO_LENGTH, NO_MASS, NO_TIME, NO_VOLUME, NO_LINEAR_DENSITY = (
    Quantity(0.0, unit) for unit in ("m", "g", "hour", "L", "tex")
)


def require_within(limits: Limits, subject: str, *values) -> None:
    """Refuse values outside limits. `subject` is the subject of the sentence, or a whole sentence with its period."""
    if not isinstance(subject, str):
        raise TypeError(f"require_within takes limits, a subject in words, then values; {subject!r} is no words")
    held = reduce(operator.and_, map(limits.hold, values))
    if not np.all(held):
        raise OutOfValidity(subject if subject.endswith(".") else f"{subject} {limits.words}.", held, limits)


def require_loss(share: Ratio, name: str) -> None:
    """Refuse what is not a lost share of a length."""
    require_within(LESS_THAN_ALL, f"The {name}", share)
