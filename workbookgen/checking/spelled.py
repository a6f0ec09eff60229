"""Formulas as they mean, without what programs change in them when they save a file."""

import re

_NUMBER = re.compile(r"(?<![A-Z0-9$._])\d+(?:\.\d*)?(?:E[+-]?\d+)?(?![0-9.:])")  # and no part of a reference
_ONE_CELL = re.compile(r"(\$?[A-Z]+\$?\d+):\1(?![0-9:])")  # a range of one cell
# Other names of the same functions, with which Gnumeric and LibreOffice save them.
_RENAMED_TO = {
    "_XLFN.STDEV.S": "STDEV", "_XLFN.NORM.S.INV": "NORMSINV", "LEGACY.NORMSINV": "NORMSINV", "LEGACY.NORMSDIST": "NORMSDIST",
}
_RENAMED = re.compile("|".join(map(re.escape, _RENAMED_TO)))


def spelled(formula: str) -> str:
    """A formula without what programs change when they save it: spaces, capitals, names of functions, the last digits of numbers."""
    pieces = formula.lstrip("=").split('"')
    return '"'.join(piece if index % 2 else _bare(piece) for index, piece in enumerate(pieces))


def _bare(piece: str) -> str:
    bare = _RENAMED.sub(lambda found: _RENAMED_TO[found[0]], piece.replace(" ", "").upper())
    return _NUMBER.sub(lambda found: f"{float(found[0]):.14g}", _ONE_CELL.sub(r"\1", bare))
