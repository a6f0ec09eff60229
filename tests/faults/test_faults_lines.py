"""Asked to stop at any line: nothing lies about, and what was there is whole.

Random signals hardly ever fall between two lines that belong together. Here the request
comes before every line in turn, of our own code and of the standard library's below it.
"""

import errno
import sys
import tempfile

import pytest

from workbookgen.saving import DRAFT, save, save_all
from workbookgen.temporary import temporary_folder


class Asking:
    """Counts the lines that run, and asks to stop before one of them, as Ctrl-C does."""

    def __init__(self, stop_at: int):
        self.lines, self.stop_at = 0, stop_at

    def __enter__(self):
        sys.settrace(self._trace)
        return self

    def __exit__(self, *_):
        sys.settrace(None)

    def _trace(self, frame, event, argument):
        if event == "line" and frame.f_code is not Asking.__exit__.__code__:
            self.lines += 1
            if self.lines == self.stop_at:
                raise KeyboardInterrupt
        return self._trace


def lines_of(work) -> int:
    """How many lines run when nobody asks."""
    before = sys.gettrace()
    try:
        with Asking(0) as asking:
            work()
    finally:
        sys.settrace(before)
    return asking.lines


def stopped(work, line: int) -> bool:
    """Run it, with the request before that line; whether it stopped."""
    before = sys.gettrace()
    try:
        with Asking(line):
            work()
    except KeyboardInterrupt:
        return True
    except OSError as problem:  # Python 3.11's own clearing closes a folder twice when it is stopped between two lines
        assert problem.errno == errno.EBADF
        return True
    finally:
        sys.settrace(before)
    return False


@pytest.fixture
def temporary(tmp_path, monkeypatch):
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    return tmp_path


def test_a_temporary_folder(temporary):
    def work():
        with temporary_folder("workbookgen") as folder:
            (folder / "planner.xlsx").write_bytes(b"a draft")
            (folder / "below").mkdir()

    lines = lines_of(work)
    assert lines > 60 and not list(temporary.iterdir())
    for line in range(1, lines + 1):
        stopped_there = stopped(work, line)
        assert stopped_there or line == lines
        assert not list(temporary.iterdir()), line


@pytest.mark.parametrize("files", [1, 3])
def test_a_stop_in_any_line_of_saving_leaves_whole_files(tmp_path, files):
    targets = [tmp_path / f"{number}.xlsx" for number in range(files)]
    saving = (
        (lambda content: save(targets[0], content))
        if files == 1
        else (lambda content: save_all(dict.fromkeys(targets, content)))
    )

    def prepare():
        for target in targets:
            target.write_bytes(b"old")

    prepare()
    lines = lines_of(lambda: saving(b"new"))
    assert lines > 60 and {target.read_bytes() for target in targets} == {b"new"}
    new = 0
    for line in range(1, lines + 1):
        prepare()
        stopped(lambda: saving(b"new"), line)
        assert {target.read_bytes() for target in targets} <= {b"old", b"new"}, line
        new += all(target.read_bytes() == b"new" for target in targets)
        assert not list(tmp_path.glob(DRAFT.format("*"))), line
    assert 0 < new < lines
