"""Two projects that choose one lot, in the planner itself. Worked by hand.

A lot of 20 oz of bought yarn at 1,000 yards to the pound is 1,250 yards. Two projects of 750
yards, without margin, each have enough, and together lack 250.
"""

import pytest

from workbookgen.build import layout_of, workbook
from workbookgen.checking.driving import read
from workbookgen.engines import engine
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.settings import Rows, Settings

LAYOUT = layout_of(Settings(fibers="", rows=Rows(**{log: 3 for log in Rows.model_fields})))
LOT = {"name": "Clover", "state": "yarn or thread", "weight": 20.0}
OTHER = {"name": "Moss", "state": "yarn or thread", "weight": 20.0}
SCARF = {"name": "Scarf", "wanted": 750.0, "margin": 0.0, "grist": 1000.0, "lot_1": "Clover"}
SOCKS = SCARF | {"name": "Socks"}
ALONE, SHORT = "enough, 500 yd (457 m) to spare", "enough alone, together short by 250 yd (229 m)"


def told(tmp_path, *projects):
    """What the planner says: the verdicts, and how much of each lot is promised."""
    entries = with_records(LAYOUT.planner, starting_entries(LAYOUT.planner), "fiber", [LOT, OTHER])
    path = tmp_path / "planner.xlsx"
    path.write_bytes(workbook(LAYOUT, with_records(LAYOUT.planner, entries, "projects", list(projects))))
    with engine("formualizer").open(path) as session:
        values = read(session, LAYOUT, LAYOUT.formulas)
    return [words for words in values["projects_verdict"] if words], values["fiber_promised"][:2], values["projects_message"]


def test_one_project_has_the_lot_to_itself(tmp_path):
    verdicts, promised, _ = told(tmp_path, SCARF)
    assert verdicts == [ALONE] and promised == (pytest.approx(0.6), 0)


def test_two_projects_that_each_have_enough_lack_together(tmp_path):
    verdicts, promised, messages = told(tmp_path, SCARF, SOCKS | {"lot_1": "clover"})
    assert verdicts == [SHORT, SHORT] and promised == (pytest.approx(1.2), 0)
    assert not any(messages), "it is no mistake to plan two things"


def test_on_different_lots_they_do_not_meet(tmp_path):
    verdicts, promised, _ = told(tmp_path, SCARF, SOCKS | {"lot_1": "Moss"})
    assert verdicts == [ALONE, ALONE] and promised == (pytest.approx(0.6), pytest.approx(0.6))


def test_a_finished_project_keeps_what_it_used_and_no_more(tmp_path):
    # 4 oz are 250 yards: 1,250 less 250 less 750.
    verdicts, promised, _ = told(tmp_path, SCARF, SOCKS | {"used": 4.0})
    assert verdicts == ["enough, 250 yd (229 m) to spare", "finished"] and promised[0] == pytest.approx(0.8)


def test_what_is_finished_is_asked_for_nothing_more(tmp_path):
    bare = {"name": "Hat", "wanted": 150.0}
    verdicts, _, messages = told(tmp_path, bare, bare | {"name": "Cap", "used": 2.0})
    assert verdicts == ["finished"]
    assert [words for words in messages if words] == ["Still to fill in: Grist planned, or a sample that has one."]


def test_a_project_of_two_lots_draws_on_both(tmp_path):
    # 40 oz for 12 oz: six of each lot, so the scarf's lot has 14 oz, 875 yards, for its 750.
    verdicts, promised, _ = told(tmp_path, SCARF, SOCKS | {"lot_2": "Moss"})
    assert verdicts[0] == "enough, 125 yd (114 m) to spare"
    assert promised == (pytest.approx(0.9), pytest.approx(0.3))
