"""The floors of the house, read off the imports: a part uses only what stands below it."""

import ast
import re
from collections.abc import Callable, Collection
from functools import cache
from graphlib import TopologicalSorter
from pathlib import Path

import workbookgen

HOUSE = Path(workbookgen.__file__).parent
LONGEST = 400

# What each part may use of the project. The version in workbookgen/__init__.py is free to all.
MAY_USE = {
    "errors": set(),
    "texts": set(),
    "units": set(),
    "unit_systems": set(),
    "saving": {"errors"},
    "temporary": set(),
    "processes": {"errors"},
    "colors": set(),
    "drawings": {"colors"},
    "reference": {"texts", "units"},
    "language": {"errors", "texts", "units", "unit_systems"},
    "settings": {"errors", "texts", "units", "unit_systems", "colors", "language"},
    "sheets": {"errors", "texts", "units", "unit_systems", "reference", "language", "settings"},
    "book": {"errors", "temporary", "colors", "language"},
    "engines": {"errors", "temporary", "ooxml"},
    "ooxml": set(),
    "checking": {"errors", "temporary", "processes", "texts", "units", "language", "book", "engines", "ooxml"},
    "filled": {"errors", "texts", "language", "settings", "sheets", "ooxml", "engines", "book", "checking"},
    "carry": {
        "errors",
        "saving",
        "texts",
        "units",
        "reference",
        "language",
        "settings",
        "book",
        "engines",
        "checking",
        "filled",
        "build",
    },
    "gather": {
        "errors",
        "saving",
        "processes",
        "texts",
        "units",
        "reference",
        "language",
        "settings",
        "book",
        "checking",
        "filled",
    },
}
# Above the floors stand the modules that put them together: they may use any floor, and each other without a circle.

SPREADSHEET_PACKAGES = {"openpyxl", "xlsxwriter", "pandas", "formualizer", "ironcalc"}
MAY_KNOW_SPREADSHEETS = {
    "errors": set(),
    "units": set(),
    "colors": set(),
    "reference": set(),
    "language": set(),
    "settings": set(),
    "sheets": set(),
    "checking": set(),
    "book": {"xlsxwriter"},
    "engines": {"openpyxl", "formualizer", "ironcalc"},
    "ooxml": {"openpyxl"},
    "filled": set(),
    "carry": set(),
    "gather": {"pandas", "xlsxwriter"},
}

# A package is opened, and its XML parsed, in ooxml alone. Beside it: the gate, which looks at bytes before anything is
# parsed, the other format, and what only names the errors of a broken package or escapes a text.
PACKAGE_MODULES = {"lxml", "xml", "zipfile"}
MAY_OPEN_PACKAGES = {
    "filled/gate.py": {"zipfile"},
    "filled/ods.py": {"lxml"},
    "engines/copies.py": {"zipfile"},
    "book/worksheet.py": {"xml"},
}

MODULES = sorted(HOUSE.rglob("*.py"))


def dotted(path: Path) -> str:
    parts = path.relative_to(HOUSE.parent).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


NAMES = {dotted(path): path for path in MODULES}


def name(path: Path) -> str:
    return str(path.relative_to(HOUSE))


def part(module: str) -> str:
    return module.split(".")[1] if "." in module else "workbookgen"


@cache
def tree(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


@cache
def imports(path: Path) -> list[tuple[str, str]]:
    """(module, name taken from it) of every import, relative ones made absolute, wherever it stands."""
    package = dotted(path) if path.name == "__init__.py" else dotted(path).rpartition(".")[0]
    found = []
    for node in ast.walk(tree(path)):
        if isinstance(node, ast.Import):
            found += [(each.name, "") for each in node.names]
        elif isinstance(node, ast.ImportFrom):
            above = package.split(".")[: len(package.split(".")) - node.level + 1] if node.level else []
            base = ".".join([*above, *filter(None, [node.module])])
            for each in node.names:
                whole = f"{base}.{each.name}"
                found.append((whole, "") if whole in NAMES else (base, each.name))
    return found


def ours(path: Path) -> set[str]:
    return {module for module, _ in imports(path) if module.split(".")[0] == "workbookgen"}


def test_the_imports_are_found():
    # Else every test below would pass on nothing.
    assert "workbookgen.language.parts" in ours(HOUSE / "book" / "layout.py")
    assert "workbookgen.errors" in ours(HOUSE / "engines" / "engine.py")  # a relative import
    assert "workbookgen.sheets.fiber" in ours(HOUSE / "sheets" / "planner.py")  # a module taken from its package


def test_every_floor_of_the_table_is_there():
    assert set(MAY_USE) <= {part(module) for module in NAMES}
    folders = {each.name for each in HOUSE.iterdir() if any(each.glob("*.py"))}
    assert folders <= set(MAY_USE), "a new folder is a new floor: say in MAY_USE what it may use"


def test_the_table_itself_has_no_circle():
    TopologicalSorter(MAY_USE).prepare()


def found_in_modules(look: Callable[[Path], Collection[str]]) -> dict[str, Collection[str]]:
    """Module -> what was found in it that does not belong there; modules without such a thing are left out."""
    return {name(path): found for path in MODULES if (found := look(path))}


def test_a_module_uses_only_floors_below_it():
    def from_above(path: Path) -> set[str]:
        floor = part(dotted(path))
        used = {part(module) for module in ours(path)} - {"workbookgen", floor}
        return used - MAY_USE[floor] if floor in MAY_USE else set()

    assert found_in_modules(from_above) == {}


def test_what_a_floor_knows_of_spreadsheets():
    def too_much(path: Path) -> set[str]:
        used = {module.split(".")[0] for module, _ in imports(path)} & SPREADSHEET_PACKAGES
        return used - MAY_KNOW_SPREADSHEETS.get(part(dotted(path)), SPREADSHEET_PACKAGES)

    assert found_in_modules(too_much) == {}


def test_packages_are_opened_in_one_room():
    def openers(path: Path) -> set[str]:
        used = {module.split(".")[0] for module, _ in imports(path)} & PACKAGE_MODULES
        return set() if part(dotted(path)) == "ooxml" else used - MAY_OPEN_PACKAGES.get(name(path), set())

    assert found_in_modules(openers) == {}


def test_the_modules_use_each_other_without_a_circle():
    TopologicalSorter({module: ours(path) & set(NAMES) - {module} for module, path in NAMES.items()}).prepare()


def test_nothing_private_crosses_a_module():
    def private_of_others(path: Path) -> list[str]:
        taken = [(module, each) for module, each in imports(path) if module.split(".")[0] == "workbookgen"]
        aliases = {
            (each.asname or each.name).split(".")[-1]
            for node in ast.walk(tree(path))
            if isinstance(node, ast.Import | ast.ImportFrom)
            for each in node.names
        }
        reached = [
            f"{node.value.id}.{node.attr}"
            for node in ast.walk(tree(path))
            if isinstance(node, ast.Attribute)
            and isinstance(node.value, ast.Name)
            and node.value.id in aliases
            and private(node.attr)
        ]
        return [each for _, each in taken if private(each)] + reached

    assert found_in_modules(private_of_others) == {}


def private(word: str) -> bool:
    return word.startswith("_") and not word.startswith("__")


def test_a_module_can_be_read_in_one_sitting():
    lines = {name(path): len(path.read_text(encoding="utf-8").splitlines()) for path in MODULES}
    assert {module: number for module, number in lines.items() if number > LONGEST} == {}


def test_a_module_says_what_it_is_for():
    def fits(said: str) -> bool:
        return bool(re.match(r"[A-Z`]", said)) and said.split("\n\n")[0].endswith((".", ":", "?"))

    assert [name(path) for path in MODULES if not fits(ast.get_docstring(tree(path)) or "")] == []
