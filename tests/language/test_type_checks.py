"""A slip in a declaration is told where it stands, in one sentence."""

import pytest

from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Name, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter, Column, Log, Sheet, Table
from workbookgen.language.quantities import LENGTH, SHARE
from workbookgen.language.rules import Rule
from workbookgen.language.views import Answers, Chart, LogView, Series, band

NAME = Input("name", "Name", Name())


def doubled(width):
    return 2 * width


@pytest.mark.parametrize(
    "declare, sentence",
    [
        (
            lambda: Input("width", "Width", "a number", LENGTH),
            "field width: its domain must be a Number or a Date or a Name or a Note or a Choice, and 'a number' is not.",
        ),
        (
            lambda: Input("width", "Width", Number(above=0, most=1), "yd"),
            "field width: its unit must be a Kind or None, and 'yd' is not.",
        ),
        (
            lambda: Input("width", "Width", Number(above=0, most=1), needed="yes"),
            "field width: its needed must be True or False, and 'yes' is not.",
        ),
        (
            lambda: Input("width", "Width", Number(above=0, most=1), blank_means=True),
            "field width: its blank_means must be a number or None, and True is not.",
        ),
        (
            lambda: Result("twice", "Twice", "2 * width", "doubled"),
            "field twice: its reference must be a function, and 'doubled' is not.",
        ),
        (
            lambda: Result("twice", "Twice", "2 * width", doubled, "percent"),
            "field twice: its unit must be a Kind or None, and 'percent' is not.",
        ),
        (
            lambda: Result("twice", "Twice", "2 * width", doubled, SHARE, leaves=["other"]),
            "field twice: its leaves must be a tuple of a text, and ['other'] is not: write ( ) for [ ].",
        ),
        (
            lambda: Rule("width > 1", True, "Width: too much."),
            "the rule 'Width: too much.': its broken must be a function, and True is not.",
        ),
        (
            lambda: Group("You type", NAME),
            "group 'You type': its fields must be a tuple of an Input or a Result, and the Input name is not: one alone is written (it,).",
        ),
        (
            lambda: Log("cloths", "Cloths", (), rows="30"),
            "block cloths: its rows must be a whole number, and '30' is not.",
        ),
        (
            lambda: Column("name", "Name", ["one"]),
            "column name: its values must be a tuple of a number or a text, and ['one'] is not: write ( ) for [ ].",
        ),
        (
            lambda: Table("names", "Names", (NAME,)),
            "table names: its columns must be a tuple of a Column, and the Input name in it is not.",
        ),
        (
            lambda: Chapter("Cloth", (Card("cloth", "", ()),), "a view"),
            "chapter Cloth: its view must be a LogView or a tuple of a Band, and 'a view' is not.",
        ),
        (
            lambda: Sheet("Cloth", "Cloth", "For tests.", None),
            "sheet Cloth: its chapters must be a tuple of a Chapter, and None is not.",
        ),
        (
            lambda: Answers(title="It is", across=(1,), lines=()),
            "section 'It is': its across must be a tuple of a whole number, a whole number, and (1,) is not.",
        ),
        (
            lambda: LogView("name", (("Is it?", "answer", "more"),)),
            "the view of 'name': its answers must be a tuple of a tuple of a text, a text, and ('Is it?', 'answer', 'more') in it is not.",
        ),
        (
            lambda: Group("You type", [NAME]),
            "group 'You type': its fields must be a tuple of an Input or a Result, and a list that begins with the Input name is not: write ( ) for [ ].",
        ),
        (
            lambda: Sheet("Cloth", "Cloth", "For tests.", (doubled,)),
            "sheet Cloth: its chapters must be a tuple of a Chapter, and the function doubled in it is not.",
        ),
        (
            lambda: Sheet(
                "Cloth",
                "Cloth",
                "For tests.",
                (
                    Chapter(
                        "Cloth", (Card("cloth", "", ()),), (band(Answers(title="It is", across=(1, 14), lines=())),)
                    ),
                ),
            ),
            "section 'It is': it goes across (1, 14), and the grid has the columns 1 to 12.",
        ),
        (lambda: Log("cloths", "Cloths", (), rows=0), "block cloths: it has 0 lines; give it one or more."),
        (
            lambda: Chart(about="For tests.", kind="cake", series=()),
            "section '': its kind must be 'bars' or 'shares' or 'stages' or 'control', and 'cake' is not.",
        ),
        (
            lambda: Series("Yarn", ("a_b",), "pink"),
            "the series Yarn: its look must be 'accent' or 'soft' or 'straw' or 'hair' or 'points' or 'chosen' or 'limit', and 'pink' is not.",
        ),
        (lambda: band("a section"), "a band: its sections must be a tuple of a Section, and 'a section' in it is not."),
    ],
)
def test_another_type_is_refused(declare, sentence):
    with pytest.raises(DescriptionError) as refused:
        declare()
    assert [str(fault) for fault in refused.value.faults] == [sentence]


def test_what_is_declared_rightly_is_taken():
    """Whole numbers are numbers, and every alternative of a declaration is one."""
    assert Input("width", "Width", Number(least=0, most=1), None, blank_means=0).blank_means == 0
    assert Result("twice", "Twice", "2 * width", doubled, None).unit is None
    assert Column("name", "Name", ("one", 2)).values == ("one", 2)
