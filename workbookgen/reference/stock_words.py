"""What skeins and lots there are, in sentences."""

from workbookgen.reference.calculation import by_element, calculation
from workbookgen.reference.limits import ABOVE_ZERO, NO_MASS, require_within
from workbookgen.reference.words import said, said_in_all
from workbookgen.units import Length, Mass, Ratio


@calculation
def skeins_in_words(count: Ratio, mass: Mass, unweighed: Ratio = 0.0) -> str:
    """How many skeins there are, and what they weigh, in words.

    words = n skeins, m in the unit in which it is given. A single skein is in the singular. Of skeins that were not
    weighed no weight is stated.

    Parameters
    ----------
    count : n, number of skeins
    mass : m, what they weigh together
    unweighed : how many of them were not weighed

    Returns
    -------
    a text such as "in 11 skeins, 37.2 oz"

    Raises
    ------
    ValueError
        A negative number or mass, or one too large to state.

    Notes
    -----
    Valid for numbers below a million, and masses below a hundred million of their unit.

    References
    ----------
    Definition of rounding.

    Examples
    --------
    >>> print(skeins_in_words(11, Quantity(37.2, "oz")))
    in 11 skeins, 37.2 oz
    """
    return by_element(_so_many_weigh, said(count), said_in_all(mass), said(unweighed))


def _so_many_weigh(skeins: str, mass: str, unweighed: str) -> str:
    if unweighed == "0":
        return f"in {_counted(skeins)}, {mass}"
    if unweighed == skeins:
        return f"in {_counted(skeins)}, not weighed"
    return f"in {_counted(skeins)}, {mass}, {unweighed} not weighed"


def _counted(skeins: str) -> str:
    return f"{skeins} {'skein' if skeins == '1' else 'skeins'}"


@calculation
def there_in_words(
    count: Ratio,
    length: Length,
    mass: Mass,
    gone: Ratio = 0.0,
    aside: Ratio = 0.0,
    worth: str | None = None,
    unweighed: Ratio = 0.0,
) -> str:
    """How many skeins there are, their length and their weight together, in words.

    words = n skeins, L, m, each in the unit in which it is given; what of them was not weighed or is set aside; and how
    many more are gone. It is shown at the head of the log.

    Parameters
    ----------
    count : n, number of skeins that are still there
    length : L, their length together
    mass : m, what they weigh together
    gone : how many more are gone: given away, sold, used or lost
    aside : how many of those that are there are set aside
    worth : what those that are there are worth, in words, if they have a price
    unweighed : how many of those that are there were not weighed

    Returns
    -------
    a text such as "9 skeins, 2,050 yd, 30.5 oz; 2 more gone"

    Raises
    ------
    ValueError
        A negative amount, or one too large to state.

    Notes
    -----
    Valid for numbers below a million, and lengths and masses below a hundred million of their unit.

    References
    ----------
    Definition of rounding.

    Examples
    --------
    >>> print(there_in_words(9, Quantity(2050, "yd"), Quantity(30.5, "oz"), gone=2))
    9 skeins, 2,050 yd, 30.5 oz; 2 more gone
    """
    skeins = said(count)
    there = by_element(_there, skeins, said_in_all(length), said_in_all(mass), said(unweighed))
    set_aside = by_element(_set_aside, skeins, said(aside))
    has_worth = "" if worth is None else "; " + worth
    some = there + set_aside + has_worth + by_element(_more_gone, said(gone))
    none = by_element(_none_left, said(gone))
    return by_element(lambda skeins, none, some: none if skeins == "0" else some, skeins, none, some)


def _there(skeins: str, length: str, mass: str, unweighed: str) -> str:
    if unweighed == skeins:
        return f"{_counted(skeins)}, {length}, not weighed"
    if unweighed != "0":
        return f"{_counted(skeins)}, {length}, {mass}; {unweighed} of them not weighed"
    return f"{_counted(skeins)}, {length}, {mass}"


def _set_aside(skeins: str, aside: str) -> str:
    if aside == "0":
        return ""
    return "; set aside" if skeins == "1" else f"; {aside} of them set aside"


def _more_gone(gone: str) -> str:
    return "" if gone == "0" else f"; {gone} more gone"


def _none_left(gone: str) -> str:
    if gone == "0":
        return "no skeins yet"
    return f"no skeins left; {gone} {'is' if gone == '1' else 'are'} gone"


@calculation
def shelf_in_words(
    count: Ratio, mass: Mass, aside: Mass = NO_MASS, worth: str | None = None, unknown: Ratio = 0.0
) -> str:
    """How many lots something is left of, and how much, in words.

    words = n lots, m of yarn still in them; and how many more there are of which it is not known. It is shown at the
    head of the log.

    Parameters
    ----------
    count : n, number of lots with something left
    mass : m, what they can still give together
    aside : what of that is set aside
    worth : what that is worth, in words, if any of it has a price
    unknown : number of lots more, of which nobody knows yet what they give

    Returns
    -------
    a text such as "3 lots, 37.2 oz of yarn still in them"

    Raises
    ------
    ValueError
        No record, a negative amount, or one too large to state.

    Notes
    -----
    Valid for numbers below a million, and masses below a hundred million of their unit.

    References
    ----------
    Definition of rounding.

    Examples
    --------
    >>> print(shelf_in_words(3, Quantity(37.2, "oz")))
    3 lots, 37.2 oz of yarn still in them
    """
    require_within(ABOVE_ZERO, "There must be a lot.", count)
    text = by_element(
        lambda lots, weight: (
            f"{lots} {'lot' if lots == '1' else 'lots'}, {weight} of yarn still in {'it' if lots == '1' else 'them'}"
        ),
        said(count),
        said_in_all(mass),
    )
    text = by_element(
        lambda text, weight, some: f"{text}, {weight} of it set aside" if some > 0 else text,
        text,
        said_in_all(aside),
        aside.magnitude,
    )
    if worth is not None:
        text = by_element(lambda text, more: f"{text}, {more}", text, worth)
    return by_element(lambda text, more: text if more == "0" else f"{text}; {more} more not known", text, said(unknown))


@calculation
def lots_in_words(count: Ratio, unknown: Ratio = 0.0) -> str:
    """In how many lots something is left, in words.

    words = n lots, one lot if n = 1, and how many more there are of which it is not known. It is shown below the weight
    of the yarn that they can still give: of a fiber that is still to be spun, of a bought thread that lies there.

    Parameters
    ----------
    count : n, number of lots
    unknown : number of lots more, of which nobody knows yet what they give

    Returns
    -------
    a text such as "of yarn still in 3 lots"

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
    >>> print(lots_in_words(1))
    of yarn still in 1 lot
    """
    return by_element(
        lambda lots, others: (
            f"of yarn still in {lots} {'lot' if lots == '1' else 'lots'}"
            + ("" if others == "0" else f", {others} not known")
        ),
        said(count),
        said(unknown),
    )
