"""What a spinner changes turns the answer the right way: more yarn never makes it less, more need never surer.

Households are typed as they are, and again with one change. What each change may not do is said here in words a
spinner would use; nothing of it is taken from the planner's model.
"""

from collections.abc import Callable, Iterator
from functools import cache

import pytest

from workbookgen.checking.expected import expected_of_keys

from .test_unchanged import described, entries, households

KEYS = ("have", "in_skeins", "spare", "chance", "need", "more", "doubt_have", "prepared", "bought")
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


def asks_to_be_surer(logs: Logs) -> Iterator[Changed]:
    yield logs, {"doubts_certainty": (0.97,)}, [(place, place) for place in open_projects(logs)]


def counts_wraps_carelessly(logs: Logs) -> Iterator[Changed]:
    yield logs, {"doubts_wraps": (3.0,)}, [(place, place) for place in open_projects(logs)]


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
    asks_to_be_surer: {"more": no_less, "chance": the_same, "spare": the_same},
    counts_wraps_carelessly: {"doubt_have": no_less, "have": the_same, "chance": no_surer},
    sells_a_skein: {"in_skeins": no_more, "have": no_more, "spare": no_more},
    finds_a_skein_longer: {"in_skeins": no_less, "need": the_same},
    has_a_heavier_lot: {"have": no_less, "spare": no_less, "need": the_same},
    starts_another_piece_of_the_lot: {"spare": no_more, "need": the_same},
    gives_a_piece_up: {"spare": no_less, "need": the_same},
}


@cache
def as_typed() -> list[dict]:
    return answers([(logs, {}) for logs in households()])


def answers(typed: list[tuple[Logs, dict]]) -> list[dict]:
    planner = described()
    scenarios = [entries(planner, logs) | cards for logs, cards in typed]
    return expected_of_keys(planner, scenarios, [f"projects_{key}" for key in KEYS])


@pytest.mark.parametrize("change", RIGHT, ids=lambda change: change.__name__)
def test_the_answer_turns_the_right_way(change):
    changed = [(home, *each) for home, logs in enumerate(households()) for each in change(logs)]
    assert len(changed) >= 10
    after = answers([(logs, cards) for _, logs, cards, _ in changed])
    compared = 0
    for (home, _, _, lines), now in zip(changed, after, strict=True):
        for before_line, line in lines:
            for key, is_right in RIGHT[change].items():
                was, is_now = as_typed()[home][f"projects_{key}"][before_line], now[f"projects_{key}"][line]
                if was is None or is_now is None:
                    assert was is None and is_now is None, f"{key} of household {home} came or went"
                    continue
                assert is_right(was, is_now), f"{key} of household {home}, project {before_line}: {was} became {is_now}"
                compared += 1
    assert compared >= 20
