"""Amounts joined to a text, in every engine: with no digits but those that are meant."""

import xlsxwriter

from workbookgen.book.amounts import said
from workbookgen.engines import Area
from workbookgen.language.quantities import GRAM, OUNCE
from workbookgen.reference import words
from workbookgen.units import Quantity

# Gnumeric makes 0.54000000000000000002 of the second when it is joined to a text.
OUNCES = (0.0, 0.542, 0.786, 0.004, 0.0149, 0.07, 0.5, 0.545, 0.994, 0.996, 1.0, 1.26, 999.96, 1234.4)
GRAMS = (0.0, 0.04, 0.96, 9.54, 9.96, 10.4, 123.5, 1234.5)


def test_each_amount_is_said_as_the_library_says_it(each_engine, tmp_path):
    amounts = [*((amount, OUNCE) for amount in OUNCES), *((amount, GRAM) for amount in GRAMS)]
    path = tmp_path / "amounts.xlsx"
    with xlsxwriter.Workbook(path) as book:
        sheet = book.add_worksheet("Amounts")
        for row, (amount, unit) in enumerate(amounts):
            sheet.write_number(row, 0, amount)
            sheet.write_formula(row, 1, f"={said(f'$A${row + 1}', unit)}", None, "")
    with each_engine.open(path) as session:
        shown = [text for [text] in session.read(Area("Amounts", 1, 2, len(amounts)))]
    assert shown == [words.said(Quantity(amount, unit.pint)) for amount, unit in amounts]
