"""Sureness: how sure one wants to be, and how far what is counted, weighed and expected may be off.

Every planner has it, since every length has its uncertainty.
"""

from workbookgen.language.domains import Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import LENGTH, LOOP, NUMBER, SHARE
from workbookgen.reference import uncertainty
from workbookgen.settings import Settings
from workbookgen.sheets import tabs, usual
from workbookgen.sheets.card_view import asked_and_answered
from workbookgen.sheets.limits import AMOUNT, UNCERTAIN
from workbookgen.units import Quantity

SHEET = tabs.PROJECT
CHAPTER = "Sureness"


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (DOUBTS,), (asked_and_answered(DOUBTS),))


DOUBTS = Card(
    "doubts",
    "How sure you want to be",
    groups=(
        Group("You type", (
            Input("certainty", "Sure enough at", Number(least=0.5, below=1), SHARE, needed=True, starts_as=0.9, help="Chance that you ask for."),
            Input("wraps", "Wraps miscounted, ±", Number(least=0, most=1000), NUMBER, needed=True, starts_as=1.0, help="In one skein."),
            Input("grist", "Grist still to spin, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.08,
                  help="How far the yarn to come may stray from the planned grist, one standard uncertainty (common practice, no source)."),
            Input("variation", "Skeins differ by", UNCERTAIN, SHARE, needed=True, starts_as=0.08,
                  help="Usual coefficient of variation of grist between your skeins; 5 to 15% (common practice, no source)."),
            Input("skein", "A skein holds", AMOUNT, LENGTH, needed=True, starts_as=Quantity(200, "yard"), help="Usual length, until a project has skeins of its own."),
            Input("shrinkage", "Usual shrinkage", UNCERTAIN, SHARE, usual=usual.SHRINKS, needed=True, starts_as=0.05,
                  help="Length lost in washing, for a skein without a washed loop (common practice, no source); a sample on the sheet Samples replaces it."),
            Input("usual", "Usual shrinkage, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.03, help="One standard uncertainty of it (common practice, no source)."),
            Input("sampled", "A sample's shrinkage, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.01,
                  help="How far skeins may shrink otherwise than their sample, one standard uncertainty (common practice, no source)."),
            Input("tape", "A washed loop, ±", Number(least=0, most=100), LOOP, needed=True, starts_as=Quantity(0.25, "inch"),
                  help="How far one reading of it may be off, either way."),
            Input("slack", "How slack loops lie, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.005,
                  help="What all your washed loops may be off together, one standard uncertainty (common practice, no source)."),
            Input("scale", "Your scale, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.005,
                  help="What it may be off in everything it weighs, one standard uncertainty (common practice, no source)."),
            Input("skirting", "Skirting still to come, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.07,
                  help="Of what is kept, one standard uncertainty: a range of 5 to 25% lost (common practice, no source)."),
            Input("preparation", "Preparation, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.025,
                  help="The same: a range of 2 to 10% lost in carding (common practice, no source)."),
            Input("combing", "Combing, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.08, help="The same: a range of 20 to 40% left in the comb (common practice, no source)."),
            Input("spinning", "Spinning, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.012, help="The same: a range of 1 to 5% lost (common practice, no source)."),
            Input("handful", "A washed handful, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.08,
                  help="How far the yield of one washed handful may be off its fleece, of what is kept; one standard uncertainty (common practice, no source)."),
            Input("own", "Your own figures, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.03,
                  help="Of what is kept, where you typed your own loss or yield; one standard uncertainty (common practice, no source)."),
            Input("batch", "A label, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.03,
                  help="How far all balls of a bought yarn may be off their label together, one standard uncertainty (common practice, no source)."),
            Input("ball", "One ball beside others, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.02,
                  help="How far one ball may differ from the next, one standard uncertainty (common practice, no source)."),
            Input("pace", "Your pace, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.2,
                  help="How far the pace of a whole project may be off the one you plan with, one standard uncertainty (common practice, no source)."),
            Input("weekly", "Hours a week, ±", UNCERTAIN, SHARE, needed=True, starts_as=0.2,
                  help="How far the hours a week that you find may be off those you plan, until it is done; one standard uncertainty (common practice, no source)."),
            Input("readings", "A sample's mean wraps, ±", Number(above=0, most=0.5), SHARE, needed=True, starts_as=0.05,
                  help="How near you want it, 19 times in 20: the sheet Samples says how many more to count."),
        )),
        Group("Worked out", (
            Result("z", "Uncertainties to allow", "NORMSINV(certainty)", uncertainty.coverage, NUMBER,
                   note="What the sheet Projects adds on top, to be that sure."),
            Result("miscount", "A count of wraps, ±", "wraps / SQRT(3)", uncertainty.rectangular, NUMBER, uses={"half_width": "wraps"},
                   note="Standard uncertainty of a count that is off by no more than that."),
            Result("taping", "A washed loop, ±, standard", "tape / SQRT(3)", uncertainty.rectangular, LOOP, uses={"half_width": "tape"}, digits=3,
                   note="Standard uncertainty of a reading that is off by no more than that."),
        )),
    ),
)
