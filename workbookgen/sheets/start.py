"""The first page: what to do, what is typed and what is computed, cautions, and the proofs."""

from collections.abc import Iterable

from workbookgen.language.fields import Group, Result
from workbookgen.language.parts import Card, Sheet, Text
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
        (*note, steps(settings), ways(settings), KEY, check(proofs), CAUTIONS, *cautions),
        wide=False,
    )


NOTE = "Before you begin"

STEPS = (
    ("On the sheet Reels, give each reel its loop.", "On the sheet Fiber, give each lot of fiber a line."),
    ("On the sheet Skeins, type wraps and weight of each skein; choose its reel and its lot.",),
    ("On the sheet Projects, type the yardage you want; read whether your lots are enough.",),
)

# What one has or wants, and where to go for it.
WAYS = (
    ("I only want to measure a skein:", "Reels, then Skeins.", "For its label: Labels.", "Do two belong together: Compare."),
    ("I have a fleece:", "Fiber.", "To wash it: Scouring.", "To buy one: Buying.", "What is known of breeds: Guide."),
    ("I have a project:", "Projects.", "Its yardage is not known: Knitting.", "It has several parts: Pieces.", "It is woven: Weaving."),
    ("I have planned it:", "How long it takes: Time, at the pace of Figures.", "What it costs: Cost."),
    ("I am planning a yarn:", "spin a sample for Samples.", "Design it: Yarn, with Components.", "Find its twist: Twist."),
    ("I have a short question:", "a yarn number, Counts.", "Will the ball last, which singles make this yarn: Questions.", "I would rather look: Pictures."),
    ("What a word means, how something is worked out: Methods.  Whether it is right: Proofs.",
     "Fill in only what you need: a sheet uses another one only where it says so."),
)


def steps(settings: Settings) -> Text:
    """What to do first, in up to three steps."""
    left = [line for line in (_there(sentences, settings) for sentences in STEPS) if line]
    heading = ("One step", "Two steps", "Three steps")[len(left) - 1]
    return Text(heading, tuple(f"{number}.  {' '.join(line)}" for number, line in enumerate(left, start=1)))


def ways(settings: Settings) -> Text:
    lines = ((question, _there(answers, settings)) for question, *answers in WAYS)
    return Text("Where to begin", tuple("  ".join((question, *answers)) for question, answers in lines if answers))


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
                       uses={"verdicts": "proofs_verdict"}, digits=0, note=f"of {proofs} on the sheet Proofs, computed by this program just now"),
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
