"""The sheet Proofs as people get it: every example agrees, and a wrong answer does not.

The planner is built whole, in each unit system, and the programs that people really use
compute it; the verdicts are read off the sheet.
"""

from functools import cache

import pytest

from long_run import dealt
from planners import rows_of
from workbookgen.book.layout import ProofColumn
from workbookgen.build import layout_of, workbook
from workbookgen.engines import ENGINES, Area, engine
from workbookgen.settings import Settings
from workbookgen.sheets.proofs import PROOFS, SHEET

PROGRAMS = ("libreoffice", "gnumeric")
UNITS = ("us", "us-grams", "metric")
# The engines of Python open all three planners at each push, the programs one each; in a long run all.
TRIED = [(units, name) for units in UNITS for name in ENGINES if name not in PROGRAMS] + dealt(PROGRAMS, UNITS)
SMALL = rows_of(2, guide=40)  # the proofs do not look at the logs


@pytest.fixture(scope="module")
def built(tmp_path_factory):
    """The planner of a unit system, and its layout."""
    folder = tmp_path_factory.mktemp("proofs")

    @cache
    def of(units):
        layout = layout_of(Settings(units=units, rows=SMALL))
        path = folder / f"{units}.xlsx"
        path.write_bytes(workbook(layout))
        return path, layout

    return of


@pytest.fixture(
    scope="module",
    params=[
        pytest.param(each, id="-".join(each), marks=pytest.mark.programs if each[1] in PROGRAMS else ())
        for each in TRIED
    ],
)
def opened(request, built):
    """The planner of a unit system, open in an engine; whoever types into it puts back what was there."""
    units, name = request.param
    path, layout = built(units)
    with engine(name).open(path) as session:
        yield session, layout


def column(layout, which: int) -> Area:
    top = layout.placements["proofs_verdict"].row
    return Area(SHEET, top, which, PROOFS.rows)


def verdicts(session, layout) -> dict[str, str]:
    place = layout.placements["proofs_verdict"]
    rows = session.read(column(layout, place.column))
    return {proof.number: said for proof, [said] in zip(PROOFS.proofs, rows, strict=True)}


def test_every_example_agrees(opened):
    session, layout = opened
    assert verdicts(session, layout) == {proof.number: "agrees" for proof in PROOFS.proofs}
    trust = layout.placements["start_trust"]
    assert session.read(Area(trust.sheet, trust.row, trust.column)) == [
        ["This program computes the planner correctly."]
    ]


def test_a_wrong_printed_answer_differs(opened):
    session, layout = opened
    printed = column(layout, ProofColumn.PRINTED)
    right = session.read(printed)
    wrong = [
        [proof.printed + " not" if isinstance(proof.printed, str) else proof.printed * (1 + 3 * proof.tolerance + 1e-9)]
        for proof in PROOFS.proofs
    ]
    session.set(printed, wrong)
    session.evaluate()
    assert verdicts(session, layout) == {proof.number: "differs" for proof in PROOFS.proofs}
    session.set(printed, right)


def test_the_examples_are_live(opened):
    # Nothing given, nothing computed: the sheet holds formulas, not answers. Only no wraps at all are jumbo too.
    session, layout = opened
    blank = [[None]] * PROOFS.rows
    areas = [column(layout, ProofColumn.VALUES + place) for place in range(PROOFS.most_given)]
    given = [session.read(area) for area in areas]
    for area in areas:
        session.set(area, blank)
    session.evaluate()
    assert {number for number, said in verdicts(session, layout).items() if said == "agrees"} == {"09-015"}
    for area, values in zip(areas, given, strict=True):
        session.set(area, values)
