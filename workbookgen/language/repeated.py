"""A result that repeats a text or a day of its record: other sheets look names up among results, never among inputs.

An error typed in one line of a list must not reach the others. Nothing is calculated, so Methods has no page of it.
"""

import numpy as np

from workbookgen.language.fields import Result
from workbookgen.language.quantities import DAY
from workbookgen.texts import is_blank
from workbookgen.units import Ratio


def as_typed(text: str) -> str:
    """The text as it was typed or chosen. Raises ValueError where it is blank: a record is there when its name is."""
    if any(is_blank(str(each)) for each in np.ravel(text)):
        raise ValueError("The text is blank: give one.")
    return text


def day_as_typed(day: Ratio) -> Ratio:
    """The day as it was typed or found.

    Raises ValueError where it is no number: of a record that has none, nothing is said.
    """
    if not np.all(np.isfinite(day)):
        raise ValueError("The day is not known: give one.")
    return day


REPEATING = (as_typed, day_as_typed)  # which calculate nothing


def repeated(key: str, label: str, of: str, **more) -> Result:
    """The result that repeats the text `of` of its record."""
    return Result(key, label, of, as_typed, None, uses={"text": of}, **more)


def repeated_day(key: str, label: str, of: str, **more) -> Result:
    """The result that repeats the day `of` of its record, or of a card."""
    return Result(key, label, of, day_as_typed, DAY, uses={"day": of}, **more)
