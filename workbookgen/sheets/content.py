"""Fiber content: the fibers of lots, strands and skeins by weight, as on a label.

A lot has up to three fibers, a design up to four strands, so a yarn has up to twelve fibers; those of the same name
add up, and up to four names are listed.
"""

from workbookgen.language.cases import first_of
from workbookgen.language.domains import Choice, Number
from workbookgen.language.fields import Input, Result
from workbookgen.language.quantities import NUMBER, SHARE
from workbookgen.language.rules import Rule
from workbookgen.reference import content, plying, records, strands
from workbookgen.sheets import guide
from workbookgen.sheets.lookup import lookup

MORE = (("also", "Also of"), ("third", "And of"))  # a lot's second and third fiber
PARTS = (1, 2, 3, 4)
FIBERS = range(1, 13)
TOLD = (1, 2, 3, 4)
WOOLS = ", ".join(f'@ = "{name}"' for name in ("wool", "recycled wool", "mohair", "cashmere", "camel", "camel hair", "alpaca", "llama", "vicuna"))


def mixed_of() -> tuple[Input, ...]:
    """The second and third fiber of a lot that is a blend."""
    return tuple(
        field
        for key, label in MORE
        for field in (
            Input(f"{key}_kind", label, Choice("guide_listed", guide.SHEET), width=14,
                  help="Another fiber of a lot that is a mixture, from the guide on the sheet Guide, for the fiber content of a label. "
                       "Add a line there for one that it lacks, such as nylon."),
            Input(f"{key}_share", "Its share", Number(above=0, below=1), SHARE, width=8, help="Of the weight of the lot. The sheet Blends works out shares."),
        )
    )


def of_lot() -> tuple[Result, ...]:
    """What other sheets need to know about a lot."""
    return (
        *(
            lookup(f"generic_{place}", "On labels", "guide_generic", kind, width=14)
            for place, kind in ((1, "kind"), (2, "also_kind"), (3, "third_kind"))
        ),
        Result("main_share", "Main fiber", "1 - or_else(also_share, 0) - or_else(third_share, 0)", content.main_share, SHARE,
               uses={"also": "also_share", "third": "third_share"},
               only_if='AND(kind <> "", IF(given(also_kind), given(also_share), NOT(given(also_share))), IF(given(third_kind), given(third_share), NOT(given(third_share))), '
                       "or_else(also_share, 0) + or_else(third_share, 0) < 1)"),
        Result("mixture", "Made of", "ROUND(ROUND(main_share * 1000, 9), 0) & \" \" & generic_1" + "".join(
            f' & IF(AND(given(generic_{place}), given({key}_share)), " " & ROUND(ROUND({key}_share * 1000, 9), 0) & " " & generic_{place}, "")'
            for place, key in ((2, "also"), (3, "third"))),
            content.mixture, None, width=20,
            uses={"fiber_1": "generic_1", "share_1": "main_share", "fiber_2": "generic_2", "share_2": "also_share", "fiber_3": "generic_3", "share_3": "third_share"}),
    )


def lot_rules() -> tuple[Rule, ...]:
    """Rules against a share without its fiber, the reverse, and shares that leave nothing for the first fiber."""
    def lacks(one: str, other: str):
        return lambda values: bool(values[one]) and not values[other]

    return (
        *(
            rule
            for key, label in MORE
            for rule in (
                Rule(f"AND(given({key}_kind), NOT(given({key}_share)))", lacks(f"{key}_kind", f"{key}_share"), f"{label}: type its share of the weight beside it."),
                Rule(f"AND(given({key}_share), NOT(given({key}_kind)))", lacks(f"{key}_share", f"{key}_kind"), f"{label}: choose the fiber whose share stands beside it."),
            )
        ),
        Rule("also_share + third_share >= 1", lambda values: values["also_share"] + values["third_share"] >= 1,
             "Also of, and of: their shares leave nothing for the main fiber. Check them."),
    )


def of_component() -> tuple[Result, ...]:
    """Of a design's strand: the lot that its fibers come from, and whether these are unknown."""
    return (
        *(
            lookup(f"mixture_{number}", "Made of", "fiber_mixture", lot, width=20)
            for number, lot in ((1, "lot"), (2, "other_lot"))
        ),
        Result("told_lot", "Of the lot", "lot", content.lot_of_strand, None, uses={"mixed": "mixture_1", "other": "other_lot", "other_mixed": "mixture_2"}, width=20,
               only_if='AND(mixture_1 <> "", blank_or(other_lot, given_and(mixture_2, mixture_1 = mixture_2)))'),
        Result("untold", "Open", "IF(AND(given(share), given(told_lot)), 0, 1)", content.untold, NUMBER, uses={"lot": "told_lot"}, digits=0, only_if='design <> ""'),
    )


def of_label() -> tuple[Result, ...]:
    """The fibers of a label's skein, by weight, and in words."""
    return (*_strands(), *_fibers(), *_told(), *_percentages(), *_words())


def _strands() -> tuple[Result, ...]:
    return (
        lookup("of_lot", "Its lot", "skeins_from_lot", "skein"),
        lookup("of_design", "Its design", "skeins_from_design", "skein"),
        *(Result(f"strand_{part}", "Strand", f'of_design & " / {part}"', plying.component_key, None, uses={"design": "of_design"}, fixed={"place": part}) for part in PARTS),
        lookup("picked_lot", "Lot of the first strand", "components_told_lot", "strand_1", among="components_key"),
        Result("lot_1", "Lot", "or_else(picked_lot, of_lot)", strands.lot_in_use, None, uses={"picked": "picked_lot", "own": "of_lot", "design": "of_design"},
               only_if="OR(given(picked_lot), AND(given(of_lot), NOT(given(of_design))))"),
        *(lookup(f"lot_{part}", "Lot", "components_told_lot", f"strand_{part}", among="components_key") for part in PARTS[1:]),
        lookup("picked_share", "Share of the first strand", "components_share", "strand_1", SHARE, among="components_key"),
        *(lookup(f"share_{part}", "Of the weight", "components_share", f"strand_{part}", SHARE, among="components_key") for part in PARTS[1:]),
        Result("share_1", "Of the weight", "or_else(picked_share, 1)", content.strand_share, SHARE, uses={"lot": "lot_1", "found": "picked_share"},
               only_if='lot_1 <> ""'),
        Result("untold", "Strands of which something is open", "sum_where(components_untold, components_of, of_design)", records.sum_where, NUMBER, digits=0,
               uses={"name": "of_design", "names": "components_of", "amounts": "components_untold"}),
    )


def _fibers() -> tuple[Result, ...]:
    """Three fibers for each strand, and the share of each in the whole yarn."""
    found = []
    for part in PARTS:
        for place, share in ((1, "main_share"), (2, "also_share"), (3, "third_share")):
            number = 3 * (part - 1) + place
            found += [
                lookup(f"fiber_{number}", "Fiber", f"fiber_generic_{place}", f"lot_{part}"),
                Result(f"part_{number}", "In the yarn", f"share_{part} * lookup(fiber_{share}, fiber_listed, lot_{part})", content.share_in_yarn, SHARE,
                       only_if=f'fiber_{number} <> ""', uses={"fiber": f"fiber_{number}", "strand": f"share_{part}", "lot": f"lot_{part}", "lots": "fiber_listed",
                                                              "shares": f"fiber_{share}"}),
            ]
    return tuple(found)


def _is_new(word: str, before: list[str]) -> str:
    """Formula text of whether an optional word has a value that none of the earlier words has."""
    others = (f"NOT(given_and({each}, {each} = {word}))" for each in before)
    return f"AND({', '.join((f'given({word})', *others))})"


def _told() -> tuple[Result, ...]:
    """The different fibers, up to four, each with its share and that under which it is named."""
    found = []
    for k in TOLD:
        before = [f"kind_{each}" for each in range(1, k)]
        fiber = first_of(*((_is_new(f"fiber_{i}", before), f"fiber_{i}") for i in FIBERS))
        whole = " + ".join(f"IF(AND(given(fiber_{i}), given(part_{i})), IF(fiber_{i} = kind_{k}, part_{i}, 0), 0)" for i in FIBERS)
        found += [
            Result(f"kind_{k}", "Fiber", fiber, content.next_fiber, None,
                   uses={f"before_{place}": each for place, each in enumerate(before, start=1)}, leaves=tuple(f"before_{place}" for place in range(k, 4))),
            Result(f"whole_{k}", "Of it in all", whole, content.together, SHARE, uses={"fiber": f"kind_{k}"} | {f"share_{i}": f"part_{i}" for i in FIBERS}),
            Result(f"named_{k}", "Named with", f"IF(OR(whole_{k} > 0.049999999, {WOOLS.replace('@', f'kind_{k}')}), whole_{k}, 0)", content.named_share, SHARE,
                   uses={"fiber": f"kind_{k}", "share": f"whole_{k}"}),
        ]
    return tuple(found)


OF_TOLD = {f"fiber_{k}": f"kind_{k}" for k in TOLD}


def _percentages() -> tuple[Result, ...]:
    """The fibers in order of weight: the name and share of each, in percent and in whole percent."""
    found = []
    for k in TOLD:
        before = [f"name_{each}" for each in range(1, k)]
        told = {f"before_{place}": each for place, each in enumerate(before, start=1)}
        left = {"leaves": tuple(f"before_{place}" for place in range(k, 4)), "uses": OF_TOLD | told}
        shares = ", ".join(f"IF({_is_new(f'kind_{each}', before)}, {f'named_{each}' if each == 1 else f'IF(given(named_{each}), named_{each}, 0)'}, 0)" for each in TOLD)
        name = first_of(*(
            (f"IF(AND({_is_new(f'kind_{each}', before)}, given(named_{each})), named_{each}, 0) > largest_{k} - 0.000000001", f"kind_{each}") for each in TOLD))
        found += [
            Result(f"largest_{k}", "Share", f"MAX({shares})", content.largest_share, SHARE, **left),
            Result(f"name_{k}", "Fiber", name, content.largest_fiber, None, only_if=f"largest_{k} > 0", leaves=left["leaves"], uses=left["uses"] | {"largest": f"largest_{k}"}),
        ]
    points = [f"points_{each}" for each in range(1, 6)]
    found += [
        *(
            Result(f"points_{k}", "In percent", f"IF(largest_{k} > 0.000001, ROUND(MAX(1, 100 * largest_{k}), 6), 0)", content.in_percent, NUMBER, uses={"share": f"largest_{k}"})
            for k in TOLD[1:]
        ),
        Result("points_5", "Others, in percent", "IF(1 - largest_1 - largest_2 - largest_3 - largest_4 > 0.000001, ROUND(MAX(1, 100 "
                                                 "* (1 - largest_1 - largest_2 - largest_3 - largest_4)), 6), 0)",
               content.others_percent, NUMBER, uses={f"told_{k}": f"largest_{k}" for k in TOLD}),
        Result("points_1", "In percent", "ROUND(100 - points_2 - points_3 - points_4 - points_5, 6)", content.rest_percent, NUMBER,
               uses={"next_2": "points_2", "next_3": "points_3", "next_4": "points_4", "others": "points_5"}),
        *(
            Result(f"percent_{place}", "Whole percent", _apportioned(points, place), content.whole_percent, NUMBER, digits=0, uses={"others": "points_5"}, fixed={"place": place})
            for place in range(1, 6)
        ),
    ]
    return tuple(found)


def _down(word: str) -> str:
    return f"ROUNDDOWN({word} + 0.000000001, 0)"


def _apportioned(points: list[str], place: int) -> str:
    """Whole percent by the method of largest remainders: one more if larger or earlier equal ones leave a point."""
    rests = [f"ROUND({each} - {_down(each)}, 6)" for each in points]
    own = rests[place - 1]
    before = " + ".join(f"IF({rest} {'>=' if other < place else '>'} {own}, 1, 0)" for other, rest in enumerate(rests, start=1) if other != place)
    return f"{_down(points[place - 1])} + IF({before} < 100 - {' - '.join(map(_down, points))}, 1, 0)"


def _words() -> tuple[Result, ...]:
    whole = "whole_1 + " + " + ".join(f"IF(given(whole_{k}), whole_{k}, 0)" for k in TOLD[1:])
    unnamed = "IF(named_1 > 0, 0, 1) + " + " + ".join(f"IF(given(named_{k}), IF(named_{k} > 0, 0, 1), 0)" for k in TOLD[1:])
    more = "".join(f' & IF(given(name_{k}), ", " & percent_{k} & "% " & name_{k}, "")' for k in TOLD[1:])
    return (
        Result("whole", "Known in all", whole, content.known_in_all, SHARE),
        Result("unnamed", "Without a name", unnamed, content.without_a_name, NUMBER, digits=0),
        Result("content_is", "Fiber content", f'percent_1 & "% " & name_1{more} & IF(percent_5 > 0, ", " & percent_5 & IF(unnamed = 1, "% other fiber", "% other fibers"), "")',
               content.content_words, None, uses={f"fiber_{k}": f"name_{k}" for k in TOLD} | {"others": "percent_5"},
               only_if="AND(ABS(whole - 1) <= 0.000001, blank_or(untold, untold < 0.5))", width=30),
        Result("content", "Fiber content", '"Fiber content: " & content_is', content.on_ticket, None, uses={"content": "content_is"}, width=36),
        Result("content_told", "Fiber content",
               first_of(
                   ("given(content_is)", "content_is"),
                   ("given(of_design)", '"Unknown: see the strands of its design."'),
                   ("given(of_lot)", '"Unknown: see the fiber of its lot."'),
                   otherwise='"Unknown: it has no lot and no design."'),
               content.what_to_type, None, uses={"content": "content_is", "lot": "of_lot", "design": "of_design"}, only_if='skein <> ""', width=36),
    )
