"""The committed blank planners are what the generator writes from the settings beside them."""

import zipfile

import pytest

from workbookgen.build import layout_of, workbook
from workbookgen.settings import load, templates


@pytest.mark.parametrize("name", ["us", "us-grams", "metric", "us-small", "us-grams-small", "metric-small"])
def test_the_committed_planner_is_built_from_its_settings(name, tmp_path):
    """Part by part, unpacked: another zlib may pack the same bytes differently."""
    fresh = tmp_path / "fresh.xlsx"
    fresh.write_bytes(workbook(layout_of(load(templates() / f"{name}.toml")), None))
    with zipfile.ZipFile(fresh) as built, zipfile.ZipFile(templates() / f"{name}.xlsx") as committed:
        assert built.namelist() == committed.namelist()
        different = [part for part in built.namelist() if built.read(part) != committed.read(part)]
    assert different == [], "run templates/build_all.py"
