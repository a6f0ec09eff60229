"""Makes the pictures of the demo: every sheet as it stands in a window.

Needs LibreOffice, Xvfb and ImageMagick: python demo/pictures.py
The demo is opened in a screen that nobody sees, 1366 by 768 pixels at 100%; each sheet becomes
demo/pictures/SHEET.png, in few colors, so that the files stay small.
"""

import subprocess
import sys
import tempfile
from contextlib import contextmanager
from pathlib import Path

from make import FOLDER, make
from PIL import Image

from workbookgen.engines.libreoffice import python_with_uno

SCREEN = 1366, 768
LARGEST = 80_000  # bytes of a picture
COLORS = (128, 96, 64, 48, 32, 24, 16)


def main(target: Path = FOLDER / "pictures") -> None:
    with tempfile.TemporaryDirectory() as folder, screen() as display:
        planner, shots = Path(folder) / "demo.xlsx", Path(folder) / "shots"
        make(planner)
        shots.mkdir()
        command = [python_with_uno(), str(FOLDER / "window.py"), str(planner), str(shots), display, *map(str, SCREEN)]
        subprocess.run(command, check=True, timeout=600)
        target.mkdir(exist_ok=True)
        for old in target.glob("*.png"):
            old.unlink()
        for shot in sorted(shots.glob("*.png")):
            reduced(shot, target / shot.name.lower())


@contextmanager
def screen():
    """A screen in memory; gives its display's name."""
    across, down = SCREEN
    with subprocess.Popen(
        ["Xvfb", "-displayfd", "1", "-screen", "0", f"{across}x{down}x24"],
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
    ) as server:
        try:
            yield f":{server.stdout.readline().strip()}"
        finally:
            server.terminate()


def reduced(shot: Path, target: Path) -> None:
    """The picture in as many colors as its size allows."""
    with Image.open(shot) as picture:
        plain = picture.convert("RGB")
    for colors in COLORS:
        plain.quantize(colors, dither=Image.Dither.NONE).save(target, optimize=True)
        if target.stat().st_size < LARGEST:
            return
    raise SystemExit(f"{target.name} is larger than {LARGEST:,} bytes even in {COLORS[-1]} colors.")


if __name__ == "__main__":
    main(*map(Path, sys.argv[1:2]))
