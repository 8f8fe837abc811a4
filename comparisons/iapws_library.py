"""Water by the Python library iapws, another coding of IAPWS-IF97 and of the IAPWS transport formulations."""

from collections.abc import Callable
from functools import partial
from typing import Any

from calc.law import Law
from calc.physics import water
from comparisons.check import Check, Published

IAPWS = Published(
    "iapws",
    "IAPWS-IF97, viscosity and thermal conductivity",
    "2025",
    "version 1.5.5",
    "independent library",
)


def _state(celsius: float) -> Any:
    import iapws

    return iapws.IAPWS97(T=celsius + 273.15, P=0.6)


def _density(celsius: float) -> float:
    return float(_state(celsius).rho)


def _heat_capacity(celsius: float) -> float:
    return float(_state(celsius).cp) * 1000


def _viscosity(celsius: float) -> float:
    return float(_state(celsius).mu)


def _conductivity(celsius: float) -> float:
    return float(_state(celsius).k)


def _mean_heat_content(low: float, top: float) -> float:
    from scipy.integrate import quad

    return float(quad(lambda at: _density(at) * _heat_capacity(at), low, top)[0]) / (top - low)


def _rows(
    topic: str,
    law: Law,
    library: Callable[[float], float],
    unit: str,
    within: str,
    because: str,
    rows: tuple[tuple[int, str], ...],
) -> list[Check]:
    return [
        Check(
            topic=topic,
            where=f"{celsius} °C, 0.6 MPa",
            law=law,
            given={"temperature": f"{celsius} °C"},
            theirs=f"{number} {unit}",
            within=within,
            because=because,
            source=IAPWS,
            recompute=partial(library, celsius),
        )
        for celsius, number in rows
    ]


CHECKS = [
    *_rows(
        "Density of water",
        water.density,
        _density,
        "kg/m³",
        "0.01 %",
        "a short fit that promises 0.01 %",
        (
            (5, "1000.21"),
            (10, "999.94"),
            (20, "998.43"),
            (40, "992.44"),
            (60, "983.43"),
            (80, "972.03"),
            (100, "958.59"),
            (120, "943.31"),
            (140, "926.26"),
            (150, "917.08"),
        ),
    ),
    *_rows(
        "Heat capacity of water",
        water.specific_heat,
        _heat_capacity,
        "kJ/(kg·K)",
        "0.1 %",
        "half of the 0.2 % within which IAPWS states that specific heat is known",
        (
            (5, "4.2028"),
            (20, "4.1832"),
            (40, "4.1773"),
            (60, "4.1817"),
            (80, "4.1944"),
            (100, "4.2155"),
            (120, "4.2453"),
            (150, "4.3099"),
        ),
    ),
    *_rows(
        "Viscosity of water",
        water.viscosity,
        _viscosity,
        "mPa·s",
        "0.25 %",
        "the formula is for 0.1 MPa and 110 °C and strays by 0.2 % at 150 °C",
        (
            (5, "1.5175"),
            (20, "1.0014"),
            (40, "0.6528"),
            (60, "0.4662"),
            (80, "0.3542"),
            (100, "0.2817"),
            (120, "0.2321"),
            (150, "0.1826"),
        ),
    ),
    *_rows(
        "Thermal conductivity of water",
        water.conductivity,
        _conductivity,
        "W/(m·K)",
        "0.5 %",
        "a third of the 1.5 % within which IAPWS states that conductivity is known",
        ((10, "0.5791"), (40, "0.6288"), (60, "0.6513"), (80, "0.6673"), (100, "0.6775"), (150, "0.6811")),
    ),
    *(
        Check(
            topic="Mean heat content of water",
            where=f"{low} to {top} °C, 0.6 MPa, integrated by SciPy's quad",
            law=water.mean_volume_heat_content,
            given={"low": f"{low} °C", "top": f"{top} °C"},
            theirs=f"{number} Wh/(L·K)",
            within="0.002 %",
            because="the same formulation: only the printed digits and the integration differ",
            source=IAPWS,
            recompute=partial(_mean_heat_content, low, top),
        )
        for low, top, number in ((40, 80, "1.142235"), (5, 95, "1.146609"), (60, 140, "1.122466"))
    ),
]
