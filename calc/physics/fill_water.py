"""Water that fills a heating plant: the scale and rust it can make, the guide values for it, and how much to soften.

Hardness is told as the calcium carbonate that would make it (kg/m³), whatever it is made of.
"""

from calc.law import (
    Concentration,
    CubicMetre,
    CubicMetrePerWatt,
    Dose,
    Factor,
    Fraction,
    Hardness,
    Kelvin,
    Kilogram,
    NoSolution,
    Watt,
    law,
    method,
)
from calc.units import CACO3, CAO

# --- What the water brings ---


@law("hardness * water", source="scale-all")
def scale(hardness: Hardness, water: CubicMetre) -> Kilogram:
    """Scale in kg, as calcium carbonate, if all the hardness (kg/m³) of so much water (m³) comes out of it."""


@law("make_up * years", source="definition")
def make_up_of_years(make_up: CubicMetre, years: Factor) -> CubicMetre:
    """Make-up water of so many years in m³, from that of one year (m³)."""


@law("water * oxygen * iron_for_oxygen", source="magnetite")
def iron_rusted(water: CubicMetre, oxygen: Concentration, iron_for_oxygen: Factor) -> Kilogram:
    """Iron in kg that rusts to magnetite as it uses up the oxygen (kg/m³) dissolved in so much water (m³)."""


# --- The guide values ---


@law("system_volume / water_output", source="vdi-2035", ranges={"water_output": "1 W to 10000 kW"})
def specific_volume(system_volume: CubicMetre, water_output: Watt) -> CubicMetrePerWatt:
    """Water of the plant for each output of its smallest heater, m³/W: the guideline goes by it."""


# Up to this output (W), so many moles of alkaline earths in each m³: up to 20, up to 40 and over 40 L/kW.
_GUIDE_VALUES = (
    (50e3, (None, 3.0, 0.05)),
    (200e3, (2.0, 1.0, 0.05)),
    (600e3, (1.5, 0.05, 0.05)),
    (float("inf"), (0.05, 0.05, 0.05)),
)
_SMALL_WITH_ELEMENT = (3.0, 1.5, 0.05)  # up to 50 kW with an electric element, or under 0.3 L/kW in the heater
_LITRE_PER_KILOWATT = 1e-6


def _column(specific_volume: float) -> int:
    # A volume that was worked out may miss the edge of a column by its last binary digit.
    return sum(specific_volume > edge * _LITRE_PER_KILOWATT * (1 + 1e-9) for edge in (20, 40))


@method(
    "Table of the guideline: hardness allowed by output and by water for each output; none is asked of a heater up to "
    "50 kW with little water.",
    source="vdi-2035",
)
def hardness_limit(water_output: Watt, specific_volume: CubicMetrePerWatt) -> Hardness:
    """Hardest fill and make-up water allowed, kg/m³, for an output (W) and water for each output (m³/W).

    For heaters that hold 0.3 L/kW or more, as every water jacket does. Raises NoSolution where the table asks nothing.
    """
    row = next(values for most, values in _GUIDE_VALUES if water_output <= most)
    moles = row[_column(specific_volume)]
    if moles is None:
        raise NoSolution("hardness_limit")
    return moles * CACO3


@method(
    "Table of the guideline: hardness allowed by output and by water for each output, with an electric element in the "
    "same water.",
    source="vdi-2035",
)
def hardness_limit_with_element(water_output: Watt, specific_volume: CubicMetrePerWatt) -> Hardness:
    """Hardest water allowed, kg/m³, where an electric element stands in it: hotter at its surface than any jacket."""
    if water_output <= _GUIDE_VALUES[0][0]:
        return _SMALL_WITH_ELEMENT[_column(specific_volume)] * CACO3
    return hardness_limit(water_output=water_output, specific_volume=specific_volume)


# Austria's table in German degrees, for under 20, under 50, and 50 L/kW and more.
_AUSTRIAN = (
    (50e3, (16.8, 11.2, 5.6)),
    (200e3, (11.2, 5.6, 2.8)),
    (600e3, (5.6, 2.8, 0.6)),
    (float("inf"), (2.8, 0.6, 0.6)),
)
_GERMAN_DEGREE = 0.01 * CACO3 / CAO


@method(
    "Table of the Austrian standard: hardness allowed by output and by water for each output.", source="onorm-h-5195"
)
def hardness_limit_austrian(water_output: Watt, specific_volume: CubicMetrePerWatt) -> Hardness:
    """Hardest water, kg/m³, that Austria's standard allows for heaters that hold more than 0.3 L/kW."""
    row = next(values for most, values in _AUSTRIAN if water_output <= most)
    column = sum(specific_volume >= edge * _LITRE_PER_KILOWATT * (1 - 1e-9) for edge in (20, 50))
    return row[column] * _GERMAN_DEGREE


# Hottest water (K) and chloride (kg/m³) up to which makers of plate exchangers use each steel.
_CHLORIDE_304 = ((333.15, 0.050), (353.15, 0.025), (393.15, 0.010), (403.15, 0.0))
_CHLORIDE_316 = ((333.15, 0.300), (353.15, 0.150), (393.15, 0.080), (403.15, 0.025))


def _chloride(rows: tuple[tuple[float, float], ...], hottest: float) -> float:
    return next(limit for most, limit in rows if hottest <= most * (1 + 1e-9))


@method(
    "Table of makers of plate exchangers: chloride that stainless steel 304 bears, by the hottest water.",
    source="chloride-plates",
    ranges={"hottest": "0 °C to 130 °C"},
)
def chloride_limit_304(hottest: Kelvin) -> Concentration:
    """Chloride in kg/m³ up to which stainless steel 304 is used in water up to `hottest` (K)."""
    return _chloride(_CHLORIDE_304, hottest)


@method(
    "Table of makers of plate exchangers: chloride that stainless steel 316 bears, by the hottest water.",
    source="chloride-plates",
    ranges={"hottest": "0 °C to 130 °C"},
)
def chloride_limit_316(hottest: Kelvin) -> Concentration:
    """Chloride in kg/m³ up to which stainless steel 316 is used in water up to `hottest` (K)."""
    return _chloride(_CHLORIDE_316, hottest)


# --- What to do about it ---


@law(
    "max(hardness - hardness_limit, 0) / max(hardness - softened, hardness_limit - softened)",
    source="mixing-hardness",
)
def treated_share(hardness: Hardness, hardness_limit: Hardness, softened: Hardness) -> Fraction:
    """Share of the fill to soften (to `softened`, kg/m³) so that the mixture is no harder than allowed."""


@law("system_volume * share", source="definition")
def treated_water(system_volume: CubicMetre, share: Fraction) -> CubicMetre:
    """Water to soften for the first filling, m³."""


@law("water * dose", source="definition")
def inhibitor(water: CubicMetre, dose: Dose) -> CubicMetre:
    """Inhibitor in m³ for so much water (m³) at the dose of its maker."""
