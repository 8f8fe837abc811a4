"""The flue: what a fire burns and sends up, whether it draws against the hood, where its gas turns to water.

Wood is taken by its composition without ash. Flue gas counts as air of its temperature: its carbon dioxide is heavier
and its steam lighter, and together they stay within 1.2 % of air from 15 to 30 % moisture and air ratios of 1.5 to 3.
"""

from calc.law import (
    AbsolutePascal,
    AirChanges,
    AirFlow,
    Constant,
    Count,
    CubicMetre,
    Density,
    DraughtPascal,
    Exponent,
    Factor,
    Fraction,
    JoulePerKilogram,
    Kelvin,
    KelvinDifference,
    MassFlow,
    Metre,
    SquareMetre,
    ThermalResistance,
    Velocity,
    Watt,
    WattPerKelvin,
    WattPerSquareMetreKelvin,
    law,
)
from calc.physics.air import AIR_GAS_CONSTANT
from calc.physics.pipes import GRAVITY

CARBON_WEIGHT = Constant(12.011, "1", source="definition", note="molar mass, kg/kmol")
HYDROGEN_WEIGHT = Constant(2.016, "1", source="definition", note="molar mass of H₂, kg/kmol")
OXYGEN_WEIGHT = Constant(31.998, "1", source="definition", note="molar mass of O₂, kg/kmol")
WATER_WEIGHT = Constant(18.015, "1", source="definition", note="molar mass, kg/kmol")
OXYGEN_IN_AIR_BY_WEIGHT = Constant(0.2314, "1", source="dry-air")
OXYGEN_IN_AIR = Constant(0.2095, "1", source="dry-air", note="by volume")
WATER_OVER_AIR = Constant(0.62198, "1", source="dry-air", note="molar mass of water over that of dry air")
FLUE_GAS_HEAT = Constant(1090.0, "J / kg / K", source="flue-gas-heat")
FLUE_ENDS = Constant(2.0, "1", source="ashrae-chimney", note="entry and speeding up 1.5, cap 0.5")
BEND_LOSS = Constant(0.75, "1", source="ashrae-chimney", note="a round elbow of 90°")
FIFTY = Constant(50.0, "Pa", source="definition")


# What burns, and the air it takes.


@law("(water_output + room_output) / efficiency", source="definition", ranges={"efficiency": "1 % to 110 %"})
def fuel_heat(water_output: Watt, room_output: Watt, efficiency: Fraction) -> Watt:
    """Heat that the wood brings into the fire, W, on the basis of the efficiency."""


@law("fuel_heat / heating_value", source="definition")
def burn_rate(fuel_heat: Watt, heating_value: JoulePerKilogram) -> MassFlow:
    """Wood burned as it is weighed, with its water, kg/s; heating value on the same basis as the efficiency."""


@law("burn_rate * peak_factor", source="definition", ranges={"peak_factor": "1 to 5"})
def peak_burn_rate(burn_rate: MassFlow, peak_factor: Factor) -> MassFlow:
    """Wood burned at the fire's height, as it is weighed, kg/s, from the mean over a burn."""


@law("burn_rate * (1 - moisture)", source="definition", ranges={"moisture": "0 % to 80 %"})
def dry_burn_rate(burn_rate: MassFlow, moisture: Fraction) -> MassFlow:
    """Oven-dry wood burned, kg/s."""


@law(
    "(carbon / carbon_weight + hydrogen / (2 * hydrogen_weight) - oxygen / oxygen_weight)"
    " * oxygen_weight / oxygen_in_air_by_weight",
    source="combustion",
    constants={
        "carbon_weight": CARBON_WEIGHT,
        "hydrogen_weight": HYDROGEN_WEIGHT,
        "oxygen_weight": OXYGEN_WEIGHT,
        "oxygen_in_air_by_weight": OXYGEN_IN_AIR_BY_WEIGHT,
    },
)
def least_air(carbon: Fraction, hydrogen: Fraction, oxygen: Fraction) -> Factor:
    """Dry air that just burns one weight of oven-dry wood of this composition, kg/kg."""


@law(
    "oxygen_in_air / (oxygen_in_air - oxygen_measured)",
    source="combustion",
    constants={"oxygen_in_air": OXYGEN_IN_AIR},
    ranges={"oxygen_measured": "0 % to 20.5 %"},
)
def air_ratio_from_oxygen(oxygen_measured: Fraction) -> Factor:
    """Air ratio (air given over the least air) from the oxygen that a sweep's meter finds in the dry flue gas."""


@law("least_air * air_ratio * dry_burn_rate", source="definition")
def fire_air(least_air: Factor, air_ratio: Factor, dry_burn_rate: MassFlow) -> MassFlow:
    """Air that the fire takes, kg/s."""


@law("air + burn_rate", source="definition")
def flue_gas(air: MassFlow, burn_rate: MassFlow) -> MassFlow:
    """Gas that goes up the flue, kg/s: all the air and all the wood, but for a little ash."""


@law("mass_flow / density", source="definition")
def volume_flow(mass_flow: MassFlow, density: Density) -> AirFlow:
    """Volume of a flow of air or gas at its density, m³/s."""


@law("mass_flow * flue_gas_heat", source="flue-gas-heat", constants={"flue_gas_heat": FLUE_GAS_HEAT})
def gas_capacity(mass_flow: MassFlow) -> WattPerKelvin:
    """Heat that the flue gas carries for each degree, W/K."""


# How hot it leaves.


@law("burn_rate * heating_value", source="definition")
def heat_fed(burn_rate: MassFlow, heating_value: JoulePerKilogram) -> Watt:
    """Heat that the wood brings into the fire, W, on the basis of this heating value."""


@law("indoor + (fuel_heat - water_output - room_output) / gas_capacity", source="first-law")
def gas_leaving(
    indoor: Kelvin, fuel_heat: Watt, water_output: Watt, room_output: Watt, gas_capacity: WattPerKelvin
) -> Kelvin:
    """Temperature of the gas that leaves the stove, K: it carries what neither water nor room has taken.

    With `fuel_heat` on the lower heating value, so that the heat of the steam stays in the steam. All of the wood is
    taken as burned: unburned smoke carries some of the heat and the gas is then cooler.
    """


@law("water + (entering - water) * exp(-conductance / gas_capacity)", source="counterflow")
def gas_after_jacket(
    entering: Kelvin, water: Kelvin, conductance: WattPerKelvin, gas_capacity: WattPerKelvin
) -> Kelvin:
    """Temperature of the gas after it has passed surfaces cooled by water of one temperature, K."""


@law("1 / (1 / inside_film + resistance + 1 / outside_film)", source="en-13384")
def flue_u_value(
    inside_film: WattPerSquareMetreKelvin, resistance: ThermalResistance, outside_film: WattPerSquareMetreKelvin
) -> WattPerSquareMetreKelvin:
    """U-value of a flue's wall with its films, W/(m²·K)."""


@law("u_value * pi * diameter * height / gas_capacity", source="en-13384")
def cooling_number(
    u_value: WattPerSquareMetreKelvin, diameter: Metre, height: Metre, gas_capacity: WattPerKelvin
) -> Factor:
    """How far a flue cools its gas: the wall's conductance over the gas's heat capacity."""


@law("surroundings + (entering - surroundings) * exp(-cooling_number)", source="en-13384")
def gas_at_top(entering: Kelvin, surroundings: Kelvin, cooling_number: Factor) -> Kelvin:
    """Temperature of the gas at the top of the flue, K."""


@law(
    "surroundings + (entering - surroundings) * (1 - exp(-cooling_number)) / cooling_number",
    source="en-13384",
    ranges={"cooling_number": "0.001 to 1000"},
)
def mean_gas(entering: Kelvin, surroundings: Kelvin, cooling_number: Factor) -> Kelvin:
    """Mean temperature of the gas over the height of the flue, K."""


# Whether it draws.


@law(
    "pressure / (air_gas_constant * temperature)",
    source="ashrae-air",
    constants={"air_gas_constant": AIR_GAS_CONSTANT},
    ranges={"temperature": "-80 °C to 3000 °C"},
)
def gas_density(pressure: AbsolutePascal, temperature: Kelvin) -> Density:
    """Density of air, and near enough of flue gas, kg/m³, at the air pressure of the place."""


@law(
    "gravity * height * (outdoor_density - flue_density)",
    source="en-13384",
    constants={"gravity": GRAVITY},
    safety=True,
)
def stack_draught(height: Metre, outdoor_density: Density, flue_density: Density) -> DraughtPascal:
    """Draught of a column of warm gas, Pa, before losses; `height` from the stove's outlet to the top of the flue."""


@law(
    "flue_ends + bend_loss * bends",
    source="ashrae-chimney",
    constants={"flue_ends": FLUE_ENDS, "bend_loss": BEND_LOSS},
    ranges={"bends": "0 to 20"},
)
def flue_fittings(bends: Count) -> Factor:
    """Loss of a flue's entry, cap and bends in velocity heads; `bends` are right angles, two halves count as one."""


@law("mass_flow / (density * area)", source="definition")
def gas_velocity(mass_flow: MassFlow, density: Density, area: SquareMetre) -> Velocity:
    """Speed of the gas in the flue, m/s."""


@law(
    "(friction_factor * height / diameter + loss_coefficient) * density * velocity ** 2 / 2",
    source="en-13384",
    safety=True,
)
def flue_loss(
    friction_factor: Factor,
    height: Metre,
    diameter: Metre,
    loss_coefficient: Factor,
    density: Density,
    velocity: Velocity,
) -> DraughtPascal:
    """Draught used up by friction and by bends, Pa; `loss_coefficient` adds bends, cap and entry in velocity heads."""


@law("stack_draught - flue_loss - depressurization", source="definition", safety=True)
def draught_left(
    stack_draught: DraughtPascal, flue_loss: DraughtPascal, depressurization: DraughtPascal
) -> DraughtPascal:
    """Draught left to pull air through the stove, Pa, while fans draw the house down. Below zero smoke comes out."""


@law("min(draught_left, draught_left_peak)", source="definition")
def least_draught(draught_left: DraughtPascal, draught_left_peak: DraughtPascal) -> DraughtPascal:
    """Draught left to pull air through the stove, Pa, on average or at the fire's peak, whichever is less."""


# The house and its fans.


@law("air_changes_at_fifty * house_volume", source="definition")
def leakage_at_fifty(air_changes_at_fifty: AirChanges, house_volume: CubicMetre) -> AirFlow:
    """Air that leaks through the house at 50 Pa, m³/s, from the air changes of a blower-door test."""


@law("fans + fire_flow", source="definition")
def air_drawn_out(fans: AirFlow, fire_flow: AirFlow) -> AirFlow:
    """Air drawn out of the house by fans and fire together, m³/s."""


@law(
    "fifty * (drawn_out / leakage_at_fifty) ** (1 / leak_exponent)",
    source="house-leakage",
    constants={"fifty": FIFTY},
    ranges={"leak_exponent": "0.5 to 1", "leakage_at_fifty": "0.01 m³/h to 1000000 m³/h"},
    safety=True,
)
def depressurization(drawn_out: AirFlow, leakage_at_fifty: AirFlow, leak_exponent: Exponent) -> DraughtPascal:
    """How far the house is drawn below the air outside, Pa, when the air drawn out must come in through its leaks.

    Wind and the house's own warmth come on top.
    """


@law(
    "max(drawn_out - leakage_at_fifty * (limit / fifty) ** leak_exponent, 0)",
    source="house-leakage",
    constants={"fifty": FIFTY},
    ranges={"leak_exponent": "0.5 to 1"},
    safety=True,
)
def make_up_air(
    drawn_out: AirFlow, leakage_at_fifty: AirFlow, limit: DraughtPascal, leak_exponent: Exponent
) -> AirFlow:
    """Air that must be let in besides the leaks so that the house is drawn down no further than `limit`, m³/s."""


# Where the gas turns to water.


@law(
    "relative_humidity * saturation_pressure",
    source="definition",
    ranges={"relative_humidity": "0 % to 100 %"},
)
def vapour_in_air(relative_humidity: Fraction, saturation_pressure: AbsolutePascal) -> AbsolutePascal:
    """Vapor pressure in room air, Pa, from its relative humidity and the saturation pressure at its temperature."""


@law(
    "water_over_air * vapour / (barometer - vapour)",
    source="dry-air",
    constants={"water_over_air": WATER_OVER_AIR},
)
def humidity_ratio(vapour: AbsolutePascal, barometer: AbsolutePascal) -> Factor:
    """Water carried by one weight of dry air, kg/kg."""


@law(
    "hydrogen / hydrogen_weight + (moisture / (1 - moisture) + humidity_ratio * least_air * air_ratio) / water_weight",
    source="combustion",
    constants={"hydrogen_weight": HYDROGEN_WEIGHT, "water_weight": WATER_WEIGHT},
    ranges={"moisture": "0 % to 80 %"},
)
def steam(
    hydrogen: Fraction, moisture: Fraction, humidity_ratio: Factor, least_air: Factor, air_ratio: Factor
) -> Factor:
    """Steam in the flue gas for each kilogram of oven-dry wood, kmol: burned hydrogen, the wood's water, the air's."""


@law(
    "carbon / carbon_weight + least_air * oxygen_in_air_by_weight / oxygen_weight * (air_ratio / oxygen_in_air - 1)",
    source="combustion",
    constants={
        "carbon_weight": CARBON_WEIGHT,
        "oxygen_in_air_by_weight": OXYGEN_IN_AIR_BY_WEIGHT,
        "oxygen_weight": OXYGEN_WEIGHT,
        "oxygen_in_air": OXYGEN_IN_AIR,
    },
)
def dry_gas(carbon: Fraction, least_air: Factor, air_ratio: Factor) -> Factor:
    """Dry flue gas for each kilogram of oven-dry wood, kmol: carbon dioxide, nitrogen and the oxygen left over."""


@law("carbon / carbon_weight / dry_gas", source="combustion", constants={"carbon_weight": CARBON_WEIGHT})
def carbon_dioxide_share(carbon: Fraction, dry_gas: Factor) -> Fraction:
    """Carbon dioxide in the dry flue gas, by volume, as a sweep's meter shows it."""


@law("steam / (steam + dry_gas) * barometer", source="definition")
def flue_vapour_pressure(steam: Factor, dry_gas: Factor, barometer: AbsolutePascal) -> AbsolutePascal:
    """Pressure of the steam in the flue gas, Pa; its boiling point is the dew point (`water.boiling_temperature`)."""


@law("gas - dew_point", source="definition")
def dew_margin(gas: Kelvin, dew_point: Kelvin) -> KelvinDifference:
    """How far flue gas is above its dew point, K; below zero water runs down the flue."""


@law("max(maker_minimum, dew_point + dew_margin, tar_floor)", source="common-practice")
def least_return(maker_minimum: Kelvin, dew_point: Kelvin, dew_margin: KelvinDifference, tar_floor: Kelvin) -> Kelvin:
    """Coolest water that may return to the stove, K: the hottest of what its maker asks, the dew point and a margin,
    and the floor that practice keeps because tar and acids condense above the dew point of water.
    """


@law("max(least_return - system_return, 0)", source="definition")
def lift_needed(least_return: Kelvin, system_return: Kelvin) -> KelvinDifference:
    """How much the water that comes back must be warmed before the stove, K; nothing when it is warm enough."""
