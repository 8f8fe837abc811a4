"""A year of one store against the stratified tank of a full building-energy engine.

Each night the tank is brought to 80 °C at once; by day 0.1 to 1.3 times its water is drawn, most in January, and 30 °C
water comes in below. The engine's nodes stand still, at most twelve, so cold water blends into hot ones at each of them;
what that costs halves with their thickness, so the engine's own number without it is twice that of 12 nodes less that of
6. `scripts/tank_engine` ran the engine and kept what it gave in `engine_tank.json`.
"""

import json
import math
from functools import cache, partial
from pathlib import Path
from typing import Any, NamedTuple

from calc.law import Count, Joule, method
from calc.physics.winter_store import LayeredStore
from calc.tables.year import HOURS
from comparisons.check import Check, Published

KEPT: dict[str, Any] = json.loads(Path(__file__).with_suffix(".json").read_text(encoding="utf-8"))
ENGINE = Published(
    "US Department of Energy",
    "EnergyPlus, WaterHeater:Stratified",
    "2025",
    f"{KEPT['made_with']}; run by scripts/tank_engine",
    "independent library",
)
_CONDUCTS = 3  # h between two reckonings of the heat that creeps down


class TankYear(NamedTuple):
    """What the year came to, J: heat of the water drawn over that which came in, heat lost, heat put in."""

    delivered: float
    lost: float
    heated: float


@cache
def tank_year(layers: int) -> TankYear:
    """The same year by layers that move, with the water's heat content as the engine has it."""
    tank = KEPT["tank"]
    hot, cold, around = (tank[name] + 273.15 for name in ("hot", "cold", "around"))
    volume, height, loss = tank["volume"], tank["height"], tank["loss"]
    heat_content = _heat_content()
    capacity = volume * heat_content
    decay = math.exp(-3600 * loss / capacity)
    delivered = lost = heated = 0.0
    store = LayeredStore(volume, height, heat_content, hot, layers, tank["conductivity"])
    for hour, drawn in enumerate(_drawn_each_hour()):
        if hour % 24 == 0:
            kept_hot = loss * (hot - around) * 3600
            heated += capacity * (hot - store.mean) + kept_hot
            lost += kept_hot
            store = LayeredStore(volume, height, heat_content, hot, layers, tank["conductivity"])
            continue
        lost += store.stand(math.sqrt(decay), around)
        while drawn > 1e-12:
            part = min(drawn, store.volumes[0], store.layer)
            delivered += store.sink(part, cold)
            drawn -= part
        lost += store.stand(math.sqrt(decay), around)
        if hour % _CONDUCTS == 0:
            store.conduct(_CONDUCTS * 3600.0)
    return TankYear(delivered, lost, heated)


def _drawn_each_hour() -> list[float]:
    """m³ drawn in each hour, as scripts/tank_engine has them."""
    tank = KEPT["tank"]
    days = [tank["drawn_mean"] + tank["drawn_swing"] * math.cos(2 * math.pi * (day - 14) / 365) for day in range(365)]
    shares = [tank["drawn_hours"].get(str(hour), 0.0) for hour in range(24)]
    return [tank["volume"] * days[hour // 24] * shares[hour % 24] for hour in range(HOURS)]


def _heat_content() -> float:
    """J/(m³·K) of the engine's water, by its heat, its outlet's mean temperature and the volume that it was told to draw."""
    year = KEPT["years"]["12"]
    return float(-year["delivered"] / sum(_drawn_each_hour()) / (year["mean_outlet"] - KEPT["tank"]["cold"]))


@method("A year of drawing and heating a store by layers that move.", source="first-law")
def year_delivered(layers: Count) -> Joule:
    """Heat drawn in the year, J."""
    return tank_year(int(layers)).delivered


@method("A year of drawing and heating a store by layers that move.", source="first-law")
def year_lost(layers: Count) -> Joule:
    """Heat lost in the year, J."""
    return tank_year(int(layers)).lost


@method("A year of drawing and heating a store by layers that move.", source="first-law")
def year_heated(layers: Count) -> Joule:
    """Heat put in in the year, J."""
    return tank_year(int(layers)).heated


def _extrapolated(what: str) -> float:
    """The engine's number without what its nodes blend."""
    coarse, fine = (abs(KEPT["years"][nodes][what]) for nodes in ("6", "12"))
    return float(2 * fine - coarse)


def _spread(what: str) -> str:
    """What the last halving of the nodes changed, in per cent of the number."""
    coarse, fine = (abs(KEPT["years"][nodes][what]) for nodes in ("6", "12"))
    return f"{abs(fine - coarse) / _extrapolated(what):.2%}".replace("%", " %")


CHECKS = [
    Check(
        "The winter's store",
        f"{words} in a year, 12 moving layers, against an engine's nodes without their blending",
        law,
        {"layers": "12"},
        f"{_extrapolated(what) / 3.6e9:.5g} MWh",
        _spread(what),
        "what the engine's own last halving of its nodes changed",
        ENGINE,
        partial(_extrapolated, what),
    )
    for words, law, what in (
        ("heat drawn", year_delivered, "delivered"),
        ("heat lost", year_lost, "lost"),
        ("heat put in", year_heated, "heated"),
    )
]
