"""The second command of the README: set up and run all tests, LibreOffice, Gnumeric and HyperFormula included.

The programs are installed from the system's packages where that is allowed, and HyperFormula,
which Node.js runs, comes by npm. Where that cannot be, the tests that need them are left out,
which is said, and the exit code is 3: a program that was not tried never counts as one that agrees.

Words after the command go to pytest: python3 tests/run_all.py -k reels

    python3 tests/run_all.py --quick

runs those that tell most in half a minute, for while one works; they need no program beside Python. Words after it go
to pytest, too, such as the file of tests of what one works on: --quick tests/reference/test_twist.py
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / ".ci"))

from environment import python_with  # noqa: E402

PACKAGES = ("libreoffice-calc", "python3-uno", "gnumeric", "poppler-utils", "fonts-liberation")
# Tests of one file share what they build and the programs they start. Files go in their order, the longest first
# (conftest.py): xdist would leave those with few tests for the end, and they are the longest.
EVERY_CORE = ("-n", "auto", "--dist", "loadfile", "--no-loadscope-reorder")
# The house, the language, the published values, what is expected of each cell, where it stands and how it is bound.
QUICK = (
    "tests/test_lint.py",
    "tests/test_architecture.py",
    "tests/test_texts.py",
    "tests/language",
    "tests/published/test_proofs_in_library.py",
    "tests/reference/test_calculation.py",
    "tests/settings/test_settings_defaults.py",
    "tests/checking/test_compare_values.py",
    "tests/checking/test_formula_spelling.py",
    "tests/checking/test_expected_values.py",
    "tests/book/test_layout_places.py",
    "tests/book/test_binding.py",
    "tests/sheets/test_plausible.py",
)
NEEDED = {"soffice": "LibreOffice", "ssconvert": "Gnumeric", "pdftoppm": "Poppler"}

WEB = ROOT / "tests" / "web"
WEB_PACKAGES = ("nodejs", "npm")
WEB_NEEDED = {"node": "Node.js", "npm": "npm"}


def missing() -> list[str]:
    """The programs that the tests need and that are not here."""
    uno = (
        subprocess.run(["/usr/bin/python3", "-c", "import uno"], stderr=subprocess.DEVNULL).returncode
        if os.path.exists("/usr/bin/python3")
        else 1
    )
    return without(NEEDED) + ([] if uno == 0 else ["LibreOffice's Python bridge"])


def without(commands: dict[str, str]) -> list[str]:
    """The names of the commands that are not here."""
    return [name for command, name in commands.items() if not shutil.which(command)]


def install(packages: tuple[str, ...]) -> None:
    """Install these packages, where apt is there and we may."""
    if not shutil.which("apt-get") or os.geteuid() != 0:
        print(f"May not install packages here. As an administrator: apt-get install {' '.join(packages)}", flush=True)
        return
    print(f"Installing {', '.join(packages)} ...", flush=True)
    quiet = {"stdout": subprocess.DEVNULL, "env": os.environ | {"DEBIAN_FRONTEND": "noninteractive"}}
    subprocess.run(["apt-get", "update"], **quiet)
    subprocess.run(["apt-get", "install", "-y", "--no-install-recommends", *packages], **quiet)


def fetched() -> bool:
    """Whether HyperFormula is here as the lock wants it; where it is not, npm is sent for it."""
    lock, placed = WEB / "package-lock.json", WEB / "node_modules" / ".package-lock.json"
    if placed.exists() and placed.stat().st_mtime >= lock.stat().st_mtime:
        return True
    print("Fetching HyperFormula ...", flush=True)
    npm = [shutil.which("npm"), "ci", "--no-audit", "--no-fund", "--loglevel=error", "--fetch-retries=1"]
    return subprocess.run(npm, cwd=WEB).returncode == 0


def main() -> int:
    python = python_with("test")
    if sys.argv[1:2] == ["--quick"]:
        return subprocess.run([python, "-m", "pytest", *EVERY_CORE, *QUICK, *sys.argv[2:]], cwd=ROOT).returncode
    if missing():
        install(PACKAGES)
    if without(WEB_NEEDED):  # Node.js often comes from elsewhere
        install(WEB_PACKAGES)
    programs = missing()
    absent = programs + (without(WEB_NEEDED) or ([] if fetched() else ["HyperFormula"]))
    # The longest tests are told in the end, as conftest.py tells the longest files.
    words = ["-m", "pytest", *EVERY_CORE, "--durations=15", *sys.argv[1:]]
    if absent:
        print(f"NOT TRIED: {', '.join(absent)} is missing, so the tests that need it are left out.", flush=True)
        words += ["-m", "not programs" if programs else "not web"]
    code = subprocess.run([python, *words], cwd=ROOT).returncode
    if absent:
        print(f"NOT TRIED: {', '.join(absent)}.")
    return code or (3 if absent else 0)


if __name__ == "__main__":
    sys.exit(main())
