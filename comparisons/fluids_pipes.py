"""Pipe flow by the Python library fluids, with water by iapws and CoolProp, and buried pipes by ht."""

from collections.abc import Mapping
from functools import partial
from math import pi
from typing import Any

from calc.physics import pipes, water
from comparisons.check import At, Check, Published

FLUIDS = Published(
    "fluids",
    "Colebrook's friction factor, Hooper's fittings",
    "2025",
    "version 1.3.1",
    "independent library",
)
CHURCHILL = Published("fluids", "Churchill's friction factor of 1977", "2025", "version 1.3.1", "independent library")
WATER = Published(
    "iapws",
    "Water by IAPWS-IF97, in US units of the trade",
    "2025",
    "version 1.5.5",
    "independent library",
)
WATER_95 = Published("CoolProp", "Water by IAPWS-95", "2025", "version 8.0.0", "independent library")
HT = Published("ht", "Shape factor of a pipe under a plane", "2025", "version 1.2.0", "independent library")

GALLON, FOOT, BTU, PSI = 3.785411784e-3, 0.3048, 1055.05585262, 6894.757293168
TRUE_FACTOR = BTU / 3600 / (GALLON / 60) * 9 / 5  # W/K of one Btu/(h·gpm·°F) over m³/s


def _water(fahrenheit: float) -> Any:
    import iapws

    return iapws.IAPWS97(T=(fahrenheit + 459.67) * 5 / 9, P=0.6)


def _colebrook(reynolds: float, roughness: float) -> float:
    from fluids.friction import Colebrook

    return 64 / reynolds if reynolds < 2100 else float(Colebrook(reynolds, roughness))


def _churchill(reynolds: float, roughness: float) -> float:
    from fluids.friction import Churchill_1977

    return float(Churchill_1977(reynolds, roughness))


def _hooper(elbows: int, tees: int, valves: int, bore_inches: float) -> float:
    from fluids.fittings import Hooper2K

    names = (
        "Elbow, 90°, Standard (R/D = 1), Screwed",
        "Elbow, Used as, Standard, Screwed",
        "Valve, Ball, Reduced trim, Beta = 0.9",
    )
    each = [Hooper2K(Di=bore_inches, Re=40000, name=name) for name in names]
    return float(elbows * each[0] + tees * each[1] + valves * each[2])


def _true_factor(fahrenheit: float) -> float:
    state = _water(fahrenheit)
    return float(state.rho * state.cp * 1000)


def _pipe(bore_inches: float, gpm: float, fahrenheit: float) -> tuple[float, float, float]:
    """Speed (m/s), Reynolds number and friction (Pa/m) by fluids and iapws; roughness 1.5 micrometers."""
    state, bore = _water(fahrenheit), bore_inches * 0.0254
    speed = 4 * gpm * GALLON / 60 / pi / bore**2
    reynolds = state.rho * speed * bore / state.mu
    friction = _colebrook(reynolds, 1.5e-6 / bore) * state.rho * speed**2 / 2 / bore
    return float(speed), float(reynolds), float(friction)


def _pipe_part(part: int, bore_inches: float, gpm: float, fahrenheit: float) -> float:
    return _pipe(bore_inches, gpm, fahrenheit)[part]


CHECKS: list[Check] = [
    Check(
        topic="Friction factor against Colebrook",
        where=f"Reynolds number {reynolds}, relative roughness {roughness}",
        law=pipes.friction_factor,
        given={"reynolds_number": str(reynolds), "relative_roughness": f"{roughness:.4f}"},
        theirs=theirs,
        within="3.5 %" if reynolds < 10000 else "2.5 %",
        because="the distance from Colebrook that is stated with the law",
        source=FLUIDS,
        recompute=partial(_colebrook, reynolds, roughness),
    )
    for reynolds, roughness, theirs in (
        (1500, 0, "0.042667"),
        (4000, 0, "0.039907"),
        (10000, 0, "0.030883"),
        (10000, 0.001, "0.032382"),
        (20000, 0.0005, "0.026947"),
        (50000, 0.001, "0.024021"),
        (100000, 0, "0.01799"),
        (1000000, 0.0001, "0.013441"),
    )
]

CHECKS += [
    Check(
        topic="Friction factor by Churchill",
        where=f"Reynolds number {reynolds}, relative roughness {roughness}",
        law=pipes.friction_factor,
        given={"reynolds_number": str(reynolds), "relative_roughness": f"{roughness:.4f}"},
        theirs=theirs,
        within="0.02 %",
        because="the same equation, coded by others; the printed digits",
        source=CHURCHILL,
        recompute=partial(_churchill, reynolds, roughness),
    )
    for reynolds, roughness, theirs in (
        (2600, 0, "0.037519"),
        (3500, 0.001, "0.043318"),
        (5000, 0, "0.037887"),
        (20000, 0.0005, "0.027034"),
        (50000, 0.01, "0.039449"),
        (100000, 0.0001, "0.018463"),
    )
]

CHECKS += [
    Check(
        topic="Loss of fittings",
        where=f"{elbows} elbows, {tees} turning tees, {valves} ball valves, bore {bore} in",
        law=pipes.fittings_loss,
        given={"elbows": str(elbows), "tees": str(tees), "valves": str(valves), "other_losses": "0"},
        theirs=theirs,
        within="20 %",
        because="one number a fitting: Hooper's for 3/4 and 1 in differ by 14 %, and ours are rounded to 0.1",
        source=FLUIDS,
        recompute=partial(_hooper, elbows, tees, valves, bore),
    )
    for elbows, tees, valves, bore, theirs in (
        (1, 0, 0, 0.811, "0.91322"),
        (0, 1, 0, 0.811, "1.5756"),
        (0, 0, 1, 1.055, "0.30468"),
        (8, 3, 2, 1.055, "11.131"),
    )
]

CHECKS += [
    Check(
        topic="True factor behind the trade's 500",
        where=f"metered at {fahrenheit} °F",
        law=pipes.volume_heat_capacity,
        given={
            "density": At(water.density, {"temperature": f"{fahrenheit} °F"}),
            "specific_heat": At(water.specific_heat, {"temperature": f"{fahrenheit} °F"}),
        },
        theirs=f"{theirs} Btu/(h·gpm·°F)",
        within="0.1 %",
        because="our short fits of density and specific heat, 0.06 % together",
        source=WATER,
        recompute=partial(_true_factor, fahrenheit),
    )
    for fahrenheit, theirs in ((60, "500.40"), (100, "496.26"), (140, "491.83"), (180, "487.13"), (200, "484.73"))
]

_CHARGE = {
    "volume_heat_capacity": At(
        pipes.volume_heat_capacity,
        {
            "density": At(water.density, {"temperature": "180 °F"}),
            "specific_heat": At(water.specific_heat, {"temperature": "180 °F"}),
        },
    )
}


def _flow_at_180(btu_hour: float, degrees: float) -> float:
    return btu_hour * BTU / 3600 / (_true_factor(180) * degrees * 5 / 9)


def _rise_at_180(btu_hour: float, gpm: float) -> float:
    return btu_hour * BTU / 3600 / (_true_factor(180) * gpm * GALLON / 60)


CHECKS += [
    Check(
        topic="Flow for the heat",
        where="100,000 Btu/h with a drop of 20 °F, metered at 180 °F; the rule of 500 says 10.00 gal/min",
        law=pipes.flow,
        given={"heat": "100000 Btu/h", "water_drop": "20 F°", **_CHARGE},
        theirs="10.264 gal/min",
        within="0.1 %",
        because="our short fits of density and specific heat",
        source=WATER,
        recompute=partial(_flow_at_180, 100000, 20),
    ),
    Check(
        topic="Rise at the stove's outlet",
        where="60,000 Btu/h at the peak into 4 gal/min metered at 180 °F",
        law=pipes.rise,
        given={"heat": "60000 Btu/h", "flow": "4 gal/min", **_CHARGE},
        theirs="30.793 F°",
        within="0.1 %",
        because="our short fits of density and specific heat",
        source=WATER,
        recompute=partial(_rise_at_180, 60000, 4),
    ),
]

_TUBES: tuple[tuple[str, float, float, int, str, str, str], ...] = (
    ("3/4 in copper M", 0.811, 4, 60, "2.4843", "13907", "396.04"),
    ("3/4 in copper M", 0.811, 4, 140, "2.4843", "32907", "317.37"),
    ("3/4 in copper M", 0.811, 4, 180, "2.4843", "43936", "293.81"),
    ("1 in copper M", 1.055, 8, 140, "2.9361", "50592", "309.19"),
    ("1-1/4 in copper M", 1.291, 14, 140, "3.4314", "72351", "319.35"),
    ("1/2 in PEX by minimum wall", 0.485, 1, 110, "1.7366", "10528", "345.56"),
    ("3/4 in PEX by minimum wall", 0.681, 4, 140, "3.5233", "39188", "732.55"),
    ("1 in PEX by minimum wall", 0.875, 8, 140, "4.2684", "60999", "758.84"),
)


def _speed(bore: float, gpm: float) -> At:
    return At(pipes.velocity, {"flow": f"{gpm} gal/min", "bore": f"{bore} in"})


def _flowing(bore: float, gpm: float, fahrenheit: int) -> Mapping[str, str | At]:
    return {
        "density": At(water.density, {"temperature": f"{fahrenheit} °F"}),
        "velocity": _speed(bore, gpm),
        "bore": f"{bore} in",
        "viscosity": At(water.viscosity, {"temperature": f"{fahrenheit} °F"}),
    }


def _factor(bore: float, gpm: float, fahrenheit: int) -> At:
    return At(
        pipes.friction_factor,
        {
            "reynolds_number": At(pipes.reynolds_number, _flowing(bore, gpm, fahrenheit)),
            "relative_roughness": At(pipes.relative_roughness, {"roughness": "0.0015 mm", "bore": f"{bore} in"}),
        },
    )


for _name, _bore, _gpm, _degrees, _ft_s, _reynolds, _pa_m in _TUBES:
    _where = f"{_name}, {_gpm:g} gal/min at {_degrees} °F"
    _again = (_bore, _gpm, _degrees)
    CHECKS += [
        Check(
            topic="Speed in a pipe",
            where=_where,
            law=pipes.velocity,
            given={"flow": f"{_gpm} gal/min", "bore": f"{_bore} in"},
            theirs=f"{_ft_s} ft/s",
            within="0.02 %",
            because="the same geometry; the printed digits",
            source=FLUIDS,
            recompute=partial(_pipe_part, 0, *_again),
        ),
        Check(
            topic="Reynolds number",
            where=_where,
            law=pipes.reynolds_number,
            given=_flowing(_bore, _gpm, _degrees),
            theirs=_reynolds,
            within="1 %",
            because="our viscosity of water is a short equation, within 1 % of the full one",
            source=FLUIDS,
            recompute=partial(_pipe_part, 1, *_again),
        ),
        Check(
            topic="Friction in straight pipe",
            where=_where,
            law=pipes.friction,
            given={
                "friction_factor": _factor(*_again),
                "density": At(water.density, {"temperature": f"{_degrees} °F"}),
                "velocity": _speed(_bore, _gpm),
                "bore": f"{_bore} in",
            },
            theirs=f"{_pa_m} Pa/m",
            within="2.5 %",
            because="Churchill's factor instead of Colebrook's",
            source=FLUIDS,
            recompute=partial(_pipe_part, 2, *_again),
        ),
    ]


def _rise_before_boiling(kilopascals: float, fahrenheit: float) -> float:
    from CoolProp.CoolProp import PropsSI

    kelvin = (fahrenheit + 459.67) * 5 / 9
    spare = kilopascals * 1e3 - PropsSI("P", "T", kelvin, "Q", 0, "Water")
    return float(spare / PropsSI("D", "T", kelvin, "Q", 0, "Water") / 9.80665)


CHECKS += [
    Check(
        topic="How high hot water may rise over an open store",
        where=f"{fahrenheit} °F at {place}",
        law=pipes.rise_before_boiling,
        given={
            "absolute_pressure": f"{kilopascals} kPa",
            "vapour_pressure": At(water.vapour_pressure, {"temperature": f"{fahrenheit} °F"}),
            "density": At(water.density, {"temperature": f"{fahrenheit} °F"}),
        },
        theirs=f"{theirs} m",
        within="0.5 %",
        because="density at 0.6 MPa instead of at boiling, and two standards of water",
        source=WATER_95,
        recompute=partial(_rise_before_boiling, kilopascals, fahrenheit),
    )
    for fahrenheit, kilopascals, place, theirs in (
        (180, 101.325, "sea level", "5.1996"),
        (180, 84.31, "5,000 ft", "3.4116"),
        (160, 84.31, "5,000 ft", "5.3829"),
    )
]


def _soil(jacket: float, depth: float, conductivity: float) -> float:
    from ht.conduction import S_isothermal_pipe_to_plane

    return float(1 / (conductivity * S_isothermal_pipe_to_plane(jacket, depth + 0.0685 * conductivity, 1.0)))


def _layer(inside: float, outside: float, conductivity: float) -> float:
    from ht.conduction import R_cylinder

    return float(R_cylinder(inside, outside, k=conductivity, L=1.0))


CHECKS += [
    Check(
        topic="Soil around a buried pipe",
        where="jacket 110 mm, 0.8 m to its center, soil of 1.5 W/(m·K)",
        law=pipes.soil_resistance,
        given={"depth": "0.8 m", "jacket": "110 mm", "soil_conductivity": "1.5 W/(m·K)"},
        theirs="0.37034 m·K/W",
        within="0.5 %",
        because="the logarithm stands for the inverse hyperbolic cosine, close where the pipe is deep",
        source=HT,
        recompute=partial(_soil, 0.11, 0.8, 1.5),
    ),
    Check(
        topic="Insulation of a pipe",
        where="25 mm to 90 mm across, 0.025 W/(m·K)",
        law=pipes.layer_resistance,
        given={"inside": "25 mm", "outside": "90 mm", "conductivity": "0.025 W/(m·K)"},
        theirs="8.1547 m·K/W",
        within="0.02 %",
        because="the same equation; the printed digits",
        source=HT,
        recompute=partial(_layer, 0.025, 0.09, 0.025),
    ),
]
