"""Heat a tank loses: through its insulation by the library ht, from an open surface by two handbooks' equations."""

from functools import partial

from calc.physics import store
from calc.units import BTU, FAHRENHEIT_DEGREE, FOOT, HOUR, INCH
from comparisons.check import At, Check, Published

HT = Published(
    "ht",
    "Conduction through a cylinder wall and a plane wall",
    "2025",
    "version 1.2.0",
    "independent library",
)
CARRIER = Published(
    "Carrier", "The temperature of evaporation, ASHVE Transactions 24", "1918", "(95 + 0.425 v)(pw - pa)", "from memory"
)
POOLS = Published(
    "ASHRAE", "Handbook, HVAC Applications: pools", "2007", "short form, w = 4.0e-5 A (pw - pa) kg/s", "from memory"
)

_US = BTU / HOUR / FAHRENHEIT_DEGREE  # W/K in one Btu/(h·°F)


def _side(diameter: float, height: float, insulation: float, conductivity: float, film: float) -> float:
    from math import pi

    from ht.conduction import R_cylinder

    outside = diameter + 2 * insulation
    return float(1 / (R_cylinder(diameter, outside, conductivity, height) + 1 / (film * pi * outside * height)))


def _ends(diameter: float, insulation: float, conductivity: float, film: float) -> float:
    from math import pi

    from ht.conduction import k_to_R

    area = pi / 4 * diameter**2
    return float(2 / (k_to_R(conductivity, insulation, area) + 1 / (film * area)))


def _conductivity(r_per_inch: float) -> float:
    from ht.conduction import R_value_to_k

    return float(R_value_to_k(r_per_inch, SI=False))


def _feet(diameter: float, height: float, inches: float) -> tuple[dict[str, str | At], tuple[float, float, float]]:
    texts: dict[str, str | At] = {
        "diameter": f"{diameter} ft",
        "height": f"{height} ft",
        "insulation": f"{inches} in",
    }
    return texts, (diameter * FOOT, height * FOOT, inches * INCH)


def _insulated(
    texts: dict[str, str | At],
    sizes: tuple[float, float, float],
    conductivity: float,
    film: float,
    side: str,
    ends: str,
) -> list[Check]:
    """The side and the two ends of one tank; conductivity and film in SI."""
    walls: dict[str, str | At] = {"conductivity": f"{conductivity} W/(m·K)", "film": f"{film} W/(m²·K)"}
    diameter, height, insulation = sizes
    flat = {name: text for name, text in texts.items() if name != "height"}
    where = f"{texts['diameter']} × {texts['height']}, {texts['insulation']} of insulation"
    because = "the same equations by other hands, printed to three or four digits"
    return [
        Check(
            "Heat lost through the side of a tank",
            where,
            store.side_conductance,
            texts | walls,
            side,
            "0.05 %",
            because,
            HT,
            partial(_side, diameter, height, insulation, conductivity, film),
        ),
        Check(
            "Heat lost through the ends of a tank",
            where,
            store.ends_conductance,
            flat | walls,
            ends,
            "0.1 %",
            because,
            HT,
            partial(_ends, diameter, insulation, conductivity, film),
        ),
    ]


_TANK: tuple[dict[str, str | At], tuple[float, float, float]] = (
    {"diameter": "1.2 m", "height": "1.6735 m", "insulation": "100 mm"},
    (1.2, 1.6735, 0.1),
)
# 1.46 Btu/(h·ft²·°F) outside, R-3.7, R-5 and R-6 for each inch.
_FILM = 1.46 * _US / FOOT**2

CHECKS = [
    *_insulated(*_TANK, 0.036, 8.0, "2.357 W/K", "0.779 W/K"),
    *_insulated(*_feet(4, 5.5, 2), 0.144227888 / 3.7, _FILM, "8.930 Btu/(h·°F)", "3.109 Btu/(h·°F)"),
    *_insulated(*_feet(4, 5.5, 4), 0.144227888 / 3.7, _FILM, "4.842 Btu/(h·°F)", "1.623 Btu/(h·°F)"),
    *_insulated(*_feet(4, 5.5, 6), 0.144227888 / 5, _FILM, "2.529 Btu/(h·°F)", "0.819 Btu/(h·°F)"),
    *_insulated(*_feet(3, 6, 3), 0.144227888 / 6, _FILM, "3.281 Btu/(h·°F)", "0.757 Btu/(h·°F)"),
    Check(
        "Conductivity from an R-value",
        "4 in of R-14.8",
        store.conductivity_of,
        {"thickness": "4 in", "resistance": "14.8 ft²·°F·h/Btu"},
        "0.03898 W/(m·K)",
        "0.02 %",
        "half the last printed digit",
        HT,
        partial(_conductivity, 3.7),
    ),
    *(
        Check(
            "Heat that leaves an open tank as vapor",
            where,
            store.evaporation_loss,
            {"open_area": "1 ft²", "water_vapour": f"{water} inHg", "air_vapour": f"{air} inHg", "air_speed": speed},
            theirs,
            "1.5 %",
            "the handbook rounded Carrier's 95 and 0.425 when it turned them into SI units",
            CARRIER,
        )
        for where, water, air, speed, theirs in (
            ("still air, 2 inHg against 0.5", "2", "0.5", "0 ft/s", "142.5 Btu/h"),
            ("air at 300 ft a minute", "2", "0.5", "5 ft/s", "333.75 Btu/h"),
        )
    ),
    Check(
        "Heat that leaves an open tank as vapor",
        "10 m², 3.56 kPa against 1.90 kPa, air at 0.1 m/s; 2400 kJ in each kilogram",
        store.evaporation_loss,
        {"open_area": "10 m²", "water_vapour": "3.56 kPa", "air_vapour": "1.90 kPa", "air_speed": "0.1 m/s"},
        "1594 W",
        "1.5 %",
        "the short form rounds 4.03 to 4.0",
        POOLS,
    ),
]
