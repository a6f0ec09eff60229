"""A mistake in the settings is told with the file, the key, and what is allowed instead."""

import pytest

from workbookgen.errors import SettingsError
from workbookgen.settings import Settings, changed, load, parse, templates

LENGTH = 'write a length above 0 as a number and a unit (yd, ft, in, m, cm, mm), for example "72 in" or "1.5 m".'

# Text of the file, the line and the key that must be named, and what must be said of it.
MISTAKES = {
    "unknown key": ("color = 1", "line 1, color", "there is no such setting; known are units, paper, title,"),
    "near the name of a setting": ('unit = "us"', "line 1, unit", "Did you mean units?"),
    "near the name of a log": ("[rows]\nskein = 5", "line 2, rows.skein", "Did you mean skeins?"),
    "near the name of a measure": (
        '[[reels]]\nname = "A"\nlop = "2 yd"\nloop = "2 yd"',
        "line 3, reels.1.lop",
        "Did you mean loop?",
    ),
    "unknown units": ('units = "imperial"', "line 1, units", "write one of 'us', 'us-grams'"),
    "unknown paper": ('paper = "legal"', "line 1, paper", "write one of 'letter' or 'a4'."),
    "empty title": ('title = ""', "line 1, title", "write a text; it may not be empty."),
    "long title": (f'title = "{"x" * 61}"', "line 1, title", "write a text of at most 60 letters."),
    "title of two lines": ('title = "two\\nlines"', "line 1, title", "leave out line breaks and control characters"),
    "title of a number": ("title = 2026", "line 1, title", "write a text in quotes."),
    "no rows": ("[rows]\nskeins = 0", "line 2, rows.skeins", "write a whole number of 2 or more."),
    "one row": ("[rows]\nskeins = 1", "line 2, rows.skeins", "write a whole number of 2 or more."),
    "too many rows": ("[rows]\nskeins = 20001", "line 2, rows.skeins", "write a whole number of at most 20000."),
    "half a row": ("[rows]\nfiber = 12.5", "line 2, rows.fiber", "write a whole number, without quotes."),
    "rows in words": ('[rows]\nfiber = "many"', "line 2, rows.fiber", "write a whole number, without quotes."),
    "rows that are no table": ("rows = 5", "line 1, rows", "write a table under [rows]"),
    "reels that are no table": ('reels = "Porch"', "line 1, reels", "write a table under [[reels]]"),
    "reel without a name": ('[[reels]]\nloop = "2 yd"', "line 1, reels.1.name", "this setting is needed."),
    "long name": (
        f'[[reels]]\nname = "{"x" * 41}"\nloop = "2 yd"',
        "line 2, reels.1.name",
        "write a text of at most 40 letters.",
    ),
    "reel without a loop": (
        '[[reels]]\nname = "Porch"',
        "line 1, reels.1",
        'give the loop of the reel, for example loop = "72 in"',
    ),
    "height alone": (
        '[[reels]]\nname = "N"\nheight = "15 in"',
        "line 1, reels.1",
        "a niddy-noddy needs both height and arms.",
    ),
    "arms alone": (
        '[[reels]]\nname = "N"\narms = ["14 in", "14 in"]',
        "line 1, reels.1",
        "a niddy-noddy needs both height and arms.",
    ),
    "one arm": (
        '[[reels]]\nname = "N"\nheight = "15 in"\narms = ["14 in"]',
        "line 4, reels.1.arms.2",
        'write both arms in brackets: ["14 in", "14 in"].',
    ),
    "length without a unit": ('[[reels]]\nname = "A"\nloop = "72"', "line 3, reels.1.loop", LENGTH),
    "length in words": ('[[reels]]\nname = "A"\nloop = "two yards"', "line 3, reels.1.loop", LENGTH),
    "length with a comma": ('[[reels]]\nname = "A"\nloop = "1,5 m"', "line 3, reels.1.loop", LENGTH),
    "length in another unit": ('[[reels]]\nname = "A"\nloop = "2 ells"', "line 3, reels.1.loop", LENGTH),
    "no length at all": ('[[reels]]\nname = "A"\nloop = "0 in"', "line 3, reels.1.loop", LENGTH),
    "negative length": ('[[reels]]\nname = "A"\nloop = "-72 in"', "line 3, reels.1.loop", LENGTH),
    "bad tolerance": ('[[reels]]\nname = "A"\nloop = "2 yd"\ntolerance = "1/4"', "line 4, reels.1.tolerance", LENGTH),
    "arms without brackets": (
        '[[reels]]\nname = "N"\nheight = "15 in"\narms = "14 in"',
        "line 4, reels.1.arms",
        "write both arms in brackets",
    ),
    "three arms": (
        '[[reels]]\nname = "N"\nheight = "1 in"\narms = ["1 in", "1 in", "1 in"]',
        "line 4, reels.1.arms",
        "write both arms in brackets",
    ),
    "rows in quotes": ('[rows]\nfiber = "5"', "line 2, rows.fiber", "write a whole number, without quotes."),
    "rows that are a yes": ("[rows]\nfiber = true", "line 2, rows.fiber", "write a whole number, without quotes."),
    "a cord without its turns": (
        '[[reels]]\nname = "A"\ncord = "10 yd"',
        "line 1, reels.1",
        "give both cord and turns.",
    ),
    "turns of no cord": ('[[reels]]\nname = "A"\nturns = 4', "line 1, reels.1", "give both cord and turns."),
    "no turns": (
        '[[reels]]\nname = "A"\ncord = "10 yd"\nturns = 0',
        "line 4, reels.1.turns",
        "write a number above 0.",
    ),
    "turns without end": (
        '[[reels]]\nname = "A"\ncord = "10 yd"\nturns = inf',
        "line 4, reels.1.turns",
        "write a number",
    ),
    "turns in quotes": (
        '[[reels]]\nname = "A"\ncord = "10 yd"\nturns = "4"',
        "line 4, reels.1.turns",
        "write a number, without quotes.",
    ),
    "many turns": (
        '[[reels]]\nname = "A"\ncord = "10 yd"\nturns = 10001',
        "line 4, reels.1.turns",
        "write a number of at most 10000.",
    ),
    "a reel that is a text": ('reels = ["Porch"]', "line 1, reels.1", "write a table under [[reels]]"),
    "a blank title": ('title = "  "', "line 1, title", "write a text; it may not be blank."),
    "a long note": (f'note = "{"x" * 601}"', "line 1, note", "write a text of at most 600 letters."),
    "a note with a tab": (
        'note = "a\\tb"',
        "line 1, note",
        "leave out tabs and other control characters; line breaks are welcome.",
    ),
    "a currency that ends a formula's text": (
        "currency = '\"'",
        "line 1, currency",
        "leave out quotation marks and braces; formulas say this text.",
    ),
    "a currency in braces": ('currency = "{row}"', "line 1, currency", "leave out quotation marks and braces"),
    "a sheet that no planner has": (
        'leave_out = ["Felting"]',
        "line 1, leave_out.1",
        "write one of 'Guide', 'Buying', 'Scouring',",
    ),
    "a sheet that has to stay": (
        'leave_out = ["Twist", "Skeins"]',
        "line 1, leave_out.2",
        "write one of 'Guide', 'Buying', 'Scouring',",
    ),
    "near the name of a sheet": ('leave_out = ["weving"]', "line 1, leave_out.1", "Did you mean Weaving?"),
    "a sheet without brackets": (
        'leave_out = "Weaving"',
        "line 1, leave_out",
        'write the names in brackets: ["Weaving", "Cost"].',
    ),
    "a sheet left out twice": (
        'leave_out = ["Cost", "Cost"]',
        "line 1, leave_out.2",
        "Cost is listed twice; once is enough.",
    ),
    "a sheet that is missed": (
        'leave_out = ["Yarn"]',
        "line 1, leave_out.1",
        "Components is nothing without Yarn; leave out Components too, or keep Yarn.",
    ),
    "a color in words": (
        '[colors]\naccent = "teal"',
        "line 2, colors.accent",
        'write a color as # and six of the digits 0-9 and A-F, for example "#1D4E57".',
    ),
    "a short color": ('[colors]\naccent = "#ABC"', "line 2, colors.accent", "write a color as # and six"),
    "a color of a number": ("[colors]\naccent = 5", "line 2, colors.accent", "write a text in quotes."),
    "a role that no color has": ('[colors]\nacent = "#000000"', "line 2, colors.acent", "Did you mean accent?"),
    "colors that are no table": ('colors = "#000000"', "line 1, colors", "write a table under [colors]"),
    "a bad second reel": (
        '[[reels]]\nname = "A"\nloop = "2 yd"\n[[reels]]\nname = "B"\nloop = "x"',
        "line 6, reels.2.loop",
        LENGTH,
    ),
}

DOUBLE = '[[reels]]\nname = "Porch"\nloop = "2 yd"\n[[reels]]\nname = "PORCH"\nloop = "1 m"\n'


def faults(call, *arguments, **named):
    with pytest.raises(SettingsError) as caught:
        call(*arguments, **named)
    return caught.value.faults


@pytest.mark.parametrize("text, where, sentence", MISTAKES.values(), ids=MISTAKES)
def test_a_mistake_is_told(text, where, sentence):
    (fault,) = faults(parse, text, "mine.toml")
    assert fault.place == f"mine.toml, {where}"
    assert sentence in fault.sentence


def test_no_near_name_is_made_up():
    (fault,) = faults(parse, "zzzz = 1", "mine.toml")
    assert "Did you mean" not in fault.sentence


def test_two_reels_of_one_name():
    (fault,) = faults(parse, DOUBLE, "mine.toml")
    assert str(fault) == 'mine.toml, line 5, reels.2.name: two reels are called "PORCH"; give each its own name.'


def test_more_reels_than_lines():
    text = "[rows]\nreels = 2\n" + DOUBLE.replace("PORCH", "Other") + '[[reels]]\nname = "Third"\nloop = "1 m"\n'
    (fault,) = faults(parse, text, "mine.toml")
    assert str(fault) == "mine.toml, line 2, rows.reels: 3 reels are listed, so this must be 3 or more."


def test_all_mistakes_are_told_at_once():
    text = (
        'units = "imperial"\ncolor = 1\n[rows]\nskeins = 0\n[[reels]]\nname = "A"\n[[reels]]\nname = "B"\nloop = "x"\n'
    )
    found = faults(parse, text, "mine.toml")
    assert {fault.place for fault in found} == {
        f"mine.toml, line {where}"
        for where in ("1, units", "2, color", "4, rows.skeins", "5, reels.1", "9, reels.2.loop")
    }
    assert [fault.place for fault in found] == sorted(fault.place for fault in found), "in the order of the file"


def test_each_mistake_is_a_line_of_its_own():
    with pytest.raises(SettingsError) as caught:
        parse('units = "x"\npaper = "y"', "mine.toml")
    first, second = str(caught.value).splitlines()
    assert first.startswith("mine.toml, line 1, units: ") and second.startswith("mine.toml, line 2, paper: ")


@pytest.mark.parametrize(
    "text", ["units us", "units = us", "units = “us”", "[rows\nskeins = 5", 'units = "us"\nunits = "metric"']
)
def test_a_file_that_is_not_toml(text):
    (fault,) = faults(parse, text, "mine.toml")
    assert fault.place == "mine.toml"
    assert fault.sentence.startswith("this is not a TOML settings file: ")
    assert "line" in fault.sentence or "end of document" in fault.sentence
    assert fault.sentence.endswith('and texts in straight quotes: units = "us".')


def test_a_missing_file(tmp_path):
    (fault,) = faults(load, tmp_path / "none.toml")
    assert str(fault) == f"{tmp_path / 'none.toml'}: this settings file cannot be read: No such file or directory."


def test_a_folder(tmp_path):
    (fault,) = faults(load, tmp_path)
    assert fault.place == str(tmp_path) and fault.sentence == "this settings file cannot be read: it is a folder."


def test_a_file_that_is_not_text(tmp_path):
    path = tmp_path / "latin.toml"
    path.write_bytes('title = "Große Haspel"'.encode("latin-1"))
    (fault,) = faults(load, path)
    assert (
        str(fault)
        == f"{path}: this settings file cannot be read: it is not a text in UTF-8. Save it from a text editor with the encoding UTF-8."
    )


@pytest.mark.parametrize(
    "text", ["", "Porch", "=72 in", "Porch=", "Niddy=15 in x 14 in", "N=1 in x 1 in x 1 in x 1 in"]
)
def test_a_reel_of_the_command_line_that_is_no_reel(text):
    (fault,) = faults(changed, Settings(), reels=(text,))
    assert fault.place == f'--reel "{text}"'
    assert '"Name=72 in"' in fault.sentence and '"Name=15 in x 14 in x 14 in"' in fault.sentence


def test_a_bad_length_on_the_command_line():
    (fault,) = faults(changed, Settings(), reels=("Porch=72",))
    assert str(fault) == f'--reel "Porch=72", loop: {LENGTH}'


def test_every_bad_reel_of_the_command_line_is_told_at_once():
    found = faults(changed, Settings(), reels=("Porch=0 yd", "=2 yd", "Attic=72 in", "Barn=100 m", "Cellar=1,5 m"))
    assert [fault.place for fault in found] == [
        '--reel "Porch=0 yd", loop',
        '--reel "=2 yd"',
        '--reel "Barn=100 m"',
        '--reel "Cellar=1,5 m", loop',
    ]
    assert found[0].sentence == found[3].sentence == LENGTH


def test_a_reel_of_the_command_line_that_is_too_large():
    (fault,) = faults(changed, Settings(), reels=("Porch=100 m",))
    assert (
        str(fault)
        == '--reel "Porch=100 m": 100 m is 3,937.01 in, and the sheet Reels takes a number above 0 up to 1,000 in.'
    )


def test_a_reel_that_another_unit_system_refuses():
    # 1,000 in is 25.4 m, and the metric sheet goes up to 1,000 cm.
    before = parse('[[reels]]\nname = "A"\nloop = "20 m"', "mine.toml")
    (fault,) = faults(changed, before, units="metric")
    assert (
        str(fault)
        == "the command line, reels.1.loop: 20 m is 2,000 cm, and the sheet Reels takes a number above 0 up to 1,000 cm."
    )


def test_more_reels_on_the_command_line_than_lines():
    few = parse("[rows]\nreels = 3", "mine.toml")
    (fault,) = faults(changed, few, reels=("A=1 m", "B=1 m", "C=1 m", "D=1 m"))
    assert "4 reels are listed, so this must be 4 or more" in fault.sentence


def test_the_templates_hold_no_mistake_of_this_list():
    for path in templates().glob("*.toml"):
        text = path.read_text(encoding="utf-8")
        assert faults(parse, f"color = 1\n{text}", path.name)[0].place == f"{path.name}, line 1, color"
        assert len(faults(parse, f"color = 1\n{text}", path.name)) == 1
