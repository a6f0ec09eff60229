"""How far the numbers of calculations may go: limits as data.

One record says what is accepted, and in words what is wanted; a refusal carries it, so tests can try its exact edges.
The limits of what may be typed into a planner are separate, with its inputs.
"""

import operator
from dataclasses import dataclass
from functools import reduce

import numpy as np

from workbookgen.reference.calculation import OutOfValidity
from workbookgen.units import Quantity


@dataclass(frozen=True)
class Limits:
    """The numbers from `least` or above `above`, up to `most` or below `below`, all of them or only whole ones.

    Zero is zero in every unit. Any other limit is for a plain number, such as a share or an angle in radians.
    """

    least: float | None = None
    above: float | None = None
    most: float | None = None
    below: float | None = None
    whole: bool = False

    def hold(self, value):
        """Whether a number is within them, or each of an array. What is not a number never is."""
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
        """What is said about a number within them: "must be from 0 to under 1"."""
        if (
            (self.most, self.below, self.whole) == (None, None, False)
            and self.above in (None, 0)
            and (self.least, self.above) != (None, None)
        ):
            return (
                "must be above zero"
                if self.above == 0
                else "cannot be negative"
                if self.least == 0
                else f"is {self.least:g} or more"
            )
        low = (
            ""
            if (self.least, self.above) == (None, None)
            else f"from {self.least:g}"
            if self.above is None
            else f"above {self.above:g}"
        )
        high = (
            ""
            if (self.most, self.below) == (None, None)
            else f"up to {self.most:g}"
            if self.below is None
            else f"under {self.below:g}"
        )
        if self.whole:
            return (
                f"is a whole number, {self.least:g} or more"
                if not high
                else f"is a whole number from {self.least:g} to {self.most:g}"
            )
        if low and high and self.above is None:
            return (
                f"must be between {self.least:g} and {self.most:g}"
                if self.below is None
                else f"must be {low} to {high}"
            )
        return f"must be {' and '.join(filter(None, (low, high)))}"


NOT_NEGATIVE, ABOVE_ZERO = Limits(least=0), Limits(above=0)
PART, SOME_PART = Limits(least=0, most=1), Limits(above=0, most=1)
# Dividing equal masses may miss 1 by rounding.
FOUND_PART = Limits(least=0, most=1 + 1e-9)
SOME_FOUND_PART = Limits(above=0, most=1 + 1e-9)
LESS_THAN_ALL = Limits(least=0, below=1)  # a loss: a total loss leaves nothing
UNDER_ONE = Limits(below=1)
# Negative for growth; with a larger loss, the length to spin would depend on its last digits.
SHRINKAGE = Limits(below=0.9)
AT_LEAST_ONE, AT_LEAST_TWO = Limits(least=1), Limits(least=2)
COUNTED, COUNTED_FROM_ZERO, COUNTED_FROM_TWO = (Limits(least=number, whole=True) for number in (1, 0, 2))

# The start of a sum, and the floor of a maximum.
NO_LENGTH, NO_MASS, NO_TIME, NO_VOLUME, NO_LINEAR_DENSITY = (
    Quantity(0.0, unit) for unit in ("m", "g", "hour", "L", "tex")
)


def require_within(limits: Limits, subject: str, *values) -> None:
    """Refuse values outside limits. `subject` is that of the sentence, or the whole sentence with its period."""
    held = reduce(operator.and_, map(limits.hold, values))
    if not np.all(held):
        raise OutOfValidity(subject if subject.endswith(".") else f"{subject} {limits.words}.", held, limits)
