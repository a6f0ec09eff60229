"""How a planner looks: one typeface, few colors, and what an input is recognized by.

An input has a box around it and a tinted ground; a result has neither. The box alone
tells them apart, so that nothing is lost in grayscale or without color vision. All text
colors have a contrast of at least 4.5 to 1 on their ground (WCAG 2.1, level AA). Formats are
written down in the usual colors; `recolored` puts those of the settings in their place.
"""

from collections.abc import Mapping

from workbookgen.colors import ACCENT, BAND, EDGE, GROUND, INK, QUIET, ROLES, WARNING
from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Choice, Date, Name, Note, Number
from workbookgen.language.fields import Input, Result
from workbookgen.language.quantities import DAY_UNIT, PERCENT_UNIT, Unit

TYPEFACE = "Arial"
RULE_LINE = "#C9CFD3"
USUAL_WIDTH = 8.43  # of a column that nobody set, in digits
TITLE_LETTERS, MESSAGE_LETTERS = 32, 255  # what the file format takes beside a cell

# Also the workbook's own font: programs measure columns by its digits, and it has stand-ins of the same measures.
SIZE, SMALL = 10, 9  # points
FACE = {"font_name": TYPEFACE, "font_size": SIZE, "font_scheme": "none"}
PLAIN = FACE | {"font_color": INK, "valign": "vcenter"}
TITLE = PLAIN | {"font_size": 18, "bold": True, "font_color": ACCENT}
ABOUT = PLAIN | {"font_color": QUIET}
PART_TITLE = PLAIN | {"font_size": 12, "bold": True, "font_color": ACCENT}
GROUP = PLAIN | {"bold": True, "bg_color": BAND, "bottom": 1, "bottom_color": ACCENT}
LABEL = PLAIN | {"bold": True, "text_wrap": True, "valign": "bottom"}
UNIT = PLAIN | {"font_color": QUIET, "font_size": 9, "bottom": 1, "bottom_color": ACCENT}
NOTE = PLAIN | {"font_color": QUIET, "font_size": SMALL, "indent": 1}
CARD_NOTE = NOTE | {"text_wrap": True}
FACT = PLAIN | {"text_wrap": True, "valign": "top", "bottom": 1, "bottom_color": RULE_LINE}
LINK = PLAIN | {"font_size": 11, "font_color": ACCENT, "underline": 1}
MESSAGE = PLAIN | {"bold": True, "font_size": 9, "indent": 1, "font_color": WARNING, "bottom": 1, "bottom_color": RULE_LINE}
HEADING = PLAIN | {"bold": True, "font_size": 12, "font_color": ACCENT}
READING = PLAIN | {"font_size": 11}
CAUTION = HEADING | {"font_color": WARNING}

_BOX = {"border": 1, "border_color": EDGE, "bg_color": GROUND, "locked": False}
_OPEN = {"bottom": 1, "bottom_color": RULE_LINE}


def recolored(properties: Mapping, colors: Mapping[str, str]) -> dict:
    """A format with the colors that were chosen for some roles."""
    chosen = {ROLES[role]: color for role, color in colors.items()}
    return {name: chosen.get(value, value) for name, value in properties.items()}


def cell(field: Input | Result, unit: Unit | None, in_a_row: bool = False) -> dict:
    """The format of a field's cells. A cell in a row has neighbors: long texts take two lines."""
    ground = _BOX if isinstance(field, Input) else _OPEN
    return PLAIN | ground | {"num_format": number_format(field, unit)} | _aligned(field, in_a_row)


def number_format(field: Input | Result, unit: Unit | None) -> str:
    """Inputs show what was typed; results show as many digits as help."""
    if field.is_text:
        return "@" if isinstance(field, Input) else "General"
    if unit is DAY_UNIT:
        return "yyyy-mm-dd"
    percent = unit is not None and unit.symbol == PERCENT_UNIT.symbol
    if isinstance(field, Input):
        return "0.0#%" if percent else "General"  # "0.##" would show a whole number with a point behind it
    digits = unit.digits if field.digits is None else field.digits
    return ("0" if percent else "#,##0") + ("." + "0" * digits if digits else "") + ("%" if percent else "")


def heads(field, unit: Unit | None) -> tuple[dict, dict]:
    """The formats of a column's label and unit: they stand above what they name."""
    align = {"align": "left", "indent": 1} if getattr(field, "is_text", True) else {"align": "right"}
    return LABEL | align, UNIT | align


def heads_of_facts(is_text: bool, column: int) -> tuple[dict, dict]:
    """The same above fixed facts."""
    align = _beside(is_text, column)
    return LABEL | align, UNIT | align


def fact(is_text: bool, column: int) -> dict:
    return FACT | _beside(is_text, column)


def _beside(is_text: bool, column: int) -> dict:
    """Numbers stand to the right, and a text keeps off the number to its left."""
    return {"align": "left"} | ({"indent": 1} if column > 1 else {}) if is_text else {"align": "right"}


def _aligned(field: Input | Result, in_a_row: bool) -> dict:
    if not field.is_text:
        return {"align": "right"} | ({"shrink": True} if in_a_row else {})
    return {"align": "left", "indent": 1} | ({"text_wrap": True} if in_a_row else {})


def explanation(field: Result) -> dict:
    """A result says what it is while its cell is selected."""
    return {"validate": "any"} | _spoken(field, field.note)


def validation(field: Input, source: str, words: str) -> dict:
    """What a spreadsheet program offers and says while a cell is filled in. Never refuses: a message tells."""
    spoken = _spoken(field, f"{field.help} {words}".strip()) | {
        "error_title": field.label[:TITLE_LETTERS],
        "error_message": words,
        "error_type": "warning",
        "ignore_blank": True,
    }
    match field.domain:
        case Choice():
            return spoken | {"validate": "list", "source": f"={source}"}
        case Number() as domain:
            low = domain.least if domain.least is not None else domain.above
            high = domain.most if domain.most is not None else domain.below
            return spoken | {"validate": "decimal", "criteria": "between", "minimum": low, "maximum": high}
        case Date() as domain:
            return spoken | {"validate": "decimal", "criteria": "between", "minimum": domain.least, "maximum": domain.most}
        case Name() | Note() as domain:
            return spoken | {"validate": "length", "criteria": "<=", "value": domain.longest}


def _spoken(field: Input | Result, message: str) -> dict:
    """What a program says while a cell is selected; refused rather than cut, since the end says what to type."""
    if len(message) > MESSAGE_LETTERS:
        raise DescriptionError.at(
            f"field {field.key}",
            f"what is said while its cell is selected has {len(message)} letters, and a workbook holds {MESSAGE_LETTERS}; shorten it.",
        )
    return {"input_title": field.label[:TITLE_LETTERS], "input_message": message}
