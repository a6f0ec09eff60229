"""When two texts are the same name.

A spreadsheet takes `Clover` and `clover` for one. How far that goes beyond A to Z differs a little between programs;
what they share is Unicode's simple case folding (CaseFolding.txt, statuses C and S): letter by letter, so that no
text gets longer. The embedded engine stops at A to Z. Nothing else is alike: an accent of its own, a no-break space
and a hyphen are letters like others. Only the plain blank counts as nothing.
"""

import unicodedata
from functools import lru_cache

BLANK = " "


@lru_cache(maxsize=2**16)  # each name of a log is compared with the names of others again and again
def folded(text: str) -> str:
    """The text by which a name is known: two that fold alike are one name."""
    return text.lower() if text.isascii() else "".join(map(_folded, text))


def is_blank(text: str) -> bool:
    """Whether there is nothing in it but plain blanks."""
    return text.strip(BLANK) == ""


def loosely(text: str) -> str:
    """The text as the most lenient program may take it.

    ß stands for ss, a letter with its accent apart for one, and any space for a blank.
    """
    plain = unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", text).casefold()).replace("ı", "i")
    return " ".join(plain.split())


def strictly(text: str) -> str:
    """The text as the strictest program takes it: small and capital letters from A to Z are alike, and no others."""
    return "".join(each.lower() if each.isascii() else each for each in text)


def _folded(letter: str) -> str:
    """Folding that would make several letters of one is left out; a capital ß is then still a small one."""
    return next((each for each in (letter.casefold(), letter.lower()) if len(each) == 1), letter)
