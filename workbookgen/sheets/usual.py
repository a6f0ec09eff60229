"""How large numbers usually are. What lies beyond is asked about, and counts all the same.

One list, as that of the limits (`limits`), with quantities as ends. All of it is common practice, no source, unless
it says otherwise. What only one field needs stands with that field.
"""

from dataclasses import replace

from workbookgen.language.usual import Usual
from workbookgen.units import Quantity

# Reels and skeins
LOOPS = Usual(least=Quantity(20, "centimeter"), hint="Look at the unit above: yards or meters are too large for it.")
OFF_A_LOOP = Usual(most=Quantity(8, "centimeter"))
IN_A_BALL = Usual(Quantity(10, "meter"), Quantity(10, "kilometer"))
ON_A_SPOOL = Usual(least=Quantity(10, "meter"))

# Yarn
WRAPS = Usual(Quantity(2, "1 / inch"), Quantity(100, "1 / inch"))
K_AS_LAID = Usual(0.19, 0.62, "Look at the wraps, and at the length and weight.")  # 0.55 and 1.75 of the usual 0.35
TWISTS = Usual(most=Quantity(60, "1 / inch"))  # crepe yarns have less (from memory)
TWISTS_COUNTED = replace(TWISTS, hint="Look at the unit of the length: yards or meters are too large for it.")
# Turns per centimeter times the root of tex: softer than the softest single, harder than crepe.
TWIST_FACTOR = Usual(4.0, 110.0, "Look at the turns, their length and the grist.")
TAKE_UP = Usual(most=0.25)  # an ordinary ply loses 1 to 6%
MEASURED_TAKE_UP = replace(TAKE_UP, least=-0.05)  # plied loosely against the singles' twist, a yarn grows
OF_ONE_SINGLE = replace(MEASURED_TAKE_UP, hint="The length used is that of one of the singles, not of all together.")
SHRINKS = Usual(most=0.3)  # felted on purpose, it is a fulled piece
SHRUNK = replace(SHRINKS, least=-0.1)
SHRUNK_IN_A_SAMPLE = Usual(-0.1, 0.25, "Were before and after washing exchanged?")

# Fiber
LOT = Usual(Quantity(5, "gram"), Quantity(20, "kilogram"))  # a packet of sparkle to blend in, and five heavy fleeces
FIBERS = Usual(  # the finest down has 10, the coarsest wools and mohair 40 (from memory)
    Quantity(8, "micrometer"),
    Quantity(45, "micrometer"),
    "A grade such as 64s is no diameter; the list of wool grades has both.",
)
KINDS_OF_FIBER = replace(FIBERS, most=None)  # bast fibers and horsehair are far coarser
STAPLES = Usual(Quantity(0.4, "inch"), Quantity(50, "centimeter"))  # of cotton, and of the longest wools
SCOURED_YIELD = Usual(least=0.25)  # the greasiest merinos keep more
LOST_IN_COMBING = Usual(most=0.6)  # 20 to 40%
LOST_IN_SPINNING = Usual(  # 1 to 5%
    most=0.15, hint="Was all the fiber spun, and ready to spin when weighed? Look at the unit, too."
)

# Water
LIQUID_WATER = Usual(Quantity(32, "degree_Fahrenheit"), Quantity(212, "degree_Fahrenheit"))  # typed as °F, 12 °C is ice
WATER_TO_GOODS = Usual(Quantity(8, "liter / kilogram"), Quantity(100, "liter / kilogram"))  # 20 to 40
MINUTES_IN_A_BATH = Usual(Quantity(5, "minute"), Quantity(120, "minute"))

# What is made of it
IN_A_PIECE = Usual(most=Quantity(30, "kilometer"))
PIECE = Usual(Quantity(10, "gram"), Quantity(2, "kilogram"))  # a mitten for a baby, and most blankets
GARMENT = Usual(most=Quantity(150, "centimeter"))  # a gown to the floor
SLEEVE = Usual(most=Quantity(90, "centimeter"))
BODY = Usual(most=Quantity(200, "centimeter"))
EASE = Usual(most=Quantity(40, "centimeter"))
AROUND_AN_ARM = Usual(most=Quantity(70, "centimeter"))
WOVEN = Usual(Quantity(10, "centimeter"), Quantity(30, "meter"))
LOOM = Usual(most=Quantity(160, "centimeter"))  # few looms are wider
LOOM_WASTE = Usual(most=Quantity(130, "centimeter"))  # a floor loom wastes 90
HEMS = Usual(most=Quantity(1, "meter"))
TRIED_OUT = Usual(most=Quantity(3, "meter"))
WOVEN_IN = Usual(most=0.4)

# Wheels, spindles and bobbins
WHEELS = Usual(most=Quantity(160, "centimeter"))  # across a great wheel
DRAFT = Usual(most=Quantity(160, "centimeter"))  # as far as arms reach
BOBBIN = Usual(most=Quantity(40, "centimeter"))
A_BOBBIN = Usual(most=Quantity(1, "kilogram"))  # the largest flyers take less
ON_A_BOBBIN = replace(A_BOBBIN, hint="Look at the unit of its measures: inches, or cm?")
PACKED = Usual(Quantity(0.1, "gram / centimeter ** 3"), Quantity(0.9, "gram / centimeter ** 3"))  # 0.3 to 0.45

# Time
IN_AN_HOUR = "It is what you do in an hour, not in a minute. Look at the unit, too."
PACE_OF_YARN = Usual(  # a charkha and an electric wheel spin some 500 meters
    Quantity(5, "meter / hour"), Quantity(1500, "meter / hour"), IN_AN_HOUR
)
TIMED = replace(PACE_OF_YARN, hint="Look at the minutes, and at the length made in them.")
PREPARED = Usual(  # a drum carder cards some 200 grams
    Quantity(5, "gram / hour"), Quantity(1, "kilogram / hour"), IN_AN_HOUR
)
HOURS_A_WEEK = Usual(most=Quantity(60, "hour"))
