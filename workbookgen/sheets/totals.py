"""The totals in the head of a log: a line in words, and the numbers behind it."""

from workbookgen.language.fields import Group, Result
from workbookgen.language.parts import Card
from workbookgen.language.quantities import LENGTH, MASS, NUMBER
from workbookgen.reference import belongings, kept_stock, overview, records, stock_words
from workbookgen.settings import Settings
from workbookgen.sheets import scale_steps


def in_stock() -> tuple[Result, ...]:
    """The number, length and weight of the skeins that are still there, for the head of their log and for the desk."""
    return (
        Result("skeins", "Skeins", 'count_where(skeins_finished_yd, skeins_stock, "there")', records.count_where, NUMBER, digits=0, fixed={"name": kept_stock.THERE},
               uses={"names": "skeins_stock", "amounts": "skeins_finished_yd"}),
        Result("length", "Yarn in skeins", 'sum_where(skeins_finished_yd, skeins_stock, "there")', records.sum_where, LENGTH, fixed={"name": kept_stock.THERE},
               uses={"names": "skeins_stock", "amounts": "skeins_finished_yd"}),
        Result("mass", "Its weight", 'sum_where(skeins_net, skeins_stock, "there")', records.sum_where, MASS, fixed={"name": kept_stock.THERE},
               uses={"names": "skeins_stock", "amounts": "skeins_net"}),
        Result("weighed", "Weighed", 'count_where(skeins_net, skeins_stock, "there")', records.count_where, NUMBER, digits=0, fixed={"name": kept_stock.THERE},
               uses={"names": "skeins_stock", "amounts": "skeins_net"}),
        Result("unweighed", "Not weighed", "skeins - weighed", kept_stock.not_weighed, NUMBER, uses={"count": "skeins"}, digits=0),
    )


def spun(settings: Settings) -> Card:
    return Card("skein_sums", "", groups=(Group("", (
        *in_stock(),
        scale_steps.of_the_log(),
        Result("gone", "Gone", "COUNT(skeins_line_of_gone) - aside", belongings.how_many_went, NUMBER, uses={"lines": "skeins_line_of_gone"}, digits=0),
        Result("aside", "Set aside", 'COUNTIF(skeins_gone, "set aside")', belongings.how_many_aside, NUMBER, uses={"fates": "skeins_gone"}, digits=0),
        Result("words", "In words",
               'IF(skeins = 0, IF(gone = 0, "no skeins yet", "no skeins left; " & said(gone) & IF(gone = 1, " is gone", " are gone")), '
               'IF(skeins = 1, "1 skein, ", said(skeins) & " skeins, ") & said_in_all(length) & ", " & IF(unweighed = skeins, "not weighed", said_in_all(mass)) '
               '& IF(OR(unweighed = 0, unweighed = skeins), "", "; " & said(unweighed) & " of them not weighed") '
               '& IF(aside = 0, "", IF(skeins = 1, "; set aside", "; " & said(aside) & " of them set aside")) & IF(given(worth_words), "; " & worth_words, "") '
               '& IF(gone = 0, "", "; " & said(gone) & " more gone"))',
               stock_words.there_in_words, None, uses={"count": "skeins", "worth": "worth_words"}),
        *_worth(settings, "skeins_worth"),
    )),))


def shelf(settings: Settings) -> Card:
    return Card("lot_sums", "", groups=(Group("", (
        Result("lots", "Lots with something left", 'COUNTIF(fiber_to_come, ">=" & 0.001)', overview.how_many_above_nothing, NUMBER, uses={"amounts": "fiber_to_come"}, digits=0),
        Result("aside", "Set aside", "sum(fiber_aside)", records.sum_of, MASS, uses={"amounts": "fiber_aside"}),
        Result("mass", "Yarn to spin", "sum(fiber_to_come)", records.sum_of, MASS, uses={"amounts": "fiber_to_come"}),
        Result("unknown", "Lots not known", 'SUMPRODUCT((fiber_listed <> "") * (fiber_to_come = "") * (fiber_fate = ""))', overview.how_many_unknown, NUMBER, digits=0,
               uses={"names": "fiber_listed", "values": "fiber_to_come", "fates": "fiber_fate"}),
        Result("words", "In words", 'IF(lots = 1, "1 lot, ", said(lots) & " lots, ") & said_in_all(mass) & " of yarn still in " & IF(lots = 1, "it", "them") '
                                    '& IF(aside > 0, ", " & said_in_all(aside) & " of it set aside", "") & IF(given(worth_words), ", " & worth_words, "") '
                                    '& IF(unknown = 0, "", "; " & said(unknown) & " more not known")',
               stock_words.shelf_in_words, None, uses={"count": "lots", "worth": "worth_words"}, only_if="lots > 0"),
        *_worth(settings, "fiber_worth"),
    )),))


def _worth(settings: Settings, column: str) -> tuple[Result, Result]:
    """The worth of everything that has a price; a currency of several letters is separated from the number."""
    sign = settings.currency if len(settings.currency) == 1 else f"{settings.currency} "
    return (
        Result("worth", "Worth", f"sum({column})", records.sum_of, NUMBER, uses={"amounts": column}),
        Result("worth_words", "Worth, in words", f'"worth {sign}" & said_in_all(worth)', kept_stock.worth_in_words, None, fixed={"currency": sign}, only_if="worth > 0"),
    )
