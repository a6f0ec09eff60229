"""What a log adds up to, in the head of its sheet: one line in words, and the numbers behind it."""

from workbookgen.language.fields import Group, Result
from workbookgen.language.parts import Card
from workbookgen.language.quantities import LENGTH, MASS, NUMBER
from workbookgen.reference import lot_words, overview, stock

SPUN = Card("skein_sums", "", groups=(Group("", (
    Result("skeins", "Skeins", "COUNT(skeins_finished_yd)", overview.how_many, NUMBER, uses={"amounts": "skeins_finished_yd"}, digits=0),
    Result("length", "Yarn in skeins", "sum(skeins_finished_yd)", stock.sum_of, LENGTH, uses={"amounts": "skeins_finished_yd"}),
    Result("mass", "Its weight", "sum(skeins_net)", stock.sum_of, MASS, uses={"amounts": "skeins_net"}),
    Result("words", "In words",
           'IF(skeins = 0, "no skeins yet", IF(skeins = 1, "1 skein, ", said(skeins) & " skeins, ") & said(length) & ", " & said(mass))',
           lot_words.spun_in_words, None, uses={"count": "skeins"}),
)),))

SHELF = Card("lot_sums", "", groups=(Group("", (
    Result("lots", "Lots with something left", 'COUNTIF(fiber_to_come, ">=" & 0.001)', overview.how_many_above_nothing, NUMBER, uses={"amounts": "fiber_to_come"}, digits=0),
    Result("mass", "Yarn to spin", "sum(fiber_to_come)", stock.sum_of, MASS, uses={"amounts": "fiber_to_come"}),
    Result("words", "In words", 'IF(lots = 1, "1 lot, ", said(lots) & " lots, ") & said(mass) & " still to spin"', lot_words.shelf_in_words, None,
           uses={"count": "lots"}, only_if="lots > 0"),
)),))
