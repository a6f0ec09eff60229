"""The committed blank planners are what the generator writes from the settings beside them."""

import zipfile

import pytest

from workbookgen.settings import load, templates
from workbookgen.unit_systems import UNIT_SYSTEMS


@pytest.mark.parametrize("name", [f"{units}{size}" for size in ("", "-small") for units in UNIT_SYSTEMS])
def test_the_committed_planner_is_built_from_its_settings(name, built):
    """Part by part, unpacked: another zlib may pack the same bytes differently."""
    with (
        zipfile.ZipFile(built(load(templates() / f"{name}.toml"))) as fresh,
        zipfile.ZipFile(templates() / f"{name}.xlsx") as committed,
    ):
        assert fresh.namelist() == committed.namelist()
        different = [part for part in fresh.namelist() if fresh.read(part) != committed.read(part)]
    assert different == [], "run templates/build_all.py"
