"""The laws of the library, and arguments that each of them takes.

Three tests need a right call before they can spoil it: that arrays give what single values
give, that a wrong dimension is refused, and that what is not a number is refused. A law
stands here more than once when its arguments exclude each other.
"""

import inspect

import numpy as np

from workbookgen import reference
from workbookgen.reference import (
    agreement,
    cost,
    diameter,
    fiber,
    knitting,
    labels,
    learning,
    moisture,
    planning,
    plying,
    project,
    reeling,
    scouring,
    statistics,
    stock,
    twist,
    uncertainty,
    weaving,
    yarn_count,
)
from workbookgen.units import Quantity

# Whole columns of a list: they belong to one call, whatever the length of the other arguments.
COLUMNS = {"names", "values", "amounts", "second_names", "second_amounts", "shares", "verdicts", "designs", "contributions"}


def q(unit, *magnitudes):
    return Quantity(np.array(magnitudes, dtype=float), unit)


def n(*numbers):
    return np.array(numbers, dtype=float)


def texts(*words):
    return np.array(words, dtype=object)


LOGGED = {"names": ["Aster", "birch", "", "aster"], "amounts": q("oz", 1, 2, 4, 8)}
READINGS = {f"reading_{reading}": q("tex", 40 + reading, reading**2) for reading in range(1, 6)}
GRISTS = {"first": q("yard/pound", 900, 1680), "second": q("m/g", 2, 3)}
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
    (reeling.loop_doubt, dict(loop=q("yard", 2, 1.5))),
    (reeling.loop_doubt, dict(loop=q("yard", 2, 1.5), tolerance=q("inch", 0.5, 0))),
    (reeling.finished_length, dict(length=q("yard", 200, 0), loop=q("inch", 72, 54), washed_loop=q("cm", 180, 130))),
    (reeling.shrinkage, dict(length=q("yard", 200, 100), finished=q("m", 180, 92))),
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
    (diameter.fitted_k, dict(wraps=q("1/cm", 4, 5), grist=q("yard/pound", 900, 1680))),
    (
        diameter.yarn_diameter,
        dict(linear_density=q("tex", 200, 30), fiber_density=q("g/cm^3", 1.31, 1.52), packing=n(0.4, 1)),
    ),
    (diameter.fiber_linear_density, dict(fiber_diameter=q("um", 25, 18), fiber_density=q("g/cm^3", 1.31, 1.52))),
    (
        diameter.fibers_in_section,
        dict(
            linear_density=q("tex", 200, 30),
            fiber_diameter=q("um", 25, 18),
            fiber_density=q("g/cm^3", 1.31, 1.52),
        ),
    ),
    (diameter.wraps_in_use, dict(counted=q("1/inch", 10, 11))),
    (diameter.wraps_in_use, dict(expected=q("1/cm", 4, 5))),
    (diameter.wrap_width, dict(wraps=q("1/inch", 10, 11))),
    (diameter.yarn_weight_class, dict(wraps=q("1/inch", 10, 11))),
    (moisture.mass_at_regain, dict(dry_mass=q("g", 21, 0), regain=n(0.136, 0))),
    (moisture.dry_mass, dict(mass=q("oz", 4, 0), moisture_content=n(0.12, 0))),
    (moisture.regain_of, dict(moisture_content=n(0.12, 0))),
    (moisture.moisture_content_of, dict(regain=n(0.136, 0))),
    (moisture.correct_mass, dict(mass=q("oz", 4, 1), moisture_content=n(0.04, 0), regain=n(0.136, 0))),
    (fiber.stage, dict(state=texts("Raw fleece", "yarn or thread"))),
    *(
        (law, {before: q("g", 1000, 800), "stage": n(1, 5), **known})
        for law, before in (
            (fiber.after_skirting, "weight"),
            (fiber.after_scouring, "skirted"),
            (fiber.after_preparation, "scoured"),
            (fiber.after_spinning, "prepared"),
        )
        for known in (dict(weighed=q("oz", 30, 99)), dict(own=n(0.3, 7)), dict(guide=n(0.4, 7)))
    ),
    *(
        (law, {after: q("g", 1000, 800), "stage": n(1, 5), **known})
        for law, after in (
            (fiber.before_skirting, "skirted"),
            (fiber.before_scouring, "scoured"),
            (fiber.before_preparation, "prepared"),
            (fiber.before_spinning, "yarn"),
        )
        for known in (dict(own=n(0.3, 7)), dict(guide=n(0.4, 7)))
    ),
    (fiber.share_lost, dict(before=q("g", 1000, 800), after=q("oz", 30, 0))),
    (fiber.share_kept, dict(start=q("g", 1000, 800), yarn=q("oz", 16, 0))),
    (fiber.midpoint, dict(low=q("lb", 3, 8), high=q("kg", 2, 9))),
    (fiber.rectangular_uncertainty, dict(low=q("lb", 3, 8), high=q("kg", 2, 9))),
    (
        fiber.clean_fleece,
        dict(
            fleece_low=q("lb", 3, 8),
            fleece_high=q("lb", 5, 18),
            yield_low=n(0.55, 0.35),
            yield_high=n(0.65, 0.55),
        ),
    ),
    (fiber.wool_grade, dict(fiber_diameter=q("um", 22.05, 40))),
    (fiber.fleeces, dict(weight=q("kg", 3, 0), fleece_low=q("lb", 3, 8), fleece_high=q("lb", 5, 18))),
    *(
        (fiber.to_come_doubt, dict(to_come=q("oz", 40, 0), stage=n(2, 3), rest_doubt=n(0.125, 0.25), **known))
        for known in ({}, dict(spread=n(0.0625, 0), expected=n(0.5, 1)), dict(own=n(0.5, 7)), dict(weighed=q("g", 900, 0)))
    ),
    (stock.listed, dict(name=texts("Aster", "birch"))),
    (stock.pick, dict(name=texts("aster", "Birch"), names=["Aster", "", "birch"], values=q("m", 1, np.nan, 3))),
    (stock.total, dict(name=texts("aster", "cedar"), **LOGGED)),
    (stock.sum_of, dict(amounts=LOGGED["amounts"])),
    (
        stock.spun,
        dict(name=texts("aster", "cedar"), **LOGGED, second_names=["cedar"], second_amounts=q("g", 5)),
    ),
    (stock.first_lot_mass, dict(net=q("oz", 4, 2), second_share=n(0.25, 0))),
    (stock.second_lot_mass, dict(net=q("oz", 4, 2), second_share=n(0.25, 0))),
    (stock.still_to_come, dict(yarn=q("oz", 4, 1), spun=q("g", 50, 50))),
    (stock.of_lots, dict(**LOGGED, lot_1=texts("aster", "birch"), lot_2=texts("birch", "cedar"))),
    (project.wanted_in_use, dict(stated=q("yard", 400, 500))),
    (project.wanted_in_use, dict(estimated=q("m", 400, 500))),
    (project.yarn_length, dict(length_wanted=q("yard", 400, 0), margin=n(0.1, 0))),
    (project.fiber_for, dict(yarn=q("g", 500, 0), kept=n(0.5, 1))),
    (project.per_bobbin, dict(mass=q("oz", 8, 0), bobbins=n(3, 1))),
    (project.length_in_hand, dict(spun_length=q("yard", 200, 0), to_come=q("oz", 4, 0), grist=q("m/g", 2, 3))),
    (project.surplus, dict(have=q("yard", 200, 100), need=q("m", 100, 200))),
    (project.verdict, dict(surplus=q("yard", 120, -80))),
    (statistics.mean, READINGS),
    (statistics.count, READINGS),
    (statistics.deviation, READINGS),
    (statistics.variation, dict(deviation=q("inch", 1, 0), mean=q("cm", 20, 30))),
    (statistics.t_quantile, dict(degrees=n(4, 500))),
    (statistics.half_width, dict(deviation=q("tex", 5, 0), count=n(5, 2))),
    (statistics.standard_error, dict(deviation=q("tex", 5, 0), count=n(4, 1))),
    (statistics.specimens, dict(variation=n(0.5, 0), error=n(0.25, 0.1), t=n(2, 1.5))),
    (statistics.counted, dict(value=q("yard/pound", 900, 1680))),
    (statistics.group_mean, dict(total=q("yard", 900, 0), count=n(4, 1))),
    (statistics.group_variation, dict(sum_of_squares=n(0.5, 0), count=n(3, 2))),
    (statistics.relative_deviation, dict(value=q("yard", 210, 0), mean=q("m", 180, 190))),
    (statistics.squared, dict(deviation=n(-0.5, 0.25))),
    (statistics.limit_low, dict(mean=q("yard", 200, 100), variation=n(0.25, 0), times=n(2, 3))),
    (statistics.limit_high, dict(mean=q("yard", 200, 100), variation=n(0.25, 0), times=n(2, 3))),
    (statistics.stands_out, dict(deviation=n(-0.5, 0.25), variation=n(0.125, 0.25), times=n(2, 2))),
    (statistics.difference, GRISTS),
    (statistics.may_share, GRISTS),
    (uncertainty.rectangular, dict(half_width=q("inch", 0.5, 0))),
    (uncertainty.resolution, dict(step=q("g", 1, 0))),
    (uncertainty.combined, dict(u_1=q("m", 1, 2), u_2=q("yard", 1, 0), u_3=q("m", 3, 0), u_4=q("m", 4, 0))),
    (uncertainty.combined_relative, dict(u_1=n(0.5, 0), u_2=n(0.25, 0), u_3=n(0.125, 0), u_4=n(0.125, 1))),
    (uncertainty.product_relative, dict(relative_1=n(0.5, 0), relative_2=n(0.25, 0), relative_3=n(0.125, 0))),
    (
        uncertainty.length_relative,
        dict(wraps=n(100, 50.5), u_wraps=n(0.5, 0), loop=q("inch", 72, 54), u_loop=q("mm", 9, 0)),
    ),
    (uncertainty.length_uncertainty, dict(length=q("yard", 200, 0), relative=n(0.25, 0))),
    (uncertainty.square, dict(uncertainty=q("yard", 12, 0))),
    (uncertainty.relative, dict(uncertainty=q("yard", 12, 0), value=q("m", 400, 300))),
    (
        uncertainty.have_doubt,
        dict(
            spun_square=q("yard^2", 9, 0),
            to_come_square=q("oz^2", 0.25, 0),
            to_come=q("g", 100, 0),
            grist=q("yard/pound", 900, 1680),
            grist_doubt=n(0.125, 0),
        ),
    ),
    (uncertainty.surplus_uncertainty, dict(u_have=q("yard", 12, 0), u_need=q("m", 16, 0))),
    (uncertainty.chance_enough, dict(surplus=q("yard", 20, -1), uncertainty=q("m", 16, 0))),
    (uncertainty.coverage, dict(certainty=n(0.75, 0.5))),
    (
        uncertainty.amount_for,
        dict(need=q("yard", 400, 0), u_need=q("m", 16, 0), relative_have=n(0.125, 0), certainty=n(0.75, 0.5)),
    ),
    (uncertainty.margin_uncertainty, dict(need=q("yard", 400, 0), margin=n(0.25, 0))),
    (scouring.loads, dict(mass=q("kg", 1.2, 0), load=q("lb", 1, 2))),
    (scouring.liquor, dict(mass=q("kg", 1.2, 0), liquor_ratio=q("L/kg", 30, 20))),
    (scouring.water_in_all, dict(liquor=q("gallon", 5, 0), baths=n(4, 3))),
    (scouring.detergent, dict(mass=q("kg", 1.2, 0), share=n(0.25, 0))),
    (scouring.detergent_by_liquor, dict(liquor=q("gallon", 5, 0), dose=q("g/L", 2, 0))),
    (
        scouring.hot_water,
        dict(volume=q("L", 20, 0), target=q("degC", 60, 15), hot=q("degF", 180, 176), cold=q("degC", 15, 15)),
    ),
    (scouring.cold_water, dict(volume=q("L", 20, 1), hot_water=q("gallon", 3, 0))),
    (
        scouring.mixed_temperature,
        dict(
            hot_volume=q("L", 14, 0),
            hot=q("degF", 180, 176),
            cold_volume=q("gallon", 2, 1),
            cold=q("degC", 15, 10),
        ),
    ),
    (scouring.clean_mass, dict(mass=q("kg", 1.2, 0), scoured_yield=n(0.5, 1))),
    (scouring.removed, dict(mass=q("kg", 1.2, 0), scoured_yield=n(0.5, 1))),
    (scouring.bath_time, dict(baths=n(4, 0), minutes_each=q("minute", 20, 0))),
    (scouring.temperature_words, dict(temperature=q("degF", 140, 100))),
    (planning.pace, dict(length=q("yard", 50, 10), minutes=q("minute", 30, 10))),
    (planning.pace_in_use, dict(own=q("yard/hour", 80, 90))),
    (planning.pace_in_use, dict(sample=q("g/hour", 30, 40))),
    (planning.singles_length, dict(length=q("yard", 400, 0), strands=n(3, 1), take_up=n(0.25, 0))),
    (planning.hours, dict(amount=q("yard", 400, 0), pace=q("m/hour", 80, 90))),
    (planning.hours, dict(amount=q("oz", 4, 0), pace=q("g/hour", 30, 40))),
    (planning.hours_in_all, {f"hours_{step}": q("hour", step, 0) for step in range(1, 7)}),
    (planning.weeks, dict(hours=q("hour", 30, 0), hours_per_week=q("hour", 4, 5))),
    (planning.finish_day, dict(start=n(46000, 0), hours=q("hour", 30, 0), hours_per_week=q("hour", 4, 5))),
    (planning.stock_hours, dict(mass=q("kg", 3, 0), grist=q("m/g", 3, 2), pace=q("yard/hour", 80, 90))),
    (planning.evenings, dict(hours=q("hour", 30, 0), evening=q("minute", 90, 60))),
    (cost.per_mass, dict(price=n(24, 0), mass=q("oz", 4, 8))),
    (cost.cost_of, dict(mass=q("g", 100, 0), price_per_mass=q("1/oz", 6, 0))),
    (cost.material_cost, dict(fiber=n(24, 0), thread=n(3, 0), dye=n(2, 0), tools=n(1, 0))),
    (cost.labor, dict(hours=q("minute", 90, 0), rate=n(20, 0))),
    (cost.price, dict(cost=n(30, 0), labor=n(90, 0), margin=n(0.25, 0))),
    (cost.per_length, dict(money=n(30, 0), length=q("yard", 200, 100))),
    (cost.per_skein, dict(money=n(30, 0), skeins=n(4, 1))),
    (cost.tool_share, dict(price=n(600, 0), life=n(500, 100), used=n(3, 0))),
    (learning.observed, dict(name=texts("aster", "Birch"), **RECORDED)),
    (learning.how_many, dict(name=texts("aster", "cedar"), **RECORDED)),
    *(
        (law, dict(**known, observations=observations, enough=n(3, 3)))
        for law in (learning.in_use, learning.basis)
        for known, observations in (
            (dict(published=n(0.5, 0.25)), n(2, 0)),
            (dict(observed=n(0.5, 0.25)), n(3, 9)),
        )
    ),
    (twist.turns_counted, dict(turns=n(40, 0), length=q("mm", 250, 500))),
    (twist.factor, dict(twist=q("1/inch", 9, 0), linear_density=q("tex", 200, 30), system=texts("cotton", "Tex"))),
    *(
        (law, dict(twist=q("1/inch", 9, 0), linear_density=q("tex", 200, 30)))
        for law in (twist.cotton_factor, twist.worsted_factor, twist.run_factor, twist.tex_factor)
    ),
    (twist.turns, dict(multiplier=n(3, 0), linear_density=q("tex", 200, 30), system=texts("metric", "worsted"))),
    (twist.least_twist, dict(staple=q("inch", 4, 3), wraps=n(4, 3))),
    (twist.staple_words, dict(twist=q("1/cm", 2, 0), least=q("1/inch", 1, 1))),
    (twist.surface_angle, dict(diameter=q("mm", 1, 2), twist=q("1/m", 200, 0))),
    (twist.retraction, dict(angle=n(0.5, 0))),
    (twist.ply_path, dict(diameter=q("mm", 1, 2), strands=n(3, 12))),
    (twist.ply_ratio, dict(path=q("mm", 1, 2), twist=q("1/m", 200, 0))),
    (twist.take_up, dict(ratio=n(1.25, 1))),
    (twist.ply_twist, dict(singles_twist=q("1/inch", 9, 0), share=n(0.5, 0.75))),
    (twist.equal_factor_ply_twist, dict(singles_twist=q("1/inch", 9, 0), strands=n(2, 4))),
    (
        twist.balance,
        dict(singles_twist=q("1/inch", 9, 8), plied_twist=q("1/m", 200, 0), share=n(0.5, 0.75)),
    ),
    (twist.balance_words, dict(balance=n(0.5, 0))),
    (twist.opposite, dict(direction=texts("Z", "s"))),
    (twist.drive_ratio, dict(wheel=q("inch", 20, 24), whorl=q("cm", 5, 4), slip=n(0.25, 0))),
    (twist.whorl_for, dict(wheel=q("inch", 20, 24), ratio=n(8, 10))),
    (twist.inserted, dict(ratio=n(8, 10), treadles=n(3, 0), draft=q("inch", 6, 4))),
    (twist.treadles_for, dict(twist=q("1/inch", 9, 0), draft=q("cm", 15, 10), ratio=n(8, 10))),
    (twist.draft_for, dict(twist=q("1/inch", 9, 8), treadles=n(3, 0), ratio=n(8, 10))),
    (plying.feed_ratio, dict(contraction=n(0.25, 0))),
    (plying.contribution, dict(linear_density=q("tex", 100, 40), strands=n(2, 1), feed=n(1.25, 1))),
    (
        plying.resultant,
        dict(design=texts("aster", "Birch"), designs=["Aster", "birch", "", "aster"], contributions=q("tex", 1, 2, 4, 8)),
    ),
    (plying.weight_share, dict(contribution=q("tex", 100, 40), resultant=q("denier", 9000, 360))),
    (plying.missing_component, dict(resultant=q("tex", 200, 90), known=q("denier", 900, 720))),
    (plying.all_strands, dict(plied=q("tex", 200, 90), take_up=n(0.25, 0))),
    (plying.singles_for, dict(plied=q("tex", 200, 90), strands=n(2, 1), take_up=n(0.25, 0))),
    (plying.grist_for_wraps, dict(wraps=q("1/cm", 4, 5), k=n(0.75, 0.9))),
    (plying.component_length, dict(wanted=q("yard", 400, 0), strands=n(2, 1), feed=n(1.25, 1))),
    (plying.component_mass, dict(length=q("yard", 400, 0), linear_density=q("tex", 200, 90))),
    (plying.packages, dict(length=q("yard", 400, 0), package=q("m", 50, 60))),
    (plying.plied_length, dict(singles_length=q("m", 300, 0), take_up=n(0.25, 0))),
    (
        knitting.area,
        dict(
            shape=texts("trapezium", "Ring"),
            width=q("cm", 50, 30),
            height=q("inch", 20, 20),
            second=q("cm", 40, 10),
            pieces=n(2, 1),
        ),
    ),
    (knitting.area, dict(shape=texts("triangle", "circle"), width=q("cm", 50, 30), height=q("inch", 20, 20))),
    (knitting.swatch_area, dict(width=q("inch", 6, 4), height=q("cm", 15, 10))),
    (
        knitting.from_swatch,
        dict(
            area=q("m^2", 1, 0),
            swatch_area=q("cm^2", 225, 100),
            swatch_mass=q("g", 9, 4),
            grist=q("yard/pound", 900, 1680),
        ),
    ),
    (knitting.from_piece, dict(mass=q("oz", 14, 9), grist=q("yard/pound", 900, 1680))),
    (
        knitting.from_gauge,
        dict(area=q("m^2", 1, 0), stitch_density=q("1/cm^2", 6, 9), stitch_length=q("mm", 15, 12)),
    ),
    (knitting.stitch_length, dict(length=q("yard", 2, 1), stitches=n(100, 50))),
    (knitting.stitch_length_in_use, dict(counted=q("mm", 15, 12))),
    (knitting.stitch_length_in_use, dict(munden=q("inch", 0.5, 0.75))),
    *(
        (law, {way: q("yard", 900, 0)})
        for law in (knitting.estimate_in_use, knitting.estimate_basis)
        for way in ("swatch", "gauge", "piece")
    ),
    (knitting.munden_stitch_length, dict(stitch_density=q("1/inch^2", 40, 60), constant=n(19, 21.6))),
    (knitting.stitch_density, dict(stitches=q("1/inch", 5, 6), rows=q("1/cm", 3, 2))),
    (knitting.tightness, dict(linear_density=q("tex", 225, 90), stitch_length=q("cm", 1, 0.8))),
    (
        knitting.rows_possible,
        dict(left=q("g", 30, 0), before=q("oz", 2, 3), after=q("g", 50, 0), rows=n(4, 10)),
    ),
    (knitting.lasts, dict(possible=n(12.5, 3), wanted=n(12, 4))),
    (weaving.closest_sett, dict(threads_side_by_side=q("1/inch", 52, 40), ends=n(2, 4), intersections=n(2, 2))),
    (weaving.working_sett, dict(closest=q("1/inch", 26, 20), share=n(0.75, 1))),
    (weaving.sett_in_use, dict(own=q("1/inch", 12, 10))),
    (weaving.sett_in_use, dict(working=q("1/cm", 4, 5))),
    (weaving.sett_share, dict(weave=texts("plain", "2/2 Twill"))),
    (weaving.width_in_reed, dict(finished_width=q("cm", 50, 70), draw_in=n(0.125, 0), shrinkage=n(0.25, 0))),
    (weaving.ends, dict(sett=q("1/inch", 8, 12), width=q("cm", 60, 80))),
    (
        weaving.woven_length,
        dict(
            finished_length=q("m", 2, 1),
            shrinkage=n(0.125, 0),
            pieces=n(3, 1),
            hems=q("inch", 4, 0),
            samples=q("cm", 30, 0),
        ),
    ),
    (
        weaving.warp_length,
        dict(
            finished_length=q("m", 2, 1),
            take_up=n(0.25, 0),
            shrinkage=n(0.125, 0),
            pieces=n(3, 1),
            hems=q("inch", 4, 0),
            samples=q("cm", 30, 0),
            loom_waste=q("yard", 0.75, 0),
        ),
    ),
    (weaving.warp_yarn, dict(ends=n(240, 100), warp_length=q("m", 3, 4))),
    (
        weaving.weft_yarn,
        dict(picks=q("1/inch", 8, 12), woven_length=q("m", 2, 3), width=q("cm", 60, 80), take_up=n(0.125, 0)),
    ),
    (weaving.all_yarn, dict(warp_yarn=q("yard", 700, 0), weft_yarn=q("m", 500, 400))),
    (
        weaving.cloth_mass,
        dict(
            warp_yarn=q("yard", 700, 0),
            weft_yarn=q("m", 500, 400),
            warp_density=q("tex", 200, 90),
            weft_density=q("denier", 1800, 900),
        ),
    ),
    (labels.length_words, dict(length=q("m", 183, 0))),
    (labels.mass_words, dict(mass=q("g", 99, 0))),
    (labels.grist_words, dict(grist=q("m/g", 2, 3))),
    (agreement.agrees, dict(computed=n(1.001, 2), printed=n(1, 3), tolerance=n(0.01, 0.01))),
    (agreement.how_many_agree, dict(verdicts=["agrees", "differs"])),
    (agreement.how_many, dict(verdicts=["agrees", "differs"])),
    (agreement.trust, dict(agreeing=n(24, 22), total=n(24, 24))),
]

# Laws for any kind of quantity: their annotations state no dimension, and yet they take numbers only.
ANY_KIND = {
    fiber.midpoint,
    fiber.rectangular_uncertainty,
    planning.hours,
    planning.pace_in_use,
    plying.packages,
    project.surplus,
    statistics.count,
    statistics.counted,
    statistics.deviation,
    statistics.group_mean,
    statistics.half_width,
    statistics.limit_high,
    statistics.limit_low,
    statistics.mean,
    statistics.relative_deviation,
    statistics.standard_error,
    statistics.variation,
    uncertainty.amount_for,
    uncertainty.chance_enough,
    uncertainty.combined,
    uncertainty.margin_uncertainty,
    uncertainty.rectangular,
    uncertainty.relative,
    uncertainty.resolution,
    uncertainty.square,
    uncertainty.surplus_uncertainty,
}


def public_laws():
    """Every calculation that the subjects of the library offer."""
    return [
        (f"{subject}.{name}", function)
        for subject in reference.__all__
        for name, function in inspect.getmembers(getattr(reference, subject), inspect.isfunction)
        if not name.startswith("_") and function.__module__.startswith(f"workbookgen.reference.{subject}")
    ]


def label(example):
    law, arguments = example
    return f"{law.__name__}-{'-'.join(arguments)}"


def single(arguments, index):
    """The arguments of one element."""
    return {name: value if name in COLUMNS else value[index] for name, value in arguments.items()}


def length_of(arguments):
    return next((len(value) for name, value in arguments.items() if name not in COLUMNS), 0)
