"""Every law carries its page: the methods sheet is made of nothing else."""

import inspect
import re

import docstring_parser
import pytest

from .examples import public_laws

LAWS = public_laws()
SECTIONS = ["Parameters", "Returns", "Raises", "Notes", "References"]
PROVENANCE = re.compile(r"\(read|\(from memory\)|common practice, no source|geometry|definition", re.IGNORECASE)


@pytest.fixture(params=LAWS, ids=[name for name, _ in LAWS])
def law(request):
    return request.param[1]


def section(law, title):
    """The text of a section that docstring_parser has no class for, or keeps as plain text."""
    page = inspect.getdoc(law)
    return re.search(rf"^{title}\n-+\n(.*?)(?=\n\n\w+\n-+\n|\Z)", page, re.S | re.M).group(1).strip()


def test_sections_stand_in_order(law):
    assert re.findall(r"^(\w+)\n-{3,}$", inspect.getdoc(law), re.M) == SECTIONS


def test_opens_with_a_title_and_the_law(law):
    page = docstring_parser.parse(law.__doc__, docstring_parser.DocstringStyle.NUMPYDOC)
    assert page.short_description.endswith(".")
    law_and_why = page.long_description
    assert re.search(r"[=≤≥]", law_and_why)
    assert law_and_why.count(". ") + law_and_why.count(".\n") >= 1, "a law and a sentence"


def test_parameters_are_those_of_the_signature(law):
    page = docstring_parser.parse(law.__doc__, docstring_parser.DocstringStyle.NUMPYDOC)
    on_the_page = [parameter.arg_name for parameter in page.params]
    assert on_the_page == list(inspect.signature(law).parameters)
    described = section(law, "Parameters").splitlines()
    assert all(re.fullmatch(r"\w+ : \S.*", line) for line in described)


def test_returns_and_raises_say_something(law):
    page = docstring_parser.parse(law.__doc__, docstring_parser.DocstringStyle.NUMPYDOC)
    assert section(law, "Returns")
    assert page.raises[0].type_name == "ValueError"
    assert all(refusal.description.endswith(".") for refusal in page.raises)


def test_notes_open_with_the_validity(law):
    assert section(law, "Notes").startswith("Valid for ")


def test_references_name_a_source_and_how_it_is_known(law):
    assert PROVENANCE.search(section(law, "References"))
