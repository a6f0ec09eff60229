"""What a planner was made with: its version and its settings, as it says itself on the sheet Reference.

The settings determine what the names of its fields mean. Those of another version that are unknown today are left out
and reported, never a reason to refuse the file.
"""

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from pydantic import ValidationError

from workbookgen.errors import Fault, FileError
from workbookgen.filled.book import Book, area_of
from workbookgen.ooxml.values import Value
from workbookgen.settings import Settings
from workbookgen.sheets import origin

ORIGIN = f"{origin.KEY}_line"  # the name of the lines with the version and settings of a planner

_VERSION = re.compile(r"# workbookgen (\S+)")


@dataclass(frozen=True)
class MadeWith:
    """The version of a planner, and its lines from the one that states this on down, by row of their sheet."""

    version: str
    sheet: str
    lines: Mapping[int, Value]

    @property
    def texts(self) -> list[str]:
        """The lines that are texts, as all were when the planner was built."""
        return [line for line in self.lines.values() if isinstance(line, str)]


def origin_sheet(names: dict[str, str]) -> dict[str, None]:
    """The sheet with a planner's version and settings."""
    area = area_of(names[ORIGIN]) if ORIGIN in names else None
    return {area.sheet if area else origin.SHEET: None}


def made_with(path: Path, book: Book) -> MadeWith:
    """What a planner was made with. Raises FileError if it does not say so."""
    [sheet] = origin_sheet(book.names)
    if sheet not in book.sheets:
        raise FileError.at(str(path), f"this is not one of our planners: it has no sheet {sheet}.")
    cells = sorted((place, cell.value) for place, cell in book.sheets[sheet].items())
    stated = ((place, found[1]) for place, value in cells if (found := _VERSION.match(str(value))))
    if (start := next(stated, None)) is None:
        lost = f"the settings on the sheet {sheet} were overwritten, so the planner cannot be read."
        raise FileError.at(str(path), f"{lost} Give an earlier copy of the file.")
    (first, home), version = start
    return MadeWith(version, sheet, {row: value for (row, column), value in cells if column == home and row >= first})


def known_settings(text: str, place: str) -> tuple[Settings, list[Fault]]:
    """The settings that today's version knows; the unit system must be one of them."""
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as problem:
        raise FileError.at(place, f"the settings were changed and cannot be read: {problem}.") from None
    except (ValueError, RecursionError):  # thousands of digits, or of brackets within brackets
        strange = "they hold a number or a list that no setting has"
        raise FileError.at(place, f"the settings were changed and cannot be read: {strange}.") from None
    notes: list[Fault] = []
    if table.get("fibers"):
        notes.append(Fault(place, "the fiber table that they name is not read; the guide in the planner is."))
        table["fibers"] = ""
    while True:
        try:
            return Settings.model_validate(table), notes
        except ValidationError as problem:
            first = problem.errors()[0]
            location = first["loc"]
            # An older version may have logs of one line.
            if location[:1] == ("rows",) and first["type"] == "greater_than_equal":
                table["rows"][location[1]] = first["ctx"]["ge"]
                continue
            if not location or location[0] == "units" or not _remove(table, location):
                raise FileError.at(place, f"the settings cannot be read: {first['msg']}.") from None
            setting = ".".join(map(str, location))
            reason = "is not known to" if first["type"] == "extra_forbidden" else "has a value that is not accepted by"
            notes.append(Fault(place, f"the setting {setting} {reason} this version; it was left out."))


def _remove(table: dict, location: tuple) -> bool:
    """Remove what a location points to; within a list, the whole member. Returns whether that was possible."""
    *above, last = location[:2] if isinstance(table.get(location[0]), list) else location
    for key in above:
        table = table[key]
    try:
        del table[last]
    except (KeyError, IndexError, TypeError):
        return False
    return True
