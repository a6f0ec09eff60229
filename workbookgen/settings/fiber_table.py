"""The fiber table: a CSV file in, the records of the fiber guide out.

A table like `templates/fibers.csv`, in US units whatever the planner shows. Every mistake in it is reported with its
line and column, and all are reported at once.
"""

import csv
import math
from pathlib import Path

from workbookgen.errors import Fault, FileError, SettingsError
from workbookgen.settings.loading import templates
from workbookgen.settings.model import Settings
from workbookgen.settings.values import NOT_UTF8, UNSTORABLE
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
LATER = ("combing", "on_labels")  # columns that tables of older versions do not have
FIRST_LINE = 2  # of the first fiber, below the column names


def load_fibers(settings: Settings) -> tuple[dict[str, Quantity | float | str], ...]:
    """The fiber table that fills the guide: one record per fiber, with its quantities."""
    if settings.fibers == "":
        return ()
    path = Path(settings.fibers) if settings.fibers else templates() / "fibers.csv"
    lines = _lines(path)
    if len(lines) > settings.rows.guide and "Guide" not in settings.without:  # without it, none of them is shown
        wanted = f"the fiber table has {len(lines)} fibers, so this must be {len(lines)} or more."
        raise SettingsError.at("rows.guide", wanted)
    records, faults = [], []
    first_lines: dict[str, int] = {}  # by name
    for number, line in enumerate(lines, start=FIRST_LINE):
        record, wrong = _record(line)
        if name := record.get("name", ""):
            first = first_lines.setdefault(folded(name), number)
            if first != number:
                wrong.append(("name", f'"{name}" stands in line {first} too; give each fiber its own name.'))
        faults += [Fault(f"{path}, line {number}, {column}", sentence) for column, sentence in wrong]
        records.append(record)
    if faults:
        raise SettingsError(*faults)
    return tuple(records)


def _lines(path: Path) -> list[dict[str, str]]:
    """The lines of the table, by column. Raises PlannerError if it cannot be read, or lacks a column."""
    try:
        with path.open(encoding="utf-8-sig", newline="") as file:
            lines = list(csv.DictReader(file, restval=""))
    except (OSError, UnicodeDecodeError, csv.Error) as problem:
        reason = getattr(problem, "strerror", None) or NOT_UTF8
        raise FileError.at(str(path), f"the fiber table cannot be read: {reason}.") from None
    wanted = [name for name in (*dict(NUMBERS), *TEXTS) if name not in LATER]
    if lacking := [name for name in wanted if not lines or name not in lines[0]]:
        needs = f"the fiber table needs the columns {', '.join(lacking)}."
        if any(";" in name or "\t" in name for name in (lines[0] if lines else ()) if name):
            needs = "the columns of the fiber table are not separated by commas. Save it with commas between them, and points in its numbers."
        raise SettingsError.at(str(path), needs)
    return lines


def _record(line: dict[str, str]) -> tuple[dict[str, Quantity | float | str], list[tuple[str, str]]]:
    """A fiber, and what is wrong in its line, by column."""
    texts = {name: text for name in (*dict(NUMBERS), *TEXTS) if (text := line.get(name, "").strip())}
    record: dict[str, Quantity | float | str] = {name: texts[name] for name in TEXTS if name in texts}
    wrong: list[tuple[str, str]] = []
    for name, unit in NUMBERS:
        if name not in texts:
            continue
        if (value := _number(texts[name])) is None:
            wrong.append((name, f'"{texts[name]}" is not a number. Write it in digits, with a point: 0.75.'))
        else:
            record[name] = Quantity(value, unit) if unit else value
    strange = [name for name in TEXTS if UNSTORABLE.search(texts.get(name, ""))]
    wrong += [(name, "leave out line breaks and control characters.") for name in strange]
    return record, wrong


def _number(text: str) -> float | None:
    try:
        value = float(text)
    except ValueError:
        return None
    return value if math.isfinite(value) else None
