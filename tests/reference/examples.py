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
    diameter,
    fiber,
    moisture,
    project,
    reeling,
    stock,
    yarn_count,
)
from workbookgen.units import Quantity

# Whole columns of a list: they belong to one call, whatever the length of the other arguments.
COLUMNS = {"names", "values", "amounts", "second_names", "second_amounts", "verdicts"}


def q(unit, *magnitudes):
    return Quantity(np.array(magnitudes, dtype=float), unit)


def n(*numbers):
    return np.array(numbers, dtype=float)


def texts(*words):
    return np.array(words, dtype=object)


LOGGED = {"names": ["Aster", "birch", "", "aster"], "amounts": q("oz", 1, 2, 4, 8)}

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
    (reeling.finished_length, dict(length=q("yard", 200, 0), loop=q("inch", 72, 54), washed_loop=q("cm", 180, 130))),
    (reeling.shrinkage, dict(length=q("yard", 200, 100), finished=q("m", 180, 92))),
    (reeling.net_mass, dict(gross=q("oz", 4, 2), tare=q("g", 3, 0))),
    (yarn_count.grist, dict(length=q("yard", 200, 100), mass=q("g", 100, 30))),
    (yarn_count.linear_density, dict(length=q("yard", 200, 100), mass=q("g", 100, 30))),
    (yarn_count.indirect_count, dict(grist=q("yard/pound", 900, 1680))),
    (yarn_count.direct_count, dict(grist=q("yard/pound", 900, 1680))),
    (yarn_count.grist_of, dict(number=n(2, 120), system=texts("cotton count", "tex"))),
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
    (stock.listed, dict(name=texts("Aster", "birch"))),
    (stock.pick, dict(name=texts("aster", "Birch"), names=["Aster", "", "birch"], values=q("m", 1, np.nan, 3))),
    (stock.total, dict(name=texts("aster", "cedar"), **LOGGED)),
    (
        stock.spun,
        dict(name=texts("aster", "cedar"), **LOGGED, second_names=["cedar"], second_amounts=q("g", 5)),
    ),
    (stock.first_lot_mass, dict(net=q("oz", 4, 2), second_share=n(0.25, 0))),
    (stock.second_lot_mass, dict(net=q("oz", 4, 2), second_share=n(0.25, 0))),
    (stock.still_to_come, dict(yarn=q("oz", 4, 1), spun=q("g", 50, 50))),
    (stock.of_lots, dict(**LOGGED, lot_1=texts("aster", "birch"), lot_2=texts("birch", "cedar"))),
    (project.yarn_length, dict(length_wanted=q("yard", 400, 0), margin=n(0.1, 0))),
    (project.fiber_for, dict(yarn=q("g", 500, 0), kept=n(0.5, 1))),
    (project.length_in_hand, dict(spun_length=q("yard", 200, 0), to_come=q("oz", 4, 0), grist=q("m/g", 2, 3))),
    (project.surplus, dict(have=q("yard", 200, 100), need=q("m", 100, 200))),
    (project.verdict, dict(surplus=q("yard", 120, -80))),
    (agreement.agrees, dict(computed=n(1.001, 2), printed=n(1, 3), tolerance=n(0.01, 0.01))),
    (agreement.how_many_agree, dict(verdicts=["agrees", "differs"])),
    (agreement.how_many, dict(verdicts=["agrees", "differs"])),
    (agreement.trust, dict(agreeing=n(24, 22), total=n(24, 24))),
]


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
