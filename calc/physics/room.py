"""The room with the stove: how warm it gets, how fast, and what the doorway passes on to the house.

The house next door is held at one temperature. The room loses heat to the cold outside and gives some to the house,
through walls by conduction and through an open doorway by air that flows out at the top and back in at the bottom. How
the room warms meanwhile is in `warming`.
"""

from typing import NamedTuple

from calc.law import (
    AbsolutePascal,
    AirFlow,
    Bracket,
    Constant,
    Factor,
    JoulePerKelvin,
    JoulePerSquareMetreKelvin,
    Kelvin,
    KelvinDifference,
    Metre,
    SquareMetre,
    Watt,
    WattPerKelvin,
    balance,
    law,
)
from calc.physics.air import AIR_GAS_CONSTANT, AIR_SPECIFIC_HEAT
from calc.physics.pipes import GRAVITY

DOOR_DISCHARGE = Constant(0.65, "1", source="doorway-flow", note="0.4 to 0.8 have been measured")
# ISO 13790: from air to surfaces, surface over floor area, and from surfaces into the mass behind them.
AIR_TO_SURFACE = Constant(3.45, "W / m**2 / K", source="iso-13790")
SURFACE_OVER_FLOOR = Constant(4.5, "1", source="iso-13790")
SURFACE_TO_MASS = Constant(9.1, "W / m**2 / K", source="iso-13790")
AIR_AND_FURNITURE = Constant(10_000.0, "J / m**2 / K", source="iso-52016")


class Heaviness(NamedTuple):
    """A class of building: heat its walls hold for each floor area, J/(m²·K), and how much of them takes part."""

    label: str
    capacity_per_area: float
    mass_over_floor: float


# ISO 13790, table of internal heat capacity by class; area of mass over floor area from the same table.
HEAVINESS = {
    "light": Heaviness("light: wood frame, drywall, wood floors", 110_000.0, 2.5),
    "medium": Heaviness("medium: tile or slab floor, some brick", 165_000.0, 2.5),
    "heavy": Heaviness("heavy: brick, stone or concrete walls inside", 260_000.0, 3.0),
}


# Through the doorway.


@law(
    "door_discharge / 3 * width * height * sqrt(gravity * height * difference / house)",
    source="doorway-flow",
    constants={"door_discharge": DOOR_DISCHARGE, "gravity": GRAVITY},
)
def doorway_flow(width: Metre, height: Metre, difference: KelvinDifference, house: Kelvin) -> AirFlow:
    """Air that flows out through the upper half of an open doorway, and back through the lower, m³/s.

    Bernoulli's equation over the height of the opening, both rooms of one temperature each. Layered rooms, which are
    warmer under the ceiling, pass on somewhat more; a curtain or a half-closed door much less.
    """


@law(
    "doorway_flow * site_pressure / (air_gas_constant * house) * air_specific_heat",
    source="ashrae-air",
    constants={"air_gas_constant": AIR_GAS_CONSTANT, "air_specific_heat": AIR_SPECIFIC_HEAT},
)
def doorway_conductance(doorway_flow: AirFlow, site_pressure: AbsolutePascal, house: Kelvin) -> WattPerKelvin:
    """Heat that the doorway passes on for each degree between the rooms, W/K, at this air flow."""


@balance(
    "heat - conductance * (house - outdoor)",
    "(conductance + partition) * (room - house) + door_discharge / 3 * width * height"
    " * sqrt(gravity * height / house) * ((room - house) ** 2) ** 0.25 * (room - house)"
    " * site_pressure / (air_gas_constant * house) * air_specific_heat",
    solves="room",
    source="doorway-flow",
    constants={
        "door_discharge": DOOR_DISCHARGE,
        "gravity": GRAVITY,
        "air_gas_constant": AIR_GAS_CONSTANT,
        "air_specific_heat": AIR_SPECIFIC_HEAT,
    },
)
def steady_room(
    heat: Watt,
    conductance: WattPerKelvin,
    outdoor: Kelvin,
    partition: WattPerKelvin,
    house: Kelvin,
    width: Metre,
    height: Metre,
    site_pressure: AbsolutePascal,
) -> Bracket[Kelvin]:
    """Temperature the room settles at while `heat` goes on, K, when what it gives away makes up for it.

    `conductance` is the room's own, to outdoors; `partition` that of walls, ceiling and closed doors towards the house.
    Width 0 is a closed door. Without heat it is what the room would have without the stove.
    """
    coldest, warmest = min(outdoor, house), max(outdoor, house)
    return coldest, warmest + heat / (conductance + partition)


@law("room - without", source="definition")
def rise_above(room: Kelvin, without: Kelvin) -> KelvinDifference:
    """How much warmer a room is than it would be without the stove, K."""


@law("max(room - house, house - room)", source="definition")
def difference_to_house(room: Kelvin, house: Kelvin) -> KelvinDifference:
    """How far room and house are apart, K, whichever is warmer."""


@law("conductance + partition + doorway", source="definition")
def all_losses(conductance: WattPerKelvin, partition: WattPerKelvin, doorway: WattPerKelvin) -> WattPerKelvin:
    """Heat that leaves the room by every way for each degree, W/K."""


@law("(partition + doorway) * (room - house)", source="first-law")
def heat_passed_on(partition: WattPerKelvin, doorway: WattPerKelvin, room: Kelvin, house: Kelvin) -> Watt:
    """Heat that the room gives the rest of the house, W, through its walls and its doorway."""


@law(
    "max(conductance * (limit - outdoor) + (partition + doorway) * (limit - house), 0)",
    source="first-law",
)
def room_can_use(
    conductance: WattPerKelvin,
    limit: Kelvin,
    outdoor: Kelvin,
    partition: WattPerKelvin,
    doorway: WattPerKelvin,
    house: Kelvin,
) -> Watt:
    """Heat that the room can lose and pass on for hours without getting warmer than `limit`, W.

    `doorway` is what the doorway passes on for each degree with the room at that limit.
    """


# Two masses: the air with what stands in the room, and the walls and floors behind their surfaces.


@law(
    "area * air_and_furniture",
    source="iso-52016",
    constants={"air_and_furniture": AIR_AND_FURNITURE},
)
def air_capacity(area: SquareMetre) -> JoulePerKelvin:
    """Heat held by the air of a room and what stands in it, J/K, from its floor area."""


@law("area * capacity_per_area", source="iso-13790")
def wall_capacity(area: SquareMetre, capacity_per_area: JoulePerSquareMetreKelvin) -> JoulePerKelvin:
    """Heat that walls, floor and ceiling hold for each degree, J/K, from floor area and class of building."""


@law(
    "area / (1 / (air_to_surface * surface_over_floor) + 1 / (surface_to_mass * mass_over_floor))",
    source="iso-13790",
    constants={
        "air_to_surface": AIR_TO_SURFACE,
        "surface_over_floor": SURFACE_OVER_FLOOR,
        "surface_to_mass": SURFACE_TO_MASS,
    },
    ranges={"mass_over_floor": "0.1 to 10"},
)
def link_to_walls(area: SquareMetre, mass_over_floor: Factor) -> WattPerKelvin:
    """Heat that passes between the room's air and the mass of its walls for each degree, W/K."""
