"""The whole file against what the generator writes: each tampering is told in its own words, and an honest file
gives none."""

import re
import shutil
import subprocess
import zipfile

import openpyxl
import pytest

from long_run import LONG
from planners import laid_out
from workbookgen.checking.check import FileToCheck, check
from workbookgen.checking.scenarios import scenario
from workbookgen.checking.whole_file import as_found, changes
from workbookgen.engines import Area, libreoffice
from workbookgen.engines.copies import sheet_parts, with_poison, with_values
from workbookgen.engines.libreoffice import convert
from workbookgen.errors import FileError
from workbookgen.ooxml.references import cell_name
from workbookgen.planner_file import read_planner

from .tampering import both, edited, replaced, sub

pytestmark = pytest.mark.usefixtures("worked_out_once")

OF_ALL_CHAPTERS = "settings" if LONG else "small"  # in fewer lines at a push
BOOK, STYLES = "xl/workbook.xml", "xl/styles.xml"


def told(path, layout) -> list[str]:
    return [str(each) for each in changes(layout, as_found(path))]


def checked(path) -> list[str]:
    planner = read_planner(path)
    report = check(FileToCheck(path, planner.layout, formulas=planner.formulas, whole=planner.whole), scenarios=0)
    return [str(each) for each in report.findings]


@pytest.fixture
def made(little_file, tmp_path):
    """A copy of the small planner, with parts of it edited; a part is named by its path, or by its sheet."""
    parts = sheet_parts(little_file)

    def making(**edits):
        known = {"book": BOOK, "styles": STYLES} | {sheet.replace(" ", "_"): part for sheet, part in parts.items()}
        return edited(
            little_file, tmp_path / "edited.xlsx", {known.get(name, name): edit for name, edit in edits.items()}
        )

    return making


def name(key: str, text: str):
    """A defined name that stands for something else."""
    return sub(rf'(<definedName name="{key}">)[^<]*', rf"\g<1>{text}")


def cell_of(layout, key: str, row: int = 0) -> str:
    return layout.placements[key].cell(row)


def row_above(path, at, text: str) -> int:
    """The row of a heading that stands above a column."""
    cells = as_found(path).sheets[at.sheet].cells
    return next(
        row for row in range(at.row - 1, 0, -1) if (row, at.column) in cells and cells[row, at.column].value == text
    )


class TestAnHonestFile:
    def test_as_it_was_built(self, little_file):
        assert checked(little_file) == []

    def test_filled_in(self, little, little_layout, built):
        assert checked(built(little, scenario(little_layout.planner, 3))) == []

    def test_by_a_library_that_keeps_no_results(self, little_file, tmp_path):
        openpyxl.load_workbook(little_file).save(tmp_path / "saved.xlsx")
        found = told(tmp_path / "saved.xlsx", read_planner(little_file).layout)
        assert found == []

    @pytest.mark.programs
    @pytest.mark.parametrize(
        ("way", "filled"), [("xlsx", True), ("ods", False)] + ([("xlsx", False), ("ods", True)] if LONG else [])
    )
    def test_saved_by_libreoffice(self, request, built, tmp_path, filled, way):
        """Of inputs that add up to what can be said: a head that is blank comes back from .ods as a stored 0."""
        settings = request.getfixturevalue(OF_ALL_CHAPTERS)
        source = built(settings, scenario(laid_out(settings).planner, 10, is_whole=True) if filled else None)
        if way == "ods":
            convert(source, tmp_path / "planner.ods", recalculate=False)
            source = tmp_path / "planner.ods"
        convert(source, tmp_path / "saved.xlsx", recalculate=False)
        assert as_found(tmp_path / "saved.xlsx").program.startswith("LibreOffice")
        assert checked(tmp_path / "saved.xlsx") == []

    @pytest.mark.programs
    def test_saved_where_people_write_3_comma_5(self, request, built, tmp_path, monkeypatch):
        """A program puts its country's marks into the numbers of a sentence; the same sentence it is all the same."""
        settings = request.getfixturevalue(OF_ALL_CHAPTERS)
        source = built(settings, scenario(laid_out(settings).planner, 10, is_whole=True))
        monkeypatch.setattr(libreoffice, "_PROFILE", libreoffice._PROFILE.replace("en-US", "de-DE"))
        convert(source, tmp_path / "saved.xlsx", recalculate=True)
        with zipfile.ZipFile(tmp_path / "saved.xlsx") as saved:
            texts = "".join(saved.read(part).decode() for part in saved.namelist() if "worksheets/sheet" in part)
        assert re.search(r"[0-9],[0-9] oz \(", texts)
        assert checked(tmp_path / "saved.xlsx") == []

    @pytest.mark.programs
    @pytest.mark.parametrize("filled", [False, True])
    def test_saved_by_gnumeric(self, request, built, tmp_path, filled):
        """Without --recalc it stores, for cells that look into other sheets, results from before it had read all."""
        settings = request.getfixturevalue(OF_ALL_CHAPTERS)
        source = built(settings, scenario(laid_out(settings).planner, 4) if filled else None)
        program = shutil.which("ssconvert") or pytest.skip("Gnumeric is not here")
        subprocess.run(
            [program, "--recalc", source, tmp_path / "saved.xlsx"], check=True, capture_output=True, timeout=120
        )
        assert as_found(tmp_path / "saved.xlsx").program == "gnumeric"
        assert checked(tmp_path / "saved.xlsx") == []

    def test_a_persons_own_name_and_notes_are_theirs(self, made):
        own = replaced("</definedNames>", '<definedName name="my_list">Skeins!$A$7:$A$9</definedName></definedNames>')
        assert checked(made(book=own)) == []


class TestNames:
    def test_two_swapped(self, made, little_layout):
        gross, tare = (
            little_layout.placements[key].range.replace("$", r"\$") for key in ("skeins_gross", "skeins_tare")
        )
        path = made(
            book=both(name("skeins_gross", tare.replace("\\", "")), name("skeins_tare", gross.replace("\\", "")))
        )
        [finding] = checked(path)
        assert finding.startswith("skeins_gross: this name and skeins_tare are swapped")

    def test_one_moved_by_a_row(self, made, little_layout):
        at = little_layout.placements["skeins_wraps"]
        moved = f"Skeins!${at.cell(0)[0]}${at.row + 1}:${at.cell(0)[0]}${at.row + at.rows}"
        [finding] = checked(made(book=name("skeins_wraps", moved)))
        assert (
            finding
            == f"skeins_wraps: this name stands for other cells than its own; expected {at.range.replace('$', '')!r}, got {moved.replace('$', '')!r}"
        )

    def test_one_removed(self, made):
        [finding] = checked(made(book=sub(r'<definedName name="skeins_wraps">[^<]*</definedName>', "")))
        assert finding.startswith("skeins_wraps: this name is gone; carrying and gathering find the entries by it")

    def test_the_one_that_makes_libreoffice_work_out_all_cells(self, made):
        [finding] = checked(
            made(book=sub(r'<definedName name="all_worked_out" localSheetId="1">[^<]*</definedName>', ""))
        )
        assert (
            "(all_worked_out): the sheet's name by which LibreOffice works out every cell is gone or changed" in finding
        )

    def test_one_that_only_looks_like_ours(self, made):
        [finding] = checked(
            made(
                book=replaced(
                    "</definedNames>", '<definedName name="skeins_wrapz">Skeins!$A$7</definedName></definedNames>'
                )
            )
        )
        assert finding.startswith("skeins_wrapz: a name like those of the planner, which the planner does not have")

    def test_one_of_a_sheet_that_hides_ours(self, made, little_layout):
        local = '<definedName name="skeins_wraps" localSheetId="0">Skeins!$A$7</definedName></definedNames>'
        [finding] = checked(made(book=replaced("</definedNames>", local)))
        first = little_layout.planner.sheets[0].name
        assert finding.startswith(f"skeins_wraps: on the sheet {first} this name stands for something of its own")

    def test_one_that_is_a_formula(self, made):
        [finding] = checked(made(book=name("skeins_wraps", "Skeins!$A$7:$A$12*2")))
        assert finding.startswith("skeins_wraps: this name stands for other cells than its own")

    @pytest.mark.parametrize(
        "text", ["'[other.xlsx]Skeins'!$A$7", "[1]Skeins!$A$7", "WEBSERVICE(&quot;http://example.org&quot;)"]
    )
    @pytest.mark.parametrize("key", ["skeins_wraps", "my_own"])
    def test_one_that_reaches_out_is_refused(self, made, key, text):
        edit = (
            name(key, text)
            if key != "my_own"
            else replaced("</definedNames>", f'<definedName name="my_own">{text}</definedName></definedNames>')
        )
        with pytest.raises(FileError, match=f"the name {key}: this formula reaches out of the planner"):
            checked(made(book=edit))


@pytest.mark.parametrize(
    ("edit", "words"),
    [
        (replaced("<calcPr ", '<calcPr calcMode="manual" '), "the workbook is set to calculate by hand"),
        (
            replaced("<calcPr ", '<calcPr fullPrecision="0" '),
            "the workbook is set to calculate with numbers as they are shown",
        ),
        (replaced("<calcPr ", '<calcPr iterate="1" '), "the workbook is set to repeat formulas that go in a circle"),
        (replaced("<workbookPr ", '<workbookPr date1904="1" '), "the workbook counts its days from 1904"),
        (replaced('<sheet name="Skeins" ', '<sheet name="Skeins" state="hidden" '), "Skeins: this sheet is hidden"),
        (replaced('<sheet name="Skeins" ', '<sheet name="Skeins" state="veryHidden" '), "Skeins: this sheet is hidden"),
    ],
)
def test_settings_of_the_workbook(made, edit, words):
    [finding] = checked(made(book=edit))
    assert finding.startswith(words)


class TestWords:
    @pytest.mark.parametrize("what", ["label", "unit"])
    def test_a_label_and_a_unit(self, little_file, little_layout, tmp_path, what):
        at = little_layout.placements["skeins_gross"]
        row = row_above(little_file, at, at.field.label if what == "label" else at.unit.symbol)
        with_values(little_file, tmp_path / "edited.xlsx", {Area("Skeins", row, at.column): [["lb"]]})
        [finding] = checked(tmp_path / "edited.xlsx")
        assert finding.startswith(
            f"Skeins!{at.cell(row - at.row)}: these words are not the planner's"
        ) and finding.endswith("got 'lb'")

    def test_a_label_that_was_emptied(self, little_file, little_layout, tmp_path):
        at = little_layout.placements["reels_rated"]
        with_values(
            little_file,
            tmp_path / "edited.xlsx",
            {Area("Reels", row_above(little_file, at, at.field.label), at.column): [[None]]},
        )
        [finding] = checked(tmp_path / "edited.xlsx")
        assert finding.endswith("got 'nothing'")

    def test_a_figure(self, little_file, little_layout, tmp_path):
        at = little_layout.placements["weaves_ends"]
        with_values(little_file, tmp_path / "edited.xlsx", {Area(at.sheet, at.row, at.column): [[77.0]]})
        findings = checked(tmp_path / "edited.xlsx")
        assert any(each.startswith(f"{at.sheet}!{at.cell(0)}: this figure is not the planner's") for each in findings)

    def test_what_a_person_typed_is_theirs(self, little_file, little_layout, tmp_path):
        at = little_layout.placements["reels_name"]
        with_values(
            little_file,
            tmp_path / "edited.xlsx",
            {Area("Reels", at.row + 2, 1): [["Porch reel"]], Area("Reels", at.row + 2, 40): [["mine"]]},
        )
        assert told(tmp_path / "edited.xlsx", little_layout) == []

    def test_a_link(self, made, little_file):
        sheet = next(each for each in as_found(little_file).sheets.values() if each.links)
        [finding] = checked(
            made(**{sheet.name.replace(" ", "_"): sub(r'(<hyperlink [^>]*location=")[^"]*', r"\g<1>Proofs!B99")})
        )
        assert (
            finding.startswith(f"{sheet.name}!")
            and "the link leads elsewhere; expected '#" in finding
            and finding.endswith("got '#Proofs!B99'")
        )


class TestWhatMayBeTyped:
    def test_nothing_is_asked_any_more(self, made, little_layout):
        findings = checked(made(Reels=sub("<dataValidations.*</dataValidations>", "")))
        at = little_layout.placements["reels_rated"]
        assert (
            f"Reels!{at.cell(0)}:{at.cell(at.rows - 1)} (reels_rated): the rule for what may be typed is gone; expected 'decimal between 0 1000', got 'nothing'"
            in findings
        )

    @pytest.mark.parametrize(
        ("edit", "words"),
        [
            (
                replaced("<formula2>1000</formula2>", "<formula2>9000</formula2>"),
                "other limits or choices are set for what may be typed",
            ),
            (
                replaced('error="Rated loop: type a number', 'error="Rated loop: type a figure'),
                "the warning about an entry that does not fit was changed",
            ),
            (
                replaced('prompt="What the maker says', 'prompt="Guess'),
                "the message shown while the cell is selected was changed",
            ),
            (replaced('errorStyle="warning" ', ""), "an entry that does not fit is treated differently"),
            (replaced('type="decimal"', 'type="whole"'), "another kind of entry is asked for"),
        ],
    )
    def test_something_else_is_asked(self, made, edit, words):
        findings = checked(made(Reels=edit))
        assert len(findings) == 1 and words in findings[0]

    def test_a_list_that_offers_other_cells(self, made, little_layout):
        source = little_layout.placements["reels_listed"].range
        findings = checked(made(Skeins=sub(r"<formula1>OFFSET\(Reels!\$[^<]*", "<formula1>Reels!$A$1:$A$3")))
        assert [each for each in findings if "(skeins_reel): other limits or choices" in each] == findings and len(
            findings
        ) == 1
        assert source.startswith("Reels!")

    def test_validations_that_were_merged_or_split_are_the_same(self, made, little_layout):
        at = little_layout.placements["reels_rated"]
        one, two, three, four = (at.cell(row) for row in range(4))

        def split(text):
            rule = re.search(rf'<dataValidation [^>]*sqref="{one}:{four}".*?</dataValidation>', text)[0]
            return text.replace(
                rule, "".join(rule.replace(f"{one}:{four}", cells) for cells in (f"{one}:{two} {four}", three))
            )

        assert checked(made(Reels=split)) == []

    def test_a_rule_that_reaches_out_is_refused(self, made, little_layout):
        cells = little_layout.placements["reels_rated"].area.replace("$", "")
        with pytest.raises(FileError, match=f"what may be typed into Reels, {cells}: this formula reaches out"):
            checked(made(Reels=replaced("<formula2>1000</formula2>", "<formula2>[1]Far!$A$1</formula2>")))


class TestLocksAndLooks:
    def test_a_formula_that_may_be_typed_over(self, made, little_layout):
        """No sheet is protected; what keeps a slip of the hand from a formula is that its cell refuses typing."""
        at = little_layout.placements["reels_loop"]
        cells = f"{at.cell(0)}:{at.cell(at.rows - 1)}"
        [finding] = checked(made(Reels=sub(rf'<dataValidation [^>]*sqref="{cells}".*?</dataValidation>', "")))
        assert finding.startswith(
            f"Reels!{cells} (reels_loop): the rule for what may be typed is gone; expected 'custom "
        ) and finding.endswith("got 'nothing'")

    def test_a_sheet_that_its_owner_protects(self, made):
        """What is typed stays unlocked, so nothing is kept from anybody."""
        assert (
            checked(
                made(
                    Reels=replaced("</sheetData>", '</sheetData><sheetProtection sheet="1" objects="1" scenarios="1"/>')
                )
            )
            == []
        )

    def test_a_formula_that_is_not_locked(self, little_file, little_layout, tmp_path):
        path = self.locked(little_file, tmp_path, little_layout, "reels_loop", False)
        [finding] = told(path, little_layout)
        assert finding.startswith(f"Reels!{cell_of(little_layout, 'reels_loop', 1)} (reels_loop): not locked")

    def test_an_input_that_is_locked(self, little_file, little_layout, tmp_path):
        path = self.locked(little_file, tmp_path, little_layout, "reels_rated", True)
        [finding] = told(path, little_layout)
        assert finding.startswith(
            f"Reels!{cell_of(little_layout, 'reels_rated', 1)} (reels_rated): locked, so that nothing can be typed"
        )

    @staticmethod
    def locked(source, folder, layout, key, is_locked):
        book = openpyxl.load_workbook(source)
        at = layout.placements[key]
        book[at.sheet][at.cell(1)].protection = openpyxl.styles.Protection(locked=is_locked)
        book.save(folder / "locked.xlsx")
        return folder / "locked.xlsx"

    @pytest.mark.parametrize(
        ("key", "code", "words"),
        [
            (
                "reels_relative",
                "0.0000",
                "its number format shows something else; expected 'percent with 2 decimals', got 'number with 4 decimals'",
            ),
            ("reels_loop", "0.00%", "its number format shows something else; expected 'number with "),
            ("reels_loop", "#,##0.00,", "got 'number with 2 decimals, divided by 1,000'"),
            ("reels_loop", '#,##0.00" yd"', "got 'number with 2 decimals, with \"yd\"'"),
            ("reels_loop", ";;;", "got 'nothing'"),
            ("reels_loop", "yyyy-mm-dd", "got 'date'"),
            ("reels_loop", "0", "its number format shows fewer digits"),
            (
                "reels_rated",
                "0%",
                "its number format shows something else; expected 'number', got 'percent with 0 decimals'",
            ),
            ("reels_name", "General", "its number format shows something else; expected 'text', got 'number'"),
            ("pace_start", "0", "expected 'date', got 'number with 0 decimals'"),
        ],
    )
    def test_a_number_format(self, little_file, little_layout, tmp_path, key, code, words):
        at = little_layout.placements[key]
        book = openpyxl.load_workbook(little_file)
        for row in range(at.rows):
            book[at.sheet][at.cell(row)].number_format = code
        book.save(tmp_path / "formatted.xlsx")
        [finding] = told(tmp_path / "formatted.xlsx", little_layout)
        cells = at.area.replace("$", "")
        assert finding.startswith(f"{at.sheet}!{cells} ({key}): ") and words in finding

    @pytest.mark.parametrize(
        "codes",
        [("#,##0.00_)", "[BLACK]#,##0.00", "#,##0.00;-#,##0.00", "[$-409]#,##0.00"), ("#,##0.000",)],
        ids=["shown alike", "more digits"],
    )
    def test_other_spellings_of_a_number_format(self, little_file, little_layout, tmp_path, codes):
        book = openpyxl.load_workbook(little_file)
        at = little_layout.placements["reels_loop"]
        for row, code in enumerate(codes):
            book[at.sheet][at.cell(row)].number_format = code
        book.save(tmp_path / "formatted.xlsx")
        assert told(tmp_path / "formatted.xlsx", little_layout) == []

    def test_a_row_that_is_hidden(self, made, little_layout):
        row = little_layout.placements["reels_rated"].row + 1
        [finding] = checked(made(Reels=replaced(f'<row r="{row}" ', f'<row r="{row}" hidden="1" ')))
        assert finding.startswith(f"Reels!{row}:{row}: rows are hidden here")

    def test_a_column_that_is_hidden(self, made, little_layout):
        at = little_layout.placements["reels_name"]
        letter = at.cell(0).rstrip("0123456789")
        [finding] = checked(made(Reels=sub(rf'<col min="{at.column}" max="{at.column}" ', r'\g<0>hidden="1" ')))
        assert finding.startswith(f"Reels!{letter}:{letter}: columns are hidden here")


class TestPictures:
    def test_a_chart_of_other_cells(self, made):
        [finding] = checked(
            made(**{"xl/charts/chart1.xml": sub(r"(<c:val>.*?<c:f>[^<]*\$)(\d+)(</c:f>)", r"\g<1>999\3")})
        )
        assert " draws from other cells; expected " in finding and "999" in finding

    def test_a_chart_that_is_gone(self, made, little_file):
        with zipfile.ZipFile(little_file) as package:
            links = next(part for part in package.namelist() if part.startswith("xl/drawings/_rels/"))
        [finding] = checked(made(**{links: sub("<Relationship [^>]*/>", "")}))
        assert finding.endswith("is gone, or has another title")

    def test_error_bars_of_other_cells(self, made):
        bars = r"(<c:plus>.*?<c:f>[^<]*\$)(\d+)(</c:f>)"
        [finding] = checked(made(**{"xl/charts/chart1.xml": sub(bars, r"\g<1>999\3")}))
        assert " draws from other cells; expected " in finding
        assert re.search(r"expected '.*, with error bars of \S+', got '.*, with error bars of \S+999 and \S+'", finding)

    def test_error_bars_that_a_program_lost(self, made):
        assert checked(made(**{"xl/charts/chart1.xml": sub("<c:errBars>.*?</c:errBars>", "")})) == []

    def test_a_chart_whose_sheet_no_longer_shows_it(self, made):
        [finding] = checked(made(Desk=sub("<drawing [^>]*/>", "")))
        assert finding.endswith("is gone, or has another title")


class TestMergedCells:
    SAID = "cells are merged here, so that only the first of them can be used"

    def merged(self, made, cells: str) -> list[str]:
        """What is found where these cells of the reels are merged, besides those that our own headings are in."""
        return checked(made(Reels=sub(r"(<mergeCells[^>]*>)", rf'\1<mergeCell ref="{cells}"/>')))

    def test_inputs_behind_the_first(self, made, little_layout):
        name, rated = little_layout.placements["reels_name"], little_layout.placements["reels_rated"]
        [finding] = self.merged(made, f"{name.cell(0)}:{rated.cell(0)}")
        assert finding.startswith(f"Reels!{name.cell(0)}:{rated.cell(0)}: {self.SAID}")

    def test_an_input_behind_its_heading(self, made, little_layout):
        at = little_layout.placements["reels_name"]
        heading = cell_name((at.row - 1, at.column))
        [finding] = self.merged(made, f"{heading}:{at.cell(0)}")
        assert self.SAID in finding

    def test_the_margin_may_be_merged(self, made, little_layout):
        # Below the last line, and from there to the right: nobody types there, and nothing is worked out.
        at = little_layout.placements["reels_name"]
        below = at.row + at.rows + 3
        assert self.merged(made, f"{cell_name((below, at.column))}:{cell_name((below, at.column + 2))}") == []


class TestConditionalFormats:
    NEW = '<conditionalFormatting sqref="A7:A9"><cfRule type="expression" priority="1"><formula>{}</formula></cfRule></conditionalFormatting>'

    def test_one_of_ours_is_gone(self, made, little_file):
        sheet = next(each for each in as_found(little_file).sheets.values() if each.rules)
        findings = checked(
            made(**{sheet.name.replace(" ", "_"): sub("<conditionalFormatting.*</conditionalFormatting>", "")})
        )
        assert findings and all(
            each.startswith(f"{sheet.name}!") and "a conditional format of the planner is gone" in each
            for each in findings
        )

    def test_a_new_one(self, made):
        edit = replaced("<dataValidations ", self.NEW.format("$B7&gt;1") + "<dataValidations ")
        [finding] = checked(made(Reels=edit))
        assert finding.startswith("Reels!A7: a conditional format is here that the planner does not have")

    def test_one_that_reaches_out_is_refused(self, made):
        edit = replaced("<dataValidations ", self.NEW.format("WEBSERVICE($B7)") + "<dataValidations ")
        with pytest.raises(FileError, match="the conditional format of Reels, A7:A9: this formula reaches out"):
            checked(made(Reels=edit))


class TestACellThatIsThereTwice:
    def test_in_its_row(self, made, little_layout):
        cell = cell_of(little_layout, "reels_rated")
        findings = checked(made(Reels=sub(rf'<c r="{cell}"([^>]*)>', rf'<c r="{cell}"><v>9</v></c><c r="{cell}"\1>')))
        assert [each for each in findings if each.startswith(f"Reels!{cell}: this cell is in the file twice")]

    def test_in_another_row(self, made, little_layout):
        findings = checked(
            made(
                Reels=replaced(
                    f'<c r="{cell_of(little_layout, "reels_rated", 1)}"',
                    f'<c r="{cell_of(little_layout, "reels_rated", 2)}"',
                )
            )
        )
        assert [
            each
            for each in findings
            if each.startswith(f"Reels!{cell_of(little_layout, 'reels_rated', 2)}: this cell is in the file twice")
        ]


class TestStoredResults:
    STALE = "the stored result is not what the inputs give"

    def test_one_is_another(self, made, little_layout):
        cell = cell_of(little_layout, "reels_hundred")
        [finding] = checked(made(Reels=sub(rf'(<c r="{cell}"[^>]*><f.*?<v>)[^<]*', r"\g<1>201")))
        assert finding.startswith(f"Reels!{cell} (reels_hundred): {self.STALE}") and finding.endswith(
            "expected 200.0, got 201.0"
        )

    def test_one_is_missing_among_others(self, made, little_layout):
        cell = cell_of(little_layout, "reels_hundred")
        [finding] = checked(made(Reels=sub(rf'(<c r="{cell}"[^>]*><f.*?)<v>[^<]*</v>', r"\1")))
        assert finding.endswith("expected 200.0, got 'nothing'")

    def test_an_error_where_nothing_is_wrong(self, made, little_layout):
        cell = cell_of(little_layout, "reels_hundred")
        [finding] = checked(made(Reels=sub(rf'<c r="{cell}"([^>]*)>(<f.*?<v>)[^<]*', rf'<c r="{cell}"\1 t="e">\2#N/A')))
        assert finding.endswith("got '#N/A'")

    def test_a_truth_where_a_number_belongs(self, made, little_layout):
        cell = cell_of(little_layout, "reels_own_line")  # 1, of the first line
        [finding] = checked(
            made(Reels=sub(rf'<c r="{cell}"([^>]*)>(<f.*?<v>)1\.0<', rf'<c r="{cell}"\1 t="b">\g<2>1<'))
        )
        assert finding.endswith("got True")

    def test_all_are_poisoned(self, little_file, tmp_path):
        with_poison(little_file, tmp_path / "poisoned.xlsx")
        findings = checked(tmp_path / "poisoned.xlsx")
        assert len(findings) > 100 and all(self.STALE in each for each in findings)

    def test_inputs_changed_by_a_program_that_does_not_calculate(self, little_file, little_layout, tmp_path):
        at = little_layout.placements["reels_rated"]
        with_values(little_file, tmp_path / "edited.xlsx", {Area("Reels", at.row, at.column): [[71.0]]})
        findings = checked(tmp_path / "edited.xlsx")
        assert findings and all(self.STALE in each for each in findings)

    def test_fewer_digits_are_no_other_result(self, made, little_layout):
        cell = cell_of(little_layout, "reels_hundred")
        assert checked(made(Reels=sub(rf'(<c r="{cell}"[^>]*><f.*?<v>)[^<]*', r"\g<1>200.0000001"))) == []


def test_a_planner_of_other_settings_is_held_against_its_own(little, little_layout, built):
    """The sheets are compared with those that the file's own settings give."""
    metric = little.model_copy(update={"units": "metric", "title": "Our & <their> yarn"})
    assert checked(built(metric)) == []
    assert told(built(metric), little_layout)  # and it is another planner than that of the usual ones
