"""What is typed into a planner, for tests."""

from collections.abc import Iterable, Mapping

from workbookgen.checking.expected import expected_of_keys, expected_values
from workbookgen.language.entries import Entries, Entry, starting_entries, with_records
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


def shown_in(planner: Planner, entries: Entries, keys: Iterable[str], line: int = 0) -> list[Entry]:
    """What these fields should show in one line of their logs, the first, or on their cards."""
    keys = list(keys)
    [values] = expected_of_keys(planner, [entries], keys)
    return [values[key][line] for key in keys]
