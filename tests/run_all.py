"""The second command of the README: set up and run all tests, LibreOffice and Gnumeric included.

The two programs are installed from the system's packages where that is allowed. Where it
is not, the tests that need them are left out, which is said, and the exit code is 3: a
program that was not tried never counts as one that agrees.

Words after the command go to pytest: python3 tests/run_all.py -k reels
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
EVERY_CORE = ("-n", "auto", "--dist", "loadfile")  # tests of one file share what they build and the programs they start
NEEDED = {"soffice": "LibreOffice", "ssconvert": "Gnumeric", "pdftoppm": "Poppler"}


def missing() -> list[str]:
    """The programs that the tests need and that are not here."""
    absent = [name for command, name in NEEDED.items() if not shutil.which(command)]
    uno = subprocess.run(["/usr/bin/python3", "-c", "import uno"], stderr=subprocess.DEVNULL).returncode if os.path.exists("/usr/bin/python3") else 1
    return absent + ([] if uno == 0 else ["LibreOffice's Python bridge"])


def install() -> None:
    """Install the programs, where apt is there and we may."""
    if not shutil.which("apt-get") or os.geteuid() != 0:
        print(f"May not install packages here. As an administrator: apt-get install {' '.join(PACKAGES)}", flush=True)
        return
    print(f"Installing {', '.join(PACKAGES)} ...", flush=True)
    quiet = {"stdout": subprocess.DEVNULL, "env": os.environ | {"DEBIAN_FRONTEND": "noninteractive"}}
    subprocess.run(["apt-get", "update"], **quiet)
    subprocess.run(["apt-get", "install", "-y", "--no-install-recommends", *PACKAGES], **quiet)


def main() -> int:
    python = python_with("test")
    if missing():
        install()
    absent = missing()
    words = ["-m", "pytest", *EVERY_CORE, *sys.argv[1:]]
    if absent:
        print(f"NOT TRIED: {', '.join(absent)} is missing, so the tests that need it are left out.", flush=True)
        words += ["-m", "not programs"]
    code = subprocess.run([python, *words], cwd=ROOT).returncode
    if absent:
        print(f"NOT TRIED: {', '.join(absent)}.")
    return code or (3 if absent else 0)


if __name__ == "__main__":
    sys.exit(main())
