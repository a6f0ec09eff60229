"""Arguments for the calculations of dyeing and of color."""

from workbookgen.reference import color, dyeing

from .amounts import n, q

EXAMPLES = [
    (dyeing.goods, dict(weighed=q("g", 125, 300))),
    (dyeing.goods, dict(skein=q("oz", 4, 3))),
    (dyeing.goods, dict(lot=q("lb", 4, 3))),
    (dyeing.dye, dict(goods=q("g", 125, 0), depth=n(0.02, 0))),
    (dyeing.stock, dict(dye=q("g", 2.5, 0), strength=n(0.01, 0.02))),
    (dyeing.powder, dict(volume=q("mL", 500, 0), strength=n(0.01, 0.02))),
    (dyeing.dyes, dict(powder=q("g", 5, 0), depth=n(0.02, 0.01))),
    (dyeing.water, dict(bath=q("L", 3, 0.25), stock=q("mL", 250, 0))),
    (dyeing.to_weigh, dict(dye=q("g", 2.5, 0), of_shade=n(0.5, 1))),
    (dyeing.to_weigh, dict(goods=q("oz", 4, 0), of_goods=n(0.02, 0))),
    (dyeing.stock_of, dict(dye=q("g", 2.5, 0), of_shade=n(0.5, 1), strength=n(0.01, 0.02))),
    (dyeing.in_shade, dict(of_shade=n(0.5, 1))),
    (dyeing.shade_words, dict(total=n(1, 0.9))),
    (color.strips, dict(strands=n(2, 3), skeins=n(1, 4))),
    (color.strips, dict(strands=n(2, 3), skeins=n(1, 4), chosen=n(6, 1))),
    (color.repeats_of_strand, dict(repeats=n(4, 1), strips=n(2, 3), strands=n(2, 1), skeins=n(1, 2))),
    (color.order_words, dict(repeats=n(4, 2.5), pieces=n(2, 4))),
    (color.part, dict(mass=q("oz", 4, 0), parts=n(2, 1))),
    (color.strand_length, dict(mass=q("oz", 4, 0), grist=q("yard/pound", 1200, 900), take_up=n(0.05, 0))),
    (color.run, dict(length=q("yard", 100, 0), repeats=n(4, 1), share=n(0.5, 1))),
    (color.out_of_step, dict(length=q("yard", 100, 0), difference=n(0.03, 0), strands=n(2, 3))),
    (color.meeting_words, dict(ahead=q("yard", 3, 9), shortest=q("m", 4, 5))),
    (color.color_weight, dict(whole=q("oz", 4, 0), share=n(0.25, 0))),
    (color.color_weight, dict(whole=q("oz", 4, 4), weighed=q("g", 25, 0))),
    (color.share_of_top, dict(weight=q("g", 25, 0), whole=q("oz", 4, 3))),
    (color.whole_words, dict(total=n(1, 1.25))),
    (color.stripe_rows, dict(length=q("yard", 4, 0), per_row=q("inch", 20, 30))),
    (color.stripe_rows, dict(length=q("yard", 4, 0), per_row=q("inch", 20, 30), shrinkage=n(0.25, -0.125))),
    (color.stripe_width, dict(rows=n(6, 0), row_gauge=q("1/inch", 6, 5))),
]
