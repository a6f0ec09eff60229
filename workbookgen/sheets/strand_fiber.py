"""Projects: the fiber that its yarn takes, strand by strand and in all."""

from collections.abc import Iterator

from workbookgen.language.fields import Result
from workbookgen.language.quantities import MASS, SHARE
from workbookgen.reference import project
from workbookgen.sheets.strand import OF_YARN, PARTS, STRANDS


def its_fiber() -> Iterator[Result]:
    """The fiber that each strand takes; a bought thread takes none."""
    for strand in STRANDS:
        yield strand.lookup("keeps", "Lot keeps", "fiber_kept_of_prepared", "@_lot_a", SHARE, note="Share of prepared fiber that becomes yarn.")
        yield strand.result("spun_of", "Kept in spinning", "IF(given(sample_loss), 1 - sample_loss, @_keeps)", project.kept_in_spinning, SHARE, uses={"lot": "@_keeps"},
                            only_if="OR(AND(given(sample_loss), sample_loss < 1, sample_loss >= 0), AND(NOT(given(sample_loss)), given(@_keeps)))",
                            note="By its lot; a sample on the sheet Samples replaces it.")
        for key, label, kept in (("fiber", "Prepared fiber", "@_spun_of"), ("raw", "Fiber as bought", "@_kept")):
            yield strand.result(key, label, f"IF(@_bought = 1, 0, yarn * @_share / {kept})", project.fiber_for, MASS, uses=OF_YARN | {"kept": kept},
                                only_if=f"OR(@_bought = 1, given_and({kept}, {kept} > 0))")
        yield strand.result("to_prepare", "To prepare", "IF(or_else(@_stage, 0) >= 4, 0, @_fiber)", project.to_prepare, MASS,
                            uses={"stage": "@_stage", "fiber": "@_fiber"}, note="None of a lot that was bought prepared.")


def fiber_in_all() -> tuple[Result, ...]:
    """The fiber of all components together; unknown if that of one is."""
    return (
        _of_all_strands("prepared", "Prepared fiber", "fiber", "To spin this much yarn, of all lots together."),
        _of_all_strands("bought", "Fiber as bought", "raw", "Raw fleece or other fiber, in the state in which each lot was bought; bought thread aside."),
        _of_all_strands("to_prepare", "Fiber to prepare", "to_prepare", "Of what was not bought prepared."),
    )


def _of_all_strands(key: str, label: str, of: str, note: str) -> Result:
    """The sum of what each strand takes; a strand without a share does not exist, except for the first."""
    further = PARTS[1:]
    amounts = (f"part_1_{of}", *(f"IF(given(part_{part}_share), part_{part}_{of}, 0)" for part in further))
    are_known = ", ".join(f"OR(NOT(given(part_{part}_share)), given(part_{part}_{of}))" for part in further)
    words = {f"amount_{part}": f"part_{part}_{of}" for part in PARTS} | {f"share_{part}": f"part_{part}_share" for part in further}
    return Result(key, label, " + ".join(amounts), project.of_all_strands, MASS, uses=words, only_if=f"AND({are_known})", note=note)
