"""The tank of hot water between the fire and the house: what it holds, how large, how it charges, cools and weighs.

A mixed store has one temperature and ends when all of it is at the lowest useful one. A layered store (plug flow) gives
its water up at full heat and fills with what the emitters return. A real tank lies between.
"""

from math import exp, factorial

from calc.law import (
    AbsolutePascal,
    Conductivity,
    Constant,
    Count,
    CubicMetre,
    Density,
    Factor,
    Fraction,
    Joule,
    JoulePerCubicMetreKelvin,
    JoulePerKelvin,
    Kelvin,
    KelvinDifference,
    Kilogram,
    LoadPerArea,
    Metre,
    Second,
    SquareMetre,
    ThermalResistance,
    Velocity,
    Watt,
    WattPerKelvin,
    WattPerSquareMetreKelvin,
    law,
    method,
)
from calc.units import FOOT, GALLON

# --- What it holds and how long it lasts ---


@law("store_top - exchanger_approach", source="definition")
def charged_top(store_top: Kelvin, exchanger_approach: KelvinDifference) -> Kelvin:
    """Hottest the store gets, K, when a charging exchanger keeps it `exchanger_approach` below the stove's water."""


@law("volume * heat_content * max(top - low, 0)", source="first-law")
def usable_heat(volume: CubicMetre, heat_content: JoulePerCubicMetreKelvin, top: Kelvin, low: Kelvin) -> Joule:
    """Heat that a full tank gives up as all of it cools from `top` to `low`, J; zero when it is no hotter than `low`.

    `heat_content` is the mean between the two temperatures (`water.mean_volume_heat_content`); `volume` is the water in
    it, not the size on the label.
    """


@law("water_drop * min(load / design_load, 1)", source="first-law", ranges={"design_load": "1 W to 10000 kW"})
def drop_at_load(water_drop: KelvinDifference, load: Watt, design_load: Watt) -> KelvinDifference:
    """Drop from supply to return at a load, K: the flow stays, so it shrinks with the load; never more than design."""


@law("max(lowest_useful - water_drop, min(indoor, lowest_useful))", source="first-law")
def return_temperature(lowest_useful: Kelvin, water_drop: KelvinDifference, indoor: Kelvin) -> Kelvin:
    """Water that comes back from the emitters when they are fed at the lowest useful temperature, K.

    They heat a room at `indoor`, so whatever the drop, nothing comes back colder than that room.
    """


@law(
    "heat / (load + standby_loss)",
    source="first-law",
    ranges={"load": "1 W to 10000 kW", "standby_loss": "0 W to 10000 kW"},
)
def hours_carried(heat: Joule, load: Watt, standby_loss: Watt) -> Second:
    """Time for which stored heat carries a steady load and the tank's own loss, s.

    `standby_loss` is 0 where the tank stands in the heated space: what it loses is then part of the load.
    """


@law("usable_heat / heat_above_cold", source="definition", ranges={"heat_above_cold": "1 J to 1000 MWh"})
def usable_share(usable_heat: Joule, heat_above_cold: Joule) -> Fraction:
    """Usable heat as a share of all the heat in the tank above the cold water it was filled with."""


@law("heat / (heat_content * max(top - low, 0))", source="first-law", never="top <= low")
def volume_for_heat(heat: Joule, heat_content: JoulePerCubicMetreKelvin, top: Kelvin, low: Kelvin) -> CubicMetre:
    """Water that takes up `heat` as it warms from `low` to `top`, m³.

    Raises NoSolution when `top` is not above `low`: no tank is large enough.
    """


# --- How large: the ways a size is chosen ---

CUSTOM_VOLUME_PER_AREA = Constant(
    500 * GALLON / (1000 * FOOT**2), "m**3/m**2", source="common-practice", note="500 gal per 1000 ft²"
)
LITERS_PER_LITER = Constant(12.0, "1", source="bimschv-5-4")
BY_HAND_VOLUME_PER_POWER = Constant(55e-6, "m**3/W", source="bimschv-5-4", note="55 L/kW", kind="volume_per_power")
AUTOMATIC_VOLUME_PER_POWER = Constant(20e-6, "m**3/W", source="bimschv-5-4", note="20 L/kW", kind="volume_per_power")
EU_LEAST_VOLUME = Constant(0.3, "m**3", source="eu-2015-1189", note="300 L", kind="volume")
EU_VOLUME_PER_POWER = Constant(45e-6, "m**3/W", source="eu-2015-1189", note="45 L/kW", kind="volume_per_power")
EU_OUTPUT_WITHOUT_STORE = Constant(2700.0, "W", source="eu-2015-1189", note="2.7 kW", kind="power")
EU_AUTOMATIC_VOLUME_PER_POWER = Constant(
    20e-6, "m**3/W", source="eu-2015-1189", note="20 L/kW", kind="volume_per_power"
)
EN_VOLUME_PER_HEAT = Constant(15e-3 / 3.6e6, "m**3/J", source="en-303-5", note="15 L/kWh")
EN_LOAD_SHARE = Constant(0.3, "1", source="en-303-5")


@law("max(burn_heat - load * burn_time, 0)", source="first-law")
def surplus_of_burn(burn_heat: Joule, load: Watt, burn_time: Second) -> Joule:
    """Heat of one burn that the house does not use while it burns, J; the store must take it."""


@law("part_load * whole_burn", source="definition", ranges={"part_load": "1 % to 100 %"})
def part_of_burn(part_load: Fraction, whole_burn: Joule) -> Joule:
    """Heat of a burn that is laid smaller than a full load, J."""


@law("size_factor * volume", source="definition")
def scaled_volume(size_factor: Factor, volume: CubicMetre) -> CubicMetre:
    """A tank so many times as large, m³."""


@law("heat / load", source="definition", ranges={"load": "1 W to 10000 kW"})
def time_on_heat(heat: Joule, load: Watt) -> Second:
    """Time for which an amount of heat carries a load, s."""


@law("part / whole", source="definition", ranges={"whole": "1 J to 1000 MWh"})
def share_of(part: Joule, whole: Joule) -> Fraction:
    """One amount of heat as a share of another."""


@law("(load + standby_loss) * hours_wanted", source="first-law")
def heat_for_hours(load: Watt, standby_loss: Watt, hours_wanted: Second) -> Joule:
    """Heat that carries a load and the tank's own loss for the time wanted, J."""


@law(
    "volume_per_area * heated_area",
    constants={"volume_per_area": CUSTOM_VOLUME_PER_AREA},
    source="common-practice",
)
def volume_by_house_area(heated_area: SquareMetre) -> CubicMetre:
    """Tank by the custom of 500 US gallons for each 1000 square feet of house, m³; it knows neither fire nor house."""


@law(
    "liters_per_liter * firebox_volume",
    constants={"liters_per_liter": LITERS_PER_LITER},
    source="bimschv-5-4",
)
def volume_by_firebox(firebox_volume: CubicMetre) -> CubicMetre:
    """Tank that German law asks for by the fuel chamber, 12 L for each liter, m³."""


@law(
    "volume_per_power * rated_output",
    constants={"volume_per_power": BY_HAND_VOLUME_PER_POWER},
    source="bimschv-5-4",
)
def volume_by_rating(rated_output: Watt) -> CubicMetre:
    """Tank that German law asks for at least, by the rated output of a stove stoked by hand: 55 L/kW, m³."""


@law(
    "volume_per_power * rated_output",
    constants={"volume_per_power": AUTOMATIC_VOLUME_PER_POWER},
    source="bimschv-5-4",
)
def volume_by_rating_automatic(rated_output: Watt) -> CubicMetre:
    """Tank that German law asks for at least, by the rated output of an automatic stove: 20 L/kW, m³."""


@law("max(by_firebox, by_rating)", source="bimschv-5-4")
def volume_by_german_law(by_firebox: CubicMetre, by_rating: CubicMetre) -> CubicMetre:
    """The larger of the two German sizes for a stove stoked by hand, m³. The law leaves out single-room heaters."""


@law(
    "max(least_volume, volume_per_power * rated_output * (1 - output_without_store / rated_output))",
    constants={
        "least_volume": EU_LEAST_VOLUME,
        "volume_per_power": EU_VOLUME_PER_POWER,
        "output_without_store": EU_OUTPUT_WITHOUT_STORE,
    },
    source="eu-2015-1189",
    ranges={"rated_output": "0.1 kW to 1000 kW"},
)
def volume_by_eu_formula(rated_output: Watt) -> CubicMetre:
    """Tank that European law recommends beside a boiler stoked by hand, m³; 300 L up to 9.4 kW.

    The law covers boilers that lose at most 6 % of their output to the room, so not most stoves.
    """


@law(
    "volume_per_power * rated_output",
    constants={"volume_per_power": EU_AUTOMATIC_VOLUME_PER_POWER},
    source="eu-2015-1189",
)
def volume_by_eu_formula_automatic(rated_output: Watt) -> CubicMetre:
    """Tank that European law recommends beside a boiler stoked automatically, m³: 20 L/kW."""


@law(
    "volume_per_heat * burn_time * rated_output * (1 - load_share * house_load / lowest_output)",
    constants={"volume_per_heat": EN_VOLUME_PER_HEAT, "load_share": EN_LOAD_SHARE},
    source="en-303-5",
    ranges={"lowest_output": "0.1 kW to 1000 kW"},
)
def volume_by_en_303_5(burn_time: Second, rated_output: Watt, house_load: Watt, lowest_output: Watt) -> CubicMetre:
    """Tank by the formula of EN 303-5 from burn time, rated output, house load and the lowest output, m³."""


# --- How it charges and cools ---


@law("volume * heat_content", source="first-law")
def heat_capacity(volume: CubicMetre, heat_content: JoulePerCubicMetreKelvin) -> JoulePerKelvin:
    """Heat that the whole tank holds for each degree, J/K."""


@law("heat / max(water_output - load, 0)", source="first-law", never="water_output <= load")
def time_to_charge(heat: Joule, water_output: Watt, load: Watt) -> Second:
    """Time a fire needs to put `heat` into the store while the house takes its load, s; no loss from the tank.

    Raises NoSolution when the fire gives no more than the house takes: the store never charges.
    """


@law(
    "start + (water_output - load) * elapsed / heat_capacity",
    source="first-law",
    ranges={"heat_capacity": "1 J/K to 1000 kWh/K"},
)
def temperature_charged(
    start: Kelvin, water_output: Watt, load: Watt, elapsed: Second, heat_capacity: JoulePerKelvin
) -> Kelvin:
    """Temperature of a mixed store after a time of charging (or of feeding the house), K; no loss from the tank."""


@law(
    "surroundings + (water_output - load) / conductance",
    source="first-law",
    ranges={"conductance": "0.001 W/K to 100000 W/K"},
)
def steady_temperature(surroundings: Kelvin, water_output: Watt, load: Watt, conductance: WattPerKelvin) -> Kelvin:
    """Temperature at which a mixed store would settle, K: what comes in is then what goes out through its walls."""


@law(
    "heat_capacity / conductance",
    source="first-law",
    ranges={"conductance": "0.001 W/K to 100000 W/K"},
)
def time_constant(heat_capacity: JoulePerKelvin, conductance: WattPerKelvin) -> Second:
    """Time in which a mixed tank closes 63 % of its distance to the temperature it is heading for, s."""


@law(
    "heading_for + (start - heading_for) * exp(-elapsed / time_constant)",
    source="first-law",
    ranges={"time_constant": "1 s to 1000 years"},
)
def temperature_after(start: Kelvin, heading_for: Kelvin, elapsed: Second, time_constant: Second) -> Kelvin:
    """Temperature of a mixed tank after a time, K.

    `heading_for` is the temperature of its surroundings while it stands, its steady temperature while it charges.
    """


@law(
    "time_constant * log((heading_for - start) / (heading_for - target))",
    source="first-law",
    never="target < min(start, heading_for) or target > max(start, heading_for) or target == heading_for",
)
def time_to_reach(start: Kelvin, target: Kelvin, heading_for: Kelvin, time_constant: Second) -> Second:
    """Time a mixed tank needs from `start` to `target` on its way to the temperature it is heading for, s.

    Raises NoSolution when `target` does not lie on that way: it is never reached.
    """


@law("cold + (start - cold) * exp(-drawn / volume)", source="first-law", ranges={"volume": "0.001 m³ to 10000 m³"})
def temperature_drawn_mixed(start: Kelvin, cold: Kelvin, drawn: CubicMetre, volume: CubicMetre) -> Kelvin:
    """Temperature of a stirred tank after cold water has taken the place of what was drawn, K."""


def _arrivals_below(layers: int, expected: float) -> float:
    """Chance of fewer than `layers` events where `expected` are expected (Poisson)."""
    return exp(-expected) * sum(expected**count / factorial(count) for count in range(layers))


@method(
    "Share of the tank's first heat left in the water at its outlet: the tank as that many stirred layers in a row, "
    "summed as a Poisson series.",
    source="tanks-in-series",
    ranges={"layers": "1 to 100", "tank_volumes_drawn": "0 to 7"},
)
def outlet_share(layers: Count, tank_volumes_drawn: Factor) -> Fraction:
    """(outlet - cold) / (start - cold) after so many tank volumes were drawn from a tank of stirred layers in series.

    One layer is a stirred tank; more than about 40 are close to plug flow. `layers` is rounded to a whole number.
    """
    layers = round(layers)
    return _arrivals_below(layers, layers * tank_volumes_drawn)


@method(
    "Share of the tank's heat that came out: the same layers, their outlet added up over what was drawn.",
    source="tanks-in-series",
    ranges={"layers": "1 to 100", "tank_volumes_drawn": "0 to 7"},
)
def delivered_share(layers: Count, tank_volumes_drawn: Factor) -> Fraction:
    """Heat that came out, as a share of all that the tank held above the cold water, after so many tank volumes."""
    layers = round(layers)
    expected = layers * tank_volumes_drawn
    return tank_volumes_drawn * _arrivals_below(layers, expected) + 1 - _arrivals_below(layers + 1, expected)


# --- What it loses ---


@law(
    "pi * height / (log(1 + 2 * insulation / diameter) / (2 * conductivity)"
    " + 1 / (film * (diameter + 2 * insulation)))",
    source="cylinder-conduction",
    ranges={
        "diameter": "0.05 m to 20 m",
        "insulation": "0 m to 2 m",
        "conductivity": "0.001 W/(m·K) to 500 W/(m·K)",
        "film": "0.1 W/(m²·K) to 1000 W/(m²·K)",
    },
)
def side_conductance(
    diameter: Metre, height: Metre, insulation: Metre, conductivity: Conductivity, film: WattPerSquareMetreKelvin
) -> WattPerKelvin:
    """Heat lost for each degree through the round side of a tank, W/K.

    `diameter` and `height` are the tank's own, `insulation` its thickness, `film` the heat passed from the outside
    surface to the air (8 to 9 W/(m²·K) indoors). The water inside is taken to hold the wall at its own temperature.
    """


@law(
    "pi / 2 * diameter ** 2 / (insulation / conductivity + 1 / film)",
    source="cylinder-conduction",
    ranges={
        "insulation": "0 m to 2 m",
        "conductivity": "0.001 W/(m·K) to 500 W/(m·K)",
        "film": "0.1 W/(m²·K) to 1000 W/(m²·K)",
    },
)
def ends_conductance(
    diameter: Metre, insulation: Metre, conductivity: Conductivity, film: WattPerSquareMetreKelvin
) -> WattPerKelvin:
    """Heat lost for each degree through the two flat ends of a tank, W/K; the rim of the insulation is left out."""


@law("thickness / resistance", source="definition", ranges={"resistance": "0.001 m²·K/W to 100 m²·K/W"})
def conductivity_of(thickness: Metre, resistance: ThermalResistance) -> Conductivity:
    """Conductivity of an insulation that has an R-value at a thickness, W/(m·K)."""


@law("(side + ends) * fittings", source="definition")
def shell_conductance(side: WattPerKelvin, ends: WattPerKelvin, fittings: Factor) -> WattPerKelvin:
    """Heat lost for each degree by the whole tank, W/K; `fittings` raises it for pipes, legs and gaps (1 for none)."""


@law("conductance * (store_temperature - surroundings)", source="first-law")
def standby_loss(conductance: WattPerKelvin, store_temperature: Kelvin, surroundings: Kelvin) -> Watt:
    """Heat that a tank loses to what stands around it, W; below zero when the tank is the cooler."""


@law("heat_capacity * (start - finish)", source="first-law")
def heat_lost(heat_capacity: JoulePerKelvin, start: Kelvin, finish: Kelvin) -> Joule:
    """Heat that left a tank as it cooled from `start` to `finish`, J."""


STILL_AIR = Constant(0.089, "W/m**2/Pa", source="ashrae-pools")
MOVING_AIR = Constant(0.0782, "W/m**2/Pa/(m/s)", source="ashrae-pools")


@law(
    "open_area * (water_vapour - air_vapour) * (still_air + moving_air * air_speed)",
    constants={
        "still_air": STILL_AIR,
        "moving_air": MOVING_AIR,
    },
    source="ashrae-pools",
    ranges={"air_speed": "0 m/s to 3 m/s"},
)
def evaporation_loss(
    open_area: SquareMetre, water_vapour: AbsolutePascal, air_vapour: AbsolutePascal, air_speed: Velocity
) -> Watt:
    """Heat that leaves with the steam of an open tank, W.

    `open_area` is the water surface the lid leaves bare, `water_vapour` the vapor pressure at the water's temperature,
    `air_vapour` that in the air of the place. Measured on pools below 50 °C; hotter water is beyond what was measured,
    so take the result as the size of the loss, not its digits.
    """


@law("relative_humidity * saturation", source="definition", ranges={"relative_humidity": "0 % to 100 %"})
def air_vapour(relative_humidity: Fraction, saturation: AbsolutePascal) -> AbsolutePascal:
    """Vapor pressure in air of a relative humidity, Pa; `saturation` is that of water at the air's temperature."""


@law("shell_loss + evaporation", source="first-law")
def open_store_loss(shell_loss: Watt, evaporation: Watt) -> Watt:
    """All that an open store loses, W: through its walls and with the vapor that leaves."""


@law("loss / (store_temperature - surroundings)", source="definition")
def conductance_of_loss(loss: Watt, store_temperature: Kelvin, surroundings: Kelvin) -> WattPerKelvin:
    """Heat lost for each degree that makes up a loss at one temperature, W/K."""


@law("share * heat", source="definition")
def part_of_heat(share: Fraction, heat: Joule) -> Joule:
    """A share of an amount of heat, J."""


# --- Where it goes ---

GRAVITY = Constant(9.80665, "m/s**2", source="definition", note="standard gravity")


@law("pi / 4 * diameter ** 2 * height", source="definition")
def cylinder_volume(diameter: Metre, height: Metre) -> CubicMetre:
    """Volume of an upright round tank with flat ends, m³."""


@law("4 * volume / (pi * diameter ** 2)", source="definition", ranges={"diameter": "0.01 m to 100 m"})
def cylinder_height(volume: CubicMetre, diameter: Metre) -> Metre:
    """Height of an upright round tank with flat ends that holds a volume, m."""


@law("(4 * volume / (pi * slenderness)) ** (1 / 3)", source="definition", ranges={"slenderness": "0.1 to 20"})
def cylinder_diameter(volume: CubicMetre, slenderness: Factor) -> Metre:
    """Diameter of an upright round tank whose height is `slenderness` times its diameter, m."""


@law("size + 2 * insulation", source="definition")
def size_insulated(size: Metre, insulation: Metre) -> Metre:
    """Diameter or height of a tank with insulation on both sides, m."""


@law("size + more", source="definition")
def size_with(size: Metre, more: Metre) -> Metre:
    """A size with something added on one side, m."""


@law("width * depth", source="definition")
def box_area(width: Metre, depth: Metre) -> SquareMetre:
    """Footprint of a box with flat sides, m²."""


@law("footprint * height", source="definition")
def box_volume(footprint: SquareMetre, height: Metre) -> CubicMetre:
    """Volume of a tank with upright sides, m³."""


@law("min(width, depth)", source="definition")
def narrower(width: Metre, depth: Metre) -> Metre:
    """The narrower of two sides, m: what must pass a door."""


@law("sqrt(height ** 2 + diameter ** 2)", source="definition")
def tilted_height(height: Metre, diameter: Metre) -> Metre:
    """Height of room that a round tank needs while it is tipped up from lying to standing, m: its diagonal."""


@law("opening - size", source="definition")
def clearance(opening: Metre, size: Metre) -> Metre:
    """Space left when something of a size goes through an opening, m; below zero it does not fit."""


@law("volume * density + empty_weight", source="definition", safety=True)
def full_weight(volume: CubicMetre, density: Density, empty_weight: Kilogram) -> Kilogram:
    """Weight of a tank full of water, kg; `density` is that of the cold water it is filled with, its heaviest."""


@law(
    "weight * gravity / footprint",
    constants={"gravity": GRAVITY},
    source="definition",
    ranges={"footprint": "0.0001 m² to 1000 m²"},
    safety=True,
)
def floor_load(weight: Kilogram, footprint: SquareMetre) -> LoadPerArea:
    """Load that a weight lays on the floor under it, spread evenly over its footprint, Pa."""


@law("load / allowable", source="definition", ranges={"allowable": "1 lb/ft2 to 100000 lb/ft2"}, safety=True)
def load_share(load: LoadPerArea, allowable: LoadPerArea) -> Fraction:
    """Load as a share of what the floor may carry; above 100 % it is overloaded."""


@law(
    "weight * gravity / allowable",
    constants={"gravity": GRAVITY},
    source="definition",
    ranges={"allowable": "1 lb/ft2 to 100000 lb/ft2"},
)
def area_for_load(weight: Kilogram, allowable: LoadPerArea) -> SquareMetre:
    """Floor over which a weight must be spread so that no more than `allowable` presses on it, m²."""
