"""From a printed weighing through the whole line to the printed count, and back out of the file."""

import json
from statistics import mean

import pytest

from workbookgen import cli
from workbookgen.checking.driving import read
from workbookgen.engines import ENGINES, engine

from .conftest import COLUMNS, READINGS

ROWS = [pytest.param(row, id=reading.id) for row, reading in enumerate(READINGS)]
BY_ENGINE = [
    pytest.param(name, marks=pytest.mark.programs if name in ("libreoffice", "gnumeric") else ()) for name in ENGINES
]
ISO_SKEINS = [row for row, reading in enumerate(READINGS) if reading.id.startswith("05-010")]


@pytest.mark.parametrize("row", ROWS)
def test_the_file_shows_what_was_printed(cached, row):
    reading = READINGS[row]
    key, times = COLUMNS[reading.reading]
    assert reading.reproduced_by(cached, row), (
        f"{cached[key][row] / times} is not {reading.printed} of {reading.source}"
    )


@pytest.mark.parametrize("name", BY_ENGINE)
def test_an_engine_computes_what_was_printed(filled, name):
    wanted = [filled.layout.placements[key] for key in dict.fromkeys(key for key, _ in COLUMNS.values())]
    with engine(name).open(filled.path) as session:
        columns = read(session, wanted)
    assert [reading.id for row, reading in enumerate(READINGS) if not reading.reproduced_by(columns, row)] == []


def test_the_command_agrees_with_every_cell_of_it(filled, capsys):
    cli.main(
        ["check", str(filled.path), "--json", "--scenarios", "0", "--engine", "formualizer", "--engine", "ironcalc"]
    )
    report = json.loads(capsys.readouterr().out)
    assert report["findings"] == [] and report["scenarios"] == 1
    assert report["formula_cells"] == report["formula_cells_checked"] > 20 * len(READINGS)
    assert [each["agreed"] for each in report["engines"]] == [report["formula_cells"]] * 2


def test_nothing_is_wrong_with_what_was_typed(cached):
    """Laboratories reel a few grams where spinners wind ounces: whatever weighs less than 3 g, or more than a
    kilogram, is asked about."""
    *told, blank = cached["skeins_message"]
    asked = [reading.id for reading in READINGS if not 3 <= reading.grams <= 1000]
    assert [reading.id for reading, message in zip(READINGS, told, strict=True) if message] == asked
    assert all(message.startswith("Is it right? Weight") for message in told if message) and blank is None


def test_the_five_skeins_of_a_standard_test_have_their_mean(cached):
    """ISO 2060 reports the mean of the skeins: 246 tex for these five (from memory; worked by hand)."""
    assert len(ISO_SKEINS) == 5
    assert mean(cached["skeins_tex"][row] for row in ISO_SKEINS) == pytest.approx(246.0, abs=0.05)


def test_every_reading_names_its_source_and_stands_once():
    assert all(reading.source for reading in READINGS) and len(READINGS) >= 25
    assert len({reading.id for reading in READINGS}) == len(READINGS)
    assert {reading.reading for reading in READINGS} == set(COLUMNS)


def test_a_slip_of_one_turn_would_be_noticed(cached):
    """The printed roundings are narrow enough: one turn more is refused wherever the skein is short."""
    for row, reading in enumerate(READINGS):
        if reading.turns <= 20 and reading.reading != "galashiels":
            longer = {
                key: [value and value * (reading.turns + 1) / reading.turns for value in column]
                for key, column in cached.items()
                if key != "skeins_message"
            }
            assert not reading.reproduced_by(longer, row)
