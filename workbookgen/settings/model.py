"""The settings of a planner: a frozen model of every value that a guild may choose, each with its default."""

from typing import Literal, get_args

import tomli_w
from pydantic import Field, ValidationInfo, field_validator, model_validator

from workbookgen import colors
from workbookgen.settings.reels import Reel, too_large
from workbookgen.settings.values import SAYABLE, ColorText, Misfit, Note, Strict, text_of
from workbookgen.texts import folded
from workbookgen.unit_systems import UNIT_SYSTEMS

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
