"""Results that repeat a text or a day of their record.

Other sheets look names up among such results, never among inputs: an error value typed into one line of a list must
not reach the other lines. Nothing is calculated, so the sheet Reference has no page for these functions.
"""

import numpy as np

from workbookgen.language.fields import Result
from workbookgen.language.quantities import DAY
from workbookgen.texts import is_blank
from workbookgen.units import Ratio


def as_typed(text: str) -> str:
    """The text as it was typed or chosen. Raises ValueError where it is blank, since the record is then blank too."""
    if any(is_blank(str(each)) for each in np.ravel(text)):
        raise ValueError("The text is blank: give one.")
    return text


def day_as_typed(day: Ratio) -> Ratio:
    """The day as it was typed or found. Raises ValueError where it is not a finite number."""
    if not np.all(np.isfinite(day)):
        raise ValueError("The day is not known: give one.")
    return day


REPEATING = (as_typed, day_as_typed)  # the functions that calculate nothing


def repeated(key: str, label: str, of: str, **more) -> Result:
    """A result that repeats the text in the field `of` of its record."""
    return Result(key, label, of, as_typed, None, uses={"text": of}, **more)


def repeated_day(key: str, label: str, of: str, **more) -> Result:
    """A result that repeats the day in the field `of` of its record, or of a card."""
    return Result(key, label, of, day_as_typed, DAY, uses={"day": of}, **more)
