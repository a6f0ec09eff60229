"""Dividing what several people bought together: weights to the scale's step, money to the coin, and nothing left over.

`claims` says what everyone is due, `steps` makes whole steps and coins of it, and `remainders` hands
out the steps that are left, so that all add up to the whole.
"""

from workbookgen.reference.split.claims import asked, claim, for_parts, of_the_wanted, part, split_in_words
from workbookgen.reference.split.remainders import given_out, handed_out, last_turn, steps_left, turn, whole
from workbookgen.reference.split.steps import exact, of_steps, undivided, whole_steps
