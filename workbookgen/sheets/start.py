"""The first page: what to do, what is typed and what is computed, cautions, and the proofs."""

from workbookgen.language.fields import Group, Result
from workbookgen.language.parts import Card, Sheet, Text
from workbookgen.language.quantities import NUMBER
from workbookgen.reference import agreement
from workbookgen.settings import Settings
from workbookgen.sheets.proofs import PROOFS

SHEET = "Start"


def sheet(settings: Settings) -> Sheet:
    return Sheet(
        SHEET,
        settings.title,
        "From wraps and weights to yarn you can plan with.",
        (STEPS, WAYS, KEY, CHECK, CAUTIONS),
        wide=False,
    )


STEPS = Text(
    "Three steps",
    (
        "1.  On the sheet Reels, give each reel its loop. On the sheet Fiber, give each lot of fiber a line.",
        "2.  On the sheet Skeins, type wraps and weight of each skein; choose its reel and its lot.",
        "3.  On the sheet Projects, type the yardage you want; read whether your lots are enough.",
    ),
)

WAYS = Text(
    "Where to begin",
    (
        "I only want to measure a skein:  Reels, then Skeins.  For its label: Labels.  Do two belong together: Compare.",
        "I have a fleece:  Fiber, and Scouring to wash it.  I want to buy one: Buying, with the Guide.",
        "I have a project:  Projects.  Its yardage is not known: Knitting with Pieces, or Weaving.",
        "How long it takes: Time, at the pace of Figures.  What it costs: Cost.",
        "I am planning a yarn:  spin a sample for Samples, design it on Yarn with Components, find its twist on Twist.",
        "I have a yarn number:  Counts.  Will the ball last, which singles make this yarn: Questions.",
        "I would rather look: Pictures.  What a word means, how something is worked out: Methods.  Whether it is right: Proofs.",
        "Fill in only what you need: a sheet uses another one only where it says so.",
    ),
)

KEY = Text(
    "How to read a sheet",
    (
        "A boxed cell is yours: type there. A cell without a box is worked out, and is empty until what it needs is there.",
        "What to fix says in words what is wrong in a line, or still missing. Other lines are not touched by it.",
        "Every number stands under its unit. Type percentages with the sign: 15%.",
    ),
)

CHECK = Card(
    "start",
    "Is this program right?",
    groups=(
        Group("Proofs", (
            Result("agreeing", "Published examples that agree", 'COUNTIF(proofs_verdict, "agrees")', agreement.how_many_agree, NUMBER,
                   uses={"verdicts": "proofs_verdict"}, digits=0, note=f"of {PROOFS.rows} on the sheet Proofs, computed by this program just now"),
            Result("examples", "Published examples in all", "COUNTA(proofs_verdict)", agreement.how_many, NUMBER,
                   uses={"verdicts": "proofs_verdict"}, digits=0),
            Result("trust", "In words",
                   'IF(agreeing = examples, "This program computes the planner correctly.", '
                   '"Do not rely on the numbers here: " & (examples - agreeing) & " of " & examples & " published examples differ in this program.")',
                   agreement.trust, None, uses={"total": "examples"}),
        )),
    ),
)

CAUTIONS = Text(
    "Take care",
    (
        "Hot water: at 60 °C (140 °F) it scalds in seconds. Gloves, a lid, and nobody lifts a full pot.",
        "Raw fleece: its dust and dirt can carry disease (Q fever, orf, ringworm, anthrax where it occurs). Wear gloves and a dust mask, "
        "work wet or outdoors, wash your hands, do not eat there. If you are pregnant or your defenses are weak, keep away and ask a doctor.",
        "Detergent, soda, mothproofing and dye: follow the label of the product. Do not mix products; keep pots for dyeing apart from food.",
        "Grease in drains: it sets when it cools. Strain the water, and follow your local rules for waste water and septic tanks.",
        "Moving parts: keep hair, sleeves, cords and children's fingers away from wheel, flyer, carder and picker.",
        "Long work: change posture, stand up and stretch every half hour; stop when wrist, shoulder or back hurts.",
        "These are the usual cautions. Local codes, product labels, and licensed practice come before anything on these sheets.",
    ),
    is_caution=True,
)
