"""Where everything lies, and the text of every formula of the real planners."""

import re
from collections import Counter
from dataclasses import replace
from itertools import combinations

import described
import pytest

from workbookgen.book.layout import NUMBERS, Message, place
from workbookgen.build import layout_of
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Card, Column, Log, ProofTable
from workbookgen.settings import Settings
from workbookgen.units import UNIT_SYSTEMS

# OpenFormula names on which LibreOffice, Gnumeric, formualizer and IronCalc were measured to agree; written
# down once more here, so that a name let into the profile is a decision taken twice.
PORTABLE = set(
    "IF AND OR NOT INDEX MATCH SUM SUMPRODUCT COUNT COUNTA COUNTIF AVERAGE ROUND ROUNDUP ROUNDDOWN ABS SIGN SQRT "
    "POWER EXP LN LOG10 PI ATAN TAN SIN COS MIN MAX STDEV MEDIAN NORMSDIST NORMSINV LEN LEFT RIGHT MID FIND "
    "SUBSTITUTE UPPER LOWER ISNUMBER ISTEXT ISBLANK".split()
)
# Limits of the file format's best known program: letters of a formula, nested calls, letters of a text in it.
LONGEST_FORMULA, DEEPEST, LONGEST_TEXT = 8192, 64, 255


@pytest.fixture(scope="module", params=UNIT_SYSTEMS)
def each_layout(request):
    return layout_of(Settings(units=request.param))


def formulas(layout):
    """Every formula once: rows differ in nothing but their number."""
    return [(placement.key, text) for placement in layout.formulas for text in dict.fromkeys(placement.formulas[:2])]


def cells(placement):
    return {(placement.sheet, placement.row + index, placement.column) for index in range(placement.rows)}


def bare(formula: str) -> str:
    return re.sub(r'"[^"]*"', '""', formula)


def nesting(formula: str) -> int:
    depth = most = 0
    for sign in bare(formula):
        depth += (sign == "(") - (sign == ")")
        most = max(most, depth)
    return most


def test_placements_do_not_overlap(each_layout):
    count = Counter(cell for placement in each_layout.placements.values() for cell in cells(placement))
    assert [cell for cell, times in count.items() if times > 1] == []


def test_parts_of_a_sheet_do_not_overlap(each_layout):
    for places in each_layout.parts.values():
        for first, second in combinations(places, 2):
            rows = [
                {placement.row + index for placement in each_layout.of(each.part) for index in range(placement.rows)}
                for each in (first, second)
            ]
            if all(rows):
                assert max(rows[0]) < second.row <= min(rows[1])


def test_every_field_has_its_place_and_its_name(each_layout):
    planner = each_layout.planner
    messages = {f"{key}_message" for key, block in planner.blocks.items() if block.inputs}
    proofs = {f"{key}_computed" for key in planner.proof_tables}
    assert set(each_layout.placements) == set(planner.by_key) | messages | proofs
    assert all(key == placement.key for key, placement in each_layout.placements.items())


def test_a_field_has_as_many_cells_as_its_block_has_records(each_layout):
    for placement in each_layout.placements.values():
        assert placement.rows == (1 if isinstance(placement.holder, Card) else placement.holder.rows)


def test_a_formula_for_every_cell_of_a_result_and_none_for_inputs(each_layout):
    for placement in each_layout.placements.values():
        computed = isinstance(placement.field, Result | Message) or (
            isinstance(placement.field, Column) and isinstance(placement.holder, ProofTable)
        )
        assert len(placement.formulas) == (placement.rows if computed else 0)
    assert all(isinstance(each.field, Input) and not each.formulas for each in each_layout.inputs)
    assert {each.key for each in each_layout.formulas} == {
        key for key, each in each_layout.placements.items() if each.formulas
    }


def test_the_message_of_a_log_stands_between_inputs_and_results(each_layout):
    for block in each_layout.planner.blocks.values():
        if not isinstance(block, Log) or block.rows_a_page:
            continue
        columns = [
            [each.column for each in each_layout.of(block) if isinstance(each.field, kind)] for kind in (Input, Message, Result)
        ]
        assert sum(columns, []) == list(range(1, len(block.fields) + 2))


def test_the_message_of_a_card_stands_between_inputs_and_results(each_layout):
    for block in each_layout.planner.blocks.values():
        if isinstance(block, Card) and block.inputs:
            rows = [[each.row for each in each_layout.of(block) if isinstance(each.field, kind)] for kind in (Input, Message, Result)]
            assert sum(rows, []) == list(range(rows[0][0], rows[0][0] + len(block.fields) + 1))
            assert len({each.column for each in each_layout.of(block)}) == 1


def test_ranges_of_a_small_planner():
    placements = place(described.whole()).placements
    # Counted by hand, as the docstring of `described` says.
    assert placements["reels_loop"].range == "Reels!$B$7:$B$9"
    assert placements["reels_message"].range == "Reels!$C$7:$C$9"
    assert placements["skeins_loop"].range == "Skeins!$I$7:$I$10"
    assert placements["plan_margin"].range == "Work!$B$5"
    assert placements["plan_message"].range == "Work!$B$7"
    assert placements["sizes_from"].range == "Facts!$B$8:$B$10"
    assert [placements["skeins_loop"].cell(index) for index in (0, 3)] == ["I7", "I10"]


def test_a_sheet_name_with_a_space_is_quoted(layout):
    assert layout.placements["origin_line"].range.startswith("'Made with'!$A$")


def test_columns_beyond_z(layout):
    late = max(layout.formulas, key=lambda each: each.column)
    assert late.column > 26
    assert re.fullmatch(r"\$[A-Z]{2}\$\d+:\$[A-Z]{2}\$\d+", late.area)


def test_counting_numbers_reach_every_list(each_layout):
    counting = each_layout.placements[NUMBERS]
    assert counting.field.values == tuple(range(1, counting.rows + 1))
    reached = {int(rows) for each in each_layout.formulas for rows in re.findall(rf"{NUMBERS}_(\d+)", each.formulas[0])}
    for rows in reached:
        assert each_layout.names[f"{NUMBERS}_{rows}"] == replace(counting, rows=rows).range
    assert reached and max(reached) <= counting.rows


def test_a_row_looks_at_itself_alone(each_layout):
    # What is not fixed by a $ before the row is a cell of the same row.
    for placement in each_layout.formulas:
        for index in {0, placement.rows - 1}:
            rows = set(re.findall(r"\$[A-Z]+(\d+)", bare(placement.formulas[index])))
            assert rows <= {str(placement.row + index)}, placement.key


def test_rows_have_one_formula(each_layout):
    for placement in each_layout.formulas:
        if isinstance(placement.holder, Log):
            same = {re.sub(r"(\$[A-Z]+)\d+", r"\1#", text) for text in placement.formulas}
            assert len(same) == 1, placement.key


def test_only_portable_functions(each_layout):
    for key, text in formulas(each_layout):
        assert set(re.findall(r"([A-Za-z_][A-Za-z0-9_.]*)\s*\(", bare(text))) <= PORTABLE, key


def test_only_portable_constructs(each_layout):
    for key, text in formulas(each_layout):
        assert not re.search(r"[\^{}\[\]@#;%]|--|_xl|\bTRUE\b|\bFALSE\b|:INDEX|\d+:\d+(?!\$)", bare(text)), key
        assert text.startswith("=") and not text.startswith("=="), key


def test_only_references_names_and_functions_are_left(each_layout):
    # A word that was not bound would be a name that no program knows.
    for key, text in formulas(each_layout):
        found = re.sub(r"\b[a-z][a-z0-9]*_[a-z0-9_]+\b", lambda name: "" if name[0] in each_layout.names else name[0], bare(text))
        found = re.sub(r"[A-Z][A-Z0-9]*\(|\$[A-Z]+\$?\d+", "", found)
        assert not re.search(r"[A-Za-z_!]", found.replace("E+", "")), (key, found)


def test_sumproduct_holds_only_comparisons_and_ranges(each_layout):
    # Functions inside SUMPRODUCT are read as arrays by some programs and as one cell by others.
    for key, text in formulas(each_layout):
        for inside in re.findall(r"SUMPRODUCT\(((?:[^()]|\([^()]*\))*)\)", bare(text)):
            assert not re.search(r"[A-Z]\(", inside), key


def test_formulas_stay_inside_the_limits_of_the_format(each_layout):
    for key, text in formulas(each_layout):
        assert len(text) <= LONGEST_FORMULA, key
        assert nesting(text) <= DEEPEST, key
        assert max(map(len, re.findall(r'"([^"]*)"', text)), default=0) <= LONGEST_TEXT, key
        assert bare(text).count("(") == bare(text).count(")"), key


def test_a_proof_uses_the_formula_of_the_planner(layout):
    """The same text but for where the words stand: its references, units and the guard."""
    proven = layout.placements["proofs_computed"]
    for proof, text in zip(proven.holder.proofs, proven.formulas, strict=True):
        result = layout.placements[proof.result]
        shape = re.sub(r"\s", "", result.field.formula)
        functions = re.findall(r"[A-Z]+\(", shape) + ["MAX("] * shape.count("spread(")  # which asks whether the readings differ at all
        assert Counter(re.findall(r"\b(?:SQRT|PI|MAX|ROUNDUP)\(", bare(text))) == Counter(
            each for each in functions if each in ("SQRT(", "PI(", "MAX(", "ROUNDUP(")
        ), proof.number
        assert re.findall(r"\$[A-Z]+(\d+)", bare(text)), proof.number
