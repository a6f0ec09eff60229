"""The example names every setting, and is valid as it stands and with all of them in use."""

import re
import tomllib

import pytest
from pydantic import BaseModel

from workbookgen.build import layout_of, workbook
from workbookgen.checking.check import FileToCheck, check
from workbookgen.colors import ROLES
from workbookgen.planner_file import read_planner
from workbookgen.settings import Colors, Leavable, Rows, Settings, load, templates
from workbookgen.settings.fiber_table import load_fibers
from workbookgen.settings.reels import Reel

PATH = templates() / "example.toml"
TEXT = PATH.read_text(encoding="utf-8")
USED = re.sub(r"^#(?=\S)", "", TEXT, flags=re.MULTILINE)


def fields(model: type[BaseModel]) -> set[str]:
    return set(model.model_fields)


@pytest.fixture(scope="module", params=["as it stands", "all in use"])
def path(request, tmp_path_factory):
    """The example, and the example with every setting in use, beside the fiber table that it names."""
    folder = tmp_path_factory.mktemp("example")
    (folder / "fibers.csv").write_bytes((templates() / "fibers.csv").read_bytes())
    target = folder / "guild.toml"
    target.write_text(TEXT if request.param == "as it stands" else USED, encoding="utf-8")
    return target


def test_every_setting_is_in_it():
    table = tomllib.loads(USED)
    assert set(table) == fields(Settings)
    assert set(table["rows"]) == fields(Rows) and set(table["colors"]) == fields(Colors)
    assert {key for reel in table["reels"] for key in reel} == fields(Reel)


def test_the_usual_values_are_the_usual_ones():
    as_it_stands = load(PATH).model_copy(update={"reels": ()})
    assert as_it_stands == Settings()
    assert tomllib.loads(USED)["colors"] == ROLES


def test_a_comment_says_every_limit_of_rows():
    for key, field in Rows.model_fields.items():
        least, most = (
            limit
            for each in field.metadata
            for limit in [getattr(each, "ge", getattr(each, "le", None))]
            if limit is not None
        )
        assert re.search(rf"^{key} = {field.default} +# {least} to {most}\b", TEXT, re.MULTILINE), key


def test_a_comment_names_every_sheet_that_can_go():
    said = " ".join(line.removeprefix("# ") for line in TEXT.splitlines())
    assert f"Any of these can go: {', '.join(Leavable.__args__)}." in said


def test_it_builds_and_checks(path, tmp_path):
    settings = load(path)
    settings = settings.model_copy(
        update={"rows": settings.rows.model_copy(update={"skeins": 8, "pieces": 4, "components": 4, "samples": 4})}
    )
    assert len(load_fibers(settings)) > 20
    target = tmp_path / "planner.xlsx"
    target.write_bytes(workbook(layout_of(settings)))
    planner = read_planner(target)
    report = check(FileToCheck(target, planner.layout, formulas=planner.formulas), scenarios=2)
    assert report.findings == [] and report.formula_cells_checked == report.formula_cells > 1000
