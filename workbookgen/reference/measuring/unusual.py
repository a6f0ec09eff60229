"""What is unlike most skeins, and so may have been typed in another unit or measured another way."""

import numpy as np

from workbookgen.reference.calculation import calculation, quotient, require, require_numbers
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.units import Length, Mass, PerLength, Quantity

SHORT = Quantity(20, "cm")
HEAVY, LIGHT = Quantity(1, "kg"), Quantity(3, "g")
WASHED = (0.75, 1.1)
COUNTED = (0.55, 1.75)
REST = 3
QUESTIONS = (
    "Loop: under 20 cm (8 in) all the way around. Look at the unit: yards or meters are too large for it.",
    "Weight: more than a kilogram (2 lb) for one skein. Look at the unit: grams, or ounces?",
    "Weight: less than 3 g (0.1 oz) for a skein. Look at the unit: grams, or ounces?",
    "Loop washed: far from the loop of its reel. Was it wound on another? Measure one full loop, all the way around, not the length of the folded skein.",
    "Wraps counted: far from what its length and weight suggest. Look at the wraps, the weight, and the count on the ruler.",
    "Rest: more than 3 turns of its reel. Look at its unit.",
)


@calculation
def unusual(
    loop: Length | None = None,
    mass: Mass | None = None,
    washed_loop: Length | None = None,
    counted: PerLength | None = None,
    expected: PerLength | None = None,
    rest: Length | None = None,
    wraps: float | None = None,
) -> str:
    """The question about a measurement that is unlike most.

    words = the first that holds of: L < 20 cm; m > 1 kg; m < 3 g; L' / L not within 0.75 and 1.1; w / w0 not within
    0.55 and 1.75; r > 3 L, where n > 0. The measurement is taken as it is.

    Parameters
    ----------
    loop : L, one loop on the reel
    mass : m, the yarn alone
    washed_loop : L', one loop of the washed skein
    counted, expected : w and w0, wraps counted on a ruler, and those that the grist suggests
    rest : r, a leftover length
    wraps : n, the turns that it was left over from

    Returns
    -------
    the words

    Raises
    ------
    ValueError
        Nothing is unusual, or an amount is not a number, or is negative.

    Notes
    -----
    Valid for one skein, of any fiber.

    References
    ----------
    Common practice, no source: the limits lie well beyond what the planner takes as usual.

    Examples
    --------
    >>> print(unusual(mass=Quantity(100, "oz")))
    Is it right? Weight: more than a kilogram (2 lb) for one skein. Look at the unit: grams, or ounces?
    """
    require_numbers(loop, mass, washed_loop, counted, expected, rest, wraps)
    for name, each in (("The loop", loop), ("The expected wraps", expected)):
        if each is not None:
            require_within(NOT_NEGATIVE, name, each)
    found = np.array(
        np.broadcast_arrays(
            *(
                np.asarray(each)
                for each in (
                    loop is not None and loop < SHORT,
                    mass is not None and mass > HEAVY,
                    mass is not None and mass < LIGHT,
                    washed_loop is not None and loop is not None and _is_far(washed_loop, loop, *WASHED),
                    counted is not None and expected is not None and _is_far(counted, expected, *COUNTED),
                    rest is not None and loop is not None and wraps is not None and _is_long(rest, loop, wraps),
                )
            )
        )
    )
    require(found.any(axis=0), "Nothing is unusual.")
    words = np.array([f"Is it right? {question}" for question in QUESTIONS], dtype=object)[found.argmax(axis=0)]
    return words if found.ndim > 1 else str(words)


def _is_long(rest: Quantity, loop: Quantity, wraps) -> np.ndarray:
    """Whether a leftover of some wraps is longer than three of them, without the last digits."""
    return (np.asarray(wraps) > 0) & (np.round((rest - REST * loop).m_as("m"), 9) > 0)


def _is_far(amount: Quantity, expected: Quantity, least: float, most: float):
    """Whether it is beyond these shares of what is expected, without the last digits; never if nothing is expected."""
    whole = np.asarray(expected.magnitude, dtype=float)
    share = np.round(quotient(amount.m_as(expected.units), whole), 9)
    return (whole > 0) & ((share < least) | (share > most))
