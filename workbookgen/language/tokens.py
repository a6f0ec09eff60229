"""Formula text taken apart: into tokens, and into nested calls with their arguments.

One regular expression reads formulas as described and formulas bound to cells alike. openpyxl's tokenizer finds the
same tokens and takes some twenty times as long; a test compares the two.

A token is a piece of the text. Its first character tells a text or a number; its last tells the start of a call, which
includes the opening parenthesis.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from string import ascii_letters

_TOKEN = re.compile(
    r'"(?:[^"]|"")*"'  # a text
    r"|[A-Za-z_][A-Za-z0-9_.]*\s*\("  # a function or form, with its opening parenthesis
    r"|\d+\.?\d*(?:[Ee][+-]?\d+)?"  # a number
    r"|(?:'(?:[^']|'')*'!)?[\w$!.:]+"  # a word, a defined name, or a reference, perhaps to another sheet
    r"|<=|>=|<>|\s+|.",  # an operator or punctuation, or white space
    re.ASCII | re.DOTALL,
)
_NAMES_BEGIN = frozenset(ascii_letters + "_$'!.:")
COMPARISONS = frozenset({"=", "<>", "<", ">", "<=", ">="})
OPERATORS = COMPARISONS | frozenset("+-*/&")
UNMATCHED = "its brackets do not match"


def tokenize(text: str) -> tuple[str, ...]:
    """The tokens of a formula, without the white space between them."""
    return tuple(token for token in _TOKEN.findall(text.removeprefix("=")) if not token.isspace())


def is_text(token: str) -> bool:
    return token[0] == '"'


def is_number(token: str) -> bool:
    return token[0].isdigit()


def is_name(token: str) -> bool:
    """Whether it refers to a value elsewhere: a word, a defined name, or a reference."""
    return token[-1] != "(" and token[0] in _NAMES_BEGIN and token != "'"


def is_value(token: str) -> bool:
    """Whether it is an operand: a name, a number or a text."""
    return is_name(token) or is_number(token) or is_text(token)


def is_word(token: str) -> bool:
    """Whether it is spelled like the key of a field: in lower case letters, digits and underscores."""
    return token.isidentifier() and token.isascii() and token[0].islower() and token == token.lower()


def function_name(token: str) -> str | None:
    """The function or form that a token opens; "" for a parenthesis by itself, None for any other token."""
    return token[:-1].rstrip() if token[-1] == "(" else None


@dataclass(frozen=True)
class Call:
    """A function or form with its arguments. A pair of parentheses alone is a call without a name."""

    name: str
    arguments: tuple["Nodes", ...]

    @cached_property
    def keys(self) -> tuple[str, ...]:
        """For each argument the word that it consists of, or "" if it is anything else."""
        return tuple(
            argument[0] if len(argument) == 1 and isinstance(argument[0], str) and is_word(argument[0]) else ""
            for argument in self.arguments
        )


Nodes = tuple[str | Call, ...]  # a formula, or an argument of a call


def parse(text: str) -> Nodes:
    """A formula as nested calls and the tokens between them. Raises ValueError, with the reason."""
    found, end = _argument(iter(tokenize(text)))
    if end:
        raise ValueError(UNMATCHED if end == ")" else "a comma stands outside of all brackets")
    return found


def calls(found: Nodes) -> Iterator[Call]:
    """Every call, outer ones before those within them."""
    for node in found:
        if isinstance(node, Call):
            yield node
            for argument in node.arguments:
                yield from calls(argument)


def unparse(found: Nodes) -> str:
    """The text of a parsed formula, without the white space that was only there for its reader."""
    return "".join(
        node if isinstance(node, str) else f"{node.name}({','.join(map(unparse, node.arguments))})" for node in found
    )


def _argument(pieces: Iterator[str]) -> tuple[Nodes, str]:
    """The nodes up to the next comma or closing parenthesis, and that token; at the end of the text it is ""."""
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
