"""Where everything lies, and the text of every formula of the real planners."""

import re
from collections import Counter
from dataclasses import replace
from itertools import combinations

import pytest
from xlsxwriter.utility import quote_sheetname

import described
from workbookgen.book import sections
from workbookgen.book.layout import place
from workbookgen.book.placement import ProofColumn
from workbookgen.build import layout_of
from workbookgen.errors import DescriptionError
from workbookgen.language import profile
from workbookgen.language.automatic import FILLED, LINE, MARK, MESSAGE, Automatic
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Card, Column, Log
from workbookgen.language.proofs import ProofTable
from workbookgen.settings import Rows, Settings
from workbookgen.unit_systems import UNIT_SYSTEMS

# OpenFormula names on which LibreOffice, Gnumeric, formualizer and IronCalc were measured to agree; written
# down once more here, so that a name let into the profile is a decision taken twice.
PORTABLE = set(
    "IF AND OR NOT INDEX MATCH SMALL LARGE SUM SUMIF SUMPRODUCT COUNT COUNTA COUNTBLANK COUNTIF COUNTIFS AVERAGE ROUND ROUNDUP ROUNDDOWN ABS SIGN SQRT "
    "POWER EXP LN LOG10 PI ATAN TAN SIN COS MIN MAX STDEV MEDIAN NORMSDIST NORMSINV LEN LEFT RIGHT MID FIND "
    "REPT SUBSTITUTE UPPER LOWER ISNUMBER ISTEXT ROW".split()
)
# Limits of the file format's best known program: letters of a formula, nested calls, letters of a text in it.
LONGEST_FORMULA, DEEPEST, LONGEST_TEXT = 8192, 64, 255
MOST_ARGUMENTS = 255


@pytest.fixture(scope="module", params=UNIT_SYSTEMS)
def each_layout(request):
    return layout_of(Settings(units=request.param))


def formulas(layout):
    """Every formula once: rows differ in nothing but their number."""
    return [(placement.key, text) for placement in layout.formulas for text in dict.fromkeys(placement.formulas[:2])]


def cells(layout, placement):
    """Every cell that a field covers, those merged into its own included."""
    spot = layout.plans[placement.sheet].spots[placement.key]
    return {
        (placement.sheet, placement.row + row, placement.column + column)
        for row in range(placement.rows + spot.down - 1)
        for column in range(spot.across)
    }


def corners(layout, plan):
    """(section, rows, columns) of every section of a page, from its heading to the last place that it has."""
    for placed in plan.placed:
        rows = range(placed.row, placed.row + sections.module_for(placed.section).rows(placed.section, layout.planner))
        spots = dict(
            sections.module_for(placed.section).spots(
                placed.section, layout.planner, placed.row, 1 + placed.section.across[0]
            )
        )
        columns = {
            column for spot in spots.values() for column in range(spot.column, spot.column + spot.across) if column > 1
        }
        yield placed.section, rows, columns | set(range(1 + placed.section.across[0], 2 + placed.section.across[1]))


def bare(formula: str) -> str:
    return re.sub(r'"[^"]*"', '""', formula)


def nesting(formula: str) -> int:
    depth = most = 0
    for sign in bare(formula):
        depth += (sign == "(") - (sign == ")")
        most = max(most, depth)
    return most


def arguments(formula: str) -> int:
    """Of the function that takes most: its commas, and one."""
    inside, most = [0], 0
    for sign in bare(formula):
        if sign == "(":
            inside.append(1)
        elif sign == ")":
            inside.pop()
        elif sign == ",":
            inside[-1] += 1
        most = max(most, inside[-1])
    return most


def test_no_field_covers_another(each_layout):
    count = Counter(cell for placement in each_layout.placements.values() for cell in cells(each_layout, placement))
    assert [cell for cell, times in count.items() if times > 1] == []


def test_the_values_of_the_proofs_lie_on_no_field(each_layout):
    for table in each_layout.planner.proof_tables.values():
        computed = each_layout.placements[f"{table.key}_computed"]
        taken = {
            (computed.sheet, computed.row + row, ProofColumn.VALUES + column)
            for row in range(table.rows)
            for column in range(table.most_given)
        }
        assert not taken & {
            cell for placement in each_layout.placements.values() for cell in cells(each_layout, placement)
        }


def test_sections_of_a_page_do_not_overlap(each_layout):
    seen = 0
    for plan in each_layout.plans.values():
        for (one, rows, columns), (other, other_rows, other_columns) in combinations(corners(each_layout, plan), 2):
            assert not (set(rows) & set(other_rows) and columns & other_columns), (plan.sheet.name, one, other)
            seen += 1
    assert seen > 20


def test_a_section_has_room_for_what_it_shows(each_layout):
    """No field of it stands outside its rows, nor beyond the page."""
    for plan in each_layout.plans.values():
        for section, rows, _ in corners(each_layout, plan):
            for key in section.shown:
                spot = plan.spots[key]
                assert spot.row in rows and spot.row + max(spot.rows, spot.down) - 1 in rows, (plan.sheet.name, key)
                assert spot.column + spot.across - 1 <= plan.last_column, (plan.sheet.name, key)


def test_what_a_view_shows_is_seen_and_all_else_is_hidden(each_layout):
    """Hidden columns hold what no view shows, and nothing else; what is folded away can be opened."""
    seen = hidden = 0
    for sheet in each_layout.planner.sheets:
        plan = each_layout.plans[sheet.name]
        shown = set(sheet.shown) | {
            key for section in sheet.sections for key in sections_own(section, plan, each_layout)
        }
        for placement in (each for each in each_layout.placements.values() if each.sheet == sheet.name):
            if placement.key in shown:
                assert placement.column <= plan.last_column, placement.key
                assert placement.column not in plan.folded, placement.key
                seen += 1
            elif placement.column > plan.last_column:
                hidden += 1
            else:
                assert sheet.log_view, placement.key
                assert placement.column in plan.folded or isinstance(placement.field, Automatic), placement.key
    assert seen > 300 and hidden > 30


def sections_own(section, plan, layout):
    """Everything for which a section has a place, whether its view names it or not."""
    row = next(placed.row for placed in plan.placed if placed.section is section)
    return (key for key, _ in sections.module_for(section).spots(section, layout.planner, row, 1 + section.across[0]))


def test_an_input_can_be_reached(each_layout):
    """None is in a hidden column: it is seen, or in a fold that opens."""
    for placement in each_layout.inputs:
        assert placement.column <= each_layout.plans[placement.sheet].last_column, placement.key


def test_every_field_has_its_place_and_its_name(each_layout):
    planner = each_layout.planner
    told = {f"{key}_{each.key}" for key, block in planner.blocks.items() for each in block.automatic}
    assert all(f"{key}_message" in told for key, block in planner.blocks.items() if block.inputs)
    proofs = {f"{key}_computed" for key in planner.proof_tables}
    assert set(each_layout.placements) == set(planner.by_key) | told | proofs
    assert all(key == placement.key for key, placement in each_layout.placements.items())


def test_every_field_stands_in_one_place(each_layout):
    placed = Counter(key for plan in each_layout.plans.values() for key in plan.spots)
    assert set(placed) == set(each_layout.placements) and set(placed.values()) == {1}
    for sheet in each_layout.planner.sheets:
        for holder in sheet.holders:
            assert {each.sheet for each in each_layout.placements_of(holder)} == {sheet.name}


def test_a_field_has_as_many_cells_as_its_block_has_records(each_layout):
    for placement in each_layout.placements.values():
        is_one = isinstance(placement.holder, Card) or getattr(placement.field, "is_one", False)
        assert placement.rows == (1 if is_one else placement.holder.rows), placement.key
        spot = each_layout.plans[placement.sheet].spots[placement.key]
        assert (spot.row, spot.column, spot.rows) == (placement.row, placement.column, placement.rows)


def test_a_formula_for_every_cell_of_a_result_and_none_for_inputs(each_layout):
    for placement in each_layout.placements.values():
        computed = isinstance(placement.field, Result | Automatic) or (
            isinstance(placement.field, Column) and isinstance(placement.holder, ProofTable)
        )
        assert len(placement.formulas) == (placement.rows if computed else 0)
    assert all(isinstance(each.field, Input) and not each.formulas for each in each_layout.inputs)
    assert {each.key for each in each_layout.formulas} == {
        key for key, each in each_layout.placements.items() if each.formulas
    }


def test_the_records_of_a_log_lie_beside_each_other(each_layout):
    for block in each_layout.planner.blocks.values():
        if isinstance(block, Log):
            fields = [each for each in each_layout.placements_of(block) if not getattr(each.field, "is_one", False)]
            assert len({each.row for each in fields}) == 1, block.key
            inputs = [each.column for each in fields if isinstance(each.field, Input)]
            for mark in (each for each in fields if each.field == MARK):
                assert mark.column == 1 or 1 <= min(inputs) - mark.column <= 2, (
                    "right before the line that it speaks of"
                )


def test_the_inputs_of_a_log_stand_side_by_side_name_first(each_layout):
    """What is always typed, then the folded ones right behind it: so lines can be pasted, sorted and filled from
    left to right."""
    seen = 0
    for sheet in each_layout.planner.sheets:
        if not sheet.log_view:
            continue
        [log] = sheet.logs
        inputs = [each_layout.placements[f"{log.key}_{each.key}"] for each in log.inputs]
        typed = sheet.log_view.typed.split()
        columns = sorted(each.column for each in inputs)
        assert columns == list(range(2, 2 + len(inputs))), log.key
        assert [each.field.key for each in sorted(inputs, key=lambda each: each.column)][: len(typed)] == typed
        assert each_layout.plans[sheet.name].folded >= set(columns[len(typed) :])
        filled = each_layout.placements[f"{log.key}_{FILLED.key}"]
        assert len(typed) == len(inputs) or filled.column == columns[-1] + 1, (
            "how many are folded stands where they open"
        )
        seen += 1
    assert seen >= 5


def test_what_each_line_is_told_opens_right_behind_the_answers(each_layout):
    """The head has room for the message of one line: of several that are marked, the others could not be read."""
    seen = 0
    for sheet in each_layout.planner.sheets:
        for log in (each for each in sheet.logs if sheet.log_view and each.inputs):
            plan = each_layout.plans[sheet.name]
            message = each_layout.placements[f"{log.key}_{MESSAGE.key}"]
            [(fold, strip)] = [(column, each) for column, each in plan.folds if MESSAGE.key in each.keys]
            answers = [key for _, keys in sheet.log_view.answers for key in keys.split()]
            last = max(each_layout.placements[f"{log.key}_{key}"].column for key in answers)
            assert (message.column, fold) == (last + 1, last + 2) and message.column in plan.folded, log.key
            assert message.rows == log.rows and strip.heading == "what to look at"
            seen += 1
    assert seen >= 5


def test_the_message_of_a_log_is_the_last_that_is_seen_or_hidden_behind(each_layout):
    for sheet in each_layout.planner.sheets:
        for log in (each for each in sheet.logs if sheet.log_view and each.inputs):
            message = each_layout.placements[f"{log.key}_{MESSAGE.key}"]
            assert message.column > max(each_layout.placements[f"{log.key}_{each.key}"].column for each in log.inputs)


def test_ranges_of_a_small_planner():
    placements = place(described.whole()).placements
    # Counted by hand, as the docstring of `described` says.
    assert placements["reels_loop"].range == "Reels!$C$9:$C$11"
    assert placements["reels_mark"].range == "Reels!$A$9:$A$11"
    assert placements["reels_message"].range == "Reels!$G$9:$G$11"
    assert placements["skeins_loop"].range == "Skeins!$I$9:$I$12"
    assert placements["plan_margin"].range == "Work!$D$7"
    assert placements["plan_message"].range == "Work!$I$6"
    # The sizes begin under their heading in row 5, labels in 6 and units in 7; the counting numbers are hidden.
    assert placements["sizes_from"].range == "Facts!$C$8:$C$10"
    assert [placements["skeins_loop"].cell(index) for index in (0, 3)] == ["I9", "I12"]


def test_a_sheet_name_with_a_space_is_quoted():
    whole = described.whole()
    spaced = replace(whole, sheets=(*whole.sheets[:-1], replace(whole.sheets[-1], name="My facts")))
    assert place(spaced).placements["sizes_from"].range == "'My facts'!$C$8:$C$10"


def test_columns_beyond_z(layout):
    late = max((each for each in layout.formulas if each.rows > 1), key=lambda each: each.column)
    assert late.column > 26
    assert re.fullmatch(r"\$[A-Z]{2}\$\d+:\$[A-Z]{2}\$\d+", late.area)


def test_every_log_counts_its_lines_beside_them(each_layout):
    """So its numbers are as many as its lines, whatever was inserted or deleted, there or elsewhere."""
    for log in (each for each in each_layout.planner.blocks.values() if isinstance(each, Log)):
        column, other = (each_layout.placements[key] for key in (log.lines_column, f"{log.key}_{log.fields[0].key}"))
        assert (column.sheet, column.row, column.rows) == (other.sheet, other.row, log.rows)
        if not log.inputs:  # a row inserted above its first line moves that along, one below it is a line
            first = each_layout.placements[f"{log.key}_{LINE.key}"]
            assert column.formulas[0] == f"=ROW()-ROW(${first.letter}${first.row})+1"


AREA = re.compile(r"(?:('[^']+'|\w+)!)?(\$[A-Z]+\$\d+:\$[A-Z]+\$\d+)")
COLUMN = re.compile(r"\b[a-z]\w*_\w+\b")


def arguments_of(name: str, formula: str):
    """What stands between the parentheses of each call of a function."""
    for call in re.finditer(rf"\b{name}\(", formula):
        end, depth = call.end(), 1
        while depth:
            depth += {"(": 1, ")": -1}.get(formula[end], 0)
            end += 1
        yield formula[call.end() : end - 1]


@pytest.mark.parametrize("function", ["SUMPRODUCT", "SUMIF", "COUNTIFS"])
def test_columns_taken_together_are_of_one_table(each_layout, function):
    """When a line is deleted, columns of two tables differ in length, which some programs answer with an error."""
    found = 0
    for placement in each_layout.formulas:
        for taken in arguments_of(function, bare(placement.formulas[0])):
            columns = [each_layout.placements[each] for each in COLUMN.findall(taken)]
            rows = {(each.sheet, str(each.row), str(each.row + each.rows - 1)) for each in columns if each.rows > 1}
            for sheet, area in AREA.findall(taken):
                rows |= {(sheet.strip("'") or placement.sheet, *re.findall(r"\d+", area))}
            assert len(rows) <= 1, placement.key
            found += 1
    assert found > 5


def test_a_row_looks_at_itself_alone(each_layout):
    # What is not fixed by a $ before the row is a cell of the same row.
    for placement in each_layout.formulas:
        for index in {0, placement.rows - 1}:
            rows = set(re.findall(r"\$[A-Z]+(\d+)", bare(placement.formulas[index])))
            assert rows <= {str(placement.row + index)}, placement.key


def test_rows_have_one_formula(each_layout):
    for placement in each_layout.formulas:
        if placement.field == LINE:
            assert placement.formulas == tuple(f"={line}" for line in range(1, placement.rows + 1))
        elif isinstance(placement.holder, Log):
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
    names = (re.escape(quote_sheetname(each.name)) for each in each_layout.planner.sheets)
    sheet = rf"\b(?:{'|'.join(names)})!(?=\$[A-Z]+\$\d)"
    for key, text in formulas(each_layout):
        found = re.sub(
            r"\b[a-z][a-z0-9]*_[a-z0-9_]+\b", lambda name: "" if name[0] in each_layout.names else name[0], bare(text)
        )
        if each_layout.placements[key].rows == 1:  # no cells share it, so that it may hold addresses on other sheets
            found = re.sub(sheet, "", found)
        found = re.sub(r"[A-Z][A-Z0-9]*\(|\$[A-Z]+\$?\d+", "", found)
        assert not re.search(r"[A-Za-z_!]", found.replace("E+", "")), (key, found)


def test_sumproduct_holds_only_comparisons_and_ranges(each_layout):
    # Functions inside SUMPRODUCT are read as arrays by some programs and as one cell by others; SMALL takes an array by
    # itself.
    seen = 0
    for key, text in formulas(each_layout):
        for inside in re.findall(r"SUMPRODUCT\(((?:[^()]|\([^()]*\))*)\)", bare(text)):
            assert set(re.findall(r"([A-Z]+)\(", inside)) <= {"SMALL"}, key
            seen += 1
    assert seen


def test_formulas_stay_inside_the_limits_of_the_format(each_layout):
    for key, text in formulas(each_layout):
        assert len(text) <= LONGEST_FORMULA, key
        assert nesting(text) <= DEEPEST, key
        assert arguments(text) <= MOST_ARGUMENTS, key
        assert max(map(len, re.findall(r'"([^"]*)"', text)), default=0) <= LONGEST_TEXT, key
        assert bare(text).count("(") == bare(text).count(")"), key


def test_a_proof_uses_the_formula_of_the_planner(layout):
    """The same text but for where the words stand: its references, units and the guard."""
    proven = layout.placements["proofs_computed"]
    assert len(proven.formulas) == proven.holder.rows
    for proof, text in zip(
        proven.holder.proofs, proven.formulas, strict=False
    ):  # the trials below them have formulas of their own
        result = layout.placements[proof.result]
        shape = re.sub(r"\s", "", result.field.formula)
        # Which asks whether the readings differ at all.
        functions = re.findall(r"[A-Z]+\(", shape) + ["MAX("] * shape.count("stdev(")
        assert Counter(re.findall(r"\b(?:SQRT|PI|MAX|ROUNDUP)\(", bare(text))) == Counter(
            each for each in functions if each in ("SQRT(", "PI(", "MAX(", "ROUNDUP(")
        ), proof.number
        assert re.findall(r"\$[A-Z]+(\d+)", bare(text)), proof.number


def test_the_last_line_of_a_log_is_held_to_the_longest_formula(monkeypatch):
    """Its row has more digits than the first: of 1,000 lots the last ones had a formula that Excel refuses, and the
    first had none."""
    lots = Settings(rows=Rows(fiber=1_000))
    fault = layout_of(lots).placements["fiber_fault"].formulas
    assert len(fault[0]) < len(fault[-1]) <= LONGEST_FORMULA
    monkeypatch.setattr(profile, "LONGEST", len(fault[0]))
    with pytest.raises(DescriptionError, match="field fiber_fault: it has .* signs"):
        layout_of(lots)


def test_the_largest_planner_has_no_formula_that_programs_do_not_take():
    """Longer logs have longer addresses. A planner of 500 projects once had an error trial of 8,332 signs."""
    most = {
        name: next(each.le for each in field.metadata if hasattr(each, "le"))
        for name, field in Rows.model_fields.items()
    }
    placements = layout_of(Settings(rows=Rows(**most))).placements.values()
    lengths = {each.key: len(each.formulas[-1]) for each in placements if each.formulas}
    assert max(lengths.values()) < 8_000, "and there is room for another question"
