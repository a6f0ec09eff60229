"""A folder for files of the moment, which is gone afterwards, even if one is asked to stop.

Ctrl-C may come at any line, also between the making of a folder and the line that remembers it, or while it is
cleared away. So its name is settled first, and it is cleared away twice: one request to stop can cut short only one
of the two.
"""

import secrets
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


@contextmanager
def temporary_folder(name: str) -> Iterator[Path]:
    """An empty folder that only this user may enter. Raises OSError where none can be made."""
    folder = Path(tempfile.gettempdir(), f"{name}-{secrets.token_hex(8)}")
    try:
        try:
            folder.mkdir(mode=0o700)
            yield folder
        finally:
            shutil.rmtree(folder, ignore_errors=True)
    finally:
        shutil.rmtree(folder, ignore_errors=True)
