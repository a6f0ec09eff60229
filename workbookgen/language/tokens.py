"""What the text of a formula consists of: its tokens, and the calls in it with their arguments.

Formulas as described and formulas bound to cells are both read with the one regular expression below. openpyxl's
tokenizer reads them too, a token in a place, and takes some twenty times as long; a test compares the two.

A token is a piece of the text. Its first character identifies a text or a number, its last the name of a function or
form, which includes the bracket that it opens.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from string import ascii_letters

_TOKEN = re.compile(
    r'"(?:[^"]|"")*"'  # a text
    r"|[A-Za-z_][A-Za-z0-9_.]*\s*\("  # a function or form, and the bracket that it opens
    r"|\d+\.?\d*(?:[Ee][+-]?\d+)?"  # a number
    r"|(?:'(?:[^']|'')*'!)?[\w$!.:]+"  # a word, a name, or a reference to cells, perhaps of another sheet
    r"|<=|>=|<>|\s+|.",  # a sign, or blanks
    re.ASCII | re.DOTALL,
)
_NAMES_BEGIN = frozenset(ascii_letters + "_$'!.:")
COMPARISONS = frozenset({"=", "<>", "<", ">", "<=", ">="})
UNMATCHED = "its brackets do not match"


def tokenize(text: str) -> tuple[str, ...]:
    """The tokens of a formula, without the blanks between them."""
    return tuple(token for token in _TOKEN.findall(text.removeprefix("=")) if not token.isspace())


def is_text(token: str) -> bool:
    return token[0] == '"'


def is_number(token: str) -> bool:
    return token[0].isdigit()


def is_name(token: str) -> bool:
    """A word, a defined name, a reference: what stands for a value that is elsewhere."""
    return token[-1] != "(" and token[0] in _NAMES_BEGIN and token != "'"


def is_value(token: str) -> bool:
    """A name, a number or a text: a value by itself."""
    return is_name(token) or is_number(token) or is_text(token)


def is_word(token: str) -> bool:
    """Written as the key of a field is: in lower case letters, digits and underscores."""
    return token.isidentifier() and token.isascii() and token[0].islower() and token == token.lower()


def function_name(token: str) -> str | None:
    """The name of the function or form that a token begins; empty for a bracket by itself, None for anything else."""
    return token[:-1].rstrip() if token[-1] == "(" else None


@dataclass(frozen=True)
class Call:
    """A function or form with its arguments. A pair of brackets alone is a call without a name."""

    name: str
    arguments: tuple["Nodes", ...]

    @cached_property
    def keys(self) -> tuple[str, ...]:
        """The arguments that are nothing but a word, in their places; an empty text for any other."""
        return tuple(
            argument[0] if len(argument) == 1 and isinstance(argument[0], str) and is_word(argument[0]) else ""
            for argument in self.arguments
        )


Nodes = tuple[str | Call, ...]  # what stands side by side


def parse(text: str) -> Nodes:
    """A formula as nested calls, and the tokens beside them. Raises ValueError, with the reason."""
    found, end = _argument(iter(tokenize(text)))
    if end:
        raise ValueError(UNMATCHED if end == ")" else "a comma stands outside of all brackets")
    return found


def calls(found: Nodes) -> Iterator[Call]:
    """Every call, an outer one before those in it."""
    for node in found:
        if isinstance(node, Call):
            yield node
            for argument in node.arguments:
                yield from calls(argument)


def unparse(found: Nodes) -> str:
    """The text again, without the blanks that only its describer needs."""
    return "".join(
        node if isinstance(node, str) else f"{node.name}({','.join(map(unparse, node.arguments))})" for node in found
    )


def _argument(pieces: Iterator[str]) -> tuple[Nodes, str]:
    """What stands up to the next comma or closing bracket, and that sign; the end of the text is an empty one."""
    found: list[str | Call] = []
    for piece in pieces:
        if piece in (",", ")"):
            return tuple(found), piece
        name = function_name(piece)
        found.append(piece if name is None else _call(name, pieces))
    return tuple(found), ""


def _call(name: str, pieces: Iterator[str]) -> Call:
    arguments, end = [], ","
    while end == ",":
        argument, end = _argument(pieces)
        arguments.append(argument)
    if not end:
        raise ValueError(UNMATCHED)
    return Call(name, tuple(arguments))
