"""Settings: a TOML file in, one validated frozen model out. Everything that a guild may want to change is here."""

from workbookgen.settings.loading import changed, load, parse, templates
from workbookgen.settings.model import IN_SMALL, NEEDS, Colors, Leavable, Rows, Settings
from workbookgen.settings.reels import Reel

__all__ = ["IN_SMALL", "NEEDS", "Colors", "Leavable", "Reel", "Rows", "Settings"]
__all__ += ["changed", "load", "parse", "templates"]
