"""Quantities in the units of the trade, so that a test reads as one says it: yards(200)."""

from workbookgen.units import Quantity


def meters(number):
    return Quantity(number, "m")


def cm(number):
    return Quantity(number, "cm")


def micrometers(number):
    return Quantity(number, "um")


def yards(number):
    return Quantity(number, "yard")


def inches(number):
    return Quantity(number, "inch")


def grams(number):
    return Quantity(number, "g")


def tex(number):
    return Quantity(number, "tex")


def hours(number):
    return Quantity(number, "hour")


def per_meter(number):
    return Quantity(number, "1/m")


def per_centimeter(number):
    return Quantity(number, "1/cm")


def per_inch(number):
    return Quantity(number, "1/inch")
