"""The skeins of one lot, as a chart draws them."""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_name
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.texts import folded
from workbookgen.units import Ratio

OFF_THE_CHART, EDGE_OF_CHART = -1.0, 0.3
MOST_DASHES = 15


@calculation
def on_the_chart(deviation: Ratio | None = None) -> Ratio:
    """Where a deviation is drawn.

    y = the deviation, limited to 0.3 on either side; -1, which is off the chart, where there is none. All lots are
    drawn to the same scale, so charts can be compared.

    Parameters
    ----------
    deviation : share by which a skein is off the mean

    Returns
    -------
    y, a share

    Raises
    ------
    ValueError
        A deviation that is not a number.

    Notes
    -----
    Valid for deviations of which it is enough to know that they exceed 30 percent.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(on_the_chart(0.45))
    0.3
    """
    if deviation is None:
        return OFF_THE_CHART
    require(np.isfinite(deviation), "The deviation must be a number.")
    return np.clip(deviation, -EDGE_OF_CHART, EDGE_OF_CHART)


@calculation
def where_drawn(name: str, names: Sequence[str], amounts: Ratio) -> Ratio:
    """Where a skein is drawn on the chart.

    x = Σ x i / k, over the k lines that carry its name; -1, which is off the chart, where k = 0. Lines that repeat the
    last skein have the same place.

    Parameters
    ----------
    name : the name looked for
    names : the names of the lines
    amounts : their places

    Returns
    -------
    x, a number

    Raises
    ------
    ValueError
        A blank name.

    Notes
    -----
    Valid for names with one place each; case does not matter.

    References
    ----------
    Definition of the mean.

    Examples
    --------
    >>> print(where_drawn("Aster 2", ["Aster 1", "Aster 2", "Aster 2"], [1, 2, 2]))
    2.0
    """
    require(len(np.atleast_1d(amounts)) == len(names), "Each name needs one value beside it.")

    def found(wanted) -> float:
        require_name(wanted)
        points = zip(np.atleast_1d(amounts), names, strict=True)
        places = [x for x, each in points if folded(str(each)) == folded(str(wanted)) and x == x]
        return float(np.mean(places)) if places else OFF_THE_CHART

    answer = by_element(found, name)
    return answer.astype(float) if np.ndim(answer) else answer


@calculation
def number_on_the_chart(number: Ratio | None = None) -> Ratio:
    """Where a line of the list is drawn, from left to right.

    x = p, or 0 where the list is empty. An empty list then draws nothing inside the chart.

    Parameters
    ----------
    number : p, the place that the line shows

    Returns
    -------
    x, a number

    Raises
    ------
    ValueError
        A place that is not a number.

    Notes
    -----
    Valid for places from 1.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(number_on_the_chart(4))
    4
    """
    if number is None:
        return 0.0
    require(np.isfinite(number), "The place must be a number.")
    return number


@calculation
def limit_off(times: Ratio, variation: Ratio) -> Ratio:
    """Deviation from the mean at which a skein stands out.

    d = G · v. Beyond it, on either side, a skein is unlikely to be there by chance.

    Parameters
    ----------
    times : G, number of standard deviations
    variation : v, coefficient of variation of the group

    Returns
    -------
    d, a share of the mean

    Raises
    ------
    ValueError
        A negative number or variation.

    Notes
    -----
    Valid for groups of three or more, with Grubbs' limit for that number.

    References
    ----------
    Grubbs' test, table of LibreTexts (read).

    Examples
    --------
    >>> print(limit_off(2.5, 0.04))
    0.1
    """
    require_within(NOT_NEGATIVE, "The number of standard deviations", times)
    require_within(NOT_NEGATIVE, "The variation", variation)
    return times * variation


@calculation
def high_on_the_chart(limit: Ratio | None = None) -> Ratio:
    """Where the upper limit is drawn.

    y = d, or -1, which is off the chart, where there is none. A lot of fewer than three skeins has no limit.

    Parameters
    ----------
    limit : d, deviation from the mean at which a skein stands out

    Returns
    -------
    y, a share

    Raises
    ------
    ValueError
        A negative limit.

    Notes
    -----
    Valid for limits as a share of the mean.

    References
    ----------
    Definition of a limit.

    Examples
    --------
    >>> print(high_on_the_chart(0.1))
    0.1
    """
    if limit is None:
        return OFF_THE_CHART
    require_within(NOT_NEGATIVE, "The limit", limit)
    return limit


@calculation
def low_on_the_chart(limit: Ratio | None = None) -> Ratio:
    """Where the lower limit is drawn.

    y = -d, or -1, which is off the chart, where there is none. A lot of fewer than three skeins has no limit.

    Parameters
    ----------
    limit : d, deviation from the mean at which a skein stands out

    Returns
    -------
    y, a share

    Raises
    ------
    ValueError
        A negative limit.

    Notes
    -----
    Valid for limits as a share of the mean.

    References
    ----------
    Definition of a limit.

    Examples
    --------
    >>> print(low_on_the_chart(0.1))
    -0.1
    """
    return OFF_THE_CHART if limit is None else 0 - high_on_the_chart(limit)


@calculation
def dots(deviation: Ratio) -> str:
    """A deviation as a row of dashes with a dot at its end.

    n = 50 · |δ| dashes, 15 at most. The eye compares lengths faster than numbers.

    Parameters
    ----------
    deviation : δ, a share, above or below zero

    Returns
    -------
    n dashes and a dot

    Raises
    ------
    ValueError
        A deviation that is not a number.

    Notes
    -----
    Valid for deviations of which it is enough to know that they exceed 30 percent.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(dots(0.1))
    –––––●
    """
    require(np.isfinite(deviation), "The deviation must be a number.")
    dashes = np.minimum(MOST_DASHES, np.floor(np.round(np.abs(deviation) * 50, 9) + 0.5))
    return by_element(lambda many: "–" * int(many) + "●", dashes)
