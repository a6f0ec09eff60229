"""Questions about a cloth: its size, its sett, its reed and its picks; see `plausible`."""

from workbookgen.language.quantities import SETT
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING

CLOSEST_SETT = 1.25  # of threads that touch: a warp that hides its weft is pressed together; common practice, no source
OPENEST_SETT = 0.55  # of the closest sett: a shawl has 0.6 (common practice, no source), and a warp more open than that lets another weft close over it
OPENEST_OF_ONE = 0.45  # the same of one yarn: a scarf in a coarse reed has 0.5, as many picks, and is no rug (common practice, no source)
FAR_REED = 0.1  # of the sett; common practice, no source: the firmness of a cloth is hardly known better
FEWEST_TOUCHING, MOST_TOUCHING = 0.7, 1.5  # of those expected by K, which is within a tenth; common practice, no source


def close_sett() -> Rule:
    """Warp threads closer than they lie when they touch: another length's sett, or another yarn's grist."""
    return Rule(
        f"ROUND(set_at / touching_used, 9) > {CLOSEST_SETT}",
        lambda values: round(values["set_at"] / values["touching_used"], 9) > CLOSEST_SETT,
        f"{ASKING} Own sett: closer than threads of this grist lie when they touch. Look at the unit of the sett, and at the grist.",
    )


def far_reed(system: str) -> tuple[Rule, ...]:
    """A reed that cannot give the sett: too close even with every other dent empty (its dents were counted over more
    than the unit's length), or more than 10% off with whole and half numbers of ends in a dent.

    Their last digits do not decide.
    """
    off = "ROUND(reed_sett / sett - 1, 9)"
    unit = "A reed of 40/10 has 4 in a cm." if SETT.unit(system) == SETT.metric else "It is the dents in an inch."
    return (
        Rule(
            f"AND(per_dent < 0.75, {off} > {FAR_REED})",
            lambda values: values["per_dent"] < 0.75 and round(values["reed_sett"] / values["sett"] - 1, 9) > FAR_REED,
            f"{ASKING} Reed, dents: with every other one empty they lie closer than the sett in use, and the yarn goes by them. Look at the unit above. {unit}",
        ),
        Rule(
            f"ABS({off}) > {FAR_REED}",
            lambda values: abs(round(values["reed_sett"] / values["sett"] - 1, 9)) > FAR_REED,
            f"{ASKING} Reed, dents: by whole and half ends in a dent it comes out over 10% off the sett in use, and the yarn goes by it. Take another reed, "
            "or put 1, 1 and 2 ends in its dents by turns, type the sett of that as your own, and empty the reed.",
        ),
    )


def touching_counted() -> Rule:
    """Threads counted side by side that do not go with the grist: counted as laid by hand, or over another length.

    Their last digits do not decide.
    """
    return Rule(
        f"OR(ROUND(counted / touching, 9) < {FEWEST_TOUCHING}, ROUND(counted / touching, 9) > {MOST_TOUCHING})",
        lambda values: not FEWEST_TOUCHING <= round(values["counted"] / values["touching"], 9) <= MOST_TOUCHING,
        f"{ASKING} Wraps, touching: far from what its grist would have, and the sett goes by them. Wraps as laid by hand have air between them: press them together, "
        "or leave this empty. Look at the unit, too.",
    )


def open_warp() -> Rule:
    """A warp so open that the weft covers it, as in a rug, with only as many picks as ends; a rug has far more.

    A cloth of one yarn is usually equally open both ways.
    """
    return Rule(
        f"AND(NOT(given(own_picks)), ROUND(set_at / closest, 9) < IF(given(weft_grist), {OPENEST_SETT}, {OPENEST_OF_ONE}))",
        lambda values: values["own_picks"] is None
        and round(values["set_at"] / values["closest"], 9) < (OPENEST_OF_ONE if values["weft_grist"] is None else OPENEST_SETT),
        f"{ASKING} Own picks: on so open a warp the weft can be beaten far closer, as in a rug, and takes several times as much. Type the picks of a sample.",
    )
