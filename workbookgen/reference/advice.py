"""What to get of which strand to be as sure as the spinner wants to be, in a sentence.

Amounts are stated in the unit in which they are given.
"""

import numpy as np

from workbookgen.reference.answer import LIKELY, YES
from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import NO_MASS, NOT_NEGATIVE, PART, require_within
from workbookgen.reference.words import said
from workbookgen.units import Length, Mass, Quantity, Ratio

TOO_HEAVY = Quantity(9e5, "g")
LEAST_TOLD = Quantity(1.5, "g")  # of a strand: less is nothing on a kitchen scale
LEAST_MORE = 0.5  # meters: less is none
MOST_BALLS = 9e5
FREE_FIRST = "Are the skeins of no open project for it? Choose it beside them, at For project."
AS_IT_IS, WITH_LESS = ("it is likely enough as it is.", "make the piece smaller, or work part of it in another yarn.")


@calculation
def advice(
    more: Length,
    certainty: Ratio,
    used: Mass | None = None,
    design: str | None = None,
    buy_1: Mass | None = None,
    name_1: str | None = None,
    form_1: str | None = None,
    balls_1: Ratio | None = None,
    buy_2: Mass | None = None,
    name_2: str | None = None,
    form_2: str | None = None,
    balls_2: Ratio | None = None,
    buy_3: Mass | None = None,
    name_3: str | None = None,
    form_3: str | None = None,
    balls_3: Ratio | None = None,
    buy_4: Mass | None = None,
    name_4: str | None = None,
    form_4: str | None = None,
    balls_4: Ratio | None = None,
    shared: Ratio | None = None,
    yarnless: Ratio = 0.0,
    free: Length | None = None,
) -> str:
    """What to get to be as sure as you want to be, in a sentence.

    nothing where E = 0; else E, and for each strand the number of balls, or its weight and the form in which it is
    bought. That is what to ask for in the shop, or of the shepherd. Where k > 0, each of the projects that share its
    lots is told the whole of what they lack together, so that it is to be got only once. Who has skeins of the yarn
    that belong to no open project is first asked whether they are for this one.

    Parameters
    ----------
    more : E, additional length to have
    certainty : p, the chance that was asked for
    used : mass of yarn that the finished piece took
    design : the design, if the yarn has one: its threads come on spools
    buy_1, buy_2, buy_3, buy_4 : weight to get, of each strand
    name_1, name_2, name_3, name_4 : what each strand is called
    form_1, form_2, form_3, form_4 : form in which each strand's lot was bought
    balls_1, balls_2, balls_3, balls_4 : number of balls to get, of each strand that is bought in balls
    shared : k, number of strands whose lots serve other projects too
    yarnless : 1 for a project that has no yarn yet, and so needs all of it and not more of it; else 0
    free : length in skeins of this yarn that belong to no open project

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        Amounts that are negative or too large to state, or a strand to get that has no name.

    Notes
    -----
    Valid for less than 900 km and 900 kg, stated in the unit in which they are given; less than half a meter or 1.5 g
    is left unsaid.

    References
    ----------
    Definition of the amount to have.

    Examples
    --------
    >>> print(advice(Quantity(100, "yd"), 0.95, buy_1=Quantity(2, "oz"), name_1="Aster", form_1="washed fiber"))
    To be 95% sure, get 100 yd more: 2 oz of Aster (washed fiber).
    """
    strands = (
        (buy_1, name_1, form_1, balls_1),
        (buy_2, name_2, form_2, balls_2),
        (buy_3, name_3, form_3, balls_3),
        (buy_4, name_4, form_4, balls_4),
    )
    require_numbers(
        more, certainty, used, shared, yarnless, free, *(each for buy, _, _, balls in strands for each in (buy, balls))
    )
    amount, to_get = said(more), [_to_get(*strand, design) for strand in strands]
    if used is not None:
        require_within(NOT_NEGATIVE, "A piece cannot have used a negative amount.", used)
        return by_element(lambda _: "Nothing more to do.", amount)
    owned = 0.0 if free is None else free.m_as("m")
    return by_element(
        _advice, more.m_as("m"), amount, certainty, 0.0 if shared is None else shared, yarnless, owned, *to_get
    )


def _to_get(buy: Mass | None, name: str | None, form: str | None, balls: Ratio | None, design: str | None) -> str:
    """What to get of a strand: nothing, or a number of balls or spools, or a weight in the form it is bought in."""
    if balls is not None:
        require(balls < MOST_BALLS, "That is too much to put into a few words.")
    if buy is None:
        return ""
    require((buy >= NO_MASS) & (buy < TOO_HEAVY), "That is too much to put into a few words.")
    require((buy < LEAST_TOLD) | (name is not None), "A strand to get needs a name.")
    name = "" if name is None else name
    if balls is None:
        told = said(buy) + " of " + name + ("" if form is None else " (" + form + ")")
    else:
        told = _counted(balls, "ball" if design is None else "spool") + " of " + name
    return by_element(lambda is_told, words: words if is_told else "", buy >= LEAST_TOLD, told)


def _counted(balls: Ratio, one: str) -> str:
    return by_element(lambda number, said: f"{said} {one}{'' if number == 1 else 's'}", balls, said(balls))


def _advice(
    more: float, amount: str, certainty: float, shared: float, yarnless: float, free: float, *to_get: str
) -> str:
    if more < LEAST_MORE:
        return "That is as sure as you ask."
    told = "; ".join(filter(None, to_get))
    sure = f"{np.floor(round(certainty * 100, 9) * 10 + 0.5) / 10:g}%"
    once = " Get it once: other projects draw on the same lots." if shared > 0 else ""
    besides = "" if yarnless > YES else " more"
    begun = f"{FREE_FIRST} Otherwise, to" if free > LEAST_MORE else "To"
    return f"{begun} be {sure} sure, get {amount}{besides}{': ' if told else ''}{told}.{once}"


@calculation
def instead(more: Length, chance: Ratio, yarnless: Ratio = 0.0) -> str:
    """What to do where there is no more of the yarn.

    Where E ≥ 0.5 m: that it is likely enough if p ≥ 2/3, else how to make do with less. Whether more can be had, no
    planner knows: a fleece is one of a kind, and so is what was spun from it.

    Parameters
    ----------
    more : E, additional length to have
    chance : p, the chance that there is enough without it; a finished piece has none
    yarnless : 1 for a project that has no yarn yet, else 0

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A chance outside 0 to 1, nothing to get, or a project that has no yarn yet.

    Notes
    -----
    Valid for half a meter and more.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(instead(Quantity(20, "m"), chance=0.4))
    If there is no more of it: make the piece smaller, or work part of it in another yarn.
    """
    require_numbers(more, chance, yarnless)
    require_within(PART, "A chance", chance)
    require(more.m_as("m") >= LEAST_MORE, "There is nothing to get.")
    require(np.asarray(yarnless) < YES, "There is no yarn yet.")
    return by_element(lambda p: f"If there is no more of it: {AS_IT_IS if p >= LIKELY else WITH_LESS}", chance)
