"""Published values that take more than one law: the laws in a row, and nothing else."""

from workbookgen.reference import diameter, fiber, yarn_count
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
