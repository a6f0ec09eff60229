"""The linter finds nothing, and the formatter has nothing to do: what they look for stands in pyproject.toml."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent


def ruff(*words: str) -> subprocess.CompletedProcess:
    return subprocess.run(
        [sys.executable, "-m", "ruff", *words, "--no-cache", "."], cwd=ROOT, capture_output=True, text=True
    )


def test_the_linter_finds_nothing():
    run = ruff("check", "--output-format", "concise")
    assert (run.returncode, run.stdout) == (0, "All checks passed!\n"), run.stdout + run.stderr


def test_the_formatter_has_nothing_to_do():
    run = ruff("format", "--check")
    assert run.returncode == 0, run.stdout + run.stderr
