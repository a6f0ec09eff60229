"""Files that the texts for people and the lists of the tests name are there, under that name."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
NAMED = re.compile(r"`([\w./-]+\.(?:py|csv|toml|txt|mjs))\b[^`]*`")
OF_READERS = re.compile(r"guild|NAME")  # files that a reader makes, under names of the reader's own
PARTS = ("workbookgen", "templates", "tests", "demo", ".ci")
FILES = {*ROOT.glob("*.*"), *(path for part in PARTS for path in (ROOT / part).rglob("*.*"))}


def is_there(name: str) -> bool:
    """By its path in the clone or in the package, or by its name alone."""
    return any(path.parts[-len(Path(name).parts) :] == Path(name).parts for path in FILES)


@pytest.mark.parametrize("text", ["README.md", "DEVELOPERS.md", "tests/calibration/README.md"])
def test_a_text_names_files_that_are_there(text):
    named = set(NAMED.findall((ROOT / text).read_text(encoding="utf-8")))
    assert len(named) >= 3
    assert sorted(name for name in named if not OF_READERS.search(name) and not is_there(name)) == []


def test_the_lists_of_the_tests_name_files_that_are_there():
    """Those that run after each edit, and those that go first since they take longest."""
    quick = re.findall(r'^    "(tests/[^"]+)",$', (ROOT / "tests" / "run_all.py").read_text(encoding="utf-8"), re.M)
    longest = re.findall(r'^    "([\w/]+\.py)",$', (ROOT / "tests" / "conftest.py").read_text(encoding="utf-8"), re.M)
    assert len(quick) > 5 and len(longest) > 5
    named = [*quick, *(f"tests/{name}" for name in longest)]
    assert [name for name in named if not (ROOT / name).exists()] == []


def test_the_commands_that_the_texts_name_begin():
    """From the clone, as a reader types them; how they end is shown where they are tried."""
    texts = [
        (ROOT / name).read_text(encoding="utf-8")
        for name in ("README.md", "DEVELOPERS.md", "tests/calibration/README.md")
    ]
    modules = sorted({name for text in texts for name in re.findall(r"-m (tests\.[\w.]+)", text)})
    assert len(modules) >= 3
    for name in modules:
        begun = subprocess.run([sys.executable, "-c", f"import {name}"], cwd=ROOT, capture_output=True, text=True)
        assert begun.returncode == 0 or begun.stderr.endswith("No module named 'cosmic_ray'\n"), begun.stderr
