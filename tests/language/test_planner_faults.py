"""What a planner as a whole says of a slip: where it is, and what was probably meant."""

from dataclasses import replace

import pytest

import described
from described import ANY, LENGTH, REELS, SKEINS, one_result, planner_of
from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Choice, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter, Sheet
from workbookgen.language.planner import Planner
from workbookgen.language.proofs import Proof, ProofTable
from workbookgen.language.quantities import LENGTH as A_LENGTH
from workbookgen.language.views import Entries, Examples, Link, Links, band
from workbookgen.reference import records
from workbookgen.units import Quantity

FIRST = Input("first", "First", ANY, LENGTH)


def refused(describe) -> list[str]:
    with pytest.raises(DescriptionError) as caught:
        describe()
    return [str(fault) for fault in caught.value.faults]


def card(*fields) -> Card:
    return Card("work", "", (Group("All", fields),))


def with_sheet(*sheets: Sheet) -> Planner:
    return replace(described.whole(), sheets=(*described.whole().sheets, *sheets))


def page(name="Page", chapter="Page", *sections, related=()) -> Sheet:
    return Sheet(name, "A page", "For tests.", (Chapter(chapter, (), (band(*sections),)),), related=related)


@pytest.mark.parametrize(
    ("formula", "sentence"),
    [
        ("2 * frist", "its formula names frist, which is no field; first is one"),
        ("2 * reels_lop", "its formula names reels_lop, which is no field; reels_loop is one"),
        # Of another block, named in short.
        ("2 * wraps", "its formula names wraps, which is no field; skeins_wraps is one"),
        ("2 * xyz", "its formula names xyz, which is no field"),
    ],
)
def test_a_word_that_is_no_field(formula, sentence):
    assert refused(
        lambda: planner_of(REELS, SKEINS, described.PLAN, card(FIRST, one_result(formula, lambda first: first)))
    ) == [f"field work_outcome: {sentence}."]


@pytest.mark.parametrize(
    ("choice", "sentence"),
    [
        (Choice("reels_listd", "Reels"), "it chooses from reels_listd, which is no field; reels_listed is one"),
        (
            Choice("reels_listed", "Looms"),
            "it tells people to choose on the sheet Looms, and reels_listed stands on the sheet Reels",
        ),
        (
            Choice("reels_name", "Reels"),
            'it chooses from reels_name, where an error may be typed: choose from the result beside it that is repeated(..., "name")',
        ),
    ],
)
def test_a_choice_of_what_is_not_there(choice, sentence):
    assert refused(lambda: planner_of(REELS, SKEINS, described.PLAN, card(Input("reel", "Reel", choice)))) == [
        f"field work_reel: {sentence}."
    ]


@pytest.mark.parametrize(
    ("column", "refusal"),
    [
        (
            "skeins_reel",
            [
                'field work_outcome: its formula looks up skeins_reel, which was chosen and may be of no list: look up the result beside it that is repeated(..., "reel").'
            ],
        ),
        ("skeins_wound_on", None),
    ],
)
def test_what_another_log_chose_is_looked_up_where_it_is_repeated(column, refusal):
    """A choice is whatever was typed; the result beside it is blank where that is none."""
    reel = Input("reel", "Reel", Choice("reels_listed", "Reels"))
    outcome = Result(
        "outcome",
        "Outcome",
        f"lookup({column}, reels_listed, reel)",
        records.lookup,
        None,
        uses={"values": column, "names": "reels_listed", "name": "reel"},
    )
    described_so = lambda: planner_of(REELS, SKEINS, described.PLAN, card(reel, outcome))  # noqa: E731
    if refusal:
        assert refused(described_so) == refusal
    else:
        assert described_so().by_key["work_outcome"]


def test_names_are_not_looked_for_among_what_is_typed():
    """One error value in that column would come out in every line that looks there."""
    reel = Input("reel", "Reel", Choice("reels_listed", "Reels"))
    uses = {"values": "reels_loop", "names": "reels_name", "name": "reel"}
    outcome = one_result("lookup(reels_loop, reels_name, reel)", records.lookup, uses=uses)
    assert refused(lambda: planner_of(REELS, SKEINS, described.PLAN, card(reel, outcome))) == [
        "field work_outcome: its formula looks for names in reels_name, where an error may be typed: "
        'look in the result beside it that is repeated(..., "name").'
    ]


@pytest.mark.parametrize(
    ("start", "sentence"),
    [
        (Quantity(-3, "meter"), "it starts as -3.0; give a number above 0 up to 10 m"),
        ("ten", "it starts as ten; give a number above 0 up to 10 m"),
    ],
)
def test_a_value_to_start_with_that_its_cell_would_refuse(start, sentence):
    each = Input("first", "First", Number(above=0, most=10), A_LENGTH, starts_as=start)
    assert refused(lambda: planner_of(card(each))) == [f"field work_first: {sentence}."]


def test_lines_that_start_with_what_is_no_field():
    log = replace(REELS, starts_with=({"nam": "Porch"},))
    assert refused(lambda: planner_of(log, SKEINS, described.PLAN)) == [
        "field reels_nam: lines of its log start with it, and it is no field."
    ]


def test_an_input_of_a_card_that_no_section_shows():
    sheet = Sheet("Page", "A page", "For tests.", (Chapter("Page", (card(FIRST),), (band(),)),))
    assert refused(lambda: with_sheet(sheet)) == [
        "sheet Page: no section of it shows work_first, so nobody finds where to type it."
    ]
    assert with_sheet(
        replace(sheet, chapters=(Chapter("Page", (card(FIRST),), (band(Entries(fields=("work_first",))),)),))
    )


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        ("reels", "another sheet has this name; a spreadsheet takes small and capital letters for one."),
        ("Need/Use", "a sheet's name begins with a capital letter and has letters, digits and blanks, 31 at most."),
        ("N" * 32, "a sheet's name begins with a capital letter and has letters, digits and blanks, 31 at most."),
    ],
)
def test_a_name_that_no_sheet_can_have(name, sentence):
    assert f"sheet {name}: {sentence}" in refused(lambda: with_sheet(page(name)))
    assert with_sheet(page("What it needs", related=("Reels",)))


def test_a_chapter_of_another_ones_name():
    assert refused(lambda: with_sheet(page("Page", "reels"))) == ["chapter reels: another chapter has this name too."]


def test_a_sheet_with_the_name_of_a_chapter_that_is_elsewhere():
    assert refused(lambda: with_sheet(page("Page", "Loom"), page("Loom", "Shed"))) == [
        "sheet Loom: a chapter of another sheet has this name, and texts name chapters: give it another."
    ]


def test_a_link_to_a_field_on_another_sheet_than_it_says():
    link = Links(places=((Link("Skeins", "See.", "reels_loop"), "Do."), (Link("Skeins", "See.", "reels_loop"), "Do.")))
    assert refused(lambda: with_sheet(page("Page", "Page", link))) == [
        "sheet Page: its link leads to reels_loop on the sheet Skeins, and that stands on the sheet Reels."
    ]


def proven(*numbers, **how) -> Planner:
    given = {"wraps": (10.0, "dimensionless"), "loop": (1.0, "meter"), "rest": (0.0, "meter")}
    right = {
        "what": "",
        "result": "skeins_length",
        "given": given,
        "printed": 1.0,
        "unit": "meter",
        "tolerance": 0.1,
        "source": "",
        "provenance": "read",
    }
    verdict = one_result("IF(computed = printed, tolerance, 0)", lambda computed, printed, tolerance: 0, unit=None)
    table = ProofTable("proofs", "", tuple(Proof(number, **right | how) for number in numbers), verdict)
    return with_sheet(Sheet("Proofs", "", "", (Chapter("Proofs", (table,), (band(Examples(table="proofs")),)),)))


def test_what_an_example_cannot_prove():
    given = {"wraps": (10.0, "dimensionless"), "loop": (1.0, "meter"), "rest": (0.0, "meter")}
    assert proven("7").proofs[0].number == "7"
    assert refused(lambda: proven("7", "7")) == ["proof 7: another example has this number."]
    assert refused(lambda: proven("7", result="skeins_lenght")) == [
        "proof 7: skeins_lenght is no result of a sheet; skeins_length is one."
    ]
    assert refused(lambda: proven("7", given=given | {"reel": ("Big", "")})) == [
        "proof 7: reel is given, and the formula of skeins_length has no such word."
    ]
    assert refused(lambda: proven("7", given=given | {"loop": (1.0, "fathom")})) == [
        "proof 7: no formula can convert the unit fathom: add it to PRINTED_ONLY in language/quantities.py."
    ]


def test_what_no_two_records_may_share_is_a_field():
    from workbookgen.language.rules import Distinct

    with pytest.raises(DescriptionError, match="block skeins: no two records may share nmae, which is no field of it"):
        replace(SKEINS, distinct=(Distinct("nmae", "Another line has this."),))
