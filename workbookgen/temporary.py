"""A temporary folder that is removed afterwards, even if the program is interrupted.

Ctrl-C may come at any line: between the line that makes the folder and the next one, or while the folder is being
removed. So its name is chosen first, and it is removed twice: an interrupt can cut short only one of the two.
"""

import secrets
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


@contextmanager
def temporary_folder(name: str) -> Iterator[Path]:
    """An empty folder that only this user may enter. Raises OSError if it cannot be made."""
    folder = Path(tempfile.gettempdir(), f"{name}-{secrets.token_hex(8)}")
    try:
        try:
            folder.mkdir(mode=0o700)
            yield folder
        finally:
            shutil.rmtree(folder, ignore_errors=True)
    finally:
        shutil.rmtree(folder, ignore_errors=True)
