"""How a wheel puts twist in: drive ratio, treadles and drafts.

One treadle turns the wheel once and the flyer several times; what is drafted meanwhile
takes up those turns. So a wanted twist is a matter of counting treadles to a draft of
known length, and the whorl decides how many.
"""

from workbookgen.reference.law import law, require
from workbookgen.units import Length, PerLength, Quantity, Ratio

NO_LENGTH = Quantity(0.0, "m")
NO_TWIST = Quantity(0.0, "1/m")


@law
def drive_ratio(wheel: Length, whorl: Length, slip: Ratio = 0.0) -> Ratio:
    """Turns of the flyer for one turn of the wheel.

    i = D / w · (1 - s). The band carries the same length over both.

    Parameters
    ----------
    wheel : D, diameter of the drive wheel
    whorl : w, diameter of the whorl where the band lies
    slip : s, share that the band slips, from 0 to under 1

    Returns
    -------
    i, a number

    Raises
    ------
    ValueError
        A diameter that is not above zero, or a slip outside 0 to under 1.

    Notes
    -----
    Valid for diameters at the band, in the grooves; counting turns tells the slip.

    References
    ----------
    Geometry.
    """
    _require_wheel(wheel)
    require(whorl > NO_LENGTH, "The whorl must have a diameter.")
    require((slip >= 0) & (slip < 1), "The slip lies from 0 to under 1.")
    return (wheel / whorl).m_as("") * (1 - slip)


@law
def whorl_for(wheel: Length, ratio: Ratio) -> Length:
    """Diameter of the whorl that gives a drive ratio.

    w = D / i. It says which whorl to put on.

    Parameters
    ----------
    wheel : D, diameter of the drive wheel
    ratio : i, turns of the flyer wanted for one turn of the wheel

    Returns
    -------
    w, a length

    Raises
    ------
    ValueError
        A diameter or a ratio that is not above zero.

    Notes
    -----
    Valid for a band that does not slip; diameters are those at the band.

    References
    ----------
    Geometry.
    """
    _require_wheel(wheel)
    _require_ratio(ratio)
    return wheel / ratio


@law
def inserted(ratio: Ratio, treadles: Ratio, draft: Length) -> PerLength:
    """Twist that treadling puts in.

    T = i · k / ℓ. All turns of the flyer stay in the length drafted meanwhile.

    Parameters
    ----------
    ratio : i, turns of the flyer for one treadle
    treadles : k, treadles to one draft
    draft : ℓ, length drafted and wound on

    Returns
    -------
    T, a number per length

    Raises
    ------
    ValueError
        A ratio or a draft that is not above zero, or a negative number of treadles.

    Notes
    -----
    Valid for a wheel whose treadle turns it once; turns lost in winding on are few.

    References
    ----------
    Definition of the twist.
    """
    _require_ratio(ratio)
    require(treadles >= 0, "The number of treadles cannot be negative.")
    _require_draft(draft)
    return ratio * treadles / draft


@law
def treadles_for(twist: PerLength, draft: Length, ratio: Ratio) -> Ratio:
    """Treadles to one draft that give a wanted twist.

    k = T · ℓ / i. A count to keep to while spinning.

    Parameters
    ----------
    twist : T, twist wanted
    draft : ℓ, length drafted and wound on
    ratio : i, turns of the flyer for one treadle

    Returns
    -------
    k, a number, parts of a treadle included

    Raises
    ------
    ValueError
        A negative twist, or a draft or a ratio that is not above zero.

    Notes
    -----
    Valid for a wheel whose treadle turns it once; turns lost in winding on are few.

    References
    ----------
    Definition of the twist.
    """
    require(twist >= NO_TWIST, "The twist cannot be negative.")
    _require_draft(draft)
    _require_ratio(ratio)
    return (twist * draft).m_as("") / ratio


@law
def draft_for(twist: PerLength, treadles: Ratio, ratio: Ratio) -> Length:
    """Length of draft that gives a wanted twist.

    ℓ = i · k / T. For hands that would rather keep a length than a count.

    Parameters
    ----------
    twist : T, twist wanted
    treadles : k, treadles to one draft
    ratio : i, turns of the flyer for one treadle

    Returns
    -------
    ℓ, a length

    Raises
    ------
    ValueError
        A twist or a ratio that is not above zero, or a negative number of treadles.

    Notes
    -----
    Valid for a wheel whose treadle turns it once; turns lost in winding on are few.

    References
    ----------
    Definition of the twist.
    """
    require(twist > NO_TWIST, "The twist must be above zero.")
    require(treadles >= 0, "The number of treadles cannot be negative.")
    _require_ratio(ratio)
    return ratio * treadles / twist


def _require_wheel(wheel) -> None:
    require(wheel > NO_LENGTH, "The wheel must have a diameter.")


def _require_ratio(ratio) -> None:
    require(ratio > 0, "The drive ratio must be above zero.")


def _require_draft(draft) -> None:
    require(draft > NO_LENGTH, "The draft must have a length.")
