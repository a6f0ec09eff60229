"""The unit systems that a planner can be built in: a choice of lengths and a choice of masses.

Each kind of quantity follows one of the two (`language/quantities.py`), so another system is one more line here.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class UnitSystem:
    """The lengths and the masses that a spinner is used to."""

    lengths: str  # yards or meters, and what follows them: inches, gallons, degrees Fahrenheit
    masses: str  # ounces or grams

    @property
    def in_words(self) -> str:
        return f"{self.lengths} and {self.masses}"

    def is_metric(self, by: str) -> bool:
        """Whether quantities that follow the "length" or the "mass" are shown in metric units."""
        return {"length": self.lengths == "meters", "mass": self.masses == "grams"}[by]


UNIT_SYSTEMS = {
    "us": UnitSystem("yards", "ounces"),
    "us-grams": UnitSystem("yards", "grams"),
    "metric": UnitSystem("meters", "grams"),
}
