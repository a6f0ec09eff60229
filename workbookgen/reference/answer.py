"""The answer to "is it enough?", in sentences that never contradict their numbers.

They state what there is, what it takes and how sure that is; `advice` states what to get.
Amounts are stated in the unit in which they are given.
"""

from math import ceil

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import NO_LENGTH, NOT_NEGATIVE, PART, require_within
from workbookgen.reference.words import rounded, said
from workbookgen.units import Length, Mass, Quantity, Ratio

YES = 0.5  # a project without yarn has 1, any other 0: whatever is above this is 1
LIKELY, TOSS_OF_A_COIN = 2 / 3, 0.5
LEAST_TOLD = 0.5  # meters: less is left unsaid
SAYABLE = Quantity(9e5, "m")
TOO_HEAVY = Quantity(9e5, "g")
NO_YARN = "no yarn yet"
IN_SHORT = {"enough": "Enough", "in doubt": "In doubt"}


@calculation
def chance_words(
    chance: Ratio, certainty: Ratio | None = None, more: Length | None = None, yarnless: Ratio = 0.0
) -> str:
    """A chance, in words.

    p in whole percent where 2 ≤ p ≤ 98, else over 98% or under 2%. No chance is known better than that. Where it is
    said what to get to be surer, it is never rounded up to the chance asked for.

    Parameters
    ----------
    chance : p, from 0 to 1
    certainty : the chance that one asks for
    more : what to get to be that sure, if that is known
    yarnless : 1 for a project that has no yarn yet, else 0

    Returns
    -------
    a text such as "84%"

    Raises
    ------
    ValueError
        A chance outside 0 to 1, or a project without yarn: there is nothing that might be enough.

    Notes
    -----
    Valid for a chance that rests on estimated uncertainties; halves round up.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(chance_words(0.84))
    84%
    """
    require_numbers(chance, certainty, more)
    require_within(PART, "A chance", chance)
    require(np.asarray(yarnless) < YES, "There is no yarn yet.")
    if certainty is None or more is None:
        return by_element(_chance, chance)
    return by_element(_chance, chance, certainty, more.m_as("m"))


def _chance(chance, certainty=0.0, more=0.0) -> str:
    if chance > 0.98:
        return "over 98%"
    if chance < 0.02:
        return "under 2%"
    is_short = more >= LEAST_TOLD and chance < certainty
    below = ceil(round(float(certainty) * 100, 9)) - 1
    return f"{below}%" if is_short and round(float(chance) * 100, 9) >= below + 0.5 else rounded(chance * 100, 0) + "%"


@calculation
def not_below_nothing(amount: Length) -> Length:
    """An amount as people state it.

    h = a if a > 0, else 0. There is never less than none.

    Parameters
    ----------
    amount : a, below zero where some is lacking

    Returns
    -------
    h, a length

    Raises
    ------
    ValueError
        A length that is not a number.

    Notes
    -----
    Valid for any length.

    References
    ----------
    Definition of the maximum.

    Examples
    --------
    >>> print(not_below_nothing(Quantity(-20, "m")))
    0.0 meter
    """
    require_numbers(amount)
    return np.maximum(amount, NO_LENGTH)


@calculation
def answer(
    there: Length | None = None,
    need: Length | None = None,
    spare: Length | None = None,
    over: Length | None = None,
    lacking: Length | None = None,
    least: Length | None = None,
    most: Length | None = None,
    chance_words: str | None = None,
    free: Length | None = None,
    used: Mass | None = None,
    have: Length | None = None,
    yarnless: Ratio = 0.0,
) -> str:
    """Whether it is enough, in a sentence.

    s = H - N, stated with both, with the chance, and with what is free. Number and words stand together, so a chance
    under one half is never called enough. Once it is known what was used, that is stated instead; and while no yarn is
    known, only what it takes.

    Parameters
    ----------
    there : H, what there is and will be; none where others need more than that
    need : N, what the piece takes
    spare : s, what is over, below zero when some is lacking
    over : s, or nothing when some is lacking
    lacking : -s, or nothing when it is enough
    least : L₁, what there very likely is at least
    most : L₂, what there very likely is at most
    chance_words : the chance, in words, if it is known
    free : length in skeins of this yarn that belong to no open project
    used : mass of yarn that the finished piece took
    have : that, less what others lack of its lots: where it is less, what is short is short for all of them
    yarnless : 1 for a project that has no yarn yet, else 0

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A length that is negative or too large to state, a negative mass, or an unfinished piece of which it is
        not known what there is and what it takes.

    Notes
    -----
    Valid for lengths below 900 km, stated in the unit in which they are given; less than half a meter free is left
    unsaid.

    References
    ----------
    Definition of the surplus.

    Examples
    --------
    >>> print(answer(Quantity(500, "yd"), Quantity(400, "yd"), spare=Quantity(100, "yd"), over=Quantity(100, "yd"),
    ...     lacking=Quantity(0, "yd"), chance_words="95%"))
    There is 500 yd; it takes 400 yd: 100 yd over. Chance that it is enough: 95%.
    """
    require_numbers(there, need, spare, over, lacking, least, most, free, used, have, yarnless)
    for length in (most, free):
        require(length is None or length < SAYABLE, "That is too much to put into a few words.")
    if used is not None:
        require_within(NOT_NEGATIVE, "A piece cannot have used a negative amount.", used)
        require(used < TOO_HEAVY, "That is too much to put into a few words.")
        for length in filter(lambda each: each is not None, (there, need, over, lacking, least)):
            said(length)  # what cannot be said of it unfinished is as hard to believe of it finished
        return "It took " + said(used) + " of yarn."
    for length in (there, need, spare, over, lacking):
        require(length is not None, "Of an unfinished piece it must be known what there is and what it takes.")
    it_takes, over_or_short = said(need), _over_or_short(spare, over, lacking, there, have)
    there_is = "There is " + said(there) + _very_likely(least, most)
    chance = "" if chance_words is None else " Chance that it is enough: " + chance_words + "."
    known = there_is + "; it takes " + it_takes + ": " + over_or_short + "." + chance + _in_free_skeins(free)
    unknown = "It takes " + it_takes + ", and no yarn for it is known yet."
    return by_element(lambda none, unknown, known: unknown if none > YES else known, yarnless, unknown, known)


def _over_or_short(spare: Length, over: Length, lacking: Length, there: Length, have: Length | None) -> str:
    lacked_by_others = 0.0 if have is None else (there - have).m_as("m")
    short = said(lacking) + _where(lacked_by_others > LEAST_TOLD, " short, for all projects on its lots", " short")
    return _where(spare.magnitude >= 0, said(over) + " over", short)


def _very_likely(least: Length | None, most: Length | None) -> str:
    """Of nothing there is no range."""
    if least is None or most is None:
        return ""
    return _where(most.m_as("m") >= LEAST_TOLD, ", very likely " + said(least) + " to " + said(most))


def _in_free_skeins(free: Length | None) -> str:
    if free is None:
        return ""
    another = " Another " + said(free) + " lie in skeins of its yarn that belong to no open project."
    return _where(free.m_as("m") > LEAST_TOLD, another)


def _where(condition, text: str, otherwise: str = "") -> str:
    """One of two texts, single or in arrays."""
    return by_element(lambda holds, one, other: one if holds else other, condition, text, otherwise)


@calculation
def verdict(certainty: Ratio, chance: Ratio | None = None, used: Mass | None = None, yarnless: Ratio = 0.0) -> str:
    """Whether it is enough, in one or two words.

    enough where p ≥ the certainty asked for, likely enough where p ≥ 2/3, in doubt where p ≥ 0.5, else short; finished
    once it is known what was used, and no yarn yet while none is known. The words follow the chance and never
    contradict it: a toss of a coin is not likely.

    Parameters
    ----------
    certainty : the chance that was asked for
    chance : p, the chance that it is enough; of a finished piece it need not be known
    used : mass of yarn that the finished piece took
    yarnless : 1 for a project that has no yarn yet, else 0

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A chance or a certainty outside 0 to 1, a negative mass, or an unfinished piece without a chance.

    Notes
    -----
    Valid for a chance that rests on estimated uncertainties.

    References
    ----------
    Likely from two thirds on: guidance of the Intergovernmental Panel on Climate Change for its authors, 2010 (from
    memory). The other words: common practice, no source.

    Examples
    --------
    >>> print(verdict(0.9, chance=0.84))
    likely enough
    """
    require_numbers(chance, certainty, used, yarnless)
    if chance is not None:
        require_within(PART, "A chance", chance)
    require_within(PART, "A certainty", certainty)
    if used is not None:
        require_within(NOT_NEGATIVE, "A piece cannot have used a negative amount.", used)
        return by_element(lambda _: "finished", used.magnitude)
    require(chance is not None, "Of an unfinished piece the chance must be known.")
    return by_element(_in_a_word, chance, certainty, yarnless)


def _in_a_word(chance: float, certainty: float, yarnless: float) -> str:
    """The first of these cases that holds."""
    if yarnless > YES:
        return NO_YARN
    if chance >= certainty:
        return "enough"
    if chance >= LIKELY:
        return "likely enough"
    if chance >= TOSS_OF_A_COIN:
        return "in doubt"
    return "short"


@calculation
def lacking(spare: Length) -> Length:
    """What is lacking.

    l = -s if s < 0, else 0. People state how much is short, not a negative surplus.

    Parameters
    ----------
    spare : s, what is over, below zero when some is lacking

    Returns
    -------
    l, a length

    Raises
    ------
    ValueError
        A length that is not a number.

    Notes
    -----
    Valid for any length.

    References
    ----------
    Definition of the surplus.

    Examples
    --------
    >>> print(lacking(Quantity(-20, "m")))
    20.0 meter
    """
    require_numbers(spare)
    return abs(spare) * np.where(spare < Quantity(0.0, "m"), 1.0, 0.0)[()]


@calculation
def in_short(verdict: str, spare: Length | None = None, lacking: Length | None = None) -> str:
    """Whether it is enough, and by how much, in a few words.

    "Enough", "Likely enough" or "In doubt" by the verdict, with s over; "Short by" l where s < 0; "Finished" once it is
    known what was used, and "No yarn yet"; l = -s. It is the main answer on the page of a project.

    Parameters
    ----------
    verdict : the verdict, in a word
    spare : s, what is over, below zero when some is lacking; of a finished piece it need not be known
    lacking : l, what is lacking, else 0

    Returns
    -------
    a text such as "Enough: 283 yd over"

    Raises
    ------
    ValueError
        A length that is not a number or is too large to state, or is not known of an unfinished piece.

    Notes
    -----
    Valid for lengths below 900 km.

    References
    ----------
    Definition of the surplus.

    Examples
    --------
    >>> print(in_short("short", Quantity(-20, "yd"), Quantity(20, "yd")))
    Short by 20 yd
    """
    require_numbers(spare, lacking)
    if spare is None or lacking is None:
        require(by_element(lambda kind: kind == "finished", verdict), "What is over must be known.")
        return by_element(lambda _: "Finished", verdict)
    require(abs(spare) < SAYABLE, "That is too much to put into a few words.")

    def words(kind: str, rest: float, short: str, more: str) -> str:
        if kind == "finished":
            return "Finished"
        if kind == NO_YARN:
            return "No yarn yet"
        if rest < 0:
            return f"Short by {short}"
        return f"{IN_SHORT.get(kind, 'Likely enough')}: {more} over"

    return by_element(words, verdict, spare.magnitude, said(lacking), said(abs(spare)))
