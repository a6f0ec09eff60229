"""One skein beside others: which of them go with it, and what it contributes to a project."""

from collections.abc import Sequence

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, PART, require_within
from workbookgen.reference.statistics.groups import ALTERNATE, APART, TOGETHER
from workbookgen.reference.words import percent, said
from workbookgen.units import Length, Ratio

NAMED = 3  # names that people take in at a glance


@calculation
def goes_with(names: Sequence[str], verdicts: Sequence[str], lines: Ratio, deviation: Ratio) -> str:
    """The skeins that go together with this one.

    words = the first three names of those with the verdict "go together", and how many more; "none" if k = 0. They may
    share a piece.

    Parameters
    ----------
    names : the skeins' names
    verdicts : the verdict on each beside this one, blank where there is none
    lines : the number of each line, which gives their order
    deviation : how far this one is off the lot's mean; without it, there is no answer

    Returns
    -------
    a text such as "Aster 1, Aster 2, Aster 4 and 2 more", or "none"

    Raises
    ------
    ValueError
        A line without a number, or a deviation below -1.

    Notes
    -----
    Valid for lists in which every skein occurs once.

    References
    ----------
    The verdicts: common practice, no source.

    Examples
    --------
    >>> print(goes_with(["Aster 1", "Aster 2"], ["go together", "keep apart"], [1, 2], deviation=0.02))
    Aster 1
    """
    return _named(names, verdicts, lines, deviation, TOGETHER)


@calculation
def alternates_with(names: Sequence[str], verdicts: Sequence[str], lines: Ratio, deviation: Ratio) -> str:
    """The skeins to alternate with this one.

    words = the first three names of those with the verdict "alternate rows", and how many more; "none" if k = 0. In
    alternate rows the difference does not show.

    Parameters
    ----------
    names : the skeins' names
    verdicts : the verdict on each beside this one, blank where there is none
    lines : the number of each line, which gives their order
    deviation : how far this one is off the lot's mean; without it, there is no answer

    Returns
    -------
    a text such as "Aster 1, Aster 2, Aster 4 and 2 more", or "none"

    Raises
    ------
    ValueError
        A line without a number, or a deviation below -1.

    Notes
    -----
    Valid for lists in which every skein occurs once.

    References
    ----------
    The verdicts: common practice, no source.

    Examples
    --------
    >>> print(alternates_with(["Aster 1", "Aster 2"], ["go together", "alternate rows"], [1, 2], deviation=0.02))
    Aster 2
    """
    return _named(names, verdicts, lines, deviation, ALTERNATE)


@calculation
def apart_from(names: Sequence[str], verdicts: Sequence[str], lines: Ratio, deviation: Ratio) -> str:
    """The skeins to keep apart from this one.

    words = the first three names of those with the verdict "keep apart", and how many more; "none" if k = 0. Side by
    side in one piece, the difference shows.

    Parameters
    ----------
    names : the skeins' names
    verdicts : the verdict on each beside this one, blank where there is none
    lines : the number of each line, which gives their order
    deviation : how far this one is off the lot's mean; without it, there is no answer

    Returns
    -------
    a text such as "Aster 1, Aster 2, Aster 4 and 2 more", or "none"

    Raises
    ------
    ValueError
        A line without a number, or a deviation below -1.

    Notes
    -----
    Valid for lists in which every skein occurs once.

    References
    ----------
    The verdicts: common practice, no source.

    Examples
    --------
    >>> print(apart_from(["Aster 1", "Aster 2"], ["go together", "alternate rows"], [1, 2], deviation=0.02))
    none
    """
    return _named(names, verdicts, lines, deviation, APART)


def _named(names, verdicts, lines, deviation, wanted: str) -> str:
    require(deviation >= -1, "The deviation must be that of a grist.")
    require(np.isfinite(lines), "Every line has a number.")
    chosen = [names[place] for place in np.argsort(lines, kind="stable") if verdicts[place] == wanted]
    more = f" and {len(chosen) - NAMED} more" if len(chosen) > NAMED else ""
    words = ", ".join(chosen[:NAMED]) + more if chosen else "none"
    return by_element(lambda _: words, deviation)


@calculation
def share_of_need(length: Length, need: Length) -> Ratio:
    """Share of a project's need that a skein covers.

    s = L / need. Above 1, it is enough by itself.

    Parameters
    ----------
    length : L, length of the skein
    need : length of yarn that the project needs

    Returns
    -------
    s, a share

    Raises
    ------
    ValueError
        A negative length, or a need that is not above zero.

    Notes
    -----
    Valid for a skein and a need stated in the same finished state.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(share_of_need(Quantity(250, "m"), Quantity(1000, "m")))
    0.25
    """
    require_within(NOT_NEGATIVE, "The length", length)
    require_within(ABOVE_ZERO, "The need", need)
    return (length / need).m_as("")


@calculation
def project_words(project: str, need: Length, share: Ratio) -> str:
    """What a skein contributes to a project, in words.

    words = the project, and the share of its need that the skein covers, s = L / need. It shows whether a few such
    skeins will do.

    Parameters
    ----------
    project : name of the project
    need : length of yarn that the project needs
    share : s, the skein's share of it

    Returns
    -------
    a text such as "Aster vest: 9% of its 2,530 yd"

    Raises
    ------
    ValueError
        A need or a share too large to state.

    Notes
    -----
    Valid for needs below a million of their unit.

    References
    ----------
    Definition of a share.

    Examples
    --------
    >>> print(project_words("Aster vest", Quantity(2530, "yd"), 0.09))
    Aster vest: 9% of its 2,530 yd
    """
    return by_element(lambda name, part, length: f"{name}: {part} of its {length}", project, percent(share), said(need))


@calculation
def difference_words(difference: Ratio, two: Ratio = 0.0) -> str:
    """How much two skeins differ, in words.

    words = Δ in whole percent, and whether they are of two dye lots. It is shown below the verdict that follows from
    it.

    Parameters
    ----------
    difference : Δ, their relative difference in grist
    two : 1 if they are of two dye lots, else 0

    Returns
    -------
    a text such as "Their grists differ by 17%."

    Raises
    ------
    ValueError
        A negative difference.

    Notes
    -----
    Valid for two skeins of similar fiber, ply and twist.

    References
    ----------
    Definition of rounding.

    Examples
    --------
    >>> print(difference_words(0.17))
    Their grists differ by 17%.
    """
    require_within(PART, "Two dye lots", two)
    return by_element(
        lambda share, apart: f"Their grists differ by {share}{'; two dye lots' if apart else ''}.",
        percent(difference),
        two,
    )


@calculation
def lot_words(skein: str | None = None, lot: str | None = None, count: Ratio | None = None) -> str:
    """The skeins with which one is compared, in words, or what is missing for that.

    words = the lot and n, the number of its skeins with a grist. Without a skein or a lot, the words say how to get
    there.

    Parameters
    ----------
    skein : name of the skein chosen
    lot : name of its lot
    count : n, number of the lot's skeins with a grist

    Returns
    -------
    a text such as "Aster, 4 skeins"

    Raises
    ------
    ValueError
        A lot without a number of skeins, or a negative number.

    Notes
    -----
    Valid for numbers below a million.

    References
    ----------
    Definition of counting.

    Examples
    --------
    >>> print(lot_words("Aster 1", "Aster", 4))
    Aster, 4 skeins
    """
    if skein is None:
        return "choose a skein of your log to see this"
    if lot is None:
        return by_element(lambda _: "it is of no single lot in the log", skein)
    require(count is not None, "The skeins of a lot must be counted.")
    return by_element(lambda name, many: f"{name}, {many} {'skein' if many == '1' else 'skeins'}", lot, said(count))
