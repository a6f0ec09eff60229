"""A small planner: eight sheets that stand alone, and a way to the whole one for all that was typed."""

import re
from typing import get_args

import pytest

from entries import entries_with
from long_run import drawn
from planners import rows_of
from workbookgen.build import layout_of, workbook
from workbookgen.carry.carry import carry
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.expected import expected_values
from workbookgen.filled.planner import read_filled
from workbookgen.language.fields import Input
from workbookgen.language.parts import Block
from workbookgen.language.views import Prose
from workbookgen.settings import IN_SMALL, Leavable, Settings, load, templates
from workbookgen.sheets.planner import planner

SHEETS = ["Desk", "Measure", "Project", "Skeins", "Reels", "Fiber", "Projects", "Reference"]
NAMED = re.compile(r"\bsheets? ([A-Z]\w+(?: \w+)?)(?: (?:and|or) ([A-Z]\w+))?")
TYPED = {
    "reels": [{"name": "Clock reel", "rated": 72.0}, {"name": "Spare", "cord": 600.0, "turns": 8.25}],
    "fiber": [{"name": "Clover", "state": "raw fleece", "weight": 104.0, "grist": 850.0, "own_skirting": 0.15, "note": "Gray."}],
    "skeins": [
        {"name": "First", "reel": "Clock reel", "wraps": 104.0, "gross": 4.02, "tare": 0.12, "lot": "Clover"},
        {"name": "Second", "reel": "Spare", "wraps": 142.0, "part_wrap": 0.5, "gross": 3.74, "washed_loop": 51.3, "counted_wpi": 11.0},
    ],
    "projects": [{"name": "Hat", "wanted": 200.0, "margin": 0.1, "grist": 850.0, "lot_1": "Clover"}],
}
CARDS = {"compare_first": ("First",), "compare_second": ("Second",), "project_name": ("Hat",), "doubts_certainty": (0.8,)}


@pytest.fixture(scope="module")
def small():
    return planner(Settings(size="small"))


def test_the_tabs_are_few(small):
    assert [sheet.name for sheet in small.sheets] == SHEETS
    whole = [sheet.name for sheet in planner(Settings()).sheets]
    assert len(whole) <= 16 and set(SHEETS) < set(whole)


def test_what_is_left_out_is_left_out_of_a_small_one_too():
    chapters = {chapter.name for sheet in planner(Settings(size="small", leave_out=("Compare",))).sheets for chapter in sheet.chapters}
    assert "Compare" not in chapters and not chapters & (set(get_args(Leavable)) - set(IN_SMALL))


def texts(described):
    for sheet in described.sheets:
        yield sheet.about
        for holder in sheet.holders:
            yield getattr(holder, "about", "")
            if isinstance(holder, Block):
                yield from (each.help if isinstance(each, Input) else each.note for each in holder.fields)
                yield from (rule.sentence for rule in holder.rules)
        for section in sheet.sections:
            yield from (section.title, section.aside)
            if isinstance(section, Prose) and not section.is_caution:
                yield from section.sentences


def test_no_text_sends_one_to_a_sheet_that_is_not_there(small):
    named = {name for text in texts(small) for found in NAMED.findall(text) for name in found if name}
    there = set(SHEETS) | {chapter.name for sheet in small.sheets for chapter in sheet.chapters}
    assert {name.split()[0] for name in named} <= there
    whole = {name.split()[0] for text in texts(planner(Settings())) for found in NAMED.findall(text) for name in found if name}
    assert whole - there, "a whole planner names others, so they would be found"


def test_no_text_speaks_of_what_a_small_planner_does_not_have(small):
    """Neither samples nor designs.

    The labels of what stays blank, and the uncertainties of samples, are aside; so is what is explained on Reference.
    """
    for sheet in small.sheets[:-1]:
        for holder in sheet.holders:
            for each in holder.fields if isinstance(holder, Block) else ():
                said = each.help if isinstance(each, Input) else each.note
                assert not re.search(r"\b(samples?|designs?)\b", said) or "sample" in each.label, (sheet.name, each.label, said)


def test_every_needed_input_is_read(small):
    read = {small.meaning(block, word).key for block in small.blocks.values() for result in block.results for word in result.words}
    needed = {f"{block.key}_{each.key}" for block in small.blocks.values() for each in block.inputs if each.needed}
    assert needed <= read and len(needed) > 5


def test_a_weighed_skein_has_its_class_though_there_is_no_k_to_choose(small):
    """100 wraps of 2 yd, less 5%, at 900 yd/lb: 30 is the root of it, and 0.35 times that are 10.5 wraps in an inch."""
    skein = {"name": "First", "reel": "Clock reel", "wraps": 100.0, "gross": 190 / 900 * 16}
    entries = entries_with(small, {"reels": TYPED["reels"], "skeins": [skein, skein | {"name": "Second", "counted_wpi": 30.0}]}) | {"measure_skein": ("First",)}
    values = expected_values(small, entries)
    assert values["skeins_wpi"][0] == values["measure_wpi"][0] == pytest.approx(10.5)
    assert values["skeins_weight_class"][0] == values["measure_weight_class"][0] == "4 medium"
    assert values["skeins_message"][1].startswith("Is it right? Wraps counted: far from what its length and weight suggest.")


def test_who_lacks_a_grist_is_not_sent_for_a_sample(small):
    clover, hat = {"name": "Clover", "state": "prepared fiber", "weight": 8.0}, {"name": "Hat", "wanted": 200.0, "lot_1": "Clover"}
    entries = entries_with(small, {"fiber": [clover], "projects": [hat]})
    said = "No answer yet: how far its fiber goes is not known; type Grist planned, behind the + above the columns."
    assert expected_values(small, entries)["projects_message"][0] == said


@pytest.mark.parametrize("units", ["us", "us-grams", "metric"])
def test_a_small_template_checks(units, tmp_path):
    layout = layout_of(load(templates() / f"{units}-small.toml"))
    path = tmp_path / "planner.xlsx"
    path.write_bytes(workbook(layout))
    report = check(FileToCheck(path, layout), scenarios=5)
    assert report.findings == []


@pytest.mark.programs
@pytest.mark.parametrize("program", ["libreoffice", "gnumeric"])
def test_it_is_right_in_the_programs_too(program, tmp_path):
    """What is left out is one blank cell to formulas that can do without it, which no program takes for an error."""
    layout = layout_of(Settings(size="small", fibers="", rows=rows_of(4)))
    entries = entries_with(layout.planner, TYPED) | CARDS
    path = tmp_path / "planner.xlsx"
    path.write_bytes(workbook(layout, entries))
    report = check(FileToCheck(path, layout), [program], scenarios=drawn(2, 20))
    assert [str(each) for each in report.findings[:5]] == []


def test_what_was_typed_into_a_small_planner_is_carried_to_a_whole_one(tmp_path):
    rows = rows_of(4, guide=60)
    settings = Settings(size="small", rows=rows)
    layout = layout_of(settings)
    entries = entries_with(layout.planner, TYPED) | CARDS
    path, whole = tmp_path / "small.xlsx", tmp_path / "whole.xlsx"
    path.write_bytes(workbook(layout, entries))
    outcome = carry(path, whole, Settings(rows=rows))
    assert outcome.leftovers == ()
    renewed = read_filled(whole)
    assert renewed.settings.size == "whole" and len(renewed.entries) > len(entries)
    assert renewed.entries["guide_name"][0], "the guide of a new planner comes with it"
    assert {key: renewed.entries[key] for key in entries} == {key: tuple(column) for key, column in entries.items()}
