"""The types of single settings: a text that a workbook can hold, a length, a color."""

import re
from typing import Annotated

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

from workbookgen.units import Quantity

NOT_UTF8 = "it is not a text in UTF-8. Save it from a text editor with the encoding UTF-8"
LENGTH_UNITS = ("yd", "ft", "in", "m", "cm", "mm")
UNSTORABLE = re.compile(r"[\x00-\x1f\x7f\ud800-\udfff\ufffe\uffff]")
_LENGTH = re.compile(rf"\s*(\d+(?:\.\d+)?)\s*({'|'.join(LENGTH_UNITS)})\s*", re.ASCII)
_COLOR = re.compile(r"#[0-9A-Fa-f]{6}")


class Strict(BaseModel):
    """A table of settings: frozen, and without unknown keys."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class Misfit(ValueError):
    """Conflicts between values that are each valid: the full path of a key, and what to do."""

    def __init__(self, *faults: tuple[tuple[str | int, ...], str]):
        self.faults = faults
        super().__init__("; ".join(sentence for _, sentence in faults))


def _length(text: str) -> str:
    found = _LENGTH.fullmatch(text)
    if not found or float(found[1]) <= 0:
        units = ", ".join(LENGTH_UNITS)
        raise ValueError(f'write a length above 0 as a number and a unit ({units}), for example "72 in" or "1.5 m"')
    return text.strip()


def _storable(text: str) -> str:
    if UNSTORABLE.search(text):
        raise ValueError("leave out line breaks and control characters; a workbook cannot store them here")
    if not text.strip():
        raise ValueError("write a text; it may not be blank")
    return text


def _paragraphs(text: str) -> str:
    if UNSTORABLE.search(text.replace("\n", "")):
        raise ValueError("leave out tabs and other control characters; line breaks are welcome")
    return text


def _sayable(text: str) -> str:
    if set(text) & set('"{}'):
        raise ValueError("leave out quotation marks and braces; formulas say this text")
    return text


def _color(text: str) -> str:
    if not _COLOR.fullmatch(text):
        raise ValueError('write a color as # and six of the digits 0-9 and A-F, for example "#1D4E57"')
    return text.upper()


LengthText = Annotated[str, AfterValidator(_length)]
ColorText = Annotated[str, AfterValidator(_color)]
Note = Annotated[str, Field(max_length=600), AfterValidator(_paragraphs)]


def text_of(letters: int, *more: AfterValidator) -> object:
    """The type of a one-line text with a limited number of letters."""
    return Annotated[str, Field(min_length=1, max_length=letters), AfterValidator(_storable), *more]


SAYABLE = AfterValidator(_sayable)


def length_of(text: str) -> Quantity:
    """A length such as "72 in" as a quantity."""
    number, unit = _LENGTH.fullmatch(text).groups()
    return Quantity(float(number), unit)
