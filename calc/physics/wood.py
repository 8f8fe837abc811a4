"""Firewood: moisture on either basis, the heat in it, what a stack weighs and holds, how many splits make a load.

Moisture is on the wet basis, water over all that the scale shows, unless a name says dry basis. A heating value is per
kilogram as fired, with its water in it. The higher value counts the heat of the steam in the flue, the lower leaves it
out; efficiency must be on the same basis as the value it multiplies.
"""

from calc.law import (
    Constant,
    Count,
    CubicMetre,
    Density,
    Fraction,
    Joule,
    JoulePerCubicMetre,
    JoulePerKilogram,
    Kilogram,
    Metre,
    Second,
    SquareMetre,
    Watt,
    law,
)
from calc.tables.species import SPECIES, Species
from calc.units import BTU, POUND

__all__ = ["SPECIES", "Species"]

DRY_HEATING_VALUE = Constant(8600 * BTU / POUND, "J/kg", source="wood-heating-value", note="8,600 Btu/lb")
RESINOUS_HEATING_VALUE = Constant(9000 * BTU / POUND, "J/kg", source="wood-heating-value", note="9,000 Btu/lb")
SOLID_SHARE = Constant(85 / 128, "1", source="cord-solid-share", note="85 of 128 cubic feet")
SOLID_SHARE_LOW, SOLID_SHARE_HIGH = 70 / 128, 90 / 128
HYDROGEN = Constant(0.06, "1", source="wood-composition")
WATER_FROM_HYDROGEN = Constant(18.015 / 2.016, "1", source="definition", note="molar masses of water and hydrogen")
LATENT_HEAT = Constant(1050 * BTU / POUND, "J/kg", source="steam-latent-heat", note="1,050 Btu/lb")

MOISTURE = "0 % to 80 %"


@law("moisture / (1 - moisture)", source="definition", ranges={"moisture": MOISTURE})
def moisture_on_dry_basis(moisture: Fraction) -> Fraction:
    """Moisture on dry basis, water over oven-dry wood, as meters with pins show it, from the wet basis."""


@law("dry_basis / (1 + dry_basis)", source="definition", ranges={"dry_basis": "0 % to 400 %"})
def moisture_on_wet_basis(dry_basis: Fraction) -> Fraction:
    """Moisture on wet basis, water over all that the scale shows, from the dry basis of a meter."""


@law("dry_heating_value * (1 - moisture)", source="wood-heating-value", ranges={"moisture": MOISTURE})
def higher_heating_value(dry_heating_value: JoulePerKilogram, moisture: Fraction) -> JoulePerKilogram:
    """Higher heating value of wood as fired, J/kg: its water burns nothing but weighs."""


@law(
    "higher_heating_value - latent_heat * (moisture + water_from_hydrogen * hydrogen * (1 - moisture))",
    source="wood-heating-value",
    ranges={"moisture": MOISTURE},
    constants={"latent_heat": LATENT_HEAT, "water_from_hydrogen": WATER_FROM_HYDROGEN, "hydrogen": HYDROGEN},
)
def lower_heating_value(higher_heating_value: JoulePerKilogram, moisture: Fraction) -> JoulePerKilogram:
    """Lower heating value of wood as fired, J/kg: the higher one less the heat that leaves in the steam."""


# Stacks. A cord, a stère and a cubic meter of stacked wood are all volumes of wood and air.


@law("stacked_volume * solid_share", source="cord-solid-share")
def solid_volume(stacked_volume: CubicMetre, solid_share: Fraction) -> CubicMetre:
    """Wood in a stack without the air between, m³."""


@law("solid_volume * basic_density", source="definition")
def oven_dry_mass(solid_volume: CubicMetre, basic_density: Density) -> Kilogram:
    """Oven-dry weight of wood, kg, from its green volume and its basic density (oven-dry weight over green volume).

    Taking the stack at its green volume, as the lists of cords do, leaves out that drying wood shrinks a few percent.
    """


@law("oven_dry_mass / (1 - moisture)", source="definition", ranges={"moisture": MOISTURE})
def mass_with_moisture(oven_dry_mass: Kilogram, moisture: Fraction) -> Kilogram:
    """Weight of wood with its water, kg."""


@law(
    "solid_share * basic_density / (1 - moisture) * heating_value",
    source="definition",
    ranges={"moisture": MOISTURE},
)
def stack_heat_content(
    solid_share: Fraction, basic_density: Density, moisture: Fraction, heating_value: JoulePerKilogram
) -> JoulePerCubicMetre:
    """Heat in each volume of a stack, J/m³, on the basis of `heating_value` (per kilogram as fired)."""


@law("solid_share * basic_density * dry_heating_value", source="definition")
def stack_higher_heat(
    solid_share: Fraction, basic_density: Density, dry_heating_value: JoulePerKilogram
) -> JoulePerCubicMetre:
    """Heat in each volume of a stack, J/m³, by the higher value: water makes a stack heavier, not richer or poorer."""


@law("efficiency * lower_value / higher_value", source="definition", ranges={"higher_value": "1 MJ/kg to 60 MJ/kg"})
def efficiency_on_higher_value(
    efficiency: Fraction, lower_value: JoulePerKilogram, higher_value: JoulePerKilogram
) -> Fraction:
    """Efficiency on the higher heating value from one that is quoted on the lower; both values of one wood, J/kg."""


@law("log_length * stack_rows", source="definition")
def stack_depth(log_length: Metre, stack_rows: Count) -> Metre:
    """Depth of a stack of several rows of logs behind one another, m."""


@law("stacked_volume / (height * depth)", source="definition")
def stack_length(stacked_volume: CubicMetre, height: Metre, depth: Metre) -> Metre:
    """Length of a stack of this height and depth (the length of the logs, or several of them behind each other), m."""


@law("mass * moisture", source="definition")
def water_in_wood(mass: Kilogram, moisture: Fraction) -> Kilogram:
    """Water in wood of this weight, kg, which the fire must boil off."""


# The firebox: what one load weighs, and how many splits that is. `firing` says what heat it gives.


@law("firebox_volume * packing_density", source="definition")
def load_mass(firebox_volume: CubicMetre, packing_density: Density) -> Kilogram:
    """Weight of wood that fills a firebox, kg; `packing_density` is wood as fired over the space it is stacked in."""


@law("log_length * log_section * basic_density / (1 - moisture)", source="definition", ranges={"moisture": MOISTURE})
def split_mass(log_length: Metre, log_section: SquareMetre, basic_density: Density, moisture: Fraction) -> Kilogram:
    """Weight of one split with its water, kg; `log_section` is a round log's (`arithmetic.circle_area`)."""


@law("mass / piece_mass", source="definition")
def pieces_in(mass: Kilogram, piece_mass: Kilogram) -> Count:
    """How many pieces of one weight, splits or loads of the firebox, make up an amount of wood."""


# A winter's wood.


@law("(tap_load + standby_loss) * heating_days", source="first-law")
def heat_beside_rooms(tap_load: Watt, standby_loss: Watt, heating_days: Second) -> Joule:
    """Heat that taps take and the store loses outside in a winter, J."""


@law("yearly_heat * wood_share + heat_beside_rooms", source="first-law")
def heat_from_wood(yearly_heat: Joule, wood_share: Fraction, heat_beside_rooms: Joule) -> Joule:
    """Heat that the fire makes in a winter, J: its share of the rooms' heat, taps, what the store loses outside."""
