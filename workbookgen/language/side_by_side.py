"""A matrix with cells to type into: values to try out beside those of the log, one skein beside another."""

from dataclasses import dataclass

from workbookgen.language.views import Matrix


@dataclass(frozen=True, kw_only=True)
class SideBySide(Matrix):
    """Inputs and results in rows, side by side under heads. A row without a label has that of its first field.

    `wide` gives the grid columns under each head, one each by default; `dots` are the keys that are dot plots, and
    `loud` the keys of the rows that matter most.
    """

    wide: tuple[int, ...] = ()
    dots: tuple[str, ...] = ()
    loud: tuple[str, ...] = ()
