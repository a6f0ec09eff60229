"""A result that is another kind of quantity than its reference gives, or a word than it takes, is refused by name."""

import pytest

import described
from workbookgen.build import layout_of
from workbookgen.errors import DescriptionError
from workbookgen.language.dimensions import dimension, in_words, unstated
from workbookgen.language.domains import Name, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter, Log, Sheet
from workbookgen.language.proofs import Proof, ProofTable
from workbookgen.language.quantities import GRIST, HOURS, LENGTH, MASS, PACE, SHARE, SQUARE_GRIST, SQUARE_LENGTH
from workbookgen.language.repeated import repeated
from workbookgen.reference import records
from workbookgen.reference.planning import work
from workbookgen.reference.statistics import joined, readings
from workbookgen.reference.yarn_count import grist
from workbookgen.settings import Settings
from workbookgen.unit_systems import UNIT_SYSTEMS

ANY = Number(above=0, most=1000)
LOG = Log(
    "lots",
    "",
    (
        Group(
            "",
            (
                Input("name", "Lot", Name()),
                Input("weight", "Weight", ANY, MASS),
                Input("long", "Length", ANY, LENGTH),
                repeated("listed", "Listed", "name"),
            ),
        ),
    ),
    rows=3,
)


def planner(*fields) -> None:
    described.planner_of(LOG, Card("card", "", (Group("", fields),)))


def result(formula: str, reference, unit, **uses) -> Result:
    return Result("outcome", "Outcome", formula, reference, unit, uses=uses)


LENGTH_IN, MASS_IN = Input("long", "Length", ANY, LENGTH), Input("net", "Weight", ANY, MASS)
NAME_IN, TEXT_NAMES = Input("lot", "Lot", Name()), "lookup(lots_weight, lots_listed, lot)"
LOOKED_UP = {"name": "lot", "names": "lots_listed", "values": "lots_weight"}
ADDED_UP = {"name": "lot", "names": "lots_listed", "amounts": "lots_weight"}
READ = [Input(f"r_{number}x", "Reading", ANY, LENGTH) for number in range(1, 6)]
READ_USES = {f"reading_{number}": f"r_{number}x" for number in range(1, 6)}
ALL_READ = ", ".join(READ_USES.values())

WRONG = {
    "a mass shown as a length": (
        [NAME_IN, result("sum_where(lots_weight, lots_listed, lot)", records.sum_where, LENGTH, **ADDED_UP)],
        "it is shown as a length, but its reference gives a mass.",
    ),
    "a word of another kind": (
        [LENGTH_IN, MASS_IN, result("net / long", grist, GRIST, length="net", mass="long")],
        "its word net is a mass, but its reference takes a length for length",
    ),
    "a grist shown as a mass": (
        [LENGTH_IN, MASS_IN, result("long / net", grist, MASS, length="long", mass="net")],
        "it is shown as a mass, but its reference gives a grist.",
    ),
    "a looked-up mass shown as a length": (
        [NAME_IN, result(TEXT_NAMES, records.lookup, LENGTH, **LOOKED_UP)],
        "it is shown as a length, but its reference gives a mass.",
    ),
    "a looked-up mass shown as a text": (
        [NAME_IN, result(TEXT_NAMES, records.lookup, None, **LOOKED_UP)],
        "it is shown as a text, but its reference gives a mass.",
    ),
    "a looked-up text shown as a mass": (
        [
            NAME_IN,
            result("lookup(lots_name, lots_listed, lot)", records.lookup, MASS, **LOOKED_UP | {"values": "lots_name"}),
        ],
        "it is shown as a mass, but its reference gives a text.",
    ),
    "a number where a name is looked for": (
        [
            LENGTH_IN,
            result("lookup(lots_weight, lots_listed, long)", records.lookup, MASS, **LOOKED_UP | {"name": "long"}),
        ],
        "its word long is a length, but its reference takes a text for name.",
    ),
    "readings of which one is a mass": (
        [
            READ[0],
            READ[1],
            Input("r_3x", "Reading", ANY, MASS),
            READ[3],
            READ[4],
            result(f"mean({ALL_READ})", readings.mean, LENGTH, **READ_USES),
        ],
        "its word r_3x is a mass, but its reference takes a length for reading_3.",
    ),
    "a mean of lengths shown as a mass": (
        [*READ, result(f"mean({ALL_READ})", readings.mean, MASS, **READ_USES)],
        "it is shown as a mass, but its reference gives a length.",
    ),
    "a number of readings shown as a length": (
        [*READ, result(f"readings({ALL_READ})", readings.count, LENGTH, **READ_USES)],
        "it is shown as a length, but its reference gives a plain number.",
    ),
    "a square that is none": (
        [LENGTH_IN, result("long * long", joined.square_of, LENGTH, value="long")],
        "it is shown as a length, but its reference gives an area.",
    ),
    "an amount at a pace of another kind": (
        [MASS_IN, Input("pace", "Pace", ANY, PACE), result("net / pace", work.hours, HOURS, amount="net")],
        "its word pace is a pace, but its reference takes a mass per time for pace.",
    ),
}
RIGHT = {
    "a total": [NAME_IN, result("sum_where(lots_weight, lots_listed, lot)", records.sum_where, MASS, **ADDED_UP)],
    "a text looked up": [
        NAME_IN,
        result("lookup(lots_name, lots_listed, lot)", records.lookup, None, **LOOKED_UP | {"values": "lots_name"}),
    ],
    "a square": [LENGTH_IN, result("long * long", joined.square_of, SQUARE_LENGTH, value="long")],
    "a square of a grist": [
        Input("grist", "Grist", ANY, GRIST),
        result("grist * grist", joined.square_of, SQUARE_GRIST, value="grist"),
    ],
    "an amount at its pace": [
        LENGTH_IN,
        Input("pace", "Pace", ANY, PACE),
        result("long / pace", work.hours, HOURS, amount="long"),
    ],
    "a variation": [
        Input("squares", "Squares", ANY, SQUARE_LENGTH),
        Input("count", "Number", ANY),
        Input("long", "Mean", ANY, LENGTH),
        result("squares * count / long / long", joined.variation_of_sums, SHARE, mean="long"),
    ],
}


@pytest.mark.parametrize("name", WRONG)
def test_another_kind_is_refused_in_one_sentence_with_the_field_named(name):
    fields, sentence = WRONG[name]
    with pytest.raises(DescriptionError) as refused:
        planner(*fields)
    assert str(refused.value).splitlines()[0].startswith(f"field card_outcome: {sentence.removesuffix('.')}")
    assert len(refused.value.faults) == (2 if name == "a word of another kind" else 1)


@pytest.mark.parametrize("name", RIGHT)
def test_the_right_kind_is_taken(name):
    planner(*RIGHT[name])


@pytest.mark.parametrize("units", UNIT_SYSTEMS)
def test_every_result_of_the_planner_is_of_the_kind_that_its_reference_gives(units):
    planner = layout_of(Settings(units=units)).planner
    results = [result for block in planner.blocks.values() for result in block.results]
    assert len(results) > 300
    assert {each.reference_path: unstated(each.reference) for each in results if unstated(each.reference)} == {}


def test_a_printed_value_of_another_kind_is_refused():
    table = ProofTable(
        "proofs",
        "Proofs",
        (
            proof := Proof(
                "1",
                "Grist",
                "card_outcome",
                {"long": (100.0, "yard"), "net": (100.0, "yard")},
                1.0,
                "yard / pound",
                0.1,
                "A book",
                "read",
            ),
        ),
        Result("verdict", "Verdict", "computed", lambda computed: computed, None),
    )
    card = Card(
        "card", "", (Group("", (LENGTH_IN, MASS_IN, result("long / net", grist, GRIST, length="long", mass="net"))),)
    )
    whole = described.planner_of(LOG, card)
    with pytest.raises(DescriptionError) as refused:
        type(whole)(
            "metric",
            "a4",
            "Tried out",
            (*whole.sheets, Sheet("Proofs", "Proofs", "For tests.", (Chapter("Proofs", (table,), ()),))),
        )
    assert (
        str(refused.value)
        == f"proof {proof.number}: its word net is a length, but its reference takes a mass for mass."
    )


@pytest.mark.parametrize(
    ("name", "word"),
    [
        ("[]", "a plain number"),
        ("yard / pound", "a grist"),
        ("degree_Fahrenheit", "a temperature"),
        ("degree", "a plain number"),
    ],
)
def test_kinds_in_words(name, word):
    assert in_words(dimension(name)) == word
