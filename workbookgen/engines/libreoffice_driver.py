"""The half of the LibreOffice engine that speaks UNO, as a program of its own.

UNO belongs to the Python that LibreOffice was packaged for, which is seldom the one that this project runs in. So this
file imports nothing from the project. It starts LibreOffice, reads one JSON request per line from standard input, and
answers each with one line. When the input ends, for whatever reason, LibreOffice ends and the folder is removed.

    python libreoffice_driver.py SOFFICE FOLDER SECONDS
"""

import itertools
import json
import os
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException

XLSX = "Calc MS Excel 2007 XML"


def start(program, folder):
    """Start LibreOffice, listening on a pipe that is named after this process."""
    pipe = f"workbookgen-{os.getpid()}"
    command = [
        program,
        f"-env:UserInstallation={Path(folder, 'profile').as_uri()}",
        "--headless",
        "--norestore",
        "--nologo",
        f"--accept=pipe,name={pipe};urp;",
    ]
    # Its output goes to the log; standard output is for answers.
    office = subprocess.Popen(command, stdin=subprocess.DEVNULL, stdout=sys.stderr)
    return office, f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext"


def connect(office, address, seconds):
    local = uno.getComponentContext()
    resolver = local.ServiceManager.createInstance("com.sun.star.bridge.UnoUrlResolver")
    deadline = time.monotonic() + seconds
    while office.poll() is None and time.monotonic() < deadline:
        try:
            context = resolver.resolve(address)
            return context.ServiceManager.createInstance("com.sun.star.frame.Desktop")
        except NoConnectException:
            time.sleep(0.05)
    raise RuntimeError("it did not start")


class Desk:
    """The open workbooks by number, and the requests about them."""

    def __init__(self, desktop, folder):
        self._desktop = desktop
        self._folder = folder
        self._documents = {}
        self._numbers = itertools.count()

    def hello(self):
        return "ready"

    def open(self, path):
        number = next(self._numbers)
        # Open a copy, so that no lock file appears beside the user's workbook.
        copy = Path(self._folder, f"{number}.xlsx")
        shutil.copyfile(path, copy)
        document = self._desktop.loadComponentFromURL(
            copy.as_uri(), "_blank", 0, (_property("Hidden", True), _property("FilterName", XLSX))
        )
        if document is None:
            raise RuntimeError("it was not loaded")
        for sheet in document.Sheets:
            sheet.unprotect("")  # otherwise a locked cell refuses its value
        document.calculateAll()
        self._documents[number] = document
        return {"document": number, "sheets": document.Sheets.ElementNames}

    def set(self, document, area, values):
        # An empty text empties a cell; None would put an error there.
        rows = tuple(tuple("" if value is None else value for value in row) for row in values)
        self._range(document, area).setDataArray(rows)

    def type(self, document, area, words):
        self._range(document, area).getCellByPosition(0, 0).setFormula(words)

    def evaluate(self, document):
        self._documents[document].calculateAll()

    def read(self, document, area):
        cells = self._range(document, area)
        rows = enumerate(cells.getDataArray())
        return [[_shown(cells, row, column, value) for column, value in enumerate(values)] for row, values in rows]

    def close(self, document):
        self._documents.pop(document).close(True)

    def leave(self):
        self._desktop.terminate()

    def _range(self, document, area):
        sheet, left, top, right, bottom = area
        sheets = self._documents[document].Sheets
        return sheets.getByName(sheet).getCellRangeByPosition(left, top, right, bottom)


def _shown(cells, row, column, value):
    """The value of a cell; UNO gives None for an error, whose text the cell has."""
    return {"error": cells.getCellByPosition(column, row).String} if value is None else value


def _property(name, value):
    prop = PropertyValue()
    prop.Name, prop.Value = name, value
    return prop


def answer(desk, line):
    request = json.loads(line)
    try:
        return {"result": getattr(desk, request.pop("do"))(**request)}
    except Exception as reason:  # whatever it is, the parent must be told
        return {"error": str(reason) or type(reason).__name__}


def say(reply):
    sys.stdout.write(json.dumps(reply) + "\n")
    sys.stdout.flush()


def main(program, folder, seconds):
    office, address = start(program, folder)
    desk = None
    try:
        desk = Desk(connect(office, address, float(seconds)), folder)
        for line in sys.stdin:
            say(answer(desk, line))
        desk.leave()
        office.wait(float(seconds))
    except Exception as reason:
        say({"error": str(reason)})
    finally:
        shutil.rmtree(folder, ignore_errors=True)
        # This process group holds only LibreOffice and this program; nothing is left behind.
        os.killpg(os.getpgrp(), signal.SIGKILL)


if __name__ == "__main__":
    main(*sys.argv[1:])
