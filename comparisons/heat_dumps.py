"""A dump fed by gravity: loop and dump solved together by libraries, and ratings turned round by printed factors."""

from collections.abc import Callable
from functools import partial
from math import pi
from typing import Any

from calc.physics import dump
from comparisons.check import At, Check, Published

IAPWS = Published(
    "fluids, iapws, SciPy",
    "Loop and dump solved together",
    "2026",
    "1.3.1, 1.5.5, 1.18.1; Colebrook",
    "numerical solution",
)
COOLPROP = Published(
    "CoolProp, fluids, SciPy",
    "Loop and dump solved together",
    "2026",
    "8.0.0, 1.3.1, 1.18.1; Clamond",
    "numerical solution",
)
FACTORS = Published(
    "Building Services Index",
    "How to calculate the delta T for a radiator",
    "undated",
    "table of correction factors from 50 K",
    "trade",
)
EQUATION = Published(
    "By hand",
    "The characteristic equation of EN 442-2 worked out, Q = Qn·(ΔT/ΔTn)^n",
    "2026",
    "70/40/20 °C",
    "own arithmetic",
)
SOLVED = Published("ht and SciPy", "LMTD inside brentq", "2026", "ht 1.2.0, SciPy 1.18", "numerical solution")
FINNED = Published(
    "A textbook of hydronics",
    "Finned-tube output against water temperature",
    "2012",
    "0.4499 at 130 °F for exponent 1.4",
    "from memory",
)
PRESS = Published(
    "A builders' journal (name not kept)",
    "Baseboard ratings and low-temperature water",
    "2016",
    "60 ft at 580 Btu/h·ft",
    "trade",
)
HAND = Published("By hand", "Written-out arithmetic", "2026", "this file", "own arithmetic")
TOPIC = "Heat dumps"
BTU_HOUR, FOOT, INCH = 0.29307107, 0.3048, 0.0254

Water = Callable[[float], tuple[float, float, float]]  # density, heat capacity, viscosity at a temperature, SI
Friction = Callable[[float, float], float]

# Btu/h, ft high, ft of steel pipe, bore in inches, losses in velocity heads
Loop = tuple[int, int, int, float, float]
LOOPS: tuple[Loop, ...] = ((120_000, 9, 120, 2.067, 7.4), (60_000, 6, 80, 1.610, 9.2), (20_000, 4, 40, 1.049, 10.0))


def rating_by_brentq(
    heat: float, supply: float, back: float, room: float, rated: float, exponent: float, log: bool
) -> float:
    """Rating, W at `rated` K, with which an emitter gives `heat` W from water of these ends (°C)."""
    from ht import LMTD
    from scipy.optimize import brentq

    mean = LMTD(supply, back, room, room + 1e-9) if log else (supply + back) / 2 - room
    return float(brentq(lambda rating: rating * (mean / rated) ** exponent - heat, 1, 1e6, xtol=1e-9))


def _kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) / 1.8


def by_iapws(kelvin: float) -> tuple[float, float, float]:
    """Water by the library iapws at 0.6 MPa."""
    import iapws

    state: Any = iapws.IAPWS97(T=kelvin, P=0.6)
    return state.rho, state.cp * 1000, state.mu


def by_coolprop(kelvin: float) -> tuple[float, float, float]:
    """Water by CoolProp, which holds IAPWS-95, at 0.6 MPa."""
    from CoolProp.CoolProp import PropsSI

    density, heat, viscosity = (PropsSI(name, "T", kelvin, "P", 6e5, "Water") for name in "DCV")
    return density, heat, viscosity


def colebrook(reynolds: float, roughness: float) -> float:
    """Darcy friction factor by Colebrook, solved."""
    from fluids.friction import Colebrook

    return float(Colebrook(reynolds, roughness))


def clamond(reynolds: float, roughness: float) -> float:
    """Darcy friction factor by Clamond's iteration."""
    from fluids.friction import Clamond

    return float(Clamond(reynolds, roughness))


def _lacking(loop: Loop, supply: float, back: float, water: Water, friction: Friction, heat: float = 0) -> float:
    btu, height, length, bore, losses = loop
    across = bore * INCH
    density, capacity, viscosity = water((supply + back) / 2)
    mass_flow = (heat or btu * BTU_HOUR) / (capacity * (supply - back))
    speed = 4 * mass_flow / (density * pi * across**2)
    along = friction(4 * mass_flow / (pi * across * viscosity), 45e-6 / across) * length * FOOT / across + losses
    return along * density * speed**2 / 2 - (water(back)[0] - water(supply)[0]) * 9.80665 * height * FOOT


def return_solved(loop: Loop, supply: float, water: Water, friction: Friction) -> float:
    """Return in K at which friction is what drives the loop."""
    from scipy.optimize import brentq

    hot = _kelvin(supply)
    return float(brentq(lambda back: _lacking(loop, hot, back, water, friction), 280, hot - 2, xtol=1e-9))


def supply_solved(loop: Loop, mean: float, water: Water, friction: Friction) -> float:
    """Supply in K around a mean at which friction is what drives the loop."""
    from scipy.optimize import brentq

    middle = _kelvin(mean)
    half = brentq(lambda half: _lacking(loop, middle + half, middle - half, water, friction), 1, 40, xtol=1e-9)
    return middle + float(half)


def heat_solved(loop: Loop, supply: float, rating: float, water: Water, friction: Friction) -> float:
    """Heat in W on which a finned dump of this rating (Btu/h at 115 °F over 80 °F air, exponent 1.4) and its loop agree."""
    from scipy.optimize import brentq

    hot = _kelvin(supply)

    def given(back: float) -> float:
        return float(rating * BTU_HOUR * (((hot + back) / 2 - _kelvin(80)) / (115 / 1.8)) ** 1.4)

    back = brentq(lambda back: _lacking(loop, hot, back, water, friction, given(back)), _kelvin(80), hot - 2, xtol=1e-9)
    return given(float(back))


def supply_over_surroundings(loop: Loop, water: Water, friction: Friction) -> float:
    """Supply in K at which the loop carries its heat with water that comes back at 80 °F."""
    from scipy.optimize import brentq

    back = _kelvin(80)
    return float(brentq(lambda hot: _lacking(loop, hot, back, water, friction), back + 10, 400, xtol=1e-9))


def most_of_loop(loop: Loop, supply: float, water: Water, friction: Friction) -> float:
    """Heat in W that the loop carries with water that comes back at 80 °F."""
    from scipy.optimize import brentq

    hot, back = _kelvin(supply), _kelvin(80)
    return float(brentq(lambda heat: _lacking(loop, hot, back, water, friction, heat), 1e3, 1e6, xtol=1e-6))


def _given(loop: Loop) -> dict[str, str | At]:
    _, height, length, bore, losses = loop
    return {
        "loop_height": f"{height} ft",
        "bore": f"{bore} in",
        "relative_roughness": repr(45e-6 / (bore * INCH)),
        "length_in_bores": repr(length * 12 / bore),
        "fittings_loss": str(losses),
    }


LIBRARIES = ((IAPWS, by_iapws, colebrook), (COOLPROP, by_coolprop, clamond))
BECAUSE = "Churchill's friction factor instead of Colebrook's, which the cube root of the balance makes small"

# A loop; supply and both libraries' return; mean and their supply; rating in Btu/h and their heat at that supply
_ROWS = (
    (LOOPS[0], 218, ("178.42", "178.41"), 198, ("217.80", "217.80"), 110_000, ("115070", "115065")),
    (LOOPS[1], 200, ("158.40", "158.40"), 170, ("191.16", "191.16"), 60_000, ("50386", "50386")),
    (LOOPS[2], 190, ("149.20", "149.21"), 160, ("180.81", "180.80"), 18_000, ("13624", "13624")),
)

CHECKS: list[Check] = []
for _loop, _supply, _returns, _mean, _supplies, _rating, _heats in _ROWS:
    _words = f"{_loop[1]} ft high, {_loop[2]} ft of steel of {_loop[3]} in, losses {_loop[4]}"
    for (_source, _water, _friction), _return, _hot, _heat in zip(LIBRARIES, _returns, _supplies, _heats, strict=True):
        CHECKS += [
            Check(
                TOPIC,
                f"{_loop[0]:,} Btu/h at {_supply} °F, {_words}",
                dump.return_by_gravity,
                {"heat": f"{_loop[0]} Btu/h", "supply": f"{_supply} °F", **_given(_loop)},
                f"{_return} °F",
                "0.2 F°",
                BECAUSE,
                _source,
                partial(return_solved, _loop, _supply, _water, _friction),
            ),
            Check(
                TOPIC,
                f"{_loop[0]:,} Btu/h about {_mean} °F, {_words}",
                dump.supply_by_gravity,
                {"heat": f"{_loop[0]} Btu/h", "mean_water": f"{_mean} °F", "surroundings": "80 °F", **_given(_loop)},
                f"{_hot} °F",
                "0.2 F°",
                BECAUSE,
                _source,
                partial(supply_solved, _loop, _mean, _water, _friction),
            ),
            Check(
                TOPIC,
                f"a dump rated {_rating:,} Btu/h at {_supply} °F, {_words}",
                dump.heat_by_gravity,
                {
                    "supply": f"{_supply} °F",
                    "rating": f"{_rating} Btu/h",
                    "rated_excess": "115 F°",
                    "exponent": "1.4",
                    "surroundings": "80 °F",
                    **_given(_loop),
                },
                f"{_heat} Btu/h",
                "0.1 %",
                BECAUSE,
                _source,
                partial(heat_solved, _loop, _supply, _rating, _water, _friction),
            ),
        ]

# A dump far larger than its loop can feed: the water comes back at the surroundings.
for (_source, _water, _friction), _hot, _heat in zip(
    LIBRARIES, ("130.91", "130.88"), ("265515", "265681"), strict=True
):
    CHECKS += [
        Check(
            TOPIC,
            "60,000 Btu/h about 85 °F, far more dump than the loop can feed",
            dump.supply_by_gravity,
            {"heat": "60000 Btu/h", "mean_water": "85 °F", "surroundings": "80 °F", **_given(LOOPS[1])},
            f"{_hot} °F",
            "0.3 F°",
            BECAUSE,
            _source,
            partial(supply_over_surroundings, LOOPS[1], _water, _friction),
        ),
        Check(
            TOPIC,
            "a dump of 10,000,000 Btu/h at 200 °F, far more than the loop can feed",
            dump.heat_by_gravity,
            {
                "supply": "200 °F",
                "rating": "10000000 Btu/h",
                "rated_excess": "115 F°",
                "exponent": "1.4",
                "surroundings": "80 °F",
                **_given(LOOPS[1]),
            },
            f"{_heat} Btu/h",
            "0.3 %",
            BECAUSE,
            _source,
            partial(most_of_loop, LOOPS[1], 200, _water, _friction),
        ),
    ]

CHECKS += [
    # 1,267 W at 60 K are rated 1,000 W at 50 K: the trade's printed factor of 1.267, turned round.
    Check(
        TOPIC,
        "1267 W from 85/75 °C in 20 °C, exponent 1.3",
        dump.rating_for_heat,
        {
            "heat": "1267 W",
            "supply": "85 °C",
            "return_water": "75 °C",
            "surroundings": "20 °C",
            "rated_excess": "50 K",
            "exponent": "1.3",
        },
        "1000 W",
        "0.1 %",
        "the trade tables print three decimals",
        FACTORS,
    ),
    Check(
        TOPIC,
        "449.9 Btu/h from 140/120 °F in 65 °F, exponent 1.4, rated at 180 °F",
        dump.rating_for_heat,
        {
            "heat": "449.9 Btu/h",
            "supply": "140 °F",
            "return_water": "120 °F",
            "surroundings": "65 °F",
            "rated_excess": "115 F°",
            "exponent": "1.4",
        },
        "1000 Btu/h",
        "0.05 %",
        "they round the factor to four digits",
        FINNED,
    ),
    *(
        Check(
            TOPIC,
            f"5 kW from 82/62 °C in 18 °C, exponent 1.33, {words} mean",
            law,
            {
                "heat": "5000 W",
                "supply": "82 °C",
                "return_water": "62 °C",
                "surroundings": "18 °C",
                "rated_excess": "50 K",
                "exponent": "1.33",
            },
            theirs,
            "0.01 %",
            "the same equation: only the printed digits differ",
            SOLVED,
            partial(rating_by_brentq, 5000, 82, 62, 18, 50, 1.33, by_log),
        )
        for law, words, theirs, by_log in (
            (dump.rating_for_heat, "arithmetic", "4513.53 W", False),
            (dump.rating_by_log_mean, "logarithmic", "4583.73 W", True),
        )
    ),
    # 70/40/20 °C: the logarithmic excess is 32.741 K, and (32.741 / 49.833)^1.3 = 0.5792.
    Check(
        TOPIC,
        "5792 W from 70/40 °C in 20 °C by the logarithmic mean, exponent 1.3",
        dump.rating_by_log_mean,
        {
            "heat": "5792 W",
            "supply": "70 °C",
            "return_water": "40 °C",
            "surroundings": "20 °C",
            "rated_excess": "49.833 K",
            "exponent": "1.3",
        },
        "10000 W",
        "0.03 %",
        "they round the factor to four digits",
        EQUATION,
    ),
    Check(
        TOPIC,
        "34,800 Btu/h of finned pipe rated 580 Btu/h a foot",
        dump.length_of_rating,
        {"rating": "34800 Btu/h", "rating_per_length": "580 Btu/(h·ft)"},
        "60 ft",
        "0.01 %",
        "the quotient is exact",
        PRESS,
    ),
    Check(
        TOPIC,
        "13.2 kW ÷ 0.55 kW/m",
        dump.length_of_rating,
        {"rating": "13.2 kW", "rating_per_length": "550 W/m"},
        "24 m",
        "0.01 %",
        "the quotient is exact",
        HAND,
    ),
    Check(
        TOPIC,
        "20 °F under 238 °F",
        dump.supply_under_boiling,
        {"boiling": "238 °F", "margin": "20 F°"},
        "218 °F",
        "0.001 F°",
        "a difference of round numbers",
        HAND,
    ),
]
