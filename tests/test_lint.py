"""The linter finds nothing: what it looks for stands in pyproject.toml."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent


def test_the_linter_finds_nothing():
    run = subprocess.run([sys.executable, "-m", "ruff", "check", "--no-cache", "--output-format", "concise", "."], cwd=ROOT, capture_output=True, text=True)
    assert (run.returncode, run.stdout) == (0, "All checks passed!\n"), run.stdout + run.stderr
