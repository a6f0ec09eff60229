"""Scenarios: values for every input, drawn from the declared domains with a seed.

Many records are what a careful person would type, with some optional cells blank. Others have one cell at the limit or
wrong: the exact edge of a domain, a tiny step beyond it, the number of the cell before, a blank, text where a number
belongs, a name that is on no list or on it twice. A few records are drawn wildly, and some are not begun: blank, or a
card as in a new planner, perhaps with one cell changed. The frequencies of these moods were chosen by how many changed
formulas they reveal (tests/mutation). A whole scenario is drawn as by someone who leaves little out, so that almost
every field shows something.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import ceil
from random import Random

from workbookgen.checking.automatic import is_broken
from workbookgen.language.domains import SMALLEST_AMOUNT, Choice, Date, Name, Note, Number
from workbookgen.language.entries import Entries, Entry
from workbookgen.language.fields import Input
from workbookgen.language.parts import LISTED, Block, Card, Log
from workbookgen.language.planner import Planner
from workbookgen.language.sentences import unit_of

WHOLE_EVERY = 4  # every fourth scenario of a check is a whole one
# How often a record is careful, has one slip, is wild, or is not begun: that of a card, and those of a log.
MOODS = {False: (0.4, 0.45, 0.1, 0.05), True: (0.6, 0.26, 0.08, 0.06)}
# In whole scenarios:
LEFT_OUT = (0.2, 0.05)  # how often an optional cell is blank: one to type into, and one to choose in
TRIES = 20  # how often cells that break a rule are drawn again before they are rather left blank
TOGETHER = 4  # lines in a row that choose the same name
NONSENSE = ("abc", "12,5", "1 lb", "-", "=1", "5/6/2026", "n/a", "*", "7")


def scenario(planner: Planner, seed: int, lines: int | None = None, *, is_whole: bool = False) -> Entries:
    """Values for all inputs of a planner, or of the first `lines` of its logs.

    If it `is_whole`, little is left out, and choices prefer the first names typed, so that lines refer to each other
    and pages have something to show.
    """
    drawing = _Drawing(planner, Random(seed))
    drawn = drawing.whole_record if is_whole else drawing.record
    for block in _named_first(planner):
        records = [drawn(block, row) for row in range(min(block.rows, lines or block.rows))]
        blank = [None] * (block.rows - len(records))
        columns = {each.key: [record[each.key] for record in records] for each in block.inputs}
        drawing.entries |= {block.full_key(key): (*column, *blank) for key, column in columns.items()}
    return drawing.entries


def scenario_of_check(planner: Planner, seed: int) -> Entries:
    """The scenario that a check draws with this seed; some are whole, since others seldom reach a project's weeks."""
    return scenario(planner, seed, is_whole=seed % WHOLE_EVERY == 0)


def _named_first(planner: Planner) -> Sequence[Block]:
    """The blocks with inputs: those whose records others choose come before those that choose, and cards come last."""
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


@dataclass
class _Drawing:
    """A scenario in the making: the entries drawn so far, from which later blocks choose."""

    planner: Planner
    draw: Random
    entries: dict[str, tuple[Entry, ...]] = field(default_factory=dict)
    names: dict[str, list[str]] = field(default_factory=dict)  # the names in each log drawn so far

    def record(self, block: Block, row: int) -> dict[str, Entry]:
        """A record in one of the moods."""
        [mood] = self.draw.choices(("careful", "one slip", "wild", "not begun"), MOODS[isinstance(block, Log)])
        if mood == "not begun":
            return self._not_begun(block, row)
        slip = self.draw.randrange(len(block.inputs)) if mood == "one slip" else -1
        record = {}
        for index, each in enumerate(block.inputs):
            wild = mood == "wild" or index == slip
            if index == slip and isinstance(each.domain, Number) and self.draw.random() < 0.7:
                ends = each.usual.shown(unit_of(each, self.planner.system)) if each.usual else ()
                record[each.key] = _at_the_limit(each.domain, ends, record, self.draw)
            elif wild:
                record[each.key] = self._wild(each, row)
            elif not each.needed and self.draw.random() < 0.4:
                record[each.key] = None
            else:
                record[each.key] = self._careful(each, row)
        return record

    def whole_record(self, block: Block, row: int) -> dict[str, Entry]:
        """A record with little left out, that breaks no rule. A card may keep its starting values."""

        def drawn(each: Input, left_out: float) -> Entry:
            is_left_out = not each.needed and self.draw.random() < left_out
            return None if is_left_out else self._usual(block, each, row)

        is_as_new, record = self.draw.random() < 0.5, {}
        for each in block.inputs:
            if is_as_new and each.starts_as is not None:
                record[each.key] = each.first(self.planner.system)
            else:
                record[each.key] = drawn(each, LEFT_OUT[isinstance(each.domain, Choice)])
        of_inputs = [rule for rule in block.rules if set(rule.text.words) <= set(record)]
        for left_out in (*[0.2] * TRIES, *[0.8] * TRIES):
            # In the end what is only unusual may stay, and what is wrong is drawn once more.
            still = [rule for rule in of_inputs if left_out < 0.5 or not rule.asks]
            if not (broken := next((rule for rule in still if is_broken(rule, block, record)), None)):
                break
            words = broken.text.words
            record |= {word: drawn(block.by_key[word], left_out) for word in words if word != words[row % len(words)]}
        return record

    def _usual(self, block: Block, each: Input, row: int) -> Entry:
        """A usual value. Lines in a row share a choice, and count from 1; a card chooses one of the first names."""
        match each.domain:
            case Number() as domain if domain.whole and domain.most and domain.most <= TOGETHER:
                return float(domain.least + row % (domain.most - domain.least + 1))
            case Number() as domain if not domain.whole and min(domain.high, 50.0) > 5.0:
                low, high = max(domain.low, 1.0), min(domain.high, 50.0)
                least, most = each.usual.shown(unit_of(each, self.planner.system)) if each.usual else (None, None)
                low, high = max(low, least or low), min(high, most or high)
                return round(low * (high / low) ** self.draw.random(), 2)
            case Choice() as domain:
                names = self._names(domain)
                if not names:
                    return None
                if not isinstance(block, Log):
                    return self.draw.choice(names[:2])
                is_name = LISTED in block.by_key and each.key in block.by_key[LISTED].words
                in_turn = names[(row if is_name else row // TOGETHER) % len(names)]
                return in_turn if self.draw.random() < 0.9 else self.draw.choice(names)
            case _:
                return self._careful(each, row)

    def _not_begun(self, block: Block, row: int) -> dict[str, Entry]:
        record: dict[str, Entry] = {each.key: each.first(self.planner.system) for each in block.inputs}
        starting = [each for each in block.inputs if each.starts_as is not None]
        how = self.draw.choice(("blank", "as it comes", "one changed")) if starting else "as it comes"
        if how == "blank":
            record |= dict.fromkeys((each.key for each in starting), None)
        elif how == "one changed":
            changed = self.draw.choice(starting)
            record[changed.key] = self._careful(changed, row)
        return record

    def _careful(self, each: Input, row: int) -> Entry:
        match each.domain:
            case Number() as domain:
                drawn = _inside(domain, self.draw)
                return max(float(ceil(domain.least or 0)), float(round(drawn))) if domain.whole else drawn
            case Date() as domain:
                return float(self.draw.randint(int(domain.least), int(domain.most)))
            case Name() | Note():
                return f"{each.label} {row + 1}"
            case Choice() as domain:
                names = self._names(domain)
                return self.draw.choice(names) if names else None

    def _wild(self, each: Input, row: int) -> Entry:
        if self.draw.random() < 0.3:
            return None
        match each.domain:
            case Number() as domain:
                limits = (domain.least, domain.above, domain.most, domain.below)
                beyond = [edge * 1.001 for edge in limits[2:] if edge is not None]
                outside = [-1.0, 0.0, -1e6, 1e12, 1e-9, *(edge for edge in limits if edge is not None), *beyond]
                return self.draw.choice(NONSENSE) if self.draw.random() < 0.4 else float(self.draw.choice(outside))
            case Date() as domain:
                edges = [domain.least, domain.least - 1, domain.most, domain.most + 1, -1.0, 0.5]
                return self.draw.choice(NONSENSE) if self.draw.random() < 0.2 else float(self.draw.choice(edges))
            case Name() | Note() as domain:
                if self.draw.random() < 0.1:
                    return float(self.draw.randint(1, 4))
                others = [f"{each.label} {max(row, 1)}", f"{each.label} {row + 2}"]
                letters = ["x" * domain.longest, "x" * (domain.longest + 1), "*", 'a "b" & <c>']
                return self.draw.choice([*others, *letters])
            case Choice() as domain:
                names = self._names(domain)
                others = ["on no list", "*", "?", *map(str.upper, names[:3]), *(f" {name}" for name in names[:1])]
                return self.draw.choice(others) if self.draw.random() < 0.8 else float(self.draw.randint(-5, 4))

    def _names(self, domain: Choice) -> list[str]:
        """The names to choose from: the fixed ones of a table, or those typed in this scenario."""
        holder, each = self.planner.by_key[domain.of]
        if hasattr(each, "values"):
            return list(each.values)
        key = holder.full_key("name")
        if key in self.entries and key not in self.names:
            self.names[key] = [value for value in self.entries[key] if isinstance(value, str)]
        return self.names.get(key, [])


def _inside(domain: Number, draw: Random) -> float:
    """A number inside the domain, spread over its orders of magnitude; sometimes its exact edge."""
    low, high = domain.low, domain.high
    if draw.random() < 0.06:
        edges = [edge for edge in (domain.least, domain.most) if edge is not None]
        if edges:
            return float(draw.choice(edges))
    if high <= 2:
        return low + (high - low) * draw.uniform(0.001, 0.999)
    usual = min(high, 500.0)
    return round(max(low, 0.5) * (usual / max(low, 0.5)) ** draw.random(), draw.randrange(4)) or 1.0


def _at_the_limit(domain: Number, ends: Sequence[float | None], record: dict[str, Entry], draw: Random) -> float:
    """The edge of a domain or of what is usual, a tiny step off it, or the same number as in a previous cell."""
    low, high = domain.low, domain.high
    beside = [value for value in record.values() if isinstance(value, float)]
    hair = 0.004 * (abs(high) or 1.0)
    choices = [low, low, high, high, high + hair, low - (0.004 * abs(low) or 0.5), 0.0, *beside]
    choices += [SMALLEST_AMOUNT, SMALLEST_AMOUNT / 2] * domain.begins_at_zero
    choices += [step for end in ends if end is not None for step in (end, end, end + 1e-6, end - 1e-6)]
    return float(draw.choice(choices)) + (0.5 if domain.whole and draw.random() < 0.2 else 0.0)
