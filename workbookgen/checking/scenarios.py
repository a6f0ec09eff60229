"""Scenarios: values for every input, drawn from the declared domains with a seed.

Many records are what a careful person would type, with some optional cells left empty. Others have one thing at the
limit or wrong: the exact edge of a domain, a tiny step beyond it, the same number as in the next cell, a blank, text
where a number belongs, a name that is on no list or on it twice. A few are drawn wildly, and some are not started at
all: blank, or a card as in a new planner, perhaps with one of its cells changed. These moods were chosen by changed
formulas (tests/mutation). A planner may also be drawn as someone who leaves out little would fill it in, so a few
sets show something almost everywhere.
"""

from collections.abc import Sequence
from math import ceil
from random import Random

from workbookgen.checking.messages import bites
from workbookgen.language.domains import LEAST_OF_ALL, Choice, Date, Name, Note, Number
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input
from workbookgen.language.parts import Block, Card, Log
from workbookgen.language.planner import Planner

WHOLE_EVERY = 4  # of the check's sets is a whole one
# How often a record is drawn in each mood: a card, of which a planner has one, and a log's.
MOODS = {False: (0.4, 0.45, 0.1, 0.05), True: (0.6, 0.26, 0.08, 0.06)}
# Of whole records: how often an optional cell is blank, and one in which one chooses, how often what breaks a rule is
# drawn again before it is rather left out, and how many lines go on with one name.
LEFT_OUT, TRIES, TOGETHER = (0.2, 0.05), 20, 4
NONSENSE = ("abc", "12,5", "1 lb", "-", "=1", "5/6/2026", "n/a", "*", "7")


def scenario(planner: Planner, seed: int, lines: int | None = None, is_whole: bool = False) -> Entries:
    """One assignment of values to all inputs of a planner, or to the first so many lines of its logs.

    It `is_whole` where records are drawn as by someone who leaves out little, and chooses what was typed first, so
    lines refer to each other and pages have something to show.
    """
    draw = Random(seed)
    entries: dict[str, tuple[Entry, ...]] = {}
    for block in _named_first(planner):
        records = [
            (_whole if is_whole else _record)(planner, block, row, entries, draw)
            for row in range(min(block.rows, lines or block.rows))
        ]
        for each in block.inputs:
            entries[f"{block.key}_{each.key}"] = (
                *(record[each.key] for record in records),
                *[None] * (block.rows - len(records)),
            )
    return entries


def scenario_of_check(planner: Planner, seed: int) -> Entries:
    """The scenario that the check draws by this seed: some are whole, since blind drawing seldom reaches the weeks
    of a project."""
    return scenario(planner, seed, is_whole=seed % WHOLE_EVERY == 0)


def _named_first(planner: Planner) -> Sequence[Block]:
    """Blocks whose records others choose by name come before those that choose, and cards last."""
    order: dict[str, Block] = {}

    def take(block: Block, above: tuple[str, ...] = ()) -> None:
        for each in block.inputs:
            named = planner.by_key[each.domain.of][0] if isinstance(each.domain, Choice) else block
            if isinstance(named, Block) and named.key not in (*above, block.key):
                take(named, (*above, block.key))
        order.setdefault(block.key, block)

    for block in sorted(planner.blocks.values(), key=lambda block: isinstance(block, Card)):
        if block.inputs:
            take(block)
    return list(order.values())


def _record(planner: Planner, block: Block, row: int, entries: dict, draw: Random) -> dict[str, Entry]:
    [mood] = draw.choices(("careful", "one slip", "wild", "not begun"), MOODS[isinstance(block, Log)])
    if mood == "not begun":
        return _not_begun(planner, block, row, entries, draw)
    slip = draw.randrange(len(block.inputs)) if mood == "one slip" else -1
    record = {}
    for index, each in enumerate(block.inputs):
        wild = mood == "wild" or index == slip
        if index == slip and isinstance(each.domain, Number) and draw.random() < 0.7:
            record[each.key] = _at_the_limit(each.domain, record, draw)
        elif wild:
            record[each.key] = _wild(planner, each, row, entries, draw)
        elif not each.needed and draw.random() < 0.4:
            record[each.key] = None
        else:
            record[each.key] = _careful(planner, each, row, entries, draw)
    return record


def _whole(planner: Planner, block: Block, row: int, entries: dict, draw: Random) -> dict[str, Entry]:
    """A record of which little is left out, and that breaks no rule. A card may be as a new planner brings it."""

    def drawn(each: Input, left_out: float) -> Entry:
        is_left_out = not each.needed and draw.random() < left_out
        return None if is_left_out else _usual(planner, block, each, row, entries, draw)

    is_as_new = draw.random() < 0.5
    record = {
        each.key: each.first(planner.system)
        if is_as_new and each.starts_as is not None
        else drawn(each, LEFT_OUT[isinstance(each.domain, Choice)])
        for each in block.inputs
    }
    of_inputs = [rule for rule in block.rules if set(rule.text.words) <= set(record)]
    for left_out in (*[0.2] * TRIES, *[0.8] * TRIES):
        if not (broken := next((rule for rule in of_inputs if bites(rule, block, record)), None)):
            break
        words = broken.text.words
        record |= {word: drawn(block.by_key[word], left_out) for word in words if word != words[row % len(words)]}
    return record


def _usual(planner: Planner, block: Block, each: Input, row: int, entries: dict, draw: Random) -> Entry:
    """Lines keep a choice for some lines, and count them; a card is about a name that these use."""
    match each.domain:
        case Number() as domain if domain.whole and domain.most and domain.most <= TOGETHER:
            return float(domain.least + row % (domain.most - domain.least + 1))
        case Number() as domain if not domain.whole and min(domain.most or domain.below, 50.0) > 5.0:
            low, high = max(domain.least or domain.above or 0.0, 1.0), min(domain.most or domain.below, 50.0)
            return round(low * (high / low) ** draw.random(), 2)
        case Choice() as domain:
            names = _names(planner, domain, entries)
            if not names:
                return None
            if not isinstance(block, Log):
                return draw.choice(names[:2])
            is_name = "listed" in block.by_key and each.key in block.by_key["listed"].words
            return (
                names[(row if is_name else row // TOGETHER) % len(names)] if draw.random() < 0.9 else draw.choice(names)
            )
        case _:
            return _careful(planner, each, row, entries, draw)


def _not_begun(planner: Planner, block: Block, row: int, entries: dict, draw: Random) -> dict[str, Entry]:
    record: dict[str, Entry] = {each.key: each.first(planner.system) for each in block.inputs}
    starting = [each for each in block.inputs if each.starts_as is not None]
    if starting and (how := draw.choice(("blank", "as it comes", "one changed"))) != "as it comes":
        changed = starting if how == "blank" else [draw.choice(starting)]
        record |= {
            each.key: None if how == "blank" else _careful(planner, each, row, entries, draw) for each in changed
        }
    return record


def _careful(planner: Planner, each: Input, row: int, entries: dict, draw: Random) -> Entry:
    match each.domain:
        case Number() as domain:
            drawn = _inside(domain, draw)
            return max(float(ceil(domain.least or 0)), float(round(drawn))) if domain.whole else drawn
        case Date() as domain:
            return float(draw.randint(int(domain.least), int(domain.most)))
        case Name() | Note():
            return f"{each.label} {row + 1}"
        case Choice() as domain:
            names = _names(planner, domain, entries)
            return draw.choice(names) if names else None


def _inside(domain: Number, draw: Random) -> float:
    """A number of the domain: spread over its orders of magnitude, and sometimes its exact edge."""
    low = domain.least if domain.least is not None else domain.above or 0.0
    high = domain.most if domain.most is not None else domain.below
    if draw.random() < 0.06:
        edges = [edge for edge in (domain.least, domain.most) if edge is not None]
        if edges:
            return float(draw.choice(edges))
    if high <= 2:
        return low + (high - low) * draw.uniform(0.001, 0.999)
    usual = min(high, 500.0)
    return round(max(low, 0.5) * (usual / max(low, 0.5)) ** draw.random(), draw.randrange(4)) or 1.0


def _at_the_limit(domain: Number, record: dict[str, Entry], draw: Random) -> float:
    """The edge of a domain, a tiny step off it, or the same number as in a previous cell."""
    low = domain.least if domain.least is not None else domain.above
    high = domain.most if domain.most is not None else domain.below
    beside = [value for value in record.values() if isinstance(value, float)]
    hair = 0.004 * (abs(high) or 1.0)
    choices = [low, low, high, high, high + hair, low - (0.004 * abs(low) or 0.5), 0.0, *beside]
    choices += [LEAST_OF_ALL, LEAST_OF_ALL / 2] * domain.begins_at_nothing
    return float(draw.choice(choices)) + (0.5 if domain.whole and draw.random() < 0.2 else 0.0)


def _wild(planner: Planner, each: Input, row: int, entries: dict, draw: Random) -> Entry:
    if draw.random() < 0.3:
        return None
    match each.domain:
        case Number() as domain:
            outside = [-1.0, 0.0, -1e6, 1e12, 1e-9]
            outside += [edge for edge in (domain.least, domain.above, domain.most, domain.below) if edge is not None]
            outside += [edge * 1.001 for edge in (domain.most, domain.below) if edge is not None]
            return draw.choice(NONSENSE) if draw.random() < 0.4 else float(draw.choice(outside))
        case Date() as domain:
            edges = [domain.least, domain.least - 1, domain.most, domain.most + 1, -1.0, 0.5]
            return draw.choice(NONSENSE) if draw.random() < 0.2 else float(draw.choice(edges))
        case Name() | Note() as domain:
            if draw.random() < 0.1:
                return float(draw.randint(1, 4))
            return draw.choice(
                [
                    f"{each.label} {max(row, 1)}",
                    f"{each.label} {row + 2}",
                    "x" * domain.longest,
                    "x" * (domain.longest + 1),
                    "*",
                    'a "b" & <c>',
                ]
            )
        case Choice() as domain:
            names = _names(planner, domain, entries)
            others = (
                ["on no list", "*", "?"] + [name.upper() for name in names[:3]] + [f" {name}" for name in names[:1]]
            )
            return draw.choice(others) if draw.random() < 0.8 else float(draw.randint(-5, 4))


def _names(planner: Planner, domain: Choice, entries: dict) -> list[str]:
    """The names among which a choice is made: fixed ones of a table, or those typed in this scenario."""
    holder, each = planner.by_key[domain.of]
    if hasattr(each, "values"):
        return list(each.values)
    column = entries.get(f"{holder.key}_name", ())
    return [value for value in column if isinstance(value, str)]
