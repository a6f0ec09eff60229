"""What is there at a glance."""

import numpy as np
import pytest

from workbookgen.reference import desk_words, overview
from workbookgen.reference.overview import how_many_above_nothing
from workbookgen.reference.stock_words import there_in_words
from workbookgen.units import Quantity


def test_a_lot_that_is_spun_up_is_not_counted():
    assert how_many_above_nothing(Quantity([3.0, 0.0, float("nan"), 0.5], "ounce")) == 2


@pytest.mark.parametrize("rest", [1e-15, -1e-15, 0.0009])
def test_what_rounding_leaves_of_a_lot_is_nothing(rest):
    """Programs differ in it: 0.3 - 0.1 - 0.2 is nothing in one and -2.8E-17 in another."""
    assert how_many_above_nothing(Quantity([rest, 1.0], "gram")) == 1


@pytest.mark.parametrize(
    "skeins, yards, ounces, words",
    [
        (0, 0, 0, "no skeins yet"),
        (1, 198.6, 4.02, "1 skein, 199 yd, 4 oz"),
        (1204, 240_800.4, 4816.26, "1,204 skeins, 240,800 yd, 4,816 oz"),
        (20_000, 999_999.5, 999_999.96, "20,000 skeins, 1,000,000 yd, 1,000,000 oz"),
        (20_000, 4_080_007.4, 80_000.0, "20,000 skeins, 4,080,007 yd, 80,000 oz"),
        (20_000, 99_999_998.4, 1.0, "20,000 skeins, 99,999,998 yd, 1 oz"),
    ],
)
def test_the_head_of_the_skeins(skeins, yards, ounces, words):
    assert there_in_words(skeins, Quantity(float(yards), "yard"), Quantity(float(ounces), "oz")) == words


def test_no_head_has_more_than_a_hundred_million():
    with pytest.raises(ValueError, match="hundred million"):
        there_in_words(2, Quantity(99_999_999.0, "yard"), Quantity(1.0, "oz"))


NAN = float("nan")


@pytest.mark.parametrize("certainty, enough", [(0.9, 2), (0.95, 2), (0.96, 1), (0.5, 3)])
def test_a_project_has_enough_where_its_chance_is_as_sure_as_was_asked(certainty, enough):
    assert overview.how_many_enough([0.99, 0.8, 0.95, NAN, 0.0], certainty) == enough


def test_each_certainty_is_asked_of_all_projects():
    assert overview.how_many_enough([1.0, 0.8, 0.0], np.array([0.9, 0.5])).tolist() == [1, 2]


@pytest.mark.parametrize(
    "chances, words, below",
    [
        ([0.9], "1 of 1", "open project has enough yarn"),
        ([0.9, NAN, 0.2], "1 of 2", "open projects have enough yarn"),
        ([NAN, 0.0], "1 of 1", "open project has enough yarn"),
        ([NAN], "1 of 0", "open projects have enough yarn"),
    ],
)
def test_only_projects_with_a_chance_are_counted(chances, words, below):
    assert overview.how_many(chances) == int(words[-1])
    assert desk_words.so_many_of(1, chances) == words and desk_words.projects_in_words(chances) == below


def test_projects_without_an_answer_are_told_beside_the_others():
    assert desk_words.projects_in_words([0.9, NAN], 1) == "open project has enough, 1 not known"
    assert desk_words.projects_in_words([NAN], 0) == "open projects have enough yarn"
    assert list(desk_words.projects_in_words([0.9, 0.1], np.array([0, 3]))) == [
        "open projects have enough yarn",
        "open projects have enough, 3 not known",
    ]
    assert desk_words.verdict_in_words("Vest", "short") == "short"
    assert desk_words.verdict_in_words("Vest") == "no answer yet"


@pytest.mark.parametrize(
    ("names", "values", "fates", "count"),
    [
        (["A", "B", "C"], ["enough", "", "short"], (), 1),
        (["A", "", ""], ["", "", ""], (), 1),  # a line without a name is no project
        (["A", "B"], Quantity(np.array([4.0, NAN]), "oz"), (), 1),
        (["A", "B"], [0.0, 2.0], (), 0),  # nothing left is known, too
        (["A", "B", "C"], [NAN, NAN, NAN], ["", "sold", ""], 2),
        ([], [], (), 0),
    ],
)
def test_beside_how_many_names_nothing_is_known(names, values, fates, count):
    assert overview.how_many_unknown(names, values, fates) == count


def test_one_word_is_explained_and_two_are_words():
    assert [desk_words.words_explained(count) for count in (1, 2)] == ["word explained", "words explained"]


def test_a_list_is_read_place_by_place():
    names = ["Aster", "Birch", ""]
    assert overview.nth(names, 1) == "Aster" and overview.nth(names, np.array([2.0, 1.0])).tolist() == [
        "Birch",
        "Aster",
    ]


@pytest.mark.parametrize(
    "agreeing, words",
    [
        (42, "computes the planner correctly"),
        (41, "do not rely on it: 1 check fails"),
        (40, "do not rely on it: 2 checks fail"),
    ],
)
def test_a_program_that_computes_otherwise_is_told(agreeing, words):
    assert desk_words.program_in_words(agreeing, 42) == words


@pytest.mark.parametrize(
    "spoiled, wrong, first, begins",
    [
        (0, 0, None, "nothing"),
        (0, 0, "Aster: type it.", "nothing"),
        (0, 1, "Aster: type it.", "Aster: type it."),
        (0, 1, None, "nothing"),
        (1, 1, "Aster: type it.", "1 worked-out cell was emptied, typed over or moved"),
        (2, 1, "Aster: type it.", "2 worked-out cells were emptied, typed over or moved"),
    ],
)
def test_what_was_typed_over_is_told_before_what_is_wrong(spoiled, wrong, first, begins):
    assert desk_words.needs_a_look(spoiled, wrong, first).startswith(begins)


def test_questions_and_lines_unfinished_are_counted():
    first = "Aster: Is it right? Look."
    assert desk_words.needs_a_look(0, 0, first, questions=1) == "1 question"
    assert desk_words.needs_a_look(0, 0, first, questions=1200, unfinished=2) == "1200 questions, 2 unfinished"
    assert desk_words.needs_a_look(0, 0, first, unfinished=1) == "1 unfinished"
    assert desk_words.needs_a_look(0, 1, "Aster: type it.", questions=3) == "Aster: type it."


@pytest.mark.parametrize(
    "wrong, words",
    [
        (lambda: overview.how_many([float("inf")]), "finite"),
        (lambda: overview.how_many_above_nothing([float("inf")]), "finite"),
        (lambda: overview.how_many_enough([1.1], 0.5), "between 0 and 1"),
        (lambda: overview.how_many_enough([-0.1], 0.5), "between 0 and 1"),
        (lambda: desk_words.so_many_of(-1, [0.5]), "from 0"),
        (lambda: desk_words.words_explained(0), "must be a word"),
        (lambda: desk_words.projects_in_words([0.5], -1), "from 0"),
        (lambda: desk_words.verdict_in_words(""), "name"),
        (lambda: overview.how_many_unknown(["A", "B"], [1.0]), "for each name"),
        (lambda: overview.how_many_unknown(["A"], [1.0], ["sold", ""]), "for each name"),
        (lambda: overview.nth(["Aster"], 0), "in the list"),
        (lambda: overview.nth(["Aster"], 2), "in the list"),
        (lambda: overview.nth(["Aster", ""], 2), "a name"),
        (lambda: desk_words.program_in_words(43, 42), "No more"),
        (lambda: desk_words.needs_a_look(-1, 0), "from 0"),
    ],
)
def test_what_cannot_be_counted_is_refused(wrong, words):
    with pytest.raises(ValueError, match=words):
        wrong()
