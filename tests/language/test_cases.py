"""A formula of several cases: the first that holds stands first."""

from workbookgen.language.cases import first_of


def test_the_first_that_holds_gives_the_value():
    assert first_of(("a > 1", '"large"'), ("b", "c"), otherwise="0") == 'IF(a > 1,"large",IF(b,c,0))'


def test_where_none_holds_there_is_nothing():
    assert first_of(("a", "b")) == 'IF(a,b,"")' and first_of() == '""'
