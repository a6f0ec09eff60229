"""An overview: how many, how much, and what needs a look, in words."""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import AT_LEAST_ONE, require_within
from workbookgen.reference.words import said
from workbookgen.units import Quantity, Ratio, Some

JUST_SOMETHING = 0.001  # of the unit in which amounts are given; programs differ in what rounding leaves of zero


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
def so_many_of(enough: Ratio, chances: Sequence[float]) -> str:
    """How many of the projects have enough yarn, in words.

    words = n of k, k = number of the projects that have a chance. It is shown large on the desk.

    Parameters
    ----------
    enough : n, number of projects with enough yarn
    chances : one chance per project; one that is not a number is blank

    Returns
    -------
    a text such as "2 of 4"

    Raises
    ------
    ValueError
        A negative number, or one too large to state.

    Notes
    -----
    Valid for numbers below a million.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(so_many_of(2, [0.99, 0.8, 0.95]))
    2 of 3
    """
    return by_element(lambda each: f"{each} of {int(how_many(chances))}", said(enough))


@calculation
def projects_in_words(chances: Sequence[float]) -> str:
    """The words below the number of projects with enough yarn.

    words = singular if k = 1, else plural. They are shown below the number.

    Parameters
    ----------
    chances : one chance per project; one that is not a number is blank

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        An infinite amount.

    Notes
    -----
    Valid for any number of projects.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(projects_in_words([0.99]))
    project has enough yarn
    """
    return "project has enough yarn" if how_many(chances) == 1 else "projects have enough yarn"


@calculation
def words_explained(count: Ratio) -> str:
    """What the number of words on the sheet Reference is of.

    words = one word if k = 1, else several. They are shown below the number.

    Parameters
    ----------
    count : k, number of words

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        No word.

    Notes
    -----
    Valid for one word or more.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(words_explained(150))
    words explained
    """
    require_within(AT_LEAST_ONE, "There must be a word.", count)
    return by_element(lambda words: "words explained" if words > 1 else "word explained", count)


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


@calculation
def program_in_words(agreeing: Ratio, total: Ratio) -> str:
    """Whether a program computes the planner correctly, in a few words.

    words = correct if k = n, else the n - k checks that fail. They are shown where one looks first.

    Parameters
    ----------
    agreeing : k, number of checks that agree
    total : n, number of checks

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        More checks that agree than there are, or a number too large to state.

    Notes
    -----
    Valid for whole numbers below a million.

    References
    ----------
    Definition.

    Examples
    --------
    >>> print(program_in_words(40, 42))
    do not rely on it: 2 checks fail
    """
    require(np.asarray(agreeing) <= np.asarray(total), "No more can agree than there are.")
    return by_element(
        lambda wrong: (
            "computes the planner correctly"
            if wrong == "0"
            else f"do not rely on it: {wrong} {'check fails' if wrong == '1' else 'checks fail'}"
        ),
        said(np.asarray(total) - np.asarray(agreeing)),
    )


@calculation
def needs_a_look(spoiled: Ratio, wrong: Ratio, first: str | None = None) -> str:
    """What needs a look in a log, in words.

    words = the cells that were emptied or typed over if there are any, else the message about what is wrong, else that
    nothing is. A calculated cell that is empty cannot be filled by typing. A question, and what is only unfinished,
    stay with the log.

    Parameters
    ----------
    spoiled : number of calculated cells that are now empty or overwritten
    wrong : number of lines in which something is wrong
    first : what the head of the log says; none where it says nothing

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        A negative number.

    Notes
    -----
    Valid for whole numbers below a million.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(needs_a_look(0, 1, "Aster: Type the wraps you counted."))
    Aster: Type the wraps you counted.
    """
    require_numbers(spoiled, wrong)

    def words(cells: str, is_wrong: bool, message) -> str:
        if cells != "0":
            those = "worked-out cell was" if cells == "1" else "worked-out cells were"
            return f"{cells} {those} emptied or typed over: undo it, or carry the planner over"
        return message if is_wrong and message else "nothing"

    return by_element(
        words,
        said(spoiled),
        _magnitudes(wrong) > 0,
        first if first is not None else np.full(np.shape(spoiled), "", dtype=object)[()],
    )


def _magnitudes(amounts) -> np.ndarray:
    return np.asarray(amounts.magnitude if isinstance(amounts, Quantity) else amounts, dtype=float)
