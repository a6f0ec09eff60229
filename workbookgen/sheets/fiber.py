"""Fiber: each lot from what was bought to yarn, and what is left of it."""

from workbookgen.language.domains import Choice, Name, Note, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Log, Sheet
from workbookgen.language.quantities import GRIST, LENGTH, MASS, SHARE
from workbookgen.reference import fiber as trade
from workbookgen.reference import stock, yarn_count
from workbookgen.settings import Settings
from workbookgen.sheets import guide, lists, stages

SHEET = "Fiber"
WEIGHT = Number(above=0, most=1_000_000)


def sheet(settings: Settings) -> Sheet:
    return Sheet(
        SHEET,
        "Fiber lots",
        "One line for each lot of fiber or bought thread. Until you weigh a stage, it is expected from your own figure, or else from the guide.",
        (lots(settings),),
    )


def lots(settings: Settings) -> Log:
    return Log(
        "fiber",
        title="",
        rows=settings.rows.fiber,
        groups=(
            Group("You type", (
                Input("name", "Lot", Name(), needed=True, width=22, help="What you call this lot. Skeins and projects choose it by this name."),
                Input("kind", "Breed or fiber", Choice("guide_listed", guide.SHEET), width=20, help="From the sheet Guide; its usual losses are expected."),
                Input("state", "Bought as", Choice("states_name", lists.SHEET), needed=True, width=14, help="How far the fiber was worked when you bought it."),
                Input("weight", "Weight", WEIGHT, MASS, needed=True, help="Weight as bought. A pound is 16 ounces: you may type =6.5*16."),
                Input("grist", "Grist wanted", Number(above=0, most=1_000_000), GRIST, help="Grist of the finished yarn you plan."),
                *stages.own_losses(),
                Input("skirted_weighed", "Skirted", WEIGHT, MASS, help="Weighed after skirting."),
                Input("scoured_weighed", "Washed", WEIGHT, MASS, help="Weighed after scouring, quite dry."),
                Input("prepared_weighed", "Prepared", WEIGHT, MASS, help="Weighed after carding or combing."),
                Input("yarn_weighed", "Yarn", WEIGHT, MASS, help="All the yarn of the lot, once the whole lot is spun."),
                Input("note", "Note", Note(), width=24),
            )),
            Group("Loss the guide expects", (
                stages.stage(),
                *stages.guide_losses(),
            )),
            Group("Weight at each stage", stages.weights_down()),
            Group("Share lost", stages.shares_lost()),
            Group("The yarn", (
                Result("kept", "Yarn kept", "yarn / weight", trade.share_kept, SHARE, uses={"start": "weight"},
                       note="Share of the bought weight that becomes yarn."),
                Result("kept_of_prepared", "Kept in spinning", "yarn / prepared", trade.share_kept, SHARE, uses={"start": "prepared"},
                       note="Share of the prepared fiber that becomes yarn."),
                Result("length", "Length at grist", "yarn * grist", yarn_count.length_of_mass, LENGTH, uses={"mass": "yarn"},
                       note="Of all the yarn, at the grist you want."),
                Result("spun", "Spun so far",
                       "total(skeins_first_mass, skeins_from_lot, name) + total(skeins_second_mass, skeins_from_second, name)",
                       stock.spun, MASS,
                       uses={"names": "skeins_from_lot", "amounts": "skeins_first_mass",
                             "second_names": "skeins_from_second", "second_amounts": "skeins_second_mass"},
                       note="Weight of this lot in the skeins of the sheet Skeins."),
                Result("spun_length", "In skeins", "total(skeins_finished_yd, skeins_from_lot, name)", stock.total, LENGTH,
                       uses={"names": "skeins_from_lot", "amounts": "skeins_finished_yd"},
                       note="Finished length of the skeins spun from it."),
                Result("to_come", "Still to spin", "MAX(0, yarn - spun)", stock.still_to_come, MASS,
                       note="Yarn that the lot can still give."),
                Result("listed", "Listed as", "name", stock.listed, None, width=22,
                       note="The name under which skeins and projects find this lot."),
            )),
        ),
        rules=stages.cannot_gain(),
    )
