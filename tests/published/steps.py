"""Published values that take more than one law: the laws in a row, and nothing else."""

from workbookgen.reference import (
    diameter,
    fiber,
    knitting,
    plying,
    project,
    reeling,
    statistics,
    twist,
    uncertainty,
    weaving,
    yarn_count,
)
from workbookgen.units import Quantity

RAW = 1  # the stage of a lot bought as raw fleece


def diameters_of_cotton_count_one(specific_volume):
    """Threads in an inch, from the diameter of cotton of count 1."""
    tex = yarn_count.direct_count(yarn_count.grist_of(1, "cotton count"))
    return 1 / diameter.yarn_diameter(tex, 1 / specific_volume, 1)


def packing_where_rules_meet(k, fiber_density):
    """The packing with which the round yarn is as thick as Ashenhurst's rule says.

    A solid yarn is thinner by the root of the packing. Any grist will do.
    """
    grist = Quantity(3600, "yard/pound")
    solid = diameter.yarn_diameter(yarn_count.direct_count(grist), fiber_density, 1)
    return ((solid * diameter.threads_side_by_side(grist, k)) ** 2).m_as("")


def fibers_in_tuft(mass, fiber_length, fiber):
    """Length of all the fibers of a tuft, over the length of one."""
    return (yarn_count.length_of_mass(mass, 1 / fiber) / fiber_length).m_as("")


def yarn_of_fleece(weight, skirting, scoured_yield, preparation, spinning):
    """A raw fleece through all four stages."""
    skirted = fiber.after_skirting(weight, RAW, own=skirting)
    scoured = fiber.after_scouring(skirted, RAW, own=scoured_yield)
    prepared = fiber.after_preparation(scoured, RAW, own=preparation)
    return fiber.after_spinning(prepared, RAW, own=spinning)


def doubt_of_quotient(mass, u_mass, purity, u_purity, volume, u_volume):
    """Relative uncertainty of mass times purity, by volume."""
    return uncertainty.product_relative(u_mass / mass, u_purity / purity, u_volume / volume)


def doubt_of_concentration(mass, u_mass, purity, u_purity, volume, u_volume):
    """Uncertainty of mass times purity, by volume."""
    return mass * purity / volume * doubt_of_quotient(mass, u_mass, purity, u_purity, volume, u_volume)


def doubt_of_twist_factor(twist, linear_density):
    """Relative uncertainty of turns times the root of tex: a root halves it."""
    return uncertainty.product_relative(twist, linear_density / 2)


def half_width_of(**readings):
    """Half width of the mean, from the readings themselves."""
    return statistics.half_width(statistics.deviation(**readings), statistics.count(**readings))


def chance(have, u_have, need, u_need):
    """Chance that it is enough, from both sides and their uncertainties."""
    return uncertainty.chance_enough(project.surplus(have, need), uncertainty.surplus_uncertainty(u_have, u_need))


def laid_together(**densities):
    """Linear density of threads folded without any take-up."""
    brought = [plying.contribution(density) for density in densities.values()]
    return plying.resultant("yarn", ["yarn"] * len(brought), Quantity.from_list(brought))


def contracted_together(first, first_loss, second, second_loss):
    """Linear density of two threads that contract each in its own way."""
    return laid_together(
        first=plying.contribution(first, feed=plying.feed_ratio(first_loss)),
        second=plying.contribution(second, feed=plying.feed_ratio(second_loss)),
    )


def folded(**counts):
    """Count of a folded yarn, its threads numbered in any systems."""
    densities = {name: yarn_count.direct_count(count) for name, count in counts.items()}
    return yarn_count.indirect_count(1 / laid_together(**densities))


def missing(wanted, **known):
    """Count of the one thread that makes a wanted yarn with those known."""
    brought = laid_together(**{name: yarn_count.direct_count(count) for name, count in known.items()})
    return yarn_count.indirect_count(1 / plying.missing_component(yarn_count.direct_count(wanted), brought))


def share_in_yarn(component, yarn):
    """Share of the mass that a thread of that count has in the yarn."""
    return plying.weight_share(yarn_count.direct_count(component), yarn_count.direct_count(yarn))


def singles_by_length(yarn, strands, ratio):
    """Count of the singles, the loss told by their length over that of the yarn."""
    return 1 / plying.singles_for(yarn_count.direct_count(yarn), strands, twist.take_up(ratio))


def tex_factor(multiplier, system):
    """Twist factor in tex of a factor in another system. Any yarn will do."""
    yarn = Quantity(100, "tex")
    return twist.factor(twist.turns(multiplier, yarn, system), yarn, "tex")


def cotton_factor_of_count(turns, count):
    """Cotton twist factor of a yarn that is told by its count."""
    return twist.factor(turns, yarn_count.direct_count(count), "cotton")


def turns_of_cotton(multiplier, count):
    """Twist by a cotton factor in a yarn that is told by its count."""
    return twist.turns(multiplier, yarn_count.direct_count(count), "cotton")


def twist_at_another_count(turns, before, after):
    """Twist that keeps the factor when the count changes."""
    return turns_of_cotton(cotton_factor_of_count(turns, before), after)


def contraction_factor(angle):
    """Length of a single before it contracts by its twist, over that after."""
    return plying.feed_ratio(twist.retraction(angle))


def strand_in_ply(diameter, strands, turns):
    """Length of strand in one length of ply, from the strand itself."""
    return twist.ply_ratio(twist.ply_path(diameter, strands), turns)


def munden(state):
    """The constant that the library has for a state of relaxation."""
    return knitting.MUNDEN[state]


def yarn_by_munden(area, stitch_density, state):
    """Yarn in an area of stitches, their length by Munden's relation."""
    length = knitting.munden_stitch_length(stitch_density, munden(state))
    return knitting.from_gauge(area, stitch_density, length)


def knitted_mass(courses, width, length, ratio, count):
    """Mass of knitted cloth, a course taking so many times the width in yarn. Any wales will do."""
    stitches = 5
    stitch = knitting.stitch_length(Quantity(ratio, "inch"), stitches)
    density = knitting.stitch_density(Quantity(stitches, "1/inch"), courses)
    yarn = knitting.from_gauge(knitting.area("rectangle", width, length), density, stitch)
    return yarn_count.mass_of_length(yarn, count)


def mass_by_swatch(area, width, height, mass):
    """Mass of yarn for a piece, by the mass of a swatch. Any grist will do."""
    grist = Quantity(2, "meter/gram")
    swatch = knitting.area("rectangle", width, height)
    return yarn_count.mass_of_length(knitting.from_swatch(area, swatch, mass, grist), grist)


def kept(before, after):
    """Share of a length that is left after shrinking."""
    return 1 - reeling.shrinkage(before, after)


def equal_firmness(sett, ends_before, intersections_before, ends_after, intersections_after):
    """Sett that is as firm in another weave: both leave room for the same threads side by side."""
    room = weaving.closest_sett(sett, ends_before, intersections_before) / sett
    return weaving.closest_sett(sett / room, ends_after, intersections_after)


def closest_sett_of_weave(grist, k, weave):
    """Closest sett of a weave, from the grist of the yarn."""
    return weaving.closest_sett(diameter.threads_side_by_side(grist, k), *weaving.WEAVES[weave])


def cotton_hanks(ends, length):
    """Hanks of 840 yards in a warp."""
    return weaving.warp_yarn(ends, length) / Quantity(840, "yard")


def warp_with_added(length, added):
    """Warp for a length of cloth, the take-up told as what is added to the cloth."""
    return weaving.warp_length(length, twist.take_up(1 + added))


def reed_width_with_added(width, added):
    """Reed width for a width of cloth, the draw-in told as what is added to the cloth."""
    return weaving.width_in_reed(width, twist.take_up(1 + added))


def warp_to_spare(ends, length, spare):
    """Yarn of a warp with a reserve."""
    return project.yarn_length(weaving.warp_yarn(ends, length), spare)


def warp_mass(sett, width, length, count):
    """Mass of a warp, from its sett and the count of its yarn."""
    return yarn_count.mass_of_length(weaving.warp_yarn(weaving.ends(sett, width), length), count)


def weft_mass(picks, length, width, count):
    """Mass of a weft, its take-up left out."""
    return yarn_count.mass_of_length(weaving.weft_yarn(picks, length, width), count)


def square_meter(warp, sett, warp_crimp, weft, picks, weft_crimp):
    """Mass of one square meter of cloth, both crimps told as what is added to the cloth."""
    one = Quantity(1, "meter")
    warp_yarn = weaving.warp_yarn(weaving.ends(sett, one), warp_with_added(one, warp_crimp))
    weft_yarn = weaving.weft_yarn(picks, one, one, weft_crimp)
    return weaving.cloth_mass(warp_yarn, weft_yarn, warp, weft)


def square_meter_of_counts(warp, weft, **cloth):
    """The same for yarns that are told by their counts."""
    return square_meter(yarn_count.direct_count(warp), weft=yarn_count.direct_count(weft), **cloth)
