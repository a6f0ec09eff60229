"""HyperFormula: a witness from the web, for the tests alone.

It is an engine that web pages compute with, written by other people in another language;
so it is tried on every formula of the planner too. Each session is a process of Node.js,
to which `witness.mjs` gives HyperFormula's voice; it ends when its input does, and so never
outlives the tests. HyperFormula reads no files: the cells are handed to it here.
"""

import json
import re
import select
import shutil
import subprocess
from pathlib import Path
from tempfile import TemporaryFile

from openpyxl import load_workbook
from openpyxl.utils.datetime import to_excel

from workbookgen.engines import Area, ErrorValue, Reading, Rows, Session, Typed, Value
from workbookgen.engines.copies import sheet_parts
from workbookgen.engines.engine import CellValue, checked, existing, plain, require_sheet, unreadable
from workbookgen.errors import MissingEngine, PlannerError
from workbookgen.ooxml.formulas import formulas

_WORDS = re.compile(r'"[^"]*"|[A-Za-z_][A-Za-z0-9_.]*')
TIME_LIMIT = 300  # seconds, for any one thing asked of it

HERE = Path(__file__).parent
DRIVER = HERE / "witness.mjs"
MODULES = HERE / "node_modules"


class HyperFormula:
    name = "hyperformula"

    def version(self) -> str:
        witness = _Witness()
        try:
            return witness.ask("hello")
        finally:
            witness.leave()

    def open(self, path: Path) -> "HyperFormulaSession":
        return HyperFormulaSession(existing(path))


class HyperFormulaSession(Session):
    def __init__(self, path: Path):
        sheets, names = contents(path)
        self._witness = _Witness()
        try:
            self._sheets = self._witness.ask("open", sheets=sheets, names=names)
        except PlannerError as reason:
            self.close()
            raise unreadable(path, "HyperFormula", reason.faults[0].sentence) from None

    def set(self, area: Area, values: Rows) -> None:
        rows = [[_content(value) for value in row] for row in checked(area, values)]
        self._witness.ask("set", area=self._block(area), values=rows)

    def evaluate(self) -> None:
        self._witness.ask("evaluate")

    def read(self, area: Area) -> Reading:
        rows = self._witness.ask("read", area=self._block(area))
        return [[_value(value) for value in row] for row in rows]

    def close(self) -> None:
        self._witness.leave()

    def _block(self, area: Area) -> list[str | int]:
        """Sheet, top, left, bottom, right, counted from 0."""
        require_sheet(self._sheets, area.sheet)
        return [area.sheet, area.row - 1, area.column - 1, area.last_row - 1, area.last_column - 1]


def contents(path: Path) -> tuple[dict[str, list[list]], list[dict[str, str]]]:
    """Every sheet's rows from its first cell on, and the defined names. Of a formula only the text is looked at.

    To it the name of a single cell is a formula of its own, which of a blank cell gives 0, and which COUNT counts;
    so formulas are handed over with such a cell's address, as a program reads them.
    """
    sheet_parts(path)  # says in a sentence what is no workbook
    texts, book = formulas(path), load_workbook(path)
    single = {name: each.value for name, each in book.defined_names.items() if ":" not in each.value}

    def content(cell):
        if cell.data_type in "fe":
            text = texts.get((cell.parent.title, cell.coordinate), cell.value)
            return {"typed": _WORDS.sub(lambda word: single.get(word[0], word[0]), text)}
        return to_excel(cell.value) if cell.data_type == "d" else cell.value

    sheets = {sheet.title: [[content(cell) for cell in row] for row in sheet.iter_rows()] for sheet in book}
    return sheets, [{"name": name, "expression": f"={each.value}"} for name, each in book.defined_names.items()]


def _content(value: Value) -> float | str | bool | None | dict[str, str]:
    return {"typed": value.formula} if isinstance(value, Typed) else value


def _value(value: object) -> CellValue:
    return ErrorValue(value["error"]) if isinstance(value, dict) else plain(value)


class _Witness:
    """The process of Node.js, and the conversation with it."""

    def __init__(self):
        node, self._log = _node(), TemporaryFile()
        self._process = subprocess.Popen(
            [node, str(DRIVER)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=self._log
        )

    def ask(self, what: str, **details):
        """The driver's answer; a process that stays silent is stopped."""
        try:
            self._process.stdin.write(json.dumps({"do": what} | details).encode() + b"\n")
            self._process.stdin.flush()
        except BrokenPipeError:
            pass  # it has ended; why, is in its log
        heard = select.select([self._process.stdout], [], [], TIME_LIMIT)[0]
        reply = self._process.stdout.readline() if heard else b""
        if not reply:
            self._process.kill()
            self._log.seek(0)
            said = self._log.read().decode(errors="replace").strip()
            raise PlannerError.at(
                "hyperformula", f"HyperFormula ended or did not answer within {TIME_LIMIT} seconds. {said}".strip()
            )
        answer = json.loads(reply)
        if "error" in answer:
            raise PlannerError.at("hyperformula", answer["error"])
        return answer["result"]

    def leave(self) -> None:
        for stream in (self._process.stdin, self._process.stdout):
            try:
                stream.close()
            except BrokenPipeError:
                pass
        self._process.kill()  # it has nothing to save
        self._process.wait()
        self._log.close()


def _node() -> str:
    node = shutil.which("node")
    if node is None:
        raise MissingEngine.at(
            "hyperformula", "Node.js is not on this machine. Install the Debian packages nodejs and npm."
        )
    if not (MODULES / "hyperformula").is_dir():
        raise MissingEngine.at(
            "hyperformula", "HyperFormula is not here. Get it with: npm ci --prefix tests/web --no-audit --no-fund"
        )
    return node
