"""The records of a log by name: finding one, and adding up what belongs to a name.

The logs name reels, lots and projects, and the lists hold what is known of these. A name is found whatever its case;
one that is missing or listed twice is refused rather than guessed. A blank amount is "not a number" here, and counts
as zero in a sum.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_name
from workbookgen.texts import folded, is_blank
from workbookgen.units import Quantity, Ratio, Some


@calculation
def lookup(name: str, names: Sequence[str], values: Some) -> Some:
    """The value beside a name.

    v = value i, where name i is the name. Case does not matter.

    Parameters
    ----------
    name : the name looked for
    names : the names listed, a blank one where a row is empty
    values : the values beside them, quantities, numbers or texts

    Returns
    -------
    v, of the kind of the values

    Raises
    ------
    ValueError
        A name that is blank, missing or listed more than once, or a value that is blank.

    Notes
    -----
    Valid for a list in which every name occurs once.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(lookup("aster", ["Aster", "Birch"], Quantity([300, 200], "g")))
    300 gram
    """
    cells = _cells(values)
    require(len(cells) == len(names), "Each name needs one value beside it.")
    places = _places(names)
    found = by_element(lambda each: len(_rows(each, places)), name)
    require(found != 0, "A name is not in the list: add it there, or choose another.")
    require(found == 1, "A name is in the list more than once: give each its own name.")
    rows = by_element(lambda each: places[folded(str(each))][0], name)
    picked = cells[rows.astype(int) if np.ndim(rows) else rows]
    require(by_element(lambda cell: not _is_blank(cell), picked), "The value beside a name is blank.")
    return Quantity(picked, values.units) if isinstance(values, Quantity) else picked


@calculation
def sum_where(name: str, names: Sequence[str], amounts: Some) -> Some:
    """Sum of what belongs to a name.

    S = Σ amount i, over all i where name i is the name. An empty list adds up to 0.

    Parameters
    ----------
    name : the name looked for
    names : the names in the log, a blank one where a row is empty
    amounts : the amounts beside them, quantities or numbers; one that is not a number is blank

    Returns
    -------
    S, of the kind of the amounts

    Raises
    ------
    ValueError
        A blank name, or amounts that are not one per name.

    Notes
    -----
    Valid for names spelled alike; case does not matter.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(sum_where("Aster", ["Aster", "Birch", "Aster"], Quantity([100, 80, 60], "g")))
    160.0 gram
    """
    cells = np.nan_to_num(_cells(amounts).astype(float), nan=0.0).tolist()
    require(len(cells) == len(names), "Each name needs one amount beside it.")
    places = _places(names)
    sums = by_element(lambda each: float(sum(cells[row] for row in _rows(each, places))), name)
    sums = sums.astype(float) if np.ndim(sums) else sums
    return Quantity(sums, amounts.units) if isinstance(amounts, Quantity) else sums


@calculation
def sum_of(amounts: Some) -> Some:
    """Sum of a whole column.

    S = Σ amount i. An empty list adds up to 0.

    Parameters
    ----------
    amounts : the amounts in the log, quantities or numbers; one that is not a number is blank

    Returns
    -------
    S, of the kind of the amounts

    Raises
    ------
    ValueError
        An infinite amount.

    Notes
    -----
    Valid for amounts of one kind.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(sum_of(Quantity([100, 80, 60], "g")))
    240.0 gram
    """
    added = float(np.nansum(_cells(amounts).astype(float)))
    require(np.isfinite(added), "Every amount must be finite.")
    return Quantity(added, amounts.units) if isinstance(amounts, Quantity) else added


@calculation
def spun(
    name: str,
    names: Sequence[str],
    amounts: Some,
    second_names: Sequence[str],
    second_amounts: Some,
    third_names: Sequence[str] = (),
    third_amounts: Some = (),
    besides: Some = None,
    expected: Some = None,
) -> Some:
    """Sum of what belongs to a name, over two or three places.

    S = Σ first + Σ second + Σ third + b + e. Skeins of a lot alone use it up, and so do skeins of designs.

    Parameters
    ----------
    name : the name looked for
    names : the names in the first place
    amounts : the amounts beside them, quantities or numbers
    second_names : the names in the second place
    second_amounts : the amounts beside those, of the same kind
    third_names : the names in a third place
    third_amounts : the amounts beside those
    besides : b, another amount known to belong to it
    expected : e, an amount that is only expected of it, such as that of skeins which were not weighed yet

    Returns
    -------
    S, of the kind of the amounts

    Raises
    ------
    ValueError
        A blank name, or amounts that are not one per name.
    DimensionalityError
        Amounts of different kinds.

    Notes
    -----
    Valid for amounts that are not counted in two places.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(spun("Aster", ["Aster"], Quantity([100], "g"), ["Birch", "Aster"], Quantity([80, 60], "g")))
    160.0 gram
    """
    together = sum_where(name, names, amounts) + sum_where(name, second_names, second_amounts)
    if len(third_names):
        together = together + sum_where(name, third_names, third_amounts)
    for more in filter(lambda each: each is not None, (besides, expected)):
        together = together + more
    return together


@calculation
def count_where(name: str, names: Sequence[str], amounts: Some) -> Ratio:
    """Number of records of a name.

    k = count of the amounts i where name i is the name. Blank ones do not count.

    Parameters
    ----------
    name : the name looked for
    names : the names in the list, a blank one where a row is empty
    amounts : the amounts beside them; one that is not a number is blank

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A blank name, or amounts that are not one per name.

    Notes
    -----
    Valid for a list in which every record occurs once.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(count_where("Aster", ["Aster", "Birch", "Aster"], [100, 80, np.nan]))
    1.0
    """
    known = _cells(amounts)
    one = np.array([0.0 if _is_blank(cell) else 1.0 for cell in known])
    return sum_where(name, names, one)


def _cells(values) -> np.ndarray:
    cells = np.atleast_1d(values.magnitude if isinstance(values, Quantity) else values)
    return cells.astype(object) if cells.dtype.kind == "U" else cells


def _places(names) -> dict[str, list[int]]:
    """The rows of every name, whatever its case, except for the blank one, which most rows of a log have."""
    places: dict[str, list[int]] = {}
    for row, name in enumerate(map(str, names)):
        if name:
            places.setdefault(folded(name), []).append(row)
    return places


def _rows(name, places) -> Sequence[int]:
    require_name(name)
    return places.get(folded(str(name)), ())


def _is_blank(cell) -> bool:
    return cell is None or cell != cell or isinstance(cell, str) and is_blank(cell)
