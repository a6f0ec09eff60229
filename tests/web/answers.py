"""Questions to HyperFormula and to the four engines of the package: where they answer alike, and where not.

A difference that is known is written down with both answers and the reason, so that a new version of
HyperFormula which mends one is noticed. ALIKE goes through every function that a planner may use.
The answers are so plain that a reader can check them; the others' are what four programs agree on.
"""

from dataclasses import dataclass

import xlsxwriter

from workbookgen.engines import Area, ErrorValue

VALUE, NAME, NOT_FOUND = ErrorValue("#VALUE!"), ErrorValue("#NAME?"), ErrorValue("#N/A")
UNPARSED = ErrorValue("#ERROR!")


@dataclass(frozen=True)
class Difference:
    formula: str
    others: float | str | bool | ErrorValue
    hyperformula: float | str | bool | ErrorValue
    why: str


# In the sheet: A1:A6 are 3, 1, 2, ="", "text" and blank; B1:B6 the names below; C1:C3 are 1, 2, 3.
NAMES = ("wool", "Wool top", "fleece", "é", "5/6/2026", "wool")

DIFFERENT = (
    # What a formula of a planner could meet, were it not written as it is.
    Difference(
        "A4+1",
        VALUE,
        1.0,
        "It takes the empty text for zero (its pull request 1768 is to mend that); our formulas ask ISNUMBER or COUNT first.",
    ),
    Difference("AND(A4,1=1)", True, False, "The empty text again; what we give to AND are comparisons."),
    Difference('COUNT("",1)', 1.0, 2.0, "The empty text again, when it is no cell's; we count cells."),
    Difference(
        'COUNTIF(A1:A6,"")',
        2.0,
        1.0,
        "A formula that shows nothing is not counted as empty; we count words that are there.",
    ),
    Difference(
        'MATCH("wo*",B1:B6,0)',
        1.0,
        NOT_FOUND,
        "It knows no wildcards in MATCH; a name that is on no list is not looked up by us.",
    ),
    Difference(
        'MATCH("e",B1:B6,0)',
        NOT_FOUND,
        4.0,
        "MATCH takes é for e, though = does not; two names that differ in an accent alone would be one to it.",
    ),
    Difference(
        "ROUNDUP(ROUND((7/0.0254)*(1000000*0.0254),9),0)",
        7_000_000.0,
        7_000_001.0,
        "The product misses 7,000,000 by its last binary digit, which no nine decimals take away from so large a number; the others see fifteen digits.",
    ),
    Difference(
        "ROUND(1.005,2)",
        1.01,
        1.0,
        "It rounds the binary number, which lies below 1.005; the others see fifteen digits.",
    ),
    Difference('LEN("🧶")', 1.0, 2.0, "It counts units of UTF-16, of which such a sign has two."),
    Difference(
        "COUNTBLANK(A1:A6)",
        2.0,
        1.0,
        "A formula that shows nothing is not counted as blank; so to it, one typed into an input is no blank cell.",
    ),
    # How a formula of a planner is never written.
    Difference('"a""b"', 'a"b', UNPARSED, "It cannot read a quotation mark within a text."),
    Difference("1E-9*1", 1e-9, UNPARSED, "It cannot read a number with an exponent."),
    Difference("TRUE", True, NAME, "It knows TRUE() alone."),
    Difference(
        '"5/6/2026"*1',
        46_148.0,
        VALUE,
        "Dates in texts are turned off in witness.mjs: what the text means depends on the country.",
    ),
    Difference("INT(-2.5)", -3.0, -2.0, "It rounds towards zero; INT is outside our profile."),
    Difference("TINV(0.05,10)", 2.22813885198627, 2.228138842468655, "It is off by 4e-9; outside our profile."),
    *(
        Difference(f"{name}({given})", answer, NAME, "It has no such function; outside our profile.")
        for name, given, answer in (
            ("AVERAGEIFS", 'A1:A6,B1:B6,"wool"', 3.0),
            ("RANK", "A1,A1:A6", 1.0),
            ("INTERCEPT", "A1:A3,C1:C3", 3.0),
            ("FORECAST", "1,A1:A3,C1:C3", 2.5),
            ("LOOKUP", "2,C1:C3,A1:A3", 1.0),
            ("FIXED", "2.25,1", "2.3"),
        )
    ),
)

ALIKE = {
    'IF(A4="",1,2)': 1,
    "IF(A1>0,A6,1)": 0,
    'IF("a">5,1,2)': 1,
    "AND(A1>0,NOT(A2>5))*1": 1,
    "OR(A1>5,A2>5)*1": 0,
    'INDEX(A1:A3,MATCH("FLEECE",B1:B6,0))': 2,
    "MATCH(2.5,C1:C3,1)": 2,
    "SUM(A1:A6)": 6,
    "COUNT(A1:A6)": 3,
    "COUNTA(A1:A6)": 5,
    'COUNTIF(B1:B6,"wool")': 2,
    "SUMIF(C1:C6,2,A1:A6)": 1,
    "SUMIF(A1:A6,C3,A1:A6)": 3,
    'COUNTIFS(A1:A6,3,C1:C6,">-1000000000000")': 1,
    'COUNTIFS(A1:A6,">-1000000000000")': 3,
    'SUMPRODUCT((B1:B6="WOOL")*1,A1:A6)': 3,
    'SUMPRODUCT((B1:B6="e")*1)': 0,
    'SUMPRODUCT((B1:B6="wo*")*1)': 0,
    "AVERAGE(A1:A6)": 2,
    "MEDIAN(A1:A6)": 2,
    "STDEV(A1:A6)": 1,
    "MIN(A1:A6)": 1,
    "MAX(A1:A6)": 3,
    "ROUND(2.5,0)": 3,
    "ROUND(-2.5,0)": -3,
    "ROUNDUP(-2.1,0)": -3,
    "ROUNDUP(ROUND(3.0000000000004,9),0)": 3,
    "ROUNDDOWN(-2.7,0)": -2,
    "ABS(-2)+SIGN(-3)": 1,
    "SQRT(POWER(3,2)+POWER(4,2))": 5,
    "LN(EXP(2))": 2,
    "LOG10(1000)": 3,
    "ATAN(1)*4/PI()": 1,
    "TAN(0)+SIN(0)+COS(0)": 1,
    "NORMSDIST(0)": 0.5,
    "NORMSINV(NORMSDIST(1))": 1,
    'LEN(" a b ")': 5,
    'LEFT("spinning",2)&RIGHT("spinning",2)&MID("spinning",3,2)': "spngin",
    'FIND("n","spinning")': 4,
    'SUBSTITUTE("a b c"," ","")&UPPER("x")&LOWER("Y")': "abcXy",
    "ISNUMBER(A1)*1+ISTEXT(A4)*2+COUNTBLANK(A1)*4+COUNTBLANK(A6)*8": 11,
    '"é"="e"': False,
    '"Wool"="wool"': True,
    '"co-op"="coop"': False,
    "A5=5": False,
    "A5>1000": True,
    'A6=""': True,
    "A6=0": True,
    "A4=0": False,
    'A6&"x"': "x",
    "ROUND(0.1+0.2,9)=0.3": True,
    "1/3": 1 / 3,
    "B9": 0,
    "SMALL(A1:A6,2)+10*LARGE(A1:A6,1)": 32,
    "SUMPRODUCT(SMALL((A1:A3<3)*1000+C1:C3,1))": 1,
    'REPT("ab",2)': "abab",
    "ROW(A3)": 3,
}

FORMULAS = (*(each.formula for each in DIFFERENT), *ALIKE)
ANSWERS = Area("Questions", 1, 6, len(FORMULAS))


def write(path):
    with xlsxwriter.Workbook(path) as book:
        sheet = book.add_worksheet("Questions")
        for row, value in enumerate((3, 1, 2)):
            sheet.write_number(row, 0, value)
            sheet.write_number(row, 2, row + 1)
        sheet.write_formula(3, 0, '=""')
        sheet.write_string(4, 0, "text")
        for row, name in enumerate(NAMES):
            sheet.write_string(row, 1, name)
        for row, formula in enumerate(FORMULAS):
            sheet.write_formula(row, 5, f"={formula}", None, -1)


def asked(engine, path):
    """Formula -> answer."""
    with engine.open(path) as session:
        return dict(zip(FORMULAS, (value for (value,) in session.read(ANSWERS)), strict=True))
