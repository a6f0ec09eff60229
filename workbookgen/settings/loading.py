"""Loading settings: a TOML file in, one validated model out.

A mistake is reported with the file, the line, the key, and what is allowed; all mistakes are reported at once. An
unknown key is a mistake too, since it is usually a misspelling.
"""

import tomllib
from importlib.resources import files
from pathlib import Path
from typing import TypeVar

from pydantic import BaseModel, ValidationError

from workbookgen.errors import SettingsError
from workbookgen.settings.faults import faults_found, key_lines
from workbookgen.settings.model import Settings
from workbookgen.settings.reels import Reel, reel_from_words, too_large
from workbookgen.settings.values import NOT_UTF8
from workbookgen.texts import folded

Model = TypeVar("Model", bound=BaseModel)

AS_TOML = 'Write each setting once, on a line of its own, and texts in straight quotes: units = "us".'


def changed(
    settings: Settings, *, units: str | None = None, size: str | None = None, reels: tuple[str, ...] = ()
) -> Settings:
    """Settings with another unit system or size, and with more reels; a reel of the same name is replaced."""
    table = settings.model_dump(exclude_none=True)
    table |= {key: value for key, value in (("units", units), ("size", size)) if value}
    if reels:
        added = _reels_of_the_command_line(reels, table["units"])
        names = {folded(reel.name) for reel in added}
        kept = [reel for reel in table["reels"] if folded(reel["name"]) not in names]
        table["reels"] = [*kept, *(reel.model_dump(exclude_none=True) for reel in added)]
    return validated(Settings, table, "the command line")


def _reels_of_the_command_line(texts: tuple[str, ...], units: str) -> list[Reel]:
    """The reels in these words. Raises SettingsError with the faults of all of them."""
    reels, faults = [], []
    for text in texts:
        try:
            reels.append(_reel_of_the_command_line(text, units))
        except SettingsError as problem:
            faults.extend(problem.faults)
    if faults:
        raise SettingsError(*faults)
    return reels


def _reel_of_the_command_line(text: str, units: str) -> Reel:
    place = f'--reel "{text}"'
    reel = validated(Reel, reel_from_words(text), place)
    if wrong := too_large(reel, units):
        raise SettingsError.at(place, "; ".join(sentence for _, sentence in wrong) + ".")
    return reel


def templates() -> Path:
    """The folder of settings and tables that come with the project; it is inside the package once installed."""
    inside = Path(str(files("workbookgen"))) / "templates"
    return inside if inside.is_dir() else Path(__file__).parent.parent.parent / "templates"


def load(path: Path) -> Settings:
    """Read a settings file. Raises SettingsError with every fault found."""
    if path.exists() and not path.is_file():  # a pipe or a device might never end
        kind = "a folder" if path.is_dir() else "not an ordinary file"
        raise SettingsError.at(str(path), f"this settings file cannot be read: it is {kind}.")
    try:
        text = path.read_text(encoding="utf-8-sig")  # some editors put a byte order mark first
    except (OSError, UnicodeDecodeError) as problem:
        reason = getattr(problem, "strerror", None) or NOT_UTF8
        raise SettingsError.at(str(path), f"this settings file cannot be read: {reason}.") from None
    settings = parse(text, str(path))
    if settings.fibers and not Path(settings.fibers).is_absolute():
        settings = settings.model_copy(update={"fibers": str(path.parent / settings.fibers)})
    return settings


def parse(text: str, place: str) -> Settings:
    """Settings from TOML text; `place` is where the text came from, for error messages."""
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as problem:
        raise SettingsError.at(place, f"this is not a TOML settings file: {problem}. {AS_TOML}") from None
    except (ValueError, RecursionError):  # thousands of digits, or of brackets within brackets
        strange = "this is not a settings file: it holds a number or a list that no setting has."
        raise SettingsError.at(place, strange) from None
    return validated(Settings, table, place, text)


def validated(model: type[Model], table: dict, place: str, text: str = "") -> Model:
    """A settings model from a table of keys; `text` is the TOML that it was read from, for line numbers.

    Raises SettingsError with every fault found.
    """
    try:
        return model.model_validate(table)
    except ValidationError as problem:
        raise SettingsError(*faults_found(problem, model, place, key_lines(text))) from None
