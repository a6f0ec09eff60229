"""The defined names of a file, by which carrying and gathering find every entry: are they where they belong?

`names_elsewhere` compares them with those that the generator writes, cell by cell; `names_out_of_place` allows for
inserted rows and columns.
"""

from bisect import bisect_left
from collections.abc import Collection, Iterator, Mapping

from workbookgen.book.placement import Layout, Placement
from workbookgen.checking.compare import Finding
from workbookgen.checking.formula_spelling import spelled
from workbookgen.engines import Area
from workbookgen.ooxml.references import Range, range_of, without_sheet_quotes
from workbookgen.ooxml.workbook import WholeFile

OF_PROGRAMS = ("_xlnm.", "Print_Area", "Print_Titles")  # names that programs set for themselves


def names_elsewhere(ours: WholeFile, theirs: WholeFile, blocks: Collection[str]) -> Iterator[Finding]:
    """Names that are gone, swapped, moved, or like the planner's but none of its own, of the workbook and of sheets.

    A user's own names are fine.
    """
    wanted, found = ({name: _meaning(text) for name, text in each.names.items()} for each in (ours, theirs))
    yield from _gone_or_moved(wanted, found)
    for name, meaning in found.items():
        if name not in wanted and any(name.startswith(f"{block}_") for block in blocks):
            strange = "a name like those of the planner, which the planner does not have. Delete it"
            yield Finding(strange, key=name, expected="no such name", got=meaning)
    for (sheet, name), text in theirs.names_of_sheets.items():
        if name in wanted and not name.startswith(OF_PROGRAMS):
            own = f"on the sheet {sheet} this name stands for something of its own. Delete it there"
            yield Finding(own, key=name, expected=wanted[name], got=_meaning(text))
    for (sheet, name), text in ours.names_of_sheets.items():
        their = theirs.names_of_sheets.get((sheet, name), "")
        if not name.startswith(OF_PROGRAMS) and _meaning(text) != _meaning(their):
            changed = "the sheet's name by which LibreOffice works out every cell is gone or changed"
            yield Finding(changed, sheet, key=name, expected=_meaning(text), got=_meaning(their) or "nothing")


def _gone_or_moved(wanted: Mapping[str, str], found: Mapping[str, str]) -> Iterator[Finding]:
    swapped: set[str] = set()
    for name, meaning in wanted.items():
        if name not in found:
            gone = "this name is gone; carrying and gathering find the entries by it"
            yield Finding(gone, key=name, expected=meaning, got="nothing")
        elif found[name] != meaning and name not in swapped:
            others = (each for each, its in wanted.items() if its == found[name] and found.get(each) == meaning)
            other = next(others, None)
            swapped |= {name, other}
            yield Finding(_moved(other), key=name, expected=meaning, got=found[name])


def _moved(other: str | None) -> str:
    """What is wrong with a name that refers to other cells, perhaps to those of another name."""
    if other:
        return f"this name and {other} are swapped: each stands for the other's cells"
    return "this name stands for other cells than its own"


def _meaning(text: str) -> str:
    return str(range_of(text) or spelled(without_sheet_quotes(text)))


def names_out_of_place(layout: Layout, found: Mapping[str, Area]) -> Iterator[Finding]:
    """Names whose order within their block differs from the layout, such as two that were swapped.

    `found` says where a file has them, by full key, as far as it has them. Inserted rows and columns and renamed sheets
    do not change the order.
    """
    for block in layout.planner.blocks.values():
        placed = [each for each in layout.placements_of(block) if each.key in found]
        kept = _in_order(sorted(placed, key=lambda each: (each.column, each.row)), found)
        usual = _usual_row(placed, found)
        out_of_order = [each for each in placed if each.key not in kept]
        off_their_row = [each for each in placed if each.rows > 1 and found[each.key].row != usual]
        for each in {each.key: each for each in (*out_of_order, *off_their_row)}.values():
            others = (two.key for two in placed if two is not each and _is_swapped(placed, each, two, found))
            reason = _moved(next(others, None))
            yield Finding(reason, key=each.key, expected=each.range.replace("$", ""), got=str(_range(found[each.key])))


def _in_order(placed: list[Placement], found: Mapping[str, Area]) -> set[str]:
    """The most names that are in the right order: the longest increasing subsequence."""
    ends: list[tuple[int, int]] = []
    chains: list[list[str]] = []
    for each in placed:
        place = found[each.key].column, found[each.key].row
        at = bisect_left(ends, place)
        chain = [*(chains[at - 1] if at else []), each.key]
        ends[at : at + 1], chains[at : at + 1] = [place], [chain]
    return set(chains[-1]) if chains else set()


def _usual_row(placed: list[Placement], found: Mapping[str, Area]) -> int | None:
    """The first row of most fields of a block."""
    rows = [found[each.key].row for each in placed]
    return max(set(rows), key=rows.count, default=None)


def _is_swapped(placed: list[Placement], one: Placement, two: Placement, found: Mapping[str, Area]) -> bool:
    """Whether two names of a block would both be in order if they were exchanged."""
    if found[one.key] == found[two.key]:
        return False
    exchanged = {each.key: found[each.key] for each in placed} | {one.key: found[two.key], two.key: found[one.key]}
    ordered = sorted(placed, key=lambda each: (each.column, each.row))
    return {one.key, two.key} <= _in_order(ordered, exchanged) and not {one.key, two.key} <= _in_order(ordered, found)


def _range(area: Area) -> Range:
    return Range(area.sheet, area.row, area.column, area.last_row, area.column + area.columns - 1)
