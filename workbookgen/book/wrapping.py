"""How many lines a text takes in a cell that wraps it.

A program makes a row higher when someone types into it, but not for what was there when the file was opened: so the
writer of the file must know. Letters are measured with XlsxWriter's table for Calibri at 11 points, whose digits are
as wide as Arial's at 10; text in Arial at 10 points was found to be wider by up to 2 in a hundred.
"""

from functools import cache

from xlsxwriter.utility import cell_autofit_width

# Pixels: of a column's width counted in digits, and of an indented text; the edge of a cell is its own.
LETTER = 7
INDENT = 9
PADDING = 7  # pixels that XlsxWriter adds
WIDER = 1.02
USUAL = 10  # points
SPACE = 3.7  # pixels, Arial's at 10 points (from memory)


@cache
def lines_taken(text: str, width: float, size: float = USUAL, indented: bool = False) -> int:
    """Lines of a text in a column of a width in digits."""
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
    """A text in lines that fit a width in digits, broken between words."""
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
