"""How sure it is what a lot will give.

A lot that waits to be scoured is the least certain of all: a breed's yields vary widely. What was weighed is known;
each stage not weighed yet adds its own uncertainty. And that uncertainty is of the whole lot, so it does not shrink
because half of it is spun.
"""

import numpy as np

from workbookgen.reference.calculation import calculation, require_numbers
from workbookgen.reference.fates import share_still_there
from workbookgen.reference.limits import NO_MASS, NOT_NEGATIVE, Limits, require_within
from workbookgen.units import Mass, MassSquared, Quantity, Ratio

PREPARED = 4  # the stage of fiber that was bought ready to spin


@calculation
def yarn_uncertainty(
    yarn: Mass,
    stage: Ratio,
    u_skirting: Ratio,
    u_yield: Ratio,
    u_preparation: Ratio,
    u_spinning: Ratio,
    u_own: Ratio,
    skirted: Mass | None = None,
    scoured: Mass | None = None,
    prepared: Mass | None = None,
    whole: Mass | None = None,
    own_skirting: Ratio | None = None,
    own_yield: Ratio | None = None,
    own_preparation: Ratio | None = None,
    own_spinning: Ratio | None = None,
    gone: str | None = None,
    u_second: Ratio = 0.0,
) -> Mass:
    """Standard uncertainty of the yarn that a whole lot gives.

    u = m · √(Σ r²), over the stages that were still ahead when the lot was bought and are not weighed. Spinning half
    of the lot makes the rest no more certain: what was wrong about the whole is wrong about the rest.

    Parameters
    ----------
    yarn : m, mass of yarn that the whole lot is to give
    stage : stage at which the lot was bought, 1 raw fleece to 5 yarn
    u_skirting : r of skirting, as a share of what is kept
    u_yield : r of scouring
    u_preparation : r of carding or combing
    u_spinning : r of spinning and plying
    u_own : r of your own figure, which replaces that of its stage
    skirted : mass weighed after skirting, if it was
    scoured : mass weighed after scouring, if it was
    prepared : mass weighed after preparation, if it was
    whole : mass of all the yarn, once it is weighed
    own_skirting : your own figure for skirting, if there is one
    own_yield : your own figure for the scoured yield
    own_preparation : your own figure for preparation
    own_spinning : your own figure for spinning
    gone : where the rest of the lot went, if it is gone
    u_second : r of a second preparation; 0 where there is none

    Returns
    -------
    u, a mass

    Raises
    ------
    ValueError
        A negative mass or uncertainty, or a stage that does not exist.

    Notes
    -----
    Valid for independent stages.

    References
    ----------
    JCGM 100, 5.1.6, the relative form for a product (from memory).

    Examples
    --------
    >>> print(yarn_uncertainty(Quantity(100, "g"), 1, u_skirting=0.03, u_yield=0.04, u_preparation=0, u_spinning=0,
    ...     u_own=0.02))
    5.0 gram
    """
    require_numbers(yarn, stage, u_skirting, u_yield, u_preparation, u_spinning, u_own)
    require_numbers(skirted, scoured, prepared, whole, own_skirting, own_yield, own_preparation, own_spinning)
    require_within(NOT_NEGATIVE, "The mass of the yarn", yarn)
    require_within(Limits(least=1, most=5, whole=True), "A stage is a whole number from 1 to 5.", stage)
    for doubt in (u_skirting, u_yield, u_preparation, u_spinning, u_own, u_second):
        require_within(NOT_NEGATIVE, "A standard uncertainty", doubt)
    of_stages = (
        u_skirting if own_skirting is None else u_own,
        u_yield if own_yield is None else u_own,
        u_preparation if own_preparation is None else u_own,
        u_spinning if own_spinning is None else u_own,
    )
    weighed = (skirted, scoured, prepared, whole)
    squares = 0.0
    for number, doubt in enumerate(of_stages, start=1):
        if all(mass is None for mass in weighed[number - 1 :]):
            squares = squares + np.where(np.asarray(stage) > number, 0.0, np.square(doubt))
    if prepared is None and whole is None:  # what was bought prepared may be prepared once more
        squares = squares + np.where(np.asarray(stage) > PREPARED, 0.0, np.square(u_second))
    return yarn * (np.sqrt(squares)[()] * share_still_there(gone))


@calculation
def clean_uncertainty(
    clean: Mass,
    stage: Ratio,
    u_skirting: Ratio,
    u_yield: Ratio,
    u_own: Ratio,
    own_skirting: Ratio | None = None,
    own_yield: Ratio | None = None,
) -> Mass:
    """Standard uncertainty of the clean fiber that an offered fleece gives.

    u = m · √(Σ r²), over skirting and scouring where they are still to come. Nothing of an offer has been weighed yet.

    Parameters
    ----------
    clean : m, mass of clean fiber that it is to give
    stage : stage at which it is bought, 1 raw fleece to 5 yarn
    u_skirting : r of skirting, as a share of what is kept
    u_yield : r of scouring
    u_own : r of your own figure, which replaces that of its stage
    own_skirting : your own figure for skirting, if there is one
    own_yield : your own figure for the scoured yield

    Returns
    -------
    u, a mass

    Raises
    ------
    ValueError
        A negative mass or uncertainty, or a stage that does not exist.

    Notes
    -----
    Valid for independent stages.

    References
    ----------
    JCGM 100, 5.1.6, the relative form for a product (from memory).

    Examples
    --------
    >>> print(clean_uncertainty(Quantity(100, "g"), 1, u_skirting=0.03, u_yield=0.04, u_own=0.02))
    5.0 gram
    """
    return yarn_uncertainty(
        clean,
        stage,
        u_skirting,
        u_yield,
        u_yield * 0.0,
        u_yield * 0.0,
        u_own,
        own_skirting=own_skirting,
        own_yield=own_yield,
    )


@calculation
def kept_uncertainty(
    stage: Ratio,
    u_skirting: Ratio,
    u_yield: Ratio,
    u_preparation: Ratio,
    u_spinning: Ratio,
    u_own: Ratio,
    own_skirting: Ratio | None = None,
    own_yield: Ratio | None = None,
    own_preparation: Ratio | None = None,
    own_spinning: Ratio | None = None,
    u_second: Ratio = 0.0,
) -> Ratio:
    """Relative uncertainty of what is kept of more like a lot.

    r = √(Σ r²), over the stages still ahead of fiber in the form in which the lot was bought. What was weighed of the
    lot says nothing about another fleece.

    Parameters
    ----------
    stage : stage at which the lot was bought, 1 raw fleece to 5 yarn
    u_skirting : r of skirting, as a share of what is kept
    u_yield : r of scouring
    u_preparation : r of carding or combing
    u_spinning : r of spinning and plying
    u_own : r of your own figure, which replaces that of its stage
    own_skirting : your own figure for skirting, if there is one
    own_yield : your own figure for the scoured yield
    own_preparation : your own figure for preparation
    own_spinning : your own figure for spinning
    u_second : r of a second preparation; 0 where there is none

    Returns
    -------
    r, a share

    Raises
    ------
    ValueError
        A negative uncertainty, or a stage that does not exist.

    Notes
    -----
    Valid for fleeces whose yields are independent, and independent stages.

    References
    ----------
    JCGM 100, 5.1.6, the relative form for a product (from memory).

    Examples
    --------
    >>> print(round(kept_uncertainty(1, u_skirting=0.03, u_yield=0.04, u_preparation=0, u_spinning=0, u_own=0.02), 6))
    0.05
    """
    one = Quantity(1.0, "g")
    own = dict(
        own_skirting=own_skirting, own_yield=own_yield, own_preparation=own_preparation, own_spinning=own_spinning
    )
    return yarn_uncertainty(
        one, stage, u_skirting, u_yield, u_preparation, u_spinning, u_own, **own, u_second=u_second
    ).m_as("g")


@calculation
def rest_square(
    uncertainty: Mass,
    stage: Ratio,
    u_batch: Ratio,
    to_come: Mass,
    plied: Mass | None = None,
    gone: str | None = None,
    u_grist: Ratio = 0.0,
    unweighed: Mass = NO_MASS,
) -> MassSquared:
    """Squared uncertainty of what a lot can still give.

    q = u² + h² · n · (n + 2 · m), and of a bought thread u² + h² · (p · (p + 2 · m) + n · (n + 2 · m)); 0 once its rest
    is gone. A thread thicker than its label says is so throughout: its skeins took more, and the rest is shorter. So is
    what a hand spins, of which skeins took more than is expected until they are weighed.

    Parameters
    ----------
    uncertainty : u, standard uncertainty of what the whole lot gives
    stage : stage at which the lot was bought, 1 raw fleece to 5 yarn
    u_batch : h of a bought yarn, relative uncertainty of its label
    to_come : m, mass still to come; its own doubt, h · m, is added where its length is asked for
    plied : p, mass that the skeins of designs took of it, where there are designs
    gone : where the rest of the lot went, if it is gone
    u_grist : h of fiber, relative uncertainty of the grist to which it is spun
    unweighed : n, mass that skeins not weighed yet are expected to have taken

    Returns
    -------
    q, a mass squared

    Raises
    ------
    ValueError
        A negative mass or uncertainty.

    Notes
    -----
    Valid for a thread that only designs used; together with h · m it makes h · (p + m).

    References
    ----------
    JCGM 100, 5.2.2, on correlated terms (from memory).

    Examples
    --------
    >>> print(rest_square(Quantity(0, "g"), stage=5, u_batch=0.5, plied=Quantity(20, "g"),
    ...     to_come=Quantity(30, "g")).to("g^2"))
    400.0 gram ** 2
    """
    require_numbers(uncertainty, stage, u_batch, u_grist, plied, to_come, unweighed)
    require_within(NOT_NEGATIVE, "A mass", uncertainty, to_come, unweighed)
    require_within(NOT_NEGATIVE, "A standard uncertainty", u_batch, u_grist)
    is_bought = np.asarray(stage) > PREPARED
    own, rest, guessed = (each.m_as("g") for each in (uncertainty, to_come, unweighed))
    together = np.square(np.where(is_bought, u_batch, u_grist)) * guessed * (guessed + 2 * rest)
    if plied is not None:
        require_within(NOT_NEGATIVE, "A mass", plied)
        taken = plied.m_as("g")
        together = together + np.where(is_bought, np.square(u_batch) * taken * (taken + 2 * rest), 0.0)
    return Quantity((np.square(own) + together * share_still_there(gone))[()], "g^2")
