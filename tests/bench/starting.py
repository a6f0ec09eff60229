"""The start of the command, against a bare Python and against what its command line library takes alone."""

import sys
from pathlib import Path

from figure import Figure, command

TRIES = 15


def figures(folder: Path) -> list[Figure]:
    bare = best("-c", "pass")
    click = best("-c", "import click")
    ours = best(str(Path(sys.executable).with_name("workbookgen")), "--help")  # the script that pip installed
    return [
        Figure("workbookgen --help", ours, "s", "bare Python", bare, aim=1.5),
        Figure("workbookgen --help", ours, "s", "importing click", click),
        Figure("python -m workbookgen --help", best("-m", "workbookgen", "--help"), "s", "bare Python", bare),
        Figure("  bare Python", bare),
        Figure("  importing click", click),
    ]


def best(*words: str) -> float:
    return min(command(*words)[0] for _ in range(TRIES))
