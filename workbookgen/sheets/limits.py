"""How much may be typed: the limits of the planner's inputs, in the unit that the cell shows.

One list. The message about a wrong entry, the validation of its cell, the guard of every formula
and the edges that the check tries are all made from it. Most of the upper limits are above anything
that is ever spun, and below what would spoil a sum of such numbers (common practice, no source).
What only one input needs stands with that input.
"""

from workbookgen.language.domains import Number

AMOUNT = Number(above=0, most=1_000_000)  # a mass, a length, a grist, a price: a million grams are a ton of yarn
NONE_OR_AMOUNT = Number(least=0, most=1_000_000)
LARGE = Number(above=0, most=10_000_000)  # a length or a grist that was worked out from others: the yarn of a ton of lace
NONE_OR_LARGE = Number(least=0, most=10_000_000)
REACH = Number(above=0, most=1000)  # what a pair of arms spans, in inches or centimeters
STITCHES = Number(above=0, most=1000)  # stitches, rows or threads over the length of a gauge
PIECES = Number(above=0, most=1000)  # how many alike
FINENESS = Number(above=0, most=1000)  # of a fiber, in micrometers or dtex: coarser than any
SIZE = Number(above=0, most=10_000)  # of a piece of cloth, in inches or centimeters
NONE_OR_SIZE = Number(least=0, most=10_000)
TURNS = Number(above=0, most=100_000)  # wraps, treadles, seconds: more than a day of spinning
NONE_OR_TURNS = Number(least=0, most=100_000)
CLOSE = Number(above=0, most=500)  # threads or wraps in an inch, or micrometers: closer than any yarn lies, coarser than any fiber
TWISTED = Number(above=0, most=200)  # turns in an inch
BATH = Number(above=0, most=500)  # liters per kilogram of goods
RATIO = Number(above=0, most=200)  # of a wheel
NONE_OR_TWISTED = Number(least=0, most=200)
DENSE = Number(above=0, most=5)  # g/cm³: glass has 2.5, and asbestos, the densest fiber that was spun, under 3.5 (from memory)
TWOFOLD = Number(above=0, most=2)
STRANDS = Number(least=1, most=12, whole=True)  # as many as the planner's ply structures have
PLIED = Number(least=2, most=12, whole=True)
COUNTED = Number(least=1, most=1000, whole=True)
LOSS = Number(least=0, below=1)  # a share that is lost: less than all, or nothing would be left to work with
NONE_OR_PART = Number(least=0, most=1)
PART = Number(above=0, most=1)
UNCERTAIN = Number(least=0, most=0.5)  # a standard uncertainty; beyond half its value nothing is known
SHRINKAGE = Number(least=-0.5, below=0.9)  # negative for growth
HEAT = Number(least=-50, most=250)  # degrees, Fahrenheit or Celsius
