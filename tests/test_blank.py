"""`workbookgen blank`: what is to be handed on comes along, and nothing of the person who filled the planner in."""

import io
import re
import zipfile

import openpyxl
import pytest
from openpyxl.comments import Comment
from openpyxl.packaging.custom import StringProperty
from openpyxl.workbook.defined_name import DefinedName

from chapters import all_but
from planners import opened
from workbookgen import cli
from workbookgen.language.domains import Date, Number
from workbookgen.language.entries import starting_entries
from workbookgen.planner_file import read_planner

SECRET = "Zq9Secret"
NUMBER = 77_123.456_789  # a number that nobody else has


def run(*arguments) -> int:
    try:
        cli.main([str(each) for each in arguments])
        return 0
    except SystemExit as end:
        return end.code


def parts(path) -> dict[str, bytes]:
    with zipfile.ZipFile(path) as package:
        return {name: package.read(name) for name in package.namelist()}


def holding(path, *secrets: str) -> list[str]:
    """The parts that hold any of these, in their text or their name."""
    return [
        name
        for name, content in parts(path).items()
        if any(each.encode() in content or each in name for each in secrets)
    ]


def column(path, name: str) -> list:
    book = opened(path)
    ((sheet, area),) = book.defined_names[name].destinations
    cells = book[sheet][area.replace("$", "")]
    return [row[0].value for row in cells]


@pytest.fixture(scope="module")
def filled(little_file, little_layout, tmp_path_factory):
    """A planner with a secret in every place that a person or a program may write to."""
    path = tmp_path_factory.mktemp("filled") / "mine.xlsx"
    book = openpyxl.load_workbook(little_file)
    for placement in little_layout.inputs:
        if placement.key.startswith(("reels_", "guide_")):
            continue
        for row in range(placement.rows):
            cell = book[placement.sheet][placement.cell(row)]
            cell.value = NUMBER if isinstance(placement.field.domain, Number | Date) else f"{SECRET} {placement.key}"
    guide = {key: little_layout.placements[f"guide_{key}"] for key in ("name", "source")}
    book[guide["name"].sheet][guide["name"].cell(3)].value = f"{SECRET} fiber"
    book[guide["source"].sheet][guide["source"].cell(0)].value = f"{SECRET} source"
    reels = {
        key: little_layout.placements[f"reels_{key}"]
        for key in ("name", "rated", "cord", "turns", "tolerance", "height")
    }
    for key, row, value in (
        ("name", 0, None),
        ("rated", 0, None),
        ("tolerance", 0, None),  # the reel Clock reel was given away
        ("name", 2, "Reel by the door"),
        ("cord", 2, 600.125),
        ("turns", 2, 8.5),
        ("name", 3, "=2+2 is a name"),
        ("rated", 3, f"{SECRET} phone"),
        ("height", 3, "=2*15.5"),
    ):
        book["Reels"][reels[key].cell(row)].value = value
    book["Reels"][reels["name"].cell(3)].data_type = "s"
    for name in (f"{SECRET} sheet", "Plain"):
        book.create_sheet(name)["A1"] = f"{SECRET} cell"
    book["Skeins"]["ZZ900"] = f"{SECRET} margin"
    book["Skeins"]["A1"].comment = Comment(f"{SECRET} comment", f"{SECRET} author")
    book["Desk"]["B3"].hyperlink = f"http://example.com/{SECRET}"
    book["Desk"].oddHeader.left.text = f"{SECRET} header"
    book.defined_names[f"{SECRET}_name"] = DefinedName(f"{SECRET}_name", attr_text="Skeins!$A$1")
    for field in (
        "creator",
        "lastModifiedBy",
        "title",
        "subject",
        "keywords",
        "category",
        "description",
        "contentStatus",
    ):
        setattr(book.properties, field, f"{SECRET} {field}")
    book.custom_doc_props.append(StringProperty(name=f"{SECRET}Property", value=f"{SECRET} value"))
    stream = io.BytesIO()
    book.save(stream)
    with zipfile.ZipFile(stream) as before, zipfile.ZipFile(path, "w") as after:
        for name in before.namelist():
            content = before.read(name)
            if name == "docProps/app.xml":
                content = content.replace(
                    b"</Properties>",
                    f"<Company>{SECRET} company</Company><Manager>{SECRET}</Manager></Properties>".encode(),
                )
            after.writestr(name, content)
        after.writestr("customXml/item1.xml", f"<x>{SECRET}</x>")
        after.writestr("xl/printerSettings/printerSettings1.bin", f"{SECRET} printer".encode("utf-16-le"))
        after.writestr("docProps/thumbnail.jpeg", SECRET.encode())
        after.writestr(f"xl/media/{SECRET}.png", b"\x89PNG")
    return path


@pytest.fixture(scope="module")
def handed_on(filled, tmp_path_factory):
    path = tmp_path_factory.mktemp("blank") / "guild.xlsx"
    before = filled.read_bytes()
    assert run("blank", filled, "-o", path) == 0
    assert filled.read_bytes() == before
    return path


def test_the_secrets_were_everywhere(filled):
    """Else their absence below would say nothing."""
    assert (
        len(holding(filled, SECRET, repr(NUMBER))) > 20
        and SECRET.encode("utf-16-le") in parts(filled)["xl/printerSettings/printerSettings1.bin"]
    )


def test_no_secret_comes_along(handed_on, little_file):
    assert holding(handed_on, SECRET, SECRET.lower(), repr(NUMBER), "Clock reel") == []
    assert not any(
        SECRET.encode(form) in content for content in parts(handed_on).values() for form in ("utf-16-le", "utf-16-be")
    )
    properties = opened(handed_on).properties
    assert not (
        properties.creator
        or properties.lastModifiedBy
        or properties.subject
        or properties.keywords
        or properties.category
    )
    assert not re.search(r"customXml|custom\.xml|printerSettings|comments|thumbnail", " ".join(parts(handed_on)))
    drawings, of_ours = (
        {content for name, content in parts(path).items() if "media" in name} for path in (handed_on, little_file)
    )
    assert drawings <= of_ours, "only the planner's own drawings"


def test_the_reels_come_along_as_they_stand(handed_on):
    assert column(handed_on, "reels_name") == ["Niddy-noddy", "Reel by the door", "=2+2 is a name", None]
    assert column(handed_on, "reels_cord") == [None, 600.125, None, None] and column(handed_on, "reels_turns") == [
        None,
        8.5,
        None,
        None,
    ]
    assert column(handed_on, "reels_rated") == [None] * 4
    assert column(handed_on, "reels_arm_a")[0] == 14


def test_nothing_else_is_entered(handed_on, little_layout):
    start, book = starting_entries(little_layout.planner), opened(handed_on)
    for placement in little_layout.inputs:
        if not placement.key.startswith("reels_"):
            stands = tuple(book[placement.sheet][placement.cell(row)].value for row in range(placement.rows))
            assert stands == (
                start[placement.key] if not placement.key.startswith("guide_") else (None,) * placement.rows
            ), placement.key


def test_the_settings_are_the_same(handed_on, little):
    settings = read_planner(handed_on).settings
    assert settings.rows == little.rows and settings.units == little.units and settings.title == little.title
    assert [reel.name for reel in settings.reels] == ["Niddy-noddy"]


def test_it_is_a_planner_without_findings(handed_on, capsys):
    assert run("check", handed_on, "--scenarios", 0) == 0
    assert "Every formula cell was checked, and all agree." in capsys.readouterr().out


def test_the_guide_on_request(filled, tmp_path, capsys):
    assert run("blank", filled, "-o", tmp_path / "guild.xlsx", "--guide") == 0
    assert "3 reels and 4 lines of the guide" in capsys.readouterr().out
    assert column(tmp_path / "guild.xlsx", "guide_name") == column(filled, "guide_name")
    assert column(tmp_path / "guild.xlsx", "guide_source") == column(filled, "guide_source")


def test_an_empty_guide_is_told(filled, tmp_path, capsys):
    assert run("blank", filled, "-o", tmp_path / "guild.xlsx") == 0
    assert "Its guide is empty, since this planner was built with a fiber table of its own" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("asked", "told"), [([], ""), (["--guide"], "It has no guide, since this planner was built without one.\n")]
)
def test_a_planner_without_a_guide(built, small, tmp_path, capsys, asked, told):
    """Such as every small one, which guilds hand on most."""
    filled, path = built(small.model_copy(update={"leave_out": all_but("Counts")})), tmp_path / "guild.xlsx"
    assert run("blank", filled, "-o", path, *asked) == 0
    assert capsys.readouterr().out == f"{path} is ready: the settings and 2 reels, no other entries.\n{told}"
    assert column(path, "reels_name") == column(filled, "reels_name") and "guide_name" not in opened(path).defined_names


class TestWhereItGoes:
    def test_beside_the_filled_one(self, filled, tmp_path, monkeypatch, capsys):
        mine = tmp_path / "mine.xlsx"
        mine.write_bytes(filled.read_bytes())
        monkeypatch.chdir(tmp_path.parent)
        assert run("blank", mine) == 0
        assert {path.name for path in tmp_path.iterdir()} == {"mine.xlsx", "mine-blank.xlsx"}
        assert capsys.readouterr().out.startswith(f"{tmp_path / 'mine-blank.xlsx'} is ready: ")
        assert run("blank", mine) == 2 and "there is such a file already" in capsys.readouterr().err

    def test_never_over_the_filled_one(self, filled, capsys):
        before = filled.read_bytes()
        assert run("blank", filled, "-o", filled) == 2
        assert (
            capsys.readouterr().err
            == f"{filled}: this is the file that is read, and it is never changed. Choose another name after -o.\n"
        )
        assert filled.read_bytes() == before


@pytest.mark.programs
def test_from_a_file_that_libreoffice_saved(filled, handed_on, tmp_path):
    from workbookgen.engines.libreoffice import convert

    convert(filled, tmp_path / "saved.ods", recalculate=False)
    assert run("blank", tmp_path / "saved.ods", "-o", tmp_path / "guild.xlsx") == 0
    assert holding(tmp_path / "guild.xlsx", SECRET) == []
    for name in ("reels_name", "reels_cord", "reels_turns", "reels_rated", "reels_arm_a"):
        assert column(tmp_path / "guild.xlsx", name) == column(handed_on, name)
    # LibreOffice worked out the arithmetic that was typed as a height; the program before it had left no result.
    assert column(tmp_path / "guild.xlsx", "reels_height")[2] == 31 and column(handed_on, "reels_height")[2] is None
