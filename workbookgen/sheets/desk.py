"""The desk: where one comes in. Doors by what one wants now, what needs a look, cautions, and whether this program computes right."""

from workbookgen.language.fields import Group, Result
from workbookgen.language.parts import Card, Chapter, Log, Sheet
from workbookgen.language.quantities import NUMBER
from workbookgen.language.views import Answers, Band, Kind, Looks, Reading, Way, band
from workbookgen.reference import agreement
from workbookgen.settings import Settings

SHEET = "Desk"


def sheet(settings: Settings, proofs: int, sheets: tuple[Sheet, ...], cautions: tuple[str, ...]) -> Sheet:
    """The first sheet, before these. `cautions` are those of chapters that were left out."""
    card = check(proofs)
    return Sheet(
        SHEET,
        settings.title,
        "Type in tinted cells. Everything else is worked out.",
        (Chapter(SHEET, (card,), (*_note(settings), *_bands(sheets, cautions))),),
        kind=Kind.DESK,
    )


def _note(settings: Settings) -> tuple[Band, ...]:
    """What a guild says to those who open its planner."""
    paragraphs = tuple(line.strip() for line in settings.note.split("\n") if line.strip())
    return (band(Reading(title=NOTE, sentences=paragraphs)),) if paragraphs else ()


NOTE = "Before you begin"


def _bands(sheets: tuple[Sheet, ...], cautions: tuple[str, ...]) -> tuple[Band, ...]:
    return (
        band(
            Reading(title="Take care", sentences=(*CAUTIONS, *cautions), is_caution=True, is_small=True, across=(1, 8)),
            Answers(title="Does this program compute right?", lines=("start_trust",), across=(10, 12)),
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


CAUTIONS = (
    "Hot water: at 60 °C (140 °F) it scalds in seconds. Gloves, a lid, and nobody lifts a full pot.",
    "Raw fleece: its dust and dirt can carry disease (Q fever, orf, ringworm, anthrax where it occurs). Wear gloves and a dust mask, "
    "work wet or outdoors, wash your hands, do not eat there. If you are pregnant or your defenses are weak, keep away and ask a doctor.",
    "Detergent, soda, mothproofing and dye: follow the label of the product. Do not mix products; keep pots for dyeing apart from food.",
    "Grease in drains: it sets when it cools. Strain the water, and follow your local rules for waste water and septic tanks.",
    "Moving parts: keep hair, sleeves, cords and children's fingers away from wheel, flyer, carder and picker.",
    "Long work: change posture, stand up and stretch every half hour; stop when wrist, shoulder or back hurts.",
    "These are the usual cautions. Local codes, product labels, and licensed practice come before anything on these sheets.",
)
