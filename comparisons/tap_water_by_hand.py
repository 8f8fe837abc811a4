"""Coils, draws and tanks worked by hand, and coil and sidearm worked again with ht and SciPy."""

from functools import partial

from calc.law import Law
from calc.physics import exchange
from calc.units import BTU, FAHRENHEIT_DEGREE, HOUR
from comparisons.check import At, Check, Published

HAND = Published(
    "By hand",
    "Worked by hand, 500 Btu/(h·°F) for each gpm",
    "2025",
    "see the comment at the check",
    "own arithmetic",
)
COIL = Published(
    "ht",
    "effectiveness_from_NTU, one side at one temperature",
    "2025",
    "version 1.2.0",
    "independent library",
)
MARCH = Published(
    "SciPy",
    "solve_ivp along the sidearm inside brentq for its speed",
    "2025",
    "SciPy 1.18",
    "numerical solution",
)
ODE = Published(
    "SciPy",
    "solve_ivp, a tank warmed by water of one temperature",
    "2025",
    "SciPy 1.18",
    "numerical solution",
)

PER_DEGREE = BTU / HOUR / FAHRENHEIT_DEGREE
_TOPIC = "Hot taps"


def _kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) * FAHRENHEIT_DEGREE


def _coil_outlet(conductance: float, stream: float, store: float, cold: float) -> float:
    from ht import effectiveness_from_NTU

    warmed = float(effectiveness_from_NTU(conductance / stream, 0.0, subtype="boiler"))
    return _kelvin(cold + warmed * (store - cold))


def _coil_flow(conductance: float, store: float, cold: float, tap: float) -> float:
    from scipy.optimize import brentq

    return float(
        brentq(lambda stream: _coil_outlet(conductance, stream, store, cold) - _kelvin(tap), 1.0, 1e5) * PER_DEGREE
    )


def _sidearm(hot: float, tank: float, conductance: float, shell: float, riser: float) -> tuple[float, float]:
    """Speed and heat in a sidearm of bore area 3.8 cm², 15 velocity heads, 4.1 MJ/(m³·K), 0.0005 1/K, in SI."""
    from scipy.integrate import quad, solve_ivp
    from scipy.optimize import brentq

    def profile(velocity: float) -> tuple[float, float]:
        stream = 4.1e6 * 3.8e-4 * velocity
        run = solve_ivp(
            lambda _, water: conductance / stream * (hot - water), (0, 1), [tank], dense_output=True, rtol=1e-10
        )
        mean = quad(lambda place: run.sol(place)[0] - tank, 0, 1)[0]
        return mean, float(run.y[0, -1]) - tank

    def lacking(velocity: float) -> float:
        mean, last = profile(velocity)
        return 9.80665 * 5e-4 * (shell * mean + riser * last) - 15 * velocity**2 / 2

    velocity = float(brentq(lacking, 1e-3, 1.0))
    return velocity, 4.1e6 * 3.8e-4 * velocity * profile(velocity)[1]


def _tank_time(capacity: float, start: float, target: float, hot: float, conductance: float) -> float:
    """Seconds, from Btu/°F, °F and Btu/(h·°F)."""
    from scipy.integrate import solve_ivp

    def there(_: float, tank: list[float]) -> float:
        return tank[0] - target

    there.terminal = True  # type: ignore[attr-defined]
    rate = conductance / capacity
    run = solve_ivp(lambda _, tank: rate * (hot - tank[0]), (0, 100), [start], events=there, rtol=1e-9)
    return float(run.t_events[0][0]) * HOUR


_SIDEARM: dict[str, str | At] = {
    "hot": "80 °C",
    "tank": "40 °C",
    "conductance": "60 W/K",
    "heat_content": "4100000 J/(m³·K)",
    "bore_area": "3.8 cm²",
}
_SIDEARM_LIFT: dict[str, str | At] = {
    "expansion": "0.0005 1/K",
    "sidearm_height": "1.2 m",
    "riser_height": "0.3 m",
    "loss_coefficient": "15",
}


def _hand(law: Law, given: dict[str, str | At], theirs: str, within: str, where: str) -> Check:
    return Check(_TOPIC, where, law, given, theirs, within, "worked to the digits shown", HAND)


CHECKS = [
    Check(
        _TOPIC,
        "coil of 800 Btu/(h·°F) in 150 °F, 3 gpm from 50 °F",
        exchange.coil_outlet,
        {"store": "150 °F", "cold": "50 °F", "conductance": "800 Btu/(h·°F)", "tap_side": "1500 Btu/(h·°F)"},
        "91.34 °F",
        "0.01 F°",
        "the last printed digit is rounded",
        COIL,
        partial(_coil_outlet, 800, 1500, 150, 50),
    ),
    Check(
        _TOPIC,
        "coil of 800 Btu/(h·°F) in 150 °F, largest flow at 110 °F",
        exchange.coil_largest_stream,
        {"store": "150 °F", "cold": "50 °F", "tap": "110 °F", "conductance": "800 Btu/(h·°F)"},
        "873.1 Btu/(h·°F)",
        "0.02 %",
        "the last printed digit is rounded",
        COIL,
        partial(_coil_flow, 800, 150, 50, 110),
    ),
    # 1 − e^(−800/1500) = 1 − 0.58665 = 0.41335; 50 + 60/0.41335
    _hand(
        exchange.store_needed_by_coil,
        {"tap": "110 °F", "cold": "50 °F", "conductance": "800 Btu/(h·°F)", "tap_side": "1500 Btu/(h·°F)"},
        "195.16 °F",
        "0.05 F°",
        "store that lets the same coil make 3 gpm of 110 °F",
    ),
    # Nothing comes out of a store that is no hotter than the water wanted.
    _hand(
        exchange.largest_tap_stream,
        {
            "store": "110 °F",
            "cold": "50 °F",
            "tap": "115 °F",
            "primary": "2500 Btu/(h·°F)",
            "rated_conductance": "4000 Btu/(h·°F)",
            "rated_primary": "2500 Btu/(h·°F)",
            "rated_tap": "1750 Btu/(h·°F)",
            "film_exponent": "0.663",
        },
        "0 Btu/(h·°F)",
        "0 W/K",
        "store at 110 °F, 115 °F wanted",
    ),
    _hand(
        exchange.coil_largest_stream,
        {"store": "110 °F", "cold": "50 °F", "tap": "115 °F", "conductance": "800 Btu/(h·°F)"},
        "0 Btu/(h·°F)",
        "0 W/K",
        "coil in 110 °F, 115 °F wanted",
    ),
    _hand(
        exchange.coolest_useful,
        {"for_emitters": "105 °F", "for_taps": "131 °F"},
        "131 °F",
        "0.001 F°",
        "floor at 105 °F, taps from 131 °F",
    ),
    _hand(
        exchange.coolest_useful,
        {"for_emitters": "150 °F", "for_taps": "131 °F"},
        "150 °F",
        "0.001 F°",
        "baseboard at 150 °F, taps from 131 °F",
    ),
    # 2.5 gpm × 500 × 55 °F
    _hand(
        exchange.draw_heat,
        {"tap_side": "1250 Btu/(h·°F)", "tap": "105 °F", "cold": "50 °F"},
        "68750 Btu/h",
        "0.001 %",
        "2.5 gpm from 50 to 105 °F",
    ),
    # 60,000 Btu ÷ (68,750 − 18,750 Btu/h) = 1.2 h
    _hand(
        exchange.draw_time,
        {"heat": "60000 Btu", "draw": "68750 Btu/h", "refill": "18750 Btu/h"},
        "1.2 h",
        "0.001 %",
        "60,000 Btu drawn while a fire adds 18,750 Btu/h",
    ),
    # 0.7 × 50 gal × 90/55 ÷ 2.5 gpm = 22.909 min
    _hand(
        exchange.tank_draw_time,
        {
            "delivered_share": "70 %",
            "tank_volume": "50 gal",
            "tank": "140 °F",
            "cold": "50 °F",
            "tap": "105 °F",
            "tap_flow": "2.5 gal/min",
        },
        "22.909 min",
        "0.01 %",
        "50 gal at 140 °F, mixed to 105 °F, 2.5 gpm",
    ),
    # A tank at the cold water's temperature gives no hot water at all.
    _hand(
        exchange.tank_draw_time,
        {
            "delivered_share": "70 %",
            "tank_volume": "50 gal",
            "tank": "50 °F",
            "cold": "50 °F",
            "tap": "105 °F",
            "tap_flow": "2.5 gal/min",
        },
        "0 s",
        "0 s",
        "50 gal gone cold",
    ),
    # 3 × 8/60 h × 68,750 Btu/h
    _hand(
        exchange.heat_of_draws,
        {"draws": "3", "time_each": "8 min", "draw": "68750 Btu/h"},
        "27500 Btu",
        "0.001 %",
        "three showers of eight minutes",
    ),
    # 500 gal hold 4089 Btu/°F: 180 − 27,500/4089 = 180 − 6.7254
    _hand(
        exchange.temperature_after_draws,
        {"start": "180 °F", "heat": "27500 Btu", "tank_capacity": "4089 Btu/°F"},
        "173.2746 °F",
        "0.001 F°",
        "the same three showers from 500 gal",
    ),
    # 12,000 Btu/h over 40 °F
    _hand(
        exchange.whole_conductance,
        {"heat": "12000 Btu/h", "hot": "160 °F", "tank": "120 °F"},
        "300 Btu/(h·°F)",
        "0.001 %",
        "12,000 Btu/h into 120 °F from 160 °F",
    ),
    Check(
        _TOPIC,
        "50 gal (411 Btu/°F) from 60 to 120 °F beside 160 °F, 300 Btu/(h·°F)",
        exchange.time_to_warm,
        {
            "tank_capacity": "411 Btu/°F",
            "start": "60 °F",
            "target": "120 °F",
            "hot": "160 °F",
            "conductance": "300 Btu/(h·°F)",
        },
        "1.2553 h",
        "0.01 %",
        "closed form against a time march; rounding",
        ODE,
        partial(_tank_time, 411, 60, 120, 160, 300),
    ),
    Check(
        _TOPIC,
        "sidearm 1.2 m high, riser 0.3 m, 80 °C against 40 °C",
        exchange.sidearm_velocity,
        _SIDEARM | _SIDEARM_LIFT,
        "0.091845 m/s",
        "0.05 %",
        "closed form against a march along the shell; rounding",
        MARCH,
        lambda: _sidearm(353.15, 313.15, 60, 1.2, 0.3)[0],
    ),
    Check(
        _TOPIC,
        "sidearm 1.2 m high, riser 0.3 m, 80 °C against 40 °C",
        exchange.sidearm_heat,
        _SIDEARM | {"velocity": At(exchange.sidearm_velocity, _SIDEARM | _SIDEARM_LIFT)},
        "1960.4 W",
        "0.05 %",
        "closed form against a march along the shell; rounding",
        MARCH,
        lambda: _sidearm(353.15, 313.15, 60, 1.2, 0.3)[1],
    ),
]
