"""Gravity circulation: a printed table of circulating pressures, the balance solved by libraries, and by hand."""

from functools import partial
from math import pi
from typing import Any

from calc.physics import gravity, pipes, water
from comparisons.check import At, Check, Published

TABLE = Published(
    "The Engineering ToolBox", "Gravity heating systems: circulating pressure", "2004", "table in Pa a meter", "trade"
)
SOLVED = Published(
    "fluids, iapws, SciPy",
    "Buoyancy against friction",
    "2025",
    "1.3.1, 1.5.5, 1.18.1",
    "numerical solution",
)
WATER_95 = Published("CoolProp", "Water by IAPWS-95", "2025", "version 8.0.0", "independent library")
HAND = Published(
    "By hand", "Laminar flow solved by hand", "2025", "the sum is written out in the check", "own arithmetic"
)

GALLON, FOOT = 3.785411784e-3, 0.3048


def _state(fahrenheit: float) -> Any:
    import iapws

    return iapws.IAPWS97(T=(fahrenheit + 459.67) * 5 / 9, P=0.3)


def _friction(reynolds: float, roughness: float) -> float:
    from fluids.friction import Colebrook

    return float(Colebrook(reynolds, roughness))


def _pressure(hot: float, cold: float, feet: float) -> float:
    return float((_state(cold).rho - _state(hot).rho) * 9.80665 * feet * FOOT)


def _flow(hot: float, cold: float, rise: float, bore: float, length: float, losses: float) -> float:
    from scipy.optimize import brentq

    across, mean = bore * 0.0254, _state((hot + cold) / 2)

    def spare(flow: float) -> float:
        speed = 4 * flow / pi / across**2
        along = _friction(mean.rho * speed * across / mean.mu, 46e-6 / across) * length * FOOT / across + losses
        return float(along * mean.rho * speed**2 / 2 - _pressure(hot, cold, rise))

    return float(brentq(spare, 1e-5, 1e-2))


def _reynolds(number: float, roughness: float, bores: float, losses: float, power: int) -> float:
    from scipy.optimize import brentq

    return float(brentq(lambda re: (_friction(re, roughness) * bores + losses) * re**power - number, 4000, 1e7))


def _expansion(celsius: float) -> float:
    from CoolProp.CoolProp import PropsSI

    return float(PropsSI("ISOBARIC_EXPANSION_COEFFICIENT", "T", celsius + 273.15, "P", 6e5, "Water"))


def _density(text: str) -> At:
    return At(water.density, {"temperature": text})


CHECKS: list[Check] = [
    Check(
        topic="What drives a gravity loop",
        where=f"{warm} °C up, {cool} °C down, each meter",
        law=gravity.driving_pressure,
        given={"cool_density": _density(f"{cool} °C"), "warm_density": _density(f"{warm} °C"), "loop_height": "1 m"},
        theirs=f"{theirs} Pa",
        within="1.5 %",
        because="the table is rounded to whole pascals and to older densities",
        source=TABLE,
    )
    for warm, cool, theirs in ((80, 60, 113), (90, 70, 123), (90, 50, 225), (80, 50, 161))
]

CHECKS += [
    Check(
        topic="What drives a gravity loop",
        where=f"{hot}/{cold} °F, {feet} ft",
        law=gravity.driving_pressure,
        given={
            "cool_density": _density(f"{cold} °F"),
            "warm_density": _density(f"{hot} °F"),
            "loop_height": f"{feet} ft",
        },
        theirs=f"{theirs} Pa",
        within="1 %",
        because="a small difference of two densities, each fitted within 0.01 %",
        source=SOLVED,
        recompute=partial(_pressure, hot, cold, feet),
    )
    for hot, cold, feet, theirs in ((180, 140, 10, "382.7"), (180, 120, 8, "433.7"), (200, 150, 12, "617.3"))
]


def _loop_reynolds(hot: int, cold: int, feet: int, bore: float, length: int, losses: int) -> At:
    mean = f"{(hot + cold) / 2} °F"
    pressure = At(
        gravity.driving_pressure,
        {
            "cool_density": _density(f"{cold} °F"),
            "warm_density": _density(f"{hot} °F"),
            "loop_height": f"{feet} ft",
        },
    )
    number = At(
        gravity.driving_number,
        {
            "driving_pressure": pressure,
            "density": _density(mean),
            "bore": f"{bore} in",
            "viscosity": At(water.viscosity, {"temperature": mean}),
        },
    )
    return At(
        gravity.reynolds_between,
        {
            "driving_number": number,
            "relative_roughness": At(pipes.relative_roughness, {"roughness": "0.046 mm", "bore": f"{bore} in"}),
            "length_in_bores": At(gravity.length_in_bores, {"length": f"{length} ft", "bore": f"{bore} in"}),
            "fittings_loss": str(losses),
        },
    )


for _hot, _cold, _rise, _bore, _length, _losses, _gpm in (
    (180, 140, 10, 1.610, 60, 12, "3.6934"),
    (180, 140, 10, 2.067, 60, 12, "6.5861"),
    (160, 120, 8, 1.380, 40, 10, "2.4874"),
):
    _mean = f"{(_hot + _cold) / 2} °F"
    CHECKS.append(
        Check(
            topic="Flow of a gravity loop",
            where=f"{_hot}/{_cold} °F, {_rise} ft high, {_length} ft of steel of {_bore} in, losses {_losses}",
            law=gravity.flow_at,
            given={
                "reynolds_number": _loop_reynolds(_hot, _cold, _rise, _bore, _length, _losses),
                "bore": f"{_bore} in",
                "viscosity": At(water.viscosity, {"temperature": _mean}),
                "density": _density(_mean),
            },
            theirs=f"{_gpm} gal/min",
            within="1.5 %",
            because="Churchill's factor instead of Colebrook's, and densities at another pressure",
            source=SOLVED,
            recompute=partial(_flow, _hot, _cold, _rise, _bore, _length, _losses),
        )
    )

_LOSSES: dict[str, str | At] = {"relative_roughness": "0.001", "length_in_bores": "447.2", "fittings_loss": "12"}
_LAMINAR: dict[str, str | At] = {"relative_roughness": "0.0001", "length_in_bores": "400", "fittings_loss": "10"}

CHECKS += [
    Check(
        topic="Reynolds number of a gravity loop",
        where="driving number 8e9, roughness 0.001, 447.2 bores, losses 12",
        law=gravity.reynolds_between,
        given={"driving_number": "8000000000", **_LOSSES},
        theirs="17974",
        within="1.5 %",
        because="Churchill's factor instead of Colebrook's",
        source=SOLVED,
        recompute=partial(_reynolds, 8e9, 0.001, 447.2, 12, 2),
    ),
    Check(
        topic="Reynolds number of a gravity loop",
        where="laminar: 64 × 400 Re + 10 Re² = 3e7, the root of a quadratic",
        law=gravity.reynolds_between,
        given={"driving_number": "30000000", **_LAMINAR},
        theirs="873.69",
        within="0.2 %",
        because="below 2100 Churchill's factor is 64/Re but for a trace of turbulence",
        source=HAND,
    ),
    Check(
        topic="Reynolds number of a loop that moves a known heat",
        where="heat driving number 1.4e14, roughness 0.001, 447.2 bores, losses 12",
        law=gravity.reynolds_for_heat,
        given={"heat_driving_number": "140000000000000", **_LOSSES},
        theirs="17809",
        within="1.5 %",
        because="Churchill's factor instead of Colebrook's",
        source=SOLVED,
        recompute=partial(_reynolds, 1.4e14, 0.001, 447.2, 12, 3),
    ),
    Check(
        topic="Reynolds number of a loop that moves a known heat",
        where="laminar: 64 × 400 × 900² + 10 × 900³ = 2.0736e10 + 0.729e10",
        law=gravity.reynolds_for_heat,
        given={"heat_driving_number": "28026000000", **_LAMINAR},
        theirs="900",
        within="0.2 %",
        because="below 2100 Churchill's factor is 64/Re but for a trace of turbulence",
        source=HAND,
    ),
    Check(
        topic="Drop around a loop",
        where="180 °F up, 140 °F down",
        law=gravity.loop_drop,
        given={"loop_supply": "180 °F", "loop_return": "140 °F"},
        theirs="40 F°",
        within="0.001 %",
        because="exact arithmetic, no rounding",
        source=HAND,
    ),
    Check(
        topic="Outlet of a loop",
        where="140 °F down and a drop of 38.4 °F",
        law=gravity.outlet,
        given={"loop_return": "140 °F", "loop_drop": "38.4 F°"},
        theirs="178.4 °F",
        within="0.001 F°",
        because="exact arithmetic, no rounding",
        source=HAND,
    ),
    Check(
        topic="Length of a loop in bores",
        where="60 ft = 720 in over 1.61 in",
        law=gravity.length_in_bores,
        given={"length": "60 ft", "bore": "1.61 in"},
        theirs="447.205",
        within="0.001 %",
        because="exact arithmetic, no rounding",
        source=HAND,
    ),
    Check(
        topic="Driving pressure without units",
        where="2 × 382.7 × 977.23 × 0.040894² / 0.00039754² = 1250.85 / 1.58038e-7",
        law=gravity.driving_number,
        given={
            "driving_pressure": "382.7 Pa",
            "density": "977.23 kg/m³",
            "bore": "40.894 mm",
            "viscosity": "0.39754 mPa·s",
        },
        theirs="7914900000",
        within="0.02 %",
        because="a sum by hand, rounded as printed",
        source=HAND,
    ),
    Check(
        topic="Driving pressure without units, for a known heat",
        where=(
            "a loop with 382.7 Pa at a rise of 22.222 K and Reynolds number 17834 moves "
            "π × 17834 × 0.040894 × 0.00039754 / (4 × 977.23) m³/s × 4.0933e6 J/(m³·K) × 22.222 K = 21.194 kW, "
            "and its number is 7.9149e9 × 17834"
        ),
        law=gravity.heat_driving_number,
        given={
            "density": "977.23 kg/m³",
            "expansion_rate": "0.00058955 1/K",
            "loop_height": "3.048 m",
            "heat": "21.194 kW",
            "bore": "40.894 mm",
            "volume_heat_capacity": "4093300 J/(m³·K)",
            "viscosity": "0.39754 mPa·s",
        },
        theirs="141150000000000",
        within="0.1 %",
        because="a sum by hand, rounded as printed",
        source=HAND,
    ),
    Check(
        topic="How much lighter water grows",
        where="between 50 °C and 70 °C, against the slope at 60 °C",
        law=gravity.expansion_rate,
        given={"cool_density": _density("50 °C"), "warm_density": _density("70 °C"), "difference": "20 K"},
        theirs="0.000523 1/K",
        within="1 %",
        because="a chord of 20 K stands for the slope, and densities are fitted",
        source=WATER_95,
        recompute=partial(_expansion, 60),
    ),
]
