"""Texts as a file stores them: in formatted runs, with escapes, and shared by many cells."""

import re
from collections.abc import Sequence

from lxml import etree

from workbookgen.ooxml import plain
from workbookgen.ooxml.package import SAFELY, Package, local, streamed

_BEGINS, _ENDS = b"<si>", b"</si>"
_ONE_RUN = re.compile(rb'<t(?: xml:space="preserve")?>(%b)</t>' % plain.TEXT)


class SharedStrings(Sequence[str]):
    """The texts that cells share, by number. Each is read on request, since most are labels that nobody needs."""

    def __init__(self, opening: bytes, stored: list[bytes]):
        self.opening, self.stored = opening, stored
        self.read: dict[int, str] = {}

    def __len__(self) -> int:
        return len(self.stored)

    def __getitem__(self, number: int) -> str:
        if number not in self.read:
            self.read[number] = self._text(self.stored[number])
        return self.read[number]

    def _text(self, stored: bytes) -> str:
        if run := _ONE_RUN.fullmatch(stored):
            return unescaped(plain.text(run[1]))
        [element] = etree.fromstring(b"%b<si>%b</si></sst>" % (self.opening, stored), etree.XMLParser(**SAFELY))
        return text_of(element)


def read_strings(package: Package, book: str) -> Sequence[str]:
    """The texts that the cells of a workbook share."""
    parts = package.targets(book, "sharedStrings")
    if not parts:
        return []
    if package.size(parts[0]) <= plain.MOST_BYTES:
        content = package.read(parts[0])
        start, end = content.find(_BEGINS), content.rfind(_ENDS)
        stored = content[start + len(_BEGINS) : end].split(_ENDS + _BEGINS) if start < end else []
        if plain.is_plain(content, "sst") and len(stored) == content.count(b"<si") == content.count(_ENDS):
            return SharedStrings(plain.opening_tag(content, "sst"), stored)
    found = []
    with package.open(parts[0]) as stream:
        for element in streamed(stream, "si"):
            found.append(text_of(element))
            element.clear()
    return found


def text_of(element) -> str:
    """The text of a string, its runs joined, without phonetic hints."""
    return unescaped("".join(each.text or "" for each in element.iter("{*}t") if local(each.getparent()) != "rPh"))


def unescaped(text: str) -> str:
    """A text with its escapes resolved. Half of a surrogate pair is replaced, since no file could hold it."""
    if "_x" not in text:
        return text
    from openpyxl.utils.escape import unescape  # it imports all of openpyxl, and few texts need it

    return unescape(text).encode("utf-16", "surrogatepass").decode("utf-16", "replace")
