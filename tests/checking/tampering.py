"""Changing one thing in a planner file, as a slip of the hand, a program or bad will might: the parts are edited as
text."""

import re
import zipfile
from collections.abc import Callable
from pathlib import Path

Edit = Callable[[str], str]


def edited(source: Path, target: Path, edits: dict[str, Edit]) -> Path:
    """A copy with some parts changed. An edit that changes nothing is a mistake of the test."""
    with zipfile.ZipFile(source) as before, zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as after:
        assert set(edits) <= set(before.namelist())
        for entry in before.infolist():
            text = before.read(entry)
            if entry.filename in edits:
                changed = edits[entry.filename](text.decode())
                assert changed != text.decode(), f"nothing was changed in {entry.filename}"
                text = changed.encode()
            after.writestr(entry.filename, text)
    return target


def replaced(old: str, new: str) -> Edit:
    """Replaces, once, what must be there."""

    def edit(text: str) -> str:
        assert old in text, f"{old} is not in the part"
        return text.replace(old, new, 1)

    return edit


def sub(pattern: str, new: str, times: int = 1) -> Edit:
    """The same by a pattern."""
    return lambda text: re.sub(pattern, new, text, count=times)


def both(*edits: Edit) -> Edit:
    def edit(text: str) -> str:
        for each in edits:
            text = each(text)
        return text

    return edit
