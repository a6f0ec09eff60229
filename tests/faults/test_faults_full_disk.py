"""A disk that is full, at whatever point: the old file stays, nothing half is left, a sentence says why."""

import os
import resource
import subprocess
import sys
from pathlib import Path

import pytest

from workbookgen.errors import FileError
from workbookgen.saving import save, save_all

from .killing import SETTINGS

ROOT = Path(__file__).parents[2]
OLD = b"old" * 10_000


def run(*arguments, **environment: str) -> tuple[int, str]:
    done = subprocess.run(
        [sys.executable, "-m", "workbookgen", *map(str, arguments)],
        cwd=ROOT,
        env=os.environ | environment,
        capture_output=True,
        text=True,
        timeout=300,
    )
    return done.returncode, done.stderr


@pytest.fixture
def settings(tmp_path):
    path = tmp_path / "settings.toml"
    path.write_text(SETTINGS.as_toml(), encoding="utf-8")
    return path


def test_a_small_disk(small_disk):
    target = small_disk / "mine.xlsx"
    target.write_bytes(OLD)
    with pytest.raises(FileError) as told:
        save(target, b"new" * 100_000)
    assert str(told.value) == f"{target}: this file cannot be written: No space left on device."
    assert target.read_bytes() == OLD and os.listdir(small_disk) == ["mine.xlsx"]
    save(target, b"new" * 10_000)
    assert target.read_bytes() == b"new" * 10_000


def test_a_small_disk_takes_all_files_or_none(small_disk):
    first, second = small_disk / "a.csv", small_disk / "b.csv"
    first.write_bytes(OLD)
    with pytest.raises(FileError, match="b.csv.*No space left on device"):
        save_all({first: b"a" * 50_000, second: b"b" * 150_000})
    assert first.read_bytes() == OLD and os.listdir(small_disk) == ["a.csv"]


def test_a_build_onto_a_small_disk(small_disk, settings):
    (small_disk / "padding").write_bytes(b"x" * 120_000)
    target = small_disk / "mine.xlsx"
    target.write_bytes(OLD)
    code, err = run("build", "--settings", settings, "-o", target)
    assert (code, err) == (2, f"{target}: this file cannot be written: No space left on device.\n")
    assert target.read_bytes() == OLD and sorted(os.listdir(small_disk)) == ["mine.xlsx", "padding"]


def test_no_room_for_temporary_files(small_disk, settings, tmp_path):
    (small_disk / "padding").write_bytes(b"x" * 180_000)
    code, err = run("build", "--settings", settings, "-o", tmp_path / "mine.xlsx", TMPDIR=str(small_disk))
    assert code == 2 and err.endswith("No space left on device.\n") and err.count("\n") == 1 and "our fault" not in err
    assert not (tmp_path / "mine.xlsx").exists() and os.listdir(small_disk) == ["padding"]


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="NOT TRIED: this system has no device that is always full")
@pytest.mark.parametrize("unbuffered", ["", "1"])
@pytest.mark.parametrize("arguments", [("--version",), ("build", "--help")])
def test_the_answer_itself_finds_no_room(arguments, unbuffered):
    """Whether Python holds back what it prints, as it does by itself, or not."""
    with open("/dev/full", "w") as full:
        done = subprocess.run(
            [sys.executable, "-m", "workbookgen", *arguments],
            cwd=ROOT,
            env=os.environ | {"PYTHONUNBUFFERED": unbuffered},
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
        )
    assert (done.returncode, done.stderr) == (2, "This computer refuses it: No space left on device.\n")


@pytest.mark.parametrize("most", [0, 1, 40_000, 299_999])
def test_a_limit_on_the_size_of_files(tmp_path, most):
    """Every number of bytes at which the writing may break off; works on any file system."""
    target = tmp_path / "mine.xlsx"
    target.write_bytes(OLD)
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (most, before[1]))
    try:
        with pytest.raises(FileError, match="this file cannot be written: File too large"):
            save(target, b"new" * 100_000)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)
    assert target.read_bytes() == OLD and os.listdir(tmp_path) == ["mine.xlsx"]
