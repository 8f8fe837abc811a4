"""What scripts/bench winter measures: a store by moving layers, beside SciPy's LSODA on layers that stand still.

Both are given the same January: in the first half of each hour the same water is charged, in the second the same is
drawn, about as much as a house of 7 kW with two loads a day moves. What is compared is the water drawn in each hour.
The reference is LSODA with ten and twenty times finer layers, extrapolated from the two, since what layers that stand
still miss halves with their thickness.
"""

from __future__ import annotations

import math
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
from scipy.integrate import solve_ivp

import measuring
import server
from calc.__main__ import weather_text
from calc.answer import answer
from calc.physics import winter_run, winter_weather
from calc.physics.winter_store import LayeredStore

WATER = winter_run.HEAT_CONTENT
VOLUME, HEIGHT, CONDUCTIVITY, LOSS, AROUND = 3.0, 1.9, 1.5, 5.3, 293.15
HOURS = 31 * 24
A_YEAR = 365 / 31
GUIDE, WORKSHEET, FIELD, EDITS = "guides/winter/", "winter-run", "store_volume", 12
# Once the box takes text: the sweep of tanks from its first point to its last, and once more until it is stopped.
SWEEP_CLOCK = """
globalThis.clock = { live: 0 };
addEventListener("DOMContentLoaded", async () => {
  const sheet = document.querySelector('[data-worksheet="WORKSHEET"]');
  const stop = sheet.querySelector("[data-ss-halt]");
  const rows = () => sheet.querySelectorAll('[data-slot="sweep"] tbody tr').length;
  let began;
  const until = async (is) => {
    while (!is()) await new Promise((next) => setTimeout(next, 2));
    return performance.now() - began;
  };
  const start = () => {
    began = performance.now();
    sheet.querySelector("[data-ss-sweep]").click();
  };
  await until(() => sheet.querySelector('input[name="FIELD"]:enabled'));
  start();
  const first = await until(() => rows() > 0);
  const all = await until(() => stop.hidden);
  const points = rows();
  start();
  await until(() => rows() < points && rows() > 1);
  began = performance.now();
  stop.click();
  const stopped = await until(() => stop.hidden);
  globalThis.clock = { live: all, answers: [first, all / points, stopped] };
});
"""
SHOWN = '[data-slot="results"]'  # ten gallons more leave the headline, whole loads, as it is, but no heat of the year


class Hour(NamedTuple):
    """What an hour moves: m³ charged in its first half, m³ drawn in its second, and how warm each comes in, K."""

    charged: float
    hot: float
    drawn: float
    back: float


def report(site: Path) -> Iterator[str]:
    """The lines to print, each when it is known."""
    winter_weather.fetch_with(weather_text)
    hours = january()
    coarse, fine = (by_lsoda(hours, layers, 1e-6)[0] for layers in (120, 240))
    reference = [2 * better - good for good, better in zip(coarse, fine, strict=True)]
    yield f"A January of {HOURS} hours, scaled to a year; against LSODA extrapolated from 120 and 240 layers"
    yield f"{'':34}{'seconds a year':>16}{'error, rms':>14}{'mean':>10}"
    for layers in (6, 12, 24):
        yield _line(f"moving layers, {layers}", by_layers(hours, layers), reference)
    for layers in (12, 24, 60):
        for tolerance in (1e-3, 1e-5):
            yield _line(f"SciPy LSODA, {layers} layers, {tolerance:g}", by_lsoda(hours, layers, tolerance), reference)
    yield ""
    yield f"{'A year of the worked example, desktop':48}{min(_whole_year() for _ in range(5)) * 1000:8.0f} ms"
    yield from in_the_browser(site)


def january() -> list[Hour]:
    """The water of each hour: two loads a day, and a house that needs more by night and in a cold spell."""
    hours = []
    for hour in range(HOURS):
        lit = hour % 24 in (6, 7, 8, 9, 14, 15, 16, 17)
        need = 6_000 + 1_500 * math.cos(2 * math.pi * (hour - 5) / 24) + 1_500 * math.cos(2 * math.pi * hour / 170)
        charged = 17_500 * 3600 / (WATER * 38) if lit else 0.0
        hours.append(Hour(charged, 353.15, need * 3600 / (WATER * 30), 308.15))
    return hours


def by_layers(hours: list[Hour], layers: int) -> tuple[list[float], float]:
    """Temperature of the water drawn in each hour, K, and the seconds that took, by moving layers."""
    began = time.process_time()
    store = LayeredStore(VOLUME, HEIGHT, WATER, 333.15, layers, CONDUCTIVITY)
    half = math.exp(-1800 * LOSS / store.capacity)
    drawn = []
    for at, hour in enumerate(hours):
        _move(store.lift, store, -1, hour.charged, hour.hot)
        store.stand(half, AROUND)
        drawn.append(hour.back + _move(store.sink, store, 0, hour.drawn, hour.back) / (WATER * hour.drawn))
        store.stand(half, AROUND)
        if at % 6 == 0:
            store.conduct(6 * 3600.0)
    return drawn, time.process_time() - began


def _move(
    how: Callable[[float, float], float], store: LayeredStore, end: int, volume: float, temperature: float
) -> float:
    heat = 0.0
    while volume > 1e-12:
        part = min(volume, store.volumes[end], store.layer)
        heat += how(part, temperature)
        volume -= part
    return heat


def by_lsoda(hours: list[Hour], layers: int, tolerance: float) -> tuple[list[float], float]:
    """The same by SciPy: each layer stands still and the water steps through it, its Jacobian banded."""
    began = time.process_time()
    layer, thick = VOLUME / layers, HEIGHT / layers
    link = CONDUCTIVITY * VOLUME / HEIGHT / thick / (layer * WATER)
    loss = LOSS / (VOLUME * WATER)
    state = np.full(layers + 1, 333.15)
    state[-1] = 0.0  # what was drawn, K·s
    drawn = []

    def run(state: Any, pace: float, inlet: float) -> Any:
        def slope(_: float, at: Any) -> Any:
            rate = np.empty_like(at)
            inner = at[:-1]
            rate[:-1] = -loss * (inner - AROUND)
            between = link * (inner[1:] - inner[:-1])
            rate[:-2] += between
            rate[1:-1] -= between
            if pace > 0:
                rate[0] += pace * (inlet - inner[0])
                rate[1:-1] += pace * (inner[:-1] - inner[1:])
            elif pace < 0:
                rate[layers - 1] -= pace * (inlet - inner[-1])
                rate[:-2] -= pace * (inner[1:] - inner[:-1])
            rate[-1] = inner[0]
            return rate

        return solve_ivp(slope, (0, 1800), state, "LSODA", rtol=tolerance, atol=tolerance * 100).y[:, -1]

    for hour in hours:
        state = run(state, hour.charged / 1800 / layer, hour.hot)
        state[-1] = 0.0
        state = run(state, -hour.drawn / 1800 / layer, hour.back)
        drawn.append(float(state[-1]) / 1800)
    return drawn, time.process_time() - began


def _line(name: str, done: tuple[list[float], float], reference: list[float]) -> str:
    drawn, seconds = done
    apart = [ours - theirs for ours, theirs in zip(drawn, reference, strict=True)]
    rms = math.sqrt(sum(difference * difference for difference in apart) / len(apart))
    mean = sum(apart) / len(apart)
    return f"{name:34}{seconds * A_YEAR:14.3f} s{rms:12.3f} K{mean:8.3f} K"


def _whole_year() -> float:
    """Seconds of processor time for the worked example, its run and its words, nothing of it known before."""
    winter_run.year.function.cache_clear()  # type: ignore[attr-defined]
    began = time.process_time()
    answer(WORKSHEET, {})
    return time.process_time() - began


def in_the_browser(site: Path) -> Iterator[str]:
    """From an edit of the tank to its winter, drawn, in the page."""
    typing, sweeping = (
        measuring.clock_of(script, WORKSHEET, FIELD, SHOWN, EDITS) for script in (measuring.CLOCK, SWEEP_CLOCK)
    )
    with server.serving(site, encodings=("gzip",)) as here:
        seen = measuring.visit(here, GUIDE, typing, 1280, lambda seen: len(seen["answers"]) >= EDITS)
        swept = measuring.visit(here, GUIDE, sweeping, 1280, lambda seen: bool(seen["live"]))
    times = sorted(seen.answers)
    yield f"{'From an edit to its winter, in the page':48}{times[len(times) // 2]:8.0f} ms (fastest {times[0]:.0f})"
    first, point, stopped = swept.answers
    yield f"{'Its sweep of tanks in the page, the first':48}{first:8.0f} ms (each of them {point:.0f})"
    yield f"{'From “Stop” to its end':48}{stopped:8.0f} ms"
