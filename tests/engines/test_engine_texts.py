"""Which texts every engine takes for the same, and how long it finds them: held against the library's own meaning.

Measured once and written down, so that a new version of an engine that changes its mind is noticed.
"""

import pytest
import xlsxwriter

from workbookgen.engines import Area
from workbookgen.texts import folded, loosely

CAPITALS = [
    ("a", "A"),
    ("é", "É"),
    ("ö", "Ö"),
    ("я", "Я"),
    ("σ", "Σ"),
    ("σ", "ς"),
    ("ſ", "s"),
    ("ß", "ẞ"),
    ("æ", "Æ"),
    ("ǆ", "ǅ"),
    ("ᾳ", "ᾼ"),
]
OTHERS = [
    ("e", "é"),
    ("æ", "ae"),
    ("a b", "a\tb"),
    ("a b", "a\nb"),
    ("a b", "a\u0085b"),
    ("a", "a "),
    (" a", "a"),
    ("a", "a\u00a0"),
    ("a", "a\u200b"),
    ("-a", "a"),
    ("co-op", "coop"),
    ("i", "İ"),
    ("あ", "ア"),
    ("😀", "😁"),
]
SPLIT = [
    ("ß", "ss"),
    ("straße", "STRASSE"),
    ("ﬁ", "fi"),
    ("é", "e\u0301"),
    ("a b", "a\u00a0b"),
    ("a b", "a\u3000b"),
    ("a b", "a\u2003b"),
    ("ａ", "a"),
    ("ı", "I"),
]
# Beyond A to Z: the engines that go less far or further than the library.
ONE_NAME_TO = {
    "ironcalc": {("ß", "ss"), ("straße", "STRASSE"), ("ﬁ", "fi"), ("ı", "I")},
    "libreoffice": {("ﬁ", "fi"), ("ı", "I")},
    "gnumeric": {
        ("ß", "ss"),
        ("straße", "STRASSE"),
        ("ﬁ", "fi"),
        ("é", "e\u0301"),
        ("a b", "a\u00a0b"),
        ("a b", "a\u3000b"),
        ("a b", "a\u2003b"),
        ("ａ", "a"),
    },
}
TWO_NAMES_TO = {"ironcalc": {("ß", "ẞ")}}
ONLY_A_TO_Z = "formualizer"  # what this means for a filled planner stands in carry/carry.py
PAIRS = CAPITALS + OTHERS + SPLIT
LENGTHS = {
    "e\u0301": 2,
    "é": 1,
    " ": 1,
    "\u00a0": 1,
    "\t": 1,
    "a\nb": 3,
    "😀": 1,
    "👩\u200d🚀": 3,
    "\u3000": 1,
    " a ": 3,
}


@pytest.fixture(scope="module")
def texts(tmp_path_factory):
    path = tmp_path_factory.mktemp("texts") / "texts.xlsx"
    with xlsxwriter.Workbook(path, {"strings_to_formulas": False}) as book:
        pairs, lengths = book.add_worksheet("Pairs"), book.add_worksheet("Lengths")
        for row, (one, other) in enumerate(PAIRS):
            pairs.write_string(row, 0, one)
            pairs.write_string(row, 1, other)
            place = row + 1
            pairs.write_formula(row, 2, f"=IF(A{place}=B{place},1,0)", None, -1)
            pairs.write_formula(row, 3, f"=SUMPRODUCT((A{place}:A{place}=B{place})*1)", None, -1)
        for row, text in enumerate(LENGTHS):
            lengths.write_string(row, 0, text)
            lengths.write_formula(row, 1, f"=LEN(A{row + 1})", None, -1)
            lengths.write_formula(row, 2, f'=LEN(SUBSTITUTE(A{row + 1}," ",""))', None, -1)
    return path


def test_the_same_pairs_are_one_name(each_engine, texts):
    if each_engine.name == "hyperformula":
        pytest.skip("a witness for the arithmetic; what it takes for the same is in tests/web/answers.py")
    with each_engine.open(texts) as session:
        alike = session.read(Area("Pairs", 1, 3, len(PAIRS), 2))
    assert all(one == other for one, other in alike), "= and the sums over a column agree"
    found = {pair for pair, (one, _) in zip(PAIRS, alike, strict=True) if one}
    wanted = {(one, other) for one, other in PAIRS if folded(one) == folded(other)}
    if each_engine.name == ONLY_A_TO_Z:
        assert found == {("a", "A")}
    else:
        assert found == (wanted | ONE_NAME_TO[each_engine.name]) - TWO_NAMES_TO.get(each_engine.name, set())


def test_texts_are_as_long_as_they_are_here(each_engine, texts):
    if each_engine.name == "hyperformula":
        pytest.skip("it counts as Excel does: two for a letter beyond the first 65,536")
    with each_engine.open(texts) as session:
        counted = session.read(Area("Lengths", 1, 2, len(LENGTHS), 2))
    assert [long for long, _ in counted] == [len(text) for text in LENGTHS] == list(LENGTHS.values())
    assert [long for _, long in counted] == [len(text.replace(" ", "")) for text in LENGTHS]


def test_what_any_engine_takes_for_one_name_is_known_as_such():
    """The hint that two names may be one to another program is never missing."""
    for pairs in ONE_NAME_TO.values():
        for one, other in pairs:
            assert loosely(one) == loosely(other)
