"""Makes the pictures of the demo: every sheet as a person prints it.

Needs LibreOffice and Poppler: python demo/pictures.py
Each sheet becomes demo/pictures/SHEET.png; where it has several pages, they are numbered.
"""

import subprocess
import tempfile
from pathlib import Path

from make import FOLDER, make, records

from workbookgen.engines.libreoffice import convert

RESOLUTION = "72"
PAGES = {
    "Start": 1, "Reels": 2, "Guide": 1, "Fiber": 4, "Buying": 1, "Scouring": 1, "Samples": 3, "Yarn": 1, "Components": 2,
    "Twist": 2, "Skeins": 4, "Compare": 1, "Labels": 1, "Knitting": 2, "Pieces": 1, "Weaving": 3, "Projects": 4, "Time": 2, "Figures": 1,
    "Cost": 2, "Pictures": 2, "Counts": 2, "Questions": 1, "Proofs": 1,
}
LONG = "Skeins"  # a log of many pages, of which only those with its first lines are shown


def sheet_of(page: str) -> str:
    """The sheet that a page belongs to, from its footer."""
    footer = page.strip().splitlines()[-1]
    return next((sheet for sheet in PAGES if f" {sheet} " in footer), "")


def main() -> None:
    target = FOLDER / "pictures"
    target.mkdir(exist_ok=True)
    for old in target.glob("*.png"):
        old.unlink()
    with tempfile.TemporaryDirectory() as folder:
        planner, pdf = Path(folder) / "demo.xlsx", Path(folder) / "demo.pdf"
        make(planner)
        convert(planner, pdf, recalculate=False)
        text = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, check=True).stdout
        first = records("skeins")[0]["name"]
        shown: dict[str, int] = {}
        for number, page in enumerate(text.split("\f")[:-1], start=1):
            sheet = sheet_of(page)
            if not sheet or shown.get(sheet, 0) >= PAGES[sheet] or (sheet == LONG and first not in page):
                continue
            shown[sheet] = shown.get(sheet, 0) + 1
            name = sheet.lower() + (f"-{shown[sheet]}" if PAGES[sheet] > 1 else "")
            subprocess.run(
                ["pdftoppm", "-r", RESOLUTION, "-f", str(number), "-l", str(number), "-singlefile", "-png", pdf, target / name],
                check=True,
            )


if __name__ == "__main__":
    main()
