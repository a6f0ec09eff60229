"""Arguments for the calculations of a label's fiber content."""

from workbookgen.reference import content

from .amounts import n, texts

STRANDS = {
    f"{word}_{place}": value
    for place in range(1, 13)
    for word, value in (("fiber", texts("wool", "silk")), ("share", n(0.125, 0.0625)))
}
FOUR = {
    f"{word}_{place}": value
    for place in (1, 2, 3, 4)
    for word, value in (("fiber", texts(f"fiber {place}", "silk")), ("named", n(place / 16, 0.25)))
}
TWO = dict(fiber_1=texts("wool", "Silk"), named_1=n(0.8, 0.7), fiber_2=texts("silk", "cotton"), named_2=n(0.2, 0.0))
POINTS = dict(points_1=n(80, 66.7), points_2=n(20, 33.3), points_3=n(0, 0), points_4=n(0, 0), others=n(0, 0))
TOLD = dict(
    percent_1=n(80, 66),
    percent_2=n(20, 33),
    percent_3=n(0, 0),
    percent_4=n(0, 0),
    others=n(0, 1),
    unnamed=n(0, 1),
    whole=n(1, 1),
)

EXAMPLES = [
    (content.main_share, dict(kind=texts("Romney", "Silk"))),
    (
        content.main_share,
        dict(
            kind=texts("Romney", "Silk"),
            also_kind=texts("Silk", "Cotton"),
            also=n(0.3, 0.5),
            third_kind=texts("Hemp", "Flax"),
            third=n(0.1, 0.2),
        ),
    ),
    (content.mixture, dict(fiber_1=texts("wool", "silk"), share_1=n(0.7, 1))),
    (
        content.mixture,
        {
            f"{word}_{place}": value
            for place in (1, 2, 3)
            for word, value in (("fiber", texts("wool", "silk")), ("share", n(0.25, 0.5)))
        },
    ),
    (
        content.mixture,
        dict(fiber_1=texts("wool", "silk"), share_1=n(0.7, 0.5), fiber_2=texts("silk", "linen"), share_2=n(0.3, 0.5)),
    ),
    (content.lot_of_strand, dict(lot=texts("Clover", "Moss"), mixed=texts("1000 wool", "1000 silk"))),
    (
        content.lot_of_strand,
        dict(
            lot=texts("Clover", "Moss"),
            mixed=texts("1000 wool", "1000 silk"),
            other=texts("Fog", "Rain"),
            other_mixed=texts("1000 Wool", "1000 silk"),
        ),
    ),
    (content.untold, dict(design=texts("Gray", "Blue"))),
    (content.untold, dict(design=texts("Gray", "Blue"), share=n(0.5, 1), lot=texts("Clover", "Moss"))),
    (content.strand_share, dict(lot=texts("Clover", "Moss"))),
    (content.strand_share, dict(lot=texts("Clover", "Moss"), found=n(0.5, 1))),
    (
        content.share_in_yarn,
        dict(
            fiber=texts("WOOL", "SILK"),
            strand=n(0.5, 1),
            lot=texts("clover", "Moss"),
            lots=["Clover", "Moss", ""],
            shares=n(0.75, 1, 0.5),
        ),
    ),
    (content.next_fiber, dict(fiber_1=texts("wool", "silk"), fiber_4=texts("silk", "Wool"))),
    (
        content.next_fiber,
        dict(fiber_1=texts("wool", "silk"), fiber_4=texts("silk", "Wool"), before_1=texts("Wool", "silk")),
    ),
    (
        content.together,
        dict(
            fiber=texts("wool", "silk"),
            fiber_1=texts("Wool", "wool"),
            share_1=n(0.5, 0.4),
            fiber_4=texts("silk", "silk"),
            share_4=n(0.2, 0.6),
            fiber_12=texts("wool", "silk"),
            share_12=n(0.3, 0.1),
        ),
    ),
    (content.together, dict(fiber=texts("wool", "silk")) | STRANDS),
    (
        content.next_fiber,
        {key: value for key, value in STRANDS.items() if key.startswith("fiber")}
        | dict(before_1=texts("silk", "wool"), before_2=texts("hemp", "flax"), before_3=texts("flax", "hemp")),
    ),
    (content.named_share, dict(fiber=texts("wool", "silk"), share=n(0.02, 0.04))),
    (content.known_in_all, dict(whole_1=n(0.5, 1))),
    (content.known_in_all, dict(whole_1=n(0.5, 0.6), whole_3=n(0.5, 0.4))),
    (content.known_in_all, {f"whole_{place}": n(0.25, 0.125) for place in (1, 2, 3, 4)}),
    (content.without_a_name, {f"named_{place}": n(0.25, 0) for place in (1, 2, 3, 4)}),
    (content.without_a_name, dict(named_1=n(0.5, 1), named_2=n(0, 0.2))),
    (content.largest_share, TWO),
    (content.largest_share, TWO | dict(before_1=texts("Wool", "silk"))),
    (content.largest_fiber, TWO | dict(largest=n(0.8, 0.7))),
    (
        content.largest_share,
        FOUR
        | dict(before_1=texts("silk", "wool"), before_2=texts("hemp", "fiber 4"), before_3=texts("fiber 1", "hemp")),
    ),
    (
        content.largest_fiber,
        FOUR
        | dict(
            largest=n(0.25, 0.25),
            before_1=texts("wool", "wool"),
            before_2=texts("hemp", "fiber 4"),
            before_3=texts("fiber 1", "hemp"),
        ),
    ),
    (content.in_percent, dict(share=n(0.333333, 0.002))),
    (content.others_percent, dict(told_1=n(0.5, 0.9), told_2=n(0.5, 0.06), told_3=n(0, 0), told_4=n(0, 0))),
    (content.rest_percent, dict(next_2=n(20, 33.333333), next_3=n(0, 10), next_4=n(0, 0), others=n(0, 1))),
    (content.whole_percent, POINTS | dict(place=n(1, 2))),
    (content.content_words, TOLD | dict(fiber_1=texts("wool", "silk"), fiber_2=texts("silk", "wool"))),
    (content.content_words, TOLD | dict(fiber_1=texts("wool", "silk"), fiber_2=texts("silk", "wool"), untold=n(0, 0))),
    (content.on_ticket, dict(content=texts("100% wool", "80% wool, 20% silk"))),
    (content.what_to_type, dict(skein=texts("One", "Two"))),
    (content.what_to_type, dict(skein=texts("One", "Two"), lot=texts("Clover", "Moss"))),
    (content.what_to_type, dict(skein=texts("One", "Two"), design=texts("Gray", "Blue"))),
    (content.what_to_type, dict(skein=texts("One", "Two"), content=texts("100% wool", "100% silk"))),
]
