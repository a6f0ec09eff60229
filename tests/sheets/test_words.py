"""The words that a spinner reads: known ones, spelled the US way, each thing called the same everywhere.

`words.csv` lists every word that the sheets may show; a new one is added there knowingly, as
plain, or as a word of the trade that the glossary explains. `said_otherwise.csv` lists what is
not to be said, and what is said instead.
"""

import csv
import re
from itertools import pairwise
from pathlib import Path

import pytest

from workbookgen.build import layout_of
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Block, Chart, Links, ProofTable, Table, Text
from workbookgen.language.sentences import doubled, missing, refusal
from workbookgen.settings import Settings
from workbookgen.sheets import methods, origin
from workbookgen.sheets.glossary import read_glossary
from workbookgen.units import UNIT_SYSTEMS

HERE = Path(__file__).parent
WORD = re.compile(r"[^\W\d_][^\W\d_'’-]*(?:(?<=['’-])[^\W\d_]+)*")
# Whose words are data: the pages of the methods, the texts of sources, the settings.
NOT_READ_HERE = {methods.SHEET: {"methods"}, origin.SHEET: {origin.KEY}}


def rows(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def literals(result: Result) -> list[str]:
    """What a formula may say."""
    return re.findall(r'"([^"]*)"', result.formula)


def of_block(block: Block, system: str):
    yield from (block.title, block.about, *(group.heading for group in block.groups), *(rule.sentence for rule in block.rules))
    for each in block.fields:
        yield each.label
        if isinstance(each, Input):
            yield from (each.help, refusal(each, system), missing(each))
            if block.names_its_records(each):
                yield doubled(each)
        else:
            yield each.note
            if each.is_text:
                yield from literals(each)


def of_part(part, system: str):
    match part:
        case Block():
            yield from of_block(part, system)
        case Text():
            yield from (part.heading, *part.sentences)
        case Links():
            yield from (part.title, part.about, *(what for _, what in part.places))
        case Chart():
            yield from (part.title, part.about, *(series.label for series in part.series))
        case Table():
            yield from (part.title, part.about, *(column.label for column in part.columns))
            yield from (value for column in part.columns for value in column.values if isinstance(value, str))
        case ProofTable():
            yield from (part.title, part.about, part.verdict.label, part.verdict.note, *literals(part.verdict))


def shown(planner):
    """(where, text) of everything that a sheet says in words of its own."""
    for sheet in planner.sheets:
        yield from ((sheet.name, text) for text in (sheet.name, sheet.title, sheet.about))
        for part in sheet.parts:
            if getattr(part, "key", "") not in NOT_READ_HERE.get(sheet.name, ()):
                yield from ((sheet.name, text) for text in of_part(part, planner.system))


@pytest.fixture(scope="module", params=UNIT_SYSTEMS)
def texts(request):
    return sorted(set(shown(layout_of(Settings(units=request.param)).planner)))


def words_of(text: str) -> set[str]:
    return {word.lower() for word in WORD.findall(text)}


KNOWN = {row["word"]: row["kind"] for row in rows("words.csv")}
REFUSED = rows("said_otherwise.csv")


def test_the_sheets_say_only_known_words(texts):
    strange = {(word, where) for where, text in texts for word in words_of(text) - KNOWN.keys()}
    assert strange == set(), "spell it right, or add it to words.csv knowingly"


def test_no_word_is_known_that_nobody_says():
    said = set()
    for system in UNIT_SYSTEMS:
        for _, text in shown(layout_of(Settings(units=system)).planner):
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
