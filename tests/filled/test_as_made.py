"""What a planner says by itself is what its file says beside the fields, and every text of it is known."""

import pytest

from workbookgen.book.write import write
from workbookgen.filled.as_made import beside_fields, laid_out
from workbookgen.filled.book import open_book
from workbookgen.language.entries import starting_entries
from workbookgen.settings import Settings


@pytest.mark.parametrize(
    "more",
    [{}, {"units": "metric", "size": "small", "title": 'Ours & "theirs" <2>', "note": " =1+1\n_x0041_ "}],
    ids=["whole", "small"],
)
def test_what_is_beside_fields_is_what_is_written(more, tmp_path):
    settings = Settings(**more)
    layout, path = laid_out(settings), tmp_path / "planner.xlsx"
    path.write_bytes(write(layout, starting_entries(layout.planner), {}))
    fields = {
        (each.sheet, each.row + place, each.column)
        for each in layout.placements.values()
        if each.formulas or each in layout.inputs
        for place in range(each.rows)
    }
    beside = {
        sheet: {place: cell.value for place, cell in cells.items() if (sheet, *place) not in fields}
        for sheet, cells in open_book(path).sheets.items()
    }
    assert sum(map(len, beside.values())) > 1_000
    assert beside_fields(settings) == beside
