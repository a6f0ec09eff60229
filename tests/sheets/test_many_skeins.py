"""An archive of skeins: what is typed into one is answered at once, though thousands of others stand beside it."""

from collections.abc import Iterable

import pytest

from entries import entries_with
from planners import opened
from workbookgen.language.fields import Result
from workbookgen.language.planner import Planner
from workbookgen.settings import Rows, Settings
from workbookgen.sheets.planner import planner
from workbookgen.sheets.skeins import FEW

TYPED = {"skeins_wraps", "skeins_gross"}


def read_by(described: Planner, key: str) -> set[str]:
    """The full keys of what a field's formula reads."""
    block, field = described.by_key[key]
    return {described.meaning(block, word).key for word in field.words} if isinstance(field, Result) else set()


def reached(described: Planner, keys: Iterable[str]) -> set[str]:
    """These fields, and all that they depend on."""
    found, waiting = set(), set(keys)
    while waiting:
        found |= waiting
        waiting = set().union(*(read_by(described, key) for key in waiting)) - found
    return found


def sums_over_skeins(described: Planner, keys: set[str]) -> set[str]:
    """Those that add up whole columns, and depend on what was counted or weighed of the skeins."""
    fields = {key: described.by_key[key][1] for key in keys}
    adding = {key for key, field in fields.items() if isinstance(field, Result) and "_where(" in field.formula}
    return {key for key in adding if reached(described, {key}) & TYPED}


@pytest.mark.parametrize(("rows", "looks_at_all"), [(FEW, True), (FEW + 1, False)])
def test_no_message_of_many_skeins_waits_for_sums_over_all_of_them(rows, looks_at_all):
    """The head looks at every message: where these need what each lot adds up to, a wrap typed into 20,000 skeins
    takes LibreOffice six seconds."""
    described = planner(Settings(rows=Rows(skeins=rows)))
    words = {f"skeins_{word}" for rule in described.blocks["skeins"].rules for word in rule.text.words}
    assert TYPED & words and bool(sums_over_skeins(described, reached(described, words))) == looks_at_all


@pytest.mark.parametrize(
    ("wraps", "grams", "said", "behind_the_door"),
    [
        (100_000.0, 350_000.0, "6 skeins, 1,140,000 m, 2,100,000 g", "in 6 skeins, 2,100,000 g"),
        (200.0, 100.0, "6 skeins, 2,280 m, 600 g", "in 6 skeins, 600 g"),
    ],
)
def test_the_heads_of_an_archive_say_more_than_a_million(built, wraps, grams, said, behind_the_door):
    """By hand: 100,000 turns of 2 m are 200 km, less 5% in washing 190 km; six of them 1,140 km."""
    settings = Settings(units="metric", size="small")
    described = planner(settings)
    skeins = [{"name": f"S {place}", "reel": "Reel", "wraps": wraps, "gross": grams} for place in range(6)]
    path = built(settings, entries_with(described, {"reels": [{"name": "Reel", "rated": 200.0}], "skeins": skeins}))
    book = opened(path, values=True)

    def shown(name):
        sheet, cell = book.defined_names[name].attr_text.split("!")
        return book[sheet.strip("'")][cell.replace("$", "")].value

    assert shown("skein_sums_words") == said and shown("glance_skeins_words") == behind_the_door
