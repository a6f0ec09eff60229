"""How the planners in this folder were made, by the versions of the project that they are named after.

    git worktree add OTHER 1f39ebd
    PYTHONPATH=OTHER python tests/carry/older/make_older.py 1f39ebd.xlsx

Each has few lines, so that it stays small, and entries in the logs that its version had.
Nothing else in the project runs this: a file that was made anew would no longer be old.
"""

import sys
from pathlib import Path

from workbookgen.build import build, layout_of
from workbookgen.language.entries import starting_entries, with_records
from workbookgen.settings import Reel, Rows, Settings

RECORDS = {
    "reels": [
        {"name": "Porch reel", "rated": 72.0, "cord": 600.0, "turns": 8.36, "tolerance": 0.2},
        {"name": "Crow niddy", "height": 15.0, "arm_a": 13.5, "arm_b": 14.0},
    ],
    "fiber": [
        {
            "name": "Clover",
            "kind": "Romney",
            "state": "raw fleece",
            "weight": 104.0,
            "grist": 850.0,
            "skirted_weighed": 91.5,
            "note": "White, a lot of straw",
        },
        {"name": "Gray thread", "kind": "Silk", "state": "yarn or thread", "weight": 2.2, "grist": 9000.0},
    ],
    "skeins": [
        {
            "name": "Clover 1",
            "reel": "Porch reel",
            "wraps": 104.0,
            "gross": 4.02,
            "tare": 0.12,
            "washed_loop": 68.9,
            "counted_wpi": 10.5,
            "lot": "Clover",
        },
        {
            "name": "Clover 2",
            "reel": "crow niddy",
            "wraps": 98.0,
            "part_wrap": 0.5,
            "gross": 3.88,
            "lot": "Clover",
            "second_lot": "Gray thread",
            "second_share": 0.18,
        },
        {"name": "Lost", "reel": "Attic reel", "wraps": "about a hundred", "rest": 1.5},
    ],
    "projects": [{"name": "Winter cardigan", "wanted": 1450.0, "margin": 0.15, "grist": 850.0, "lot_1": "Clover"}],
    "components": [{"design": "Tweed", "name": "Clover single", "strands": 2.0}],
}
TIMES = [  # each named its project, up to version 0.3
    {"project": "winter cardigan", "strands": 3.0, "take_up": 0.06, "done": 9.0},
    {"project": "Given away", "done": 3.0},
    {"project": "Winter cardigan", "done": 1.0},
]
CARDS = {
    "buying_kind": "Romney",
    "buying_length": 2400.0,
    "counts_number": 20.0,
    "weighed_mass": 0.35,
    "moisture_content": 0.1,
    "thickness_packing": 0.45,
}


def make(target: Path) -> None:
    reels = (Reel(name="Porch reel", loop="72 in"), Reel(name="Spare reel", loop="54 in"))
    rows = Rows(**{name: 3 for name in Rows.model_fields if name != "guide"})
    settings = Settings(title="An older planner", reels=reels, rows=rows)
    planner = layout_of(settings).planner
    entries = starting_entries(planner)
    for block, records in (RECORDS | {"times": TIMES}).items():
        if block in planner.blocks:
            known = {field.key for field in planner.blocks[block].inputs}
            entries = with_records(
                planner,
                entries,
                block,
                [{key: value for key, value in record.items() if key in known} for record in records],
            )
    build(settings, target, entries | {key: (value,) for key, value in CARDS.items() if key in entries})


if __name__ == "__main__":
    make(Path(sys.argv[1]))
