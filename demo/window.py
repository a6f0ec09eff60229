"""Opens a workbook in LibreOffice's window and takes a picture of each sheet.

Started by `pictures.py`, with the Python that can speak to LibreOffice. Menus, bars and the
formula line are put away: what is left is the sheet, its tabs and the edges of the window.
"""

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException

BARS = ("menubar/menubar", "toolbar/standardbar", "toolbar/formatobjectbar", "statusbar/statusbar")
WAIT = 60  # seconds until the program answers
DRAWN = 1.2  # seconds until a sheet is drawn


def pictures(workbook: Path, folder: Path, display: str, across: int, down: int) -> None:
    """One PNG a sheet, named after it."""
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        pipe = f"pictures{os.getpid()}"
        environment = os.environ | {"DISPLAY": display}
        office = subprocess.Popen(
            [
                "soffice",
                f"-env:UserInstallation={Path(profile).as_uri()}",
                "--norestore",
                "--nologo",
                "--nofirststartwizard",
                f"--accept=pipe,name={pipe};urp;",
            ],
            env=environment,
            stderr=subprocess.DEVNULL,
        )
        desktop = None
        try:
            context = connected(pipe)
            desktop = context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
            document = desktop.loadComponentFromURL(
                workbook.resolve().as_uri(), "_default", 0, (PropertyValue("ReadOnly", 0, False, 0),)
            )
            controller = document.CurrentController
            alone(context, controller.Frame, across, down)
            for sheet in document.Sheets:
                controller.setActiveSheet(sheet)
                controller.setFirstVisibleRow(0)
                time.sleep(DRAWN)
                subprocess.run(
                    ["import", "-window", "root", str(folder / f"{sheet.Name}.png")], env=environment, check=True
                )
            document.close(True)
        finally:
            if desktop:
                desktop.terminate()
            else:
                office.terminate()
            office.wait(WAIT)


def connected(pipe: str):
    """The program's context, as soon as it answers."""
    local = uno.getComponentContext()
    resolver = local.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", local)
    end = time.monotonic() + WAIT
    while True:
        try:
            return resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
        except NoConnectException:
            if time.monotonic() > end:
                raise
            time.sleep(0.3)


def alone(context, frame, across: int, down: int) -> None:
    """The window as large as the screen, with nothing in it but the sheet."""
    frame.ContainerWindow.setPosSize(0, 0, across, down, 15)
    for bar in BARS:
        frame.LayoutManager.hideElement(f"private:resource/{bar}")
    dispatcher = context.ServiceManager.createInstanceWithContext("com.sun.star.frame.DispatchHelper", context)
    for line in ("InputLineVisible", "Sidebar"):
        dispatcher.executeDispatch(frame, f".uno:{line}", "", 0, (PropertyValue(line, 0, False, 0),))
    time.sleep(2 * DRAWN)


if __name__ == "__main__":
    source, target, name, *size = sys.argv[1:]
    pictures(Path(source), Path(target), name, *map(int, size))
