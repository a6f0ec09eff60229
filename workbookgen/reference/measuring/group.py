"""The skeins of one lot, taken out of the log a line at a time."""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_name
from workbookgen.reference.fates import serves_its_project
from workbookgen.reference.limits import AT_LEAST_ONE, require_within
from workbookgen.texts import folded
from workbookgen.units import Quantity, Ratio, Some


@calculation
def place_in_group(line: Ratio, count: Ratio) -> Ratio:
    """The place that a line in a short list shows.

    p = line, but at most the number of entries. Spare lines repeat the last entry, so a chart draws nothing else.

    Parameters
    ----------
    line : number of the line, from 1
    count : number of entries

    Returns
    -------
    p, a whole number

    Raises
    ------
    ValueError
        No entry, or a line before the first.

    Notes
    -----
    Valid for whole numbers.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(place_in_group(5, count=3))
    3
    """
    require_within(AT_LEAST_ONE, "Lines are counted from 1.", line)
    require_within(AT_LEAST_ONE, "There must be at least one.", count)
    return np.minimum(line, count)


@calculation
def place(name: str, names: Sequence[str], amounts: Some, number: Ratio) -> Ratio:
    """The line in which a name occurs for the k-th time.

    p = the first line by which k lines with an amount carry the name; k = number. This takes a group out of its log, a
    line at a time.

    Parameters
    ----------
    name : the name looked for
    names : the names in the log, a blank one where a row is empty
    amounts : the amounts beside them; one that is not a number is blank, and its line is not counted
    number : k, from 1

    Returns
    -------
    p, a whole number, 1 for the first line

    Raises
    ------
    ValueError
        A blank name, or fewer than k lines.

    Notes
    -----
    Valid for whole numbers; case does not matter.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(place("Aster", ["Aster", "Birch", "Aster"], [3.0, 2.0, 4.0], number=2))
    3.0
    """
    known = np.atleast_1d(amounts.magnitude if isinstance(amounts, Quantity) else amounts)
    is_counted = [amount is not None and amount == amount for amount in known]
    lines = [folded(str(each)) if counts else "" for each, counts in zip(names, is_counted, strict=True)]

    def found(wanted, count) -> float:
        require_name(wanted)
        require_within(AT_LEAST_ONE, "Lines are counted from 1.", count)
        those = [line for line, each in enumerate(lines, start=1) if each == folded(str(wanted))]
        require(count <= len(those), "There are not that many lines with this name.")
        return float(those[int(count) - 1])

    answer = by_element(found, name, number)
    return answer.astype(float) if np.ndim(answer) else answer


@calculation
def of_another(value: Some, line: Ratio, number: Ratio, name: str, chosen: str, fate: str | None = None) -> Some:
    """A value of a skein other than the chosen one.

    v = value, if line = p and the name differs. Lines that repeat the last skein, and the chosen skein itself, are left
    out, and so is one that was given away, sold or lost. One that was used is not: the next is to go with it.

    Parameters
    ----------
    value : the value
    line : number of the line
    number : p, the place that the line shows
    name : name of its skein
    chosen : name of the chosen skein
    fate : where its skein went, if it is gone or set aside

    Returns
    -------
    v, of the same kind

    Raises
    ------
    ValueError
        A line that repeats another, the chosen skein itself, one that somebody else has, or a value that is not a
        number.

    Notes
    -----
    Valid for names that differ; case does not matter.

    References
    ----------
    Definition of a selection.

    Examples
    --------
    >>> print(of_another(0.1, line=2, number=2, name="Aster 2", chosen="Aster 1"))
    0.1
    """
    require(line == number, "The line repeats another.")
    require(
        np.vectorize(lambda one, other: folded(str(one)) != folded(str(other)), otypes=[bool])(name, chosen),
        "It is the chosen one itself.",
    )
    if fate is not None:
        here = np.vectorize(lambda each: serves_its_project(str(each)), otypes=[bool])(fate)
        require(here, "That skein is no longer here.")
    require(np.isfinite(value), "The value must be a number.")
    return value
