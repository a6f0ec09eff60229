"""Filled planners in, tidy tables out: the numbers, the units, the odd files."""

import re
import shutil

import numpy as np
import openpyxl
import pandas as pd
import pytest
from pytest import approx

from workbookgen.errors import FileError
from workbookgen.gather.gathered import gather, planners_in

from .invented import LOTS, SKEINS, WORK, q, settings, write_planner


@pytest.fixture(scope="module")
def gathered(folder, here):
    return gather(planners_in([folder]), here)


def record(gathered, table, name, planner=1):
    frame = gathered.tables[table]
    (found,) = frame[(frame["planner"] == planner) & (frame.iloc[:, 2] == name)].to_dict("records")
    return found


def test_two_versions_of_one_planner_are_told(gathered, tmp_path, here):
    """Each of their lots would count twice, and what two fleeces gave would pass for what four did."""
    told = ", too, with the same name and weight. If these are two versions of one planner, all of it counts twice: "
    assert [str(note) for note in gathered.notes] == [
        f"{file}: 2 of its lots are in metric.xlsx{told}give only the latest." for file in ("us-grams.xlsx", "us.xlsx")
    ]
    others = (LOTS[0], LOTS[1] | {"name": "Thistle"}, LOTS[1] | {"name": "Sorrel"})
    works = (
        {"fiber": others[:2]},
        {"fiber": (others[0], others[2])},
        {"fiber": (others[1] | {"weight": q(2.1, "kg")},)},
    )
    files = [write_planner(tmp_path / f"{number}.xlsx", settings("metric"), work) for number, work in enumerate(works)]
    assert gather(files, here).notes == (), "one lot alike may be another's, and so may a name"


# All expected values below are worked by hand from what stands in `invented`.
@pytest.mark.parametrize("planner", [1, 2, 3])
def test_a_skein(gathered, planner):
    skein = record(gathered, "skeins", "Heather 1", planner)
    assert skein["reel"] == "Post reel" and skein["lot"] == "Heather" and pd.isna(skein["design"])
    assert skein["wraps"] == 100 and skein["part_wrap"] == 0.5 and np.isnan(skein["rest_m"])
    assert skein["gross_g"] == approx(104) and skein["mass_g"] == approx(100)
    assert skein["loop_m"] == approx(1.8288) and skein["reeled_m"] == approx(183.7944)
    assert skein["shrinkage"] == approx(0.1) and skein["length_m"] == approx(165.41496)
    assert skein["grist_m_per_g"] == approx(1.6541496) and skein["tex"] == approx(604.540, rel=1e-5)
    assert skein["wraps_per_cm"] == approx(10 / 2.54)
    # A wrap more or less, and the washed loop of 164.592 cm read within 1 cm, both divided by the root of 3; and half a
    # percent of slack.
    assert skein["length_doubt_m"] == approx(165.41496 * (0.0057735**2 + 0.0035078**2 + 0.005**2) ** 0.5, rel=1e-4)


def test_a_lot(gathered):
    lot = record(gathered, "lots", "Heather")
    assert [
        lot[name]
        for name in ("seen_skirting_loss", "seen_scoured_yield", "seen_preparation_loss", "seen_spinning_loss")
    ] == approx([0.1, 0.6, 0.1, 0.1])
    assert lot["yarn_kept"] == approx(0.4374)
    assert lot["spun_g"] == approx(200) and lot["to_come_g"] == approx(237.4)
    # Grists 1.6541496 and, less the usual shrinkage of 5%, 1.9197828: they differ by 0.2656332, of which the spread is
    # the √2-th part.
    assert lot["skeins"] == 2 and lot["mean_grist_m_per_g"] == approx(1.7869662)
    assert lot["grist_cv"] == approx(0.2656332 / 2**0.5 / 1.7869662)


def test_what_is_only_expected_is_not_called_seen(gathered):
    lot = record(gathered, "lots", "Bramble")
    # 1,600 g skirted, and for Corriedale the guide's middle yield of 55%, 6% and 3% lost: 802.384 g.
    assert lot["yarn_g"] == approx(802.384) and lot["seen_skirting_loss"] == approx(0.2)
    assert np.isnan(lot["seen_scoured_yield"]) and np.isnan(lot["yarn_weighed_g"])


def test_a_sample(gathered):
    sample = record(gathered, "samples", "Heather 2-ply")
    assert sample["readings"] == 3 and sample["wraps_per_cm"] == approx(11 / 2.54)
    # Student's t of two degrees, NIST/SEMATECH (read); counted whole, so half a wrap.
    assert sample["wraps_doubt95_per_cm"] == approx((4.303**2 / 3 + 0.25) ** 0.5 / 2.54)
    assert (
        sample["tex"] == approx(500)
        and sample["singles_twist_per_m"] == approx(600)
        and sample["spinning_loss"] == approx(0.1)
    )


def test_a_project(gathered):
    project = record(gathered, "projects", "Mittens")
    assert project["length_m"] == approx(220) and project["yarn_g"] == approx(110)
    # Its skeins are free, so that they do not count: 237.4 g at 2 m/g are left, and 220 m with the reserve are wanted.
    assert project["have_m"] == approx(474.8) and project["surplus_m"] == approx(254.8)


def test_the_unit_system_of_a_planner_leaves_no_trace(gathered):
    for table in gathered.tables.values():
        first, second, third = (
            table[table["planner"] == number].drop(columns=["planner", "file"]).reset_index(drop=True)
            for number in (1, 2, 3)
        )
        assert len(first) > 0
        pd.testing.assert_frame_equal(second, first, rtol=1e-9, atol=0)
        pd.testing.assert_frame_equal(third, first, rtol=1e-9, atol=0)


def test_planners_are_told_without_their_folder(gathered, folder):
    assert gathered.planners["file"].tolist() == ["metric.xlsx", "us-grams.xlsx", "us.xlsx"]
    assert gathered.planners["title"].tolist() == ["In metric", "In us-grams", "In us"]
    assert gathered.planners["skeins"].tolist() == [2, 2, 2]
    everything = [gathered.planners, *gathered.tables.values()]
    assert not any(
        frame.astype("string").apply(lambda column: column.str.contains(str(folder.parent), regex=False)).any().any()
        for frame in everything
    )


def test_stored_results_are_not_believed(tmp_path, here):
    lies = {"skeins_finished_m": (123456.0,) * 8, "skeins_tex": (1.0,) * 8, "fiber_seen_yield": (0.999,) * 6}
    path = write_planner(tmp_path / "lies.xlsx", settings("metric"), cached=lies)
    shown = openpyxl.load_workbook(path, data_only=True)["Skeins"]
    assert any(cell.value == 123456.0 for line in shown.iter_rows() for cell in line)
    found = gather([path], here)
    assert record(found, "skeins", "Heather 1")["length_m"] == approx(165.41496)
    assert record(found, "lots", "Heather")["seen_scoured_yield"] == approx(0.6)


def test_a_bad_file_costs_only_itself(folder, tmp_path, here):
    whole = (folder / "us.xlsx").read_bytes()
    (tmp_path / "cut.xlsx").write_bytes(whole[: len(whole) // 2])
    openpyxl.Workbook().save(tmp_path / "other.xlsx")
    files = [
        tmp_path / "cut.xlsx",
        folder / "us.xlsx",
        tmp_path / "other.xlsx",
        tmp_path / "gone.xlsx",
        folder / "metric.xlsx",
    ]
    gathered = gather(files, here)
    assert gathered.planners["file"].tolist() == ["us.xlsx", "metric.xlsx"]
    assert [fault.place for fault in gathered.unread] == ["cut.xlsx", "other.xlsx", "gone.xlsx"]
    for fault, words in zip(gathered.unread, ("damaged, or was cut off", "Reference", "no such file"), strict=True):
        assert words in fault.sentence and str(tmp_path) not in fault.sentence
    assert gathered.tables["skeins"]["planner"].tolist() == [1, 1, 2, 2]


def test_a_workbook_that_cannot_be_read_is_not_passed_over_in_a_folder(folder, tmp_path, here):
    shutil.copy(folder / "us.xlsx", tmp_path / "us.xlsx")
    (tmp_path / "hers.xls").write_bytes(bytes.fromhex("D0CF11E0A1B11AE1") + bytes(600))
    (tmp_path / "letter.txt").write_text("See you on Thursday.")
    gathered = gather(planners_in([tmp_path]), here)
    assert gathered.planners["file"].tolist() == ["us.xlsx"]
    assert [fault.place for fault in gathered.unread] == ["hers.xls"]


def test_the_same_bytes_count_once(folder, tmp_path, here):
    shutil.copy(folder / "us.xlsx", tmp_path / "a copy.xlsx")
    gathered = gather([folder / "us.xlsx", folder / "metric.xlsx", tmp_path / "a copy.xlsx"], here)
    assert gathered.planners["file"].tolist() == ["us.xlsx", "metric.xlsx"] and not gathered.unread
    assert [str(fault) for fault in gathered.repeated] == [
        "a copy.xlsx: the same, byte for byte, as us.xlsx; it counts once."
    ]
    assert len(gathered.tables["skeins"]) == 4


def test_what_cannot_be_right_stays_and_is_told(tmp_path, here):
    lots = (
        {**LOTS[0], "yarn_weighed": q(999, "g")},
        {"name": "=HEATHER+1", "kind": "no such breed", "state": "raw fleece", "weight": "a bag full"},
    )
    skeins = ({**SKEINS[0], "wraps": -3.0}, {"wraps": 12.0})
    gathered = gather(
        [write_planner(tmp_path / "odd.xlsx", settings("metric"), WORK | {"fiber": lots, "skeins": skeins})], here
    )
    heather, odd = gathered.tables["lots"].to_dict("records")
    assert (
        heather["yarn_weighed_g"] == 999
        and np.isnan(heather["seen_spinning_loss"])
        and heather["message"].startswith("Yarn: more than")
    )
    assert (
        odd["lot"] == "=HEATHER+1"
        and np.isnan(odd["bought_g"])
        and odd["kind"] == "no such breed"
        and pd.isna(odd["seen_kind"])
    )
    assert [str(note) for note in gathered.notes] == [
        "odd.xlsx: bought_g of the lots: not a number, or too large, in 1 cell; left empty here."
    ]
    minus, nameless = gathered.tables["skeins"].to_dict("records")
    assert minus["wraps"] == -3 and np.isnan(minus["length_m"]) and re.match("Wraps: type a number", minus["message"])
    assert pd.isna(nameless["skein"]) and nameless["wraps"] == 12


def test_what_was_typed_below_a_log_is_told(folder, tmp_path, here):
    """Two skeins below the eighth and last line, and a remark, which is no record."""
    book = openpyxl.load_workbook(folder / "metric.xlsx")
    names, wraps = (
        next(iter(book.defined_names[f"skeins_{key}"].destinations))[1].replace("$", "").split(":")
        for key in ("name", "wraps")
    )
    sheet = book["Skeins"]
    last = int(names[1].lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ"))
    column = wraps[1].rstrip("0123456789")
    for row, name, count in (
        (last + 1, "Late 1", 40),
        (last + 2, "Late 2", 41),
        (last + 4, "Ask for the blue one", None),
    ):
        sheet[f"{names[1].rstrip('0123456789')}{row}"], sheet[f"{column}{row}"] = name, count
    path = tmp_path / "more.xlsx"
    book.save(path)
    gathered = gather([path], here)
    assert len(gathered.tables["skeins"]) == 2
    assert [str(note) for note in gathered.notes] == [
        f"more.xlsx: skeins: 2 lines typed below the last line of the log (line {last} of the sheet); nothing there is counted. Carry the planner over to one with more rows."
    ]


def test_a_blank_planner_gives_empty_tables_of_the_same_kinds(gathered, tmp_path, here):
    empty = gather([write_planner(tmp_path / "blank.xlsx", settings("us"), {})], here)
    assert len(empty.planners) == 1 and not empty.unread
    for name, table in empty.tables.items():
        assert len(table) == 0
        assert table.dtypes.astype(str).to_dict() == gathered.tables[name].dtypes.astype(str).to_dict()


def test_a_folder_stands_for_the_workbooks_in_it(folder, tmp_path):
    for name in ("b.xlsx", "a.ods", "~$b.xlsx", ".~lock.b.xlsx#", "notes.txt", "guild.xlsx"):
        (tmp_path / name).write_bytes(b"")
    (tmp_path / "c.xlsx").mkdir()
    found = planners_in([tmp_path, folder / "us.xlsx"], leave_out=[tmp_path / "guild.xlsx"])
    assert [path.name for path in found] == ["a.ods", "b.xlsx", "us.xlsx"]
    with pytest.raises(FileError, match="no .xlsx or .ods workbook"):
        planners_in([tmp_path / "c.xlsx"])
