"""Tables on disk: whole or not at all, read back as they were, and no text becomes a formula."""

import csv
import io
import sys

import openpyxl
import pandas as pd
import pytest

from workbookgen.errors import FileError
from workbookgen.gather import files
from workbookgen.gather.fiber_table import COLUMNS
from workbookgen.gather.files import require_apart, save, targets
from workbookgen.gather.gathered import gather
from workbookgen.settings.fiber_table import load_fibers

from .invented import LOTS, WORK, fleece, settings, write_planner

FIBERS = load_fibers(settings("us"))
FORMULA = '=HYPERLINK("http://example.org")'


@pytest.fixture(scope="module")
def gathered(tmp_path_factory, here):
    """One planner with names that look like formulas, and a file that is none."""
    place = tmp_path_factory.mktemp("odd names")
    lots = (
        {**LOTS[0], "name": FORMULA},
        {**LOTS[1], "name": "-minus"},
        {"name": "+plus"},
        {"name": "@at"},
        {"name": "'=quoted"},
    )
    (place / "none.xlsx").write_bytes(b"nothing")
    return gather(
        [write_planner(place / "=a.xlsx", settings("metric"), WORK | {"fiber": lots}), place / "none.xlsx"], here
    )


def frames(gathered):
    return gathered.tables | {"planners": gathered.planners}


def test_csv_reads_back_as_it_was_but_for_apostrophes(gathered, tmp_path):
    places, changed = save(gathered, tmp_path / "guild.csv", FIBERS)
    for name, frame in frames(gathered).items():
        back = pd.read_csv(places[name], dtype=frame.dtypes.astype(str).to_dict())
        for column in ("lot", "file"):
            if column in frame and name == "lots":
                back[column] = back[column].str.removeprefix("'")
        numbers = frame.select_dtypes("number").columns
        # Older versions of pandas read the last digit of a number as its neighbor.
        pd.testing.assert_frame_equal(back[numbers], frame[numbers], rtol=1e-15, atol=0)
    with places["lots"].open(encoding="utf-8", newline="") as file:
        names = [line["lot"] for line in csv.DictReader(file)]
    assert names == [f"'{FORMULA}", "'-minus", "'+plus", "'@at", "'=quoted"]
    # Four lots; the skeins and so on of that planner stand beside its file's name, which looks like a formula too.
    rows = sum(len(frame) for frame in gathered.tables.values()) + 1
    assert changed == 4 + rows


def test_no_cell_of_a_csv_begins_like_a_formula(gathered, tmp_path):
    places, _ = save(gathered, tmp_path / "guild.csv", FIBERS)
    tables = [place for place in places.values() if place.suffix == ".csv"]
    assert tables
    for place in tables:
        with place.open(encoding="utf-8", newline="") as file:
            cells = [cell for line in csv.reader(file) for cell in line]
        assert not [
            cell
            for cell in cells
            if cell.startswith(("=", "+", "@", "\t")) or (cell.startswith("-") and not _is_number(cell))
        ]


def _is_number(text: str) -> bool:
    try:
        float(text)
    except ValueError:
        return False
    return True


def test_parquet_reads_back_the_same(gathered, tmp_path):
    places, changed = save(gathered, tmp_path / "guild.parquet", FIBERS)
    for name, frame in frames(gathered).items():
        pd.testing.assert_frame_equal(pd.read_parquet(places[name]), frame, check_dtype=False, check_exact=True)
    assert changed == 0


def test_a_workbook_reads_back_the_same_with_texts_as_texts(gathered, tmp_path):
    places, changed = save(gathered, tmp_path / "guild.xlsx", FIBERS)
    assert changed == 0 and set(places) == {"summary", "fibers"}
    for name, frame in gathered.tables.items():
        back = pd.read_excel(
            places["summary"],
            engine="openpyxl",
            sheet_name=name.capitalize(),
            dtype=frame.dtypes.astype(str).to_dict(),
            keep_default_na=False,
            na_values=[""],
        )
        pd.testing.assert_frame_equal(back, frame, check_dtype=False, rtol=1e-15)
    book = openpyxl.load_workbook(places["summary"])
    assert not [cell for sheet in book for line in sheet.iter_rows() for cell in line if cell.data_type == "f"]
    assert [sheet.title for sheet in book] == [
        "About",
        "Observed",
        "Evenness",
        "Planners",
        "Not read",
        "Skeins",
        "Lots",
        "Samples",
        "Projects",
        "Columns",
    ]
    told = [[cell.value for cell in line] for line in book["Not read"].iter_rows(min_row=4)]
    assert told == [
        [
            "none.xlsx",
            "this is a text file (such as .csv), whatever its name says. Give the planner itself, saved as .xlsx.",
        ]
    ]


def test_the_chart_shows_breeds_with_enough_lots(tmp_path, here):
    lots = tuple(fleece(str(number), "Romney", 500 + 100 * number) for number in range(3)) + (
        fleece("x", "Cheviot", 500),
    )
    gathered = gather([write_planner(tmp_path / "a.xlsx", settings("us"), {"fiber": lots})], here)
    places, _ = save(gathered, tmp_path / "guild.xlsx", FIBERS)
    sheet = openpyxl.load_workbook(places["summary"])["Yields"]
    assert [cell.value for cell in sheet[4]] == pytest.approx(["Romney", 3, 0.6, 0.1, 0.625])
    assert sheet.max_row == 4 and len(sheet._charts) == 1


@pytest.mark.parametrize("name", ["guild.xlsx", "guild.csv", "guild.parquet"])
def test_blank_planners_can_be_gathered_too(tmp_path, here, name):
    gathered = gather([write_planner(tmp_path / "blank.xlsx", settings("us"), {})], here)
    places, _ = save(gathered, tmp_path / name, FIBERS)
    assert all(place.exists() for place in places.values())


def test_a_table_too_long_for_a_sheet_is_refused_with_the_way_out(gathered, tmp_path, monkeypatch):
    monkeypatch.setattr(files, "MOST_ROWS", 3)
    with pytest.raises(FileError, match="write .csv or .parquet instead"):
        save(gathered, tmp_path / "guild.xlsx", FIBERS)
    assert list(tmp_path.iterdir()) == []
    save(gathered, tmp_path / "guild.csv", FIBERS)


def test_a_folder_in_the_way_leaves_everything_as_it_was(gathered, tmp_path):
    (tmp_path / "guild-skeins.csv").write_text("old", encoding="utf-8")
    (tmp_path / "guild-lots.csv").mkdir()
    with pytest.raises(FileError, match="a folder has this name"):
        save(gathered, tmp_path / "guild.csv", FIBERS)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["guild-lots.csv", "guild-skeins.csv"]
    assert (tmp_path / "guild-skeins.csv").read_text(encoding="utf-8") == "old"


def test_what_is_to_be_read_is_never_written_over(tmp_path):
    with pytest.raises(FileError, match="the file that is read"):
        require_apart(tmp_path / "guild.csv", [tmp_path / "a.xlsx", tmp_path / "guild-summary.xlsx"])
    with pytest.raises(FileError, match="no such folder"):
        require_apart(tmp_path / "none" / "guild.csv", [])


HEADER = ",".join(COLUMNS)


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("guild-skeins.csv", b"dear diary\n"),
        ("guild-observed.csv", b"what,where\n1,2\n"),
        ("guild-fibers.csv", b"my own notes\n"),
        (
            "guild-fibers.csv",
            f"{HEADER}\nFog,4,7,0.6,0.7,30,45,6,8,0.1,0.1,0.1,,0.1,,ours\n".encode(),
        ),  # their own table
        ("guild-lots.csv", b"\xff\xfe\x00"),
        ("guild-summary.xlsx", b"my own notes\n"),
        ("guild-summary.xlsx", None),  # a workbook with another sheet
    ],
)
def test_what_gather_did_not_write_is_never_written_over(tmp_path, name, content):
    """Nobody named it: only guild.csv was typed."""
    if content is None:
        openpyxl.Workbook().save(tmp_path / name)
    else:
        (tmp_path / name).write_bytes(content)
    with pytest.raises(
        FileError, match=f"{name}: there is such a file already, and it is not one that gather wrote. M"
    ):
        require_apart(tmp_path / "guild.csv", [], FIBERS)


@pytest.mark.parametrize("name", ["guild.xlsx", "guild.csv", "guild.parquet"])
@pytest.mark.parametrize("lots", [0, 3])
def test_what_gather_wrote_is_written_anew(tmp_path, here, name, lots):
    """Whether a lot was observed or none, and when LibreOffice has saved the tables with other signs between."""
    entries = {"fiber": tuple(fleece(str(number), "Romney", 500 + 100 * number) for number in range(lots))}
    gathered = gather([write_planner(tmp_path / "a.xlsx", settings("us"), entries)], here)
    places, _ = save(gathered, tmp_path / name, FIBERS)
    require_apart(tmp_path / name, [], FIBERS)
    if "skeins" in places and name.endswith(".csv"):
        places["skeins"].write_text('\ufeff"planner";"file";"skein"\r\n', encoding="utf-8")
        require_apart(tmp_path / name, [], FIBERS)


@pytest.mark.parametrize("name", ["guild.ods", "guild", "guild.xls"])
def test_another_ending_is_refused(name, tmp_path):
    with pytest.raises(FileError, match="end the name with .xlsx, .csv or .parquet"):
        targets(tmp_path / name)


def test_parquet_without_its_package_is_told(tmp_path, monkeypatch):
    monkeypatch.setitem(sys.modules, "pyarrow", None)
    with pytest.raises(FileError, match=r"pip install \"workbookgen\[parquet\]\""):
        targets(tmp_path / "guild.parquet")


def test_a_carriage_return_begins_no_row():
    """Python's csv module leaves one without quotation marks where rows end with another sign."""
    frame = pd.DataFrame({"skein": pd.Series(["First\r=1+1", "\r=2"], dtype="string")})
    safe, changed = files.without_formulas(frame)
    written = safe.to_csv(index=False, lineterminator="\n")
    assert "\r" not in written and changed == 1
    assert list(csv.reader(io.StringIO(written))) == [["skein"], ["First\n=1+1"], ["'\n=2"]]
