"""What is wrong with settings, reported with the line and the key.

Pydantic says what is wrong in its own words; here that becomes a sentence for the person who typed it. Python's TOML
reader gives no line numbers, so they are found by reading the text again, statement by statement: a statement ends
with the first line that completes it.
"""

import difflib
import tomllib
from collections import Counter
from collections.abc import Iterator

from pydantic import BaseModel, ValidationError

from workbookgen.errors import Fault
from workbookgen.settings.values import Misfit

Path = tuple[str | int, ...]

_IN_BRACKETS = {
    "rows": "write a table under [rows], as in the templates",
    "colors": "write a table under [colors], as in the templates",
    "reels": "write a table under [[reels]], as in the templates",
    "arms": 'write both arms in brackets: ["14 in", "14 in"]',
    "leave_out": 'write the names in brackets: ["Weaving", "Cost"]',
}


def key_lines(text: str) -> dict[Path, int]:
    """The path of every key in a valid TOML text -> the number of its first line."""
    lines: dict[Path, int] = {}
    tables: Counter[Path] = Counter()
    head: Path = ()
    statement, begins = "", 1
    for number, line in enumerate(text.split("\n"), start=1):
        statement += line + "\n"
        try:
            table = tomllib.loads(statement)
        except tomllib.TOMLDecodeError:
            continue  # it continues on the next line
        if statement.lstrip().startswith("["):
            head = _heading(table, tables)
            lines.setdefault(head, begins)
        else:
            for path in _paths(table):
                lines.setdefault(head + path, begins)
        statement, begins = "", number + 1
    return lines


def _heading(table: dict, tables: Counter) -> Path:
    """The path of a [table], or of the next [[table]] of that name."""
    path: Path = ()
    while table:
        ((key, table),) = table.items()
        path += (key,)
        if isinstance(table, list):
            tables[path] += 1
            path, table = (*path, tables[path] - 1), table[0]
        elif tables[path]:
            path = (*path, tables[path] - 1)
    return path


def _paths(value: object, so_far: Path = ()) -> Iterator[Path]:
    """The paths of all parts of a value."""
    if not isinstance(value, dict | list):
        return
    for key, part in value.items() if isinstance(value, dict) else enumerate(value):
        yield (*so_far, key)
        yield from _paths(part, (*so_far, key))


def faults_found(problem: ValidationError, model: type[BaseModel], place: str, lines: dict[Path, int]) -> list[Fault]:
    """Every fault that the model found, in order of lines."""
    faults = []
    for error in problem.errors():
        misfit = error.get("ctx", {}).get("error")
        if isinstance(misfit, Misfit):
            faults += misfit.faults
        else:
            faults.append((error["loc"], _sentence(error, model)))
    located = [(_line(path, lines), path, sentence) for path, sentence in faults]

    def told(line: int, path: Path, sentence: str) -> Fault:
        where = filter(None, (place, f"line {line}" if line else "", _spelled(path)))
        return Fault(", ".join(where), sentence if sentence.endswith("?") else f"{sentence}.")

    return [told(*each) for each in sorted(located, key=lambda each: each[0])]


def _line(path: Path, lines: dict[Path, int]) -> int:
    """The line of a key, or of the table that lacks it; 0 if there is none."""
    return next((lines[path[:length]] for length in range(len(path), 0, -1) if path[:length] in lines), 0)


def _spelled(path: Path) -> str:
    """A path in words; tables are counted from 1."""
    return ".".join(str(part + 1 if isinstance(part, int) else part) for part in path)


def _sentence(error: dict, model: type[BaseModel]) -> str:
    """What to write instead, for each type of Pydantic's errors."""
    path, context = error["loc"], error.get("ctx", {})
    match error["type"]:
        case "extra_forbidden":
            known = _keys_beside(path, model)
            return f"there is no such setting; known are {', '.join(known)}{_nearest(str(path[-1]), known)}"
        case "literal_error":
            known = [each.strip("' ") for each in context["expected"].replace(" or ", ",").split(",")]
            return f"write one of {context['expected']}{_nearest(str(error['input']), known)}"
        case "value_error":
            return str(context["error"])
        case "greater_than":
            return f"write a number above {context['gt']:g}"
        case "greater_than_equal":
            return f"write a whole number of {context['ge']} or more"
        case "less_than_equal":
            return f"write a {'whole ' if isinstance(context['le'], int) else ''}number of at most {context['le']:g}"
        case "string_too_short":
            return "write a text; it may not be empty"
        case "string_too_long":
            return f"write a text of at most {context['max_length']} letters"
        case "int_parsing" | "int_type" | "int_from_float":
            return "write a whole number, without quotes"
        case "float_type" | "finite_number":
            return "write a number, without quotes"
        case "string_type":
            return "write a text in quotes"
        case "missing" if isinstance(path[-1], str):
            return "this setting is needed"
        case "tuple_type" | "model_type" | "missing" | "too_long":
            return _IN_BRACKETS[[part for part in path if isinstance(part, str)][-1]]
        case _:
            return f"{error['msg'][0].lower()}{error['msg'][1:]}"


def _nearest(word: str, known: list[str]) -> str:
    lower = {each.lower(): each for each in known}
    near = difflib.get_close_matches(word.lower(), lower, 1)
    return f". Did you mean {lower[near[0]]}?" if near else ""


def _keys_beside(path: Path, model: type[BaseModel]) -> list[str]:
    """The known keys of the table that this key is in."""
    for part in path[:-1]:
        if isinstance(part, str):
            annotation = model.model_fields[part].annotation
            model = getattr(annotation, "__args__", (annotation,))[0]
    return list(model.model_fields)
