"""The first page: what to do, where to go, what is typed and what is computed, the proofs, and cautions."""

from collections.abc import Iterable

from workbookgen.language.fields import Group, Result
from workbookgen.language.parts import Card, Links, Sheet, Text
from workbookgen.language.quantities import NUMBER
from workbookgen.reference import agreement
from workbookgen.settings import Settings

SHEET = "Start"


def sheet(settings: Settings, proofs: int, cautions: tuple[Text, ...]) -> Sheet:
    """The first page. `cautions` are those of sheets that were left out."""
    paragraphs = tuple(line.strip() for line in settings.note.split("\n") if line.strip())
    note = [Text(NOTE, paragraphs)] if paragraphs else []
    return Sheet(
        SHEET,
        settings.title,
        "From wraps and weights to yarn you can plan with.",
        (*note, steps(settings), links(settings), KEY, check(proofs), CAUTIONS, *cautions),
        wide=False,
    )


NOTE = "Before you begin"

STEPS = (
    ("On the sheet Reels, give each reel its loop.", "On the sheet Fiber, give each lot of fiber a line."),
    ("On the sheet Skeins, type wraps and weight of each skein; choose its reel and its lot.",),
    ("On the sheet Projects, type the yardage you want; read whether your lots are enough.",),
)

# The other sheets in the order of the work, and what one does there.
PLACES = (
    ("Reels", "Measure the loop of each reel and niddy-noddy."),
    ("Guide", "What is known of breeds and fibers; change it to your own records."),
    ("Fiber", "Each fleece, top or thread you have, from what was bought to yarn, and what is left of it."),
    ("Buying", "How much fiber to buy for the yarn you want."),
    ("Scouring", "Wash a fleece: water, heat, detergent. Read its cautions first."),
    ("Samples", "Measure a sample once, and plan with it from then on."),
    ("Yarn", "Design a plied yarn, or one with a bought thread."),
    ("Components", "The singles and threads of each design, and how much of each it takes."),
    ("Twist", "Turns for a single and for the ply, what a wheel puts in, and whether a yarn is balanced."),
    ("Skeins", "Measure a skein: its length, grist and wraps per inch."),
    ("Compare", "Do two skeins go together in one piece?"),
    ("Labels", "Print labels for your skeins."),
    ("Knitting", "How much yarn a knitted or crocheted piece takes, if no pattern says so."),
    ("Pieces", "The parts of a knitted piece, and their sizes."),
    ("Weaving", "How much yarn a woven piece takes, for warp and weft."),
    ("Projects", "Is what you have enough for what you want to make?"),
    ("Time", "How many hours a project takes, and when it will be done."),
    ("Figures", "Your own pace, and how sure you want to be."),
    ("Cost", "What a project cost, and a fair price."),
    ("Pictures", "The same numbers, if you would rather look."),
    ("Counts", "Any yarn number in all the others; how thick a yarn is; what moisture weighs."),
    ("Questions", "Which singles make this yarn? Will the ball last? How much longer does a full reel wind?"),
    ("Methods", "What each word means, how each figure is worked out, and who says so."),
    ("Proofs", "Published examples, worked out by this program: whether you can trust it."),
    ("Lists", "What the other sheets look up. Nothing to type."),
    ("Made with", "The settings of this planner. Nothing to type."),
)


def steps(settings: Settings) -> Text:
    """What to do first, in up to three steps."""
    left = [line for line in (_there(sentences, settings) for sentences in STEPS) if line]
    heading = ("One step", "Two steps", "Three steps")[len(left) - 1]
    return Text(heading, tuple(f"{number}.  {' '.join(line)}" for number, line in enumerate(left, start=1)))


def links(settings: Settings) -> Links:
    return Links(
        "Where to go",
        "The sheets in the order of the work. Fill in only what you need: a sheet uses another one only where it says so.",
        tuple((name, what) for name, what in PLACES if name not in settings.leave_out),
    )


def _there(sentences: Iterable[str], settings: Settings) -> list[str]:
    """The sentences that name no sheet that was left out."""
    return [each for each in sentences if not any(name in each for name in settings.leave_out)]


KEY = Text(
    "How to read a sheet",
    (
        "A boxed cell is yours: type there. A cell without a box is worked out, and is empty until what it needs is there.",
        "What to fix says in words what is wrong in a line, or still missing. Other lines are not touched by it.",
        "Every number stands under its unit. Type percentages with the sign: 15%.",
        "Copy and paste, but do not cut or drag a cell: in every program the formulas follow it to its new place. If it happened, undo it.",
        "To sort the lines of a sheet, select their boxed cells, in all columns, and sort. No line needs inserting: type below the last, then sort.",
    ),
)


def check(proofs: int) -> Card:
    """Whether this program computes the published examples, of which there are so many."""
    return Card(
        "start",
        "Is this program right?",
        groups=(
            Group("Proofs", (
                Result("agreeing", "Published examples that agree", 'COUNTIF(proofs_verdict, "agrees")', agreement.how_many_agree, NUMBER,
                       uses={"verdicts": "proofs_verdict"}, digits=0, note=f"of {proofs} on the sheet Proofs, worked out just now"),
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
