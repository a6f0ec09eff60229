"""Whether it can be read: contrasts by the formula of WCAG 2, and number formats."""

import pytest

from workbookgen.book import look
from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Choice, Name, Note, Number
from workbookgen.language.fields import Input, Result
from workbookgen.language.quantities import LENGTH, NUMBER, SHARE

WHITE = "#FFFFFF"
STYLES = {
    name: value for name, value in vars(look).items() if name.isupper() and isinstance(value, dict) and "font_color" in value
}
SOME = Number(least=0, most=1)


def luminance(color: str) -> float:
    """Relative luminance, WCAG 2.2 (W3C), definition "relative luminance" (from memory)."""
    shares = [int(color[index : index + 2], 16) / 255 for index in (1, 3, 5)]
    linear = [share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4 for share in shares]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def result(unit=LENGTH, **how) -> Result:
    return Result("twice", "Twice", "2 * loop", lambda loop: 2 * loop, unit, **how)


def test_contrast_itself():
    # Black on white is 21 to 1, WCAG 2.2 (from memory); #767676 is the lightest gray that reaches 4.5 (from memory).
    assert contrast("#000000", WHITE) == pytest.approx(21)
    assert contrast("#767676", WHITE) >= 4.5 > contrast("#777777", WHITE)


def test_there_are_styles_to_look_at():
    assert len(STYLES) >= 12


@pytest.mark.parametrize("name", STYLES)
def test_text_can_be_read_on_its_ground(name):
    assert contrast(STYLES[name]["font_color"], STYLES[name].get("bg_color", WHITE)) >= 4.5


@pytest.mark.parametrize("domain", [SOME, Name(), Note(), Choice("reels_listed", "Reels")])
def test_what_is_typed_can_be_read_and_its_box_seen(domain):
    style = look.cell(Input("loop", "Loop", domain, LENGTH if domain is SOME else None), LENGTH.us if domain is SOME else None)
    assert contrast(style["font_color"], style["bg_color"]) >= 4.5
    assert contrast(style["border_color"], WHITE) >= 3, "WCAG 2.2, 1.4.11: the edge of a control (from memory)"
    assert style["border"] == 1 and style["locked"] is False


def test_an_input_is_told_from_a_result_by_more_than_its_color():
    typed, computed = look.cell(Input("loop", "Loop", SOME, LENGTH), LENGTH.us), look.cell(result(), LENGTH.us)
    assert typed["border"] == 1 and "border" not in computed
    assert "bg_color" not in computed and computed.get("locked", True)


def test_one_typeface():
    assert {style["font_name"] for style in STYLES.values()} == {look.TYPEFACE}


@pytest.mark.parametrize(
    ("field", "unit", "form"),
    [
        (result(), LENGTH.us, "#,##0.0"),
        (result(digits=0), LENGTH.us, "#,##0"),
        (result(digits=3), LENGTH.us, "#,##0.000"),
        (result(NUMBER), NUMBER.us, "#,##0.00"),
        (result(SHARE), SHARE.us, "0.0%"),
        (result(SHARE, digits=0), SHARE.us, "0%"),
        (result(None), None, "General"),
        (Input("loop", "Loop", SOME, LENGTH), LENGTH.us, "General"),
        (Input("loop", "Loop", SOME, SHARE), SHARE.us, "0.0#%"),
        (Input("loop", "Loop", Name()), None, "@"),
    ],
)
def test_number_formats(field, unit, form):
    assert look.number_format(field, unit) == form


def test_what_a_program_says():
    field = Input("loop", "L" * 50, Number(above=0, below=7), LENGTH, help="Once around.")
    spoken = look.validation(field, "", "Type a number.")
    # A title holds 32 letters, a message 255: limits of the file format (XlsxWriter's documentation, from memory).
    assert spoken["input_title"] == spoken["error_title"] == "L" * 32
    assert (spoken["input_message"], spoken["error_message"]) == ("Once around. Type a number.", "Type a number.")
    assert (spoken["minimum"], spoken["maximum"]) == (0, 7)


def test_a_message_of_255_letters_is_said_in_full():
    field = Input("loop", "Loop", SOME, LENGTH, help="h" * 240)
    assert look.validation(field, "", "w" * 14)["input_message"] == "h" * 240 + " " + "w" * 14
    assert look.explanation(result(note="n" * 255))["input_message"] == "n" * 255


def test_a_longer_one_is_refused_and_not_cut():
    # Its end is cut first, and that is where it says what to type.
    with pytest.raises(DescriptionError, match="field loop: .* has 256 letters, and a workbook holds 255; shorten it"):
        look.validation(Input("loop", "Loop", SOME, LENGTH, help="h" * 240), "", "w" * 15)
    with pytest.raises(DescriptionError, match="field twice: .* has 256 letters"):
        look.explanation(result(note="n" * 256))


@pytest.mark.parametrize(
    ("domain", "offered"),
    [
        (Choice("reels_listed", "Reels"), {"validate": "list", "source": "=Reels!$A$1"}),
        (Name(longest=9), {"validate": "length", "criteria": "<=", "value": 9}),
        (Note(longest=8), {"validate": "length", "criteria": "<=", "value": 8}),
    ],
)
def test_what_a_program_offers(domain, offered):
    spoken = look.validation(Input("loop", "Loop", domain), "Reels!$A$1", "Words.")
    assert offered.items() <= spoken.items()
    assert spoken["error_type"] == "warning" and spoken["ignore_blank"]
