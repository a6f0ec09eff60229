"""No calculation is kept that nobody needs: a formula, the rest of the package, or a published value.

A calculation's own tests do not count, or every calculation would keep itself alive.
"""

import ast
import dis
import inspect
from pathlib import Path
from types import CodeType

import published
import workbookgen
from published.rows import table
from workbookgen.language.fields import Result
from workbookgen.settings import Rows, Settings
from workbookgen.sheets.planner import planner
from workbookgen.sheets.skeins import FEW

from .examples import public_calculations

HOUSE = Path(workbookgen.__file__).parent
PUBLISHED = Path(published.__file__).parent
CALCULATIONS = dict(public_calculations())


def in_formulas():
    """References of the results of the default planner, and of one with many skeins.

    What a sheet's module names without them is no use.
    """
    many = Settings(rows=Rows(skeins=FEW + 1))
    return {
        field.reference
        for settings in (Settings(), many)
        for _, field in planner(settings).by_key.values()
        if isinstance(field, Result)
    }


def in_modules(*paths):
    """Calculations that modules name, as `subject.calculation`."""
    named = set()
    for path in paths:
        nodes = list(ast.walk(ast.parse(path.read_text(encoding="utf-8"))))
        subjects = {
            each.asname or each.name: each.name
            for node in nodes
            if isinstance(node, ast.ImportFrom) and node.module == "workbookgen.reference"
            for each in node.names
        }
        named |= {
            f"{subjects.get(node.value.id)}.{node.attr}"
            for node in nodes
            if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name)
        }
    return {CALCULATIONS[name] for name in named & set(CALCULATIONS)}


def in_package():
    return in_modules(
        *(path for path in HOUSE.rglob("*.py") if path.relative_to(HOUSE).parts[0] not in {"reference", "sheets"})
    )


def in_published():
    calls = {row["call"] for row in table("published_elsewhere.csv")}
    return in_modules(*PUBLISHED.glob("*.py")) | {CALCULATIONS[name] for name in calls & set(CALCULATIONS)}


def reached(functions):
    """These functions, and all those of the library that they call."""
    found, waiting = set(), list(functions)
    while waiting:
        function = waiting.pop()
        if function not in found:
            found.add(function)
            inner = inspect.unwrap(function)
            called = (inner.__globals__.get(name) for name in globals_of(inner.__code__))
            waiting += [
                each for each in called if inspect.isfunction(each) and each.__module__.startswith("workbookgen.")
            ]
    return found


def globals_of(code):
    """Names that code takes from its module, in its inner functions too; a parameter of the same name is none."""
    own = {each.argval for each in dis.get_instructions(code) if each.opname == "LOAD_GLOBAL"}
    return own.union(*(globals_of(each) for each in code.co_consts if isinstance(each, CodeType)))


def test_every_law_is_used():
    used = reached(in_formulas() | in_package() | in_published())
    assert [name for name, calculation in CALCULATIONS.items() if calculation not in used] == []
