"""Settings that no reader would come to the end of are told in a sentence."""

import os

import pytest

from workbookgen.errors import SettingsError
from workbookgen.settings import load, parse


@pytest.mark.parametrize(
    "text", [f"rows = {'9' * 5000}", f"reels = {'[' * 3000}{']' * 3000}"], ids=["digits", "brackets"]
)
def test_endless_values(text):
    with pytest.raises(SettingsError, match="a number or a list that no setting has"):
        parse(text, "guild.toml")


def test_a_pipe_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "guild.toml")
    with pytest.raises(SettingsError, match="not an ordinary file"):
        load(tmp_path / "guild.toml")
