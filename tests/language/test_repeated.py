"""A result that repeats a text or a day: nothing is calculated, nothing is changed, and a blank text is no record."""

import numpy as np
import pytest

from workbookgen.language.fields import Result
from workbookgen.language.quantities import DAY
from workbookgen.language.repeated import as_typed, day_as_typed, repeated, repeated_day
from workbookgen.settings import Settings
from workbookgen.sheets.methods import page
from workbookgen.sheets.planner import planner


def test_it_is_a_text_that_is_its_word():
    field = repeated("of", "Of", "project", width=24)
    assert (field.formula, field.words, field.arguments) == ("project", ("project",), {"text": "project"})
    assert field.is_text
    assert field.width == 24


def test_the_text_comes_back_as_it_is():
    assert as_typed(" Big reel") == " Big reel"
    assert list(as_typed(np.array(["a", "b"], dtype=object))) == ["a", "b"]


@pytest.mark.parametrize("text", ["", "  ", np.array(["a", " "], dtype=object)])
def test_a_blank_text_is_refused(text):
    with pytest.raises(ValueError, match="blank"):
        as_typed(text)


def test_a_day_comes_back_as_it_is():
    field = repeated_day("dated", "Finished on", "finished_on")
    assert (field.formula, field.unit, field.arguments) == ("finished_on", DAY, {"day": "finished_on"})
    assert day_as_typed(46000.0) == 46000 and list(day_as_typed(np.array([46000.0, 0.0]))) == [46000, 0]
    with pytest.raises(ValueError, match="not known"):
        day_as_typed(np.array([46000.0, np.nan]))


def test_methods_has_no_page_of_it():
    whole = planner(Settings())
    methods, _ = whole.by_key["methods_where"]
    repeating = [
        field for _, field in whole.by_key.values() if isinstance(field, Result) and field.reference is as_typed
    ]
    assert len(repeating) > 20
    assert not {page(each).title for each in (as_typed, day_as_typed)} & set(methods.by_key["what"].values)
