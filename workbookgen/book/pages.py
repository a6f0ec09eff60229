"""Where a printed sheet ends and the next page begins.

A log may go over several pages, each with the first column and the headings once more; so its
breaks are set here rather than left to a program, which would cut through a group. What is on
one page anyway is not asked to be repeated: LibreOffice takes long over that when it opens a
file. Labels are scaled by the width of the paper and their lines made as high as fill a page.
Programs leave breaks aside where a sheet is "fit to pages", so both are given a scale.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

LOG_SCALE = 66  # percent, at which so many letters fit
LETTERS_ON_A_PAGE = 180  # across a landscape page, at a size that can still be read
LETTERS_OF_A_HEADING = 40
ROWS_ON_A_PAGE = 50  # of an upright page
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
    return Strips(scale, int((_down(paper) * 100 / scale - heading) / a_page))


def is_longer_than_a_page(paper: str, records: int) -> bool:
    """Whether a log of so many lines may run over the foot of a page, however long the texts in it."""
    return HEADINGS + records * RECORD > _down(paper) * 100 / LOG_SCALE


def _down(paper: str) -> float:
    """The points that a landscape page has from its head to its foot."""
    return (INCHES[paper][1] - MARGINS["top"] - MARGINS["bottom"]) * POINTS * SPARE


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
