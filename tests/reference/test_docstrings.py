"""Every calculation carries its page: the methods sheet is made of nothing else."""

import inspect
import re

import docstring_parser

from .examples import public_calculations

CALCULATIONS = public_calculations()
SECTIONS = ["Parameters", "Returns", "Raises", "Notes", "References", "Examples"]
PROVENANCE = re.compile(r"\(read|\(from memory\)|common practice, no source|geometry|definition", re.IGNORECASE)


def without(fits) -> list[str]:
    """The calculations whose page does not fit."""
    return [name for name, calculation in CALCULATIONS if not fits(calculation)]


def parsed(calculation):
    return docstring_parser.parse(calculation.__doc__ or "", docstring_parser.DocstringStyle.NUMPYDOC)


def section(calculation, title):
    """The text of a section that docstring_parser has no class for, or keeps as plain text."""
    found = re.search(rf"^{title}\n-+\n(.*?)(?=\n\n\w+\n-+\n|\Z)", inspect.getdoc(calculation) or "", re.S | re.M)
    return found.group(1).strip() if found else ""


def test_sections_stand_in_order():
    assert (
        without(lambda calculation: re.findall(r"^(\w+)\n-{3,}$", inspect.getdoc(calculation) or "", re.M) == SECTIONS)
        == []
    )


def test_opens_with_a_title_and_the_formula():
    """The formula and a sentence."""

    def fits(calculation) -> bool:
        page = parsed(calculation)
        formula_and_why = page.long_description or ""
        is_more = ". " in formula_and_why or ".\n" in formula_and_why
        return (page.short_description or "").endswith(".") and bool(re.search(r"[=≤≥]", formula_and_why)) and is_more

    assert without(fits) == []


def test_parameters_are_those_of_the_signature():
    """Those of one meaning may share a line; it stands at the place of its first one."""

    def fits(calculation) -> bool:
        described = section(calculation, "Parameters").splitlines()
        lines = [line.partition(" : ")[0].split(", ") for line in described]
        taken = list(inspect.signature(calculation).parameters)
        return (
            all(re.fullmatch(r"\w+(, \w+)* : \S.*", line) for line in described)
            and sorted(name for line in lines for name in line) == sorted(taken)
            and [line[0] for line in lines] == sorted((line[0] for line in lines), key=taken.index)
        )

    assert without(fits) == []


def test_returns_and_raises_say_something():
    def fits(calculation) -> bool:
        raises = parsed(calculation).raises
        is_refusing = [refusal.type_name for refusal in raises][:1] == ["ValueError"]
        is_told = all((refusal.description or "").endswith(".") for refusal in raises)
        return bool(section(calculation, "Returns")) and is_refusing and is_told

    assert without(fits) == []


def test_notes_open_with_the_validity():
    assert without(lambda calculation: section(calculation, "Notes").startswith("Valid for ")) == []


def test_references_name_a_source_and_how_it_is_known():
    assert without(lambda calculation: PROVENANCE.search(section(calculation, "References"))) == []
