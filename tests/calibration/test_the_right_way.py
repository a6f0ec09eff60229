"""What a spinner changes turns the answer the right way: more yarn never makes it less, more need never surer.

Households are typed as they are, and again with one change. What each change may not do is said here in words a
spinner would use; nothing of it is taken from the planner's model.
"""

from collections.abc import Callable, Iterator
from functools import cache

import pytest

from workbookgen.checking.expected import expected_of_keys

from .test_unchanged import described, entries, households

OF_PROJECTS = ("have", "in_skeins", "spare", "chance", "need", "more", "doubt_have", "prepared", "bought")
FIELDS = {each: f"projects_{each}" for each in OF_PROJECTS} | {
    each: f"times_{each}" for each in ("ahead", "finish", "safe")
}
PACES = {"pace_spinning": (40.0,), "pace_plying": (90.0,), "pace_start": (46_200.0,)}
NOISE = 1e-9
Logs = dict[str, list[dict]]
Changed = tuple[Logs, dict[str, tuple], list[tuple[int, int]]]  # records, cards, and lines of projects before and after


def with_one(logs: Logs, log: str, place: int, **values) -> Logs:
    """These records, with one of them changed."""
    records = [{**each, **values} if number == place else each for number, each in enumerate(logs[log])]
    return logs | {log: records}


def open_projects(logs: Logs) -> list[int]:
    return [place for place, each in enumerate(logs.get("projects", ())) if not each.get("used")]


def each_open(logs: Logs, **values) -> Iterator[Changed]:
    for place in open_projects(logs):
        yield with_one(logs, "projects", place, **values), {}, [(place, place)]


def needs_more(logs: Logs) -> Iterator[Changed]:
    for place in open_projects(logs):
        if wanted := logs["projects"][place].get("wanted"):
            yield with_one(logs, "projects", place, wanted=wanted * 1.2), {}, [(place, place)]


def wants_a_reserve(logs: Logs) -> Iterator[Changed]:
    return each_open(logs, margin=0.25)


def is_less_sure_of_the_need(logs: Logs) -> Iterator[Changed]:
    return each_open(logs, need_doubt=0.3)


def sells_a_skein(logs: Logs) -> Iterator[Changed]:
    for place in open_projects(logs):
        for skein, each in enumerate(logs.get("skeins", ())):
            if each.get("project") == logs["projects"][place]["name"]:
                yield with_one(logs, "skeins", skein, gone="sold"), {}, [(place, place)]


def finds_a_skein_longer(logs: Logs) -> Iterator[Changed]:
    """And as much heavier. Of the lot there is then less."""
    for place in open_projects(logs):
        for skein, each in enumerate(logs.get("skeins", ())):
            if each.get("project") == logs["projects"][place]["name"] and not each.get("tare"):
                more = with_one(
                    logs,
                    "skeins",
                    skein,
                    wraps=each["wraps"] * 1.3 // 1,
                    gross=each["gross"] * (each["wraps"] * 1.3 // 1) / each["wraps"],
                )
                yield more, {}, [(place, place)]


def has_a_heavier_lot(logs: Logs) -> Iterator[Changed]:
    """Nothing of it was weighed later, which would tell more than its first weight."""
    for place in open_projects(logs):
        for lot, each in enumerate(logs["fiber"]):
            is_its = each["name"] == logs["projects"][place].get("lot_1")
            if is_its and not any(key.endswith("_weighed") for key in each):
                yield with_one(logs, "fiber", lot, weight=each["weight"] * 1.3), {}, [(place, place)]


def starts_another_piece_of_the_lot(logs: Logs) -> Iterator[Changed]:
    for place in open_projects(logs):
        if lot := logs["projects"][place].get("lot_1"):
            another = {"name": "Another", "wanted": 300.0, "grist": logs["projects"][place]["grist"], "lot_1": lot}
            yield logs | {"projects": [*logs["projects"], another]}, {}, [(place, place)]


def gives_a_piece_up(logs: Logs) -> Iterator[Changed]:
    for place in open_projects(logs):
        name = logs["projects"][place]["name"]
        free = [{key: value for key, value in each.items() if value != name} for each in logs.get("skeins", ())]
        left = [each for number, each in enumerate(logs["projects"]) if number != place]
        others = [(other, other - (other > place)) for other in open_projects(logs) if other != place]
        if others:
            yield logs | {"skeins": free, "projects": left}, {}, others


def is_half_done(logs: Logs) -> Iterator[Changed]:
    return each_open(logs, done=0.5)


def with_card(key: str, value: float) -> Callable[[Logs], Iterator[Changed]]:
    """A figure that holds for all projects."""

    def change(logs: Logs) -> Iterator[Changed]:
        yield logs, {key: (value,)}, [(place, place) for place in open_projects(logs)]

    change.__name__ = f"{key} is {value:g}"
    return change


def no_more(before: float, after: float) -> bool:
    return after <= before + NOISE * max(1, abs(before))


def no_less(before: float, after: float) -> bool:
    return no_more(after, before)


def the_same(before: float, after: float) -> bool:
    return no_more(before, after) and no_less(before, after)


def no_surer(before: float, after: float) -> bool:
    """Nearer to a toss of a coin, on the same side of it."""
    return no_more(abs(before - 0.5), abs(after - 0.5)) and (before - 0.5) * (after - 0.5) >= -NOISE


# What one does, and how each of these figures may then be, beside what it was.
RIGHT: dict[Callable[[Logs], Iterator[Changed]], dict[str, Callable[[float, float], bool]]] = {
    needs_more: {"need": no_less, "have": the_same, "spare": no_more, "chance": no_more, "more": no_less},
    wants_a_reserve: {"prepared": no_less, "bought": no_less, "spare": the_same, "chance": the_same, "more": the_same},
    is_less_sure_of_the_need: {"need": the_same, "spare": the_same, "chance": no_surer, "doubt_have": the_same},
    with_card("doubts_certainty", 0.97): {"more": no_less, "chance": the_same, "spare": the_same},
    with_card("doubts_wraps", 3.0): {"doubt_have": no_less, "have": the_same, "chance": no_surer},
    sells_a_skein: {"in_skeins": no_more, "have": no_more, "spare": no_more},
    finds_a_skein_longer: {"in_skeins": no_less, "need": the_same},
    has_a_heavier_lot: {"have": no_less, "spare": no_less, "need": the_same},
    starts_another_piece_of_the_lot: {"spare": no_more, "need": the_same},
    gives_a_piece_up: {"spare": no_less, "need": the_same},
    is_half_done: {"ahead": no_more, "finish": no_more, "safe": no_more, "spare": the_same},
    with_card("pace_spinning", 60.0): {"ahead": no_more, "finish": no_more, "safe": no_more, "spare": the_same},
    with_card("pace_weekly", 9.0): {"ahead": the_same, "finish": no_more, "safe": no_more},
    with_card("doubts_pace", 0.4): {"ahead": the_same, "finish": the_same, "safe": no_less},
}


@cache
def as_typed() -> list[dict]:
    return answers([(logs, {}) for logs in households()])


def answers(typed: list[tuple[Logs, dict]]) -> list[dict]:
    planner = described()
    scenarios = [entries(planner, logs) | PACES | cards for logs, cards in typed]
    return expected_of_keys(planner, scenarios, list(FIELDS.values()))


@pytest.mark.parametrize("change", RIGHT, ids=lambda change: change.__name__)
def test_the_answer_turns_the_right_way(change):
    changed = [(home, *each) for home, logs in enumerate(households()) for each in change(logs)]
    assert len(changed) >= 10
    after = answers([(logs, cards) for _, logs, cards, _ in changed])
    compared = 0
    for (home, _, _, lines), now in zip(changed, after, strict=True):
        for before_line, line in lines:
            for key, is_right in RIGHT[change].items():
                was, is_now = as_typed()[home][FIELDS[key]][before_line], now[FIELDS[key]][line]
                if was is None or is_now is None:
                    assert was is None and is_now is None, f"{key} of household {home} came or went"
                    continue
                assert is_right(was, is_now), f"{key} of household {home}, project {before_line}: {was} became {is_now}"
                compared += 1
    assert compared >= 20
