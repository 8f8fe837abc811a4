"""The room with the stove: closed forms against time marches, the doorway against Bernoulli summed over its height.

Contested: how much a doorway passes on. Open building-simulation libraries take a discharge coefficient of 0.65 or
0.78; a formula of the passive-solar handbooks gives a third more than 0.65 does, because in layered rooms the air at
the lintel is warmer than the room's mean. The smaller one is used here: it says sooner that a room gets too warm.
"""

from functools import partial

from calc.law import Law
from calc.physics import room
from calc.units import FAHRENHEIT_DEGREE, HOUR
from comparisons.check import At, Check, Published

MARCH = Published("SciPy (Python library)", "solve_ivp, two heat capacities with one link", "2025", "SciPy 1.18")
ROOT = Published("SciPy (Python library)", "brentq on the room's balance, the doorway by quad", "2025", "SciPy 1.18")
SUM = Published(
    "SciPy (Python library)", "quad of Bernoulli's speed over the upper half of a door", "2025", "SciPy 1.18"
)
HAND = Published("this project", "Worked by hand", "2025", "see the comment at the check")
SOLAR = Published(
    "Los Alamos National Laboratory",
    "Passive solar design: heat through a doorway, 4.6·w·(h·ΔT)^1.5 Btu/h in ft and °F",
    "1983",
    "doorway convection",
)
ISO_13790 = Published(
    "ISO",
    "ISO 13790, Energy performance of buildings, as coded in the open Modelica Buildings library",
    "2008",
    "table 12; 3.45 and 9.1 W/(m²·K), 4.5 and 2.5 × floor area",
)
ISO_52016 = Published(
    "ISO", "ISO 52016-1, Energy needs for heating and cooling", "2017", "10 kJ/(m²·K) for air and furniture"
)
AIR = Published("CoolProp (Python library)", "Dry air at 20 °C and 101.325 kPa", "2025", "version 8.0.0")

_TOPIC = "The room with the stove"
_ROUNDED = "the last printed digit is rounded"


def _kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) * FAHRENHEIT_DEGREE


def _two_masses(hours: float, which: int) -> float:
    """K after some hours, in Btu, °F and h inside: 1500 and 9000 Btu/°F, link 1200, loss 400 to 10 °F, from 70, 80."""
    from scipy.integrate import solve_ivp

    def rates(_: float, now: list[float]) -> list[float]:
        air, walls = now
        return [(1200 * (walls - air) + 400 * (10 - air)) / 1500, 1200 * (air - walls) / 9000]

    return _kelvin(float(solve_ivp(rates, (0, hours), [70, 80], rtol=1e-10, atol=1e-10).y[which, -1]))


def _rates() -> list[float]:
    """Both time constants of the same room in seconds, slow one first, from the eigenvalues of its matrix."""
    from numpy.linalg import eigvals

    found = eigvals([[-(1200 + 400) / 1500, 1200 / 1500], [1200 / 9000, -1200 / 9000]])
    return sorted((-HOUR / float(value.real) for value in found), reverse=True)


def _time_to(limit: float) -> float:
    """Seconds in which a room from 68 °F all over reaches a limit, with 6,000 Btu/h more than holds it there."""
    from scipy.integrate import solve_ivp

    def rates(_: float, now: list[float]) -> list[float]:
        air, walls = now
        return [(1200 * (walls - air) + 400 * (83 - air)) / 1500, 1200 * (air - walls) / 9000]

    def there(_: float, now: list[float]) -> float:
        return now[0] - limit

    there.terminal = True  # type: ignore[attr-defined]
    run = solve_ivp(rates, (0, 500), [68, 68], events=there, rtol=1e-10, atol=1e-10)
    return float(run.t_events[0][0]) * HOUR


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
    return Check(_TOPIC, where, law, given, theirs, within, "worked to the digits shown", HAND, "hand calculation")


_ROOM: dict[str, str | At] = {
    "link": "1200 Btu/(h·°F)",
    "loss": "400 Btu/(h·°F)",
    "air_capacity": "1500 Btu/°F",
    "wall_capacity": "9000 Btu/°F",
}
_MEAN = At(room.mean_rate, _ROOM)
_FAST = At(room.fast_time, {"mean_rate": _MEAN} | _ROOM)
_SLOW = At(room.slow_time, {"fast_time": _FAST} | _ROOM)
_AIR_WARMING = At(
    room.air_warming,
    {
        "loss": "400 Btu/(h·°F)",
        "steady": "10 °F",
        "air": "70 °F",
        "link": "1200 Btu/(h·°F)",
        "walls": "80 °F",
        "air_capacity": "1500 Btu/°F",
    },
)
_WALL_WARMING = At(
    room.wall_warming,
    {"link": "1200 Btu/(h·°F)", "air": "70 °F", "walls": "80 °F", "wall_capacity": "9000 Btu/°F"},
)
_FROM_SIXTY_EIGHT = At(
    room.air_warming,
    {
        "loss": "400 Btu/(h·°F)",
        "steady": "83 °F",
        "air": "68 °F",
        "link": "1200 Btu/(h·°F)",
        "walls": "68 °F",
        "air_capacity": "1500 Btu/°F",
    },
)
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

CHECKS = [
    # steady + (start − steady)·e^(−hours·loss/capacity): the first 10 + 60·e^−0.4 = 10 + 60·0.670320
    *(
        _hand(
            room.temperature_after,
            {
                "steady": f"{steady} °F",
                "start": f"{start} °F",
                "loss": f"{loss} Btu/(h·°F)",
                "heat_capacity": f"{capacity} Btu/°F",
                "elapsed": f"{hours} h",
            },
            theirs,
            f"{start} °F towards {steady} °F, {hours} h",
            "0.001 F°",
        )
        for start, steady, loss, capacity, hours, theirs in _ONE_MASS
    ),
    # 12.5 h × ln(68/55) = 2.6522 h
    _hand(
        room.time_to_reach,
        {
            "steady": "0 °F",
            "start": "68 °F",
            "loss": "400 Btu/(h·°F)",
            "heat_capacity": "5000 Btu/°F",
            "target": "55 °F",
        },
        "2.6522 h",
        "68 °F falls to 55 °F at 0 °F outside",
        "0.01 %",
    ),
    # 15 h × ln(60/50) = 2.7348 h
    _hand(
        room.time_to_reach,
        {
            "steady": "120 °F",
            "start": "60 °F",
            "loss": "400 Btu/(h·°F)",
            "heat_capacity": "6000 Btu/°F",
            "target": "70 °F",
        },
        "2.7348 h",
        "60 °F rises to 70 °F",
        "0.01 %",
    ),
    *(
        Check(
            _TOPIC,
            f"air of a room of two masses after {hours} h",
            room.two_mass_temperature,
            {
                "steady": "10 °F",
                "start": "70 °F",
                "warming": _AIR_WARMING,
                "fast_time": _FAST,
                "slow_time": _SLOW,
                "elapsed": f"{hours} h",
            },
            theirs,
            "0.001 F°",
            _ROUNDED,
            MARCH,
            "library",
            partial(_two_masses, hours, 0),
        )
        for hours, theirs in ((1, "64.628 °F"), (4, "58.380 °F"), (12, "47.896 °F"))
    ),
    *(
        Check(
            _TOPIC,
            f"walls of a room of two masses after {hours} h",
            room.two_mass_temperature,
            {
                "steady": "10 °F",
                "start": "80 °F",
                "warming": _WALL_WARMING,
                "fast_time": _FAST,
                "slow_time": _SLOW,
                "elapsed": f"{hours} h",
            },
            theirs,
            "0.001 F°",
            _ROUNDED,
            MARCH,
            "library",
            partial(_two_masses, hours, 1),
        )
        for hours, theirs in ((1, "78.364 °F"), (4, "72.596 °F"), (12, "59.088 °F"))
    ),
    Check(
        _TOPIC,
        "time constant of the air",
        room.fast_time,
        dict(_FAST.given),
        "0.85499 h",
        "0.005 %",
        _ROUNDED,
        Published("NumPy (Python library)", "Eigenvalues of the room's matrix", "2025", "linalg.eigvals"),
        "library",
        lambda: _rates()[1],
    ),
    Check(
        _TOPIC,
        "time constant of the walls",
        room.slow_time,
        dict(_SLOW.given),
        "32.895 h",
        "0.005 %",
        _ROUNDED,
        Published("NumPy (Python library)", "Eigenvalues of the room's matrix", "2025", "linalg.eigvals"),
        "library",
        lambda: _rates()[0],
    ),
    # (1200/9000 + 1600/1500)/2 = 0.6 an hour
    _hand(room.mean_rate, _ROOM, "0.6 an hour", "half the sum of the two rates"),
    # (400·(10 − 70) + 1200·(80 − 70))/1500 = −8 °F an hour
    _hand(room.air_warming, dict(_AIR_WARMING.given), "-8 F°/h", "air at 70 °F beside walls at 80 °F"),
    # 1200·(70 − 80)/9000
    _hand(room.wall_warming, dict(_WALL_WARMING.given), "-1.333333 F°/h", "walls at 80 °F around air at 70 °F"),
    *(
        Check(
            _TOPIC,
            f"from 68 °F to {limit} °F, settling at 83 °F",
            room.hours_to_limit,
            {
                "steady": "83 °F",
                "start": "68 °F",
                "warming": _FROM_SIXTY_EIGHT,
                "fast_time": _FAST,
                "slow_time": _SLOW,
                "limit": f"{limit} °F",
            },
            theirs,
            "0.02 %",
            _ROUNDED,
            MARCH,
            "library",
            partial(_time_to, limit),
        )
        for limit, theirs in ((71, "1.39874 h"), (80, "45.297 h"))
    ),
    # A room that starts above the limit needs no time.
    _hand(
        room.hours_to_limit,
        {
            "steady": "83 °F",
            "start": "78 °F",
            "warming": "1 F°/h",
            "fast_time": "1 h",
            "slow_time": "30 h",
            "limit": "75 °F",
        },
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
        "library",
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
        "30 %",
        "layered rooms pass on more than the mean difference tells; measured coefficients run from 0.4 to 0.8",
        SOLAR,
        "memory",
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
        "library",
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
            "library",
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
        "memory",
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
        "standard",
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
        "standard",
    ),
]
