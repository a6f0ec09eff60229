"""The fiber table: its own mistakes are told with the line and the column."""

import csv

import pytest

from workbookgen.errors import FileError, PlannerError, SettingsError
from workbookgen.settings import Rows, Settings
from workbookgen.settings.fiber_table import load_fibers
from workbookgen.sheets import guide
from workbookgen.sheets.planner import planner
from workbookgen.units import Quantity

HEAD = "name,fleece_low,fleece_high,yield_low,yield_high,diameter_low,diameter_high,staple_low,staple_high,regain,skirting,preparation,spinning,source"
GOOD = "Fog,4,7,0.6,0.7,30,45,6,8,0.136,0.15,0.06,0.03,invented here"
BARE = "Mist,,,,,,,,,,,,,"


@pytest.fixture
def table(tmp_path):
    """Settings whose fiber table is made of these lines."""

    def written(*lines: str, encoding: str = "utf-8", rows: int = 5) -> Settings:
        path = tmp_path / "mine.csv"
        path.write_text("\n".join(lines) + "\n", encoding=encoding)
        return Settings(fibers=str(path), rows=Rows(guide=rows))

    return written


def told(settings: Settings, kind: type[PlannerError] = SettingsError) -> list[str]:
    with pytest.raises(kind) as caught:
        load_fibers(settings)
    return [str(fault).replace(settings.fibers, "mine.csv") for fault in caught.value.faults]


def test_a_line_is_read_with_its_units(table):
    (record,) = load_fibers(table(HEAD, GOOD))
    assert record["name"] == "Fog" and record["source"] == "invented here"
    assert record["fleece_high"] == Quantity(7.0, "pound")
    assert record["diameter_low"] == Quantity(30.0, "micrometer")
    assert record["staple_low"] == Quantity(6.0, "inch")
    assert record["yield_low"] == 0.6 and record["spinning"] == 0.03


def test_a_name_for_labels_is_read_where_there_is_one(table):
    settings = table(
        HEAD.replace(",source", ",on_labels,source"), "Fog,,,,,,,,,,,,,wool,invented here", "Mist,,,,,,,,,,,,,,"
    )
    assert [record.get("on_labels") for record in load_fibers(settings)] == ["wool", None]
    assert guide.guide(settings).starts_with[0]["on_labels"] == "wool"


def test_empty_cells_are_left_out(table):
    assert load_fibers(table(HEAD, BARE)) == ({"name": "Mist"},)


def test_a_line_that_ends_early_is_a_line_of_empty_cells(table):
    assert load_fibers(table(HEAD, "Haze,4")) == ({"name": "Haze", "fleece_low": Quantity(4.0, "pound")},)


def test_a_byte_order_mark_is_no_mistake(table):
    """Spreadsheet programs put one before the first column's name."""
    assert load_fibers(table(HEAD, GOOD, encoding="utf-8-sig"))[0]["name"] == "Fog"


def test_the_order_of_columns_is_free(table):
    words = [line.split(",") for line in (HEAD, GOOD)]
    assert load_fibers(table(*(",".join(reversed(line)) for line in words))) == load_fibers(table(HEAD, GOOD))


def test_missing_columns_are_named(table):
    settings = table(HEAD.replace("regain,", "").replace(",source", ""), "Fog,4,7,0.6,0.7,30,45,6,8,0.15,0.06,0.03")
    assert told(settings) == ["mine.csv: the fiber table needs the columns regain, source."]


def test_a_table_without_lines_needs_its_columns(table):
    (sentence,) = told(table(HEAD))
    assert sentence.startswith("mine.csv: the fiber table needs the columns ")


@pytest.mark.parametrize("word", ["many", "12,5", "60%", "nan", "inf", "1e999"])
def test_a_word_where_a_number_belongs(table, word):
    broken = GOOD.replace("0.6,", f'"{word}",', 1)
    assert told(table(HEAD, BARE, broken)) == [
        f'mine.csv, line 3, yield_low: "{word}" is not a number. Write it in digits, with a point: 0.75.'
    ]


def test_all_words_are_told_at_once(table):
    assert told(table(HEAD, GOOD.replace("4,", "four,", 1), GOOD.replace("0.136", "some").replace("Fog", "Haze"))) == [
        'mine.csv, line 2, fleece_low: "four" is not a number. Write it in digits, with a point: 0.75.',
        'mine.csv, line 3, regain: "some" is not a number. Write it in digits, with a point: 0.75.',
    ]


def test_more_fibers_than_lines_of_the_guide(table):
    assert told(table(HEAD, GOOD, BARE, "Rime" + BARE[4:], rows=2)) == [
        "rows.guide: the fiber table has 3 fibers, so this must be 3 or more."
    ]


def test_a_planner_without_the_guide_needs_no_lines_for_its_fibers():
    few = Settings(size="small", rows=Rows(guide=2))
    assert "guide" not in planner(few).blocks
    assert "guide" not in planner(few.model_copy(update={"size": "whole", "leave_out": ("Guide",)})).blocks


def test_a_name_that_no_workbook_can_store(table):
    assert told(table(HEAD, "Fo\x01g" + BARE[4:])) == [
        "mine.csv, line 2, name: leave out line breaks and control characters."
    ]


def test_a_name_that_stands_there_twice(table):
    assert told(table(HEAD, GOOD, BARE, GOOD.replace("Fog", "FOG"))) == [
        'mine.csv, line 4, name: "FOG" stands in line 2 too; give each fiber its own name.'
    ]


def refused(settings: Settings) -> list[str]:
    """What the guide says of the table."""
    with pytest.raises(SettingsError) as caught:
        guide.chapter(settings)
    return [str(fault).replace(settings.fibers, "mine.csv") for fault in caught.value.faults]


@pytest.mark.parametrize(
    ("column", "word", "sentence"),
    [
        ("yield_high", "70", "Yield to: type a percentage above 0% up to 100%, or empty it."),
        ("regain", "-0.1", "Regain: type a percentage from 0% up to 100%, or empty it."),
        ("fleece_low", "0", "Fleece from: type a number above 0 up to 1,000 lb, in digits, or empty it."),
        ("fleece_low", "8", "Fleece: the first figure must not be above the second."),
        ("name", "x" * 41, "Breed or fiber: type a name of up to 40 letters."),
        ("name", "", "Still to fill in: Breed or fiber."),
        ("source", "x" * 201, "Source: type words, up to 200 letters, or empty it."),
    ],
)
def test_the_guide_takes_no_line_that_it_would_complain_of(table, column, word, sentence):
    line = dict(zip(HEAD.split(","), GOOD.split(","), strict=True)) | {column: word}
    assert refused(table(HEAD, BARE, ",".join(line.values()))) == [f"mine.csv, line 3, {column}: {sentence}"]


def test_a_missing_table(tmp_path):
    settings = Settings(fibers=str(tmp_path / "none.csv"))
    assert told(settings, FileError) == ["mine.csv: the fiber table cannot be read: No such file or directory."]


def test_a_table_that_is_not_text(tmp_path):
    path = tmp_path / "mine.csv"
    path.write_bytes(f"{HEAD}\nSchäfchen{BARE[4:]}\n".encode("latin-1"))
    assert told(Settings(fibers=str(path)), FileError) == [
        "mine.csv: the fiber table cannot be read: it is not a text in UTF-8. Save it from a text editor with the encoding UTF-8."
    ]


@pytest.mark.parametrize("sign", [";", "\t"])
def test_a_table_as_a_program_with_decimal_commas_saves_it(tmp_path, sign):
    (tmp_path / "mine.csv").write_text(f"{HEAD}\n{BARE}\n".replace(",", sign), encoding="utf-8")
    assert told(Settings(fibers=str(tmp_path / "mine.csv"))) == [
        "mine.csv: the columns of the fiber table are not separated by commas. Save it with commas between them, and points in its numbers."
    ]


def test_no_table_at_all_leaves_the_guide_empty():
    assert load_fibers(Settings(fibers="")) == ()


def test_the_table_that_comes_along_names_a_source_for_every_fiber():
    records = load_fibers(Settings())
    assert len(records) >= 20 and all(record["source"] for record in records)
    assert len({record["name"].lower() for record in records}) == len(records)


def test_the_test_table_has_the_columns_in_one_line():
    assert len(next(csv.reader([GOOD]))) == len(HEAD.split(","))
