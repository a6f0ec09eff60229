"""Dyeing by weight: how much dye, how much stock, how much water, and what helps the dye along.

Dyers weigh powder once, into a stock solution, and then measure the stock: a 1% stock holds one gram in a hundred
milliliters. `bath` works out the amounts, `shade` what a shade is mixed from.
"""

from workbookgen.reference.dyeing.bath import dye, dyes, goods, powder, stock, water
from workbookgen.reference.dyeing.shade import in_shade, shade_words, stock_of, to_weigh, whole_of
