"""How often a fire must be lit: the heat of one load of wood, the loads a day, and the time from lighting to lighting.

Loads of wood and lightings are two counts. One lighting may burn several loads, until the store is full; then the stove
is cold until the store has come down to its lowest useful temperature.
"""

from calc.law import (
    Constant,
    Count,
    CubicMetre,
    Density,
    Fraction,
    Joule,
    JoulePerCubicMetreKelvin,
    JoulePerKilogram,
    Kelvin,
    NoSolution,
    PerDay,
    Second,
    Watt,
    law,
)
from calc.units import DAY

SECONDS_PER_DAY = Constant(DAY, "s/day", source="definition")

# --- One load of wood ---


@law(
    "firebox_volume * packing_density * heating_value * efficiency * share_to_water",
    source="first-law",
    ranges={"efficiency": "1 % to 110 %", "share_to_water": "0 % to 100 %"},
)
def heat_per_load(
    firebox_volume: CubicMetre,
    packing_density: Density,
    heating_value: JoulePerKilogram,
    efficiency: Fraction,
    share_to_water: Fraction,
) -> Joule:
    """Heat that one firebox of wood gives the water, J.

    `packing_density` is wood (with its moisture) for each firebox volume; heating value and efficiency must be on the
    same basis, both lower or both higher.
    """


@law("water_output / (water_output + room_output)", source="definition", ranges={"water_output": "1 W to 10000 kW"})
def share_to_water(water_output: Watt, room_output: Watt) -> Fraction:
    """Share of a stove's useful heat that goes to the water; the rest warms the room it stands in."""


@law("water_output * burn_time", source="definition")
def heat_at_output(water_output: Watt, burn_time: Second) -> Joule:
    """Heat that a burn gives the water at a mean output, J."""


@law("min(heat_at_output, heat_per_load)", source="first-law")
def water_heat_of_burn(heat_at_output: Joule, heat_per_load: Joule) -> Joule:
    """Heat of one burn to the water, J: no more than the wood in one load holds, whatever output is printed."""


@law("room_output * water_heat / heat_at_output", source="first-law")
def room_output_of_load(room_output: Watt, water_heat: Joule, heat_at_output: Joule) -> Watt:
    """Heat to the room while one load burns, W: it falls short with the water's when the wood holds less than rated."""


@law("min(room_output, room_can_use, load)", source="first-law")
def room_heat_counted(room_output: Watt, room_can_use: Watt, load: Watt) -> Watt:
    """Heat to the room that saves heat from the store while it burns, W.

    Only as much as the room loses or passes on, and never more than the house needs: the rest overheats the room.
    """


@law("water_heat + room_heat_counted * burn_time", source="first-law")
def heat_per_burn(water_heat: Joule, room_heat_counted: Watt, burn_time: Second) -> Joule:
    """Useful heat of one burn, to the water and to the room, J."""


# --- How often ---


@law(
    "load * seconds_per_day / heat_per_burn",
    constants={"seconds_per_day": SECONDS_PER_DAY},
    source="first-law",
    ranges={"heat_per_burn": "1 J to 1000 MWh"},
)
def burns_per_day(load: Watt, heat_per_burn: Joule) -> PerDay:
    """Loads of wood burned in a day that make up a steady load, 1/day."""


@law(
    "burns_per_day * burn_time / seconds_per_day",
    constants={"seconds_per_day": SECONDS_PER_DAY},
    source="definition",
)
def burning_share(burns_per_day: PerDay, burn_time: Second) -> Fraction:
    """Share of the day that a fire burns; above 100 % one stove cannot carry the load."""


@law(
    "load * day / fire_hours",
    constants={"day": Constant(DAY, "s", source="definition", kind="time")},
    source="first-law",
    ranges={"fire_hours": "1 h to 24 h"},
)
def output_for_hours(load: Watt, fire_hours: Second) -> Watt:
    """Mean output to the water, W, of a stove that makes up a day's steady `load` in so many hours of fire."""


@law("heat_per_burn / burn_time", source="definition", ranges={"burn_time": "1 s to 1000 h"})
def output_while_burning(heat_per_burn: Joule, burn_time: Second) -> Watt:
    """Useful heat, to water and room, averaged over a burn, W."""


@law("hours_to_charge / burn_time", source="definition", ranges={"burn_time": "1 s to 1000 h"})
def loads_to_charge(hours_to_charge: Second, burn_time: Second) -> Count:
    """Loads of wood, one after another, that fill the store from its lowest useful temperature."""


@law(
    "burning_share * day",
    constants={"day": Constant(DAY, "s", source="definition", kind="time")},
    source="definition",
)
def hours_tended(burning_share: Fraction) -> Second:
    """Time of a day with a fire in the stove, s, from its share of the day."""


@law(
    "min(heat / max(water_output + min(room_output, room_can_use, load) - load, 0), waking_hours)",
    source="first-law",
    never="water_output + min(room_output, room_can_use, load) <= load",
)
def hours_lit(
    heat: Joule, water_output: Watt, room_output: Watt, room_can_use: Watt, load: Watt, waking_hours: Second
) -> Second:
    """Time of fire in one lighting, s: the loads that fill a store of `heat` (J) at the rated output, and no longer.

    `water_output` and `room_output` (W) are the rated ones, of the latter no more than the room can use or the house
    (`load`, W) needs. Nobody feeds a fire for more than the `waking_hours` (s) of a day.
    Raises NoSolution where the fire gives no more than the house takes.
    """


@law("min(heat, max(fire_output - load, 0) * hours_lit)", source="first-law", never="fire_output <= load")
def heat_stored(heat: Joule, fire_output: Watt, load: Watt, hours_lit: Second) -> Joule:
    """Heat in the store after one lighting, J: what the house left of the fire's heat, no more than the store holds.

    Raises NoSolution where the fire gives no more than the house takes.
    """


@law("hours_lit + hours_cold", source="definition")
def hours_between(hours_lit: Second, hours_cold: Second) -> Second:
    """Time from one lighting to the next, s: that of the fire, then that of the cold stove while the store lasts."""


@law(
    "seconds_per_day / burns_per_day",
    constants={"seconds_per_day": SECONDS_PER_DAY},
    source="definition",
    ranges={"burns_per_day": "0.000000001 a day to 1000 a day"},
)
def hours_between_single(burns_per_day: PerDay) -> Second:
    """Time from one lighting to the next when each lighting burns one load, s."""


@law("store_room / burn_heat", source="definition", ranges={"burn_heat": "1 J to 1000 MWh"})
def share_that_fits(store_room: Joule, burn_heat: Joule) -> Fraction:
    """Room left in the store as a share of the heat one burn brings it; below 100 % the burn does not fit."""


# --- From the thermometers on the tank ---


@law("heat / load", source="first-law", never="load <= 0")
def time_until_lighting(heat: Joule, load: Watt) -> Second:
    """Time until the usable heat is gone, s. Raises NoSolution where nothing is drawn: it then lasts."""


@law(
    "max(burn_heat - room_left, 0) / load",
    source="first-law",
    body="with no room missing nothing has to be drawn, by no load either",
)
def time_until_room(burn_heat: Joule, room_left: Joule, load: Watt) -> Second:
    """Time until the house has drawn so much that a whole burn fits the store, s; 0 when it fits already.

    Raises NoSolution where nothing is drawn: a burn that does not fit now never does.
    """
    missing = max(burn_heat - room_left, 0)
    if load <= 0 < missing:
        raise NoSolution("time_until_room")
    return missing / load if missing else 0.0


@law("room_left / max(burn_heat, 0)", source="definition", never="burn_heat <= 0")
def loads_that_fit(room_left: Joule, burn_heat: Joule) -> Count:
    """Loads of wood whose heat the store still takes; only the whole ones are safe to burn.

    Raises NoSolution when a load brings the store nothing: it then never fills.
    """


@law("burn_heat - load * burn_time", source="first-law")
def heat_left_of_burn(burn_heat: Joule, load: Watt, burn_time: Second) -> Joule:
    """Heat of a burn that the house does not take while it burns, J; below zero when the house takes more."""


@law("(upper + middle + lower) / 3", source="definition")
def mean_of_readings(upper: Kelvin, middle: Kelvin, lower: Kelvin) -> Kelvin:
    """Mean temperature of a tank with a thermometer in each third, K."""


@law(
    "volume / 3 * heat_content * (max(upper - low, 0) + max(middle - low, 0) + max(lower - low, 0))",
    source="first-law",
)
def heat_above(
    volume: CubicMetre,
    heat_content: JoulePerCubicMetreKelvin,
    upper: Kelvin,
    middle: Kelvin,
    lower: Kelvin,
    low: Kelvin,
) -> Joule:
    """Usable heat of a tank read in thirds, J: what each third holds above `low`; a cooler third takes nothing away."""


@law(
    "volume / 3 * heat_content * (max(top - upper, 0) + max(top - middle, 0) + max(top - lower, 0))",
    source="first-law",
)
def room_below(
    volume: CubicMetre,
    heat_content: JoulePerCubicMetreKelvin,
    upper: Kelvin,
    middle: Kelvin,
    lower: Kelvin,
    top: Kelvin,
) -> Joule:
    """Heat that a tank read in thirds still takes until all of it is at `top`, J."""
