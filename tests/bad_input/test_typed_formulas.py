"""A person may type arithmetic into an input, or paste what formulas gave; only its own line is told what is wrong."""

import re
import zipfile
from functools import cache
from xml.sax.saxutils import escape

import pytest

from long_run import some
from workbookgen.checking.driving import read
from workbookgen.engines import ErrorValue, engine

from .conftest import BY_ENGINE, PROGRAMS, PYTHON


def _formula_cell(reference: str, formula: str):
    text = f'<c r="{reference}"><f>{escape(formula)}</f><v>0</v></c>'.encode()
    return lambda found: text


def _pasted(reference: str, text: str):
    cell = f'<c r="{reference}" t="inlineStr"><is><t>{escape(text)}</t></is></c>'.encode()
    return lambda found: cell


def _emptied(reference: str, _: str):
    cell = f'<c r="{reference}"/>'.encode()
    return lambda found: cell


@pytest.fixture(scope="module")
def shown(filled, tmp_path_factory):
    """What an engine shows when something stands in the first line of a field; each is loaded once."""
    layout, path = filled

    @cache
    def showing(name: str, formula: str, key: str = "fiber_weight", written=_formula_cell) -> dict:
        """The formula is put into the file as it is: saving it with a library would change other cells too."""
        place = layout.placements[key]
        number = [sheet.name for sheet in layout.planner.sheets].index(place.sheet) + 1
        cell = re.compile(rb'<c r="%s"( s="\d+")?(/>|>.*?</c>)' % place.cell(0).encode())
        target = tmp_path_factory.mktemp("typed") / "typed.xlsx"
        with zipfile.ZipFile(path) as before, zipfile.ZipFile(target, "w") as after:
            for entry in before.infolist():
                content = before.read(entry)
                if entry.filename == f"xl/worksheets/sheet{number}.xml":
                    content, times = cell.subn(written(place.cell(0), formula), content)
                    assert times == 1
                after.writestr(entry, content)
        with engine(name).open(target) as session:
            return read(session, layout.formulas)

    return showing


@pytest.mark.parametrize("name", BY_ENGINE)
def test_arithmetic_counts_as_its_result(shown, name):
    assert shown(name, "6.5*16") == shown(name, "104") and shown(name, "6.5*16")["fiber_message"][0] is None


FAILING = ["1/0", "SQRT(-1)", '"12,5"', "0-104"]
TRIED = [(name, formula) for name in PYTHON for formula in FAILING] + [
    (name, formula) for name in PROGRAMS for formula in some(FAILING, 2)
]  # each is a file of its own


@pytest.mark.parametrize(
    ("name", "formula"),
    [pytest.param(*each, marks=pytest.mark.programs if each[0] in PROGRAMS else ()) for each in TRIED],
)
def test_arithmetic_that_fails_is_told_in_its_line(shown, name, formula):
    plain, values = shown(name, "104"), shown(name, formula)
    assert not [key for key, column in values.items() for value in column if isinstance(value, ErrorValue)]
    assert values["fiber_message"][0] == "Weight: type a number above 0 up to 1,000,000 oz, in digits."
    assert values["fiber_yarn"][0] is None and plain["fiber_yarn"][0] > 0
    differing = {key for key, column in values.items() if column[1:2] != plain[key][1:2] and key.startswith("fiber_")}
    assert differing == set()  # the second lot does not feel it


@pytest.mark.parametrize("key", ["fiber_weight", "fiber_skirted_weighed"])
@pytest.mark.parametrize("name", BY_ENGINE)
def test_a_pasted_empty_text_counts_as_blank(shown, name, key):
    """It looks so; the values of another spreadsheet's formulas bring such cells along."""
    assert shown(name, "", key, _pasted) == shown(name, "", key, _emptied)
