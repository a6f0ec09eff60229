"""Leaving sheets out without breaking the others.

What stands on a left-out sheet is blank ever after. An input that chooses from it falls with
it, and so does every result that can then be nothing but blank, every input that only such
results read, every rule that speaks of a fallen input, every picture of fallen numbers. What
can do without stays, and finds blank where the fallen word stood. Texts lose the clauses that
send one to a sheet which is not there; cautions never go, so those of a left-out sheet move
to the first one.
"""

import re
from collections import defaultdict
from collections.abc import Collection
from dataclasses import dataclass, replace

from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Block, Chapter, Planner, Sheet
from workbookgen.language.views import LogView, view_without

_PAIR = re.compile(r"sheets (\w+) (?:and|or) (\w+)")
_CLAUSE_END = re.compile(r"((?<=[a-z)%][.;])\s+)")


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
        """What the left-out chapters warn of."""
        return tuple(caution for sheet in self.full.sheets for chapter in sheet.chapters if chapter.name in self.names for caution in chapter.cautions)

    def kept(self, sheet: Sheet) -> Sheet | None:
        """What stays of a sheet, without what falls."""
        chapters = tuple(kept for chapter in sheet.chapters if chapter.name not in self.names and (kept := self._chapter(chapter)))
        near = tuple(name for name in sheet.near if name not in self.gone)
        return replace(sheet, about=self._said(sheet.about), chapters=chapters, near=near) if chapters else None

    def _chapter(self, chapter: Chapter) -> Chapter | None:
        holders = tuple(kept for holder in chapter.holders if (kept := self._block(holder) if isinstance(holder, Block) else holder))
        if isinstance(chapter.view, LogView):
            view = view_without(chapter.view, chapter.holders[0].key, self.fallen)
        else:
            view = tuple(kept for band in chapter.view if (kept := band.without(self.fallen, self.gone)))
        return replace(chapter, holders=holders, view=view) if holders else None

    def _block(self, block: Block) -> Block | None:
        groups = (
            replace(group, fields=tuple(self._field(each) for each in group.fields if f"{block.key}_{each.key}" not in self.fallen)) for group in block.groups
        )
        groups = tuple(group for group in groups if group.fields)
        rules = tuple(rule for rule in block.rules if not any(f"{block.key}_{word}" in self.fallen for word in rule.text.words))
        return replace(block, groups=groups, rules=rules, about=self._said(block.about)) if groups else None

    def _field(self, field: Input | Result) -> Input | Result:
        return replace(field, help=self._said(field.help)) if isinstance(field, Input) else replace(field, note=self._said(field.note))

    def _said(self, text: str) -> str:
        return said_without(text, self.gone)


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


def said_without(text: str, names: Collection[str]) -> str:
    """A text without the clauses that send one to these sheets."""
    text = _PAIR.sub(lambda pair: f"sheet {stays[0]}" if len(stays := [name for name in pair.groups() if name not in names]) == 1 else pair[0], text)
    pieces = _CLAUSE_END.split(text)
    kept = [
        (clause, gap)
        for clause, gap in zip(pieces[::2], ["", *pieces[1::2]], strict=True)
        if not ("sheet" in clause and any(re.search(rf"\b{name}\b", clause) for name in names))
    ]
    said = "".join(gap + clause for clause, gap in kept).strip()
    said = said[:1].upper() + said[1:]
    return f"{said[:-1]}." if said.endswith(";") else said


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
    sums = field.text.sums
    return (
        bool(needed)
        or any(lost & set(pick) for pick in field.text.picks)
        or bool(sums) and all(lost & set(each) for each in sums)
    )
