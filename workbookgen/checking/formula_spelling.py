"""Formulas in one spelling, whatever a program changed in them when it saved the file."""

from workbookgen.language.tokens import function_name, is_number, is_text, tokenize

# The names by which Gnumeric and LibreOffice save some functions.
_RENAMED_TO = {
    "_XLFN.STDEV.S": "STDEV",
    "_XLFN.NORM.S.INV": "NORMSINV",
    "LEGACY.NORMSINV": "NORMSINV",
    "LEGACY.NORMSDIST": "NORMSDIST",
}


def spelled(formula: str) -> str:
    """A formula in one spelling: spaces, case, function names and the last digits of numbers may differ in files."""
    return "".join(map(_spelled, tokenize(formula)))


def _spelled(token: str) -> str:
    if is_text(token):
        return token
    if is_number(token):
        return f"{float(token):.14g}"
    if (name := function_name(token)) is not None:
        return f"{_RENAMED_TO.get(name.upper(), name.upper())}("
    first, _, last = token.upper().partition(":")
    return first if first and first == last else token.upper()  # a range of one cell is that cell
