"""Arguments for the calculations of how a yarn is built."""

from workbookgen.reference import plying

from .amounts import n, q, texts

BUILT = dict(ends=n(3, 4), kept=n(0.75, 1))

EXAMPLES = [
    (plying.ends_in, dict(structure=texts("several strands", "a cable"), strands=n(3, 2), plies=n(2, 3))),
    (plying.ends_in, dict(structure=texts("a chain of three", "a ball on itself"))),
    (plying.kept_in, dict(structure=texts("several strands", "a cable"), take_up=n(0.1, 0.05), cabling=n(0.2, 0.1))),
    (plying.built_length, dict(length=q("yard", 400, 0), **BUILT)),
    (plying.built_grist, dict(grist=q("yard/pound", 2000, 3000), **BUILT)),
    (plying.single_for_length, dict(wanted=q("yard", 400, 0), **BUILT)),
    (plying.single_for_grist, dict(wanted_grist=q("yard/pound", 900, 1680), **BUILT)),
    (
        plying.wrapper_feed,
        dict(core_diameter=q("mm", 1, 2), wrapper_diameter=q("mm", 0.5, 0.2), turns=q("1/inch", 5, 0), slack=n(0, 0.5)),
    ),
    (
        plying.binder_feed,
        dict(
            core_diameter=q("mm", 1, 2),
            wrapper_diameter=q("mm", 0.5, 0.2),
            binder_diameter=q("mm", 0.2, 0.3),
            turns=q("1/inch", 5, 0),
        ),
    ),
    (plying.turns_left, dict(turns=q("1/inch", 8, 2), binder_turns=q("1/cm", 1, 4))),
    (plying.bound_density, dict(wrapped=q("tex", 200, 300))),
    (plying.bound_density, dict(wrapped=q("tex", 200, 300), bound=q("tex", 20, 30), binder=q("tex", 15, 25))),
    (plying.wrapped_density, dict(core=q("tex", 200, 300), wrapper=q("tex", 50, 30), feed=n(1, 1.5))),
]
