"""Arguments for the calculations of reel, fiber and yarn."""

import numpy as np

from workbookgen.reference import (
    diameter,
    fiber,
    garments,
    gauge,
    how_fine,
    kept_stock,
    labels,
    moisture,
    own_records,
    plying,
    records,
    reeling,
    twist,
    yarn_count,
)

from .amounts import n, q, texts

LOGGED = {"names": ["Aster", "birch", "", "aster"], "amounts": q("oz", 1, 2, 4, 8)}
RECORDED = {"names": ["Aster", "birch", "", "aster", "cedar"], "shares": n(0.5, 0.75, 0.125, 0.25, np.nan)}

EXAMPLES = [
    (reeling.length, dict(wraps=n(9, 80), loop=q("inch", 72, 54), part_wrap=n(0, 0.5), rest=q("cm", 3, 0))),
    (reeling.measured_loop, dict(cord=q("yard", 10, 3), turns=n(5, 2.5))),
    (reeling.niddy_noddy_loop, dict(height=q("inch", 15, 18), arm_a=q("cm", 30, 31), arm_b=q("inch", 14, 9))),
    (reeling.loop_in_use, dict(rated=q("yard", 2, 1.5))),
    (reeling.loop_in_use, dict(measured=q("inch", 71, 72))),
    (reeling.loop_in_use, dict(from_arms=q("cm", 180, 181))),
    (reeling.loop_basis, dict(rated=q("yard", 2, 1.5))),
    (reeling.loop_basis, dict(measured=q("inch", 71, 72))),
    (reeling.loop_basis, dict(from_arms=q("cm", 180, 181))),
    (reeling.relative_tolerance, dict(tolerance=q("inch", 0.5, 0), loop=q("yard", 2, 1.5))),
    (reeling.hundred_wraps, dict(loop=q("inch", 72, 54))),
    (reeling.hundred_wraps_tolerance, dict(tolerance=q("inch", 0.5, 0))),
    (reeling.loop_uncertainty, dict(loop=q("yard", 2, 1.5))),
    (reeling.loop_uncertainty, dict(loop=q("yard", 2, 1.5), tolerance=q("inch", 0.5, 0))),
    (reeling.loop_uncertainty, dict(loop=q("yard", 2, 1.5), misread=n(0.02, 0))),
    (reeling.loop_uncertainty, dict(loop=q("yard", 2, 1.5), from_arms=q("cm", 180, 140))),
    (reeling.misread_turns, dict(turns=n(6.25, 6.3), measured=q("inch", 71, 72))),
    (reeling.finished_length, dict(length=q("yard", 200, 0), loop=q("inch", 72, 54), washed_loop=q("cm", 180, 130))),
    (reeling.shrinkage, dict(length=q("yard", 200, 100), finished=q("m", 180, 92))),
    (reeling.layers_wound, dict(wraps=n(120, 80), diameter=q("mm", 1.5, 1), width=q("inch", 2, 4))),
    (reeling.last_layer, dict(wraps=n(120, 80), diameter=q("mm", 1.5, 1), width=q("inch", 2, 4), layers=n(4, 1))),
    (reeling.turning, dict(height=q("inch", 15, 18), arm_a=q("cm", 30, 31), arm_b=q("inch", 14, 9))),
    (
        reeling.mean_loop,
        dict(loop=q("inch", 72, 54), turning=n(6.25, 9), diameter=q("mm", 1.5, 1), layers=n(4, 1), last=n(0.25, 1)),
    ),
    (reeling.growth, dict(mean_loop=q("inch", 73, 54), loop=q("cm", 180, 130))),
    (reeling.net_mass, dict(gross=q("oz", 4, 2), tare=q("g", 3, 0))),
    (yarn_count.grist, dict(length=q("yard", 200, 100), mass=q("g", 100, 30))),
    (yarn_count.linear_density, dict(length=q("yard", 200, 100), mass=q("g", 100, 30))),
    (yarn_count.indirect_count, dict(grist=q("yard/pound", 900, 1680))),
    (yarn_count.direct_count, dict(grist=q("yard/pound", 900, 1680))),
    (yarn_count.grist_of, dict(number=n(2, 120), system=texts("cotton count", "tex"))),
    (yarn_count.grist_of_density, dict(linear_density=q("tex", 200, 30))),
    (yarn_count.grist_in_use, dict(wanted=q("yard/pound", 900, 1680))),
    (yarn_count.grist_in_use, dict(from_wraps=q("m/g", 2, 3))),
    (yarn_count.mass_of_length, dict(length=q("yard", 200, 0), grist=q("m/g", 2, 3))),
    (yarn_count.length_of_mass, dict(mass=q("oz", 4, 0), grist=q("yard/pound", 900, 1680))),
    (diameter.threads_side_by_side, dict(grist=q("m/g", 2, 3), k=n(0.84, 0.95))),
    (diameter.wraps_expected, dict(grist=q("m/g", 2, 3), k=n(0.5, 0.4))),
    (diameter.wraps_expected, dict(grist=q("yard/pound", 900, 1680))),
    (diameter.touching_width, dict(grist=q("m/g", 2, 3), k=n(0.5, 0.4))),
    (diameter.touching_width, dict(grist=q("yard/pound", 900, 1680))),
    (diameter.fitted_k, dict(wraps=q("1/cm", 4, 5), grist=q("yard/pound", 900, 1680))),
    (diameter.packing, dict(k=n(0.9, 0.35), fiber_density=q("g/cm^3", 1.31, 1.52))),
    (
        diameter.yarn_diameter,
        dict(linear_density=q("tex", 200, 30), fiber_density=q("g/cm^3", 1.31, 1.52), packing=n(0.4, 1)),
    ),
    (diameter.fiber_linear_density, dict(fiber_diameter=q("um", 25, 18), fiber_density=q("g/cm^3", 1.31, 1.52))),
    (
        diameter.fibers_in_section,
        dict(linear_density=q("tex", 200, 30), fiber_diameter=q("um", 25, 18), fiber_density=q("g/cm^3", 1.31, 1.52)),
    ),
    (diameter.wraps_in_use, dict(counted=q("1/inch", 10, 11))),
    (diameter.wraps_in_use, dict(expected=q("1/cm", 4, 5))),
    (diameter.wrap_width, dict(wraps=q("1/inch", 10, 11))),
    (diameter.yarn_weight_class, dict(wraps=q("1/inch", 10, 11))),
    *((calculation, dict(wraps=q("1/inch", 10, 3))) for calculation in (gauge.fewest_stitches, gauge.most_stitches)),
    (gauge.gauge_words, dict(fewest=n(16, 0), most=n(20, 6))),
    (moisture.mass_at_regain, dict(dry_mass=q("g", 21, 0), regain=n(0.136, 0))),
    (moisture.dry_mass, dict(mass=q("oz", 4, 0), moisture_content=n(0.12, 0))),
    (moisture.regain_of, dict(moisture_content=n(0.12, 0))),
    (moisture.moisture_content_of, dict(regain=n(0.136, 0))),
    (moisture.correct_mass, dict(mass=q("oz", 4, 1), moisture_content=n(0.04, 0), regain=n(0.136, 0))),
    (fiber.stage, dict(state=texts("Raw fleece", "yarn or thread"))),
    *(
        (calculation, {before: q("g", 1000, 800), "stage": n(1, 5), **known})
        for calculation, before in (
            (fiber.after_skirting, "weight"),
            (fiber.after_scouring, "skirted"),
            (fiber.after_preparation, "scoured"),
            (fiber.after_spinning, "prepared"),
        )
        for known in (dict(weighed=q("oz", 30, 99)), dict(own=n(0.3, 7)), dict(guide=n(0.4, 7)))
    ),
    *(
        (
            fiber.after_preparation,
            dict(scoured=q("g", 1000, 800, 700), stage=n(1, 5, 4), second=n(0.25, 0, 0.125), **known),
        )
        for known in (
            dict(weighed=q("oz", 30, 99, 20)),
            dict(own=n(0.3, 7, 7)),
            dict(own=n(0.3, 7, 7), own_second=n(0.25, 0, 0.125)),
        )
    ),
    (
        fiber.after_skirting,
        dict(
            weight=q("g", 1000, 800),
            stage=n(1, 5),
            guide=n(0.1, 7),
            scoured=q("oz", 33, 99),
            prepared=q("g", 910, 1),
            spun=q("g", 5, 1),
        ),
    ),
    (
        fiber.after_scouring,
        dict(skirted=q("g", 1000, 800), stage=n(1, 5), guide=n(0.5, 7), prepared=q("oz", 20, 99), spun=q("g", 5, 1)),
    ),
    (fiber.after_preparation, dict(scoured=q("g", 1000, 800), stage=n(1, 5), guide=n(0.1, 7), spun=q("oz", 33, 99))),
    *(
        (calculation, dict(weighed=q("oz", 30, 20), bought=q("g", 1000, 600)))
        for calculation in (fiber.after_scouring, fiber.after_preparation, fiber.after_spinning)
    ),
    *(
        (
            fiber.rest_square,
            dict(uncertainty=q("g", 4, 0), stage=n(1, 5), u_batch=n(0.03, 0.1), to_come=q("g", 50, 20)) | known,
        )
        for known in (
            {},
            dict(u_grist=n(0.08, 0.1), unweighed=q("oz", 3, 0)),
            dict(plied=q("oz", 4, 0)),
            dict(plied=q("oz", 4, 0), gone=texts("set aside", "used")),
        )
    ),
    (
        fiber.before_preparation,
        dict(prepared=q("g", 1000, 800, 700), stage=n(1, 5, 4), guide=n(0.4, 7, 7), second=n(0.25, 0, 0.125)),
    ),
    *(
        (fiber.second_loss, known)
        for known in (
            dict(own=n(0.25, 0)),
            dict(way=texts("Combing", "carding"), carding=n(0.06, 0.1), combing=n(0.3, 0.25)),
        )
    ),
    *(
        (fiber.second_uncertainty, dict(u_own=n(0.03, 0), u_carding=n(0.025, 0), u_combing=n(0.08, 0), **known))
        for known in (dict(own=n(0.25, 0)), dict(way=texts("Combing", "carding")))
    ),
    *(
        (calculation, {after: q("g", 1000, 800), "stage": n(1, 5), **known})
        for calculation, after in (
            (fiber.before_skirting, "skirted"),
            (fiber.before_scouring, "scoured"),
            (fiber.before_preparation, "prepared"),
            (fiber.before_spinning, "yarn"),
        )
        for known in (dict(own=n(0.3, 7)), dict(guide=n(0.4, 7)))
    ),
    (fiber.share_lost, dict(before=q("g", 1000, 800), after=q("oz", 30, 0))),
    (fiber.counted_on, dict(count=n(2, 0), stage=n(1, 4), step=n(4, 4))),
    (
        fiber.counted_on,
        dict(count=n(2, 0), stage=n(1, 3), step=n(2, 2), own=n(0.5, 0.25))
        | {weighed: q("oz", 30, 2) for weighed in ("scoured", "prepared", "spun")},
    ),
    (fiber.spun_of_lot, dict(spun=q("oz", 30, 0), weight=q("g", 800, 1000))),
    *(
        (
            fiber.beside_expected,
            dict(yarn=q("oz", 5, 9), weight=q("g", 1000, 800), stage=n(1, 4), second=n(0, 0.25)) | known,
        )
        for known in (
            {f"own_{step}": n(0.25, 0.5) for step in ("skirting", "yield", "preparation", "spinning")},
            {f"guide_{step}": n(0.25, 0.5) for step in ("skirting", "yield", "preparation", "spinning")},
        )
    ),
    (fiber.hardly_washed, dict(weight=q("g", 1000, 800), stage=n(1, 2))),
    (
        fiber.hardly_washed,
        dict(weight=q("g", 1000, 800), stage=n(1, 4), own=n(0.5, 0.75), guide=n(0.25, 0.5))
        | {weighed: q("oz", 30, 2) for weighed in ("skirted", "scoured", "prepared", "spun")},
    ),
    (
        fiber.not_counted,
        dict(weight=q("g", 1000, 800), stage=n(1, 5), second=n(0, 0.25), second_way=texts("Combing", "carding")),
    ),
    (
        fiber.not_counted,
        dict(weight=q("g", 1000, 800), stage=n(1, 5))
        | {weighed: q("oz", 30, 2) for weighed in ("skirted", "scoured", "prepared", "spun")},
    ),
    (fiber.share_kept, dict(start=q("g", 1000, 800), yarn=q("oz", 16, 0))),
    (fiber.midpoint, dict(low=q("lb", 3, 8), high=q("kg", 2, 9))),
    (fiber.rectangular_uncertainty, dict(low=q("lb", 3, 8), high=q("kg", 2, 9))),
    (
        fiber.clean_fleece,
        dict(fleece_low=q("lb", 3, 8), fleece_high=q("lb", 5, 18), yield_low=n(0.55, 0.35), yield_high=n(0.65, 0.55)),
    ),
    (fiber.wool_grade, dict(fiber_diameter=q("um", 22.05, 40))),
    (fiber.fleeces, dict(weight=q("kg", 3, 0), fleece_low=q("lb", 3, 8), fleece_high=q("lb", 5, 18), stage=n(1, 1))),
    *(
        (calculation, dict(before=q("g", 1000, 800), after=q("oz", 30, 0)))
        for calculation in (fiber.seen_loss, fiber.seen_yield)
    ),
    *(
        (fiber.preparation_loss, dict(carding=n(0.06, 0.1), combing=n(0.3, 0.25), **way))
        for way in ({}, dict(way=texts("Combing", "carding")))
    ),
    *(
        (fiber.preparation_uncertainty, dict(u_carding=n(0.025, 0), u_combing=n(0.08, 0), **way))
        for way in ({}, dict(way=texts("Combing", "carding")))
    ),
    *(
        (
            fiber.seen_in_preparing,
            dict(before=q("g", 1000, 800), after=q("oz", 30, 0), by=texts(*by), own_second=n(0, 0), **way),
        )
        for by, way in ((("carding", "carding"), {}), (("combing", "carding"), dict(way=texts("Combing", "carding"))))
    ),
    *(
        (in_use, known)
        for in_use in (fiber.yield_in_use, fiber.spinning_loss_in_use)
        for known in (
            dict(sampled=n(0.5, 1)),
            dict(published=n(0.5, 1)),
            dict(sampled=n(0.5, 1), published=n(0.6, 0.4)),
        )
    ),
    *(
        (fiber.yield_uncertainty, dict(u_own=n(0.03, 0), u_handful=n(0.08, 0), **known))
        for known in (
            {},
            dict(samples=n(4, 0)),
            dict(spread=n(0.06, 0), published=n(0.5, 1)),
            dict(samples=n(0, 2), spread=n(0.06, 0), published=n(0.5, 1)),
        )
    ),
    (fiber.seen_skirting, dict(before=q("g", 1000, 800), after=q("oz", 30, 0), stage=n(1, 1))),
    (records.lookup, dict(name=texts("aster", "Birch"), names=["Aster", "", "birch"], values=q("m", 1, np.nan, 3))),
    (records.sum_where, dict(name=texts("aster", "cedar"), **LOGGED)),
    (records.spun, dict(name=texts("aster", "cedar"), **LOGGED, second_names=["cedar"], second_amounts=q("g", 5))),
    (kept_stock.still_to_come, dict(yarn=q("oz", 4, 1), spun=q("g", 50, 50))),
    (records.count_where, dict(name=texts("aster", "cedar"), **LOGGED)),
    (kept_stock.not_weighed, dict(count=n(12, 3), weighed=n(9, 3))),
    (own_records.observed, dict(name=texts("aster", "Birch"), **RECORDED)),
    (own_records.how_many, dict(name=texts("aster", "cedar"), **RECORDED)),
    *(
        (own_records.observed_or_published, dict(**known, observations=observations, enough=n(3, 3)))
        for known, observations in ((dict(published=n(0.5, 0.25)), n(2, 0)), (dict(observed=n(0.5, 0.25)), n(3, 9)))
    ),
    *(
        (own_records.spread_in_use, dict(**known, observations=observations, enough=n(3, 3), usual=n(0.04, 0.1)))
        for known, observations in (
            (dict(published=n(0.05, 0)), n(2, 0)),
            (dict(observed=n(0.5, 0.25), squares=n(0.76, 0.57)), n(3, 9)),
        )
    ),
    (twist.turns_counted, dict(turns=n(40, 0), length=q("mm", 250, 500))),
    (twist.factor, dict(twist=q("1/inch", 9, 0), linear_density=q("tex", 200, 30), system=texts("cotton", "Tex"))),
    *(
        (calculation, dict(twist=q("1/inch", 9, 0), linear_density=q("tex", 200, 30)))
        for calculation in (twist.cotton_factor, twist.worsted_factor, twist.run_factor, twist.tex_factor)
    ),
    (twist.turns, dict(multiplier=n(3, 0), linear_density=q("tex", 200, 30), system=texts("metric", "worsted"))),
    (twist.least_twist, dict(staple=q("inch", 4, 3), wraps=n(4, 3))),
    (twist.staple_words, dict(twist=q("1/cm", 2, 0), least=q("1/inch", 1, 1))),
    (twist.surface_angle, dict(diameter=q("mm", 1, 2), twist=q("1/m", 200, 0))),
    (twist.retraction, dict(angle=n(0.5, 0))),
    (twist.ply_path, dict(diameter=q("mm", 1, 2), strands=n(3, 12))),
    (twist.ply_ratio, dict(path=q("mm", 1, 2), twist=q("1/m", 200, 0))),
    (twist.take_up, dict(ratio=n(1.25, 1))),
    (twist.retraction_by_twist, dict(diameter=q("mm", 0.5, 1), twist=q("1/inch", 8, 0))),
    (
        twist.retraction_left,
        dict(diameter=q("mm", 0.5, 1), singles_twist=q("1/inch", 8, 4), ply_twist=q("1/m", 200, 400)),
    ),
    (twist.ply_take_up, dict(before=n(0.05, 0), left=n(0.01, 0), ratio=n(1.25, 1))),
    (twist.feed, dict(take_up=n(0.05, -0.01))),
    (twist.ply_twist, dict(singles_twist=q("1/inch", 9, 0), share=n(0.5, 0.75))),
    (twist.equal_factor_ply_twist, dict(singles_twist=q("1/inch", 9, 0), strands=n(2, 4))),
    (twist.balance, dict(singles_twist=q("1/inch", 9, 8), plied_twist=q("1/m", 200, 0), share=n(0.5, 0.75))),
    (twist.balance_words, dict(balance=n(0.5, 0))),
    (twist.opposite, dict(direction=texts("Z", "s"))),
    (twist.geared, dict(wheel=q("inch", 20, 24), whorl=q("cm", 5, 4), band=q("mm", 3, 0))),
    (twist.drive_ratio, dict(geared=n(7.5, 8), stamped=n(8, 10), slip=n(0.25, 0))),
    (twist.drive_ratio, dict(geared=n(7.5, 8), slip=n(0.25, 0))),
    (twist.drive_ratio, dict(counted=n(7.5, 8))),
    (twist.counted_ratio, dict(flyer=n(79, 12), turns=n(10, 1))),
    (twist.nearest_treadles, dict(treadles=n(5.5, 0))),
    (twist.off_the_wanted, dict(twist=q("1/inch", 6, 0), wanted=q("1/m", 200, 250))),
    (
        twist.nearest_words,
        dict(name=texts("Fast", "slow"), treadles=n(4, 1), twist=q("1/inch", 5.25, 4.5), exact=n(4.5, 24)),
    ),
    (twist.turns_by_roll, dict(rolled=q("inch", 9, 6), shaft=q("cm", 1, 0.8), rolls=n(2, 0))),
    (twist.turns_by_time, dict(counted=n(60, 0), seconds=q("second", 6, 12), lasting=q("minute", 0.25, 1))),
    (twist.spindle_turns, dict(by_time=n(150, 2))),
    (twist.spindle_turns, dict(by_roll=n(15, 0))),
    (twist.draft_of_turns, dict(turns=n(60, 0), twist=q("1/inch", 5, 8))),
    (
        twist.rolls_for,
        dict(twist=q("1/inch", 5, 0), draft=q("cm", 60, 30), rolled=q("inch", 9, 6), shaft=q("cm", 1, 0.8)),
    ),
    (
        twist.seconds_for,
        dict(twist=q("1/inch", 5, 0), draft=q("cm", 60, 30), counted=n(60, 12), seconds=q("second", 6, 12)),
    ),
    (twist.turns_for_angle, dict(angle=n(0.5, 0.25), diameter=q("mm", 1, 2))),
    (twist.twist_left, dict(singles_twist=q("1/inch", 9, 0), ply_twist=q("1/m", 200, 100))),
    (twist.twist_left, dict(singles_twist=q("1/inch", 9, 0), plied=q("1/inch", 6, 0))),
    (twist.take_up_in_use, dict(sample=n(0.06, -0.01))),
    (twist.take_up_in_use, dict(expected=n(0.05, 0))),
    (diameter.diameter_in_use, dict(measured=q("mm", 1, 2))),
    (diameter.diameter_in_use, dict(expected=q("inch", 0.05, 0.06))),
    (garments.finished_around, dict(body=q("inch", 38, 40), ease=q("cm", 10, -5))),
    (garments.panel_width, dict(around=q("inch", 42, 44))),
    (
        garments.garment_area,
        dict(
            around=q("inch", 42, 44),
            length=q("cm", 60, 70),
            upper_arm=q("inch", 15, 0),
            sleeve=q("cm", 45, 0),
            cuff=q("inch", 9, 8),
            more=n(0.05, 0),
        ),
    ),
    (
        garments.garment_area,
        dict(
            around=q("inch", 42, 44),
            length=q("cm", 60, 70),
            upper_arm=q("inch", 15, 0),
            sleeve=q("cm", 45, 0),
            more=n(0.05, 0),
        ),
    ),
    (
        garments.yarn_by_swatch,
        dict(area=q("inch^2", 1500, 0), swatch_area=q("cm^2", 100, 225), swatch_mass=q("gram", 4, 9)),
    ),
    (
        garments.area_by_swatch,
        dict(
            length=q("yard", 200, 0),
            grist=q("yard/pound", 900, 1200),
            swatch_area=q("cm^2", 100, 225),
            swatch_mass=q("gram", 4, 9),
        ),
    ),
    (
        garments.area_by_gauge,
        dict(length=q("yard", 200, 0), stitch_density=q("1/inch^2", 35, 40), stitch_length=q("mm", 12, 15)),
    ),
    (garments.area_in_use, dict(swatch=q("m^2", 1, 0), gauge=q("m^2", 2, 3))),
    (garments.area_in_use, dict(gauge=q("m^2", 2, 3))),
    (garments.area_basis, dict(swatch=q("m^2", 1, 0))),
    (garments.area_basis, dict(gauge=q("m^2", 2, 3))),
    (garments.far_at_width, dict(area=q("inch^2", 800, 0), width=q("cm", 20, 30))),
    (garments.same_size, dict(count=n(100, 0), pattern=q("1/inch", 5, 6), own=q("1/decimeter", 22, 24))),
    (garments.size_of_its_numbers, dict(pattern=q("1/inch", 5, 6), own=q("1/decimeter", 22, 24))),
    (garments.stitches_for_one, dict(pattern=q("1/inch", 5, 6), own=q("1/decimeter", 22, 24))),
    (
        garments.stitches_for_one,
        dict(
            pattern=q("1/inch", 5, 6),
            own=q("1/decimeter", 22, 24),
            pattern_rows=q("1/inch", 7, 8),
            own_rows=q("1/decimeter", 28, 30),
        ),
    ),
    (garments.yarn_in_gauge, dict(yarn=q("yard", 1100, 400), stitches_for_one=n(1.2, 0.9))),
    (garments.yarn_to_work, dict(left=q("ounce", 3, 2), kept=q("gram", 10, 0))),
    (
        garments.rows_still,
        dict(left=q("ounce", 3, 0), used=q("gram", 40, 25), rows=n(80, 50), first=n(0, 200), now=n(160, 100)),
    ),
    (
        garments.yarn_for_rows,
        dict(wanted=n(60, 10), used=q("gram", 40, 25), rows=n(80, 50), first=n(0, 200), now=n(160, 100)),
    ),
    (garments.rest_lasts, dict(left=q("ounce", 3, 0), needed=q("gram", 40, 90))),
    (garments.share_worked, dict(used=q("ounce", 1, 2), to_come=q("gram", 40, 0))),
    (garments.lost_in_fulling, dict(before=q("inch", 6, 4), after=q("cm", 12, 11))),
    (garments.size_to_make, dict(wanted=q("inch", 11, 9), lost=n(0.2, -0.05))),
    (garments.counted_over, dict(size=q("inch", 14, 12), gauge=q("1/decimeter", 16, 22))),
    (how_fine.own_or_published, dict(own=q("micrometer", 25, 30))),
    (how_fine.own_or_published, dict(published=q("inch", 3, 4))),
    (
        how_fine.finest_yarn,
        dict(fibers=n(40, 30), fiber_diameter=q("micrometer", 25, 30), fiber_density=q("g/cm^3", 1.31, 1.52)),
    ),
    (how_fine.turns_round, dict(twist=q("1/inch", 5, 0), staple=q("cm", 8, 10))),
    (how_fine.fit_words, dict(in_section=n(62.5, 12), fibers=n(40, 30))),
    (twist.whorl_for, dict(wheel=q("inch", 20, 24), ratio=n(8, 10), band=q("mm", 3, 0), slip=n(0, 0.1))),
    (twist.inserted, dict(ratio=n(8, 10), treadles=n(3, 0), draft=q("inch", 6, 4))),
    (twist.treadles_for, dict(twist=q("1/inch", 9, 0), draft=q("cm", 15, 10), ratio=n(8, 10))),
    (twist.draft_for, dict(twist=q("1/inch", 9, 8), treadles=n(3, 0), ratio=n(8, 10))),
    (plying.feed_ratio, dict(contraction=n(0.25, 0))),
    (plying.contribution, dict(linear_density=q("tex", 100, 40), strands=n(2, 1), feed=n(1.25, 1))),
    (
        plying.resultant,
        dict(
            design=texts("aster", "Birch"), designs=["Aster", "birch", "", "aster"], contributions=q("tex", 1, 2, 4, 8)
        ),
    ),
    (plying.not_known, dict(design=texts("Aster", "Birch"))),
    (plying.not_known, dict(design=texts("Aster", "Birch"), contribution=q("tex", 100, 40))),
    (plying.weight_share, dict(contribution=q("tex", 100, 40), resultant=q("denier", 9000, 360))),
    (plying.each_other_strand, dict(rest=q("tex", 200, 90), strands=n(3, 2))),
    (plying.missing_component, dict(resultant=q("tex", 200, 90), known=q("denier", 900, 720))),
    (
        plying.folded_grist,
        dict(grist=q("yard/pound", 1600, 900), ends=n(2, 3), notation=texts("of each end", "of the folded yarn")),
    ),
    (plying.all_strands, dict(plied=q("tex", 200, 90), take_up=n(0.25, 0), shrinkage=n(0.125, 0))),
    (
        plying.singles_for,
        dict(plied=q("tex", 200, 90), strands=n(2, 1), take_up=n(0.25, 0), shrinkage=n(0.125, -0.125)),
    ),
    (plying.grist_for_wraps, dict(wraps=q("1/cm", 4, 5), k=n(0.75, 0.9))),
    (plying.component_length, dict(wanted=q("yard", 400, 0), strands=n(2, 1), feed=n(1.25, 1))),
    (plying.component_mass, dict(length=q("yard", 400, 0), linear_density=q("tex", 200, 90))),
    (plying.packages, dict(length=q("yard", 400, 0), package=q("m", 50, 60))),
    (plying.spools, dict(length=q("yard", 400, 0), package=q("m", 50, 60))),
    (
        plying.spools,
        dict(
            length=q("yard", 400, 30),
            package=q("m", 50, 60),
            lots=["Tweed / Moss", "", "Tweed / Moss"],
            amounts=q("m", 300, 20, np.nan),
            own=texts("tweed / moss", "Tweed / Moss"),
            form=texts("yarn or thread", "prepared fiber"),
        ),
    ),
    (labels.length_words, dict(length=q("m", 183, 0))),
    (labels.mass_words, dict(mass=q("g", 99, 0))),
    (labels.grist_words, dict(grist=q("m/g", 2, 3))),
    (labels.length_words, dict(length=q("m", 183, 0), basis=texts("usual shrinkage", "measured"))),
    (labels.wraps_words, dict(wraps=q("1/inch", 10.5, 12))),
    (labels.wraps_words, dict(wraps=q("1/inch", 10.5, 12), counted=q("1/inch", 10.5, 12))),
    (labels.made_of, dict(first=texts("Gray wool", "Moss"), second=texts("Silk thread", "Silk thread"))),
]
