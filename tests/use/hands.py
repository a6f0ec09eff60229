"""A person at LibreOffice: the driver of the engine, with hands that type, paste, sort and save.

Run by a Python that has `uno`, in place of the engine's own driver. The workbook is opened
as it is: protected, with its stored results, and nothing is recalculated by force. A workbook in sight is painted, too,
for which LibreOffice works out what it shows; without a screen it paints as it does on one.
"""

import shutil
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "workbookgen" / "engines"))

import libreoffice_driver as driver  # noqa: E402
import uno  # noqa: E402

FILTERS = {".xlsx": driver.XLSX, ".ods": "calc8"}


class Hands(driver.Desk):
    def open_as_is(self, path, in_sight):
        number = next(self._numbers)
        copy = Path(self._folder, f"{number}{Path(path).suffix}")
        shutil.copyfile(path, copy)
        self._documents[number] = self._desktop.loadComponentFromURL(
            copy.as_uri(), "_blank", 0, (driver._property("Hidden", not in_sight),)
        )
        self.paint()
        return {"document": number, "sheets": self._documents[number].Sheets.ElementNames}

    def paint(self):
        """Everything that waits for LibreOffice to have nothing else to do, such as painting."""
        self.context.ServiceManager.createInstance("com.sun.star.awt.Toolkit").processEventsToIdle()

    def unprotect(self, document, sheet):
        """Without a password: the menu's Protect Sheet, clicked away."""
        self._documents[document].Sheets.getByName(sheet).unprotect("")

    def is_protected(self, document, sheet):
        return self._documents[document].Sheets.getByName(sheet).isProtected()

    def select(self, document, area):
        controller = self._documents[document].CurrentController
        controller.setActiveSheet(self._documents[document].Sheets.getByName(area[0]))
        controller.select(self._range(document, area))

    def press(self, document, command, **settings):
        """A command of the menus, as if chosen there."""
        helper = self.context.ServiceManager.createInstance("com.sun.star.frame.DispatchHelper")
        frame = self._documents[document].CurrentController.Frame
        helper.executeDispatch(
            frame, f".uno:{command}", "", 0, tuple(driver._property(name, value) for name, value in settings.items())
        )

    def filter(self, document, area, column, text):
        """Only the lines with this text in that column stay in sight."""
        cells = self._range(document, area)
        wanted = uno.createUnoStruct("com.sun.star.sheet.TableFilterField")
        wanted.Field, wanted.IsNumeric, wanted.StringValue = column, False, text
        wanted.Operator = uno.Enum("com.sun.star.sheet.FilterOperator", "EQUAL")
        descriptor = cells.createFilterDescriptor(True)
        descriptor.ContainsHeader = False
        descriptor.setFilterFields((wanted,))
        cells.filter(descriptor)
        rows = cells.getRows()
        return [rows.getByIndex(index).IsVisible for index in range(rows.getCount())]

    def save(self, document, path):
        self._documents[document].storeToURL(
            Path(path).as_uri(), (driver._property("FilterName", FILTERS[Path(path).suffix]),)
        )


def connect(office, address, seconds):
    """As the engine's, but the office's own context is kept: its dispatcher lives there."""
    resolver = uno.getComponentContext().ServiceManager.createInstance("com.sun.star.bridge.UnoUrlResolver")
    deadline = time.monotonic() + seconds
    while office.poll() is None and time.monotonic() < deadline:
        try:
            Hands.context = resolver.resolve(address)
            return Hands.context.ServiceManager.createInstance("com.sun.star.frame.Desktop")
        except driver.NoConnectException:
            time.sleep(0.05)
    raise RuntimeError("it did not start")


if __name__ == "__main__":
    driver.Desk, driver.connect = Hands, connect
    driver.main(*sys.argv[1:])
