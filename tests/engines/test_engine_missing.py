"""An engine that is absent says so in a sentence, and is never taken for agreement."""

import sys

import pytest

from workbookgen.engines import ENGINES, engine
from workbookgen.errors import MissingEngine, PlannerError


@pytest.fixture
def bare_machine(monkeypatch, tmp_path):
    """No program on the path and no engine among the packages."""
    monkeypatch.setenv("PATH", str(tmp_path))
    for package in ("formualizer", "ironcalc"):
        monkeypatch.setitem(sys.modules, package, None)


@pytest.mark.parametrize(
    ("name", "way_to_get_it"),
    [
        ("formualizer", "pip install formualizer"),
        ("ironcalc", "pip install ironcalc"),
        ("libreoffice", "libreoffice-calc and python3-uno"),
        ("gnumeric", "Debian package gnumeric"),
    ],
)
def test_a_missing_engine_says_how_to_get_it(bare_machine, workbook, monkeypatch, name, way_to_get_it):
    if name == "libreoffice":
        from workbookgen.engines import libreoffice

        monkeypatch.setattr(libreoffice, "_shared", [])  # as if none were running yet
    for act in (lambda: engine(name).version(), lambda: engine(name).open(workbook)):
        with pytest.raises(MissingEngine, match=way_to_get_it) as caught:
            act()
        assert caught.value.exit_code == 3


def test_an_unknown_name_lists_the_known_ones():
    with pytest.raises(PlannerError, match="formualizer, ironcalc, libreoffice, gnumeric"):
        engine("abacus")


def test_every_engine_bears_the_name_it_is_asked_by():
    assert [engine(name).name for name in ENGINES] == list(ENGINES)
