"""The package of an .xlsx file: its parts, and which of them a part refers to (OPC, ISO/IEC 29500-2).

This is the one place where a package is opened and its XML parsed: without entities, without
the network, and without trees of unbounded size. Tags are matched without their namespace,
since the strict and the usual form of the format differ in it.
"""

import io
import posixpath
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import IO

from lxml import etree

SAFELY = {"resolve_entities": False, "no_network": True, "load_dtd": False, "huge_tree": False}

ParseError = etree.XMLSyntaxError


@dataclass(frozen=True)
class Relation:
    """A part that another refers to, or an address outside."""

    kind: str
    target: str
    is_outside: bool


class Package:
    """The parts of a file, read when they are asked for. Those that were unpacked already can be given along."""

    def __init__(self, source: Path | bytes):
        self.zip = zipfile.ZipFile(io.BytesIO(source) if isinstance(source, bytes) else source)
        self.parts = set(self.zip.namelist())
        self.unpacked: dict[str, bytes] = {}

    def __enter__(self) -> "Package":
        return self

    def __exit__(self, *_) -> None:
        self.zip.close()

    def read(self, part: str) -> bytes:
        """All of a part. Raises KeyError where it is not there."""
        return self.unpacked[part] if part in self.unpacked else self.zip.read(part)

    def size(self, part: str) -> int:
        """How many bytes a part has, unpacked."""
        return self.zip.getinfo(part).file_size

    def open(self, part: str) -> IO[bytes]:
        """A part as a stream, which need not be in memory as a whole."""
        return io.BytesIO(self.unpacked[part]) if part in self.unpacked else self.zip.open(part)

    def root(self, part: str):
        """The root element of a part."""
        return etree.fromstring(self.read(part), etree.XMLParser(**SAFELY))

    def relations(self, part: str) -> dict[str, Relation]:
        """What a part refers to, by the name it has for each. The package itself is the part without a name."""
        folder, name = posixpath.split(part)
        links = posixpath.join(folder, "_rels", f"{name}.rels")
        return dict(self.relations_in(links)) if links in self.parts else {}

    def relations_in(self, links: str) -> list[tuple[str | None, Relation]]:
        """All that a part of relationships says, even what it says twice."""
        folder = posixpath.dirname(posixpath.dirname(links))
        return [(each.get("Id"), _relation(folder, each)) for each in self.root(links).iterchildren(tag=etree.Element)]

    def targets(self, part: str, kind: str) -> list[str]:
        """The parts of a kind that a part refers to, as far as they are there."""
        return [each.target for each in self.relations(part).values() if self.has(each, kind)]

    def has(self, relation: Relation, kind: str) -> bool:
        """Whether a part is of this kind, and there."""
        return relation.kind == kind and not relation.is_outside and relation.target in self.parts


def streamed(stream: IO[bytes], *names: str, **more) -> Iterator:
    """The elements of these names, each when it is whole; whoever takes a large one clears it with `done`."""
    for _, element in etree.iterparse(stream, tag=[f"{{*}}{each}" for each in names], **SAFELY | more):
        yield element


def done(element) -> None:
    """Lets go of an element that was read, and of what stands before it."""
    element.clear()
    while element.getprevious() is not None:
        del element.getparent()[0]


def local(element) -> str:
    """The name of an element without its namespace."""
    return etree.QName(element).localname if isinstance(element.tag, str) else ""


def is_on(text: str | None, otherwise: bool = False) -> bool:
    """A truth value, as attributes spell it."""
    return otherwise if text is None else text in ("1", "true", "on")


def attribute(element, name: str) -> str | None:
    """An attribute that has a namespace."""
    return next((value for key, value in element.attrib.items() if key.endswith(f"}}{name}")), None)


def _relation(folder: str, element) -> Relation:
    target, is_outside = element.get("Target", ""), element.get("TargetMode") == "External"
    whole = target if is_outside else posixpath.normpath(posixpath.join("/", folder, target)).lstrip("/")
    return Relation(element.get("Type", "").rpartition("/")[2], whole, is_outside)
