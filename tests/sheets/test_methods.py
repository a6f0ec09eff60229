"""What a reference function does not say of itself is refused when a planner is described, and in its name."""

import pytest

from workbookgen.reference.calculation import calculation
from workbookgen.sheets.methods import lacking
from workbookgen.units import Length

PAGE = """How long it is twice.

    d = 2 · w. Twice as long.

    Parameters
    ----------
    width : w, a width

    Returns
    -------
    d, a length

    Raises
    ------
    ValueError
        Never.

    Notes
    -----
    Valid for any width.

    References
    ----------
    Geometry.
    """


def twice(page=PAGE):
    def doubled(width: Length) -> Length:
        return 2 * width

    doubled.__doc__ = page
    return calculation(doubled)


def test_a_whole_page_lacks_nothing():
    assert list(lacking(twice())) == []


@pytest.mark.parametrize(
    ("page", "sentences"),
    [
        (None, ["it has no docstring"]),
        (PAGE.replace("width : w", "widht : w"), ["its docstring lists no parameter width", "its docstring lists widht, which is no parameter of it"]),
        (PAGE.replace("d = 2 · w. Twice as long.\n", ""), ["its docstring does not open with a title and, below it, the formula"]),
        (PAGE.replace("Raises\n    ------\n    ValueError\n        Never.\n", ""), ["its docstring has no section Raises"]),
        (PAGE.replace("Valid for", "Holds for"), ['its Notes do not begin with "Valid for "']),
        (PAGE.replace("References\n    ----------\n    Geometry.", ""), ["its References name no source"]),
    ],
)
def test_what_a_page_lacks(page, sentences):
    assert list(lacking(twice(page))) == sentences


def test_a_function_says_what_it_takes_and_is_a_calculation():
    def doubled(width) -> Length:
        return 2 * width

    doubled.__doc__ = PAGE
    assert list(lacking(doubled)) == ["it is not decorated with @calculation", "it does not annotate width with a kind of units.py"]
