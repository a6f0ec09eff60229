"""Dividing what several people bought together: weights to the scale's step, money to the coin, and nothing over.

All is counted in whole steps and whole coins, so that the parts add up to the whole to the last
one. Everyone first gets the whole steps in the exact share; the steps that are left go, one each, to the
largest remainders (Hamilton's method), and of equal ones to the first in the list.
"""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.law import by_element, law, require, require_numbers
from workbookgen.texts import folded, is_blank
from workbookgen.units import Mass, Quantity, Ratio, Some

NO_MASS = Quantity(0.0, "g")
MILLIONTH = 1_000_000
LINES = 1_000  # more than the list has


@law
def line(name: str, names: Sequence[str]) -> Ratio:
    """In which line of the list a member stands.

    l = the place of the name, from 1. Of equal remainders the first in the list comes first.

    Parameters
    ----------
    name : the name
    names : the names listed, a blank one where a line is empty

    Returns
    -------
    l, a whole number

    Raises
    ------
    ValueError
        A blank name, or one that does not stand in the list once.

    Notes
    -----
    Valid for names that differ; upper and lower case are alike.

    References
    ----------
    Definition of a list.
    """
    listed = [folded(str(each)) for each in names]

    def place(each: str) -> float:
        require(not is_blank(str(each)), "The name is blank: give one.")
        require(listed.count(folded(str(each))) == 1, "The name does not stand in the list once.")
        return float(listed.index(folded(str(each))) + 1)

    places = by_element(place, name)
    return places.astype(float) if np.ndim(places) else places


@law
def whole_steps(amount: Some, step: Some) -> Ratio:
    """How many whole steps there are in an amount.

    n = ⌊a / s⌋. What is less than a step of the scale cannot be weighed out, and what is less than the coin cannot be paid.

    Parameters
    ----------
    amount : a, a mass or money
    step : s, the step of the scale, or the coin

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A negative amount, or a step that is not above zero.

    Notes
    -----
    Valid for up to a hundred million steps; the quotient is rounded to six decimals first.

    References
    ----------
    Definition of the whole part.
    """
    require_numbers(amount, step)
    require(_plain(step) > 0, "The step must be above zero.")
    require(_plain(amount) >= 0, "The amount cannot be negative.")
    quotient = amount / step
    return np.floor(_six(quotient.m_as("") if isinstance(quotient, Quantity) else quotient))


@law
def of_steps(steps: Ratio, step: Some) -> Some:
    """What whole steps come to.

    a = n · s. Steps are counted; the amount is only told.

    Parameters
    ----------
    steps : n, a whole number of them
    step : s, the step of the scale, or the coin

    Returns
    -------
    a, of the kind of the step

    Raises
    ------
    ValueError
        A negative number of steps, or a step that is not above zero.

    Notes
    -----
    Valid for steps that are all alike.

    References
    ----------
    Definition of the step.
    """
    require_numbers(steps, step)
    require(steps >= 0, "The number of steps cannot be negative.")
    require(_plain(step) > 0, "The step must be above zero.")
    return steps * step


@law
def undivided(amount: Some, step: Some, steps: Ratio) -> Ratio:
    """What of an amount is less than a step.

    r = a / s - n. It stays undivided.

    Parameters
    ----------
    amount : a, a mass or money
    step : s, the step of the scale, or the coin
    steps : n, the whole steps in it

    Returns
    -------
    r, a share of the step

    Raises
    ------
    ValueError
        A step that is not above zero, or more whole steps than there can be.

    Notes
    -----
    Valid for up to a hundred million steps; it is rounded to six decimals.

    References
    ----------
    Definition of a remainder.
    """
    require_numbers(amount, step, steps)
    require(_plain(step) > 0, "The step must be above zero.")
    quotient = amount / step
    left = _six((quotient.m_as("") if isinstance(quotient, Quantity) else quotient) - steps)
    require(left >= 0, "There cannot be more whole steps than that.")
    return left


@law
def asked(line: Ratio, wanted: Mass) -> Mass:
    """Weight that a member asks for.

    w = w. Only who stands in the list has a say.

    Parameters
    ----------
    line : place in the list, from 1
    wanted : w, weight wanted

    Returns
    -------
    w, a mass

    Raises
    ------
    ValueError
        A mass that is not above zero, or no place in the list.

    Notes
    -----
    Valid for members of the list.

    References
    ----------
    Definition of a list.
    """
    require_numbers(line, wanted)
    require(line >= 1, "The lines of a list are counted from 1.")
    require(wanted > NO_MASS, "The weight wanted must be above zero.")
    return wanted * 1.0


@law
def part(line: Ratio, parts: Ratio, wanted: Mass | None = None) -> Ratio:
    """Parts that a member has in what is not wanted by weight.

    x = the parts, and 0 where a weight is wanted. Who names neither takes one part.

    Parameters
    ----------
    line : place in the list, from 1
    parts : the parts; one, if none are named
    wanted : weight wanted, if one is

    Returns
    -------
    x, a number

    Raises
    ------
    ValueError
        Parts that are not above zero, or no place in the list.

    Notes
    -----
    Valid for members of the list.

    References
    ----------
    Definition of a share.
    """
    require_numbers(line, parts, wanted)
    require(line >= 1, "The lines of a list are counted from 1.")
    require(parts > 0, "The parts must be above zero.")
    return (parts if wanted is None else parts * 0.0) + line * 0.0


@law
def for_parts(mass: Mass, wanted: Mass) -> Mass:
    """What is left for those who asked for parts.

    r = m - w, but not below zero. Weights that are wanted come first.

    Parameters
    ----------
    mass : m, all there is
    wanted : w, sum of the weights wanted

    Returns
    -------
    r, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for a purchase in which some ask by weight and others for the rest.

    References
    ----------
    Definition of a remainder.
    """
    require_numbers(mass, wanted)
    require(mass >= NO_MASS, "The mass cannot be negative.")
    require(wanted >= NO_MASS, "The weight wanted cannot be negative.")
    return np.maximum(mass - wanted, NO_MASS)


@law
def claim(part: Ratio, rest: Mass, parts: Ratio, wanted: Mass | None = None) -> Mass:
    """What a member is due before all is made to fit.

    c = w, or r · x / X. If all claims are more, or less, than there is, everyone gets more or less in the same proportion.

    Parameters
    ----------
    part : x, parts of this member
    rest : r, what is left for parts
    parts : X, sum of all parts
    wanted : w, weight wanted, if one is

    Returns
    -------
    c, a mass

    Raises
    ------
    ValueError
        A negative mass or number, or a part of no parts.

    Notes
    -----
    Valid for a purchase in which all pay the same by weight.

    References
    ----------
    Definition of a share.
    """
    require_numbers(part, rest, parts, wanted)
    require(rest >= NO_MASS, "The mass cannot be negative.")
    require((part >= 0) & (parts >= 0), "Parts cannot be negative.")
    if wanted is not None:
        require(wanted > NO_MASS, "The weight wanted must be above zero.")
        return wanted + rest * 0.0 * part
    require(parts > 0, "There are no parts.")
    return rest * (part / parts)


@law
def exact(steps: Ratio, due: Some, in_all: Some) -> Ratio:
    """Exact share of whole steps.

    q = n · c / C, rounded to six decimals. It is no whole number yet.

    Parameters
    ----------
    steps : n, whole steps to divide
    due : c, what this member is due
    in_all : C, what all are due together

    Returns
    -------
    q, a number of steps

    Raises
    ------
    ValueError
        Negative steps or dues, or nothing that is due.

    Notes
    -----
    Valid for up to a hundred million steps.

    References
    ----------
    Definition of a share.
    """
    require_numbers(steps, due, in_all)
    require(steps >= 0, "The number of steps cannot be negative.")
    require(_plain(due) >= 0, "What is due cannot be negative.")
    require(_plain(in_all) > 0, "Nothing is due to anybody.")
    share = due / in_all
    return _six(steps * (share.m_as("") if isinstance(share, Quantity) else share))


@law
def whole(exact: Ratio) -> Ratio:
    """The whole steps in an exact share.

    k = ⌊q⌋. Everyone is sure of these.

    Parameters
    ----------
    exact : q, exact share, in steps

    Returns
    -------
    k, a whole number

    Raises
    ------
    ValueError
        A negative share.

    Notes
    -----
    Valid for shares rounded to six decimals.

    References
    ----------
    Largest remainders (Hamilton's method): by definition.
    """
    require_numbers(exact)
    require(exact >= 0, "A share cannot be negative.")
    return np.floor(exact)


@law
def turn(exact: Ratio, whole: Ratio, line: Ratio) -> Ratio:
    """Whose turn it is for a step that is left.

    t = 1000 · millionths of (q - k) + 1000 - l, a whole number. A larger remainder comes first, and of equal ones the upper line.

    Parameters
    ----------
    exact : q, exact share, in steps
    whole : k, the whole steps in it
    line : l, place in the list, from 1

    Returns
    -------
    t, a whole number, no two alike

    Raises
    ------
    ValueError
        Whole steps that are not those of the exact share, or a line that is not from 1 to 999.

    Notes
    -----
    Valid for fewer than a thousand members.

    References
    ----------
    Largest remainders (Hamilton's method): by definition. The order of equal ones: common practice, no source.
    """
    require_numbers(exact, whole, line)
    remainder = exact - whole
    require((remainder > -1e-7) & (remainder < 1), "The exact share is no less than its whole steps, and less than one step more.")
    require((line >= 1) & (line < LINES), "The lines of a list are counted from 1 to 999.")
    return np.floor(remainder * MILLIONTH + 0.5) * LINES + LINES - line


@law
def steps_left(steps: Ratio, amounts: Some) -> Ratio:
    """Steps that are left once everyone has the whole ones.

    r = n - Σ k. Each goes to one member.

    Parameters
    ----------
    steps : n, whole steps to divide
    amounts : k, whole steps of each; one that is not a number is blank

    Returns
    -------
    r, a whole number

    Raises
    ------
    ValueError
        More whole steps than there are.

    Notes
    -----
    Valid for members whose shares are all known.

    References
    ----------
    Largest remainders (Hamilton's method): by definition.
    """
    require_numbers(steps)
    left = steps - float(np.nansum(np.asarray(amounts, dtype=float)))
    require(left >= 0, "There are more whole steps than there can be.")
    return left


@law
def last_turn(left: Ratio, amounts: Some) -> Ratio:
    """The turn of the last member who gets one of the steps that are left.

    T = the r-th largest of the turns. Who comes before gets one too.

    Parameters
    ----------
    left : r, steps that are left
    amounts : t, the turns; one that is not a number is blank

    Returns
    -------
    T, a whole number

    Raises
    ------
    ValueError
        No step is left, or more of them than members.

    Notes
    -----
    Valid for turns of which no two are alike.

    References
    ----------
    Largest remainders (Hamilton's method): by definition.
    """
    turns = np.asarray(amounts, dtype=float)
    in_order = np.sort(turns[np.isfinite(turns)])[::-1]
    require(left >= 1, "No step is left.")
    require(left <= len(in_order), "There are more steps left than members.")
    return by_element(lambda place: float(in_order[int(place) - 1]), left) if np.ndim(left) == 0 else in_order[left.astype(int) - 1]


@law
def given_out(whole: Ratio, turn: Ratio, last: Ratio | None = None) -> Ratio:
    """Steps that a member gets.

    g = k, and one more if t ≥ T. So they add up to all there are.

    Parameters
    ----------
    whole : k, whole steps in the exact share
    turn : t, whose turn it is
    last : T, the last turn that gets one; none, if nothing is left

    Returns
    -------
    g, a whole number

    Raises
    ------
    ValueError
        A negative number of steps.

    Notes
    -----
    Valid for turns of which no two are alike.

    References
    ----------
    Largest remainders (Hamilton's method): by definition.
    """
    require_numbers(whole, turn, last)
    require(whole >= 0, "The number of steps cannot be negative.")
    return whole + (turn * 0.0 if last is None else np.where(turn >= last, 1.0, 0.0)[()])


@law
def handed_out(amounts: Some) -> Some:
    """What all get together.

    A = Σ a, over all who get something. It is what there is, in whole steps.

    Parameters
    ----------
    amounts : a, what each gets; one that is not a number is blank

    Returns
    -------
    A, of the kind of the amounts

    Raises
    ------
    ValueError
        Nobody gets anything.

    Notes
    -----
    Valid for amounts of one kind.

    References
    ----------
    Definition of a sum.
    """
    cells = np.atleast_1d(np.asarray(_plain(amounts), dtype=float))
    require(bool(np.isfinite(cells).any()), "Nobody gets anything.")
    added = float(np.nansum(cells))
    return Quantity(added, amounts.units) if isinstance(amounts, Quantity) else added


@law
def of_the_wanted(mass: Mass, wanted: Mass) -> Ratio:
    """What part of the weights wanted there is.

    x = m / w. Over 1 there is more than is wanted.

    Parameters
    ----------
    mass : m, all there is
    wanted : w, sum of the weights wanted

    Returns
    -------
    x, a share

    Raises
    ------
    ValueError
        A mass that is not above zero.

    Notes
    -----
    Valid for weights in the same state of moisture.

    References
    ----------
    Definition of a share.
    """
    require_numbers(mass, wanted)
    require(mass > NO_MASS, "The mass must be above zero.")
    require(wanted > NO_MASS, "The weight wanted must be above zero.")
    return (mass / wanted).m_as("")


@law
def split_in_words(in_all: Mass, parts: Ratio, mass_left: Ratio, money_left: Ratio | None = None, fit: Ratio | None = None) -> str:
    """How a purchase is divided, in words.

    text by x > 1, x = 1 or x < 1, the part of the wanted weights that there is. Who gets more or less than was wanted is to know it before paying.

    Parameters
    ----------
    in_all : what all are due together; there is something to tell once somebody is due something
    parts : sum of all parts
    mass_left : what of the weight is less than a step of the scale, in steps
    money_left : what of the money is less than the coin, in coins
    fit : x, what part of the weights wanted there is, if any are wanted

    Returns
    -------
    a sentence or two

    Raises
    ------
    ValueError
        Nothing that is due, or a number below nothing.

    Notes
    -----
    Valid for a purchase in which all pay the same by weight.

    References
    ----------
    All in proportion: common practice, no source.
    """
    require_numbers(in_all, parts, mass_left, money_left, fit)
    require(in_all > NO_MASS, "Nothing is due to anybody.")
    require((parts >= 0) & (mass_left >= 0), "A number cannot be negative.")
    money_left = mass_left * 0.0 if money_left is None else money_left
    if fit is None:
        return by_element(lambda mass, money: _with_rest("All of it is divided by parts.", mass, money), mass_left, money_left)
    return by_element(_split_in_words, fit, parts, mass_left, money_left)


def _split_in_words(fit: float, parts: float, mass_left: float, money_left: float) -> str:
    fit = round(float(fit), 9)
    if fit < 1:
        text = "They want more than there is: each gets less than wanted, all in proportion" + (", and nothing is left for the others." if parts > 0 else ".")
    elif parts > 0:
        text = "Each gets the weight wanted, and the others divide the rest." if fit > 1 else "Each gets the weight wanted, and nothing is left for the others."
    elif fit > 1:
        text = "They want less than there is: each gets more than wanted, all in proportion. To keep the rest apart, give it a line without a weight."
    else:
        text = "Each gets the weight wanted."
    return _with_rest(text, mass_left, money_left)


def _with_rest(text: str, mass_left: float, money_left: float) -> str:
    rests = ["a step of the scale"] * bool(mass_left > 0) + ["a coin"] * bool(money_left > 0)
    return f"{text} What is less than {' and '.join(rests)} stays undivided." if rests else text


def _plain(amount):
    return amount.magnitude if isinstance(amount, Quantity) else np.asarray(amount)


def _six(number):
    """Rounded to six decimals, half a millionth up, as spreadsheets do."""
    return np.floor(np.multiply(number, MILLIONTH) + 0.5) / MILLIONTH
