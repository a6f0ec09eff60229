"""The words that a spinner reads: known ones, spelled the US way, each thing called the same everywhere.

`words.csv` lists every word that the sheets may show; a new one is added there knowingly, as
plain, or as a word of the trade that the glossary explains. `said_otherwise.csv` lists what is
not to be said, and what is said instead.
"""

import csv
import re
import zipfile
from functools import cache
from html import unescape
from itertools import pairwise
from pathlib import Path

import pytest
from openpyxl.utils import get_column_letter

from planners import laid_out, opened
from workbookgen.language import quantities
from workbookgen.language.fields import Input
from workbookgen.language.quantities import Kind
from workbookgen.language.sentences import doubled
from workbookgen.settings import load, templates
from workbookgen.sheets import origin
from workbookgen.sheets.glossary import read_glossary
from workbookgen.unit_systems import UNIT_SYSTEMS

HERE = Path(__file__).parent
WORD = re.compile(r"[^\W\d_][^\W\d_'’-]*(?:(?<=['’-])[^\W\d_]+)*")
# Whose words are data: the pages of the methods, the texts of sources, the settings.
NOT_READ_HERE = ("methods_", f"{origin.KEY}_", "proofs_")


def rows(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def literals(formula: str) -> list[str]:
    """What a formula may say."""
    return re.findall(r'"([^"]*)"', formula)


def shown(layout, path):
    """(where, text) of everything that a sheet says in words of its own: in cells, in formulas, beside a cell, in
    pictures."""
    book = opened(path)
    data = {(each.sheet, each.cell(row)) for each in layout.inputs for row in range(each.rows)}
    for key, each in layout.placements.items():
        if key.startswith(NOT_READ_HERE):
            columns = range(1, 12) if key.startswith("proofs_") else [each.column]
            data |= {(each.sheet, f"{get_column_letter(column)}{each.row + row}") for row in range(each.rows) for column in columns}
        for formula in {each.formulas[0]} if each.formulas and not key.startswith("proofs_") else ():
            yield from ((each.sheet, text) for text in literals(formula))
        if isinstance(each.field, Input) and getattr(each.field.domain, "unique", False):
            yield each.sheet, doubled(each.field)
    for sheet in book:
        yield sheet.title, sheet.title
        for row in sheet.iter_rows():
            for cell in row:
                if cell.data_type == "s" and (sheet.title, cell.coordinate) not in data:
                    yield sheet.title, cell.value
                if cell.data_type in "fn":
                    yield from ((sheet.title, text) for text in literals(cell.number_format))
        for said in sheet.data_validations.dataValidation:
            yield from ((sheet.title, text) for text in (said.promptTitle, said.prompt, said.errorTitle, said.error) if text)
    with zipfile.ZipFile(path) as package:
        drawn = [package.read(name).decode() for name in package.namelist() if name.startswith(("xl/drawings/drawing", "xl/charts/"))]
    yield from (("pictures", unescape(text)) for each in drawn for text in re.findall(r'descr="([^"]*)"|<a:t>([^<]*)</a:t>', each) for text in text if text)


@pytest.fixture(scope="module")
def said_in(built):
    """said_in(units): everything that is said in the planner of these units that is handed out."""
    @cache
    def said(system: str) -> list[tuple[str, str]]:
        settings = load(templates() / f"{system}.toml")
        return sorted(set(shown(laid_out(settings), built(settings))))

    return said


@pytest.fixture(scope="module", params=UNIT_SYSTEMS)
def texts(request, said_in):
    return said_in(request.param)


def words_of(text: str) -> set[str]:
    return {word.lower() for word in WORD.findall(text)}


SYMBOLS = {word for kind in vars(quantities).values() if isinstance(kind, Kind) for system in UNIT_SYSTEMS for word in words_of(kind.unit(system).symbol)}
KNOWN = {row["word"]: row["kind"] for row in rows("words.csv")}
REFUSED = rows("said_otherwise.csv")


def test_the_sheets_say_only_known_words(texts):
    strange = {(word, where) for where, text in texts for word in words_of(text) - KNOWN.keys() - SYMBOLS}
    assert strange == set(), "spell it right, or add it to words.csv knowingly"


def test_no_word_is_known_that_nobody_says(said_in):
    said = set()
    for system in UNIT_SYSTEMS:
        for _, text in said_in(system):
            said |= words_of(text)
    assert KNOWN.keys() - said == set()


def test_every_word_of_the_trade_is_explained():
    explained = {word for entry in read_glossary() for word in words_of(entry)}
    told = {word for meaning in read_glossary().values() for word in words_of(meaning)}
    trade = {word for word, kind in KNOWN.items() if kind == "trade"}
    assert len(trade) > 80
    unexplained = {word for word in trade if not {word, word.removesuffix("s"), word.removesuffix("es"), word.removesuffix("'s")} & (explained | told)}
    assert unexplained == set()


def test_the_glossary_is_in_order_and_explains_each_word_once():
    names = [word.casefold() for word in read_glossary() if word[0].isalpha()]
    assert all(one < other for one, other in pairwise(names))
    assert all(meaning.endswith(".") for meaning in read_glossary().values())


@pytest.mark.parametrize("row", REFUSED, ids=[row["never"] for row in REFUSED])
def test_each_thing_is_called_the_same_everywhere(texts, row):
    pattern = re.compile(row["never"], re.IGNORECASE)
    exempt = row["but_on"].split("; ") if row["but_on"] else []
    found = {(where, text) for where, text in texts if where not in exempt and pattern.search(text)}
    assert found == set(), f"say {row['say']}"


def test_the_refusals_would_find_something():
    for row in REFUSED:
        assert re.search(row["never"], row["example"], re.IGNORECASE), row["never"]
