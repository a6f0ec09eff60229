"""Arguments for the calculations of what a project is drawn from: strands, lots, skeins, and how sure they are."""

import numpy as np

from workbookgen.reference import (
    advice,
    answer,
    balls,
    belongings,
    fiber,
    plying,
    project,
    reeling,
    sharing,
    statistics,
    strands,
    uncertainty,
    used_up,
    which_yarn,
)

from .amounts import n, q, texts

PLACES = ("1_a", "1_b", "1_c", "2_a", "2_b", "3_a", "3_b", "4_a", "4_b")
CLAIMED = {f"claims_{part}": [0.5, np.nan, 0.25] for part in (1, 2, 3, 4)} | {
    f"lots_{place}": ["Moss", "", "River"] for place in PLACES
}
LOTS = dict(names=["Moss", "River", ""], amounts=q("oz", 30, 10, np.nan))
STRAND = dict(share=n(0.5, 1), planned=q("m/g", 2, 3), finer=n(1.25, 1), bought=n(0, 1))
DOUBTS = dict(
    u_skirting=n(0.07, 0.1), u_yield=n(0.125, 0), u_preparation=n(0.025, 0), u_spinning=n(0.012, 0.5), u_own=n(0.03, 0)
)
FOUR = range(1, 5)

EXAMPLES = [
    (project.all_there_is, dict(in_skeins=q("yard", 200, 0), to_come=q("m", 100, -50))),
    (project.all_there_is, dict(in_skeins=q("yard", 200, 0))),
    (project.while_open, dict(amount=q("yard", 200, 0))),
    (project.while_open, dict(amount=n(0.9, 0.1))),
    (project.all_there_is, dict(in_skeins=q("yard", 200, 0), to_come=q("m", 100, -50), unknown=n(0, 0))),
    (
        sharing.unknown_lots,
        dict(
            to_spin=q("yard", 200, 0),
            lot_1=texts("Moss", "River"),
            gives_1=q("oz", 30, 10),
            lot_2=texts("River", "Moss"),
            gives_2=q("oz", 10, 0),
            lot_3=texts("Fern", "Fern"),
        ),
    ),
    (sharing.if_known, dict(amount=q("oz", 30, -10), unknown=n(0, 0))),
    (sharing.unknown_lots, dict(to_spin=q("yard", 200, 0), gives_3=q("oz", 30, 10))),
    (
        sharing.unknown_in_all,
        dict(to_spin=q("yard", 200, 0), lasts=q("m", 300, -10), **{f"unknown_{each}": n(each, 0) for each in FOUR}),
    ),
    *(
        (
            sharing.unknown_in_all,
            dict(to_spin=q("yard", 200, 0), **{f"unknown_{each}": n(each, 0) for each in FOUR})
            | {word: texts("Moss", "River")},
        )
        for word in ("design", "lot_1", "lot_2", "lot_3")
    ),
    (
        sharing.shared_components,
        {
            f"{key}_{each}": q("oz", number, 10)
            for each in FOUR
            for key, number in (("pool", 30), ("more", 1), ("left", 31 - each % 2))
        },
    ),
    (project.skein_holds, dict(skeins=n(4, 2), in_skeins=q("yard", 800, 90), usual=q("m", 200, 150))),
    (
        project.skein_holds,
        dict(skeins=n(4, 0), in_skeins=q("yard", 800, 0), usual=q("m", 200, 150), package=q("m", 120, 50)),
    ),
    (project.grist_expected, dict(planned=q("m/g", 2, 3), ratio=n(1.25, 1))),
    (project.planned_grist, dict(design=q("m/g", 2, 3))),
    (project.planned_grist, dict(lot=q("m/g", 2, 3))),
    (reeling.expected_shrinkage, dict(usual=n(0.05, 0))),
    (reeling.expected_shrinkage, dict(usual=n(0.05, 0), sample=n(0.25, -0.1))),
    (reeling.finished_length, dict(length=q("yard", 200, 0), loop=q("inch", 72, 54), shrinkage=n(0.25, -0.1))),
    (reeling.known_shrinkage, dict(sample=n(0.25, -0.1), design=n(0.1, 0))),
    (reeling.known_shrinkage, dict(design=n(0.12, 0))),
    (reeling.known_shrinkage, dict(bought=n(1, 1))),
    (reeling.as_bought, dict(stage=n(5, 3))),
    (reeling.as_bought, dict(stage=n(5, 3), sample=n(0.25, 0), design=n(0.12, 0))),
    (reeling.length_basis, dict(length=q("yard", 200, 0), sample=n(0, 0), bought=n(1, 0))),
    (reeling.length_basis, dict(length=q("yard", 200, 0))),
    (reeling.length_basis, dict(length=q("yard", 200, 0), washed_loop=q("inch", 70, 60))),
    (reeling.length_basis, dict(length=q("yard", 200, 0), sample=n(0.25, 0))),
    (belongings.belongs, dict(name=texts("Shawl", "hat"))),
    (belongings.belongs, dict(name=texts("Shawl", "hat"), gone=texts("set aside", "Set aside"))),
    (belongings.without_length, dict(served=q("oz", 4, 0), measured=q("g", 100, 0))),
    (belongings.how_many_went, dict(lines=n(1, np.nan, 4, 4), aside=n(2, 1))),
    (belongings.set_aside, dict(rest=q("oz", 4, 0), fate=texts("set aside", "Set aside"))),
    (belongings.is_free, dict(name=texts("Shawl", "hat"))),
    (belongings.is_free, dict(name=texts("Shawl", "hat"), project=texts("Cap", "cowl"), took=q("oz", 4, 2))),
    (which_yarn.measured, dict(name=texts("Shawl", "hat"), grist=q("yard/pound", 900, 1680))),
    (which_yarn.counts_as_one, dict(grist=q("yard/pound", 900, 1680))),
    (which_yarn.weighed, dict(name=texts("Shawl", "hat"), mass=q("oz", 4, 2))),
    (which_yarn.of_no_lot, dict(name=texts("Shawl", "hat"))),
    (which_yarn.made_alike, dict(lot=texts("Moss", "River"))),
    (which_yarn.made_alike, dict(lot=texts("Moss", "River"), project=texts("Shawl", "hat"), singles=n(2, 3))),
    (which_yarn.of_one_lot, dict(lot=texts("Moss", "River"))),
    (which_yarn.pair, dict(first=texts("Shawl", "hat"), second=texts("Reel", "Other"))),
    (
        belongings.free_of_strands,
        dict(
            lots=["", "Moss", "River"],
            of_lots=q("yard", np.nan, 50, 0),
            design=texts("gray", "Wrapped"),
            lot_1=texts("Moss", "River"),
            lot_4=texts("River", "moss"),
        ),
    ),
    (
        belongings.free_skeins,
        dict(
            designs=["Gray", "", "Wrapped"],
            of_designs=q("yard", 100, np.nan, 20),
            lots=["", "Moss", "River"],
            of_lots=q("yard", np.nan, 50, 0),
            design=texts("gray", "Wrapped"),
            lot_1=texts("Moss", "River"),
        ),
    ),
    (plying.component_key, dict(design=texts("Gray", "Wrapped"), place=n(1, 4))),
    (plying.component_label, dict(design=texts("Gray", "Wrapped"), place=n(1, 4), name=texts("Core", "Silk"))),
    *(
        (uncertainty.by_washing, dict(shrinkage=n(0.05, -0.1), u_usual=n(0.03, 0), u_sampled=n(0.01, 0)) | known)
        for known in ({}, dict(sampled=n(0.05, -0.1)))
    ),
    *(
        (calculation, dict(project=texts("Vest", "hat"), **{share: n(0.003, 0)}) | known)
        for calculation, share in ((uncertainty.common_to_all, "u_scale"), (uncertainty.bought_together, "u_batch"))
        for known in (
            {},
            dict(u_washing=n(0.03, 0)),
            dict(u_washing=n(0.03, 0), own=q("m/g", 2, 3)),
            dict(u_washing=n(0.03, 0), sample=q("m/g", 2, 3)),
        )
    ),
    (plying.bought_part, dict(contribution=q("tex", 50, 100))),
    (plying.fed_to_spin, dict(strands=n(2, 1), feed=n(1.25, 1))),
    (plying.fed_to_spin, dict(strands=n(2, 1), feed=n(1.25, 1), form=texts("yarn or thread", "raw fleece"))),
    (plying.take_up_of_feeds, dict(strands=n(2, 1), fed=n(2.5, 1.25))),
    (plying.strands_to_spin, dict(strands=n(2, 1))),
    (plying.strands_to_spin, dict(strands=n(2, 1), form=texts("yarn or thread", "raw fleece"))),
    (plying.bought_part, dict(contribution=q("tex", 50, 100), form=texts("yarn or thread", "raw fleece"))),
    (
        plying.strand_taken,
        dict(
            contribution=q("tex", 50, 100),
            resultant=q("tex", 200, 300),
            own_bought=q("tex", 50, 0),
            all_bought=q("tex", 50, 0),
            mass=q("oz", 4, 0),
            length=q("yard", 400, 0),
            weighed=q("yard", 300, 0),
        ),
    ),
    (uncertainty.beside_the_plan, dict(seen=q("m/g", 3, 2), planned=q("yard/pound", 900, 1680))),
    (strands.unlike_lots, dict(bought=n(0, 1), stage_2=n(5, 5), stage_3=n(3, 5), lot=texts("Aster", "Birch"))),
    (strands.unlike_lots, dict(bought=n(0, 1), stage_2=n(4, 4), lot=texts("Aster", "Birch"))),
    (strands.without_a_lot, dict(wanting=n(1, 0), design=texts("gray", "Wrapped"))),
    (
        strands.without_a_lot,
        dict(wanting=n(1, 0), design=texts("gray", "Wrapped"))
        | {f"share_{part}": n(0.5, 0.25) for part in range(2, 5)}
        | {f"lot_{part}": texts("Moss", "River") for part in range(1, 5)},
    ),
    (used_up.in_no_skein, dict(yarn=q("oz", 4, 2), spun=q("g", 50, 0), fate=texts("used", "Used"))),
    (used_up.off_its_marks, dict(served=q("oz", 4, 2), still_there=q("g", 50, 0), used=q("oz", 3, 3))),
    (used_up.unseen_of_strands, dict(wanting=n(1, 0), lots=["", "Moss", "River"], of_lots=[np.nan, 0.1, 0.6])),
    (
        used_up.unseen_of_strands,
        dict(wanting=n(1, 0), lots=["", "Moss", "River"], of_lots=[np.nan, 0.1, 0.6])
        | {f"lot_{part}": texts("River", "moss") for part in range(1, 5)},
    ),
    (project.is_wanting, dict(more=q("yard", 12, 0))),
    *(
        (
            uncertainty.anew_square,
            dict(weight=n(0.5, 0), u_scale=n(0.005, 0), in_skeins=q("yard", 200, 0), skeins_doubt=q("m", 4, 0))
            | {f"square_{each}": n(0.01 * each, 0) for each in strands}
            | {f"come_{each}": q("yard", 300, -10) for each in strands}
            | {f"u_come_{each}": q("m", 20 * each, 0) for each in strands},
        )
        for strands in ((1,), FOUR)
    ),
    (
        uncertainty.more_anew,
        dict(
            in_skeins=q("yard", 200, 0),
            need=q("m", 400, 300),
            to_come=q("yard", 300, -10),
            u_skeins=q("m", 4, 0),
            u_need=q("yard", 20, 0),
            square=n(0.01, 0),
            coverage=n(1.28, 0),
            weight=n(0.5, 0),
            hold=q("yard", 200, 150),
            variation=n(0.1, 0),
            u_ball=n(0.02, 0),
        ),
    ),
    (uncertainty.no_more_than_anew, dict(joint=q("yard", 20, 30))),
    (uncertainty.no_more_than_anew, dict(joint=q("yard", 20, 30), anew=q("m", 12, -3), share=n(0.5, 0.25))),
    (project.is_wanting, dict(more=q("yard", 12, 0), used=q("oz", 4, 0))),
    (sharing.on_the_last, dict(more_1=q("g", 8, 0), needs_1=q("oz", 4, 0))),
    (
        sharing.on_the_last,
        {f"more_{part}": q("g", 8, part) for part in range(1, 5)}
        | {f"needs_{part}": q("oz", 4, 1) for part in range(1, 5)},
    ),
    (plying.expected_weight, dict(finished=q("yard", 200, 0), planned=q("m/g", 2, 3))),
    (plying.expected_weight, dict(finished=q("yard", 200, 0), mean=q("yard/pound", 900, 1680))),
    (plying.washed_grist, dict(linear_density=q("tex", 200, 300), shrinkage=n(0.05, -0.1))),
    (plying.drawn_from_lot, dict(taken=q("oz", 4, 0), weight=q("g", 100, 50), other_weight=q("oz", 4, 2))),
    (strands.component_share, dict(yarn=q("m/g", 2, 3))),
    (
        strands.component_share,
        dict(yarn=q("m/g", 2, 3), found=n(0.5, 1), stage=n(5, 4), thread=n(1.2, 1), singles=n(0.8, 1)),
    ),
    (
        strands.off_the_design,
        dict(planned=q("m/g", 2, 3), linear_density=q("tex", 400, 300), shrinkage=n(0.05, 0), thread=n(0.2, 0.5))
        | dict(own=q("m/g", 2, 3), sample=q("yard/pound", 900, 1500)),
    ),
    (
        strands.off_the_design,
        dict(planned=q("m/g", 2, 3), linear_density=q("tex", 400, 300), shrinkage=n(0.05, 0), thread=n(0.2, 0.5))
        | dict(sample=q("yard/pound", 900, 1500)),
    ),
    (strands.share_of_thread_times, dict(off=n(0.2, -0.1), thread=n(0.2, 0.5))),
    (strands.share_of_singles_times, dict(times=n(1.2, 0.9), thread=n(0.2, 0.5))),
    (strands.lot_in_use, dict(picked=texts("Moss", "River"))),
    (strands.lot_in_use, dict(own=texts("Moss", "River"))),
    (strands.strand_name, dict(share=n(0.5, 1))),
    (strands.strand_name, dict(share=n(0.5, 1), label=texts("Core", "Silk"), lot=texts("Moss", "River"))),
    (strands.is_bought, dict(share=n(0.5, 1), stage=n(5, 1))),
    (
        strands.bought_share,
        {f"{key}_{each}": value for each in FOUR for key, value in (("bought", n(1, 0)), ("share", n(0.25, 0.5)))},
    ),
    (strands.to_spin, dict(need=q("yard", 400, 100), in_skeins=q("m", 100, 200))),
    (strands.to_spin, dict(need=q("yard", 400, 100), in_skeins=q("m", 100, 200), used=q("g", 300, 0))),
    (strands.component_needs, dict(to_spin=q("yard", 400, 0), **STRAND)),
    (strands.component_length, dict(left=q("oz", 4, -1), **STRAND)),
    (strands.length_in_doubt, dict(doubt=q("oz", 4, 0), **STRAND)),
    (strands.length_in_doubt, dict(doubt=q("oz", 4, 0), before=n(0, 0), **STRAND)),
    (strands.component_over, dict(left=q("oz", 4, -1), needs=q("g", 100, 0))),
    (strands.share_used, dict(left=q("oz", 4, 1), needs=q("g", 100, 0))),
    (strands.least, {f"come_{each}": q("yard", 100 + each, 100 - each) for each in FOUR}),
    (strands.left_in_the_end, dict(come=q("yard", 400, 100), least=q("m", 100, 90), **STRAND)),
    (strands.to_buy, dict(level=q("m", 140, 90), come=q("yard", 400, 100), kept=n(0.5, 1), **STRAND)),
    (
        strands.may_run_out,
        dict(come=q("yard", 110, 130), u_come=q("m", 9, 3), least=q("m", 100, 90), more=q("yard", 10, 0))
        | dict(shared=n(0.003, 0)),
    ),
    (
        strands.length_to_last,
        dict(least=q("m", 100, 90), mean=q("yard", 100, 95), more=q("yard", 10, 0))
        | {f"near_{each}": q("m^2", 9, 16) for each in FOUR},
    ),
    (sharing.pool, dict(share=n(0.5, 1), lot_1=texts("moss", "River"), lot_2=texts("River", "MOSS"), **LOTS)),
    (sharing.pool, dict(share=n(0.5, 1), lot_1=texts("moss", "River"), part=n(0.75, 1), **LOTS)),
    (
        sharing.pool_square,
        dict(
            share=n(0.5, 1),
            names=["Moss", "River", ""],
            squares=q("g^2", 9, 4, np.nan),
            lot_1=texts("moss", "River"),
            part=n(0.75, 1),
        ),
    ),
    (sharing.more_than_reckoned, dict(pool=q("oz", 4, 0), square=q("g^2", 900, 1600))),
    (sharing.claim, dict(needs=q("oz", 20, 0), pool=q("g", 800, 100))),
    (sharing.claim, dict(needs=q("oz", 20, 0), pool=q("g", 800, 100), part=n(0.75, 1))),
    (sharing.strand_lots, dict(design=texts("Tweed", "Marl"), lot=texts("Moss", "River"))),
    (
        sharing.strand_lots,
        dict(design=texts("Tweed", "Marl"), lot=texts("Moss", "River"), other_lot=texts("River", "Fern")),
    ),
    (
        sharing.part_of_lots,
        dict(
            share=n(0.25, 1),
            own=texts("tweed / moss", "Marl / River"),
            lots=["Tweed / Moss", "", "Tweed / Moss", "Marl / River"],
            shares=[0.25, np.nan, 0.5, 1.0],
        ),
    ),
    (sharing.part_of_lots, dict(share=n(0.25, 1), lots=["Tweed / Moss", ""], shares=[0.25, np.nan])),
    *(
        (
            sharing.strands_that_overlap,
            dict(
                own=texts("tweed / moss", "Marl / River"),
                first=texts("tweed / moss", "Marl / River"),
                lots=["Tweed / Moss", "Tweed / Moss / Fern", "Marl / River"],
                firsts=["Tweed / Moss", "Tweed / Moss", "Marl / River"],
                spares=["", "Tweed / Fern", ""],
                amounts=q("tex", 100, 80, np.nan),
                **spare,
            ),
        )
        for spare in ({}, dict(spare=texts("Tweed / Fern", "Marl / Fern")))
    ),
    (sharing.counted_before, dict(lot=texts("Moss", "River"), lot_1=texts("moss", "Moss"))),
    (
        sharing.counted_before,
        dict(lot=texts("Moss", "River"), other=texts("Fern", "Fern"))
        | {f"lot_{each}": texts("moss", "Moss") for each in (1, 2, 3)}
        | {f"other_{each}": texts("Fern", "Fern") for each in (1, 2, 3)},
    ),
    (strands.part_in_use, dict(share=n(0.5, 1))),
    (strands.part_in_use, dict(share=n(0.5, 1), found=n(0.25, 1))),
    (
        sharing.left_by_others,
        dict(
            pool=q("oz", 40, 30),
            needs=q("g", 100, 0),
            lot_1=texts("moss", "River"),
            more=q("g", 9, 0),
            promised=[0.5, np.nan, 2.0],
            **LOTS,
        ),
    ),
    (
        sharing.left_by_others,
        dict(
            pool=q("oz", 40, 30),
            needs=q("g", 100, 0),
            lot_1=texts("moss", "River"),
            promised=[0.5, np.nan, 2.0],
            part=n(0.75, 1),
            **LOTS,
        ),
    ),
    (
        sharing.taken_by_pieces,
        dict(name=texts("moss", "River"))
        | {f"taken_{each}": q("g", 4, np.nan, 9) for each in FOUR}
        | {f"lots_{each}": ["Moss", "", "River"] for each in FOUR},
    ),
    (sharing.share_promised, dict(name=texts("moss", "River"), **CLAIMED, left=q("oz", 4, 5))),
    (sharing.need_square, dict(share=n(0.5, 1), doubt_need=q("yard", 20, 0), planned=q("m/g", 2, 3))),
    (
        sharing.need_square,
        dict(share=n(0.5, 1), doubt_need=q("yard", 20, 0), planned=q("m/g", 2, 3), used=q("g", 300, 0)),
    ),
    (sharing.need_square, dict(share=n(0.5, 1), doubt_need=q("yard", 20, 0), planned=q("m/g", 2, 3), part=n(0.75, 1))),
    *(
        (
            sharing.others_square,
            dict(
                own=q("g^2", 4, 1),
                names=["Moss", "", "River"],
                squares=q("g^2", 9, np.nan, 4),
                lot=texts("moss", "River"),
                **part,
            ),
        )
        for part in ({}, dict(part=n(0.75, 1)))
    ),
    (
        sharing.squares_on_lot,
        dict(name=texts("moss", "River"))
        | {f"squares_{each}": q("g^2", 4, np.nan, 9) for each in FOUR}
        | {f"lots_{each}_a": ["Moss", "", "River"] for each in FOUR},
    ),
    (sharing.hand_of_needs, dict(needs=q("oz", 4, 0), bought=n(0, 1), u_plan=n(0.08, 0), weight=n(0.75, 1))),
    (
        sharing.hands_on_lot,
        dict(name=texts("moss", "River"))
        | {f"hands_{each}": q("g", 4, np.nan, 9) for each in FOUR}
        | {f"lots_{each}_a": ["Moss", "", "River"] for each in FOUR},
    ),
    *(
        (
            sharing.others_hand,
            dict(own=q("g", 2, 1), names=["Moss", "", "River"], hands=q("oz", 9, np.nan, 4), weight=n(0.75, 0)) | known,
        )
        for known in (dict(lot=texts("moss", "River")), dict(lot=texts("moss", "River"), part=n(0.75, 1)))
    ),
    (uncertainty.counted, dict(finished=q("yard", 200, 0), wraps=n(100, 50), u_wraps=n(0.5, 0))),
    (uncertainty.taped, dict(finished=q("yard", 200, 0), washed_loop=q("inch", 70, 60), u_tape=q("mm", 3, 0))),
    (uncertainty.own_square, dict(count_part=q("yard", 2, 0), tape_part=q("m", 1, 0))),
    (uncertainty.by_reel, dict(finished=q("yard", 200, 0), loop=q("inch", 72, 54), u_loop=q("mm", 9, 0))),
    (uncertainty.by_slack, dict(finished=q("yard", 200, 0), u_slack=n(0.005, 0), washed_loop=q("inch", 70, 60))),
    (
        uncertainty.by_shrinkage,
        dict(finished=q("yard", 200, 0), shrinkage=n(0.05, -0.1), u_usual=n(0.03, 0), u_sampled=n(0.01, 0)),
    ),
    (
        uncertainty.by_shrinkage,
        dict(
            finished=q("yard", 200, 0),
            shrinkage=n(0.05, -0.1),
            u_usual=n(0.03, 0),
            u_sampled=n(0.01, 0),
            sampled=n(0.05, -0.1),
        ),
    ),
    (uncertainty.with_its_reel, dict(part=q("yard", 2, 0), sum_of_reel=q("m", 10, 5))),
    (
        uncertainty.skein_uncertainty,
        dict(own=q("yard^2", 4, 0), reel_part=q("m", 2, 1), slack_part=q("m", 2, 1), shrink_part=q("yard", 2, 1)),
    ),
    (
        uncertainty.skeins_uncertainty,
        dict(own=q("yard^2", 4, 0), by_reels=q("m^2", 2, 1), slack=q("m", 2, 1), shrink=q("yard", 2, 1)),
    ),
    (statistics.beside_the_usual, dict(variation=n(0.16, 0), usual=n(0.08, 0.1))),
    (
        statistics.change_ahead,
        dict(
            count=n(5, 6),
            to_spin=q("yard", 300, 0),
            hold=q("m", 100, 120),
            drift=n(-0.2, 0.1),
            beyond=n(-3, 2),
            bought_share=n(0.25, 0),
        ),
    ),
    (uncertainty.learned_weight, dict(u_plan=n(0.08, 0), variation=n(0.08, 0.1), skeins=n(4, 0))),
    (
        uncertainty.finer_than_planned,
        dict(weight=n(0.5, 0), bought_share=n(0.25, 0), planned=q("m/g", 2, 3), seen=q("yard/pound", 900, 1680)),
    ),
    (uncertainty.finer_than_planned, dict(weight=n(0.5, 0), bought_share=n(0.25, 0), planned=q("m/g", 2, 3))),
    (
        uncertainty.grist_uncertainty,
        dict(
            pool=q("oz", 20, 0),
            share=n(0.5, 1),
            planned=q("m/g", 2, 3),
            hold=q("yard", 200, 150),
            bought=n(0, 1),
            u_hand=n(0.08, 0),
            variation=n(0.08, 0.1),
            u_batch=n(0.03, 0),
            u_ball=n(0.02, 0),
        ),
    ),
    (
        uncertainty.coming_uncertainty,
        dict(
            pool_square=q("oz^2", 0.25, 0),
            others_square=q("g^2", 4, 0),
            pool=q("oz", 20, 0),
            relative=n(0.08, 0),
            needs=q("oz", 4, 0),
            left=q("oz", 15, 0),
            more=q("g", 1, 0),
        ),
    ),
    (
        uncertainty.coming_uncertainty,
        dict(
            pool_square=q("oz^2", 0.25, 0),
            others_square=q("g^2", 4, 0),
            pool=q("oz", 20, 0),
            relative=n(0.08, 0),
            needs=q("oz", 4, 0),
            left=q("oz", 15, 0),
            others_hand=q("g^2", 9, 0),
        ),
    ),
    *(
        (
            calculation,
            dict(first=q("yard", 400, 100), u_first=q("m", 20, 0), second=q("m", 380, 100), u_second=q("yard", 30, 0)),
        )
        for calculation in (uncertainty.lesser, uncertainty.lesser_uncertainty)
    ),
    *(
        (
            calculation,
            dict(first=q("yard", 400, 100), u_first=q("m", 20, 9), second=q("m", 380, 100), u_second=q("yard", 30, 9))
            | dict(shared=q("m^2", 100, 0)),
        )
        for calculation in (uncertainty.lesser, uncertainty.lesser_uncertainty)
    ),
    *(
        (
            uncertainty.shared_by_all,
            dict(u_hand=n(0.08, 0)) | {f"bought_{each}": n(0, 1) for each in range(1, strands + 1)},
        )
        for strands in (1, 4)
    ),
    (
        uncertainty.coming_uncertainty,
        dict(
            pool_square=q("oz^2", 0.25, 0),
            others_square=q("g^2", 4, 0),
            pool=q("oz", 20, 0),
            relative=n(0.08, 0),
            needs=q("oz", 4, 0),
            left=q("oz", 15, 0),
            apart=q("g^2", 9, 0),
        ),
    ),
    *(
        (
            uncertainty.strands_apart,
            {f"bought_{each}": n(0, 1) for each in range(1, strands + 1)}
            | {f"before_{each}": n(0, 1) for each in range(2, strands + 1)},
        )
        for strands in (1, 4)
    ),
    (uncertainty.apart_in_common, dict(u_plan=n(0.08, 0.1), weight=n(0.5, 0), count=n(2, 1))),
    (
        uncertainty.apart_square,
        dict(apart=n(0.0016, 0), count=n(2, 1), pool=q("oz", 4, 0), in_skeins=q("yard", 300, 0), share=n(0.5, 1))
        | dict(planned=q("m/g", 2, 3), ratio=n(1.1, 1), bought=n(0, 1)),
    ),
    (
        uncertainty.hand_in_common,
        dict(first=q("yard", 400, 100), second=q("m", 380, -1), u_hand=n(0.08, 0), bought_1=n(0, 0), bought_2=n(0, 1))
        | dict(apart=n(0.0016, 0), in_skeins=q("yard", 300, 0)),
    ),
    *(
        (
            uncertainty.hand_in_common,
            dict(first=q("yard", 400, 100), second=q("m", 380, -1), u_hand=n(0.08, 0))
            | {f"bought_{each}": n(0, 1) for each in range(1, strands + 1)},
        )
        for strands in (2, 4)
    ),
    (
        uncertainty.in_hand_uncertainty,
        dict(
            skeins_doubt=q("yard", 9, 0),
            in_skeins=q("m", 100, 0),
            to_come=q("yard", 300, -10),
            u_to_come=q("m", 20, 0),
            weight=n(0.5, 0),
            u_scale=n(0.005, 0),
        ),
    ),
    (
        uncertainty.in_hand_uncertainty,
        dict(skeins_doubt=q("yard", 9, 0), in_skeins=q("m", 100, 0), weight=n(0.5, 0), u_scale=n(0.005, 0)),
    ),
    (
        uncertainty.more_for,
        dict(
            spare=q("yard", 20, -30),
            uncertainty=q("m", 40, 0),
            with_more=q("yard", 4, 0),
            square_more=n(0.01, 0),
            coverage=n(1.28, 0),
        ),
    ),
    (uncertainty.more_for, dict(spare=q("yard", 20, -30), uncertainty=q("m", 40, 0), coverage=n(1.28, 0))),
    *(
        (uncertainty.strand_added_square, dict(bought=n(0, 1), u_hand=n(0.08, 0), u_batch=n(0.03, 0)) | kept)
        for kept in ({}, dict(u_kept=n(0.1, 0)))
    ),
    *(
        (
            uncertainty.strand_added_with,
            dict(
                pool=q("oz", 30, 0),
                hold=q("yard", 200, 150),
                u_hand=n(0.08, 0),
                variation=n(0.1, 0),
                u_batch=n(0.03, 0),
                u_ball=n(0.02, 0),
                **strand,
            ),
        )
        for strand in (STRAND, {key: each for key, each in STRAND.items() if key != "finer"})
    ),
    *(
        (
            uncertainty.added_square,
            dict(weight=n(0.5, 0), u_scale=n(0.005, 0), in_skeins=q("yard", 200, 0), skeins_doubt=q("m", 4, 0))
            | {f"square_{each}": n(0.01 * each, 0) for each in strands},
        )
        for strands in ((1,), FOUR)
    ),
    *(
        (
            uncertainty.added_with,
            dict(
                weight=n(0.5, 0),
                u_scale=n(0.005, 0),
                in_skeins=q("yard", 200, 0),
                skeins_doubt=q("m", 4, 0),
                to_come=q("yard", 300, -50),
            )
            | {f"with_{each}": q("m", each, 0) for each in strands},
        )
        for strands in ((1,), FOUR)
    ),
    (uncertainty.need_relative, dict(need=q("yard", 400, 90))),
    (uncertainty.need_relative, dict(need=q("yard", 400, 90), own=n(0.03, 0))),
    (uncertainty.need_relative, dict(need=q("yard", 400, 90), by_rule=n(1, 0))),
    (uncertainty.need_relative, dict(need=q("yard", 400, 90), stated=q("yard", 400, 0), by_rule=n(1, 0))),
    (uncertainty.need_relative, dict(need=q("yard", 400, 90), weft=q("m", 300, 0))),
    (uncertainty.need_uncertainty, dict(need=q("yard", 400, 0), relative=n(0.05, 0))),
    (
        fiber.surely_before,
        dict(
            bought=q("g", 900, 0),
            stage=n(1, 5),
            u_kept=n(0.06, 0),
            u_grist=n(0.08, 0.1),
            u_batch=n(0.03, 0),
            coverage=n(1, 1.28),
        ),
    ),
    (fiber.kept_uncertainty, dict(stage=n(1, 3), **DOUBTS)),
    (
        fiber.kept_uncertainty,
        dict(
            stage=n(1, 5),
            u_second=n(0.08, 0),
            own_skirting=n(0.1, 0),
            own_yield=n(0.5, 1),
            own_preparation=n(0.1, 0),
            own_spinning=n(0.1, 0),
            **DOUBTS,
        ),
    ),
    *(
        (fiber.yarn_uncertainty, dict(yarn=q("oz", 40, 0), stage=n(1, 3), **DOUBTS, **known))
        for known in (
            {},
            dict(own_skirting=n(0.1, 0), own_yield=n(0.5, 1), own_preparation=n(0.1, 0), own_spinning=n(0.1, 0)),
            dict(u_second=n(0.08, 0)),
            dict(skirted=q("g", 900, 0)),
            dict(scoured=q("g", 900, 0)),
            dict(prepared=q("g", 900, 0)),
            dict(whole=q("g", 900, 0)),
        )
    ),
    (answer.verdict, dict(chance=n(0.84, 0.99), certainty=n(0.9, 0.95))),
    (answer.verdict, dict(chance=n(0.84, 0.99), certainty=n(0.9, 0.95), used=q("g", 300, 0))),
    (answer.verdict, dict(chance=n(0.84, 0.0), certainty=n(0.9, 0.95), yarnless=n(0, 1))),
    (answer.chance_words, dict(chance=n(0.84, 0.99))),
    (answer.chance_words, dict(chance=n(0.84, 0.99), yarnless=n(0, 0))),
    (answer.chance_words, dict(chance=n(0.84, 0.899), certainty=n(0.9, 0.9), more=q("yard", 20, 5))),
    (project.without_yarn, dict(skeins=q("yard", 290, 0))),
    (project.without_yarn, dict(skeins=q("yard", 290, 0), lot_1=texts("Aster", "Birch"))),
    (answer.lacking, dict(spare=q("yard", 20, -20))),
    (
        answer.in_short,
        dict(verdict=texts("likely enough", "short"), spare=q("yard", 20, -20), lacking=q("yard", 0, 20)),
    ),
    (answer.not_below_nothing, dict(amount=q("yard", 420, -20))),
    (project.there_is, dict(skeins=q("yard", 290, 0), have=q("m", 420, -20))),
    *(
        (
            end,
            dict(skeins=q("yard", 290, 0), u_skeins=q("m", 5, 0), have=q("yard", 420, -20), uncertainty=q("m", 15, 2)),
        )
        for end in (project.least_there, project.most_there)
    ),
    *(
        (
            answer.answer,
            dict(
                there=q("yard", 420, 380),
                need=q("yard", 400, 400),
                spare=q("m", 20, -20),
                over=q("yard", 20, 0),
                lacking=q("yard", 0, 20),
            )
            | known,
        )
        for known in (
            dict(chance_words=texts("84%", "16%")),
            dict(yarnless=n(0, 1)),
            dict(
                chance_words=texts("84%", "16%"),
                least=q("yard", 390, 350),
                most=q("yard", 450, 410),
                free=q("yard", 240, 0),
            ),
            dict(have=q("m", 20, -300), chance_words=texts("84%", "under 2%")),
            dict(used=q("g", 300, 0)),
        )
    ),
    (strands.used_besides, dict(used=q("oz", 10, 3), logged=q("g", 100, 200))),
    (strands.taken_by_piece, dict(rest=q("oz", 10, 3))),
    (strands.taken_by_piece, dict(rest=q("oz", 10, 3), share=n(0.25, 1), design=texts("A", "B"))),
    (balls.ball_weighs, dict(planned=q("m/g", 2, 3), package=q("yard", 200, 100))),
    (balls.ball_weighs, dict(planned=q("m/g", 2, 3), spool=q("oz", 2, 1))),
    (balls.balls_to_buy, dict(buy=q("g", 120, 0), ball=q("oz", 2, 1), bought=n(1, 0))),
    (balls.to_get, dict(buy=q("g", 120, 0), bought=n(1, 0), part=n(0.5, 1), before=n(0, 1))),
    (balls.got_as, dict(name=texts("core", "single"), bought=n(1, 0), part=n(0.5, 1), lot=texts("Cone", "Moss"))),
    (
        strands.scarcest,
        dict(least=q("m", 100, 90))
        | {
            f"{key}_{each}": value
            for each in FOUR
            for key, value in (("come", q("m", 99 + each, 94 - each)), ("name", texts(f"A{each}", f"B{each}")))
        },
    ),
    (
        advice.advice,
        dict(more=q("yard", 40, 0), certainty=n(0.9, 0.95))
        | {
            f"{key}_{each}": value
            for each in FOUR
            for key, value in (
                ("buy", q("oz", each, 0)),
                ("name", texts(f"A{each}", f"B{each}")),
                ("form", texts("raw fleece", "yarn or thread")),
            )
        },
    ),
    (
        advice.advice,
        dict(more=q("yard", 40, 0), certainty=n(0.9, 0.95), design=texts("A", "B"))
        | {
            f"{key}_{each}": value
            for each in FOUR
            for key, value in (
                ("buy", q("oz", each, 0)),
                ("name", texts(f"A{each}", f"B{each}")),
                ("balls", n(each, 0)),
            )
        },
    ),
    (advice.advice, dict(more=q("yard", 40, 0), certainty=n(0.9, 0.95), used=q("g", 300, 0))),
    (advice.advice, dict(more=q("yard", 40, 0), certainty=n(0.9, 0.95), shared=n(1, 0))),
    (advice.advice, dict(more=q("yard", 40, 10), certainty=n(0.9, 0.95), yarnless=n(1, 0))),
    (advice.advice, dict(more=q("yard", 40, 10), certainty=n(0.9, 0.95), free=q("yard", 0, 200))),
    (advice.instead, dict(more=q("yard", 40, 1), chance=n(0.5, 0.7), yarnless=n(0, 0))),
]
