"""A slab as a store: textbook concrete, the closed form of a cooling plate, and SciPy on the surface's balance."""

from functools import partial

from calc.physics import slab
from comparisons.check import Check, Published

INCROPERA = Published(
    "Incropera, DeWitt, Bergman and Lavine",
    "Fundamentals of Heat and Mass Transfer",
    "2007",
    "table A.3, concrete (stone mix) 2300 kg/m³, 880 J/(kg·K)",
    "textbook",
)
SCIPY = Published("SciPy", "optimize.brentq on the surface's balance", "2026", "scipy 1.18", "numerical solution")
PLATE = Published(
    "SciPy",
    "integrate.solve_ivp on a plate of 200 layers cooling through one face",
    "2026",
    "scipy 1.18",
    "numerical solution",
)
HAND = Published("By hand", "Sums on paper", "2026", "energy balance of a slab", "own arithmetic")
_TOPIC = "slab store"


def plate_resistance(thickness: float, conductivity: float) -> float:
    """Mean less face temperature over flux of a plate that has cooled evenly for long, by its own conduction, m²K/W."""
    import numpy
    from scipy.integrate import solve_ivp

    layers, capacity, flux = 200, 2300 * 880, 50.0
    step = thickness / layers

    def falling(_: float, temperature: numpy.ndarray) -> numpy.ndarray:
        across = conductivity * numpy.diff(temperature) / step
        change = numpy.zeros(layers)
        change[:-1] += across
        change[1:] -= across
        change[0] -= flux
        return change / (capacity * step)

    settled = 3 * thickness**2 * capacity / conductivity
    last = solve_ivp(falling, (0, settled), numpy.full(layers, 300.0), method="LSODA", rtol=1e-9, atol=1e-9).y[:, -1]
    face = last[0] - flux * step / 2 / conductivity
    return float((last.mean() - face) / flux)


def rise_by_scipy(slab_excess: float, resistance: float) -> float:
    """The surface's rise over the room, K, at which conduction to it equals 8.92 times its power 1.1."""
    from scipy.optimize import brentq

    return float(brentq(lambda rise: (slab_excess - rise) / resistance - 8.92 * rise**1.1, 0, slab_excess, xtol=1e-12))


CHECKS = [
    # 1 m² of stone-mix concrete 0.1 m thick: 0.1 × 2300 × 880 = 202.4 kJ/K.
    Check(
        _TOPIC,
        "1 m² of concrete, 0.1 m thick",
        slab.heat_for_each_degree,
        {
            "floor_area": "1 m²",
            "slab_thickness": "0.1 m",
            "slab_density": "2300 kg/m³",
            "slab_heat_capacity": "0.88 kJ/(kg·K)",
        },
        "202400 J/K",
        "0.001 %",
        "a product of the printed properties",
        INCROPERA,
    ),
    *(
        Check(
            _TOPIC,
            f"{thickness} m of {conductivity} W/(m·K), bare",
            slab.resistance_to_surface,
            {
                "covering": "0 m²·K/W",
                "slab_thickness": f"{thickness} m",
                "slab_conductivity": f"{conductivity} W/(m·K)",
            },
            f"{plate} m²·K/W",
            "0.01 %",
            "layers of half a millimetre",
            PLATE,
            partial(plate_resistance, thickness, conductivity),
        )
        for thickness, conductivity, plate in ((0.1, 1.4, "0.0238098"), (0.15, 2.0, "0.0250003"))
    ),
    *(
        Check(
            _TOPIC,
            f"slab {excess} K over the room behind {resistance} m²K/W",
            slab.idle_rise,
            {
                "slab": f"{20 + excess} °C",
                "resistance_to_surface": f"{resistance} m²·K/W",
                "indoor": "20 °C",
            },
            f"{theirs} K",
            "0.0001 K",
            "both solve the same balance to the digits shown",
            SCIPY,
            partial(rise_by_scipy, excess, resistance),
        )
        for excess, resistance, theirs in ((10, 0.05, "6.50267"), (15, 0.124, "6.43130"), (3, 0.17, "1.18029"))
    ),
    # 202.4 kJ/K × (33 − 25) K = 1,619.2 kJ
    Check(
        _TOPIC,
        "202.4 kJ/K from 33 to 25 °C",
        slab.slab_heat,
        {"heat_for_each_degree": "202400 J/K", "warm": "33 °C", "cool": "25 °C"},
        "1619200 J",
        "0.001 %",
        "a product of round numbers, exact on paper",
        HAND,
    ),
    Check(
        _TOPIC,
        "a slab that ends warmer than it began",
        slab.slab_heat,
        {"heat_for_each_degree": "202400 J/K", "warm": "25 °C", "cool": "33 °C"},
        "0 J",
        "0.001 J",
        "nothing at all is left to round",
        HAND,
    ),
    Check(
        _TOPIC,
        "room at 20 °C, surface 6.5 K over it",
        slab.idle_surface,
        {"slab": "30 °C", "indoor": "20 °C", "surface_rise": "6.5 K"},
        "26.5 °C",
        "0.0001 K",
        "a sum of round numbers",
        HAND,
    ),
    Check(
        _TOPIC,
        "slab at 15 °C in a room at 20 °C",
        slab.idle_surface,
        {"slab": "15 °C", "indoor": "20 °C", "surface_rise": "0 K"},
        "15 °C",
        "0.0001 K",
        "a sum of round numbers",
        HAND,
    ),
    # 4.18 MJ/m³K × 40 K = 167.2 MJ/m³; 1,619.2 kJ ÷ 167.2 MJ/m³ = 9.684 L
    Check(
        _TOPIC,
        "as water that cools by 40 K",
        slab.water_with_that_heat,
        {"heat": "0.4497778 kWh", "heat_content": "1.161111 Wh/(L·K)", "fall": "40 K"},
        "9.684 L",
        "0.01 %",
        "to the digits shown",
        HAND,
    ),
    # (12 − 4) kW × 4 h = 32 kWh; ÷ 5 kWh/K = 6.4 K
    Check(
        _TOPIC,
        "12 kW for 4 h, 4 kW of it used, into 5 kWh/K",
        slab.rise_from_a_burn,
        {"water_output": "12 kW", "load": "4 kW", "burn_time": "4 h", "heat_for_each_degree": "5 kWh/K"},
        "6.4 K",
        "0.001 %",
        "a sum of round numbers, exact on paper",
        HAND,
    ),
    Check(
        _TOPIC,
        "the rooms take all of the fire",
        slab.rise_from_a_burn,
        {"water_output": "4 kW", "load": "5 kW", "burn_time": "4 h", "heat_for_each_degree": "5 kWh/K"},
        "0 K",
        "0.0001 K",
        "nothing at all is left to round",
        HAND,
    ),
    Check(
        _TOPIC,
        "between 33 and 25 °C",
        slab.halfway,
        {"warm": "33 °C", "cool": "25 °C"},
        "29 °C",
        "0.0001 K",
        "a mean of round numbers",
        HAND,
    ),
    # 100 m² × (29 − 10) K ÷ 1.9 m²K/W = 1,000 W
    Check(
        _TOPIC,
        "100 m² at 29 °C over ground at 10 °C, 1.9 m²K/W",
        slab.ground_loss,
        {"floor_area": "100 m²", "slab": "29 °C", "below": "10 °C", "resistance_below": "1.9 m²·K/W"},
        "1000 W",
        "0.001 %",
        "a sum of round numbers, exact on paper",
        HAND,
    ),
    Check(
        _TOPIC,
        "ground warmer than the slab",
        slab.ground_loss,
        {"floor_area": "100 m²", "slab": "9 °C", "below": "10 °C", "resistance_below": "1.9 m²·K/W"},
        "0 W",
        "0.001 W",
        "nothing at all is left to round",
        HAND,
    ),
    Check(
        _TOPIC,
        "25 °C and a burn of 6.4 K",
        slab.after_a_burn,
        {"cool": "25 °C", "burn_rise": "6.4 K"},
        "31.4 °C",
        "0.0001 K",
        "a sum of round numbers",
        HAND,
    ),
]
