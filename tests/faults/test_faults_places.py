"""Where a file can be put, where it cannot, and what is kept of the one that was there."""

import os
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from workbookgen.errors import FileError
from workbookgen.saving import require_another, save, save_all

posix = pytest.mark.skipif(os.name != "posix", reason="NOT TRIED: rights and links are otherwise on this system")


def left_in(folder: Path) -> set[str]:
    return {path.name for path in folder.iterdir()}


def refused(target: Path, reason: str, content: bytes = b"new") -> None:
    with pytest.raises(FileError) as told:
        save(target, content)
    assert str(told.value) == f"{target}: this file cannot be written: {reason}."


@posix
class TestRights:
    @pytest.mark.parametrize(("mask", "mode"), [(0o022, 0o644), (0o077, 0o600), (0o002, 0o664)])
    def test_a_new_file_has_the_rights_of_any_new_file(self, tmp_path, mask, mode):
        before = os.umask(mask)
        try:
            save(tmp_path / "mine.xlsx", b"new")
        finally:
            os.umask(before)
        assert stat.S_IMODE((tmp_path / "mine.xlsx").stat().st_mode) == mode

    @pytest.mark.parametrize("mode", [0o600, 0o640, 0o666])
    def test_an_old_file_keeps_its_rights(self, tmp_path, mode):
        target = tmp_path / "mine.xlsx"
        target.write_bytes(b"old")
        target.chmod(mode)
        save(target, b"new")
        assert stat.S_IMODE(target.stat().st_mode) == mode and target.read_bytes() == b"new"

    def test_a_protected_file_stays(self, open_folder, as_nobody):
        target = open_folder / "mine.xlsx"
        target.write_bytes(b"old")
        target.chmod(0o444)
        assert as_nobody(lambda: save(target, b"new")).endswith("the one that is there is protected against changes.")
        assert target.read_bytes() == b"old" and left_in(open_folder) == {"mine.xlsx"}

    def test_a_protected_folder(self, open_folder, as_nobody):
        target = open_folder / "mine.xlsx"
        target.write_bytes(b"old")
        target.chmod(0o666)
        open_folder.chmod(0o555)
        assert as_nobody(lambda: save(target, b"new")) == f"{target}: this file cannot be written: Permission denied."
        assert as_nobody(lambda: save(target.with_name("other.xlsx"), b"new")).endswith(": Permission denied.")
        open_folder.chmod(0o777)
        assert target.read_bytes() == b"old" and left_in(open_folder) == {"mine.xlsx"}
        assert as_nobody(lambda: save(target, b"new")) == "" and target.read_bytes() == b"new"  # so it was the folder


@posix
class TestLinks:
    def test_a_link_stays_a_link(self, tmp_path):
        (tmp_path / "kept").mkdir()
        (tmp_path / "kept" / "real.xlsx").write_bytes(b"old")
        link = tmp_path / "link.xlsx"
        link.symlink_to(Path("kept") / "real.xlsx")
        save(link, b"new")
        assert link.is_symlink() and (tmp_path / "kept" / "real.xlsx").read_bytes() == b"new"
        assert left_in(tmp_path / "kept") == {"real.xlsx"} and left_in(tmp_path) == {"kept", "link.xlsx"}

    def test_a_link_to_nothing_yet(self, tmp_path):
        (tmp_path / "link.xlsx").symlink_to(tmp_path / "real.xlsx")
        save(tmp_path / "link.xlsx", b"new")
        assert (tmp_path / "link.xlsx").is_symlink() and (tmp_path / "real.xlsx").read_bytes() == b"new"

    def test_a_circle_of_links(self, tmp_path):
        (tmp_path / "one.xlsx").symlink_to(tmp_path / "two.xlsx")
        (tmp_path / "two.xlsx").symlink_to(tmp_path / "one.xlsx")
        refused(tmp_path / "one.xlsx", "Too many levels of symbolic links")
        assert left_in(tmp_path) == {"one.xlsx", "two.xlsx"}


class TestNoPlaceForAFile:
    def test_a_folder(self, tmp_path):
        refused(tmp_path, "a folder has this name")
        refused(Path(""), "a folder has this name")

    def test_no_folder(self, tmp_path):
        refused(tmp_path / "none" / "mine.xlsx", "No such file or directory")

    @posix
    def test_a_device_is_not_replaced(self):
        refused(Path("/dev/null"), "what has this name is not an ordinary file")
        assert stat.S_ISCHR(Path("/dev/null").stat().st_mode)

    @posix
    def test_a_pipe_is_not_waited_for(self, tmp_path):
        os.mkfifo(tmp_path / "pipe.xlsx")
        refused(tmp_path / "pipe.xlsx", "what has this name is not an ordinary file")

    @posix
    def test_a_name_too_long(self, tmp_path):
        refused(tmp_path / ("x" * 300 + ".xlsx"), "File name too long")
        assert left_in(tmp_path) == set()

    @posix
    def test_a_folder_that_is_gone(self, tmp_path, monkeypatch):
        """Removed while the planner was worked out, from under the feet of whoever stood in it."""
        (tmp_path / "gone").mkdir()
        monkeypatch.chdir(tmp_path / "gone")
        (tmp_path / "gone").rmdir()
        refused(Path("mine.xlsx"), "No such file or directory")

    @posix
    def test_a_folder_that_goes_at_the_last_moment(self, tmp_path, monkeypatch):
        folder = tmp_path / "gone"
        folder.mkdir()

        def gone(*_):
            for path in folder.iterdir():
                path.unlink()
            folder.rmdir()

        monkeypatch.setattr("os.fsync", gone)
        refused(folder / "mine.xlsx", "No such file or directory")


def test_each_file_is_flushed_before_it_is_renamed_and_its_folder_after(tmp_path, monkeypatch):
    """A power cut between the two would else leave an empty planner under the old one's name."""
    done, rename = [], os.replace

    def flushed(handle):
        done.append("folder flushed" if stat.S_ISDIR(os.fstat(handle).st_mode) else "flushed")

    def renamed(draft, place):
        done.append("renamed")
        rename(draft, place)

    monkeypatch.setattr(os, "fsync", flushed)
    monkeypatch.setattr(os, "replace", renamed)
    save_all({tmp_path / "one.csv": b"1", tmp_path / "two.csv": b"2"})
    assert done[:4] == ["flushed", "flushed", "renamed", "renamed"]
    assert not done[4:] if os.name == "nt" else set(done[4:]) == {"folder flushed"}


class TestOpenElsewhere:
    @pytest.mark.parametrize("mark", [".~lock.mine.xlsx#", "~$mine.xlsx"])
    def test_a_file_that_is_open(self, tmp_path, mark):
        target = tmp_path / "mine.xlsx"
        target.write_bytes(b"old")
        (tmp_path / mark).write_text("somebody")
        with pytest.raises(FileError, match="this file is open in a spreadsheet program") as told:
            save(target, b"new")
        assert f"remove {mark} beside it" in str(told.value)
        assert target.read_bytes() == b"old" and left_in(tmp_path) == {"mine.xlsx", mark}

    def test_another_file_that_is_open(self, tmp_path):
        (tmp_path / "mine.xlsx").write_bytes(b"old")
        (tmp_path / ".~lock.other.xlsx#").write_text("somebody")
        save(tmp_path / "mine.xlsx", b"new")
        assert (tmp_path / "mine.xlsx").read_bytes() == b"new"

    def test_a_mark_without_its_file(self, tmp_path):
        """What a program left that crashed; nothing can be lost."""
        (tmp_path / ".~lock.mine.xlsx#").write_text("somebody")
        save(tmp_path / "mine.xlsx", b"new")
        assert (tmp_path / "mine.xlsx").read_bytes() == b"new"


class TestDrafts:
    @posix
    def test_the_draft_of_a_run_at_work_is_left_alone(self, tmp_path):
        import fcntl

        at_work, abandoned = tmp_path / ".workbookgen-1.part", tmp_path / ".workbookgen-2.part"
        abandoned.write_bytes(b"half")
        with at_work.open("wb") as file:
            fcntl.flock(file, fcntl.LOCK_EX)
            save(tmp_path / "mine.xlsx", b"new")
            assert left_in(tmp_path) == {"mine.xlsx", at_work.name}
        save(tmp_path / "mine.xlsx", b"newer")
        assert left_in(tmp_path) == {"mine.xlsx"}

    @posix
    def test_what_looks_like_a_draft_and_is_none(self, tmp_path):
        (tmp_path / "precious").write_bytes(b"mine")
        (tmp_path / ".workbookgen-link.part").symlink_to(tmp_path / "precious")
        os.mkfifo(tmp_path / ".workbookgen-pipe.part")
        (tmp_path / ".workbookgen-folder.part").mkdir()
        save(tmp_path / "mine.xlsx", b"new")
        assert (tmp_path / "precious").read_bytes() == b"mine" and (tmp_path / "mine.xlsx").read_bytes() == b"new"
        assert (tmp_path / ".workbookgen-folder.part").is_dir()

    @posix
    def test_two_runs_at_once(self, tmp_path):
        """Many runs into one folder: none takes another's draft away, and the last one wins whole."""
        script = "import sys\nfrom pathlib import Path\nfrom workbookgen.saving import save\nfor turn in range(150): save(Path(sys.argv[1]), sys.argv[2].encode() * 5000)\n"
        environment = os.environ | {"PYTHONPATH": os.pathsep.join(filter(None, sys.path))}
        runs = [
            subprocess.Popen([sys.executable, "-c", script, tmp_path / "mine.xlsx", letter], env=environment)
            for letter in "abc"
        ]
        assert [run.wait(120) for run in runs] == [0, 0, 0]
        content = (tmp_path / "mine.xlsx").read_bytes()
        assert len(content) == 5000 and len(set(content)) == 1 and left_in(tmp_path) == {"mine.xlsx"}


class TestSeveralFiles:
    def test_all_of_them(self, tmp_path):
        (tmp_path / "a.csv").write_bytes(b"old")
        save_all({tmp_path / "a.csv": b"a", tmp_path / "b.csv": b"b"})
        assert ((tmp_path / "a.csv").read_bytes(), (tmp_path / "b.csv").read_bytes()) == (b"a", b"b")
        assert left_in(tmp_path) == {"a.csv", "b.csv"}

    def test_none_where_one_has_no_place(self, tmp_path):
        (tmp_path / "a.csv").write_bytes(b"old")
        with pytest.raises(FileError, match="none.*No such file"):
            save_all({tmp_path / "a.csv": b"a", tmp_path / "none" / "b.csv": b"b"})
        assert (tmp_path / "a.csv").read_bytes() == b"old" and left_in(tmp_path) == {"a.csv"}

    def test_none_where_one_is_refused_at_the_last_moment(self, tmp_path, monkeypatch):
        (tmp_path / "a.csv").write_bytes(b"old")
        (tmp_path / "c.csv").write_bytes(b"old too")
        rename = os.replace

        def refusing(source, target):
            if Path(target).name == "c.csv" and b"c" == Path(source).read_bytes():
                raise PermissionError(13, "Permission denied")
            rename(source, target)

        monkeypatch.setattr("os.replace", refusing)
        with pytest.raises(FileError, match="c.csv: this file cannot be written: Permission denied"):
            save_all({tmp_path / "a.csv": b"a", tmp_path / "b.csv": b"b", tmp_path / "c.csv": b"c"})
        assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == {"a.csv": b"old", "c.csv": b"old too"}


class TestOutputThatIsInput:
    @pytest.mark.parametrize("spelled", ["mine.xlsx", "./mine.xlsx", "folder/../mine.xlsx", "link.xlsx", "twin.xlsx"])
    def test_the_same_file_in_other_words(self, tmp_path, monkeypatch, spelled):
        monkeypatch.chdir(tmp_path)
        (tmp_path / "folder").mkdir()
        (tmp_path / "mine.xlsx").write_bytes(b"old")
        (tmp_path / "link.xlsx").symlink_to("mine.xlsx")
        os.link("mine.xlsx", "twin.xlsx")
        with pytest.raises(FileError, match="it is never changed. Choose another name"):
            require_another(Path(spelled), [Path("other.xlsx"), tmp_path / "mine.xlsx"])

    def test_another_file(self, tmp_path):
        (tmp_path / "mine.xlsx").write_bytes(b"the same")
        (tmp_path / "other.xlsx").write_bytes(b"the same")
        require_another(tmp_path / "other.xlsx", [tmp_path / "mine.xlsx"])
        require_another(tmp_path / "new.xlsx", [tmp_path / "mine.xlsx", tmp_path / "none.xlsx"])
