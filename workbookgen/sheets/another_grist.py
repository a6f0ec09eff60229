"""Projects: a yarn of singles and bought thread that is planned with another grist than its design's.

The thread does not become finer with the yarn: it would seem to last for longer than it is.
"""

from collections.abc import Iterator

from workbookgen.language.fields import Result
from workbookgen.language.quantities import NUMBER, SHARE, TEX
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING
from workbookgen.reference import strands
from workbookgen.sheets.lookup import lookup
from workbookgen.sheets.plausible import ANOTHER_YARN

LITTLE, NEARLY_ALL = "0.000001", "0.999999"  # of a yarn's weight
# Of a strand's share in its design: formula text, and what the calculation takes.
TIMES = "IF(or_else(@_stage, 0) = 5, or_else(thread_times, 1), or_else(singles_times, 1))"
OF_SHARE = {"found": "@_of_design", "yarn": "planned", "stage": "@_stage", "thread": "thread_times", "singles": "singles_times"}


def beside_the_design() -> Iterator[Result]:
    """How far the grist in use is off the design's, and what that does to the shares of its strands."""
    yield lookup("design_tex", "Design's tex", "designs_tex", "design", TEX)
    yield lookup("design_thread", "Design's thread", "designs_bought_share", "design", SHARE, width=9)
    yield Result("off_design", "Finer than its design", "planned * design_tex / (1 - shrinkage_used) - 1", strands.off_the_design, SHARE, digits=0,
                 uses={"linear_density": "design_tex", "shrinkage": "shrinkage_used", "thread": "design_thread", "own": "grist", "sample": "sample_grist_yd_lb"},
                 only_if=f"AND(OR(given(grist), given(sample_grist_yd_lb)), design_thread > {LITTLE}, design_thread < {NEARLY_ALL})",
                 note="Of a design with bought thread, where a grist was typed or comes from a sample.")
    yield Result("thread_times", "Thread's share, times", "MIN(1 + off_design, MAX(1, 0.99 / design_thread))", strands.share_of_thread_times, NUMBER, width=14,
                 uses={"off": "off_design", "thread": "design_thread"}, note="A thread is as thick in a thin yarn as in a thick one.")
    yield Result("singles_times", "Singles' share, times", "(1 - thread_times * design_thread) / (1 - design_thread)", strands.share_of_singles_times, NUMBER, width=14,
                 uses={"times": "thread_times", "thread": "design_thread"})


def question() -> Rule:
    """A question about a grist that is far from the design's: one of the two may be a slip, or the design another's."""
    return Rule(f"AND(NOT(given(used)), ABS(ROUND(off_design, 9)) > {ANOTHER_YARN})",
                lambda values: values["used"] is None and abs(round(values["off_design"], 9)) > ANOTHER_YARN,
                f"{ASKING} Grist planned, or its sample's: over a quarter off what its design makes. The thread in it stays as it is. Look at both.")
