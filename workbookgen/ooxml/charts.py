"""Charts: their titles, and the cells that they draw from."""

from collections.abc import Iterator
from dataclasses import dataclass

from workbookgen.ooxml.package import Package, local


@dataclass(frozen=True)
class Series:
    """A series of a chart: its name, and the cells of its labels, values and error bars. A name may also be a text."""

    name: str
    labels: str
    values: str
    whiskers: tuple[str, ...] = ()  # upwards and downwards, where it has them


@dataclass(frozen=True)
class Chart:
    """A chart on a sheet."""

    title: str
    series: tuple[Series, ...]


def read_charts(package: Package, sheet: str) -> Iterator[Chart]:
    """The charts of a sheet's drawings."""
    for drawing in package.targets(sheet, "drawing"):
        for part in package.targets(drawing, "chart"):
            root = package.root(part)
            title = root.find("{*}chart/{*}title")
            words = "" if title is None else _texts(title, "t") or _texts(title, "f")
            yield Chart(words, tuple(map(_series, root.iter("{*}ser"))))


def _series(element) -> Series:
    parts = {local(each): each for each in element}
    name = parts.get("tx")
    said = "" if name is None else (_texts(name, "f") or _texts(name, "v")).strip('"')
    whiskers = tuple(filter(None, (_texts(each, "f") for bars in element.iter("{*}errBars") for each in bars)))
    return Series(said, _first(parts, ("cat", "xVal")), _first(parts, ("val", "yVal")), whiskers)


def _first(parts: dict, names: tuple[str, ...]) -> str:
    return next((_texts(parts[name], "f") for name in names if name in parts), "")


def _texts(element, name: str) -> str:
    return "".join(each.text or "" for each in element.iter(f"{{*}}{name}"))
