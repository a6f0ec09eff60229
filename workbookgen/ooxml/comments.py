"""Notes that people pinned to cells."""

from workbookgen.ooxml.package import Package
from workbookgen.ooxml.references import Place, place_of
from workbookgen.ooxml.strings import text_of


def read_comments(package: Package, sheet: str) -> dict[Place, str]:
    """The notes on a sheet."""
    parts = package.targets(sheet, "comments")
    notes = package.root(parts[0]).iter("{*}comment") if parts else ()
    return {place_of(each.get("ref")): text_of(each) for each in notes}
