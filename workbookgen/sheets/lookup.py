"""Fields that show the value beside a chosen name in another log's list."""

from workbookgen.language.fields import Result
from workbookgen.language.quantities import Kind
from workbookgen.reference import records


def lookup(key: str, label: str, column: str, chosen: str, unit: Kind | None = None, among: str = "", **more) -> Result:
    """The result that takes its value from `column`, in the line whose name is `chosen`.

    The column is named in full (`fiber_grist`). Names are looked for among the listed ones of its
    log (`fiber_listed`) unless `among` says otherwise.
    """
    among = among or f"{column.partition('_')[0]}_listed"
    return Result(key, label, f"lookup({column}, {among}, {chosen})", records.lookup, unit, uses={"name": chosen, "names": among, "values": column}, **more)


def of_project(key: str, label: str, column: str, unit: Kind | None = None, digits: int | None = None, note: str = "", *, chosen: str = "name") -> Result:
    """A value of a project, from the log of projects; `chosen` is the field with the project's name."""
    return lookup(key, label, f"projects_{column}", chosen, unit, digits=digits, note=note)


def of_lot(key: str, label: str, column: str, unit: Kind | None = None, digits: int | None = None, note: str = "", *, chosen: str = "lot") -> Result:
    """A value of a lot, from the log of fiber; `chosen` is the field with the lot's name."""
    return lookup(key, label, f"fiber_{column}", chosen, unit, digits=digits, note=note)
