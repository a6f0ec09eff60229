"""The columns are declared in one place, and hold what they say."""

import re
from dataclasses import replace

import pytest

from workbookgen.errors import DescriptionError
from workbookgen.gather import declared
from workbookgen.gather.columns import SAMPLES, TABLES, TEXT, Column
from workbookgen.gather.meaning import meanings
from workbookgen.language.parts import unit_of
from workbookgen.sheets.planner import planner
from workbookgen.units import Quantity, ureg

from .invented import settings

PLANNER = planner(settings("us"))
COLUMNS = [(table, column) for table in TABLES for column in table.columns]
ENDINGS = {
    "m": "_m",
    "g": "_g",
    "m/g": "_m_per_g",
    "1/cm": "_per_cm",
    "1/m": "_per_m",
    "m/h": "_m_per_h",
    "tex": "tex",
    "degree": "_deg",
}


def label(value):
    return getattr(value, "name", None)


@pytest.mark.parametrize("table, column", COLUMNS, ids=label)
def test_a_column_is_a_field_in_a_unit_of_its_kind(table, column):
    field = PLANNER.blocks[table.block].by_key[column.field]
    assert field.is_text == column.is_text
    unit = None if field.is_text else unit_of(field, PLANNER.system)
    assert Quantity(1.0, unit.pint if unit else "").check(ureg(column.unit or "").dimensionality)


@pytest.mark.parametrize("table, column", COLUMNS, ids=label)
def test_a_name_tells_the_unit(table, column):
    if column.unit:
        assert column.name.endswith(ENDINGS[column.unit])
    else:
        assert not re.search(r"_(m|g|cm|per_\w+|deg)$", column.name)


@pytest.mark.parametrize(
    ("column", "sentence"),
    [
        (Column("raw_g", "raw_inn", "g"), "samples_raw_inn is no field."),
        (Column("raw", "raw_in"), "the field samples_raw_in is a mass, and its unit says a plain number."),
        (Column("raw_m", "raw_in", "m"), "the field samples_raw_in is a mass, and its unit says a length."),
        (Column("raw_q", "raw_in", "qq"), "the registry knows no unit qq."),
        (Column("raw", "raw_in", TEXT), "the field samples_raw_in is a mass, and its unit says a text."),
        (Column("from_lot", "lot"), "the field samples_lot is a text, and its unit says a plain number."),
        (Column("mass_g", "raw_in", "g"), "another column of this table has this name."),
    ],
)
def test_a_slip_in_a_column_is_refused_in_a_sentence(monkeypatch, column, sentence):
    """Else ounces would stand among grams, or the person who gathers would read of a KeyError."""
    declared.require_fields(PLANNER)
    monkeypatch.setattr(declared, "TABLES", (replace(SAMPLES, columns=(*SAMPLES.columns, column)),))
    with pytest.raises(DescriptionError) as caught:
        declared.require_fields(PLANNER)
    assert f"gather/columns.py, {column.name} of the samples: {sentence}" in str(caught.value).splitlines()


def test_names_are_not_used_twice():
    for table in TABLES:
        names = [column.name for column in table.columns]
        assert len(set(names)) == len(names)


def test_every_column_is_explained():
    told = meanings().set_index(["table", "column"])["meaning"]
    assert all(len(told[table.name, column.name]) > len(column.field) for table, column in COLUMNS)
    assert told["skeins", "tex"] == "Grist and counts: Tex. Grams in 1,000 m."
    assert told["lots", "bought_g"].startswith("You type: Weight. Weight as bought.")
