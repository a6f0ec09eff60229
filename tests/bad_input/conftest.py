"""A small filled planner, open in each engine, into which one wrong thing at a time is typed.

The good lines: Porch reel and Cross are reels; Clover, Moss and Gray top are lots; the
skein Victim (line 2) is wound on a reel and spun from a lot that no other line uses, so
that whatever is wrong with it can touch little else.
"""

from contextlib import ExitStack, contextmanager
from functools import cache

import pytest

from chapters import all_but
from entries import entries_with
from long_run import some
from workbookgen.build import build, layout_of
from workbookgen.checking.driving import read, read_inputs
from workbookgen.engines import ENGINES, Area, ErrorValue, engine
from workbookgen.language.parts import Log
from workbookgen.settings import Rows, Settings

BY_ENGINE = [  # the embedded engines always, the big programs where they are asked for
    pytest.param(name, marks=pytest.mark.programs if name in ("libreoffice", "gnumeric") else ()) for name in ENGINES
]
PYTHON = ("formualizer", "ironcalc")
PROGRAMS = {
    "libreoffice": 4,
    "gnumeric": 2,
}  # cases of each test at a push: LibreOffice takes seconds for one, and so does Gnumeric, that starts anew


def in_engines(name: str, cases, told=str):
    """Each case in each engine of Python; at a push the programs try some of them, in a long run all."""
    tried = [(each, case) for each in PYTHON for case in cases]
    tried += [(each, case) for each, number in PROGRAMS.items() for case in some(cases, number)]
    found = [
        pytest.param(each, case, id=f"{each}-{told(case)}", marks=pytest.mark.programs if each in PROGRAMS else ())
        for each, case in tried
    ]
    return pytest.mark.parametrize(("planner", name), found, indirect=["planner"])


HEAD = "name,fleece_low,fleece_high,yield_low,yield_high,diameter_low,diameter_high,staple_low,staple_high,regain,skirting,preparation,spinning,source\n"
FIBERS = HEAD + (
    "Fog,4,7,0.6,0.7,30,45,6,8,0.136,0.15,0.06,0.03,invented for this test\nMist,8,12,0.5,0.6,20,24,3,5,0.136,0.1,0.05,0.02,invented for this test\n"
)
RECORDS = {
    "reels": [
        {"name": "Porch reel", "rated": 72.0},
        {"name": "Cross", "height": 15.0, "arm_a": 14.0, "arm_b": 14.0},
        {"name": "Spare", "cord": 600.0, "turns": 8.25, "tolerance": 0.5},
    ],
    "fiber": [
        {"name": "Clover", "kind": "Fog", "state": "raw fleece", "weight": 104.0, "grist": 850.0},
        {"name": "Moss", "kind": "Mist", "state": "washed fiber", "weight": 60.0, "grist": 1200.0},
        {"name": "Gray top", "state": "prepared fiber", "own_spinning": 0.02, "weight": 4.0, "grist": 9000.0},
    ],
    "skeins": [
        {"name": "First", "reel": "Porch reel", "wraps": 104.0, "gross": 4.02, "tare": 0.12, "lot": "Clover"},
        {
            "name": "Victim",
            "reel": "Cross",
            "wraps": 142.0,
            "part_wrap": 0.5,
            "gross": 3.74,
            "tare": 0.1,
            "lot": "Moss",
        },
        {"name": "Third", "reel": "Porch reel", "wraps": 98.0, "gross": 3.88, "washed_loop": 69.0, "lot": "Clover"},
        {"name": "Fourth", "reel": "Spare", "wraps": 60.0, "gross": 2.5, "counted_wpi": 12.0, "lot": "Clover"},
    ],
    "projects": [
        {"name": "Cardigan", "wanted": 1450.0, "margin": 0.15, "grist": 850.0, "lot_1": "Clover", "lot_2": "Gray top"},
        {"name": "Hat", "wanted": 200.0, "grist": 1200.0, "lot_1": "Moss"},
    ],
}
CARDS = {
    "buying_kind": ("Fog",),
    "buying_length": (2400.0,),
    "buying_grist": (1600.0,),
    "weighed_length": (20.0,),
    "weighed_mass": (0.36,),
    "thickness_grist": (1200.0,),
    "moisture_mass": (4.0,),
    "moisture_content": (0.1,),
}

BEGUN = {*RECORDS, "guide", "counts", *(key.partition("_")[0] for key in CARDS)}  # blocks with something in them

Cell = tuple[str, int]  # full key of a field, and the record counted from 0


class OpenPlanner:
    """The planner in one engine: what to type into it, and what it shows."""

    def __init__(self, layout, session):
        self.layout = layout
        self._session, self._is_worked_out = session, True
        self.typed = {
            (key, row): value
            for key, column in read_inputs(session, layout).items()
            for row, value in enumerate(column)
        }
        self.good = self.shown()

    def shown(self) -> dict[Cell, float | str | None | ErrorValue]:
        """Every formula cell of the planner."""
        if not self._is_worked_out:
            self._session.evaluate()
            self._is_worked_out = True
        values = read(self._session, self.layout.formulas)
        return {(key, row): value for key, column in values.items() for row, value in enumerate(column)}

    @contextmanager
    def with_typed(self, entries: dict[Cell, float | str | None]):
        """What the planner shows while these stand in it; afterwards all is mended."""
        self._set(entries)
        try:
            yield self.shown()
        finally:
            self._set({cell: self.typed[cell] for cell in entries})

    def _set(self, entries: dict[Cell, float | str | None]) -> None:
        for (key, row), value in entries.items():
            placement = self.layout.placements[key]
            self._session.set(Area(placement.sheet, placement.row + row, placement.column), [[value]])
        self._is_worked_out = False  # a program is asked when somebody looks


@pytest.fixture(scope="package")
def filled(tmp_path_factory):
    """The layout of the filled planner, and its file."""
    folder = tmp_path_factory.mktemp("filled")
    (folder / "fibers.csv").write_text(FIBERS, encoding="utf-8")
    rows = dict.fromkeys(Rows.model_fields, 3) | {"reels": 4, "fiber": 4, "skeins": 6}
    settings = Settings(
        fibers=str(folder / "fibers.csv"), rows=Rows(**rows), leave_out=all_but("Guide", "Buying", "Counts")
    )
    planner = layout_of(settings).planner
    entries = entries_with(planner, RECORDS) | CARDS
    path = folder / "planner.xlsx"
    return build(settings, path, entries), path


@pytest.fixture(scope="package")
def opened(filled):
    """The filled planner, open in an engine by its name: opened where it is first asked for, closed after the last
    test.

    A fixture that took the engine as its parameter would be made anew for every case, since pytest
    tells parameters that come in pairs apart by their place in the list.
    """
    layout, path = filled
    with ExitStack() as sessions:
        yield cache(lambda name: OpenPlanner(layout, sessions.enter_context(engine(name).open(path))))


@pytest.fixture(params=BY_ENGINE)
def planner(request, opened):
    """The filled planner, open in an engine."""
    return opened(request.param)


def errors(shown: dict) -> dict:
    """The cells that show an error."""
    return {cell: value for cell, value in shown.items() if isinstance(value, ErrorValue)}


def differing(planner: OpenPlanner, shown: dict) -> list[tuple[str, int, str]]:
    """The cells (block, line, field) that show anything else than before, but for sums of a log or the whole stock."""
    cells = (
        (*key.split("_", 1), row)
        for (key, row), value in shown.items()
        if value != planner.good[key, row] and not is_of_all(planner.layout, key)
    )
    return [(block, row, key) for block, key, row in cells if block in BEGUN]


def is_of_all(layout, key: str) -> bool:
    """Whether that is a single cell of a log: it tells of all its lines, such as the first that is wrong."""
    placement = layout.placements[key]
    return placement.rows == 1 and isinstance(placement.holder, Log)


def changed(planner: OpenPlanner, shown: dict) -> set[tuple[str, int]]:
    """The records (block and line) of these cells."""
    return {(block, row) for block, row, _ in differing(planner, shown)}
