"""A matrix in which one types, too: tried out beside the log, one skein beside another."""

from dataclasses import dataclass

from workbookgen.language.views import Matrix


@dataclass(frozen=True, kw_only=True)
class Abreast(Matrix):
    """Fields beside each other under heads. An empty label is that of the first field.

    `wide` are columns of the grid under each head, one each if it is not said; `dots` the keys
    that are plots of dots, `loud` those of the rows that matter most.
    """

    wide: tuple[int, ...] = ()
    dots: tuple[str, ...] = ()
    loud: tuple[str, ...] = ()
