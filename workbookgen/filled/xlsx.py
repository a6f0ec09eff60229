"""Reading an .xlsx workbook: Office Open XML, ISO/IEC 29500.

Only values, formulas, notes and names are read, which is all that people can enter.
"""

from functools import partial

from workbookgen.filled.cells import Cells, Choice, Contents, UnknownForm
from workbookgen.ooxml.cells import read_cells
from workbookgen.ooxml.comments import read_comments
from workbookgen.ooxml.listing import NoWorkbook, read_listing
from workbookgen.ooxml.package import Package
from workbookgen.ooxml.strings import read_strings


def read(package: Package, choice: Choice) -> Contents:
    """The contents of a workbook, with the cells of the chosen sheets and columns."""
    try:
        listing = read_listing(package)
    except NoWorkbook as problem:
        raise UnknownForm(str(problem)) from None
    contents = Contents(tuple(each.name for each in listing.tabs), listing.names, listing.counts_from_1904)
    strings, chosen = read_strings(package, listing.part), choice(contents.sheet_names, contents.names)
    for tab in listing.worksheets:
        if tab.name in chosen:
            contents.sheets[tab.name] = Cells()
            columns = chosen[tab.name]
            if read_cells(package, tab.part, strings, columns, partial(contents.put, tab.name)):
                contents.protected.add(tab.name)
            if columns is None:
                contents.comments[tab.name] = read_comments(package, tab.part)
    return contents
