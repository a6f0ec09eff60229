"""LibreOffice as a person has it, a filled planner to work in, and the whole one of the demo."""

from pathlib import Path

import pytest

from chapters import all_but
from demo_planner import demo_entries, demo_settings
from entries import entries_with
from planners import laid_out, rows_of
from workbookgen.build import layout_of, workbook
from workbookgen.checking.compare import agree
from workbookgen.checking.driving import read, read_inputs
from workbookgen.checking.expected import expected_values
from workbookgen.engines import Area, ErrorValue, libreoffice
from workbookgen.settings import Reel, Settings

HANDS = Path(__file__).with_name("hands.py")
PROFILE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>{locale}</value></prop></item>
<item oor:path="/org.openoffice.Office.Calc/Input"><prop oor:name="ReplaceCellsWarning" oor:op="fuse"><value>false</value></prop></item>
</oor:items>
"""
RECORDS = {
    "fiber": [
        {"name": "Clover", "state": "prepared fiber", "weight": 40.0, "grist": 850.0},
        {"name": "Moss", "state": "prepared fiber", "weight": 60.0, "grist": 1200.0},
        {"name": "Gray thread", "state": "yarn or thread", "weight": 4.0, "grist": 9000.0},
    ],
    "skeins": [
        {"name": "Cedar", "reel": "Clock reel", "wraps": 104.0, "gross": 4.02, "tare": 0.12, "lot": "Clover"},
        {
            "name": "Apple",
            "reel": "Clock reel",
            "wraps": 142.0,
            "part_wrap": 0.5,
            "gross": 3.74,
            "tare": 0.1,
            "lot": "Moss",
        },
        {"name": "Birch", "reel": "Clock reel", "wraps": 98.0, "gross": 3.88, "washed_loop": 69.0, "lot": "Clover"},
        {"name": "Dogwood", "reel": "Clock reel", "wraps": 60.0, "gross": 2.5, "lot": "Clover"},
    ],
    "projects": [
        {"name": "Cardigan", "wanted": 1450.0, "margin": 0.15, "grist": 850.0, "lot_1": "Clover"},
        {"name": "Hat", "wanted": 200.0, "grist": 1200.0, "lot_1": "Moss"},
    ],
}


class Planner:
    """The planner, open in LibreOffice; what a person does to it, and what it then shows."""

    def __init__(self, office, layout, path, in_sight=False):
        self.office, self.layout = office, layout
        self.open(path, in_sight)

    def open(self, path, in_sight=False):
        opened = self.office.ask("open_as_is", path=str(path), in_sight=in_sight)
        self.document, self.sheets = opened["document"], opened["sheets"]

    def do(self, what, **details):
        return self.office.ask(what, document=self.document, **details)

    def area(self, key, first=0, last=None):
        """Records of a field (counted from 0) as the driver takes them: sheet, left, top, right, bottom."""
        place = self.layout.placements[key]
        last = first if last is None else last
        return [place.sheet, place.column - 1, place.row - 1 + first, place.column - 1, place.row - 1 + last]

    def lines(self, block, first, last=None):
        """Whole records, inputs only: they stand side by side, the folded ones behind those that are always seen."""
        areas = [self.area(f"{block}_{each.key}", first, last) for each in self.layout.planner.blocks[block].inputs]
        left, right = min(areas, key=lambda area: area[1]), max(areas, key=lambda area: area[1])
        return [*left[:3], right[3], left[4]]

    def select(self, area):
        self.do("select", area=area)

    def press(self, command, **settings):
        self.do("press", command=command, **settings)

    def type(self, key, row, words):
        self.select(self.area(key, row))
        self.press("EnterString", StringName=words)

    def save(self, path):
        self.do("save", path=str(path))
        return path

    def read(self, area: Area):
        block = [area.sheet, area.column - 1, area.row - 1, area.last_column - 1, area.last_row - 1]
        return [[libreoffice._value(value) for value in row] for row in self.do("read", area=block)]

    def entries(self):
        return read_inputs(self, self.layout)

    def shown(self):
        return read(self, self.layout.formulas)

    def faults(self):
        """Cells that show anything else than the reference library says of what stands in the inputs."""
        shown = self.shown()
        return [
            f"{key}[{row}]: expected {wanted!r}, got {value!r}"
            for key, column in expected_values(self.layout.planner, self.entries()).items()
            for row, (wanted, value) in enumerate(zip(column, shown[key], strict=True))
            if isinstance(value, ErrorValue) or not agree(wanted, value)
        ]

    def close(self):
        self.do("close")


@pytest.fixture(scope="package")
def layout():
    rows = rows_of(4, skeins=8)
    reels = (Reel(name="Clock reel", loop="72 in"),)
    return layout_of(Settings(rows=rows, fibers="", reels=reels, leave_out=all_but("Guide")))


@pytest.fixture(scope="package")
def path(layout, tmp_path_factory):
    entries = entries_with(layout.planner, RECORDS)
    file = tmp_path_factory.mktemp("use") / "planner.xlsx"
    file.write_bytes(workbook(layout, entries))
    return file


@pytest.fixture(scope="package")
def filled():
    """The layout of the demo's planner, which has all sheets."""
    return laid_out(demo_settings())


@pytest.fixture(scope="package")
def told():
    """What the demo's spinner typed."""
    return demo_entries()


def office_of(locale):
    """LibreOffice with a profile of its own, in which a program's language is set and nothing else."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(libreoffice, "_DRIVER", HANDS)
        patch.setattr(libreoffice, "_PROFILE", PROFILE.format(locale=locale))
        return libreoffice._Office()


@pytest.fixture(scope="package")
def english():
    office = office_of("en-US")
    yield office
    office.leave()


@pytest.fixture(scope="package")
def german():
    office = office_of("de-DE")
    yield office
    office.leave()


@pytest.fixture
def planner(english, layout, path):
    opened = Planner(english, layout, path)
    yield opened
    opened.close()


@pytest.fixture
def german_planner(german, layout, path):
    opened = Planner(german, layout, path)
    yield opened
    opened.close()
