"""What is typed into a planner, for tests."""

from collections.abc import Iterable, Mapping

from workbookgen.language.entries import Entry, starting_entries, with_records
from workbookgen.language.planner import Planner


def entries_with(planner: Planner, logs: Mapping[str, Iterable[Mapping[str, Entry]]]) -> dict[str, tuple[Entry, ...]]:
    """The entries of a new planner, with these records in the first lines of these logs."""
    entries = starting_entries(planner)
    for log, records in logs.items():
        entries = with_records(planner, entries, log, list(records))
    return entries
