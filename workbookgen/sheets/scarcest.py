"""Projects: which of its strands runs out first, and how sure that is.

Each of them lasts for a length that is known with some doubt, so the least of them all is less than the least of these
lengths.
"""

from workbookgen.language.fields import Result
from workbookgen.language.quantities import LENGTH
from workbookgen.reference import strands, uncertainty
from workbookgen.sheets.strand import PARTS


def lesser() -> tuple[Result, ...]:
    """The mean and uncertainty of the shortest component, by Clark's formula, two components at a time."""
    results = [
        Result("come_least", "Scarcest lasts for", f"MIN(part_1_come, {', '.join(f'IF(given(part_{part}_come), part_{part}_come, part_1_come)' for part in PARTS[1:])})",
               strands.least, LENGTH, uses={f"come_{part}": f"part_{part}_come" for part in PARTS}, note="Length of yarn for which the component that runs out first is enough."),
    ]
    mean, doubt = "part_1_come", "part_1_come_doubt"
    for part in PARTS[1:]:
        uses = {"first": mean, "u_first": doubt, "second": f"part_{part}_come", "u_second": f"part_{part}_come_doubt", "shared": f"lesser_{part}_shared"}
        results += [
            Result(f"lesser_{part}", f"Lesser of {part}", _clark_mean(*uses.values()), uncertainty.lesser, LENGTH, uses=uses),
            Result(f"lesser_{part}_doubt", f"Lesser of {part} ±", _clark_doubt(*uses.values()), uncertainty.lesser_uncertainty, LENGTH, uses=uses),
        ]
        mean, doubt = f"lesser_{part}", f"lesser_{part}_doubt"
    return tuple(results)


def _clark(first: str, u_first: str, second: str, u_second: str, shared: str) -> tuple[str, str, str, str, str]:
    apart, together = f"ABS({first} - {second})", f"SQRT(MAX(0, {u_first} * {u_first} + {u_second} * {u_second} - 2 * or_else({shared}, 0)))"
    after = f"NORMSDIST(0 - {apart} / {together})"
    bell = f"EXP(0 - POWER({apart} / {together}, 2) / 2) / SQRT(2 * PI())"
    return apart, together, after, bell, f"OR(NOT(given({second})), NOT(given({u_second})))"


def _clark_mean(first: str, u_first: str, second: str, u_second: str, shared: str) -> str:
    apart, together, after, bell, alone = _clark(first, u_first, second, u_second, shared)
    return (
        f"IF({alone}, {first}, IF({apart} >= 6 * {together}, MIN({first}, {second}), "
        f"MIN({first}, {second}) - {together} * ROUND({bell} - {apart} / {together} * {after}, 12)))"
    )


# LibreOffice 7.4 gives an error for POWER of a negative number here, so the last square is a product.
def _clark_doubt(first: str, u_first: str, second: str, u_second: str, shared: str) -> str:
    apart, together, after, bell, alone = _clark(first, u_first, second, u_second, shared)
    low, high = f"IF({first} <= {second}, {u_first}, {u_second})", f"IF({first} <= {second}, {u_second}, {u_first})"
    return (
        f"IF({alone}, {u_first}, IF({apart} >= 6 * {together}, {low}, SQRT(MAX(0, "
        f"POWER(MAX({low}, {high} / 20), 2) * (1 - {after}) + (POWER({apart}, 2) + POWER(MAX({high}, {low} / 20), 2)) * {after} "
        f"- {apart} * {together} * {bell} - ({apart} * {after} - {together} * {bell}) * ({apart} * {after} - {together} * {bell})))))"
    )
