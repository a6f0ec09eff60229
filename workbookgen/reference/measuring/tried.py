"""What is tried out beside the log.

A value typed to try it out takes the place of the log's, and leaves the log as it is.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.units import Length, Mass, Quantity, Ratio, Some

WRONG = "!"
TOO_HEAVY = "Bag or tag: it must weigh less than the whole. Check both."


@calculation
def tried_or_logged(tried: Some = None, logged: Some = None) -> Some:
    """What is tried out, or else what is in the log.

    v = tried, or else logged. The log itself stays as it is.

    Parameters
    ----------
    tried : what was typed to try it out
    logged : what is in the log

    Returns
    -------
    v, of the same kind

    Raises
    ------
    ValueError
        Neither is given, or a number is not one.

    Notes
    -----
    Valid for one value of one record.

    References
    ----------
    Definition of a selection.

    Examples
    --------
    >>> print(tried_or_logged(tried=62, logged=60))
    62
    """
    value = logged if tried is None else tried
    require(value is not None, "Type it, or choose a skein of the log.")
    known = value.magnitude if isinstance(value, Quantity) else value
    require(np.vectorize(lambda each: each == each, otypes=[bool])(known), "It must be a number, or words.")
    return value


@calculation
def of_the_reel(
    typed: Length | None = None, reel: str | None = None, of_reel: Length | None = None, logged: Length | None = None
) -> Length:
    """The loop to use, or its uncertainty.

    C = typed, or else that of the reel chosen, or else that in the log. A chosen reel about which nothing is known is
    not replaced by another.

    Parameters
    ----------
    typed : the length typed in place of a reel
    reel : name of the reel chosen, if one is
    of_reel : the length that belongs to this reel
    logged : the length that belongs to the reel in the log

    Returns
    -------
    C, a length

    Raises
    ------
    ValueError
        Nothing is known about the reel, or a negative length.

    Notes
    -----
    Valid for a skein that was wound on one reel.

    References
    ----------
    Definition of a selection.

    Examples
    --------
    >>> print(of_the_reel(reel="Niddy-noddy", of_reel=Quantity(1.5, "m"), logged=Quantity(2, "m")))
    1.5 meter
    """
    length = typed if typed is not None else of_reel if reel is not None else logged
    require(length is not None, "Choose a reel whose loop is known, or type the loop.")
    require_within(NOT_NEGATIVE, "The loop", length)
    return length


@calculation
def weight_in_use(pounds: Mass | None = None, rest: Mass | None = None, logged: Mass | None = None) -> Mass:
    """Weight as shown on the scale, or else as in the log.

    m = m_lb + m_oz, where one left out counts as zero; if both are left out, that in the log. Scales for fleeces show
    pounds and ounces.

    Parameters
    ----------
    pounds : m_lb, the whole pounds
    rest : m_oz, the ounces in addition, or all of it in one unit
    logged : mass in the log

    Returns
    -------
    m, a mass

    Raises
    ------
    ValueError
        No mass is given, or a negative one.

    Notes
    -----
    Valid for what was weighed at once.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(weight_in_use(pounds=Quantity(1, "lb"), rest=Quantity(4, "oz")))
    1.25 pound
    """
    typed = [each for each in (pounds, rest) if each is not None]
    parts = typed or [each for each in (logged,) if each is not None]
    require(len(parts) > 0, "Weigh the skein.")
    for each in parts:
        require_within(NOT_NEGATIVE, "A weight", each)
    return sum(parts[1:], start=parts[0])


@calculation
def wraps_in_use(
    tried: Ratio | None = None, logged: Ratio | None = None, fault: str | None = None, message: str | None = None
) -> Ratio:
    """Wraps tried out, or else those in the log.

    n = tried, or else logged. As long as something is wrong, neither is used.

    Parameters
    ----------
    tried : wraps typed to try them out
    logged : wraps in the log
    fault : what is wrong with the record in the log, if anything is
    message : what is wrong with what was typed, if anything is

    Returns
    -------
    n, a number

    Raises
    ------
    ValueError
        Neither is given, they are negative, or something is wrong with what was typed or with the record.

    Notes
    -----
    Valid for one skein.

    References
    ----------
    Definition of a selection.

    Examples
    --------
    >>> print(wraps_in_use(tried=62, logged=60))
    62
    """
    require(fault is None and message is None, "Correct what is wrong first.")
    wraps = logged if tried is None else tried
    require(wraps is not None, "Type the wraps, or choose a skein of the log.")
    require_within(NOT_NEGATIVE, "The wraps", wraps)
    return wraps


@calculation
def fault_in_log(mark: str, message: str) -> str:
    """What is wrong with a record in the log.

    words = message, where mark = "!". Nothing is calculated from a record that cannot be right.

    Parameters
    ----------
    mark : the mark of the record
    message : what the log says about it

    Returns
    -------
    the message

    Raises
    ------
    ValueError
        The record has another mark: it is only unfinished.

    Notes
    -----
    Valid for a record that occurs once in the log.

    References
    ----------
    Definition of a selection.

    Examples
    --------
    >>> print(fault_in_log("!", "Wraps: type a number."))
    Wraps: type a number.
    """
    require(np.vectorize(lambda each: each == WRONG, otypes=[bool])(mark), "Only faults are reported.")
    return message


@calculation
def wrong_words(
    message: str | None = None,
    fault: str | None = None,
    gross: Mass | None = None,
    net: Mass | None = None,
    unusual: str | None = None,
) -> str:
    """What is wrong with a measurement, in words.

    words = the message about what was typed, or else the fault in the log, or else that the tare is too heavy, or else
    the question about what is unusual. A sentence takes the place of an answer.

    Parameters
    ----------
    message : what is wrong with what was typed
    fault : what is wrong with the record in the log
    gross : weight with bag or tag
    net : weight without
    unusual : the question about what is unlike most skeins

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        Nothing is wrong, or a weight is not a number.

    Notes
    -----
    Valid for one skein.

    References
    ----------
    Definition of a selection.

    Examples
    --------
    >>> print(wrong_words(fault="Wraps: type a number."))
    In the log: Wraps: type a number.
    """
    for each in (gross, net):
        require(each is None or np.isfinite(each), "A weight must be a number.")
    if message is not None:
        return message
    if fault is not None:
        return by_element(lambda each: f"In the log: {each}", fault)
    if gross is not None and net is None:
        return by_element(lambda _: TOO_HEAVY, gross.magnitude)
    require(unusual is not None, "Nothing is wrong.")
    return unusual
