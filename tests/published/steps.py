"""Published values that take more than one calculation: the calculations in a row, and nothing else."""

from workbookgen.reference import blends, diameter, fiber, plying, twist, uncertainty, weaving, yarn_count
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


def warp_with_added(length, added):
    """Warp for a length of cloth, the take-up told as what is added to the cloth."""
    return weaving.warp_length(length, twist.take_up(1 + added))


def square_meter(warp, sett, warp_crimp, weft, picks, weft_crimp):
    """Mass of one square meter of cloth, both crimps told as what is added to the cloth."""
    one = Quantity(1, "meter")
    warp_yarn = weaving.warp_yarn(weaving.ends(sett, one), warp_with_added(one, warp_crimp))
    weft_yarn = weaving.weft_yarn(picks, one, one, twist.take_up(1 + weft_crimp))
    return weaving.weight_of_cloth(warp_yarn, weft_yarn, 1 / warp, 1 / weft)


def square_meter_of_counts(warp, weft, **cloth):
    """The same for yarns that are told by their counts."""
    return square_meter(yarn_count.direct_count(warp), weft=yarn_count.direct_count(weft), **cloth)


def blended_fineness(first, first_share, second, second_share):
    """Linear density of the average fiber of two that are blended by weight."""
    masses = [share * Quantity(100, "gram") for share in (first_share, second_share)]
    length = blends.fiber_length(masses[0], first) + blends.fiber_length(masses[1], second)
    return blends.mean_fineness(masses[0] + masses[1], length, 2, 2)


def blended_regain(first, first_share, second, second_share):
    """Regain of two fibers that are blended by dry weight, each weighed at its own regain."""
    dry = [share * Quantity(100, "gram") for share in (first_share, second_share)]
    masses = [each * (1 + regain) for each, regain in zip(dry, (first, second), strict=True)]
    found = [blends.dry_at_regain(mass, regain) for mass, regain in zip(masses, (first, second), strict=True)]
    return blends.blend_regain(masses[0] + masses[1], found[0] + found[1], 2, 2)
