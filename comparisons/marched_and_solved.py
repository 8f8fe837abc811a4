"""Closed forms held against what other people's software finds for itself: marches, roots, networks, real fluids.

Where a law is the solution of an equation, the equation is given to SciPy, NumPy, ht, fluids, iapws or CoolProp in its
own terms: a pipe marched metre by metre, a wall as a network of resistances, an element balance as a linear system.
"""

from collections.abc import Callable
from functools import partial
from math import log, pi

from calc.law import Law
from calc.physics import air, arithmetic, emitters, exchange, floor, flue, gravity, house, pipes, safety, store, wood
from comparisons.check import Check, Published

MARCH = Published("SciPy", "solve_ivp along the pipe, duct or flue", "2026", "scipy 1.18", "numerical solution")
ROOT = Published("SciPy", "brentq on the balance in its own terms", "2026", "scipy 1.18", "numerical solution")
AREA = Published("SciPy", "quad of the shape, slice by slice", "2026", "scipy 1.18", "numerical solution")
NETWORK = Published("NumPy", "Resistances as a linear system, linalg.solve", "2026", "numpy 2", "numerical solution")
ATOMS = Published(
    "NumPy",
    "Balance of atoms as a linear system, linalg.solve",
    "2026",
    "numpy 2",
    "numerical solution",
)
YEAR = Published("NumPy", "A year summed hour by hour", "2026", "numpy 2", "numerical solution")
HT = Published("ht", "LMTD and effectiveness_from_NTU", "2025", "version 1.2.0", "independent library")
FLUIDS = Published(
    "fluids",
    "friction_factor, dP_from_K and head_from_P",
    "2025",
    "version 1.3.0",
    "independent library",
)
COOLPROP = Published("CoolProp", "IAPWS-95 and real gases", "2025", "version 8.0.0", "independent library")
COLUMN = Published(
    "SciPy and CoolProp",
    "A column of water, pressure marched with height",
    "2026",
    "8.0.0",
    "numerical solution",
)
IAPWS = Published("iapws", "The same column by quad with IAPWS-IF97", "2025", "version 1.5.5", "independent library")
LAMBERT = Published("SciPy", "Friction by Colebrook and White, brentq", "2026", "scipy 1.18", "numerical solution")

_SAME = "both solve the same balance to the digits printed"
_G = 9.80665


def _check(
    topic: str,
    where: str,
    law: Law,
    theirs: str,
    source: Published,
    again: Callable[[], float],
    within: str = "0.02 %",
    because: str = _SAME,
    **given: str,
) -> Check:
    return Check(topic, where, law, dict(given), theirs, within, because, source, again)


def _decay(start: float, end: float, rate: float) -> float:
    """What is left at 1 of something that nears `end` from `start` at `rate` times the distance still to go."""
    from scipy.integrate import solve_ivp

    return float(solve_ivp(lambda _, now: -rate * (now - end), (0, 1), [start], rtol=1e-11, atol=1e-11).y[0, -1])


def _mean_decay(start: float, end: float, rate: float) -> float:
    from scipy.integrate import quad, solve_ivp

    run = solve_ivp(lambda _, now: -rate * (now - end), (0, 1), [start], dense_output=True, rtol=1e-11, atol=1e-11)
    return float(quad(lambda at: float(run.sol(at)[0]), 0, 1)[0])


def _coil_with_new_films() -> float:
    """A coil of 500 W/K at its rating, a third of the resistance in the water: half the air and 0.7 of the water."""
    from scipy.optimize import brentq

    inner, outer = 500 * (1 + 0.5) / 0.5, 500 * (1 + 0.5)  # W/K of each side: their resistances are as 0.5 to 1
    inner, outer = inner * 0.7**0.85, outer * 0.5**0.8
    wall = brentq(lambda at: inner * (1 - at) - outer * at, 0, 1, xtol=1e-14)
    return float(outer * wall)


def _through(*layers: float) -> float:
    """Flux through layers in a row for 1 K across them all, each a resistance, from the temperatures between them."""
    import numpy

    count = len(layers)
    matrix, known = numpy.zeros((count + 1, count + 1)), numpy.zeros(count + 1)
    for row, layer in enumerate(layers):  # the flux, and the temperature behind each layer
        matrix[row, count] = layer
        matrix[row, row] = 1
        if row:
            matrix[row, row - 1] = -1
        else:
            known[row] = 1
    matrix[count, count - 1] = 1  # the last one is at 0
    return float(numpy.linalg.solve(matrix, known)[count])


def _supply_by_lmtd(indoor: float, drop: float, excess: float) -> float:
    from ht import LMTD
    from scipy.optimize import brentq

    def over(supply: float) -> float:
        return float(LMTD(supply, supply - drop, indoor, indoor + 1e-9)) - excess

    return float(brentq(over, indoor + drop + 1e-6, indoor + drop + 200, xtol=1e-10))


def _radiator() -> float:
    """Radiator of 2000 W at 50 K, exponent 1.3, 60 °C water at 60 W/K, room at 20 °C: output and return at once."""
    from scipy.optimize import fsolve

    def both(now: list[float]) -> list[float]:
        output, back = now
        return [output - 60 * (60 - back), output - 2000 * (((60 + back) / 2 - 20) / 50) ** 1.3]

    return float(fsolve(both, [1000.0, 45.0], xtol=1e-12)[0])


def _coil_by_ntu() -> float:
    from ht import effectiveness_from_NTU

    return float(10 + (50 - 10) / effectiveness_from_NTU(1500 / 800, 0, subtype="boiler")) + 273.15


def _surface_rise() -> float:
    from scipy.optimize import brentq

    return float(brentq(lambda rise: 8.92 * rise**1.1 - 60, 0.1, 40, xtol=1e-12))


def _products() -> tuple[float, float, float]:
    """kmol of CO2, dry gas and steam from 1 kg of dry wood, by its atoms.

    50 % carbon and 6 % hydrogen, 25 % water on top of 100 % (20 % wet), air twice the least of 6 kg, 10 g/kg of steam in it.
    """
    import numpy

    carbon, hydrogen = 0.5 / 12.011, 0.06 / 1.008
    air_kg = 2 * 6.0
    oxygen_in = air_kg * 0.2314 / 31.998
    needed = 6.0 * 0.2314 / 31.998
    nitrogen = oxygen_in * (1 - 0.2095) / 0.2095
    # Unknown: CO2, steam of burning, O2 left; balances of C, H and of the oxygen gas that the burning did not need.
    result = numpy.linalg.solve(numpy.diag([1.0, 2.0, 1.0]), [carbon, hydrogen, oxygen_in - needed])
    steam = result[1] + (0.2 / 0.8 + 0.010 * air_kg) / 18.015
    return float(result[0]), float(result[0] + result[2] + nitrogen), float(steam)


def _air_ratio() -> float:
    from scipy.optimize import brentq

    # Carbon burnt in n times the air it needs: one mole of oxygen becomes one of carbon dioxide.
    def lacking(ratio: float) -> float:
        return (ratio - 1) / (ratio / 0.2095) - 0.10

    return float(brentq(lacking, 1, 20, xtol=1e-12))


def _gas_heat() -> float:
    """J/(kg·K) of the gas of wood at twice the air, at 200 °C: by weight 65 % nitrogen at large, CO2, steam, oxygen."""
    from CoolProp.CoolProp import PropsSI

    shares = {"Nitrogen": 0.71, "CO2": 0.14, "Water": 0.06, "Oxygen": 0.09}
    return 0.02 * sum(part * PropsSI("C", "T", 473.15, "P|gas", 5e4, name) for name, part in shares.items())


def _friction_number(speed: float) -> float:
    """Driving number of 20 m of 26 mm pipe with fittings of 5 velocity heads, water at 60 °C flowing at `speed`."""
    from fluids import dP_from_K, friction_factor

    density, viscosity, bore = 983.2, 0.4664e-3, 0.026
    number = density * speed * bore / viscosity
    lost = dP_from_K(friction_factor(number, 1e-4) * 20 / bore + 5, density, speed)
    return float(2 * lost * density * bore**2 / viscosity**2)


def _friction_loss() -> float:
    from fluids import dP_from_K, friction_factor

    density, viscosity, bore, speed = 983.2, 0.4664e-3, 0.026, 0.5
    return float(dP_from_K(friction_factor(density * speed * bore / viscosity, 1e-4) * 20 / bore, density, speed))


def _whole_drop() -> float:
    from fluids import dP_from_K

    return float(_friction_loss() + dP_from_K(5, 983.2, 0.5) + 2000)


def _head() -> float:
    from fluids import head_from_P

    return float(head_from_P(9000, 983.2))


def _loop_at_twelve_thousand() -> tuple[float, float]:
    """The same pipe as a loop: what buoyancy moves at Reynolds number 12,000, said as the law says it."""
    from fluids import friction_factor

    density, viscosity, bore, capacity = 983.2, 0.4664e-3, 0.026, 4.11e6
    speed = 12_000 * viscosity / density / bore
    drop = (friction_factor(12_000, 1e-4) * 20 / bore + 5) * density * speed**2 / 2
    cooled = drop / (density * 5e-4 * _G * 3)
    heat = capacity * speed * pi / 4 * bore**2 * cooled
    return float(8 * density**3 * 5e-4 * _G * 3 * heat * bore / (pi * capacity * viscosity**3)), heat


def _colebrook_number(driving: float, power: int = 2) -> float:
    """Reynolds number at which Colebrook and White's friction uses up a driving number, roughness 1e-4, 770 bores, 5.

    With `power` 3 the driving number is that of a known heat.
    """
    from scipy.optimize import brentq

    def friction(number: float) -> float:
        return float(brentq(lambda root: root + 2 * log(1e-4 / 3.7 + 2.51 * root / number) / log(10), 1, 20)) ** -2

    def over(number: float) -> float:
        return (friction(number) * 770 + 5) * number**power - driving

    return float(brentq(over, 5_000, 1e6))


def _column(height: float, absolute: float, celsius: float) -> float:
    """Absolute pressure in Pa so many metres above (below zero: below) a level, by marching."""
    from CoolProp.CoolProp import PropsSI
    from scipy.integrate import solve_ivp

    kelvin = celsius + 273.15

    def falling(_: float, pressure: list[float]) -> list[float]:
        return [-_G * PropsSI("D", "T", kelvin, "P", max(pressure[0], 1e3), "Water")]

    return float(solve_ivp(falling, (0, height), [absolute], rtol=1e-9, max_step=0.5).y[0, -1])


def _column_by_iapws(height: float, absolute: float, celsius: float) -> float:
    from iapws import IAPWS97
    from scipy.integrate import quad

    def density(at: float) -> float:
        guess = max((absolute - 980 * _G * at) / 1e6, 0.1)
        return float(IAPWS97(T=celsius + 273.15, P=guess).rho)

    return float(absolute - _G * quad(density, 0, height)[0])


def _boils_above(absolute: float, celsius: float) -> float:
    from iapws import IAPWS97
    from scipy.optimize import brentq

    vapour = IAPWS97(T=celsius + 273.15, x=0).P * 1e6
    return float(brentq(lambda height: _column_by_iapws(height, absolute, celsius) - vapour, 0, 20))


def _suction_head() -> float:
    """Water at 80 °C, 1 m above the pump, open at sea level, 3 kPa lost on the way: head over boiling at the inlet."""
    from iapws import IAPWS97

    inlet = _column_by_iapws(-1.0, 101_325, 80) - 3000
    water = IAPWS97(T=353.15, x=0)
    return float((inlet - water.P * 1e6) / (water.rho * _G))


def _suction_head_by_coolprop() -> float:
    from CoolProp.CoolProp import PropsSI

    inlet = _column(-1.0, 101_325, 80) - 3000
    vapour, density = (PropsSI(what, "T", 353.15, "Q", 0, "Water") for what in "PD")
    return float((inlet - vapour) / (density * _G))


def _gas_cushion(lowest: float, highest: float, start: float | None = None) -> float:
    """Share of a vessel that water takes as real nitrogen at 20 °C goes from the first pressure to the second, Pa."""
    from CoolProp.CoolProp import PropsSI

    thin, thick, full = (PropsSI("D", "T", 293.15, "P", at, "Nitrogen") for at in (lowest, highest, start or lowest))
    return float(full / thin - full / thick)


def _image_resistance() -> float:
    """Two pipes 0.2 m apart, 1 m deep, soil 1.5 W/(m·K): K at one for 1 W/m from the other, its image over the ground."""
    from scipy.integrate import quad

    deep = 1 + 0.0685 * 1.5
    # From the warm pipe's image, where the ground is still, straight through the soil: gradients of source and image.
    far = (0.2**2 + (2 * deep) ** 2) ** 0.5
    return float(quad(lambda away: 1 / (2 * pi * 1.5 * away), 0.2, far)[0])


def _freezing() -> float:
    """20 kg of water behind 2 W/K at −10 °C: seconds until the ice, marched, has taken all of it."""
    from scipy.integrate import solve_ivp

    def gone(_: float, water: list[float]) -> float:
        return float(water[0])

    gone.terminal = True  # type: ignore[attr-defined]
    run = solve_ivp(lambda _, water: [-2 * 10 / 333_550], (0, 1e7), [20.0], events=gone, rtol=1e-9)
    return float(run.t_events[0][0])


def _slice(diameter: float) -> float:
    from scipy.integrate import quad

    return float(quad(lambda x: 2 * (diameter**2 / 4 - x**2) ** 0.5, -diameter / 2, diameter / 2)[0])


def _cylinder(volume: float, slenderness: float) -> float:
    from scipy.optimize import brentq

    return float(brentq(lambda wide: _slice(wide) * slenderness * wide - volume, 0.1, 10, xtol=1e-10))


def _widest(height: float, diameter: float) -> float:
    """Highest point of a cylinder as it is tilted from standing to lying, seen from the side."""
    from math import cos, sin

    from scipy.optimize import minimize_scalar

    result = minimize_scalar(lambda by: -(height * cos(by) + diameter * sin(by)), bounds=(0, pi / 2), method="bounded")
    return float(-result.fun)


def _steam_speed() -> float:
    from CoolProp.CoolProp import PropsSI

    return float(0.01 / PropsSI("D", "P", 101_325, "Q", 1, "Water") / _slice(0.032))


def _wet_wood() -> float:
    """J/kg of wood at 20 % moisture, 16 MJ/kg with its steam condensed, less that steam's latent heat at 25 °C."""
    from CoolProp.CoolProp import PropsSI

    latent = PropsSI("H", "T", 298.15, "Q", 1, "Water") - PropsSI("H", "T", 298.15, "Q", 0, "Water")
    steam = 0.2 + 0.8 * 0.06 / 2.016 * 18.015
    return float(16e6 - latent * steam)


def _leak(drawn: float) -> float:
    from scipy.optimize import brentq

    return float(brentq(lambda low: 1500 * (low / 50) ** 0.65 - drawn, 0.01, 200, xtol=1e-12))


def _let_in() -> float:
    return (600 - float(1500 * (5 / 50) ** 0.65)) / 3600


def _two_columns() -> float:
    """6 m of flue gas, taken as air at 180 °C, beside air at 0 °C: difference of both columns' weight, marched."""
    from CoolProp.CoolProp import PropsSI
    from scipy.integrate import solve_ivp

    def top(kelvin: float) -> float:
        run = solve_ivp(
            lambda _, at: [-_G * PropsSI("D", "T", kelvin, "P", at[0], "Air")], (0, 6), [101_325.0], rtol=1e-10
        )
        return float(run.y[0, -1])

    return top(453.15) - top(273.15)


def _year(conductance: float) -> tuple[float, float]:
    """Joules and kelvin-days below 18 °C of a year whose temperature swings with the seasons, hour by hour."""
    import numpy

    outdoor = 8 - 12 * numpy.cos(2 * numpy.pi * numpy.arange(8760) / 8760)
    below = numpy.maximum(18 - outdoor, 0)
    return float((conductance * below * 3600).sum()), float(below.sum() / 24)


def _year_heat() -> float:
    return _year(200.0)[0]


def _year_conductance() -> float:
    heat, days = _year(200.0)
    return heat / (days * 86_400)


def _over_pipes() -> float:
    return 1 / _through(1 / 10.8, 0.1, 0.05 / 1.2)


def _covered() -> float:
    return _through(1 / 10.8, 0.045 / 1.2, 0.1) / _through(1 / 10.8, 0.045 / 1.0)


def _interpolated() -> float:
    import numpy

    return float(numpy.interp(0.2, [0.15, 0.3], [0, 1]))


def _dry_gas() -> float:
    return _products()[1]


def _steam() -> float:
    return _products()[2]


def _carbon_dioxide() -> float:
    return _products()[0] / _products()[1]


def _heat_number() -> float:
    return _loop_at_twelve_thousand()[0]


def _bore() -> float:
    from scipy.optimize import brentq

    return float(brentq(lambda wide: _slice(wide) * 1.0 - 1e-3, 0.01, 0.1, xtol=1e-12))


def _inlet() -> float:
    return _column(-1.0, 101_325, 80) - 3000


def _inlet_by_iapws() -> float:
    return _column_by_iapws(-1.0, 101_325, 80) - 3000


def _fill() -> float:
    return _column(-6.0, 131_325, 10) - 101_325


def _fill_by_iapws() -> float:
    return _column_by_iapws(-6.0, 131_325, 10) - 101_325


def _in_air() -> float:
    return _through(5.0, 1 / (pi * 0.1 * 8))


def _plain() -> float:
    return 0.020 / _gas_cushion(201_325, 351_325, 101_325)


def _height() -> float:
    return 2.0 / _slice(1.2)


def _tank() -> float:
    return _slice(1.2) * 1.8


CHECKS: list[Check] = [
    _check(
        "Coil at other flows",
        "500 W/K at its rating, half the air, 0.7 of the water",
        air.conductance_at_flows,
        "310.151 W/K",
        ROOT,
        _coil_with_new_films,
        rated_conductance="500 W/K",
        air_ratio="0.5",
        water_ratio="0.7",
        side_ratio="0.5",
    ),
    _check(
        "Duct insulation",
        "1 m²K/W between films of 0.04 and 0.13",
        air.duct_u_value,
        "0.854701 W/(m²·K)",
        NETWORK,
        partial(_through, 0.04, 1.0, 0.13),
        insulation="1 m²·K/W",
    ),
    _check(
        "Heat kept by a duct",
        "20 m² at 1 W/(m²·K), 300 W/K of air",
        air.kept_share,
        "93.5507 %",
        MARCH,
        partial(_decay, 1, 0, 0.06666666666666667),
        duct_u_value="1 W/(m²·K)",
        duct_surface="20 m²",
        air_capacity="300 W/K",
    ),
    _check(
        "Supply water from the log mean",
        "10 K drop, log mean 15 K over 20 °C",
        emitters.supply_water_log_mean,
        "40.5515 °C",
        HT,
        partial(_supply_by_lmtd, 293.15, 10, 15),
        within="0.001 K",
        indoor="20 °C",
        drop="10 K",
        excess="15 K",
    ),
    _check(
        "Output at a given supply",
        "radiator of 2 kW at 50 K, 60 °C at 60 W/K",
        emitters.output_at,
        "1075.88 W",
        ROOT,
        _radiator,
        supply="60 °C",
        flow_capacity="60 W/K",
        rated_output="2 kW",
        rated_excess="50 K",
        exponent="1.3",
        indoor="20 °C",
    ),
    _check(
        "Store that a coil needs",
        "taps at 50 °C from 10 °C, 1500 W/K against 800",
        exchange.store_needed_by_coil,
        "57.2453 °C",
        HT,
        _coil_by_ntu,
        within="0.001 K",
        tap="50 °C",
        cold="10 °C",
        conductance="1500 W/K",
        tap_side="800 W/K",
    ),
    _check(
        "Surface of a heated floor",
        "60 W/m²",
        floor.surface_rise,
        "5.65631 K",
        ROOT,
        _surface_rise,
        heat_flux="60 W/m²",
    ),
    _check(
        "Resistance over the pipes",
        "0.05 m of 1.2 W/(m·K), covering 0.1 m²K/W",
        floor.resistance_above,
        "0.234259 m²·K/W",
        NETWORK,
        _over_pipes,
        covering="0.1 m²·K/W",
        cover="0.05 m",
        screed_conductivity="1.2 W/(m·K)",
    ),
    _check(
        "Covering and screed",
        "0.1 m²K/W on screed of 1.2 W/(m·K)",
        floor.covering_factor,
        "0.597988",
        NETWORK,
        _covered,
        screed_conductivity="1.2 W/(m·K)",
        covering="0.1 m²·K/W",
    ),
    _check(
        "Pipes far apart",
        "0.2 m, a third of the way from 0.15 to 0.3 m",
        floor.conduction_share,
        "33.3333 %",
        NETWORK,
        _interpolated,
        spacing="0.2 m",
    ),
    _check(
        "Air ratio from oxygen",
        "10 % oxygen in the dry gas of burnt carbon",
        flue.air_ratio_from_oxygen,
        "1.91324",
        ROOT,
        _air_ratio,
        oxygen_measured="10 %",
    ),
    _check(
        "Heat capacity of flue gas",
        "0.02 kg/s at 200 °C",
        flue.gas_capacity,
        "21.8147 W/K",
        COOLPROP,
        _gas_heat,
        within="4 %",
        because="the composition goes with the air; the law takes one value for all",
        mass_flow="0.02 kg/s",
    ),
    _check(
        "Gas behind the jacket",
        "600 °C, water 70 °C, 40 W/K against 20",
        flue.gas_after_jacket,
        "141.728 °C",
        MARCH,
        partial(_decay, 873.15, 343.15, 2),
        within="0.01 K",
        entering="600 °C",
        water="70 °C",
        conductance="40 W/K",
        gas_capacity="20 W/K",
    ),
    _check(
        "Gas at the top of the flue",
        "200 °C, 0 °C around, cooling number 0.4",
        flue.gas_at_top,
        "134.064 °C",
        MARCH,
        partial(_decay, 473.15, 273.15, 0.4),
        within="0.01 K",
        entering="200 °C",
        surroundings="0 °C",
        cooling_number="0.4",
    ),
    _check(
        "Mean gas in the flue",
        "200 °C, 0 °C around, cooling number 0.4",
        flue.mean_gas,
        "164.84 °C",
        MARCH,
        partial(_mean_decay, 473.15, 273.15, 0.4),
        within="0.01 K",
        entering="200 °C",
        surroundings="0 °C",
        cooling_number="0.4",
    ),
    _check(
        "Gas of burnt wood",
        "dry gas of 1 kg of dry wood at twice the air",
        flue.dry_gas,
        "0.412465",
        ATOMS,
        _dry_gas,
        carbon="50 %",
        least_air="6",
        air_ratio="2",
    ),
    _check(
        "Gas of burnt wood",
        "its steam, 20 % wet, 10 g/kg in the air",
        flue.steam,
        "0.0503003",
        ATOMS,
        _steam,
        within="0.05 %",
        because="the atomic weights are printed to four digits",
        hydrogen="6 %",
        moisture="20 %",
        humidity_ratio="0.01",
        least_air="6",
        air_ratio="2",
    ),
    _check(
        "Gas of burnt wood",
        "carbon dioxide in its dry gas",
        flue.carbon_dioxide_share,
        "10.0926 %",
        ATOMS,
        _carbon_dioxide,
        carbon="50 %",
        dry_gas="0.412465",
    ),
    _check(
        "Driving number",
        "26 mm, 20 m, water at 60 °C at 0.5 m/s",
        gravity.driving_number,
        "17763100000",
        FLUIDS,
        partial(_friction_number, 0.5),
        driving_pressure="2906.82 Pa",
        density="983.2 kg/m³",
        bore="26 mm",
        viscosity="0.4664 mPa·s",
    ),
    _check(
        "Driving number of heat",
        "the same pipe as a loop 3 m high",
        gravity.heat_driving_number,
        "47999100000000",
        FLUIDS,
        _heat_number,
        density="983.2 kg/m³",
        expansion_rate="0.0005 /K",
        loop_height="3 m",
        heat="21622.18 W",
        bore="26 mm",
        volume_heat_capacity="1.1416667 Wh/(L·K)",
        viscosity="0.4664 mPa·s",
    ),
    _check(
        "Flow that a driving number moves",
        "rough 1e-4, 770 bores, fittings 5",
        gravity.reynolds_between,
        "29237.1",
        LAMBERT,
        partial(_colebrook_number, 20000000000.0),
        within="1.5 %",
        because="Churchill's friction is within 2 % of Colebrook's where the flow is turbulent",
        driving_number="20000000000",
        relative_roughness="0.0001",
        length_in_bores="770",
        fittings_loss="5",
    ),
    _check(
        "Flow that moves a known heat by its weight alone",
        "rough 1e-4, 770 bores, fittings 5",
        gravity.reynolds_for_heat,
        "29505.2",
        LAMBERT,
        partial(_colebrook_number, 6e14, 3),
        within="1.5 %",
        because="Churchill's friction is within 2 % of Colebrook's where the flow is turbulent",
        heat_driving_number="600000000000000",
        relative_roughness="0.0001",
        length_in_bores="770",
        fittings_loss="5",
    ),
    _check(
        "Bore for a velocity",
        "1 L/s at 1 m/s",
        pipes.bore_for_velocity,
        "0.0356825 m",
        AREA,
        _bore,
        flow="1 L/s",
        velocity_limit="1 m/s",
    ),
    _check(
        "Pressure drop of a run",
        "20 m of 26 mm at 0.5 m/s, fittings 5, 2 kPa more",
        pipes.pressure_drop,
        "4906.82 Pa",
        FLUIDS,
        _whole_drop,
        within="0.05 %",
        because="the friction is printed to five digits",
        friction="114.616 Pa/m",
        length="20 m",
        fittings_loss="5",
        density="983.2 kg/m³",
        velocity="0.5 m/s",
        other_pressure="2 kPa",
    ),
    _check(
        "Head",
        "9 kPa of water at 60 °C",
        pipes.head,
        "0.933426 m",
        FLUIDS,
        _head,
        pressure_drop="9 kPa",
        density="983.2 kg/m³",
    ),
    _check(
        "Pressure at a height",
        "3 m over an open store at 80 °C",
        pipes.pressure_at_height,
        "72735.2 Pa",
        COLUMN,
        partial(_column, 3.0, 101325.0, 80.0),
        within="0.05 %",
        because="the density is taken once, at 80 °C",
        absolute_pressure="101.325 kPa",
        density="971.8 kg/m³",
        height="3 m",
    ),
    _check(
        "Pressure at the pump's inlet",
        "1 m under an open store at 80 °C, 3 kPa lost",
        pipes.pump_inlet_pressure,
        "107855 Pa",
        COLUMN,
        _inlet,
        within="0.05 %",
        because="the density is taken once, at 80 °C",
        absolute_pressure="101.325 kPa",
        density="971.8 kg/m³",
        height="-1 m",
        pressure_lost="3 kPa",
    ),
    _check(
        "Fill pressure",
        "6 m of water at 10 °C, 0.3 bar at the top, no pump",
        safety.fill_pressure,
        "88824.1 Pa",
        COLUMN,
        _fill,
        within="0.05 %",
        because="the density is taken once, at 10 °C",
        density="999.7 kg/m³",
        height_above_vessel="6 m",
        top_pressure="0.3 bar",
        pump_pressure="0 kPa",
    ),
    _check(
        "Pressure at a height",
        "3 m over an open store at 80 °C",
        pipes.pressure_at_height,
        "72734.6 Pa",
        IAPWS,
        partial(_column_by_iapws, 3.0, 101325.0, 80.0),
        within="0.05 %",
        because="the density is taken once, at 80 °C",
        absolute_pressure="101.325 kPa",
        density="971.8 kg/m³",
        height="3 m",
    ),
    _check(
        "Pressure at the pump's inlet",
        "1 m under an open store at 80 °C, 3 kPa lost",
        pipes.pump_inlet_pressure,
        "107855 Pa",
        IAPWS,
        _inlet_by_iapws,
        within="0.05 %",
        because="the density is taken once, at 80 °C",
        absolute_pressure="101.325 kPa",
        density="971.8 kg/m³",
        height="-1 m",
        pressure_lost="3 kPa",
    ),
    _check(
        "Fill pressure",
        "6 m of water at 10 °C, 0.3 bar at the top, no pump",
        safety.fill_pressure,
        "88824 Pa",
        IAPWS,
        _fill_by_iapws,
        within="0.05 %",
        because="the density is taken once, at 10 °C",
        density="999.7 kg/m³",
        height_above_vessel="6 m",
        top_pressure="0.3 bar",
        pump_pressure="0 kPa",
    ),
    _check(
        "Suction head",
        "80 °C, 1 m over the pump, open, 3 kPa lost",
        pipes.net_positive_suction_head,
        "6.34219 m",
        IAPWS,
        _suction_head,
        within="0.1 %",
        because="the density is taken once, at 80 °C",
        inlet_pressure="107.855 kPa",
        vapour_pressure="47.415 kPa",
        density="971.8 kg/m³",
    ),
    _check(
        "Suction head",
        "80 °C, 1 m over the pump, open, 3 kPa lost",
        pipes.net_positive_suction_head,
        "6.34229 m",
        COLUMN,
        _suction_head_by_coolprop,
        within="0.1 %",
        because="the density is taken once, at 80 °C",
        inlet_pressure="107.855 kPa",
        vapour_pressure="47.415 kPa",
        density="971.8 kg/m³",
    ),
    _check(
        "Rise before it boils",
        "water at 80 °C over an open store",
        pipes.rise_before_boiling,
        "5.65683 m",
        IAPWS,
        partial(_boils_above, 101325.0, 80.0),
        within="0.1 %",
        because="the density is taken once, at 80 °C",
        absolute_pressure="101.325 kPa",
        vapour_pressure="47.415 kPa",
        density="971.8 kg/m³",
    ),
    _check(
        "Two pipes in the ground",
        "0.2 m apart, 1 m deep, 1.5 W/(m·K)",
        pipes.neighbour_resistance,
        "0.255124 m·K/W",
        AREA,
        _image_resistance,
        depth="1 m",
        pipe_distance="0.2 m",
        soil_conductivity="1.5 W/(m·K)",
    ),
    _check(
        "End of a buried pipe",
        "80 °C, ground 8 °C, 20 W/K, 0.2 L/s",
        pipes.leaving_temperature,
        "78.2651 °C",
        MARCH,
        partial(_decay, 353.15, 281.15, 0.024390243902439025),
        within="0.001 K",
        entering="80 °C",
        ground="8 °C",
        run_conductance="20 W/K",
        flow="12 L/min",
        volume_heat_capacity="1.138889 Wh/(L·K)",
    ),
    _check(
        "Pipe in air",
        "5 m·K/W of insulation, jacket 100 mm",
        pipes.conductance_in_air,
        "0.185258 W/(m·K)",
        NETWORK,
        _in_air,
        insulation_resistance="5 m·K/W",
        jacket="100 mm",
    ),
    _check(
        "Until it is ice",
        "20 kg behind 2 W/K at −10 °C",
        pipes.time_to_freeze_solid,
        "92.6528 h",
        MARCH,
        _freezing,
        water="20 kg",
        conductance="2 W/K",
        freezing_point="0 °C",
        surroundings="-10 °C",
    ),
    _check(
        "Acceptance of a vessel",
        "real nitrogen from 1 to 2.5 bar gauge",
        safety.acceptance,
        "42.7152 %",
        COOLPROP,
        partial(_gas_cushion, 201325.0, 351325.0),
        within="0.2 %",
        because="nitrogen is not quite an ideal gas",
        lowest="1 bar",
        highest="2.5 bar",
        barometer="101.325 kPa",
    ),
    _check(
        "Plain steel tank",
        "20 L from 1 to 2.5 bar gauge, real nitrogen",
        safety.plain_tank_volume,
        "93.053 L",
        COOLPROP,
        _plain,
        within="0.2 %",
        because="nitrogen is not quite an ideal gas",
        water_expansion="20 L",
        reserve="0 L",
        lowest="1 bar",
        highest="2.5 bar",
        barometer="101.325 kPa",
    ),
    _check(
        "Steam in the open vent",
        "10 g/s through 32 mm",
        safety.vent_steam_velocity,
        "20.8045 m/s",
        COOLPROP,
        _steam_speed,
        within="0.05 %",
        because="the volume of steam is printed to five digits",
        relief_steam="0.01 kg/s",
        steam_volume="1.6732 m³/kg",
        bore="32 mm",
    ),
    _check(
        "A circle", "1.2 m across", arithmetic.circle_area, "1.13097 m²", AREA, partial(_slice, 1.2), diameter="1.2 m"
    ),
    _check(
        "A round tank",
        "2 m³, 1.2 m across",
        store.cylinder_height,
        "1.76839 m",
        AREA,
        _height,
        volume="2 m³",
        diameter="1.2 m",
    ),
    _check(
        "A round tank",
        "2 m³, twice as high as wide",
        store.cylinder_diameter,
        "1.08385 m",
        AREA,
        partial(_cylinder, 2.0, 2.0),
        volume="2 m³",
        slenderness="2",
    ),
    _check(
        "Tilting a tank",
        "2 m high, 1 m across",
        store.tilted_height,
        "2.23607 m",
        ROOT,
        partial(_widest, 2.0, 1.0),
        height="2 m",
        diameter="1 m",
    ),
    _check(
        "Lower heating value",
        "16 MJ/kg, 20 % moisture",
        wood.lower_heating_value,
        "14464400 J/kg",
        COOLPROP,
        _wet_wood,
        higher_heating_value="16 MJ/kg",
        moisture="20 %",
    ),
    _check(
        "Air drawn from a tight house",
        "300 m³/h out, 1500 m³/h at 50 Pa",
        flue.depressurization,
        "4.2037 Pa",
        ROOT,
        partial(_leak, 300.0),
        drawn_out="300 m³/h",
        leakage_at_fifty="1500 m³/h",
        leak_exponent="0.65",
    ),
    _check(
        "Air let in",
        "600 m³/h out, 5 Pa allowed",
        flue.make_up_air,
        "264.192 m³/h",
        ROOT,
        _let_in,
        drawn_out="600 m³/h",
        leakage_at_fifty="1500 m³/h",
        limit="5 Pa",
        leak_exponent="0.65",
    ),
    _check(
        "Draught",
        "6 m of air at 180 °C beside air at 0 °C",
        flue.stack_draught,
        "30.2444 Pa",
        COLUMN,
        _two_columns,
        within="0.2 %",
        because="the densities are those at the foot",
        height="6 m",
        outdoor_density="1.2927 kg/m³",
        flue_density="0.77888 kg/m³",
    ),
    _check(
        "Heat of a year",
        "200 W/K, hour by hour",
        house.yearly_heat,
        "17953 kWh",
        YEAR,
        _year_heat,
        conductance="200 W/K",
        degree_days="3740.2039 K·day",
    ),
    _check(
        "Conductance from a year's heat",
        "the same year turned round",
        house.conductance_from_fuel,
        "200 W/K",
        YEAR,
        _year_conductance,
        space_heat="17952.979 kWh",
        degree_days="3740.2039 K·day",
    ),
    _check(
        "A flue's bore",
        "0.15 m across",
        arithmetic.circle_area,
        "0.0176715 m²",
        AREA,
        partial(_slice, 0.15),
        diameter="0.15 m",
    ),
    _check(
        "A round tank",
        "1.2 m across and 1.8 m high",
        store.cylinder_volume,
        "2.03575 m³",
        AREA,
        _tank,
        diameter="1.2 m",
        height="1.8 m",
    ),
]
