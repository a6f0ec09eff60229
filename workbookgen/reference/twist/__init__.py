"""Twist: how much of it, what it does to the yarn, and how a wheel puts it in.

`amount` is about turns in a length and the factor that compares yarns of unlike
thickness; `factors` tells that factor in each system. `angle` is about the lie of fibers
and strands, and what length that costs. `plied` sets the twist of the ply against that of
its singles. `wheel` turns a wanted twist into whorls, treadles and drafts.
"""

from workbookgen.reference.twist.amount import (
    SYSTEMS,
    factor,
    least_twist,
    staple_words,
    turns,
    turns_counted,
)
from workbookgen.reference.twist.angle import (
    feed,
    ply_path,
    ply_ratio,
    ply_take_up,
    retraction,
    retraction_by_twist,
    retraction_left,
    surface_angle,
    take_up,
)
from workbookgen.reference.twist.factors import (
    cotton_factor,
    run_factor,
    tex_factor,
    worsted_factor,
)
from workbookgen.reference.twist.plied import (
    balance,
    balance_words,
    equal_factor_ply_twist,
    opposite,
    ply_twist,
)
from workbookgen.reference.twist.wheel import (
    draft_for,
    drive_ratio,
    geared,
    inserted,
    treadles_for,
    whorl_for,
)

__all__ = [
    "SYSTEMS",
    "balance",
    "balance_words",
    "cotton_factor",
    "draft_for",
    "drive_ratio",
    "equal_factor_ply_twist",
    "factor",
    "feed",
    "geared",
    "inserted",
    "least_twist",
    "opposite",
    "ply_path",
    "ply_ratio",
    "ply_take_up",
    "ply_twist",
    "retraction",
    "retraction_by_twist",
    "retraction_left",
    "run_factor",
    "staple_words",
    "surface_angle",
    "take_up",
    "tex_factor",
    "treadles_for",
    "turns",
    "turns_counted",
    "whorl_for",
    "worsted_factor",
]
