"""The command and files that were made to harm: a sentence, in bounded time and memory, and nothing written."""

import json
import os
import random
import re
import subprocess
import sys
from pathlib import Path

import pytest

from filled.hostile import DAMAGED, NO_PLANNERS, REACHING_OUT, no_ordinary_files, part, repacked
from long_run import LONG, SEED, drawn

SCRIPT = Path(__file__).with_name("limited.py")
pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="NOT TRIED: this system cannot fork")


def outcomes(asked: list[list[str]]) -> list[dict]:
    done = subprocess.run(
        [sys.executable, SCRIPT],
        input=json.dumps(asked),
        capture_output=True,
        text=True,
        timeout=900,
        env=os.environ | {"PYTHONPATH": os.pathsep.join(filter(None, sys.path))},
    )
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def readers(path: Path, target: Path) -> list[list[str]]:
    """Every command that reads a file, on this one."""
    return [
        ["check", str(path), "--scenarios", "0"],
        ["fields", str(path)],
        ["blank", str(path), "-o", str(target)],
        ["carry", str(path), "-o", str(target)],
        ["gather", str(path), "-o", str(target)],
    ]


def some_readers(path: Path, target: Path, number: int) -> list[list[str]]:
    """At a push one of the commands for each file, so that every command meets some of them; in a long run all.

    All go through one gate, which test_gate.py holds against each file.
    """
    every = readers(path, target)
    return every if LONG else [every[(SEED + number) % 5]]


def told_in_a_sentence(outcome: dict) -> bool:
    """Also within the bounds that the run was given; a run that broke one was ended by a signal."""
    return "Traceback" not in outcome["err"] and "our fault" not in outcome["err"] and outcome["code"] in (0, 1, 2)


@pytest.fixture(scope="module")
def content(little_file):
    return little_file.read_bytes()


def test_files_made_to_harm(content, tmp_path):
    """All of them in one go, since starting the command takes longest."""
    folder = tmp_path / "files"
    folder.mkdir()
    sentences: dict[Path, str] = {path: re.escape(text) for path, text in no_ordinary_files(folder).items()}
    for name, (make, sentence) in NO_PLANNERS.items():
        path = folder / f"{name}.xlsx"
        path.write_bytes(make(content))
        sentences[path] = sentence
    before = {path.name for path in folder.iterdir()}
    asked, target = [], tmp_path / "out.xlsx"
    for number, path in enumerate(sentences):
        asked += some_readers(path, target, number)
    assert {arguments[0] for arguments in asked} == {"check", "fields", "blank", "carry", "gather"}
    failed = {
        (command, file): outcome
        for (command, file, *_), outcome in zip(asked, outcomes(asked), strict=True)
        if not told_in_a_sentence(outcome)
        or outcome["code"] != 2
        or outcome["out"]
        or not (command == "gather" or re.match(re.escape(f"{file}: ") + sentences[Path(file)], outcome["err"]))
    }
    assert failed == {}
    assert {path.name for path in folder.iterdir()} == before and not target.exists()


def test_files_that_reach_out(content, tmp_path):
    """Checking them is refused. Their entries may be read, which fetches nothing."""
    asked, sentences = [], []
    for number, (name, (make, sentence)) in enumerate(REACHING_OUT.items()):
        path = tmp_path / f"{name}.xlsx"
        path.write_bytes(make(content))
        check, fields, blank, carry, _ = readers(path, tmp_path / f"out {name}.xlsx")
        # At a push one that is refused and one that is not, in turn; in a long run all four.
        refused, reading = (
            ([check, fields], [blank, carry])
            if LONG
            else ([(check, fields)[number % 2]], [(carry, blank)[(SEED + number) % 2]])
        )
        asked += refused + reading
        sentences += [sentence] * len(refused) + [None] * len(reading)
    for arguments, sentence, outcome in zip(asked, sentences, outcomes(asked), strict=True):
        assert told_in_a_sentence(outcome), (arguments, outcome)
        if sentence:
            assert outcome["code"] == 2 and re.match(re.escape(f"{arguments[1]}: ") + sentence, outcome["err"])
        elif "a million cells" in arguments[1] and arguments[0] == "carry":  # which would list each of them
            assert outcome["code"] == 2 and "where this planner has at most" in outcome["err"]
        else:
            assert outcome["code"] == 0, (arguments, outcome)


def test_names_that_point_anywhere(content, tmp_path):
    """Names of another workbook under ours: whole sheets, other sheets, broken, none."""
    ranges = [
        "Reels!$A$1:$XFD$1048576",
        "Reels!$A$7:$A$1048576",
        "Nowhere!$A$1",
        "#REF!",
        "Skeins!$A$1,Skeins!$C$3",
        "42",
        "",
        "'",
        "Reels!$XFE$1",
    ]
    asked = []
    for number, where in enumerate(ranges):
        path = tmp_path / f"{number}.xlsx"
        path.write_bytes(
            part(
                "xl/workbook.xml",
                lambda book, where=where: re.sub(
                    rb'(<definedName name="(?!_xlnm|origin)[^"]*"[^>]*>)[^<]*',
                    lambda found: found[1] + where.replace("'", "&apos;").encode(),
                    book,
                ),
            )(content)
        )
        commands = readers(path, tmp_path / f"out {number}.xlsx")
        # Carrying looks at every cell of a range, so only whole sheets and whole columns are carried; at a push one
        # command a file.
        asked += (
            [*commands[1:3], *(commands[3:4] if number < 2 else ())]
            if LONG
            else [commands[3 if number == SEED % 2 else 1 + (SEED + number) % 2]]
        )
    told = dict(zip(map(tuple, asked), outcomes(asked), strict=True))
    assert {arguments: outcome for arguments, outcome in told.items() if not told_in_a_sentence(outcome)} == {}


@pytest.mark.parametrize("kind", ["xlsx", pytest.param("ods", marks=pytest.mark.programs)])
def test_files_that_were_damaged_on_their_way(kind, content, little_file, tmp_path):
    """Cut off, or with some bytes changed, at random: never a failure of ours."""
    if kind == "ods":
        from workbookgen.engines.libreoffice import convert

        convert(little_file, tmp_path / "saved.ods", recalculate=False)
        content = (tmp_path / "saved.ods").read_bytes()
    chance, asked = random.Random(7), []
    for number in range(many := drawn(30, 150)):
        broken = bytearray(content)
        if number % 3 == 0:
            del broken[chance.randrange(len(broken)) :]
        else:
            for _ in range(chance.choice((1, 3, 50))):
                broken[chance.randrange(len(broken))] = chance.randrange(256)
        path = tmp_path / f"{number}.{kind}"
        path.write_bytes(broken)
        commands = readers(path, tmp_path / f"out {number}.xlsx")[:4]
        asked.append(commands[number % 4] if kind == "xlsx" else commands[2 + number % 2])
    told = list(zip(asked, outcomes(asked), strict=True))
    assert [each for each in told if not told_in_a_sentence(each[1])] == []
    assert sum(DAMAGED in outcome["err"] for _, outcome in told) > many * 2 // 3  # so it was they that were looked at


def test_parts_that_were_tampered_with(content, tmp_path):
    """A whole package in which the text of one part is another: what no check sum tells."""
    chance, asked, reached = random.Random(11), [], set()
    for number in range(many := drawn(15, 40)):
        chosen = chance.choice(("sheet1.xml", "sheet2.xml", "sheet7.xml", "sharedStrings.xml", "workbook.xml", ".rels"))

        def tampered(name: str, text: bytes, chosen=chosen, number=number) -> bytes:
            if not name.endswith(chosen):
                return text
            reached.add(number)
            broken = bytearray(text)
            for _ in range(chance.choice((1, 2, 10))):
                at = chance.randrange(len(broken))
                match chance.randrange(4):
                    case 0:
                        broken[at] = chance.randrange(256)
                    case 1:
                        del broken[at : at + chance.randrange(40)]
                    case 2:
                        broken[at:at] = bytes(broken[at : at + 40])
                    case 3:  # a number that is another
                        digits = [place for place, byte in enumerate(broken) if 48 <= byte <= 57]
                        broken[chance.choice(digits or [at])] = chance.choice(b"0123456789-.eE")
            return bytes(broken)

        path = tmp_path / f"{number}.xlsx"
        path.write_bytes(repacked(content, tampered))
        asked.append(readers(path, tmp_path / f"out {number}.xlsx")[number % 4])
    assert len(reached) == many
    told = list(zip(asked, outcomes(asked), strict=True))
    assert [each for each in told if not told_in_a_sentence(each[1])] == []
    assert sum(outcome["code"] == 2 for _, outcome in told) > many // 5
