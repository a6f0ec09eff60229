"""Programs that people use, at work on planners: LibreOffice with a person at it, and Gnumeric."""

import json
import shutil
import subprocess
import sys
from functools import cache
from pathlib import Path

import pytest

SCRIPT = Path(__file__).with_name("libreoffice_edits.py")


@cache
def _python() -> str | None:
    """A Python that can speak to LibreOffice."""
    return next(
        (
            each
            for each in (sys.executable, "/usr/bin/python3")
            if not subprocess.run([each, "-c", "import uno"], capture_output=True).returncode
        ),
        None,
    )


def in_libreoffice(folder: Path, jobs: list[dict]) -> None:
    """Have planners edited and saved, all by one LibreOffice; `libreoffice_edits` says what a job is."""
    if _python() is None or not shutil.which("soffice"):
        pytest.skip("LibreOffice with its Python is not here")
    (folder / "jobs.json").write_text(json.dumps(jobs), encoding="utf-8")
    subprocess.run([_python(), SCRIPT, folder, folder / "jobs.json"], check=True, timeout=600)


def in_gnumeric(planner: Path, target: Path) -> None:
    """Have a planner saved by Gnumeric."""
    program = shutil.which("ssconvert")
    if program is None:
        pytest.skip("Gnumeric is not here")
    subprocess.run([program, planner, target], check=True, capture_output=True, timeout=300)
