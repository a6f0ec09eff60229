"""What stands in a workbook, read by others than the project: its cells by python-calamine, its names as plain XML."""

import re
import zipfile
from datetime import date, datetime, time, timedelta
from pathlib import Path
from xml.etree import ElementTree

import openpyxl
from python_calamine import CalamineWorkbook

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
DAY_NOUGHT = datetime(1899, 12, 30)
NAME = re.compile(r"'?((?:[^']|'')+?)'?!\$([A-Z]+)\$(\d+)(?::\$[A-Z]+\$(\d+))?")


class Workbook:
    """An .xlsx file: what stands in the cells that its names stand for, and what is pinned to them."""

    def __init__(self, path: Path):
        book = CalamineWorkbook.from_path(path)
        self._cells = {name: book.get_sheet_by_name(name).to_python(skip_empty_area=False) for name in book.sheet_names}
        with zipfile.ZipFile(path) as package:
            tree = ElementTree.fromstring(package.read("xl/workbook.xml"))
        found = ((each.get("name"), NAME.fullmatch(each.text or "")) for each in tree.iter(f"{MAIN}definedName"))
        self._areas = {
            name: (area[1].replace("''", "'"), number(area[2]), int(area[3]), int(area[4] or area[3]))
            for name, area in found
            if area
        }
        self._notes = {
            (sheet.title, each.row, each.column): each.comment.text
            for sheet in openpyxl.load_workbook(path)
            for line in sheet
            for each in line
            if each.comment
        }

    def entries(self, keys) -> dict[tuple[str, int], float | str]:
        """Whatever stands in the cells of these names, by name and line."""
        return {place: value for place, where in self._places(keys) if (value := self._value(*where)) not in (None, "")}

    def notes(self, keys) -> dict[tuple[str, int], str]:
        return {place: self._notes[where] for place, where in self._places(keys) if where in self._notes}

    def column(self, key: str) -> list[float | str]:
        return list(self.entries([key]).values())

    def _places(self, keys):
        for key in keys:
            if key in self._areas:
                sheet, column, first, last = self._areas[key]
                yield from (((key, row - first), (sheet, row, column)) for row in range(first, last + 1))

    def _value(self, sheet: str, row: int, column: int) -> float | str | None:
        cells = self._cells[sheet]
        line = cells[row - 1] if row <= len(cells) else []
        return plain(line[column - 1]) if column <= len(line) else None


def plain(value) -> float | str | None:
    """A value without what its cell looks like: days are numbers, counted from the end of 1899."""
    match value:
        case datetime():
            return (value - DAY_NOUGHT) / timedelta(days=1)
        case date():
            return float((datetime.combine(value, time()) - DAY_NOUGHT).days)
        case time() | timedelta():
            return (
                value
                if isinstance(value, timedelta)
                else timedelta(hours=value.hour, minutes=value.minute, seconds=value.second)
            ) / timedelta(days=1)
        case bool():
            return str(value).upper()
        case int():
            return float(value)
    return value


def number(letters: str) -> int:
    """A is 1, AA is 27."""
    total = 0
    for letter in letters:
        total = 26 * total + ord(letter) - 64
    return total
