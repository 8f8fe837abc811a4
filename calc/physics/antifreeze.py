"""Antifreeze: water with propylene or ethylene glycol, its properties and where it freezes and bursts pipes.

Glycol is sold and tested by volume and described in tables by mass, and the two differ: 30 % by volume of ethylene
glycol is 32 % by mass. Here `volume_fraction` and `mass_fraction` never stand for one another.

Two points are told apart. At the freezing point the first ice crystals form and the mixture turns to slush that a pump
cannot move. At the burst point, much lower, the slush sets hard enough to break a pipe.

The coefficients below were fitted for this project to the mixtures MPG and MEG of CoolProp 8.0.0 (MIT licence), which
codes the polynomials of Melinder, Properties of Secondary Working Fluids for Indirect Systems, 2010. Over 10 to 60 %
by mass, from 1 K above freezing (at least -20 °C) to 100 °C, the worst differences from that reference are 0.1 % in
density, 0.13 % in specific heat and 0.6 % in viscosity. Published fits disagree with one another by more: about 1 % in
density and specific heat, 3 to 8 % in viscosity. Inhibitors and age shift all of them.
"""

from itertools import pairwise
from math import exp

from calc.law import (
    Constant,
    CubicMetre,
    Density,
    Fraction,
    JoulePerCubicMetreKelvin,
    JoulePerKilogramKelvin,
    Kelvin,
    OutOfRange,
    PascalSecond,
    Range,
    law,
    method,
)

# A row holds the coefficients of one power of u, rising in powers of v:
# u = (mass fraction - 0.35) / 0.25, v = (°C - 40) / 60.
Table = tuple[tuple[float, ...], ...]

_PROPYLENE_DENSITY: Table = (
    (1016.567, -36.82249, -6.963658, 3.16835),
    (14.56817, -10.90158, 4.816078, -0.8230994),
    (-1.871007, 1.511211, -3.306023),
)
_PROPYLENE_SPECIFIC_HEAT: Table = (
    (3840.371, 177.2268, -1.397409, -2.005889),
    (-340.776, 96.25339, -4.481031),
    (-72.48826, -2.64627),
    (3.161288,),
)
_PROPYLENE_LOG_VISCOSITY: Table = (
    (-6.303467, -1.707876, 0.8578064, -0.3194178, -0.0003123833, 0.0001932002),
    (0.756438, -0.5045519, 0.3316098, -0.1022362, -8.781842e-05),
    (0.03142924, 0.03972407, -0.08319869, -0.006564402),
    (0.007062465, 0.08421577, -0.08882116),
)
_ETHYLENE_DENSITY: Table = (
    (1035.33, -32.5765, -8.797156, 1.259257),
    (30.16378, -7.936343, 3.947056, 0.001755175),
    (-1.321235, 1.524797, -0.1836611),
)
_ETHYLENE_SPECIFIC_HEAT: Table = (
    (3689.549, 200.7861, -22.86296, -6.258776),
    (-432.2911, 142.5959, -42.72946),
    (-48.43201, -9.159541),
    (9.371733,),
)
_ETHYLENE_LOG_VISCOSITY: Table = (
    (-6.536634, -1.387332, 0.5813622, -0.1828935, 0.0006303794, 0.0002276756),
    (0.6054219, -0.1414699, 0.05825319, -0.1153287, -0.0006131164),
    (0.01937618, 0.05260644, 0.0009813928, -0.09004724),
    (0.008140954, 0.01303608, 0.01849073),
)

# Share by volume, and the temperature (°F, as printed) above which a pipe is not burst.
# The tables go on to -60 °F at the last share; taking the first row that needs it is the careful reading.
_PROPYLENE_BURST = (
    (0.0, 32.0), (0.12, 20.0), (0.20, 10.0), (0.24, 0.0), (0.28, -10.0), (0.31, -20.0), (0.33, -30.0), (0.35, -40.0),
    (0.60, -40.0),
)  # fmt: skip
_ETHYLENE_BURST = (
    (0.0, 32.0), (0.12, 20.0), (0.18, 10.0), (0.23, 0.0), (0.27, -10.0), (0.30, -20.0), (0.31, -30.0), (0.60, -30.0),
)  # fmt: skip

FREEZING_WATER = Constant(273.15, "K", source="definition", note="0 °C")
WATER_AT_20_C = Constant(998.2, "kg/m**3", source="iapws-if97", note="water at 20 °C and one atmosphere")
PROPYLENE_GLYCOL_AT_20_C = Constant(1036.0, "kg/m**3", source="glycol-densities", note="pure propylene glycol at 20 °C")
ETHYLENE_GLYCOL_AT_20_C = Constant(1113.0, "kg/m**3", source="glycol-densities", note="pure ethylene glycol at 20 °C")

_RANGES = {"mass_fraction": "10 % to 60 %", "temperature": "-20 °C to 100 °C"}
_VOLUME_RANGE = {"volume_fraction": "0 % to 60 %"}
_BURST_RANGE = {"volume_fraction": "0 % to 55 %"}
_WARMEST = 373.15
_BURST_SENTENCE = (
    "Read from the published table of burst points, with straight lines between its rows, and never above the freezing "
    "point: without ice nothing bursts."
)


@law(
    "volume_fraction * glycol_density / (volume_fraction * glycol_density + (1 - volume_fraction) * water_density)",
    constants={"glycol_density": PROPYLENE_GLYCOL_AT_20_C, "water_density": WATER_AT_20_C},
    source="mass-balance",
    ranges=_VOLUME_RANGE,
)
def propylene_mass_fraction(volume_fraction: Fraction) -> Fraction:
    """Share by mass of propylene glycol in a mixture made up by volume at 20 °C. OutOfRange above 60 % by volume."""


@law(
    "volume_fraction * glycol_density / (volume_fraction * glycol_density + (1 - volume_fraction) * water_density)",
    constants={"glycol_density": ETHYLENE_GLYCOL_AT_20_C, "water_density": WATER_AT_20_C},
    source="mass-balance",
    ranges=_VOLUME_RANGE,
)
def ethylene_mass_fraction(volume_fraction: Fraction) -> Fraction:
    """Share by mass of ethylene glycol in a mixture made up by volume at 20 °C. OutOfRange above 60 % by volume."""


@law("volume_fraction * system_volume", source="definition", ranges=_VOLUME_RANGE)
def glycol_needed(volume_fraction: Fraction, system_volume: CubicMetre) -> CubicMetre:
    """Pure glycol in m³ that a plant takes for a share by volume; what is sold also holds inhibitors and water."""


@law("1 - mixture_heat_capacity / water_heat_capacity", source="definition")
def heat_capacity_lost(
    mixture_heat_capacity: JoulePerCubicMetreKelvin, water_heat_capacity: JoulePerCubicMetreKelvin
) -> Fraction:
    """How much less heat each volume of the mixture carries than water does, as a share."""


@law(
    "freezing_water - linear * mass_fraction - square * mass_fraction ** 2"
    " + cube * mass_fraction ** 3 - fourth * mass_fraction ** 4",
    constants={
        "freezing_water": FREEZING_WATER,
        "linear": Constant(19.66117, "K", source="melinder"),
        "square": Constant(109.4773, "K", source="melinder"),
        "cube": Constant(213.9963, "K", source="melinder"),
        "fourth": Constant(347.6583, "K", source="melinder"),
    },
    source="melinder",
    ranges={"mass_fraction": "0 % to 60 %"},
)
def propylene_freezing_point(mass_fraction: Fraction) -> Kelvin:
    """Temperature at which the first ice crystals form in water with propylene glycol.

    Within 0.05 K of the reference; the slush below it is not yet hard. OutOfRange above 60 % by mass.
    """


@law(
    "freezing_water - linear * mass_fraction - square * mass_fraction ** 2"
    " - cube * mass_fraction ** 3 + fourth * mass_fraction ** 4",
    constants={
        "freezing_water": FREEZING_WATER,
        "linear": Constant(30.72642, "K", source="melinder"),
        "square": Constant(10.102, "K", source="melinder"),
        "cube": Constant(194.671, "K", source="melinder"),
        "fourth": Constant(99.67058, "K", source="melinder"),
    },
    source="melinder",
    ranges={"mass_fraction": "0 % to 60 %"},
)
def ethylene_freezing_point(mass_fraction: Fraction) -> Kelvin:
    """Temperature at which the first ice crystals form in water with ethylene glycol.

    Within 0.01 K of the reference; the slush below it is not yet hard. OutOfRange above 60 % by mass.
    """


@method(_BURST_SENTENCE, source="glycol-burst", ranges=_BURST_RANGE)
def propylene_burst_point(volume_fraction: Fraction) -> Kelvin:
    """Coldest temperature in K at which the mixture leaves a pipe whole; from 35 % by volume on, -40 °F or lower."""
    freezing = propylene_freezing_point(propylene_mass_fraction(volume_fraction))
    return min(_between(_PROPYLENE_BURST, volume_fraction), freezing)


@method(_BURST_SENTENCE, source="glycol-burst", ranges=_BURST_RANGE)
def ethylene_burst_point(volume_fraction: Fraction) -> Kelvin:
    """Coldest temperature in K at which the mixture leaves a pipe whole; from 31 % by volume on, -30 °F or lower."""
    freezing = ethylene_freezing_point(ethylene_mass_fraction(volume_fraction))
    return min(_between(_ETHYLENE_BURST, volume_fraction), freezing)


@method("Polynomial in share by mass and temperature.", source="melinder", ranges=_RANGES)
def propylene_density(mass_fraction: Fraction, temperature: Kelvin) -> Density:
    """Density in kg/m³ of the mixture, within 0.1 % of the reference. OutOfRange also below freezing."""
    _liquid("propylene_density", temperature, propylene_freezing_point(mass_fraction))
    return _polynomial(_PROPYLENE_DENSITY, mass_fraction, temperature)


@method("Polynomial in share by mass and temperature.", source="melinder", ranges=_RANGES)
def propylene_specific_heat(mass_fraction: Fraction, temperature: Kelvin) -> JoulePerKilogramKelvin:
    """Specific heat in J/(kg·K) of the mixture, within 0.13 % of the reference. OutOfRange also below freezing."""
    _liquid("propylene_specific_heat", temperature, propylene_freezing_point(mass_fraction))
    return _polynomial(_PROPYLENE_SPECIFIC_HEAT, mass_fraction, temperature)


@method("Exponential of a polynomial in share by mass and temperature.", source="melinder", ranges=_RANGES)
def propylene_viscosity(mass_fraction: Fraction, temperature: Kelvin) -> PascalSecond:
    """Viscosity in Pa·s of the mixture, within 0.6 % of the reference. OutOfRange also below freezing."""
    _liquid("propylene_viscosity", temperature, propylene_freezing_point(mass_fraction))
    return exp(_polynomial(_PROPYLENE_LOG_VISCOSITY, mass_fraction, temperature))


@method("Polynomial in share by mass and temperature.", source="melinder", ranges=_RANGES)
def ethylene_density(mass_fraction: Fraction, temperature: Kelvin) -> Density:
    """Density in kg/m³ of the mixture, within 0.06 % of the reference. OutOfRange also below freezing."""
    _liquid("ethylene_density", temperature, ethylene_freezing_point(mass_fraction))
    return _polynomial(_ETHYLENE_DENSITY, mass_fraction, temperature)


@method("Polynomial in share by mass and temperature.", source="melinder", ranges=_RANGES)
def ethylene_specific_heat(mass_fraction: Fraction, temperature: Kelvin) -> JoulePerKilogramKelvin:
    """Specific heat in J/(kg·K) of the mixture, within 0.12 % of the reference. OutOfRange also below freezing."""
    _liquid("ethylene_specific_heat", temperature, ethylene_freezing_point(mass_fraction))
    return _polynomial(_ETHYLENE_SPECIFIC_HEAT, mass_fraction, temperature)


@method("Exponential of a polynomial in share by mass and temperature.", source="melinder", ranges=_RANGES)
def ethylene_viscosity(mass_fraction: Fraction, temperature: Kelvin) -> PascalSecond:
    """Viscosity in Pa·s of the mixture, within 0.2 % of the reference. OutOfRange also below freezing."""
    _liquid("ethylene_viscosity", temperature, ethylene_freezing_point(mass_fraction))
    return exp(_polynomial(_ETHYLENE_LOG_VISCOSITY, mass_fraction, temperature))


def _polynomial(table: Table, mass_fraction: float, temperature: float) -> float:
    u, v = (mass_fraction - 0.35) / 0.25, (temperature - 273.15 - 40) / 60
    return sum(c * u**power * v**other for power, row in enumerate(table) for other, c in enumerate(row))


def _liquid(name: str, temperature: float, freezing: float) -> None:
    if temperature < freezing:
        raise OutOfRange(name, "temperature", temperature, Range(freezing, _WARMEST, "its freezing point to 100 °C"))


def _between(table: tuple[tuple[float, float], ...], share: float) -> float:
    (low, at_low), (high, at_high) = next(pair for pair in pairwise(table) if share <= pair[1][0])
    fahrenheit = at_low + (at_high - at_low) * (share - low) / (high - low)
    return (fahrenheit + 459.67) * 5 / 9
