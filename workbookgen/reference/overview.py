"""An overview: how many records there are, and of how many something is known."""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.units import Quantity, Ratio, Some

JUST_SOMETHING = 0.001  # in the unit of the amounts; programs differ in what rounding leaves of zero


@calculation
def how_many(amounts: Some) -> Ratio:
    """How many records have an amount.

    n = number of amounts present. An unfinished record has none, and is not counted.

    Parameters
    ----------
    amounts : one amount per record; one that is not a number is blank

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        An infinite amount.

    Notes
    -----
    Valid for amounts of one kind, or none at all.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(how_many([100, np.nan, 80]))
    2.0
    """
    known = _magnitudes(amounts)
    require(not np.isinf(known).any(), "Every amount must be finite.")
    return float(np.sum(~np.isnan(known)))


@calculation
def how_many_above_nothing(amounts: Some) -> Ratio:
    """How many records have an amount above zero.

    n = number of the amounts ≥ 0.001. A lot that is spun up has nothing left but rounding, and is not counted.

    Parameters
    ----------
    amounts : one amount per record; one that is not a number is blank

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        An infinite amount.

    Notes
    -----
    Valid for amounts of one kind, or none at all. They count in the unit in which they are given.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(how_many_above_nothing([100, 0, 80]))
    2.0
    """
    known = _magnitudes(amounts)
    require(not np.isinf(known).any(), "Every amount must be finite.")
    return float(np.sum(np.nan_to_num(known) >= JUST_SOMETHING))


@calculation
def how_many_enough(chances: Sequence[float], certainty: Ratio) -> Ratio:
    """How many projects have enough yarn.

    n = number of the chances ≥ the certainty asked for. A project about which too little is known has no chance, and is
    not counted.

    Parameters
    ----------
    chances : one chance per project; one that is not a number is blank
    certainty : how sure you want to be

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A chance below 0 or above 1.

    Notes
    -----
    Valid for chances from 0 to 1.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(how_many_enough([0.99, 0.8, 0.95], certainty=0.9))
    2.0
    """
    require_numbers(certainty)
    known = np.asarray(chances, dtype=float)
    known = known[~np.isnan(known)]
    require(np.all((known >= 0) & (known <= 1)), "A chance must be between 0 and 1.")
    return np.sum(known >= np.asarray(certainty)[..., None], axis=-1).astype(float)


@calculation
def how_many_unknown(names: Sequence[str], values: Some, fates: Sequence[str] = ()) -> Ratio:
    """How many of the names have nothing known beside them.

    n = number of names with a blank value. What is gone is not asked for.

    Parameters
    ----------
    names : one name per record; an empty text is blank
    values : what is known of each record; a number that is none, or an empty text, is blank
    fates : where each record went; an empty text for one that is there

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        Not as many values or fates as names.

    Notes
    -----
    Valid for any number of records.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(how_many_unknown(["Aster", "", "Birch", "Cedar"], ["enough", "", "", ""], ["", "", "", "sold"]))
    1.0
    """
    known = _are_there(values)
    gone = _are_there(fates) if len(fates) else np.zeros(len(names), dtype=bool)
    require(len(names) == len(known) == len(gone), "There must be a value, and a fate, for each name.")
    return float(np.sum(_are_there(names) & ~known & ~gone))


@calculation
def nth(names: Sequence[str], place: Ratio) -> str:
    """The name at a place in a list.

    name = the n-th of the names, n = 1 for the first. A table that shows part of a log picks its lines this way.

    Parameters
    ----------
    names : the names in the list, a blank one where a row is empty
    place : n, from 1 to the length of the list

    Returns
    -------
    the name

    Raises
    ------
    ValueError
        A place that the list does not have, or that holds no name.

    Notes
    -----
    Valid for whole places.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(nth(["Aster", "Birch"], 2))
    Birch
    """
    places = np.asarray(place)
    require(np.all((places >= 1) & (places <= len(names))), "The place must be in the list.")
    found = by_element(lambda each: names[int(each) - 1], place)
    require(np.asarray(found, dtype=object) != "", "There must be a name at that place.")
    return found


def _magnitudes(amounts) -> np.ndarray:
    return np.asarray(amounts.magnitude if isinstance(amounts, Quantity) else amounts, dtype=float)


def _are_there(values) -> np.ndarray:
    """Which values are there: numbers other than NaN, and texts that are not empty."""
    if isinstance(values, Quantity) or np.asarray(values).dtype.kind == "f":
        return ~np.isnan(_magnitudes(values))
    return np.array([bool(value) for value in values], dtype=bool)
