"""The planners that are handed out, as files: a validator of the format finds no fault in any of them."""

import sys
from pathlib import Path

import pytest
from openxml_audit import AppPrediction, OpenXmlValidator, predict

ROOT = Path(__file__).resolve().parents[2]
TEMPLATES = sorted((ROOT / "templates").glob("*.xlsx"))


def faults(path) -> list:
    result = OpenXmlValidator().validate(str(path))
    assert predict(result).prediction is AppPrediction.OPENS_CLEAN
    return result.errors


def test_there_are_three_blank_planners():
    assert len(TEMPLATES) == 3


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_a_blank_planner(path):
    assert faults(path) == []


def test_the_default_planner(blank):
    assert faults(blank) == []


def test_the_filled_demo(tmp_path, monkeypatch):
    monkeypatch.syspath_prepend(str(ROOT / "demo"))
    sys.modules.pop("make", None)
    import make

    path = tmp_path / "demo.xlsx"
    make.make(path)
    assert faults(path) == []
