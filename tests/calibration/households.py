"""Invented spinners who do everything right, and what they type into a planner.

Quantities are drawn in meters and grams, and typed in the planner's units, rounded as people round. How fleeces,
yarns and skeins differ is common practice, no source.
"""

from collections import defaultdict
from dataclasses import dataclass, field

import numpy as np

from workbookgen.language.planner import Planner

INCH, YARD = 0.0254, 0.9144
DAY = 46_100  # in the spring of 2026
GRIST = {"lace": 11.0, "fingering": 4.0, "sport": 3.0, "worsted": 2.0, "bulky": 1.1}  # meters in a gram
SINGLES = {"lace": 2, "fingering": 3, "sport": 3, "worsted": 2, "bulky": 1}
FLEECES = ("raw fleece", "skirted fleece")
SPUN = {"planned": 0.0, "half spun": 0.5, "spun": 1.05, "finished": 1.05}


@dataclass
class Household:
    """One spinner; `draw` decides. What is typed stands in `logs`, record by record."""

    planner: Planner
    draw: np.random.Generator
    logs: dict[str, list[dict]] = field(default_factory=lambda: defaultdict(list))

    def __post_init__(self):
        self.has_fine_scale = self.draw.random() < 0.5
        self.loops = {name: self.reel(name) for name in ("Niddy", "Winder")}
        self.left = dict(self.lot(number) for number in range(self.draw.integers(2, 6)))
        for number in range(self.draw.integers(0, 3)):
            self.sample(f"Sample {number}")
        for number in range(self.draw.integers(0, 4)):
            self.project(f"Project {number}")
        for _ in range(self.draw.integers(0, 4)):
            self.free_skein()
        self.design()

    def one(self, *these):
        return these[self.draw.integers(len(these))]

    def near(self, value: float, share: float) -> float:
        return float(value * np.exp(self.draw.normal(0, share)))

    def between(self, low: float, high: float) -> float:
        return float(self.draw.uniform(low, high))

    def perhaps(self, value, share: float = 0.5):
        return value if self.draw.random() < share else None

    def type(self, log: str, **values) -> dict:
        record = {key: self.typed(log, key, value) for key, value in values.items() if value is not None}
        self.logs[log].append(record)
        return record

    def typed(self, log: str, key: str, value):
        unit = self.planner.by_key[f"{log}_{key}"][1].unit
        if isinstance(value, str) or unit is None:
            return value
        shown = unit.unit(self.planner.system)
        number = float(value) / shown.value
        digits = {"oz": 2, "g": 1 if self.has_fine_scale else 0, "%": 3}.get(shown.symbol, 1 if number < 100 else 0)
        return round(number, digits) or number

    def reel(self, name: str) -> float:
        rated = self.one(1.0, 1.25, 1.5, 1.5, 2.0) * self.one(1.0, YARD)
        loop, turns = self.near(rated, 0.025), self.one(4.25, 7.5, 8.25)
        by_cord = self.perhaps(turns)
        self.type("reels", name=name, rated=rated, cord=by_cord and turns * loop, turns=by_cord)
        return loop

    def lot(self, number: int) -> tuple[str, float]:
        """A lot at some stage of its way, each weighing in air of its own; and the yarn that it gives."""
        state = self.one(*FLEECES, "washed fiber", "prepared fiber", "prepared fiber", "yarn or thread")
        breeds = [each for each in self.planner.blocks["guide"].starts_with if each.get("yield_low")]
        breed = self.one(*breeds)
        is_fleece, stage = state in FLEECES, self.draw.integers(0, 4)
        weight = max(8.0, self.near(1800 if is_fleece else 150, 0.5))
        skirted = weight * self.between(0.75, 0.95) if state == "raw fleece" else weight
        washed = (
            self.near(skirted * self.between(breed["yield_low"], breed["yield_high"]), 0.01) if is_fleece else weight
        )
        prepared = washed * self.between(0.9, 0.96) if is_fleece else washed
        self.type(
            "fiber", name=f"Lot {number}", kind=breed["name"], state=state, weight=weight,
            grist=self.perhaps(self.near(self.one(*GRIST.values()), 0.1)), cost=self.perhaps(self.between(5, 90)),
            bought_on=self.perhaps(DAY - 200), own_yield=self.perhaps(washed / skirted, 0.2) if is_fleece else None,
            skirted_weighed=skirted if state == "raw fleece" and stage > 0 else None,
            scoured_weighed=washed if is_fleece and stage > 1 else None,
            prepared_weighed=prepared if is_fleece and stage > 2 else None,
            gone=self.perhaps(self.one("given", "set aside"), 0.05),
        )  # fmt: skip
        return f"Lot {number}", prepared * self.between(0.95, 0.99)

    def sample(self, name: str) -> None:
        grist, length = self.near(self.one(*GRIST.values()), 0.2), self.between(8, 30)
        wraps = self.near(0.35, 0.15) * np.sqrt(grist * 453.59237 / YARD)
        shrinks, take_up, loss = self.between(0, 0.12), self.between(0.005, 0.07), self.between(0.01, 0.06)
        is_plied, is_washed = self.perhaps(1), self.perhaps(1)
        mass, plied = length / grist, length * 1.1 / (1 - shrinks)
        self.type(
            "samples", name=name, lot=self.one(*self.left), length=length, mass=mass,
            **{f"wpi_{each}": round(self.near(wraps, 0.08)) / INCH for each in range(1, self.draw.integers(2, 6))},
            fiber_in=self.perhaps(mass * 1.2 / (1 - loss) + 1), unwashed=is_washed and length / (1 - shrinks),
            washed=is_washed and length, singles_length=is_plied and plied / (1 - take_up),
            plied_length=is_plied and plied, spin_minutes=is_plied and self.between(8, 60) / 60,
            singles_turns=float(round(wraps * 2)), singles_piece=4 * INCH,
        )  # fmt: skip

    def skein(self, grist: float, mass: float, lot: str, singles: int, **others) -> None:
        reel = self.one(*self.loops)
        loop, shrinks = self.loops[reel], self.between(0, 0.1)
        wraps = self.near(0.35, 0.15) * np.sqrt(grist * 453.59237 / YARD)
        tare = self.perhaps(self.between(2, 15), 0.15)
        self.left[lot] -= mass
        self.type(
            "skeins", name=f"Skein {len(self.logs['skeins'])}", reel=reel, lot=lot,
            wraps=float(max(2, round(mass * grist / loop / (1 - shrinks)))), gross=mass + (tare or 0), tare=tare,
            washed_loop=self.perhaps(loop * (1 - shrinks) * self.near(1, 0.01)), plied_of=self.perhaps(singles, 0.8),
            counted_wpi=self.perhaps(round(wraps) / INCH, 0.3), finished_on=self.perhaps(DAY + 40), **others,
        )  # fmt: skip

    def project(self, name: str) -> None:
        lot, style, stage = self.one(*self.left), self.one(*GRIST), self.one(*SPUN)
        grist = self.near(GRIST[style], 0.2)
        mass = self.left[lot] * self.between(0.3, 0.9)
        wanted = mass * grist / 1.1
        is_of_lot = stage != "planned" or self.perhaps(True, 0.8)
        skeins = int(np.ceil(mass / self.between(60, 150)))
        has_skeins = SPUN[stage] > 0 and mass > 20 and skeins < 9
        need = self.cloth(name, grist, wanted) if self.perhaps(True, 0.4) else wanted
        is_made = stage == "finished" and has_skeins and bool(need)
        self.type(
            "projects", name=name, wanted=need, grist=grist, lot_1=lot if is_of_lot else None, margin=0.1,
            strands=SINGLES[style], used=mass if is_made else None,
        )  # fmt: skip
        for _ in range(skeins if has_skeins else 0):
            each = mass * min(1.0, SPUN[stage]) / skeins
            self.skein(self.near(grist, 0.1), each, lot, SINGLES[style], project=name, gone="used" if is_made else None)

    def free_skein(self) -> None:
        """Of any lot and in any style, from 5 g on."""
        lot, style = self.one(*self.left), self.one(*GRIST)
        mass = min(self.one(5, 20, 50, 100, 300), self.left[lot] * 0.9)
        if mass > 4:
            self.skein(self.near(GRIST[style], 0.1), mass, lot, SINGLES[style], gone=self.perhaps("sold", 0.2))

    def cloth(self, name: str, grist: float, wanted: float) -> float | None:
        """What it takes, woven or knitted: a woven piece tells by itself, and beside a swatch the pattern is typed."""
        if self.perhaps(True):
            sett = 0.9 * np.sqrt(grist * 453.59237 / YARD) / 2 / INCH
            self.type(
                "weavings", project=name, weave="plain", grist=grist, width=self.between(0.2, 1.0), length=1.8,
                loom_waste=0.5, draw_in=0.08, shrinkage=0.1, take_up=0.1, weft_lost=0.07,
                own_sett=self.perhaps(sett * self.between(0.5, 0.85)),
            )  # fmt: skip
            return None
        thick = np.sqrt(1000 / grist)
        area, side = self.between(9.5, 13.5) * thick, self.one(0.15, 0.2)  # grams in a square meter
        width = np.sqrt(wanted / grist / area) * self.between(0.9, 1.0)
        mass = max(1.0, area * side * side)
        self.type(
            "estimates", project=name, grist=grist, swatch_width=side, swatch_height=side, swatch_mass=mass,
            **({"stitches": 5200 / thick, "rows": 7000 / thick} if grist < 5 else {}),
        )  # fmt: skip
        self.type("pieces", project=name, part="All of it", shape="rectangle", width=width, height=width)
        return wanted

    def design(self) -> None:
        lots = list(self.left)
        self.type("designs", name="Marl", shrinkage=self.perhaps(0.05))
        for place, number in enumerate((lots[0], lots[-1]), start=1):
            self.type(
                "components", design="Marl", name=f"Single {place}", number=2400.0, system="yards per pound",
                strands=1, feed=1.04, place=place, lot=number,
            )  # fmt: skip
        self.type("offers", name="Ewe", kind="Romney", state=self.one(*FLEECES), weight=self.near(1500, 0.4), price=40)
