"""The fiber content of a yarn in words, as on a label."""

import numpy as np

from workbookgen.reference.calculation import by_element, calculation, require, require_name
from workbookgen.reference.content.shares import require_shares
from workbookgen.reference.tolerances import HAIR
from workbookgen.texts import is_blank
from workbookgen.units import Ratio


@calculation
def content_words(
    fiber_1: str,
    percent_1: Ratio,
    percent_2: Ratio,
    percent_3: Ratio,
    percent_4: Ratio,
    others: Ratio,
    unnamed: Ratio,
    whole: Ratio,
    untold: Ratio = 0.0,
    fiber_2: str | None = None,
    fiber_3: str | None = None,
    fiber_4: str | None = None,
) -> str:
    """The fiber content of a yarn, on a label.

    words = each fiber's percentage and name, by weight; what has no name comes last as "other fiber". It is stated only
    if the whole yarn is known.

    Parameters
    ----------
    fiber_1, fiber_2, fiber_3, fiber_4 : generic names of the fibers, the largest first
    percent_1, percent_2, percent_3, percent_4 : their percentages, 0 where there is none
    others : that of those without a name
    unnamed : how many these are
    whole : what all shares add up to
    untold : strands about which something is not known

    Returns
    -------
    a text such as "80% wool, 20% silk"

    Raises
    ------
    ValueError
        Shares that are not all of the yarn, or a strand about which something is not known.

    Notes
    -----
    Valid for yarns of up to four fibers. The rules in force where you sell decide, and ask for more: who made it, and
    where.

    References
    ----------
    16 CFR 303.6 (a), 303.27 "100%", 303.42 (a), order and "other fiber", 300.19 (b) mohair and cashmere (read); 303.16
    (a) (read as quoted elsewhere).

    Examples
    --------
    >>> print(content_words("wool", 80, 20, 0, 0, others=0, unnamed=0, whole=1, fiber_2="silk"))
    80% wool, 20% silk
    """
    require_shares(percent_1, percent_2, percent_3, percent_4, others, unnamed, whole, untold)
    require(np.abs(np.asarray(whole) - 1.0) <= HAIR, "The shares are not all of the yarn.")
    require(np.asarray(untold) < 0.5, "Something about a strand is not known.")
    told = [(percent_1, fiber_1)] + [
        pair for pair in ((percent_2, fiber_2), (percent_3, fiber_3), (percent_4, fiber_4)) if pair[1] is not None
    ]

    def words(rest, count, *each) -> str:
        pairs = list(zip(each[: len(told)], each[len(told) :], strict=True))
        parts = [f"{int(percent)}% {name}" for percent, name in pairs if percent > 0]
        if rest > 0:
            parts.append(f"{int(rest)}% {'other fiber' if round(count) == 1 else 'other fibers'}")
        return ", ".join(parts)

    return by_element(words, others, unnamed, *(percent for percent, _ in told), *(name for _, name in told))


@calculation
def on_ticket(content: str) -> str:
    """The fiber content, with the words that begin it on a ticket.

    words = "Fiber content: " and the fibers. Buyers look for these words.

    Parameters
    ----------
    content : the fibers with their percentages

    Returns
    -------
    a text such as "Fiber content: 80% wool, 20% silk"

    Raises
    ------
    ValueError
        A blank content.

    Notes
    -----
    Valid for any content that is known.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> print(on_ticket("80% wool, 20% silk"))
    Fiber content: 80% wool, 20% silk
    """
    require(by_element(lambda each: not is_blank(str(each)), content), "There is nothing to state.")
    return by_element(lambda each: f"Fiber content: {each}", content)


@calculation
def what_to_type(skein: str, content: str | None = None, lot: str | None = None, design: str | None = None) -> str:
    """The fiber content, or what to type to get it.

    words = the content, or where to look for what is missing. Nothing unknown is stated.

    Parameters
    ----------
    skein : the skein of the label
    content : its fiber content
    lot : the one lot that it is from
    design : its design

    Returns
    -------
    a text

    Raises
    ------
    ValueError
        A blank name of the skein.

    Notes
    -----
    Valid for any skein.

    References
    ----------
    Definition of a list.

    Examples
    --------
    >>> print(what_to_type("Aster 1", design="Gray 2-ply"))
    Unknown: see the strands of its design.
    """
    require_name(skein)
    if content is not None:
        return by_element(lambda each, _: str(each), content, skein)
    if design is not None:
        return by_element(lambda _, __: "Unknown: see the strands of its design.", design, skein)
    if lot is not None:
        return by_element(lambda _, __: "Unknown: see the fiber of its lot.", lot, skein)
    return by_element(lambda _: "Unknown: it has no lot and no design.", skein)
