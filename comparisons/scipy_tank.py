"""A tank over time, and the days of a month, by SciPy: special functions, quadrature and a numerical march."""

from functools import partial

from calc.physics import house, store
from calc.units import FAHRENHEIT_DEGREE, HOUR
from comparisons.check import At, Check, Published

GAMMA = Published(
    "SciPy", "Regularized incomplete gamma function", "2025", "scipy.special.gammaincc", "numerical solution"
)
MARCH = Published(
    "SciPy",
    "Numerical march of the tank's energy balance",
    "2025",
    "scipy.integrate.solve_ivp",
    "numerical solution",
)
NORMAL = Published(
    "SciPy",
    "Normal distribution, integrated by quadrature",
    "2025",
    "scipy.stats, quad",
    "numerical solution",
)


def _outlet(layers: int, drawn: float) -> float:
    from scipy.special import gammaincc

    return float(gammaincc(layers, layers * drawn))


def _delivered(layers: int, drawn: float) -> float:
    from scipy.integrate import quad
    from scipy.special import gammaincc

    return float(quad(lambda at: gammaincc(layers, layers * at), 0, drawn)[0])


def _march(
    start: float, net: float, conductance: float, around: float, capacity: float, hours: float, volume_rate: float = 0.0
) -> float:
    """Kelvin after `hours` from Fahrenheit and Btu: capacity · dT/dt = net - conductance · (T - around)."""
    from scipy.integrate import solve_ivp

    def slope(_: float, at: list[float]) -> list[float]:
        return [(net - conductance * (at[0] - around)) / capacity - volume_rate * (at[0] - around)]

    end = solve_ivp(slope, (0, hours), [start], rtol=1e-10, atol=1e-10).y[0][-1]
    return float((end + 459.67) * FAHRENHEIT_DEGREE)


def _time(start: float, target: float, net: float, conductance: float, around: float, capacity: float) -> float:
    from scipy.integrate import quad

    hours = quad(lambda at: capacity / (net - conductance * (at - around)), start, target)[0]
    return float(hours) * HOUR


def _degree_days(mean: float, base: float, spread: float, days: int) -> float:
    from scipy.integrate import quad
    from scipy.stats import norm

    below = quad(lambda at: (base - at) * norm.pdf(at, mean, spread), mean - 12 * spread, base)[0]
    return float(days * below) * FAHRENHEIT_DEGREE


def _cold_days(mean: float, base: float, spread: float, days: int) -> float:
    from scipy.stats import norm

    return float(days * norm.cdf(base, mean, spread))


def _steady(conductance: str, net: tuple[str, str], around: str) -> At:
    return At(
        store.steady_temperature,
        {"surroundings": around, "water_output": net[0], "load": net[1], "conductance": conductance},
    )


def _constant(conductance: str, capacity: str) -> At:
    return At(store.time_constant, {"heat_capacity": capacity, "conductance": conductance})


CHECKS = [
    *(
        Check(
            "Outlet of a tank in layers",
            f"{layers} layers, {drawn} tank volumes drawn",
            store.outlet_share,
            {"layers": str(layers), "tank_volumes_drawn": str(drawn)},
            theirs,
            "0.006 %",
            "half the last printed digit",
            GAMMA,
            partial(_outlet, layers, drawn),
        )
        for layers, drawn, theirs in (
            (1, 0.5, "60.653 %"),
            (1, 1.5, "22.313 %"),
            (2, 0.75, "55.783 %"),
            (5, 1.0, "44.049 %"),
            (10, 0.5, "96.817 %"),
            (20, 0.9, "65.092 %"),
            (50, 1.0, "48.119 %"),
        )
    ),
    *(
        Check(
            "Heat delivered by a tank in layers",
            f"{layers} layers, {drawn} tank volumes drawn",
            store.delivered_share,
            {"layers": str(layers), "tank_volumes_drawn": str(drawn)},
            theirs,
            "0.003 %",
            "half the last printed digit",
            GAMMA,
            partial(_delivered, layers, drawn),
        )
        for layers, drawn, theirs in (
            (1, 0.5, "39.347 %"),
            (2, 1.5, "87.553 %"),
            (5, 0.75, "68.528 %"),
            (10, 1.0, "87.489 %"),
            (20, 0.9, "85.510 %"),
            (50, 1.0, "94.367 %"),
        )
    ),
    *(
        Check(
            "Temperature of a store after charging",
            f"{output} Btu/h in, {load} out, UA {conductance}, {start} °F, 4 h",
            store.temperature_after,
            {
                "start": f"{start} °F",
                "heading_for": _steady(
                    f"{conductance} Btu/(h·°F)", (f"{output} Btu/h", f"{load} Btu/h"), f"{around} °F"
                ),
                "elapsed": "4 h",
                "time_constant": _constant(f"{conductance} Btu/(h·°F)", f"{capacity} Btu/°F"),
            },
            f"{theirs} °F",
            "0.001 F°",
            "the march is good to more than the printed digits",
            MARCH,
            partial(_march, start, output - load, conductance, around, capacity, 4),
        )
        for output, load, conductance, around, capacity, start, theirs in (
            (60000, 20000, 10, 60, 4100, 120, "158.252"),
            (40000, 15000, 8, 65, 4100, 110, "133.945"),
            (35000, 0, 12, 50, 3280, 100, "141.646"),
        )
    ),
    *(
        Check(
            "Temperature of a store left to stand",
            f"UA {conductance}, {capacity} Btu/°F, {start} °F in {around} °F, {hours} h",
            store.temperature_after,
            {
                "start": f"{start} °F",
                "heading_for": f"{around} °F",
                "elapsed": f"{hours} h",
                "time_constant": _constant(f"{conductance} Btu/(h·°F)", f"{capacity} Btu/°F"),
            },
            f"{theirs} °F",
            "0.01 F°",
            "printed to a hundredth",
            MARCH,
            partial(_march, start, 0, conductance, around, capacity, hours),
        )
        for conductance, capacity, start, around, hours, theirs in (
            (10, 4100, 180, 60, 24, "173.18"),
            (10, 4100, 180, 60, 48, "166.74"),
            (6.5, 4100, 160, 50, 72, "148.13"),
            (25, 8200, 180, 40, 24, "170.12"),
            (4, 4089, 180, 60, 72, "171.84"),
        )
    ),
    *(
        Check(
            "Time to charge a store that loses heat",
            f"{output} Btu/h in, {load} out, UA {conductance}, {start} to 180 °F",
            store.time_to_reach,
            {
                "start": f"{start} °F",
                "target": "180 °F",
                "heading_for": _steady(
                    f"{conductance} Btu/(h·°F)", (f"{output} Btu/h", f"{load} Btu/h"), f"{around} °F"
                ),
                "time_constant": _constant(f"{conductance} Btu/(h·°F)", f"{capacity} Btu/°F"),
            },
            f"{theirs} h",
            "0.002 %",
            "half the last printed digit",
            MARCH,
            partial(_time, start, 180, output - load, conductance, around, capacity),
        )
        for output, load, conductance, around, capacity, start, theirs in (
            (60000, 20000, 10, 60, 4100, 120, "6.2917"),
            (40000, 15000, 8, 65, 4100, 110, "11.7821"),
            (35000, 0, 12, 50, 3280, 100, "7.7364"),
        )
    ),
    Check(
        "Outlet of a stirred tank",
        "120 gal at 150 °F, 61.3 gal of 50 °F water let in",
        store.temperature_drawn_mixed,
        {"start": "150 °F", "cold": "50 °F", "drawn": "61.3 gal", "volume": "120 gal"},
        "110.00 °F",
        "0.02 F°",
        "the printed volume has three digits",
        MARCH,
        partial(_march, 150, 0, 0, 50, 1, 61.3 / 3 / 60, 3 * 60 / 120),
    ),
    *(
        Check(
            "Degree-days from a monthly mean",
            f"mean {mean} °F, base {base}, spread {spread}, {days} days",
            house.month_degree_days,
            {"mean": f"{mean} °F", "base": f"{base} °F", "spread": f"{spread} F°", "days": str(days)},
            f"{theirs} °F·day",
            "0.1 °F·day",
            "printed to a tenth",
            NORMAL,
            partial(_degree_days, mean, base, spread, days),
        )
        for mean, base, spread, days, theirs in (
            (30, 65, 9, 31, "1085.0"),
            (50, 65, 9, 30, "455.4"),
            (60, 65, 9, 30, "198.9"),
            (65, 65, 9, 30, "107.7"),
            (70, 65, 8, 30, "38.86"),
            (57.2, 55, 8.7, 31, "76.9"),
            (50, 55, 8, 30, "188.9"),
        )
    ),
    *(
        Check(
            "Days of a month that need heat",
            f"mean {mean} °F, base {base}, spread {spread}, {days} days",
            house.month_heating_days,
            {"mean": f"{mean} °F", "base": f"{base} °F", "spread": f"{spread} F°", "days": str(days)},
            theirs,
            "0.005",
            "printed to a hundredth of a day",
            NORMAL,
            partial(_cold_days, mean, base, spread, days),
        )
        for mean, base, spread, days, theirs in (
            (60, 65, 9, 30, "21.32"),
            (65, 65, 9, 30, "15.00"),
            (57.2, 60, 8.7, 31, "19.41"),
        )
    ),
]
