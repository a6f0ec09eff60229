"""A person at LibreOffice: opens planners, types into them, inserts lines, renames sheets, and saves them.

A program of its own, since UNO belongs to the Python that LibreOffice was packaged for:

    python libreoffice_edits.py FOLDER JOBS

JOBS is a JSON file: a list of planners, each with the files that it is saved as (.xlsx or .ods) and
with what to do: before which lines one is inserted, by sheet; what to type, by sheet and cell; what to
pin to cells; and the new names of sheets.
"""

import json
import os
import subprocess
import sys
import time
from pathlib import Path

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException

FILTERS = {".xlsx": "Calc MS Excel 2007 XML", ".ods": "calc8"}


def prop(name, value):
    made = PropertyValue()
    made.Name, made.Value = name, value
    return made


def desktop(address):
    resolver = uno.getComponentContext().ServiceManager.createInstance("com.sun.star.bridge.UnoUrlResolver")
    for _ in range(1200):
        try:
            context = resolver.resolve(f"uno:{address};urp;StarOffice.ComponentContext")
            return context.ServiceManager.createInstance("com.sun.star.frame.Desktop")
        except NoConnectException:
            time.sleep(0.05)
    raise SystemExit("LibreOffice did not start")


def type_in(sheet, place, entry):
    cell = sheet.getCellRangeByName(place)
    if isinstance(entry, str) and entry.startswith("'"):
        cell.setString(entry[1:])  # a text, as after an apostrophe
    elif isinstance(entry, str):
        cell.setFormula(entry)  # what is typed into a cell: a formula, or else a text
    else:
        cell.setValue(entry)


def edit(document, job):
    """Do what a person would, in this order: lines, cells, notes, names of sheets."""
    for name, line in job.get("lines", {}).items():
        document.Sheets.getByName(name).Rows.insertByIndex(line - 1, 1)
    for name, cells in job.get("cells", {}).items():
        for place, entry in cells.items():
            type_in(document.Sheets.getByName(name), place, entry)
    for name, notes in job.get("notes", {}).items():
        sheet = document.Sheets.getByName(name)
        for place, text in notes.items():
            sheet.Annotations.insertNew(sheet.getCellRangeByName(place).CellAddress, text)
    for name, new in job.get("renamed", {}).items():
        document.Sheets.getByName(name).setName(new)


def main(folder, jobs):
    address = f"pipe,name=edits-{os.getpid()}"
    office = subprocess.Popen(
        [
            "soffice",
            f"-env:UserInstallation={Path(folder, 'profile').as_uri()}",
            "--headless",
            "--norestore",
            "--nologo",
            f"--accept={address};urp;",
        ],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    try:
        desk = desktop(address)
        for job in jobs:
            document = desk.loadComponentFromURL(Path(job["planner"]).as_uri(), "_blank", 0, (prop("Hidden", True),))
            edit(document, job)
            for target in map(Path, job["saved"]):
                document.storeToURL(target.as_uri(), (prop("FilterName", FILTERS[target.suffix]),))
            document.close(True)
        desk.terminate()
        office.wait(60)
    finally:
        office.kill()


if __name__ == "__main__":
    main(sys.argv[1], json.loads(Path(sys.argv[2]).read_text(encoding="utf-8")))
