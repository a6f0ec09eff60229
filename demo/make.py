"""Fills the demo scenario into a planner.

Everything in the scenario is invented: the spinner, the fleeces, the figures. It is told
in the CSV files beside this script, one a log; their columns are the logs' inputs.
"""

import csv
import sys
from pathlib import Path

from workbookgen import settings
from workbookgen.build import build, layout_of
from workbookgen.errors import DescriptionError
from workbookgen.language.entries import Entries, starting_entries, with_records

FOLDER = Path(__file__).parent
LOGS = (
    "reels",
    "fiber",
    "samples",
    "designs",
    "components",
    "skeins",
    "labels",
    "projects",
    "estimates",
    "pieces",
    "weavings",
    "costs",
    "whorls",
    "rack",
    "blend",
    "offers",
    "members",
    "recipe",
    "colors",
)
CARDS = {
    "buying_kind": ("Targhee",),
    "buying_length": (2400.0,),
    "buying_grist": (1600.0,),
    "split_mass": (107.3,),
    "split_money": (70.0,),
    "scouring_mass": (66.0,),
    "scouring_load": (12.0,),
    "scouring_price_water": (1.2,),
    "waters_volume": (9.0,),
    "waters_temperature": (118.0,),
    "waters_added": (2.0,),
    "waters_added_temperature": (180.0,),
    "waters_target": (130.0,),
    "dyeing_skein": ("Moss 1",),
    "dyeing_depth": (0.02,),
    "dyeing_made": (500.0,),
    "color_mass": (4.0,),
    "color_repeats": (4.0,),
    "color_grist": (1600.0,),
    "color_take_up": (0.05,),
    "color_differ": (0.01,),
    "color_row": (22.0,),
    "color_row_gauge": (7.0,),
    "backwards_wraps": (12.0,),
    "backwards_take_up": (0.057,),
    "twist_grist": (2520.0,),
    "twist_multiplier": (2.9,),
    "twist_slant": (20.0,),
    "twist_staple": (4.5,),
    "counted_turns": (32.0,),
    "counted_length": (10.0,),
    "counted_grist": (1500.0,),
    "plying_singles": (5.2,),
    "plying_grist": (2520.0,),
    "plying_sample": (0.057,),
    "plying_plied": (3.3,),
    "wheel_wheel": (24.0,),
    "wheel_whorl": (2.5,),
    "wheel_slip": (0.03,),
    "wheel_draft": (12.0,),
    "wheel_treadles": (7.0,),
    "wheel_wanted": (5.2,),
    "spindle_draft": (12.0,),
    "spindle_rolled": (9.0,),
    "spindle_shaft": (0.375,),
    "spindle_rolls": (8.0,),
    "spindle_wanted": (5.2,),
    "finest_kind": ("Targhee",),
    "finest_wanted": (2520.0,),
    "finest_twist": (5.2,),
    "making_before": (3.1,),
    "making_after": (2.58,),
    "making_rows": (12.0,),
    "making_left": (5.4,),
    "making_wanted": (115.0,),
    "crowded_loop": (72.0,),
    "crowded_wraps": (131.0,),
    "crowded_wpi": (14.5,),
    "crowded_width": (2.5,),
    "garment_body": (38.0,),
    "garment_ease": (4.0,),
    "garment_length": (25.0,),
    "garment_sleeve": (18.0,),
    "garment_upper_arm": (15.0,),
    "garment_cuff": (9.0,),
    "garment_swatch_width": (6.0,),
    "garment_swatch_height": (6.0,),
    "garment_swatch_mass": (0.52,),
    "garment_grist": (1200.0,),
    "fabric_length": (512.0,),
    "fabric_grist": (1169.0,),
    "fabric_swatch_width": (6.0,),
    "fabric_swatch_height": (6.0,),
    "fabric_swatch_mass": (0.52,),
    "fabric_width": (8.0,),
    "pattern_stitches": (5.0,),
    "pattern_own_stitches": (5.5,),
    "pattern_rows": (7.0,),
    "pattern_own_rows": (7.5,),
    "pattern_length": (1150.0,),
    "pattern_grist": (1200.0,),
    "pattern_count": (210.0,),
    "pattern_row_count": (98.0,),
    "shawl_used": (1.3,),
    "shawl_left": (2.9,),
    "shawl_keep": (0.4,),
    "shawl_rows": (80.0,),
    "shawl_now": (160.0,),
    "shawl_wanted": (60.0,),
    "fulling_width": (11.0,),
    "fulling_length": (9.0,),
    "fulling_before_width": (6.0,),
    "fulling_after_width": (4.9,),
    "fulling_before_height": (6.0,),
    "fulling_after_height": (4.3,),
    "fulling_swatch_mass": (0.62,),
    "fulling_stitches": (4.0,),
    "fulling_rows": (5.5,),
    "measure_skein": ("Clover 1",),
    "compare_first": ("Clover 1",),
    "compare_second": ("Clover 3",),
    "project_name": ("Gray pullover",),
    "pace_sample": ("Moss 2-ply",),
    "pace_start": (46357.0,),
    "way_lot": ("Clover",),
    "bobbin_outer": (3.5,),
    "bobbin_inner": (0.75,),
    "bobbin_height": (4.0,),
    "bobbin_project": ("Gray pullover",),
    "ending_grist": (2520.0,),
    "ending_take_up": (0.057,),
    "match_length": (230.0,),
    "match_mass": (3.5,),
    "match_take_up": (0.05,),
    "match_ply": (4.0,),
    "match_left": (6.0,),
    "match_wanted": (460.0,),
    "mix_wanted": (2.0,),
    "structure_length": (420.0,),
    "structure_grist": (2520.0,),
    "structure_take_up": (0.05,),
    "structure_wanted": (200.0,),
    "structure_wanted_grist": (700.0,),
    "wrapped_core": (1700.0,),
    "wrapped_wrapper": (6000.0,),
    "wrapped_core_wraps": (18.0,),
    "wrapped_wrapper_wraps": (40.0,),
    "wrapped_turns": (4.0,),
    "wrapped_slack": (0.2,),
    "wrapped_binder": (9000.0,),
    "wrapped_binder_wraps": (60.0,),
    "wrapped_binder_turns": (2.0,),
    "wrapped_wanted": (560.0,),
    "counts_number": (20.0,),
    "counts_system": ("worsted count",),
    "weighed_length": (20.0,),
    "weighed_mass": (0.36,),
    "weighed_wanted": (4.0,),
    "thickness_grist": (1200.0,),
    "thickness_counted": (12.5,),
    "thickness_fiber_diameter": (27.0,),
    "moisture_mass": (4.0,),
    "moisture_content": (0.1,),
}


def records(log: str) -> list[dict[str, float | str]]:
    """The records of one CSV file; empty cells are left out."""
    with (FOLDER / f"{log}.csv").open(encoding="utf-8", newline="") as file:
        return [{key: _typed(text) for key, text in line.items() if text} for line in csv.DictReader(file)]


def _typed(text: str) -> float | str:
    try:
        return float(text)
    except ValueError:
        return text


def entries(chosen: settings.Settings) -> Entries:
    """The whole scenario as entries of a planner."""
    planner = layout_of(chosen).planner
    filled = starting_entries(planner)
    if strangers := [key for key in CARDS if key not in filled]:
        raise DescriptionError.at("demo/make.py", f"its CARDS fill in {', '.join(strangers)}, which is no input.")
    filled |= CARDS
    for log in LOGS:
        try:
            filled = with_records(planner, filled, log, records(log))
        except ValueError as problem:
            raise DescriptionError.at(f"demo/{log}.csv", str(problem)) from None
    return filled


def make(target: Path) -> None:
    """Build the demo planner."""
    chosen = settings.load(FOLDER / "settings.toml")
    build(chosen, target, entries(chosen))


if __name__ == "__main__":
    make(Path(sys.argv[1] if len(sys.argv) > 1 else "demo-planner.xlsx"))
