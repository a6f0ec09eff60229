"""In what steps a scale shows weights, as far as the typed ones tell."""

from workbookgen.language.fields import Result
from workbookgen.language.quantities import MASS, NUMBER
from workbookgen.reference import kept_stock, measuring, records
from workbookgen.settings import Settings
from workbookgen.unit_systems import UNIT_SYSTEMS

ENOUGH = 4  # weights; common practice, no source


def coarse(settings: Settings) -> Result:
    """Whether the weight of a skein in the log is one that a coarse scale shows."""
    return Result("coarse", "Weight in coarse steps", f"IF({_is_coarse(settings, 'gross')}, 1, 0)", measuring.is_coarse, NUMBER, digits=0,
                  fixed={"in_ounces": _in_ounces(settings)}, note="1 for 5, 10, 15 g and so on; in ounces, for 0.25, 0.5 and so on.")


def of_the_log() -> Result:
    """How many skeins that are there have a weight such as a coarse scale shows; how many are weighed is a total, too.

    (A count of these by itself, like those of the totals, stayed as it was in LibreOffice 7.4 when lines were pasted.)
    """
    return Result("coarse", "In coarse steps", 'sum_where(skeins_coarse, skeins_stock, "there")', records.sum_where, NUMBER, digits=0,
                  fixed={"name": kept_stock.THERE}, uses={"names": "skeins_stock", "amounts": "skeins_coarse"})


def step(settings: Settings) -> Result:
    """The coarsest scale step of which the typed weight is a multiple."""
    if _in_ounces(settings):
        tenths, twentieths = (_is_multiple(f"used_gross / 28.349523125 * {parts}") for parts in (10, 20))
        known, largest, unit = f"IF({tenths}, 0.1, IF({twentieths}, 0.05, 0.01))", 0.25, " * 28.349523125"
    else:
        known, largest, unit = f"IF({_is_multiple('used_gross')}, 1, 0.1)", 5, ""
    all_coarse = f"AND({_is_coarse(settings, 'used_gross')}, skein_sums_weighed >= {ENOUGH}, skein_sums_coarse = skein_sums_weighed)"
    return Result("scale_step", "Scale shows steps of", f"IF({all_coarse}, {largest}, {known}){unit}", measuring.scale_step, MASS, digits=2,
                  uses={"gross": "used_gross", "weighed": "skein_sums_weighed", "coarse": "skein_sums_coarse"}, fixed={"in_ounces": _in_ounces(settings)},
                  note="As the weight was typed, and those in the log.")


def _in_ounces(settings: Settings) -> float:
    return 0.0 if UNIT_SYSTEMS[settings.units].is_metric("mass") else 1.0


def _is_coarse(settings: Settings, weight: str) -> str:
    return _is_multiple(f"{weight} / 28.349523125 * 4" if _in_ounces(settings) else f"{weight} / 5")


def _is_multiple(amount: str) -> str:
    return f"ABS({amount} - ROUND({amount}, 0)) < 0.000001"
