"""Where a printed sheet ends and the next page begins.

A log may go over several pages, each with the first column and the headings once more; so its
breaks are set here rather than left to a program, which would cut through a group or leave
three lines for the last page. What is on one page anyway is not asked to be repeated:
LibreOffice takes long over that when it opens a file. Labels are scaled by the width of the
paper and their lines made as high as fill a page. Of other sheets no part is cut in two that
fits on a page. Programs leave breaks aside where a sheet is "fit to pages", so all are given
a scale.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

LOG_SCALE = 66  # percent, at which so many letters fit
LETTERS_ON_A_PAGE = 180  # across a landscape page, at a size that can still be read
LETTERS_OF_A_HEADING = 40
ROW = 15.0  # points, of a row that nothing makes higher, in the programs that make it highest
BEGINNING = 10 * ROW  # of what is longer than a page, so much should stand at the foot of one
SQUEEZED = 1.12  # a sheet that is longer than a page by no more than this is printed smaller, on one
LINES_ON_A_PAGE = 40  # of a table, at most
MESSAGE_WIDTH = 60  # of a log's column What to fix
HEADINGS, RECORD = 72, 42  # points: the three rows of headings, and a line of a log with a text of three lines in it

PAPER = {"letter": 1, "a4": 9}
INCHES = {"letter": (11.0, 8.5), "a4": (11.69, 8.27)}  # landscape
MARGINS = {"left": 0.5, "right": 0.5, "top": 0.6, "bottom": 0.7}
POINTS = 72
SPARE = 0.93  # LibreOffice takes a letter for 7.4 pixels, others for 7


@dataclass(frozen=True)
class Strips:
    """How lines are printed that are to be cut out: the scale in percent, and a line's height in points."""

    scale: int
    height: float


def strips(paper: str, widths: Iterable[float], heading: float, a_page: int) -> Strips:
    """Lines that fill a landscape page in both directions, below a heading of so many points."""
    across = (INCHES[paper][0] - MARGINS["left"] - MARGINS["right"]) * POINTS * SPARE
    scale = min(100, int(100 * across / sum(points_across(width) for width in widths)))
    return Strips(scale, int((_down(paper) * SPARE * 100 / scale - heading) / a_page))


def is_longer_than_a_page(paper: str, records: int) -> bool:
    """Whether a log of so many lines may run over the foot of a page, however long the texts in it."""
    return HEADINGS + records * RECORD > _down(paper) * SPARE * 100 / LOG_SCALE


def _down(paper: str) -> float:
    """The points that a landscape page has from its head to its foot."""
    return (INCHES[paper][1] - MARGINS["top"] - MARGINS["bottom"]) * POINTS


@dataclass(frozen=True)
class Stack:
    """How parts are printed that stand below each other: the scale in percent, and after how many rows a page begins."""

    scale: int
    starts: tuple[int, ...]


def stacked(paper: str, is_wide: bool, widths: Iterable[float], parts: Sequence[Sequence[float]]) -> Stack:
    """Parts as wide as the paper. Of each the heights of its rows are given, its last one being free."""
    across, down = INCHES[paper] if is_wide else INCHES[paper][::-1]
    across = (across - MARGINS["left"] - MARGINS["right"]) * POINTS
    down = (down - MARGINS["top"] - MARGINS["bottom"]) * POINTS
    scale = min(LOG_SCALE if is_wide else 100, int(100 * SPARE * across / sum(points_across(width) for width in widths)))
    room, needed = down * 100 / scale, sum(map(sum, parts)) - parts[-1][-1]
    if room < needed <= room * SQUEEZED:
        return Stack(int(scale * room / needed), ())
    return Stack(scale, tuple(_starts(parts, room)))


def _starts(parts: Sequence[Sequence[float]], room: float) -> Iterable[int]:
    """A part that fits on a page stands on one; a longer one begins where some of it still fits."""
    used, before = 0.0, 0
    for heights in parts:
        whole = sum(heights[:-1])
        if used and used + (whole if whole <= room else BEGINNING) > room:
            yield before
            used = 0.0
        for height in heights:
            used = height if used + height > room else used + height
        before += len(heights)


def even_starts(paper: str, heights: Sequence[float], heading: float) -> list[int]:
    """After how many lines of a log a page begins, so that all its pages are about as full."""
    room = _down(paper) * 100 / LOG_SCALE - heading
    pages = -int(-sum(heights) // (room - max(heights) / 2))  # the line at an even end may stand on either side of it
    ends = [sum(heights) * page / pages for page in range(1, pages)]
    reached, starts = 0.0, []
    for index, height in enumerate(heights):
        if ends and reached + height / 2 > ends[0]:
            starts.append(index)
            ends.pop(0)
        reached += height
    return starts


def points_across(width: float) -> float:
    """What a column takes on paper: seven pixels a letter and five around them, at 96 pixels an inch."""
    return (int(width * 7) + 5) * POINTS / 96


def page_starts(groups: list[list[int]], widths: Mapping[int, float]) -> list[int]:
    """The columns with which a new page begins; every page repeats the first column.

    A group may run over to the next page, but it does not begin where its heading would be cut.
    """
    name = widths[1]
    starts, used = [], 0.0
    for group in groups:
        whole = sum(widths[column] for column in group)
        if used and used + whole > LETTERS_ON_A_PAGE and LETTERS_ON_A_PAGE - used < LETTERS_OF_A_HEADING:
            starts.append(group[0])
            used = name
        for column in group:
            if used + widths[column] > LETTERS_ON_A_PAGE:
                starts.append(column)
                used = name
            used += widths[column]
    return starts
