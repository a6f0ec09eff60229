"""A small workbook that asks every engine the same questions.

Each row of the sheet "Worked out" looks at the cell of "Entries" on the same row; the
columns beside it hold errors, dates and other results that engines spell differently.
Every formula is written with a wrong cached value, so that a cache can never pass a test.
"""

import xlsxwriter

from workbookgen.engines import Area

ROWS = 12
LONG = 200
ENTRIES = Area("Entries", 1, 1, ROWS)
LOOKS = Area("Worked out", 1, 1, ROWS, 7)
RESULTS = Area("Worked out", 1, 9, 12)
BLOCK = Area("Entries", 1, 5, LONG, 3)
BLOCK_SUMS = Area("Worked out", 1, 11, LONG)
STALE = -1

_LOOKS = (
    "COUNTBLANK({})",
    "ISTEXT({})*1",
    "ISNUMBER({})*1",
    "COUNTA({})",
    'CONCATENATE({},"|")',
    "LEN({})",
    'IF({}="","",1)',
)

# What engines spell differently, each with its number format.
_RESULTS = (
    ("=1/0", None),
    ('="a"+1', None),
    ("=NA()", None),
    ('="#VALUE!"', None),
    ('=""', None),
    ("=1=1", None),
    ("=Entries!Z99", None),
    ("=DATE(2026,1,2)", "yyyy-mm-dd"),
    ("=1/3", "hh:mm"),
    ("=7/4", "[h]:mm"),
    ("=DATE(2026,1,2)+1/3", "d mmm yyyy"),
    ("=Entries!C1+1", "yyyy-mm-dd"),
)


def write(path):
    book = xlsxwriter.Workbook(path)
    entries, worked_out = book.add_worksheet("Entries"), book.add_worksheet("Worked out")
    for row in range(ROWS):
        cell = f"Entries!A{row + 1}"
        entries.write_number(row, 0, 7)
        for column, formula in enumerate(_LOOKS):
            worked_out.write_formula(row, column, "=" + formula.format(cell), None, STALE)
    for row, (formula, number_format) in enumerate(_RESULTS):
        style = number_format and book.add_format({"num_format": number_format})
        worked_out.write_formula(row, 8, formula, style, STALE)
    entries.write_number(0, 2, 46000, book.add_format({"num_format": "yyyy-mm-dd"}))
    for row in range(LONG):
        worked_out.write_formula(row, 10, f"=SUM(Entries!E{row + 1}:G{row + 1})*10", None, STALE)
    entries.protect()
    worked_out.protect()
    book.close()
