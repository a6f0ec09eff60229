"""The start of the command, against a bare Python and against what its command line library takes alone."""

from pathlib import Path

from figure import Figure, command

TRIES = 15


def figures(folder: Path) -> list[Figure]:
    bare = best("-c", "pass")
    click = best("-c", "import click")
    ours = best("-m", "workbookgen", "--help")
    return [
        Figure("workbookgen --help", ours, "s", "bare Python", bare, aim=1.5),
        Figure("workbookgen --help", ours, "s", "importing click", click),
        Figure("  bare Python", bare),
        Figure("  importing click", click),
    ]


def best(*words: str) -> float:
    return min(command(*words)[0] for _ in range(TRIES))
