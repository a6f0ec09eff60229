"""One family of errors, each with sentences for the person who can act on them.

A person may have made several mistakes at once, so an error holds a list of faults, each with its place. `exit_code`
is what the command ends with.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Fault:
    """One thing that is wrong: where it is, and what to do about it."""

    place: str
    sentence: str

    def __str__(self) -> str:
        return f"{self.place}: {self.sentence}" if self.place else self.sentence


def counted(number: int, word: str) -> str:
    """A number of things in words: "1 lot", "1,200 lots"."""
    return f"{number:,} {word}" if number == 1 else f"{number:,} {word}s"


class PlannerError(Exception):
    """Something that a person can put right. Its text is what that person reads."""

    exit_code = 2

    def __init__(self, *faults: Fault):
        self.faults = faults
        super().__init__("\n".join(str(fault) for fault in faults))

    def __reduce__(self):
        return type(self), self.faults  # so that it can be pickled, from one process to another

    @classmethod
    def at(cls, place: str, sentence: str) -> "PlannerError":
        return cls(Fault(place, sentence))


class SettingsError(PlannerError):
    """The settings file asks for something impossible, or cannot be read."""


class FileError(PlannerError):
    """A workbook or another file is missing, unreadable, or not ours."""


class DescriptionError(PlannerError):
    """A sheet is described wrongly. The fault is the programmer's, and is found when the sheet is described."""


class MissingEngine(PlannerError):
    """An engine that was asked for is not on this machine. This never counts as agreement."""

    exit_code = 3


class Disagreement(PlannerError):
    """What an engine computed differs from the reference library."""

    exit_code = 1
