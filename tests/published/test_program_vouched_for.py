"""The desk vouches for what the planner uses: a program that lacks a function, or shows an error, is told apart."""

import re
import zipfile
from functools import cache

import pytest

from workbookgen.build import layout_of
from workbookgen.engines import Area, engine
from workbookgen.errors import DescriptionError
from workbookgen.language.profile import FUNCTIONS
from workbookgen.language.proofs import Trial
from workbookgen.ooxml.references import Range, range_of
from workbookgen.settings import Settings
from workbookgen.sheets.proofs import read_trials

RIGHT = "This program computes the planner correctly."
CALL = re.compile(r"([A-Z][A-Z0-9]*)\(")


def edited(source, target, change) -> None:
    """A copy with other formulas."""
    with zipfile.ZipFile(source) as before, zipfile.ZipFile(target, "w") as after:
        for entry in before.infolist():
            content = before.read(entry)
            if entry.filename.startswith("xl/worksheets/sheet"):
                content = re.sub(rb"(<f[^>]*>)([^<]+)", lambda found: found[1] + change(found[2]), content)
            after.writestr(entry, content)


@cache
def said_of_a_good_one(path, layout, name: str) -> str:
    return said(path, layout, name)


def said(path, layout, name: str) -> str:
    with engine(name).open(path) as session:
        trust = layout.placements["start_trust"]
        return session.read(Area(trust.sheet, trust.row, trust.column))[0][0]


def test_each_function_of_the_profile_has_a_trial():
    tried = [set(CALL.findall(re.sub(r'"[^"]*"', "", each.formula))) for each in read_trials()]
    assert set().union(*tried) == FUNCTIONS
    assert all(each.what.partition(":")[0] in used for each, used in zip(read_trials(), tried, strict=True))


@pytest.mark.parametrize("units", ["us", "metric"])
def test_each_function_that_formulas_use_has_a_trial(units):
    layout = layout_of(Settings(units=units))
    used = {
        name
        for each in layout.formulas
        for text in each.formulas
        for name in CALL.findall(re.sub(r'"[^"]*"', "", text))
    }
    assert used <= {each.what.partition(":")[0] for each in read_trials()}


def test_each_result_is_summed_up_in_one_trial(layout):
    table = layout.planner.proof_tables["proofs"]
    summed = "".join(layout.placements["proofs_computed"].formulas[len(table.proofs) :])
    desk = {
        holder.key for holder in layout.planner.sheets[0].holders
    }  # an error there is seen beside the verdict itself
    blocks = [key for key in layout.planner.blocks if key not in desk]
    assert len(blocks) > 20
    for key in blocks:
        for each in layout.planner.blocks[key].results:
            assert _is_within(layout.placements[f"{key}_{each.key}"], summed), (key, each.key)


def _is_within(placed, summed: str) -> bool:
    """Whether all cells of a result lie in one of the ranges that are summed up."""
    cells = range_of(placed.range)
    return any(
        area.sheet == cells.sheet
        and area.top <= cells.top
        and cells.bottom <= area.bottom
        and area.left <= cells.left
        and cells.right <= area.right
        for area in areas_in(summed)
    )


@cache
def areas_in(summed: str) -> list[Range]:
    """The ranges that formulas name."""
    return [range_of(each) for each in re.findall(r"(?:'[^']+'|[A-Za-z_]+)!\$[A-Z]+\$\d+(?::\$[A-Z]+\$\d+)?", summed)]


@pytest.mark.parametrize("name", ["formualizer", "ironcalc"])
@pytest.mark.parametrize("function", ["SIGN", "SUBSTITUTE", "COUNTIF", "SIN", "LEN", "ISTEXT", "NORMSINV", "SUM"])
def test_a_program_without_a_function_is_not_trusted(function, name, little_file, little_layout, tmp_path):
    path = tmp_path / "lacking.xlsx"
    edited(little_file, path, lambda text: re.sub(rf"\b{function}\(".encode(), b"SIGX(", text))
    assert said_of_a_good_one(little_file, little_layout, name) == RIGHT
    assert said(path, little_layout, name) != RIGHT


@pytest.mark.programs
@pytest.mark.parametrize("name", ["gnumeric", "libreoffice"])
def test_a_real_program_without_a_function_is_not_trusted(name, little_file, little_layout, tmp_path):
    path = tmp_path / "lacking.xlsx"
    edited(little_file, path, lambda text: text.replace(b"SIGN(", b"SIGX("))
    assert str(said(path, little_layout, name)).startswith("Do not rely on the numbers here: ")


@pytest.mark.parametrize("name", ["formualizer", "ironcalc"])
def test_an_error_in_one_column_is_told(name, little_file, little_layout, tmp_path):
    """In one that nothing else reads: only its trial tells."""
    path = tmp_path / "error.xlsx"
    wrong = little_layout.placements["skeins_run"].formulas[0].removeprefix("=").encode()
    changed = []

    def change(text: bytes) -> bytes:
        plain = text.replace(b"&quot;", b'"').replace(b"&lt;", b"<").replace(b"&gt;", b">").replace(b"&amp;", b"&")
        changed.append(plain == wrong)
        return b"1/0" if plain == wrong else text

    edited(little_file, path, change)
    assert any(changed)
    assert str(said(path, little_layout, name)).startswith("Do not rely on the numbers here: ")


def test_a_trial_outside_the_profile_is_refused():
    with pytest.raises(DescriptionError, match="trial f-99: the function XLOOKUP is outside the portable profile"):
        Trial("f-99", "A trial", 1.0, "XLOOKUP(1, 2, 3)")
