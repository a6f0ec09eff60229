"""What the writer asks of XlsxWriter, call by call, so that stock XlsxWriter can be asked the same.

`recorded` writes a planner and keeps every call: cells, formats, validations, rules, charts and
pictures, and which of the objects that XlsxWriter handed out they went to. As a script
(`recording.py HOW CALLS FILE`) it makes those calls again, in a process of its own: `shared`
with the formulas that cells share and without XlsxWriter's searches through them, `searched`
with the searches, `stock` with every formula in its own cell and the searches, as XlsxWriter
comes; `ready` does all but the calls.
"""

import pickle
import sys
from dataclasses import dataclass
from pathlib import Path

import xlsxwriter
from figure import ROOT
from xlsxwriter.worksheet import Worksheet

sys.path.insert(0, ROOT)

import workbookgen.book.write as writer  # noqa: E402


@dataclass(frozen=True)
class Ref:
    """An object that XlsxWriter handed out, by the number of the call that it came of."""

    number: int


class Recorder:
    """Stands before an object of XlsxWriter, keeps what is asked of it and hands it on."""

    def __init__(self, calls: list, real, number: int):
        self.__dict__.update(_calls=calls, _real=real, _number=number)

    def __getattr__(self, name: str):
        found = getattr(self._real, name)
        if not callable(found):
            return found

        def call(*args, **kwargs):
            number = len(self._calls)
            self._calls.append((self._number, name, each_of(args, to_ref), each_of(kwargs, to_ref)))
            answer = found(*each_of(args, to_real), **each_of(kwargs, to_real))
            is_theirs = any(kind.__module__.startswith("xlsxwriter.") for kind in type(answer).__mro__)
            return Recorder(self._calls, answer, number) if is_theirs else answer

        return call


def to_ref(each):
    return Ref(each._number) if isinstance(each, Recorder) else each


def to_real(each):
    return each._real if isinstance(each, Recorder) else each


def each_of(value, change):
    """The same tuples, lists and tables with every value in them changed."""
    if type(value) in (tuple, list):
        return type(value)(each_of(each, change) for each in value)
    if type(value) is dict:
        return {key: each_of(each, change) for key, each in value.items()}
    return change(value)


def recorded(write, target: Path) -> None:
    """Keep the calls of a function that writes a workbook."""
    real, calls = writer._Workbook, []

    def workbook(stream, options):
        calls.append((None, "Workbook", options, {}))
        return Recorder(calls, real(stream, options), 0)

    writer._Workbook = workbook
    try:
        write()
    finally:
        writer._Workbook = real
    target.write_bytes(pickle.dumps(calls))


def main(how: str, calls: str, file: str) -> None:
    from workbookgen.book.worksheet import PlainWorksheet

    class Searched(PlainWorksheet):
        def write_copied_down(self, row, column, formulas, cell_format, values):
            self._prepare_formula(formulas.text)
            super().write_copied_down(row, column, formulas, cell_format, values)

        def _prepare_formula(self, formula, expand_future_functions=False):
            return Worksheet._prepare_formula(self, formula, expand_future_functions)

    class Stock(Worksheet):
        def write_blank_column(self, row, column, rows, cell_format):
            for each in range(row, row + rows):
                self.write_blank(each, column, None, cell_format)

        def write_copied_down(self, row, column, formulas, cell_format, values):
            for index, (formula, value) in enumerate(zip(formulas, values, strict=True)):
                self.write_formula(row + index, column, formula, cell_format, value)

    book = xlsxwriter.Workbook if how == "stock" else writer._Workbook
    sheet = {"shared": PlainWorksheet, "searched": Searched, "stock": Stock, "ready": None}[how]
    made: list = []

    def to_made(each):
        return made[each.number] if isinstance(each, Ref) else sheet if each is PlainWorksheet else each

    for target, name, args, kwargs in pickle.loads(Path(calls).read_bytes()):
        if target is None:
            made.append(book(file, args | {"tmpdir": None}))  # the folder of that time is gone
            continue
        given, named = each_of(args, to_made), each_of(kwargs, to_made)
        made.append(None if how == "ready" else getattr(made[target], name)(*given, **named))


if __name__ == "__main__":
    import recording  # by its own name, under which the calls were kept

    recording.main(*sys.argv[1:])
