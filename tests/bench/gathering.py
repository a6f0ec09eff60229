"""Carrying entries over and gathering planners, against a library that merely reads the files."""

import sys
from pathlib import Path

import openpyxl
from figure import ROOT, Figure, seconds, workbookgen
from python_calamine import CalamineWorkbook

from workbookgen import settings
from workbookgen.build import build

PLANNERS = 5


def figures(folder: Path) -> list[Figure]:
    files = [folder / f"{number}.xlsx" for number in range(PLANNERS)]
    sys.path.insert(0, str(Path(ROOT, "demo")))
    import make  # the demo's script: planners with something in them

    chosen = settings.load(make.FOLDER / "settings.toml")
    for file in files:
        build(chosen.model_copy(update={"title": f"Planner {file.stem}"}), file, make.entries(chosen))
    openpyxl_reads = seconds(lambda: read_by_openpyxl(files[0]))
    calamine_reads = seconds(lambda: read_by_calamine(files[0]))
    start = workbookgen("--version")[0]
    carried = workbookgen("carry", str(files[0]), "-o", str(folder / "carried.xlsx"))[0] - start
    gathered = (workbookgen("gather", *map(str, files), "-o", str(folder / "table.csv"))[0] - start) / PLANNERS
    return [
        Figure("carry", carried, "s", "openpyxl reading it", openpyxl_reads),
        Figure("gather, each planner", gathered, "s", "openpyxl reading it", openpyxl_reads),
        Figure("gather, each planner", gathered, "s", "calamine reading it", calamine_reads),
        Figure("  openpyxl reads a planner", openpyxl_reads),
        Figure("  calamine reads a planner", calamine_reads),
    ]


def read_by_openpyxl(file: Path) -> int:
    book = openpyxl.load_workbook(file, read_only=True, data_only=True)
    return sum(1 for sheet in book for row in sheet.iter_rows() for _ in row)


def read_by_calamine(file: Path) -> int:
    book = CalamineWorkbook.from_path(file)
    return sum(len(row) for name in book.sheet_names for row in book.get_sheet_by_name(name).to_python())
