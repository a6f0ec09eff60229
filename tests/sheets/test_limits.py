"""Limits of inputs stand once: in their list, or with the one input that needs them."""

import ast
from pathlib import Path

import pytest

import workbookgen.sheets
from workbookgen.language.domains import Number
from workbookgen.settings import Settings
from workbookgen.sheets import limits
from workbookgen.sheets.planner import planner

MODULES = sorted(path for path in Path(workbookgen.sheets.__file__).parent.glob("*.py") if path.stem != "limits")
LISTED = {name: each for name, each in vars(limits).items() if isinstance(each, Number)}


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.stem)
def test_no_sheet_has_a_list_of_its_own(path):
    named = [node for node in ast.parse(path.read_text(encoding="utf-8")).body if isinstance(node, ast.Assign) and isinstance(node.value, ast.Call)]
    assert [ast.unparse(node) for node in named if getattr(node.value.func, "id", "") == "Number"] == []


def test_every_listed_limit_is_some_inputs():
    used = {id(each.domain) for block in planner(Settings()).blocks.values() for each in block.inputs}
    assert [name for name, each in LISTED.items() if id(each) not in used] == []
