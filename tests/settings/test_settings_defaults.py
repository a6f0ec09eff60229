"""What settings are when nobody says anything, and what the templates ask for."""

import pytest

from workbookgen.settings import Rows, Settings, changed, load, parse, templates
from workbookgen.settings.reels import Reel
from workbookgen.settings.values import length_of
from workbookgen.units import Quantity

TEMPLATES = {  # file -> units, paper, and the first reel with its loop
    "us.toml": ("us", "letter", "Two-yard reel", "2 yd"),
    "us-grams.toml": ("us-grams", "letter", "Two-yard reel", "2 yd"),
    "metric.toml": ("metric", "a4", "One-meter reel", "1 m"),
    "us-small.toml": ("us", "letter", "Two-yard reel", "2 yd"),
    "us-grams-small.toml": ("us-grams", "letter", "Two-yard reel", "2 yd"),
    "metric-small.toml": ("metric", "a4", "One-meter reel", "1 m"),
    "example.toml": ("us", "letter", "Two-yard reel", "2 yd"),
}


def test_an_empty_file_means_yards_and_ounces_on_letter_paper():
    settings = parse("", "empty.toml")
    assert (settings.units, settings.paper) == ("us", "letter")
    assert settings.reels == () and settings.fibers is None
    rows = settings.rows
    assert (rows.reels, rows.guide, rows.fiber, rows.skeins, rows.projects) == (12, 45, 40, 200, 12)


def test_settings_cannot_be_changed_by_accident():
    with pytest.raises(ValueError, match="frozen"):
        Settings().units = "metric"


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_template_loads(name):
    units, paper, reel, loop = TEMPLATES[name]
    settings = load(templates() / name)
    assert (settings.units, settings.paper) == (units, paper)
    assert (settings.reels[0].name, settings.reels[0].loop) == (reel, loop)
    assert settings.size == ("small" if name.endswith("-small.toml") else "whole")


@pytest.mark.parametrize("units", ["us", "us-grams", "metric"])
def test_a_small_template_differs_from_the_whole_one_in_its_size_alone(units):
    assert load(templates() / f"{units}-small.toml") == load(templates() / f"{units}.toml").model_copy(
        update={"size": "small"}
    )


def test_every_template_is_tried_here():
    assert {path.name for path in templates().glob("*.toml")} == set(TEMPLATES)


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_template_survives_being_written_and_read(name):
    settings = load(templates() / name)
    assert parse(settings.as_toml(), name) == settings


def test_everything_survives_being_written_and_read():
    settings = Settings(
        units="metric",
        paper="a4",
        title='Spring "24" \\ Jo & Co.',
        fibers="own.csv",
        rows=Rows(reels=3, guide=5, fiber=7, skeins=9, projects=2),
        reels=(
            Reel(name="Große Haspel", loop="1.5 m", tolerance="2 mm"),
            Reel(name="Niddy", height="40 cm", arms=("35 cm", "30.5 cm")),
        ),
    )
    assert parse(settings.as_toml(), "written") == settings


def test_a_byte_order_mark_is_no_mistake(tmp_path):
    path = tmp_path / "marked.toml"
    path.write_bytes(b"\xef\xbb\xbf" + b'units = "metric"\n')
    assert load(path).units == "metric"


def test_a_fiber_table_is_looked_for_beside_the_settings(tmp_path):
    path = tmp_path / "mine.toml"
    path.write_text('fibers = "mine.csv"\n')
    assert load(path).fibers == str(tmp_path / "mine.csv")


@pytest.mark.parametrize(
    ("text", "meters"),
    # NIST SP 811, appendix B: the yard is 0.9144 m, the foot 0.3048 m, the inch 0.0254 m (from memory).
    [("2 yd", 1.8288), ("6ft", 1.8288), (" 72 in ", 1.8288), ("1.5 m", 1.5), ("40 cm", 0.4), ("5 mm", 0.005)],
)
def test_a_length_is_read(text, meters):
    assert length_of(text).m_as("meter") == pytest.approx(meters, rel=1e-14)


class TestReelsOfTheCommandLine:
    def test_a_loop(self):
        added = changed(Settings(), reels=("Porch reel = 72 in",))
        assert added.reels == (Reel(name="Porch reel", loop="72 in"),)

    @pytest.mark.parametrize("cross", ["x", "×", " x ", " × "])
    def test_height_and_arms(self, cross):
        added = changed(Settings(), reels=(f"Niddy={cross.join(('15 in', '14 in', '13 in'))}",))
        assert added.reels == (Reel(name="Niddy", height="15 in", arms=("14 in", "13 in")),)

    def test_they_come_after_those_of_the_file(self):
        before = Settings(reels=(Reel(name="Old", loop="2 yd"),))
        assert [reel.name for reel in changed(before, reels=("New=1 m", "Newer=2 m")).reels] == ["Old", "New", "Newer"]

    def test_the_same_name_replaces(self):
        before = Settings(
            reels=(Reel(name="Porch reel", loop="2 yd", tolerance="1 in"), Reel(name="Other", loop="1 m"))
        )
        after = changed(before, reels=("PORCH REEL=1.5 yd",))
        assert [(reel.name, reel.loop) for reel in after.reels] == [("Other", "1 m"), ("PORCH REEL", "1.5 yd")]

    def test_units_change_and_the_rest_stays(self):
        before = Settings(title="Mine", reels=(Reel(name="Old", loop="2 yd"),))
        assert changed(before, units="metric") == before.model_copy(update={"units": "metric"})
        assert changed(before, size="small") == before.model_copy(update={"size": "small"})

    def test_nothing_asked_changes_nothing(self):
        before = load(templates() / "metric.toml")
        assert changed(before) == before


def test_a_length_keeps_its_unit():
    assert length_of("72 in") == Quantity(72.0, "inch")
