"""What carrying over knows by key is there: a slip in one of these keys would only leave entries behind, unsaid."""

from workbookgen.carry.earlier_units import EARLIER_UNITS
from workbookgen.carry.moved import MOVES
from workbookgen.filled.planner import ROWS_OF
from workbookgen.settings import Rows, Settings
from workbookgen.sheets.planner import planner

TODAY = planner(Settings())


def test_what_has_moved_has_a_field_now():
    keys = {key for each in MOVES for key in (each.names, *(now for _, now in each.fields))}
    assert keys - TODAY.by_key.keys() == set()


def test_a_log_with_the_length_of_another_is_there():
    assert set(ROWS_OF) - TODAY.blocks.keys() == set()
    assert set(ROWS_OF.values()) - set(Rows.model_fields) == set()


def test_what_had_another_unit_is_a_result_now():
    assert set(EARLIER_UNITS) - TODAY.by_key.keys() == set()
