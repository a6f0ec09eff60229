"""Tickets, as on the sheet Print: labels to print and cut out."""

from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import Self

from workbookgen.language.views import Section

TICKET = (11, 76, 76, 76, 76, 11)  # columns of a ticket, in pixels: a pad on either side
NUMBER = 26  # the column of a ticket's number, before what one chooses


@dataclass(frozen=True)
class TicketLine:
    """One or two texts side by side on a ticket: keys of results that the log repeats."""

    keys: tuple[str, ...]
    is_bold: bool = False
    is_small: bool = False


@dataclass(frozen=True, kw_only=True)
class Tickets(Section):
    """Tickets to print and cut out, and beside them the log that fills them, a record a ticket.

    All keys are the log's. The name is large, over a rule; the lines stand below it, and the foot at the bottom. The
    tickets stand `across` the columns of the grid that are printed. What one types stands before them, in its first
    columns: the ticket's number, the inputs, and `results`. `notes` follow them.
    """

    block: str
    name: str
    lines: tuple[TicketLine, ...]
    foot: str
    results: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()

    def without(self, fallen: Collection[str], names: Collection[str]) -> Self | None:
        def left(keys: tuple[str, ...]) -> tuple[str, ...]:
            return tuple(key for key in keys if f"{self.block}_{key}" not in fallen)

        if len(left((self.name, self.foot))) < 2:
            return None
        lines = tuple(replace(line, keys=left(line.keys)) for line in self.lines if left(line.keys))
        return replace(self, lines=lines, results=left(self.results))
