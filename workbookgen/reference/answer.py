"""The answer to "is it enough?", in sentences that never contradict their numbers.

They state what there is, what it takes and how sure that is; `advice` states what to get.
Amounts are stated in the unit in which they are given.
"""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import NO_LENGTH, NOT_NEGATIVE, PART, require_within
from workbookgen.reference.words import rounded, said
from workbookgen.units import Length, Mass, Quantity, Ratio

SOME = 0.5  # of a project without yarn, which is 1, and 0 of others
TRACE = 1e-9  # share by which a length may differ from itself, where a program stored the one and worked out the other
SAYABLE = Quantity(9e5, "m")
TOO_HEAVY = Quantity(9e5, "g")
NO_YARN = "no yarn yet"
IN_SHORT = {"enough": "Enough", "in doubt": "In doubt"}


@calculation
def scarcest(
    least: Length,
    come_1: Length,
    name_1: str,
    come_2: Length | None = None,
    name_2: str | None = None,
    come_3: Length | None = None,
    name_3: str | None = None,
    come_4: Length | None = None,
    name_4: str | None = None,
) -> str:
    """The strand that runs out first.

    name i, where L i = L. It limits the yarn, so it is the one to get more of.

    Parameters
    ----------
    least : L, length for which the scarcest strand lasts
    come_1, come_2, come_3, come_4 : L i, length for which each strand lasts
    name_1, name_2, name_3, name_4 : what each strand is called

    Returns
    -------
    a name

    Raises
    ------
    ValueError
        A strand without a name.

    Notes
    -----
    Valid for a length that belongs to one of the strands; of two equal ones the first is named.

    References
    ----------
    Definition of the minimum.

    Examples
    --------
    >>> print(scarcest(Quantity(300, "m"), Quantity(400, "m"), "gray wool", Quantity(300, "m"), "silk thread"))
    silk thread
    """
    require_numbers(least, come_1, come_2, come_3, come_4)
    strands = [(come_1, name_1), (come_2, name_2), (come_3, name_3), (come_4, name_4)]
    there = [(come, name) for come, name in strands if come is not None]
    for _, name in there:
        require(name is not None, "Every strand needs a name.")
    goal = least.m_as("m")
    shape = np.shape(goal)
    lengths = [np.broadcast_to(come.m_as("m"), shape) for come, _ in there]
    names = [np.broadcast_to(np.asarray(name, dtype=object), shape) for _, name in there]
    found = np.broadcast_to(np.asarray(names[-1], dtype=object), shape)
    for length, name in reversed(list(zip(lengths[:-1], names[:-1], strict=True))):
        found = np.where(length - goal <= abs(goal) * TRACE, name, found)
    return str(found[()]) if shape == () else found


@calculation
def chance_words(chance: Ratio, yarnless: Ratio = 0.0) -> str:
    """A chance, in words.

    p in whole percent where 2 ≤ p ≤ 98, else over 98% or under 2%. No chance is known better than that.

    Parameters
    ----------
    chance : p, from 0 to 1
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
    require_numbers(chance)
    require_within(PART, "A chance", chance)
    require(np.asarray(yarnless) < SOME, "There is no yarn yet.")
    return by_element(_chance, chance)


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
    there: Length,
    need: Length,
    spare: Length,
    over: Length,
    lacking: Length,
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
    free : length in skeins of this yarn that belong to no project
    used : mass of yarn that the finished piece took
    have : that, less what others lack of its lots: where it is less, what is short is short for all of them
    yarnless : 1 for a project that has no yarn yet, else 0

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A length that is negative or too large to state, or a negative mass.

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
    parts = [said(there), said(need), spare.magnitude, said(over), said(lacking)]
    if used is not None:
        require_within(NOT_NEGATIVE, "A piece cannot have used a negative amount.", used)
        require(used < TOO_HEAVY, "That is too much to put into a few words.")
        return by_element(lambda took, *_: f"It took {took} of yarn.", said(used), *parts)
    known = least is not None and most is not None
    parts += [
        said(least) if known else "",
        said(most) if known else "",
        most.m_as("m") if known else 0.0,
        "" if chance_words is None else chance_words,
    ]
    parts += [0.0, ""] if free is None else [free.m_as("m"), said(free)]
    return by_element(_answer, yarnless, *parts, 0.0 if have is None else (there - have).m_as("m"))


def _answer(
    yarnless, there, need, spare, over, lacking, least, most, meters, chance, free, in_skeins, of_others
) -> str:
    if yarnless > SOME:
        return f"It takes {need}, and no yarn for it is known yet."
    between = f", very likely {least} to {most}" if meters >= 0.5 else ""
    together = ", for all projects on its lots" if of_others > 0.5 else ""
    rest = f"{over} over" if spare >= 0 else f"{lacking} short{together}"
    sure = f" Chance that it is enough: {chance}." if chance else ""
    another = f" Another {in_skeins} lie in skeins that belong to no project." if free > 0.5 else ""
    return f"There is {there}{between}; it takes {need}: {rest}.{sure}{another}"


@calculation
def verdict(chance: Ratio, certainty: Ratio, used: Mass | None = None, yarnless: Ratio = 0.0) -> str:
    """Whether it is enough, in one or two words.

    enough where p ≥ the certainty asked for, likely enough where p ≥ 2/3, in doubt where p ≥ 0.5, else short; finished
    once it is known what was used, and no yarn yet while none is known. The words follow the chance and never
    contradict it: a toss of a coin is not likely.

    Parameters
    ----------
    chance : p, the chance that it is enough
    certainty : the chance that was asked for
    used : mass of yarn that the finished piece took
    yarnless : 1 for a project that has no yarn yet, else 0

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A chance or a certainty outside 0 to 1, or a negative mass.

    Notes
    -----
    Valid for a chance that rests on estimated uncertainties.

    References
    ----------
    Likely from two thirds on: guidance of the Intergovernmental Panel on Climate Change for its authors, 2010 (from
    memory). The other words: common practice, no source.

    Examples
    --------
    >>> print(verdict(0.84, certainty=0.9))
    likely enough
    """
    require_numbers(chance, certainty, used, yarnless)
    require_within(PART, "A chance", chance)
    require_within(PART, "A certainty", certainty)
    if used is not None:
        require_within(NOT_NEGATIVE, "A piece cannot have used a negative amount.", used)
        return by_element(lambda _: "finished", chance)
    return by_element(
        lambda none, p, asked: (
            NO_YARN
            if none > SOME
            else "enough"
            if p >= asked
            else "likely enough"
            if p >= 2 / 3
            else "in doubt"
            if p >= 0.5
            else "short"
        ),
        yarnless,
        chance,
        certainty,
    )


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
def in_short(verdict: str, spare: Length, lacking: Length) -> str:
    """Whether it is enough, and by how much, in a few words.

    "Enough", "Likely enough" or "In doubt" by the verdict, with s over; "Short by" l where s < 0; "Finished" once it is
    known what was used, and "No yarn yet"; l = -s. It is the main answer on the page of a project.

    Parameters
    ----------
    verdict : the verdict, in a word
    spare : s, what is over, below zero when some is lacking
    lacking : l, what is lacking, else 0

    Returns
    -------
    a text such as "Enough: 283 yd over"

    Raises
    ------
    ValueError
        A length that is not a number or is too large to state.

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
    require(abs(spare) < SAYABLE, "That is too much to put into a few words.")
    over = abs(spare) * np.where(spare >= Quantity(0.0, "m"), 1.0, 0.0)[()]

    def words(kind: str, rest: float, short: str, more: str) -> str:
        if kind == "finished":
            return "Finished"
        if kind == NO_YARN:
            return "No yarn yet"
        return f"Short by {short}" if rest < 0 else f"{IN_SHORT.get(kind, 'Likely enough')}: {more} over"

    return by_element(words, verdict, spare.magnitude, said(lacking), said(over))


def _chance(chance) -> str:
    return "over 98%" if chance > 0.98 else "under 2%" if chance < 0.02 else rounded(chance * 100, 0) + "%"
