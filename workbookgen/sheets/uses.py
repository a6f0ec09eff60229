"""Uses: what pieces usually take, to be edited freely; one skein and one lot are compared with it."""

from workbookgen.language.domains import Name, Note
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter, Log
from workbookgen.language.quantities import LENGTH, NUMBER, THREADS
from workbookgen.language.views import Listing, LogView, band
from workbookgen.reference import overview, uses
from workbookgen.settings import Settings
from workbookgen.sheets import tabs, usual
from workbookgen.sheets.limits import AMOUNT, CLOSE
from workbookgen.units import Quantity

SHEET = tabs.NEED
CHAPTER = "Uses"
ABOUT = "Common practice, no source: patterns differ. Change any line, or add yours."

# The piece, for whom, yards, and wraps per inch of its yarn: common practice, no source.
USUAL = (
    ("mitts", "child", 80, 10), ("hat", "child", 120, 10), ("mittens", "child", 110, 10), ("hat", "grown", 180, 10), ("mittens", "grown", 200, 10),
    ("cowl", "grown", 220, 10), ("socks", "child", 220, 14), ("socks", "grown", 400, 14), ("scarf", "grown", 400, 10), ("jacket", "baby", 400, 11),
    ("shawl", "small", 420, 14), ("shawl", "large", 850, 14), ("pullover", "child", 700, 10), ("vest", "grown", 800, 10), ("pullover", "grown", 1300, 10),
    ("cardigan", "grown", 1500, 10), ("blanket", "lap", 1200, 9),
)


def chapter(settings: Settings) -> Chapter:
    return Chapter(CHAPTER, (lines(settings), SUMS), (band(Listing(title="What pieces usually take", block="uses", view=VIEW, aside=ABOUT)),))


VIEW = LogView(typed="name size length wraps", answers=(("In the yarn on Measure", "in_this_yarn"),))
SUMS = Card("use_sums", "", groups=(Group("", (
    Result("pieces", "Pieces", "COUNT(uses_covers)", overview.how_many, NUMBER, uses={"amounts": "uses_covers"}, digits=0),
)),))


def lines(settings: Settings) -> Log:
    unit = LENGTH.unit(settings.units)
    return Log(
        "uses",
        title="",
        rows=settings.rows.uses,
        starts_with=tuple(
            {"name": name, "size": size, "length": unit.typed(Quantity(float(yards), "yard")), "wraps": float(wraps)}
            for name, size, yards, wraps in USUAL[: settings.rows.uses]
        ),
        groups=(
            Group("You type", (
                Input("name", "Piece", Name(unique=False), needed=True, width=16, help="What it is: a hat."),
                Input("size", "Size", Note(), width=12, help="For whom, or how large."),
                Input("length", "It takes", AMOUNT, LENGTH, usual=usual.IN_A_PIECE, needed=True, help="Length of yarn, as your patterns or your own pieces say."),
                Input("wraps", "Of a yarn of", CLOSE, THREADS, usual=usual.WRAPS, needed=True, help="Wraps per inch of that yarn."),
            )),
            Group("Worked out", (
                Result("in_this_yarn", "In your yarn", "length * measure_wpi / wraps", uses.in_this_yarn, LENGTH, uses={"wpi": "measure_wpi"},
                       note="In the yarn on the sheet Measure: finer yarn takes more, in proportion to its wraps."),
            )),
            Group("For other sheets", (
                Result("listed", "Called", 'IF(given(size), name & " (" & size & ")", name)', uses.called, None, width=22),
                Result("covers", "Covers, m²", "length / wraps", uses.covers_piece, NUMBER, only_if='name <> ""'),
            ), printed=False),
        ),
    )


def enough_for(length: str, wraps: str) -> tuple[Result, ...]:
    """The usual pieces that a yarn is enough for, one at a time, those that it may be, and those that it is not."""

    def name(place: str) -> str:
        return f"INDEX(uses_listed, MATCH(SMALL(uses_covers, {place}), uses_covers, 0))"

    def counted(condition: str) -> str:
        return f"IF(use_sums_pieces > 0, SUMPRODUCT((uses_covers > 0) * ({condition})), 0)"

    of_pieces = {"values": "uses_covers", "pieces": "use_sums_pieces"}
    return (
        Result("covers", "Covers, m²", f"{length} / {wraps}", uses.covers, NUMBER, uses={"length": length, "wraps": wraps}, only_if=f"{wraps} > 0"),
        Result("fits", "Pieces that it is enough for", counted("uses_covers <= covers / 1.15 * 1.000000001"), uses.how_many_fit, NUMBER, digits=0,
               uses=of_pieces | {"area": "covers"}, note="Each by itself, with 15% to spare, as patterns differ (common practice, no source)."),
        Result("may_fit", "Pieces that it may be enough for", counted("uses_covers <= covers * 1.15 * 1.000000001"), uses.how_many_may_fit, NUMBER, digits=0,
               uses=of_pieces | {"area": "covers"}, note="Those too that take up to 15% more."),
        Result("enough", "By usual needs",
               f'IF(may_fit = 0, "not enough for " & {name("1")}, IF(fits = 0, "perhaps enough for " & {name("may_fit")}, '
               f'"usually enough for " & {name("fits")} & IF(may_fit > fits, ", perhaps for " & {name("may_fit")}, "")) '
               f'& IF(may_fit < use_sums_pieces, ", not for " & {name("may_fit + 1")}, ""))',
               uses.enough_words, None, uses=of_pieces | {"names": "uses_listed"}, only_if="use_sums_pieces > 0", width=40),
    )
