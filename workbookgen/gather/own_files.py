"""Whether a file that gathering would replace was written by it: nobody named it, so it may be somebody's own.

Only the name after -o was typed; the other files are named after it, such as guild-fibers.csv, and a guild may have a
fiber table of its own under that name.
"""

import csv
import re
from pathlib import Path

from workbookgen.errors import FileError
from workbookgen.filled.book import open_book
from workbookgen.gather.columns import FILE, PLANNER, TABLES
from workbookgen.gather.fiber_table import COLUMNS, OBSERVED
from workbookgen.gather.summary import EVENNESS
from workbookgen.gather.summary import OBSERVED as SEEN

BEGINS = dict.fromkeys([*(table.name for table in TABLES), "planners"], (PLANNER, FILE)) | {
    "observed": SEEN[:2],
    "evenness": EVENNESS[:2],
    "fibers": COLUMNS[:2],
}
SHEETS = {"About", "Observed", "Evenness", "Not read"}  # of the summary, among others
NOT_OURS = (
    "there is such a file already, and it is not one that gather wrote. "
    "Move it elsewhere, or choose another name after -o."
)


def require_own(part: str, path: Path, unchanged: bytes) -> None:
    """Refuse to replace a file that gathering did not write. Raises FileError.

    `unchanged` is the fiber table that is written while nothing is observed; any other tells what was observed.
    """
    if not path.is_file():
        return
    try:
        is_ours = _is_ours(part, path, unchanged)
    except (FileError, OSError, ValueError, csv.Error):
        is_ours = False
    if not is_ours:
        raise FileError.at(str(path), NOT_OURS)


def _is_ours(part: str, path: Path, unchanged: bytes) -> bool:
    if part == "summary":
        return SHEETS <= set(open_book(path, ()).sheet_names)
    if path.suffix.lower() == ".parquet":
        from pyarrow import parquet

        return tuple(parquet.read_schema(path).names[:2]) == BEGINS[part]
    content = path.read_bytes()
    first = content.decode("utf-8-sig").partition("\n")[0]
    is_table = tuple(re.split("[,;\t]", first.replace('"', ""))[:2]) == BEGINS[part]
    tells_what_was_seen = re.search(OBSERVED.format(r"\d+"), content.decode("utf-8-sig"))
    return is_table and (part != "fibers" or content == unchanged or bool(tells_what_was_seen))
