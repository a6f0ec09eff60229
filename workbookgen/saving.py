"""Saving files: each is replaced whole, or not at all.

A file is written under another name in the same folder, flushed to the disk, and only then renamed. So there is always
either the old file or the new one, whenever the machine stops. The draft is locked while it is written. A run that is
killed cannot remove its draft but loses the lock, by which the next run in that folder knows that it can be removed.
"""

import os
import secrets
import stat
from collections.abc import Iterable, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

from workbookgen.errors import FileError

try:
    import fcntl
except ImportError:  # on Windows, where an open file cannot be removed, which is as good as a lock
    fcntl = None

DRAFT = ".workbookgen-{}.part"
LOCKS = (".~lock.{}#", "~${}")  # the lock files that spreadsheet programs put beside an open file


def save(target: Path, content: bytes) -> None:
    """Save a file whole, or leave everything as it was. Raises FileError."""
    save_all({target: content})


def save_all(contents: Mapping[Path, bytes]) -> None:
    """Save several files: all of them, or none if one cannot be saved. Raises FileError.

    Each file is whole at every moment; only a kill between two renames leaves some old and some new.
    """
    places = {target: _place(target) for target in contents}
    for folder in {place.parent for place in places.values()}:
        _clear(folder)
    with _drafts() as write:
        new = {target: write(target, places[target], content) for target, content in contents.items()}
        old = {
            target: write(target, places[target], places[target].read_bytes())
            for target in contents
            if len(contents) > 1 and places[target].exists()
        }
        for done, target in enumerate(contents):
            try:
                os.replace(new[target], places[target])
            except OSError as problem:
                _put_back(list(contents)[:done], places, old)
                raise _refused(target, problem) from None
    for folder in {place.parent for place in places.values()}:
        _flush_folder(folder)


def require_another(target: Path, sources: Iterable[Path]) -> None:
    """Refuse an output that is one of the input files."""
    for source in sources:
        is_one_place = os.path.realpath(target) == os.path.realpath(source)
        if is_one_place or target.exists() and source.exists() and target.samefile(source):
            never = "this is the file that is read, and it is never changed. Choose another name after -o."
            raise FileError.at(str(target), never)


def require_workbook_name(target: Path) -> None:
    """Refuse a name that does not end with .xlsx."""
    may_be_a_file = target.is_file() or not target.exists()  # otherwise `save` says that a folder has this name
    if may_be_a_file and target.suffix.lower() != ".xlsx":
        raise FileError.at(str(target), "end the name with .xlsx; that is what a planner is written as.")


def _place(target: Path) -> Path:
    """The path of the file itself, with links resolved. Raises FileError where no file can be written."""
    try:
        place = Path(os.path.realpath(target))
        try:
            mode = place.stat().st_mode
        except FileNotFoundError:
            return place
    except OSError as problem:
        raise _refused(target, problem) from None
    if stat.S_ISDIR(mode):
        raise FileError.at(str(target), "this file cannot be written: a folder has this name.")
    if not stat.S_ISREG(mode):
        raise FileError.at(str(target), "this file cannot be written: what has this name is not an ordinary file.")
    if not os.access(place, os.W_OK):
        protected = "this file cannot be written: the one that is there is protected against changes."
        raise FileError.at(str(target), protected)
    for name in LOCKS:
        lock = place.with_name(name.format(place.name))
        if lock.exists():
            raise FileError.at(
                str(target),
                "this file is open in a spreadsheet program, which would write its old content over the new. "
                f"Close it there and try again. If it is not open anywhere, remove {lock.name} beside it.",
            )
    return place


@contextmanager
def _drafts():
    """A function that writes drafts, all of which are removed afterwards unless they were renamed."""
    drafts: list[Path] = []
    handles: list[int] = []

    def write(target: Path, place: Path, content: bytes) -> Path:
        try:
            handle = _new(place.parent, drafts)
            handles.append(handle)
            if place.exists():
                with suppress(PermissionError):  # on a file system without permissions
                    os.chmod(drafts[-1], stat.S_IMODE(place.stat().st_mode))
            left = memoryview(content)
            while left:
                left = left[os.write(handle, left) :]
            os.fsync(handle)
            if fcntl is None:  # on Windows an open file cannot be renamed
                os.close(handles.pop())
        except OSError as problem:
            raise _refused(target, problem) from None
        return drafts[-1]

    try:
        try:
            yield write
        finally:
            _remove(handles, drafts)
    finally:  # once more, since an interrupt can cut short only one of the two
        _remove(handles, drafts)


def _remove(handles: list[int], drafts: Iterable[Path]) -> None:
    while handles:
        with suppress(OSError):
            os.close(handles.pop())
    for draft in drafts:
        with suppress(OSError):
            draft.unlink()


def _new(folder: Path, drafts: list[Path]) -> int:
    """Open a new draft, locked, with the permissions that any new file gets here."""
    while True:
        draft = folder / DRAFT.format(secrets.token_hex(8))
        drafts.append(draft)
        handle = os.open(draft, os.O_CREAT | os.O_EXCL | os.O_WRONLY | getattr(os, "O_BINARY", 0), 0o666)
        if fcntl:
            with suppress(OSError):  # on a file system without locks, where no run removes drafts either
                fcntl.flock(handle, fcntl.LOCK_EX)
            if not draft.exists():  # another run removed it before the lock
                os.close(handle)
                continue
        return handle


def _clear(folder: Path) -> None:
    """Remove the drafts of runs that were killed. A locked draft belongs to a run that is still writing."""
    for draft in folder.glob(DRAFT.format("*")):
        with suppress(OSError):
            if fcntl is None:
                draft.unlink()
                continue
            handle = os.open(draft, os.O_RDWR | os.O_NOFOLLOW | os.O_NONBLOCK)
            try:
                fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
                draft.unlink()
            finally:
                os.close(handle)


def _put_back(done: list[Path], places: Mapping[Path, Path], old: Mapping[Path, Path]) -> None:
    """Undo the renames, because another file of the set could not be renamed."""
    for target in done:
        with suppress(OSError):
            if target in old:
                os.replace(old[target], places[target])
            else:
                places[target].unlink()


def _flush_folder(folder: Path) -> None:
    """Flush a folder, where the system can, so that a rename survives a power cut."""
    if fcntl:
        with suppress(OSError):
            handle = os.open(folder, os.O_RDONLY)
            try:
                os.fsync(handle)
            finally:
                os.close(handle)


def _refused(target: Path, problem: OSError) -> FileError:
    may_be_open = os.name == "nt" and isinstance(problem, PermissionError)
    hint = " Is it open in a spreadsheet program? Close it there and try again." if may_be_open else ""
    return FileError.at(str(target), f"this file cannot be written: {problem.strerror}.{hint}")
