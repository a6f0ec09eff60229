"""The length that each component should last for, as results of the sheet Projects."""

from workbookgen.language.fields import Result
from workbookgen.language.quantities import LENGTH, SQUARE_LENGTH
from workbookgen.reference import strands
from workbookgen.sheets.supply import PARTS

NEAR = tuple(f"part_{part}_near" for part in PARTS)


def to_last() -> tuple[Result, ...]:
    """Several components of one length will hardly all reach it, so the more there are, the longer each should be."""
    squares = " + ".join(f"or_else({near}, 0)" for near in NEAR)
    count = " + ".join(f"IF(given({near}), IF({near} > 0, 1, 0), 0)" for near in NEAR)
    below = f"IF({count} < 2, 0, IF({count} < 3, 0.398942280401433, IF({count} < 4, 0.48860251190292, 0.514687686148188))) * SQRT({squares})"
    return (
        *(
            Result(f"part_{part}_near", f"May run out, ±², {part}", f"IF(ROUND(part_{part}_come - part_{part}_come_doubt - come_least - more, 9) <= 0, "
                   f"MAX(POWER(part_{part}_come_doubt, 2) / 2, POWER(part_{part}_come_doubt, 2) - hand_shared * POWER(MAX(0, part_{part}_come), 2)), 0)",
                   strands.may_run_out, SQUARE_LENGTH,
                   uses={"come": f"part_{part}_come", "u_come": f"part_{part}_come_doubt", "least": "come_least", "shared": "hand_shared"})
            for part in PARTS
        ),
        Result("level", "Each to last for", f"come_least + IF(more > 0, more + MAX(0, {below} - (come_least - lesser_4)), 0)", strands.length_to_last, LENGTH,
               uses={"least": "come_least", "mean": "lesser_4"} | {f"near_{part}": f"part_{part}_near" for part in PARTS},
               note="Each component, to be as sure as you ask: the shortest of them ends the yarn."),
    )
