"""Number formats and locks, by the number of a cell's style; and what a number format means."""

import re
from dataclasses import dataclass

from openpyxl.styles.numbers import BUILTIN_FORMATS

from workbookgen.ooxml.package import Package, is_on

_IN_BRACKETS = re.compile(r"\[(?:\$([^\]\-]*)[^\]]*|[^\]]*)\]")  # a color, a condition, a currency, a language
_LITERAL = re.compile(r'"([^"]*)"|\\(.)|_.|\*.')


@dataclass(frozen=True)
class Style:
    """The parts of a cell's style that matter here."""

    number_format: str = "General"
    is_locked: bool = True


PLAIN = Style()


def read_styles(package: Package, book: str) -> list[Style]:
    """The styles of a workbook, in their order."""
    parts = package.targets(book, "styles")
    if not parts:
        return [PLAIN]
    root = package.root(parts[0])
    own = root.iterfind("{*}numFmts/{*}numFmt")
    codes = BUILTIN_FORMATS | {int(each.get("numFmtId")): each.get("formatCode", "") for each in own}
    return [_style(each, codes) for each in root.iterfind("{*}cellXfs/{*}xf")] or [PLAIN]


def _style(element, codes: dict[int, str]) -> Style:
    protection = element.find("{*}protection")
    is_locked = is_on(protection.get("locked"), True) if protection is not None else True
    return Style(codes.get(int(element.get("numFmtId", 0)), "General"), is_locked)


@dataclass(frozen=True)
class Shown:
    """How a number format shows a number."""

    kind: str  # "number", "percent", "date", "text" or "nothing"
    decimals: tuple[int, int] | None = None  # the fewest and the most that are shown; None if the program decides
    thousands_left_out: int = 0  # how often the number is divided by 1,000
    words: str = ""  # shown beside the number

    def __str__(self) -> str:
        told = self.kind
        if self.decimals and self.kind in ("number", "percent"):
            told += f" with {self.decimals[1]} decimals"
        if self.thousands_left_out:
            told += f", divided by {1000**self.thousands_left_out:,}"
        return f'{told}, with "{self.words}"' if self.words else told


def shown_by(code: str) -> Shown:
    """The meaning of a number format, however it is written; of several sections, that for positive numbers."""
    words: list[str] = []

    def take(found: re.Match) -> str:
        words.append(next((each for each in found.groups() if each), ""))
        return ""

    first, *others = _sections(code)
    bare = _LITERAL.sub(take, _IN_BRACKETS.sub(take, first))
    said = "".join(words).strip()
    if "general" in bare.lower():
        return Shown("number", words=said)
    if "@" in bare:
        return Shown("text")
    if re.search("[ymdhs]", bare.lower()):
        return Shown("date")
    digits = re.search(r"[0#?](,*)[^0#?,]*$", bare)
    if not digits:
        return Shown("nothing", words=said) if others or said else Shown("number")
    part = bare.partition(".")[2]
    decimals = (part.count("0"), sum(map(part.count, "0#?")))
    return Shown("percent" if "%" in bare else "number", decimals, len(digits[1]), said)


def _sections(code: str) -> list[str]:
    """The sections of a format, split at semicolons outside quotation marks."""
    return re.split(r';(?=(?:[^"]*"[^"]*")*[^"]*$)', code)
