"""The room with the stove: its steps through time against SciPy's, the doorway against Bernoulli summed over its height.

Contested: how much a doorway passes on. Open building-simulation libraries take a discharge coefficient of 0.65 or
0.78; a formula of the passive-solar handbooks gives a third more than 0.65 does, because in layered rooms the air at
the lintel is warmer than the room's mean. The smaller one is used here: it says sooner that a room gets too warm.
"""

from functools import partial
from typing import Any

from calc.law import Law
from calc.physics import room, store, warming
from calc.units import BTU, FAHRENHEIT_DEGREE, HOUR
from comparisons.check import At, Check, Published

MARCH = Published("SciPy", "solve_ivp, two heat capacities with one link", "2025", "SciPy 1.18", "numerical solution")
ROOT = Published(
    "SciPy",
    "brentq on the room's balance, the doorway by quad",
    "2025",
    "SciPy 1.18",
    "numerical solution",
)
SUM = Published(
    "SciPy",
    "quad of Bernoulli's speed over the upper half of a door",
    "2025",
    "SciPy 1.18",
    "numerical solution",
)
HAND = Published("By hand", "Worked by hand", "2025", "see the comment at the check", "own arithmetic")
SOLAR = Published(
    "Los Alamos National Laboratory",
    "Passive solar design: heat through a doorway, 4.6·w·(h·ΔT)^1.5 Btu/h in ft and °F",
    "1983",
    "doorway convection",
    "from memory",
)
ISO_13790 = Published(
    "ISO",
    "ISO 13790, Energy performance of buildings, as coded in the open Modelica Buildings library",
    "2008",
    "table 12; 3.45 and 9.1 W/(m²·K), 4.5 and 2.5 × floor area",
    "standard",
)
ISO_52016 = Published(
    "ISO",
    "ISO 52016-1, Energy needs for heating and cooling",
    "2017",
    "10 kJ/(m²·K) for air and furniture",
    "from memory",
)
AIR = Published("CoolProp", "Dry air at 20 °C and 101.325 kPa", "2025", "version 8.0.0", "independent library")

_TOPIC = "The room with the stove"
_ROUNDED = "the last printed digit is rounded"


def _kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) * FAHRENHEIT_DEGREE


def _two_masses(hours: float) -> float:
    """K of the air after some hours, in Btu, °F and h: 1500 and 9000 Btu/°F, link 1200, loss 400 to 10 °F."""
    from scipy.integrate import solve_ivp

    def rates(_: float, now: list[float]) -> list[float]:
        air, walls = now
        return [(1200 * (walls - air) + 400 * (10 - air)) / 1500, 1200 * (air - walls) / 9000]

    return _kelvin(float(solve_ivp(rates, (0, hours), [70, 80], rtol=1e-10, atol=1e-10).y[0, -1]))


def _march(heat: float, seconds: float, limit: float | None = None) -> Any:
    """The kitchen of `_KITCHEN` by LSODA, the doorway by its air and its difference of the moment."""
    from scipy.integrate import solve_ivp

    per_degree = BTU / HOUR / FAHRENHEIT_DEGREE
    house = _kelvin(68)

    def rates(_: float, now: list[float]) -> list[float]:
        air, walls = now
        passed = 33 * per_degree * (air - _kelvin(28)) + 100 * per_degree * (air - house)
        flow = 0.65 / 3 * 0.9 * 2.0 * (9.80665 * 2.0 * abs(air - house) / house) ** 0.5
        passed += flow * 90_000 / (287.055 * house) * 1006 * (air - house)
        to_walls = 360 * per_degree * (air - walls)
        capacity = BTU / FAHRENHEIT_DEGREE
        return [(heat * BTU / HOUR - passed - to_walls) / (108 * capacity), to_walls / (1780 * capacity)]

    def there(_: float, now: list[float]) -> float:
        return now[0] - _kelvin(limit or 1000)

    there.terminal = True  # type: ignore[attr-defined]
    return solve_ivp(rates, (0, seconds), [house, house], "LSODA", events=there, rtol=1e-10, atol=1e-10)


def _kitchen(heat: float, hours: float) -> float:
    return float(_march(heat, hours * HOUR).y[0, -1])


def _kitchen_time(heat: float, limit: float) -> float:
    return float(_march(heat, 1000 * HOUR, limit).t_events[0][0])


def _door(width: float, height: float, difference: float, house: float) -> float:
    from scipy.integrate import quad

    speed = quad(lambda above: (2 * 9.80665 * difference / house * above) ** 0.5, 0, height / 2)[0]
    return float(0.65 * width * speed)


def _steady(heat: float, loss: float, outdoor: float, partition: float, house: float) -> float:
    """Room in K with a doorway 0.9 m by 2 m at 0.9 bar, which is 1.0695 kg/m³ at 20 °C."""
    from scipy.optimize import brentq

    def lacking(at: float) -> float:
        passed = _door(0.9, 2.0, abs(at - house), house) * 90_000 / (287.055 * house) * 1006 * (at - house)
        return loss * (at - outdoor) + partition * (at - house) + passed - heat

    return float(brentq(lacking, outdoor, 400.0))


def _air() -> float:
    from CoolProp.CoolProp import PropsSI

    return float(0.2 * PropsSI("D", "T", 293.15, "P", 101325, "Air") * PropsSI("C", "T", 293.15, "P", 101325, "Air"))


def _hand(law: Law, given: dict[str, str | At], theirs: str, where: str, within: str = "0.001 %") -> Check:
    return Check(_TOPIC, where, law, given, theirs, within, "worked to the digits shown", HAND)


# 1500 and 9000 Btu/°F, link 1200 Btu/(h·°F), 400 of them to 10 °F outside; nothing goes to the house.
_SHUT: dict[str, str | At] = {
    "heat": "0 W",
    "conductance": "400 Btu/(h·°F)",
    "outdoor": "10 °F",
    "partition": "0 W/K",
    "house": "68 °F",
    "width": "0 ft",
    "height": "6 ft",
    "site_pressure": "100 kPa",
    "link": "1200 Btu/(h·°F)",
    "air_capacity": "1500 Btu/°F",
    "wall_capacity": "9000 Btu/°F",
    "air": "70 °F",
    "walls": "80 °F",
}
_KITCHEN: dict[str, str | At] = {
    "conductance": "33 Btu/(h·°F)",
    "outdoor": "28 °F",
    "partition": "100 Btu/(h·°F)",
    "house": "68 °F",
    "width": "0.9 m",
    "height": "2 m",
    "site_pressure": "90 kPa",
    "link": "360 Btu/(h·°F)",
    "air_capacity": "108 Btu/°F",
    "wall_capacity": "1780 Btu/°F",
    "air": "68 °F",
    "walls": "68 °F",
}
_STEADY: dict[str, str | At] = {
    "conductance": "40 W/K",
    "outdoor": "-10 °C",
    "partition": "60 W/K",
    "house": "20 °C",
    "width": "0.9 m",
    "height": "2 m",
    "site_pressure": "90 kPa",
}
# start and steady °F, loss Btu/(h·°F), capacity Btu/°F, hours, and the temperature of the exponential
_ONE_MASS = (
    (70, 10, 400, 6000, 6, "50.219 °F"),
    (70, 40, 400, 6000, 6, "60.110 °F"),
    (68, 71.4286, 280, 3000, 3, "68.837 °F"),
    (60, 105.7143, 350, 12000, 5, "66.203 °F"),
)

# Btu/h, hours, air; and Btu/h, limit °F, time.
_AFTER = ((10_000, 0.25, "76.446 °F"), (10_000, 4, "78.682 °F"), (12_000, 4, "80.519 °F"), (6_000, 24, "76.087 °F"))
_TIMES = ((10_000, 77, "0.3682 h"), (10_000, 79, "5.1226 h"), (12_000, 80, "2.6403 h"))

CHECKS = [
    # steady + (start − steady)·e^(−hours·loss/capacity): the first 10 + 60·e^−0.4 = 10 + 60·0.670320
    *(
        _hand(
            store.temperature_after,
            {
                "start": f"{start} °F",
                "heading_for": f"{steady} °F",
                "elapsed": f"{hours} h",
                "time_constant": f"{capacity / loss} h",
            },
            theirs,
            f"{start} °F towards {steady} °F, {hours} h",
            "0.001 F°",
        )
        for start, steady, loss, capacity, hours, theirs in _ONE_MASS
    ),
    # 12.5 h × ln(68/55) = 2.6522 h
    _hand(
        store.time_to_reach,
        {"start": "68 °F", "target": "55 °F", "heading_for": "0 °F", "time_constant": "12.5 h"},
        "2.6522 h",
        "68 °F falls to 55 °F at 0 °F outside",
        "0.01 %",
    ),
    # 15 h × ln(60/50) = 2.7348 h
    _hand(
        store.time_to_reach,
        {"start": "60 °F", "target": "70 °F", "heading_for": "120 °F", "time_constant": "15 h"},
        "2.7348 h",
        "60 °F rises to 70 °F",
        "0.01 %",
    ),
    *(
        Check(
            _TOPIC,
            f"air of a room of two masses, doors shut, after {hours} h",
            warming.room_after,
            _SHUT | {"elapsed": f"{hours} h"},
            theirs,
            "0.001 F°",
            _ROUNDED,
            MARCH,
            partial(_two_masses, hours),
        )
        for hours, theirs in ((1, "64.628 °F"), (4, "58.380 °F"), (12, "47.896 °F"))
    ),
    *(
        Check(
            _TOPIC,
            f"{heat:,} Btu/h into a kitchen with an open door, after {hours} h",
            warming.room_after,
            _KITCHEN | {"heat": f"{heat} Btu/h", "elapsed": f"{hours} h"},
            theirs,
            "0.01 F°",
            "each step may err by 0.005 K",
            MARCH,
            partial(_kitchen, heat, hours),
        )
        for heat, hours, theirs in _AFTER
    ),
    *(
        Check(
            _TOPIC,
            f"{heat:,} Btu/h, from 68 to {limit} °F with an open door",
            warming.time_to_limit,
            _KITCHEN | {"heat": f"{heat} Btu/h", "limit": f"{limit} °F"},
            theirs,
            "0.5 %",
            "an error of 0.005 K while the room warms by a degree in an hour",
            MARCH,
            partial(_kitchen_time, heat, limit),
        )
        for heat, limit, theirs in _TIMES
    ),
    _hand(
        warming.time_to_limit,
        _KITCHEN | {"heat": "10000 Btu/h", "air": "80 °F", "limit": "78 °F"},
        "0 s",
        "already above it",
        "0 s",
    ),
    Check(
        _TOPIC,
        "door 0.9 m by 2 m, 5 K",
        room.doorway_flow,
        {"width": "0.9 m", "height": "2 m", "difference": "5 K", "house": "20 °C"},
        "0.22557 m³/s",
        "0.01 %",
        _ROUNDED,
        SUM,
        partial(_door, 0.9, 2.0, 5.0, 293.15),
    ),
    # 3 ft × 4.6 × (6.67 ft × 5 °F)^1.5 = 2657 Btu/h for 5 °F
    Check(
        _TOPIC,
        "door 3 ft by 6.67 ft, 5 °F",
        room.doorway_conductance,
        {
            "doorway_flow": At(
                room.doorway_flow,
                {"width": "3 ft", "height": "6.67 ft", "difference": "5 F°", "house": "68 °F"},
            ),
            "site_pressure": "101.325 kPa",
            "house": "68 °F",
        },
        "531 Btu/(h·°F)",
        "33 %",
        "measured coefficients run from 0.4 to 0.8, a third about their middle",
        SOLAR,
    ),
    Check(
        _TOPIC,
        "0.2 m³/s of room air",
        room.doorway_conductance,
        {"doorway_flow": "0.2 m³/s", "site_pressure": "101.325 kPa", "house": "20 °C"},
        "242.3 W/K",
        "0.1 %",
        "real air is within 0.1 % of the ideal gas taken here",
        AIR,
        _air,
    ),
    *(
        Check(
            _TOPIC,
            f"{heat} W into a room beside the house at 20 °C, −10 °C outside",
            room.steady_room,
            {"heat": f"{heat} W"} | _STEADY,
            theirs,
            "0.005 K",
            _ROUNDED,
            ROOT,
            partial(_steady, heat, 40, 263.15, 60, 293.15),
        )
        for heat, theirs in ((3000, "25.185 °C"), (0, "16.162 °C"), (8000, "33.595 °C"))
    ),
    _hand(room.rise_above, {"room": "80 °F", "without": "66 °F"}, "14 F°", "80 °F over 66 °F"),
    _hand(room.difference_to_house, {"room": "75 °F", "house": "68 °F"}, "7 F°", "room warmer"),
    _hand(room.difference_to_house, {"room": "61 °F", "house": "68 °F"}, "7 F°", "room cooler"),
    _hand(
        room.all_losses,
        {"conductance": "40 W/K", "partition": "60 W/K", "doorway": "250 W/K"},
        "350 W/K",
        "40, 60 and 250 W/K",
    ),
    # (60 + 250)·(25 − 20)
    _hand(
        room.heat_passed_on,
        {"partition": "60 W/K", "doorway": "250 W/K", "room": "25 °C", "house": "20 °C"},
        "1550 W",
        "5 K warmer than the house",
    ),
    # 40·(26 − (−10)) + (60 + 250)·(26 − 20)
    _hand(
        room.room_can_use,
        {
            "conductance": "40 W/K",
            "limit": "26 °C",
            "outdoor": "-10 °C",
            "partition": "60 W/K",
            "doorway": "250 W/K",
            "house": "20 °C",
        },
        "3300 W",
        "held at 26 °C",
    ),
    Check(
        _TOPIC,
        "20 m² of floor",
        room.air_capacity,
        {"area": "20 m²"},
        "200000 J/K",
        "0.001 %",
        "a product of two printed numbers",
        ISO_52016,
    ),
    Check(
        _TOPIC,
        "20 m² of a light building",
        room.wall_capacity,
        {"area": "20 m²", "capacity_per_area": "110000 J/(m²·K)"},
        "2200000 J/K",
        "0.001 %",
        "a product of two printed numbers",
        ISO_13790,
    ),
    # 100 m²: 3.45 × 4.5 × 100 = 1552.5 in series with 9.1 × 2.5 × 100 = 2275 W/K
    Check(
        _TOPIC,
        "100 m² of a light building",
        room.link_to_walls,
        {"area": "100 m²", "mass_over_floor": "2.5"},
        "922.80 W/K",
        "0.005 %",
        _ROUNDED,
        ISO_13790,
    ),
]
