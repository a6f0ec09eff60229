"""A published example as a line of the sheet Reference: the heads of its columns, and their content.

The column Given states the given values in words. They are repeated as bare values to the right of all else, for the
formula; these are not printed.
"""

from workbookgen.book.placement import Layout, ProofColumn
from workbookgen.language.proofs import Proof, Trial
from workbookgen.language.quantities import unit_named

HEADS = {
    ProofColumn.NUMBER: "No.",
    ProofColumn.WHAT: "Example",
    ProofColumn.SOURCE: "Published in",
    ProofColumn.GIVEN: "Given",
    ProofColumn.COMPUTED: "Computed here",
    ProofColumn.PRINTED: "Printed answer",
    ProofColumn.UNIT: "Unit",
    ProofColumn.WITHIN: "Within, as a share",
    ProofColumn.VERDICT: "Verdict",
}
OF_NUMBERS = {ProofColumn.COMPUTED, ProofColumn.PRINTED, ProofColumn.WITHIN}
PROVENANCE = {
    "read": "read",
    "memory": "from memory",
    "practice": "common practice",
    "derived": "follows from definitions",
}


def facts(layout: Layout, proof: Proof | Trial) -> dict[int, float | str]:
    """The content of a proof's line, by column, without its formulas: the computed answer and the verdict."""
    given, values = (_given(layout, proof), proof.given) if isinstance(proof, Proof) else ([proof.formula], {})
    said = {
        ProofColumn.NUMBER: proof.number,
        ProofColumn.WHAT: proof.what,
        ProofColumn.SOURCE: f"{proof.source} ({PROVENANCE[proof.provenance]})",
        ProofColumn.GIVEN: "; ".join(given),
        ProofColumn.PRINTED: proof.printed,
        ProofColumn.UNIT: _symbol(proof.unit),
        ProofColumn.WITHIN: proof.tolerance,
    }
    return said | dict(enumerate((value for value, _ in values.values()), start=ProofColumn.VALUES))


def _given(layout: Layout, proof: Proof) -> list[str]:
    block, _ = layout.planner.by_key[proof.result]
    return [
        f"{layout.planner.meaning(block, word).field.label} {_printed(value)} {_symbol(unit)}".strip()
        for word, (value, unit) in proof.given.items()
    ]


def _symbol(unit: str) -> str:
    return unit_named(unit).symbol if unit else ""


def _printed(value: float | str) -> str:
    return value if isinstance(value, str) else f"{value:.10g}"
