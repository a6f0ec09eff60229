"""HyperFormula, an engine for the web, as a further witness: the default planner without a finding, and
where it differs elsewhere.

Gnumeric, LibreOffice, IronCalc and formualizer are held to account elsewhere; HyperFormula is no engine
that a person can choose, and stands here alone. Each difference is pinned with both answers.
"""

import json
import math
import re
import subprocess

import pytest

from chapters import all_but
from checking.mutants import edited, mutants_of
from long_run import drawn
from workbookgen.build import layout_of, workbook
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.compare import Finding, agree
from workbookgen.engines import ENGINES, Area, engine
from workbookgen.errors import MissingEngine, PlannerError
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.language.profile import FUNCTIONS
from workbookgen.planner_file import read_planner

from . import hyperformula
from .answers import ALIKE, DIFFERENT, asked, write
from .hyperformula import HERE, HyperFormula

pytestmark = [pytest.mark.programs, pytest.mark.web]

SCENARIOS = drawn(12, 20)  # each takes it half a second to a whole one


@pytest.fixture(scope="module")
def questions(tmp_path_factory):
    path = tmp_path_factory.mktemp("answers") / "questions.xlsx"
    write(path)
    return path


@pytest.fixture(scope="module")
def answers(questions):
    return asked(HyperFormula(), questions)


@pytest.mark.parametrize("each", DIFFERENT, ids=lambda each: each.formula)
def test_what_it_answers_otherwise(answers, each):
    got = answers[each.formula]
    assert not agree(each.others, got), (
        f"HyperFormula now computes ={each.formula} as the others do: take it off the list of differences."
    )
    assert agree(each.hyperformula, got), (
        f"HyperFormula now answers ={each.formula} in a new way: look whether a planner could meet it."
    )


def test_what_it_answers_alike(answers):
    assert {formula: answers[formula] for formula, answer in ALIKE.items() if not agree(answer, answers[formula])} == {}


def test_every_function_of_the_profile_is_asked_for():
    called = set(re.findall(r"([A-Z][A-Z0-9]*)\(", " ".join(ALIKE)))
    assert called == FUNCTIONS


@pytest.mark.parametrize("name", ENGINES)
def test_the_others_agree_on_every_answer(questions, name):
    wanted = ALIKE | {each.formula: each.others for each in DIFFERENT}
    got = asked(engine(name), questions)
    # A second look with ==, since LibreOffice hands over true and false as numbers.
    assert {
        formula: got[formula]
        for formula, answer in wanted.items()
        if not agree(answer, got[formula]) and answer != got[formula]
    } == {}


def answered(*formulas: str) -> list:
    """What HyperFormula answers by itself."""
    asked = 'import {HyperFormula} from "hyperformula"; const b = HyperFormula.buildFromArray([%s], {licenseKey: "gpl-v3", smartRounding: false});'
    script = asked % json.dumps(formulas) + "console.log(JSON.stringify(b.getSheetValues(0)[0]))"
    return json.loads(
        subprocess.run(
            ["node", "--input-type=module", "-e", script], cwd=HERE, capture_output=True, text=True, check=True
        ).stdout
    )


def test_what_it_does_with_normsdist_by_itself():
    """Else the function that witness.mjs hands on would be handed on for nothing."""
    one, two = answered("=NORMSDIST(1)", "=NORM.S.DIST(1,TRUE())")
    assert one["value"] == "#N/A", "HyperFormula now has NORMSDIST with one argument: take ours out of witness.mjs."
    assert two == pytest.approx(0.8413447460685429, rel=1e-9)  # table of the normal distribution at 1, from memory


BESIDE_ZERO = 1e-9


def test_how_far_the_tail_of_its_normal_distribution_is_off():
    """So much more than rounding that what is left of two such terms, a length beside zero, is another one.

    A version that mends it ends the exception.
    """
    [each] = answered("=NORM.S.DIST(-5.6,TRUE())")
    assert each != pytest.approx(math.erfc(5.6 / math.sqrt(2)) / 2, rel=1e-10, abs=0)


def is_beside_zero(finding: Finding) -> bool:
    return (
        isinstance(finding.got, float)
        and isinstance(finding.expected, float)
        and abs(finding.got - finding.expected) < BESIDE_ZERO
    )


def test_the_default_planner(blank, layout, record_property):
    report = check(
        FileToCheck(blank, layout, formulas=read_planner(blank).formulas), [HyperFormula()], scenarios=SCENARIOS
    )
    [each] = report.engines
    findings = [str(finding) for finding in report.findings if not is_beside_zero(finding)]
    record_property(
        "compared",
        [each.name, each.version, report.scenarios, each.comparisons, len(findings), each.worst_relative_difference],
    )
    assert findings[:10] == [] and len(report.findings) < 10
    assert report.formula_cells == report.formula_cells_checked
    # A tenth are messages and marks, blank in a line that is all right.
    assert report.formula_cells_seen_filled > 0.85 * report.formula_cells


@pytest.fixture(scope="module")
def sail(small, tmp_path_factory):
    """A planner's path and layout, with a cloth that is wider than any: its seven million ends come out at
    7000000.000000001."""
    layout = layout_of(small.model_copy(update={"leave_out": all_but("Weaving")}))
    entries = with_records(
        layout.planner, starting_entries(layout.planner), "projects", [{"name": "Sail", "grist": 900.0}]
    )
    entries = with_records(
        layout.planner,
        entries,
        "weavings",
        [
            {
                "project": "Sail",
                "weave": "plain",
                "grist": 900.0,
                "width": 1_000_000.0,
                "length": 1000.0,
                "draw_in": 0.0,
                "shrinkage": 0.0,
                "take_up": 0.1,
                "weft_lost": 0.1,
                "own_sett": 7.0,
                "own_picks": 7.0,
            }
        ],
    )
    path = tmp_path_factory.mktemp("sail") / "planner.xlsx"
    path.write_bytes(workbook(layout, entries))
    return path, layout


@pytest.mark.parametrize("each", [HyperFormula(), *map(engine, ENGINES)], ids=lambda each: each.name)
def test_seven_million_ends(sail, each):
    assert check(FileToCheck(*sail), [each], scenarios=0).findings == []


@pytest.mark.parametrize(
    ("kind", "key"),
    [
        ("over for times", "skeins_length_yd"),
        ("the looked-up column beside it", "skeins_loop"),
        ("no guard against blanks", "skeins_length_yd"),
    ],
)
def test_a_changed_formula_is_found(little_file, little_layout, tmp_path, kind, key):
    [mutant] = [each for each in mutants_of(little_layout, kind) if each.placement.key == key]
    path = tmp_path / "mutant.xlsx"
    edited(little_file, path, little_layout, mutant.places)
    assert [
        each
        for each in check(FileToCheck(path, little_layout), [HyperFormula()], scenarios=3).findings
        if each.key == key
    ]


def test_it_is_the_version_that_the_lock_names():
    lock = json.loads((HERE / "package-lock.json").read_text())
    wanted = json.loads((HERE / "package.json").read_text())["dependencies"]
    assert (
        HyperFormula().version() == wanted["hyperformula"] == lock["packages"]["node_modules/hyperformula"]["version"]
    )
    assert [name for name, each in lock["packages"].items() if "resolved" in each] == []  # npm asks where it is told to


def test_a_missing_witness_says_how_to_get_it(questions, monkeypatch, tmp_path):
    monkeypatch.setattr(hyperformula, "MODULES", tmp_path)
    with pytest.raises(MissingEngine, match="npm ci --prefix tests/web"):
        HyperFormula().open(questions)
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(MissingEngine, match="nodejs and npm"):
        HyperFormula().version()


def test_one_that_ends_is_a_sentence_and_nothing_stays_behind(questions):
    session = HyperFormula().open(questions)
    process = session._witness._process
    process.kill()
    with pytest.raises(PlannerError, match="HyperFormula ended or did not answer"):
        session.read(Area("Questions", 1, 1))
    session.close()
    assert process.poll() is not None
