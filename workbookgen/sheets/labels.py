"""Print: labels to cut out, each for a skein chosen from the log, and a paper to fill in by the wheel."""

from workbookgen.language.domains import Choice, Note
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Chapter, Log
from workbookgen.language.repeated import repeated
from workbookgen.language.tickets import NUMBER, TICKET, TicketLine, Tickets
from workbookgen.language.views import Grid, PaperForm, band
from workbookgen.reference import labels as trade
from workbookgen.settings import Settings
from workbookgen.sheets import content, skeins, tabs
from workbookgen.sheets.lookup import lookup

SHEET = tabs.PRINT
CHAPTER = "Labels"
TYPED = (NUMBER, 120, 265, 205, 14)
PAPER = len(TYPED) + 1, len(TYPED) + 2 * len(TICKET)
GRID = Grid((*TYPED, *TICKET, *TICKET, 14), paper=PAPER)  # a spare column, since LibreOffice prints parts of a hidden one next to the paper

TICKETS = Tickets(
    title="Labels: a skein in each line",
    block="labels",
    name="called",
    lines=(
        TicketLine(("made_of",)),
        TicketLine(("content",)),
        TicketLine(("length_words", "mass_words"), is_bold=True),
        TicketLine(("weight_class", "wraps_words")),
        TicketLine(("grist_words",), is_small=True),
    ),
    foot="own_words",
    across=PAPER,
    results=("content_told",),
    notes=(
        "Eight to a page, on A4 or Letter, 61 mm (2.4 in) high. Cut at the marks.",
        "An empty line leaves an empty label: go on where a used sheet of labels ends.",
        "Fiber content goes by weight, as 16 CFR 303 and 300 have it. Under 5%, all but wool is other fiber.",
        "Unknown? On the sheet Fiber each lot needs its fiber, and in the guide that needs a name for labels.",
        "Of a design, each strand needs its number and its lot. If you know the content, type it in your words.",
        "If you sell, the rule in force where you sell decides; it asks for more, such as who made it and where.",
        "The last page is a log to fill in by hand.",
    ),
)
BY_THE_WHEEL = PaperForm(
    title="By the wheel",
    aside="Type it into the planner when it is dry.",
    across=PAPER,
    heads=(("Skein", 3), ("Reel", 1), ("Wraps, and part", 3), ("Weight, dry", 1), ("Loop, dry", 1), ("Fiber lot, and note", 3)),
    lines=26,
)


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (labels(settings),), (band(TICKETS), band(BY_THE_WHEEL)))


def labels(settings: Settings) -> Log:
    return Log(
        "labels",
        title="",
        rows=settings.rows.labels,
        groups=(
            Group("You type", (
                Input("skein", "Skein", Choice("skeins_listed", skeins.SHEET), needed=True, width=24, help="From the sheet Skeins."),
                Input("words", "Your words", Note(), width=44, help="Name of the yarn, care, a date, a price."),
            )),
            Group("On the label", (
                _of_skein("called", "Skein", "skeins_listed"),
                _of_skein("made_first", "Fiber"),
                _of_skein("from_second", "And"),
                Result("made_of", "Made of", 'IF(given(from_second), made_first & " and " & from_second, made_first)', trade.made_of, None,
                       uses={"first": "made_first", "second": "from_second"}),
                _of_skein("length_words", "Length"),
                _of_skein("mass_words", "Weight"),
                _of_skein("weight_class", "Yarn weight class"),
                _of_skein("wraps_words", "Wraps"),
                _of_skein("grist_words", "Grist"),
                repeated("own_words", "Your words", "words", only_if='LEN(SUBSTITUTE(words, " ", "")) > 0'),
            ), printed=False),
            Group("Fiber content", content.of_label(), printed=False),
        ),
        repeated=("called", "made_of", "content", "length_words", "mass_words", "weight_class", "wraps_words", "grist_words", "own_words"),
    )


def _of_skein(key: str, label: str, column: str = "") -> Result:
    """A text result of the chosen skein."""
    column = column or f"skeins_{key}"
    return lookup(key, label, column, "skein")
