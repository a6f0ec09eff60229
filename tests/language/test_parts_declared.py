"""A planner holds together, or is refused with the field and the fault."""

from dataclasses import replace

import described
import pytest
from described import ANY, LENGTH, REELS, SKEINS, one_result, planner_of

from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Note
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Links, Log, Planner, Proof, ProofTable, Sheet, Text
from workbookgen.language.quantities import NUMBER


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
    with pytest.raises(DescriptionError, match="block work: lenght is no field"):
        planner_of(card("work", length(), one_result("2 * lenght", lambda lenght: lenght)))


def test_a_word_of_another_block_must_be_named_in_full():
    with pytest.raises(DescriptionError, match="block work: wraps is no field"):
        planner_of(REELS, SKEINS, described.PLAN, card("work", length(), one_result("2 * wraps", lambda wraps: wraps)))


def test_a_parameter_that_the_formula_never_uses():
    with pytest.raises(DescriptionError, match="field work_outcome: its formula never uses second, which the reference takes"):
        planner_of(card("work", length(), length("second"), one_result("2 * first", lambda first, second: first)))


def test_a_parameter_with_a_default_must_be_used_too():
    # Else the formula would quietly work with one thing less than the library.
    with pytest.raises(DescriptionError, match="never uses second"):
        planner_of(card("work", length(), length("second"), one_result("2 * first", lambda first, second=None: first)))


def test_a_word_that_the_reference_does_not_take():
    with pytest.raises(DescriptionError, match="field work_outcome: its formula uses second, which the reference does not take"):
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
def test_a_circle(fields):
    with pytest.raises(DescriptionError, match="circle") as caught:
        planner_of(card("work", length(), *fields))
    assert f"work_{fields[0].key}" in str(caught.value)


def test_a_key_that_is_another_fields_full_key():
    # In the block's own formulas the word would mean two things.
    with pytest.raises(DescriptionError, match="field b_a_first: a_first is also the full key of another field"):
        planner_of(card("a", length()), card("b", length("a_first")))


def test_an_input_after_a_result():
    with pytest.raises(DescriptionError, match="block work: its inputs must come before its results"):
        card("work", one_result("2 * first", doubled), length())


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
    with pytest.raises(DescriptionError, match="field work_first: another field has this full key"):
        planner_of(card("work", length()), card("work", length()))


def test_the_key_of_the_message_is_taken():
    with pytest.raises(DescriptionError, match="field work_message: another field has this full key"):
        planner_of(card("work", length("message")))


def test_a_link_leads_to_a_sheet_that_is_there():
    def linking(*places: str) -> Planner:
        whole = described.whole()
        first = Sheet("First", "First", "For tests.", (Links("Where to go", "All of them.", tuple((place, "See.") for place in places)),))
        return replace(whole, sheets=(first, *whole.sheets))

    assert linking("Reels", "Facts").sheets[0].name == "First"
    with pytest.raises(DescriptionError, match="sheet First: its link to Looms leads nowhere"):
        linking("Reels", "Looms")


def test_a_table_that_is_not_printed_comes_last():
    unprinted = replace(described.COUNTING, printed=False)
    assert Sheet("Facts", "Facts", "For tests.", (described.SIZES, unprinted)).parts[-1] is unprinted
    with pytest.raises(DescriptionError, match="sheet Facts: a table that is not printed must come last"):
        Sheet("Facts", "Facts", "For tests.", (unprinted, described.SIZES))


def test_a_log_shares_its_sheet_with_nothing():
    # Its columns are as wide as its fields need, which nothing beside it could bear.
    with pytest.raises(DescriptionError, match="sheet Both: a log needs a sheet of its own"):
        Sheet("Both", "", "", (REELS, described.PLAN))
    assert Sheet("Alone", "", "", (REELS,)).parts == (REELS,)
    assert len(Sheet("Cards", "", "", (described.PLAN, card("work", length()))).parts) == 2


def proofs(*given) -> Planner:
    verdict = Result("verdict", "Verdict", "IF(computed = printed, tolerance, 0)", lambda computed, printed, tolerance: 0, NUMBER)
    table = ProofTable(
        "proofs", "", tuple(Proof(str(n), "", "skeins_length", each, 1.0, "meter", 0.1, "", "read") for n, each in enumerate(given)), verdict
    )
    return replace(described.whole(), sheets=(*described.whole().sheets, Sheet("Proofs", "", "", (table,))))


def test_a_proof_must_give_every_word_of_its_formula():
    whole = {"wraps": (10.0, "dimensionless"), "loop": (1.0, "meter"), "rest": (0.0, "meter")}
    assert len(proofs(whole).proofs) == 1
    with pytest.raises(DescriptionError, match="proof 1: rest is not given"):
        proofs(whole, {key: whole[key] for key in ("wraps", "loop")})


def test_names_by_which_others_find_a_record():
    assert REELS.names_column == "reels_listed"
    assert REELS.names_its_records(REELS.by_key["name"])
    assert not SKEINS.names_its_records(SKEINS.by_key["note"])
    unlisted = Log("x", "", (Group("All", (REELS.by_key["name"],)),))
    assert not unlisted.names_its_records(unlisted.by_key["name"])


def test_a_long_sentence_is_broken_into_lines_that_lose_nothing():
    sentence = "Wool and silk and flax " * 20
    lines = Text("Read", (sentence, "Short.")).lines
    assert " ".join(lines[:-1]) == sentence.strip() and lines[-1] == "Short."
    assert 3 < len(lines) and max(map(len, lines)) <= 120


def test_the_input_of_a_note_alone_makes_a_card():
    assert planner_of(card("work", Input("note", "Note", Note()))).by_key["work_note"][1].is_text
