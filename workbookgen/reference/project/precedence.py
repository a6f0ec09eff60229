"""Figures that a project can take from several places, and which of them it uses.

What you stated or tried yourself takes precedence over what was planned or looked up.
"""

from workbookgen.reference.calculation import calculation, require
from workbookgen.reference.limits import ABOVE_ZERO, SOME_FOUND_PART, require_within
from workbookgen.units import Grist, Length, Ratio


@calculation
def wanted_in_use(stated: Length | None = None, estimated: Length | None = None) -> Length:
    """Length of yarn that the planner uses for a piece.

    Y = stated, or else estimated. A pattern that has been knitted or woven knows best.

    Parameters
    ----------
    stated : length that the pattern or your own record states
    estimated : length estimated from the size of the piece

    Returns
    -------
    Y, a length

    Raises
    ------
    ValueError
        Neither is known, or the length in use is not above zero.

    Notes
    -----
    Valid for two figures of the same piece, both without a reserve.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(wanted_in_use(stated=Quantity(1200, "yd"), estimated=Quantity(1350, "yd")))
    1200 yard
    """
    length = estimated if stated is None else stated
    require(length is not None, "Give the length that the pattern states, or estimate it.")
    require_within(ABOVE_ZERO, "The length wanted", length)
    return length


@calculation
def planned_grist(
    own: Grist | None = None, sample: Grist | None = None, design: Grist | None = None, lot: Grist | None = None
) -> Grist:
    """Grist that a project plans with.

    g = own, or else the sample's, the design's, or the first lot's. What is typed takes precedence over what was
    measured, and that over what was worked out.

    Parameters
    ----------
    own : grist as typed
    sample : grist of a sample
    design : grist of the design
    lot : grist of the first lot, or on the label of a bought yarn

    Returns
    -------
    g, length in a mass

    Raises
    ------
    ValueError
        None is known, or the grist in use is not above zero.

    Notes
    -----
    Valid for yarn spun like the sample.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(planned_grist(sample=Quantity(900, "yd/lb"), lot=Quantity(1000, "yd/lb")))
    900 yard / pound
    """
    grist = next((each for each in (own, sample, design, lot) if each is not None), None)
    require(grist is not None, "Give the grist, or a sample, a design or a lot that has one.")
    require_within(ABOVE_ZERO, "The grist", grist)
    return grist


@calculation
def kept_in_spinning(sample_loss: Ratio | None = None, lot: Ratio | None = None) -> Ratio:
    """Share of the prepared fiber that becomes yarn.

    k = 1 - l of the sample, or else the lot's. A weighed sample beats an expectation.

    Parameters
    ----------
    sample_loss : l, share lost in spinning the sample
    lot : share kept that the lot expects

    Returns
    -------
    k, a share

    Raises
    ------
    ValueError
        Neither is known, or the share in use is not above 0 and up to 1.

    Notes
    -----
    Valid for fiber prepared like the sample's.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(kept_in_spinning(sample_loss=0.25, lot=0.9))
    0.75
    """
    kept = lot if sample_loss is None else 1 - sample_loss
    require(kept is not None, "Choose a lot, or a sample that was weighed.")
    require_within(SOME_FOUND_PART, "The share kept", kept)
    return kept
