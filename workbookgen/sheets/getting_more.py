"""Projects: how much more yarn to have, and what to get of each strand, to be as sure as one asks.

What is got besides is itself in doubt, and in part off together with what is there: the same hand spins it, the same
fiber loses as much. So the more one gets, the more of it is for that doubt.
"""

from collections.abc import Iterator

from workbookgen.language.fields import Result
from workbookgen.language.quantities import LENGTH, MASS, NUMBER, SHARE, SQUARE_LENGTH
from workbookgen.reference import balls, project, strands, uncertainty
from workbookgen.sheets.strand import OF_GRIST, OF_YARN, PARTS, SPUN_GRIST, STRANDS, Strand

NEAR = tuple(f"part_{part}_near" for part in PARTS)
# What its skeins have told, for each length in them; and what calculations take of how sure that is.
LEARNED = "IF(in_skeins > 0, learned / in_skeins, 0)"
OF_SKEINS = {"weight": "learned", "u_scale": "common_doubt", "skeins_doubt": "doubt_skeins"}


def to_be_surer() -> tuple[Result, ...]:
    """What to have, and what to get of each strand, to be as sure as one asks."""
    return (
        *_added(),
        *_anew(),
        Result("more_joint", "More, all together",
               "IF(spare >= doubts_z * doubt_spare, 0, IF(AND(given(added_with), given(added_square)), "
               "(SQRT(MAX(0, (spare - doubts_z * doubts_z * added_with) * (spare - doubts_z * doubts_z * added_with) "
               "- (1 - doubts_z * doubts_z * added_square) * (spare * spare - POWER(doubts_z * doubt_spare, 2)))) - (spare - doubts_z * doubts_z * added_with)) "
               "/ (1 - doubts_z * doubts_z * added_square), doubts_z * doubt_spare - spare))",
               uncertainty.more_for, LENGTH,
               uses={"uncertainty": "doubt_spare", "with_more": "added_with", "square_more": "added_square", "coverage": "doubts_z"},
               only_if="IF(given(added_square), given_and(added_with, doubts_z * doubts_z * added_square < 1), NOT(given(added_with)))",
               note="To be as sure as you ask on the sheet Sureness; it is itself uncertain, and off together with the rest."),
        Result("more", "More, to be sure", "IF(AND(given(anew), given(part_2_share)), IF(anew > 0, MIN(more_joint, anew), more_joint), more_joint)",
               uncertainty.no_more_than_anew, LENGTH, uses={"joint": "more_joint", "share": "part_2_share"},
               note="What to have besides, to be as sure as you ask on the sheet Sureness."),
        *_to_last(),
        *_to_buy(),
        Result("open_balls", "Balls to buy, open", "part_1_balls", project.while_open, NUMBER, uses={"amount": "part_1_balls"}, only_if="NOT(given(used))", digits=0,
               note="Empty for a finished piece."),
    )


def _added() -> Iterator[Result]:
    """The uncertainty of more of each strand and what it shares with what there is; then that of the yarn."""
    for strand in STRANDS:
        of_grist = "POWER(bought_doubt, 2), POWER(hand_doubt, 2)"  # where it is bought, and where it is spun
        of_more = {key: word for key, word in OF_GRIST.items() if key not in ("variation", "u_ball")}
        yield strand.lookup("kept_doubt", "More of it, kept ±", "fiber_kept_doubt", "@_lot_a", SHARE)
        yield strand.result("added_square", "More of it ±²", f"IF(@_bought = 1, {of_grist} + POWER(or_else(@_kept_doubt, 0), 2))",
                            uncertainty.strand_added_square, uses=of_more | {"u_kept": "@_kept_doubt"})
        yield strand.result("added_with", "More, shared",
                            f"IF(@_bought = 1, {of_grist}) * @_pool * {SPUN_GRIST} / @_share + POWER(IF(@_bought = 1, doubts_ball, doubts_variation), 2) * hold / 2",
                            uncertainty.strand_added_with, LENGTH, uses=OF_GRIST | {"pool": "@_pool", "share": "@_share"}, only_if="finer > 0")
    yield Result("added_square", "More ±²", f"{_largest('added_square')} + POWER({LEARNED} * doubt_skeins, 2) + POWER((1 - learned) * common_doubt, 2)",
                 uncertainty.added_square, NUMBER, uses=OF_SKEINS | {f"square_{part}": f"part_{part}_added_square" for part in PARTS},
                 note="Of more yarn, as a share of it, squared: its grist, and what its fiber keeps.")
    yield Result("added_with", "More, shared",
                 f"{_largest('added_with')} + doubt_skeins * doubt_skeins * (1 + {LEARNED} * MAX(0, lesser_4)) * {LEARNED} "
                 "+ MAX(0, lesser_4) * POWER((1 - learned) * common_doubt, 2)",
                 uncertainty.added_with, LENGTH, uses=OF_SKEINS | {"to_come": "lesser_4"} | {f"with_{part}": f"part_{part}_added_with" for part in PARTS},
                 note="More of the same yarn comes out finer or thicker together with what there is.")


def _anew() -> Iterator[Result]:
    """How much more to have of a yarn of several strands, if all that is to come were bought or spun anew."""
    largest = ", ".join(_known_to(part) for part in PARTS)
    yield Result("anew_square", "If all is got ±²",
                 f"MAX(part_1_added_square, {', '.join(f'IF(given(part_{part}_added_square), part_{part}_added_square, 0)' for part in PARTS[1:])}, {largest}) "
                 f"+ POWER({LEARNED} * doubt_skeins, 2) + POWER((1 - learned) * common_doubt, 2)", uncertainty.anew_square, NUMBER,
                 uses=OF_SKEINS | {f"{word}_{part}": f"part_{part}_{key}" for part in PARTS for word, key in
                                   (("square", "added_square"), ("come", "come"), ("u_come", "come_doubt"))})
    once, squared = "(1 - doubts_z * doubts_z * anew_square)", "doubts_z * doubts_z"
    half = f"(in_skeins - need - {squared} * (POWER(MAX(doubts_variation, doubts_ball), 2) * hold / 2 + {LEARNED} * doubt_skeins * doubt_skeins))"
    yield Result("anew", "More, if all is got",
                 f"(SQRT(MAX(0, {half} * {half} - {once} * ((in_skeins - need) * (in_skeins - need) - {squared} * (doubt_need * doubt_need + doubt_skeins * doubt_skeins)))) "
                 f"- {half}) / {once} - lesser_4", uncertainty.more_anew, LENGTH,
                 uses={"to_come": "lesser_4", "u_skeins": "doubt_skeins", "u_need": "doubt_need", "square": "anew_square", "coverage": "doubts_z", "weight": "learned",
                       "variation": "doubts_variation", "u_ball": "doubts_ball"},
                 only_if=f"{squared} * anew_square < 1", note="What is there is off together with what is added, and at most as far as if all were added.")


def _known_to(part: int) -> str:
    """Formula text of the squared relative uncertainty of what a strand lasts for; of the first one it is known."""
    come, doubt = f"part_{part}_come", f"part_{part}_come_doubt"
    square = f"IF({doubt} > 0, IF({come} > {doubt}, POWER({doubt} / {come}, 2), 1), 0)"
    return square if part == 1 else f"IF(AND(given({come}), given({doubt})), {square}, 0)"


def _largest(key: str) -> str:
    others = ", ".join(f"IF(given(part_{part}_{key}), part_{part}_{key}, 0)" for part in PARTS[1:])
    return f"MAX(part_1_{key}, {others})"


def _to_last() -> tuple[Result, ...]:
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


def _to_buy() -> Iterator[Result]:
    """How much more of each strand to get, in the form in which it is bought."""
    for strand in STRANDS:
        yield strand.lookup("kept", "Kept of the lot", "fiber_kept", "@_lot_a", SHARE)
        yield strand.lookup("form", "Bought as", "fiber_bought_as", "@_lot_a", width=14)
        yield strand.result("buy", "To buy", f"MAX(0, level - @_come) * @_share / ({SPUN_GRIST}) / or_else(@_kept, 1)", strands.to_buy, MASS,
                            uses=OF_YARN | {"come": "@_come", "kept": "@_kept"}, only_if="AND(finer > 0, blank_or(@_kept, @_kept > 0))",
                            note="In the form in which its lot was bought, to be as sure as you ask.")
        yield from _to_get(strand)
        yield strand.lookup("spool", "A spool weighs", "components_spool", "@_key", MASS, among="components_key")
        if strand.is_first:
            yield strand.result("ball", "A ball weighs", "or_else(@_spool, package / planned)", balls.ball_weighs, MASS, uses={"spool": "@_spool"},
                                only_if="OR(given(@_spool), AND(given(package), NOT(given(design))))")
        ball = "@_ball" if strand.is_first else "@_spool"
        yield strand.result("balls", "Balls to buy", f"ROUNDUP(ROUND(@_get / {ball}, 6), 0)", balls.balls_to_buy,
                            uses={"buy": "@_get", "ball": ball, "bought": "@_bought", "lot": "@_lot_a"},
                            only_if="OR(@_bought = 1, AND(NOT(given(@_lot_a)), NOT(given(design))))", digits=0)


def _to_get(strand: Strand) -> Iterator[Result]:
    """What to get of a strand with those of the same bought thread, told once, by the name of the thread."""
    shared, uses = "@_bought = 1, @_of_lots < 0.999999", {"bought": "@_bought", "part": "@_of_lots"}
    before, of_before, leaves = ("0", {}, ("before",)) if strand.is_first else ("or_else(@_before, 0)", {"before": "@_before"}, ())
    yield strand.result("get", "To get", f"@_buy * IF(AND({shared}), IF({before} > 0.5, 0, 1 / @_of_lots), 1)", balls.to_get, MASS,
                        uses=uses | {"buy": "@_buy"} | of_before, leaves=leaves,
                        note="With the other components of the same bought thread: whole spools are counted for all of them.")
    yield strand.result("got_as", "To get, name", f"IF(AND({shared}, given(@_lot_a)), @_lot_a, @_name)", balls.got_as, None,
                        uses=uses | {"name": "@_name", "lot": "@_lot_a"}, width=20)
