"""What all calculations have in common.

`@calculation` reads a function's annotations and ensures three things before the function runs:
a quantity of the wrong dimension raises pint's DimensionalityError; a plain number is
taken only where a dimensionless one belongs; and dimensionless quantities arrive inside
as plain numbers, so percentages need no special care. `require` states where a calculation holds.
"""

import functools
import inspect
import typing

import numpy as np
import pint

from workbookgen.texts import is_blank
from workbookgen.units import Quantity, ureg


def calculation(function):
    """Hold a calculation's arguments to the dimensions in its annotations."""
    signature = inspect.signature(function)
    dimensions = {
        name: dimension_of(parameter.annotation)
        for name, parameter in signature.parameters.items()
        if dimension_of(parameter.annotation) is not None
    }

    def fitted(given: dict) -> dict:
        return {
            name: _fit(value, dimensions[name]) if name in dimensions and value is not None else value
            for name, value in given.items()
        }

    @functools.wraps(function)
    def checked(*args, **kwargs):
        if not args:  # the check calls by name, some thousand times a set of inputs: there is nothing to bind
            return function(**fitted(kwargs))
        bound = signature.bind(*args, **kwargs)
        bound.arguments.update(fitted(bound.arguments))
        return function(*bound.args, **bound.kwargs)

    checked.dimensions, checked.__signature__ = dimensions, signature  # else whoever asks has it worked out anew
    return checked


def dimension_of(annotation) -> str | None:
    """The dimension that an annotation states, or None: texts have none, and some calculations leave it open."""
    if hasattr(annotation, "__metadata__"):
        stated = annotation.__metadata__[0]
        return stated if isinstance(stated, str) else None
    stated = [dimension_of(part) for part in typing.get_args(annotation)]
    return next((dimension for dimension in stated if dimension), None)


def _fit(value, dimension: str):
    if dimension == "[]" and (
        isinstance(value, float | int) or (isinstance(value, np.ndarray) and value.dtype == float)
    ):
        return (
            value  # plain numbers stay as they are; a detour through a quantity would cost more than most calculations
        )
    if not isinstance(value, Quantity):
        value = Quantity(np.asarray(value, dtype=float) if np.ndim(value) else value, "")
    if not value.check(dimension):
        wanted = ureg.get_dimensionality(dimension) if dimension != "[]" else "dimensionless"
        raise pint.DimensionalityError(value.units, "a quantity of", value.dimensionality, wanted)
    return value.to("").magnitude if dimension == "[]" else value


class OutOfValidity(ValueError):
    """Values for which a calculation does not hold; for arrays, `holds` says which are valid.

    Where numbers were held to limits, `limits` are these.
    """

    is_of_all = False  # whether other values would be refused as well

    def __init__(self, sentence: str, holds, limits=None):
        super().__init__(sentence)
        self.holds = np.asarray(holds)
        self.limits = limits


class NotApplicable(OutOfValidity):
    """A calculation that does not apply to what is given and what is not, whatever the values: to no element of an
    array."""

    is_of_all = True


def require_applicable(condition: bool, sentence: str) -> None:
    """Refuse by which arguments are given. `require` would leave open whether other values are taken."""
    if not condition:
        raise NotApplicable(sentence, False)


def require(condition, sentence: str) -> None:
    """Refuse values outside a calculation's validity. A value that is not a number never satisfies it."""
    if condition is not True and not np.all(condition):  # most conditions are plain
        raise OutOfValidity(sentence, condition)


def require_numbers(*values) -> None:
    """Refuse what is not a finite number. One that is not given at all is not a fault."""
    for value in values:
        if value is not None:
            require(
                np.isfinite(value.magnitude if isinstance(value, Quantity) else value), "Every amount must be a number."
            )


def require_name(name) -> None:
    """Refuse a blank name, or a blank one among several."""
    require(by_element(lambda each: not is_blank(str(each)), name), "The name is blank: give one.")


def whole_for(share):
    """The next whole number up: 3 for 2.1, but 2 for what exceeds 2 only in its last digits.

    `share` is a plain number or an array of them, not below 0. It is rounded to six decimals
    first, half a millionth up, as spreadsheets do: valid up to a few billion, where the sixth decimal becomes noise.
    That less than this is not a part: common practice, no source.
    """
    return np.ceil(np.floor(np.multiply(share, 1e6) + 0.5) / 1e6)


def by_element(function, *values):
    """Apply a function of single values: one text for scalars, an object array for arrays."""
    if all(isinstance(value, str) or np.ndim(value) == 0 for value in values):
        return function(*values)
    # What a function cannot do it raises. What its arithmetic leaves in the processor's flags, of which NumPy 2.5
    # warns, is no fault.
    with np.errstate(all="ignore"):
        return np.frompyfunc(function, len(values), 1)(*values)
