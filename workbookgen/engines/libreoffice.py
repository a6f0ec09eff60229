"""LibreOffice: one hidden process for all sessions, controlled over UNO.

Starting LibreOffice takes seconds and a scenario a fraction of one, so the process is shared and lives until this
program ends. `libreoffice_driver` talks to it; this module starts the driver, and stops it when it does not answer.
The profile is a fresh one that always recalculates; with the user's own, LibreOffice would show the stored results.
Its locale is that of the United States, wherever this runs: elsewhere LibreOffice may write 3.5 into a text as "3,5".
"""

import atexit
import json
import os
import select
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from workbookgen.engines.engine import (
    Area,
    ErrorValue,
    Reading,
    Rows,
    Session,
    Typed,
    checked,
    existing,
    require_sheet,
    unreadable,
)
from workbookgen.errors import FileError, MissingEngine, PlannerError
from workbookgen.temporary import temporary_folder

TIME_LIMIT = 600  # seconds for any one request; the largest planners take a minute
START_LIMIT = 60  # seconds to start, and to end

_DRIVER = Path(__file__).with_name("libreoffice_driver.py")
_PROFILE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop>
<prop oor:name="ODFRecalcMode" oor:op="fuse"><value>0</value></prop>
</item>
<item oor:path="/org.openoffice.Setup/L10N">
<prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>en-US</value></prop>
</item>
</oor:items>
"""


class LibreOffice:
    name = "libreoffice"

    def version(self) -> str:
        # "LibreOffice 7.4.7.2 40(Build:2)"
        with temporary_folder("libreoffice") as folder:
            return _run(folder, "--version").split()[1]

    def open(self, path: Path) -> "LibreOfficeSession":
        return LibreOfficeSession(_running_office(), existing(path))


class LibreOfficeSession(Session):
    def __init__(self, office: "_Office", path: Path):
        self._office = office
        try:
            opened = office.ask("open", path=str(path))
        except _Refused as reason:
            raise unreadable(path, "LibreOffice", reason.faults[0].sentence) from None
        self._document, self._sheets = opened["document"], opened["sheets"]

    def set(self, area: Area, values: Rows) -> None:
        rows = checked(area, values)
        plain = [[None if isinstance(value, bool | Typed) else value for value in row] for row in rows]
        self._office.ask("set", document=self._document, area=self._block(area), values=plain)
        for place, words in self._spoken(area, rows):
            self._office.ask("type", document=self._document, area=self._block(place), words=words)

    def evaluate(self) -> None:
        self._office.ask("evaluate", document=self._document)

    def read(self, area: Area) -> Reading:
        rows = self._office.ask("read", document=self._document, area=self._block(area))
        return [[_value(value) for value in row] for row in rows]

    def close(self) -> None:
        if self._document is not None and self._office.alive():
            self._office.ask("close", document=self._document)
        self._document = None

    @staticmethod
    def _spoken(area: Area, rows: Rows) -> Iterator[tuple[Area, str]]:
        """What must be typed cell by cell, since an area takes only numbers and texts: booleans and formulas."""
        for row, values in enumerate(rows, area.row):
            for column, value in enumerate(values, area.column):
                if isinstance(value, bool | Typed):
                    words = value.formula if isinstance(value, Typed) else str(value).upper()
                    yield Area(area.sheet, row, column), words

    def _block(self, area: Area) -> list[str | int]:
        """Sheet, left, top, right, bottom, counted from 0."""
        require_sheet(self._sheets, area.sheet)
        return [area.sheet, area.column - 1, area.row - 1, area.last_column - 1, area.last_row - 1]


def _value(value: object) -> float | str | None | ErrorValue:
    if isinstance(value, dict):
        return ErrorValue(value["error"])
    return None if value == "" else value


def convert(path: Path, target: Path, *, recalculate: bool) -> None:
    """Convert a workbook to the format that the target's name ends with, such as .pdf or .xlsx.

    Without `recalculate` the profile is LibreOffice's default, as on a person's computer.
    """
    source = existing(path)
    with temporary_folder("libreoffice") as folder:
        if recalculate:
            _write_profile(folder)
        made = folder / "out" / f"{source.stem}{target.suffix}"
        unseen = ("--headless", "--norestore", "--nologo")
        wanted = ("--convert-to", target.suffix.lstrip("."), "--outdir", str(made.parent))
        report = _run(folder, *unseen, *wanted, str(source))
        if not made.is_file():  # it may fail and still report success
            raise unreadable(path, "LibreOffice", report.strip() or "it wrote no result")
        shutil.move(made, target)


class _Refused(PlannerError):
    """LibreOffice answered with an error."""


class _Office:
    """The driver's process, with LibreOffice below it in the same process group."""

    def __init__(self):
        program, python = _program(), python_with_uno()
        self._folder = TemporaryDirectory(prefix="libreoffice-", ignore_cleanup_errors=True)
        folder = Path(self._folder.name)
        _write_profile(folder)
        self._log = folder / "log.txt"
        with open(self._log, "wb") as log:
            self._process = subprocess.Popen(
                [python, "-E", "-s", str(_DRIVER), program, str(folder), str(START_LIMIT / 2)],
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=log,
                start_new_session=True,
            )
        try:
            self.ask("hello")
        except _Refused as reason:
            report = self._log.read_text(errors="replace") if self._log.exists() else ""
            self.stop()
            sentence = f"It cannot be started: {reason.faults[0].sentence}. {report}".strip()
            raise PlannerError.at("libreoffice", sentence) from None

    def alive(self) -> bool:
        return self._process.poll() is None

    def ask(self, what: str, **details):
        """Send a request to the driver and return its answer. A process that stays silent is stopped."""
        try:
            request = json.dumps({"do": what} | details) + "\n"
            self._process.stdin.write(request.encode())
            self._process.stdin.flush()
        except (BrokenPipeError, ValueError):
            pass  # it has ended, but its last answer may still be there to read
        reply = self._reply()
        if not reply:
            self.stop()
            raise PlannerError.at(
                "libreoffice",
                f"LibreOffice ended or did not answer within {TIME_LIMIT} seconds, and was stopped. "
                "Try again; close other programs if the machine is short of memory.",
            )
        answer = json.loads(reply)
        if "error" in answer:
            raise _Refused.at("libreoffice", answer["error"])
        return answer["result"]

    def _reply(self) -> bytes:
        output = self._process.stdout
        if output.closed or not select.select([output], [], [], TIME_LIMIT)[0]:
            return b""
        return output.readline()

    def leave(self) -> None:
        """Let LibreOffice end by itself, which removes its pipe; then make sure that it has ended."""
        if self.alive():
            self._process.stdin.close()
            try:
                self._process.wait(START_LIMIT / 4)
            except subprocess.TimeoutExpired:
                pass
        self.stop()

    def stop(self) -> None:
        _kill_group(self._process)
        for stream in (self._process.stdin, self._process.stdout):
            try:
                stream.close()
            except BrokenPipeError:
                pass
        self._folder.cleanup()


_shared: list[_Office] = []


def _running_office() -> _Office:
    if not (_shared and _shared[0].alive()):
        _shared[:] = [_Office()]
    return _shared[0]


@atexit.register
def _leave_shared() -> None:
    while _shared:
        _shared.pop().leave()


def _run(folder: Path, *arguments: str) -> str:
    """Run LibreOffice once, with a profile in this folder; returns its output."""
    command = [_program(), f"-env:UserInstallation={(folder / 'profile').as_uri()}", *arguments]
    log = folder / "log.txt"
    # The output goes to a file, since a child process that outlives its parent would keep a pipe open.
    with open(log, "wb") as output:
        process = subprocess.Popen(
            command, stdin=subprocess.DEVNULL, stdout=output, stderr=subprocess.STDOUT, start_new_session=True
        )
    try:
        process.wait(TIME_LIMIT)
    except subprocess.TimeoutExpired:
        stopped = f"LibreOffice did not finish within {TIME_LIMIT} seconds and was stopped."
        raise FileError.at(arguments[-1], stopped) from None
    finally:
        _kill_group(process)
    return log.read_text(encoding="utf-8", errors="replace")


def _kill_group(process: subprocess.Popen) -> None:
    """Kill a process that was started here, and its children; its process group holds nothing else."""
    try:
        os.killpg(process.pid, signal.SIGKILL)
    except ProcessLookupError:
        pass
    process.wait()


def _write_profile(folder: Path) -> None:
    user = folder / "profile" / "user"
    user.mkdir(parents=True)
    (user / "registrymodifications.xcu").write_text(_PROFILE, encoding="utf-8")


def _program() -> str:
    program = shutil.which("soffice") or shutil.which("libreoffice")
    if program is None:
        how = "Install the Debian packages libreoffice-calc and python3-uno."
        raise MissingEngine.at("libreoffice", f"LibreOffice is not on this machine. {how}")
    return program


def python_with_uno() -> str:
    """The first Python on this machine that has UNO: this one, the system's, or LibreOffice's own."""
    beside = Path(_program()).resolve().with_name("python")
    for python in (sys.executable, "/usr/bin/python3", str(beside)):
        if shutil.which(python) and _has_uno(python):
            return python
    how = "Install the Debian package python3-uno."
    raise MissingEngine.at("libreoffice", f"LibreOffice is here, but no Python that can speak to it. {how}")


def _has_uno(python: str) -> bool:
    tried = subprocess.run([python, "-E", "-s", "-c", "import uno"], capture_output=True, timeout=TIME_LIMIT)
    return tried.returncode == 0
