"""A planner holds together, or is refused with the field and the fault."""

from dataclasses import replace

import pytest

import described
from described import ANY, LENGTH, REELS, SKEINS, one_result, planner_of
from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Note
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter, Column, Log, Sheet, Table
from workbookgen.language.planner import Planner
from workbookgen.language.proofs import Proof, ProofTable
from workbookgen.language.quantities import NUMBER
from workbookgen.language.views import (
    Alerts,
    Answers,
    Chart,
    Entrance,
    Entries,
    Examples,
    Grid,
    Headline,
    Link,
    Links,
    Listing,
    LogView,
    Sentences,
    Series,
    band,
)


def card(key, *fields) -> Card:
    return Card(key, "", (Group("All", fields),))


def length(key="first", **how) -> Input:
    return Input(key, "A length", ANY, LENGTH, **how)


def doubled(first):
    return 2 * first


def test_the_planner_of_the_tests_holds_together():
    planner = described.whole()
    assert list(planner.blocks) == ["reels", "skeins", "plan"]
    assert list(planner.tables) == ["sizes", "lists"]
    assert planner.by_key["skeins_wraps"] == (SKEINS, SKEINS.by_key["wraps"])


@pytest.mark.parametrize(
    ("word", "key", "is_column"),
    [
        ("wraps", "skeins_wraps", False),  # its own record's
        ("skeins_wraps", "skeins_wraps", True),  # the whole log
        ("reels_loop", "reels_loop", True),
        ("plan_usual", "plan_usual", False),  # a card has one value
        ("sizes_from", "sizes_from", True),
    ],
)
def test_what_a_word_means(word, key, is_column):
    meaning = described.whole().meaning(SKEINS, word)
    assert (meaning.key, meaning.is_column) == (key, is_column)


def test_a_word_that_is_no_field():
    with pytest.raises(DescriptionError, match="field work_outcome: its formula names lenght, which is no field"):
        planner_of(card("work", length(), one_result("2 * lenght", lambda lenght: lenght)))


def test_a_word_of_another_block_must_be_named_in_full():
    with pytest.raises(
        DescriptionError, match="field work_outcome: its formula names wraps, which is no field; skeins_wraps is one"
    ):
        planner_of(REELS, SKEINS, described.PLAN, card("work", length(), one_result("2 * wraps", lambda wraps: wraps)))


def test_a_parameter_that_the_formula_never_uses():
    with pytest.raises(
        DescriptionError, match="field work_outcome: its formula never uses second, which the reference takes"
    ):
        planner_of(card("work", length(), length("second"), one_result("2 * first", lambda first, second: first)))


def test_a_parameter_with_a_default_must_be_used_too():
    # Else the formula would quietly work with one thing less than the library.
    with pytest.raises(DescriptionError, match="never uses second"):
        planner_of(card("work", length(), length("second"), one_result("2 * first", lambda first, second=None: first)))


def test_a_word_that_the_reference_does_not_take():
    with pytest.raises(
        DescriptionError, match="field work_outcome: its formula uses second, which the reference does not take"
    ):
        planner_of(card("work", length(), length("second"), one_result("first + second", doubled)))


def test_a_word_of_the_condition_must_be_taken_too():
    with pytest.raises(DescriptionError, match="uses second, which"):
        planner_of(card("work", length(), length("second"), one_result("2 * first", doubled, only_if="given(second)")))


def test_fixed_facts_need_no_parameter():
    planner = planner_of(REELS, SKEINS, described.PLAN)
    assert "sizes_name" in planner.blocks["skeins"].by_key["size"].words


@pytest.mark.parametrize(
    "fields",
    [
        [Result("again", "Again", "again + first", lambda again, first: first, LENGTH)],
        [
            Result("one", "One", "two + first", lambda two, first: two, LENGTH),
            Result("two", "Two", "2 * one", lambda one: one, LENGTH),
        ],
        [
            Result("one", "One", "first", lambda first, two: two, LENGTH, only_if="given(two)"),
            Result("two", "Two", "2 * one", lambda one: one, LENGTH),
        ],
    ],
    ids=["of itself", "of each other", "through a condition"],
)
def test_fields_that_depend_on_each_other_in_a_circle_are_refused(fields):
    with pytest.raises(DescriptionError, match="circle") as caught:
        planner_of(card("work", length(), *fields))
    assert f"work_{fields[0].key}" in str(caught.value)


def test_a_key_that_is_another_fields_full_key():
    # In the block's own formulas the word would mean two things.
    with pytest.raises(DescriptionError, match="field b_a_first: a_first is also the full key of another field"):
        planner_of(card("a", length()), card("b", length("a_first")))


def test_an_input_may_stand_after_a_result():
    # A block says what is computed from what; where it is typed is for the views to say.
    block = card("work", one_result("2 * first", doubled), length())
    assert [each.key for each in block.inputs] == ["first"] and [each.key for each in block.results] == ["outcome"]
    assert list(planner_of(block).by_key)[:2] == ["work_outcome", "work_first"]


def test_a_doubled_key():
    with pytest.raises(DescriptionError, match="block work: first is used twice"):
        card("work", length(), length())


def test_a_cells_address_as_key():
    with pytest.raises(DescriptionError, match="block work: tex1: this key is also a cell address"):
        card("work", length("tex1"))


def test_many_faults_are_told_at_once():
    with pytest.raises(DescriptionError) as caught:
        planner_of(
            card("one", length(), one_result("2 * first", lambda first, other: first)),
            card("two", length(), one_result("first + first", lambda: 1)),
        )
    assert [fault.place for fault in caught.value.faults] == ["field one_outcome", "field two_outcome"]


def test_keys_of_two_blocks_that_run_together():
    # skeins + yarn_weight and skeins_yarn + weight would be one defined name.
    with pytest.raises(DescriptionError, match="field work_yarn_mass: another field has this full key"):
        planner_of(card("work", length("yarn_mass")), card("work_yarn", length("mass")))


def test_two_blocks_of_one_key():
    """Told once, and not again for each of their fields."""
    with pytest.raises(DescriptionError) as caught:
        planner_of(card("work", length()), card("work", length()))
    told = [str(fault) for fault in caught.value.faults]
    assert "block work: another block or table has this key too." in told
    assert not any(each.startswith("field ") for each in told)


@pytest.mark.parametrize("key", ["Work", "to work", "work!", "1st", ""])
def test_a_key_of_a_block_that_no_formula_could_spell(key):
    with pytest.raises(DescriptionError, match="a key is written in lower case letters, digits and underscores"):
        card(key, length())
    with pytest.raises(DescriptionError, match="a key is written in lower case letters, digits and underscores"):
        Table(key, "Facts", (Column("number", "Number", (1.0, 2.0)),))


def test_the_key_of_the_message_is_taken():
    with pytest.raises(DescriptionError, match="field work_message: another field has this full key"):
        planner_of(card("work", length("message")))


OTHER = Log("other", "", (Group("All", (length("long"), one_result("2 * long", lambda long: 2 * long))),))
SHOWN = card("shown", length(), length("second"), one_result("first + second", lambda first, second: first))


def seeing(*sections, related=(), grid=Grid()) -> Planner:  # noqa: B008  it is frozen
    """The tests' planner after a page with a card and a log in these sections, the card's other inputs below."""
    shown = {grid.chosen, *(key for section in sections for key in section.shown)}
    below = band(Entries(fields=tuple(key for key in ("shown_first", "shown_second") if key not in shown)))
    page = Sheet(
        "First",
        "First",
        "For tests.",
        (Chapter("First", (SHOWN, OTHER), (band(*sections), below)),),
        related=related,
        grid=grid,
    )
    return replace(described.whole(), sheets=(page, *described.whole().sheets))


LEADING = {
    "a line of links": lambda link: Links(places=((link, "Do."),)),
    "a door": lambda link: Entrance(link=link, number="shown_first", counts="shown_second"),
    "a door's further way": lambda link: Entrance(
        link=Link("Reels", "See."), number="shown_first", counts="shown_second", more_links=(link,)
    ),
    "what needs a look": lambda link: Alerts(places=(("shown_first", link),)),
}


@pytest.mark.parametrize("what", LEADING)
def test_a_link_leads_to_a_sheet_that_is_there(what):
    section = LEADING[what]
    assert seeing(section(Link("Facts", "See."))).sheets[0].sections[0].links
    with pytest.raises(DescriptionError, match="sheet First: its link to Looms leads nowhere"):
        seeing(section(Link("Looms", "See.")))


def test_a_link_leads_to_a_field_that_is_there():
    assert seeing(Links(places=((Link("Reels", "See.", "reels_name"), "Do."),)))
    with pytest.raises(DescriptionError, match="sheet First: its link to reels_nmae leads nowhere"):
        seeing(Links(places=((Link("Reels", "See.", "reels_nmae"), "Do."),)))


SHOWING = {
    "entries": lambda *keys: Entries(fields=keys),
    "large answers": lambda *keys: Answers(large=tuple(map(Headline, keys))),
    "below a large answer": lambda *keys: Answers(large=(Headline("shown_outcome", below=keys),)),
    "answers": lambda *keys: Answers(lines=keys),
    "sentences": lambda *keys: Sentences(fields=keys),
    "what needs a look": lambda *keys: Alerts(places=tuple((key, Link("Facts", "See.")) for key in keys)),
}


@pytest.mark.parametrize("what", SHOWING)
def test_a_view_shows_fields_of_its_sheet_and_each_once(what):
    section = SHOWING[what]
    assert {"shown_first", "shown_second"} <= set(seeing(section("shown_first", "shown_second")).sheets[0].shown)
    with pytest.raises(
        DescriptionError, match="sheet First: its view shows shown_lenght, which is no field of this sheet"
    ):
        seeing(section("shown_first", "shown_lenght"))
    with pytest.raises(DescriptionError, match="its view shows plan_need, which is no field of this sheet"):
        seeing(section("plan_need"))
    with pytest.raises(DescriptionError, match="sheet First: its view shows shown_first twice"):
        seeing(section("shown_first", "shown_second", "shown_first"))


def test_two_sections_do_not_show_the_same_field():
    with pytest.raises(DescriptionError, match="its view shows shown_first twice"):
        seeing(Entries(fields=("shown_first",)), Answers(lines=("shown_first",)))
    with pytest.raises(DescriptionError, match="its view shows shown_first twice"):
        seeing(Entries(fields=("shown_first",)), grid=Grid(chosen="shown_first"))


def test_what_the_planner_says_by_itself_may_be_shown():
    shown = seeing(Answers(lines=("shown_outcome",), message="shown_message"), Sentences(fields=("other_first",)))
    assert {"shown_message", "other_first"} <= set(shown.sheets[0].shown)


@pytest.mark.parametrize(
    ("view", "fault"),
    [
        (LogView("long weight"), "shows other_weight, which is no field of this sheet"),
        (LogView("long", (("It is", "outcom"),)), "shows other_outcom, which is no field of this sheet"),
        (LogView("long long"), "shows other_long twice"),
        (LogView("long", (("It is", "outcome"), ("Again", "outcome"))), "shows other_outcome twice"),
        (LogView("long", in_head="shown_sum"), "shows shown_sum, which is no field of this sheet"),
        (LogView("long outcome"), "has other_outcome among what is typed, and that is a result: name it in answers"),
        (
            LogView("", (("It is", "long outcome"),)),
            "has other_long among the answers, and that is an input: name it in typed",
        ),
    ],
)
def test_the_view_of_a_log(view, fault):
    with pytest.raises(DescriptionError, match=f"sheet First: its view {fault}"):
        seeing(Listing(block="other", view=view))
    alone = Sheet("Alone", "Alone", "For tests.", (Chapter("Alone", (OTHER, SHOWN), view),))
    with pytest.raises(DescriptionError, match=f"sheet Alone: its view {fault}"):
        replace(described.whole(), sheets=(alone.answered_twice(), *described.whole().sheets))


def test_a_chart_draws_what_is_there():
    def chart(category, drawn):
        return Chart(about="For tests.", kind="bars", categories=(category,), series=(Series("Drawn", (drawn,)),))

    assert seeing(chart("reels_listed", "reels_loop")), "it may stand on another sheet"
    for category, drawn in (("reels_nmae", "reels_loop"), ("reels_listed", "reels_nmae")):
        for section in (
            chart(category, drawn),
            Listing(block="other", view=LogView("long"), chart=chart(category, drawn)),
        ):
            with pytest.raises(DescriptionError, match="sheet First: its chart draws reels_nmae, which is no field"):
                seeing(section)


def test_a_neighbor_is_a_sheet_that_is_there():
    assert seeing(related=("Reels",)).sheets[0].related == ("Reels",)
    with pytest.raises(DescriptionError, match="sheet First: its link to Looms leads nowhere"):
        seeing(related=("Looms",))


def test_a_log_with_a_view_of_its_own_shares_its_sheet_with_no_other():
    # Its head is frozen, and its columns are as wide as its fields need.
    own = Chapter("Reels", (REELS,), described.view_of(REELS))
    asked = Chapter("Work", (described.PLAN,), (band(Entries(fields=("plan_wanted",))),))
    for chapters in (
        (own, asked),
        (asked, own),
        (own, replace(own, name="Again")),
        (replace(own, holders=(REELS, SKEINS)),),
        (replace(own, holders=(described.PLAN,)),),
    ):
        with pytest.raises(
            DescriptionError, match="sheet Both: a log that has a view of its own needs the sheet to itself"
        ):
            Sheet("Both", "", "", chapters)
    assert Sheet("Alone", "", "", (own,)).log_view == own.view
    assert Sheet("With a card", "", "", (replace(own, holders=(REELS, described.PLAN)),)).logs == (REELS,)
    assert Sheet("Pages", "", "", (asked, replace(asked, name="Again"))).log_view is None


def proofs(*given) -> Planner:
    verdict = Result(
        "verdict", "Verdict", "IF(computed = printed, tolerance, 0)", lambda computed, printed, tolerance: 0, NUMBER
    )
    table = ProofTable(
        "proofs",
        "",
        tuple(Proof(str(n), "", "skeins_length", each, 1.0, "meter", 0.1, "", "read") for n, each in enumerate(given)),
        verdict,
    )
    return replace(
        described.whole(),
        sheets=(
            *described.whole().sheets,
            Sheet("Proofs", "", "", (Chapter("Proofs", (table,), (band(Examples(table="proofs")),)),)),
        ),
    )


def test_a_proof_must_give_every_word_of_its_formula():
    whole = {"wraps": (10.0, "dimensionless"), "loop": (1.0, "meter"), "rest": (0.0, "meter")}
    assert len(proofs(whole).proofs) == 1
    with pytest.raises(DescriptionError, match="proof 1: rest is not given"):
        proofs(whole, {key: whole[key] for key in ("wraps", "loop")})


WHOLE = {"wraps": (10.0, "dimensionless"), "loop": (1.0, "meter"), "rest": (0.0, "meter")}


@pytest.mark.parametrize(
    "slip, sentence",
    [
        ({"provenance": "my aunt"}, "proof 7: its provenance 'my aunt' is none of read, derived, practice, memory."),
        ({"unit": "furlongish"}, "proof 7: the registry knows no unit furlongish."),
        ({"given": WHOLE | {"loop": (1.0, "meeter")}}, "proof 7: the registry knows no unit meeter."),
        ({"tolerance": "small"}, "proof 7: its tolerance must be a number, and 'small' is not."),
    ],
)
def test_a_slip_in_a_proof_is_told(slip, sentence):
    right = {
        "number": "7",
        "what": "",
        "result": "skeins_length",
        "given": WHOLE,
        "printed": 1.0,
        "unit": "meter",
        "tolerance": 0.1,
        "source": "",
        "provenance": "read",
    }
    assert Proof(**right).number == "7"
    with pytest.raises(DescriptionError) as refused:
        Proof(**right | slip)
    assert str(refused.value) == sentence


def test_a_proof_of_no_result_is_refused():
    astray = replace(proofs(WHOLE).proofs[0], result="skeins_lenght")
    table = replace(next(iter(proofs(WHOLE).sheets[-1].holders)), proofs=(astray,))
    with pytest.raises(DescriptionError, match="proof 0: skeins_lenght is no result of a sheet"):
        replace(
            described.whole(),
            sheets=(
                *described.whole().sheets,
                Sheet("Proofs", "", "", (Chapter("Proofs", (table,), (band(Examples(table="proofs")),)),)),
            ),
        )


def test_names_by_which_others_find_a_record():
    assert REELS.names_column == "reels_listed"
    assert REELS.names_its_records(REELS.by_key["name"])
    assert not SKEINS.names_its_records(SKEINS.by_key["note"])
    unlisted = Log("x", "", (Group("All", (REELS.by_key["name"],)),))
    assert not unlisted.names_its_records(unlisted.by_key["name"])


def test_the_input_of_a_note_alone_makes_a_card():
    assert planner_of(card("work", Input("note", "Note", Note()))).by_key["work_note"][1].is_text
