"""Questions about a sample, which projects plan with: measured another way than was meant, or in another unit."""

from workbookgen.language.rules import Rule
from workbookgen.sheets import plausible
from workbookgen.sheets.limits import K_AS_LAID

MOST_GROWN, MOST_SHRUNK, MOST_SPINNING_LOSS = -0.1, 0.25, 0.15  # of a sample's length in washing, of its fiber in spinning; common practice, no source


def of_a_sample() -> tuple[Rule, ...]:
    """What projects plan with, measured another way than was meant or typed in another unit.

    Its last digits do not decide.
    """
    return (
        plausible.thick_by_tex("Its weight", sentence=plausible.HEAVY),
        plausible.outside("k", K_AS_LAID.least, K_AS_LAID.most, "Wraps: far from what its length and weight suggest. Look at each unit, and the count on the ruler."),
        plausible.outside("take_up", plausible.LEAST_TAKE_UP, plausible.MOST_TAKE_UP,
                          "Singles used: far from the plied length. It is the length of one of the singles, not of all together."),
        plausible.outside("shrinkage", MOST_GROWN, MOST_SHRUNK, "After washing: far from what it was before. Were the two exchanged?"),
        plausible.twisted("singles_twist", "In singles of"),
        plausible.twisted("ply_twist", "In ply of"),
    )


def loses_much() -> Rule:
    """A sample of fiber that was not ready to be spun when it was weighed, or not all spun."""
    return plausible.outside("loss", 0, MOST_SPINNING_LOSS, "Yarn out: spinning usually loses 1 to 5%. "
                             "Was all the fiber spun, and ready to spin when weighed? Look at the unit, too.")
