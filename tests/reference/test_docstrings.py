"""Every calculation carries its page: the methods sheet is made of nothing else."""

import inspect
import re

import docstring_parser
import pytest

from .examples import public_calculations

CALCULATIONS = public_calculations()
SECTIONS = ["Parameters", "Returns", "Raises", "Notes", "References", "Examples"]
PROVENANCE = re.compile(r"\(read|\(from memory\)|common practice, no source|geometry|definition", re.IGNORECASE)


@pytest.fixture(params=CALCULATIONS, ids=[name for name, _ in CALCULATIONS])
def calculation(request):
    return request.param[1]


def section(calculation, title):
    """The text of a section that docstring_parser has no class for, or keeps as plain text."""
    page = inspect.getdoc(calculation)
    return re.search(rf"^{title}\n-+\n(.*?)(?=\n\n\w+\n-+\n|\Z)", page, re.S | re.M).group(1).strip()


def test_sections_stand_in_order(calculation):
    assert re.findall(r"^(\w+)\n-{3,}$", inspect.getdoc(calculation), re.M) == SECTIONS


def test_opens_with_a_title_and_the_formula(calculation):
    page = docstring_parser.parse(calculation.__doc__, docstring_parser.DocstringStyle.NUMPYDOC)
    assert page.short_description.endswith(".")
    formula_and_why = page.long_description
    assert re.search(r"[=≤≥]", formula_and_why)
    assert formula_and_why.count(". ") + formula_and_why.count(".\n") >= 1, "a formula and a sentence"


def test_parameters_are_those_of_the_signature(calculation):
    """Those of one meaning may share a line; it stands at the place of its first one."""
    described = section(calculation, "Parameters").splitlines()
    assert all(re.fullmatch(r"\w+(, \w+)* : \S.*", line) for line in described)
    lines = [line.partition(" : ")[0].split(", ") for line in described]
    taken = list(inspect.signature(calculation).parameters)
    assert sorted(name for line in lines for name in line) == sorted(taken)
    assert [line[0] for line in lines] == sorted((line[0] for line in lines), key=taken.index)


def test_returns_and_raises_say_something(calculation):
    page = docstring_parser.parse(calculation.__doc__, docstring_parser.DocstringStyle.NUMPYDOC)
    assert section(calculation, "Returns")
    assert page.raises[0].type_name == "ValueError"
    assert all(refusal.description.endswith(".") for refusal in page.raises)


def test_notes_open_with_the_validity(calculation):
    assert section(calculation, "Notes").startswith("Valid for ")


def test_references_name_a_source_and_how_it_is_known(calculation):
    assert PROVENANCE.search(section(calculation, "References"))
