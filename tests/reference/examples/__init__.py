"""The calculations of the library, and arguments that each of them takes.

Three tests need a right call before they can spoil it: that arrays give what single values
give, that a wrong dimension is refused, and that what is not a number is refused. A calculation
stands here more than once when its arguments exclude each other. `yarn` and `work` hold the
arguments.
"""

import inspect

from workbookgen import reference
from workbookgen.reference import fiber, planning, plying, project, statistics, uncertainty

from . import blended, bobbins, bought, compared, dyed, labeled, one_skein, structures, supply, work, yarn

# Whole columns of a list: they belong to one call, whatever the length of the other arguments.
COLUMNS = {
    "names",
    "values",
    "amounts",
    "weights",
    "second_names",
    "second_amounts",
    "shares",
    "verdicts",
    "designs",
    "of_designs",
    "contributions",
    "projects",
    "areas",
    "variations",
    "counts",
    "third_names",
    "third_amounts",
    "lots",
    "firsts",
    "spares",
    "of_lots",
    "lines",
    "fates",
    "chances",
    "paces",
    "days",
    "bought_days",
    *(f"claims_{part}" for part in (1, 2, 3, 4)),
    *(f"{column}_{part}" for column in ("squares", "taken", "lots") for part in (1, 2, 3, 4)),
    *(f"lots_{place}" for place in supply.PLACES),
}

EXAMPLES = [
    *yarn.EXAMPLES,
    *work.EXAMPLES,
    *supply.EXAMPLES,
    *one_skein.EXAMPLES,
    *compared.EXAMPLES,
    *bobbins.EXAMPLES,
    *structures.EXAMPLES,
    *bought.EXAMPLES,
    *blended.EXAMPLES,
    *dyed.EXAMPLES,
    *labeled.EXAMPLES,
]

# Calculations for any kind of quantity: their annotations state no dimension, and yet they take numbers only.
ANY_KIND = {
    fiber.midpoint,
    fiber.rectangular_uncertainty,
    planning.hours,
    planning.pace_in_use,
    plying.packages,
    project.surplus,
    statistics.count,
    statistics.deviation,
    statistics.group_mean,
    statistics.half_width,
    statistics.limit_high,
    statistics.limit_low,
    statistics.mean,
    statistics.relative_deviation,
    statistics.square_of,
    statistics.standard_error,
    statistics.variation,
    statistics.variation_of_sums,
    uncertainty.chance_enough,
    uncertainty.combined,
    uncertainty.more_for,
    uncertainty.need_uncertainty,
    uncertainty.rectangular,
    uncertainty.square,
    uncertainty.surplus_uncertainty,
}


def public_calculations():
    """Every calculation that the subjects of the library offer."""
    return [
        (f"{subject}.{name}", function)
        for subject in reference.__all__
        for name, function in inspect.getmembers(getattr(reference, subject), inspect.isfunction)
        if not name.startswith("_") and function.__module__.startswith(f"workbookgen.reference.{subject}")
    ]


def label(example):
    calculation, arguments = example
    return f"{calculation.__name__}-{'-'.join(arguments)}"


def columns(arguments):
    """Names of the arguments that are columns; some only beside the names that they belong to."""
    return (
        COLUMNS
        | ({"hours"} if "projects" in arguments else set())
        | ({"promised", "squares"} if "names" in arguments else set())
    )


def single(arguments, index):
    """The arguments of one element."""
    whole = columns(arguments)
    return {name: value if name in whole else value[index] for name, value in arguments.items()}


def length_of(arguments):
    whole = columns(arguments)
    return next((len(value) for name, value in arguments.items() if name not in whole), 0)
