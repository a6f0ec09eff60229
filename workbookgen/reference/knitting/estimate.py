"""Which of several estimates of a piece's yarn is used, and what it rests on."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_applicable, require_numbers
from workbookgen.reference.limits import ABOVE_ZERO, NOT_NEGATIVE, require_within
from workbookgen.units import Length, Ratio

SWATCH, GAUGE, PIECE = "swatch", "gauge", "existing piece"


@calculation
def estimate_in_use(swatch: Length | None = None, gauge: Length | None = None, piece: Length | None = None) -> Length:
    """Estimate of the yarn for a piece that the planner uses.

    L = by swatch, else by gauge, else by an existing piece. A swatch of this very yarn says most.

    Parameters
    ----------
    swatch : length of yarn found from a swatch
    gauge : length found from the gauge and the yarn in a stitch
    piece : length found from an existing piece

    Returns
    -------
    L, the estimate in use

    Raises
    ------
    ValueError
        None of the three is known, or the estimate in use is negative.

    Notes
    -----
    Valid for three estimates of the same piece; add a reserve.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(estimate_in_use(swatch=Quantity(1000, "m"), gauge=Quantity(1100, "m")))
    1000 meter
    """
    _, length = _surest(swatch, gauge, piece)
    return length


@calculation
def estimate_basis(swatch: Length | None = None, gauge: Length | None = None, piece: Length | None = None) -> str:
    """What the estimate in use is based on.

    basis = the first known of swatch, gauge, existing piece. How far to trust an estimate depends on its origin, so
    that is stated in words.

    Parameters
    ----------
    swatch : length of yarn found from a swatch
    gauge : length found from the gauge and the yarn in a stitch
    piece : length found from an existing piece

    Returns
    -------
    "swatch", "gauge" or "existing piece"

    Raises
    ------
    ValueError
        None of the three is known, or the estimate in use is negative.

    Notes
    -----
    Valid for three estimates of the same piece.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(estimate_basis(gauge=Quantity(1100, "m")))
    gauge
    """
    basis, length = _surest(swatch, gauge, piece)
    return np.full(length.shape, basis, dtype=object) if np.ndim(length.magnitude) else basis


def _surest(swatch, gauge, piece):
    ranking = ((SWATCH, swatch), (GAUGE, gauge), (PIECE, piece))
    known = [(basis, length) for basis, length in ranking if length is not None]
    require(len(known) > 0, "The yarn is not known: give a swatch, a gauge, or the mass of a piece like it.")
    basis, length = known[0]
    require_within(NOT_NEGATIVE, "The estimate", length)
    return basis, length


@calculation
def estimated_by_parts(project: str, swatch: Length | None = None, gauge: Length | None = None) -> str:
    """The project whose parts an estimate reckons with.

    name = name, where a swatch or a gauge gives the yarn of its area. Two such estimates count the same parts twice;
    that of another piece, by its weight, counts none.

    Parameters
    ----------
    project : the project that the estimate is for
    swatch : length of yarn found from a swatch
    gauge : length found from the gauge and the yarn in a stitch

    Returns
    -------
    the name of the project

    Raises
    ------
    ValueError
        Neither is known, or one is negative.

    Notes
    -----
    Valid for estimates that take all parts of a project.

    References
    ----------
    Definition of a sum.

    Examples
    --------
    >>> print(estimated_by_parts("Cap", gauge=Quantity(64, "yard")))
    Cap
    """
    require_applicable(swatch is not None or gauge is not None, "Neither a swatch nor a gauge gives the yarn.")
    for each in (swatch, gauge):
        if each is not None:
            require_within(NOT_NEGATIVE, "The estimate", each)
    return project


@calculation
def by_rule_alone(basis: str, counted: Length | None = None) -> Ratio:
    """Whether an estimate knows the length of a stitch by rule alone.

    r = 1 by a gauge, if no stitches were unraveled, else 0. Munden's relation is within 10 to 15 percent, so that what
    is needed is less certain.

    Parameters
    ----------
    basis : what the estimate is known from
    counted : yarn in a stitch, found by unraveling some

    Returns
    -------
    r, 1 or 0

    Raises
    ------
    ValueError
        A yarn in a stitch that is not above zero.

    Notes
    -----
    Valid for plain knitting.

    References
    ----------
    D. L. Munden, 1959 (from memory).

    Examples
    --------
    >>> print(by_rule_alone("gauge"))
    1.0
    """
    require_numbers(counted)
    if counted is not None:
        require_within(ABOVE_ZERO, "The yarn in a stitch", counted)
    found = by_element(lambda each: 1.0 if each == GAUGE and counted is None else 0.0, basis)
    return np.asarray(found, dtype=float)[()]
