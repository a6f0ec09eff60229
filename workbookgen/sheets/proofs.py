"""Proofs: published worked examples, computed in the planner by the planner's own formulas.

The examples are data, in `proofs.csv` beside this module; the same rows are tests of the
reference library. `given` reads "length=20 yard; mass=10 grain": the formula's words, each
with a printed value and the registry's name of its unit.
"""

import csv
from collections import Counter
from collections.abc import Collection, Iterable
from dataclasses import replace
from importlib.resources import files

from workbookgen.errors import DescriptionError
from workbookgen.language.fields import Result
from workbookgen.language.parts import Block, Chapter, Sheet
from workbookgen.language.proofs import Proof, ProofTable, Trial
from workbookgen.language.sentences import NO_ERROR
from workbookgen.language.views import Examples, band
from workbookgen.reference import agreement
from workbookgen.sheets import tabs

SHEET = tabs.REFERENCE
CHAPTER = "Proofs"
HEADS = ("number", "what", "result", "given", "printed", "unit", "tolerance", "source", "provenance")


def chapter(proofs: ProofTable) -> Chapter:
    return Chapter(CHAPTER, (proofs,), (band(Examples(title="Proofs", table=proofs.key, is_printed=False)),))


def without(absent: Collection[str]) -> ProofTable:
    """The proofs of results that are not absent."""
    return replace(PROOFS, proofs=tuple(proof for proof in PROOFS.proofs if proof.result not in absent))


def with_trials(table: ProofTable, sheets: Iterable[Sheet]) -> ProofTable:
    """The table with a trial of each function of the profile, and one of each chapter of these sheets."""
    chapters = [(chapter, tuple(holder.key for holder in chapter.holders if isinstance(holder, Block))) for sheet in sheets for chapter in sheet.chapters]
    sound = tuple(
        Trial(f"e-{number:02}", f"Cells of {chapter.name} that show an error", NO_ERROR, blocks=blocks, source="Every cell worked out shows a value or nothing")
        for number, (chapter, blocks) in enumerate(((chapter, blocks) for chapter, blocks in chapters if blocks), start=1)
    )
    return replace(table, trials=(*read_trials(), *sound))


def verdict(table: ProofTable) -> str:
    """How many checks there are, by how their answers are known."""
    known = Counter(proof.provenance for proof in table.proofs)
    rest = table.rows - known["read"] - known["derived"]
    return f"{table.rows} checks: {known['read']} read in print, {known['derived']} worked by hand, {rest} others"


def read_trials() -> tuple[Trial, ...]:
    """A trial of each function of the profile."""
    with (files("workbookgen.sheets") / "functions.csv").open(encoding="utf-8", newline="") as file:
        return tuple(
            Trial(f"f-{number:02}", f"{line['function']}: {line['what']}", _number_or_text(line["answer"]), line["formula"])
            for number, line in enumerate(csv.DictReader(file), start=1)
        )


def read_proofs() -> tuple[Proof, ...]:
    """The published examples that the planner computes."""
    with (files("workbookgen.sheets") / "proofs.csv").open(encoding="utf-8", newline="") as file:
        lines = csv.DictReader(file)
        if tuple(lines.fieldnames or ()) != HEADS:
            raise DescriptionError.at("proofs.csv", f"its first line must be {','.join(HEADS)}.")
        return tuple(_proof(line) for line in lines)


def _proof(line: dict[str, str]) -> Proof:
    if None in line or None in line.values():
        raise DescriptionError.at(f"proofs.csv, {line['number']}", "each line has nine values; a value with a comma stands in quotation marks.")
    given = {}
    for part in line["given"].split(";"):
        word, _, printed = part.strip().partition("=")
        if word in given:
            raise DescriptionError.at(f"proof {line['number']}", f"{word} is given twice.")
        given[word] = _given(printed)
    return Proof(
        line["number"],
        line["what"],
        line["result"],
        given,
        _number_or_text(line["printed"]),
        line["unit"],
        _number_or_text(line["tolerance"]),
        line["source"],
        line["provenance"],
    )


def _given(printed: str) -> tuple[float | str, str]:
    number, _, unit = printed.partition(" ")
    value = _number_or_text(number)
    return (value, unit or "dimensionless") if isinstance(value, float) else (printed, "")


def _number_or_text(text: str) -> float | str:
    try:
        return float(text)
    except ValueError:
        return text


PROOFS = ProofTable(
    "proofs",
    title="Proofs",
    about="Worked examples from print, or worked by hand from printed definitions, computed here by the formulas of the other sheets. "
          "Below them, each function that formulas use, and each chapter. If one differs, do not trust this program with the planner.",
    proofs=read_proofs(),
    verdict=Result(
        "verdict",
        "Verdict",
        'IF(ISNUMBER(printed), IF(ABS(computed - printed) <= tolerance * ABS(printed), "agrees", "differs"), '
        'IF(computed = printed, "agrees", "differs"))',
        agreement.agrees,
        unit=None,
        note="The computed answer lies within the printed answer's own rounding.",
    ),
)
