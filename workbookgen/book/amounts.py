"""Amounts in words: the forms `said` and `said_in_all`, written out in functions of the profile."""

from workbookgen.language.forms import BETWEEN_THOUSANDS
from workbookgen.language.quantities import PERCENT_UNIT, Unit

# What is said with one decimal more, since a single figure would say too little: ounces below 1, grams below 10.
_FINER_BELOW = {"g": "10"}


def said(ref: str, unit: Unit) -> str:
    """Formula text of an amount in words, in the unit shown: with thousands separated, and only useful decimals."""
    if unit.symbol == PERCENT_UNIT.symbol:
        return f'(ROUND(ROUND({ref}*100,9),0)&"%")'
    number = f"ROUND(ROUND({ref},9),0)"
    thousands = f"ROUNDDOWN({number}/1000,0)"
    parted = f'{thousands}&{BETWEEN_THOUSANDS}&RIGHT("00"&({number}-1000*{thousands}),3)'
    return f"({_below_a_thousand(unit, f'ROUND({ref},9)', parted)}{_unit_said(unit)})"


def said_in_all(ref: str, unit: Unit) -> str:
    """The same for a total up to a hundred million, rounded first: the seventh decimal of such a sum is noise."""
    number = f"ROUND(ROUND({ref},6),0)"
    thousands, millions = (f"ROUNDDOWN({number}/{each},0)" for each in (1000, 1000000))
    last = f'RIGHT("00"&({number}-1000*{thousands}),3)'
    middle = f'IF({number}<1000000,{thousands}&"",{millions}&{BETWEEN_THOUSANDS}&RIGHT("00"&({thousands}-1000*{millions}),3))'
    parted = f"{middle}&{BETWEEN_THOUSANDS}&{last}"
    return f"({_below_a_thousand(unit, f'ROUND({ref},6)', parted)}{_unit_said(unit)})"


def _below_a_thousand(unit: Unit, number: str, parted: str) -> str:
    """Formula text of a number with its useful decimals, or from a thousand on of its thousands as they are parted."""
    digits = 1 if unit.symbol and unit.digits else 0
    usual = f"ROUND({number},{digits})"
    text = f'IF({usual}<1000,{usual}&"",{parted})'
    below = _FINER_BELOW.get(unit.symbol, "1" if digits else "")
    finer = _two_decimals(number) if digits else f'ROUND({number},1)&""'
    return f"IF({number}<{below},{finer},{text})" if below else text


def _two_decimals(number: str) -> str:
    """Formula text of a number below 1 with up to two decimals, as text.

    Gnumeric makes 0.54000000000000000002 of 0.54 joined to a text, though not of 0.5. So the hundredths are put behind
    the program's own decimal mark.
    """
    hundredths = f"ROUND(ROUND({number}*100,6),0)"
    return f'IF(RIGHT({hundredths},1)="0",ROUND({number},1)&"",LEFT(0.5&"",2)&RIGHT("0"&{hundredths},2))'


def _unit_said(unit: Unit) -> str:
    """Formula text that appends the unit, if there is one, and makes a text of the number in any case."""
    return f'&" {unit.symbol}"' if unit.symbol else '&""'
