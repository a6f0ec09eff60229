"""Every question of the planner, and every rule about what is wrong or missing, said by the library and by the engines.

A usual range is a rule, too: one question for each field that has one.

Drawn entries come to two thirds of them: a swatch that is too light for its scale, or a hand that drifts, is seldom
drawn. So `slips.csv` has planners that differ from the demo by slips like those people make, a line for each cell, and
together they break every rule there is. A rule that nothing breaks here is named: give it a line.
"""

import csv
import sys
from pathlib import Path

import pytest

from long_run import some
from workbookgen import settings
from workbookgen.book.write import write
from workbookgen.build import layout_of
from workbookgen.checking.expected import expected_of_keys, expected_of_proofs
from workbookgen.checking.trial import findings_of
from workbookgen.engines import engine
from workbookgen.language.automatic import MESSAGE
from workbookgen.language.sentences import unusual

sys.path.insert(0, str(Path(__file__).parents[2] / "demo"))
from make import FOLDER, entries  # noqa: E402

SLIPS = tuple(csv.DictReader(Path(__file__).with_name("slips.csv").read_text(encoding="utf-8").splitlines()))


def _typed(text: str) -> float | str | None:
    try:
        return float(text)
    except ValueError:
        return text or None


@pytest.fixture(scope="module")
def layout():
    return layout_of(settings.load(FOLDER / "settings.toml"))


@pytest.fixture(scope="module")
def demo():
    return entries(settings.load(FOLDER / "settings.toml"))


@pytest.fixture(scope="module")
def planners(demo):
    """The entries of the demo, and those of it with the slips of each planner."""
    slipped = {"": dict(demo)} | {line["planner"]: dict(demo) for line in SLIPS}
    for line in SLIPS:
        planner, key, row = slipped[line["planner"]], line["field"], int(line["line"]) - 1
        column = planner[key]
        assert column[row] != _typed(line["typed"]), f"planner {line['planner']}: {key} in line {row + 1} is no change"
        planner[key] = (*column[:row], _typed(line["typed"]), *column[row + 1 :])
    return slipped


@pytest.fixture(scope="module")
def file(layout, demo, tmp_path_factory):
    path = tmp_path_factory.mktemp("slips") / "demo.xlsx"
    path.write_bytes(write(layout, demo, {}))
    return path


def of_a_block(block, system):
    return [rule.sentence for rule in block.rules] + [unusual(each, system) for each in block.ranged]


def test_each_rule_is_broken_in_some_planner(layout, planners):
    planner = layout.planner
    blocks = [block for block in planner.blocks.values() if block.inputs]
    keys = [f"{block.key}_{MESSAGE.key}" for block in blocks]
    said = {
        (key, sentence)
        for answers in expected_of_keys(planner, list(planners.values()), keys)
        for key in keys
        for sentence in answers[key]
    }
    rules = [
        (f"{block.key}_{MESSAGE.key}", sentence) for block in blocks for sentence in of_a_block(block, planner.system)
    ]
    assert len(rules) > 250
    assert [rule for rule in rules if rule not in said] == [], "add a slip that breaks it to slips.csv"


@pytest.mark.parametrize("name", ["formualizer", "ironcalc"])
def test_the_engines_say_the_same(name, layout, planners, file):
    _agree(name, layout, list(planners.values()), file)


@pytest.mark.programs
@pytest.mark.parametrize("name", ["libreoffice", "gnumeric"])
def test_the_programs_say_the_same(name, layout, planners, file):
    _agree(name, layout, some(planners.values(), 6 if name == "libreoffice" else 2), file)


def _agree(name, layout, sets, file):
    proofs = expected_of_proofs(layout.planner)
    with engine(name).open(file) as session:
        assert [str(each) for each in findings_of(layout, session, name, sets, proofs)[:10]] == []
