"""What is particular to Gnumeric: on a machine of another language it speaks English all the same."""

import os
from subprocess import CompletedProcess

from workbookgen.engines import engine, gnumeric


def test_it_is_asked_for_points_in_numbers_and_for_its_version_in_english(monkeypatch):
    """On a German machine it would write 3,5 into a text, and its version as »1.12.55«."""
    monkeypatch.setenv("LC_ALL", "de_DE.UTF-8")
    monkeypatch.setenv("LANGUAGE", "de")
    monkeypatch.setattr(gnumeric, "_program", lambda: "ssconvert")
    asked = {}

    def run(command, env, **_):
        asked.update(env)
        return CompletedProcess(command, 0, stdout="ssconvert version '1.12.55'\n")

    monkeypatch.setattr(gnumeric.subprocess, "run", run)
    assert engine("gnumeric").version() == "1.12.55"
    assert (asked["LC_ALL"], asked["LANGUAGE"], asked["PATH"]) == ("C.UTF-8", "en", os.environ["PATH"])
