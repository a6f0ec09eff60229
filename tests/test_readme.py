"""The README: every command line runs as it stands there, and its table names the sheets that there are."""

import csv
import re
import shlex
import shutil
from collections import Counter
from pathlib import Path

import pytest

from long_run import LONG
from planners import laid_out
from workbookgen import __version__
from workbookgen.cli import main
from workbookgen.settings import Settings
from workbookgen.sheets.planner import planner
from workbookgen.sheets.proofs import PROOFS

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
COMMANDS = re.findall(r"^workbookgen (.+)$", README, re.MULTILINE)


@pytest.fixture(scope="module")
def desk(tmp_path_factory):
    """A folder in which the commands are typed, one after the other, as in a clone."""
    folder = tmp_path_factory.mktemp("desk")
    shutil.copytree(ROOT / "templates", folder / "templates")
    return folder


def test_there_are_commands():
    assert {command.split()[0] for command in COMMANDS} == {"build", "check", "fields", "carry", "blank", "gather"}


@pytest.mark.parametrize("command", COMMANDS)
def test_a_command_of_the_readme_runs(command, desk, little_file, monkeypatch, capsys):
    """As it stands there.

    What is checked is a planner of few lines, under the name of the one that was built: that one is checked in every
    engine elsewhere.
    """
    monkeypatch.chdir(desk)
    if command.startswith("check ") and not LONG:
        (desk / "few lines").mkdir(exist_ok=True)
        shutil.copy(little_file, desk / "few lines" / "planner.xlsx")
        monkeypatch.chdir(desk / "few lines")
    code = 0
    try:
        main(shlex.split(command))
    except SystemExit as end:
        code = end.code
    said = capsys.readouterr()
    if (
        said.err.strip() == "Stopped."
    ):  # somebody stops the tests: the command that runs within them takes the signal for its own
        raise KeyboardInterrupt
    assert said.out and (code, said.err) == (0, "")


def test_the_two_first_commands_are_there():
    scripts = re.findall(r"^python3 (\S+\.py)$", README, re.MULTILINE)
    assert scripts == ["demo/first_run.py", "tests/run_all.py"]
    assert all((ROOT / script).is_file() for script in scripts)
    assert "python3 tests/run_all.py" in (ROOT / ".ci" / "run").read_text(encoding="utf-8")


def test_the_table_names_every_sheet_and_marks_those_of_the_small_planner():
    table = README.partition("| sheet | what you do there |")[2].partition("\n\n")[0]
    rows = re.findall(r"^\| (\**)(\w+)\1 \| .{30,} \|$", table, re.MULTILINE)
    whole, small = (planner(Settings(size=size)) for size in ("whole", "small"))
    assert [name for _, name in rows] == [sheet.name for sheet in whole.sheets]
    assert [name for bold, name in rows if bold] == [sheet.name for sheet in small.sheets]


def test_the_formula_cells_are_counted_as_they_are():
    """And so the comparisons of each engine: every cell once for each set of inputs."""
    cells = sum(each.rows for each in laid_out(Settings()).formulas)
    told = f"The default planner has {cells:,} formula cells.", f"(version {__version__})"
    assert not [each for each in told if each not in README], "README.md must say this, and the table follows"
    table = README.partition("| engine | version | sets of inputs |")[2].partition("\n\n")[0]
    rows = [line.split("|")[3:5] for line in table.splitlines()[2:]]
    assert len(rows) == 6
    assert [int(told.replace(",", "")) for _, told in rows] == [int(sets) * cells for sets, _ in rows]


def test_the_examples_are_counted_as_they_are():
    known = Counter(proof.provenance for proof in PROOFS.proofs)
    with (ROOT / "tests" / "published" / "published_rows.csv").open(encoding="utf-8", newline="") as file:
        serves = Counter(row["where"] for row in csv.DictReader(file))
    said = re.search(
        r"Of the examples, (\d+) are computed live among the proofs: (\d+) were read in print, (\d+) are worked by hand .+?; (\d+) more are tests",
        README,
    )
    assert [int(number) for number in said.groups()] == [
        len(PROOFS.proofs),
        known["read"],
        known["derived"],
        serves["library"] + serves["table"],
    ]
