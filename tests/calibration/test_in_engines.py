"""The worlds in the engines: what the other tests here have the library say of them, the planner's formulas say too.

Drawn entries seldom come out as a project that is half done, of which most of what is said here speaks: of some 240
projects in 24 drawn sets, 6 had skeins, more to spin and a chance.
"""

import numpy as np
import pytest

from entries import entries_with
from long_run import some
from workbookgen.book.write import write
from workbookgen.build import layout_of
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.expected import expected_of_keys
from workbookgen.settings import Rows, Settings

from . import own_fleeces, sharers, unkind
from .answers import typed
from .reckoning import LOGS
from .worlds import BREED, SITUATIONS

OF_PARTS = {
    "half spun": unkind.spun_in_part((0.5, 0.75)),
    "not weighed yet": unkind.spun_in_part((0.45, 0.46), unweighed=0.4),
    "coarser": unkind.spun_in_part((0.65, 0.9), drift=-0.02, each=40.0),
    "finer": unkind.spun_in_part((0.65, 0.9), drift=0.02, each=40.0),
    "nearly spun": unkind.nearly_spun(0.1),
    "plied in part": unkind.plied_in_part(2),
    "contested": sharers.contested(True, 2),
    "after a finished piece": sharers.after_a_finished_piece_with_skeins,
    "two lots": sharers.two_lots(False),
    "overlapping": sharers.overlapping,
    "of two grists": sharers.of_two_grists(True),
    "looked into": sharers.fleece_looked_into(4),
    "after three fleeces": own_fleeces.after(3),
    "after three of a breed that is nowhere published": own_fleeces.after(3, own_fleeces.unpublished),
    "contested, begun by all": unkind.contested_in_part(False, 0.4, (0.3, 0.6)),
    "contested, begun by one": unkind.contested_in_part(False, 0.0, (0.2, 0.3), is_it_alone=True),
}


@pytest.fixture(scope="module")
def records():
    """What is typed of two worlds of every kind, log by log."""
    draw = np.random.default_rng(8)
    together = {"guide": [BREED | {"source": "invented"}]}
    for number, world in enumerate([*SITUATIONS.values(), *OF_PARTS.values()] * 2):
        drawn = world(f"{number}", draw)
        found = typed([drawn]) if hasattr(drawn, "records") else {log: getattr(drawn, log) for log in LOGS}
        for log, each in found.items():
            together.setdefault(log, []).extend(each)
    return together


@pytest.fixture(scope="module")
def layout(records):
    rows = dict.fromkeys(Rows.model_fields, 2) | {log: max(2, len(found)) for log, found in records.items()}
    return layout_of(Settings(units="metric", fibers="", rows=Rows(**rows)))


@pytest.fixture(scope="module")
def entries(layout, records):
    entries = entries_with(layout.planner, records)
    return entries | {"project_name": ("Piece 13",), "lot_name": ("Lot 13",)}


@pytest.fixture(scope="module")
def file(layout, entries, tmp_path_factory):
    path = tmp_path_factory.mktemp("worlds") / "worlds.xlsx"
    path.write_bytes(write(layout, entries, {}))
    return path


def test_most_projects_are_in_doubt_and_many_are_half_spun(layout, entries):
    keys = [f"projects_{key}" for key in ("chance", "skeins", "to_spin", "ahead")]
    [said] = expected_of_keys(layout.planner, [entries], keys)
    chance, skeins, to_spin, ahead = (np.array(said[key], dtype=float) for key in keys)
    assert np.isfinite(chance).all() and (abs(chance - 0.5) < 0.49).mean() > 0.5
    assert ((skeins > 0) & (to_spin > 0)).sum() >= 10
    assert (ahead < 0).any() and (ahead > 0).any() and (ahead == 0).any()


@pytest.mark.parametrize("name", ["formualizer", "ironcalc"])
def test_the_engines_agree(name, layout, file):
    assert check(FileToCheck(file, layout), [name], scenarios=0).findings == []


@pytest.mark.programs
@pytest.mark.parametrize("name", some(["libreoffice", "gnumeric"], 1))
def test_the_programs_agree(name, layout, file):
    assert check(FileToCheck(file, layout), [name], scenarios=0).findings == []
