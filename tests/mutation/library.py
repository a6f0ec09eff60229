"""How good are the library's tests? Change the library a little, and see whether they notice.

    python -m tests.mutation.library reeling yarn_count      some subjects
    python -m tests.mutation.library planning/likely.py      or a module
    python -m tests.mutation.library                         all of them; an hour or so

The changes come from Cosmic Ray: another comparison, another operator, another number. Its own runner would start a
new Python for each. Here one process collects the tests and runs each once, to see which functions it calls. For each
change, a child of it gives the function its changed code and runs the tests that call it, the fastest first. What
belongs to no function (a table, a limit, a default) is tried by a child that imports the library anew, with the tests
that import the subject. A change that no test notices is listed with its line. Annotations are left alone: nothing runs
them.
"""

import ast
import gc
import importlib.abc
import importlib.util
import os
import re
import signal
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from types import CodeType, FunctionType

import hypothesis
import pytest
from cosmic_ray.ast import ast_nodes, get_ast
from cosmic_ray.mutating import mutate_code
from cosmic_ray.plugins import get_operator, operator_names

ROOT = Path(__file__).resolve().parents[2]
LIBRARY = ROOT / "workbookgen" / "reference"
TIME_LIMIT = 120  # seconds; a change that makes a test run for ever is noticed, too
QUIET = "-o addopts= -s -p no:terminal -p no:cacheprovider --noconftest -W ignore".split()
STAYS = {"__main__", "workbookgen.units", "workbookgen.texts"}  # what no change of the library reaches
EVERYWHERE = [
    "tests/reference/test_pages_examples.py",
    "tests/reference/test_every_calculation.py",
    "tests/reference/test_limits.py",
    "tests/published/test_proofs_in_library.py",
    "tests/published/test_published_elsewhere.py",
]
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


def fails_in_a_child(run: Callable[[], bool]) -> bool:
    """Whether a run fails, or takes too long, in a child process that takes all changes with it."""
    child = os.fork()
    if not child:
        signal.alarm(TIME_LIMIT)
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
        os.dup2(1, 2)
        try:
            passed = run()
        except BaseException:
            passed = False
        os._exit(int(not passed))
    return os.waitpid(child, 0)[1] != 0


def _key(code: CodeType) -> tuple[str, int, str]:
    """What a function is found by, before and after a change."""
    return code.co_filename, code.co_firstlineno, code.co_name


def _codes(code: CodeType) -> dict[tuple[str, int, str], CodeType]:
    """The code of a module's functions, and of those within them."""
    inner = [each for each in code.co_consts if isinstance(each, CodeType)]
    return {key: found for each in inner for key, found in ({_key(each): each} | _codes(each)).items()}


def _told_apart(code: CodeType):
    """What one code differs from another by, without the functions within it."""
    constants = [repr(each) for each in code.co_consts if not isinstance(each, CodeType)]
    return code.co_code, constants, code.co_names


def _are_alike(one: CodeType, other: CodeType) -> bool:
    """Whether two codes do the same, with all that is within them."""
    inner, others = _codes(one), _codes(other)
    return _told_apart(one) == _told_apart(other) and [*map(_told_apart, inner.values())] == [
        *map(_told_apart, others.values())
    ]


class Bench:
    """A plugin of pytest: instead of only running the tests, it tries changes on them."""

    def __init__(self, subjects: list[str]):
        self.subjects, self.calls, self.seconds, self.failed = subjects, {}, {}, False
        self.tried = self.noticed = 0

    def pytest_runtest_logreport(self, report):
        self.failed = self.failed or report.failed

    def pytest_runtestloop(self, session):
        assert not session.testsfailed, "A file of tests cannot be imported."
        for item in session.items:
            self._note_calls(item)
        self.functions = [
            each
            for each in gc.get_objects()
            if isinstance(each, FunctionType) and each.__code__.co_filename.startswith(str(LIBRARY))
        ]
        gc.freeze()
        for subject in self.subjects:
            self._try(subject)
        return True

    def _passes(self, item) -> bool:
        self.failed = False
        item.config.hook.pytest_runtest_protocol(item=item, nextitem=None)
        return not self.failed

    def _note_calls(self, item) -> None:
        """Which functions of the library a test calls, and how long it takes."""
        called = self.calls[item] = set()

        def note(frame, event, _):
            if event == "call" and frame.f_code.co_filename.startswith(str(LIBRARY)):
                called.add(_key(frame.f_code))

        begun = time.monotonic()
        sys.setprofile(note)
        passes = self._passes(item)
        sys.setprofile(None)
        assert passes, f"{item.nodeid} fails as it is."
        self.seconds[item] = time.monotonic() - begun

    def _try(self, subject: str) -> None:
        place = LIBRARY / subject
        paths = sorted(place.glob("*.py")) if place.is_dir() else [place.with_suffix(".py")]
        unchanged = Change(_module(paths[0]), 1, "nothing", paths[0].read_text(encoding="utf-8"))
        anew = fails_in_a_child(lambda: self._passes_anew(unchanged, paths[0], subject))
        assert not anew, f"The tests of {subject} fail as it is, once it is imported anew."
        tried = left = 0
        for path in paths:
            for change in changes_of(path):
                tried += 1
                if not self._notices(change, path, subject):
                    left += 1
                    print(f"  not noticed: {change}", flush=True)
        self.tried, self.noticed = self.tried + tried, self.noticed + tried - left
        print(f"{subject}: {tried - left} of {tried} changes noticed ({1 - left / max(tried, 1):.1%})", flush=True)

    def _notices(self, change: Change, path: Path, subject: str) -> bool:
        before, after = (compile(text, str(path), "exec") for text in (path.read_text("utf-8"), change.source))
        if _told_apart(before) != _told_apart(after):
            return fails_in_a_child(lambda: self._passes_anew(change, path, subject))
        codes = _codes(after)
        changed = [
            (each, codes[_key(each.__code__)])
            for each in self.functions
            if _key(each.__code__) in codes and not _are_alike(each.__code__, codes[_key(each.__code__)])
        ]
        keys = {_key(code) for _, code in changed}
        calling = sorted((item for item, called in self.calls.items() if called & keys), key=self.seconds.get)

        def passes() -> bool:
            for function, code in changed:
                function.__code__ = code
            return all(map(self._passes, calling))

        return fails_in_a_child(passes)

    def _passes_anew(self, change: Change, path: Path, subject: str) -> bool:
        for name, module in [*sys.modules.items()]:
            place = getattr(module, "__file__", None) or ""
            if place.startswith(str(ROOT)) and name not in STAYS:
                del sys.modules[name]
        sys.meta_path.insert(0, _Changed(change, path))
        return not any(pytest.main(["-x", *QUIET, *tests]) for tests in tests_of(subject))


def tests_of(subject: str) -> list[list[str]]:
    """The tests of a subject: those that import it, or all where none does; then the published examples and what holds
    for every calculation."""
    subject = subject.partition("/")[0].removesuffix(".py")
    importing = re.compile(
        rf"^from workbookgen\.reference(\.{subject}\b| import \(?[\w\s,]*\b{subject}\b)", re.MULTILINE
    )
    tests = sorted((ROOT / "tests" / "reference").glob("test_*.py"))
    own = [path for path in tests if importing.search(path.read_text(encoding="utf-8"))] or tests
    return [[str(each) for each in own], [str(ROOT / each) for each in EVERYWHERE]]


def main() -> int:
    os.chdir(ROOT)
    missing = {f"core/{name}" for name in OPERATORS} - set(operator_names())
    assert not missing, missing
    subjects = sys.argv[1:] or sorted({each.stem for each in LIBRARY.iterdir() if not each.stem.startswith("_")})
    # One failure is enough: nobody reads the smallest example, or where it failed.
    phases = [hypothesis.Phase.explicit, hypothesis.Phase.generate]
    hypothesis.settings.register_profile(
        "mutation", max_examples=25, derandomize=True, deadline=None, database=None, phases=phases
    )
    hypothesis.settings.load_profile("mutation")
    os.environ["PYTEST_DISABLE_PLUGIN_AUTOLOAD"] = "1"
    bench = Bench(subjects)
    ended = pytest.main(
        [*QUIET, "tests/reference", *(each for each in EVERYWHERE if "published" in each)], plugins=[bench]
    )
    print(f"{bench.noticed} of {bench.tried} changes noticed.")
    return int(ended)


if __name__ == "__main__":
    sys.exit(main())
