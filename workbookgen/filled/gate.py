"""The gate that every file must pass before anything in it is read.

Planners come by mail from strangers, so a file may be anything: truncated, of another kind than its name says,
protected, full of macros, or made to exhaust the program that opens it. Here it is scanned from end to end in pieces,
with limits on its size and on the number of its parts, tags and cells, and nothing in it is trusted or run. A file
that passes is whole, and takes no later reader more memory or time than the largest planner.
"""

import re
import stat
import struct
import zipfile
import zlib
from collections import Counter
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from copy import copy
from dataclasses import dataclass
from pathlib import Path

from workbookgen.errors import FileError
from workbookgen.filled.cells import MOST_CELLS
from workbookgen.ooxml.package import Package, ParseError

# The largest planner that can be built has 3 million cells if all its lines are filled. One of 2.45 million, saved by
# LibreOffice, which writes every formula out, was measured with 109 MB, 849 MB unpacked and 12 million tags; as .ods,
# with 114 MB and 1,120 MB unpacked.
MOST_BYTES = 256 * 2**20
MOST_UNPACKED = 2_000 * 2**20
MOST_PARTS = 2_000
MOST_TAGS = 20_000_000
MOST_TAGS_BESIDE = 500_000  # in a part that is not a sheet, which is read into memory as a whole

# A workbook that unpacks to no more is kept in memory for the reader; a filled planner of the usual size has 5 MB.
MOST_KEPT = 16 * 2**20

STRAY_CELLS = 100_000  # most that people may add to a planner; a file with more is no longer mainly a planner

PIECE = 2**20
OVERLAP = 32  # bytes; longer than anything that is searched for

AGAIN = "Ask for it again, or take an older copy."
AS_XLSX = "Open it in your spreadsheet program and save it as .xlsx."
PASSWORD = (
    "it is protected with a password. Open it in your spreadsheet program, remove the password, save it and try again."
)
MACROS = "it holds macros, which are never run here. Save it as .xlsx without macros and try again."

# What is raised on reading a damaged package.
PACKING = (zipfile.BadZipFile, zlib.error, struct.error, ParseError)
DAMAGE = (*PACKING, EOFError, OSError, ValueError, KeyError, RuntimeError)

_SHEETS = re.compile(r"xl/worksheets/|xl/sharedStrings\.xml$|content\.xml$")
_ENCODING = re.compile(rb"""<\?xml[^>]{0,80}?encoding\s*=\s*["']([^"']{0,40})""")
_READABLE = {b"utf-8", b"utf8", b"us-ascii", b"ascii", b"iso-8859-1"}
_WIDE = (b"\xff\xfe", b"\xfe\xff", b"<\0", b"\0<", b"\0\0\0<", b"\0\0\xfe\xff")  # how text in UTF-16 or UTF-32 begins
_DECLARES = re.compile(rb"<!(?:DOCTYPE|ENTITY)")
_CELLS = {  # marks that occur at least once for each filled cell
    "xlsx": (re.compile(rb"</c"), re.compile(rb":c")),
    "ods": (re.compile(rb"office:value-type="),),
}

_OTHER_KINDS = (  # a mark in the content types of a package, and what kind of file has it
    (b"wordprocessingml", "a text document of a word processor"),
    (b"presentationml", "a presentation"),
    (b"sheet.binary", "a binary workbook (.xlsb)"),
)


@dataclass(frozen=True)
class Admitted:
    """A workbook that may be read."""

    kind: str  # "xlsx" or "ods"
    cells: int  # about how many are filled
    largest_part: int  # bytes, unpacked
    links: tuple[str, ...]  # files and addresses that a program may fetch on opening it; clickable ones do not count


def inspected(path: Path) -> Admitted:
    """Scan a file. Raises FileError, with a sentence, for anything that is better not read."""
    with admitted(path) as (about, _):
        return about


@contextmanager
def admitted(path: Path) -> Iterator[tuple[Admitted, Package]]:
    """Scan a file and return it open, so that what is read is what was scanned. Raises FileError, with a sentence."""
    about, package = _admit(path)
    with package:
        yield about, package


def _admit(path: Path) -> tuple[Admitted, Package]:
    head = _head(path)
    if not head.startswith(b"PK"):
        raise FileError.at(str(path), _no_package(path, head))
    with ExitStack() as until_admitted:
        try:
            package = until_admitted.enter_context(Package(path))
            kind = _kind(path, package.zip)
            largest = max(entry.file_size for entry in package.zip.infolist())
            about = Admitted(kind, _scan(path, package, _CELLS[kind]), largest, tuple(_links(package)))
        except FileError:
            raise
        except NotImplementedError:
            raise FileError.at(str(path), f"it is compressed in a way that no planner is. {AS_XLSX}") from None
        except DAMAGE:
            raise FileError.at(str(path), f"this file is damaged, or was cut off on its way here. {AGAIN}") from None
        until_admitted.pop_all()
    return about, package


def _head(path: Path) -> bytes:
    """The first bytes of a file, which must be an ordinary one of an acceptable size."""
    if path.name.startswith(("~$", ".~lock.")):
        mark = "this is only the lock of a file that is open in a spreadsheet program; give the planner itself."
        raise FileError.at(str(path), mark)
    try:
        about = path.stat()
        if stat.S_ISDIR(about.st_mode):
            raise FileError.at(str(path), "this is a folder; give the planner in it.")
        if not stat.S_ISREG(about.st_mode):
            raise FileError.at(str(path), "this is not an ordinary file; give a planner.")
        if about.st_size > MOST_BYTES:
            too_large = f"this file has {about.st_size / 2**20:,.0f} MB, far more than a planner; it is not read."
            raise FileError.at(str(path), too_large)
        with path.open("rb") as file:
            head = file.read(4096)
            file.seek(max(0, about.st_size - 2**16 - 22))
            tail = file.read()
    except (FileNotFoundError, NotADirectoryError):
        raise FileError.at(str(path), "there is no such file.") from None
    except OSError as problem:
        raise FileError.at(str(path), f"this file cannot be read: {problem.strerror}.") from None
    if head.startswith(b"PK") and _directory_size(tail) > MOST_PARTS * 256:
        raise FileError.at(str(path), "this file has far more parts than a planner; it is not read.")
    return head


def _directory_size(tail: bytes) -> int:
    """The size that a package claims for the list of its parts, known before that list is read."""
    end = tail.rfind(b"PK\x05\x06")
    if end < 0 or end + 16 > len(tail):
        return 0
    size = struct.unpack_from("<L", tail, end + 12)[0]
    large = end - 76  # where a large package has its record
    if large >= 0 and tail.startswith(b"PK\x06\x06", large):
        size = max(size, struct.unpack_from("<Q", tail, large + 40)[0])
    return size


def _no_package(path: Path, head: bytes) -> str:
    """What to say of a file that is not a package of any kind."""
    if not head:
        return f"this file is empty. {AGAIN}"
    if head.startswith(b"\xd0\xcf\x11\xe0"):
        if "EncryptedPackage".encode("utf-16-le") in path.read_bytes():
            return PASSWORD
        return f"this is a workbook in the old .xls format. {AS_XLSX}"
    start = head.removeprefix(b"\xef\xbb\xbf").lstrip().lower()
    if start.startswith((b"<!doctype html", b"<html", b"<head", b"<table")):
        return f"this is a web page, whatever its name says. {AS_XLSX}"
    if start.startswith(b"<?xml"):
        return f"this is an XML file, whatever its name says. {AS_XLSX}"
    if b"\0" not in head:
        return "this is a text file (such as .csv), whatever its name says. Give the planner itself, saved as .xlsx."
    return f"this is not an .xlsx workbook. {AS_XLSX}"


def _kind(path: Path, package: zipfile.ZipFile) -> str:
    """The format of a workbook, by its content and not by its name."""
    _require_ordinary(path, package.infolist())
    names = package.namelist()
    if "mimetype" in names:
        return _open_document(path, package, names)
    if "[Content_Types].xml" not in names:
        raise FileError.at(str(path), _archive(names))
    types = _start(package, "[Content_Types].xml")
    if b"macroEnabled" in types or any(name.lower().endswith("vbaproject.bin") for name in names):
        raise FileError.at(str(path), MACROS)
    if b"spreadsheetml.sheet.main" not in types and b"spreadsheetml.template.main" not in types:
        what = next((what for mark, what in _OTHER_KINDS if mark in types), "something other than a workbook")
        raise FileError.at(str(path), f"this is {what}. Give a planner, saved as .xlsx.")
    return "xlsx"


def _require_ordinary(path: Path, entries: list[zipfile.ZipInfo]) -> None:
    """Refuse an archive that is too large to be a planner, locked, or packed as no program packs one."""
    if len(entries) > MOST_PARTS:
        raise FileError.at(str(path), f"this file has {len(entries):,} parts, far more than a planner; it is not read.")
    unpacked = sum(entry.file_size for entry in entries)
    if unpacked > MOST_UNPACKED:
        too_large = f"this file unpacks to {unpacked / 2**20:,.0f} MB, far more than a planner; it is not read."
        raise FileError.at(str(path), too_large)
    if any(entry.flag_bits & 1 for entry in entries):
        raise FileError.at(str(path), PASSWORD)
    if any(entry.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED) for entry in entries):
        raise NotImplementedError
    names = Counter(entry.filename.lower() for entry in entries)
    if twice := [name for name, times in names.items() if times > 1]:
        raise FileError.at(str(path), f"it holds the part {twice[0]} twice, which no program writes. {AGAIN}")


def _open_document(path: Path, package: zipfile.ZipFile, names: list[str]) -> str:
    """The kind of a package that states it in its part `mimetype`, as OpenDocument does."""
    kind = _start(package, "mimetype").strip()
    manifest = _start(package, "META-INF/manifest.xml") if "META-INF/manifest.xml" in names else b""
    if b"encryption-data" in manifest or "encrypted-package" in names:
        raise FileError.at(str(path), PASSWORD)
    if not kind.startswith(b"application/vnd.oasis.opendocument.spreadsheet"):
        raise FileError.at(str(path), "this is not a workbook. Give a planner, saved as .xlsx or .ods.")
    if any(name.startswith(("Basic/", "Scripts/")) and not name.endswith("/") for name in names):
        raise FileError.at(str(path), MACROS)
    return "ods"


def _start(package: zipfile.ZipFile, name: str) -> bytes:
    with package.open(name) as stream:
        return stream.read(PIECE)


def _archive(names: list[str]) -> str:
    """What to say of an archive that is not a workbook."""
    if any(name.lower().endswith(".iwa") for name in names):
        return "this is a Numbers file. Export it from Numbers as an Excel workbook and try again."
    if inside := [name for name in names if name.lower().endswith((".xlsx", ".ods"))]:
        return f"this is a .zip archive. Unpack it, and give the {inside[0].rpartition('/')[2]} in it."
    return f"this is a .zip archive, not an .xlsx workbook. {AS_XLSX}"


def _scan(path: Path, package: Package, marks: tuple[re.Pattern[bytes], ...]) -> int:
    """Unpack every part once, piece by piece. Returns about how many cells are filled.

    A small workbook's parts are kept for the reader; those of a large one are not.
    """
    tags = cells = 0
    entries = package.zip.infolist()
    is_kept = sum(entry.file_size for entry in entries) <= MOST_KEPT
    for entry in entries:
        before, kept = tags, []
        for piece in _pieces(path, package.zip, entry):
            tags += piece.count(b"<")
            cells += sum(_times(mark, piece) for mark in marks)
            if tags > MOST_TAGS or not _SHEETS.search(entry.filename) and tags - before > MOST_TAGS_BESIDE:
                too_large = f"its part {entry.filename} is far larger than in a planner; it is not read."
                raise FileError.at(str(path), too_large)
            if cells > MOST_CELLS:
                too_many = f"this file has more than {MOST_CELLS:,} filled cells, far more than a planner"
                raise FileError.at(str(path), f"{too_many}; it is not read.")
            if is_kept:
                kept.append(piece)
        if is_kept:
            package.unpacked[entry.filename] = b"".join(kept)
    return cells


def _pieces(path: Path, package: zipfile.ZipFile, entry: zipfile.ZipInfo):
    """The content of a part, which must be as long as it says, readable, and free of entities."""
    longer = copy(entry)
    longer.file_size += 1  # otherwise anything beyond the size it claims would be cut off unseen
    read, before = 0, b""
    with package.open(longer) as stream:
        while piece := stream.read(PIECE):
            if not read and (piece.startswith(_WIDE) or _encoding(piece) not in _READABLE):
                strange = f"its part {entry.filename} is in an encoding that no planner has. {AS_XLSX}"
                raise FileError.at(str(path), strange)
            read += len(piece)
            if _declares(piece) or _declares(before + piece[:OVERLAP]):
                declares = f"its part {entry.filename} declares entities, as no planner does; it is not read."
                raise FileError.at(str(path), declares)
            before = piece[-OVERLAP:]
            yield piece
    if read != entry.file_size:
        raise zipfile.BadZipFile


def _times(mark: re.Pattern[bytes], text: bytes) -> int:
    """How often a mark occurs. That a short one is absent, a pattern finds in a sixth of the time of counting."""
    first = mark.search(text)
    return text.count(mark.pattern, first.start()) if first else 0


def _declares(text: bytes) -> bool:
    return _DECLARES.search(text) is not None


def _encoding(start: bytes) -> bytes:
    found = _ENCODING.match(start[:200].removeprefix(b"\xef\xbb\xbf"))
    return found[1].lower() if found else b"utf-8"


def _links(package: Package) -> Iterator[str]:
    """Files and addresses that a program may fetch when it opens the workbook."""
    for name in package.zip.namelist():
        if name.endswith(".rels"):
            for _, relation in package.relations_in(name):
                if relation.is_outside and relation.kind != "hyperlink":
                    yield relation.target or name
        elif name.startswith(("xl/connections", "xl/queryTables/")):
            yield name
