"""A Python environment for the project in `.venv`, made with nothing but Python and pip.

Used by the two commands of the README. A marker file remembers what was installed, so a
second run does not install again.
"""

import hashlib
import os
import subprocess
import sys
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
FOLDER = ROOT / ".venv"


def python_with(extra: str = "") -> Path:
    """The environment's Python, with the project and an optional group of packages installed."""
    if sys.version_info < (3, 11):  # noqa: UP036  an old Python is told so
        sys.exit(f"Python 3.11 or newer is needed; this is {sys.version.split()[0]}.")
    python = FOLDER / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    if not python.exists():
        print("Making a Python environment in .venv ...", flush=True)
        try:
            venv.create(FOLDER, with_pip=True)
        except (subprocess.CalledProcessError, OSError):
            sys.exit("Python cannot make an environment. On Debian or Ubuntu, install the package python3-venv first.")
    wanted = hashlib.sha256((ROOT / "pyproject.toml").read_bytes() + extra.encode()).hexdigest()
    marker = FOLDER / f"installed-{extra or 'plain'}"
    if not marker.exists() or marker.read_text() != wanted:
        print("Installing the project and the packages it needs ...", flush=True)
        target = f"{ROOT}[{extra}]" if extra else str(ROOT)
        pip = [python, "-m", "pip", "install", "--quiet", "--disable-pip-version-check"]
        # An old one writes a start script that takes half as long again; it will do.
        subprocess.run([*pip, "--upgrade", "pip"])
        run = subprocess.run([*pip, "--editable", target])
        if run.returncode:
            sys.exit("The packages could not be installed: see the lines above.")
        marker.write_text(wanted)
    if subprocess.run([python, "-c", "import workbookgen"], cwd=ROOT.anchor, capture_output=True).returncode:
        # Before Python 3.13 the path is read in the letters of the terminal's language.
        sys.exit(f"Python cannot find the project in {ROOT}. Move it to a folder with plain letters only.")
    return python
