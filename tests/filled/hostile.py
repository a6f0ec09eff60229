"""Files that are no planner, or none that should be read: how each is made, and what is to be said of it.

Each is made from a real planner by changing the very thing that is meant, so that nothing
else can be the reason for refusing it.
"""

import io
import os
import re
import struct
import zipfile
import zlib
from collections.abc import Callable
from pathlib import Path

OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(504)
MAIN = b"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"
DAMAGED = "this file is damaged, or was cut off on its way here. Ask for it again, or take an older copy."
LINK = (
    b'<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
    b'<Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/%s" Target="%s" TargetMode="External"/>'
    b"</Relationships>"
)
BOMB = (
    b'<?xml version="1.0"?><!DOCTYPE lolz [<!ENTITY a "aaaaaaaaaa">'
    + b"".join(b'<!ENTITY %c "%s">' % (letter, b"&%c;" % (letter - 1) * 10) for letter in range(ord("b"), ord("k")))
    + b"]>"
)


def repacked(
    planner: bytes,
    change: Callable[[str, bytes], bytes | None] = lambda name, content: content,
    added: dict[str, bytes] | None = None,
) -> bytes:
    """The planner with parts changed, taken away (None) or added."""
    stream = io.BytesIO()
    with (
        zipfile.ZipFile(io.BytesIO(planner)) as before,
        zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as after,
    ):
        for entry in before.infolist():
            if (content := change(entry.filename, before.read(entry))) is not None:
                after.writestr(entry.filename, content)
        for name, content in (added or {}).items():
            after.writestr(name, content)
    return stream.getvalue()


def part(name: str, change: Callable[[bytes], bytes]):
    """Only this part changed; it must be there."""

    def changing(planner: bytes) -> bytes:
        assert name in zipfile.ZipFile(io.BytesIO(planner)).namelist()
        return repacked(planner, lambda each, content: change(content) if each == name else content)

    return changing


def adding(**parts: bytes):
    return lambda planner: repacked(
        planner, added={name.replace("__", "/"): content for name, content in parts.items()}
    )


def types(new: bytes):
    return part("[Content_Types].xml", lambda content: content.replace(MAIN, new))


def other_zip(**parts: bytes):
    def made(planner: bytes) -> bytes:
        stream = io.BytesIO()
        with zipfile.ZipFile(stream, "w") as package:
            for name, content in parts.items():
                package.writestr(name.replace("__", "/"), content)
        return stream.getvalue()

    return made


def bomb(planner: bytes) -> bytes:
    """More than two gigabytes of blanks in a few megabytes."""
    stream = io.BytesIO(planner)
    with zipfile.ZipFile(stream, "a", zipfile.ZIP_DEFLATED, compresslevel=1) as package:
        with package.open("xl/bomb.xml", "w", force_zip64=True) as part:
            for _ in range(2_200):
                part.write(b" " * 2**20)
    return stream.getvalue()


def lying_bomb(planner: bytes) -> bytes:
    """The same, but it calls itself ten bytes long, with the right check sum for those."""
    packed = zlib.compressobj(9, zlib.DEFLATED, -15)
    blanks = packed.compress(b" " * 2**20) + packed.flush(zlib.Z_FULL_FLUSH)  # after which the same may follow again
    body = blanks * 512 + packed.flush()
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w") as package:
        package.writestr("xl/lie.xml", body)
    raw = bytearray(stream.getvalue())
    central = raw.index(b"PK\x01\x02")
    for crc, method, size in ((14, 8, 22), (central + 16, central + 10, central + 24)):
        struct.pack_into("<L", raw, crc, zlib.crc32(b" " * 10))
        struct.pack_into("<H", raw, method, zipfile.ZIP_DEFLATED)
        struct.pack_into("<L", raw, size, 10)
    return _joined(planner, bytes(raw))


def _joined(planner: bytes, other: bytes) -> bytes:
    """One package with the parts of both, whatever they say of themselves."""

    def pieces(raw: bytes) -> tuple[bytes, bytes, int, int]:
        end = raw.rindex(b"PK\x05\x06")
        count, size, start = struct.unpack_from("<HLL", raw, end + 10)
        return raw[:start], raw[start : start + size], count, size

    (body, listed, count, size), (more, extra, others, added) = pieces(planner), pieces(other)
    moved = bytearray(extra)
    at = 0
    while at < len(moved):
        name, field, comment = struct.unpack_from("<HHH", moved, at + 28)
        struct.pack_into("<L", moved, at + 42, struct.unpack_from("<L", moved, at + 42)[0] + len(body))
        at += 46 + name + field + comment
    end = struct.pack(
        "<4sHHHHLLH", b"PK\x05\x06", 0, 0, count + others, count + others, size + added, len(body) + len(more), 0
    )
    return body + more + listed + bytes(moved) + end


def overlapping(planner: bytes) -> bytes:
    """A thousand names for one part of ten megabytes."""
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as package:
        package.writestr("xl/x0000.xml", b" " * 10**7)
    raw = stream.getvalue()
    start, end = raw.index(b"PK\x01\x02"), raw.rindex(b"PK\x05\x06")
    listed = b"".join(raw[start:end].replace(b"x0000", b"x%04d" % number) for number in range(1000))
    tail = struct.pack("<4sHHHHLLH", b"PK\x05\x06", 0, 0, 1000, 1000, len(listed), start, 0)
    return _joined(planner, raw[:start] + listed + tail)


def many_parts(planner: bytes) -> bytes:
    return repacked(planner, added={f"xl/{number}.xml": b"<x/>" for number in range(2_500)})


def endless_list(planner: bytes) -> bytes:
    """A million empty parts: reading their list alone would take long."""
    record = struct.pack("<4sHHHHHHLLLHHHHHLL", b"PK\x01\x02", 20, 20, 0, 0, 0, 33, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0) + b"a"
    listed = record * 1_000_000
    return b"PK\x03\x04" + listed + struct.pack("<4sHHHHLLH", b"PK\x05\x06", 0, 0, 65535, 65535, len(listed), 4, 0)


def bzipped(planner: bytes) -> bytes:
    stream = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(planner)) as before, zipfile.ZipFile(stream, "w", zipfile.ZIP_BZIP2) as after:
        for entry in before.infolist():
            after.writestr(entry.filename, before.read(entry))
    return stream.getvalue()


def twice(planner: bytes) -> bytes:
    return _joined(planner, other_zip(**{"xl__workbook.xml": b"<workbook/>"})(b""))


def zip_password(planner: bytes) -> bytes:
    raw = bytearray(planner)
    for mark, at in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
        start = raw.find(mark)
        while start >= 0:
            raw[start + at] |= 1
            start = raw.find(mark, start + 4)
    return bytes(raw)


def wrong_sum(planner: bytes) -> bytes:
    """One byte in the middle of a part is another."""
    with zipfile.ZipFile(io.BytesIO(planner)) as package:
        entry = package.getinfo("xl/worksheets/sheet2.xml")
    at = entry.header_offset + 60 + entry.compress_size // 2
    return planner[:at] + bytes([planner[at] ^ 0xFF]) + planner[at + 1 :]


def filled_rows(rows: int, columns: str, cell: str):
    def more(content: bytes) -> bytes:
        last = max(int(number) for number in re.findall(rb'<row r="(\d+)"', content))
        line = '<row r="#">' + "".join(cell.format(column=column, row="#") for column in columns) + "</row>"
        added = "".join(line.replace("#", str(row)) for row in range(last + 1, last + 1 + rows))
        return content.replace(b"</sheetData>", added.encode() + b"</sheetData>")

    return part("xl/worksheets/sheet2.xml", more)


STRAY = '<c r="{column}{row}"><v>1</v></c>'

# name -> how it is made from a planner, and how the sentence after the file's name goes
NO_PLANNERS: dict[str, tuple[Callable[[bytes], bytes], str]] = {
    "empty": (lambda planner: b"", r"this file is empty\."),
    "text": (
        lambda planner: b"Skein,Wraps\nFirst,104\n",
        r"this is a text file \(such as \.csv\), whatever its name says\.",
    ),
    "web page": (
        lambda planner: b"\n <!DOCTYPE html><html><table></table></html>",
        r"this is a web page, whatever its name says\.",
    ),
    "flat XML": (
        lambda planner: b'\xef\xbb\xbf<?xml version="1.0"?><Workbook/>',
        r"this is an XML file, whatever its name says\.",
    ),
    "noise": (lambda planner: bytes(range(256)) * 40, r"this is not an \.xlsx workbook\."),
    "old kind": (
        lambda planner: OLE + "Workbook".encode("utf-16-le") + bytes(500),
        r"this is a workbook in the old \.xls format\.",
    ),
    "password": (
        lambda planner: OLE + "EncryptedPackage".encode("utf-16-le") + bytes(500),
        r"it is protected with a password\.",
    ),
    "zip password": (zip_password, r"it is protected with a password\."),
    "only PK": (lambda planner: b"PK", DAMAGED),
    "cut in half": (lambda planner: planner[: len(planner) // 2], DAMAGED),
    "end cut off": (lambda planner: planner[:-1], DAMAGED),
    "start cut off": (lambda planner: b"PK" + planner[1000:], DAMAGED),
    "a wrong byte": (wrong_sum, DAMAGED),
    "letter in a zip": (other_zip(letter=b"Dear all"), r"this is a \.zip archive, not an \.xlsx workbook\."),
    "planner in a zip": (
        other_zip(**{"guild__mine.xlsx": b"x"}),
        r"this is a \.zip archive\. Unpack it, and give the mine\.xlsx in it\.",
    ),
    "Numbers": (other_zip(**{"Index__Document.iwa": b"x"}), r"this is a Numbers file\. Export it from Numbers"),
    "text document": (
        types(b"application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml"),
        r"this is a text document of a word processor\.",
    ),
    "presentation": (
        types(b"application/vnd.openxmlformats-officedocument.presentationml.presentation.main+xml"),
        r"this is a presentation\.",
    ),
    "binary workbook": (
        types(b"application/vnd.ms-excel.sheet.binary.macroEnabled.main"),
        r"it holds macros, which are never run here\.",
    ),
    "macros": (
        types(b"application/vnd.ms-excel.sheet.macroEnabled.main+xml"),
        r"it holds macros, which are never run here\.",
    ),
    "hidden macros": (adding(**{"xl__vbaProject.bin": b"\0"}), r"it holds macros, which are never run here\."),
    "open text": (other_zip(mimetype=b"application/vnd.oasis.opendocument.text"), r"this is not a workbook\."),
    "open with password": (
        other_zip(
            mimetype=b"application/vnd.oasis.opendocument.spreadsheet",
            **{"META-INF__manifest.xml": b"<manifest:encryption-data/>"},
        ),
        r"it is protected with a password\.",
    ),
    "open with macros": (
        other_zip(
            mimetype=b"application/vnd.oasis.opendocument.spreadsheet", **{"Basic__Standard__Module1.xml": b"<x/>"}
        ),
        r"it holds macros, which are never run here\.",
    ),
    "bomb": (bomb, r"this file unpacks to 2,2\d\d MB, far more than a planner; it is not read\."),
    "lying bomb": (lying_bomb, DAMAGED),
    "overlapping parts": (overlapping, r"this file unpacks to 9,\d\d\d MB, far more than a planner; it is not read\."),
    "many parts": (many_parts, r"this file has 2,\d\d\d parts, far more than a planner; it is not read\."),
    "endless list": (endless_list, r"this file has far more parts than a planner; it is not read\."),
    "other packing": (bzipped, r"it is compressed in a way that no planner is\."),
    "a part twice": (twice, r"it holds the part xl/workbook\.xml twice"),
    "billion laughs": (
        part("xl/sharedStrings.xml", lambda content: BOMB + content.split(b"?>", 1)[1]),
        r"its part xl/sharedStrings\.xml declares entities",
    ),
    "outside entity": (
        part(
            "xl/workbook.xml",
            lambda content: b'<!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/passwd">]>' + content.split(b"?>", 1)[1],
        ),
        r"its part xl/workbook\.xml declares entities",
    ),
    "entity in wide letters": (
        part(
            "xl/sharedStrings.xml",
            lambda content: '\ufeff<!DOCTYPE x [<!ENTITY e "e">]><sst>&e;</sst>'.encode("utf-16-le"),
        ),
        r"its part xl/sharedStrings\.xml is in an encoding that no planner has\.",
    ),
    "entity in other letters": (
        part(
            "xl/sharedStrings.xml",
            lambda content: (
                b'<?xml version="1.0" encoding="cp037"?>' + '<!DOCTYPE x [<!ENTITY e "e">]>'.encode("cp037")
            ),
        ),
        r"its part xl/sharedStrings\.xml is in an encoding that no planner has\.",
    ),
    "a flood of tags": (
        part("xl/styles.xml", lambda content: content + b"<x/>" * 600_000),
        r"its part xl/styles\.xml is far larger than in a planner",
    ),
    "four million cells": (
        filled_rows(400_000, "ABCDEFGHIJ", STRAY),
        r"this file has more than 3,600,000 filled cells|its part xl/worksheets",
    ),
}

# What a program would fetch or start on working the file out; `check` and `fields` refuse it, reading entries does no
# harm.
REACHING_OUT: dict[str, tuple[Callable[[bytes], bytes], str]] = {
    "another workbook": (
        adding(
            **{
                "xl__externalLinks___rels__externalLink1.xml.rels": LINK
                % (b"externalLinkPath", b"file:///C:/secret.xlsx")
            }
        ),
        r"it draws on file:///C:/secret\.xlsx, and a planner stands alone",
    ),
    "a picture from the net": (
        adding(**{"xl__drawings___rels__drawing9.xml.rels": LINK % (b"image", b"http://example.com/seen.png")}),
        r"it draws on http://example\.com/seen\.png, and a planner stands alone",
    ),
    "a connection": (adding(**{"xl__connections.xml": b"<connections/>"}), r"it draws on xl/connections\.xml"),
    "a million cells": (
        filled_rows(100_000, "ABCDEFGHIJ", STRAY),
        r"this file has about 1,0\d\d,\d\d\d filled cells, where this planner has at most",
    ),
}

FORMULAS = {  # typed into an input: these reach out ...
    'WEBSERVICE("http://example.com/"&A1)': False,
    'DDE("soffice","a.ods","A1")': False,
    "cmd|'/c calc'!A0": False,
    "[1]Sheet1!A1*2": False,
    "'[other book.xlsx]Sheet1'!A1": False,
    "'file:///elsewhere/x.ods'#Sheet1.A1": False,
    'RTD("x","","y")': False,
    "6.5*16": True,  # ... and these do not
    'LEN("see http://example.com [1] | CALL(x)")': True,
    "Reels!$B$7+1": True,
}


def no_ordinary_files(folder: Path) -> dict[Path, str]:
    """What is no file at all, and what is said of it."""
    (folder / "folder.xlsx").mkdir()
    os.mkfifo(folder / "pipe.xlsx")
    (folder / "dangling.xlsx").symlink_to(folder / "nothing")
    (folder / "~$mine.xlsx").write_bytes(b"\x04Anna")
    return {
        folder / "none.xlsx": "there is no such file.",
        folder / "dangling.xlsx": "there is no such file.",
        folder / "folder.xlsx": "this is a folder; give the planner in it.",
        folder / "pipe.xlsx": "this is not an ordinary file; give a planner.",
        Path("/dev/zero"): "this is not an ordinary file; give a planner.",
        folder
        / "~$mine.xlsx": "this is only the lock of a file that is open in a spreadsheet program; give the planner itself.",
    }
