"""The columns are declared in one place, and hold what they say."""

import re

import pytest

from workbookgen.gather.columns import TABLES
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


def test_names_are_not_used_twice():
    for table in TABLES:
        names = [column.name for column in table.columns]
        assert len(set(names)) == len(names)


def test_every_column_is_explained():
    told = meanings().set_index(["table", "column"])["meaning"]
    assert all(len(told[table.name, column.name]) > len(column.field) for table, column in COLUMNS)
    assert told["skeins", "tex"] == "Grist and counts: Tex. Grams in 1,000 m."
    assert told["lots", "bought_g"].startswith("You type: Weight. Weight as bought.")
