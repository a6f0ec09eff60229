"""The benchmark of building compares like with like: the calls that it makes again give the very same planner."""

import subprocess
import sys
from pathlib import Path

from recording import recorded

from workbookgen.book.write import write
from workbookgen.language.entries import starting_entries


def test_the_calls_made_again_give_the_same_workbook(little_layout, tmp_path):
    written, entries = [], starting_entries(little_layout.planner)
    recorded(lambda: written.append(write(little_layout, entries, {})), tmp_path / "calls")
    script = Path(__file__).with_name("recording.py")
    subprocess.run([sys.executable, script, "shared", tmp_path / "calls", tmp_path / "again.xlsx"], check=True)
    assert (tmp_path / "again.xlsx").read_bytes() == written[0]
