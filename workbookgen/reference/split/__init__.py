"""Dividing what several people bought together: weights to the scale's step, money to the coin, and nothing over.

`claims` says what everyone is due, `steps` makes whole steps and coins of it that add up to the whole
to the last one.
"""

from workbookgen.reference.split.claims import asked, claim, for_parts, line, of_the_wanted, part, split_in_words
from workbookgen.reference.split.steps import exact, given_out, handed_out, last_turn, of_steps, steps_left, turn, undivided, whole, whole_steps

__all__ = [
    "asked",
    "claim",
    "exact",
    "for_parts",
    "given_out",
    "handed_out",
    "last_turn",
    "line",
    "of_steps",
    "of_the_wanted",
    "part",
    "split_in_words",
    "steps_left",
    "turn",
    "undivided",
    "whole",
    "whole_steps",
]
