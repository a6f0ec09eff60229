"""Wrapping: how many lines a text takes in a cell.

A program fits a row's height to what someone types, but not to what is there when the file is opened, so the writer of
the file must know. Letters are measured with XlsxWriter's table for Calibri at 11 points, whose digits are as wide as
those of Arial at 10. Text in Arial at 10 points was found to be up to 2% wider.
"""

from functools import cache

from xlsxwriter.utility import cell_autofit_width

# In pixels:
LETTER = 7  # a digit, the unit of a column's width
INDENT = 9
PADDING = 7  # what XlsxWriter adds to a text
SPACE = 3.7  # a space in Arial at 10 points (from memory)
WIDER = 1.02  # Arial compared with the table
USUAL = 10  # points


@cache
def lines_taken(text: str, width: float, size: float, *, indented: bool = False) -> int:
    """The number of lines of a text in a column; the column's width is in digits."""
    room = (int(width * LETTER) - INDENT * indented) * USUAL / size / WIDER
    taken, used = 1, 0.0
    for word in text.split():
        long = _pixels(word)
        if used and used + SPACE + long > room:
            taken, used = taken + 1, 0.0
        used += long + (SPACE if used else 0)
        taken += int(used // room)  # a word longer than a line may be broken anywhere
        used %= room
    return taken


def pixels_taken(text: str, size: float = USUAL) -> float:
    """The width of a text on one line."""
    return _pixels(text) * WIDER * size / USUAL


def broken(text: str, width: float, size: float = USUAL) -> list[str]:
    """A text broken between words into lines; the width is in digits."""
    lines, line = [], ""
    for word in text.split():
        longer = f"{line} {word}".strip()
        if line and lines_taken(longer, width, size) > 1:
            lines.append(line)
            line = word
        else:
            line = longer
    return [*lines, line] if line else lines


@cache
def _pixels(word: str) -> int:
    return cell_autofit_width(word) - PADDING
