"""Keys: what formulas call a field.

A field of the same record goes by its own key, one of another block by its full key, which begins with the key of that
block: a reel's `loop` is `reels_loop` elsewhere.
"""

import re
from collections.abc import Sequence

from workbookgen.errors import DescriptionError
from workbookgen.language.tokens import is_word

# A1 style, and the R1C1 style that some programs read too: ab12, r2, c3, r2c3.
CELL_ADDRESS = re.compile(r"(?i:[a-z]{1,3}[0-9]+|r[0-9]*(c[0-9]*)?|c[0-9]*)")
NO_KEY = "a key is written in lower case letters, digits and underscores"


class Keyed:
    """What holds fields, and has a key of its own."""

    key: str

    def full_key(self, key: str) -> str:
        """The full key of one of its fields."""
        return f"{self.key}_{key}"


def key_objection(key: str) -> str | None:
    """Why a field may not have this key, or None."""
    if not is_word(key):
        return NO_KEY
    if CELL_ADDRESS.fullmatch(key):
        return "this key is also a cell address"
    return None


def check_keys(place: str, keys: Sequence[str]) -> None:
    """Refuse a key that could be read as a cell address, and a key used twice."""
    faults = [f"{key}: {key_objection(key)}" for key in keys if key_objection(key)]
    faults += [f"{key} is used twice" for key in sorted({key for key in keys if keys.count(key) > 1})]
    if faults:
        raise DescriptionError.at(place, "; ".join(faults) + ".")


def require_word(place: str, key: str) -> None:
    """Refuse the key of a holder that formulas could not spell; it begins the full key of each of its fields."""
    if not is_word(key):
        raise DescriptionError.at(place, f"{NO_KEY}.")
