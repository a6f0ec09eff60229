"""The answer and the advice in a sentence, at the very amounts where their words change. Worked by hand."""

import numpy as np
import pytest

from workbookgen.reference import advice, answer
from workbookgen.units import Quantity


def meters(number):
    return Quantity(float(number), "m")


def test_only_what_is_below_nothing_is_lacking():
    assert [answer.lacking(meters(spare)).m_as("m") for spare in (-20, -0.4, 0, 0.4, 20)] == [20, 0.4, 0, 0, 0]


def told(spare, **more):
    over, short = max(spare, 0), max(-spare, 0)
    return answer.answer(meters(400 + spare), meters(400), meters(spare), meters(over), meters(short), **more)


def test_over_from_nothing_on_and_short_below():
    assert told(0) == "There is 400 m; it takes 400 m: 0 m over."
    assert told(0.6) == "There is 401 m; it takes 400 m: 1 m over."
    assert told(-0.6) == "There is 399 m; it takes 400 m: 1 m short."
    assert answer.in_short("in doubt", meters(0), meters(0)) == "In doubt: 0 m over"
    assert answer.in_short("in doubt", meters(0.6), meters(0)) == "In doubt: 1 m over"
    assert answer.in_short("short", meters(-0.6), meters(0.6)) == "Short by 1 m"
    # In a column, a word that stands before "finished" in the alphabet is not taken for it.
    spare = Quantity(np.array([-20.0, 30.0, 30.0]), "m")
    verdicts = np.array(["short", "enough", "finished"], dtype=object)
    in_short = answer.in_short(verdicts, spare, Quantity(np.array([20.0, 0.0, 0.0]), "m"))
    assert list(in_short) == ["Short by 20 m", "Enough: 30 m over", "Finished"]


def test_what_others_lack_of_the_lots_is_told_from_more_than_half_a_meter_on():
    # There is 380 m for this piece alone; of that the others lack some.
    shared = "There is 380 m; it takes 400 m: 20 m short, for all projects on its lots."
    alone = "There is 380 m; it takes 400 m: 20 m short."
    assert [told(-20, have=meters(have)) for have in (380, 379.6, 379.4, 370)] == [alone, alone, shared, shared]


def test_a_range_or_a_free_length_of_less_than_half_a_meter_is_left_unsaid():
    plain = "There is 400 m; it takes 400 m: 0 m over."
    assert told(0, least=meters(0), most=meters(0.4)) == plain
    assert told(0, least=meters(0), most=meters(0.5)) == plain.replace("400 m;", "400 m, very likely 0 m to 1 m;")
    assert told(0, least=meters(0)) == told(0, most=meters(900)) == plain
    assert [told(0, free=meters(free)) for free in (0, 0.4, 0.5)] == [plain] * 3
    assert told(0, free=meters(0.6)) == plain + " Another 1 m lie in skeins of its yarn that belong to no open project."


def test_what_nobody_can_believe_is_not_told():
    far, just = meters(900_000), meters(899_999.6)
    took = Quantity(899_999.6, "g")
    assert "Another 900,000 m lie" in told(0, free=just)
    assert answer.in_short("enough", just, meters(0)) == "Enough: 900,000 m over"
    assert answer.answer(used=took) == "It took 900,000 g of yarn."
    for refused in (
        lambda: told(0, least=meters(0), most=far),
        lambda: told(0, free=far),
        lambda: told(0, free=far * 1.1),
        lambda: answer.in_short("enough", far, meters(0)),
        lambda: answer.in_short("enough", far * 1.1, meters(0)),
        lambda: answer.answer(used=Quantity(900_000.0, "g")),
        lambda: answer.answer(used=Quantity(950_000.0, "g")),
        lambda: answer.answer(used=Quantity(200.0, "g"), there=meters(2_000_000)),
        lambda: answer.in_short("enough", meters(20)),
        lambda: answer.in_short("enough", lacking=meters(20)),
    ):
        with pytest.raises(ValueError):
            refused()
    # Of a finished piece it need not be known.
    assert answer.in_short("finished", meters(20)) == "Finished"


def to_get(grams, **more):
    strand = {"buy_1": Quantity(float(grams), "g"), "name_1": "Moss"} | more
    return advice.advice(meters(90), 0.9, **strand)


def test_less_of_a_strand_than_a_kitchen_scale_shows_is_not_asked_for():
    nothing = "To be 90% sure, get 90 m more."
    assert [to_get(grams) for grams in (0, 0.6, 1.4)] == [nothing] * 3
    assert [to_get(grams) for grams in (1.5, 2.44, 12.4)] == [
        nothing.replace(".", f": {told} of Moss.") for told in ("1.5 g", "2.4 g", "12 g")
    ]
    assert to_get(1.4, name_1=None) == nothing
    for nameless in (1.5, 60):
        with pytest.raises(ValueError, match="needs a name"):
            to_get(nameless, name_1=None)
    assert advice.advice(meters(0.5), 0.9) == "To be 90% sure, get 1 m more."
    assert advice.advice(meters(0.4), 0.9) == "That is as sure as you ask."


def test_too_many_balls_and_too_much_weight_are_not_told():
    assert to_get(60, balls_1=1) == "To be 90% sure, get 90 m more: 1 ball of Moss."
    assert "899,999 balls of Moss" in to_get(60, balls_1=899_999)
    assert "900,000 g of Moss" in to_get(899_999.6)
    for more in (dict(balls_1=900_000), dict(balls_1=950_000)):
        with pytest.raises(ValueError, match="too much to put"):
            to_get(60, **more)
    for grams in (-1, 900_000, 950_000):
        with pytest.raises(ValueError, match="too much to put"):
            to_get(grams)
