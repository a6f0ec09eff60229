"""How a wheel inserts twist: drive ratio, treadles and drafts.

One treadle turns the wheel once and the flyer several times; the length drafted meanwhile takes up those turns. So a
wanted twist is a matter of counting treadles per draft of known length, and the whorl decides how many.
"""

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, LESS_THAN_ALL, NO_LENGTH, NOT_NEGATIVE, require_within
from workbookgen.units import Length, PerLength, Ratio


@calculation
def geared(wheel: Length, whorl: Length, band: Length = NO_LENGTH) -> Ratio:
    """Drive ratio from the diameters.

    i = (D + t) / (w + t). The band bends along its center line, half its thickness above each groove, and carries the
    same length over both.

    Parameters
    ----------
    wheel : D, diameter of the drive wheel in its groove
    whorl : w, diameter of the whorl in its groove
    band : t, thickness of the drive band

    Returns
    -------
    i, a number

    Raises
    ------
    ValueError
        A diameter that is not above zero, or a negative thickness.

    Notes
    -----
    Valid for a round band that neither flattens nor slips.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(geared(Quantity(20, "inch"), Quantity(2, "inch")))
    10.0
    """
    _require_wheel(wheel)
    require(ABOVE_ZERO.hold(whorl), "The whorl must have a diameter.")
    _require_band(band)
    return ((wheel + band) / (whorl + band)).m_as("")


@calculation
def counted_ratio(flyer: Ratio, turns: Ratio = 10.0) -> Ratio:
    """Drive ratio by counting.

    i = f / w. Mark the flyer, turn the wheel by hand, and count: slip is included.

    Parameters
    ----------
    flyer : f, turns of the flyer
    turns : w, turns of the wheel meanwhile

    Returns
    -------
    i, a number

    Raises
    ------
    ValueError
        Turns that are not above zero.

    Notes
    -----
    Valid for the band and the tension used in counting; over ten turns of the wheel, half a turn miscounted matters
    little.

    References
    ----------
    Definition of the ratio.

    Examples
    --------
    >>> print(counted_ratio(95, turns=10))
    9.5
    """
    require_within(ABOVE_ZERO, "The turns of the flyer", flyer)
    require_within(ABOVE_ZERO, "The turns of the wheel", turns)
    return flyer / turns


@calculation
def drive_ratio(
    geared: Ratio | None = None, stamped: Ratio | None = None, slip: Ratio = 0.0, counted: Ratio | None = None
) -> Ratio:
    """Turns of the flyer for one turn of the wheel.

    i = counted, or else (stamped, or else from the diameters) · (1 - s). Counting includes the slip already.

    Parameters
    ----------
    geared : ratio from the diameters
    stamped : ratio stamped on the wheel
    slip : s, share that the band slips, from 0 to under 1
    counted : ratio by counting the turns of flyer and wheel

    Returns
    -------
    i, a number

    Raises
    ------
    ValueError
        No ratio is known, one that is not above zero, or a slip outside 0 to under 1.

    Notes
    -----
    Valid for a band that runs as it did when the ratio was found.

    References
    ----------
    Definition of the slip.

    Examples
    --------
    >>> print(drive_ratio(stamped=10, slip=0.05))
    9.5
    """
    known = [each for each in (counted, stamped, geared) if each is not None]
    require(
        len(known) > 0, "Give the diameters of wheel and whorl, the ratio that is stamped, or the one that was counted."
    )
    for each in known:
        _require_ratio(each)
    require_within(LESS_THAN_ALL, "The slip", slip)
    return known[0] * (1 - slip) if counted is None else known[0]


@calculation
def whorl_for(wheel: Length, ratio: Ratio, band: Length = NO_LENGTH, slip: Ratio = 0.0) -> Length:
    """Diameter of the whorl for a drive ratio.

    w = (D + t) · (1 - s) / i - t. It says which whorl to use: where the band slips, a smaller one makes up for it.

    Parameters
    ----------
    wheel : D, diameter of the drive wheel
    ratio : i, turns of the flyer wanted for one turn of the wheel
    band : t, thickness of the drive band
    slip : s, share of the turns that the band loses

    Returns
    -------
    w, a length

    Raises
    ------
    ValueError
        A diameter or a ratio that is not above zero, a negative thickness, a slip outside 0 to under 1, or a ratio that
        no whorl can give.

    Notes
    -----
    Valid for a band that slips as much on any whorl; diameters are those in the grooves.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> print(whorl_for(Quantity(20, "inch"), 10))
    2.0 inch
    """
    _require_wheel(wheel)
    _require_ratio(ratio)
    _require_band(band)
    require_within(LESS_THAN_ALL, "The slip", slip)
    without_slip = ratio / (1 - slip)
    whorl = (wheel + band) / without_slip - band
    require(ABOVE_ZERO.hold(whorl), "No whorl is that small: the band is too thick for that ratio.")
    return whorl


@calculation
def inserted(ratio: Ratio, treadles: Ratio, draft: Length) -> PerLength:
    """Twist inserted by treadling.

    T = i · k / ℓ. All turns of the flyer go into the length drafted meanwhile.

    Parameters
    ----------
    ratio : i, turns of the flyer for one treadle
    treadles : k, treadles per draft
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
    Valid for a wheel that one treadle turns once; few turns are lost in winding on.

    References
    ----------
    Definition of the twist.

    Examples
    --------
    >>> print(inserted(10, treadles=2, draft=Quantity(5, "inch")))
    4.0 / inch
    """
    _require_ratio(ratio)
    require_within(NOT_NEGATIVE, "The number of treadles", treadles)
    _require_draft(draft)
    return ratio * treadles / draft


@calculation
def treadles_for(twist: PerLength, draft: Length, ratio: Ratio) -> Ratio:
    """Treadles per draft for a wanted twist.

    k = T · ℓ / i. It is a count to keep while spinning.

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
    Valid for a wheel that one treadle turns once; few turns are lost in winding on.

    References
    ----------
    Definition of the twist.

    Examples
    --------
    >>> print(treadles_for(Quantity(4, "1/inch"), Quantity(5, "inch"), ratio=10))
    2.0
    """
    require_within(NOT_NEGATIVE, "The twist", twist)
    _require_draft(draft)
    _require_ratio(ratio)
    return (twist * draft).m_as("") / ratio


@calculation
def draft_for(twist: PerLength, treadles: Ratio, ratio: Ratio) -> Length:
    """Length of draft for a wanted twist.

    ℓ = i · k / T. For those who would rather keep to a length than to a count.

    Parameters
    ----------
    twist : T, twist wanted
    treadles : k, treadles per draft
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
    Valid for a wheel that one treadle turns once; few turns are lost in winding on.

    References
    ----------
    Definition of the twist.

    Examples
    --------
    >>> print(draft_for(Quantity(4, "1/inch"), treadles=2, ratio=10))
    5.0 inch
    """
    require_within(ABOVE_ZERO, "The twist", twist)
    require_within(NOT_NEGATIVE, "The number of treadles", treadles)
    _require_ratio(ratio)
    return ratio * treadles / twist


def _require_wheel(wheel: Length) -> None:
    require_within(ABOVE_ZERO, "The wheel must have a diameter.", wheel)


def _require_band(band: Length) -> None:
    require_within(NOT_NEGATIVE, "The thickness of the band", band)


def _require_ratio(ratio: Ratio) -> None:
    require_within(ABOVE_ZERO, "The drive ratio", ratio)


def _require_draft(draft: Length) -> None:
    require_within(ABOVE_ZERO, "The draft must have a length.", draft)
