"""Arguments for the calculations of blends, and of a yarn that is matched."""

from workbookgen.reference import blends, fiber, plying

from .amounts import n, q, texts

ALL = dict(known=n(2, 3), of=n(2, 3))

EXAMPLES = [
    (blends.weighed, dict(mass=q("oz", 4, 3), name=texts("wool", "silk"))),
    (blends.share_of_blend, dict(mass=q("oz", 4, 3), total=q("g", 400, 90))),
    (blends.to_lay_out, dict(share=n(0.3, 1), wanted=q("oz", 2, 0))),
    (blends.cost_of, dict(mass=q("oz", 4, 3), price=q("1/hectogram", 6, 0))),
    (blends.blend_price, dict(cost=n(12, 0), total=q("oz", 4, 3), **ALL)),
    (blends.fineness, dict(own=q("decitex", 1.3, 6))),
    (blends.fineness, dict(fiber_diameter=q("µm", 20, 30), fiber_density=q("g/cm^3", 1.31, 1.5))),
    (blends.thickness, dict(linear_density=q("decitex", 1.3, 6), fiber_density=q("g/cm^3", 1.31, 1.5))),
    (blends.thickness, dict(linear_density=q("decitex", 1.3, 6), fiber_diameter=q("µm", 20, 30))),
    (blends.fiber_length, dict(mass=q("oz", 4, 0), linear_density=q("decitex", 1.3, 6))),
    (blends.fiber_side, dict(length=q("km", 400, 0), fiber_diameter=q("µm", 20, 30))),
    (blends.mean_fineness, dict(total=q("oz", 4, 3), length=q("km", 400, 900), **ALL)),
    (blends.mean_diameter, dict(side=q("m^2", 20, 30), length=q("km", 400, 900), **ALL)),
    (blends.dry_at_regain, dict(mass=q("oz", 4, 0), regain=n(0.136, 0))),
    (blends.blend_regain, dict(total=q("oz", 4, 3), dry=q("g", 100, 80), **ALL)),
    (fiber.share_of_fed, dict(part=q("oz", 4, 3), fed=q("g", 400, 90), stage=n(1, 3))),
    (fiber.waste_of_fed, dict(fed=q("oz", 4, 30), prepared=q("oz", 2, 20), noil=q("g", 40, 90), stage=n(1, 3))),
    (fiber.waste_of_fed, dict(fed=q("oz", 4, 30), prepared=q("oz", 2, 20), way=texts("carding", "Carding"))),
    (fiber.waste_share, dict(waste=q("oz", 1, 0), fed=q("g", 400, 90))),
    (plying.strand_to_spin, dict(wanted=q("yard", 400, 0), take_up=n(0.05, 0), shrinkage=n(0.04, -0.02))),
    (plying.twist_to_insert, dict(counted=q("1/inch", 4, 0), shrinkage=n(0.04, -0.02))),
    (plying.strands_mass, dict(length=q("yard", 400, 0), strands=n(2, 3), linear_density=q("tex", 100, 200))),
]
