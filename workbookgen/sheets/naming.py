"""Names of sheets in texts.

A text calls a chapter by its name, "the sheet Guide", since chapters are what settings leave out. A spinner reads the
name of the sheet that the chapter is on. If the chapter is left out, the clause that points to it goes too.
"""

import re
from collections.abc import Callable, Collection, Mapping
from dataclasses import replace

from workbookgen.errors import DescriptionError
from workbookgen.language.domains import Choice
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Block, Chapter, Holder, Sheet
from workbookgen.language.views import Band, LogView, Prose, Section

_PAIR = re.compile(r"sheets (\w+) (and|or) (\w+)")  # "sheets Skeins and Reels"
_NAMED = re.compile(r"\bthe sheets? ([A-Z]\w*)(?: (?:and|or) ([A-Z]\w*))?")
_CLAUSE_END = re.compile(r"((?<=[a-z)%][.;])\s+)")  # the white space after a clause

Say = Callable[[str], str]


def said_without(text: str, names: Collection[str]) -> str:
    """A text without the clauses that point to these chapters."""
    text = _PAIR.sub(lambda pair: f"sheet {stays[0]}" if len(stays := [name for name in pair.group(1, 3) if name not in names]) == 1 else pair[0], text)
    pieces = _CLAUSE_END.split(text)
    kept = [
        (clause, gap)
        for clause, gap in zip(pieces[::2], ["", *pieces[1::2]], strict=True)
        if not ("sheet" in clause and any(re.search(rf"\b{name}\b", clause) for name in names))
    ]
    said = "".join(gap + clause for clause, gap in kept).strip()
    said = said[:1].upper() + said[1:]
    return f"{said[:-1]}." if said.endswith(";") else said


def said_with(text: str, sheet_of: Mapping[str, str], here: str = "") -> str:
    """A text with names of sheets in place of chapters; `here` is the sheet that the text is on."""
    if "sheet" not in text:
        return text

    def pair(found: re.Match) -> str:
        first, joined, second = (sheet_of.get(word, word) for word in found.groups())
        return f"sheet {first}" if first == second else f"sheets {first} {joined} {second}"

    names = "|".join(map(re.escape, sheet_of))
    said = re.sub(rf"\bsheet ({names})\b", lambda found: f"sheet {sheet_of[found[1]]}", _PAIR.sub(pair, text))
    if astray := [name for found in _NAMED.findall(text) for name in found if name and name not in {*sheet_of, *sheet_of.values()}]:
        raise DescriptionError.at(f"sheet {here}", f"the text {text!r} names the sheet {astray[0]}, which is not there.")
    return re.sub(rf"\bthe sheet {re.escape(here)}\b", "this sheet", said) if here else said


def sheets_of_chapters(sheets: Collection[Sheet]) -> dict[str, str]:
    """Name of every chapter -> name of the sheet that it is on."""
    return {chapter.name: sheet.name for sheet in sheets for chapter in sheet.chapters}


def retold(sheet: Sheet, say: Say) -> Sheet:
    """A sheet with `say` applied to its texts about other sheets."""
    return replace(sheet, about=say(sheet.about), chapters=tuple(_chapter(each, say, sheet.name) for each in sheet.chapters))


def _chapter(chapter: Chapter, say: Say, here: str) -> Chapter:
    view = chapter.view if isinstance(chapter.view, LogView) else tuple(Band(tuple(_section(each, say) for each in band.sections)) for band in chapter.view)
    return replace(chapter, holders=tuple(_holder(each, say, here) for each in chapter.holders), view=view)


def _section(section: Section, say: Say) -> Section:
    if isinstance(section, Prose) and not section.is_caution and not section.is_verbatim:
        return replace(section, sentences=tuple(filter(None, map(say, section.sentences))))
    return section


def _holder(holder: Holder, say: Say, here: str) -> Holder:
    if not isinstance(holder, Block):
        return holder
    groups = tuple(replace(group, fields=tuple(_field(each, say, here) for each in group.fields)) for group in holder.groups)
    return replace(holder, groups=groups, about=say(holder.about))


def _field(field: Input | Result, say: Say, here: str) -> Input | Result:
    if isinstance(field, Input) and isinstance(field.domain, Choice) and field.domain.sheet == here:
        field = replace(field, domain=replace(field.domain, is_here=True))
    name = "help" if isinstance(field, Input) else "note"
    before = getattr(field, name)
    return field if (after := say(before)) == before else replace(field, **{name: after})
