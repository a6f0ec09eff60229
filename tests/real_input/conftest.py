"""Measurements that others made and printed, typed into planners as a spinner would type them.

`readings.csv` has a line for each: the reel's perimeter and turns, the weight on the
balance, and what its author says the yarn is. Textbooks weigh in grains, drams and grams;
a planner is told ounces or grams, so weights and perimeters are converted here, with
factors written out apart from the planner's.
"""

import csv
from dataclasses import dataclass
from pathlib import Path

import openpyxl
import pytest

from chapters import all_but
from workbookgen.build import build, layout_of
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.settings import Rows, Settings

# NIST SP 811, appendix B, exact (from memory).
GRAMS = {"gram": 1.0, "grain": 0.06479891, "dram": 1.7718451953125, "ounce": 28.349523125, "pound": 453.59237}
METERS = {"m": 1.0, "cm": 0.01, "in": 0.0254, "yd": 0.9144}
SHOWN = {"us": ("in", "yd", "ounce"), "us-grams": ("in", "yd", "gram"), "metric": ("cm", "m", "gram")}

# What was printed -> the column of the skein log that shows it, and how many of its units
# are one of the printed: the log has no cotton count and no Galashiels cut, but its yards
# per pound are 840 a hank and 200 a cut (W. Davis, Hosiery Manufacture, read).
COLUMNS = {
    "worsted": ("skeins_worsted", 1),
    "run": ("skeins_run", 1),
    "metric": ("skeins_metric", 1),
    "tex": ("skeins_tex", 1),
    "yards_per_pound": ("skeins_grist_yd_lb", 1),
    "cotton": ("skeins_grist_yd_lb", 840),
    "galashiels": ("skeins_grist_yd_lb", 200),
    "yards": ("skeins_length_yd", 1),
    "meters": ("skeins_length_m", 1),
}


@dataclass(frozen=True)
class Reading:
    """One printed measurement and what its author makes of it."""

    id: str
    perimeter: str
    turns: float
    rest: str
    weight: str
    reading: str
    printed: float
    half_step: float  # half of the last printed digit
    source: str

    def as_skein(self, system: str) -> dict[str, float | str]:
        small, large, mass = SHOWN[system]
        return {
            "name": self.id,
            "reel": self.perimeter,
            "wraps": self.turns,
            "rest": amount(self.rest, METERS, large) if self.rest else None,
            "gross": amount(self.weight, GRAMS, mass),
            # Finished yarn on a reel of the laboratory shrinks no more.
            "washed_loop": amount(self.perimeter, METERS, small),
        }

    @property
    def grams(self) -> float:
        return amount(self.weight, GRAMS, "gram")

    def reproduced_by(self, columns: dict[str, list], row: int) -> bool:
        key, times = COLUMNS[self.reading]
        return abs(columns[key][row] / times - self.printed) <= self.half_step


def amount(text: str, factors: dict[str, float], unit: str) -> float:
    """A printed amount such as "35 grain" in another unit."""
    number, printed_in = text.split()
    return float(number) * factors[printed_in] / factors[unit]


def readings() -> list[Reading]:
    with (Path(__file__).parent / "readings.csv").open(encoding="utf-8", newline="") as file:
        return [
            Reading(
                line["id"],
                line["perimeter"],
                float(line["turns"]),
                line["rest"],
                line["weight"],
                line["reading"],
                float(line["printed"]),
                float(line["half_step"]),
                line["source"],
            )
            for line in csv.DictReader(file)
        ]


READINGS = readings()


@dataclass(frozen=True)
class Filled:
    """A planner with all readings in it."""

    layout: object
    path: Path


@pytest.fixture(scope="package", params=SHOWN)
def filled(request, tmp_path_factory) -> Filled:
    """All readings in a planner of each unit system, each reel under the name of its perimeter."""
    system = request.param
    perimeters = list(dict.fromkeys(reading.perimeter for reading in READINGS))
    rows = dict.fromkeys(Rows.model_fields, 2) | {"reels": len(perimeters), "skeins": len(READINGS) + 1}
    settings = Settings(units=system, fibers="", rows=Rows(**rows), leave_out=all_but())
    small = SHOWN[system][0]
    planner = layout_of(settings).planner
    entries = starting_entries(planner)
    entries = with_records(
        planner,
        entries,
        "reels",
        [{"name": perimeter, "rated": amount(perimeter, METERS, small)} for perimeter in perimeters],
    )
    entries = with_records(planner, entries, "skeins", [reading.as_skein(system) for reading in READINGS])
    path = tmp_path_factory.mktemp("readings") / f"{system}.xlsx"
    return Filled(build(settings, path, entries), path)


@pytest.fixture(scope="package")
def cached(filled) -> dict[str, list]:
    """The columns as anybody's program finds them in the file: by defined name, without recalculating."""
    book = openpyxl.load_workbook(filled.path, data_only=True)

    def column(key: str) -> list:
        ((sheet, area),) = book.defined_names[key].destinations
        return [row[0].value for row in book[sheet][area.replace("$", "")]]

    return {key: column(key) for key in {*(key for key, _ in COLUMNS.values()), "skeins_message"}}
