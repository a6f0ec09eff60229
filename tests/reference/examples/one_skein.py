"""Arguments for the calculations about one skein."""

from workbookgen.reference import measuring

from .amounts import n, q, texts

LOT = {"names": ["Aster 1", "Aster 2", "Birch 1", "aster 3"], "amounts": n(900, 950, 800, 990)}
VERDICTS = {
    "names": ["Aster 1", "Aster 2", "Aster 3"],
    "verdicts": ["go together", "keep apart", "alternate rows"],
    "lines": n(1, 2, 3),
}

EXAMPLES = [
    (measuring.tried_or_logged, dict(tried=q("oz", 4, 2))),
    (measuring.tried_or_logged, dict(tried=texts("Aster", "birch"))),
    (measuring.tried_or_logged, dict(logged=q("yard", 3, 0))),
    (measuring.of_the_reel, dict(typed=q("inch", 72, 54))),
    (measuring.of_the_reel, dict(reel=texts("Aster", "birch"), of_reel=q("inch", 72, 54))),
    (measuring.of_the_reel, dict(logged=q("cm", 180, 140))),
    (measuring.weight_in_use, dict(pounds=q("pound", 1, 0), rest=q("oz", 4, 2))),
    (measuring.weight_in_use, dict(logged=q("g", 100, 50))),
    (measuring.wraps_in_use, dict(tried=n(104, 0))),
    (measuring.wraps_in_use, dict(logged=n(104, 0))),
    (measuring.fault_in_log, dict(mark=texts("!", "!"), message=texts("Wraps: type a number.", "Reel: choose one."))),
    (measuring.wrong_words, dict(message=texts("Wraps: type a number.", "Reel: choose one."))),
    (measuring.wrong_words, dict(fault=texts("Wraps: type a number.", "Reel: choose one."))),
    (measuring.wrong_words, dict(gross=q("oz", 4, 2))),
    (measuring.wrong_words, dict(message=texts("Wraps: type a number.", "Reel: choose one."), net=q("oz", 4, 2))),
    (measuring.wrong_words, dict(unusual=texts("Is it right? Loop: short.", "Is it right? Weight: light."))),
    (measuring.unusual, dict(loop=q("cm", 10, 5))),
    (measuring.unusual, dict(mass=q("oz", 100, 40), loop=q("cm", 180, 90))),
    (measuring.unusual, dict(mass=q("g", 100, 50), loop=q("cm", 180, 90), washed_loop=q("inch", 30, 60))),
    (measuring.unusual, dict(counted=q("1/inch", 30, 2), expected=q("1/cm", 4, 5))),
    (measuring.unusual, dict(rest=q("yard", 40, 7), loop=q("inch", 72, 60), wraps=n(100, 3))),
    (measuring.least_likely, dict(length=q("yard", 233, 1), uncertainty=q("yard", 1.5, 2))),
    (measuring.most_likely, dict(length=q("yard", 233, 1), uncertainty=q("m", 1.5, 2))),
    (
        measuring.grist_within,
        dict(
            length=q("yard", 233, 100),
            uncertainty=q("m", 1.5, 2),
            u_scale=n(0.005, 0),
            net=q("oz", 4, 2),
            step=q("g", 1, 0),
        ),
    ),
    (
        measuring.grist_within,
        dict(
            length=q("yard", 233, 100),
            uncertainty=q("m", 1.5, 2),
            u_scale=n(0.005, 0),
            net=q("oz", 4, 2),
            step=q("g", 1, 0),
            tare=q("oz", 0, 1),
        ),
    ),
    (measuring.scale_step, dict(gross=q("oz", 4, 2.25), in_ounces=n(1, 1))),
    (measuring.scale_step, dict(gross=q("g", 4, 2.25), in_ounces=n(0, 0))),
    (measuring.scale_step, dict(gross=q("g", 45, 46), in_ounces=n(0, 0), weighed=n(4, 5), coarse=n(4, 4))),
    (measuring.is_coarse, dict(gross=q("g", 45, 46), in_ounces=n(0, 0))),
    (measuring.is_coarse, dict(gross=q("oz", 4, 4.1), in_ounces=n(1, 1))),
    (measuring.grist_words, dict(within=n(0.02, 0), grist=q("m/g", 2, 1))),
    (measuring.likely_words, dict(least=q("yard", 230, 0), most=q("yard", 1236, 9))),
    (measuring.likely_words, dict(loop=q("inch", 72, 54))),
    (measuring.likely_words, dict(wraps=n(104, 0))),
    *(
        (calculation, VERDICTS | {"deviation": n(0.1, -0.2)})
        for calculation in (measuring.goes_with, measuring.alternates_with, measuring.apart_from)
    ),
    (measuring.lot_words, dict(skein=texts("Aster 1", "Birch 1"))),
    (measuring.lot_words, dict(skein=texts("Aster 1", "Birch 1"), lot=texts("Aster", "Birch"), count=n(4, 1))),
    (measuring.share_of_need, dict(length=q("yard", 200, 0), need=q("m", 400, 500))),
    (measuring.project_words, dict(project=texts("Vest", "hat"), need=q("yard", 2530, 200), share=n(0.09, 1.2))),
    (measuring.place_in_group, dict(line=n(1, 9), count=n(4, 4))),
    (measuring.place, LOT | {"name": texts("aster 1", "birch 1"), "number": n(1, 1)}),
    (
        measuring.of_another,
        dict(
            value=q("m/g", 2, 3),
            line=n(1, 2),
            number=n(1, 2),
            name=texts("Aster 1", "Aster 2"),
            chosen=texts("Birch 1", "Birch 1"),
            fate=texts("used", "set aside"),
        ),
    ),
    (measuring.where_drawn, LOT | {"name": texts("aster 1", "cedar")}),
    (measuring.number_on_the_chart, dict(number=n(1, 4))),
    (measuring.on_the_chart, dict(deviation=n(0.1, -0.5))),
    (measuring.dots, dict(deviation=n(-0.1, 0.5))),
    (measuring.difference_words, dict(difference=n(0.17, 0))),
    (measuring.difference_words, dict(difference=n(0.17, 0), two=n(1, 0))),
    (measuring.two_dye_lots, dict(first=texts("A 12", "B 3"), second=texts("a 12", "A 12"))),
    (measuring.by_dye_lots, dict(verdict=texts("go together", "keep apart"), two=n(1, 0))),
    (measuring.by_dye_lots, dict(verdict=texts("go together", "alternate rows"))),
    (measuring.limit_off, dict(times=n(1.5, 2), variation=n(0.1, 0))),
    (measuring.high_on_the_chart, dict(limit=n(0.1, 0))),
    (measuring.low_on_the_chart, dict(limit=n(0.1, 0))),
]
