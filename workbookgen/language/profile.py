"""The portable profile: what every spreadsheet program computes alike.

The names are OpenFormula's (OASIS ODF Part 4). A function is in the profile because the
engines of this project, LibreOffice and Gnumeric among them, were measured to agree on
it; one that is not listed is refused when a sheet is described. Constructs that engines
read differently (array entry, structured references, implicit intersection, a bare ^ or
unary --, a comparison that SUMPRODUCT is to count) are refused likewise. What a sheet says
in words is looked through when it is described, and once more when it is bound to cells.
"""

import re

FUNCTIONS = frozenset(
    """
    IF AND OR NOT INDEX MATCH ROW SMALL LARGE REPT SUM SUMIF SUMPRODUCT COUNT COUNTA COUNTIF COUNTIFS AVERAGE ROUND ROUNDUP
    ROUNDDOWN NORMSDIST NORMSINV ABS SIGN SQRT POWER EXP LN LOG10 PI ATAN TAN SIN COS MIN MAX STDEV MEDIAN
    LEN LEFT RIGHT MID FIND SUBSTITUTE UPPER LOWER ISNUMBER ISTEXT ISBLANK
    """.split()
)

FORMS = frozenset({"given", "lookup", "sum_where", "count_where", "place", "class_of", "sum", "mean", "stdev", "readings", "said"})

_CALL = re.compile(r"([A-Za-z_][A-Za-z0-9_.]*)\s*\(")
_STRANGER = re.compile(r"[$!]|(?<![A-Za-z0-9_.])[A-Za-z_]*[A-Z]\w*\b(?!\s*\(|\.)")
_STRING = re.compile(r'"[^"]*"')
_REFUSED = re.compile(r"[{}\[\]@#^%;]|--|_xlfn|\bTRUE\b|\bFALSE\b")
_RANGE = re.compile(r":(?!\$[A-Z]+\$?\d)|(?<!\d):")  # a range has a cell on either side, and nothing worked out
_UNCOUNTED = re.compile(r"\bSUMPRODUCT\(\([^()]*[=<>][^()]*\)\s*[,)]")
LONGEST, DEEPEST = 8192, 64  # signs of a formula and brackets within brackets, as the file format's oldest readers take them


def without_strings(text: str) -> str:
    """The formula with its text literals emptied, so that their words are not taken for fields."""
    return _STRING.sub('""', text)


def objections(text: str) -> list[str]:
    """What in a described formula is outside the profile; empty when all is well."""
    bare = without_strings(text)
    found = _outside(bare, FUNCTIONS | FORMS)
    found += [f"{name} is neither a word nor a function" for name in _STRANGER.findall(bare) if name not in ("TRUE", "FALSE")]
    found += ["':' is no sign of a described formula"] * (":" in bare)
    return found


def bound_objections(formula: str) -> list[str]:
    """What in a formula that is bound to cells is outside the profile."""
    bare = without_strings(formula)
    found = _outside(bare, FUNCTIONS)
    found += ["a range must stand between two cells"] * bool(_RANGE.search(bare))
    found += [f"it has {len(formula)} signs, and some programs take {LONGEST}"] * (len(formula) > LONGEST)
    found += [f"its brackets are {_depth(bare)} deep, and some programs take {DEEPEST}"] * (_depth(bare) > DEEPEST)
    return found


def _outside(bare: str, functions: frozenset[str]) -> list[str]:
    """Functions and constructs outside the profile, in a formula without its texts."""
    found = [f"the function {name} is outside the portable profile" for name in _CALL.findall(bare) if name not in functions]
    found += [f"'{sign}' is read differently by different programs" for sign in _REFUSED.findall(bare)]
    found += [f"{place} counts in some programs only: multiply the comparison by 1" for place in _UNCOUNTED.findall(bare)]
    if bare.count("(") != bare.count(")"):
        found.append("its brackets do not match")
    return found


def _depth(bare: str) -> int:
    """How many brackets stand within each other."""
    deepest = depth = 0
    for sign in bare:
        depth += (sign == "(") - (sign == ")")
        deepest = max(deepest, depth)
    return deepest
