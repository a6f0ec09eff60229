"""Proofs: whether the program that a person really uses computes what is known.

A proof computes a published example with the very formula of the planner. A trial asks for less and more: each
function that formulas may use, on its own, and whether any cell shows an error.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from workbookgen.errors import DescriptionError
from workbookgen.language import dimensions
from workbookgen.language.fields import Result
from workbookgen.language.formula import formula
from workbookgen.language.quantities import is_convertible
from workbookgen.language.type_checks import require_types

# How a printed value is known: read where it was printed, worked by hand from what was, common practice, or recalled.
PROVENANCES = ("read", "derived", "practice", "memory")


@dataclass(frozen=True)
class Proof:
    """A published worked example of one result.

    `given` are the printed values of the formula's words, each with its unit's name in the registry; `printed` is the
    printed answer.
    """

    number: str
    what: str
    result: str  # full key of the result whose formula is proven
    given: Mapping[str, tuple[float | str, str]]
    printed: float | str
    unit: str
    tolerance: float
    source: str
    provenance: str

    def __post_init__(self):
        require_types(f"proof {self.number}", self)
        units = [unit for _, unit in (*self.given.values(), ("", self.unit)) if unit]
        faults = [f"the registry knows no unit {unit}" for unit in units if not dimensions.is_unit(unit)]
        faults += [
            f"no formula can convert the unit {unit}: add it to PRINTED_ONLY in language/quantities.py"
            for unit in units
            if dimensions.is_unit(unit) and not is_convertible(unit)
        ]
        if self.provenance not in PROVENANCES:
            faults.append(f"its provenance {self.provenance!r} is none of {', '.join(PROVENANCES)}")
        if faults:
            raise DescriptionError.at(f"proof {self.number}", "; ".join(faults) + ".")


@dataclass(frozen=True)
class Trial:
    """What a program must be able to do for the planner, with an answer that is known from definitions.

    It computes a formula of constants, in words of the planner; or it shows no error in any cell of these `blocks`.
    """

    number: str
    what: str
    printed: float | str
    formula: str = ""
    blocks: tuple[str, ...] = ()
    tolerance: float = 1e-9
    unit: str = ""
    source: str = "The function's definition"
    provenance: str = "derived"

    def __post_init__(self):
        if faults := formula(self.formula).objections:
            raise DescriptionError.at(f"trial {self.number}", "; ".join(faults) + ".")


@dataclass(frozen=True)
class ProofTable:
    """Published examples, each computed live beside its printed answer, and below them the trials.

    `verdict` compares the two, in the words computed, printed and tolerance.
    """

    key: str
    title: str
    proofs: tuple[Proof, ...]
    verdict: Result
    about: str = ""
    trials: tuple[Trial, ...] = ()

    @property
    def rows(self) -> int:
        return len(self.lines)

    @property
    def lines(self) -> tuple[Proof | Trial, ...]:
        return (*self.proofs, *self.trials)

    @property
    def most_given(self) -> int:
        return max(len(proof.given) for proof in self.proofs)

    @cached_property
    def by_key(self) -> dict[str, Result]:
        return {self.verdict.key: self.verdict}
