"""`build`: a planner in its place, or a sentence and nothing changed."""

import errno
import os
import re
import subprocess
import sys
from pathlib import Path

import openpyxl
import pytest

from planners import opened
from workbookgen import build, cli
from workbookgen.build import MOST_LINES

from .conftest import ROOT, SMALL, first_cell

READ_ONLY = Path("/sys")  # Linux lets nobody make a file there, the superuser included


def column(path: Path, name: str) -> list:
    """The cached values of a defined name's range."""
    book = opened(path, values=True)
    ((sheet, area),) = book.defined_names[name].destinations
    return [cell.value for row in book[sheet][area.replace("$", "")] for cell in row]


def left_in(folder: Path) -> set[str]:
    return {path.name for path in folder.iterdir()}


@pytest.fixture(scope="module")
def built(tmp_path_factory):
    """The folder that a person stood in when building without any option."""
    folder = tmp_path_factory.mktemp("here")
    before = Path.cwd()
    os.chdir(folder)
    try:
        cli.main(["build"])
    finally:
        os.chdir(before)
    return folder


class TestWithoutSettings:
    def test_it_is_called_planner_and_nothing_else_is_left(self, built):
        assert left_in(built) == {"planner.xlsx"}

    def test_it_is_in_yards_with_the_reels_of_the_template(self, built):
        assert column(built / "planner.xlsx", "reels_name")[:4] == [
            "Two-yard reel",
            "Niddy-noddy",
            "Yard-and-a-half reel",
            None,
        ]
        assert column(built / "planner.xlsx", "reels_loop")[:4:2] == [72, 54]  # inches

    def test_its_results_show_at_once(self, built):
        """A program that does not recalculate still shows the right numbers (2 yd x 100 wraps)."""
        assert column(built / "planner.xlsx", "reels_hundred")[0] == pytest.approx(200, rel=1e-12)


def test_it_says_what_it_made(run, small_settings, tmp_path):
    target = tmp_path / "mine.xlsx"
    code, out, err = run("build", "--settings", small_settings, "-o", target)
    assert (code, err) == (0, "")
    assert out.startswith(f"{target} is ready: ") and "formula cells, each agreeing with the reference library." in out
    assert "Of longer logs" not in out
    assert left_in(tmp_path) == {"mine.xlsx"}


def test_it_says_that_of_a_long_log_the_first_lines_were_tried(run, small_settings, tmp_path):
    long = small_settings.with_name("long.toml")
    long.write_text(re.sub(r"(?m)^skeins = .*$", f"skeins = {MOST_LINES + 1}", SMALL))
    assert f"skeins = {MOST_LINES + 1}" in long.read_text()
    code, out, _ = run("build", "--settings", long, "-o", tmp_path / "mine.xlsx")
    assert code == 0 and f"Of longer logs only the first {MOST_LINES:,} lines were tried" in out


def test_the_file_can_be_read_by_others(run, small_settings, tmp_path):
    run("build", "--settings", small_settings, "-o", tmp_path / "mine.xlsx")
    assert (tmp_path / "mine.xlsx").stat().st_mode & 0o777 == 0o644


@pytest.mark.parametrize(("units", "loop"), [("us", 72), ("us-grams", 72), ("metric", 182.88)])
def test_units_of_the_command_line_win(run, small_settings, tmp_path, units, loop):
    target = tmp_path / "mine.xlsx"
    assert run("build", "--settings", small_settings, "--units", units, "-o", target).code == 0
    assert column(target, "reels_loop")[0] == pytest.approx(loop, rel=1e-12)  # 2 yd in inches or centimeters


@pytest.mark.parametrize(
    ("units", "paper", "loops"),
    [("us-grams", 1, [72, 71.9, 54]), ("metric", 9, [100, 4 * (40**2 + 2 * 17.5**2) ** 0.5, 200])],
)
def test_without_settings_it_is_the_blank_planner_of_its_unit_system(run, tmp_path, units, paper, loops):
    """With that one's paper and reels, in inches or centimeters: who measures in meters has no two-yard reel."""
    target = tmp_path / "mine.xlsx"
    assert run("build", "--units", units, "--size", "small", "-o", target).code == 0
    assert column(target, "reels_loop")[:4] == [*(pytest.approx(loop, rel=1e-3) for loop in loops), None]
    assert opened(target, values=True)["Reels"].page_setup.paperSize == paper


@pytest.mark.parametrize(("size", "sheets"), [("small", 8), ("whole", 10)])  # what the settings leave out stays out
def test_the_size_of_the_command_line_wins(run, small_settings, tmp_path, size, sheets):
    target = tmp_path / "mine.xlsx"
    assert run("build", "--settings", small_settings, "--size", size, "-o", target).code == 0
    assert len(openpyxl.load_workbook(target, read_only=True).sheetnames) == sheets


def test_a_reel_of_ones_own_needs_no_file(run, small_settings, tmp_path):
    target = tmp_path / "mine.xlsx"
    assert (
        run(
            "build",
            "--settings",
            small_settings,
            "--reel",
            "Attic reel=63.5 in",
            "--reel",
            "Cross=15 in x 14 in x 14 in",
            "-o",
            target,
        ).code
        == 0
    )
    assert column(target, "reels_name") == ["Clock reel", "Attic reel", "Cross", None]
    assert column(target, "reels_rated") == [72, 63.5, None, None]
    clock, attic, cross, empty = column(target, "reels_loop")
    # Geometry: four legs of sqrt(15^2 + 7^2 + 7^2) inches.
    assert (clock, attic, empty) == (72, 63.5, None) and cross == pytest.approx(71.8888, abs=5e-5)


def test_the_same_settings_give_the_same_bytes(run_apart, small_settings, planner, tmp_path):
    second = tmp_path / "second.xlsx"
    assert run_apart("build", "--settings", small_settings, "-o", second, PYTHONHASHSEED="7", TZ="Asia/Tokyo").code == 0
    assert second.read_bytes() == planner.read_bytes()


def test_the_folder_of_the_settings_leaves_no_trace(run, small_settings, planner, tmp_path):
    """Else the same settings would give other bytes elsewhere, and tell where their writer keeps them."""
    for path in small_settings.parent.iterdir():
        (tmp_path / path.name).write_bytes(path.read_bytes())
    run("build", "--settings", tmp_path / "small.toml", "-o", tmp_path / "there.xlsx")
    assert (tmp_path / "there.xlsx").read_bytes() == planner.read_bytes()


def test_another_title_gives_other_bytes(run, small_settings, planner, tmp_path):
    settings = small_settings.with_name("other.toml")
    settings.write_text('title = "24 skeins & more"\n' + SMALL)
    run("build", "--settings", settings, "-o", tmp_path / "other.xlsx")
    assert (tmp_path / "other.xlsx").read_bytes() != planner.read_bytes()
    footer = openpyxl.load_workbook(tmp_path / "other.xlsx")["Skeins"].oddFooter
    # In a footer's code & begins a command, and digits right at its beginning would be a font size.
    assert footer.left.text.strip() == "24 skeins && more" and footer.left.size is None


class TestWhereItCannotBeWritten:
    @pytest.fixture(autouse=True)
    def made_in_a_blink(self, monkeypatch):
        """What is in the planner does not matter here."""
        monkeypatch.setattr(build, "workbook", lambda layout, entries, **_: b"a planner")

    @pytest.fixture
    def refused(self, run, small_settings):
        def refusing(target: Path, reason: str):
            code, out, err = run("build", "--settings", small_settings, "-o", target)
            assert (code, out) == (2, "")
            assert err == f"{target}: this file cannot be written: {reason}.\n"

        return refusing

    def test_a_missing_folder(self, refused, tmp_path):
        refused(tmp_path / "none" / "mine.xlsx", "No such file or directory")
        assert left_in(tmp_path) == set()

    def test_a_folder_itself(self, refused, tmp_path):
        (tmp_path / "folder").mkdir()
        refused(tmp_path / "folder", "a folder has this name")
        assert left_in(tmp_path) == {"folder"} and left_in(tmp_path / "folder") == set()

    def test_a_file_as_a_folder(self, refused, tmp_path):
        (tmp_path / "file").write_text("mine")
        refused(tmp_path / "file" / "mine.xlsx", "Not a directory")
        assert (tmp_path / "file").read_text() == "mine"

    @pytest.mark.skipif(not READ_ONLY.is_dir(), reason="there is no folder of which one knows that it is read-only")
    def test_a_read_only_folder(self, refused):
        before = left_in(READ_ONLY)
        refused(READ_ONLY / "mine.xlsx", "Permission denied")
        assert left_in(READ_ONLY) == before

    def test_a_full_disk_leaves_the_old_planner(self, refused, tmp_path, monkeypatch):
        (tmp_path / "mine.xlsx").write_bytes(b"the old one")

        def full(handle):
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

        monkeypatch.setattr("os.fsync", full)
        refused(tmp_path / "mine.xlsx", "No space left on device")
        assert left_in(tmp_path) == {"mine.xlsx"}
        assert (tmp_path / "mine.xlsx").read_bytes() == b"the old one"


class TestWithBadSettings:
    def test_the_old_planner_stays(self, run, tmp_path):
        settings, target = tmp_path / "bad.toml", tmp_path / "mine.xlsx"
        settings.write_text('units = "imperial"\n[rows]\nskein = 5\n')
        target.write_bytes(b"the old one")
        code, out, err = run("build", "--settings", settings, "-o", target)
        assert (code, out) == (2, "")
        first, second = err.splitlines()
        assert first.startswith(f"{settings}, line 1, units: write one of 'us', 'us-grams'")
        assert second.startswith(
            f"{settings}, line 3, rows.skein: there is no such setting; known are reels, guide, fiber, skeins,"
        )
        assert second.endswith(" Did you mean skeins?")
        assert target.read_bytes() == b"the old one" and left_in(tmp_path) == {"bad.toml", "mine.xlsx"}

    def test_no_planner_is_begun(self, run, tmp_path):
        code, _, err = run("build", "--reel", "Porch=long", "-o", tmp_path / "mine.xlsx")
        assert code == 2 and "write a length above 0 as a number and a unit" in err
        assert left_in(tmp_path) == set()

    def test_a_missing_settings_file(self, run, tmp_path):
        code, _, err = run("build", "--settings", tmp_path / "none.toml", "-o", tmp_path / "mine.xlsx")
        assert (code, err) == (
            2,
            f"{tmp_path / 'none.toml'}: this settings file cannot be read: No such file or directory.\n",
        )

    def test_a_missing_fiber_table(self, run, tmp_path):
        (tmp_path / "mine.toml").write_text('fibers = "none.csv"')
        code, _, err = run("build", "--settings", tmp_path / "mine.toml", "-o", tmp_path / "mine.xlsx")
        assert (code, err) == (
            2,
            f"{tmp_path / 'none.csv'}: the fiber table cannot be read: No such file or directory.\n",
        )
        assert left_in(tmp_path) == {"mine.toml"}

    def test_unknown_units(self, run, tmp_path):
        code, _, err = run("build", "--units", "imperial", "-o", tmp_path / "mine.xlsx")
        assert code == 2 and "'us', 'us-grams', 'metric'" in err and left_in(tmp_path) == set()


def test_a_planner_that_disagrees_is_never_written(run, small_settings, tmp_path, monkeypatch):
    """The reference library is made to say something else of one cell."""

    def otherwise(planner, entries, proofs):
        honest = build_expected(planner, entries, proofs)
        return honest | {"reels_loop": (73.0, *honest["reels_loop"][1:])}

    build_expected = build.expected_of_blocks
    monkeypatch.setattr(build, "expected_of_blocks", otherwise)
    code, out, err = run("build", "--settings", small_settings, "-o", tmp_path / "mine.xlsx")
    assert (code, out) == (1, "") and "expected 73.0, but formualizer computes 72.0." in err
    assert err.startswith("Reels!") and left_in(tmp_path) == set()


def test_what_the_command_built_is_what_the_settings_say(planner):
    book = openpyxl.load_workbook(planner)
    assert first_cell(book, "reels_name").value == "Clock reel"
    assert first_cell(book, "guide_name").value == "Fog"
    assert first_cell(book, "origin_line").value.startswith("# workbookgen ")


@pytest.mark.skipif(os.name == "nt", reason="no shell of this kind")
@pytest.mark.parametrize("closed", ["2>&-", ">&-", ">&- 2>&-"])
def test_with_nobody_to_tell_it_builds_all_the_same(small_settings, tmp_path, closed):
    """Run by a task planner, a command may find its outputs closed."""
    words = [
        sys.executable,
        "-m",
        "workbookgen",
        "build",
        "--settings",
        str(small_settings),
        "-o",
        str(tmp_path / "planner.xlsx"),
    ]
    done = subprocess.run(["sh", "-c", f'exec "$@" {closed}', "sh", *words], cwd=ROOT, timeout=300)
    assert done.returncode == 0 and left_in(tmp_path) == {"planner.xlsx"}
    assert openpyxl.load_workbook(tmp_path / "planner.xlsx").sheetnames[0] == "Desk"
