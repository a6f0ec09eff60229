"""The meaning of formulas, without what programs change in them when they save a file."""

from workbookgen.language.tokens import function_name, is_number, is_text, tokenize

# Other names of the same functions, with which Gnumeric and LibreOffice save them.
_RENAMED_TO = {
    "_XLFN.STDEV.S": "STDEV",
    "_XLFN.NORM.S.INV": "NORMSINV",
    "LEGACY.NORMSINV": "NORMSINV",
    "LEGACY.NORMSDIST": "NORMSDIST",
}


def spelled(formula: str) -> str:
    """A formula without what programs change in it: spaces, capitals, names of functions, last digits of numbers."""
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
