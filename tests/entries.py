"""What is typed into a planner, for tests."""

from collections.abc import Iterable, Mapping

from workbookgen.checking.expected import expected_values
from workbookgen.language.entries import Entry, starting_entries, with_records
from workbookgen.language.planner import Planner


def entries_with(planner: Planner, logs: Mapping[str, Iterable[Mapping[str, Entry]]]) -> dict[str, tuple[Entry, ...]]:
    """The entries of a new planner, with these records in the first lines of these logs."""
    entries = starting_entries(planner)
    for log, records in logs.items():
        entries = with_records(planner, entries, log, list(records))
    return entries


def values_of(
    planner: Planner, cards: Mapping[str, Entry] | None = None, **logs: Iterable[Mapping[str, Entry]]
) -> Mapping[str, tuple[Entry, ...]]:
    """What every formula of a new planner should show, with these entries on its cards and records in its logs."""
    typed = {key: (value,) for key, value in (cards or {}).items()}
    return expected_values(planner, entries_with(planner, logs) | typed)
