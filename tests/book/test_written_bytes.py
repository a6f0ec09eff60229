"""The bytes: the same for the same settings, the values that belong in them, and texts that stay texts."""

import hashlib
import os
import re
import subprocess
import sys
import warnings
import zipfile
from dataclasses import replace
from io import BytesIO
from pathlib import Path
from xml.sax.saxutils import escape, unescape

import openpyxl
import pytest
import xlsxwriter
from openpyxl.formula.translate import Translator
from xlsxwriter.worksheet import Worksheet

import described
import workbookgen
from chapters import all_but
from entries import entries_with
from planners import opened
from workbookgen.book import write as writing
from workbookgen.book.layout import place
from workbookgen.book.worksheet import PlainWorksheet
from workbookgen.build import layout_of, workbook
from workbookgen.checking.compare import agree
from workbookgen.checking.driving import read, read_inputs
from workbookgen.engines import engine
from workbookgen.errors import DescriptionError
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.ooxml import package as package_module
from workbookgen.ooxml.package import packed
from workbookgen.settings import Rows, Settings

ELSEWHERE = """
import hashlib, sys
from workbookgen.build import layout_of, workbook
from workbookgen.settings import Settings
print(hashlib.sha256(workbook(layout_of(Settings()))).hexdigest())
"""


def parts(content: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(BytesIO(content)) as package:
        return {entry.filename: package.read(entry) for entry in package.infolist()}


def test_the_same_settings_give_the_same_bytes(little, little_file):
    assert workbook(layout_of(little)) == little_file.read_bytes()


def test_another_process_and_another_hash_seed_give_them_too(blank):
    seed = "1" if os.environ.get("PYTHONHASHSEED") != "1" else "2"
    root = str(Path(workbookgen.__file__).parent.parent)
    said = subprocess.run(
        [sys.executable, "-c", ELSEWHERE],
        env=os.environ | {"PYTHONHASHSEED": seed, "TZ": "Asia/Tokyo", "PYTHONPATH": root},
        capture_output=True,
        text=True,
        check=True,
    )
    assert said.stdout.strip() == hashlib.sha256(blank.read_bytes()).hexdigest()


def unshared(content: bytes) -> bytes:
    """A sheet's XML with each shared formula put into the cells that share it, by openpyxl's own reading of them."""
    texts = {}

    def whole(found: re.Match) -> bytes:
        cell, number, text = found["cell"].decode(), found["number"], found["text"]
        if text is not None:
            texts[number] = Translator("=" + unescape(text.decode()), origin=cell)
        moved = texts[number].translate_formula(cell).removeprefix("=")
        return found["head"] + b"<f>" + escape(moved).encode() + b"</f>"

    shared = rb'(?P<head><c r="(?P<cell>[A-Z]+\d+)"[^>]*>)<f t="shared"(?: ref="[A-Z0-9:]+")? si="(?P<number>\d+)"(?:/>|>(?P<text>[^<]*)</f>)'
    return re.sub(shared, whole, content)


def in_sixteen_digits(content: bytes) -> bytes:
    """A sheet's XML with the numbers of its cells as a stock worksheet spells them."""
    return re.sub(rb"<v>(-?[\d.]+(?:E[-+]?\d+)?)</v>", lambda found: f"<v>{float(found[1]):.16G}</v>".encode(), content)


def test_the_sheets_are_what_stock_xlsxwriter_writes(small_layout, monkeypatch):
    """PlainWorksheet leaves searches away, and shares formulas; with each put in its cell, only last digits differ."""
    entries = starting_entries(small_layout.planner)
    values = {
        each.key: tuple(("a < b", 0.1 + 0.2, None)[row % 3] for row in range(each.rows))
        for each in small_layout.formulas
    }
    ours = parts(writing.write(small_layout, entries, values))

    class Stock(Worksheet):
        def write_blank_column(self, row, column, rows, cell_format):
            for each in range(row, row + rows):
                self.write_blank(each, column, None, cell_format)

        def write_copied_down(self, row, column, formulas, cell_format, values):
            for index, (formula, value) in enumerate(zip(formulas, values, strict=True)):
                self.write_formula(row + index, column, formula, cell_format, value)

        def _calculate_spans(self):
            """Our rows do not say which columns they fill."""

    monkeypatch.setattr(writing, "PlainWorksheet", Stock)
    stock = parts(writing.write(small_layout, entries, values))
    assert any(b't="shared"' in content for content in ours.values())
    assert {part: in_sixteen_digits(unshared(content)) for part, content in ours.items()} == {
        part: in_sixteen_digits(content) for part, content in stock.items()
    }


def test_a_long_log_is_not_written_cell_by_cell(small, monkeypatch):
    long, written = layout_of(small.model_copy(update={"rows": Rows(skeins=3_000)})), []
    by_cell = PlainWorksheet._write_cell
    monkeypatch.setattr(PlainWorksheet, "_write_cell", lambda self, *cell: written.append(cell) or by_cell(self, *cell))
    content = writing.write(
        long, starting_entries(long.planner), {each.key: (1.0,) * each.rows for each in long.formulas}
    )
    assert long.formula_cells > 200_000 and 8 * len(written) < long.formula_cells
    assert max(map(len, parts(content).values())) > 10_000_000


def test_the_searches_would_show_if_they_mattered():
    # In a stock worksheet, a text that merely looks like a newer function is rewritten.
    formula = '="use STDEV.S(x)"&A1'
    assert PlainWorksheet()._prepare_formula(formula) == '"use STDEV.S(x)"&A1'
    assert "_xlfn" in Worksheet()._prepare_formula(formula, expand_future_functions=True)


@pytest.mark.parametrize("number", [0.1 + 0.2, 1.5706513155891683, 2 / 3, 1e22, -7.0, 46_357, 123_456_789_012.3])
def test_a_number_comes_back_to_the_last_digit(number, tmp_path):
    path = tmp_path / "number.xlsx"
    with xlsxwriter.Workbook(path) as book:
        book.add_worksheet("Numbers", PlainWorksheet).write_number(0, 0, number)
    assert openpyxl.load_workbook(path)["Numbers"]["A1"].value == number


TYPED = ("=1+2", "+wool", "-12", "@here", '=HYPERLINK("x")', "0042", "{=1}", " lead", "7")


@pytest.fixture(scope="module")
def typed(tmp_path_factory):
    """A planner in whose notes and names stands what a program might take for a formula or a number."""
    layout = layout_of(Settings(rows=Rows(reels=2, fiber=len(TYPED), skeins=2, projects=2), leave_out=all_but()))
    records = [
        {"name": text, "state": "raw fleece", "weight": 100.0 + number, "note": text}
        for number, text in enumerate(TYPED)
    ]
    entries = entries_with(layout.planner, {"fiber": records})
    path = tmp_path_factory.mktemp("typed") / "planner.xlsx"
    path.write_bytes(workbook(layout, entries))
    return path, layout


def test_a_text_stays_a_text(typed):
    import openpyxl

    path, layout = typed
    book = openpyxl.load_workbook(path)
    for key in ("fiber_name", "fiber_note"):
        place_ = layout.placements[key]
        cells = [book[place_.sheet][place_.cell(row)] for row in range(place_.rows)]
        assert [cell.value for cell in cells] == list(TYPED)
        assert {cell.data_type for cell in cells} == {"s"}


@pytest.mark.parametrize("name", ["formualizer", "ironcalc"])
def test_an_engine_reads_it_as_a_text(typed, name):
    path, layout = typed
    with engine(name).open(path) as session:
        assert read_inputs(session, layout)["fiber_note"] == TYPED
        assert read(session, [layout.placements["fiber_listed"]])["fiber_listed"] == TYPED


def test_entries_come_back_as_they_were_given(small_layout, tmp_path):
    entries = with_records(
        small_layout.planner,
        starting_entries(small_layout.planner),
        "skeins",
        [{"name": "One & <two>", "reel": "Clock reel", "wraps": 1e5, "rest": 0.3, "gross": 1e-7}],
    )
    path = tmp_path / "planner.xlsx"
    path.write_bytes(writing.write(small_layout, entries, {}))
    with engine("formualizer").open(path) as session:
        assert read_inputs(session, small_layout) == entries


def test_every_formula_shows_what_an_engine_computes(blank, layout):

    book = opened(blank, values=True)
    with engine("formualizer").open(blank) as session:
        computed = read(session, layout.formulas)
    shown = {
        each.key: tuple(book[each.sheet][each.cell(row)].value for row in range(each.rows)) for each in layout.formulas
    }
    unlike = [
        (key, row)
        for key, values in computed.items()
        for row, (one, other) in enumerate(zip(shown[key], values, strict=True))
        if not agree(one, other)
    ]
    assert unlike == []
    filled = [value for values in shown.values() for value in values if value is not None]
    assert len(filled) > 300 and {type(value) for value in filled} <= {int, float, str}


def test_every_formula_has_a_value_beside_it(blank):
    formulas = valued = 0
    for name, content in parts(blank.read_bytes()).items():
        if name.startswith("xl/worksheets/"):
            formulas += len(re.findall(rb"<f[ >]", content))
            valued += len(re.findall(rb"(?:</f>|<f[^>]*/>)<v>", content))
    assert formulas == valued > 1_000


def test_a_blank_planner_is_small(blank):
    assert blank.stat().st_size < 640_000


def test_a_planner_is_packed_as_tightly_as_it_can_be(blank, monkeypatch):
    """The same parts in the same order, in fewer bytes; a large one is left as it was written, for speed."""
    content = blank.read_bytes()
    with zipfile.ZipFile(BytesIO(content)) as tight:
        assert {entry.date_time for entry in tight.infolist()} == {(1980, 1, 31, 0, 0, 0)}
        loose = BytesIO()
        with zipfile.ZipFile(loose, "w", zipfile.ZIP_DEFLATED, compresslevel=6) as package:
            for entry in tight.infolist():
                package.writestr(entry.filename, tight.read(entry))
    again = packed(loose.getvalue())
    assert list(parts(again).items()) == list(parts(content).items())
    assert abs(len(again) - len(content)) < 100 and len(content) < 0.97 * len(loose.getvalue())
    monkeypatch.setattr(package_module, "TAKES_SECONDS", 1000)
    assert packed(loose.getvalue()) == loose.getvalue()


def test_only_what_xlsxwriter_warns_of_is_a_fault(monkeypatch):
    """A warning of a thread that reckons meanwhile is none of the writer's."""
    layout = place(described.whole())
    drawing = writing.page_sheet.draw

    def warned_in(module):
        def draw(canvas):
            warnings.warn_explicit("it cannot be written", UserWarning, "some.py", 1, module=module)
            return drawing(canvas)

        return draw

    monkeypatch.setattr(writing.page_sheet, "draw", warned_in("numpy.lib"))
    with pytest.warns(UserWarning):
        writing.write(layout, starting_entries(layout.planner), {})
    monkeypatch.setattr(writing.page_sheet, "draw", warned_in("xlsxwriter.worksheet"))
    with pytest.raises(UserWarning, match="it cannot be written"):
        writing.write(layout, starting_entries(layout.planner), {})


def test_a_help_that_a_workbook_cannot_hold_is_refused():
    # XlsxWriter would warn, and leave the validation away.
    typed, computed = described.REELS.groups
    name, loop = typed.fields
    group = replace(typed, fields=(name, replace(loop, help="help " * 60)))
    lengthy = described.planner_of(replace(described.REELS, groups=(group, computed)), described.SKEINS, described.PLAN)
    with pytest.raises(DescriptionError, match="field loop, Loop: .* letters, and a workbook holds 255"):
        writing.write(place(lengthy), starting_entries(lengthy), {})


def test_the_name_of_a_sheet_that_a_workbook_cannot_hold_is_refused():
    whole = described.whole()
    with pytest.raises(DescriptionError, match="31 at most"):
        replace(whole, sheets=(replace(whole.sheets[0], name="A" * 32), *whole.sheets[1:]))
