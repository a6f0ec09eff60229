"""Builds a handspinner's planning workbook and proves every formula in it.

The trade's calculations stand twice: as Python functions in `reference`, and as formula text in `sheets`. Neither is
made from the other; `checking` lets the two meet in a real spreadsheet engine, and their agreement is the evidence.
"""

__version__ = "0.4.21"
