"""The portable profile: what every spreadsheet program computes alike.

The names are OpenFormula's (OASIS ODF Part 4). A function is in the profile if the engines of this project,
LibreOffice and Gnumeric among them, were measured to agree on it; any other is refused when a sheet is described.
So are constructs that engines read differently: array entry, structured references, implicit intersection, a bare ^,
a double minus, and a comparison inside SUMPRODUCT that nothing turns into a number. A formula is checked when it is
described, and again when it is bound to cells.
"""

from collections.abc import Collection, Iterator, Sequence
from itertools import accumulate, pairwise

from workbookgen.language.tokens import COMPARISONS, OPERATORS, UNMATCHED, function_name, is_name, is_value, tokenize

FUNCTIONS = frozenset(
    """
    IF AND OR NOT INDEX MATCH ROW SMALL LARGE REPT SUM SUMIF SUMPRODUCT COUNT COUNTA COUNTBLANK COUNTIF COUNTIFS AVERAGE ROUND ROUNDUP
    ROUNDDOWN NORMSDIST NORMSINV ABS SIGN SQRT POWER EXP LN LOG10 PI ATAN TAN SIN COS MIN MAX STDEV MEDIAN
    LEN LEFT RIGHT MID FIND SUBSTITUTE UPPER LOWER ISNUMBER ISTEXT
    """.split()
)
SIGNS = OPERATORS | {",", ")"}
TRUTHS = frozenset({"TRUE", "FALSE"})  # refused: write 1 = 1, which is true everywhere
# The limits of the file format's oldest readers: characters of a formula, and levels of parentheses.
LONGEST = 8192
DEEPEST = 64
# Of one function: LibreOffice 7.4 shows an error from 256 on (measured), and the format's best known program takes no
# more (from memory).
MOST_ARGUMENTS = 255


def outside(pieces: Sequence[str], functions: Collection[str]) -> list[str]:
    """The functions and constructs among a formula's tokens that are outside the profile, as sentences."""
    kinds = dict.fromkeys(pieces)
    names = [name for piece in kinds if (name := function_name(piece)) and name not in functions]
    strange = [*filter(_is_strange, kinds), *("--" for pair in pairwise(pieces) if pair == ("-", "-"))]
    found = [
        f"the function {name} is outside the portable profile (language/profile.py lists what is in it)"
        for name in names
    ]
    found += [
        f"'{sign}' is read differently by different programs{': write POWER' if sign == '^' else ''}"
        for sign in strange
    ]
    found += [f"{place} counts in some programs only: multiply the comparison by 1" for place in _uncounted(pieces)]
    depths = list(_depths(pieces))
    if depths and (depths[-1] != 0 or min(depths) < 0):
        found.append(UNMATCHED)
    return found


def bound_objections(formula: str) -> list[str]:
    """What in a formula bound to cells is outside the profile, including its size, as sentences."""
    pieces = tokenize(formula)
    deepest, most = max(_depths(pieces), default=0), max(_arguments(pieces), default=0)
    ranges = [piece for piece in dict.fromkeys(pieces) if ":" in piece and is_name(piece)]
    found = outside(pieces, FUNCTIONS)
    found += [f"in {piece} a range must stand between two cells" for piece in ranges if not _is_range(piece)]
    if len(formula) > LONGEST:
        found.append(f"it has {len(formula)} signs, and some programs take {LONGEST}")
    if deepest > DEEPEST:
        found.append(f"its brackets are {deepest} deep, and some programs take {DEEPEST}")
    if most > MOST_ARGUMENTS:
        found.append(f"a function in it takes {most} arguments, and some programs take {MOST_ARGUMENTS}")
    return found


def _arguments(pieces: Sequence[str]) -> Iterator[int]:
    """The number of arguments in each pair of parentheses."""
    inside: list[int] = []
    for piece in pieces:
        if piece == ")":
            yield inside.pop() if inside else 0
        elif piece == "(" or function_name(piece) is not None:
            inside.append(1)
        elif piece == "," and inside:
            inside[-1] += 1


def _is_strange(piece: str) -> bool:
    """Whether a token is neither an operator of the profile nor an operand or call."""
    is_begun_text = piece == '"'
    return (
        piece in TRUTHS or is_begun_text or not (piece in SIGNS or function_name(piece) is not None or is_value(piece))
    )


def _uncounted(pieces: Sequence[str]) -> Iterator[str]:
    """Every SUMPRODUCT meant to count a comparison: one with an argument that is only a comparison."""
    for index, pair in enumerate(pairwise(pieces)):
        if pair != ("SUMPRODUCT(", "("):
            continue
        inner = pieces[index + 2 :]
        brackets = (place for place, piece in enumerate(inner) if piece == ")" or function_name(piece) is not None)
        end = next(brackets, len(inner))
        is_whole_argument = tuple(inner[end : end + 2]) in ((")", ","), (")", ")"))
        if is_whole_argument and COMPARISONS & set(inner[:end]):
            yield "".join(("SUMPRODUCT((", *inner[: end + 1]))


def _is_range(piece: str) -> bool:
    """Whether there is a plain cell on either side of the colon."""
    first, _, last = piece.partition(":")
    return first[-1:].isdigit() and last[:1] == "$" and last[-1:].isdigit()


def _depths(pieces: Sequence[str]) -> Iterator[int]:
    """The number of open parentheses after each token."""
    return accumulate((piece[-1] == "(") - (piece == ")") for piece in pieces)
