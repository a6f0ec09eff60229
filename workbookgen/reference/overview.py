"""What is there at a glance: how many, how much, and what needs a look, in words."""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.law import by_element, law, require
from workbookgen.reference.words import percent, said
from workbookgen.units import Length, Mass, Quantity, Ratio, Some

JUST_SOMETHING = 0.001  # of the unit in which amounts are given; programs differ in what rounding leaves of nothing


@law
def how_many(amounts: Some) -> Ratio:
    """How many records have an amount.

    n = number of the amounts that there are. A record that is not finished has none, and is not counted.

    Parameters
    ----------
    amounts : one amount a record; one that is not a number is blank

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        An amount without end.

    Notes
    -----
    Valid for amounts of one kind, none included.

    References
    ----------
    Definition of counting.
    """
    known = _magnitudes(amounts)
    require(not np.isinf(known).any(), "Every amount must have an end.")
    return float(np.sum(~np.isnan(known)))


@law
def how_many_above_nothing(amounts: Some) -> Ratio:
    """How many records have more than nothing.

    n = number of the amounts ≥ 0.001. A lot that is spun up has nothing left, or what rounding leaves of it, and is not counted.

    Parameters
    ----------
    amounts : one amount a record; one that is not a number is blank

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        An amount without end.

    Notes
    -----
    Valid for amounts of one kind, none included. They count in the unit in which they are given.

    References
    ----------
    Definition of counting.
    """
    known = _magnitudes(amounts)
    require(not np.isinf(known).any(), "Every amount must have an end.")
    return float(np.sum(np.nan_to_num(known) >= JUST_SOMETHING))


@law
def how_many_enough(chances: Ratio, certainty: Ratio) -> Ratio:
    """How many projects have enough yarn.

    n = number of the chances ≥ the certainty asked for. A project of which too little is known has no chance, and is not counted.

    Parameters
    ----------
    chances : one chance a project; one that is not a number is blank
    certainty : how sure one wants to be

    Returns
    -------
    n, a whole number

    Raises
    ------
    ValueError
        A chance below nothing or above one.

    Notes
    -----
    Valid for chances from 0 to 1.

    References
    ----------
    Definition of counting.
    """
    known = np.asarray(chances, dtype=float)
    known = known[~np.isnan(known)]
    require(np.all((known >= 0) & (known <= 1)), "A chance lies between 0 and 1.")
    return np.sum(known >= np.asarray(certainty)[..., None], axis=-1).astype(float)


@law
def so_many_of(enough: Ratio, chances: Ratio) -> str:
    """How many of the projects have enough yarn, in words.

    words = n of k, k = number of the projects that have a chance. It stands large on the desk.

    Parameters
    ----------
    enough : n, number of projects with enough yarn
    chances : one chance a project; one that is not a number is blank

    Returns
    -------
    a text such as "2 of 4"

    Raises
    ------
    ValueError
        A number below nothing, or one that is too great to tell.

    Notes
    -----
    Valid for numbers below a million.

    References
    ----------
    Definition of counting.
    """
    return by_element(lambda each: f"{each} of {int(how_many(chances))}", said(enough))


@law
def projects_in_words(chances: Ratio) -> str:
    """What the number of projects means, in words.

    words = one project, or several: k = 1 or not. It stands below the number.

    Parameters
    ----------
    chances : one chance a project; one that is not a number is blank

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        An amount without end.

    Notes
    -----
    Valid for any number of projects.

    References
    ----------
    Definition of counting.
    """
    return "project has enough yarn" if how_many(chances) == 1 else "projects have enough yarn"


@law
def systems_in_words(count: Ratio) -> str:
    """What the number of yarn count systems means, in words.

    words = one system, or several: k = 1 or more. It stands below the number.

    Parameters
    ----------
    count : k, number of systems

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        No system.

    Notes
    -----
    Valid for one system or more.

    References
    ----------
    Definition of counting.
    """
    require(count >= 1, "There must be a system.")
    return by_element(lambda systems: "yarn numbers, one in all" if systems > 1 else "yarn number", count)


@law
def nth(names: Sequence[str], place: Ratio) -> str:
    """The name in a place of a list.

    name = the n-th of the names, n = 1 for the first. A table that shows part of a log takes its lines so.

    Parameters
    ----------
    names : the names in the list, a blank one where a row is empty
    place : n, from 1 to the length of the list

    Returns
    -------
    the name

    Raises
    ------
    ValueError
        A place that the list does not have, or in which no name stands.

    Notes
    -----
    Valid for whole places.

    References
    ----------
    Definition of counting.
    """
    places = np.asarray(place)
    require(np.all((places >= 1) & (places <= len(names))), "The place must be one of the list's.")
    found = by_element(lambda each: names[int(each) - 1], place)
    require(np.asarray(found, dtype=object) != "", "There must be a name in that place.")
    return found


@law
def skeins_in_words(count: Ratio, mass: Mass) -> str:
    """How many skeins there are, and what they weigh, in words.

    words = n skeins, m in the unit in which it is given. One skein is told as one.

    Parameters
    ----------
    count : n, number of skeins
    mass : m, what they weigh together

    Returns
    -------
    a text such as "in 11 skeins, 37.2 oz"

    Raises
    ------
    ValueError
        A number or a mass below nothing, or one that is too great to tell.

    Notes
    -----
    Valid for numbers and masses below a million of their unit.

    References
    ----------
    Definition of rounding.
    """
    return by_element(lambda skeins, weight: f"in {skeins} {'skein' if skeins == '1' else 'skeins'}, {weight}", said(count), said(mass))


@law
def spun_in_words(count: Ratio, length: Length, mass: Mass) -> str:
    """How many skeins there are, how long they are together, and what they weigh, in words.

    words = n skeins, L, m, each in the unit in which it is given. It stands in the head of the log.

    Parameters
    ----------
    count : n, number of skeins
    length : L, their length together
    mass : m, what they weigh together

    Returns
    -------
    a text such as "11 skeins, 2,500 yd, 37.2 oz"

    Raises
    ------
    ValueError
        No record, an amount below nothing, or one that is too great to tell.

    Notes
    -----
    Valid for amounts below a million of their unit.

    References
    ----------
    Definition of rounding.
    """
    require(count > 0, "There must be a skein.")
    return by_element(lambda skeins, reach, weight: f"{skeins} {'skein' if skeins == '1' else 'skeins'}, {reach}, {weight}", said(count), said(length), said(mass))


@law
def shelf_in_words(count: Ratio, mass: Mass) -> str:
    """In how many lots something is still to spin, and how much, in words.

    words = n lots, m still to spin. It stands in the head of the log.

    Parameters
    ----------
    count : n, number of lots with something left
    mass : m, what they can still give together

    Returns
    -------
    a text such as "3 lots, 37.2 oz still to spin"

    Raises
    ------
    ValueError
        No record, an amount below nothing, or one that is too great to tell.

    Notes
    -----
    Valid for amounts below a million of their unit.

    References
    ----------
    Definition of rounding.
    """
    require(count > 0, "There must be a lot.")
    return by_element(lambda lots, weight: f"{lots} {'lot' if lots == '1' else 'lots'}, {weight} still to spin", said(count), said(mass))


@law
def lots_in_words(count: Ratio) -> str:
    """In how many lots something is still to spin, in words.

    words = n lots, one lot if n = 1. It stands below the weight that is still to spin.

    Parameters
    ----------
    count : n, number of lots

    Returns
    -------
    a text such as "still to spin, in 3 lots"

    Raises
    ------
    ValueError
        A number below nothing, or one that is too great to tell.

    Notes
    -----
    Valid for numbers below a million.

    References
    ----------
    Definition of counting.
    """
    return by_element(lambda lots: f"still to spin, in {lots} {'lot' if lots == '1' else 'lots'}", said(count))


@law
def program_in_words(agreeing: Ratio, total: Ratio) -> str:
    """Whether a program computes the planner right, in a few words.

    words = well if k = n, else the n - k checks that fail. It stands where one looks first.

    Parameters
    ----------
    agreeing : k, number of checks that agree
    total : n, number of checks

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        More checks that agree than there are, or a number too great to tell.

    Notes
    -----
    Valid for whole numbers below a million.

    References
    ----------
    Definition.
    """
    require(np.asarray(agreeing) <= np.asarray(total), "No more can agree than there are.")
    return by_element(lambda wrong: "computes the planner correctly" if wrong == "0" else f"do not rely on it: {wrong} checks fail", said(np.asarray(total) - np.asarray(agreeing)))


@law
def needs_a_look(spoiled: Ratio, first: str | None = None) -> str:
    """What needs a look in a log, in words.

    words = the cells that were emptied or typed over if there are any, else the first message, else a word that all is well. A cell that is worked out and holds nothing cannot be filled by typing.

    Parameters
    ----------
    spoiled : number of worked-out cells that hold nothing any more, or something else
    first : the first message of the log about something wrong; none where nothing is

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        A number below nothing.

    Notes
    -----
    Valid for whole numbers below a million.

    References
    ----------
    Definition of counting.
    """
    def words(cells: str, message) -> str:
        if cells != "0":
            return f"{cells} worked-out cells were emptied or typed over: undo it, or carry the planner over"
        return message or "nothing"

    return by_element(words, said(spoiled), first if first is not None else np.full(np.shape(spoiled), "", dtype=object)[()])


@law
def has_of_needs(has: Mass, needs: Mass) -> Ratio:
    """What there is of a strand, as a share of what is needed, for a bar.

    q = h / n, at most 2. A bar that is cut tells that there is plenty.

    Parameters
    ----------
    has : h, what there is
    needs : n, what is needed

    Returns
    -------
    q, a share

    Raises
    ------
    ValueError
        Nothing needed.

    Notes
    -----
    Valid for masses of the same yarn.

    References
    ----------
    Definition of a share.
    """
    require(needs > Quantity(0.0, "g"), "Something must be needed.")
    return np.minimum(2.0, (has / needs).m_as(""))


@law
def whisker(has: Mass, needs: Mass, doubt: Mass) -> Ratio:
    """How far a bar may be off: two standard uncertainties, as a share of what is needed.

    w = 2u / n where h < 2n, else 0. The end of a bar that is cut tells nothing of its doubt.

    Parameters
    ----------
    has : h, what there is
    needs : n, what is needed
    doubt : u, its standard uncertainty

    Returns
    -------
    w, a share

    Raises
    ------
    ValueError
        Nothing needed.

    Notes
    -----
    Valid for masses of the same yarn.

    References
    ----------
    Expanded uncertainty with k = 2: JCGM 100:2008, 6.2 (from memory).
    """
    require(needs > Quantity(0.0, "g"), "Something must be needed.")
    return 2 * (doubt / needs).m_as("") * (has < 2 * needs)


@law
def known_part(after: Mass, before: Mass, weighed: Mass | None = None) -> Mass:
    """What a lot weighs at a stage, where that is known.

    k = b if b was weighed, or if b ≥ a; else 0. A stage that a lot had behind it when it was bought takes nothing: its weight is known without weighing.

    Parameters
    ----------
    after : b, mass after the stage
    before : a, mass before it
    weighed : mass on the scale after the stage, if it was weighed

    Returns
    -------
    k, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for both masses in the same state of moisture.

    References
    ----------
    Definition.
    """
    _require_masses(after, before)
    return after if weighed is not None else after * (after >= before)


@law
def expected_part(after: Mass, before: Mass, weighed: Mass | None = None) -> Mass:
    """What a lot is expected to weigh at a stage that was not weighed.

    e = 0 if b was weighed, or if b ≥ a; else b. It is drawn paler than what is known.

    Parameters
    ----------
    after : b, mass after the stage
    before : a, mass before it
    weighed : mass on the scale after the stage, if it was weighed

    Returns
    -------
    e, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for both masses in the same state of moisture.

    References
    ----------
    Definition.
    """
    _require_masses(after, before)
    return after * 0 if weighed is not None else after * (after < before)


@law
def lost_part(after: Mass, before: Mass) -> Mass:
    """What a lot loses at a stage, as a mass.

    l = a - b if a > b, else 0. It stands on top of what is kept.

    Parameters
    ----------
    after : b, mass after the stage
    before : a, mass before it

    Returns
    -------
    l, a mass

    Raises
    ------
    ValueError
        A negative mass.

    Notes
    -----
    Valid for both masses in the same state of moisture.

    References
    ----------
    Definition of a difference.
    """
    _require_masses(after, before)
    return (before - after) * (before > after)


@law
def lot_in_words(yarn: Mass, bought: Mass) -> str:
    """What a lot gives, in words.

    words = y of b: k kept, k = y / b in whole percent. It is the one answer of the page of a lot.

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
        A mass below nothing, nothing bought, or a mass too great to tell.

    Notes
    -----
    Valid for masses below a million of their unit.

    References
    ----------
    Definition of the share kept.
    """
    require(bought > Quantity(0.0, "g"), "Something must have been bought.")
    return by_element(lambda some, all_of_it, kept: f"{some} of yarn from {all_of_it}: {kept} kept", said(yarn), said(bought), percent((yarn / bought).m_as("")))


@law
def way_in_words(spun: Mass, to_come: Mass, length: Length | None = None) -> str:
    """How far a lot is spun, in words.

    words = s spun, r still to spin, with its length if that is known: R = r · grist. A lot without a grist tells the weights alone.

    Parameters
    ----------
    spun : s, mass of the yarn that is spun
    to_come : r, mass of the yarn still to spin
    length : R, length of what is still to spin, if its grist is known

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        An amount below nothing, or one that is too great to tell.

    Notes
    -----
    Valid for amounts below a million of their unit.

    References
    ----------
    Definition.
    """
    def words(done: str, left: str, reach: str) -> str:
        return f"{done} is spun, {left} still to spin" + (f": about {reach}." if reach else ".")

    return by_element(words, said(spun), said(to_come), said(length) if length is not None else by_element(lambda _: "", spun.magnitude))


def _require_masses(*masses) -> None:
    for mass in masses:
        require(mass >= Quantity(0.0, "g"), "A mass cannot be negative.")


def _magnitudes(amounts) -> np.ndarray:
    return np.asarray(amounts.magnitude if isinstance(amounts, Quantity) else amounts, dtype=float)
