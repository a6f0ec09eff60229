"""Projects: what its strands are, what their lots can still give, what it needs of each, and how sure that is.

What stands here in loops is the same for each of the four that a design may have: `strand.py` says what that is.
"""

from collections.abc import Iterator

from workbookgen.language.fields import Result
from workbookgen.language.quantities import LENGTH, MASS, NUMBER, SHARE, SQUARE_MASS
from workbookgen.language.repeated import as_typed
from workbookgen.reference import plying, sharing, strands, uncertainty, which_yarn
from workbookgen.sheets import another_grist
from workbookgen.sheets.strand import FIRST, OF_GRIST, OF_YARN, OTHERS, PARTS, SPUN_GRIST, STRANDS, Strand


def what_it_is_of() -> Iterator[Result]:
    """The components of its design, their shares and their lots."""
    for strand in STRANDS:
        yield strand.result("key", "Found as", f'design & " / {strand.number}"', plying.component_key, None, uses={}, fixed={"place": strand.number}, width=22)
        for key, label, column, more in (
            ("of_design", "Share", "share", {"unit": SHARE}),
            ("label", "Component", "label", {"width": 20}),
            ("found_of_lots" if strand.is_first else "of_lots", "Part of its lots", "part_of_lots", {"unit": SHARE}),
            ("picked_a", "Lot", "from_1", {"width": 20}),
            ("picked_b", "Lot", "from_2", {"width": 20}),
        ):
            yield strand.lookup(key, label, f"components_{column}", "@_key", among="components_key", **more)


def taken() -> Iterator[Result]:
    """What a finished piece took of each strand's first lot beyond what its skeins account for."""
    uses = {"rest": "used_rest", "share": "@_of_design"}
    yield FIRST.result("taken", "Taken by the piece", "used_rest * or_else(@_of_design, 1)", strands.taken_by_piece, MASS, uses=uses,
                       only_if="OR(given(@_of_design), NOT(given(design)))")
    for strand in OTHERS:
        yield strand.result("taken", "Taken by the piece", "used_rest * @_of_design", strands.taken_by_piece, MASS, uses=uses, leaves=("design",))


def strand_by_strand() -> Iterator[Result]:
    """Of each strand: its name and lots, what it has, what it needs, what remains, and how sure that is."""
    for strand in STRANDS:
        yield from _first_strand() if strand.is_first else _component(strand)
        yield from _its_lots(strand)
        yield from _needs_and_has(strand)
        yield from _how_sure(strand)


def _first_strand() -> Iterator[Result]:
    """The share, the lots and the name of the first strand, which may be the whole yarn."""
    yield FIRST.result("share", "Of the weight", f"or_else(@_of_design, 1) * {another_grist.TIMES}", strands.component_share, SHARE, uses=another_grist.OF_SHARE,
                       only_if="AND(planned > 0, OR(given(@_of_design), NOT(given(design))))")
    for letter, lot in (("a", "lot_1"), ("b", "lot_2")):
        picked = f"@_picked_{letter}"
        yield FIRST.result(f"lot_{letter}", "Lot", f"or_else({picked}, {lot})", strands.lot_in_use, None, uses={"picked": picked, "own": lot},
                           only_if=f"OR(given({picked}), AND(given({lot}), NOT(given(design))))", width=20)
    yield FIRST.result("of_lots", "Part of its lots", "or_else(@_found_of_lots, 1)", strands.part_in_use, SHARE,
                       uses={"share": "@_share", "found": "@_found_of_lots"}, only_if="@_share > 0")
    yield FIRST.result("lot_c", "Lot", "lot_3", which_yarn.of_one_lot, None, uses={"lot": "lot_3"}, only_if="NOT(given(design))", width=20)
    yield FIRST.result("name", "Strand", 'or_else(@_label, or_else(@_lot_a, "the yarn"))', strands.strand_name, None,
                       uses={"label": "@_label", "lot": "@_lot_a", "share": "@_share"}, only_if="@_share > 0", width=20)


def _component(strand: Strand) -> Iterator[Result]:
    """The share, the lots and the name of a further component of a design."""
    yield strand.result("share", "Of the weight", f"@_of_design * {another_grist.TIMES}", strands.component_share, SHARE, uses=another_grist.OF_SHARE, only_if="planned > 0",
                        leaves=("design",))
    for letter in strand.letters:
        yield strand.result(f"lot_{letter}", "Lot", f"@_picked_{letter}", as_typed, None, uses={"text": f"@_picked_{letter}"}, width=20)
    yield strand.result("name", "Strand", "@_label", as_typed, None, uses={"text": "@_label"}, width=20)


def _sum_over_lots(strand: Strand, *columns: str) -> str:
    """Formula text of the sum over a strand's lots of a column, or of the product of several."""
    def of_lot(lot: str) -> str:
        return " * ".join(f"sum_where({column}, fiber_listed, {lot})" for column in columns)

    return "(" + " + ".join(f"IF(given({lot}), {of_lot(lot)}, 0)" for lot in strand.lots) + ")"


def _its_lots(strand: Strand) -> Iterator[Result]:
    """What a strand's lots can still give."""
    uses, leaves = strand.of_lots | {"share": "@_share"}, strand.lots_left_out
    yield strand.lookup("stage", "Stage", "fiber_stage", "@_lot_a", NUMBER, digits=0)
    yield strand.result("bought", "Bought", "IF(or_else(@_stage, 0) = 5, 1, 0)", strands.is_bought, uses={"stage": "@_stage", "share": "@_share"},
                        only_if="@_share > 0", digits=0)
    yield strand.result("pool", "Lots give", f"{_sum_over_lots(strand, 'fiber_to_come')} * @_of_lots", sharing.pool, MASS, uses=uses | {"amounts": "fiber_to_come"}, leaves=leaves,
                        only_if="@_share > 0",
                        note="What its lots can still give, all projects together; its part, where other components of the yarn are spun from them, too.")
    yield strand.result("pool_square", "Lots ±²", f"{_sum_over_lots(strand, 'fiber_to_come_square')} * @_of_lots * @_of_lots", sharing.pool_square, SQUARE_MASS,
                        uses=uses | {"squares": "fiber_to_come_square"}, leaves=leaves, only_if="@_share > 0")
    yield strand.result("more", "More than reckoned",
                        "IF(@_pool * @_pool < 16 * @_pool_square, SQRT(@_pool_square) * EXP(0 - @_pool * @_pool / @_pool_square / 2) / SQRT(2 * PI()) "
                        "/ NORMSDIST(@_pool / SQRT(@_pool_square)), 0)",
                        sharing.more_than_reckoned, MASS, uses={"pool": "@_pool", "square": "@_pool_square"},
                        note="On average, of lots of which little is left, since it cannot be less than nothing.")


def _needs_and_has(strand: Strand) -> Iterator[Result]:
    """What a project needs of a strand, what other projects leave for it, how long that lasts, and what remains."""
    by_others = f"{_sum_over_lots(strand, 'fiber_to_come', 'fiber_promised')} * @_of_lots - @_needs"
    rest = f"@_pool + @_more - IF({by_others} > @_needs * 0.000001, {by_others}, 0)"
    yield strand.result("needs", "Needs", f"to_spin * @_share / ({SPUN_GRIST})", strands.component_needs, MASS, uses=OF_YARN, only_if="finer > 0",
                        note="What of it is still to be spun or plied in.")
    yield strand.result("claim", "Claim", "@_needs * @_of_lots / @_pool", sharing.claim, SHARE, uses={"needs": "@_needs", "pool": "@_pool", "part": "@_of_lots"},
                        only_if="@_pool > 0")
    yield strand.result("left", "Has", f"IF(@_needs > 0, {rest}, MAX(0, {rest}))", sharing.left_by_others, MASS,
                        uses=strand.of_lots | {"pool": "@_pool", "needs": "@_needs", "amounts": "fiber_to_come", "promised": "fiber_promised", "more": "@_more"},
                        leaves=strand.lots_left_out, note="What its lots can still give, once the other projects on them have theirs.")
    yield strand.result("over", "Over or short", "@_left - @_needs", strands.component_over, MASS, uses={"left": "@_left", "needs": "@_needs"}, note="Below zero it is short.")
    yield strand.result("used", "Share used", "@_needs / @_left", strands.share_used, SHARE, uses={"needs": "@_needs", "left": "@_left"}, only_if="@_left > 0", digits=0)
    yield strand.result("come", "Lasts for", f"@_left * {SPUN_GRIST} / @_share", strands.component_length, LENGTH, uses=OF_YARN | {"left": "@_left"}, only_if="finer > 0",
                        note="Length of yarn that it still is enough for.")
    yield strand.result("unused", "Left in the end", f"(@_come - come_least) * @_share / ({SPUN_GRIST})", strands.left_in_the_end, MASS,
                        uses=OF_YARN | {"come": "@_come", "least": "come_least"}, only_if="finer > 0", note="Once the scarcest component is used up.")


def _how_sure(strand: Strand) -> Iterator[Result]:
    """The uncertainty of what a strand has: of its lots, of what the others take of them, and of its grist."""
    of_all, own = "sum_where(fiber_needs_square, fiber_listed, @_lot_a)", "@_need_square / @_of_lots"
    square = "MAX(0, @_pool_square - @_more * (@_pool + @_more)) + IF(@_pool > 0, @_others_square + @_others_hand + or_else(@_apart, 0), 0) + POWER(@_pool * @_relative, 2)"
    skeins_to_come = "MAX(1, @_pool * planned / @_share / hold)"
    yield strand.result("need_square", "Need ±²", "POWER(@_share * doubt_need / planned, 2) / @_of_lots * IF(given(used), 0, 1)", sharing.need_square, SQUARE_MASS,
                        uses={"share": "@_share", "part": "@_of_lots"}, only_if="@_share > 0")
    yield strand.result("others_square", "Others ±²",
                        f"IF(given(@_lot_a), IF({of_all} - {own} > MAX({own} * 0.000001, 0.000000000000001), ({of_all} - {own}) * @_of_lots * @_of_lots, 0), 0)",
                        sharing.others_square, SQUARE_MASS,
                        uses={"own": "@_need_square", "names": "fiber_listed", "squares": "fiber_needs_square", "lot": "@_lot_a", "part": "@_of_lots"})
    yield strand.result("relative", "Grist ±",
                        f"IF(@_bought = 1, SQRT(POWER(bought_doubt, 2) + POWER(doubts_ball, 2) / {skeins_to_come}), "
                        f"SQRT(POWER(hand_doubt, 2) + POWER(doubts_variation, 2) / {skeins_to_come}))",
                        uncertainty.grist_uncertainty, SHARE, uses=OF_GRIST | {"pool": "@_pool", "share": "@_share"})
    yield strand.result("doubt", "Has ±", f"IF(@_needs > 0, SQRT({square}), MIN(@_left, SQRT({square})))", uncertainty.coming_uncertainty, MASS,
                        uses={key: f"@_{key}" for key in ("pool_square", "others_square", "others_hand", "apart", "pool", "relative", "needs", "left", "more")},
                        note="Standard uncertainty of what it has, its grist included.")
    length_doubt = f"@_doubt * {SPUN_GRIST} / @_share"
    if strand.is_first:
        yield strand.result("come_doubt", "Lasts ±", length_doubt, strands.length_in_doubt, LENGTH, uses=OF_YARN | {"doubt": "@_doubt"}, leaves=("before",), only_if="finer > 0")
    else:
        yield _counted_before(strand)
        yield strand.result("come_doubt", "Lasts ±", length_doubt, strands.length_in_doubt, LENGTH, uses=OF_YARN | {"doubt": "@_doubt", "before": "@_before"},
                            only_if="AND(finer > 0, blank_or(@_before, @_before < 0.5))")


def _counted_before(strand: Strand) -> Result:
    """The number of earlier components on the same lots; their uncertainty is one and counts once."""
    def lots_of(each: Strand) -> str:
        return each.text('or_else(@_lot_b, "")')

    before, after = STRANDS[: strand.number - 1], STRANDS[strand.number - 1 : 3]
    counted = (each.text(f"IF(given(@_lot_a), IF(AND(@_lot_a = part_{strand.number}_lot_a, {lots_of(each)} = {lots_of(strand)}), 1, 0), 0)") for each in before)
    names = (("lot", "lot_a"), ("other", "lot_b"))
    uses = {name: f"@_{lot}" for name, lot in names} | {f"{name}_{each.number}": each.text(f"@_{lot}") for each in before for name, lot in names}
    return strand.result("before", "Same lots before", " + ".join(counted), sharing.counted_before, uses=uses, digits=0,
                         leaves=tuple(f"{name}_{each.number}" for each in after for name, _ in names))


def unknown_lots() -> Iterator[Result]:
    """How many of each strand's lots are unknown while there is yarn to make, and how many in all."""
    for strand in STRANDS:
        for letter in strand.letters:
            yield strand.lookup(f"gives_{letter}", "Lot gives", "fiber_to_come", f"@_lot_{letter}", MASS)
        counted = " + ".join(f"IF(given(@_lot_{letter}), IF(given(@_gives_{letter}), 0, 1), 0)" for letter in strand.letters)
        uses = {f"{word}_{number}": f"@_{word}_{letter}" for number, letter in enumerate(strand.letters, start=1) for word in ("lot", "gives")}
        yield strand.result("unknown", "Lots not known", f"IF(to_spin > 0, {counted}, 0)", sharing.unknown_lots, uses=uses, digits=0,
                            leaves=() if strand.is_first else ("lot_3", "gives_3"))
    every = " + ".join(f"part_{part}_unknown" for part in PARTS)
    yield Result("lots_unknown", "Lots not known",
                 f"{every} + IF(AND(to_spin > 0, OR(given(design), given(lot_1), given(lot_2), given(lot_3)), NOT(given(lesser_4))), 1, 0)",
                 sharing.unknown_in_all, NUMBER, digits=0, uses={f"unknown_{part}": f"part_{part}_unknown" for part in PARTS} | {"lasts": "lesser_4"})


def shared_lots() -> Result:
    """The number of components whose lots serve other projects too."""
    def drawn(part: int) -> str:
        return f"IF(part_{part}_left < (part_{part}_pool + part_{part}_more) * 0.999999999, 1, 0)"

    others = "".join(f" + IF(AND(given(part_{part}_pool), given(part_{part}_more), given(part_{part}_left)), {drawn(part)}, 0)" for part in PARTS[1:])
    return Result("shared", "Shared with others", f"{drawn(1)}{others}", sharing.shared_components, NUMBER, digits=0,
                  uses={f"{parameter}_{part}": f"part_{part}_{parameter}" for part in PARTS for parameter in ("pool", "more", "left")})
