"""Whatever settings are valid, written as TOML and read again they are the same settings."""

from typing import get_args

from hypothesis import example, given
from hypothesis import strategies as st

from workbookgen.colors import ROLES
from workbookgen.settings import NEEDS, Colors, Leavable, Rows, Settings, parse
from workbookgen.settings.reels import Reel
from workbookgen.settings.values import LENGTH_UNITS
from workbookgen.sheets import origin

LETTERS = st.characters(exclude_categories=["Cs", "Cc"], exclude_characters="\ufffe\uffff")


def texts(most: int, letters=LETTERS):
    return st.text(letters, min_size=1, max_size=most).filter(str.strip)


def lengths(most: int):
    number = st.one_of(st.integers(1, most).map(str), st.decimals("0.01", most, places=2).map(str))
    return (
        st.tuples(number, st.sampled_from(LENGTH_UNITS[2:])).map(" ".join).filter(lambda text: not text.endswith(" m"))
    )


REELS = st.one_of(
    st.builds(Reel, name=texts(40), loop=lengths(99), tolerance=st.none() | lengths(20)),
    st.builds(Reel, name=texts(40), height=lengths(99), arms=st.tuples(lengths(99), lengths(99))),
    st.builds(Reel, name=texts(40), cord=lengths(99), turns=st.floats(0.01, 10_000)),
)


def closed(names: set[str]) -> tuple[str, ...]:
    """Sheets that can be left out together: with each, those that are nothing without it."""
    while more := {sheet for sheet, others in NEEDS.items() if names & set(others)} - names:
        names = names | more
    return tuple(sorted(names))


SETTINGS = st.builds(
    Settings,
    units=st.sampled_from(["us", "us-grams", "metric"]),
    paper=st.sampled_from(["letter", "a4"]),
    title=texts(60),
    note=st.text(LETTERS | st.just("\n"), max_size=600),
    fibers=st.none() | st.just("") | texts(30),
    currency=texts(6, LETTERS.filter(lambda letter: letter not in '"{}')),
    leave_out=st.sets(st.sampled_from(get_args(Leavable))).map(closed),
    colors=st.builds(Colors, **{role: st.none() | st.just(color) for role, color in ROLES.items()}),
    rows=st.builds(Rows, reels=st.integers(4, 100), skeins=st.integers(2, 10_000)),
    reels=st.lists(REELS, max_size=4, unique_by=lambda reel: reel.name.lower()).map(tuple),
)


@given(SETTINGS)
def test_written_and_read_again(settings):
    assert parse(settings.as_toml(), "written") == settings


@given(SETTINGS)
@example(Settings(title="a\u2028b\x85c", note="d\u2029e\nf"))  # line ends to Python, and not to TOML
def test_made_with_holds_them_line_by_line(settings):
    """As a planner is read back: the column's cells, joined."""
    (table,) = origin.chapter(settings).holders
    (column,) = table.columns
    kept = settings.model_copy(update={"fibers": ""}) if settings.fibers else settings
    assert parse("\n".join(column.values), "a planner") == kept


def test_settings_of_an_older_planner_are_read():
    old = '# workbookgen 0.1.0\nunits = "us"\npaper = "letter"\ntitle = "Mine"\ncurrency = "$"\nreels = []\n\n[rows]\nreels = 12\nguide = 40\n'
    assert parse(old, "a planner") == Settings(title="Mine", rows=Rows(guide=40))


def test_nothing_is_left_out_unasked():
    assert (Settings().note, Settings().leave_out, Settings().colors) == ("", (), Colors())
