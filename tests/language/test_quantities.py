"""The factors spelled out for formulas against the unit registry, which nobody here wrote."""

import pint
import pytest

from workbookgen.errors import DescriptionError
from workbookgen.language import quantities
from workbookgen.language.quantities import PRINTED_ONLY, Kind, Unit, always, hanks, unit_named
from workbookgen.unit_systems import UNIT_SYSTEMS, UnitSystem
from workbookgen.units import COUNT_UNITS, ureg

KINDS = {name: each for name, each in vars(quantities).items() if isinstance(each, Kind)}
UNITS = tuple(
    dict.fromkeys(
        unit for unit in [*(kind.unit(system) for kind in KINDS.values() for system in UNIT_SYSTEMS), *PRINTED_ONLY]
    )
)


STRANGER = pint.UnitRegistry()


# What formulas reckon in. Volumes come in liters, whatever else a length to the third would be.
COHERENT = {
    "[length]": "meter",
    "[mass]": "gram",
    "[time]": "hour",
    "[temperature]": "degree_Celsius",
    "volume": "liter",
}


def coherent(unit: Unit, value: float) -> float:
    """A shown value in the units that formulas reckon in, by the registry alone."""
    shown = ureg.Quantity(value, unit.pint)
    powers = dict(shown.dimensionality)
    if powers.get("[length]") == 3:
        powers = {"volume": 1} | {name: power for name, power in powers.items() if name != "[length]"}
    target = ureg.dimensionless
    for name, power in powers.items():
        target = target * ureg.Unit(COHERENT[name]) ** power
    return shown.to(target).magnitude


def shown(unit: Unit) -> str:
    return f"{unit.symbol or 'number'} ({unit.pint})"


def test_all_units_are_looked_at():
    assert len(KINDS) > 25 and len(UNITS) > 30
    assert {unit.pint for unit in UNITS} >= set(COUNT_UNITS) | {"yard", "tex", "jute", "grain"}


VALUES = (1.0, 0.0, 37.5, 1234.5)


@pytest.mark.parametrize("unit", UNITS, ids=shown)
def test_the_factor_is_what_the_registry_says(unit):
    zero = coherent(unit, 0.0)
    assert unit.value == pytest.approx(coherent(unit, 1.0) - zero, rel=1e-12)


@pytest.mark.parametrize("unit", UNITS, ids=shown)
def test_a_formula_turns_a_shown_value_into_what_the_registry_says(unit):
    for value in VALUES:
        assert eval(unit.coherent(repr(value))) == pytest.approx(coherent(unit, value), rel=1e-12, abs=1e-300)


@pytest.mark.parametrize("unit", UNITS, ids=shown)
def test_a_formula_turns_it_back(unit):
    for value in VALUES:
        there = repr(coherent(unit, value))
        assert eval(unit.shown(there)) == pytest.approx(value, rel=1e-12, abs=1e-12)
        # A sum is turned back as a whole.
        assert eval(unit.shown(f"{there} + 0.0")) == pytest.approx(value, rel=1e-12, abs=1e-12)


@pytest.mark.parametrize("unit", UNITS, ids=shown)
def test_the_number_is_the_text_worked_out(unit):
    assert unit.value == pytest.approx(eval(unit.factor), rel=1e-15)
    assert set(unit.factor) <= set("0123456789.*/()")


@pytest.mark.parametrize("unit", UNITS, ids=shown)
def test_any_registry_can_read_the_unit(unit):
    # Readers of `fields --json` have a registry of their own, without the counts that this project defines.
    theirs = STRANGER.parse_expression(unit.readable)
    theirs = theirs.to_base_units().magnitude if hasattr(theirs, "to_base_units") else theirs
    assert theirs == pytest.approx(ureg.Quantity(1.0, unit.pint).to_base_units().magnitude, rel=1e-14)


@pytest.mark.parametrize("name", KINDS)
def test_a_kind_is_one_dimension_in_every_system(name):
    dimensions = {ureg.Unit(KINDS[name].unit(system).pint).dimensionality for system in UNIT_SYSTEMS}
    assert len(dimensions) == 1


def test_each_system_shows_its_own_units():
    # DESIGN: us yards and ounces, us-grams yards and grams, metric meters and grams.
    shown_in = {"us": ("yd", "oz"), "us-grams": ("yd", "g"), "metric": ("m", "g")}
    for system, symbols in shown_in.items():
        assert (quantities.LENGTH.unit(system).symbol, quantities.MASS.unit(system).symbol) == symbols


def test_an_unknown_system_is_no_unit():
    with pytest.raises(KeyError):
        quantities.LENGTH.unit("imperial")


@pytest.mark.parametrize("unit", UNITS, ids=shown)
def test_a_unit_is_found_by_its_registry_name(unit):
    assert unit_named(unit.pint).value == unit.value
    assert unit_named(unit.pint).pint == unit.pint


def test_a_number_is_printed_as_a_number_and_not_as_a_percentage():
    # Wraps and shares are both dimensionless; print gives both as plain numbers.
    assert unit_named("dimensionless").symbol == ""


def test_an_unknown_unit_has_no_name():
    with pytest.raises(KeyError):
        unit_named("furlong")


def test_always_and_hanks():
    lea = hanks("300 yd/lb", "linen_lea", 300)
    assert lea.customary == lea.metric
    # 300 yd of 0.9144 m in a pound of 453.59237 g: definitions of the yard and the pound.
    assert lea.metric.value == pytest.approx(300 * 0.9144 / 453.59237, rel=1e-12)
    assert always(lea.customary).metric is lea.customary


@pytest.mark.parametrize(
    ("name", "hank", "pounds"),
    [
        # Hanks of ASTM D2260 and of W. Davis, Hosiery Manufacture, as in the docstring of units.py (read).
        ("worsted_count", 560, 1),
        ("woollen_run", 1600, 1),
        ("woollen_cut", 300, 1),
        ("linen_lea", 300, 1),
        ("yorkshire_skein", 256, 1),
        ("galashiels_cut", 300, 1.5),  # a cut of 300 yd in 24 ounces
        ("alloa_count", 240, 1),
        ("west_of_england_count", 320, 1),
    ],
)
def test_hanks_of_the_count_systems(name, hank, pounds):
    assert ureg.Quantity(1.0, name).to("yard / pound").magnitude == pytest.approx(hank / pounds, rel=1e-12)


def test_a_count_of_one_is_one_hank_per_pound_in_pint_too():
    assert ureg.Quantity(1.0, "number_english").to("yard/pound").magnitude == pytest.approx(840, rel=1e-12)


@pytest.mark.parametrize("lengths, masses", [("feet", "ounces"), ("meters", "gramms")])
def test_a_unit_system_of_units_that_nothing_has_is_refused(lengths, masses):
    with pytest.raises(DescriptionError) as refused:
        quantities.require_known({"ours": UnitSystem(lengths, masses)})
    assert (
        str(refused.value)
        == f"unit system ours: its lengths are yards or meters and its masses ounces or grams, and not {lengths} and {masses}."
    )
