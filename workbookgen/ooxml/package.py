"""The package of an .xlsx file: its parts, and which of them a part refers to. Open Packaging Conventions, ISO/IEC 29500-2.

Tags are matched without their namespace, since the strict and the usual form of the format differ in it.
"""

import io
import posixpath
import zipfile
from dataclasses import dataclass
from pathlib import Path

from lxml import etree

SAFELY = {"resolve_entities": False, "no_network": True, "load_dtd": False, "huge_tree": True}


@dataclass(frozen=True)
class Relation:
    """A part that another refers to, or an address outside."""

    kind: str
    target: str
    is_outside: bool


class Package:
    """The parts of a file, read when they are asked for."""

    def __init__(self, source: Path | bytes):
        self.zip = zipfile.ZipFile(io.BytesIO(source) if isinstance(source, bytes) else source)
        self.parts = set(self.zip.namelist())

    def __enter__(self) -> "Package":
        return self

    def __exit__(self, *_) -> None:
        self.zip.close()

    def root(self, part: str):
        """The root element of a part."""
        return etree.fromstring(self.zip.read(part), etree.XMLParser(**SAFELY))

    def relations(self, part: str) -> dict[str, Relation]:
        """What a part refers to, by the name it has for each. The package itself is the part without a name."""
        folder, name = posixpath.split(part)
        links = posixpath.join(folder, "_rels", f"{name}.rels")
        if links not in self.parts:
            return {}
        return {each.get("Id"): _relation(folder, each) for each in self.root(links)}

    def targets(self, part: str, kind: str) -> list[str]:
        """The parts of a kind that a part refers to, as far as they are there."""
        return [each.target for each in self.relations(part).values() if each.kind == kind and each.target in self.parts]


def _relation(folder: str, element) -> Relation:
    target, is_outside = element.get("Target", ""), element.get("TargetMode") == "External"
    whole = target if is_outside else posixpath.normpath(posixpath.join("/", folder, target)).lstrip("/")
    return Relation(element.get("Type", "").rpartition("/")[2], whole, is_outside)


def local(element) -> str:
    """The name of an element without its namespace."""
    return etree.QName(element).localname if isinstance(element.tag, str) else ""


def is_on(text: str | None, otherwise: bool = False) -> bool:
    """A truth value, as attributes spell it."""
    return otherwise if text is None else text in ("1", "true", "on")


def attribute(element, name: str) -> str | None:
    """An attribute that has a namespace."""
    return next((value for key, value in element.attrib.items() if key.endswith(f"}}{name}")), None)
