"""Every published example of the sheet Proofs, computed by the reference library.

The sources stand in the table, beside the values.
"""

import pytest

from workbookgen.filled.planner import described
from workbookgen.language.quantities import unit_named
from workbookgen.reference.calculation import OutOfValidity
from workbookgen.settings import Settings

from .rows import in_unit, quantity

PLANNER = described(Settings())
PROOFS = PLANNER.proofs
each_proof = pytest.mark.parametrize("proof", PROOFS, ids=lambda proof: proof.number)


def computed(proof, **instead):
    """What the reference of the proven result says of the given values, some of them replaced."""
    _, result = PLANNER.by_key[proof.result]
    given = {word: quantity(*value) for word, value in proof.given.items()} | instead
    return result.reference(**{parameter: given[word] for parameter, word in result.arguments.items()}, **result.fixed)


@each_proof
def test_the_library_says_what_print_says(proof):
    answer = in_unit(computed(proof), proof.unit)
    if isinstance(proof.printed, str):
        assert answer == proof.printed
    else:
        assert answer == pytest.approx(proof.printed, rel=proof.tolerance, abs=0)


def numbers_given(proof):
    """The numbers that the answer hangs on: not a zero, a stage, or a figure that another one beats."""
    beaten = {word for word in proof.given if word.startswith("expected_")} | {"stage"}
    beside = {"loop"} if proof.given.get("wraps") == (0.0, "dimensionless") else set()
    return [
        word
        for word, (value, _) in proof.given.items()
        if isinstance(value, float) and value and word not in beaten | beside
    ]


@pytest.mark.parametrize("proof", [proof for proof in PROOFS if proof.unit], ids=lambda proof: proof.number)
def test_a_figure_misread_by_a_tenth_would_show(proof):
    # An example whose tolerance hides such a slip in what is given proves nothing. Downwards, since
    # a packing may not be above 1.
    for word in numbers_given(proof):
        value, unit = proof.given[word]
        try:
            answer = in_unit(computed(proof, **{word: quantity(value * 0.9, unit)}), proof.unit)
        except OutOfValidity:  # half a reading, or less than one length of a strand: it shows at once
            continue
        assert answer != pytest.approx(proof.printed, rel=proof.tolerance, abs=0), word


@each_proof
def test_every_row_is_told_well(proof):
    assert 0 < len(proof.what) <= 70
    assert proof.source.strip()
    assert proof.provenance in {"read", "memory", "practice", "derived"}
    assert 0 <= proof.tolerance <= 0.005
    for name in [proof.unit, *(unit for _, unit in proof.given.values())]:
        assert name == "" or unit_named(name)


def test_no_number_is_used_twice():
    numbers = [proof.number for proof in PROOFS]
    assert sorted(set(numbers)) == sorted(numbers)
