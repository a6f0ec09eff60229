"""What a project's yarn is drawn from, strand by strand, and how sure it is: results of the sheet Projects.

A plain yarn is one component that draws on the project's own lots; a design has up to four, each
with lots of its own, found by the design's name and their number in it. What stands here in
loops is the same for each of the four.
"""

from collections.abc import Callable, Iterable, Mapping

from workbookgen.language.fields import Result
from workbookgen.language.quantities import LENGTH, MASS, NUMBER, SHARE, SQUARE_MASS, Kind
from workbookgen.language.repeated import as_typed
from workbookgen.reference import balls, belongings, in_use, made_of, plying, project, sharing, strands, uncertainty
from workbookgen.sheets.lookup import lookup

PARTS = (1, 2, 3, 4)
LETTERS = {1: ("a", "b", "c"), 2: ("a", "b"), 3: ("a", "b"), 4: ("a", "b")}


def of_part(text: str, part: int) -> str:
    """A formula text in which @ stands for a component: @_needs becomes part_1_needs."""
    return text.replace("@", f"part_{part}")


def _result(part: int, key: str, label: str, formula: str, reference: Callable, unit: Kind | None = NUMBER, uses: Mapping[str, str] | None = None,
            only_if: str = "", **more) -> Result:
    """A result of one component; @ in its texts stands for the component."""
    uses = {parameter: of_part(word, part) for parameter, word in (uses or {}).items()}
    return Result(of_part(f"@_{key}", part), f"{label}, {part}", of_part(formula, part), reference, unit, uses=uses, only_if=of_part(only_if, part), **more)


def _lookup(part: int, key: str, label: str, column: str, chosen: str, unit: Kind | None = None, **more) -> Result:
    """A looked-up result of one component."""
    return lookup(of_part(f"@_{key}", part), f"{label}, {part}", column, of_part(chosen, part), unit, **more)


def what_it_is_of() -> tuple[Result, ...]:
    """The components, their shares and their lots."""
    found = []
    for part in PARTS:
        found += [
            _result(part, "key", "Found as", f'design & " / {part}"', plying.component_key, None, fixed={"place": part}, width=22),
            _lookup(part, "of_design", "Share", "components_share", "@_key", SHARE, among="components_key"),
            _lookup(part, "label", "Component", "components_label", "@_key", among="components_key", width=20),
            _lookup(part, "found_of_lots" if part == 1 else "of_lots", "Part of its lots", "components_part_of_lots", "@_key", SHARE, among="components_key"),
            *(_lookup(part, f"picked_{letter}", "Lot", f"components_from_{number}", "@_key", among="components_key", width=20) for number, letter in ((1, "a"), (2, "b"))),
        ]
    return tuple(found)


def taken() -> tuple[Result, ...]:
    """What a finished piece took of each component's first lot beyond what its skeins account for."""
    plain = _result(1, "taken", "Taken by the piece", "used_rest * IF(given(@_of_design), @_of_design, 1)", strands.taken_by_piece, MASS,
                    {"rest": "used_rest", "share": "@_of_design"}, only_if="OR(given(@_of_design), NOT(given(design)))")
    others = (_result(part, "taken", "Taken by the piece", "used_rest * @_of_design", strands.taken_by_piece, MASS, {"rest": "used_rest", "share": "@_of_design"},
                      leaves=("design",)) for part in PARTS[1:])
    return (plain, *others)


def parts() -> tuple[Result, ...]:
    """Of each component: its name, what it has, what it needs, and what remains."""
    return tuple(result for part in PARTS for result in _part(part))


def _part(part: int) -> tuple[Result, ...]:
    plain = part == 1
    lots = ", ".join(f"@_lot_{letter}" for letter in LETTERS[part])
    words = lots.split(", ")
    numbered = {f"lot_{number}": word for number, word in enumerate(words, start=1)}
    if plain:
        first = (
            _result(1, "share", "Of the weight", "IF(given(@_of_design), @_of_design, 1)", made_of.component_share, SHARE,
                    {"found": "@_of_design", "yarn": "planned"}, only_if="AND(planned > 0, OR(given(@_of_design), NOT(given(design))))"),
            *(
                _result(1, f"lot_{letter}", "Lot", f"IF(given(@_picked_{letter}), @_picked_{letter}, {lot})", made_of.lot_in_use, None,
                        {"picked": f"@_picked_{letter}", "own": lot}, only_if=f"OR(given(@_picked_{letter}), AND(given({lot}), NOT(given(design))))", width=20)
                for letter, lot in (("a", "lot_1"), ("b", "lot_2"))
            ),
            _result(1, "of_lots", "Part of its lots", "IF(given(@_found_of_lots), @_found_of_lots, 1)", made_of.part_in_use, SHARE,
                    {"share": "@_share", "found": "@_found_of_lots"}, only_if="@_share > 0"),
            _result(1, "lot_c", "Lot", "lot_3", belongings.of_one_lot, None, {"lot": "lot_3"}, only_if="NOT(given(design))", width=20),
            _result(1, "name", "Strand", 'IF(given(@_label), @_label, IF(given(@_lot_a), @_lot_a, "the yarn"))', made_of.strand_name, None,
                    {"label": "@_label", "lot": "@_lot_a", "share": "@_share"}, only_if="@_share > 0", width=20),
        )
    else:
        first = (
            _result(part, "share", "Of the weight", "@_of_design", made_of.component_share, SHARE, {"found": "@_of_design", "yarn": "planned"}, only_if="planned > 0",
                    leaves=("design",)),
            *(
                _result(part, f"lot_{letter}", "Lot", f"@_picked_{letter}", as_typed, None, {"text": f"@_picked_{letter}"}, width=20)
                for letter in LETTERS[part]
            ),
            _result(part, "name", "Strand", "@_label", as_typed, None, {"text": "@_label"}, width=20),
        )
    return (*first, *_amounts(part, words, numbered))


def _of_lots(words: Iterable[str], column: str) -> str:
    """Formula text of the sum of a column of the lots over a component's lots."""
    return " + ".join(f"IF(given({lot}), sum_where({column}, fiber_listed, {lot}), 0)" for lot in words)


def _amounts(part: int, words: list[str], numbered: dict[str, str]) -> tuple[Result, ...]:
    spare = {"leaves": () if part == 1 else ("lot_3",)}
    taken = " + ".join(f"IF(given({lot}), sum_where(fiber_to_come, fiber_listed, {lot}) * sum_where(fiber_promised, fiber_listed, {lot}), 0)" for lot in words)
    by_others = f"({taken}) * @_of_lots - @_needs"
    rest = f"@_pool - IF({by_others} > @_needs * 0.000001, {by_others}, 0)"
    squares, own = "sum_where(fiber_needs_square, fiber_listed, @_lot_a)", "@_need_square / @_of_lots"
    factor = "IF(@_bought = 1, 1, finer)"
    of_yarn = {"share": "@_share", "bought": "@_bought"}
    of_lots = {"names": "fiber_listed", "part": "@_of_lots"} | numbered
    return (
        _lookup(part, "stage", "Stage", "fiber_stage", "@_lot_a", NUMBER, digits=0),
        _result(part, "bought", "Bought", "IF(IF(given(@_stage), @_stage, 0) = 5, 1, 0)", made_of.is_bought, NUMBER, {"stage": "@_stage", "share": "@_share"},
                only_if="@_share > 0", digits=0),
        _result(part, "pool", "Lots give", f"({_of_lots(words, 'fiber_to_come')}) * @_of_lots", sharing.pool, MASS,
                of_lots | {"share": "@_share", "amounts": "fiber_to_come"}, only_if="@_share > 0",
                note="What its lots can still give, all projects together; its part, where other components of the yarn are spun from them, too.", **spare),
        _result(part, "pool_square", "Lots ±²", f"({_of_lots(words, 'fiber_to_come_square')}) * @_of_lots * @_of_lots", sharing.pool_square, SQUARE_MASS,
                of_lots | {"share": "@_share", "squares": "fiber_to_come_square"}, only_if="@_share > 0", **spare),
        _result(part, "needs", "Needs", f"to_spin * @_share / (planned * {factor})", strands.component_needs, MASS, of_yarn, only_if="finer > 0",
                note="What of it is still to be spun or plied in."),
        _result(part, "claim", "Claim", "@_needs * @_of_lots / @_pool", sharing.claim, SHARE, {"needs": "@_needs", "pool": "@_pool", "part": "@_of_lots"}, only_if="@_pool > 0"),
        _result(part, "left", "Has", f"IF(@_needs > 0, {rest}, MAX(0, {rest}))",
                sharing.left_by_others, MASS,
                of_lots | {"pool": "@_pool", "needs": "@_needs", "amounts": "fiber_to_come", "promised": "fiber_promised"},
                note="What its lots can still give, once the other projects on them have theirs.", **spare),
        _result(part, "over", "Over or short", "@_left - @_needs", strands.component_over, MASS, {"left": "@_left", "needs": "@_needs"}, note="Below zero it is short."),
        _result(part, "used", "Share used", "@_needs / @_left", strands.share_used, SHARE, {"needs": "@_needs", "left": "@_left"}, only_if="@_left > 0", digits=0),
        _result(part, "come", "Lasts for", f"@_left * planned * {factor} / @_share", strands.component_length, LENGTH, of_yarn | {"left": "@_left"}, only_if="finer > 0",
                note="Length of yarn that it still is enough for."),
        _result(part, "unused", "Left in the end", f"(@_come - come_least) * @_share / (planned * {factor})", strands.left_in_the_end, MASS,
                of_yarn | {"come": "@_come", "least": "come_least"}, only_if="finer > 0", note="Once the scarcest component is used up."),
        _result(part, "need_square", "Need ±²", "POWER(@_share * doubt_need / planned, 2) / @_of_lots * IF(given(used), 0, 1)", sharing.need_square, SQUARE_MASS,
                {"share": "@_share", "part": "@_of_lots"},
                only_if="@_share > 0"),
        _result(part, "others_square", "Others ±²", f"IF(given(@_lot_a), IF({squares} - {own} > MAX({own} * 0.000001, 0.000000000000001), "
                                                    f"({squares} - {own}) * @_of_lots * @_of_lots, 0), 0)",
                sharing.others_square, SQUARE_MASS,
                {"own": "@_need_square", "names": "fiber_listed", "squares": "fiber_needs_square", "lot": "@_lot_a", "part": "@_of_lots"}),
        _result(part, "relative", "Grist ±",
                "IF(@_bought = 1, SQRT(POWER(doubts_batch, 2) + POWER(doubts_ball, 2) / MAX(1, @_pool * planned / @_share / hold)), "
                "SQRT(POWER(doubts_grist, 2) * (1 - learned) + POWER(doubts_variation, 2) / MAX(1, @_pool * planned / @_share / hold)))",
                uncertainty.grist_uncertainty, SHARE,
                {"pool": "@_pool", "share": "@_share", "bought": "@_bought", "weight": "learned", "u_plan": "doubts_grist",
                 "variation": "doubts_variation", "u_batch": "doubts_batch", "u_ball": "doubts_ball"}),
        _result(part, "doubt", "Has ±", "IF(@_needs > 0, SQRT(@_pool_square + @_others_square + POWER(@_pool * @_relative, 2)), "
                "MIN(@_left, SQRT(@_pool_square + @_others_square + POWER(@_pool * @_relative, 2))))", uncertainty.coming_uncertainty, MASS,
                {"pool_square": "@_pool_square", "others_square": "@_others_square", "pool": "@_pool", "relative": "@_relative", "needs": "@_needs", "left": "@_left"},
                note="Standard uncertainty of what it has, its grist included."),
        *_counted_before(part),
        _result(part, "come_doubt", "Lasts ±", f"@_doubt * planned * {factor} / @_share", strands.length_in_doubt, LENGTH,
                of_yarn | {"doubt": "@_doubt"} | ({} if part == 1 else {"before": "@_before"}), leaves=("before",) if part == 1 else (),
                only_if="finer > 0" if part == 1 else "AND(finer > 0, IF(given(@_before), @_before < 0.5, 1 = 1))"),
    )


def _counted_before(part: int) -> tuple[Result, ...]:
    """The number of earlier components on the same lots; their uncertainty is one and counts once."""
    if part == 1:
        return ()
    before, after = PARTS[: part - 1], PARTS[part - 1 : 3]
    other = 'IF(given({0}_lot_b), {0}_lot_b, "")'
    counted = (
        f"IF(given(part_{each}_lot_a), IF(AND(part_{each}_lot_a = @_lot_a, {other.format(f'part_{each}')} = {other.format('@')}), 1, 0), 0)" for each in before
    )
    names = (("lot", "lot_a"), ("other", "lot_b"))
    uses = {name: f"@_{lot}" for name, lot in names} | {f"{name}_{each}": f"part_{each}_{lot}" for each in before for name, lot in names}
    return (_result(part, "before", "Same lots before", " + ".join(counted), sharing.counted_before, NUMBER, uses, digits=0,
                    leaves=tuple(f"{name}_{each}" for each in after for name, _ in names)),)


def lesser() -> tuple[Result, ...]:
    """The mean and uncertainty of the shortest component, by Clark's formula, two components at a time."""
    results = [
        Result("come_least", "Scarcest lasts for", f"MIN(part_1_come, {', '.join(f'IF(given(part_{part}_come), part_{part}_come, part_1_come)' for part in PARTS[1:])})",
               strands.least, LENGTH, uses={f"come_{part}": f"part_{part}_come" for part in PARTS}, note="Length of yarn for which the component that runs out first is enough."),
    ]
    mean, doubt = "part_1_come", "part_1_come_doubt"
    for part in PARTS[1:]:
        uses = {"first": mean, "u_first": doubt, "second": f"part_{part}_come", "u_second": f"part_{part}_come_doubt"}
        results += [
            Result(f"lesser_{part}", f"Lesser of {part}", _clark_mean(*uses.values()), uncertainty.lesser, LENGTH, uses=uses),
            Result(f"lesser_{part}_doubt", f"Lesser of {part} ±", _clark_doubt(*uses.values()), uncertainty.lesser_uncertainty, LENGTH, uses=uses),
        ]
        mean, doubt = f"lesser_{part}", f"lesser_{part}_doubt"
    return tuple(results)


def _clark(first: str, u_first: str, second: str, u_second: str) -> tuple[str, str, str, str, str]:
    apart, together = f"ABS({first} - {second})", f"SQRT({u_first} * {u_first} + {u_second} * {u_second})"
    after = f"NORMSDIST(0 - {apart} / {together})"
    bell = f"EXP(0 - POWER({apart} / {together}, 2) / 2) / SQRT(2 * PI())"
    return apart, together, after, bell, f"OR(NOT(given({second})), NOT(given({u_second})))"


def _clark_mean(first: str, u_first: str, second: str, u_second: str) -> str:
    apart, together, after, bell, alone = _clark(first, u_first, second, u_second)
    return (
        f"IF({alone}, {first}, IF({apart} >= 6 * {together}, MIN({first}, {second}), "
        f"MIN({first}, {second}) + {apart} * {after} - {together} * {bell}))"
    )


# LibreOffice 7.4 gives an error for POWER of a negative number here, so the last square is a product.
def _clark_doubt(first: str, u_first: str, second: str, u_second: str) -> str:
    apart, together, after, bell, alone = _clark(first, u_first, second, u_second)
    low, high = f"IF({first} <= {second}, {u_first}, {u_second})", f"IF({first} <= {second}, {u_second}, {u_first})"
    return (
        f"IF({alone}, {u_first}, IF({apart} >= 6 * {together}, {low}, SQRT(MAX(0, "
        f"POWER(MAX({low}, {high} / 20), 2) * (1 - {after}) + (POWER({apart}, 2) + POWER(MAX({high}, {low} / 20), 2)) * {after} "
        f"- {apart} * {together} * {bell} - ({apart} * {after} - {together} * {bell}) * ({apart} * {after} - {together} * {bell})))))"
    )


def fiber_of_parts() -> tuple[Result, ...]:
    """The fiber that each component takes; a bought thread takes none."""
    results = []
    for part in PARTS:
        results += [
            _lookup(part, "keeps", "Lot keeps", "fiber_kept_of_prepared", "@_lot_a", SHARE, note="Share of prepared fiber that becomes yarn."),
            _result(part, "spun_of", "Kept in spinning", "IF(given(sample_loss), 1 - sample_loss, @_keeps)", in_use.kept_in_spinning, SHARE, {"lot": "@_keeps"},
                    only_if="OR(AND(given(sample_loss), sample_loss < 1, sample_loss >= 0), AND(NOT(given(sample_loss)), given(@_keeps)))",
                    note="By its lot; a sample of the sheet Samples goes before it."),
            *(
                _result(part, key, label, f"IF(@_bought = 1, 0, yarn * @_share / {kept})", project.fiber_for, MASS, {"kept": kept, "share": "@_share", "bought": "@_bought"},
                        only_if=f"OR(@_bought = 1, IF(given({kept}), {kept} > 0, 1 = 0))")
                for key, label, kept in (("fiber", "Prepared fiber", "@_spun_of"), ("raw", "Fiber as bought", "@_kept"))
            ),
            _result(part, "to_prepare", "To prepare", "IF(IF(given(@_stage), @_stage, 0) >= 4, 0, @_fiber)", project.to_prepare, MASS, {"stage": "@_stage", "fiber": "@_fiber"},
                    note="None of a lot that was bought prepared."),
        ]
    return tuple(results)


def fiber_in_all() -> tuple[Result, ...]:
    """The fiber of all components together; unknown if that of one is."""
    return tuple(
        Result(key, label, f"part_1_{of}" + "".join(f" + IF(given(part_{part}_share), part_{part}_{of}, 0)" for part in PARTS[1:]), project.of_all_strands, MASS,
               uses={f"{parameter}_{part}": f"part_{part}_{word}" for part in PARTS for parameter, word in (("amount", of), ("share", "share"))
                     if (parameter, part) != ("share", 1)},
               only_if="AND(" + ", ".join(f"OR(NOT(given(part_{part}_share)), given(part_{part}_{of}))" for part in PARTS[1:]) + ")", note=note)
        for key, label, of, note in (
            ("prepared", "Prepared fiber", "fiber", "To spin this much yarn, of all lots together."),
            ("bought", "Fiber as bought", "raw", "Raw fleece or other fiber, in the state in which each lot was bought; bought thread aside."),
            ("to_prepare", "Fiber to prepare", "to_prepare", "Of what was not bought prepared."),
        )
    )


def added() -> tuple[Result, ...]:
    """The uncertainty of more of each component and what it shares with what there is; then that of the yarn."""
    results = []
    for part in PARTS:
        factor = "IF(@_bought = 1, 1, finer)"
        results += [
            _lookup(part, "kept_doubt", "More of it, kept ±", "fiber_kept_doubt", "@_lot_a", SHARE),
            _result(part, "added_square", "More of it ±²",
                    "IF(@_bought = 1, POWER(doubts_batch, 2), POWER(doubts_grist, 2) * (1 - learned) + POWER(IF(given(@_kept_doubt), @_kept_doubt, 0), 2))",
                    uncertainty.strand_added_square, NUMBER,
                    {"bought": "@_bought", "weight": "learned", "u_plan": "doubts_grist", "u_batch": "doubts_batch", "u_kept": "@_kept_doubt"}),
            _result(part, "added_with", "More, shared",
                    f"IF(@_bought = 1, POWER(doubts_batch, 2), POWER(doubts_grist, 2) * (1 - learned)) * @_pool * planned * {factor} / @_share "
                    "+ POWER(IF(@_bought = 1, doubts_ball, doubts_variation), 2) * hold / 2",
                    uncertainty.strand_added_with, LENGTH,
                    {"pool": "@_pool", "share": "@_share", "bought": "@_bought", "weight": "learned", "u_plan": "doubts_grist",
                     "variation": "doubts_variation", "u_batch": "doubts_batch", "u_ball": "doubts_ball"}, only_if="finer > 0"),
        ]
    learned = "IF(in_skeins > 0, learned / in_skeins, 0)"
    of_skeins = {"weight": "learned", "u_scale": "common_doubt", "skeins_doubt": "doubt_skeins"}
    return (
        *results,
        Result("added_square", "More ±²", f"{_largest('added_square')} + POWER({learned} * doubt_skeins, 2) + POWER((1 - learned) * common_doubt, 2)",
               uncertainty.added_square, NUMBER, uses=of_skeins | {f"square_{part}": f"part_{part}_added_square" for part in PARTS},
               note="Of more yarn, as a share of it, squared: its grist, and what its fiber keeps."),
        Result("added_with", "More, shared",
               f"{_largest('added_with')} + doubt_skeins * doubt_skeins * (1 + {learned} * MAX(0, lesser_4)) * {learned} "
               "+ MAX(0, lesser_4) * POWER((1 - learned) * common_doubt, 2)",
               uncertainty.added_with, LENGTH, uses=of_skeins | {"to_come": "lesser_4"} | {f"with_{part}": f"part_{part}_added_with" for part in PARTS},
               note="More of the same yarn comes out finer or thicker together with what there is."),
    )


def _largest(key: str) -> str:
    others = ", ".join(f"IF(given(part_{part}_{key}), part_{part}_{key}, 0)" for part in PARTS[1:])
    return f"MAX(part_1_{key}, {others})"


def to_buy() -> tuple[Result, ...]:
    """How much more of each component to get, in the form in which it is bought."""
    results = []
    for part in PARTS:
        factor = "IF(@_bought = 1, 1, finer)"
        results += [
            _lookup(part, "kept", "Kept of the lot", "fiber_kept", "@_lot_a", SHARE),
            _lookup(part, "form", "Bought as", "fiber_bought_as", "@_lot_a", width=14),
            _result(part, "buy", "To buy", f"MAX(0, level - @_come) * @_share / (planned * {factor}) / IF(given(@_kept), @_kept, 1)", strands.to_buy, MASS,
                    {"come": "@_come", "share": "@_share", "bought": "@_bought", "kept": "@_kept"},
                    only_if="AND(finer > 0, IF(given(@_kept), @_kept > 0, 1 = 1))",
                    note="In the form in which its lot was bought, to be as sure as you ask."),
            *_together(part),
            _lookup(part, "spool", "A spool weighs", "components_spool", "@_key", MASS, among="components_key"),
            *_ball(part),
            _result(part, "balls", "Balls to buy", f"ROUNDUP(ROUND(@_get / {ball(part)}, 6), 0)", balls.balls_to_buy, NUMBER,
                    {"buy": "@_get", "ball": ball(part), "bought": "@_bought", "lot": "@_lot_a"}, only_if="OR(@_bought = 1, AND(NOT(given(@_lot_a)), NOT(given(design))))",
                    digits=0),
        ]
    return tuple(results)


def _together(part: int) -> tuple[Result, ...]:
    """What to get of a component with those of the same bought thread, told once, by the name of the thread."""
    shared = "@_bought = 1, @_of_lots < 0.999999"
    before, of_before, leaves = ("0", {}, ("before",)) if part == 1 else ("IF(given(@_before), @_before, 0)", {"before": "@_before"}, ())
    of_strand = {"bought": "@_bought", "part": "@_of_lots"}
    return (
        _result(part, "get", "To get", f"@_buy * IF(AND({shared}), IF({before} > 0.5, 0, 1 / @_of_lots), 1)", balls.to_get, MASS,
                of_strand | {"buy": "@_buy"} | of_before, leaves=leaves,
                note="With the other components of the same bought thread: whole spools are counted for all of them."),
        _result(part, "got_as", "To get, name", f"IF(AND({shared}, given(@_lot_a)), @_lot_a, @_name)", balls.got_as, None,
                of_strand | {"name": "@_name", "lot": "@_lot_a"}, width=20),
    )


def ball(part: int) -> str:
    """The word for what one ball or spool of a component weighs."""
    return "@_ball" if part == 1 else "@_spool"


def _ball(part: int) -> tuple[Result, ...]:
    if part > 1:
        return ()
    return (
        _result(1, "ball", "A ball weighs", "IF(given(@_spool), @_spool, package / planned)", balls.ball_weighs, MASS, {"spool": "@_spool"},
                only_if="OR(given(@_spool), AND(given(package), NOT(given(design))))"),
    )


def unknown_lots() -> tuple[Result, ...]:
    """How many of each component's lots are unknown while there is yarn to make, and how many in all."""
    results = []
    for part in PARTS:
        letters = LETTERS[part]
        results += [_lookup(part, f"gives_{letter}", "Lot gives", "fiber_to_come", f"@_lot_{letter}", MASS) for letter in letters]
        counted = " + ".join(f"IF(given(@_lot_{letter}), IF(given(@_gives_{letter}), 0, 1), 0)" for letter in letters)
        uses = {f"{parameter}_{number}": f"@_{word}_{letter}" for number, letter in enumerate(letters, start=1) for parameter, word in (("lot", "lot"), ("gives", "gives"))}
        results.append(_result(part, "unknown", "Lots not known", f"IF(to_spin > 0, {counted}, 0)", sharing.unknown_lots, NUMBER, uses, digits=0,
                               leaves=() if part == 1 else ("lot_3", "gives_3")))
    every = " + ".join(f"part_{part}_unknown" for part in PARTS)
    return (*results, Result("lots_unknown", "Lots not known",
                             f"{every} + IF(AND(to_spin > 0, OR(given(design), given(lot_1), given(lot_2), given(lot_3)), NOT(given(lesser_4))), 1, 0)",
                             sharing.unknown_in_all, NUMBER, digits=0, uses={f"unknown_{part}": f"part_{part}_unknown" for part in PARTS} | {"lasts": "lesser_4"}))


def shared_lots() -> Result:
    """The number of components whose lots serve other projects too."""
    drawn = " + ".join(f"IF(AND(given(part_{part}_pool), given(part_{part}_left)), IF(part_{part}_left < part_{part}_pool, 1, 0), 0)" for part in PARTS[1:])
    return Result("shared", "Shared with others", f"IF(part_1_left < part_1_pool, 1, 0) + {drawn}", sharing.shared_components, NUMBER, digits=0,
                  uses={f"{parameter}_{part}": f"part_{part}_{parameter}" for part in PARTS for parameter in ("pool", "left")})
