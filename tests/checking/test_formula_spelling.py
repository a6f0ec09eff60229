"""Two spellings of one formula, as programs save it, are the same; two formulas are not."""

import pytest

from workbookgen.checking.formula_spelling import spelled


@pytest.mark.parametrize(
    ("written", "saved"),
    [
        ("STDEV($C7:$G7)*1/0.0254", "_xlfn.STDEV.S($C7:$G7)*1/0.0254"),  # Gnumeric 1.12.55
        ("NORMSINV($B$24)", "_xlfn.NORM.S.INV($B$24)"),  # Gnumeric
        ("COUNTA($B$5:$B$5)>0", "COUNTA($B$5)>0"),  # Gnumeric
        ("NORMSDIST($A1)+NORMSINV($A1)", "LEGACY.NORMSDIST($A1)+LEGACY.NORMSINV($A1)"),  # LibreOffice 7.4, in .ods
    ],
)
def test_other_names_and_ranges_of_one_cell(written, saved):
    assert spelled(f"={saved}") == spelled(written)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("STDEV($C7:$G7)", "STDEVP($C7:$G7)"),
        ("COUNTA($B$5:$B$50)", "COUNTA($B$5)"),
        ("COUNTA($B$5:$B$6)", "COUNTA($B$5)"),
        ('"_xlfn.STDEV.S"', '"STDEV"'),  # words in quotes are nobody's function
    ],
)
def test_another_formula_is_another(one, other):
    assert spelled(one) != spelled(other)
