"""The tokens of formulas: our reading of them, held against openpyxl's."""

from itertools import chain

import pytest
from openpyxl.formula import Tokenizer

from workbookgen import settings
from workbookgen.book.layout import place
from workbookgen.language.tokens import (
    Call,
    calls,
    function_name,
    is_name,
    is_number,
    is_text,
    is_word,
    parse,
    tokenize,
    unparse,
)
from workbookgen.sheets.planner import planner


@pytest.fixture(scope="module")
def layout():
    return place(planner(settings.parse("", "the default")))


@pytest.fixture(scope="module")
def described(layout) -> set[str]:
    blocks = layout.planner.blocks.values()
    texts = {text for block in blocks for each in block.results for text in (each.formula, each.only_if) if text}
    return texts | {rule.when for block in blocks for rule in block.rules}


def kind(token: str) -> str:
    """What openpyxl calls a token of this kind."""
    if function_name(token) or token == "(":
        return "FUNC" if function_name(token) else "PAREN"
    return "TEXT" if is_text(token) else "NUMBER" if is_number(token) else "RANGE" if is_name(token) else "SIGN"


def as_openpyxl_reads(text: str) -> list[tuple[str, str]]:
    found = [each for each in Tokenizer("=" + text.removeprefix("=")).items if each.type != "WHITE-SPACE"]
    kinds = {
        "OPERAND": lambda each: each.subtype,
        "FUNC": lambda each: each.type if each.subtype == "OPEN" else "SIGN",
        "PAREN": lambda each: each.type if each.subtype == "OPEN" else "SIGN",
    }
    return [(each.value, kinds.get(each.type, lambda each: "SIGN")(each)) for each in found]


def test_described_formulas_are_read_as_openpyxl_reads_them(described):
    assert len(described) > 1000
    for text in described:
        assert [(token, kind(token)) for token in tokenize(text)] == as_openpyxl_reads(text)


def test_bound_formulas_are_read_as_openpyxl_reads_them(layout):
    texts = [each.formulas[0] for each in layout.formulas]
    for text in texts[::7]:
        assert [(token, kind(token)) for token in tokenize(text)] == as_openpyxl_reads(text)


def test_no_sign_of_a_formula_is_lost(described):
    for text in described:
        pieces = text.split('"')
        assert "".join(tokenize(text)) == '"'.join(
            piece if index % 2 else "".join(piece.split()) for index, piece in enumerate(pieces)
        )
        assert unparse(parse(text)) == "".join(tokenize(text))


def test_calls_stand_within_each_other():
    inner = Call("lookup", (("a",), ("b",), ("c",)))
    assert parse("IF(given(x), (lookup(a, b, c) * 2), PI())") == (
        Call("IF", ((Call("given", (("x",),)),), (Call("", ((inner, "*", "2"),)),), (Call("PI", ((),)),))),
    )
    assert [call.name for call in calls(parse("IF(given(x), (lookup(a, b, c) * 2), PI())"))] == [
        "IF",
        "given",
        "",
        "lookup",
        "PI",
    ]
    assert inner.keys == ("a", "b", "c")
    assert Call("lookup", (("a",), ("1",), (inner,), ("a", "*", "b"), (), ("B7",))).keys == ("a", "", "", "", "", "")


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("1E-9*2.5e3+7.", ("1E-9", "*", "2.5e3", "+", "7.")),
        ('"a ""quoted"" (word" & tail', ('"a ""quoted"" (word"', "&", "tail")),
        ("a<=b<>c>=d<e", ("a", "<=", "b", "<>", "c", ">=", "d", "<", "e")),
        ("='It''s my sheet'!$B$2:$B$9&Work!C4", ("'It''s my sheet'!$B$2:$B$9", "&", "Work!C4")),
        ("XLOOKUP (a)", ("XLOOKUP (", "a", ")")),
        ('"open', ('"', "open")),
        ("a{1;2}#@", ("a", "{", "1", ";", "2", "}", "#", "@")),
    ],
)
def test_a_text_falls_into_these_tokens(text, found):
    assert tokenize(text) == found


@pytest.mark.parametrize("text", ["(a", "a)", "IF(a, (b)", ")("])
def test_brackets_that_do_not_match(text):
    with pytest.raises(ValueError, match="brackets"):
        parse(text)


@pytest.mark.parametrize(
    ("word", "is_one"),
    [
        ("a", True),
        ("a_1", True),
        ("A", False),
        ("_a", False),
        ("a.b", False),
        ("1a", False),
        ("größe", False),
        ("a(", False),
        ("$a", False),
    ],
)
def test_a_word_is_written_as_a_key(word, is_one):
    assert is_word(word) is is_one


def test_every_token_is_of_one_kind(described):
    for token in set(chain.from_iterable(map(tokenize, described))):
        assert (
            sum(
                (
                    is_text(token),
                    is_number(token),
                    is_name(token),
                    function_name(token) is not None,
                    token in set("+-*/&=<>),") | {"<=", ">=", "<>"},
                )
            )
            == 1
        )
