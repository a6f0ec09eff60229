"""Arguments for the calculations of bobbins and of what is left on them."""

import numpy as np

from workbookgen.reference import plying

from .amounts import n, q

EXAMPLES = [
    (
        plying.bobbin_mass,
        dict(
            outer=q("inch", 4, 3),
            inner=q("cm", 2, 1),
            height=q("inch", 4, 5),
            package_density=q("g/cm^3", 0.3, 0.4),
            fullness=n(1, 0.8),
        ),
    ),
    (plying.bobbin_holds, dict(weighed=q("oz", 4, 3))),
    (plying.bobbin_holds, dict(estimated=q("g", 100, 90))),
    (plying.still_to_ply, dict(own=q("yard", 400, 0))),
    (plying.still_to_ply, dict(project=q("yard", 400, 900), left=n(1, 0.25))),
    (plying.strands_to_ply, dict(own=n(2, 3))),
    (plying.strands_to_ply, dict(project=n(2, 3))),
    (plying.strands_to_ply, dict(usual=n(2, 3))),
    (plying.take_up_to_ply, dict(own=n(0.04, 0))),
    (plying.take_up_to_ply, dict(project=n(0.04, 0))),
    (plying.take_up_to_ply, dict(sample=n(0.04, 0))),
    (plying.take_up_to_ply, dict(design=n(0.04, 0))),
    (plying.singles_grist, dict(own=q("yard/pound", 2000, 3000))),
    (
        plying.singles_grist,
        dict(plied=q("yard/pound", 900, 1680), strands=n(2, 3), take_up=n(0.04, 0), shrinkage=n(0.05, -0.02)),
    ),
    (plying.bobbins_to_fill, dict(length=q("yard", 400, 900), holds=q("m", 300, 350), strands=n(2, 3))),
    (plying.filled_to, dict(length=q("yard", 400, 900), holds=q("m", 500, 450), strands=n(2, 3), bobbins=n(2, 6))),
    (plying.plying_bobbins, dict(mass=q("oz", 9, 3), holds=q("g", 100, 90))),
    (
        plying.singles_grist,
        dict(
            plied=q("yard/pound", 900, 1680),
            strands=n(2, 3),
            take_up=n(0.04, 0),
            shrinkage=n(0.05, -0.02),
            bought=n(0.2, 0),
        ),
    ),
    (plying.plying_bobbins, dict(mass=q("oz", 9, 3), holds=q("g", 100, 90), bought=n(0.2, 0))),
    (plying.plying_bobbins, dict(mass=q("oz", 9, 3), plying=q("g", 100, 90))),
    (plying.bobbin_gets, dict(length=q("yard", 400, 900), bobbins=n(1, 3))),
    (plying.of_one_bobbin, dict(mass=q("oz", 9, 3), holds=q("g", 100, 90), bought=n(0.2, 0))),
    (plying.of_one_bobbin, dict(mass=q("oz", 9, 3), plying=q("g", 100, 90))),
    (plying.plying_words, dict(bobbins=n(1, 3), each=q("yard", 400, 300), fills=n(0.9, 2.4))),
    (plying.bobbin_has, dict(length=q("yard", 400, 300))),
    (plying.bobbin_has, dict(mass=q("oz", 2, 3), grist=q("yard/pound", 2000, 3000))),
    (plying.bobbin_lacking, dict(length=q("yard", 400, 300))),
    (plying.bobbin_lacking, dict(mass=q("oz", 2, 3), has=q("yard", 400, 300))),
    (plying.bobbins_plied, dict(amounts=q("yard", 400, np.nan, 300))),
    (plying.bobbins_plied, dict(amounts=q("yard", 400, np.nan, 300), lacking=n(0, 0), wrong=n(0, 0))),
    (plying.left_over, dict(has=q("yard", 400, 300), shortest=q("m", 200, 250))),
    (plying.left_in_all, dict(total=q("yard", 700, 900), strands=n(2, 3), shortest=q("yard", 300, 300))),
    (plying.plied_from, dict(length=q("yard", 400, 0), take_up=n(0.04, 0), strands=n(2, 3))),
    (plying.plied_to_the_end, dict(shortest=q("yard", 400, 0), strands=n(2, 3), take_up=n(0.04, 0))),
    (plying.shared_evenly, dict(total=q("yard", 400, 0), strands=n(2, 3))),
    (plying.leftover_words, dict(strands=n(2, 3), total=q("yard", 700, 950), rest=q("yard", 100, 50))),
    (
        plying.leftover_words,
        dict(strands=n(2, 3), total=q("yard", 700, 950), rest=q("yard", 100, 5), grist=q("yard/pound", 2000, 3000)),
    ),
    (
        plying.leftover_words,
        dict(strands=n(2, 3), total=q("yard", 700, 950), rest=q("yard", 100, 50), take_up=n(0, 0.1)),
    ),
]
