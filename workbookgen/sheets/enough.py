"""Whether a project's yarn is enough, in sentences, and what to get to be as sure as one asks.

These are results of the sheet Projects, about its strands, of which `strand.py` tells.
"""

from workbookgen.language.cases import first_of
from workbookgen.language.fields import Result
from workbookgen.language.quantities import LENGTH
from workbookgen.reference import advice, answer, project, strands
from workbookgen.sheets.strand import PARTS, Strand


def said() -> tuple[Result, ...]:
    """The amounts in the sentences. A project's own skeins are there, whatever other projects lack of a lot."""
    of_skeins = {"skeins": "in_skeins", "u_skeins": "doubt_skeins", "uncertainty": "doubt_have"}
    return (
        Result("there", "There is, in words", "MAX(in_skeins, have)", project.there_is, LENGTH, uses={"skeins": "in_skeins"}),
        Result("over", "Over", "MAX(0, spare)", answer.not_below_nothing, LENGTH, uses={"amount": "spare"}),
        Result("lacking", "Short by", "MAX(0, 0 - spare)", answer.lacking, LENGTH),
        Result("least", "There is at least", "MAX(0, in_skeins - 2 * doubt_skeins, have - 2 * doubt_have)", project.least_there, LENGTH, uses=of_skeins),
        Result("most", "There is at most", "MAX(in_skeins + 2 * doubt_skeins, have + 2 * doubt_have)", project.most_there, LENGTH, uses=of_skeins),
    )


def in_words() -> tuple[Result, ...]:
    """The answer in sentences."""
    named = first_of(*((_runs_out_first(part), f"part_{part}_name") for part in PARTS[:3]), otherwise="part_4_name")
    return (
        Result("scarcest", "Scarcest", named, strands.scarcest, None,
               uses={"least": "come_least"} | {f"come_{part}": f"part_{part}_come" for part in PARTS} | {f"name_{part}": f"part_{part}_name" for part in PARTS},
               only_if=SCARCEST_NAMED, width=20, note="The component that runs out first, and limits the yarn."),
        Result("chance_words", "Sure by",
               'IF(open_chance > 0.98, "over 98%", IF(open_chance < 0.02, "under 2%", MIN(ROUND(ROUND(open_chance * 100, 9), 0), '
               'IF(given_and(more, given_and(doubts_certainty, AND(more >= 0.5, open_chance < doubts_certainty))), ROUNDUP(ROUND(doubts_certainty * 100, 9), 0) - 1, 100)) & "%"))',
               answer.chance_words, None, uses={"chance": "open_chance", "certainty": "doubts_certainty"}, only_if="yarnless < 0.5", width=11),
        Result("verdict", "In a word",
               first_of(
                   ("given(used)", '"finished"'),
                   ("yarnless > 0.5", '"no yarn yet"'),
                   ("chance >= doubts_certainty", '"enough"'),
                   ("chance >= 2 / 3", '"likely enough"'),
                   ("chance >= 0.5", '"in doubt"'),
                   otherwise='"short"'),
               answer.verdict, None, uses={"certainty": "doubts_certainty"}, width=13, only_if="OR(given(used), given(chance))",
               note="Enough: as sure as you ask on the sheet Sureness."),
        Result("answer", "In a sentence",
               'IF(given(used), "It took " & said(used) & " of yarn.", IF(yarnless > 0.5, "It takes " & said(need) & ", and no yarn for it is known yet.", '
               '"There is " & said(there) & IF(AND(given(least), given_and(most, most >= 0.5)), ", very likely " '
               '& said(least) & " to " & said(most), "") & "; it takes " & said(need) & ": " '
               '& IF(spare >= 0, said(over) & " over", said(lacking) & " short" & IF(have < there - 0.5, ", for all projects on its lots", "")) & "." '
               '& IF(given(chance_words), " Chance that it is enough: " & chance_words & ".", "") '
               '& IF(or_else(free, 0) > 0.5, " Another " & said(free) & " lie in skeins of its yarn that belong to no open project.", "")))',
               answer.answer, None, width=70, only_if=ANSWER_SAYABLE,
               note="What there is counts skeins as they will be when washed, and what the lots still give."),
        Result("advice", "To be as sure as you ask",
               'IF(given(used), "Nothing more to do.", IF(more < 0.5, "That is as sure as you ask.", '
               'IF(or_else(free, 0) > 0.5, "Are the skeins of no open project for it? Choose it beside them, at For project. Otherwise, to be ", "To be ") '
               '& ROUND(ROUND(doubts_certainty * 100, 9), 1) & "% sure, get " & said(more) & IF(yarnless > 0.5, "", " more")'
               + "".join(f' & IF({_to_get(part)} >= 1.5, {_separator(part)} & {_bought_as(part)}, "")' for part in PARTS)
               + ' & "." & IF(or_else(shared, 0) > 0, " Get it once: other projects draw on the same lots.", "")))',
               advice.advice, None, width=70,
               uses={"certainty": "doubts_certainty"} | {f"{key}_{part}": f"part_{part}_{word}" for part in PARTS for key, word in OF_STRANDS.items()},
               only_if=ADVICE_SAYABLE),
        Result("instead", "If there is no more",
               '"If there is no more of it: " & IF(open_chance >= 2 / 3, "it is likely enough as it is.", "make the piece smaller, or work part of it in another yarn.")',
               advice.instead, None, width=60, uses={"chance": "open_chance"}, only_if="AND(more >= 0.5, yarnless < 0.5)",
               note="Of a fleece or a handspun yarn there often is none."),
    )


ANSWER_SAYABLE = (
    "AND(OR(given(used), AND(given(there), given(have), given(need), given(spare), given(over), given(lacking))), "
    "blank_or(most, most < 900000), blank_or(free, free < 900000), blank_or(used, used < 900000))"
)
OF_STRANDS = {"buy": "get", "name": "got_as", "form": "form", "balls": "balls"}  # the parameters of the advice, for each component
SCARCEST_NAMED = "AND(OR(NOT(given(part_2_come)), given(part_2_name)), OR(NOT(given(part_3_come)), given(part_3_name)), OR(NOT(given(part_4_come)), given(part_4_name)))"
ADVICE_SAYABLE = "AND(" + ", ".join(
    f"IF(given(part_{part}_get), IF(part_{part}_get < 900000, OR(part_{part}_get < 1.5, given(part_{part}_got_as)), 1 = 0), 1 = 1), IF(given(part_{part}_balls), "
    f"part_{part}_balls < 900000, 1 = 1)" for part in PARTS
) + ")"


def _runs_out_first(part: int) -> str:
    """Condition that this component runs out first; a missing one counts as the longest."""
    come = "part_1_come" if part == 1 else f"IF(given(part_{part}_come), part_{part}_come, come_least + 1)"
    return f"{come} - come_least <= ABS(come_least) * 0.000000001"


def _to_get(part: int) -> str:
    return f"IF(given(part_{part}_get), part_{part}_get, 0)"


def _separator(part: int) -> str:
    """Formula text of what precedes a component: a colon before the first one listed, else a semicolon."""
    return '": "' if part == 1 else f'IF(MAX({", ".join(map(_to_get, range(1, part)))}) >= 1.5, "; ", ": ")'


def _bought_as(part: int) -> str:
    """Formula text of what to get: a number of balls or spools, or a weight in the form that its lot was bought in."""
    ball = 'IF(given(design), " spool", " ball")'
    return Strand(part).text(
        f'IF(given(@_balls), said(@_balls) & {ball} & IF(@_balls = 1, "", "s") & " of " & @_got_as, '
        'said(@_get) & " of " & @_got_as & IF(given(@_form), " (" & @_form & ")", ""))'
    )
