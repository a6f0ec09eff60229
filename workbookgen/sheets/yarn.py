"""Yarn: plied yarns designed from their components, and singles found from a wanted yarn."""

from workbookgen.language.domains import Choice, Name, Number
from workbookgen.language.fields import Group, Input, Result, Rule
from workbookgen.language.parts import Card, Log, Sheet
from workbookgen.language.quantities import GRIST, GRIST_METRIC, GRIST_US, LENGTH, MASS, NUMBER, SHARE, TEX, THREADS
from workbookgen.reference import diameter, plying, stock, yarn_count
from workbookgen.settings import Settings
from workbookgen.sheets import lists

SHEET = "Yarn"
ANY = Number(above=0, most=10_000_000)
STRANDS = Number(least=1, most=12, whole=True)


def sheet(settings: Settings) -> Sheet:
    return Sheet(
        SHEET,
        "Yarn design",
        "Name a design here and give it its components on the sheet Components. Designs stand below each other, to be compared.",
        (designs(settings), BACKWARDS),
    )


def designs(settings: Settings) -> Log:
    return Log(
        "designs",
        "Designs",
        rows=settings.rows.designs,
        groups=(
            Group("You type", (
                Input("name", "Design", Name(), needed=True, width=24, help="The components below choose it by this name."),
                Input("wanted", "Yarn wanted", ANY, LENGTH, help="Length of finished yarn to make of it."),
            )),
            Group("The yarn", (
                Result("tex", "Tex", "total(components_contribution, components_of, name)", plying.resultant, TEX,
                       uses={"design": "name", "designs": "components_of", "contributions": "components_contribution"},
                       only_if="total(components_contribution, components_of, name) > 0",
                       note="Linear densities of the components add, each as often as it is there."),
                Result("grist_yd_lb", "Grist", "1 / tex", yarn_count.grist_of_density, GRIST_US, digits=0, uses={"linear_density": "tex"}),
                Result("grist_m_100g", "Grist", "1 / tex", yarn_count.grist_of_density, GRIST_METRIC, uses={"linear_density": "tex"}),
                Result("wpi", "Expected wpi", "thickness_k_wrapped * SQRT(grist_yd_lb * 453.59237 / 0.9144) / 0.0254",
                       diameter.threads_side_by_side, THREADS, uses={"grist": "grist_yd_lb", "k": "thickness_k_wrapped"}),
                Result("mass", "Weight", "wanted * tex", plying.component_mass, MASS, uses={"length": "wanted", "linear_density": "tex"},
                       note="Of the yarn wanted."),
                Result("listed", "Listed as", "name", stock.listed, None, width=24),
            )),
        ),
    )


BACKWARDS = Card(
    "backwards",
    "From the yarn you want back to its singles",
    about="Give the grist of the plied yarn, or the wraps per inch that it should have.",
    groups=(
        Group("You type", (
            Input("grist", "Grist of the plied yarn", ANY, GRIST),
            Input("wraps", "Or wraps per inch", Number(above=0, most=500), THREADS, help="Used if you give no grist; K of the sheet Counts turns it into one."),
            Input("strands", "Strands", Number(least=2, most=12, whole=True), NUMBER, needed=True, starts_as=2.0),
            Input("take_up", "Take-up", Number(least=0, below=1), SHARE, blank_means=0, help="Share of the singles' length lost in plying; from a sample, 2 to 6% in an ordinary ply (common practice, no source)."),
            Input("known", "One strand is already there", ANY, GRIST, help="Grist of a thread or single to be used; the card says what the rest must be."),
        )),
        Group("Worked out", (
            Result("from_wraps", "Grist for those wraps",
                   "wraps * 0.0254 / thickness_k_wrapped * wraps * 0.0254 / thickness_k_wrapped * 0.9144 / 453.59237",
                   plying.grist_for_wraps, GRIST, uses={"k": "thickness_k_wrapped"}),
            Result("plied", "Grist to make", "IF(given(grist), grist, from_wraps)", yarn_count.grist_in_use, GRIST,
                   uses={"wanted": "grist"}, only_if="OR(given(grist), given(from_wraps))"),
            Result("tex", "Tex of the plied yarn", "1 / plied", yarn_count.direct_count, TEX, uses={"grist": "plied"}),
            Result("singles_tex", "Tex of each single", "tex * (1 - take_up) / strands", plying.singles_for, TEX, uses={"plied": "tex"}),
            Result("singles", "Grist of each single", "1 / singles_tex", yarn_count.grist_of_density, GRIST_US, digits=0, uses={"linear_density": "singles_tex"},
                   note="Spin to this."),
            Result("singles_m", "Grist of each single", "1 / singles_tex", yarn_count.grist_of_density, GRIST_METRIC, uses={"linear_density": "singles_tex"}),
            Result("known_tex", "Tex of the strand you have", "1 / known", yarn_count.direct_count, TEX, uses={"grist": "known"}),
            Result("strands_tex", "Tex of all strands", "tex * (1 - take_up)", plying.all_strands, TEX, uses={"plied": "tex"}),
            Result("rest_tex", "Tex of the rest", "strands_tex - known_tex", plying.missing_component, TEX,
                   only_if="strands_tex > known_tex", uses={"resultant": "strands_tex", "known": "known_tex"}),
            Result("rest", "Grist of the rest", "1 / rest_tex", yarn_count.grist_of_density, GRIST_US, digits=0, uses={"linear_density": "rest_tex"},
                   note="One single of this grist beside the strand you have."),
        )),
    ),
    rules=(
        Rule("AND(NOT(given(grist)), NOT(given(wraps)))", lambda values: values["grist"] is None and values["wraps"] is None,
             "Still to fill in: the grist, or the wraps per inch."),
    ),
)
