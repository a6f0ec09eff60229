"""The fiber table: a CSV file in, the records of the fiber guide out.

A table like `templates/fibers.csv`, in US units whatever the planner shows. Every mistake in it is reported with its
line and column, and all are reported at once.
"""

import csv
import math
from pathlib import Path

from workbookgen.errors import Fault, FileError, SettingsError
from workbookgen.settings import Settings, templates
from workbookgen.settings.values import UNSTORABLE
from workbookgen.texts import folded
from workbookgen.units import Quantity

NUMBERS = (
    ("fleece_low", "pound"),
    ("fleece_high", "pound"),
    ("yield_low", ""),
    ("yield_high", ""),
    ("diameter_low", "micrometer"),
    ("diameter_high", "micrometer"),
    ("staple_low", "inch"),
    ("staple_high", "inch"),
    ("regain", ""),
    ("skirting", ""),
    ("preparation", ""),
    ("combing", ""),
    ("spinning", ""),
)
TEXTS = ("name", "on_labels", "source")
LATER = ("combing", "on_labels")  # columns that tables of older versions lack
FIRST_LINE = 2  # of a fiber, below the line of column names


def load_fibers(settings: Settings) -> tuple[dict[str, Quantity | float | str], ...]:
    """The fiber table that fills the guide: one record a fiber, quantities with their units."""
    if settings.fibers == "":
        return ()
    path = Path(settings.fibers) if settings.fibers else templates() / "fibers.csv"
    try:
        with path.open(encoding="utf-8-sig", newline="") as file:
            lines = list(csv.DictReader(file, restval=""))
    except (OSError, UnicodeDecodeError, csv.Error) as problem:
        reason = getattr(problem, "strerror", None) or "it is not a text file"
        raise FileError.at(str(path), f"the fiber table cannot be read: {reason}.") from None
    wanted = [name for name in (*dict(NUMBERS), *TEXTS) if name not in LATER]
    lacking = [name for name in wanted if not lines or name not in lines[0]]
    if lacking:
        raise SettingsError.at(str(path), f"the fiber table needs the columns {', '.join(lacking)}.")
    if len(lines) > settings.rows.guide and "Guide" not in settings.without:  # without it, none of them is shown
        raise SettingsError.at(
            "rows.guide", f"the fiber table has {len(lines)} fibers, so this must be {len(lines)} or more."
        )
    records, faults = [], []
    for number, line in enumerate(lines, start=FIRST_LINE):
        record = {name: text for name in TEXTS if (text := line.get(name, "").strip())}
        for name, unit in NUMBERS:
            if text := line.get(name, "").strip():
                if (value := _number(text)) is None:
                    faults.append(Fault(f"{path}, line {number}, {name}", f'"{text}" is not a number.'))
                else:
                    record[name] = Quantity(value, unit) if unit else value
        faults += [
            Fault(f"{path}, line {number}, {name}", "leave out line breaks and control characters.")
            for name in TEXTS
            if UNSTORABLE.search(record.get(name, ""))
        ]
        before = [folded(each.get("name", "")) for each in records]
        if (name := record.get("name", "")) and folded(name) in before:
            first = before.index(folded(name)) + FIRST_LINE
            faults.append(
                Fault(
                    f"{path}, line {number}, name",
                    f'"{name}" stands in line {first} too; give each fiber its own name.',
                )
            )
        records.append(record)
    if faults:
        raise SettingsError(*faults)
    return tuple(records)


def _number(text: str) -> float | None:
    try:
        value = float(text)
    except ValueError:
        return None
    return value if math.isfinite(value) else None
