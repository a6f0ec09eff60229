"""Opening in LibreOffice: a cold program converts the blank planner, against an empty workbook.

To CSV, of which only the first sheet is written, so that loading is nearly all of the work;
and to .xlsx, which loads and saves.
"""

import shutil
import subprocess
from pathlib import Path

import xlsxwriter
from figure import Figure, seconds

from workbookgen.build import layout_of, workbook
from workbookgen.settings import Settings


def figures(folder: Path) -> list[Figure]:
    if not shutil.which("soffice"):
        return []
    planner, empty = folder / "planner.xlsx", folder / "empty.xlsx"
    planner.write_bytes(workbook(layout_of(Settings())))
    with xlsxwriter.Workbook(empty) as book:
        book.add_worksheet()
    convert(folder, empty, "csv")  # the first start makes a profile
    lines = []
    for form, what, aim in (
        ("csv", "LibreOffice opens the blank planner", 1.5),
        ("xlsx", "LibreOffice opens and saves it", None),
    ):
        base = seconds(lambda form=form: convert(folder, empty, form))
        taken = seconds(lambda form=form: convert(folder, planner, form))
        lines += [Figure(what, taken, "s", "an empty workbook", base, aim), Figure("  an empty workbook", base)]
    return lines


def convert(folder: Path, file: Path, form: str) -> None:
    target = folder / "converted" / f"{file.stem}.{form}"
    target.unlink(missing_ok=True)
    subprocess.run(
        [
            "soffice",
            f"-env:UserInstallation=file://{folder / 'profile'}",
            "--headless",
            "--convert-to",
            form,
            "--outdir",
            str(target.parent),
            str(file),
        ],
        check=True,
        capture_output=True,
        timeout=300,
    )
    if not target.is_file():
        raise RuntimeError(f"soffice wrote no {target}")
