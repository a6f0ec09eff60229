"""The reels that a new planner has, of any shape, measured in any unit of length.

What a reel may measure is declared here for the settings and the sheet Reels alike, so the planner accepts every reel
that the settings accept.
"""

import re
from typing import Annotated

from pydantic import Field, model_validator

from workbookgen.errors import SettingsError
from workbookgen.language.domains import Number
from workbookgen.language.quantities import LOOP
from workbookgen.settings.values import LengthText, Strict, length_of, text_of

# In the units of the sheet Reels: inches, or centimeters.
SPAN = Number(above=0, most=1000)
CORD = Number(above=0, most=100_000)
TURNS = Number(above=0, most=10_000)
TOLERANCE = Number(least=0, most=100)

NEEDS_CORD_AND_TURNS = "a cord measures a reel by its length and the turns that it makes; give both cord and turns"
NEEDS_A_LOOP = 'give the loop of the reel, for example loop = "72 in", or height and arms, or cord and turns'
HOW = 'write "Name=72 in", or height and both arms of a niddy-noddy: "Name=15 in x 14 in x 14 in".'


class Reel(Strict):
    """A reel, by its rated loop, by a cord wound on it, by a niddy-noddy's measures, or by several of these."""

    name: text_of(40)
    loop: LengthText | None = None
    cord: LengthText | None = None
    turns: Annotated[float, Field(gt=0, le=TURNS.most, allow_inf_nan=False, strict=True)] | None = None
    height: LengthText | None = None
    arms: tuple[LengthText, LengthText] | None = None
    tolerance: LengthText | None = None

    @model_validator(mode="after")
    def _has_a_loop(self):
        if (self.height is None) != (self.arms is None):
            raise ValueError("a niddy-noddy needs both height and arms")
        if (self.cord is None) != (self.turns is None):
            raise ValueError(NEEDS_CORD_AND_TURNS)
        if not (self.loop or self.cord or self.height):
            raise ValueError(NEEDS_A_LOOP)
        return self


def shown(text: str, units: str) -> float:
    """A length as the sheet Reels of this unit system shows it."""
    return float(length_of(text).to(LOOP.unit(units).pint).magnitude)


def too_large(reel: Reel, units: str) -> list[tuple[tuple[str | int, ...], str]]:
    """Measures of a reel that the sheet Reels would refuse: the key of each, and what the sheet accepts."""
    symbol = LOOP.unit(units).symbol
    arms = [(("arms", place), arm, SPAN) for place, arm in enumerate(reel.arms or ())]
    measures = [
        (("loop",), reel.loop, SPAN),
        (("cord",), reel.cord, CORD),
        (("height",), reel.height, SPAN),
        *arms,
        (("tolerance",), reel.tolerance, TOLERANCE),
    ]
    return [
        (key, f"{text} is {shown(text, units):,.6g} {symbol}, and the sheet Reels takes {domain.wanted(symbol)}")
        for key, text, domain in measures
        if text and not domain.accepts(shown(text, units))
    ]


def reel_from_words(text: str) -> dict:
    """A reel given on the command line: "Name=72 in", or "Name=15 in x 14 in x 14 in" for a niddy-noddy."""
    name, _, measures = text.partition("=")
    parts = [part.strip() for part in re.split(r"\s*[x×]\s*", measures) if part.strip()]
    if not name.strip() or len(parts) not in (1, 3):
        raise SettingsError.at(f'--reel "{text}"', HOW)
    if len(parts) == 1:
        return {"name": name.strip(), "loop": parts[0]}
    return {"name": name.strip(), "height": parts[0], "arms": parts[1:]}
