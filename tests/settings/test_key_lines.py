"""Where a key begins in the text of a settings file, however the file is written."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbookgen.errors import SettingsError
from workbookgen.settings import parse
from workbookgen.settings.faults import key_lines

WRITTEN = '''\
# A guild's planner.
units = "us"   # yards
note = """
units = 5
[rows]
"""

rows.skeins = 9
[colors]
accent = "#1D4E57"
  "band"  =  "#E4ECED"
[[reels]]
name = "A # [[reels]]"
arms = [
  "14 in",
  # the other one
  "15 in",
]
[[reels]]

name = """
B"""
'''


def test_every_key_is_found_where_it_begins():
    assert key_lines(WRITTEN) == {
        ("units",): 2,
        ("note",): 3,
        ("rows",): 8,
        ("rows", "skeins"): 8,
        ("colors",): 9,
        ("colors", "accent"): 10,
        ("colors", "band"): 11,
        ("reels", 0): 12,
        ("reels", 0, "name"): 13,
        ("reels", 0, "arms"): 14,
        ("reels", 0, "arms", 0): 14,
        ("reels", 0, "arms", 1): 14,
        ("reels", 1): 19,
        ("reels", 1, "name"): 21,
    }


def test_lines_end_as_they_do_elsewhere():
    assert key_lines(WRITTEN.replace("\n", "\r\n")) == key_lines(WRITTEN)


def test_tables_in_one_line():
    assert key_lines('reels = [{name = "A"}, {name = "B"}]\nrows = {skeins = 0}') == {
        ("reels",): 1,
        ("reels", 0): 1,
        ("reels", 0, "name"): 1,
        ("reels", 1): 1,
        ("reels", 1, "name"): 1,
        ("rows",): 2,
        ("rows", "skeins"): 2,
    }


def test_a_table_inside_the_last_of_several_tables():
    assert key_lines("[[reels]]\n[[reels]]\n[reels.made]\nyear = 1999")[("reels", 1, "made", "year")] == 4


KEYS = st.text(alphabet="abc", min_size=1, max_size=3)
VALUES = st.sampled_from(["1", '"x"', '"""\n\n= 5\n"""', "[\n1,\n# b = 2\n2]", "{c = 1}", "'''\n[d]\n'''"])


@given(st.dictionaries(KEYS, VALUES, min_size=1, max_size=6), st.integers(0, 3))
def test_a_statement_after_any_other_is_found(values, blanks):
    statements = [f"{key} = {value}" for key, value in values.items()]
    text = ("\n" * (blanks + 1)).join(statements)
    tomllib.loads(text)  # or the test would be about something else
    lines = key_lines(text)
    for key in values:
        assert text.split("\n")[lines[(key,)] - 1].startswith(f"{key} = ")


@pytest.mark.parametrize("ending", ["\n", "\r\n"])
def test_a_fault_after_a_note_of_many_lines(ending):
    text = ending.join(['note = """', "One.", "Two.", '"""', "", 'paper = "legal"'])
    with pytest.raises(SettingsError, match="^mine.toml, line 6, paper: write one of"):
        parse(text, "mine.toml")
