"""What the planner objects to in a record, though each of its entries is fine by itself: the rules of a block."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from workbookgen.errors import DescriptionError
from workbookgen.language.formula import Formula, formula
from workbookgen.language.sentences import ASKING, UNKNOWN
from workbookgen.language.type_checks import require_types


@dataclass(frozen=True)
class Rule:
    """A conflict between inputs that are each valid, or a question about a record.

    `when` is the condition as a formula, `broken` the same condition as a Python predicate of the shown values. A
    question may read results of the record too, since it does not blank them.
    """

    when: str
    broken: Callable[..., bool]
    sentence: str

    def __post_init__(self):
        require_types(f"the rule {self.sentence!r}", self)
        faults = list(self.text.objections)
        if not self.sentence.endswith((".", "?")):
            faults.append("it says nothing: give a sentence that ends with . or ?")
        if faults:
            raise DescriptionError.at(f"the rule {self.sentence!r}", "; ".join(faults) + ".")

    @cached_property
    def text(self) -> Formula:
        return formula(self.when)

    @property
    def asks(self) -> bool:
        """Whether it leaves results as they are, and so may read them: a question, or a note on what is missing."""
        return self.sentence.startswith((ASKING, UNKNOWN))


@dataclass(frozen=True)
class Distinct:
    """A result whose text no two records may share, and the message that both get if they do."""

    key: str
    sentence: str
