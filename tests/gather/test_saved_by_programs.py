"""Planners as spreadsheet programs save them give the same tables as the file they got."""

import shutil
import subprocess

import pandas as pd
import pytest

from workbookgen.gather.gathered import gather

pytestmark = pytest.mark.programs


def by_libreoffice(file, folder, kind):
    subprocess.run(
        [
            "soffice",
            f"-env:UserInstallation=file://{folder}/profile",
            "--headless",
            "--convert-to",
            kind,
            "--outdir",
            str(folder),
            str(file),
        ],
        check=True,
        capture_output=True,
        timeout=120,
    )
    return folder / f"{file.stem}.{kind}"


def by_gnumeric(file, folder, kind):
    subprocess.run(
        ["ssconvert", "--recalc", str(file), str(folder / f"gnumeric.{kind}")],
        check=True,
        capture_output=True,
        timeout=120,
    )
    return folder / f"gnumeric.{kind}"


@pytest.mark.parametrize("save, kind", [(by_libreoffice, "xlsx"), (by_libreoffice, "ods"), (by_gnumeric, "xlsx")])
def test_a_program_in_between_changes_nothing(save, kind, folder, tmp_path, here):
    if not shutil.which("soffice" if save is by_libreoffice else "ssconvert"):
        pytest.skip("the program is not here")
    one = gather([folder / "us.xlsx", save(folder / "us.xlsx", tmp_path, kind)], here)
    assert not one.unread and len(one.planners) == 2
    for table in one.tables.values():
        first, second = (
            table[table["planner"] == number].drop(columns=["planner", "file"]).reset_index(drop=True)
            for number in (1, 2)
        )
        assert len(first) > 0
        pd.testing.assert_frame_equal(second, first, rtol=1e-12, atol=0)
