"""Mixing two waters: the share of hot that a valve lets in, what flows where, and what comes out when the valve fails.

Shares by mass take the heat capacity of both waters as equal, which is right to 0.2 % of the share; shares by volume
count that hot water is lighter. The same three laws serve a tempering valve and a valve that warms a boiler's return.
"""

from calc.law import Density, Factor, Flow, Fraction, Kelvin, KelvinDifference, law


@law("water - cold", source="definition")
def rise_over_cold(water: Kelvin, cold: Kelvin) -> KelvinDifference:
    """How much warmer than the cold side some water is, K."""


@law(
    "min(wanted_rise / hot_rise, 1)",
    source="first-law",
    ranges={"wanted_rise": "0 K to 200 K", "hot_rise": "0.01 K to 200 K"},
)
def hot_share(wanted_rise: KelvinDifference, hot_rise: KelvinDifference) -> Fraction:
    """Share of hot water by mass in the mix; both rises (K) over the cold side.

    All hot, 1, where the hot water is no warmer than wanted: the valve then stands wide open and the mix falls short.
    Raises OutOfRange where the cold side is warmer than wanted or than the hot side, which no valve can mix down.
    """


@law("hot_share * hot + (1 - hot_share) * cold", source="first-law")
def mixed_temperature(hot_share: Fraction, hot: Kelvin, cold: Kelvin) -> Kelvin:
    """Temperature in K of a mix with this share of hot water by mass."""


@law(
    "hot_share / hot_density / (hot_share / hot_density + (1 - hot_share) / cold_density)",
    source="definition",
    ranges={"hot_share": "0 % to 100 %"},
)
def hot_share_by_volume(hot_share: Fraction, hot_density: Density, cold_density: Density) -> Fraction:
    """Share of hot water by volume, as two flow meters would show it, from the share by mass and densities (kg/m³)."""


@law("mixed_flow * mixed_density * share / density", source="definition", ranges={"share": "0 % to 100 %"})
def part_flow(mixed_flow: Flow, mixed_density: Density, share: Fraction, density: Density) -> Flow:
    """Flow in m³/s of one of the two waters at its own density (kg/m³): its `share` by mass of the mixed flow."""


@law("(hot - indoor) / (wanted - indoor)", source="en-1264-2")
def overheat_factor(hot: Kelvin, wanted: Kelvin, indoor: Kelvin) -> Factor:
    """How many times its heat a floor gives when its valve fails open and unmixed `hot` water (K) enters it.

    A floor's heat is in proportion to its water's excess over the room; after some hours, at the same flow.
    """


@law("min(wanted + margin, most)", source="common-practice")
def high_limit(wanted: Kelvin, margin: KelvinDifference, most: Kelvin) -> Kelvin:
    """Setting in K of a second thermostat that stops the pump: a margin over the wanted water, `most` (K) at most."""


@law("1 - hot_share", source="definition")
def cold_share(hot_share: Fraction) -> Fraction:
    """Share of cold or returning water by mass: what is not hot."""
