"""Leaving chapters out without breaking the others.

The fields of a chapter that is left out are absent. So are, in turn, every input that chooses from an absent list,
every result that could then only be blank, and every input that only such results read; rules about absent inputs and
charts of absent numbers go as well. A result that can do without an absent word stays, and reads a blank in its place.
Texts lose the clauses that point to an absent sheet. Cautions are never lost: those of an absent chapter move to the
desk.
"""

from collections import defaultdict
from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from workbookgen.language.fields import Input, Result
from workbookgen.language.forms import LOOKUP
from workbookgen.language.parts import Block, Chapter, Column, Holder, Log, Sheet
from workbookgen.language.planner import Meaning, Planner
from workbookgen.language.views import LogView
from workbookgen.sheets.naming import retold, said_without


@dataclass(frozen=True)
class Leaving:
    """A whole planner, and the names of the chapters that are left out of it."""

    full: Planner
    names: Collection[str]

    @cached_property
    def absent(self) -> frozenset[str]:
        """Full keys of the fields that go: those of these chapters, and whatever is nothing without them."""
        chapters = [chapter for sheet in self.full.sheets for chapter in sheet.chapters]
        blocks = [(chapter.name in self.names, holder) for chapter in chapters for holder in chapter.holders if isinstance(holder, Block)]
        absent = frozenset(block.full_key(field.key) for is_out, block in blocks if is_out for field in block.fields)
        readers = _readers(self.full)
        left = [
            (block.full_key(field.key), field, {} if isinstance(field, Input) else {word: self.full.meaning(block, word) for word in field.words})
            for is_out, block in blocks if not is_out
            for field in block.fields
        ]
        while more := {key for key, field, words in left if key not in absent and _must_go(field, words, absent, readers[key])}:
            absent |= more
        return absent

    @property
    def absent_fields(self) -> dict[str, tuple[Holder, Input | Result | Column]]:
        """Full key -> the holder of the absent field, and the field."""
        return {key: self.full.by_key[key] for key in self.absent}

    @cached_property
    def absent_sheets(self) -> frozenset[str]:
        """The sheets of which no chapter remains."""
        return frozenset(sheet.name for sheet in self.full.sheets if all(chapter.name in self.names for chapter in sheet.chapters))

    @property
    def cautions(self) -> tuple[str, ...]:
        """The cautions of the chapters that are left out."""
        return tuple(caution for sheet in self.full.sheets for chapter in sheet.chapters if chapter.name in self.names for caution in chapter.cautions)

    def kept(self, sheet: Sheet) -> Sheet | None:
        """What remains of a sheet; None if nothing does."""
        chapters = tuple(kept for chapter in sheet.chapters if chapter.name not in self.names and (kept := self._chapter(chapter)))
        related = tuple(name for name in sheet.related if name not in self.absent_sheets)
        left = replace(sheet, chapters=chapters, related=related) if chapters else None
        if left and sheet.grid.chosen in self.absent:  # a page about a chosen record, of which no record can be chosen now
            left = replace(left, title=chapters[0].name, about="", grid=replace(sheet.grid, chosen=""))
        return left and retold(left, lambda text: said_without(text, {*self.names, *self.absent_sheets}))

    def _chapter(self, chapter: Chapter) -> Chapter | None:
        holders = tuple(kept for holder in chapter.holders if (kept := self._block(holder) if isinstance(holder, Block) else holder))
        if isinstance(chapter.view, LogView):
            view = chapter.view.without(chapter.holders[0].key, self.absent)
        else:
            view = tuple(kept for band in chapter.view if (kept := band.without(self.absent, self.absent_sheets)))
        return replace(chapter, holders=holders, view=view) if holders else None

    def _block(self, block: Block) -> Block | None:
        groups = (
            replace(group, fields=tuple(each for each in group.fields if block.full_key(each.key) not in self.absent)) for group in block.groups
        )
        groups = tuple(group for group in groups if group.fields)
        rules = tuple(rule for rule in block.rules if not any(block.full_key(word) in self.absent for word in rule.text.words))
        left = {"repeated": tuple(key for key in block.repeated if block.full_key(key) not in self.absent)} if isinstance(block, Log) else {}
        distinct = tuple(each for each in block.distinct if block.full_key(each.key) not in self.absent)
        return replace(block, groups=groups, rules=rules, distinct=distinct, **left) if groups else None


def _readers(full: Planner) -> dict[str, set[str]]:
    """Full key of a field -> the full keys of the results that read it."""
    readers = defaultdict(set)
    for block in full.blocks.values():
        for result in block.results:
            for word in result.words:
                readers[full.meaning(block, word).key].add(block.full_key(result.key))
    return readers


def _must_go(field: Input | Result, words: Mapping[str, Meaning], absent: Collection[str], readers: set[str]) -> bool:
    """Whether a field is nothing without the absent ones: it could only be blank, or only absent results read it."""
    if isinstance(field, Input):
        return getattr(field.domain, "of", None) in absent or bool(readers) and readers <= absent
    lost = {word for word, meaning in words.items() if meaning.key in absent}
    needed = {word for word in lost if not words[word].is_column and not field.may_miss(word, words[word].field)}
    summed, lookups = field.text.summed, field.text.taken_by(LOOKUP)
    return (
        bool(needed)
        or bool(field.condition.alternatives) and field.condition.alternatives <= lost
        or bool(lost & field.text.indexed)
        or bool(lost & lookups)
        or bool(summed) and all(lost & words for words in summed)
    )
