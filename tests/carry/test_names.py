"""Names that do not stand where they belong: what they bring over is told, never swapped in silence."""

import pytest

from chapters import all_but
from checking.tampering import both, edited, sub
from workbookgen.build import layout_of, workbook
from workbookgen.carry.carry import carry
from workbookgen.carry.names import misplaced
from workbookgen.carry.report import sentences
from workbookgen.filled.planner import read_filled
from workbookgen.language.entries import starting_entries, with_records

BOOK = "xl/workbook.xml"


@pytest.fixture(scope="module")
def few(small):
    """The layout of a planner with the wheel, and few other chapters."""
    return layout_of(small.model_copy(update={"leave_out": all_but("Twist")}))


@pytest.fixture
def filled(few, tmp_path):
    entries = with_records(
        few.planner, starting_entries(few.planner), "skeins", [{"name": "Moth", "gross": 4.5, "tare": 0.25}]
    )
    (tmp_path / "old.xlsx").write_bytes(workbook(few, entries))
    return tmp_path / "old.xlsx"


def pointed(path, layout, **places):
    """A copy in which names stand for other cells."""
    edits = (sub(rf'(<definedName name="{key}">)[^<]*', rf"\g<1>{place}") for key, place in places.items())
    return edited(path, path.with_name("pointed.xlsx"), {BOOK: both(*edits)})


def test_two_that_were_swapped(filled, few, tmp_path):
    at = few.placements
    path = pointed(filled, few, skeins_gross=at["skeins_tare"].range, skeins_tare=at["skeins_gross"].range)
    carried = carry(path, tmp_path / "new.xlsx")
    told = [str(each) for each in carried.misplaced]
    assert [each.split(":")[0] for each in told] == ["skeins_gross", "skeins_tare"]
    assert 'the cells of "Bag or tag", so what is there was carried over as "Weight"' in told[0]
    assert "put them right" in told[0]
    said = list(sentences(carried, path, tmp_path / "new.xlsx"))
    assert any("skeins_gross" in each for each in said)
    assert not any(each.startswith("Every result") for each in said), "weights that came over as tares are not the same"


def test_two_of_a_card_that_were_swapped(filled, few):
    at = few.placements
    path = pointed(filled, few, wheel_wheel=at["wheel_whorl"].range, wheel_whorl=at["wheel_wheel"].range)
    assert [fault.place for fault in misplaced(read_filled(path))] == ["wheel_wheel", "wheel_whorl"]


def test_one_that_is_a_line_further_down(filled, few):
    at = few.placements["skeins_gross"]
    letter = at.cell(0).rstrip("0123456789")
    path = pointed(filled, few, skeins_gross=f"Skeins!${letter}${at.row + 1}:${letter}${at.row + at.rows}")
    assert [fault.place for fault in misplaced(read_filled(path))] == ["skeins_gross"]


def test_one_that_stands_for_another_of_the_same_label(filled, few):
    """Where two columns have one label, their order tells them apart."""
    at = few.placements
    lots = {key: at[key].range for key in ("projects_lot_1", "projects_lot_2")}
    path = pointed(filled, few, projects_lot_1=lots["projects_lot_2"], projects_lot_2=lots["projects_lot_1"])
    assert {fault.place for fault in misplaced(read_filled(path))} & set(lots)


def test_an_honest_planner_is_believed(filled, tmp_path):
    carried = carry(filled, tmp_path / "new.xlsx")
    assert carried.notes == carried.misplaced == ()
    assert "Every result is the same as before." in sentences(carried, filled, tmp_path / "new.xlsx")
