"""The unit systems in which a planner can be built: a unit of length and a unit of mass, chosen apart.

Each kind of quantity says which of the two it goes by (`language/quantities.py`), so a further system is a line here.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class UnitSystem:
    """The lengths and the masses that a spinner is used to."""

    lengths: str  # yards or meters, and what goes by them: inches, gallons, degrees Fahrenheit
    masses: str  # ounces or grams

    @property
    def in_words(self) -> str:
        return f"{self.lengths} and {self.masses}"

    def is_metric(self, by: str) -> bool:
        """Whether what goes by "length" or "mass" is shown in metric units."""
        return {"length": self.lengths == "meters", "mass": self.masses == "grams"}[by]


UNIT_SYSTEMS = {
    "us": UnitSystem("yards", "ounces"),
    "us-grams": UnitSystem("yards", "grams"),
    "metric": UnitSystem("meters", "grams"),
}
