"""Type checks for declarations: a wrong argument is reported where it is written, not where it does harm."""

import typing
from collections.abc import Callable
from dataclasses import fields, is_dataclass
from functools import cache
from reprlib import repr as abridged
from types import NoneType, UnionType

from workbookgen.errors import DescriptionError

_WORDS = {
    str: "a text",
    float: "a number",
    int: "a whole number",
    bool: "True or False",
    NoneType: "None",
    Callable: "a function",
}


def require_types(place: str, declared: object) -> None:
    """Refuse an argument of a dataclass whose type differs from its annotation."""
    for name, hint in _hints(type(declared)).items():
        value = getattr(declared, name)
        if not _takes(hint)(value):
            raise DescriptionError.at(place, f"its {name} must be {_in_words(hint)}, and {_misfit(hint, value)}.")


@cache
def _hints(kind: type) -> dict[str, object]:
    hints = typing.get_type_hints(kind)
    return {each.name: hints[each.name] for each in fields(kind)}


@cache
def _takes(hint: object) -> Callable[[object], bool]:
    origin, arguments = typing.get_origin(hint), typing.get_args(hint)
    if origin in (typing.Union, UnionType):
        alternatives = [_takes(each) for each in arguments]
        return lambda value: any(takes(value) for takes in alternatives)
    if origin is typing.Literal:
        return lambda value: value in arguments
    if origin is tuple and arguments[-1] is Ellipsis:
        member = _takes(arguments[0])
        return lambda value: isinstance(value, tuple) and all(map(member, value))
    if origin is tuple:
        members = [_takes(each) for each in arguments]
        return lambda value: (
            isinstance(value, tuple)
            and len(value) == len(members)
            and all(takes(each) for takes, each in zip(members, value, strict=True))
        )
    if hint is float:
        return lambda value: isinstance(value, float | int) and not isinstance(value, bool)
    return lambda value: isinstance(value, origin or hint)


def _misfit(hint: object, value: object) -> str:
    """What the value is instead, and what to write for the usual slips with tuples."""
    member = _member(hint)
    if member is None:
        return f"{_named(value)} is not"
    if isinstance(value, tuple):
        return f"{_named(next(each for each in value if not _takes(member)(each)))} in it is not"
    if isinstance(value, list):
        return f"{_named(value)} is not: write ( ) for [ ]"
    return f"{_named(value)} is not" + (": one alone is written (it,)" if _takes(member)(value) else "")


def _member(hint: object) -> object | None:
    """The member type, if a tuple of any length is asked for."""
    for each in (hint, *typing.get_args(hint)):
        if typing.get_origin(each) is tuple and typing.get_args(each)[-1] is Ellipsis:
            return typing.get_args(each)[0]
    return None


def _named(value: object) -> str:
    """A value in a few words: a dataclass by its class and its name."""
    if is_dataclass(value):
        name = next((named for each in ("key", "name", "title", "heading") if (named := getattr(value, each, ""))), "")
        return f"the {type(value).__name__} {name}".rstrip()
    if isinstance(value, list) and value and is_dataclass(value[0]):
        return f"a list that begins with {_named(value[0])}"
    return f"the function {value.__name__}" if callable(value) and hasattr(value, "__name__") else abridged(value)


def _in_words(hint: object) -> str:
    """An annotation in words, such as "a tuple of a number"."""
    origin, arguments = typing.get_origin(hint), typing.get_args(hint)
    if origin in (typing.Union, UnionType):
        return " or ".join(_in_words(each) for each in arguments)
    if origin is typing.Literal:
        return " or ".join(map(repr, arguments))
    if origin is tuple:
        return f"a tuple of {', '.join(_in_words(each) for each in arguments if each is not Ellipsis)}"
    name = getattr(origin or hint, "__name__", str(hint))
    return _WORDS.get(origin or hint) or f"{'an' if name[0] in 'AEIO' else 'a'} {name}"
