"""Yarn: plied yarns designed from their components, and singles found from a wanted yarn."""

from workbookgen.language.domains import Name
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log
from workbookgen.language.quantities import GRIST_METRIC, GRIST_US, LENGTH, MASS, NUMBER, SHARE, TEX, THREADS
from workbookgen.language.repeated import repeated
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import UNKNOWN
from workbookgen.language.views import Listing, LogView, band
from workbookgen.reference import diameter, plying, project, records, uncertainty
from workbookgen.settings import Settings
from workbookgen.sheets import by_k, singles, tabs, usual
from workbookgen.sheets.limits import LARGE, SHRINKAGE

SHEET = tabs.YARN
CHAPTER = "Yarn"


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (designs(settings),), (band(Listing(
        title="Designs", block="designs", view=VIEW,
        aside="Name a design here, and give it its components below. A thread that does not shrink, beside wool that does, puckers when it is washed: try a sample.",
    )),))


VIEW = LogView(typed="name wanted shrinkage", answers=(("The yarn", "grist_yd_lb grist_m_100g tex wpi mass"),))


def designs(settings: Settings) -> Log:
    return Log(
        "designs",
        title="",
        rows=settings.rows.designs,
        groups=(
            Group("You type", (
                Input("name", "Design", Name(), needed=True, width=24, help="The components below choose it by this name."),
                Input("wanted", "Yarn wanted", LARGE, LENGTH, help="Length of finished yarn to make of it."),
                Input("shrinkage", "Shrinkage in washing", SHRINKAGE, SHARE, usual=usual.SHRUNK,
                      help="Share of the length that washing takes; from a sample. Empty takes the usual one on the sheet Sureness."),
            )),
            _the_yarn(),
            _for_other_sheets(),
        ),
        rules=(
            Rule("lacking > 0.5", lambda values: values["lacking"] > 0.5, f"{UNKNOWN}: one of its components is not complete. Look at its line below."),
            Rule("NOT(given(tex))", lambda values: values["tex"] is None, f"{UNKNOWN}: list its components below, each with its number and system."),
        ),
    )


def _the_yarn() -> Group:
    return Group("The yarn", (
        Result("tex", "Tex, as plied", "sum_where(components_contribution, components_of, name)", plying.resultant, TEX,
               uses={"design": "name", "designs": "components_of", "contributions": "components_contribution", "lacking": "components_lacking"},
               only_if="AND(sum_where(components_contribution, components_of, name) > 0, sum_where(components_lacking, components_of, name) < 0.5)",
               note="Linear densities of the components add, each as often as it is there. Before washing."),
        Result("grist_yd_lb", "Grist", "(1 - shrinkage_used) / tex", plying.washed_grist, GRIST_US, digits=0,
               uses={"linear_density": "tex", "shrinkage": "shrinkage_used"}, note="Of the finished yarn, which washing has made shorter."),
        Result("grist_m_100g", "Grist", "(1 - shrinkage_used) / tex", plying.washed_grist, GRIST_METRIC, uses={"linear_density": "tex", "shrinkage": "shrinkage_used"}),
        Result("wpi", "Expected wpi", by_k.threads("thickness_k_wrapped", "grist_yd_lb"),
               diameter.threads_side_by_side, THREADS, uses={"grist": "grist_yd_lb", "k": "thickness_k_wrapped"}),
        Result("mass", "Weight", "unwashed * tex", plying.component_mass, MASS, uses={"length": "unwashed", "linear_density": "tex"},
               note="Of the yarn wanted."),
    ))


def _for_other_sheets() -> Group:
    return Group("For other sheets", (
        singles.shrinkage_used(),
        Result("unwashed", "To ply", "wanted / (1 - shrinkage_used)", project.unwashed_length, LENGTH, uses={"length": "wanted", "shrinkage": "shrinkage_used"},
               leaves=("bought_share", "design"), note="Before washing takes its share."),
        Result("free_length", "In free skeins", "sum_where(skeins_finished_yd, skeins_free_design, name)", records.sum_where, LENGTH,
               uses={"names": "skeins_free_design", "amounts": "skeins_finished_yd"}, note="Of this design, and of no open project."),
        repeated("listed", "Listed as", "name", width=24),
        Result("washing_doubt", "Washing ±", "IF(given(shrinkage), doubts_sampled, doubts_usual) / (1 - shrinkage_used)", uncertainty.by_washing, SHARE,
               uses={"shrinkage": "shrinkage_used", "u_usual": "doubts_usual", "u_sampled": "doubts_sampled", "sampled": "shrinkage"}),
        Result("to_spin", "Strands to spin", "sum_where(components_to_spin, components_of, name)", records.sum_where, NUMBER, digits=0,
               uses={"names": "components_of", "amounts": "components_to_spin"}, note="Of all its components, those that are not bought."),
        Result("spun_fed", "Singles in a length", "sum_where(components_spun_fed, components_of, name)", records.sum_where, NUMBER,
               uses={"names": "components_of", "amounts": "components_spun_fed"}, note="Length of all its singles in one length of yarn."),
        Result("take_up", "Take-up by the feeds", "1 - to_spin / spun_fed", plying.take_up_of_feeds, SHARE, uses={"strands": "to_spin", "fed": "spun_fed"},
               only_if="spun_fed > to_spin * 1.000000001", note="Of its singles together; none while every feed is 1."),
        Result("bought_tex", "Bought, tex", "sum_where(components_bought_part, components_of, name)", records.sum_where, TEX,
               uses={"names": "components_of", "amounts": "components_bought_part"}),
        Result("bought_share", "Bought, of its weight", "bought_tex / tex", plying.weight_share, SHARE, uses={"contribution": "bought_tex", "resultant": "tex"},
               only_if="bought_tex > 0"),
        Result("lacking", "Components not known", "sum_where(components_lacking, components_of, name)", records.sum_where, NUMBER, digits=0,
               uses={"names": "components_of", "amounts": "components_lacking"}),
    ), printed=False)
