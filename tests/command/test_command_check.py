"""`check`: what it says, in words and for programs, and what it ends with."""

import io
import json
import sys
import zipfile
from contextlib import redirect_stdout
from pathlib import Path

import openpyxl
import pytest

from workbookgen import cli
from workbookgen.planner_file import read_planner

from .conftest import first_cell

ENGINE_KEYS = {"name", "version", "declared", "read", "agreed", "refused"}
REPORT_KEYS = {
    "engines",
    "scenarios",
    "formula_cells",
    "formula_cells_checked",
    "comparisons",
    "worst_relative_difference",
    "findings",
    "seconds",
}


@pytest.fixture(scope="module")
def report(planner):
    """What a check in two engines prints."""
    printed = io.StringIO()
    with redirect_stdout(printed):
        cli.main(
            ["check", str(planner), "--json", "--scenarios", "2", "--engine", "formualizer", "--engine", "ironcalc"]
        )
    return json.loads(printed.getvalue())


class TestAGoodPlanner:
    def test_the_keys_that_programs_rely_on(self, report):
        assert REPORT_KEYS <= set(report)
        assert all(ENGINE_KEYS <= set(each) for each in report["engines"])

    def test_every_formula_cell_of_the_file_was_checked_in_every_engine(self, report, planner):
        book = openpyxl.load_workbook(planner)
        cells = sum(cell.data_type == "f" for sheet in book for row in sheet.iter_rows() for cell in row)
        assert report["formula_cells"] == report["formula_cells_checked"] == cells > 300
        for each in report["engines"]:
            assert (each["declared"], each["read"], each["agreed"], each["refused"]) == (cells, cells, cells, 0)
        assert report["comparisons"] == cells * 3 * 2  # what stands there and two drawn, in two engines

    def test_engines_are_named_with_their_versions(self, report):
        from importlib.metadata import version

        assert [(each["name"], each["version"]) for each in report["engines"]] == [
            (name, version(name)) for name in ("formualizer", "ironcalc")
        ]

    def test_nothing_was_found(self, report):
        assert report["findings"] == [] and report["scenarios"] == 3
        assert 0 <= report["worst_relative_difference"] <= 1e-9 and 0 < report["seconds"]


def test_one_set_is_no_sets(run, planner):
    assert " formula cells, 1 set of inputs, " in run("check", planner, "--scenarios", 0).out


def test_in_plain_words(run, planner):
    code, out, err = run("check", planner, "--scenarios", 1)
    assert (code, err) == (0, "")
    first, second, last = out.splitlines()
    assert first.startswith(f"{planner}: ") and "formula cells, 2 sets of inputs" in first
    assert second.startswith("  formualizer ") and "formula cells agree with the reference library" in second
    assert last == "Every formula cell was checked, and all agree."


def test_what_stands_in_the_planner_is_always_tried_and_an_engine_named_twice_once(run, planner):
    report = run(
        "check", planner, "--json", "--scenarios", 0, "--engine", "formualizer", "--engine", "formualizer"
    ).json
    assert report["scenarios"] == 1
    assert [each["name"] for each in report["engines"]] == ["formualizer"]


def test_the_seed_decides_what_is_drawn(run, planner):
    def told(seed: int) -> dict:
        report = run("check", planner, "--json", "--scenarios", 1, "--seed", seed).json
        del report["seconds"]
        return report

    assert told(1) == told(1)
    assert told(1) != told(5)  # other inputs leave other cells blank, and round otherwise


def test_the_planner_is_alone_and_is_not_touched(run, planner, tmp_path):
    """It needs none of the files it was built from: its fiber table is in its guide."""
    alone = tmp_path / "alone.xlsx"
    alone.write_bytes(planner.read_bytes())
    before = alone.stat().st_mtime_ns
    assert read_planner(alone).settings.fibers == ""
    assert run("check", alone, "--scenarios", 0).code == 0
    assert alone.read_bytes() == planner.read_bytes() and alone.stat().st_mtime_ns == before
    assert list(tmp_path.iterdir()) == [alone]


def test_arithmetic_in_an_input_is_an_entry(run, altered):
    """The help of the weight says so: a pound is 16 ounces, you may type =6.5*16."""
    path = altered(fiber_name="Clover", fiber_state="raw fleece", fiber_weight="=6.5*16")
    report = run("check", path, "--json", "--scenarios", 1).json
    assert report["findings"] == []
    assert report["formula_cells"] == report["formula_cells_checked"]


@pytest.mark.programs
def test_a_planner_that_libreoffice_saved_is_still_right(run, planner, tmp_path):
    from workbookgen.engines.libreoffice import convert

    convert(planner, tmp_path / "saved.xlsx", recalculate=False)
    outcome = run(
        "check", tmp_path / "saved.xlsx", "--json", "--scenarios", 1, "--engine", "formualizer", "--engine", "ironcalc"
    )
    assert outcome.code == 0 and outcome.json["findings"] == []


class TestAnAlteredPlanner:
    def test_one_formula_changed(self, run, planner, altered):
        formula = first_cell(openpyxl.load_workbook(planner), "reels_hundred").value
        path = altered(reels_hundred=formula.replace("100", "101", 1))
        outcome = run("check", path, "--json", "--scenarios", 1)
        assert (outcome.code, outcome.err) == (1, "")
        found = outcome.json["findings"]
        # What the cell is worked out a second time is not changed, so that the log and the desk tell of it.
        assert {each["key"] for each in found} == {"reels_hundred", "reels_spoiled", "look_reels"}
        assert {"the formula was changed", "the reference library disagrees"} <= {each["reason"] for each in found}
        wrong = next(
            each
            for each in found
            if each["reason"] == "the reference library disagrees" and each["key"] == "reels_hundred"
        )
        assert wrong["inputs"]["rated"] == 72 and wrong["engine"] == "formualizer"
        assert wrong["expected"] == pytest.approx(200) and wrong["got"] == pytest.approx(202)
        (engine,) = outcome.json["engines"]
        assert engine["agreed"] == engine["declared"] - 3 and engine["refused"] == 3

    def test_in_plain_words(self, run, altered):
        code, out, _ = run("check", altered(reels_hundred="=42"), "--scenarios", 0)
        assert code == 1 and out.splitlines()[-1] == "4 findings."
        assert "(reels_hundred): the formula was changed; expected" in out and "got '=42'" in out
        assert (
            "(reels_hundred) in formualizer: the reference library disagrees; expected 200.0, got 42.0; with name = 'Clock reel'"
            in out
        )

    @pytest.mark.parametrize(("inch", "code"), [(" 0.0253999999999999999992", 0), ("0.0254001", 1)])
    def test_other_spellings_of_a_number_are_no_change(self, run, planner, altered, inch, code):
        """Programs write numbers back with fewer or more digits than they read."""
        formula = first_cell(openpyxl.load_workbook(planner), "reels_hundred").value
        assert "0.0254" in formula
        outcome = run("check", altered(reels_hundred=formula.replace("0.0254", inch)), "--json", "--scenarios", 0)
        assert outcome.code == code

    def test_a_number_typed_over_a_formula(self, run, altered):
        """Even the right one: it would not follow the inputs."""
        outcome = run("check", altered(reels_hundred=200), "--json", "--scenarios", 0)
        assert outcome.code == 1
        assert ("the formula is gone", "reels_hundred") in {
            (each["reason"], each["key"]) for each in outcome.json["findings"]
        }

    def test_a_formula_that_does_the_same_in_other_words_is_told(self, run, altered):
        path = altered(start_examples="=COUNTA(proofs_verdict)+0")
        assert run("check", path, "--scenarios", 0).code == 1

    def test_a_formula_where_none_belongs(self, run, planner, tmp_path):
        book = openpyxl.load_workbook(planner)
        book["Desk"]["ZZ1"] = "=1+1"
        book.save(tmp_path / "more.xlsx")
        outcome = run("check", tmp_path / "more.xlsx", "--json", "--scenarios", 0)
        (finding,) = outcome.json["findings"]
        assert outcome.code == 1 and finding["cell"] == "Desk!ZZ1"
        assert finding["reason"] == "this cell holds a formula that no reference checks"


class TestWhatIsNoPlanner:
    def told(self, run, path: Path) -> str:
        for command in ("check", "fields"):
            code, out, err = run(command, path)
            assert (code, out) == (2, "") and err.count("\n") == 1 and err.startswith(f"{path}: ")
        return err.removeprefix(f"{path}: ").strip()

    def test_a_missing_file(self, run, tmp_path):
        assert self.told(run, tmp_path / "none.xlsx") == "there is no such file."

    def test_a_folder(self, run, tmp_path):
        assert self.told(run, tmp_path) == "this is a folder; give the planner in it."

    @pytest.mark.parametrize(
        ("content", "sentence"),
        [
            (b"", "this file is empty."),
            (b"wraps,weight\n104,4.02\n", "this is a text file (such as .csv), whatever its name says."),
            (b"PK\x03\x04 and then nothing", "this file is damaged, or was cut off on its way here."),
        ],
    )
    def test_no_workbook(self, run, tmp_path, content, sentence):
        (tmp_path / "mine.xlsx").write_bytes(content)
        assert self.told(run, tmp_path / "mine.xlsx").startswith(sentence)

    @pytest.mark.parametrize("kept", [0.1, 0.5, 0.99])
    def test_a_truncated_file(self, run, planner, tmp_path, kept):
        content = planner.read_bytes()
        (tmp_path / "cut.xlsx").write_bytes(content[: int(len(content) * kept)])
        assert self.told(run, tmp_path / "cut.xlsx").startswith("this file is damaged, or was cut off on its way here.")

    def test_another_zip_file(self, run, tmp_path):
        with zipfile.ZipFile(tmp_path / "mine.xlsx", "w") as package:
            package.writestr("letter.txt", "Dear all")
        assert self.told(run, tmp_path / "mine.xlsx").startswith("this is a .zip archive, not an .xlsx workbook.")

    def test_a_broken_sheet(self, run, planner, tmp_path):
        with zipfile.ZipFile(planner) as before, zipfile.ZipFile(tmp_path / "mine.xlsx", "w") as after:
            for entry in before.infolist():
                content = before.read(entry)
                after.writestr(entry, content[:-40] if entry.filename.endswith("sheet2.xml") else content)
        assert "this file cannot be read as an .xlsx workbook" in self.told(run, tmp_path / "mine.xlsx")

    def test_a_foreign_workbook(self, run, tmp_path):
        openpyxl.Workbook().save(tmp_path / "mine.xlsx")
        assert self.told(run, tmp_path / "mine.xlsx") == "this is not one of our planners: it has no sheet Reference."

    def test_settings_overwritten(self, run, altered):
        path = altered(origin_line="my own notes")
        assert self.told(run, path).startswith("the settings on the sheet Reference were overwritten")

    @pytest.mark.parametrize(("name", "typed"), [("mine.xlsx", "{}"), ("my planner.xlsx", '"{}"')])
    def test_a_sheet_removed(self, run, planner, tmp_path, name, typed):
        """The command that carries the planner over is told as it is typed, a name with blanks in quotation marks."""
        path = tmp_path / name
        book = openpyxl.load_workbook(planner)
        del book["Skeins"]
        book.save(path)
        code, out, err = run("check", path, "--scenarios", 0)
        assert (code, out) == (2, "")
        assert err.startswith(f"{path}: it has no sheet Skeins; its sheets are Desk, ")
        carrying = f"workbookgen carry {typed.format(path)} -o newer.xlsx"
        assert f"give it its name again and save; or carry the planner over, and use the new one: {carrying}" in err


def test_settings_in_the_file_that_cannot_be(run, planner, tmp_path):
    book = openpyxl.load_workbook(planner)
    line = next(cell for row in book["Reference"].iter_rows() for cell in row if str(cell.value).startswith("units"))
    line.value = 'units = "imperial"'
    book.save(tmp_path / "mine.xlsx")
    code, _, err = run("check", tmp_path / "mine.xlsx")
    assert code == 2 and err.startswith(
        f"{tmp_path / 'mine.xlsx'}, sheet Reference, line {line.row}, units: write one of 'us'"
    )


class TestEngines:
    def test_an_unknown_engine(self, run, planner):
        code, out, err = run("check", planner, "--engine", "abacus")
        assert (code, out) == (2, "")
        assert (
            err
            == "abacus: There is no engine of this name. Choose from formualizer, ironcalc, libreoffice, gnumeric.\n"
        )

    @pytest.mark.parametrize(
        ("name", "remedy"), [("libreoffice", "libreoffice-calc"), ("gnumeric", "package gnumeric")]
    )
    def test_a_program_that_is_not_there(self, run, planner, monkeypatch, name, remedy):
        monkeypatch.setenv("PATH", "")
        code, out, err = run("check", planner, "--engine", name)
        assert (code, out) == (3, "") and err.startswith(f"{name}: ") and remedy in err

    @pytest.mark.parametrize("name", ["formualizer", "ironcalc"])
    def test_a_package_that_is_not_there(self, run, planner, monkeypatch, name):
        monkeypatch.setitem(sys.modules, name, None)
        code, out, err = run("check", planner, "--engine", name)
        assert (code, out) == (3, "") and f"pip install {name}" in err

    def test_an_engine_that_gives_up_in_a_way_of_its_own(self, run, planner, monkeypatch):
        """IronCalc's Rust code may panic, which Python's Exception does not cover."""
        import ironcalc

        class PanicException(BaseException):
            pass

        def panic(*_):
            raise PanicException("index out of bounds")

        monkeypatch.setattr(ironcalc, "load_from_xlsx", panic)
        code, out, err = run("check", planner, "--scenarios", 0, "--engine", "ironcalc")
        assert (code, out) == (2, "")
        assert "IronCalc cannot read this file as an .xlsx workbook (index out of bounds). Save it once more" in err

    def test_one_missing_among_others_is_never_agreement(self, run, planner, monkeypatch):
        monkeypatch.setenv("PATH", "")
        code, out, _ = run("check", planner, "--json", "--engine", "formualizer", "--engine", "gnumeric")
        assert (code, out) == (3, "")

    def test_an_empty_path_in_a_process_of_its_own(self, run_apart, planner):
        code, out, err = run_apart("check", planner, "--engine", "libreoffice", PATH="")
        assert (code, out) == (3, "") and err.count("\n") == 1


@pytest.mark.parametrize("arguments", [("--scenarios", "-1"), ("--scenarios", "many"), ("--seed", "x"), ("--engine",)])
def test_options_that_make_no_sense(run, planner, arguments):
    code, out, err = run("check", planner, *arguments)
    assert (code, out) == (2, "") and "Error: " in err and arguments[0] in err
