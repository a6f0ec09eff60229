"""Formulas in cells: exactly what is written, for planners small enough to count their cells by hand.

The logs of `described` begin in Reels!B9 (three reels) and Skeins!B9 (four skeins), the card's
inputs in Work!D6.
"""

from dataclasses import replace

import pytest

import described
from described import ANY, LENGTH, PLAN, REELS, SKEINS, one_result, planner_of
from workbookgen.book.layout import place
from workbookgen.language.domains import Choice, Date, Name, Note, Number
from workbookgen.language.fields import Group, Input, Result
from workbookgen.language.parts import Card, Chapter
from workbookgen.language.quantities import DAY, GRIST, GRIST_METRIC, LOOP, MASS, NUMBER, TEMPERATURE, THREADS
from workbookgen.language.views import LogView


def texts(key: str, system: str = "metric") -> tuple[str, ...]:
    return tuple(place(described.whole(system)).placements[key].formulas)


def bound(*fields, system: str = "metric") -> str:
    """The formula of the last field of a card; what is typed into it stands in Work!D6, D7 ..."""
    card = Card("work", "", (Group("All", fields),))
    return place(planner_of(card, system=system)).placements[f"work_{fields[-1].key}"].formulas[0]


def bound_in_reels(result: Result, system: str = "metric") -> str:
    """The formula of a result that is put beside those of the reels, in the first row."""
    typed, computed = REELS.groups
    reels = replace(REELS, groups=(typed, replace(computed, fields=(*computed.fields, result))))
    return place(planner_of(reels, SKEINS, PLAN, system=system)).placements[f"reels_{result.key}"].formulas[0]


def bound_beside_logs(*fields) -> str:
    """The formula of the last field of a card, in a planner that has the logs as well."""
    card = Card("work", "", (Group("All", fields),))
    return place(planner_of(REELS, SKEINS, card, PLAN)).placements[f"work_{fields[-1].key}"].formulas[0]


def test_a_number_needed_and_its_limits():
    # 1 cm is 0.01 m, and the result is in meters. The blanks of the description are gone.
    assert texts("reels_hundred") == tuple(
        f'=IF(COUNT($C{row})=1,IF(AND($C{row}<=1000,$C{row}>=0.000001),100*($C{row}*0.01),""),"")'
        for row in (9, 10, 11)
    )


def test_the_same_in_inches_and_yards():
    assert (
        texts("reels_hundred", "us")[0]
        == '=IF(COUNT($C9)=1,IF(AND($C9<=1000,$C9>=0.000001),(100*($C9*0.0254))/0.9144,""),"")'
    )


def test_a_text_needed():
    assert (
        texts("reels_listed")[1] == '=IF(ISTEXT($B10),IF(AND(LEN(SUBSTITUTE($B10," ",""))>0,LEN($B10)<=12),$B10,""),"")'
    )


def test_a_sum_by_name_goes_by_the_line_in_the_list():
    # What the skeins were wound on only repeats which reel was chosen, and that tells its line in the list: the first
    # one here.
    assert texts("reels_wound")[0] == (
        '=IF(ISTEXT($B9),IF(AND(LEN(SUBSTITUTE($B9," ",""))>0,LEN($B9)<=12),SUMIF(skeins_line_of_reel,ROW()-ROW($A$8),skeins_length),""),"")'
    )


def test_a_total_in_another_unit():
    # Yards add up to yards. In inches, the brackets of the unit multiplied with serve the one divided by, too.
    of_reels = '=IF(ISTEXT($B9),IF(AND(LEN(SUBSTITUTE($B9," ",""))>0,LEN($B9)<=12),'
    total = "SUMIF(skeins_line_of_reel,ROW()-ROW($A$8),skeins_length)"
    assert texts("reels_wound", "us")[0] == f'{of_reels}{total},""),"")'
    wound = next(each for each in REELS.results if each.key == "wound")
    in_inches = bound_in_reels(replace(wound, key="inches", unit=LOOP), "us")
    assert in_inches == f'{of_reels}({total}*0.9144)/0.0254,""),"")'


@pytest.mark.parametrize("system", ["metric", "us"])
def test_a_tally_counts_and_has_no_unit(system):
    # Only lines that bear the name and have the amount: any number is more than that, and a blank one is none.
    skeins = Result(
        "skeins",
        "Skeins",
        "count_where(skeins_end, skeins_wound_on, name)",
        lambda amounts, names, name: 0,
        NUMBER,
        uses={"amounts": "skeins_end", "names": "skeins_wound_on"},
    )
    assert bound_in_reels(skeins, system) == (
        '=IF(ISTEXT($B9),IF(AND(LEN(SUBSTITUTE($B9," ",""))>0,LEN($B9)<=12),COUNTIFS(skeins_line_of_reel,ROW()-ROW($A$8),skeins_end,">-1000000000000"),""),"")'
    )


@pytest.mark.parametrize(
    ("system", "unit", "value"),
    [
        ("metric", LENGTH, "SUM(skeins_length)"),
        ("us", LENGTH, "SUM(skeins_length)"),
        ("us", LOOP, "(SUM(skeins_length)*0.9144)/0.0254"),  # of yards, shown in inches
    ],
)
def test_a_sum_waits_for_nothing(system, unit, value):
    # Blank lines add nothing, so there is no test around it.
    in_all = Result(
        "in_all", "In all", "sum(skeins_length)", lambda amounts: 0, unit, uses={"amounts": "skeins_length"}
    )
    assert bound_in_reels(in_all, system) == f"={value}"


THREE = tuple(Input(key, key, ANY, LOOP) for key in ("one", "two", "three"))


@pytest.mark.parametrize(
    ("form", "unit", "value"),
    [
        ("mean", LOOP, "(AVERAGE($D$6:$D$8)*0.0254)/0.0254"),
        ("stdev", LOOP, "(IF(MAX($D$6:$D$8)=MIN($D$6:$D$8),0,STDEV($D$6:$D$8))*0.0254)/0.0254"),
        ("readings", NUMBER, "COUNT($D$6:$D$8)"),
    ],
)
def test_repeated_readings_may_be_missing(form, unit, value):
    # Nothing need be typed; what is typed is a number inside its limits.
    told = Result(
        "told",
        "Told",
        f"{form}(one, two, three)",
        lambda one, two, three: one,
        unit,
        only_if="readings(one, two, three) > 1",
    )
    may_be_typed = ",".join(
        f"IF(ISNUMBER({cell}),AND({cell}<=1000,{cell}>=0.000001),COUNTBLANK({cell})=1)"
        for cell in ("$D$6", "$D$7", "$D$8")
    )
    assert bound(*THREE, told, system="us") == (f'=IF(AND({may_be_typed}),IF(COUNT($D$6:$D$8)>1,{value},""),"")')


def test_the_line_in_which_a_chosen_name_stands():
    # What MATCH finds counts if it is that very name: a star would be any letters to it. Else all names are compared.
    # An empty text would choose the one blank line, and an error is no text.
    once, first = "SUMPRODUCT((reels_listed=$B10)*1)", "MATCH($B10,reels_listed,0)"
    line = once.replace(")*1)", ")*1,reels_own_line)")
    compared = f'IF({once}=1,{line},"")'
    found = (
        f"IF(IF(ISNUMBER({first}),INDEX(reels_listed,{first})=$B10,1=0),INDEX(reels_line_of_listed,{first}),{compared})"
    )
    assert texts("skeins_line_of_reel")[1] == f'=IF(ISTEXT($B10),IF(LEN($B10)>0,{found},""),"")'


def test_a_list_tells_where_each_of_its_names_stands_once():
    column = place(described.whole("metric")).placements["reels_listed"].area
    cell = column.split(":")[0][:-1].replace("$", "", 1).replace("$", "") + "10"
    once = f"SUMPRODUCT(({column}=${cell})*1)"
    assert (
        texts("reels_line_of_listed")[1]
        == f'=IF(ISTEXT(${cell}),IF(LEN(${cell})>0,IF({once}=1,ROW()-ROW($A$8),""),""),"")'
    )


def test_a_name_that_only_repeats_a_choice_has_its_line():
    there = Result("there", "Of it", "reel", lambda name, wraps: "", None, uses={"name": "reel"}, only_if="wraps > 0")
    typed, computed = SKEINS.groups
    skeins = replace(SKEINS, groups=(typed, replace(computed, fields=(*computed.fields, there))))
    placements = place(planner_of(REELS, skeins, PLAN)).placements
    repeated, chosen = (placements[f"skeins_{key}"].cell(0)[:-1] for key in ("there", "line_of_reel"))
    assert placements["skeins_line_of_there"].formulas[0] == f'=IF(LEN(${repeated}9)>0,${chosen}9,"")'


def test_a_choice_and_a_pick():
    # The line is told in $S10. The cell found must hold a number, and it may be an error, so that only then it is held
    # against its domain.
    found = "INDEX(reels_loop,$S10)"
    assert texts("skeins_loop")[1] == (
        f'=IF(ISTEXT($B10),IF(ISNUMBER($S10),IF(ISNUMBER({found}),IF(AND({found}<=1000,{found}>=0.000001),{found},""),""),""),"")'
    )


def test_a_pick_of_a_result_needs_only_be_there():
    # A result has no domain: what it shows has passed its own tests.
    hundred = Result(
        "hundred",
        "Hundred",
        "lookup(reels_hundred, reels_listed, reel)",
        lambda values, names, name: 0,
        LENGTH,
        uses={"values": "reels_hundred", "names": "reels_listed", "name": "reel"},
    )
    found = "INDEX(Reels!$D$9:$D$11,$N$1)"
    assert bound_beside_logs(Input("reel", "Reel", Choice("reels_listed", "Reels")), hundred) == (
        f'=IF(ISTEXT($D$6),IF(ISNUMBER($N$1),IF(ISNUMBER({found}),{found},""),""),"")'
    )


@pytest.mark.parametrize(
    ("domain", "inside", "line"),
    [
        (Choice("sizes_name", "Facts"), "ISNUMBER($N$1)", "$N$2"),
        (Note(longest=9), "AND(LEN($D$6)>0,LEN($D$6)<=9)", "$N$1"),
    ],
    ids=["chosen elsewhere", "typed freely"],
)
def test_a_name_from_elsewhere_must_stand_once_in_the_list(domain, inside, line):
    # Each list that a name is looked for in has its own line; two reels of that name have none.
    loop = Result(
        "loop",
        "Loop",
        "lookup(reels_loop, reels_listed, kind)",
        lambda values, names, name: 0,
        LOOP,
        uses={"values": "reels_loop", "names": "reels_listed", "name": "kind"},
    )
    found = f"INDEX(Reels!$C$9:$C$11,{line})"
    assert bound_beside_logs(Input("kind", "Kind", domain), loop) == (
        f'=IF(ISTEXT($D$6),IF({inside},IF(ISNUMBER({line}),IF(ISNUMBER({found}),IF(AND({found}<=1000,{found}>=0.000001),{found},""),""),""),""),"")'
    )


def test_what_a_blank_cell_means():
    # So does one with an empty text, which looks blank; any other text in it blanks the result.
    assert texts("skeins_length")[0] == (
        '=IF(AND(IF(ISNUMBER($D9),AND($D9<100,OR(SIGN($D9)=0,$D9>=0.000001)),COUNTBLANK($D9)=1),COUNT($C9,$I9)=2),IF(AND($C9<=5000,OR(SIGN($C9)=0,$C9>=0.000001)),$C9*($I9*0.01)+IF(ISNUMBER($D9),$D9,0),""),"")'
    )
    assert texts("plan_need") == (
        '=IF(AND(IF(ISNUMBER($D$7),AND($D$7<=2,OR(SIGN($D$7)=0,$D$7>=0.000001)),COUNTBLANK($D$7)=1),COUNT($D$6)=1),IF(AND($D$6<=1000,$D$6>=0.000001),$D$6*(1+IF(ISNUMBER($D$7),$D$7,0.1)),""),"")',
    )


def test_a_condition_stands_inside_the_domains_on_which_it_relies():
    # It stands inside the domains, on which it may rely: AND works out all its parts, wherever the first fails.
    assert texts("skeins_kept")[3] == (
        '=IF(COUNT($F12,$E12)=2,IF(AND($F12<=1000,$F12>=0.000001,$E12<=1000,$E12>=0.000001),IF($F12<=$E12,$F12/$E12,""),""),"")'
    )


def test_optional_words():
    assert texts("skeins_wpi")[0] == (
        "=IF(AND(IF(ISNUMBER($G9),AND($G9<=1000,$G9>=0.000001),COUNTBLANK($G9)=1),"
        "IF(ISNUMBER(plan_usual),AND(plan_usual<=1000,plan_usual>=0.000001),COUNTBLANK(plan_usual)=1)),"
        'IF(OR(ISNUMBER($G9),ISNUMBER(plan_usual)),IF(ISNUMBER($G9),$G9,plan_usual),""),"")'
    )


@pytest.mark.parametrize(
    ("domain", "inside"),
    [
        # Day numbers of spreadsheet programs: 36,526 is 1 January 2000 and 73,050 the last day of 2099 (from memory).
        (Date(), "AND($D$6<=73050,$D$6>=36526)"),
        (Number(least=1, below=9, whole=True), "AND($D$6<9,$D$6>=1,$D$6=ROUND($D$6,0))"),
        (Number(above=-5, most=-1), "AND($D$6<=-1,$D$6>-5)"),
    ],
    ids=["a day", "a whole number", "a number below zero"],
)
def test_days_and_whole_numbers(domain, inside):
    field = Input("start", "Start", domain, DAY)
    same = Result("same", "Same", "start", lambda start: start, DAY)
    assert bound(field, same) == f'=IF(COUNT($D$6)=1,IF({inside},$D$6,""),"")'
    or_else = Result("same", "Same", "IF(given(start), start, 7)", lambda start=7: start, DAY)
    assert bound(field, or_else) == (
        f'=IF(IF(ISNUMBER($D$6),{inside},COUNTBLANK($D$6)=1),IF(ISNUMBER($D$6),$D$6,7),"")'
    )


@pytest.mark.parametrize(
    ("system", "value"),
    [
        # 32 °F is 0 °C, and 9 °F are as far apart as 5 °C; the 32 is taken away first and added last.
        ("us", "((($D$6-32)*5/9)+(($D$7-32)*5/9))/(5/9)+32"),
        ("metric", "$D$6+$D$7"),
    ],
)
def test_a_unit_whose_zero_lies_elsewhere(system, value):
    warmth = (Input(key, key, ANY, TEMPERATURE) for key in ("hot", "cold"))
    both = Result("both", "Both", "hot + cold", lambda hot, cold: hot, TEMPERATURE)
    inside = "AND($D$6<=1000,$D$6>=0.000001,$D$7<=1000,$D$7>=0.000001)"
    assert bound(*warmth, both, system=system) == f'=IF(COUNT($D$6,$D$7)=2,IF({inside},{value},""),"")'


def test_a_class_is_found_by_its_lower_limits():
    assert texts("skeins_size")[0] == (
        '=IF(COUNT($M9)=1,INDEX(sizes_name,MATCH(ROUND(($M9*1/0.0254)/(1/0.0254),9),sizes_from,1)),"")'
    )


def test_a_band_some_times_the_word():
    said = Result("said", "Said", "class_of(sizes_name, sizes_from, threads * 0.95)", lambda threads: "", None)
    assert bound(Input("threads", "Threads", ANY, THREADS), said) == (
        '=IF(COUNT($D$6)=1,IF(AND($D$6<=1000,$D$6>=0.000001),INDEX(Facts!$B$8:$B$10,MATCH(ROUND((($D$6*1/0.0254)*0.95)/(1/0.0254),9),Facts!$C$8:$C$10,1)),""),"")'
    )


def test_a_lookup_within_a_lookup():
    # What the inner one finds must be there before the outer one is asked. No cell tells the line of what is worked
    # out, so that its name is compared.
    nested = Result(
        "least",
        "Least",
        "lookup(sizes_from, sizes_name, lookup(skeins_size, skeins_wound_on, reel))",
        lambda sizes, names, name: 0,
        THREADS,
        uses={"sizes": "skeins_size", "names": "skeins_wound_on", "name": "reel"},
    )
    size = "INDEX(Skeins!$N$9:$N$12,$N$1)"
    found = f"INDEX(Facts!$C$8:$C$10,MATCH({size},Facts!$B$8:$B$10,0))"
    assert bound_beside_logs(Input("reel", "Reel", Note(longest=9)), nested) == (
        f"=IF(ISTEXT($D$6),IF(AND(LEN($D$6)>0,LEN($D$6)<=9),IF(ISNUMBER($N$1),IF(LEN({size})>0,"
        f"IF(SUMPRODUCT((Facts!$B$8:$B$10={size})*1)=1,IF(ISNUMBER({found}),{found}"
        ',""),""),""),""),""),"")'
    )


@pytest.mark.parametrize(
    ("system", "value"),
    [
        ("metric", "($D$6/($D$7*0.01))"),
        ("us-grams", "(($D$6*0.9144)/($D$7*0.9144/453.59237))"),
        ("us", "(($D$6*0.9144)/($D$7*0.9144/453.59237))/28.349523125"),
    ],
)
def test_units_in_and_out(system, value):
    # Length over grist is a mass; a grist per 100 g is 0.01 m/g, a gram needs no factor. One pair of brackets is
    # enough.
    weight = Result("weight", "Weight", "(length / grist)", lambda length, grist: length / grist, MASS)
    formula = bound(Input("length", "Length", ANY, LENGTH), Input("grist", "Grist", ANY, GRIST), weight, system=system)
    assert (
        formula == f'=IF(COUNT($D$6,$D$7)=2,IF(AND($D$6<=1000,$D$6>=0.000001,$D$7<=1000,$D$7>=0.000001),{value},""),"")'
    )


@pytest.mark.parametrize(
    ("text", "reference", "value"),
    [
        ("loop", lambda loop: loop, "$D$7"),
        ("IF(given(loop), loop, own)", lambda own, loop=None: own, "IF(ISNUMBER($D$7),$D$7,$D$8)"),
        ("IF(length > 1, loop, own)", lambda length, loop, own: own, "IF(($D$6*0.9144)>1,$D$7,$D$8)"),
        # What is worked out, shown in another unit, or stands in the text itself, is converted.
        ("loop + 0", lambda loop: loop, "(($D$7*0.0254)+0)/0.0254"),
        ("length", lambda length: length, "($D$6*0.9144)/0.0254"),
        (
            "IF(given(loop), loop, length)",
            lambda length, loop=None: length,
            "IF(ISNUMBER($D$7),($D$7*0.0254),($D$6*0.9144))/0.0254",
        ),
        ("IF(given(loop), loop, 1)", lambda loop=None: loop, "IF(ISNUMBER($D$7),($D$7*0.0254),1)/0.0254"),
        ("MAX(loop, own)", lambda loop, own: own, "MAX(($D$7*0.0254),($D$8*0.0254))/0.0254"),
    ],
)
def test_what_is_only_chosen_stays_as_it_is_shown(text, reference, value):
    # In binary numbers, 20.3 * 2.54 / 2.54 need not be 20.3.
    typed = [Input("length", "Length", ANY, LENGTH), Input("loop", "Loop", ANY, LOOP), Input("own", "Own", ANY, LOOP)]
    formula = bound(*typed, Result("chosen", "Chosen", text, reference, LOOP), system="us")
    assert formula.rstrip(',")').endswith(f",{value}".rstrip(")"))


def test_two_pairs_of_brackets_side_by_side_are_not_one():
    area = Result("area", "Area", "(length + loop) * (length + loop)", lambda length, loop: loop, LENGTH)
    formula = bound(Input("length", "Length", ANY, LENGTH), Input("loop", "Loop", ANY, LOOP), area, system="us")
    assert "((($D$6*0.9144)+($D$7*0.0254))*(($D$6*0.9144)+($D$7*0.0254)))/0.9144" in formula


def test_a_unit_with_a_fraction_is_divided_by_as_a_whole():
    grist = Result("grist", "Grist", "length / weight", lambda length, weight: length / weight, GRIST)
    formula = bound(
        Input("length", "Length", ANY, LENGTH), Input("weight", "Weight", ANY, MASS), grist, system="us-grams"
    )
    assert "(($D$6*0.9144)/$D$7)/(0.9144/453.59237)" in formula


def test_a_condition_may_speak_of_texts():
    # Blanks inside a text are the text's own.
    said = Result(
        "said", "Said", 'IF(kind = "raw wool", loop, loop)', lambda kind, loop: loop, LOOP, only_if='kind <> "kind"'
    )
    assert bound(Input("kind", "Kind", Note(longest=9)), Input("loop", "Loop", ANY, LOOP), said) == (
        "=IF(AND(ISTEXT($D$6),COUNT($D$7)=1),"
        'IF(AND(LEN($D$6)>0,LEN($D$6)<=9,$D$7<=1000,$D$7>=0.000001),IF($D$6<>"kind",'
        'IF($D$6="raw wool",$D$7,$D$7),""),""),"")'
    )


def test_a_text_that_may_be_missing():
    said = Result("said", "Said", 'IF(given(kind), kind, "none")', lambda kind="none": kind, None)
    assert bound(Input("kind", "Kind", Name(longest=9)), said) == (
        '=IF(IF(COUNTBLANK($D$6)=1,1=1,IF(ISTEXT($D$6),AND(LEN(SUBSTITUTE($D$6," ",""))>0,LEN($D$6)<=9),1=0)),IF((LEN($D$6)>0),$D$6,"none"),"")'
    )


def test_a_text_worked_out_must_not_be_blank():
    fields = (
        Input("kind", "Kind", Name(longest=9)),
        Result("same", "Same", "kind", lambda kind: kind, None),
        Result("again", "Again", "same", lambda same: same, None),
    )
    # The message stands below the input, so the results are in B6 and B7.
    assert bound(*fields) == '=IF(ISTEXT($K$7),IF(LEN($K$7)>0,$K$7,""),"")'


def test_limits_are_written_in_full():
    domain = Number(least=0.001, below=12_345_678.9)
    formula = bound(Input("loop", "Loop", domain, LENGTH), one_result("loop", lambda loop: loop))
    assert formula == '=IF(COUNT($D$6)=1,IF(AND($D$6<12345678.9,$D$6>=0.001),$D$6,""),"")'


def test_the_message_of_a_record():
    # What is wrong before what is missing, in the order of the fields; nothing for a record nobody began.
    assert texts("plan_message") == (
        "=IF(3-COUNTBLANK($D$6:$D$8)>0,"
        "IF(NOT(IF(ISNUMBER($D$6),AND($D$6<=1000,$D$6>=0.000001),COUNTBLANK($D$6)=1)),"
        '"Wanted: type a number above 0 up to 1,000 m, in digits.",'
        "IF(NOT(IF(ISNUMBER($D$7),AND($D$7<=2,OR(SIGN($D$7)=0,$D$7>=0.000001)),COUNTBLANK($D$7)=1)),"
        '"Margin: type a percentage from 0% up to 200%, or empty it.",'
        "IF(NOT(IF(ISNUMBER($D$8),AND($D$8<=1000,$D$8>=0.000001),COUNTBLANK($D$8)=1)),"
        '"Usual count: type a number above 0 up to 1,000 per in, in digits, or empty it.",'
        'IF(COUNTBLANK($D$6)=1,"Still to fill in: Wanted.","")))),"")',
    )


def test_a_card_as_a_new_planner_brings_it_is_not_begun():
    typed, computed = PLAN.groups
    wanted, margin, usual = typed.fields
    kind = Input("kind", "Kind", Choice("sizes_name", "Facts"), starts_as="thick")
    plan = replace(
        PLAN, groups=(replace(typed, fields=(wanted, replace(margin, starts_as=0.15), usual, kind)), computed)
    )
    text = place(planner_of(REELS, SKEINS, plan)).placements["plan_message"].formulas[0]
    begun = 'AND(4-COUNTBLANK($D$6:$D$9)>0,NOT(AND(4-COUNTBLANK($D$6:$D$9)=2,IF(ISNUMBER($D$7),$D$7=0.15,1=0),IF(ISTEXT($D$9),$D$9="thick",1=0))))'
    assert text.startswith(f"=IF({begun},IF(")


@pytest.mark.parametrize(
    "case",
    [
        'IF(IF(ISTEXT($B9),IF(LEN($B9)>0,SUMPRODUCT(($E$9:$E$11=$B9)*1)>1,1=0),1=0),"Reel: another line has this name; give each its own."',
        'IF(NOT(IF(COUNTBLANK($B9)=1,1=1,IF(ISTEXT($B9),AND(LEN(SUBSTITUTE($B9," ",""))>0,LEN($B9)<=12),1=0))),"Reel: type a name of up to 12 letters."',
    ],
)
def test_the_message_of_a_name(case):
    assert case in texts("reels_message")[0]


@pytest.mark.parametrize(
    "case",
    [
        'IF(IF(COUNT($F9,$E9)=2,$F9>$E9,1=0),"Yarn: more than the fiber."',
        'IF(NOT(IF(COUNTBLANK($B9)=1,1=1,IF(ISTEXT($B9),ISNUMBER($S9),1=0))),"On the reel: choose one of the names',
    ],
)
def test_the_message_of_a_rule_and_of_a_choice(case):
    assert case in texts("skeins_message")[0]


def test_a_name_that_others_need_not_find_may_stand_twice():
    typed, computed = REELS.groups
    name = replace(typed.fields[0], domain=Name(longest=12, unique=False))
    reels = replace(REELS, groups=(replace(typed, fields=(name, *typed.fields[1:])), computed))
    placements = place(planner_of(reels, SKEINS, PLAN)).placements
    assert "another line has this name" not in placements["reels_message"].formulas[0]
    assert '"Reel: type a name of up to 12 letters."' in placements["reels_message"].formulas[0]
    assert tuple(placements["reels_listed"].formulas) == texts("reels_listed")
    assert tuple(placements["skeins_loop"].formulas) == texts("skeins_loop"), (
        "whoever chooses it still needs one such line"
    )


def test_words_inside_texts_are_left_alone():
    said = Result("said", "Said", '"loop & sum_where(loop, loop, loop) in " & loop', lambda loop: "", None)
    formula = bound(Input("loop", "Loop", ANY, GRIST_METRIC), said)
    assert '"loop & sum_where(loop, loop, loop) in "&($D$6*0.01)' in formula


def test_the_mark_of_a_record():
    assert (
        texts("skeins_mark")[2]
        == '=IF(LEN($O11)=0,"",IF(OR(LEFT($O11,16)="Still to fill in",LEFT($O11,13)="No answer yet"),"…",IF(LEFT($O11,12)="Is it right?","?","!")))'
    )


def test_how_many_records_have_something_wrong():
    assert texts("skeins_open") == ('=COUNTIF($A$9:$A$12,"!")',)
    assert texts("skeins_questions") == ('=SUMPRODUCT(($A$9:$A$12="?")*1)',)
    assert texts("skeins_unfinished") == ('=SUMPRODUCT(($A$9:$A$12="…")*1)',)


def test_what_the_head_of_a_log_says():
    # A record is called by the name that other sheets find it by, or by its line where it has none. A mark may be "?",
    # which stands for any sign in MATCH and COUNTIF, so the last mark is found by comparing.
    marks = "$A$9:$A$12"
    wrong, last = f'MATCH("!",{marks},0)', f'SUMPRODUCT(LARGE(({marks}<>"")*$R$9:$R$12,1))'
    told = [f'"Line "&{line}&": "&INDEX($O$9:$O$12,{line})' for line in (wrong, last)]
    assert texts("skeins_first") == (
        f'=IF(COUNTIF({marks},"!")>0,{told[0]},IF(SUMPRODUCT(({marks}<>"")*1)>0,{told[1]},""))',
    )
    [head] = texts("reels_first")
    first = 'MATCH("!",$A$9:$A$11,0)'
    name = f"INDEX($E$9:$E$11,{first})"
    assert f'IF(LEN({name})>0,{name},"Line "&{first})&": "&INDEX($G$9:$G$11,{first})' in head


def test_how_many_folded_inputs_hold_something():
    assert texts("skeins_filled") == ('=""',) * 4, "nothing is folded"
    # Reel, wraps, rest and note stand behind the three that are always seen.
    assert folded("start end counted") == '=IF(4-COUNTBLANK($E9:$H9)=0,"",4-COUNTBLANK($E9:$H9))'


def folded(typed: str) -> str:
    """What a log says of its inputs that are not always seen, when these are."""
    whole = described.whole()
    [reels, skeins, *others] = whole.sheets
    skeins = replace(skeins, chapters=(Chapter("skeins", (SKEINS,), LogView(typed)),))
    return place(replace(whole, sheets=(reels, skeins, *others))).placements["skeins_filled"].formulas[0]
