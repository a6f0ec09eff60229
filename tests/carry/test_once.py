"""Carrying does each long piece of work once, and the engine that proves the new planner sees that very file."""

import pytest

from workbookgen import build
from workbookgen.carry import carry as carrying
from workbookgen.engines.copies import POISON
from workbookgen.filled import as_made, planner, replacing
from workbookgen.filled.book import open_book
from workbookgen.filled.cells import Cell

from .conftest import filled, small, written


@pytest.fixture
def times(monkeypatch):
    """What is done, each time it is done anew."""
    done: list[str] = []

    def counted(module, name: str) -> None:
        does = getattr(module, name)
        monkeypatch.setattr(module, name, lambda *given: (done.append(name), does(*given))[1])

    for module, name in (
        (planner, "planner"),
        (planner, "open_book"),
        (as_made, "place"),
        (carrying, "place"),
        (carrying, "finished"),
        (carrying, "computed"),
    ):
        counted(module, name)
    for kept in (planner.described, as_made.laid_out, as_made.beside_fields):
        kept.cache_clear()
    return done


def test_nothing_is_done_twice(times, old_file, tmp_path):
    carrying.carry(old_file, tmp_path / "new.xlsx")
    assert times == ["open_book", "planner", "place", "finished", "computed"]


def test_leftovers_cost_another_layout_and_no_more(times, tmp_path):
    entries = filled(small()) | {"skeins_wraps": ("many", None, None, None)}
    assert carrying.carry(written(tmp_path / "old.xlsx", small(), entries), tmp_path / "new.xlsx").leftovers
    assert times == ["open_book", "planner", "place", "place", "finished", "computed"]


def test_what_is_there_is_looked_at_once_before_it_is_replaced(times, old_file, tmp_path):
    carrying.carry(old_file, tmp_path / "new.xlsx")
    times.clear()
    with pytest.raises(replacing.FileError):
        carrying.carry(old_file, tmp_path / "new.xlsx")
    assert times == ["open_book"]


def test_the_engine_gets_the_new_file_and_knows_none_of_its_values(old_file, tmp_path, monkeypatch):
    given = []

    class Looking:
        def open(self, path):
            given.append(open_book(path).sheets)
            return engine("formualizer").open(path)

    engine = build.engine
    monkeypatch.setattr(build, "engine", lambda name: Looking())
    assert carrying.carry(old_file, tmp_path / "new.xlsx").unproven == ()
    new, [seen] = open_book(tmp_path / "new.xlsx").sheets, given
    assert seen == {
        sheet: {place: Cell(POISON, each.formula) if each.formula else each for place, each in cells.items()}
        for sheet, cells in new.items()
    }
    assert len({each.value for cells in new.values() for each in cells.values() if each.formula}) > 100


def test_of_a_long_log_the_engine_gets_no_more_than_shows_something(old_file, tmp_path, monkeypatch):
    seen = []

    def computed(layout, content):
        seen.append(layout)
        return build.computed(layout, content)

    monkeypatch.setattr(carrying, "computed", computed)
    contents = []
    for name, most in (("usual.xlsx", build.MOST_LINES), ("long.xlsx", 2)):
        monkeypatch.setattr(build, "MOST_LINES", most)
        assert carrying.carry(old_file, tmp_path / name).unproven == ()
        contents.append((tmp_path / name).read_bytes())
    usual, long = ({key: each.rows for key, each in layout.placements.items()} for layout in seen)
    assert contents[0] == contents[1]
    # The third skein shows its length; no project has a second line.
    assert (
        long["skeins_length_yd"] == usual["skeins_length_yd"] > 2 == long["projects_length"] < usual["projects_length"]
    )
