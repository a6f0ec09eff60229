"""Automatic fields: what the planner adds to a block by itself, such as the message about a record.

Their formulas are in `book.automatic`, and `checking.automatic` has the Python twins.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from workbookgen.errors import DescriptionError
from workbookgen.language.fields import Input, Result
from workbookgen.language.quantities import NUMBER, Kind


@dataclass(frozen=True)
class Automatic:
    """A field that the planner adds to a block by itself."""

    key: str
    label: str
    is_text: bool = True
    is_one: bool = False  # a single cell for the whole log
    note: str = ""

    @property
    def unit(self) -> Kind | None:
        return None if self.is_text else NUMBER


@dataclass(frozen=True)
class Repeat(Automatic):
    """A cell on a ticket that repeats the result of one of the log's records."""

    of: str = ""  # key of the result, a text
    record: int = 0  # counted from 0


# Of each record:
MESSAGE = Automatic("message", "What to look at")  # what is wrong with it, or missing, or else a question
FAULT = Automatic("fault", "What is wrong")  # the same without the questions, in a log that asks any
MARK = Automatic("mark", "")  # a sign that there is a message
FILLED = Automatic("filled", "", is_text=False)  # how many of its folded inputs hold something
# Which record it shows, in a log in which nobody types: written, so that no inserted row changes it.
LINE = Automatic("line", "", is_text=False)
# In which line it stands; 0 of a blank line in which one may type, so that all of these are alike in a file.
OWN_LINE = Automatic("own_line", "", is_text=False)
# Of a whole log:
FIRST = Automatic("first", "", is_one=True)  # the first message about something wrong, or else the last message
OPEN = Automatic("open", "", is_text=False, is_one=True)  # how many records have something wrong
QUESTIONS = Automatic("questions", "", is_text=False, is_one=True)  # how many are only asked about
UNFINISHED = Automatic("unfinished", "", is_text=False, is_one=True)  # how many lack something
SPOILED = Automatic("spoiled", "", is_text=False, is_one=True)  # how many calculated cells were emptied or overwritten


def repeats(fields: Mapping[str, Input | Result], keys: tuple[str, ...], records: int) -> tuple[Repeat, ...]:
    """The ticket cells that repeat these fields, record by record."""
    for key in keys:
        if not (isinstance(each := fields.get(key), Result) and each.is_text):
            raise DescriptionError.at(
                f"field {key}", "it is repeated on tickets, and only results that are texts can be."
            )

    def repeat(key: str, record: int) -> Repeat:
        ticket = record + 1
        return Repeat(f"{key}_on_{ticket}", f"{fields[key].label}, ticket {ticket}", is_one=True, of=key, record=record)

    return tuple(repeat(key, record) for record in range(records) for key in keys)
