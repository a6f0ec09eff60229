"""Nonsense in every input of every sheet, in every program: never an error, always a sentence, nobody else harmed.

Line r of each log chooses line r of the others, so that the logs fall into chains which
have nothing to do with each other. The first chain is left alone and must stay as it was;
into the others, and into the cards, goes every kind of nonsense: in all inputs of a line
at once, and in each input alone.
"""

import pytest

from long_run import LONG, dealt, drawn, some
from planners import rows_of
from workbookgen.build import layout_of, workbook
from workbookgen.checking.compare import agree
from workbookgen.checking.driving import read, read_inputs, set_inputs
from workbookgen.checking.expected import expected_of_proofs, expected_of_scenarios
from workbookgen.engines import ENGINES, ErrorValue, Typed, engine
from workbookgen.language.automatic import MESSAGE
from workbookgen.language.domains import Choice, Date, Name, Note
from workbookgen.language.entries import starting_entries
from workbookgen.language.parts import Log
from workbookgen.settings import Settings

KINDS = {
    "words": "about a hundred",
    "a decimal comma": "12,5",
    "a number as a text": "7",
    "a number with its unit": "4 oz",
    "a date as a text": "5/6/2026",
    "a star": "*",
    "spaces": "  ",
    "a formula as a text": "=142",
    "a long text": "x" * 300,
    "a blank": None,
    "a negative number": -3.0,
    "zero": 0.0,
    "a huge number": 1e300,
    "a small number": 0.0001,
    "a number next to nothing": 1e-300,
    "a date": 46_188.0,
    "true": True,
    "false": False,
    "a formula": Typed("=6.5*16"),
    "a formula that gives a text": Typed('="abc"'),
    "a formula that gives nothing": Typed('=""'),
    "a formula that fails": Typed("=1/0"),
    "a formula that finds nothing": Typed("=NA()"),
    "a formula that gives true": Typed("=1=1"),
}
LINES = 9
AT_ONCE = 16  # sets of which the expected values are worked out at once
# What is divided by the sum over all lines, so that each line has its part in it.
OF_ALL_LINES = (
    {"blend_share", "blend_lay_out"}
    | {f"members_{part}{key}" for part in ("", "coins_") for key in ("claim", "exact", "whole", "turn")}
    | {"members_got", "members_coins", "members_weight", "members_pays", "rack_over", "offers_near"}
)
TRIALS = {
    "formualizer": 64,
    "ironcalc": drawn(4, 16),
    "libreoffice": drawn(2, 16),
    "gnumeric": drawn(2, 4),
}  # after 64, every kind was in every input of every log
ENDS = {
    "formualizer": 5,
    "ironcalc": 5,
    "libreoffice": 1,
    "gnumeric": 1,
}  # how many numbers at the end of what can be held, at a push
FASTEST = "formualizer"  # tries every kind at each push; the others share the kinds among them
# As their pace allows: a set takes LibreOffice and Gnumeric ten times as long.
SHARES = (*("ironcalc",) * 9, *("libreoffice",) * 2, "gnumeric")
BY_KIND = [(FASTEST, kind) for kind in KINDS] + dealt(KINDS, SHARES)
KINDS_OF = {name: [kind for each, kind in BY_KIND if each == name] for name in ENGINES}


def marked(name: str):
    return pytest.param(name, marks=pytest.mark.programs if name in ("libreoffice", "gnumeric") else ())


by_engine = pytest.mark.parametrize("session", [marked(name) for name in ENGINES], indirect=True)


# What must fit together within a line: fiber gets less from stage to stage, a hot tap is hotter than a cold one, a yarn
# is designed or of one lot, what is finished or gone asks for nothing more, and one thing is compared with another.
TOGETHER = (
    {
        "fiber_weight": lambda row: 60.0,
        "fiber_skirted_weighed": lambda row: 50.0,
        "fiber_scoured_weighed": lambda row: 30.0,
        "fiber_prepared_weighed": lambda row: 25.0,
        "fiber_yarn_weighed": lambda row: 20.0,
        "components_place": lambda row: 1.0,
        "samples_raw_in": lambda row: 30.0,
        "scouring_hot": lambda row: 60.0,
        "compare_second": lambda row: "skeins 1",
        "projects_used": lambda row: 9.0 if row % 4 == 3 else None,
        "skeins_gone": lambda row: "given" if row % 4 == 3 else None,
    }
    | {f"{key}_design": lambda row: f"designs {row}" if row % 2 else None for key in ("skeins", "projects")}
    | {key: lambda row: f"fiber {row}" if not row % 2 else None for key in ("skeins_lot", "projects_lot_1")}
)


def fine(planner, block, each, row):
    """A value that this input takes."""
    if f"{block.key}_{each.key}" in TOGETHER:
        return TOGETHER[f"{block.key}_{each.key}"](row)
    match each.domain:
        case Choice(of=of):
            holder, column = planner.by_key[of]
            if hasattr(column, "values"):
                return column.values[row % len(column.values)]
            first = next(other for other in block.inputs if isinstance(other.domain, Choice) and other.domain.of == of)
            return f"{holder.key} {row}" if first is each else None  # no lot twice
        case Name():
            return f"{block.key} {row}"
        case Note():
            return "a note"
        case Date():
            return 46_000.0 + row
        case domain:
            low = domain.least if domain.least is not None else domain.above
            high = domain.most if domain.most is not None else domain.below
            return low + 0.3 * (high - low) if high <= 2 else float(min(high, max(low, 1.0) + 4 + row + len(each.key)))


@pytest.fixture(scope="module")
def layout():
    return layout_of(Settings(rows=rows_of(LINES, guide=40)))


@pytest.fixture(scope="module")
def good(layout):
    """Entries that are all right, the lines of a log apart from each other."""
    planner = layout.planner
    entries = dict(starting_entries(planner))
    for block in planner.blocks.values():
        for each in block.inputs:
            entries[f"{block.key}_{each.key}"] = tuple(fine(planner, block, each, row) for row in range(block.rows))
    return entries


@pytest.fixture(scope="module")
def planner(layout, good, tmp_path_factory):
    path = tmp_path_factory.mktemp("nonsense") / "planner.xlsx"
    path.write_bytes(workbook(layout, good))
    return path


@pytest.fixture(scope="module")
def session(request, planner):
    """The planner, open in an engine.

    (Never let a test take this parameter in pairs with another: it would be opened anew for every pair.)
    """
    with engine(request.param).open(planner) as opened:
        opened.name = request.param
        yield opened


@pytest.fixture(scope="module")
def calm(session, layout, good):
    """What the first lines show while all is right."""
    return first_lines(layout, shown(session, layout, good)[1])


def with_nonsense(good, typed):
    """The entries with other values in some cells: (full key, line) -> value."""
    changed = {key: list(column) for key, column in good.items()}
    for (key, row), value in typed.items():
        changed[key][row] = value
    return {key: tuple(column) for key, column in changed.items()}


def shown(session, layout, entries):
    """What stands in the inputs and what all formulas show."""
    set_inputs(session, layout, entries)
    session.evaluate()
    return read_inputs(session, layout), read(session, layout.formulas)


def faults(layout, proofs, *seen):
    """Cells that show an error or not what the reference says; of each set its inputs, and what was got."""
    wanted_of = expected_of_scenarios(layout.planner, [held for held, _ in seen], proofs)
    return [
        f"{key}[{row}] of set {number}: expected {wanted!r}, got {value!r}"
        for number, (expected, (_, got)) in enumerate(zip(wanted_of, seen, strict=True))
        for key, column in (proofs | expected).items()
        for row, (wanted, value) in enumerate(zip(column, got[key], strict=True))
        if isinstance(value, ErrorValue) or not agree(wanted, value)
    ]


@pytest.fixture(scope="module")
def proofs(layout):
    return expected_of_proofs(layout.planner)


def first_lines(layout, got):
    """What the first lines of all logs show; single cells of a log tell of all its lines, or of another one."""
    return {
        each.key: got[each.key][0]
        for each in layout.formulas
        if isinstance(each.holder, Log) and each.rows > 1 and each.key not in OF_ALL_LINES
    }


@by_engine
def test_the_good_lines_are_good(session, layout, good, proofs):
    held, got = shown(session, layout, good)
    assert held == good and faults(layout, proofs, (held, got)) == []
    filled = [value is not None for value in first_lines(layout, got).values()]
    assert sum(filled) > 0.6 * len(filled)


@by_engine
def test_a_whole_line_of_nonsense(session, layout, good, proofs, calm):
    """Of each kind two sets: nonsense in the second line of every log, and in every card, too.

    At a push the slower engines try the second alone; and the values of the first are worked out in a
    long run alone, since those of its lines stand in the second, too.
    """
    blocks = [block for block in layout.planner.blocks.values() if block.inputs]
    logs = [block for block in blocks if isinstance(block, Log)]
    in_lines = [(f"{block.key}_{each.key}", 1) for block in logs for each in block.inputs]
    in_cards = [(f"{block.key}_{each.key}", 0) for block in blocks if block not in logs for each in block.inputs]
    tried = [
        (kind, cells)
        for kind in KINDS_OF[session.name]
        for cells in (in_lines, in_lines + in_cards)
        if LONG or session.name == FASTEST or cells != in_lines
    ]
    seen = []
    for kind, cells in tried:
        held, got = both = shown(session, layout, with_nonsense(good, dict.fromkeys(cells, KINDS[kind])))
        assert [key for key, column in got.items() if any(isinstance(value, ErrorValue) for value in column)] == [], (
            kind
        )
        assert cells != in_lines or first_lines(layout, got) == calm, kind
        for block in logs:
            entries = {each.key: held[f"{block.key}_{each.key}"][1] for each in block.inputs}
            refused = [
                each
                for each in block.inputs
                if not isinstance(each.domain, Choice) and not takes(each, entries[each.key])
            ]
            if refused and kind != "a blank":
                assert got[f"{block.key}_{MESSAGE.key}"][1], (kind, block.key)
        if LONG or cells != in_lines:
            seen.append((kind, both))
    for start in range(0, len(seen), AT_ONCE):
        kinds, sets = zip(*seen[start : start + AT_ONCE], strict=True)
        assert faults(layout, proofs, *sets) == [], f"sets of {kinds}"


def takes(each, value) -> bool:
    return value is None or each.domain.accepts(value)


@by_engine
def test_nonsense_in_each_input_alone(session, layout, good, proofs, calm):
    """Eight lines of every log at a time, and in every second trial one input of every card."""
    values, seen = list(KINDS.values()), []
    for trial in range(TRIALS[session.name]):
        typed = {}
        for block in layout.planner.blocks.values():
            if not block.inputs:
                continue
            if isinstance(block, Log):
                turns = [(line, trial * (LINES - 1) + line - 1) for line in range(1, min(LINES, block.rows))]
            else:
                turns = [(0, trial // 2 * 7)] if trial % 2 else []
            for line, turn in turns:
                each = block.inputs[turn % len(block.inputs)]
                typed[f"{block.key}_{each.key}", line] = values[turn // len(block.inputs) % len(values)]
        seen.append(shown(session, layout, with_nonsense(good, typed)))
        if not trial % 2:  # the cards were left alone
            assert first_lines(layout, seen[-1][1]) == calm
    for start in range(0, len(seen), AT_ONCE):
        assert faults(layout, proofs, *seen[start : start + AT_ONCE]) == [], f"sets are counted from trial {start}"


@by_engine
def test_numbers_at_the_end_of_what_a_program_can_hold(session, layout, good):
    """They may be lost in the last digits, or become nothing; no cell may show an error."""
    for value in some((1e-30, -1e-300, 1e300, -1e300, 9.99e307), ENDS[session.name]):
        _, got = shown(session, layout, {key: (value,) * len(column) for key, column in good.items()})
        assert [key for key, column in got.items() for each in column if isinstance(each, ErrorValue)] == [], value
