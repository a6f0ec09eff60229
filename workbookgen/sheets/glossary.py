"""The glossary: every word of the trade that the sheets use, and every sign, in plain words.

It is on the sheet Reference. The words are data, in `glossary.csv` beside this module; a test ensures that no sheet
uses a word of the trade that is not explained here.
"""

import csv
from importlib.resources import files

from workbookgen.language.parts import Column, Table


def read_glossary() -> dict[str, str]:
    """Every word with its meaning, in the order in which they are shown."""
    with (files("workbookgen.sheets") / "glossary.csv").open(encoding="utf-8", newline="") as file:
        return {line["word"]: line["meaning"] for line in csv.DictReader(file)}


def glossary(widths: tuple[int, int]) -> Table:
    """The words as a table, its two columns as wide as the sheet's own."""
    words = read_glossary()
    return Table(
        "glossary",
        "Words and signs",
        (
            Column("word", "Word", tuple(words), width=widths[0]),
            Column("meaning", "What it means", tuple(words.values()), width=widths[1], runs_on=True),
        ),
    )
