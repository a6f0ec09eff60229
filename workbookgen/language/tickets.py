"""Tickets: labels to print and cut out, as on the sheet Print."""

from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import Self

from workbookgen.language.views import Section

TICKET = (11, 76, 76, 76, 76, 11)  # widths of a ticket's columns, in pixels: four, with padding on either side
NUMBER = 26  # width of the column with a ticket's number


@dataclass(frozen=True)
class TicketLine:
    """A line of a ticket: the keys of one or two results, side by side, that the log repeats."""

    keys: tuple[str, ...]
    is_bold: bool = False
    is_small: bool = False


@dataclass(frozen=True, kw_only=True)
class Tickets(Section):
    """Tickets to print and cut out, one for each record of a log, and beside them the log itself.

    All keys are the log's. On a ticket, the name is large and underlined, the lines follow, and the foot is at the
    bottom. The tickets are `across` the printed columns of the grid. In its first columns is the log: the ticket's
    number, the inputs and `results`, and below these the `notes`.
    """

    block: str
    name: str
    lines: tuple[TicketLine, ...]
    foot: str
    results: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()

    def without(self, absent: Collection[str], absent_sheets: Collection[str]) -> Self | None:
        def left(keys: tuple[str, ...]) -> tuple[str, ...]:
            return tuple(key for key in keys if f"{self.block}_{key}" not in absent)

        if len(left((self.name, self.foot))) < 2:
            return None
        lines = tuple(replace(line, keys=left(line.keys)) for line in self.lines if left(line.keys))
        return replace(self, lines=lines, results=left(self.results))
