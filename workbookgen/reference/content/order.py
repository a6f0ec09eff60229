"""The named fibers of a yarn by weight, the largest first."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation
from workbookgen.reference.content.shares import require_shares
from workbookgen.reference.limits import ABOVE_ZERO, require_within
from workbookgen.reference.tolerances import ROUNDING
from workbookgen.texts import folded
from workbookgen.units import Ratio


@calculation
def largest_share(
    fiber_1: str,
    named_1: Ratio,
    fiber_2: str | None = None,
    named_2: Ratio | None = None,
    fiber_3: str | None = None,
    named_3: Ratio | None = None,
    fiber_4: str | None = None,
    named_4: Ratio | None = None,
    before_1: str | None = None,
    before_2: str | None = None,
    before_3: str | None = None,
) -> Ratio:
    """The largest share among the named fibers not listed yet.

    z = max y, over the fibers that are none of those before; 0 where none is left. A label begins with the largest
    share.

    Parameters
    ----------
    fiber_1, fiber_2, fiber_3, fiber_4 : generic names of the yarn's fibers
    named_1, named_2, named_3, named_4 : y, the share under which each is named
    before_1, before_2, before_3 : fibers listed already

    Returns
    -------
    z, a share

    Raises
    ------
    ValueError
        A share that is negative.

    Notes
    -----
    Valid for yarns of up to four fibers.

    References
    ----------
    16 CFR 303.42 (a): in order of predominance by weight (read).

    Examples
    --------
    >>> print(largest_share("silk", 0.25, "wool", 0.75))
    0.75
    """
    pairs = _present((fiber_1, named_1), (fiber_2, named_2), (fiber_3, named_3), (fiber_4, named_4))
    left = _left(pairs, (before_1, before_2, before_3))
    return np.max(np.asarray(left), axis=0)[()]


@calculation
def largest_fiber(
    largest: Ratio,
    fiber_1: str,
    named_1: Ratio,
    fiber_2: str | None = None,
    named_2: Ratio | None = None,
    fiber_3: str | None = None,
    named_3: Ratio | None = None,
    fiber_4: str | None = None,
    named_4: Ratio | None = None,
    before_1: str | None = None,
    before_2: str | None = None,
    before_3: str | None = None,
) -> str:
    """The named fiber with the largest share among those not listed yet.

    name = that of z; of equal ones, the first. It comes next on the label.

    Parameters
    ----------
    largest : z, the largest share not listed yet
    fiber_1, fiber_2, fiber_3, fiber_4 : generic names of the yarn's fibers
    named_1, named_2, named_3, named_4 : y, the share under which each is named
    before_1, before_2, before_3 : fibers listed already

    Returns
    -------
    a name

    Raises
    ------
    ValueError
        A share that is negative, or no fiber that is left.

    Notes
    -----
    Valid for yarns of up to four fibers.

    References
    ----------
    16 CFR 303.42 (a): in order of predominance by weight (read).

    Examples
    --------
    >>> print(largest_fiber(0.75, "silk", 0.25, "wool", 0.75))
    wool
    """
    require_within(ABOVE_ZERO, "The share", largest)
    pairs = _present((fiber_1, named_1), (fiber_2, named_2), (fiber_3, named_3), (fiber_4, named_4))
    left = _left(pairs, (before_1, before_2, before_3))

    def first(most, *rest) -> str:
        shares, names = rest[: len(pairs)], rest[len(pairs) :]
        return next((str(name) for share, name in zip(shares, names, strict=True) if share >= most - ROUNDING), "")

    return by_element(first, largest, *left, *(fiber for fiber, _ in pairs))


def _present(*pairs) -> list[tuple]:
    return [(fiber, named) for fiber, named in pairs if fiber is not None and named is not None]


def _left(pairs, before) -> list[np.ndarray]:
    """The share of each fiber, 0 where it was listed before."""
    require_shares(*(named for _, named in pairs))
    done = [each for each in before if each is not None]

    def left(share, name, *told) -> float:
        return 0.0 if folded(str(name)) in {folded(str(each)) for each in told} else float(share)

    return [np.asarray(by_element(left, named, fiber, *done), dtype=float) for fiber, named in pairs]
