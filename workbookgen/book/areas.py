"""Areas of cells, joined into fewer and larger ones."""

from collections.abc import Iterable

Area = tuple[int, int, int, int]  # first row, first column, last row, last column


def joined(areas: Iterable[Area]) -> list[Area]:
    """The same cells in fewer rectangles: neighbors side by side are joined first, then those one below another."""
    return [_turned(each) for each in _side_by_side(map(_turned, _side_by_side(areas)))]


def _side_by_side(areas: Iterable[Area]) -> list[Area]:
    found: list[Area] = []
    for top, left, bottom, right in sorted(areas, key=lambda area: (area[0], area[2], area[1])):
        if found and (found[-1][0], found[-1][2], found[-1][3] + 1) == (top, bottom, left):
            found[-1] = (top, found[-1][1], bottom, right)
        else:
            found.append((top, left, bottom, right))
    return found


def _turned(area: Area) -> Area:
    """The area with rows and columns exchanged."""
    top, left, bottom, right = area
    return left, top, right, bottom
