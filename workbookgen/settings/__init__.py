"""Settings: a TOML file in, one validated frozen model out.

Everything that a guild may want to change about its planner is here. A mistake is reported with the file, the line,
the key, and what is allowed; all mistakes are reported at once. An unknown key is a mistake too, since it is usually a
misspelling.
"""

import tomllib
from importlib.resources import files
from pathlib import Path
from typing import Literal, TypeVar, get_args

import tomli_w
from pydantic import BaseModel, Field, ValidationError, ValidationInfo, field_validator, model_validator

from workbookgen import colors
from workbookgen.errors import SettingsError
from workbookgen.settings.faults import faults_found, key_lines
from workbookgen.settings.reels import Reel, reel_from_words, too_large
from workbookgen.settings.values import NOT_UTF8, SAYABLE, ColorText, Misfit, Note, Strict, text_of
from workbookgen.texts import folded
from workbookgen.unit_systems import UNIT_SYSTEMS

Model = TypeVar("Model", bound=BaseModel)

# The chapters that a planner can do without.
Leavable = Literal[
    "Guide",
    "Buying",
    "Scouring",
    "Samples",
    "Yarn",
    "Components",
    "Twist",
    "Compare",
    "Labels",
    "Knitting",
    "Pieces",
    "Weaving",
    "Projects",
    "Time",
    "Figures",
    "Cost",
    "Lot",
    "Project",
    "Counts",
    "Questions",
    "Uses",
    "Bobbins",
    "Structures",
    "Offers",
    "Matching",
    "Blends",
    "Dyeing",
    "Color",
    "Garments",
]
AS_TOML = 'Write each setting once, on a line of its own, and texts in straight quotes: units = "us".'
IN_SMALL = ("Compare", "Projects", "Project")  # those that a small planner has nevertheless
NEEDS = {  # a chapter -> those that it is nothing without
    "Project": ("Projects",),
    "Yarn": ("Components",),
    "Components": ("Yarn",),
    "Knitting": ("Projects",),
    "Pieces": ("Projects",),
    "Weaving": ("Projects",),
    "Time": ("Projects", "Figures"),
    "Cost": ("Projects",),
}


class Rows(Strict):
    """The number of lines of each log: at least two, since sums and choices of a single cell fail in some programs."""

    reels: int = Field(12, ge=2, le=100, strict=True)
    guide: int = Field(45, ge=2, le=200, strict=True)
    fiber: int = Field(40, ge=2, le=1000, strict=True)
    skeins: int = Field(200, ge=2, le=20_000, strict=True)
    projects: int = Field(12, ge=2, le=500, strict=True)
    samples: int = Field(30, ge=2, le=1000, strict=True)
    designs: int = Field(8, ge=2, le=100, strict=True)
    components: int = Field(32, ge=2, le=400, strict=True)
    pieces: int = Field(30, ge=2, le=1000, strict=True)
    estimates: int = Field(12, ge=2, le=500, strict=True)
    weavings: int = Field(8, ge=2, le=500, strict=True)
    uses: int = Field(24, ge=2, le=200, strict=True)
    whorls: int = Field(6, ge=2, le=100, strict=True)
    offers: int = Field(6, ge=2, le=100, strict=True)
    members: int = Field(8, ge=2, le=100, strict=True)
    rack: int = Field(4, ge=2, le=100, strict=True)
    blend: int = Field(5, ge=2, le=100, strict=True)
    recipe: int = Field(7, ge=2, le=100, strict=True)
    colors: int = Field(8, ge=2, le=100, strict=True)
    labels: int = Field(16, ge=2, le=1000, strict=True)


class Colors(Strict):
    """The colors that a guild may choose."""

    accent: ColorText | None = None  # links, answers, the rules over them, the columns of charts
    band: ColorText | None = None  # the band of a chart
    edge: ColorText | None = None  # the line under an input
    ground: ColorText | None = None  # the tint of an input

    @property
    def chosen(self) -> dict[str, str]:
        return self.model_dump(exclude_none=True)

    @model_validator(mode="after")
    def _can_be_seen(self):
        # All colors are checked, since a chosen ground may make the default edge hard to see.
        if told_of := colors.objections(self.chosen):
            raise Misfit(*((("colors", role), sentence) for role, sentence in told_of.items()))
        return self


class Settings(Strict):
    """What kind of planner to build."""

    units: Literal[tuple(UNIT_SYSTEMS)] = "us"
    paper: Literal["letter", "a4"] = "letter"
    title: text_of(60) = "Handspinning planner"
    note: Note = ""  # shown on the first sheet; each line is a paragraph
    fibers: str | None = None  # a CSV table like templates/fibers.csv; None: that table; "": an empty guide
    currency: text_of(6, SAYABLE) = "$"
    size: Literal["small", "whole"] = "whole"
    leave_out: tuple[Leavable, ...] = ()
    colors: Colors = Colors()
    rows: Rows = Rows()
    reels: tuple[Reel, ...] = ()

    @field_validator("leave_out")
    @classmethod
    def _stand_alone(cls, names: tuple[str, ...]) -> tuple[str, ...]:
        faults = [
            (("leave_out", place), f"{name} is listed twice; once is enough")
            for place, name in enumerate(names)
            if name in names[:place]
        ]
        for chapter, others in NEEDS.items():
            for needed in others if chapter not in names else ():
                if needed in names:
                    sentence = f"{chapter} is nothing without {needed}; leave out {chapter} too, or keep {needed}"
                    faults.append((("leave_out", names.index(needed)), sentence))
        if faults:
            raise Misfit(*faults)
        return names

    @field_validator("reels")
    @classmethod
    def _fit_the_sheet(cls, reels: tuple[Reel, ...], info: ValidationInfo) -> tuple[Reel, ...]:
        names = [folded(reel.name) for reel in reels]
        faults = [
            (("reels", place, "name"), f'two reels are called "{reels[place].name}"; give each its own name')
            for place, name in enumerate(names)
            if name in names[:place]
        ]
        if "units" in info.data:  # otherwise they are wrong themselves
            faults += [
                (("reels", place, *key), sentence)
                for place, reel in enumerate(reels)
                for key, sentence in too_large(reel, info.data["units"])
            ]
        if "rows" in info.data and len(reels) > info.data["rows"].reels:
            faults.append((("rows", "reels"), f"{len(reels)} reels are listed, so this must be {len(reels)} or more"))
        if faults:
            raise Misfit(*faults)
        return reels

    @property
    def without(self) -> tuple[str, ...]:
        """The chapters that are left out of the planner."""
        small = (name for name in get_args(Leavable) if self.size == "small" and name not in IN_SMALL)
        return tuple(dict.fromkeys((*self.leave_out, *small)))

    def as_toml(self) -> str:
        """These settings as the text of a settings file, with settings that are empty left out."""
        table = self.model_dump(exclude_none=True)
        said = {key: value for key, value in table.items() if value not in ("", (), {}) or key == "fibers"}
        return tomli_w.dumps(said)


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
