"""What a project's yarn is spun or plied from, strand by strand, and how sure it is: results of the sheet Projects.

A plain yarn is one strand that draws on the project's own lots. A design has up to four, its components, each with
lots of its own, found by the design's name and their number in it. What stands here in loops is the same for each of
the four. The keys of the planner call a strand a part.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from workbookgen.language.fields import Result
from workbookgen.language.quantities import LENGTH, MASS, NUMBER, SHARE, SQUARE_MASS, Kind
from workbookgen.language.repeated import as_typed
from workbookgen.reference import balls, plying, project, sharing, strands, uncertainty, which_yarn
from workbookgen.sheets import another_grist
from workbookgen.sheets.lookup import lookup

PARTS = (1, 2, 3, 4)


@dataclass(frozen=True)
class Strand:
    """One of the strands. In the texts of its results @ stands for it: @_needs is part_1_needs in the first."""

    number: int

    @property
    def is_first(self) -> bool:
        """Whether it may be all of a plain yarn, spun from the project's own lots."""
        return self.number == 1

    @property
    def letters(self) -> tuple[str, ...]:
        """The letters of its lots: a project lists three, a component of a design two."""
        return ("a", "b", "c") if self.is_first else ("a", "b")

    @property
    def lots(self) -> tuple[str, ...]:
        """The words for its lots."""
        return tuple(f"@_lot_{letter}" for letter in self.letters)

    @property
    def of_lots(self) -> dict[str, str]:
        """What calculations about its lots take: a column of names, its lots, and its part of them."""
        return {"names": "fiber_listed", "part": "@_of_lots"} | {f"lot_{number}": lot for number, lot in enumerate(self.lots, start=1)}

    @property
    def lots_left_out(self) -> tuple[str, ...]:
        """The parameter for a third lot, where there is none."""
        return () if self.is_first else ("lot_3",)

    def text(self, text: str) -> str:
        return text.replace("@", f"part_{self.number}")

    def result(self, key: str, label: str, formula: str, reference: Callable, unit: Kind | None = NUMBER, *, uses: Mapping[str, str], only_if: str = "", **more) -> Result:
        """A result about it."""
        uses = {parameter: self.text(word) for parameter, word in uses.items()}
        return Result(self.text(f"@_{key}"), f"{label}, {self.number}", self.text(formula), reference, unit, uses=uses, only_if=self.text(only_if), **more)

    def lookup(self, key: str, label: str, column: str, chosen: str, unit: Kind | None = None, **more) -> Result:
        """A result about it that is looked up in another log."""
        return lookup(self.text(f"@_{key}"), f"{label}, {self.number}", column, self.text(chosen), unit, **more)


STRANDS = tuple(map(Strand, PARTS))
FIRST, *OTHERS = STRANDS


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


# The grist as it comes out: what is spun is finer or thicker than planned, what is bought is not.
SPUN_GRIST = "planned * IF(@_bought = 1, 1, finer)"
OF_YARN = {"share": "@_share", "bought": "@_bought"}
OF_GRIST = {
    "bought": "@_bought", "u_hand": "hand_doubt", "variation": "doubts_variation", "u_batch": "bought_doubt", "u_ball": "doubts_ball",
}


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


def lesser() -> tuple[Result, ...]:
    """The mean and uncertainty of the shortest component, by Clark's formula, two components at a time."""
    results = [
        Result("come_least", "Scarcest lasts for", f"MIN(part_1_come, {', '.join(f'IF(given(part_{part}_come), part_{part}_come, part_1_come)' for part in PARTS[1:])})",
               strands.least, LENGTH, uses={f"come_{part}": f"part_{part}_come" for part in PARTS}, note="Length of yarn for which the component that runs out first is enough."),
    ]
    mean, doubt = "part_1_come", "part_1_come_doubt"
    for part in PARTS[1:]:
        uses = {"first": mean, "u_first": doubt, "second": f"part_{part}_come", "u_second": f"part_{part}_come_doubt", "shared": f"lesser_{part}_shared"}
        results += [
            Result(f"lesser_{part}", f"Lesser of {part}", _clark_mean(*uses.values()), uncertainty.lesser, LENGTH, uses=uses),
            Result(f"lesser_{part}_doubt", f"Lesser of {part} ±", _clark_doubt(*uses.values()), uncertainty.lesser_uncertainty, LENGTH, uses=uses),
        ]
        mean, doubt = f"lesser_{part}", f"lesser_{part}_doubt"
    return tuple(results)


def _clark(first: str, u_first: str, second: str, u_second: str, shared: str) -> tuple[str, str, str, str, str]:
    apart, together = f"ABS({first} - {second})", f"SQRT(MAX(0, {u_first} * {u_first} + {u_second} * {u_second} - 2 * or_else({shared}, 0)))"
    after = f"NORMSDIST(0 - {apart} / {together})"
    bell = f"EXP(0 - POWER({apart} / {together}, 2) / 2) / SQRT(2 * PI())"
    return apart, together, after, bell, f"OR(NOT(given({second})), NOT(given({u_second})))"


def _clark_mean(first: str, u_first: str, second: str, u_second: str, shared: str) -> str:
    apart, together, after, bell, alone = _clark(first, u_first, second, u_second, shared)
    return (
        f"IF({alone}, {first}, IF({apart} >= 6 * {together}, MIN({first}, {second}), "
        f"MIN({first}, {second}) - {together} * ROUND({bell} - {apart} / {together} * {after}, 12)))"
    )


# LibreOffice 7.4 gives an error for POWER of a negative number here, so the last square is a product.
def _clark_doubt(first: str, u_first: str, second: str, u_second: str, shared: str) -> str:
    apart, together, after, bell, alone = _clark(first, u_first, second, u_second, shared)
    low, high = f"IF({first} <= {second}, {u_first}, {u_second})", f"IF({first} <= {second}, {u_second}, {u_first})"
    return (
        f"IF({alone}, {u_first}, IF({apart} >= 6 * {together}, {low}, SQRT(MAX(0, "
        f"POWER(MAX({low}, {high} / 20), 2) * (1 - {after}) + (POWER({apart}, 2) + POWER(MAX({high}, {low} / 20), 2)) * {after} "
        f"- {apart} * {together} * {bell} - ({apart} * {after} - {together} * {bell}) * ({apart} * {after} - {together} * {bell})))))"
    )


def its_fiber() -> Iterator[Result]:
    """The fiber that each strand takes; a bought thread takes none."""
    for strand in STRANDS:
        yield strand.lookup("keeps", "Lot keeps", "fiber_kept_of_prepared", "@_lot_a", SHARE, note="Share of prepared fiber that becomes yarn.")
        yield strand.result("spun_of", "Kept in spinning", "IF(given(sample_loss), 1 - sample_loss, @_keeps)", project.kept_in_spinning, SHARE, uses={"lot": "@_keeps"},
                            only_if="OR(AND(given(sample_loss), sample_loss < 1, sample_loss >= 0), AND(NOT(given(sample_loss)), given(@_keeps)))",
                            note="By its lot; a sample on the sheet Samples replaces it.")
        for key, label, kept in (("fiber", "Prepared fiber", "@_spun_of"), ("raw", "Fiber as bought", "@_kept")):
            yield strand.result(key, label, f"IF(@_bought = 1, 0, yarn * @_share / {kept})", project.fiber_for, MASS, uses=OF_YARN | {"kept": kept},
                                only_if=f"OR(@_bought = 1, given_and({kept}, {kept} > 0))")
        yield strand.result("to_prepare", "To prepare", "IF(or_else(@_stage, 0) >= 4, 0, @_fiber)", project.to_prepare, MASS,
                            uses={"stage": "@_stage", "fiber": "@_fiber"}, note="None of a lot that was bought prepared.")


def fiber_in_all() -> tuple[Result, ...]:
    """The fiber of all components together; unknown if that of one is."""
    return (
        _of_all_strands("prepared", "Prepared fiber", "fiber", "To spin this much yarn, of all lots together."),
        _of_all_strands("bought", "Fiber as bought", "raw", "Raw fleece or other fiber, in the state in which each lot was bought; bought thread aside."),
        _of_all_strands("to_prepare", "Fiber to prepare", "to_prepare", "Of what was not bought prepared."),
    )


def _of_all_strands(key: str, label: str, of: str, note: str) -> Result:
    """The sum of what each strand takes; a strand without a share does not exist, except for the first."""
    further = PARTS[1:]
    amounts = (f"part_1_{of}", *(f"IF(given(part_{part}_share), part_{part}_{of}, 0)" for part in further))
    are_known = ", ".join(f"OR(NOT(given(part_{part}_share)), given(part_{part}_{of}))" for part in further)
    words = {f"amount_{part}": f"part_{part}_{of}" for part in PARTS} | {f"share_{part}": f"part_{part}_share" for part in further}
    return Result(key, label, " + ".join(amounts), project.of_all_strands, MASS, uses=words, only_if=f"AND({are_known})", note=note)


def added() -> Iterator[Result]:
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
    learned = "IF(in_skeins > 0, learned / in_skeins, 0)"
    of_skeins = {"weight": "learned", "u_scale": "common_doubt", "skeins_doubt": "doubt_skeins"}
    yield Result("added_square", "More ±²", f"{_largest('added_square')} + POWER({learned} * doubt_skeins, 2) + POWER((1 - learned) * common_doubt, 2)",
                 uncertainty.added_square, NUMBER, uses=of_skeins | {f"square_{part}": f"part_{part}_added_square" for part in PARTS},
                 note="Of more yarn, as a share of it, squared: its grist, and what its fiber keeps.")
    yield Result("added_with", "More, shared",
                 f"{_largest('added_with')} + doubt_skeins * doubt_skeins * (1 + {learned} * MAX(0, lesser_4)) * {learned} "
                 "+ MAX(0, lesser_4) * POWER((1 - learned) * common_doubt, 2)",
                 uncertainty.added_with, LENGTH, uses=of_skeins | {"to_come": "lesser_4"} | {f"with_{part}": f"part_{part}_added_with" for part in PARTS},
                 note="More of the same yarn comes out finer or thicker together with what there is.")


def anew() -> Iterator[Result]:
    """How much more to have of a yarn of several strands, if all that is to come were bought or spun anew."""
    largest = ", ".join(_known_to(part) for part in PARTS)
    learned = "IF(in_skeins > 0, learned / in_skeins, 0)"
    of_skeins = {"weight": "learned", "u_scale": "common_doubt", "skeins_doubt": "doubt_skeins"}
    yield Result("anew_square", "If all is got ±²",
                 f"MAX(part_1_added_square, {', '.join(f'IF(given(part_{part}_added_square), part_{part}_added_square, 0)' for part in PARTS[1:])}, {largest}) "
                 f"+ POWER({learned} * doubt_skeins, 2) + POWER((1 - learned) * common_doubt, 2)", uncertainty.anew_square, NUMBER,
                 uses=of_skeins | {f"{word}_{part}": f"part_{part}_{key}" for part in PARTS for word, key in
                                   (("square", "added_square"), ("come", "come"), ("u_come", "come_doubt"))})
    once, squared = "(1 - doubts_z * doubts_z * anew_square)", "doubts_z * doubts_z"
    half = f"(in_skeins - need - {squared} * (POWER(MAX(doubts_variation, doubts_ball), 2) * hold / 2 + {learned} * doubt_skeins * doubt_skeins))"
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


def to_buy() -> Iterator[Result]:
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
