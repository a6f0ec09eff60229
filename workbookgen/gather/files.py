"""The tables as files: all of them are written, or none.

`-o guild.xlsx` is one workbook with the tables and the summary; `-o guild.csv` and
`-o guild.parquet` give a file for each table, named after it, and the summary beside them. The
observed figures as a fiber table come with all three. In a CSV file, a text that a spreadsheet program would take for
a formula gets a leading apostrophe, since quotation marks do not prevent that; the number of such texts is reported.
Workbooks and parquet files keep every text as it was.
"""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

import pandas as pd

from workbookgen.errors import FileError
from workbookgen.filled.replacing import require_no_entries
from workbookgen.gather import reading
from workbookgen.gather.columns import LOTS
from workbookgen.gather.fiber_table import fiber_table
from workbookgen.gather.gathered import Gathered
from workbookgen.gather.own_files import require_own
from workbookgen.gather.summary import Fibers, evenness, observed
from workbookgen.gather.workbook import MOST_ROWS, workbook
from workbookgen.saving import require_another, save_all

FORMATS = (".xlsx", ".csv", ".parquet")
FORMULA_SIGNS = ("=", "+", "-", "@", "\t", "\r")  # a spreadsheet program takes a text that begins so for a formula
PARTS = ("skeins", "lots", "samples", "projects", "planners", "observed", "evenness")


def targets(output: Path) -> dict[str, Path]:
    """Part -> the file to write it to: "summary", "fibers", and each table that is a file of its own."""
    kind = output.suffix.lower()
    if kind not in FORMATS:
        endings = f"{', '.join(FORMATS[:-1])} or {FORMATS[-1]}"
        raise FileError.at(str(output), f"end the name with {endings}; that is what the tables are written as.")
    if kind == ".parquet":
        _require_parquet()
    beside = {
        "summary": output if kind == ".xlsx" else _beside(output, "summary", ".xlsx"),
        "fibers": _beside(output, "fibers", ".csv"),
    }
    return beside if kind == ".xlsx" else beside | {part: _beside(output, part, kind) for part in PARTS}


def require_apart(output: Path, inputs: Sequence[Path], fibers: Fibers = ()) -> None:
    """Refuse to overwrite a file that is to be read or is not ours, or to write into a missing folder.

    This is before any work is done. A file that is named after -o itself is meant, unless it is somebody's planner.
    """
    for part, path in targets(output).items():
        require_another(path, inputs)
        require_no_entries(path)
        if path != output:
            require_own(part, path, _without_observations(fibers))
    if not output.parent.is_dir():
        raise FileError.at(str(output.parent), "there is no such folder; make it first.")


def save(gathered: Gathered, output: Path, fibers: Fibers, year: int | None = None) -> tuple[dict[str, Path], int]:
    """Write everything. Returns the files by part, and how many texts got an apostrophe."""
    seen, even = observed(gathered.tables["lots"], fibers), evenness(gathered.tables["lots"], fibers)
    places, kind = targets(output), output.suffix.lower()
    if kind == ".xlsx" and max(map(len, gathered.tables.values())) > MOST_ROWS:
        too_long = f"a sheet holds {MOST_ROWS:,} rows, and the tables have more; write .csv or .parquet instead."
        raise FileError.at(str(output), too_long)
    frames = gathered.tables | {"planners": gathered.planners, "observed": seen, "evenness": even}
    contents = {"summary": workbook(gathered, seen, even, with_tables=kind == ".xlsx")}
    contents["fibers"], changed = _csv(fiber_table(seen, fibers, year or date.today().year))
    for part in PARTS if kind == ".csv" else ():
        contents[part], more = _csv(frames[part])
        changed += more
    for part in PARTS if kind == ".parquet" else ():
        contents[part] = frames[part].to_parquet(index=False)
    save_all({places[part]: content for part, content in contents.items()})
    return places, changed


def _without_observations(fibers: Fibers) -> bytes:
    """The fiber table that is written while nothing is observed."""
    return _csv(fiber_table(observed(reading.frame(LOTS), fibers), fibers, 0))[0]


def _csv(frame: pd.DataFrame) -> tuple[bytes, int]:
    safe, changed = without_formulas(frame)
    return safe.to_csv(index=False, lineterminator="\n").encode("utf-8", "surrogatepass"), changed


def without_formulas(frame: pd.DataFrame) -> tuple[pd.DataFrame, int]:
    """The frame with an apostrophe before texts that a spreadsheet program would calculate, and their number."""
    changed, count = frame.copy(), 0
    for name in frame.columns:
        if not pd.api.types.is_numeric_dtype(frame[name]):
            # pandas does not quote a lone carriage return, and what follows it would begin a new row.
            changed[name] = frame[name].astype("string").str.replace(r"\r\n?", "\n", regex=True)
            risky = frame[name].astype("string").str.startswith(FORMULA_SIGNS).fillna(False).astype(bool)
            changed.loc[risky, name] = "'" + changed.loc[risky, name]
            count += int(risky.sum())
    return changed, count


def _beside(output: Path, part: str, suffix: str) -> Path:
    return output.with_name(f"{output.stem}-{part}{suffix}")


def _require_parquet() -> None:
    try:
        import pyarrow  # noqa: F401
    except ImportError:
        how = 'this format needs one more package: python -m pip install "workbookgen[parquet]".'
        raise FileError.at(".parquet", how) from None
