"""Leaving chapters out: every leavable one alone, all together, and mixtures, against the planner of all chapters.

Whatever is left out, the rest must compute as the full planner does when nothing is typed in the
chapters that are gone, and nothing may be left that could never show anything.
"""

import re
from collections import defaultdict
from contextlib import ExitStack
from functools import cache
from typing import get_args

import numpy as np
import pytest

from long_run import LONG
from workbookgen.book.placement import Layout
from workbookgen.book.write import write
from workbookgen.build import layout_of
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.driving import read, set_inputs
from workbookgen.checking.scenarios import scenario
from workbookgen.engines import engine
from workbookgen.errors import DescriptionError
from workbookgen.language.automatic import MESSAGE
from workbookgen.language.domains import Choice
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Block
from workbookgen.language.planner import Planner
from workbookgen.language.views import Chart, Prose
from workbookgen.planner_file import read_planner
from workbookgen.settings import NEEDS, Leavable, Settings
from workbookgen.sheets import planner as describing
from workbookgen.sheets.naming import said_with, said_without

LEAVABLE = get_args(Leavable)
STAYING = ("Desk", "Measure", "Sureness", "Reels", "Fiber", "Skeins", "Methods", "Proofs", "Lists", "Made with")


def closed(*names: str) -> tuple[str, ...]:
    """The names, and the chapters that are nothing without one of them."""
    chosen = set(names)
    while more := {chapter for chapter, others in NEEDS.items() if chosen & set(others)} - chosen:
        chosen |= more
    return tuple(name for name in LEAVABLE if name in chosen)


def drawn(seed: int) -> tuple[str, ...]:
    draw = np.random.default_rng(seed)
    return closed(*draw.choice(LEAVABLE, int(draw.integers(2, 10)), replace=False))


ALONE = sorted({closed(name) for name in LEAVABLE})
CASES = [*ALONE, LEAVABLE, *sorted({drawn(seed) for seed in range(1, 11 if LONG else 5)})]
SOME = CASES if LONG else [LEAVABLE, *CASES[::9]]  # where each takes seconds
each_case = pytest.mark.parametrize("names", CASES, ids=lambda names: "+".join(names) if len(names) < 12 else f"{len(names)} chapters")


some_cases = pytest.mark.parametrize("names", SOME, ids=lambda names: "+".join(names) if len(names) < 12 else f"{len(names)} chapters")


@pytest.fixture(scope="module")
def written() -> dict[tuple[str, ...], dict[str, set[str]]]:
    """Chapters that are left out -> each text of such a planner -> the same text, with chapters by their own names."""
    return {}


@pytest.fixture(scope="module")
def without(small, written):
    """The layout of a small planner without these chapters; each is laid out once."""

    @cache
    def laid_out(names: tuple[str, ...]) -> Layout:
        written[names] = defaultdict(set)

        def noted(text: str, sheet_of, here: str) -> str:
            said = said_with(text, sheet_of, here)
            written[names][said].add(text)
            return said

        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(describing, "said_with", noted)
            return layout_of(Settings(**dict(small) | {"leave_out": names}))

    return laid_out


def chapters(planner: Planner) -> list[str]:
    return [chapter.name for sheet in planner.sheets for chapter in sheet.chapters]


def chapter_of(planner: Planner, holder) -> str:
    """The chapter in which a block or a table is."""
    return next(chapter.name for sheet in planner.sheets for chapter in sheet.chapters if any(each.key == holder.key for each in chapter.holders))


def test_every_chapter_stays_or_can_go(small_layout):
    assert sorted((*STAYING, *LEAVABLE)) == sorted(chapters(small_layout.planner))


def test_what_needs_what_is_what_the_fields_say(small_layout):
    """A needed input chooses from the chapter, or all results that its own exists for are from there (said by hand)."""
    planner = small_layout.planner
    chosen = {
        (chapter_of(planner, placement.holder), chapter_of(planner, small_layout.placements[placement.field.domain.of].holder))
        for placement in small_layout.inputs
        if isinstance(placement.field.domain, Choice) and placement.field.needed
    }
    by_hand = {("Yarn", "Components"), ("Time", "Figures"), ("Time", "Projects"), ("Project", "Projects")}
    told = {(chapter, other) for chapter, others in NEEDS.items() for other in others}
    assert told == {(chapter, other) for chapter, other in chosen if other in LEAVABLE} | by_hand


@each_case
def test_the_others_stay_in_their_order(names, without, small_layout):
    assert chapters(without(names).planner) == [name for name in chapters(small_layout.planner) if name not in names]


@each_case
def test_a_sheet_goes_with_its_last_chapter(names, without, small_layout):
    left = [sheet.name for sheet in small_layout.planner.sheets if any(chapter.name not in names for chapter in sheet.chapters)]
    assert [sheet.name for sheet in without(names).planner.sheets] == left
    assert names != LEAVABLE or left == ["Desk", "Measure", "Project", "Skeins", "Reels", "Fiber", "Reference"]


@some_cases
def test_it_checks(names, without, tmp_path):
    layout = without(names)
    target = tmp_path / "planner.xlsx"
    target.write_bytes(write(layout, {each.key: (None,) * each.rows for each in layout.inputs}, {}))
    planner = read_planner(target)
    assert planner.settings.leave_out == names
    report = check(FileToCheck(target, planner.layout, formulas=planner.formulas), scenarios=3)
    assert report.findings == []
    assert report.formula_cells_checked == report.formula_cells == sum(each.rows for each in layout.formulas)


@pytest.fixture(scope="module")
def evaluated(tmp_path_factory):
    """What an engine shows in every formula cell of a planner with these entries; each planner is opened once."""
    with ExitStack() as opened:

        @cache
        def session_of(layout: Layout):
            path = tmp_path_factory.mktemp("evaluated") / "planner.xlsx"
            path.write_bytes(write(layout, {each.key: (None,) * each.rows for each in layout.inputs}, {}))
            return opened.enter_context(engine("formualizer").open(path))

        def shown(layout: Layout, entries) -> dict:
            session = session_of(layout)
            set_inputs(session, layout, entries)
            session.evaluate()
            return read(session, layout.formulas)

        yield shown


@pytest.fixture(scope="module")
def in_full(small_layout, evaluated):
    """The entries of a seed in the full planner, and the keys of all that shows something then."""

    @cache
    def of_seed(seed: int) -> tuple[dict, frozenset[str]]:
        entries = scenario(small_layout.planner, seed, is_whole=seed % 2 == 1)
        return entries, frozenset(key for key, column in evaluated(small_layout, entries).items() if any(value is not None for value in column))

    return of_seed


def with_gone_inputs_blank(small_layout: Layout, layout: Layout, seed: int) -> dict:
    entries = scenario(small_layout.planner, seed, is_whole=seed % 2 == 1)
    return {key: column if key in layout.placements else (None,) * len(column) for key, column in entries.items()}


@some_cases
def test_the_rest_computes_as_if_nothing_were_typed_there(names, without, small_layout, evaluated):
    """In the full planner, with the inputs that are gone blank: what stays is equal, what is gone shows nothing, a
    sum of nothing, or says so."""
    layout = without(names)
    entries = with_gone_inputs_blank(small_layout, layout, seed=len(names))
    full = evaluated(small_layout, entries)
    rest = evaluated(layout, {key: column for key, column in entries.items() if key in layout.placements})
    kept = [key for key, each in layout.placements.items() if each.formulas and isinstance(each.field, Result) and not key.startswith(("proofs", "start"))]
    assert len(kept) > 50
    assert {key: rest[key] for key in kept} == {key: full[key] for key in kept}
    gone = [each for each in small_layout.formulas if isinstance(each.field, Result) and each.key not in layout.placements
            and chapter_of(small_layout.planner, each.holder) not in names]
    assert {each.key: full[each.key] for each in gone if set(full[each.key]) - {None, 0.0, "nothing"}} == {}


@pytest.mark.parametrize("names", ALONE if LONG else ALONE[::10], ids="+".join)
def test_nothing_is_left_that_never_shows_anything(names, without, small_layout, evaluated, in_full):
    """A result that some drawn planner fills does so in a planner that lacks the sheet, too."""
    layout = without(names)
    never = {each.key for each in layout.formulas if isinstance(each.field, Result)}
    never_in_full = {each.key for each in small_layout.formulas}
    for seed in range(120):
        entries, full = in_full(seed)
        rest = evaluated(layout, {key: column for key, column in entries.items() if key in layout.placements})
        never -= {key for key in never if any(value is not None for value in rest[key])}
        never_in_full -= full
        if not never - never_in_full:
            break
    assert never - never_in_full == set()


def test_what_comes_of_one_or_another_goes_when_both_are_gone(without, small_layout):
    """A share lost in carding or combing comes from the guide alone; a yield from the guide or from samples."""
    for names, gone, stays in (
        (("Guide",), "fiber_expected_preparation", "fiber_expected_yield"),
        (("Samples",), "fiber_sampled_yield", "fiber_expected_yield"),
        (("Guide", "Samples"), "fiber_expected_yield", "fiber_prepared"),
    ):
        left = without(closed(*names)).placements
        assert gone in small_layout.placements and gone not in left and stays in left


def read_by_results(layout: Layout) -> set[str]:
    """The inputs that some result reads."""
    blocks = layout.planner.blocks.values()
    return {layout.planner.meaning(block, word).key for block in blocks for result in block.results for word in result.words}


# What one only writes down, to read it again.
RECORDS = {
    "fiber_note", "pieces_part", "colors_name", "recipe_name", "fiber_apart_until", "fiber_place",
    "skeins_place", "skeins_wheel",
}


@each_case
def test_no_input_is_left_that_nothing_reads(names, without, small_layout):
    layout = without(names)
    unread = {each.key for each in small_layout.inputs} - read_by_results(small_layout)
    assert unread == RECORDS | {key for key in unread if key.startswith("guide_")}
    assert {each.key for each in layout.inputs} - read_by_results(layout) <= unread


def said(planner: Planner) -> list[str]:
    """What a planner says of itself in its blocks and to be read, cautions and the desk's title aside."""
    texts = []
    for sheet in planner.sheets:
        texts += [] if sheet.name == "Desk" else [sheet.about]
        for block in (holder for holder in sheet.holders if isinstance(holder, Block)):
            texts += [block.about, *(group.heading for group in block.groups), *(rule.sentence for rule in block.rules)]
            texts += [each.help if isinstance(each, Input) else each.note for each in block.fields]
        for section in sheet.sections:
            texts += [section.title, section.aside, getattr(section, "about", "")]
            texts += section.sentences if isinstance(section, Prose) and not section.is_caution else ()
    return [text for text in texts if text]


@pytest.fixture
def as_written(without, written):
    """What a planner without these chapters says, as it is written."""
    return lambda names: [text for told in said(without(names).planner) for text in written[names][told]]


@each_case
def test_no_text_sends_one_to_a_chapter_that_is_not_there(names, as_written):
    pattern = re.compile(rf"\bsheets? (?:\w+ and )?(?:{'|'.join(names)})\b|:  ?(?:{'|'.join(names)})\b|\b(?:for|on|of|with|at the pace of) (?:{'|'.join(names)})\b")
    assert [text for text in as_written(names) if pattern.search(text)] == []


def test_the_full_planner_does_send_one_there(as_written):
    """Or the test above would pass on nothing."""
    texts = as_written(())
    mentions = {name for name in LEAVABLE for text in texts if re.search(rf"\bsheets? (?:\w+ and )?{name}\b|:  ?{name}\b|for {name}\b", text)}
    assert {"Guide", "Samples", "Counts", "Figures", "Weaving", "Time"} <= mentions


@each_case
def test_a_chapter_is_called_by_the_sheet_on_which_it_stands(names, without):
    planner = without(names).planner
    told = {name for text in said(planner) for pair in re.findall(r"\bsheets? ([A-Z]\w+)(?: (?:and|or) ([A-Z]\w+))?", text) for name in pair if name}
    assert "Skeins" in told and told <= {sheet.name for sheet in planner.sheets}


def cautions(planner: Planner) -> set[str]:
    return {sentence for sheet in planner.sheets for section in sheet.sections if isinstance(section, Prose) and section.is_caution for sentence in section.sentences}


@each_case
def test_cautions_never_go(names, without, small_layout):
    assert cautions(without(names).planner) == cautions(small_layout.planner)
    assert len(cautions(small_layout.planner)) > 8


def test_cautions_of_a_left_out_chapter_stand_on_the_first_sheet(without, small_layout):
    def on_the_desk(planner: Planner) -> list[str]:
        assert planner.sheets[0].name == "Desk"
        return [sentence for section in planner.sheets[0].sections if isinstance(section, Prose) and section.is_caution for sentence in section.sentences]

    added = [sentence for sentence in on_the_desk(without(("Scouring",)).planner) if sentence not in on_the_desk(small_layout.planner)]
    assert added and added[0].startswith("Scalds: ")


def charts_of(chapter) -> list[Chart]:
    """Those that are sections of their own, and those on the rows of a listing."""
    found = [each for band in chapter.view for section in band.sections for each in (section, getattr(section, "chart", None))] if isinstance(chapter.view, tuple) else []
    return [each for each in found if isinstance(each, Chart)]


@each_case
def test_pictures_without_numbers_go(names, without, small_layout):
    """A picture goes with what it shows, or if nothing of it is left; what stays draws only what is there."""
    planner = without(names).planner
    full = [chart for sheet in small_layout.planner.sheets for chapter in sheet.chapters if chapter.name not in names for chart in charts_of(chapter)]
    kept = [chart for sheet in planner.sheets for chapter in sheet.chapters for chart in charts_of(chapter)]

    def has_fallen(keys) -> bool:
        return bool(set(keys) & planner.absent.keys())

    stay = [each.about for each in full if not has_fallen(each.categories) and not all(has_fallen((*series.keys, *series.whisker)) for series in each.series)]
    assert [each.about for each in kept] == stay
    assert not any(has_fallen(each.drawn) for each in kept)


@each_case
def test_methods_and_proofs_speak_of_what_is_there(names, without):
    layout = without(names)
    table = layout.planner.tables["methods"]
    places = {place.strip().partition(":")[0] for value in table.by_key["where"].values for place in value.split(";")}
    assert places and places <= {sheet.name for sheet in layout.planner.sheets}
    assert layout.planner.proofs and all(proof.result in layout.placements for proof in layout.planner.proofs)


def test_proofs_of_left_out_results_go(without, small_layout):
    gone = {proof.number for proof in small_layout.planner.proofs} - {proof.number for proof in without(("Twist",)).planner.proofs}
    assert gone and gone == {proof.number for proof in small_layout.planner.proofs if chapter_of(small_layout.planner, small_layout.placements[proof.result].holder) == "Twist"}


def test_the_first_page_counts_the_proofs_that_are_there(without):
    for names in ((), ("Twist",)):
        planner = without(names).planner
        _, trust = planner.by_key["start_agreeing"]
        [table] = planner.proof_tables.values()
        checks, *of_each_kind = (int(number.replace(",", "")) for number in re.findall(r"\d[\d,]*(?= )", trust.note))
        assert checks == table.rows == sum(of_each_kind) and of_each_kind[0] == sum(proof.provenance == "read" for proof in planner.proofs)


def test_a_message_is_there_for_every_block_with_inputs(without):
    layout = without(LEAVABLE)
    assert {each.sheet for each in layout.placements.values() if each.field == MESSAGE} == {"Measure", "Project", "Reels", "Fiber", "Skeins"}


@pytest.mark.programs
def test_libreoffice_agrees(without, tmp_path):
    layout = without(closed("Samples", "Guide", "Counts", "Projects"))
    target = tmp_path / "planner.xlsx"
    target.write_bytes(write(layout, {each.key: (None,) * each.rows for each in layout.inputs}, {}))
    report = check(FileToCheck(target, layout), ("libreoffice",), scenarios=3)
    assert report.findings == []


@pytest.mark.parametrize(
    ("text", "names", "left"),
    [
        ("From the sheets Knitting and Weaving.", ("Weaving",), "From the sheet Knitting."),
        ("State it; leave it empty to use the sheet Knitting.", ("Knitting",), "State it."),
        ("From the sheet Guide; its usual losses are expected.", ("Guide",), "Its usual losses are expected."),
        ("See the sheet Guide.", ("Guide",), ""),
        ("Share of 15%. With K of the sheet Counts.", ("Counts",), "Share of 15%."),
        ("Time is money. See the sheet Guide.", ("Time",), "Time is money. See the sheet Guide."),
        ("The sheets Knitting and Weaving.", ("Knitting", "Weaving"), ""),
        ("", ("Guide",), ""),
    ],
)
def test_what_is_said_without_a_sheet(text, names, left):
    assert said_without(text, names) == left


SHEET_OF = {"Guide": "Fleece", "Knitting": "Need", "Weaving": "Need", "Skeins": "Skeins"}


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("From the guide on the sheet Guide.", "From the guide on the sheet Fleece."),
        ("From the sheets Knitting and Weaving.", "From the sheet Need."),
        ("From the sheets Knitting and Guide; see the sheet Skeins.", "From the sheets Need and Fleece; see the sheet Skeins."),
        ("The Guide knows.", "The Guide knows."),
        ("", ""),
    ],
)
def test_a_text_is_said_with_the_names_of_sheets(text, said):
    assert said_with(text, SHEET_OF) == said


def test_a_text_calls_the_sheet_on_which_it_stands_this_sheet():
    said = said_with("From the guide on the sheet Guide; see the sheet Skeins.", SHEET_OF, here="Fleece")
    assert said == "From the guide on this sheet; see the sheet Skeins."


@pytest.mark.parametrize("text", ["From the sheet Reelz.", "See the sheets Skeins and Reelz.", "By the guide on the sheet Guide; see the sheet Reelz."])
def test_a_text_that_names_a_sheet_that_is_not_there_is_refused(text):
    with pytest.raises(DescriptionError) as refused:
        said_with(text, SHEET_OF, here="Fiber")
    assert str(refused.value) == f"sheet Fiber: the text {text!r} names the sheet Reelz, which is not there."


def test_a_note_of_ones_own_stays_as_it_was_typed():
    """It may speak of what is left out, of a sheet that no planner has, and begin as it likes."""
    note = "yards only, please. Ask about the sheet Guide; the sheet Reelz is a joke."
    left = describing.planner(Settings(note=note, size="small"))
    assert note in [sentence for section in left.sheets[0].sections for sentence in getattr(section, "sentences", ())]


def test_no_share_is_asked_for_of_a_fiber_that_cannot_be_chosen(without):
    """The names of a lot's other fibers come from the guide."""
    left = without(closed("Guide")).placements
    assert not {"fiber_also_share", "fiber_third_share"} & set(left)
