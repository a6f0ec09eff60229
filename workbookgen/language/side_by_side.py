"""A matrix with cells to type in: values tried out beside the log, one skein beside another."""

from dataclasses import dataclass

from workbookgen.language.views import Matrix


@dataclass(frozen=True, kw_only=True)
class SideBySide(Matrix):
    """Fields side by side under heads. An empty label means that of the first field.

    `wide` gives the grid columns under each head, one each by default; `dots` the keys that are dot plots, `loud`
    those of the rows that matter most.
    """

    wide: tuple[int, ...] = ()
    dots: tuple[str, ...] = ()
    loud: tuple[str, ...] = ()
