"""The workbook's own part: its sheets, its names, and the day that its dates count from."""

from dataclasses import dataclass

from workbookgen.ooxml.package import Package, attribute, is_on


class NoWorkbook(Exception):
    """The package is of another kind."""


@dataclass(frozen=True)
class Tab:
    """A sheet as the workbook lists it. `part` is None if it is missing from the package, or is not a worksheet."""

    name: str
    part: str | None
    state: str = "visible"  # or "hidden", or "veryHidden"


@dataclass(frozen=True)
class Listing:
    """The workbook without the content of its sheets."""

    part: str
    tabs: tuple[Tab, ...]
    names: dict[str, str]  # name of the whole workbook -> what it stands for
    names_of_sheets: dict[tuple[str, str], str]  # sheet, name -> what it stands for on that sheet only
    counts_from_1904: bool

    @property
    def worksheets(self) -> tuple[Tab, ...]:
        return tuple(each for each in self.tabs if each.part)


def read_listing(package: Package) -> Listing:
    """The sheets and names of a workbook. Raises NoWorkbook if the package has none."""
    books = package.targets("", "officeDocument")
    if not books:
        raise NoWorkbook("it has no workbook in it")
    root, relations = package.root(books[0]), package.relations(books[0])
    worksheets = {key: each.target for key, each in relations.items() if package.has(each, "worksheet")}
    tabs = tuple(
        Tab(each.get("name"), worksheets.get(attribute(each, "id")), each.get("state", "visible"))
        for each in root.iterfind("{*}sheets/{*}sheet")
    )
    names: dict[str, str] = {}
    of_sheets: dict[tuple[str, str], str] = {}
    for each in root.iterfind("{*}definedNames/{*}definedName"):
        at = each.get("localSheetId")
        if at is None:
            names[each.get("name")] = each.text or ""
        elif int(at) < len(tabs):
            of_sheets[tabs[int(at)].name, each.get("name")] = each.text or ""
    settings = root.find("{*}workbookPr")
    return Listing(books[0], tabs, names, of_sheets, settings is not None and is_on(settings.get("date1904")))
