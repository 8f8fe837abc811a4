"""The winter's run against closed forms, SciPy's LSODA on the same equations, and degree-day arithmetic.

What a run does for 8,760 hours is asked here of its parts for some hours, and of a whole year whose weather is a sine
curve, of which everything is known in closed form.
"""

import math
from functools import cache, partial
from typing import Any

from calc.law import (
    Conductivity,
    Count,
    CubicMetre,
    DegreeDays,
    Factor,
    Fraction,
    Joule,
    JoulePerKelvin,
    Kelvin,
    Metre,
    Second,
    Watt,
    WattPerKelvin,
    method,
)
from calc.physics.winter import Winter
from calc.physics.winter_emitter import Curve, Emitter
from calc.physics.winter_fire import Burn, Habit
from calc.physics.winter_house import House, OnEmitters, OnSlab, Slab
from calc.physics.winter_plan import Away, Charging, Store, StoveRoom, Taps, WinterPlan
from calc.physics.winter_store import LayeredStore
from calc.physics.winter_weather import degree_days
from calc.tables.year import HOURS
from comparisons.check import Check, Published

CLOSED = Published(
    "By hand", "Closed form of the same balance", "2026", "see the comment at the check", "own arithmetic"
)
GAMMA = Published(
    "SciPy",
    "Regularized incomplete gamma function",
    "2026",
    "scipy.special.gammaincc",
    "numerical solution",
)
LSODA = Published("SciPy", "solve_ivp with LSODA on the same equations", "2026", "SciPy 1.18", "numerical solution")
ERF = Published(
    "SciPy",
    "Conduction between two half spaces",
    "2026",
    "quad of the heat flow at the middle",
    "numerical solution",
)
QUAD = Published("SciPy", "quad of the burn curve", "2026", "scipy.integrate.quad", "numerical solution")
ROOT = Published(
    "SciPy",
    "brentq on the emitter's mean excess",
    "2026",
    "scipy.optimize.brentq",
    "numerical solution",
)
SINE = Published(
    "By hand",
    "Degree-days of a sine curve, times the house's conductance",
    "2026",
    "see the comment at the check",
    "own arithmetic",
)
_STORE, _HOUSE, _YEAR = "The winter's store", "The winter's house and fire", "A winter as a whole"
WATER = 4.09e6  # J/(m³·K)


# --- Parts of a run, asked one question each ---


def _drawn_from(store: LayeredStore, volume: float, back: float) -> float:
    """Draw `volume` (m³) from the top while water of `back` (K) comes in below; the heat drawn, J."""
    heat = 0.0
    while volume > 1e-12:
        part = min(volume, store.volumes[0], store.layer, 1e-3)
        heat += store.sink(part, back)
        volume -= part
    return heat


@method("The store's water moves in slugs; what comes out is added up.", source="first-law")
def mean_drawn(volume: CubicMetre, layers: Count, start: Kelvin, back: Kelvin, drawn: CubicMetre) -> Kelvin:
    """Mean temperature in K of the water drawn from a store that was all at `start` (K)."""
    store = LayeredStore(volume, 1.8, WATER, start, int(layers), 0.0)
    return back + _drawn_from(store, drawn, back) / (drawn * WATER)


@method("The store stands and loses heat to its surroundings.", source="first-law")
def after_standing(volume: CubicMetre, loss: WattPerKelvin, start: Kelvin, around: Kelvin, time: Second) -> Kelvin:
    """Mean temperature in K after standing for `time` (s) in hourly steps."""
    store = LayeredStore(volume, 1.8, WATER, start, 12, 0.0)
    hours = round(time / 3600)
    for _ in range(hours):
        store.stand(math.exp(-3600 * loss / store.capacity), around)
    return store.mean


@method("Heat creeps from the hot upper half into the cold lower one.", source="first-law")
def crept(
    volume: CubicMetre,
    height: Metre,
    layers: Count,
    conductivity: Conductivity,
    top: Kelvin,
    bottom: Kelvin,
    time: Second,
) -> Joule:
    """Heat in J that has passed the middle after `time` (s)."""
    store = LayeredStore(volume, height, WATER, top, int(layers), conductivity)
    _drawn_from(store, volume / 2, bottom)
    for _ in range(round(time / 21_600)):
        store.conduct(21_600.0)
    below = list(zip(store.volumes, store.temperatures, strict=True))[len(store.volumes) // 2 :]
    return WATER * sum(part * (at - bottom) for part, at in below)


@method("A day of a store: drawn, left to stand, charged and drawn again.", source="first-law")
def drawn_after_a_day(volume: CubicMetre, layers: Count, steps: Count, conductivity: Conductivity) -> Kelvin:
    """Mean temperature in K of the last draw of `_DAY`, with so many steps an hour."""
    parts = 6 * int(steps)
    store = LayeredStore(volume, 1.8, WATER, 273.15 + 80, int(layers), conductivity)
    heat = 0.0
    for flow, inlet in _DAY:
        heat = 0.0
        for _ in range(parts):
            if flow > 0:
                _charged_with(store, flow * volume / parts, inlet)
            elif flow < 0:
                heat += _drawn_from(store, -flow * volume / parts, inlet)
            store.stand(math.exp(-3600 / steps * 5.0 / store.capacity), 288.15)
            store.conduct(3600 / steps)
    flow, inlet = _DAY[-1]
    return inlet + heat / (-flow * volume * WATER)


# Six hours each: share of the store moved (drawn is negative) and the temperature of what comes in, K.
_DAY = ((-0.6, 303.15), (0.0, 0.0), (0.5, 358.15), (0.0, 0.0), (-0.7, 303.15))


def _charged_with(store: LayeredStore, volume: float, inlet: float) -> None:
    while volume > 1e-12:
        part = min(volume, store.volumes[-1], store.layer, 1e-3)
        store.lift(part, inlet)
        volume -= part


@method("A cooling house in hourly steps.", source="first-law")
def cooled_house(
    conductance: WattPerKelvin, capacity: JoulePerKelvin, heat: Watt, indoor: Kelvin, outdoor: Kelvin, time: Second
) -> Kelvin:
    """Rooms in K after `time` (s) with `heat` (W) and nothing else."""
    house = OnEmitters(House(conductance, capacity, 0.0), 3600.0, indoor)
    for _ in range(round(time / 3600)):
        house.go(outdoor, 0.0, heat, math.inf)
    return house.room


@method("A house on a warm slab in hourly steps, the pipes idle.", source="first-law")
def cooled_on_slab(
    conductance: WattPerKelvin,
    capacity: JoulePerKelvin,
    slab_capacity: JoulePerKelvin,
    up: WattPerKelvin,
    down: WattPerKelvin,
    ground: Kelvin,
    slab: Kelvin,
    indoor: Kelvin,
    outdoor: Kelvin,
    time: Second,
) -> Kelvin:
    """Rooms in K after `time` (s), the slab beginning at `slab` (K) and nothing else heating."""
    house = OnSlab(House(conductance, capacity, 0.0), Slab(slab_capacity, up, down, ground), 3600.0, indoor, outdoor)
    house.heated = slab
    for _ in range(round(time / 3600)):
        house.go(outdoor, 0.0, 0.0, math.inf)
    return house.room


@method("The share of a load that is burnt, by its curve.", source="definition")
def burnt_share(peak: Factor, part: Fraction) -> Fraction:
    """Share of the heat given off when this part of the burn is over."""
    return Burn(1.0, 1.0, 1.0, peak).burnt(part)


@method("An emitter's output from its supply, by its table.", source="first-law")
def emitter_output(output: Watt, mean_excess: Factor, exponent: Factor, flow: WattPerKelvin, excess: Factor) -> Watt:
    """Output in W at a supply so many K above the room."""
    return Emitter(Curve(output, mean_excess, exponent, flow, None)).full_output(excess)


@cache
def sine_year(mean: float, swing: float) -> tuple[float, ...]:
    """Hourly temperatures in K: a sine curve over the year, coldest in mid-January, and none over the day."""
    return tuple(mean - swing * math.cos(2 * math.pi * (hour // 24 - 14) / 365) for hour in range(HOURS))


@method("The weather's own degree-days, day by day.", source="degree-day-method")
def sine_degree_days(mean: Kelvin, swing: Factor, base: Kelvin) -> DegreeDays:
    """Degree-days in K·day of a year that is a sine curve."""
    return degree_days(sine_year(mean, swing), base)


@method("A whole run with an ample store and fire, in weather that is a sine curve.", source="degree-day-method")
def rooms_heat(
    conductance: WattPerKelvin, mean: Kelvin, swing: Factor, base: Kelvin, layers: Count, steps: Count
) -> Joule:
    """Heat in J that the emitters gave in a year, with so many steps an hour and all losses of the store outside the house."""
    plan = ample_plan(conductance, base, int(layers))._replace(steps_an_hour=int(steps))
    return sum(month.rooms_heat for month in Winter(plan, sine_year(mean, swing)).months())


def ample_plan(conductance: float, base: float, layers: int) -> WinterPlan:
    """A house that is never cold: a large store, a large fire lit at any hour, a stove that gives its room nothing."""
    indoor = 293.15
    return WinterPlan(
        indoor=indoor,
        house=House(conductance, 40e6, conductance * (indoor - base)),
        slab=None,
        emitter=Curve(20_000.0, 30.0, 1.3, 2_000.0, None),
        store=Store(5.0, 2.0, WATER, layers, 1.0, 3.0, 288.15, False, 358.15),
        charging=Charging(328.15, 4_000.0, 373.15),
        burn=Burn(4 * 3600.0, 30_000.0, 0.0, 1.5),
        habit=Habit(0, 23, 24, True),
        taps=Taps(0.0, (1 / 24,) * 24, 283.15, 323.15, 5.0),
        room=StoveRoom(150.0, 8e6, 300.0),
        away=Away(0, 0, 283.15),
        backup=False,
    )


# --- The same by others ---


def _gamma_mean(layers: int, drawn: float, start: float, back: float) -> float:
    from scipy.integrate import quad
    from scipy.special import gammaincc

    share = quad(lambda at: gammaincc(layers, layers * at), 0, drawn)[0] / drawn
    return float(back + (start - back) * share)


def _crept_by_erf(volume: float, height: float, conductivity: float, difference: float, time: float) -> float:
    from scipy.integrate import quad

    def flow(at: float) -> float:
        return conductivity * volume / height * difference / math.sqrt(4 * math.pi * conductivity / WATER * at)

    return float(quad(flow, 0, time)[0])


def _day_extrapolated(volume: float, conductivity: float) -> float:
    """From 240 and 480 layers to ever finer ones: what layers that stand still miss halves with their thickness."""
    coarse, fine = (_day_by_lsoda(volume, layers, conductivity) for layers in (240, 480))
    return 2 * fine - coarse


@cache
def _day_by_lsoda(volume: float, layers: int, conductivity: float) -> float:
    """Layers that stand still, water stepping through them: dT/dt of each by flow, conduction and loss."""
    import numpy as np
    from scipy.integrate import solve_ivp

    layer, thick = volume / layers, 1.8 / layers
    link = conductivity * volume / 1.8 / thick / (layer * WATER)
    state = np.full(layers + 1, 353.15)  # the last entry adds up what was drawn
    drawn = 0.0
    for flow, inlet in _DAY:
        pace = flow / (6 * 3600) * volume / layer

        def slope(_: float, at: Any, pace: float = pace, inlet: float = inlet) -> Any:
            temperatures = at[:-1]
            rate = -5.0 / (volume * WATER) * (temperatures - 288.15)
            between = link * np.diff(temperatures)
            rate[:-1] += between
            rate[1:] -= between
            if pace > 0:
                rate += pace * (np.concatenate([[inlet], temperatures[:-1]]) - temperatures)
            else:
                rate -= pace * (np.concatenate([temperatures[1:], [inlet]]) - temperatures)
            return np.append(rate, temperatures[0])

        state[-1] = 0.0
        state = solve_ivp(slope, (0, 6 * 3600), state, "LSODA", rtol=1e-7, atol=1e-7).y[:, -1]
        drawn = float(state[-1]) / (6 * 3600)
    return drawn


def _slab_by_lsoda(hours: float) -> float:
    from scipy.integrate import solve_ivp

    def slope(_: float, at: list[float]) -> list[float]:
        slab, room = at
        up = 900.0 * (slab - room)
        return [(-up - 40.0 * (slab - 283.15)) / 25e6, (up - 250.0 * (room - 263.15)) / 30e6]

    return float(solve_ivp(slope, (0, hours * 3600), [303.15, 294.15], "LSODA", rtol=1e-10, atol=1e-10).y[1, -1])


def _burnt_by_quad(peak: float, part: float) -> float:
    from scipy.integrate import quad

    slope = 1 - 1 / peak

    def curve(at: float) -> float:
        return peak * min(1.0, at / slope, (1 - at) / slope)

    return float(quad(curve, 0, part, points=[slope, 1 - slope], epsabs=1e-12)[0])


def _output_by_root(output: float, mean_excess: float, exponent: float, flow: float, excess: float) -> float:
    from scipy.optimize import brentq

    def short(mean: float) -> float:
        return float(excess - mean - output * (mean / mean_excess) ** exponent / (2 * flow))

    return float(output * (brentq(short, 1e-9, excess) / mean_excess) ** exponent)


def _number(value: float, unit: str) -> str:
    return f"{value:.8g} {unit}"


def _sine_degree_days(mean: float, swing: float, base: float) -> float:
    """Integral of base - mean + swing*cos over the part of the year where it is above 0, K·day."""
    lacking = base - mean
    return 365 / math.pi * (lacking * math.acos(-lacking / swing) + math.sqrt(swing**2 - lacking**2))


_ROUND = "rounding alone; the step is exact"
_FLUSH = {"volume": "1500 L", "start": "80 °C", "back": "30 °C"}
_SINE = {"mean": "8 °C", "swing": "14"}

CHECKS = [
    # Plug flow: 0.6 of the store drawn comes out as it was, all of it.
    Check(
        _STORE,
        "plug flow, before the cold water arrives",
        mean_drawn,
        {**_FLUSH, "layers": "12", "drawn": "900 L"},
        "80 °C",
        "1e-6 C°",
        _ROUND,
        CLOSED,
    ),
    # And 1.2 of it: 1500 L at 80 °C, then 300 L at 30 °C: (1500·80 + 300·30)/1800 = 71.6667.
    Check(
        _STORE,
        "plug flow, a fifth more than the store holds",
        mean_drawn,
        {**_FLUSH, "layers": "12", "drawn": "1800 L"},
        "71.666667 °C",
        "0.01 C°",
        "the first liters of the second filling have blended with its last",
        CLOSED,
    ),
    # One layer is a stirred tank: 30 + 50·(1 - e^-0.6)/0.6.
    Check(
        _STORE,
        "a stirred tank of one layer",
        mean_drawn,
        {**_FLUSH, "layers": "1", "drawn": "900 L"},
        _number(303.15 - 273.15 + 50 * (1 - math.exp(-0.6)) / 0.6, "°C"),
        "1e-4 C°",
        _ROUND,
        CLOSED,
    ),
    *(
        Check(
            _STORE,
            f"{layers} stirred stages in a row, half the store drawn",
            mean_drawn,
            {**_FLUSH, "layers": str(layers), "drawn": "750 L"},
            theirs,
            within,
            because,
            GAMMA,
            partial(_gamma_mean, layers, 0.5, 353.15, 303.15),
        )
        for layers, theirs, within, because in (
            (1, "69.346934 °C", "0.001 C°", "the same tank"),
            (200, "80 °C", "0.001 C°", "both come to plug flow with more layers"),
        )
    ),
    # 15 + 65·exp(-48 h · 5 W/K / (1.5 m³ · 4.09 MJ/(m³·K))).
    Check(
        _STORE,
        "two days of standing",
        after_standing,
        {"volume": "1500 L", "loss": "5 W/K", "start": "80 °C", "around": "15 °C", "time": "48 h"},
        _number(15 + 65 * math.exp(-48 * 3600 * 5 / (1.5 * 4.09e6)), "°C"),
        "1e-6 C°",
        _ROUND,
        CLOSED,
    ),
    Check(
        _STORE,
        "heat through the middle in a day, 24 layers",
        crept,
        {
            "volume": "1500 L",
            "height": "1.8 m",
            "layers": "24",
            "conductivity": "2 W/m/K",
            "top": "80 °C",
            "bottom": "30 °C",
            "time": "24 h",
        },
        "19.7627 MJ",
        "5 %",
        "layers of 7 cm, steps of six hours",
        ERF,
        partial(_crept_by_erf, 1.5, 1.8, 2.0, 50.0, 86_400.0),
    ),
    # It closes in with more layers and with shorter steps: a run has 12 layers and moves an hour's water in one step.
    *(
        Check(
            _STORE,
            f"a day of drawing and charging, {layers} moving layers and {steps} steps an hour, against many layers that "
            "stand still",
            drawn_after_a_day,
            {"volume": "1500 L", "layers": str(layers), "steps": str(steps), "conductivity": "3 W/m/K"},
            "78.912 °C",
            within,
            because,
            LSODA,
            partial(_day_extrapolated, 1.5, 3.0),
        )
        for layers, steps, within, because in (
            (3, 4, "0.9 C°", "layers of 60 cm are thicker than the boundary"),
            (6, 4, "0.08 C°", "layers of 30 cm"),
            (12, 1, "0.13 C°", "the boundary creeps once an hour"),
            (12, 4, "0.03 C°", "the boundary creeps each quarter of an hour"),
            (96, 16, "0.015 C°", "what extrapolating from 240 and 480 layers leaves open"),
        )
    ),
    # -10 + 31·e^(-100 h · 250/40e6) + 2000/250·(1 - e^…).
    Check(
        _HOUSE,
        "a house cooling for 100 hours, with some heat",
        cooled_house,
        {
            "conductance": "250 W/K",
            "capacity": "4e7 J/K",
            "heat": "2000 W",
            "indoor": "21 °C",
            "outdoor": "-10 °C",
            "time": "100 h",
        },
        _number(-10 + 31 * math.exp(-2.25) + 8 * (1 - math.exp(-2.25)), "°C"),
        "1e-6 C°",
        _ROUND,
        CLOSED,
    ),
    *(
        Check(
            _HOUSE,
            f"a house on a warm slab, {hours} hours later",
            cooled_on_slab,
            {
                "conductance": "250 W/K",
                "capacity": "3e7 J/K",
                "slab_capacity": "2.5e7 J/K",
                "up": "900 W/K",
                "down": "40 W/K",
                "ground": "10 °C",
                "slab": "30 °C",
                "indoor": "21 °C",
                "outdoor": "-10 °C",
                "time": f"{hours} h",
            },
            theirs,
            "0.001 C°",
            "both are exact to their last printed digit",
            LSODA,
            partial(_slab_by_lsoda, hours),
        )
        for hours, theirs in ((6, "19.65724 °C"), (48, "5.38 °C"))
    ),
    *(
        Check(
            _HOUSE,
            f"a burn with a peak of {peak}, {part:.0%} of its time",
            burnt_share,
            {"peak": str(peak), "part": f"{part:.0%}"},
            theirs,
            "0.001 %",
            "the same curve, summed",
            QUAD,
            partial(_burnt_by_quad, peak, part),
        )
        for peak, part, theirs in ((1.5, 0.25, "14.0625 %"), (2.0, 0.75, "87.5 %"))
    ),
    # A peak of 4 comes in half the time: at 25 % of it half of the heat is out.
    Check(
        _HOUSE,
        "a burn with a peak of 4, 25 % of its time",
        burnt_share,
        {"peak": "4", "part": "25 %"},
        "50 %",
        "0.001 %",
        _ROUND,
        CLOSED,
    ),
    *(
        Check(
            _HOUSE,
            f"baseboard at {excess} K over the room",
            emitter_output,
            {"output": "12 kW", "mean_excess": "40", "exponent": "1.4", "flow": "1000 W/K", "excess": str(excess)},
            theirs,
            "0.02 %",
            "the table is straight between entries a quarter of a degree apart",
            ROOT,
            partial(_output_by_root, 12e3, 40.0, 1.4, 1000.0, excess),
        )
        for excess, theirs in ((8.1, "1.156495 kW"), (46.4, "12.13903 kW"))
    ),
    Check(
        _YEAR,
        "the degree-days of a sine curve",
        sine_degree_days,
        {**_SINE, "base": "16 °C"},
        _number(_sine_degree_days(8, 14, 16), "K·day"),
        "0.01 %",
        "365 days in place of an integral",
        SINE,
    ),
    *(
        Check(
            _YEAR,
            f"heat for the rooms with {layers} layers and {steps} steps an hour, against degree-days",
            rooms_heat,
            {"conductance": "250 W/K", **_SINE, "base": "16 °C", "layers": str(layers), "steps": str(steps)},
            _number(250 * 86_400 * _sine_degree_days(8, 14, 16) / 3.6e9, "MWh"),
            "0.5 %",
            "warm walls carry some heat from days that need none to days that do",
            SINE,
        )
        for layers, steps in ((1, 1), (12, 1), (12, 2))
    ),
]
