"""Runs of consecutive numbers, to report rows 7 to 46 as one finding rather than forty."""

from collections.abc import Iterable, Iterator


def runs(numbers: Iterable[int]) -> Iterator[tuple[int, int]]:
    """The first and the last number of every run; the numbers are in ascending order."""
    first = last = None
    for number in numbers:
        if last is not None and number != last + 1:
            yield first, last
            first = None
        first, last = number if first is None else first, number
    if last is not None:
        yield first, last
