"""Which offer costs least by its yarn, in words."""

from workbookgen.reference.calculation import by_element, calculation, require, require_numbers
from workbookgen.reference.limits import NOT_NEGATIVE, require_within
from workbookgen.reference.words import MOST, percent, said
from workbookgen.units import PerMass, Ratio


@calculation
def cheapest_in_words(
    best: str,
    following: str,
    least: PerMass,
    dearer: PerMass,
    apart: Ratio,
    lacking: Ratio,
    more: Ratio | None = None,
    rough: str | None = None,
) -> str:
    """Which offer costs least by its yarn, and how surely, in words.

    text = the cheapest, the next, whether t = 1, and whether another may cost less. Prices that cannot be told apart
    decide nothing; beside a gift no price is so many percent more.

    Parameters
    ----------
    best : name of the cheapest offer
    following : name of the next one
    least : price of the cheapest, 0 for a gift
    dearer : price of the next one
    apart : t, 1 where the two prices can be told apart, 0 where they cannot
    lacking : number of offers without a price by their yarn
    more : how much more the next one costs, a share, if the cheapest costs anything
    rough : name of an offer, known less well, that may cost less than the cheapest; none if there is none

    Returns
    -------
    a sentence or two

    Raises
    ------
    ValueError
        A negative share or number, or offers that cost something without how much more.

    Notes
    -----
    Valid for two offers or more.

    References
    ----------
    Definition of the least.

    Examples
    --------
    >>> print(cheapest_in_words("brown", "gray", Quantity(36, "1/lb"), Quantity(45, "1/lb"), apart=1, lacking=0,
    ...     more=0.25))
    brown costs least by its yarn: gray, the next, costs 25% more.
    """
    require_numbers(least, dearer, apart, lacking, more)
    require_within(NOT_NEGATIVE, "A price", least, dearer)
    if more is None:
        require(least.m_as("1/g") == 0, "How much more the next one costs is not known.")
        return by_element(_beside_a_gift, best, following, dearer.m_as("1/g"), said(lacking))
    require(more < MOST - 1, "That is too large a difference to state.")
    require((apart == 0) | (apart == 1), "Two prices can be told apart, 1, or not, 0.")
    return by_element(
        _cheapest_in_words, best, following, percent(more), apart, said(lacking), "" if rough is None else rough
    )


def _cheapest_in_words(best: str, following: str, more: str, apart: float, lacking: str, rough: str) -> str:
    dearer = "about as much" if more == "0%" else f"{more} more"
    if apart and rough:
        text = f"{best} seems cheapest by its yarn, but not for certain: {following}, the next, costs {dearer}, but {rough} is known less well and may cost less."
    elif apart:
        text = f"{best} costs least by its yarn: {following}, the next, costs {dearer}."
    else:
        text = f"{best} seems cheapest by its yarn, but not for certain: {following}, the next, costs {dearer}, which is within their uncertainty. Choose by the fiber."
    return text + _left_aside(lacking)


def _beside_a_gift(best: str, following: str, dearer: float, lacking: str) -> str:
    text = (
        f"{best} costs nothing. The next by its yarn is {following}."
        if dearer > 0
        else f"{best} and {following} cost nothing. Choose by the fiber."
    )
    return text + _left_aside(lacking)


def _left_aside(lacking: str) -> str:
    if lacking == "0":
        return ""
    return f" {lacking} {'offer is left aside: its line says' if lacking == '1' else 'offers are left aside: their lines say'} why."
