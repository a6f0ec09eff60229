"""Quantities, numbers and texts of an example: one short word for each, two values at a time."""

import numpy as np

from workbookgen.units import Quantity


def q(unit, *magnitudes):
    return Quantity(np.array(magnitudes, dtype=float), unit)


def n(*numbers):
    return np.array(numbers, dtype=float)


def texts(*words):
    return np.array(words, dtype=object)
