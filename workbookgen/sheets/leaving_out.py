"""Leaving sheets out without breaking the others.

The fields of a left-out sheet are always blank. An input that chooses from it falls with it, and so does every result
that could then only be blank, every input that only such results read, every rule about a fallen input, every chart
of fallen numbers. What can do without stays, and finds a blank in place of the fallen word. Texts lose the clauses
that point to a missing sheet; cautions are never lost, so those of a left-out sheet move to the first one.
"""

from collections import defaultdict
from collections.abc import Collection
from dataclasses import dataclass, replace

from workbookgen.language.fields import Input, Result
from workbookgen.language.forms import LOOKUP
from workbookgen.language.parts import Block, Chapter, Log, Sheet
from workbookgen.language.planner import Planner
from workbookgen.language.views import LogView, view_without
from workbookgen.sheets.naming import retold, said_without


@dataclass(frozen=True)
class Leaving:
    """A planner of all sheets, the names of the chapters left out, and the full keys of the fields that fall."""

    full: Planner
    names: Collection[str]
    fallen: frozenset[str]

    @property
    def gone(self) -> frozenset[str]:
        """The sheets of which no chapter stays."""
        return frozenset(sheet.name for sheet in self.full.sheets if all(chapter.name in self.names for chapter in sheet.chapters))

    @property
    def cautions(self) -> tuple[str, ...]:
        """What the left-out chapters warn about."""
        return tuple(caution for sheet in self.full.sheets for chapter in sheet.chapters if chapter.name in self.names for caution in chapter.cautions)

    def kept(self, sheet: Sheet) -> Sheet | None:
        """What remains of a sheet, without what falls."""
        chapters = tuple(kept for chapter in sheet.chapters if chapter.name not in self.names and (kept := self._chapter(chapter)))
        related = tuple(name for name in sheet.related if name not in self.gone)
        left = replace(sheet, chapters=chapters, related=related) if chapters else None
        if left and sheet.grid.chosen in self.fallen:  # nothing is chosen there any more, and the sheet has no other purpose
            left = replace(left, title=chapters[0].name, about="", grid=replace(sheet.grid, chosen=""))
        return left and retold(left, lambda text: said_without(text, {*self.names, *self.gone}))

    def _chapter(self, chapter: Chapter) -> Chapter | None:
        holders = tuple(kept for holder in chapter.holders if (kept := self._block(holder) if isinstance(holder, Block) else holder))
        if isinstance(chapter.view, LogView):
            view = view_without(chapter.view, chapter.holders[0].key, self.fallen)
        else:
            view = tuple(kept for band in chapter.view if (kept := band.without(self.fallen, self.gone)))
        return replace(chapter, holders=holders, view=view) if holders else None

    def _block(self, block: Block) -> Block | None:
        groups = (
            replace(group, fields=tuple(each for each in group.fields if f"{block.key}_{each.key}" not in self.fallen)) for group in block.groups
        )
        groups = tuple(group for group in groups if group.fields)
        rules = tuple(rule for rule in block.rules if not any(f"{block.key}_{word}" in self.fallen for word in rule.text.words))
        left = {"repeated": tuple(key for key in block.repeated if f"{block.key}_{key}" not in self.fallen)} if isinstance(block, Log) else {}
        distinct = tuple(each for each in block.distinct if f"{block.key}_{each.key}" not in self.fallen)
        return replace(block, groups=groups, rules=rules, distinct=distinct, **left) if groups else None


def leaving(full: Planner, names: Collection[str]) -> Leaving:
    """What falls when these sheets are left out."""
    chapters = [chapter for sheet in full.sheets for chapter in sheet.chapters]
    blocks = [(chapter.name in names, part) for chapter in chapters for part in chapter.holders if isinstance(part, Block)]
    fallen = frozenset(f"{block.key}_{field.key}" for is_out, block in blocks if is_out for field in block.fields)
    readers = _readers(full)
    while more := {
        key
        for is_out, block in blocks
        if not is_out
        for field in block.fields
        if (key := f"{block.key}_{field.key}") not in fallen and _falls(full, block, field, fallen, readers[key])
    }:
        fallen |= more
    return Leaving(full, names, fallen)


def _readers(full: Planner) -> dict[str, set[str]]:
    """Full key of a field -> the full keys of the results that read it."""
    readers = defaultdict(set)
    for block in full.blocks.values():
        for result in block.results:
            for word in result.words:
                readers[full.meaning(block, word).key].add(f"{block.key}_{result.key}")
    return readers


def _falls(full: Planner, block: Block, field: Input | Result, fallen: Collection[str], readers: set[str]) -> bool:
    if isinstance(field, Input):
        return getattr(field.domain, "of", None) in fallen or bool(readers) and readers <= fallen
    words = {word: full.meaning(block, word) for word in field.words}
    lost = {word for word, meaning in words.items() if meaning.key in fallen}
    needed = {word for word in lost if not words[word].is_column and not field.may_miss(word, words[word].field)}
    summed, lookups = field.text.summed, field.text.taken_by(LOOKUP)
    return (
        bool(needed)
        or bool(field.condition.alternatives) and field.condition.alternatives <= lost
        or bool(lost & field.text.indexed)
        or bool(lost & lookups)
        or bool(summed) and all(lost & words for words in summed)
    )
