"""Proofs: does the program that a person really uses compute known answers?

A proof computes a published example with the planner's own formula. A trial tries a single function of the profile,
or whether any cell of a chapter shows an error.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from workbookgen.errors import DescriptionError
from workbookgen.language import dimensions
from workbookgen.language.fields import Result
from workbookgen.language.formula import formula
from workbookgen.language.keys import Keyed
from workbookgen.language.quantities import is_convertible
from workbookgen.language.type_checks import require_types

# How an answer is known: read in print, derived by hand from what was, common practice, or recalled from memory.
PROVENANCES = ("read", "derived", "practice", "memory")


@dataclass(frozen=True)
class Proof:
    """A published worked example of one result.

    `given` has the printed value of each word of the formula, with the name of its unit in the registry; `printed` is
    the printed answer.
    """

    number: str
    what: str
    result: str  # full key of the result whose formula it proves
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
    """Something that a program must be able to do for the planner, with an answer known by definition.

    Either it computes a `formula` of constants, or it shows no error in any cell of these `blocks`.
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
class ProofTable(Keyed):
    """Published examples, each computed live next to its printed answer, and below them the trials.

    The formula of `verdict` compares the two; its words are computed, printed and tolerance.
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
