"""A hot-water coil in a duct: what it gives, how warm the air comes out, what the ducts lose, and the coolest water.

Air counts by its actual volume at the coil's entrance and by the air pressure of the place. The coil is a crossflow
exchanger with both streams unmixed, by its exact effectiveness. Everything is linear in the temperatures, so that the
coolest water for a load follows without a search.
"""

import math

from calc.law import (
    AbsolutePascal,
    AirFlow,
    Constant,
    Factor,
    Fraction,
    Kelvin,
    Metre,
    NoSolution,
    SquareMetre,
    ThermalResistance,
    Watt,
    WattPerKelvin,
    WattPerSquareMetreKelvin,
    find_root,
    law,
    method,
)

AIR_GAS_CONSTANT = Constant(287.055, "J / kg / K", source="ashrae-air")
AIR_SPECIFIC_HEAT = Constant(1006.0, "J / kg / K", source="ashrae-air")
SEA_LEVEL_PRESSURE = Constant(101325.0, "Pa", source="standard-atmosphere")
STANDARD_AIR_DENSITY = Constant(1.2014, "kg / m**3", source="ashrae-air", note="0.075 lb/ft³")

MOST_TRANSFER_UNITS = 50.0  # beyond it the effectiveness no longer changes in any printed digit
TRANSFER_UNITS = "0 to 50"


@law(
    "site_pressure / sea_level_pressure",
    source="definition",
    constants={"sea_level_pressure": SEA_LEVEL_PRESSURE},
)
def pressure_ratio(site_pressure: AbsolutePascal) -> Fraction:
    """Air pressure here as a share of that at sea level: what equally warm air carries in comparison."""


@law(
    "air_flow * site_pressure * air_specific_heat / (air_gas_constant * entering_air)",
    source="ashrae-air",
    constants={"air_specific_heat": AIR_SPECIFIC_HEAT, "air_gas_constant": AIR_GAS_CONSTANT},
    ranges={"entering_air": "-40 °C to 60 °C"},
)
def air_capacity(air_flow: AirFlow, site_pressure: AbsolutePascal, entering_air: Kelvin) -> WattPerKelvin:
    """Heat that an air flow carries, W/K; actual volume (m³/s) at entering temperature and site pressure."""


@law(
    "standard_flow * standard_air_density * air_specific_heat",
    source="ashrae-air",
    constants={"standard_air_density": STANDARD_AIR_DENSITY, "air_specific_heat": AIR_SPECIFIC_HEAT},
)
def standard_air_capacity(standard_flow: AirFlow) -> WattPerKelvin:
    """Heat that a flow given in standard air (m³/s of air at 1.2014 kg/m³) carries, W/K, at any altitude."""


@law("min(water_capacity, air_capacity)", source="definition")
def least_capacity(water_capacity: WattPerKelvin, air_capacity: WattPerKelvin) -> WattPerKelvin:
    """The smaller of the two streams' heat capacities (W/K): it sets the most that can pass."""


@law("min(water_capacity, air_capacity) / max(water_capacity, air_capacity)", source="definition")
def capacity_ratio(water_capacity: WattPerKelvin, air_capacity: WattPerKelvin) -> Factor:
    """The smaller heat capacity over the larger, 0 to 1."""


@law("coil_conductance / least_capacity", source="definition")
def transfer_units(coil_conductance: WattPerKelvin, least_capacity: WattPerKelvin) -> Factor:
    """Number of transfer units (NTU): the coil's conductance UA over the smaller heat capacity (both W/K)."""


@method(
    "Crossflow with both streams unmixed, exact series: 1/(C·N) · Σ [1 − e^−N Σ N^m/m!] · [1 − e^−CN Σ (CN)^m/m!], "
    "n from 0, m from 0 to n.",
    source="crossflow-series",
    ranges={"transfer_units": TRANSFER_UNITS, "capacity_ratio": "0 to 1"},
)
def effectiveness(transfer_units: Factor, capacity_ratio: Factor) -> Fraction:
    """Share of the most heat that could pass which does pass, for crossflow with both streams unmixed.

    Without a second stream's warming (ratio 0) it is 1 − exp(−NTU). Raises OutOfRange beyond 50 transfer units.
    """
    second = capacity_ratio * transfer_units
    if second < 1e-12:  # the limit, before the quotient below runs out of digits
        return -math.expm1(-transfer_units)
    count = int(transfer_units + 12 * math.sqrt(transfer_units)) + 30
    return math.sumprod(_poisson_tails(transfer_units, count), _poisson_tails(second, count)) / second


def _poisson_tails(mean: float, count: int) -> list[float]:
    """For n from 0: 1 − e^−mean · Σ mean^m/m! (m from 0 to n), summed from the far end so that small ones stay true."""
    term = math.exp(-mean)
    terms = []
    for number in range(1, count + 40):
        term *= mean / number
        terms.append(term)
    tails, tail = [], 0.0
    for term in reversed(terms):
        tail += term
        tails.append(tail)
    return tails[::-1][:count]


@method(
    "The number of transfer units at which the crossflow series gives this effectiveness, found as a root.",
    source="crossflow-series",
    ranges={"rated_effectiveness": "0 % to 100 %", "capacity_ratio": "0 to 1"},
)
def transfer_units_for(rated_effectiveness: Fraction, capacity_ratio: Factor) -> Factor:
    """Transfer units that a coil must have to reach this effectiveness at this ratio of the heat capacities.

    Raises NoSolution where no coil of this kind reaches it: the rating asks for more than the two flows allow.
    """
    transfer_units = find_root(
        lambda units: effectiveness(units, capacity_ratio) - rated_effectiveness, 0.0, MOST_TRANSFER_UNITS
    )
    if transfer_units is None:
        raise NoSolution("transfer_units_for")
    return transfer_units


@law("rated_heat / (least_capacity * (rated_water - rated_air))", source="crossflow-series")
def rated_effectiveness(
    rated_heat: Watt, least_capacity: WattPerKelvin, rated_water: Kelvin, rated_air: Kelvin
) -> Fraction:
    """Effectiveness that one rated point shows: its heat (W) over the most that its flows and temperatures allow."""


@law("transfer_units * least_capacity", source="definition")
def coil_conductance(transfer_units: Factor, least_capacity: WattPerKelvin) -> WattPerKelvin:
    """The coil's conductance UA in W/K: heat passed for each K between water and air."""


@law("emitter_factor * coil_conductance", source="definition")
def scaled_conductance(emitter_factor: Factor, coil_conductance: WattPerKelvin) -> WattPerKelvin:
    """Conductance UA in W/K of so many times the coil."""


@law("capacity / rated_capacity", source="definition")
def flow_ratio(capacity: WattPerKelvin, rated_capacity: WattPerKelvin) -> Factor:
    """A stream's mass flow now over that at the rated point, from the heat capacities of both (W/K)."""


@law(
    "rated_conductance * (1 + side_ratio) / (air_ratio ** -air_exponent + side_ratio * water_ratio ** -water_exponent)",
    source="coil-scaling",
    constants={
        "air_exponent": Constant(0.8, "1", source="coil-scaling"),
        "water_exponent": Constant(0.85, "1", source="coil-scaling"),
    },
    ranges={"air_ratio": "0.1 to 5", "water_ratio": "0.1 to 5", "side_ratio": "0 to 10"},
)
def conductance_at_flows(
    rated_conductance: WattPerKelvin, air_ratio: Factor, water_ratio: Factor, side_ratio: Factor
) -> WattPerKelvin:
    """Conductance UA in W/K at other flows: each side passes heat with its mass flow to the power 0.8 and 0.85.

    `side_ratio` is the air side's conductance over the water side's at the rated point, 0.5 to 0.7 for finned coils.
    Raises OutOfRange below a tenth or above five times the rated flows.
    """


@law("effectiveness * least_capacity * (entering_water - entering_air)", source="crossflow-series")
def coil_heat(
    effectiveness: Fraction, least_capacity: WattPerKelvin, entering_water: Kelvin, entering_air: Kelvin
) -> Watt:
    """Heat in W from the coil's water to its air; negative where the water is cooler than the air."""


@law("entering_air + coil_heat / air_capacity", source="first-law")
def air_out(entering_air: Kelvin, coil_heat: Watt, air_capacity: WattPerKelvin) -> Kelvin:
    """Temperature in K of the air that leaves the coil."""


@law("entering_water - coil_heat / water_capacity", source="first-law")
def water_out(entering_water: Kelvin, coil_heat: Watt, water_capacity: WattPerKelvin) -> Kelvin:
    """Temperature in K of the water that leaves the coil."""


@law("entering_air + coil_heat / (effectiveness * least_capacity)", source="crossflow-series")
def entering_water(
    entering_air: Kelvin, coil_heat: Watt, effectiveness: Fraction, least_capacity: WattPerKelvin
) -> Kelvin:
    """Coolest water in K from which the coil still gives `coil_heat` (W) at these flows."""


@law("pi * diameter * length", source="definition")
def round_duct_surface(diameter: Metre, length: Metre) -> SquareMetre:
    """Surface in m² of a round duct."""


@law("2 * (width + height) * length", source="definition")
def rectangular_duct_surface(width: Metre, height: Metre, length: Metre) -> SquareMetre:
    """Surface in m² of a rectangular duct."""


@law(
    "1 / (insulation + inside_film + outside_film)",
    source="iso-6946",
    constants={
        "inside_film": Constant(0.04, "m**2 * K / W", source="iso-6946", note="moving air"),
        "outside_film": Constant(0.13, "m**2 * K / W", source="iso-6946", note="still air"),
    },
    ranges={"insulation": "0 m²·K/W to 10 m²·K/W"},
)
def duct_u_value(insulation: ThermalResistance) -> WattPerSquareMetreKelvin:
    """Heat lost in W/m²K through a duct's wall: insulation (m²K/W, 0 for bare metal) and an air film on each side."""


@law("exp(-duct_u_value * duct_surface / air_capacity)", source="duct-loss")
def kept_share(
    duct_u_value: WattPerSquareMetreKelvin, duct_surface: SquareMetre, air_capacity: WattPerKelvin
) -> Fraction:
    """Share of the air's excess over the duct's surroundings that is left at the duct's end."""


@law("duct_surroundings + (air_out - duct_surroundings) * kept_share", source="duct-loss")
def delivered_air(duct_surroundings: Kelvin, air_out: Kelvin, kept_share: Fraction) -> Kelvin:
    """Temperature in K of the air at the register: it falls exponentially toward the duct's surroundings."""


@law(
    "air_capacity * (1 - leakage) * (delivered_air - indoor)",
    source="first-law",
    ranges={"leakage": "0 % to 90 %"},
)
def delivered_heat(air_capacity: WattPerKelvin, leakage: Fraction, delivered_air: Kelvin, indoor: Kelvin) -> Watt:
    """Heat in W that reaches the rooms; the leaked share of the air is taken as lost at the register's temperature.

    The cold air that replaces what leaked out of the house is not counted.
    """


@law("indoor + load / (air_capacity * (1 - leakage))", source="first-law", ranges={"leakage": "0 % to 90 %"})
def needed_delivered_air(indoor: Kelvin, load: Watt, air_capacity: WattPerKelvin, leakage: Fraction) -> Kelvin:
    """Temperature in K that the air must have at the register to bring `load` (W) into the rooms."""


@law("duct_surroundings + (delivered_air - duct_surroundings) / kept_share", source="duct-loss")
def needed_air_out(duct_surroundings: Kelvin, delivered_air: Kelvin, kept_share: Fraction) -> Kelvin:
    """Temperature in K at which the air must leave the coil to arrive at `delivered_air` (K)."""


@law("air_capacity * (air_out - entering_air)", source="first-law")
def heat_to_air(air_capacity: WattPerKelvin, air_out: Kelvin, entering_air: Kelvin) -> Watt:
    """Heat in W that warms the air from the coil's entrance to its exit."""


@law("load / (1 - duct_loss)", source="definition", ranges={"duct_loss": "0 % to 90 %"})
def heat_before_ducts(load: Watt, duct_loss: Fraction) -> Watt:
    """Heat in W that the coil must give when a known share of it is lost between coil and rooms."""


@law("coil_heat * (1 - duct_loss)", source="definition", ranges={"duct_loss": "0 % to 90 %"})
def heat_after_ducts(coil_heat: Watt, duct_loss: Fraction) -> Watt:
    """Heat in W that reaches the rooms when a known share of the coil's heat is lost on the way."""


@law("1 - delivered_heat / coil_heat", source="definition")
def duct_loss(delivered_heat: Watt, coil_heat: Watt) -> Fraction:
    """Share of the coil's heat that does not reach the rooms."""
