"""The way of one lot in sentences: what it gives, how far it is spun, and what its rest is enough for."""

import numpy as np

from workbookgen.reference.calculation import (
    by_element,
    calculation,
    quotient,
    require,
    require_applicable,
    require_numbers,
)
from workbookgen.reference.limits import ABOVE_ZERO, require_within
from workbookgen.reference.words import percent, said
from workbookgen.units import Length, Mass, Quantity, Ratio

HARDLY_ANY = Quantity(1.5, "g")  # "0.1 oz" at most in words; common practice, no source
CLEARLY_ANOTHER = 0.1  # of the length wanted: more than a plan is usually off by; common practice, no source
LEAST_PROMISED, MOST_PROMISED = 0.005, 1000  # of what is left of a lot; less is none of it, and more is no plan


@calculation
def lot_in_words(yarn: Mass, bought: Mass, stage: Ratio = 1.0) -> str:
    """What a lot gives, in words.

    words = y of b: k kept, k = y / b in whole percent; all of it where y is more; b of a bought yarn. It is the
    main answer on the page of a lot.

    Parameters
    ----------
    yarn : y, mass of the yarn of the whole lot
    bought : b, mass as bought
    stage : how far the lot was worked when it was bought; 5 is a yarn or thread

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
    require_numbers(stage)
    require_within(ABOVE_ZERO, "Something must have been bought.", bought)
    kept = np.round((yarn / bought).m_as(""), 9)
    return by_element(_of_lot, said(yarn), said(bought), percent(kept), kept > 1, np.asarray(stage) > 4)


def _of_lot(some: str, bought: str, kept: str, gained: bool, is_yarn: bool) -> str:
    if is_yarn:
        return f"{bought} of yarn, as bought"
    share = "all kept; in damper air fiber weighs more" if gained else f"{kept} kept"
    return f"{some} of yarn from {bought}: {share}"


@calculation
def way_in_words(
    spun: Mass,
    to_come: Mass,
    length: Length | None = None,
    plied: Mass | None = None,
    stage: Ratio = 1.0,
    weighed: Mass | None = None,
    yarn: Mass | None = None,
    as_spun: Length | None = None,
) -> str:
    """How far a lot is spun, in words.

    words = s spun, p of it in skeins of designs, r still to spin, with its length if that is known: R = r · grist
    wanted, and S = r · grist of its skeins where that is off it by more than a tenth. Once all its yarn y was weighed,
    r is spun too, and in no skein yet; of a bought thread s is used and r is left. Up to 1.5 g is nothing.

    Parameters
    ----------
    spun : s, mass of the yarn that is in skeins and pieces
    to_come : r, mass of the yarn that the lot can still give
    length : R, length of that, if its grist is known
    plied : p, mass of the lot in skeins of designs, which are not its own alone
    stage : how far the lot was worked when it was bought; 5 is a yarn or thread
    weighed : mass of all its yarn, if that was weighed
    yarn : y, mass of all its yarn
    as_spun : S, length of what is to come if it is spun as the skeins so far, if there are any

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
    300 g is spun, 200 g still to spin: about 400 m at the grist wanted.
    """
    require_numbers(spun, to_come, length, plied, stage, weighed, yarn, as_spun)
    require_applicable(weighed is None or yarn is not None, "Of a lot that was weighed, state its yarn.")

    def words(done: str, some: str, left: str, reach: str, otherwise: str, bought: bool) -> str:
        is_used, aim = bought and weighed is None, "" if bought else f" at the grist wanted{otherwise}"
        of_it = f", {some} of it in skeins of designs" if some else ""
        rest = _rest(left, is_used, weighed is not None) + (f": about {reach}{aim}." if left and reach else ".")
        verb, yet = "used" if is_used else "spun", "" if done else " yet"
        return f"{done or 'Nothing'} is {verb}{yet}{of_it}, {rest}"

    def if_any(text: str, grams: float) -> str:
        return text if grams > HARDLY_ANY.m_as("g") else ""

    none = by_element(lambda _: "", spun.magnitude)
    in_skeins = by_element(lambda text, some: text if some > 0 else "", said(spun), spun.magnitude)
    in_all = none if yarn is None else said(yarn)
    in_designs = none if plied is None else by_element(if_any, said(plied), plied.m_as("g"))
    reach = none if length is None else said(length)
    done = in_skeins if weighed is None else in_all
    left = by_element(if_any, said(to_come), to_come.m_as("g"))
    otherwise = none
    if length is not None and as_spun is not None:
        otherwise = by_element(_as_spun, said(as_spun), quotient(as_spun.m_as("m"), length.m_as("m")))
    return by_element(words, done, in_designs, left, reach, otherwise, np.asarray(stage) > 4)


def _as_spun(length: str, times: float) -> str:
    """The length of the rest by the skeins so far, where they are not as they were wanted."""
    return f", {length} at that of its skeins" if abs(round(times - 1, 9)) > CLEARLY_ANOTHER else ""


def _rest(left: str, is_used: bool, is_weighed: bool) -> str:
    """What there is of a lot besides, or that there is nothing."""
    if is_weighed:
        return f"{left} of it in no skein yet" if left else "nothing is left outside skeins"
    if is_used:
        return f"{left} is left" if left else "nothing is left"
    return f"{left} still to spin" if left else "nothing is left to spin"


@calculation
def still_enough(to_come: Mass, enough: str, stage: Ratio = 1.0, promised: Ratio | None = None) -> str:
    """What the rest of a lot is enough for, in a sentence or two.

    text = "What is still to spin is" + what it is enough for; of a bought thread, what is left; and what projects take
    of it, with a word where that is over 100%. It is the same answer as for a skein, given for yarn to come.

    Parameters
    ----------
    to_come : mass of the rest
    enough : what it is enough for, and what not
    stage : how far the lot was worked when it was bought; 5 is a yarn or thread
    promised : share of it that all projects take, if it is known

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A blank text, a negative share, or a rest of up to 1.5 g: that is nothing.

    Notes
    -----
    Valid for a lot of which something is left.

    References
    ----------
    Lengths of the table: common practice, no source.

    Examples
    --------
    >>> print(still_enough(Quantity(85, "g"), "usually enough for hat (grown), not for scarf", promised=0.93))
    What is still to spin is usually enough for hat (grown), not for scarf. Projects take 93% of it.
    """
    require(by_element(lambda each: bool(str(each)), enough), "There is nothing to say.")
    require_numbers(to_come, stage, promised)
    require(to_come > HARDLY_ANY, "Nothing is left.")
    taken = 0.0 if promised is None else promised
    return by_element(_still_enough, enough, np.asarray(stage) > 4, taken, percent(taken))


def _still_enough(enough: str, bought: bool, promised: float, in_percent: str) -> str:
    too_much = ", which is more than there is" if np.floor(round(promised * 100, 9) + 0.5) > 100 else ""
    projects = f" Projects take {in_percent} of it{too_much}." if LEAST_PROMISED <= promised < MOST_PROMISED else ""
    return f"What is {'left' if bought else 'still to spin'} is {enough}.{projects}"


@calculation
def by_samples(handfuls: Ratio, samples: Ratio) -> str:
    """By how many samples of its own a lot's yarn is expected, where there are several.

    text = "Its yield is the mean of h handfuls" where h > 1, "Its loss in spinning is the mean of s samples" where
    s > 1, and how to leave one out. A lot has no cell that says which sample is the one: all of them count, and alike.

    Parameters
    ----------
    handfuls : h, washed handfuls that tell its yield
    samples : s, samples that tell its loss in spinning

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        Fewer than two of each, or a negative number.

    Notes
    -----
    Valid for samples of one lot.

    References
    ----------
    Definition of the mean.

    Examples
    --------
    >>> print(by_samples(1, 2))
    Its loss in spinning is the mean of 2 samples. To leave one out, empty its lot on the sheet Samples.
    """
    require((np.asarray(handfuls) > 1) | (np.asarray(samples) > 1), "There is no mean of one.")
    return by_element(_by_samples, said(handfuls), said(samples), np.asarray(handfuls) > 1, np.asarray(samples) > 1)


def _by_samples(handfuls: str, samples: str, are_washed: bool, are_spun: bool) -> str:
    means = [
        *([f"Its yield is the mean of {handfuls} handfuls."] if are_washed else []),
        *([f"Its loss in spinning is the mean of {samples} samples."] if are_spun else []),
    ]
    return " ".join([*means, "To leave one out, empty its lot on the sheet Samples."])
