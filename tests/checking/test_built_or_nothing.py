"""Building: a planner that agrees with the library is put in its place whole, any other leaves no trace."""

import functools
import os
import stat
import tempfile
from dataclasses import replace

import openpyxl
import pytest

from chapters import all_but
from entries import entries_with
from workbookgen import build as building
from workbookgen.build import build, layout_of, workbook
from workbookgen.checking.driving import read
from workbookgen.engines import engine
from workbookgen.errors import Disagreement, FileError
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.language.parts import Block
from workbookgen.language.planner import Planner
from workbookgen.reference import reeling
from workbookgen.saving import save
from workbookgen.settings import Rows, Settings
from workbookgen.sheets import proofs
from workbookgen.sheets.planner import planner


@pytest.fixture
def scratch(tmp_path, monkeypatch):
    """A folder for the planner, and one for whatever is put down in between; both start empty."""
    drafts, folder = tmp_path / "drafts", tmp_path / "planners"
    drafts.mkdir()
    folder.mkdir()
    monkeypatch.setattr(tempfile, "tempdir", str(drafts))
    return folder, drafts


@pytest.fixture
def wrong_reference(monkeypatch):
    """The library says one percent too much for a hundred wraps."""
    right = reeling.hundred_wraps

    @functools.wraps(right)
    def wrong(*given, **named):
        return right(*given, **named) * 1.01

    monkeypatch.setattr(reeling, "hundred_wraps", wrong)


def test_a_planner_is_built_and_nothing_else_is_left(little, scratch):
    folder, drafts = scratch
    layout = build(little, folder / "planner.xlsx")
    assert [each.name for each in folder.iterdir()] == ["planner.xlsx"] and not list(drafts.iterdir())
    assert (folder / "planner.xlsx").read_bytes() == workbook(layout)
    assert stat.S_IMODE(os.stat(folder / "planner.xlsx").st_mode) == 0o644


def test_a_planner_that_disagrees_is_not_built(little, scratch, wrong_reference):
    folder, drafts = scratch
    with pytest.raises(Disagreement) as caught:
        build(little, folder / "planner.xlsx")
    assert caught.value.exit_code == 1
    cell = layout_of(little).placements["reels_hundred"].cell(0)
    # A hundred turns of 72 in are 200 yd; the wrong library says 202.
    assert any(
        f"Reels!{cell} (reels_hundred): expected 202.0" in str(fault) and "computes 200" in str(fault)
        for fault in caught.value.faults
    )
    assert not list(folder.iterdir()) and not list(drafts.iterdir())


def test_a_planner_that_differs_from_print_is_not_built(little, scratch, monkeypatch):
    """Twelve wraps of 1.5 m are 18 m, whoever printed 19."""
    slip = replace(
        proofs.PROOFS.proofs[0],
        number="99-001",
        result="skeins_length_m",
        unit="meter",
        printed=19.0,
        tolerance=1e-9,
        given={
            "wraps": (12.0, "dimensionless"),
            "part_wrap": (0.0, "dimensionless"),
            "rest": (0.0, "meter"),
            "loop": (1.5, "meter"),
        },
    )
    monkeypatch.setattr(proofs, "PROOFS", replace(proofs.PROOFS, proofs=(*proofs.PROOFS.proofs, slip)))
    folder, drafts = scratch
    with pytest.raises(Disagreement, match="^proof 99-001: the planner works out 18.0, but 19.0 is printed.$"):
        build(little, folder / "planner.xlsx")
    assert not list(folder.iterdir()) and not list(drafts.iterdir())


def with_formula(planner: Planner, key: str, right: str, wrong: str) -> Planner:
    """The planner with another formula in one of its results."""

    def changed(block, each):
        if f"{block.key}_{each.key}" != key:
            return each
        assert right in each.formula
        return replace(each, formula=each.formula.replace(right, wrong))

    def part(each):
        if not isinstance(each, Block):
            return each
        return replace(
            each,
            groups=tuple(
                replace(group, fields=tuple(changed(each, one) for one in group.fields)) for group in each.groups
            ),
        )

    def sheet(each):
        return replace(
            each,
            chapters=tuple(replace(chapter, holders=tuple(map(part, chapter.holders))) for chapter in each.chapters),
        )

    return replace(planner, sheets=tuple(map(sheet, planner.sheets)))


@pytest.mark.parametrize(
    ("key", "right", "wrong"),
    [
        ("samples_variation", "spread / wpi", "spread * wpi"),
        ("samples_take_up", "plied_length / singles_length", "plied_length * singles_length"),
    ],
)
def test_a_formula_whose_cells_are_blank_in_a_new_planner_is_proven_too(
    key, right, wrong, little, scratch, monkeypatch
):
    folder, drafts = scratch
    settings = little.model_copy(update={"leave_out": all_but("Samples")})
    monkeypatch.setattr(building, "planner", lambda chosen: with_formula(planner(chosen), key, right, wrong))
    layout = building.layout_of(settings)
    assert workbook(layout), "a blank planner shows nothing of it"
    with pytest.raises(Disagreement) as caught:
        build(settings, folder / "planner.xlsx")
    place = layout.placements[key]
    cells = {f"{place.sheet}!{place.cell(row)} ({key})" for row in range(place.rows)}
    assert any(fault.place in cells and ", with " in fault.sentence for fault in caught.value.faults)
    assert not list(folder.iterdir()) and not list(drafts.iterdir())


def test_logs_of_the_fewest_lines_are_proven_too(small, scratch):
    folder, _ = scratch
    lines = dict.fromkeys(Rows.model_fields, 2) | {"guide": 3}
    build(small.model_copy(update={"rows": Rows(**lines)}), folder / "planner.xlsx")


def test_a_planner_of_many_lines_is_tried_too_with_fewer_sets(little, monkeypatch):
    tried = []
    monkeypatch.setattr(
        building, "findings_of", lambda layout, session, name, sets, proofs: tried.append(len(sets)) or []
    )
    few, many = building.layout_of(little), building.layout_of(little.model_copy(update={"rows": Rows(skeins=9000)}))
    building.workbook(few, drawn=building.DRAWN)
    assert tried == [building.DRAWN]
    assert len(building.sets_to_try(many, building.DRAWN)) == 1


def test_lines_that_show_nothing_are_worked_out_no_further_and_the_file_is_the_same(little, monkeypatch):
    layout = building.layout_of(little.model_copy(update={"rows": Rows(skeins=building.MOST_LINES + 60)}))
    worked_out = []
    monkeypatch.setattr(
        building,
        "read",
        lambda session, formulas: worked_out.append(sum(each.rows for each in formulas)) or read(session, formulas),
    )
    short = workbook(layout)
    monkeypatch.setattr(building, "MOST_LINES", layout.placements["skeins_name"].rows)
    assert workbook(layout) == short
    assert worked_out[0] < layout.formula_cells - 1_000 and worked_out[1] == layout.formula_cells


def test_of_the_usual_planner_every_line_is_tried(little):
    usual = building.layout_of(Settings())
    blank = {
        f"skeins_{each.key}": (None,) * usual.planner.blocks["skeins"].rows
        for each in usual.planner.blocks["skeins"].results
    }
    assert not building.has_longer_logs(usual) and building.first_lines(usual, blank) is usual
    assert building.has_longer_logs(
        building.layout_of(little.model_copy(update={"rows": Rows(skeins=building.MOST_LINES + 1)}))
    )


def test_what_stands_in_the_last_line_is_worked_out(little, tmp_path, monkeypatch):
    monkeypatch.setattr(building, "MOST_LINES", 5)
    layout = building.layout_of(little.model_copy(update={"rows": Rows(skeins=9)}))
    records = [{}] * 8 + [{"name": "Last", "reel": "Clock reel", "wraps": 100.0, "washed_loop": 72.0, "gross": 4.0}]
    entries = entries_with(layout.planner, {"skeins": records})
    path = tmp_path / "planner.xlsx"
    path.write_bytes(workbook(layout, entries))
    place = layout.placements["skeins_length_yd"]
    # 100 turns of 72 in are 200 yd. What the file stores is what the engine worked out.
    assert openpyxl.load_workbook(path, data_only=True)[place.sheet][place.cell(8)].value == pytest.approx(200.0)


def test_an_older_file_stays_as_it_was(little, scratch, wrong_reference):
    folder, drafts = scratch
    (folder / "planner.xlsx").write_bytes(b"older")
    with pytest.raises(Disagreement):
        build(little, folder / "planner.xlsx")
    assert (folder / "planner.xlsx").read_bytes() == b"older"
    assert [each.name for each in folder.iterdir()] == ["planner.xlsx"] and not list(drafts.iterdir())


def test_an_older_file_is_replaced(little, scratch):
    folder, _ = scratch
    (folder / "planner.xlsx").write_bytes(b"older")
    layout = build(little, folder / "planner.xlsx")
    assert (folder / "planner.xlsx").read_bytes() == workbook(layout)


def test_a_crash_while_building_leaves_nothing(little, scratch, monkeypatch):
    folder, drafts = scratch

    def crash(*_):
        raise RuntimeError("out of power")

    monkeypatch.setattr(building, "expected_of_proofs", crash)
    with pytest.raises(RuntimeError):
        build(little, folder / "planner.xlsx")
    assert not list(folder.iterdir()) and not list(drafts.iterdir())


def test_a_crash_while_saving_leaves_the_older_file(tmp_path, monkeypatch):
    target = tmp_path / "planner.xlsx"
    target.write_bytes(b"older")

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(FileError, match="planner.xlsx: this file cannot be written: No space left on device"):
        save(target, b"newer")
    assert target.read_bytes() == b"older" and [each.name for each in tmp_path.iterdir()] == ["planner.xlsx"]


@pytest.mark.parametrize("where", ["missing/planner.xlsx", "taken"])
def test_a_place_that_cannot_be_written_to(tmp_path, where):
    (tmp_path / "taken").mkdir()
    with pytest.raises(FileError, match="this file cannot be written: ") as caught:
        save(tmp_path / where, b"newer")
    assert caught.value.exit_code == 2
    assert [each.name for each in tmp_path.iterdir()] == ["taken"] and not list((tmp_path / "taken").iterdir())


def test_at_most_twenty_disagreements_are_told(little, monkeypatch):
    right = building.expected_of_proofs
    monkeypatch.setattr(
        building,
        "expected_of_proofs",
        lambda planner: {key: ("wrong",) * len(each) for key, each in right(planner).items()},
    )
    with pytest.raises(Disagreement) as caught:
        workbook(layout_of(little))
    assert len(caught.value.faults) == 20


def test_a_planner_with_entries_shows_their_results(little_layout, tmp_path):
    entries = with_records(
        little_layout.planner,
        starting_entries(little_layout.planner),
        "skeins",
        [{"name": "First", "reel": "Clock reel", "wraps": 100.0, "washed_loop": 72.0, "gross": 4.0}],
    )
    path = tmp_path / "planner.xlsx"
    path.write_bytes(workbook(little_layout, entries))
    with engine("formualizer").open(path) as session:
        shown = read(session, little_layout.formulas)
    # 100 turns of 72 in are 200 yd, and did not shrink; 200 yd in 4 oz are 800 yd/lb.
    assert shown["skeins_length_yd"][0] == pytest.approx(200.0)
    assert shown["skeins_grist_yd_lb"][0] == pytest.approx(800.0)
