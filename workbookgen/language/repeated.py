"""A result that repeats a text of its record: other sheets look names up among results, never among inputs.

An error typed in one line of a list must not reach the others. Nothing is calculated, so Methods has no page of it.
"""

import numpy as np

from workbookgen.language.fields import Result
from workbookgen.texts import is_blank


def as_typed(text: str) -> str:
    """The text as it was typed or chosen. Raises ValueError where it is blank: a record is there when its name is."""
    if any(is_blank(str(each)) for each in np.ravel(text)):
        raise ValueError("The text is blank: give one.")
    return text


def repeated(key: str, label: str, of: str, **more) -> Result:
    """The result that repeats the text `of` of its record."""
    return Result(key, label, of, as_typed, None, uses={"text": of}, **more)
