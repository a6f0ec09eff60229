"""The calculations of the library, and arguments that each of them takes.

Three tests need a right call before they can spoil it: that arrays give what single values
give, that a wrong dimension is refused, and that what is not a number is refused. The call on
a calculation's page will do where it gives every argument. The modules here list others: for
arguments that the page leaves out or that exclude each other, and for arrays whose elements
take different ways through the calculation.
"""

import inspect
import sys
from doctest import DocTestParser, DocTestRunner
from functools import cache

import numpy as np

from workbookgen import reference
from workbookgen.reference import fiber, planning, plying, project, statistics, uncertainty
from workbookgen.units import Quantity

from . import blended, bobbins, bought, compared, dyed, labeled, one_skein, structures, supply, work, yarn

LISTED = [
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
    statistics.beyond_the_others,
    statistics.count,
    statistics.deviation,
    statistics.group_mean,
    statistics.half_width,
    statistics.limit_high,
    statistics.limit_low,
    statistics.mean,
    statistics.off_the_others,
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


@cache
def call_on_page(calculation):
    """The arguments of the first call on a calculation's page, by name."""
    calls = []

    def noted(*args, **kwargs):
        calls.append(inspect.signature(calculation).bind(*args, **kwargs).arguments)
        return calculation(*args, **kwargs)

    run(page_of(calculation, **{calculation.__name__: noted}))
    return calls[0] if calls else {}


def page_of(calculation, **names):
    """The example of a page, with the names of its own module, quantities and numpy at hand."""
    known = {**vars(sys.modules[calculation.__module__]), "np": np, "Quantity": Quantity, **names}
    return DocTestParser().get_doctest(inspect.getdoc(calculation) or "", known, calculation.__name__, None, 0)


def run(page):
    """Run the example of a page, and say what it printed otherwise than the page has it."""
    said = []
    DocTestRunner(verbose=False).run(page, out=said.append)
    return "".join(said)


@cache
def columns(calculation):
    """The arguments that are whole columns of a list, whatever the length of the others: those that the page's example
    gives as columns."""
    return {name for name, value in call_on_page(calculation).items() if not isinstance(value, str) and np.ndim(value)}


def _of_page(calculation):
    """The arguments of the call on a calculation's page, each value twice but the columns."""
    return {
        name: value if name in columns(calculation) else _twice(value)
        for name, value in call_on_page(calculation).items()
    }


def _twice(value):
    if isinstance(value, Quantity):
        return Quantity(np.array([value.magnitude] * 2, dtype=float), value.units)
    return np.array([value] * 2, dtype=object if isinstance(value, str) else float)


EXAMPLES = LISTED + [
    (calculation, _of_page(calculation))
    for _, calculation in public_calculations()
    if calculation not in {listed for listed, _ in LISTED}
]


def label(example):
    calculation, arguments = example
    return f"{calculation.__name__}-{'-'.join(arguments)}"


def single(example, index):
    """The arguments of one element."""
    calculation, arguments = example
    whole = columns(calculation)
    return {name: value if name in whole else value[index] for name, value in arguments.items()}


def length_of(example):
    calculation, arguments = example
    whole = columns(calculation)
    return next((len(value) for name, value in arguments.items() if name not in whole), 0)
