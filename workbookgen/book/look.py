"""How cells look: one typeface, three sizes, few colors, and the number formats.

An input has a tint, and a line below it in the edge color; the line alone identifies it, so nothing is lost in
grayscale or without color vision. Calculated cells are white over a hairline. All text has a contrast of at least 4.5
to 1 with its ground (WCAG 2.1, level AA). Formats are written in the default colors; `recolored` replaces these by
those of the settings.
"""

from collections.abc import Mapping

from workbookgen.colors import ACCENT, EDGE, GROUND, HAIR, INK, QUIET, ROLES, WARNING
from workbookgen.errors import DescriptionError
from workbookgen.language.automatic import Automatic
from workbookgen.language.domains import Choice, Date, Name, Note, Number
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Column
from workbookgen.language.quantities import DAY_UNIT, PERCENT_UNIT, Unit

TYPEFACE = "Arial"
TITLE_LETTERS, MESSAGE_LETTERS = 32, 255  # the format's limits for the title and text of a validation's message

LARGE, SIZE, SMALL = 22, 11, 9  # points: titles and answers; text and numbers; links, heads, units and help
A_FEW_WORDS = 20  # characters wide: a column of notes that hold a name rather than a sentence
# Programs measure columns in digits of the workbook's default font, which are 7 pixels wide at 10 points.
FACE = {"font_name": TYPEFACE, "font_size": 10, "font_scheme": "none"}
PLAIN = FACE | {"font_size": SIZE, "font_color": INK, "valign": "vcenter"}
QUIETLY = PLAIN | {"font_color": QUIET}
LITTLE = QUIETLY | {"font_size": SMALL}
TITLE = PLAIN | {"font_size": LARGE}
TITLE_QUIET = TITLE | {"font_color": QUIET}
ANSWER = TITLE | {"bold": True, "font_color": ACCENT}
ABOUT = LITTLE | {"align": "right"}
RULE = {"top": 2, "top_color": INK}  # over a heading
HEAD = PLAIN | RULE | {"bold": True}
HEAD_ASIDE = LITTLE | RULE | {"align": "right"}
LABEL = PLAIN | {"font_size": SMALL, "bold": True, "text_wrap": True, "valign": "bottom"}
UNIT = LITTLE
LINE = {"bottom": 1, "bottom_color": HAIR}
AIR, GENERAL = "_)_)", "General"
AXIS = {"left": 1, "left_color": EDGE}  # of a plot of dots
INK_LINE = {"bottom": 1, "bottom_color": INK}
LINK = LITTLE | {"font_color": ACCENT, "underline": 0}
LINK_BOLD = LINK | {"font_size": SIZE, "bold": True}
HERE = LITTLE | {"font_color": INK, "bold": True, "bottom": 5, "bottom_color": ACCENT}
PLAIN_BROKEN = PLAIN | {"text_wrap": True, "valign": "top"}
MESSAGE = PLAIN | {"font_color": WARNING}
MESSAGE_BROKEN = MESSAGE | {"font_size": SMALL, "text_wrap": True}  # in the place of the answers
MARK = PLAIN | {"bold": True, "font_color": WARNING, "align": "center"}
FACT = PLAIN | {"font_size": SMALL, "text_wrap": True, "valign": "top"} | LINE
CAUTION_HEAD = HEAD | {"font_color": WARNING, "top_color": WARNING}
ENTRANCE_RULE = {"top": 5, "top_color": ACCENT}
TYPED = {"bg_color": GROUND, "bottom": 1, "bottom_color": EDGE, "locked": False}
TINTED = {"bg_color": GROUND}


def recolored(properties: Mapping, colors: Mapping[str, str]) -> dict:
    """A format's properties, nested ones too, with the colors that the settings chose for some roles."""
    chosen = {ROLES[role]: color for role, color in colors.items()}
    return {
        name: recolored(value, colors) if isinstance(value, Mapping) else chosen.get(value, value)
        for name, value in properties.items()
    }


def accented(properties: Mapping) -> dict:
    """A heading or a rule in the accent color, for answers."""
    return {name: ACCENT if value == INK else value for name, value in properties.items()}


def entry(field: Input, unit: Unit | None) -> dict:
    """The format of an input on a page."""
    return PLAIN | TYPED | {"num_format": number_format(field, unit)} | aligned(field) | _shrunk(field)


def entry_in_a_log(field: Input, unit: Unit | None) -> dict:
    """The format of an input in a log: white until its line is in use."""
    return PLAIN | LINE | {"locked": False, "num_format": number_format(field, unit)} | aligned(field) | _shrunk(field)


def _shrunk(field: Input) -> dict:
    """A long name is shown in full, in smaller letters; those of a sentence could not be read."""
    is_name = isinstance(field.domain, Choice | Name)
    return {"shrink": True} if is_name or isinstance(field.domain, Note) and field.width <= A_FEW_WORDS else {}


def result(field: Result | Automatic, unit: Unit | None) -> dict:
    """The format of a calculated cell."""
    return PLAIN | LINE | {"num_format": number_format(field, unit)} | aligned(field)


def answer(field: Result, unit: Unit | None) -> dict:
    """The format of a large answer, with the unit beside the number."""
    return ANSWER | on_its_own(field, unit) | {"shrink": True}


def on_its_own(field: Result | Automatic, unit: Unit | None) -> dict:
    """The format of a number outside any column: at the left, with its unit."""
    return {"num_format": sum_format(field, unit), "align": "left"}


def aligned(field: Input | Result | Automatic) -> dict:
    """Texts at the left, indented if typed; numbers at the right.

    Calculated numbers are kept off the edge by their number format, not by an indent: LibreOffice 7.4 drops the indent
    of a number whose neighbor has another validation, and of some heads.
    """
    if field.is_text and not getattr(field, "is_range", False):
        return {"align": "left"} | ({"indent": 1} if isinstance(field, Input) else {})
    return {"align": "right"}


def number_format(field: Input | Result | Automatic, unit: Unit | None) -> str:
    """The number format: inputs show what was typed, results as many digits as are useful, with padding."""
    if getattr(field, "is_range", False):
        return f"0;0;0;@{AIR}"
    if field.is_text:
        return "@" if isinstance(field, Input) else GENERAL
    if unit is DAY_UNIT:
        return "yyyy-mm-dd" + AIR
    if isinstance(field, Input):
        # "0.##" would show a whole number with a trailing point. General with padding would keep LibreOffice from
        # rounding to the width of the cell, so a third of an ounce would show as ###.
        return "0.0#%" + AIR if _is_percent(unit) else GENERAL
    body = _digits(field, unit)
    return signed(body, field.digits or 0, AIR) if getattr(field, "is_signed", False) else _aired(body)


def sum_format(field: Result | Automatic, unit: Unit | None) -> str:
    """The number format of a number outside any column, with its unit."""
    if field.is_text or unit is DAY_UNIT:
        return number_format(field, unit)
    words = "" if _is_percent(unit) or not unit or not unit.symbol else f'" {unit.symbol}"'
    return f"{_digits(field, unit)}{words}"


def _digits(field: Result | Automatic, unit: Unit | None) -> str:
    digits = unit.digits if getattr(field, "digits", None) is None else field.digits
    decimals = "." + "0" * digits if digits else ""
    return f"0{decimals}%" if _is_percent(unit) else f"#,##0{decimals}"


def _aired(body: str) -> str:
    """The format with padding at its right, which every program keeps, and a true minus sign."""
    return f'{body}{AIR};"−"{body}{AIR}'


def signed(body: str, digits: int, air: str = "") -> str:
    """The format with a plus or minus sign, except for what rounds to zero."""
    least = f"{0.005 / 10**digits:.15g}"
    return f'[>={least}]"+"{body}{air};[<=-{least}]"−"{body}{air};{body}{air}'


def unless_nothing(number_format: str) -> str:
    """The same format, but zero is not shown."""
    return f"{number_format.split(';')[0]};;"


def _is_percent(unit: Unit | None) -> bool:
    return unit is not None and unit.symbol == PERCENT_UNIT.symbol


def stands_at_the_edge(field: Input | Result | Automatic, unit: Unit | None) -> bool:
    """Whether it is shown without padding: a number as it was typed."""
    return isinstance(field, Input) and number_format(field, unit) == GENERAL


def head_of(field: Input | Result | Automatic, unit: Unit | None = None) -> tuple[dict, dict]:
    """The formats of a column's label and unit, aligned like the cells below them."""
    looks = aligned(field)
    if looks["align"] == "right" and not stands_at_the_edge(field, unit):
        looks |= {"num_format": f"@{AIR}"}
    return LABEL | looks, UNIT | looks


def broken(head: dict) -> dict:
    """The format of a label on several lines, with an indent: padding in the format would only pad the last line."""
    return head | ({"num_format": GENERAL, "indent": 1} if head.get("num_format", "").startswith("@_") else {})


def _refusing(title: str, message: str) -> dict:
    """The validation of a cell in which nothing may be typed."""
    return {
        "validate": "custom",
        "value": "=1=0",
        "error_title": title,
        "error_message": message,
        "error_type": "stop",
        "ignore_blank": False,
    }


# The ink line is so low that nobody would see what they typed into it with the arrow keys.
ABOVE_THE_LINES = _refusing("Above the lines", "The lines of this log start below. Type there; here, press Escape.")


def worked_out(field: Result | Automatic | Column) -> dict:
    """The validation of a calculated cell: it describes the result when selected, and refuses typing."""
    elsewhere = "This cell is worked out from the tinted ones. Type there; here, press Escape."
    return _spoken(field, getattr(field, "note", "")) | _refusing("Worked out", elsewhere)


def validation(field: Input, source: str, asked: str, refused: str) -> dict:
    """The validation of an input: what to choose from, what is `asked` for, and what is said of something else.

    It warns but never refuses, since the message of the record says what is wrong.
    """
    spoken = _spoken(field, f"{field.help} {asked}".strip()) | {
        "error_title": field.label[:TITLE_LETTERS],
        "error_message": refused,
        "error_type": "warning",
        "ignore_blank": True,
    }
    match field.domain:
        case Choice():
            return spoken | {"validate": "list", "source": f"={source}"}
        case Number() as domain:
            return spoken | _between(domain.low, domain.high)
        case Date() as domain:
            return spoken | _between(domain.least, domain.most)
        case Name() | Note() as domain:
            return spoken | {"validate": "length", "criteria": "<=", "value": domain.longest}


def _between(low: float, high: float) -> dict:
    return {"validate": "decimal", "criteria": "between", "minimum": low, "maximum": high}


def _spoken(field: Input | Result | Automatic, message: str) -> dict:
    """The message shown while a cell is selected. Too long a text is refused, not cut: its end says what to type."""
    if len(message) > MESSAGE_LETTERS:
        too_long = f"what is said while its cell is selected has {len(message)} letters"
        raise DescriptionError.at(
            f"field {field.key}, {field.label}", f"{too_long}, and a workbook holds {MESSAGE_LETTERS}; shorten it."
        )
    return {"input_title": field.label[:TITLE_LETTERS], "input_message": message} if message else {}
