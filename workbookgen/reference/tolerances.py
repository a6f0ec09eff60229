"""Differences that count as none: how far rounding alone may move a number.

Each is far above the rounding of the calculations that it is for, and far below anything that a person could measure.
"""

from workbookgen.units import Quantity

# Relative. Two ways of calculating the same number, such as a sum and its only part, differ in the last digits.
ROUNDING = 1e-9
# Of a relative variance, which sums of squares may make negative by so much.
ROUNDING_OF_SQUARES = 1e-12
# A relative variance that counts as none: skeins that differ by a thousandth of their mean, which no scale tells.
NO_VARIANCE = 1e-6

# A part of a step or an amount that no scale shows and nobody reads: less is nothing.
HAIR = 1e-6
# The rest is the rounding of shares of a weight.
NEARLY_ALL = 0.999999
# The rest is the rounding of hours, which are only added.
NEARLY_ALL_HOURS = 0.999999999

SPECK = 1e-6  # grams: less counts as zero, since sums differ in their last digits
# No scale tells this from zero, nor do some spreadsheet programs.
SQUARED_SPECK = Quantity(1e-15, "g^2")
