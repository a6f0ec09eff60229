"""A formula as a sheet describes it, and what can be derived from it.

It is written in field keys, its words: `(wraps + part_wrap) * loop + rest`. A field of the same record goes by its own
key, one of another block by its full key (`reels_loop`); a card's field is one cell, a log's a whole column. Besides
the functions of the portable profile (`profile`) there are a few forms of our own (`forms`).
"""

from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import pairwise

from workbookgen.language.forms import ADDED, FORMS, LOOKUP, READINGS, in_full, misused
from workbookgen.language.profile import FUNCTIONS, TRUTHS, outside
from workbookgen.language.tokens import (
    OPERATORS,
    Call,
    Nodes,
    calls,
    function_name,
    is_name,
    is_value,
    is_word,
    parse,
    tokenize,
)

PLUS_MINUS = frozenset("+-")  # the operators that may also stand before a number alone


@dataclass(frozen=True)
class Formula:
    """A formula's text in full, and what is derived from it, each on first use. Make one with `formula`."""

    text: str

    @cached_property
    def tokens(self) -> tuple[str, ...]:
        return tokenize(self.text)

    @cached_property
    def nodes(self) -> Nodes:
        """The text as nested calls and the tokens between them."""
        return parse(self.text)

    @cached_property
    def calls(self) -> tuple[Call, ...]:
        """Every call of a function or form, outer ones before those within them."""
        return tuple(calls(self.nodes))

    @cached_property
    def words(self) -> tuple[str, ...]:
        """Every field key in the text, in order of first use."""
        return tuple(dict.fromkeys(filter(is_word, self.tokens)))

    def calls_to(self, *names: str) -> tuple[Call, ...]:
        """The different calls of these functions or forms."""
        return tuple(dict.fromkeys(call for call in self.calls if call.name in names))

    def taken_by(self, *names: str) -> frozenset[str]:
        """The words that are an argument of these functions or forms by themselves."""
        return frozenset(key for call in self.calls_to(*names) for key in call.keys if key)

    @cached_property
    def optional(self) -> frozenset[str]:
        """The words that may be blank: tested with given(), or one of several readings."""
        return self.taken_by("given", *READINGS)

    @cached_property
    def alternatives(self) -> frozenset[str]:
        """The words of which at least one must have a value, if that is all that the text asks.

        As in OR(given(a), given(b)), or in an IF both of whose branches are a given().
        """
        whole = _only_call(self.nodes)
        if whole is None or whole.name not in ("OR", "IF"):
            return frozenset()
        branches = [_only_call(each) for each in (whole.arguments if whole.name == "OR" else whole.arguments[1:])]
        if len(branches) < 2 or any(each is None or each.name != "given" for each in branches):
            return frozenset()
        return frozenset(each.keys[0] for each in branches)

    @cached_property
    def lookup_steps(self) -> tuple[tuple[Call, ...], ...]:
        """Its lookups in the order in which they can be made: each needs only those of the steps before it."""
        steps: dict[int, list[Call]] = {}
        for call in self.calls_to(LOOKUP):
            steps.setdefault(_depth(call), []).append(call)
        return tuple(tuple(steps[depth]) for depth in sorted(steps))

    @cached_property
    def indexed(self) -> frozenset[str]:
        """The columns from which INDEX takes a value."""
        return frozenset(call.keys[0] for call in self.calls_to("INDEX") if call.keys[0])

    @cached_property
    def summed(self) -> tuple[frozenset[str], ...]:
        """The words of each form that adds up or counts; a form gives nothing if one of its words is absent."""
        return tuple(frozenset(filter(None, call.keys)) for call in self.calls_to(*ADDED))

    @cached_property
    def objections(self) -> tuple[str, ...]:
        """What a described formula may not contain and this one does; empty if all is well."""
        names = list(filter(is_name, self.tokens))
        strange = [each for each in names if ":" not in each and not is_word(each) and each not in TRUTHS]
        found = outside(self.tokens, FUNCTIONS | FORMS.keys())
        found += [f"{each} is neither a word nor a function: words are keys, in lower case" for each in strange]
        found += [f"in {each} the ':' is no sign of a described formula" for each in names if ":" in each]
        found += [
            f"a sign is missing between {one} and {other}"
            for one, other in pairwise(self.tokens)
            if _ends_a_value(one) and _begins_a_value(other)
        ]
        found += [
            f"a value is missing beside the {one if one in OPERATORS else other}"
            for one, other in pairwise(("(", *self.tokens, ")"))
            if _lacks_a_value(one, other)
        ]
        try:
            return tuple(found or misused(self.nodes))
        except ValueError as fault:
            return (str(fault),)


@lru_cache(None)
def formula(text: str) -> Formula:
    """The formula of this text. Planners share their texts, so there is one object for each."""
    return Formula(in_full(text))


def _depth(call: Call) -> int:
    """How many lookups are nested within the arguments of a call."""
    within = (each for argument in call.arguments for each in calls(argument) if each.name == LOOKUP)
    return max((_depth(each) + 1 for each in within), default=0)


def _only_call(found: Nodes) -> Call | None:
    """The call that makes up a whole text; None if there is anything else in it."""
    return found[0] if len(found) == 1 and isinstance(found[0], Call) else None


def _begins_a_value(token: str) -> bool:
    return is_value(token) or function_name(token) is not None


def _ends_a_value(token: str) -> bool:
    return is_value(token) or token == ")"


def _lacks_a_value(one: str, other: str) -> bool:
    """Whether an operator has nothing to work on between these two tokens."""
    if one in OPERATORS:
        return not (_begins_a_value(other) or other in PLUS_MINUS)
    return other in OPERATORS - PLUS_MINUS and not _ends_a_value(one)
