"""A formula as a sheet describes it, and what can be derived from it.

It is written in field keys: `(wraps + part_wrap) * loop + rest`. Keys of the same record are short; other blocks are
named in full (`reels_loop`), a card's field being one cell and a log's a whole column. Besides the functions of the
portable profile (`profile`) there are some forms of our own (`forms`).
"""

import re
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import pairwise

from workbookgen.language.forms import ADDED, FORMS, LOOKUP, READINGS, misused
from workbookgen.language.profile import FUNCTIONS, TRUTHS, outside
from workbookgen.language.tokens import Call, Nodes, calls, function_name, is_name, is_value, is_word, parse, tokenize

CELL_ADDRESS = re.compile(r"(?i:[a-z]{1,3}[0-9]+|r[0-9]*(c[0-9]*)?|c[0-9]*)")


@dataclass(frozen=True)
class Formula:
    """Formula text, parsed once. Callers of `formula` share what was derived from it."""

    text: str

    @cached_property
    def tokens(self) -> tuple[str, ...]:
        return tokenize(self.text)

    @cached_property
    def nodes(self) -> Nodes:
        """Its nested calls."""
        return parse(self.text)

    @cached_property
    def calls(self) -> tuple[Call, ...]:
        """Every function and form in it, an outer one before those in it."""
        return tuple(calls(self.nodes))

    @cached_property
    def words(self) -> tuple[str, ...]:
        """Every field key in the text, once, in order."""
        return tuple(dict.fromkeys(filter(is_word, self.tokens)))

    def calls_to(self, *names: str) -> tuple[Call, ...]:
        """Its calls of these functions or forms, each once."""
        return tuple(dict.fromkeys(call for call in self.calls if call.name in names))

    def taken_by(self, *names: str) -> frozenset[str]:
        """The words that these functions or forms take as they are."""
        return frozenset(key for call in self.calls_to(*names) for key in call.keys if key)

    @cached_property
    def optional(self) -> frozenset[str]:
        """The words that may be missing: asked for with given(), or one of several readings."""
        return self.taken_by("given", *READINGS)

    @cached_property
    def alternatives(self) -> frozenset[str]:
        """The words of which one must have a value, if the whole text asks for nothing else.

        As in OR(given(a), given(b)), or where either branch of an IF is a given().
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
        """What it looks up, in steps: each needs only the steps before it."""
        steps: dict[int, list[Call]] = {}
        for call in self.calls_to(LOOKUP):
            steps.setdefault(_depth(call), []).append(call)
        return tuple(tuple(steps[depth]) for depth in sorted(steps))

    @cached_property
    def indexed(self) -> frozenset[str]:
        """The columns of which one place is looked into."""
        return frozenset(call.keys[0] for call in self.calls_to("INDEX") if call.keys[0])

    @cached_property
    def summed(self) -> tuple[frozenset[str], ...]:
        """The words of each form that adds or counts: one that lacks a word gives nothing."""
        return tuple(frozenset(filter(None, call.keys)) for call in self.calls_to(*ADDED))

    @cached_property
    def objections(self) -> tuple[str, ...]:
        """What in it is not allowed in our formulas; empty if all is well."""
        names = list(filter(is_name, self.tokens))
        strange = [each for each in names if ":" not in each and not is_word(each) and each not in TRUTHS]
        found = outside(self.tokens, FUNCTIONS | FORMS.keys())
        found += [f"{each} is neither a word nor a function" for each in strange]
        found += [f"in {each} the ':' is no sign of a described formula" for each in names if ":" in each]
        found += [
            f"a sign is missing between {one} and {other}"
            for one, other in pairwise(self.tokens)
            if _ends_a_value(one) and _begins_a_value(other)
        ]
        try:
            return tuple(found or misused(self.nodes))
        except ValueError as fault:
            return (str(fault),)


@lru_cache(None)
def formula(text: str) -> Formula:
    """The formula of a text; one object for each, since planners and their copies say the same."""
    return Formula(text)


def key_objection(key: str) -> str | None:
    """Why a field may not bear this key, or None."""
    if not is_word(key):
        return "a key is written in lower case letters, digits and underscores"
    if CELL_ADDRESS.fullmatch(key):
        return "this key is also a cell address"
    return None


def _depth(call: Call) -> int:
    """How deeply lookups are nested in the arguments of a call."""
    within = (each for argument in call.arguments for each in calls(argument) if each.name == LOOKUP)
    return max((_depth(each) + 1 for each in within), default=0)


def _only_call(found: Nodes) -> Call | None:
    """The call that is all there is in a text."""
    return found[0] if len(found) == 1 and isinstance(found[0], Call) else None


def _begins_a_value(token: str) -> bool:
    return is_value(token) or function_name(token) is not None


def _ends_a_value(token: str) -> bool:
    return is_value(token) or token == ")"
