"""Formulas in cells: exactly what is written, for planners small enough to count their cells by hand.

The logs of `described` begin in Work!A7 (three reels) and Work!A14 (four skeins), the card
in Work!B19, the sizes in Facts!A8 and the counting numbers in Facts!A16.
"""

import described
import pytest
from described import ANY, LENGTH, one_result, planner_of

from workbookgen.book.layout import place
from workbookgen.language.domains import Name, Note, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card
from workbookgen.language.quantities import GRIST, GRIST_METRIC, LOOP, MASS, THREADS


def texts(key: str, system: str = "metric") -> tuple[str, ...]:
    return place(described.whole(system)).placements[key].formulas


def bound(*fields, system: str = "metric") -> str:
    """The formula of the last field of a card; its values stand in Work!B4, B5 ..."""
    card = Card("work", "", (Group("All", fields),))
    return place(planner_of(card, system=system)).placements[f"work_{fields[-1].key}"].formulas[0]


def test_a_number_needed_and_its_limits():
    # 1 cm is 0.01 m, and the result is in meters.
    assert texts("reels_hundred") == tuple(
        f'=IF(COUNT($B{row})=1,IF(AND($B{row}<=1000,$B{row}>0),100 * ($B{row}*0.01),""),"")' for row in (7, 8, 9)
    )


def test_the_same_in_inches_and_yards():
    assert texts("reels_hundred", "us")[0] == '=IF(COUNT($B7)=1,IF(AND($B7<=1000,$B7>0),(100 * ($B7*0.0254))/0.9144,""),"")'


def test_a_text_needed():
    assert texts("reels_listed")[1] == '=IF(ISTEXT($A8),IF(AND(LEN($A8)>0,LEN($A8)<=12),$A8,""),"")'


def test_a_total():
    assert texts("reels_wound")[0] == (
        '=IF(ISTEXT($A7),IF(AND(LEN($A7)>0,LEN($A7)<=12),SUMPRODUCT(($K$14:$K$17=$A7)*1,$J$14:$J$17),""),"")'
    )


def test_a_total_in_another_unit():
    assert texts("reels_wound", "us")[0] == (
        '=IF(ISTEXT($A7),IF(AND(LEN($A7)>0,LEN($A7)<=12),'
        '((SUMPRODUCT(($K$14:$K$17=$A7)*1,$J$14:$J$17)*0.9144))/0.9144,""),"")'
    )


def test_a_choice_and_a_pick():
    # The three reels are counted with the first three counting numbers; the cell found must hold what its domain takes.
    found = "INDEX($B$7:$B$9,SUMPRODUCT(($E$7:$E$9=$A15)*1,Facts!$A$16:$A$18))"
    assert texts("skeins_loop")[1] == (
        f'=IF(ISTEXT($A15),IF(SUMPRODUCT(($E$7:$E$9=$A15)*1)=1,'
        f'IF(AND(ISNUMBER({found}),{found}<=1000,{found}>0),(({found}*0.01))/0.01,""),""),"")'
    )


def test_what_a_blank_cell_means():
    # Zero is what an empty cell counts as anyway, so nothing is spelled out; a text in it still blanks the result.
    assert texts("skeins_length")[0] == (
        "=IF(AND(COUNT($B14,$I14)=2,COUNTA($C14)=COUNT($C14)),"
        "IF(AND($B14<=5000,$B14>=0,OR(ISBLANK($C14),$C14<100),OR(ISBLANK($C14),$C14>=0)),"
        '$B14 * ($I14*0.01) + $C14,""),"")'
    )
    assert texts("plan_need") == (
        "=IF(AND(COUNT($B$19)=1,COUNTA($B$20)=COUNT($B$20)),"
        "IF(AND($B$19<=1000,$B$19>0,OR(ISBLANK($B$20),$B$20<=2),OR(ISBLANK($B$20),$B$20>=0)),"
        '$B$19 * (1 + IF(ISBLANK($B$20),0.1,$B$20)),""),"")',
    )


def test_a_condition():
    # It stands inside the domains, on which it may rely: AND works out all its parts, wherever the first fails.
    assert texts("skeins_kept")[3] == (
        '=IF(COUNT($E17,$D17)=2,IF(AND($E17<=1000,$E17>0,$D17<=1000,$D17>0),IF($E17 <= $D17,$E17 / $D17,""),""),"")'
    )


def test_optional_words():
    assert texts("skeins_wpi")[0] == (
        "=IF(COUNTA($F14,$B$21)=COUNT($F14,$B$21),"
        "IF(AND(OR(ISBLANK($F14),$F14<=1000),OR(ISBLANK($F14),$F14>0),"
        "OR(ISBLANK($B$21),$B$21<=1000),OR(ISBLANK($B$21),$B$21>0)),IF(OR(ISNUMBER($F14), ISNUMBER($B$21)),"
        '(IF(ISNUMBER($F14), ($F14*1/0.0254), ($B$21*1/0.0254)))/(1/0.0254),""),""),"")'
    )


def test_a_band():
    assert texts("skeins_size")[0] == (
        "=IF(COUNT($M14)=1,"
        'INDEX(Facts!$A$8:$A$10,MATCH(ROUND((($M14*1/0.0254))/(1/0.0254),9),Facts!$B$8:$B$10,1)),"")'
    )


def test_a_band_some_times_the_word():
    said = Result("said", "Said", "band(sizes_name, sizes_from, threads, 0.95)", lambda threads: "", None)
    assert bound(Input("threads", "Threads", ANY, THREADS), said) == (
        '=IF(COUNT($B$4)=1,IF(AND($B$4<=1000,$B$4>0),'
        'INDEX(Facts!$A$8:$A$10,MATCH(ROUND((($B$4*1/0.0254)*0.95)/(1/0.0254),9),Facts!$B$8:$B$10,1)),""),"")'
    )


@pytest.mark.parametrize(
    ("system", "value"),
    [
        ("metric", "($B$4 / ($B$5*0.01))"),
        ("us-grams", "(($B$4*0.9144) / ($B$5*0.9144/453.59237))"),
        ("us", "((($B$4*0.9144) / ($B$5*0.9144/453.59237)))/28.349523125"),
    ],
)
def test_units_in_and_out(system, value):
    # Length over grist is a mass; a grist per 100 g is 0.01 m/g, a gram needs no factor.
    weight = Result("weight", "Weight", "(length / grist)", lambda length, grist: length / grist, MASS)
    formula = bound(Input("length", "Length", ANY, LENGTH), Input("grist", "Grist", ANY, GRIST), weight, system=system)
    assert formula == f'=IF(COUNT($B$4,$B$5)=2,IF(AND($B$4<=1000,$B$4>0,$B$5<=1000,$B$5>0),{value},""),"")'


def test_a_unit_with_a_fraction_is_divided_by_as_a_whole():
    grist = Result("grist", "Grist", "length / weight", lambda length, weight: length / weight, GRIST)
    formula = bound(Input("length", "Length", ANY, LENGTH), Input("weight", "Weight", ANY, MASS), grist, system="us-grams")
    assert "(($B$4*0.9144) / $B$5)/(0.9144/453.59237)" in formula


def test_a_condition_may_speak_of_texts():
    said = Result("said", "Said", 'IF(kind = "raw wool", loop, loop)', lambda kind, loop: loop, LOOP, only_if='kind <> "kind"')
    assert bound(Input("kind", "Kind", Note(longest=9)), Input("loop", "Loop", ANY, LOOP), said) == (
        "=IF(AND(ISTEXT($B$4),COUNT($B$5)=1),"
        'IF(AND(LEN($B$4)>0,LEN($B$4)<=9,$B$5<=1000,$B$5>0),IF($B$4 <> "kind",'
        '(IF($B$4 = "raw wool", ($B$5*0.01), ($B$5*0.01)))/0.01,""),""),"")'
    )


def test_a_text_that_may_be_missing():
    said = Result("said", "Said", 'IF(given(kind), kind, "none")', lambda kind="none": kind, None)
    assert bound(Input("kind", "Kind", Name(longest=9)), said) == (
        "=IF(OR(ISBLANK($B$4),ISTEXT($B$4)),"
        "IF(AND(OR(ISBLANK($B$4),LEN($B$4)>0),OR(ISBLANK($B$4),LEN($B$4)<=9)),"
        'IF((LEN($B$4)>0), $B$4, "none"),""),"")'
    )


def test_a_text_worked_out_must_not_be_blank():
    fields = (
        Input("kind", "Kind", Name(longest=9)),
        Result("same", "Same", "kind", lambda kind: kind, None),
        Result("again", "Again", "same", lambda same: same, None),
    )
    # The message stands below the fields, so the results are in B5 and B6.
    assert bound(*fields) == '=IF(ISTEXT($B$5),IF(LEN($B$5)>0,$B$5,""),"")'


def test_limits_are_written_in_full():
    domain = Number(least=0.001, below=12_345_678.9)
    formula = bound(Input("loop", "Loop", domain, LENGTH), one_result("loop", lambda loop: loop))
    assert formula == '=IF(COUNT($B$4)=1,IF(AND($B$4<12345678.9,$B$4>=0.001),$B$4,""),"")'


def test_the_message_of_a_record():
    # What is wrong before what is missing, in the order of the fields; nothing for a record nobody began.
    assert texts("plan_message") == (
        '=IF(COUNTA($B$19:$B$21)>0,'
        "IF(IF(ISBLANK($B$19),1=0,IF(ISNUMBER($B$19),NOT(AND($B$19<=1000,$B$19>0)),1=1)),"
        '"Wanted: type a number above 0 up to 1,000 m, in digits.",'
        "IF(IF(ISBLANK($B$20),1=0,IF(ISNUMBER($B$20),NOT(AND($B$20<=2,$B$20>=0)),1=1)),"
        '"Margin: type a percentage from 0% up to 200%.",'
        "IF(IF(ISBLANK($B$21),1=0,IF(ISNUMBER($B$21),NOT(AND($B$21<=1000,$B$21>0)),1=1)),"
        '"Usual count: type a number above 0 up to 1,000 per in, in digits.",'
        'IF(ISBLANK($B$19),"Still to fill in: Wanted.","")))),"")',
    )


@pytest.mark.parametrize(
    "case",
    [
        'IF(IF(ISTEXT($A7),SUMPRODUCT(($E$7:$E$9=$A7)*1)>1,1=0),"Reel: another line has this name; give each its own."',
        'IF(IF(ISBLANK($A7),1=0,IF(ISTEXT($A7),NOT(AND(LEN($A7)>0,LEN($A7)<=12)),1=1)),"Reel: type a name of up to 12 letters."',
    ],
)
def test_the_message_of_a_name(case):
    assert case in texts("reels_message")[0]


@pytest.mark.parametrize(
    "case",
    [
        'IF(IF(COUNT($E14,$D14)=2,$E14 > $D14,1=0),"Yarn: more than the fiber."',
        'IF(IF(ISBLANK($A14),1=0,IF(ISTEXT($A14),NOT(SUMPRODUCT(($E$7:$E$9=$A14)*1)=1),1=1)),"On the reel: choose one of the names',
    ],
)
def test_the_message_of_a_rule_and_of_a_choice(case):
    assert case in texts("skeins_message")[0]


def test_words_inside_texts_are_left_alone():
    said = Result("said", "Said", '"loop & total(loop, loop, loop) in " & loop', lambda loop: "", None)
    formula = bound(Input("loop", "Loop", ANY, GRIST_METRIC), said)
    assert '"loop & total(loop, loop, loop) in " & ($B$4*0.01)' in formula
