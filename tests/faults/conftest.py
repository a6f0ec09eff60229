"""Folders on which one cannot write: full, and closed to whoever is not the superuser."""

import os
import pickle
import shutil
import subprocess
import tempfile
from pathlib import Path

import pytest

NOBODY = 65534


@pytest.fixture
def small_disk(tmp_path):
    """A file system of 200 kB."""
    folder = tmp_path / "small"
    folder.mkdir()
    mount = shutil.which("mount")
    if (
        not mount
        or os.geteuid()
        or subprocess.run([mount, "-t", "tmpfs", "-o", "size=200k", "tmpfs", folder], capture_output=True).returncode
    ):
        pytest.skip("NOT TRIED: a small file system may not be mounted here")
    yield folder
    subprocess.run([shutil.which("umount"), folder], check=True)


@pytest.fixture
def open_folder():
    """A folder that every user may read and write, whatever protects the folders of this test run."""
    folder = Path(tempfile.mkdtemp(prefix="faults-"))
    folder.chmod(0o777)
    yield folder
    shutil.rmtree(folder)


@pytest.fixture
def as_nobody():
    """Do something as a user whom the rights of files bind, as they do not bind the superuser."""

    def doing(work):
        if os.geteuid():
            return _outcome(work)
        reader, writer = os.pipe()
        child = os.fork()
        if not child:
            os.setgroups([])
            os.setgid(NOBODY)
            os.setuid(NOBODY)
            os.write(writer, pickle.dumps(_outcome(work)))
            os._exit(0)
        os.close(writer)
        with os.fdopen(reader, "rb") as answer:
            outcome = pickle.loads(answer.read())
        os.waitpid(child, 0)
        return outcome

    return doing


def _outcome(work) -> str:
    try:
        work()
        return ""
    except Exception as problem:
        return str(problem)
