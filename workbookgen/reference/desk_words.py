"""What the desk says: the words below its numbers, and what needs a look."""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_name, require_numbers
from workbookgen.reference.limits import AT_LEAST_ONE, require_within
from workbookgen.reference.overview import how_many
from workbookgen.reference.words import said
from workbookgen.units import Ratio


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
def projects_in_words(chances: Sequence[float], unanswered: Ratio = 0.0) -> str:
    """The words below the number of projects with enough yarn.

    words = singular if k = 1, else plural; and how many projects more have no answer. They are shown below the number.

    Parameters
    ----------
    chances : one chance per project; one that is not a number is blank
    unanswered : number of projects about which too little is known

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        An infinite amount, or a negative number.

    Notes
    -----
    Valid for any number of projects with an answer, and below a million without one.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(projects_in_words([0.99], unanswered=2))
    open project has enough, 2 not known
    """
    counted = "open project has enough" if how_many(chances) == 1 else "open projects have enough"
    return by_element(
        lambda others: f"{counted} yarn" if others == "0" else f"{counted}, {others} not known", said(unanswered)
    )


@calculation
def verdict_in_words(name: str, verdict: str | None = None) -> str:
    """Whether there is enough yarn for a project, or that this is not known.

    words = verdict, if there is one. A project of which too little is known has no answer, which is no bad one.

    Parameters
    ----------
    name : the project
    verdict : the answer in a word; none where too little is known

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        A blank name.

    Notes
    -----
    Valid for any project that has a name.

    References
    ----------
    Definition.

    Examples
    --------
    >>> print(verdict_in_words("Vest"))
    no answer yet
    """
    require_name(name)
    return "no answer yet" if verdict is None else verdict


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
def needs_a_look(
    spoiled: Ratio, wrong: Ratio, first: str | None = None, questions: Ratio = 0, unfinished: Ratio = 0
) -> str:
    """What needs a look in a log, in words.

    words = the cells that were emptied, typed over or moved if there are any, else the message about what is wrong,
    else how many lines are asked about, and how many are not finished, else that nothing needs a look. A calculated
    cell that is empty cannot be filled by typing.

    Parameters
    ----------
    spoiled : number of calculated cells that are now empty or overwritten
    wrong : number of lines in which something is wrong
    first : what the head of the log says; none where it says nothing
    questions, unfinished : number of lines about which something is asked, and of those that lack something

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
    require_numbers(spoiled, wrong, questions, unfinished)

    def words(cells: str, is_wrong: bool, message, asked: float, lacking: float) -> str:
        if cells != "0":
            those = "worked-out cell was" if cells == "1" else "worked-out cells were"
            return f"{cells} {those} emptied, typed over or moved: undo it, or carry the planner over"
        if is_wrong and message:
            return message
        told = [f"{asked:.0f} {'question' if asked == 1 else 'questions'}"] if asked > 0 else []
        told += [f"{lacking:.0f} unfinished"] if lacking > 0 else []
        return ", ".join(told) or "nothing"

    return by_element(
        words,
        said(spoiled),
        np.asarray(wrong) > 0,
        first if first is not None else np.full(np.shape(spoiled), "", dtype=object)[()],
        np.asarray(questions),
        np.asarray(unfinished),
    )
