"""Twist: how much of it, what it does to the yarn, and how a wheel puts it in.

`amount` is about turns in a length and the factor that compares yarns of different thickness;
`factors` gives that factor in each system. `angle` is about the lie of fibers, `ply_path` about that
of strands, and what length each costs. `plied` compares the twist of the ply with that of its
singles. `wheel` turns a wanted twist into whorls, treadles and drafts, `whorls` finds the nearest
among several whorls, and `spindle` does without a wheel.
"""

from workbookgen.reference.twist.amount import SYSTEMS, factor, least_twist, staple_words, turns, turns_counted
from workbookgen.reference.twist.angle import (
    retraction,
    retraction_by_twist,
    retraction_left,
    surface_angle,
    turns_for_angle,
)
from workbookgen.reference.twist.factors import cotton_factor, run_factor, tex_factor, worsted_factor
from workbookgen.reference.twist.plied import (
    balance,
    balance_words,
    equal_factor_ply_twist,
    opposite,
    ply_twist,
    twist_left,
)
from workbookgen.reference.twist.ply_path import feed, ply_path, ply_ratio, ply_take_up, take_up, take_up_in_use
from workbookgen.reference.twist.spindle import (
    draft_of_turns,
    rolls_for,
    seconds_for,
    spindle_turns,
    turns_by_roll,
    turns_by_time,
)
from workbookgen.reference.twist.wheel import (
    counted_ratio,
    draft_for,
    drive_ratio,
    geared,
    inserted,
    treadles_for,
    whorl_for,
)
from workbookgen.reference.twist.whorls import nearest_treadles, nearest_words, off_the_wanted, place_of_least
