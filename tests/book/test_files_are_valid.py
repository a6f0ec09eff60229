"""The planners that are handed out, as files: a validator of the format finds no fault in any of them."""

import re
import zipfile
from html import unescape
from io import BytesIO
from pathlib import Path
from typing import get_args

import pytest
from openxml_audit import AppPrediction, OpenXmlValidator, predict

from demo_planner import demo_entries, demo_settings
from long_run import LONG, dealt, some
from planners import laid_out
from workbookgen.book.write import write
from workbookgen.language.entries import starting_entries
from workbookgen.settings import Leavable, Settings
from workbookgen.unit_systems import UNIT_SYSTEMS

TEMPLATES = sorted((Path(__file__).resolve().parents[2] / "templates").glob("*.xlsx"))


def faults(path) -> list:
    result = OpenXmlValidator().validate(str(path))
    assert predict(result).prediction is AppPrediction.OPENS_CLEAN
    return result.errors


def test_there_is_a_blank_planner_of_each_size_in_each_unit_system():
    assert {path.stem for path in TEMPLATES} == {system + size for system in UNIT_SYSTEMS for size in ("", "-small")}


# What they hold is what is built today (tests/test_templates.py). They differ in units, and each takes the validator
# long, the whole ones longest: at a push the demo stands for these, which has all their sheets, with blank lines in
# every log, and filled ones besides.
@pytest.mark.parametrize(
    "path",
    TEMPLATES if LONG else some([path for path in TEMPLATES if path.stem.endswith("-small")], 1),
    ids=lambda path: path.stem,
)
def test_a_blank_planner(path):
    assert faults(path) == []


def test_the_filled_demo(built):
    assert faults(built(demo_settings(), demo_entries())) == []


def shared_formulas(content: bytes) -> list[str]:
    """Every formula that cells share, its texts emptied."""
    with zipfile.ZipFile(BytesIO(content)) as package:
        sheets = [package.read(name).decode() for name in package.namelist() if name.startswith("xl/worksheets/sheet")]
    found = [text for sheet in sheets for text in re.findall(r'<f t="shared" ref="[^"]+" si="\d+">([^<]+)</f>', sheet)]
    assert len(found) == sum(len(re.findall(r"<f [^>]*ref=", sheet)) for sheet in sheets)
    return [re.sub(r'"[^"]*"', '""', unescape(text)) for text in found]


LEFT_OUT = {"nothing left out": (), "one left out": ("Twist",), "all left out": get_args(Leavable)}


@pytest.mark.parametrize(("units", "left_out"), dealt(LEFT_OUT, tuple(UNIT_SYSTEMS)))
def test_no_shared_formula_holds_an_address_on_another_sheet(units, left_out):
    # [MS-XLS] 2.5.198.118, SharedParsedFormula (read): it must not contain PtgRef3d or PtgArea3d, a reference with its
    # sheet.
    layout = laid_out(Settings(units=units, leave_out=LEFT_OUT[left_out]))
    found = shared_formulas(write(layout, starting_entries(layout.planner), {}))
    assert len(found) > 40
    assert [text for text in found if "!" in text or "[" in text] == []


def test_no_input_of_words_is_marked_as_a_number_stored_as_text():
    layout = laid_out(Settings())
    with zipfile.ZipFile(BytesIO(write(layout, starting_entries(layout.planner), {}))) as package:
        sheets = [package.read(name).decode() for name in package.namelist() if name.startswith("xl/worksheets/sheet")]
    areas = [
        area
        for sheet in sheets
        for said in re.findall(r'sqref="([^"]+)" numberStoredAsText="1"', sheet)
        for area in said.split()
    ]
    assert sorted(areas) == sorted(each.area.replace("$", "") for each in layout.inputs if each.field.is_text)
