"""When two texts are the same name.

To a spreadsheet, `Clover` and `clover` are the same. Programs differ a little beyond A to Z; what they share is
Unicode's simple case folding (CaseFolding.txt, statuses C and S), which goes letter by letter and keeps the length of
a text. The embedded engine folds only A to Z. Nothing else is ignored: a combining accent, a no-break space and a
hyphen are characters like any other. Only a text of plain spaces counts as blank.
"""

import unicodedata
from collections.abc import Iterable
from functools import lru_cache

BLANK = " "


@lru_cache(maxsize=2**16)  # each name of a log is compared with the names of others again and again
def folded(text: str) -> str:
    """The text with its case folded; two names are the same if they fold alike."""
    return text.lower() if text.isascii() else "".join(map(_folded, text))


def lines_by_name(names: Iterable) -> dict[str, list[int]]:
    """Each name in a column, folded, with its lines, counted from 0; what is no text is no name."""
    lines: dict[str, list[int]] = {}
    for line, name in enumerate(names):
        if isinstance(name, str):
            lines.setdefault(folded(name), []).append(line)
    return lines


def unique_names(names: Iterable) -> frozenset[str]:
    """The names, folded, that occur exactly once in a column; a repeated one could mean either record."""
    return frozenset(name for name, lines in lines_by_name(names).items() if len(lines) == 1)


def repeated_names(names: Iterable) -> frozenset[str]:
    """The names, folded, that occur more than once in a column."""
    return frozenset(name for name, lines in lines_by_name(names).items() if len(lines) > 1)


def is_blank(text: str) -> bool:
    """Whether it is empty, or has only plain spaces."""
    return text.strip(BLANK) == ""


def loosely(text: str) -> str:
    """The text as the most lenient program might compare it.

    Then ß is the same as ss, a letter with a combining accent as the accented letter, and any space as a plain one.
    """
    plain = unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", text).casefold()).replace("ı", "i")
    return " ".join(plain.split())


def strictly(text: str) -> str:
    """The text as the strictest program compares it: only letters from A to Z have their case folded."""
    return "".join(each.lower() if each.isascii() else each for each in text)


def _folded(letter: str) -> str:
    """A letter's folding, unless that has several letters; ẞ is then still folded to ß."""
    return next((each for each in (letter.casefold(), letter.lower()) if len(each) == 1), letter)
