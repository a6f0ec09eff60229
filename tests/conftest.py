"""Planners that many tests look at, built once: the default one, and a small one for speed."""

import pytest

from workbookgen.build import layout_of, workbook
from workbookgen.settings import Reel, Rows, Settings, templates


COMPARED = pytest.StashKey[list]()


@pytest.fixture(scope="session")
def compared(pytestconfig):
    """What was compared in which engine: its report, the number of scenarios and of findings."""
    return pytestconfig.stash.setdefault(COMPARED, [])


def pytest_terminal_summary(terminalreporter, config):
    """The table of the engines, as the README has it."""
    rows = config.stash.get(COMPARED, [])
    if rows:
        terminalreporter.write_sep("=", "the default planner against the reference library")
        terminalreporter.write_line("| engine | version | sets of inputs | comparisons | findings | largest relative difference |")
        terminalreporter.write_line("|---|---|---|---|---|---|")
    for each, scenarios, findings in rows:
        terminalreporter.write_line(
            f"| {each.name} | {each.version} | {scenarios:,} | {each.comparisons:,} | {findings} | {each.worst_relative_difference:.1e} |"
        )


@pytest.fixture(scope="session")
def settings():
    return Settings()


@pytest.fixture(scope="session")
def layout(settings):
    return layout_of(settings)


@pytest.fixture(scope="session")
def blank(layout, tmp_path_factory):
    """The default planner as a spinner gets it."""
    path = tmp_path_factory.mktemp("blank") / "planner.xlsx"
    path.write_bytes(workbook(layout))
    return path


@pytest.fixture(scope="session")
def small(tmp_path_factory):
    """Settings with few rows, three fibers and one reel of each sort."""
    table = tmp_path_factory.mktemp("small") / "fibers.csv"
    with (templates() / "fibers.csv").open(encoding="utf-8") as lines:
        table.write_text("".join(line for line, _ in zip(lines, range(4))), encoding="utf-8")
    return Settings(
        fibers=str(table),
        rows=Rows(**{log: 4 for log in Rows.model_fields} | {"skeins": 6}),
        reels=(
            Reel(name="Clock reel", loop="72 in", tolerance="0.5 in"),
            Reel(name="Niddy-noddy", height="15 in", arms=("14 in", "14 in")),
        ),
    )


@pytest.fixture(scope="session")
def small_layout(small):
    return layout_of(small)


@pytest.fixture(scope="session")
def small_file(small_layout, tmp_path_factory):
    path = tmp_path_factory.mktemp("small") / "planner.xlsx"
    path.write_bytes(workbook(small_layout))
    return path
