"""Planners that many tests look at, built once a run: the default one, one of few lines, and one that has few
chapters, too, for speed."""

import gc
import os
from collections import Counter
from itertools import islice
from pathlib import Path

import hypothesis
import pytest

from chapters import all_but
from long_run import LONG, SEED
from planners import Built, laid_out, rows_of
from workbookgen.saving import save
from workbookgen.settings import Reel, Settings, templates

gc.set_threshold(50_000)  # as the command does: layouts are many objects in few cycles, and it saves a tenth of a run

# How long an example takes depends on what else keeps the machine busy. The bench of changes has a profile of its own.
if hypothesis.settings.default is hypothesis.settings.get_profile("default"):
    hypothesis.settings.register_profile(
        "without a clock", deadline=None, suppress_health_check=[hypothesis.HealthCheck.too_slow]
    )
    hypothesis.settings.load_profile("without a clock")

# Which of the files take longest, by processor time: those of 20 seconds and more.
LONGEST = (
    "checking/test_whole_file.py",
    "checking/test_default_planner.py",
    "bad_input/test_hostile_files.py",
    "checking/test_every_question.py",
    "use/test_hands_in_libreoffice.py",
    "checking/test_nonsense.py",
    "bad_input/test_bad_input.py",
    "command/test_command_build.py",
    "web/test_hyperformula.py",
    "mutation/test_formulas.py",
    "carry/test_saved_by_programs.py",
    "sheets/test_leaving_out.py",
    "excel/test_formulon.py",
    "test_readme.py",
    "faults/test_faults_helpers.py",
    "carry/test_random_carry.py",
    "book/test_files_are_valid.py",
    "faults/test_faults_kills.py",
    "settings/test_settings_seen.py",
    "command/test_command_check.py",
    "checking/test_mutants_found.py",
    "checking/test_built_or_nothing.py",
    "checking/test_filled_planners.py",
    "book/test_written_bytes.py",
    "checking/test_shares.py",
    "checking/test_check.py",
)


def pytest_collection_modifyitems(items):
    """They go first, so that none of them is left alone on one core in the end."""
    places = {Path(__file__).parent / file: place for place, file in enumerate(LONGEST)}
    items.sort(key=lambda item: places.get(item.path, len(places)))


def pytest_collection_finish():
    """Modules and tests stay, so the garbage collector need not go through them again and again."""
    gc.freeze()


def pytest_terminal_summary(terminalreporter):
    """What was drawn, and the table of the engines, as the README has it; tests record its rows as a property."""
    by_file = Counter()
    for each in (
        report for group in terminalreporter.stats.values() for report in group if isinstance(report, pytest.TestReport)
    ):
        by_file[each.nodeid.partition("::")[0]] += each.duration
    if sum(by_file.values()) > 60:  # a long run says where its time went
        terminalreporter.write_sep("=", "the files that took longest, in seconds")
        terminalreporter.write_line(
            ", ".join(f"{file.removeprefix('tests/')} {seconds:.0f}" for file, seconds in by_file.most_common(25))
        )
    terminalreporter.write_line(
        "All that is drawn at random was drawn in full." if LONG else f"Drawn with WORKBOOKGEN_SEED={SEED}."
    )
    reports = [each for outcome in ("passed", "failed") for each in terminalreporter.getreports(outcome)]
    rows = [row for report in reports for name, row in report.user_properties if name == "compared"]
    if rows:
        terminalreporter.write_sep("=", "the default planner against the reference library")
        terminalreporter.write_line(
            "| engine | version | sets of inputs | comparisons | findings | largest relative difference |"
        )
        terminalreporter.write_line("|---|---|---|---|---|---|")
    for name, version, scenarios, comparisons, findings, worst in rows:
        terminalreporter.write_line(
            f"| {name} | {version} | {scenarios:,} | {comparisons:,} | {findings} | {worst:.1e} |"
        )


@pytest.fixture(scope="session", autouse=True)
def disk_of_no_delay():
    """Nobody cuts the power while tests run, and a disk that many write to keeps a worker waiting for a tenth of a
    second with each file. That files are flushed at the right moment is tested with the faults."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "fsync", lambda handle: None)
        yield


@pytest.fixture(scope="session")
def shared(tmp_path_factory, request) -> Path:
    """A folder of this run, one for all its workers."""
    folder = tmp_path_factory.getbasetemp()
    folder = (folder.parent if hasattr(request.config, "workerinput") else folder) / "shared"
    folder.mkdir(exist_ok=True)
    return folder


@pytest.fixture(scope="session")
def built(shared, tmp_path_factory) -> Built:
    """built(settings, entries): the file of such a planner."""
    return Built(shared, tmp_path_factory.mktemp("built"))


@pytest.fixture(scope="session")
def settings():
    return Settings()


@pytest.fixture(scope="session")
def layout(settings):
    return laid_out(settings)


@pytest.fixture(scope="session")
def blank(settings, built):
    """The default planner as a spinner gets it."""
    return built(settings)


@pytest.fixture(scope="session")
def small(shared):
    """Settings with few rows, three fibers and one reel of each sort."""
    table = shared / "fibers.csv"
    with (templates() / "fibers.csv").open(encoding="utf-8") as lines:
        save(table, "".join(islice(lines, 4)).encode())
    return Settings(
        fibers=str(table),
        rows=rows_of(4, skeins=6),
        reels=(
            Reel(name="Clock reel", loop="72 in", tolerance="0.5 in"),
            Reel(name="Niddy-noddy", height="15 in", arms=("14 in", "14 in")),
        ),
    )


@pytest.fixture(scope="session")
def small_layout(small):
    return laid_out(small)


@pytest.fixture(scope="session")
def small_file(small, built):
    return built(small)


@pytest.fixture(scope="session")
def little(small):
    """The same without most chapters that can go. It takes a third of the time: for what is the same in any planner."""
    # With lists, a chart and a date.
    return Settings.model_validate(small.model_dump() | {"leave_out": all_but("Guide", "Counts", "Time", "Figures")})


@pytest.fixture(scope="session")
def little_layout(little):
    return laid_out(little)


@pytest.fixture(scope="session")
def little_file(little, built):
    return built(little)
