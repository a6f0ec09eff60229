"""Fiber content of a yarn by weight, as on a label: the fibers' generic names, each with its percentage.

A lot is of one fiber or a mixture of up to three; a yarn is of one lot, or of the lots of its
strands. Fibers of the same name add up. The order, the names and the term "other fiber" follow 16 CFR 303 and 300;
the rules in force where you sell decide.
"""

from workbookgen.reference.content.fibers import known_in_all, named_share, next_fiber, together, without_a_name
from workbookgen.reference.content.lots import lot_of_strand, main_share, mixture, share_in_yarn, strand_share, untold
from workbookgen.reference.content.order import largest_fiber, largest_share
from workbookgen.reference.content.percent import in_percent, others_percent, rest_percent, whole_percent
from workbookgen.reference.content.words import content_words, on_ticket, what_to_type
