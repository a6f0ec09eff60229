"""`gather`: many planners into one table, told in plain words, with honest exit codes."""

import csv
import os
from concurrent.futures import ThreadPoolExecutor

import openpyxl
import pytest

from gather.invented import LOTS, settings, write_planner
from workbookgen.gather import workers
from workbookgen.settings import templates


@pytest.fixture(autouse=True)
def read_here(monkeypatch):
    """Files are read in this process.

    The pool would fork it, with all threads that the tests before have left in it; tests/gather tries the pool, and so
    does `run_apart`.
    """
    monkeypatch.setattr(workers, "this_machine", lambda files: workers.Engine(lambda: ThreadPoolExecutor(1), 2))


@pytest.fixture(scope="module")
def guild(tmp_path_factory):
    """A folder with two planners and a file that is none."""
    place = tmp_path_factory.mktemp("guild")
    write_planner(place / "ann.xlsx", settings("us"))
    write_planner(place / "ben.xlsx", settings("metric"), {"fiber": (LOTS[0] | {"name": "=Gorse"},)})
    return place


@pytest.fixture
def broken(guild, tmp_path):
    path = tmp_path / "broken.xlsx"
    path.write_bytes((guild / "ann.xlsx").read_bytes()[:5000])
    return path


def test_a_folder_into_a_workbook(run, guild, tmp_path):
    outcome = run("gather", guild, "-o", tmp_path / "guild.xlsx")
    assert outcome.code == 0 and outcome.err == ""
    assert (
        outcome.out.splitlines()[0]
        == f"{tmp_path / 'guild.xlsx'} is ready: 2 planners, 2 skeins, 3 lots, 1 sample, 1 project."
    )
    assert 'fibers = "guild-fibers.csv"' in outcome.out
    assert sorted(path.name for path in tmp_path.iterdir()) == ["guild-fibers.csv", "guild.xlsx"]
    lots = openpyxl.load_workbook(tmp_path / "guild.xlsx")["Lots"]
    assert [line[2].value for line in lots.iter_rows(min_row=2)] == ["Heather", "Bramble", "=Gorse"]


def test_the_fiber_table_of_the_settings_is_not_written_over(run, guild, tmp_path):
    """What was observed would be joined with itself at each gathering, and seem surer every time."""
    said = run("gather", guild, "-o", tmp_path / "guild.xlsx").out
    assert "It is written anew each time: to change it, change a copy." in said
    table, settings = tmp_path / "guild-fibers.csv", tmp_path / "our.toml"
    settings.write_text('fibers = "guild-fibers.csv"')
    before = table.read_bytes()
    outcome = run("gather", guild, "--settings", settings, "-o", tmp_path / "guild.xlsx")
    assert outcome.code == 2 and table.read_bytes() == before
    assert (
        outcome.err
        == f"{table}: this is the file that is read, and it is never changed. Choose another name after -o.\n"
    )
    # By another name it may be right, of other planners: those that were counted before would count twice.
    twice = "The fiber table of these settings was gathered itself: a lot that is counted in it must not be read again."
    for source, is_told in (("Observed 2026, lots of planners: yield 3 of 1.", True), ("A book (read).", False)):
        header = (templates() / "fibers.csv").read_text(encoding="utf-8").splitlines()[0]
        table.write_text(f"{header}\nFog,{',' * header.count(',')}"[:-1] + f'"{source}"\n', encoding="utf-8")
        outcome = run("gather", guild, "--settings", settings, "-o", tmp_path / "next.xlsx")
        assert outcome.code == 0 and (twice in outcome.out) == is_told


def test_tables_of_their_own(run, guild, tmp_path):
    outcome = run("gather", guild / "ben.xlsx", guild / "ann.xlsx", "-o", tmp_path / "guild.csv")
    assert outcome.code == 0
    parts = ("evenness", "fibers", "lots", "observed", "planners", "projects", "samples", "skeins")
    assert sorted(path.name for path in tmp_path.iterdir()) == sorted(
        [*(f"guild-{part}.csv" for part in parts), "guild-summary.xlsx"]
    )
    with (tmp_path / "guild-lots.csv").open(encoding="utf-8", newline="") as file:
        assert [(line["planner"], line["file"], line["lot"]) for line in csv.DictReader(file)] == [
            ("1", "ben.xlsx", "'=Gorse"),
            ("2", "ann.xlsx", "Heather"),
            ("2", "ann.xlsx", "Bramble"),
        ]
    assert "got an apostrophe in front in the .csv files: 1." in outcome.out


def test_a_bad_file_is_told_in_a_sentence_and_the_rest_is_read(run, guild, broken, tmp_path):
    outcome = run("gather", broken, guild / "ann.xlsx", "-o", tmp_path / "guild.xlsx")
    assert outcome.code == 1
    assert (
        outcome.err.startswith("broken.xlsx: this file is damaged, or was cut off")
        and len(outcome.err.splitlines()) == 1
    )
    assert "1 planner, 2 skeins" in outcome.out
    assert openpyxl.load_workbook(tmp_path / "guild.xlsx")["Not read"]["A4"].value == "broken.xlsx"


def test_nothing_read_is_nothing_written(run, broken, tmp_path):
    outcome = run("gather", broken, tmp_path / "gone.xlsx", "-o", tmp_path / "guild.csv")
    assert outcome.code == 2
    assert (
        "gone.xlsx: there is no such file." in outcome.err
        and "no planner could be read, so nothing was written" in outcome.err
    )
    assert [path.name for path in tmp_path.iterdir()] == ["broken.xlsx"]


def test_the_same_file_twice_is_told(run, guild, tmp_path):
    outcome = run("gather", guild / "ann.xlsx", guild / "ann.xlsx", "-o", tmp_path / "guild.xlsx")
    assert outcome.code == 0 and "1 planner, 2 skeins" in outcome.out
    assert "ann.xlsx: the same, byte for byte, as ann.xlsx; it counts once." in outcome.out


def test_of_many_the_first_are_told_and_where_the_others_are(run, guild, broken, tmp_path, monkeypatch):
    monkeypatch.setattr("workbookgen.cli.MOST_TOLD", 1)
    outcome = run("gather", *[guild / "ann.xlsx"] * 3, tmp_path / "gone.xlsx", broken, "-o", tmp_path / "guild.xlsx")
    assert outcome.err.splitlines()[1:] == ["... and 1 more; the sheet Not read lists them."]
    assert outcome.out.count("it counts once") == 1
    assert "\n... and 1 more; the sheet Not read lists them.\n" in outcome.out
    nothing = run("gather", tmp_path / "gone.xlsx", broken, "-o", tmp_path / "none.xlsx")
    assert nothing.err.splitlines()[1] == "... and 1 more." and not (tmp_path / "none.xlsx").exists()


def test_gathering_again_into_the_folder_itself(run, guild):
    first = run("gather", guild, "-o", guild / "guild.xlsx")
    again = run("gather", guild, "-o", guild / "guild.xlsx")
    assert first == again and again.code == 0
    named = run("gather", *sorted(guild.glob("*.xlsx")), "-o", guild / "guild.xlsx")
    assert named.code == 2 and named.err.startswith(
        f"{guild / 'guild.xlsx'}: this is the file that is read, and it is never changed."
    )
    (guild / "guild.xlsx").unlink()
    (guild / "guild-fibers.csv").unlink()


@pytest.mark.parametrize(
    "arguments, words",
    [
        (["-o", "guild.ods"], "end the name with .xlsx, .csv or .parquet"),
        (["-o", "nowhere/guild.csv"], "there is no such folder"),
        (["-o", "guild.csv", "--settings", "none.toml"], "cannot be read"),
        (["-o", "guild.csv", "--cluster", "nonsense://1"], "no cluster answers at nonsense://1"),
    ],
)
def test_what_cannot_be_done_is_a_sentence(run, guild, tmp_path, monkeypatch, arguments, words):
    monkeypatch.chdir(tmp_path)
    outcome = run("gather", guild / "ann.xlsx", *arguments)
    assert outcome.code == 2 and words in outcome.err and "Traceback" not in outcome.err
    assert list(tmp_path.iterdir()) == []


def test_another_fiber_table_is_the_one_compared_with(run, guild, tmp_path):
    (tmp_path / "own.csv").write_text(
        "name,fleece_low,fleece_high,yield_low,yield_high,diameter_low,diameter_high,staple_low,staple_high,regain,skirting,preparation,spinning,source\n"
        "ROMNEY,,,0.3,0.5,,,,,,,,,invented for this test\n",
        encoding="utf-8",
    )
    (tmp_path / "own.toml").write_text('fibers = "own.csv"\n', encoding="utf-8")
    assert run("gather", guild, "-o", tmp_path / "guild.csv", "--settings", tmp_path / "own.toml").code == 0
    with (tmp_path / "guild-observed.csv").open(encoding="utf-8", newline="") as file:
        (seen,) = (
            line for line in csv.DictReader(file) if line["kind"] == "ROMNEY" and line["stage"] == "scoured yield"
        )
    assert float(seen["published"]) == pytest.approx(0.4) and seen["lots"] == "2"


@pytest.mark.skipif(os.name == "nt", reason="names of files are texts there")
def test_a_file_name_that_is_no_utf8(run_apart, guild, tmp_path):
    """As another system's archive leaves it: read like any other, and told in letters that can be printed."""
    folder = tmp_path / "guild"
    folder.mkdir()
    (folder / "ann.xlsx").write_bytes((guild / "ann.xlsx").read_bytes())
    (folder / os.fsdecode(b"gr\xfcn.xlsx")).write_bytes((guild / "ben.xlsx").read_bytes())
    outcome = run_apart("gather", folder, "-o", tmp_path / "out.xlsx")
    assert (outcome.code, outcome.err) == (0, "") and "2 planners" in outcome.out
    files = [line[1].value for line in openpyxl.load_workbook(tmp_path / "out.xlsx")["Planners"].iter_rows(min_row=4)]
    assert files == ["ann.xlsx", "gr\\xfcn.xlsx"]


def test_gathered_again_it_is_the_same_file(run_apart, guild, tmp_path):
    """Guilds compare what they get by mail: no hour, order or random number is in it."""
    for name, hashes in (("first", "1"), ("second", "2")):
        folder = tmp_path / name
        folder.mkdir()
        assert run_apart("gather", guild, "-o", folder / "out.xlsx", PYTHONHASHSEED=hashes).code == 0
    assert (tmp_path / "first" / "out.xlsx").read_bytes() == (tmp_path / "second" / "out.xlsx").read_bytes()
