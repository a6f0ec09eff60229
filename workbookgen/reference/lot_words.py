"""What skeins and lots there are, in sentences."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_applicable, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NO_MASS, require_within
from workbookgen.reference.words import percent, said, said_in_all
from workbookgen.units import Length, Mass, Ratio

HARDLY_ANY = 1.5  # grams, "0.1 oz" at most in words; common practice, no source
LEAST_PROMISED, MOST_PROMISED = 0.005, 1000  # of what is left of a lot; less is none of it, and more is no plan


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
    return by_element(
        lambda skeins, weight, unweighed: (
            f"in {_counted(skeins)}, "
            + (
                weight
                if unweighed == "0"
                else "not weighed"
                if unweighed == skeins
                else f"{weight}, {unweighed} not weighed"
            )
        ),
        said(count),
        said_in_all(mass),
        said(unweighed),
    )


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
    return by_element(
        _there,
        said(count),
        said_in_all(length),
        said_in_all(mass),
        said(gone),
        said(aside),
        "" if worth is None else worth,
        said(unweighed),
    )


def _there(skeins: str, length: str, mass: str, gone: str, aside: str, worth: str, unweighed: str) -> str:
    if skeins == "0":
        return "no skeins yet" if gone == "0" else f"no skeins left; {gone} {'is' if gone == '1' else 'are'} gone"
    parts = [f"{_counted(skeins)}, {length}, {'not weighed' if unweighed == skeins else mass}"]
    if unweighed not in ("0", skeins):
        parts.append(f"{unweighed} of them not weighed")
    if aside != "0":
        parts.append("set aside" if skeins == "1" else f"{aside} of them set aside")
    return "; ".join([*parts, *filter(None, [worth]), *([f"{gone} more gone"] if gone != "0" else [])])


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


@calculation
def lot_in_words(yarn: Mass, bought: Mass) -> str:
    """What a lot gives, in words.

    words = y of b: k kept, k = y / b in whole percent. It is the main answer on the page of a lot.

    Parameters
    ----------
    yarn : y, mass of the yarn of the whole lot
    bought : b, mass as bought

    Returns
    -------
    a text such as "46 oz of yarn from 101 oz: 46% kept"

    Raises
    ------
    ValueError
        A negative mass, nothing bought, or a mass too large to state.

    Notes
    -----
    Valid for masses below a million of their unit.

    References
    ----------
    Definition of the share kept.

    Examples
    --------
    >>> print(lot_in_words(Quantity(46, "oz"), Quantity(92, "oz")))
    46 oz of yarn from 92 oz: 50% kept
    """
    require_within(ABOVE_ZERO, "Something must have been bought.", bought)
    return by_element(
        lambda some, all_of_it, kept: f"{some} of yarn from {all_of_it}: {kept} kept",
        said(yarn),
        said(bought),
        percent((yarn / bought).m_as("")),
    )


@calculation
def way_in_words(
    spun: Mass,
    to_come: Mass,
    length: Length | None = None,
    plied: Mass | None = None,
    stage: Ratio = 1.0,
    weighed: Mass | None = None,
    yarn: Mass | None = None,
) -> str:
    """How far a lot is spun, in words.

    words = s spun, p of it in skeins of designs, r still to spin, with its length if that is known: R = r · grist. Once
    all its yarn y was weighed, r is spun too, and in no skein yet; of a bought thread s is used and r is left.

    Parameters
    ----------
    spun : s, mass of the yarn that is in skeins and pieces
    to_come : r, mass of the yarn that the lot can still give
    length : R, length of that, if its grist is known
    plied : p, mass of the lot in skeins of designs, which are not its own alone
    stage : how far the lot was worked when it was bought; 5 is a yarn or thread
    weighed : mass of all its yarn, if that was weighed
    yarn : y, mass of all its yarn

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        A negative amount, or one too large to state.

    Notes
    -----
    Valid for amounts below a million of their unit.

    References
    ----------
    Definition.

    Examples
    --------
    >>> print(way_in_words(Quantity(300, "g"), Quantity(200, "g"), Quantity(400, "m")))
    300 g is spun, 200 g still to spin: about 400 m.
    """
    require_numbers(spun, to_come, length, plied, stage, weighed, yarn)
    require_applicable(weighed is None or yarn is not None, "Of a lot that was weighed, state its yarn.")

    def words(done: str, some: str, left: str, reach: str, bought: bool) -> str:
        used, rest = ("is used", "is left") if bought and weighed is None else ("is spun", "still to spin")
        rest = rest if weighed is None else "of it in no skein yet"
        of_it = f", {some} of it in skeins of designs" if some else ""
        return f"{done} {used}{of_it}, {left} {rest}" + (f": about {reach}." if reach else ".")

    def if_any(text: str, grams: float) -> str:
        return text if grams > HARDLY_ANY else ""

    none = by_element(lambda _: "", spun.magnitude)
    in_skeins, in_all = said(spun), none if yarn is None else said(yarn)
    in_designs = none if plied is None else by_element(if_any, said(plied), plied.m_as("g"))
    reach = none if length is None else said(length)
    done = in_skeins if weighed is None else in_all
    return by_element(words, done, in_designs, said(to_come), reach, np.asarray(stage) > 4)


@calculation
def still_enough(enough: str, stage: Ratio = 1.0, promised: Ratio | None = None) -> str:
    """What the rest of a lot is enough for, in a sentence or two.

    text = "What is still to spin is" + what it is enough for; of a bought thread, what is left; and what projects take
    of it. It is the same answer as for a skein, given for yarn to come.

    Parameters
    ----------
    enough : what it is enough for, and what not
    stage : how far the lot was worked when it was bought; 5 is a yarn or thread
    promised : share of it that all projects take, if it is known

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A blank text, or a negative share.

    Notes
    -----
    Valid for a lot of which something is left.

    References
    ----------
    Lengths of the table: common practice, no source.

    Examples
    --------
    >>> print(still_enough("usually enough for hat (grown), not for scarf", promised=0.93))
    What is still to spin is usually enough for hat (grown), not for scarf. Projects take 93% of it.
    """
    require(by_element(lambda each: bool(str(each)), enough), "There is nothing to say.")
    require_numbers(stage, promised)
    taken = 0.0 if promised is None else promised
    return by_element(_still_enough, enough, np.asarray(stage) > 4, taken, percent(taken))


def _still_enough(enough: str, bought: bool, promised: float, in_percent: str) -> str:
    projects = f" Projects take {in_percent} of it." if LEAST_PROMISED <= promised < MOST_PROMISED else ""
    return f"What is {'left' if bought else 'still to spin'} is {enough}.{projects}"
