"""A strand of a project's yarn, and what all formulas about strands share.

A plain yarn is one strand that draws on the project's own lots. A design has up to four, its components, each with
lots of its own, found by the design's name and their number in it. What is said of strands in loops is the same for
each of the four. The keys of the planner call a strand a part.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from workbookgen.language.fields import Result
from workbookgen.language.quantities import NUMBER, Kind
from workbookgen.sheets.lookup import lookup

PARTS = (1, 2, 3, 4)


@dataclass(frozen=True)
class Strand:
    """One of the strands. In the texts of its results @ stands for it: @_needs is part_1_needs in the first."""

    number: int

    @property
    def is_first(self) -> bool:
        """Whether it may be all of a plain yarn, spun from the project's own lots."""
        return self.number == 1

    @property
    def letters(self) -> tuple[str, ...]:
        """The letters of its lots: a project lists three, a component of a design two."""
        return ("a", "b", "c") if self.is_first else ("a", "b")

    @property
    def lots(self) -> tuple[str, ...]:
        """The words for its lots."""
        return tuple(f"@_lot_{letter}" for letter in self.letters)

    @property
    def of_lots(self) -> dict[str, str]:
        """What calculations about its lots take: a column of names, its lots, and its part of them."""
        return {"names": "fiber_listed", "part": "@_of_lots"} | {f"lot_{number}": lot for number, lot in enumerate(self.lots, start=1)}

    @property
    def lots_left_out(self) -> tuple[str, ...]:
        """The parameter for a third lot, where there is none."""
        return () if self.is_first else ("lot_3",)

    def text(self, text: str) -> str:
        return text.replace("@", f"part_{self.number}")

    def result(self, key: str, label: str, formula: str, reference: Callable, unit: Kind | None = NUMBER, *, uses: Mapping[str, str], only_if: str = "", **more) -> Result:
        """A result about it."""
        uses = {parameter: self.text(word) for parameter, word in uses.items()}
        return Result(self.text(f"@_{key}"), f"{label}, {self.number}", self.text(formula), reference, unit, uses=uses, only_if=self.text(only_if), **more)

    def lookup(self, key: str, label: str, column: str, chosen: str, unit: Kind | None = None, **more) -> Result:
        """A result about it that is looked up in another log."""
        return lookup(self.text(f"@_{key}"), f"{label}, {self.number}", column, self.text(chosen), unit, **more)


STRANDS = tuple(map(Strand, PARTS))
FIRST, *OTHERS = STRANDS

# The grist as it comes out: what is spun is finer or thicker than planned, what is bought is not.
SPUN_GRIST = "planned * IF(@_bought = 1, 1, finer)"
# What calculations about a strand take: of the yarn made of it, and of how sure its grist is.
OF_YARN = {"share": "@_share", "bought": "@_bought"}
OF_GRIST = {
    "bought": "@_bought", "u_hand": "hand_doubt", "variation": "doubts_variation", "u_batch": "bought_doubt", "u_ball": "doubts_ball",
}
