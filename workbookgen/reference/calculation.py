"""What all calculations have in common.

`@calculation` reads a function's annotations, and makes sure of this before the function runs: a quantity of the wrong
dimension raises pint's DimensionalityError; a plain number is accepted only for a dimensionless argument; dimensionless
quantities are passed as plain numbers, so that percentages need no special care; quantities of another registry are
taken into ours; and an infinite number is outside all validity. `require` states where a calculation is valid.
"""

import functools
import inspect
import math
import typing

import numpy as np
import pint

from workbookgen.texts import is_blank
from workbookgen.units import Quantity, ureg

INFINITE = "Every number must be finite."


def calculation(function):
    """Check a calculation's arguments against the dimensions in its annotations."""
    signature = inspect.signature(function)
    dimensions = {
        name: dimension_of(parameter.annotation)
        for name, parameter in signature.parameters.items()
        if dimension_of(parameter.annotation) is not None
    }

    def fitted(given: dict) -> dict:
        return {
            name: _finite(_fit(value, dimensions[name]) if name in dimensions and value is not None else value)
            for name, value in ((name, _ours(value)) for name, value in given.items())
        }

    @functools.wraps(function)
    def checked(*args, **kwargs):
        if not args:  # the check calls by name, thousands of times per set of inputs, and binding is slow
            return function(**fitted(kwargs))
        bound = signature.bind(*args, **kwargs)
        bound.arguments.update(fitted(bound.arguments))
        return function(*bound.args, **bound.kwargs)

    checked.dimensions, checked.__signature__ = dimensions, signature  # so that nobody has to derive them again
    return checked


def dimension_of(annotation) -> str | None:
    """The dimension in an annotation, or None: a text has none, and some calculations leave it open."""
    if hasattr(annotation, "__metadata__"):
        stated = annotation.__metadata__[0]
        return stated if isinstance(stated, str) else None
    stated = [dimension_of(part) for part in typing.get_args(annotation)]
    return next((dimension for dimension in stated if dimension), None)


def _ours(value):
    """A quantity of another registry as one of ours; everything else as it is."""
    if not isinstance(value, pint.Quantity) or isinstance(value, Quantity):
        return value
    try:
        return Quantity(value.magnitude, str(value.units))
    except pint.UndefinedUnitError:  # a unit that only the other registry has
        value = value.to_base_units()
        return Quantity(value.magnitude, str(value.units))


def _finite(value):
    """A value, unless it is infinite or has elements that are; NaN is left to the limits."""
    number = value.magnitude if isinstance(value, Quantity) else value
    if isinstance(number, float):
        require(not math.isinf(number), INFINITE)
    elif isinstance(number, np.ndarray) and number.dtype.kind == "f":
        require(~np.isinf(number), INFINITE)
    return value


def _fit(value, dimension: str):
    is_plain = isinstance(value, float | int) or isinstance(value, np.ndarray) and value.dtype == float
    if is_plain and dimension == "[]":
        return value  # a detour through a quantity would take longer than most calculations
    if not isinstance(value, Quantity):
        value = Quantity(np.asarray(value, dtype=float) if np.ndim(value) else value, "")
    if not value.check(dimension):
        wanted = ureg.get_dimensionality(dimension) if dimension != "[]" else "dimensionless"
        raise pint.DimensionalityError(value.units, "a quantity of", value.dimensionality, wanted)
    return value.to("").magnitude if dimension == "[]" else value


class OutOfValidity(ValueError):
    """Values for which a calculation is not valid. For arrays, `holds` says which elements are.

    `limits` are the limits that a number was compared with, if any.
    """

    is_of_all = False  # whether any other values of these arguments would be refused too

    def __init__(self, sentence: str, holds, limits=None):
        super().__init__(sentence)
        self.holds = np.asarray(holds)
        self.limits = limits


class NotApplicable(OutOfValidity):
    """A calculation that does not apply to this combination of arguments, whatever their values."""

    is_of_all = True


def require_applicable(condition: bool, sentence: str) -> None:
    """Refuse a combination of arguments, whatever their values; `require` refuses only the values."""
    if not condition:
        raise NotApplicable(sentence, False)


def require(condition, sentence: str) -> None:
    """Refuse values outside a calculation's validity. NaN never satisfies a condition."""
    if condition is not True and not np.all(condition):  # the first test is fast, and most conditions are single
        raise OutOfValidity(sentence, condition)


def require_numbers(*values) -> None:
    """Refuse values that are not finite numbers; None, for an argument that was not given, is fine."""
    for value in values:
        if value is not None:
            require(
                np.isfinite(value.magnitude if isinstance(value, Quantity) else value), "Every amount must be a number."
            )


def require_name(name) -> None:
    """Refuse a blank name, single or in an array."""
    is_named = not is_blank(name) if isinstance(name, str) else by_element(lambda each: not is_blank(str(each)), name)
    require(is_named, "The name is blank: give one.")


def whole_for(share):
    """The next whole number up: 3 for 2.1, but 2 for a number that exceeds 2 only in its last digits.

    `share` is a plain number or an array, not below 0. It is first rounded to six decimals, with halves up, as
    spreadsheets do. Valid up to a few billion, where the sixth decimal becomes noise. Six decimals are common
    practice, no source.
    """
    return np.ceil(np.floor(np.multiply(share, 1e6) + 0.5) / 1e6)


def quotient(above, below):
    """above / below of plain numbers, single or in arrays; 0 where nothing is below."""
    above, below = np.broadcast_arrays(np.asarray(above, dtype=float), below)
    return np.divide(above, below, out=np.zeros(above.shape), where=below > 0)[()]


def first_reached(limits, number) -> str:
    """The label of the first of these limits, the highest first, that a number reaches.

    The last digits of a conversion do not decide a borderline case.
    """
    rounded = round(float(number), 9)
    return next(label for limit, label in limits if rounded >= limit)


def by_element(function, *values):
    """Apply a function of single values to scalars, or element by element to arrays, which gives an object array."""
    if all(isinstance(value, str) or np.ndim(value) == 0 for value in values):
        return function(*values)
    # What a function cannot do it raises. What its arithmetic leaves in the processor's flags, of which NumPy 2.5
    # warns, is no fault.
    with np.errstate(all="ignore"):
        return np.frompyfunc(function, len(values), 1)(*values)
