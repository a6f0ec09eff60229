"""What is read off a formula's text, and what is refused in it."""

import pytest

from workbookgen.language.forms import FORMS
from workbookgen.language.formula import Formula, formula
from workbookgen.language.profile import FUNCTIONS, bound_objections


def objections(text: str) -> tuple[str, ...]:
    return Formula(text).objections


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("(wraps + part_wrap) * loop + rest", ("wraps", "part_wrap", "loop", "rest")),
        ("wraps+wraps*2", ("wraps",)),
        ('IF(kind = "loop of wool", 1, weight)', ("kind", "weight")),
        ('"all text, no word"', ()),
        ('"a ""quoted"" word" & tail', ("tail",)),
        ("1E5 * length", ("length",)),
        ("given(own)", ("own",)),
        ("lookup(reels_loop, reels_listed, reel)", ("reels_loop", "reels_listed", "reel")),
        ("class_of(classes_name, classes_from, wpi * 0.95)", ("classes_name", "classes_from", "wpi")),
        (
            "lookup(kinds_price, kinds_name, lookup(lots_kind, lots_listed, lot))",
            ("kinds_price", "kinds_name", "lots_kind", "lots_listed", "lot"),
        ),
        ("SUM(2, PI()) / 3", ()),
        ("a1b_2 + b_2", ("a1b_2", "b_2")),
    ],
)
def test_the_words_are_the_keys_in_order_of_first_use(text, words):
    assert Formula(text).words == words


def test_a_word_that_is_asked_for_may_be_blank():
    assert Formula("IF(given(own), own, 0) + IF(given( spare ), spare, last)").optional == {"own", "spare"}
    assert Formula('own & "given(text)"').optional == frozenset()
    assert Formula("own + 1").optional == frozenset()


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("OR(given(own), given(spare), given(last))", {"own", "spare", "last"}),
        ('IF(IF(given(way), way, "carding") = "combing", given(combing), given(carding))', {"combing", "carding"}),
        ("IF(OR(given(own), given(spare)), given(first), given(last))", {"first", "last"}),
        ("OR(given(own), spare > 0)", set()),
        ("NOT(OR(given(own), given(spare)))", set()),
        ("OR(given(own), given(spare)) = 0", set()),
        ("IF(given(own), given(spare), 1 = 1)", set()),
        ("AND(given(own), given(spare))", set()),
        ("", set()),
    ],
)
def test_one_of_which_must_be_given(text, words):
    assert Formula(text).alternatives == words


def test_what_is_looked_up_and_added():
    text = Formula(
        "lookup(a_x, a_n,one) / lookup( b_x , b_n , two ) + sum_where(c_x, c_n, three) + sum(d) + lookup(a_x,a_n,one)"
    )
    assert [call.keys for call in text.calls_to("lookup")] == [("a_x", "a_n", "one"), ("b_x", "b_n", "two")]
    assert text.taken_by("sum_where", "sum") == {"c_x", "c_n", "three", "d"}
    assert text.summed == ({"c_x", "c_n", "three"}, {"d"})
    assert Formula("INDEX(a, 2) + INDEX(IF(b, c, d), 1) + e").indexed == {"a"}


def test_lookups_within_lookups_come_in_steps():
    text = Formula("lookup(a, b, lookup(c, d, IF(given(e), e, lookup(f, g, h)))) + lookup(i, j, k)")
    assert [[call.keys[0] for call in step] for step in text.lookup_steps] == [["f", "i"], ["c"], ["a"]]
    assert text.optional == {"e"}


def test_a_text_is_read_once():
    assert formula("one + two") is formula("one + two")
    assert formula("one + two") is not formula("one - two")


ALLOWED = [
    "IF(AND(wraps > 0, NOT(given(rest))), wraps * loop, 0)",
    'ROUND(length, 2) & " yd; see XLOOKUP(x), {a} [b] @c #d 2^3 -- TRUE"',
    "0 - length / 0.9144",
    "lookup(a_x, a_n, n) + sum_where(a_x, a_n, n) + SUMPRODUCT((a_n = n) * 1, a_x)",
    'lookup(a_x, a_n, IF(given(n), n, sum_where(b_x, b_n, "raw, (wool)"))) + class_of(c, d, (n + m) * 2)',
    "mean(one) + mean(one, two, three) + PI()",
]


@pytest.mark.parametrize("text", ALLOWED)
def test_what_is_in_the_profile_is_let_through(text):
    assert objections(text) == ()


@pytest.mark.parametrize("name", sorted(FUNCTIONS))
def test_every_function_of_the_profile_is_let_through(name):
    assert objections(f"{name}(length)") == ()


@pytest.mark.parametrize(
    "name",
    # Measured to differ between programs, or newer than the oldest that a spinner may have, or volatile.
    "XLOOKUP LET FILTER SORT UNIQUE LAMBDA SWITCH CONCAT AGGREGATE NORM.S.DIST CONVERT LOOKUP MMULT TRANSPOSE "
    "INDIRECT VALUE DATEVALUE TEXT OFFSET NOW TODAY RAND RANDBETWEEN IFNA IFS MAXIFS TEXTJOIN IFERROR VLOOKUP "
    "_xlfn.STDEV.S round If".split(),
)
def test_a_function_outside_the_profile_is_named(name):
    assert any(name in said for said in objections(f"1 + {name}(length, 2)"))
    assert objections(f"1 + {name} (length, 2)"), "a space before the bracket hides nothing"


@pytest.mark.parametrize(
    ("text", "sign"),
    [
        ("length ^ 2", "^"),
        ("{1;2} * length", "{"),
        ("SUM({1,2}) * length", "}"),
        ("logs[length]", "["),
        ("@length", "@"),
        ("length#", "#"),
        ("SUMPRODUCT(--(a_n = n), a_x)", "--"),
        ("length * 5%", "%"),
        ("SUM(length; loop)", ";"),
        ("IF(given(x), TRUE, x)", "TRUE"),
        ("IF(given(x), x, FALSE)", "FALSE"),
        ("length - -loop", "--"),
        ("größe * 2", "ö"),
        ('"kept & length', '"'),
        ("'length'", "'"),
    ],
)
def test_a_construct_that_programs_read_differently_is_named(text, sign):
    assert any(f"'{sign}'" in said for said in objections(text))


@pytest.mark.parametrize(
    "text", ["SUMPRODUCT((a_n = n), a_x)", "SUMPRODUCT((a_x > 0))", "1 + SUMPRODUCT((a_x <> n) , a_x)"]
)
def test_a_comparison_in_sumproduct_is_counted_by_a_one(text):
    assert any("multiply the comparison by 1" in said for said in objections(text))


@pytest.mark.parametrize(
    ("text", "operator"),
    [
        ("length ** 2", "*"),
        ("* length", "*"),
        ("length /", "/"),
        ("length + (weight -)", "-"),
        ("IF(= loop, 1, 2)", "="),
        ("IF(length >, 1, 2)", ">"),
        ("MAX(length, & loop)", "&"),
        ("length > = loop", ">"),
        ("2 * / 3", "*"),
    ],
)
def test_an_operator_has_a_value_on_either_side(text, operator):
    assert f"a value is missing beside the {operator}" in objections(text)


@pytest.mark.parametrize("text", ["-length", "+2", "2 * -length", "IF(-length > -2, +1, 2)", "(-length)", ""])
def test_a_sign_may_stand_before_a_number(text):
    assert objections(text) == ()


def test_a_key_in_capitals_is_told_as_such():
    assert objections("Length * 2") == ("Length is neither a word nor a function: words are keys, in lower case",)


def test_a_range_is_no_part_of_a_described_formula():
    assert any("':'" in said for said in objections("SUM(first:last)"))


@pytest.mark.parametrize(
    ("formula", "said"),
    [
        ("=XLOOKUP($A7,$B$7:$B$9,$C$7:$C$9)", "XLOOKUP"),
        ("=given($A7)", "given"),
        ("=$A7^2", "'^'"),
        ("={1,2}", "'{'"),
        ("=@$A7", "'@'"),
        ("=SUM($A$7:INDEX($A$7:$A$9,2))", "between two cells"),
        ("=SUM(INDEX($A$7:$A$9,1):$A$9)", "between two cells"),
        ("=SUM(A:A)", "between two cells"),
        ("=SUMPRODUCT(($A$7:$A$9=1),$B$7:$B$9)", "by 1"),
        ("=IF($A7", "do not match"),
        ("=" + "(" * 65 + "1" + ")" * 65, "65 deep"),
        ("=" + "+".join(["$A7"] * 2100), "signs"),
    ],
)
def test_what_a_bound_formula_may_not_hold(formula, said):
    assert any(said in objection for objection in bound_objections(formula))


def test_a_bound_formula_of_the_profile_is_let_through():
    assert (
        bound_objections(
            "=IF(SUMPRODUCT((Reels!$E$7:$E$9=$A7)*1)=1,AVERAGE($C7:$G7)&\"{a} 50% @ 12:30; TRUE\",'My sheet'!$B$2)"
        )
        == []
    )


@pytest.mark.parametrize("text", ["(length", "length)", "IF(length, 1))", ")length(", "length) * (loop"])
def test_brackets_must_match(text):
    assert "its brackets do not match" in objections(text)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("length loop", "a sign is missing between length and loop"),
        ("2length", "a sign is missing between 2 and length"),
        ("(length)(loop)", "a sign is missing between ) and ("),
        ('length "yd"', 'a sign is missing between length and "yd"'),
        ("length, loop", "a comma stands outside of all brackets"),
        ("lookup(a_x, a_n)", "lookup takes values, names, name, and stands with 2 here: lookup(a_x,a_n)"),
        ("given(a, b)", "given takes word, and stands with 2 here: given(a,b)"),
        ("sum()", "sum lacks the amounts that it takes: sum()"),
        ("mean(one, , three)", "mean lacks the readings that it takes: mean(one,,three)"),
        ("given(a + 1)", "given takes a field for its word, and a+1 is something worked out"),
        ("lookup(a_x * 2, a_n, n)", "lookup takes a field for its values, and a_x*2 is something worked out"),
        ("sum(lookup(a, b, c))", "sum takes a field for its amounts, and lookup(a,b,c) is something worked out"),
        ("1 + IF(lookup(a_x, 3, n) > 1, 2, 3)", "lookup takes a field for its names, and 3 is something worked out"),
    ],
)
def test_what_is_no_formula_is_said_in_one_sentence(text, said):
    assert objections(text) == (said,)


def test_every_form_is_let_through_with_what_it_takes():
    for name, form in FORMS.items():
        fields = [f"field_{place}" for place in range(len(form.takes))]
        assert objections(f"{name}({', '.join(fields)})") == ()
        assert bool(objections(f"{name}({', '.join([*fields, 'more'])})")) is not form.is_open


@pytest.mark.parametrize("text", ["Length * 2", "B7 * 2", "$B$7 * 2", "Work!B7", "length * LOOP"])
def test_only_words_and_functions_stand_in_a_formula(text):
    # A cell's address would be right until a row is added above it.
    assert objections(text)


@pytest.mark.parametrize(
    ("short", "in_full"),
    [
        ("or_else(own, 0) * 2", "IF(given(own), own, 0) * 2"),
        ("or_else(own, or_else(spare, last))", "IF(given(own), own, IF(given(spare), spare, last))"),
        ('or_else(way, "or_else(")', 'IF(given(way), way, "or_else(")'),
        ("AND(given_and(own, own > 0), last > 0)", "AND(IF(given(own), own > 0, 1 = 0), last > 0)"),
        ("OR(blank_or(own, own > or_else(spare, 0)))", "OR(IF(given(own), own > IF(given(spare), spare, 0), 1 = 1))"),
    ],
)
def test_what_depends_on_a_value_being_given_is_an_if(short, in_full):
    assert formula(short).nodes == formula(in_full).nodes
    assert formula(short).optional == formula(in_full).optional
    assert not formula(short).objections


@pytest.mark.parametrize(
    ("text", "objection"),
    [
        ("or_else(own)", "or_else takes word, otherwise, and stands with 1 here: or_else(own)"),
        ("1 + or_else(own + 1, 0)", "or_else takes a field for its word, and own+1 is something worked out"),
        ("given_and(own, )", "given_and lacks the condition that it takes: given_and(own,)"),
        ("or_else(own, 0", "its brackets do not match"),
    ],
)
def test_a_slip_in_one_of_them_is_told_as_it_was_written(text, objection):
    assert formula(text).objections == (objection,)
