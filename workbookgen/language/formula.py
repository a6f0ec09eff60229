"""The words of a formula.

A formula is written in field keys: `(wraps + part_wrap) * loop + rest`. Keys of the same
record stand alone; other blocks are named in full (`reels_loop`), a card's field being
one cell and a log's a whole column. Five forms of ours look things up in columns:

    lookup(values, names, name)         the value of the record that bears this name
    sum_where(amounts, names, name)       the sum over all records that bear this name
    count_where(amounts, names, name)       how many of these have an amount
    place(names, name, amounts, k)    the line in which the name stands with an amount for the k-th time
    class_of(names, limits, word, times)  the name of the band that word x times falls in

`said(word)` is an amount in words, with its unit: "2,300 yd". `sum(amounts)` adds up a whole column. Three more sum up repeated readings, inputs that lie beside each other in one record, any
of which may be missing: mean(first, ..., last), stdev(...) for their standard deviation,
and readings(...) for their number. And `given(word)` asks whether a word has a value:
such a word may be missing.
"""

import re
from dataclasses import dataclass
from functools import cached_property

from workbookgen.language.profile import objections, without_strings

WORD = re.compile(r"(?<![A-Za-z0-9_.])[a-z][a-z0-9_]*(?![a-z0-9_]*\()")
LOOKUP_FORM = re.compile(r"\blookup\(([^()]*)\)")
SUM_WHERE_FORM = re.compile(r"\b(?:sum_where|count_where)\(([^()]*)\)")
SUM_FORM = re.compile(r"\b(?:sum_where|count_where|place|sum)\(([^()]*)\)")
PLACE_FORM = re.compile(r"\bINDEX\(\s*(\w+)\s*,")
GIVEN_FORM = re.compile(r"\bgiven\(\s*(\w+)\s*\)")
ONE_OF_FORM = re.compile(r"(?:OR\(|IF\(.+, (?=given\(\w+\), given\(\w+\)\)$))(given\(\w+\)(?:, given\(\w+\))+)\)")
READINGS_FORM = re.compile(r"\b(?:mean|stdev|readings)\(([^()]*)\)")
CELL_ADDRESS = re.compile(r"(?i:[a-z]{1,3}[0-9]+|r[0-9]*(c[0-9]*)?|c[0-9]*)")


@dataclass(frozen=True)
class Formula:
    """Formula text and what can be read off it."""

    text: str

    @cached_property
    def words(self) -> tuple[str, ...]:
        """Every field key in the text, once, in order."""
        return tuple(dict.fromkeys(WORD.findall(without_strings(self.text))))

    @cached_property
    def asked(self) -> frozenset[str]:
        """The words that may be missing: asked for with given(), or one of several readings."""
        bare = without_strings(self.text)
        readings = (word.strip() for words in READINGS_FORM.findall(bare) for word in words.split(","))
        return frozenset(GIVEN_FORM.findall(bare)) | frozenset(readings)

    @cached_property
    def one_of(self) -> frozenset[str]:
        """The words of which one must have a value, where the whole text asks for nothing else: OR(given(a), given(b)), or either branch of an IF."""
        found = ONE_OF_FORM.fullmatch(self.text)
        return frozenset(GIVEN_FORM.findall(found[1])) if found else frozenset()

    @cached_property
    def lookups(self) -> tuple[tuple[str, str, str], ...]:
        """The (values, names, name) of every lookup in the text."""
        return self._arguments(LOOKUP_FORM)

    @cached_property
    def sums_where(self) -> tuple[tuple[str, str, str], ...]:
        """The (amounts, names, name) of every sum_where and count_where in the text."""
        return self._arguments(SUM_WHERE_FORM)

    @cached_property
    def placed(self) -> frozenset[str]:
        """The columns of which one place is looked into."""
        return frozenset(PLACE_FORM.findall(without_strings(self.text)))

    @cached_property
    def sums(self) -> tuple[tuple[str, ...], ...]:
        """The words of every sum_where, count_where and sum in the text: nothing comes of one that lacks a word."""
        return self._arguments(SUM_FORM)

    def _arguments(self, form: re.Pattern) -> tuple[tuple[str, ...], ...]:
        found = form.findall(without_strings(self.text))
        return tuple(tuple(part.strip() for part in arguments.split(",")) for arguments in found)

    def objections(self) -> list[str]:
        return objections(self.text)


def key_objection(key: str) -> str | None:
    """Why a field may not bear this key, or None."""
    if not re.fullmatch(r"[a-z][a-z0-9_]*", key):
        return "a key is written in lower case letters, digits and underscores"
    if CELL_ADDRESS.fullmatch(key):
        return "this key is also a cell address"
    return None
