"""What can be wrong with a planner as a whole, though each part of it is fine.

Words and views that refer to no field, formulas that do not fit their references, starting values that their cells
refuse, examples that do not fit their formula, circles: each fault says where it is and what to write instead.
"""

import re
from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping
from difflib import get_close_matches
from graphlib import CycleError, TopologicalSorter
from typing import Any, Protocol

from workbookgen.errors import Fault
from workbookgen.language import dimensions
from workbookgen.language.automatic import FIRST, MARK, MESSAGE, OPEN, QUESTIONS, UNFINISHED
from workbookgen.language.domains import Choice, Domain
from workbookgen.language.fields import Input, Result
from workbookgen.language.forms import LOOKUP, SUMS
from workbookgen.language.parts import Block, Card, Holder, Log, Sheet, Table, dimension_of
from workbookgen.language.proofs import Proof
from workbookgen.language.sentences import symbol_of
from workbookgen.language.views import Listing, LogView

NAME_OF_A_SHEET = re.compile(r"[A-Z]\w{0,30}( \w+)*")
LONGEST_NAME = 31  # letters of a sheet's name: the format's limit


class Planner(Protocol):
    """What is asked here of a `planner.Planner`, which uses this module."""

    system: str
    sheets: tuple[Sheet, ...]
    holders: tuple[Holder, ...]
    absent: Mapping[str, Any]
    blocks: Mapping[str, Block]
    tables: Mapping[str, Table]
    proofs: tuple[Proof, ...]
    by_key: Mapping[str, tuple]  # full key -> the holder of the field, and the field
    automatic: Mapping[str, tuple]

    def full_keys(self) -> list[str]: ...

    def meaning(self, block: Block | None, word: str) -> Any: ...

    def found(self, block: Block | None, word: str) -> Any: ...

    def sheet_of(self, key: str) -> str | None: ...


def faults(planner: Planner) -> list[Fault]:
    """Everything that is wrong with a planner. What rests on names and words comes after these."""
    return (
        _names(planner)
        or _words(planner)
        or [*_of_fields(planner), *_starting_values(planner), *_of_sheets(planner)]
        or _circles(planner)
    )


def _names(planner: Planner) -> list[Fault]:
    """Names of sheets, chapters, fields and proofs that are malformed or used twice."""
    sheets = [sheet.name for sheet in planner.sheets]
    chapters = {sheet.name: [chapter.name for chapter in sheet.chapters] for sheet in planner.sheets}
    of_all = [name for of_sheet in chapters.values() for name in of_sheet]
    keys = _twice(holder.key for holder in planner.holders)
    numbers = [proof.number for proof in planner.proofs]
    unfit = [name for name in sheets if not NAME_OF_A_SHEET.fullmatch(name) or len(name) > LONGEST_NAME]
    others = [name for name in sheets if name in of_all and name not in chapters[name]]
    wanted = f"a sheet's name begins with a capital letter and has letters, digits and blanks, {LONGEST_NAME} at most."
    same = "another sheet has this name; a spreadsheet takes small and capital letters for one."
    of_a_chapter = "a chapter of another sheet has this name, and texts name chapters: give it another."
    return [
        *(Fault(f"sheet {name}", wanted) for name in unfit),
        *(Fault(f"sheet {name}", same) for name in _twice(map(str.lower, sheets))),
        *(Fault(f"chapter {name}", "another chapter has this name too.") for name in _twice(of_all)),
        *(Fault(f"sheet {name}", of_a_chapter) for name in others),
        *(Fault(f"proof {number}", "another example has this number.") for number in _twice(numbers)),
        *(Fault(f"block {key}", "another block or table has this key too.") for key in keys),
        *(
            Fault(f"field {key}", "another field has this full key too.")
            for key in _twice(planner.full_keys())
            if not keys
        ),
    ]


def _words(planner: Planner) -> list[Fault]:
    """Words of formulas that are no field, and inputs that choose from a list that is not there."""

    def sentences(block: Block, each: Input | Result) -> Iterator[str]:
        return _choice_faults(planner, each.domain) if isinstance(each, Input) else _word_faults(planner, block, each)

    return [
        Fault(f"field {block.full_key(each.key)}", f"{sentence}.")
        for block in planner.blocks.values()
        for each in block.fields
        for sentence in sentences(block, each)
    ]


def _starting_values(planner: Planner) -> list[Fault]:
    """Starting values that their cells would refuse, or that belong to no field."""
    faults, started = [], set()
    for block in planner.blocks.values():
        for each in block.inputs:
            value = each.first(planner.system)
            if value is not None and not isinstance(each.domain, Choice) and not each.domain.accepts(value):
                wanted = each.domain.wanted(symbol_of(each, planner.system))
                faults.append(Fault(f"field {block.full_key(each.key)}", f"it starts as {value}; give {wanted}."))
        started |= {block.full_key(key) for record in getattr(block, "starts_with", ()) for key in record}
    unknown = started - planner.by_key.keys() - planner.absent.keys()
    return faults + [
        Fault(f"field {key}", "lines of its log start with it, and it is no field.") for key in sorted(unknown)
    ]


def _of_fields(planner: Planner) -> Iterator[Fault]:
    """Results that do not fit their references, and keys that are also the full key of another field."""
    for block in planner.blocks.values():
        for result in block.results:
            for sentence in _mismatches(planner, block, result):
                yield Fault(f"field {block.full_key(result.key)}", f"{sentence}.")
    for block in planner.blocks.values():
        for each in block.fields:
            if each.key in planner.by_key:
                yield Fault(f"field {block.full_key(each.key)}", f"{each.key} is also the full key of another field.")


def _mismatches(planner: Planner, block: Block, result: Result) -> list[str]:
    """Words that are no parameter of the reference, and the reverse. A table's fixed facts need no parameter."""
    taken, words = set(result.arguments.values()), set(result.words)
    facts = {word for word in words if isinstance(planner.meaning(block, word).holder, Table)}
    unused, strange = sorted(taken - words), sorted(words - taken - facts)
    mismatches = [f"its formula never uses {word}, which the reference takes" for word in unused]
    mismatches += [f"its formula uses {word}, which the reference does not take" for word in strange]
    return mismatches or _other_kinds(planner, block, result)


def _other_kinds(planner: Planner, block: Block, result: Result) -> list[str]:
    """Words whose dimension is not the one that the reference takes, or a result whose is not the one it gives."""
    system, words = planner.system, result.arguments
    kinds = {word: dimension_of(planner.meaning(block, word).field, system) for word in words.values()}
    return dimensions.objections(result.reference, words, kinds, dimension_of(result, system))


def _of_sheets(planner: Planner) -> Iterator[Fault]:
    """What is wrong with the views of each sheet, and with the published examples."""
    for sheet in planner.sheets:
        for sentence in _views(sheet, planner):
            yield Fault(f"sheet {sheet.name}", f"{sentence}.")
    for proof in planner.proofs:
        for sentence in _of_proof(proof, planner):
            yield Fault(f"proof {proof.number}", f"{sentence}.")


def _circles(planner: Planner) -> list[Fault]:
    """Fields that depend on each other in a circle."""
    try:
        TopologicalSorter(_dependencies(planner)).prepare()
    except CycleError as circle:
        return [Fault(" < ".join(circle.args[1]), "these fields depend on each other in a circle.")]
    return []


def _dependencies(planner: Planner) -> dict[str, set[str]]:
    """Full key of every result, and of the messages that questions are part of -> the full keys it depends on."""
    results = {
        block.full_key(each.key): {planner.meaning(block, word).key for word in each.words}
        for block in planner.blocks.values()
        for each in block.results
    }
    automatic = {
        key: {block.full_key(result.key) for result in block.questioned}
        for key, (block, each) in planner.automatic.items()
        if each in (MESSAGE, MARK, FIRST, OPEN, QUESTIONS, UNFINISHED)
    }
    return results | automatic


def _views(sheet: Sheet, planner: Planner) -> list[str]:
    """Fields that a sheet's views lack, show twice or take from another sheet, and links that lead nowhere."""
    everywhere = {*planner.by_key, *planner.automatic, *planner.absent}
    drawn = [key for section in sheet.sections for key in getattr(section, "drawn", ())]
    faults = [*_shown_faults(sheet), *_misplaced(sheet)]
    faults += [
        f"its chart draws {key}, which is no field{_meant(key, everywhere)}" for key in drawn if key not in everywhere
    ]
    faults += _link_faults(sheet, planner, everywhere)
    return list(dict.fromkeys(faults))


def _shown_faults(sheet: Sheet) -> Iterator[str]:
    """Fields that a sheet shows twice or that belong to another, and inputs of cards that it does not show."""
    own = {
        holder.full_key(key)
        for holder in sheet.holders
        for key in (*holder.by_key, *getattr(holder, "automatic_by_key", ()))
    }
    for key in sheet.shown:
        if key not in own:
            yield f"its view shows {key}, which is no field of this sheet{_meant(key, own)}"
    for key in _twice(sheet.shown):
        yield f"its view shows {key} twice"
    if sheet.log_view:
        return
    for card in (holder for holder in sheet.holders if isinstance(holder, Card)):
        for each in card.inputs:
            if card.full_key(each.key) not in sheet.shown:
                yield f"no section of it shows {card.full_key(each.key)}, so nobody finds where to type it"


def _misplaced(sheet: Sheet) -> Iterator[str]:
    """Results where a log's view names the inputs that one types, and inputs where it names answers."""
    listings = [section for section in sheet.sections if isinstance(section, Listing)]
    logs = {log.key: log for log in sheet.logs}
    views = [(logs[each.block], each.view) for each in listings if each.block in logs]
    for log, view in [*views, *([(sheet.logs[0], sheet.log_view)] if sheet.log_view else [])]:
        yield from _of_the_other_kind(log, view)


def _of_the_other_kind(log: Log, view: LogView) -> Iterator[str]:
    answers = [key for _, keys in view.answers for key in keys.split()]
    for key in view.typed.split():
        if isinstance(log.by_key.get(key), Result):
            yield f"its view has {log.full_key(key)} among what is typed, and that is a result: name it in answers"
    for key in answers:
        if isinstance(log.by_key.get(key), Input):
            yield f"its view has {log.full_key(key)} among the answers, and that is an input: name it in typed"


def _link_faults(sheet: Sheet, planner: Planner, everywhere: Collection[str]) -> Iterator[str]:
    """Links to sheets or fields that do not exist, or to a field that is on another sheet than they say."""
    sheets = [each.name for each in planner.sheets]
    links = [link for section in sheet.sections for link in section.links]
    for name in (*sheet.related, *(link.sheet for link in links)):
        if name not in sheets:
            yield f"its link to {name} leads nowhere{_meant(name, sheets)}"
    to_fields = [link for link in links if link.field]
    for link in to_fields:
        if link.field not in everywhere:
            yield f"its link to {link.field} leads nowhere{_meant(link.field, everywhere)}"
    for link in to_fields:
        place = planner.sheet_of(link.field)
        if link.sheet in sheets and place not in (None, link.sheet):
            yield f"its link leads to {link.field} on the sheet {link.sheet}, and that stands on the sheet {place}"


def _of_proof(proof: Proof, planner: Planner) -> list[str]:
    """Words of the formula for which the example gives no value, values for words that it does not have, and
    printed units that do not fit the reference.
    """
    block, result = planner.by_key.get(proof.result, (None, None))
    if not isinstance(result, Result):
        results = [key for key, (_, each) in planner.by_key.items() if isinstance(each, Result)]
        return [f"{proof.result} is no result of a sheet{_meant(proof.result, results)}"]
    asked = [word for word in result.words if planner.meaning(block, word).holder.key not in planner.tables]
    faults = [f"{word} is not given" for word in asked if word not in proof.given]
    faults += [
        f"{word} is given, and the formula of {proof.result} has no such word"
        for word in proof.given
        if word not in result.words
    ]
    if faults:
        return faults
    printed = {word: _dimension_of(unit) for word, (_, unit) in proof.given.items()}
    arguments = {name: word for name, word in result.arguments.items() if word in printed}
    return dimensions.objections(result.reference, arguments, printed, _dimension_of(proof.unit))


def _dimension_of(unit: str) -> dimensions.Dimension:
    """The dimension of a value printed in this unit; a text has no unit."""
    return dimensions.dimension(unit) if unit else dimensions.TEXT


def _word_faults(planner: Planner, block: Block, result: Result) -> Iterator[str]:
    known = {*block.by_key, *block.automatic_by_key}
    for word in result.words:
        if planner.found(block, word) is None:
            yield f"its formula names {word}, which is no field{_meant(word, known) or _meant(word, planner.by_key)}"
    for word in dict.fromkeys(call.keys[0] for call in result.text.calls_to(LOOKUP) if call.keys[0]):
        found = planner.found(block, word)
        if found and isinstance(found.field, Input) and isinstance(found.field.domain, Choice):
            instead = f"look up {_beside(found.field.key)}"
            yield f"its formula looks up {word}, which was chosen and may be of no list: {instead}"
    for word in dict.fromkeys(call.keys[1] for call in result.text.calls_to(LOOKUP, *SUMS) if call.keys[1]):
        found = planner.found(block, word)
        if found and found.is_column and isinstance(found.field, Input):
            instead = f"look in {_beside(found.field.key)}"
            yield f"its formula looks for names in {word}, where an error may be typed: {instead}"


def _choice_faults(planner: Planner, domain: Domain) -> Iterator[str]:
    if isinstance(domain, Choice) and domain.of not in planner.absent:
        place = planner.sheet_of(domain.of)
        _, found = planner.by_key.get(domain.of, (None, None))
        if isinstance(found, Input):
            yield f"it chooses from {domain.of}, where an error may be typed: choose from {_beside(found.key)}"
        elif place is None:
            yield f"it chooses from {domain.of}, which is no field{_meant(domain.of, planner.by_key)}"
        elif place != domain.sheet:
            yield f"it tells people to choose on the sheet {domain.sheet}, and {domain.of} stands on the sheet {place}"


def _beside(key: str) -> str:
    """The result to name in place of an input; an error value typed into the input stays in its own line."""
    return f'the result beside it that is repeated(..., "{key}")'


def _meant(word: str, known: Collection[str]) -> str:
    """A hint at the name that may have been meant by one that does not exist."""
    near = [key for key in known if key.endswith(f"_{word}")] or get_close_matches(word, known, n=1, cutoff=0.75)
    return f"; {near[0]} is one" if near else ""


def _twice(names: Iterable[str]) -> list[str]:
    return sorted(name for name, times in Counter(names).items() if times > 1)
