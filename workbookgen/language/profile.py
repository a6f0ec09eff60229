"""The portable profile: what every spreadsheet program computes alike.

The names are OpenFormula's (OASIS ODF Part 4). A function is in the profile because the
engines of this project, LibreOffice and Gnumeric among them, were measured to agree on
it; one that is not listed is refused when a sheet is described. Constructs that engines
read differently (array entry, structured references, implicit intersection, a bare ^ or
unary --) are refused likewise.
"""

import re

FUNCTIONS = frozenset(
    """
    IF AND OR NOT INDEX MATCH SUM SUMPRODUCT COUNT COUNTA COUNTIF AVERAGE ROUND ROUNDUP
    ROUNDDOWN NORMSDIST NORMSINV ABS SIGN SQRT POWER EXP LN LOG10 PI ATAN TAN SIN COS MIN MAX STDEV MEDIAN
    LEN LEFT RIGHT MID FIND SUBSTITUTE UPPER LOWER ISNUMBER ISTEXT ISBLANK
    """.split()
)

FORMS = frozenset({"given", "pick", "total", "tally", "band", "sum", "mean", "spread", "readings"})

_CALL = re.compile(r"([A-Za-z_][A-Za-z0-9_.]*)\s*\(")
_STRANGER = re.compile(r"[$!]|(?<![A-Za-z0-9_.])[A-Za-z_]*[A-Z]\w*\b(?!\s*\(|\.)")
_STRING = re.compile(r'"[^"]*"')
_REFUSED = re.compile(r"[{}\[\]@#^]|--|_xlfn|\bTRUE\b|\bFALSE\b")


def without_strings(text: str) -> str:
    """The formula with its text literals emptied, so that their words are not taken for fields."""
    return _STRING.sub('""', text)


def objections(text: str) -> list[str]:
    """What in a formula is outside the profile; empty when all is well."""
    bare = without_strings(text)
    found = [
        f"the function {name} is outside the portable profile"
        for name in _CALL.findall(bare)
        if name not in FUNCTIONS | FORMS
    ]
    found += [f"'{sign}' is read differently by different programs" for sign in _REFUSED.findall(bare)]
    found += [f"{name} is neither a word nor a function" for name in _STRANGER.findall(bare) if name not in ("TRUE", "FALSE")]
    if bare.count("(") != bare.count(")"):
        found.append("its brackets do not match")
    return found
