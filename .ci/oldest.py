"""Whether the oldest packages that pyproject.toml allows will do: python3 .ci/oldest.py

They go into an environment of their own, and the tests that need no program beside Python run in it. Words after it go
to pytest. Run by another Python, it tries that one with them.
"""

import subprocess
import sys
import tempfile
import tomllib
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent


PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
GROUPS = PROJECT["optional-dependencies"]
# What the tests need, as new as it gets; then, over it, what the project needs at its lower bounds.
OF_TESTS = [each for name in ("cluster", "parquet", "test") for each in GROUPS[name] if PROJECT["name"] not in each]
OLDEST = [each.partition(",")[0].replace(">=", "==") for each in PROJECT["dependencies"]]


def main() -> int:
    with tempfile.TemporaryDirectory(prefix="oldest-") as folder:
        venv.create(folder, with_pip=True)
        python = Path(folder, "bin", "python")
        for packages in (OF_TESTS, OLDEST):
            subprocess.run([python, "-m", "pip", "install", "--quiet", *packages], check=True)
        words = ["-m", "pytest", "-n", "auto", "-m", "not programs and not web", *sys.argv[1:]]
        return subprocess.run([python, *words], cwd=ROOT).returncode


if __name__ == "__main__":
    sys.exit(main())
