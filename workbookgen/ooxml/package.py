"""The package of an .xlsx file: its parts, and the relations between them (OPC, ISO/IEC 29500-2).

Only here are packages opened and their XML parsed: without entities, without the network, and
without trees of unlimited size. Tags are matched without their namespace, which is not the same
in the strict and the usual form of the format.
"""

import io
import posixpath
import zipfile
from collections.abc import Iterator
from copy import copy
from dataclasses import dataclass
from pathlib import Path
from typing import IO

from lxml import etree

SAFELY = {"resolve_entities": False, "no_network": True, "load_dtd": False, "huge_tree": False}

TIGHTEST = 9  # level of compression
TAKES_SECONDS = 4_000_000  # bytes: ten planners as they usually are; of an archive packing would take half a minute

ParseError = etree.XMLSyntaxError


@dataclass(frozen=True)
class Relation:
    """A part that another refers to, or an address outside."""

    kind: str
    target: str
    is_outside: bool


class Package:
    """The parts of a file, read on request; `unpacked` may hold parts that were read before."""

    def __init__(self, source: Path | bytes):
        self.zip = zipfile.ZipFile(io.BytesIO(source) if isinstance(source, bytes) else source)
        self.parts = set(self.zip.namelist())
        self.unpacked: dict[str, bytes] = {}

    def __enter__(self) -> "Package":
        return self

    def __exit__(self, *_) -> None:
        self.zip.close()

    def read(self, part: str) -> bytes:
        """The content of a part. Raises KeyError if it is missing."""
        return self.unpacked[part] if part in self.unpacked else self.zip.read(part)

    def size(self, part: str) -> int:
        """How many bytes a part has, unpacked."""
        return self.zip.getinfo(part).file_size

    def open(self, part: str) -> IO[bytes]:
        """A part as a stream, so that it need not be in memory as a whole."""
        return io.BytesIO(self.unpacked[part]) if part in self.unpacked else self.zip.open(part)

    def root(self, part: str):
        """The root element of a part."""
        return etree.fromstring(self.read(part), etree.XMLParser(**SAFELY))

    def relations(self, part: str) -> dict[str, Relation]:
        """Id -> what a part refers to by it. The package itself is the part with an empty name."""
        folder, name = posixpath.split(part)
        links = posixpath.join(folder, "_rels", f"{name}.rels")
        return dict(self.relations_in(links)) if links in self.parts else {}

    def relations_in(self, links: str) -> list[tuple[str | None, Relation]]:
        """All relations in a .rels part, even if an id occurs twice."""
        folder = posixpath.dirname(posixpath.dirname(links))
        return [(each.get("Id"), _relation(folder, each)) for each in self.root(links).iterchildren(tag=etree.Element)]

    def targets(self, part: str, kind: str) -> list[str]:
        """The parts of a kind that a part refers to and that exist."""
        return [each.target for each in self.relations(part).values() if self.has(each, kind)]

    def has(self, relation: Relation, kind: str) -> bool:
        """Whether a relation is of this kind, and its target is in the package."""
        return relation.kind == kind and not relation.is_outside and relation.target in self.parts


def packed(content: bytes) -> bytes:
    """The same package, packed as tightly as it can be: a planner is mailed. A large one would take seconds."""
    if len(content) > TAKES_SECONDS:
        return content
    tight = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as before, zipfile.ZipFile(tight, "w") as after:
        for part in before.infolist():
            after.writestr(copy(part), before.read(part), zipfile.ZIP_DEFLATED, TIGHTEST)
    return tight.getvalue()


def streamed(stream: IO[bytes], *names: str, **more) -> Iterator:
    """The elements of these names, each once it is complete; clear large ones with `release` after use."""
    for _, element in etree.iterparse(stream, tag=[f"{{*}}{each}" for each in names], **SAFELY | more):
        yield element


def release(element) -> None:
    """Free the memory of an element that was read, and of those before it."""
    element.clear()
    while element.getprevious() is not None:
        del element.getparent()[0]


def local(element) -> str:
    """The name of an element without its namespace."""
    return etree.QName(element).localname if isinstance(element.tag, str) else ""


def is_on(text: str | None, otherwise: bool = False) -> bool:
    """The truth value of an attribute."""
    return otherwise if text is None else text in ("1", "true", "on")


def attribute(element, name: str) -> str | None:
    """An attribute that has a namespace."""
    return next((value for key, value in element.attrib.items() if key.endswith(f"}}{name}")), None)


def _relation(folder: str, element) -> Relation:
    target, is_outside = element.get("Target", ""), element.get("TargetMode") == "External"
    whole = target if is_outside else posixpath.normpath(posixpath.join("/", folder, target)).lstrip("/")
    return Relation(element.get("Type", "").rpartition("/")[2], whole, is_outside)
