"""Whether it can be read: contrasts by the formula of WCAG 2, and number formats."""

import pytest

from workbookgen.book import look
from workbookgen.errors import DescriptionError
from workbookgen.language.automatic import MARK, MESSAGE
from workbookgen.language.domains import Choice, Name, Note, Number
from workbookgen.language.fields import Input, Result
from workbookgen.language.quantities import LENGTH, NUMBER, SHARE

WHITE = "#FFFFFF"
STYLES = {
    name: value
    for name, value in vars(look).items()
    if name.isupper() and isinstance(value, dict) and "font_color" in value
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
def test_what_is_typed_can_be_read_and_its_edge_seen(domain):
    style = look.entry(
        Input("loop", "Loop", domain, LENGTH if domain is SOME else None), LENGTH.customary if domain is SOME else None
    )
    assert contrast(style["font_color"], style["bg_color"]) >= 4.5
    assert contrast(style["bottom_color"], WHITE) >= 3, "WCAG 2.2, 1.4.11: the edge of a control (from memory)"
    assert contrast(style["bottom_color"], style["bg_color"]) >= 3
    assert style["bottom"] == 1 and style["locked"] is False


def test_an_input_is_told_from_a_result_by_more_than_its_color():
    """By the line under it, which is three to one darker than a result's hairline, and by its ground."""
    typed = look.entry(Input("loop", "Loop", SOME, LENGTH), LENGTH.customary)
    computed = look.result(result(), LENGTH.customary)
    assert (
        contrast(typed["bottom_color"], computed["bottom_color"]) >= 2
        and contrast(computed["bottom_color"], WHITE) < 1.5
    )
    assert "bg_color" not in computed and computed.get("locked", True)
    in_a_log = look.entry_in_a_log(Input("loop", "Loop", SOME, LENGTH), LENGTH.customary)
    assert in_a_log["locked"] is False and "bg_color" not in in_a_log, "white until its line is in use"
    assert contrast(in_a_log["font_color"], look.TINTED["bg_color"]) >= 4.5


def test_three_sizes_of_letters():
    assert {style["font_size"] for style in STYLES.values()} == {look.LARGE, look.SIZE, look.SMALL} and look.SMALL >= 9


def test_one_typeface():
    assert {style["font_name"] for style in STYLES.values()} == {look.TYPEFACE}


@pytest.mark.parametrize(
    ("field", "unit", "form"),
    [
        (result(), LENGTH.customary, '#,##0_)_);"−"#,##0_)_)'),  # air behind it, and a true minus
        (result(digits=0), LENGTH.customary, '#,##0_)_);"−"#,##0_)_)'),
        (result(digits=3), LENGTH.customary, '#,##0.000_)_);"−"#,##0.000_)_)'),
        (result(NUMBER), NUMBER.customary, '#,##0.00_)_);"−"#,##0.00_)_)'),
        (result(SHARE), SHARE.customary, '0.0%_)_);"−"0.0%_)_)'),
        (result(SHARE, digits=0), SHARE.customary, '0%_)_);"−"0%_)_)'),
        (result(None), None, "General"),
        (Input("loop", "Loop", SOME, LENGTH), LENGTH.customary, "General"),
        (Input("loop", "Loop", SOME, SHARE), SHARE.customary, "0.0#%_)_)"),
        (Input("loop", "Loop", Name()), None, "@"),
    ],
)
def test_number_formats(field, unit, form):
    assert look.number_format(field, unit) == form


def test_a_range_stands_at_the_right_like_the_numbers_above_it():
    for field, unit in ((result(None, is_range=True), None), (result(NUMBER), NUMBER.customary)):
        assert look.result(field, unit)["align"] == look.head_of(field, unit)[0]["align"] == "right"
        assert look.AIR in look.result(field, unit)["num_format"]
    words = result(None)
    assert look.result(words, None)["align"] == look.head_of(words)[0]["align"] == "left"


@pytest.mark.parametrize(
    ("field", "unit", "form"),
    [
        (result(), LENGTH.customary, '#,##0" yd"'),
        (result(digits=1), LENGTH.customary, '#,##0.0" yd"'),
        (result(digits=0), LENGTH.metric, '#,##0" m"'),
        (result(NUMBER, digits=0), NUMBER.customary, "#,##0"),
        (result(SHARE, digits=0), SHARE.customary, "0%"),
        (result(None), None, "General"),
    ],
)
def test_an_answer_has_its_unit_beside_it(field, unit, form):
    assert look.sum_format(field, unit) == form and look.answer(field, unit)["num_format"] == form


def test_a_cell_that_is_worked_out_refuses_to_be_typed_over():
    for field in (result(), MESSAGE, MARK):
        spoken = look.worked_out(field)
        assert (spoken["validate"], spoken["value"], spoken["error_type"], spoken["ignore_blank"]) == (
            "custom",
            "=1=0",
            "stop",
            False,
        )
        assert len(spoken["error_title"]) <= 32 and len(spoken["error_message"]) <= 255


def test_what_a_program_says():
    field = Input("loop", "L" * 50, Number(above=0, below=7), LENGTH, help="Once around.")
    spoken = look.validation(field, "", "Type a number.", "Type a number, or empty it.")
    # A title holds 32 letters, a message 255: limits of the file format (XlsxWriter's documentation, from memory).
    assert spoken["input_title"] == spoken["error_title"] == "L" * 32
    assert (spoken["input_message"], spoken["error_message"]) == (
        "Once around. Type a number.",
        "Type a number, or empty it.",
    )
    assert (spoken["minimum"], spoken["maximum"]) == (0, 7)


def test_a_message_of_255_letters_is_said_in_full():
    field = Input("loop", "Loop", SOME, LENGTH, help="h" * 240)
    assert look.validation(field, "", "w" * 14, "w" * 30)["input_message"] == "h" * 240 + " " + "w" * 14
    assert look.worked_out(result(note="n" * 255))["input_message"] == "n" * 255


def test_a_longer_one_is_refused_and_not_cut():
    # Its end is cut first, and that is where it says what to type.
    with pytest.raises(
        DescriptionError, match="field loop, Loop: .* has 256 letters, and a workbook holds 255; shorten it"
    ):
        look.validation(Input("loop", "Loop", SOME, LENGTH, help="h" * 240), "", "w" * 15, "w")
    with pytest.raises(DescriptionError, match="field twice, Twice: .* has 256 letters"):
        look.worked_out(result(note="n" * 256))


@pytest.mark.parametrize(
    ("domain", "offered"),
    [
        (Choice("reels_listed", "Reels"), {"validate": "list", "source": "=Reels!$A$1"}),
        (Name(longest=9), {"validate": "length", "criteria": "<=", "value": 9}),
        (Note(longest=8), {"validate": "length", "criteria": "<=", "value": 8}),
    ],
)
def test_what_a_program_offers(domain, offered):
    spoken = look.validation(Input("loop", "Loop", domain), "Reels!$A$1", "Words.", "Words.")
    assert offered.items() <= spoken.items()
    assert spoken["error_type"] == "warning" and spoken["ignore_blank"]
