"""Every question of the planner, and every rule about what is wrong or missing, said by the library and by the engines.

A usual range is a rule, too: one question for each field that has one.

Drawn entries come to two thirds of them: a swatch that is too light for its scale, or a hand that drifts, is seldom
drawn. So `slips.csv` has planners that differ from the demo by slips like those people make, a line for each cell, and
together they break every rule there is. A rule that nothing breaks here is named: give it a line.
"""

import csv
from pathlib import Path

import pytest

from demo_planner import demo_entries, demo_settings
from long_run import some
from planners import laid_out
from workbookgen.book.write import write
from workbookgen.checking.expected import expected_of_keys, expected_of_proofs, expected_of_scenarios
from workbookgen.checking.trial import EngineTrial
from workbookgen.engines import engine
from workbookgen.language.automatic import MESSAGE
from workbookgen.language.sentences import unusual

SLIPS = tuple(csv.DictReader(Path(__file__).with_name("slips.csv").read_text(encoding="utf-8").splitlines()))


def _typed(text: str) -> float | str | None:
    try:
        return float(text)
    except ValueError:
        return text or None


@pytest.fixture(scope="module")
def layout():
    return laid_out(demo_settings())


@pytest.fixture(scope="module")
def planners():
    """The entries of the demo, and those of it with the slips of each planner."""
    slipped = {"": dict(demo_entries())} | {line["planner"]: dict(demo_entries()) for line in SLIPS}
    for line in SLIPS:
        planner, key, row = slipped[line["planner"]], line["field"], int(line["line"]) - 1
        column = planner[key]
        assert column[row] != _typed(line["typed"]), f"planner {line['planner']}: {key} in line {row + 1} is no change"
        planner[key] = (*column[:row], _typed(line["typed"]), *column[row + 1 :])
    return slipped


@pytest.fixture(scope="module")
def wanted(layout, planners):
    """What each of the planners should show, for all engines."""
    proofs = expected_of_proofs(layout.planner)
    return [proofs | each for each in expected_of_scenarios(layout.planner, list(planners.values()), proofs)]


@pytest.fixture(scope="module")
def file(layout, tmp_path_factory):
    path = tmp_path_factory.mktemp("slips") / "demo.xlsx"
    path.write_bytes(write(layout, demo_entries(), {}))
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


def test_the_embedded_engine_says_the_same(layout, planners, wanted, file):
    _agree("formualizer", layout, zip(planners.values(), wanted, strict=True), file)


AT_A_PUSH = {"ironcalc": 16, "libreoffice": 6, "gnumeric": 2}  # planners, as their pace allows


@pytest.mark.parametrize(
    "name", ["ironcalc", *(pytest.param(name, marks=pytest.mark.programs) for name in ("libreoffice", "gnumeric"))]
)
def test_the_others_say_the_same(name, layout, planners, wanted, file):
    """At a push some of it, in a long run all."""
    _agree(name, layout, some(zip(planners.values(), wanted, strict=True), AT_A_PUSH[name]), file)


def _agree(name, layout, sets, file):
    with engine(name).open(file) as session:
        trial = EngineTrial(layout, session, name)
        for inputs, expected in sets:
            trial.run(inputs, expected)
    assert trial.outcome.comparisons > 0
    assert [str(each) for each in trial.outcome.findings[:10]] == []
