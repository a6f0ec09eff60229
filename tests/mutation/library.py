"""How good are the library's tests? Change the library a little, and see whether they notice.

    python -m tests.mutation.library reeling yarn_count      some subjects
    python -m tests.mutation.library                         all of them; an hour or two

The changes come from Cosmic Ray: another comparison, another operator, another number.
Its own runner would start a new Python for each; here one process is warmed up, and a
child of it runs the tests with the changed module. A change that no test notices is
listed with its line. Annotations are left alone: nothing runs them.
"""

import ast
import importlib.abc
import importlib.util
import io
import os
import re
import signal
import sys
from collections.abc import Iterator
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass
from pathlib import Path

import hypothesis
import pytest
from cosmic_ray.ast import ast_nodes, get_ast
from cosmic_ray.mutating import mutate_code
from cosmic_ray.plugins import get_operator, operator_names

ROOT = Path(__file__).resolve().parents[2]
LIBRARY = ROOT / "workbookgen" / "reference"
TIME_LIMIT = 90  # seconds; a change that makes a test run for ever is noticed, too
SIGNS = "Add Sub Mul Div".split()
COMPARISONS = "Eq NotEq Lt LtE Gt GtE".split()
OPERATORS = (
    [f"ReplaceBinaryOperator_{old}_{new}" for old in SIGNS for new in SIGNS if old != new]
    + ["ReplaceBinaryOperator_Pow_Mul", "ReplaceBinaryOperator_BitAnd_BitOr", "ReplaceBinaryOperator_BitOr_BitAnd"]
    + [f"ReplaceComparisonOperator_{old}_{new}" for old in COMPARISONS for new in COMPARISONS if old != new]
    + ["ReplaceComparisonOperator_Is_IsNot", "ReplaceComparisonOperator_IsNot_Is"]
    + "NumberReplacer ReplaceAndWithOr ReplaceOrWithAnd AddNot ReplaceTrueWithFalse ReplaceFalseWithTrue".split()
    + "ReplaceUnaryOperator_USub_UAdd ZeroIterationForLoop".split()
)


@dataclass(frozen=True)
class Change:
    """One change of one module."""

    module: str
    line: int
    operator: str
    source: str

    def __str__(self) -> str:
        return f"{self.module}:{self.line} {self.operator}: {self.source.splitlines()[self.line - 1].strip()}"


def changes_of(path: Path) -> Iterator[Change]:
    """Every change that Cosmic Ray knows for a module."""
    source = path.read_text(encoding="utf-8")
    module = _module(path)
    quiet = _annotations(source)
    for name in OPERATORS:
        operator = get_operator(f"core/{name}")()
        places = [place for node in ast_nodes(get_ast(source)) for place in operator.mutation_positions(node)]
        for occurrence, (start, _) in enumerate(places):
            if not any(first <= start < last for first, last in quiet):
                yield Change(module, start[0], name, mutate_code(source, operator, occurrence))


def _module(path: Path) -> str:
    """The name under which a file is imported."""
    return ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")


def _annotations(source: str) -> list[tuple[tuple[int, int], tuple[int, int]]]:
    """Where annotations begin and end."""
    found = [
        each
        for node in ast.walk(ast.parse(source))
        for each in (getattr(node, "annotation", None), getattr(node, "returns", None))
        if each is not None
    ]
    return [((each.lineno, each.col_offset), (each.end_lineno, each.end_col_offset)) for each in found]


class _Changed(importlib.abc.MetaPathFinder, importlib.abc.SourceLoader):
    """Imports the changed module from its changed text."""

    def __init__(self, change: Change, path: Path):
        self.change, self.path = change, path

    def find_spec(self, name, path, target=None):
        if name != self.change.module:
            return None
        folder = [str(self.path.parent)] if self.path.name == "__init__.py" else None
        return importlib.util.spec_from_file_location(name, self.path, loader=self, submodule_search_locations=folder)

    def get_filename(self, name):
        return str(self.path)

    def get_data(self, path):
        return self.change.source.encode()


def noticed(change: Change, path: Path, tests: list[str]) -> bool:
    """Whether one of these tests fails. Runs in a child process, which takes the changed module with it."""
    child = os.fork()
    if not child:
        signal.alarm(TIME_LIMIT)
        with redirect_stdout(io.StringIO()), redirect_stderr(io.StringIO()):
            try:
                sys.meta_path.insert(0, _Changed(change, path))
                code = pytest.main(
                    ["-x", "-q", "-p", "no:cacheprovider", "--noconftest", "--tb=no", "-W", "ignore", *tests]
                )
            except BaseException:
                code = 1
            os._exit(int(code != 0))
    return os.waitpid(child, 0)[1] != 0


def tests_of(subject: str) -> list[list[str]]:
    """The tests of a subject: those that import it first, then the published examples and what holds for every
    calculation."""
    importing = re.compile(
        rf"^from workbookgen\.reference(\.{subject}\b| import \(?[\w\s,]*\b{subject}\b)", re.MULTILINE
    )
    own = [
        str(path)
        for path in sorted((ROOT / "tests" / "reference").glob("test_*.py"))
        if importing.search(path.read_text(encoding="utf-8"))
    ]
    everywhere = [
        "tests/reference/test_pages_examples.py",
        "tests/reference/test_examples.py",
        "tests/reference/test_limits.py",
        "tests/published/test_proofs_in_library.py",
        "tests/published/test_published_elsewhere.py",
    ]
    return [own] * bool(own) + [[str(ROOT / each) for each in everywhere]]


def survivors(subject: str) -> tuple[int, list[Change]]:
    """How many changes a subject has, and those that nothing noticed."""
    place = LIBRARY / subject
    paths = sorted(place.glob("*.py")) if place.is_dir() else [place.with_suffix(".py")]
    tried, left = 0, []
    for path in paths:
        unchanged = Change(_module(path), 1, "nothing", path.read_text(encoding="utf-8"))
        assert not any(noticed(unchanged, path, tests) for tests in tests_of(subject)), (
            f"The tests of {subject} fail as it is."
        )
        for change in changes_of(path):
            tried += 1
            if not any(noticed(change, path, tests) for tests in tests_of(subject)):
                left.append(change)
                print(f"  not noticed: {change}", flush=True)
    return tried, left


def warm_up() -> None:
    """Load what every test needs, but nothing of the library itself."""
    import numpy, openpyxl, pandas, pint, pydantic, scipy.stats, uncertainties, xlsxwriter  # noqa: E401, F401, I001

    import workbookgen.units  # noqa: F401

    # One failure is enough: nobody reads the smallest example, or where it failed.
    phases = [hypothesis.Phase.explicit, hypothesis.Phase.generate]
    hypothesis.settings.register_profile(
        "mutation", max_examples=25, derandomize=True, deadline=None, database=None, phases=phases
    )
    hypothesis.settings.load_profile("mutation")
    os.environ["PYTEST_DISABLE_PLUGIN_AUTOLOAD"] = "1"
    with redirect_stdout(io.StringIO()):
        pytest.main(["--version"])


def main() -> int:
    os.chdir(ROOT)
    missing = {f"core/{name}" for name in OPERATORS} - set(operator_names())
    assert not missing, missing
    subjects = sys.argv[1:] or sorted({each.stem for each in LIBRARY.iterdir() if not each.stem.startswith("_")})
    warm_up()
    assert not any(name.startswith("workbookgen.reference") for name in sys.modules)
    total = noticed_in_all = 0
    for subject in subjects:
        tried, left = survivors(subject)
        total, noticed_in_all = total + tried, noticed_in_all + tried - len(left)
        print(
            f"{subject}: {tried - len(left)} of {tried} changes noticed ({(tried - len(left)) / max(tried, 1):.1%})",
            flush=True,
        )
    print(f"{noticed_in_all} of {total} changes noticed.")
    return 0


if __name__ == "__main__":
    sys.exit(main())
