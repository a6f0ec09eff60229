"""`fields`: the planner described for programs that are not ours."""

import io
import json
from contextlib import redirect_stdout
from importlib import import_module

import openpyxl
import pint
import pytest

from workbookgen import cli

KEYS = {"key", "sheet", "range", "kind", "unit", "label", "domain", "reference", "sources"}
DOMAIN_KINDS = {"number", "choice", "name", "note", "date"}


@pytest.fixture(scope="module")
def book(planner):
    return openpyxl.load_workbook(planner)


@pytest.fixture(scope="module")
def listed(planner):
    """What the command prints for programs."""
    printed = io.StringIO()
    with redirect_stdout(printed):
        cli.main(["fields", str(planner), "--json"])
    return json.loads(printed.getvalue())


def test_every_record_has_the_keys(listed):
    assert len(listed) > 150 and all(set(each) == KEYS for each in listed)


def test_no_key_twice_and_all_in_small_words(listed):
    keys = [each["key"] for each in listed]
    assert len(set(keys)) == len(keys)
    assert all(key.replace("_", "").isalnum() and key == key.lower() and "_" in key for key in keys)


def test_keys_are_defined_names_of_the_whole_workbook(listed, book):
    assert {each["key"] for each in listed} <= set(book.defined_names)
    assert all(not sheet.defined_names.keys() & {each["key"] for each in listed} for sheet in book)


def test_a_range_is_where_the_name_points(listed, book):
    for each in listed:
        assert each["range"] == book.defined_names[each["key"]].attr_text


def test_ranges_resolve(listed, book):
    """On the sheet that is named, inputs unlocked and without formulas, results the other way about."""
    for each in listed:
        ((sheet, area),) = book.defined_names[each["key"]].destinations
        assert sheet == each["sheet"]
        cells = book[sheet][area.replace("$", "")]
        for cell in [cells] if not isinstance(cells, tuple) else [cell for row in cells for cell in row]:
            is_formula, is_locked = cell.data_type == "f", cell.protection.locked
            assert (is_formula, is_locked) == ((False, False) if each["kind"] == "input" else (True, True)), each["key"]


def test_every_formula_cell_lies_in_one_range(listed, book):
    covered = set()
    for each in listed:
        ((sheet, area),) = book.defined_names[each["key"]].destinations
        cells = book[sheet][area.replace("$", "")]
        covered |= {
            (sheet, cell.coordinate) for row in (cells if isinstance(cells, tuple) else [[cells]]) for cell in row
        }
    formulas = {
        (s.title, cell.coordinate) for s in book for row in s.iter_rows() for cell in row if cell.data_type == "f"
    }
    assert formulas <= covered


def test_log_columns_and_card_cells(listed):
    ranges = {each["key"]: each["range"] for each in listed}
    column, cell = ranges["skeins_wraps"], ranges["counts_number"]
    first, last = column.split("!")[1].split(":")
    assert column.startswith("Skeins!$") and int(last.split("$")[2]) - int(first.split("$")[2]) == 2  # three lines
    assert cell.startswith("Twist!$") and ":" not in cell


def test_units_are_read_by_any_registry(listed):
    registry = pint.UnitRegistry()  # a plain one, without our count systems
    units = {each["key"]: each["unit"] for each in listed}
    one = {key: registry.Quantity(unit) for key, unit in units.items() if unit}
    assert one["skeins_gross"].check("[mass]") and one["skeins_finished_yd"].check("[length]")
    # 560 yd to the hank of worsted, ASTM D2260 (read): a pound of 1s is 560 yd.
    hank = (one["skeins_worsted"] * registry.Quantity(1.0, "pound")).to("yard")
    assert hank.magnitude == pytest.approx(560, rel=1e-12)


def test_every_number_that_is_typed_has_a_unit(listed):
    typed = [each for each in listed if each["kind"] == "input" and each["domain"]["kind"] == "number"]
    assert [each["key"] for each in typed if each["unit"] is None] == []
    units = {each["key"]: each["unit"] for each in typed}
    assert units["skeins_wraps"] == units["skeins_part_wrap"] == "dimensionless"


def test_a_text_has_no_unit(listed):
    units = {each["key"]: each["unit"] for each in listed}
    assert units["skeins_name"] is units["skeins_weight_class"] is units["skeins_message"] is None


def test_references_can_be_imported(listed):
    for each in listed:
        assert (each["reference"] is None) == (each["kind"] == "input"), each["key"]
        if each["reference"]:
            module, _, name = each["reference"].rpartition(".")
            assert callable(getattr(import_module(module), name))


def test_results_of_the_trade_name_their_sources(listed):
    trade = [each for each in listed if (each["reference"] or "").startswith("workbookgen.reference.")]
    assert len(trade) > 80 and all(each["sources"] and all(each["sources"]) for each in trade)


def test_kinds_and_domains(listed):
    assert {each["kind"] for each in listed} == {"input", "result"}
    for each in listed:
        if each["kind"] == "result":
            assert each["domain"] is None
        else:
            assert each["domain"]["kind"] in DOMAIN_KINDS and {"needed", "blank_means", "default"} <= set(
                each["domain"]
            )


def test_some_domains_in_full(listed):
    domains = {each["key"]: each["domain"] for each in listed if each["kind"] == "input"}
    assert {
        "kind": "number",
        "minimum": 0,
        "above": None,
        "maximum": 100_000,
        "below": None,
        "needed": True,
        "blank_means": None,
        "default": None,
    }.items() <= domains["skeins_wraps"].items()
    assert domains["projects_margin"]["blank_means"] == 0.1
    # Names that people type are where "of" says; a short list of the planner's own is given in full.
    assert domains["skeins_reel"] | {"of": "reels_listed", "choices": None} == domains["skeins_reel"]
    assert domains["fiber_way"] | {"of": "ways_name", "choices": ["carding", "combing"]} == domains["fiber_way"]
    assert domains["fiber_own_skirting"]["below"] == 1


def test_a_program_can_choose_what_every_list_offers(listed, book):
    for each in listed:
        if each["domain"] and each["domain"]["kind"] == "choice" and each["domain"]["choices"]:
            sheet, area = next(book.defined_names[each["domain"]["of"]].destinations)
            assert [cell.value for (cell,) in book[sheet][area]] == each["domain"]["choices"], each["key"]


def test_every_field_is_called_something(listed):
    assert [each["key"] for each in listed if not each["label"]] == []
    labels = {each["key"]: each["label"] for each in listed}
    assert labels["skeins_mark"] == "Mark" and labels["skeins_line_of_reel"] == "Line of reel"  # under no heading
    assert labels["skeins_wraps"] == "Wraps"


def test_choices_point_to_fields_that_are_there(listed, book):
    wanted = {each["domain"]["of"] for each in listed if each["domain"] and each["domain"]["kind"] == "choice"}
    assert wanted and wanted <= set(book.defined_names)


def test_for_people(run, planner, listed):
    code, out, err = run("fields", planner)
    assert (code, err) == (0, "")
    lines = out.splitlines()
    assert [line.split()[0] for line in lines] == [each["key"] for each in listed]
    (wraps,) = [line for line in lines if line.startswith("skeins_wraps ")]
    assert "Skeins!$" in wraps and " input " in wraps and wraps.endswith("Wraps")
