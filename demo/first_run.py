"""The first command of the README: set up, build a planner, fill the demo, check both.

Needs nothing but Python 3.11 or newer. Run it from anywhere: python3 demo/first_run.py
"""

import json
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / ".ci"))

from environment import python_with  # noqa: E402


def run(python: Path, *words: str) -> str:
    done = subprocess.run([python, *words], cwd=ROOT, stdout=subprocess.PIPE, text=True)
    if done.returncode:
        sys.exit(f"This step failed: {' '.join(words)}")
    return done.stdout


def main() -> None:
    python = python_with()
    run(python, "-m", "workbookgen", "build", "-o", "planner.xlsx")
    run(python, "demo/make.py", "demo-planner.xlsx")
    for name, what in (
        ("planner.xlsx", "a blank planner"),
        ("demo-planner.xlsx", "the same planner, filled with our invented demo"),
    ):
        report = json.loads(run(python, "-m", "workbookgen", "check", name, "--json"))
        print(
            f"{ROOT / name}\n  is {what}. All {report['formula_cells']:,} formula cells were worked out by "
            f"{report['engines'][0]['name']} for {report['scenarios']} sets of inputs, and all {report['comparisons']:,} values "
            "agree with the reference library."
        )
    print("Open them in any spreadsheet program; the first sheet, Desk, says what to do.")


if __name__ == "__main__":
    main()
