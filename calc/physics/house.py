"""Heat that a house loses: for each degree, on the coldest day, over a year, and how cold the year is.

A house is one number here, its conductance: the heat it loses each hour for each degree between inside and outside. It
comes from the fuel of a winter, from the surfaces and the air change, or as a first guess from the kind of house.
"""

from collections.abc import Sequence
from math import erf, exp, pi, sqrt

from calc.law import (
    AbsolutePascal,
    AirChanges,
    Constant,
    Count,
    CubicMetre,
    DegreeDays,
    Fraction,
    Joule,
    Kelvin,
    KelvinDifference,
    Second,
    SquareMetre,
    ThermalResistance,
    Watt,
    WattPerKelvin,
    WattPerSquareMetreKelvin,
    law,
    method,
)
from calc.physics.air import AIR_GAS_CONSTANT, AIR_SPECIFIC_HEAT
from calc.units import DAY

SECONDS_PER_DAY = Constant(DAY, "s/day", source="definition")

# --- For each degree: from a winter's fuel, from the surfaces, or from the kind of house ---


@law(
    "heat_delivered * (1 - tap_share) + other_heat",
    source="first-law",
    ranges={"tap_share": "0 % to 95 %", "other_heat": "0 J to 1000 MWh"},
)
def space_heat(heat_delivered: Joule, tap_share: Fraction, other_heat: Joule) -> Joule:
    """Heat that warmed the rooms over a year, J.

    `heat_delivered` is fuel × heat content × efficiency; the share of it that made hot tap water is taken off, and what
    else heated the house that year (a wood stove, electric heaters) is put on.
    """


@law(
    "space_heat / (degree_days * seconds_per_day)",
    constants={"seconds_per_day": SECONDS_PER_DAY},
    source="degree-day-method",
    ranges={"degree_days": "10 K·day to 20000 K·day"},
)
def conductance_from_fuel(space_heat: Joule, degree_days: DegreeDays) -> WattPerKelvin:
    """Heat a house loses for each degree, W/K, from the heat of a year and the degree-days of the same year.

    The base of the degree-days should be the outdoor temperature at which this house needs no heating.
    """


@law("area / resistance", source="first-law", ranges={"resistance": "0.01 m²·K/W to 50 m²·K/W"})
def surface_conductance(area: SquareMetre, resistance: ThermalResistance) -> WattPerKelvin:
    """Heat one surface loses for each degree, W/K, from its area and the R-value of the whole of it, films included."""


@law("walls + windows + doors + ceiling + floor", source="definition")
def envelope_conductance(
    walls: WattPerKelvin, windows: WattPerKelvin, doors: WattPerKelvin, ceiling: WattPerKelvin, floor: WattPerKelvin
) -> WattPerKelvin:
    """Heat that all surfaces lose for each degree, W/K."""


@law(
    "house_volume * air_changes * site_pressure / (air_gas_constant * indoor) * air_specific_heat",
    constants={"air_gas_constant": AIR_GAS_CONSTANT, "air_specific_heat": AIR_SPECIFIC_HEAT},
    source="ashrae-air",
    ranges={"air_changes": "0 /h to 20 /h", "indoor": "-20 °C to 60 °C"},
)
def air_change_conductance(
    house_volume: CubicMetre, air_changes: AirChanges, site_pressure: AbsolutePascal, indoor: Kelvin
) -> WattPerKelvin:
    """Heat that outdoor air takes for each degree as it passes through the house, W/K.

    Its density is that of dry air at `indoor` and at the air pressure of the place: thinner air takes less.
    """


@law("envelope + air_change", source="definition")
def house_conductance(envelope: WattPerKelvin, air_change: WattPerKelvin) -> WattPerKelvin:
    """Heat that the whole house loses for each degree, W/K."""


@law("heated_area * loss_per_area", source="definition")
def conductance_by_class(heated_area: SquareMetre, loss_per_area: WattPerSquareMetreKelvin) -> WattPerKelvin:
    """First guess of a house's loss for each degree, W/K, from its floor area and the usual loss of its kind."""


# --- On the coldest day, on any day, over a year ---


@law("conductance * (indoor - design_outdoor)", source="first-law")
def design_load(conductance: WattPerKelvin, indoor: Kelvin, design_outdoor: Kelvin) -> Watt:
    """Heat the house loses at its design temperature, W; nothing is taken off for sun, people or lamps."""


@law("conductance * max(indoor - outdoor, 0)", source="first-law")
def load_at(conductance: WattPerKelvin, indoor: Kelvin, outdoor: Kelvin) -> Watt:
    """Heat the house loses at an outdoor temperature, W; none when it is warmer outside than in."""


@law(
    "design_load / (indoor - design_outdoor)",
    source="first-law",
    ranges={"indoor": "4 °C to 40 °C", "design_outdoor": "-60 °C to 18 °C"},
)
def conductance_from_load(design_load: Watt, indoor: Kelvin, design_outdoor: Kelvin) -> WattPerKelvin:
    """Heat a house loses for each degree, W/K, from its loss at the design temperature."""


@law(
    "conductance * degree_days * seconds_per_day",
    constants={"seconds_per_day": SECONDS_PER_DAY},
    source="degree-day-method",
)
def yearly_heat(conductance: WattPerKelvin, degree_days: DegreeDays) -> Joule:
    """Heat that keeps the rooms warm over a year of so many degree-days, J; tap water apart."""


@law("conductance * (indoor - base_temperature)", source="degree-day-method")
def internal_gains(conductance: WattPerKelvin, indoor: Kelvin, base_temperature: Kelvin) -> Watt:
    """Heat from sun, people and lamps that a base temperature below the indoor one stands for, W."""


@law("yearly_heat / heating_season", source="definition", ranges={"heating_season": "1 days to 366 days"})
def average_load(yearly_heat: Joule, heating_season: Second) -> Watt:
    """Mean load over the days that need heat, W; `heating_season` is the time of those days added up."""


@law("space_load + tap_load + outside_loss", source="first-law")
def whole_load(space_load: Watt, tap_load: Watt, outside_loss: Watt) -> Watt:
    """All that the fire must make up, W: rooms, tap water, and what store and pipes lose outside the heated space."""


# --- How cold the year is ---


def _shares(mean: float, base: float, spread: float) -> tuple[float, float]:
    """Of a normal distribution of daily means: the share of days below the base, and their mean shortfall by spread."""
    away = (base - mean) / spread
    below = (1 + erf(away / sqrt(2))) / 2
    return below, away * below + exp(-(away**2) / 2) / sqrt(2 * pi)


@method(
    "Degree-days of a month from its mean: daily means spread around it as a normal distribution, their shortfall "
    "below the base added up.",
    source="normal-degree-days",
    ranges={"spread": "0.1 K to 20 K", "days": "0 to 366"},
)
def month_degree_days(mean: Kelvin, base: Kelvin, spread: KelvinDifference, days: Count) -> DegreeDays:
    """Degree-days below `base` in so many days whose daily means average `mean` with a standard deviation `spread`."""
    return days * spread * _shares(mean, base, spread)[1]


@method(
    "Days of a month that need heat: those of the same normal distribution that are colder than the base.",
    source="normal-degree-days",
    ranges={"spread": "0.1 K to 20 K", "days": "0 to 366"},
)
def month_heating_days(mean: Kelvin, base: Kelvin, spread: KelvinDifference, days: Count) -> Count:
    """How many of so many days have a mean below `base`."""
    return days * _shares(mean, base, spread)[0]


def daily_means(hourly: Sequence[float]) -> list[float]:
    """Mean of each whole day of hourly temperatures, in the unit they come in; hours left over are not counted."""
    return [sum(hourly[start : start + 24]) / 24 for start in range(0, len(hourly) - 23, 24)]


def degree_days_below(base: float, means: Sequence[float]) -> float:
    """Degree-days of daily means below a base, K·day: warmer days count nothing."""
    return sum(max(base - mean, 0.0) for mean in means)


def heating_days_below(base: float, means: Sequence[float]) -> int:
    """How many daily means are below the base."""
    return sum(mean < base for mean in means)
