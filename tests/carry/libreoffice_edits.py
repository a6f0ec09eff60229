"""A person at LibreOffice: opens a planner, types into it, inserts lines, and saves it as .xlsx and .ods.

A program of its own, since UNO belongs to the Python that LibreOffice was packaged for:

    python libreoffice_edits.py PLANNER FOLDER EDITS

EDITS is JSON: what to type, by sheet and cell; before how many lines are inserted, by sheet and line.
"""

import json
import subprocess
import sys
import time
from pathlib import Path

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException

FILTERS = {"xlsx": "Calc MS Excel 2007 XML", "ods": "calc8"}


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


def main(planner, folder, edits):
    address = f"pipe,name=edits-{Path(folder).name}"
    office = subprocess.Popen(
        ["soffice", f"-env:UserInstallation={Path(folder, 'profile').as_uri()}", "--headless", "--norestore", "--nologo", f"--accept={address};urp;"],
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )
    try:
        desk = desktop(address)
        document = desk.loadComponentFromURL(Path(planner).as_uri(), "_blank", 0, (prop("Hidden", True),))
        for name, line in edits["lines"].items():
            document.Sheets.getByName(name).unprotect("")
            document.Sheets.getByName(name).Rows.insertByIndex(line - 1, 1)
        for name, cells in edits["cells"].items():
            sheet = document.Sheets.getByName(name)
            sheet.unprotect("")
            for place, entry in cells.items():
                type_in(sheet, place, entry)
        for name, notes in edits["notes"].items():
            sheet = document.Sheets.getByName(name)
            sheet.unprotect("")
            for place, text in notes.items():
                sheet.Annotations.insertNew(sheet.getCellRangeByName(place).CellAddress, text)
        for ending, name in FILTERS.items():
            document.storeToURL(Path(folder, f"edited.{ending}").as_uri(), (prop("FilterName", name),))
        document.close(True)
        desk.terminate()
        office.wait(60)
    finally:
        office.kill()


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2], json.loads(sys.argv[3]))
