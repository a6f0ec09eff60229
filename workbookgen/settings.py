"""Settings: a TOML file in, one validated frozen record out.

Everything a guild may want otherwise about its planner stands here. A mistake is told with
the file, the key, and what is allowed; all mistakes are told at once. An unknown key is a
mistake too, since it is most often a misspelt one.
"""

import csv
import difflib
import math
import re
import tomllib
from importlib.resources import files
from pathlib import Path
from typing import Annotated, Literal

import tomli_w
from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    ValidationError,
    model_validator,
)

from workbookgen.errors import Fault, FileError, SettingsError
from workbookgen.units import Quantity

LENGTH_UNITS = ("yd", "ft", "in", "m", "cm", "mm")
_UNSTORABLE = re.compile(r"[\x00-\x1f\x7f\ud800-\udfff\ufffe\uffff]")
_LENGTH = re.compile(rf"\s*(\d+(?:\.\d+)?)\s*({'|'.join(LENGTH_UNITS)})\s*")


def _length(text: str) -> str:
    found = _LENGTH.fullmatch(text)
    if not found or float(found[1]) <= 0:
        raise ValueError(f"write a length as a number and a unit ({', '.join(LENGTH_UNITS)}), for example \"72 in\"")
    return text.strip()


def _storable(text: str) -> str:
    if _UNSTORABLE.search(text):
        raise ValueError("leave out line breaks and control characters; a workbook cannot store them here")
    return text


LengthText = Annotated[str, AfterValidator(_length)]
STORABLE = AfterValidator(_storable)
Short = Annotated[str, Field(min_length=1, max_length=40), STORABLE]


class _Strict(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class Reel(_Strict):
    """A reel that a new planner already knows: its rated loop, or a niddy-noddy's measures."""

    name: Short
    loop: LengthText | None = None
    height: LengthText | None = None
    arms: tuple[LengthText, LengthText] | None = None
    tolerance: LengthText | None = None

    @model_validator(mode="after")
    def _has_a_loop(self):
        if (self.height is None) != (self.arms is None):
            raise ValueError("a niddy-noddy needs both height and arms")
        if self.loop is None and self.height is None:
            raise ValueError('give the loop of the reel, for example loop = "72 in", or height and arms')
        return self


class Rows(_Strict):
    """How many lines each log has."""

    reels: int = Field(12, ge=1, le=100)
    guide: int = Field(40, ge=1, le=200)
    fiber: int = Field(40, ge=1, le=1000)
    skeins: int = Field(200, ge=1, le=10_000)
    projects: int = Field(12, ge=1, le=500)
    samples: int = Field(30, ge=1, le=1000)
    designs: int = Field(8, ge=1, le=100)
    components: int = Field(32, ge=1, le=400)
    pieces: int = Field(30, ge=1, le=1000)
    estimates: int = Field(12, ge=1, le=500)
    weavings: int = Field(8, ge=1, le=500)
    labels: int = Field(16, ge=1, le=1000)


class Settings(_Strict):
    """What a planner is to be."""

    units: Literal["us", "us-grams", "metric"] = "us"
    paper: Literal["letter", "a4"] = "letter"
    title: Annotated[str, Field(min_length=1, max_length=60), STORABLE] = "Handspinning planner"
    fibers: str | None = None  # a CSV table like templates/fibers.csv; None: that table; "": an empty guide
    currency: Annotated[str, Field(min_length=1, max_length=6), STORABLE] = "$"
    rows: Rows = Rows()
    reels: tuple[Reel, ...] = ()

    @model_validator(mode="after")
    def _fits(self):
        names = [reel.name.lower() for reel in self.reels]
        double = sorted({name for name in names if names.count(name) > 1})
        if double:
            raise ValueError(f"reels: two reels are called \"{double[0]}\"; give each its own name")
        if len(self.reels) > self.rows.reels:
            raise ValueError(f"rows.reels: {len(self.reels)} reels are listed, so this must be {len(self.reels)} or more")
        return self

    def as_toml(self) -> str:
        return tomli_w.dumps(self.model_dump(exclude_none=True))


def reel_from_words(text: str) -> dict:
    """A reel given on the command line: "Name=72 in", or "Name=15 in x 14 in x 14 in" for a niddy-noddy."""
    name, _, measures = text.partition("=")
    parts = [part.strip() for part in re.split(r"\s*[x×]\s*", measures) if part.strip()]
    if not name.strip() or len(parts) not in (1, 3):
        raise SettingsError.at(
            f'--reel "{text}"', 'write "Name=72 in", or height and both arms of a niddy-noddy: "Name=15 in x 14 in x 14 in".'
        )
    if len(parts) == 1:
        return {"name": name.strip(), "loop": parts[0]}
    return {"name": name.strip(), "height": parts[0], "arms": parts[1:]}


def changed(settings: Settings, units: str | None = None, reels: tuple[str, ...] = ()) -> Settings:
    """Settings with another unit system, and with reels added; a reel of the same name is replaced."""
    table = settings.model_dump(exclude_none=True)
    if units:
        table["units"] = units
    if reels:
        added = [reel_from_words(text) for text in reels]
        names = {reel["name"].lower() for reel in added}
        table["reels"] = [reel for reel in table["reels"] if reel["name"].lower() not in names] + added
    return validated(table, "the command line")


def length_of(text: str) -> Quantity:
    """A length such as "72 in" as a quantity."""
    number, unit = _LENGTH.fullmatch(text).groups()
    return Quantity(float(number), unit)


def templates() -> Path:
    """The folder of settings and tables that come with the project: in the package when installed."""
    inside = Path(str(files("workbookgen"))) / "templates"
    return inside if inside.is_dir() else Path(__file__).parent.parent / "templates"


def load(path: Path) -> Settings:
    """Read a settings file. Raises SettingsError with every fault found."""
    try:
        text = path.read_text(encoding="utf-8-sig")  # some editors put a byte order mark first
    except (OSError, UnicodeDecodeError) as problem:
        reason = getattr(problem, "strerror", None) or "it is not a text file"
        raise SettingsError.at(str(path), f"this settings file cannot be read: {reason}.") from None
    settings = parse(text, str(path))
    if settings.fibers and not Path(settings.fibers).is_absolute():
        settings = settings.model_copy(update={"fibers": str(path.parent / settings.fibers)})
    return settings


def parse(text: str, place: str) -> Settings:
    """Settings from TOML text; `place` is where it came from, for the faults."""
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as problem:
        raise SettingsError.at(place, f"this is not a TOML settings file: {problem}.") from None
    return validated(table, place)


def validated(table: dict, place: str) -> Settings:
    """Settings from a table of keys. Raises SettingsError with every fault found."""
    try:
        return Settings.model_validate(table)
    except ValidationError as problem:
        raise SettingsError(*(_fault(place, each) for each in problem.errors())) from None


def _fault(place: str, error: dict) -> Fault:
    key = ".".join(str(part + 1 if isinstance(part, int) else part) for part in error["loc"])
    context = error.get("ctx", {})
    match error["type"]:
        case "extra_forbidden":
            known = _keys_beside(error["loc"])
            near = difflib.get_close_matches(str(error["loc"][-1]), known, 1)
            hint = f" Did you mean {near[0]}?" if near else ""
            sentence = f"there is no such setting; known are {', '.join(known)}.{hint}"
        case "literal_error":
            sentence = f"write one of {context['expected']}."
        case "value_error":
            sentence = f"{context['error']}."
        case "greater_than_equal":
            sentence = f"write a whole number of {context['ge']} or more."
        case "less_than_equal":
            sentence = f"write a whole number of at most {context['le']}."
        case "string_too_short":
            sentence = "write a text; it may not be empty."
        case "string_too_long":
            sentence = f"write a text of at most {context['max_length']} letters."
        case "int_parsing" | "int_type" | "int_from_float":
            sentence = "write a whole number, without quotes."
        case "string_type":
            sentence = "write a text in quotes."
        case "tuple_type" | "model_type":
            sentence = f"write a table under {_HEADS.get(key, key)}, as in the templates."
        case "missing":
            sentence = "this setting is needed."
        case _:
            sentence = f"{error['msg'][0].lower()}{error['msg'][1:]}."
    return Fault(f"{place}, {key}" if key else place, sentence)


_HEADS = {"rows": "[rows]", "reels": "[[reels]]"}


def _keys_beside(location: tuple) -> list[str]:
    model = {"rows": Rows, "reels": Reel}.get(location[0] if len(location) > 1 else "", Settings)
    return list(model.model_fields)


NUMBERS = (
    ("fleece_low", "pound"),
    ("fleece_high", "pound"),
    ("yield_low", ""),
    ("yield_high", ""),
    ("diameter_low", "micrometer"),
    ("diameter_high", "micrometer"),
    ("staple_low", "inch"),
    ("staple_high", "inch"),
    ("regain", ""),
    ("skirting", ""),
    ("preparation", ""),
    ("spinning", ""),
)
TEXTS = ("name", "source")


def load_fibers(settings: Settings) -> tuple[dict[str, Quantity | float | str], ...]:
    """The fiber table that fills the guide: one record a fiber, quantities with their units."""
    if settings.fibers == "":
        return ()
    path = Path(settings.fibers) if settings.fibers else templates() / "fibers.csv"
    try:
        with path.open(encoding="utf-8-sig", newline="") as file:
            lines = list(csv.DictReader(file, restval=""))
    except (OSError, UnicodeDecodeError, csv.Error) as problem:
        reason = getattr(problem, "strerror", None) or "it is not a text file"
        raise FileError.at(str(path), f"the fiber table cannot be read: {reason}.") from None
    wanted = [name for name, _ in NUMBERS] + list(TEXTS)
    lacking = [name for name in wanted if not lines or name not in lines[0]]
    if lacking:
        raise SettingsError.at(str(path), f"the fiber table needs the columns {', '.join(lacking)}.")
    if len(lines) > settings.rows.guide:
        raise SettingsError.at(
            "rows.guide", f"the fiber table has {len(lines)} fibers, so this must be {len(lines)} or more."
        )
    records, faults = [], []
    for number, line in enumerate(lines, start=2):
        record = {name: line[name].strip() for name in TEXTS if line[name].strip()}
        for name, unit in NUMBERS:
            if text := line[name].strip():
                if (value := _number(text)) is None:
                    faults.append(Fault(f"{path}, line {number}, {name}", f'"{text}" is not a number.'))
                else:
                    record[name] = Quantity(value, unit) if unit else value
        faults += [
            Fault(f"{path}, line {number}, {name}", "leave out line breaks and control characters.")
            for name in TEXTS
            if _UNSTORABLE.search(record.get(name, ""))
        ]
        records.append(record)
    if faults:
        raise SettingsError(*faults)
    return tuple(records)


def _number(text: str) -> float | None:
    try:
        value = float(text)
    except ValueError:
        return None
    return value if math.isfinite(value) else None
