"""Whether the colors of strands that are plied still meet at the end of the yarn."""

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.units import Length, Ratio


@calculation
def out_of_step(length: Length, difference: Ratio, strands: Ratio = 2) -> Length:
    """How far one strand's colors are ahead of another's at the end of the yarn.

    a = ℓ · δ. A finer strand spreads each color over more yarn, and the differences add up.

    Parameters
    ----------
    length : ℓ, length of the yarn
    difference : δ, difference between the grists of the strands, at most, a share
    strands : strands that are plied together, two or more

    Returns
    -------
    a, a length

    Raises
    ------
    ValueError
        A negative length or difference, or a single strand.

    Notes
    -----
    Valid for strands that begin with the same color, and differ by small shares. Of skeins with a coefficient of
    variation v, two strands hardly differ by more than 3 v, three or four by more than 4 v.

    References
    ----------
    Geometry of two evenly stretched lengths. The range of two to four normal values, in 95 of 100 below 2.8 to 3.6 of
    their deviation: tables of the studentized range (from memory).

    Examples
    --------
    >>> print(out_of_step(Quantity(180, "m"), 0.05))
    9.0 meter
    """
    require_numbers(length, difference)
    require_within(NOT_NEGATIVE, "The length", length)
    require_within(NOT_NEGATIVE, "The difference", difference)
    require(strands > 1, "One strand has no other to be out of step with.")
    return length * difference


@calculation
def meeting_words(ahead: Length, shortest: Length) -> str:
    """Whether the colors of the plies still meet at the end of the yarn, in words.

    text = meet where a ≤ ρ / 2, mostly apart where a > ρ / 2, apart where a ≥ ρ. Of a run ρ, a color meets itself in ρ
    − a.

    Parameters
    ----------
    ahead : a, how far the strands are out of step at the end
    shortest : ρ, the shortest run of a color

    Returns
    -------
    a sentence

    Raises
    ------
    ValueError
        A negative length.

    Notes
    -----
    Valid for strands that begin with the same color.

    References
    ----------
    Geometry of two runs that overlap.

    Examples
    --------
    >>> print(meeting_words(Quantity(9, "m"), Quantity(20, "m")))
    If the strands differ by no more, the colors of the plies meet to the end of the yarn.
    """
    require_within(NOT_NEGATIVE, "A length", ahead, shortest)
    return by_element(_meeting, (ahead - shortest).m_as("m"), (ahead - shortest / 2).m_as("m"))


def _meeting(beyond_all: float, beyond_half: float) -> str:
    """How far the strands are out of step beyond the shortest run, and beyond half of it, without the last digits."""
    if beyond_all > -1e-9:
        return "At the end the plies may have lost step: the shortest color then no longer meets itself."
    if beyond_half > 1e-9:
        return "At the end most of the shortest color may be plied with another: the plies then meet in less than half of it."
    return "If the strands differ by no more, the colors of the plies meet to the end of the yarn."
