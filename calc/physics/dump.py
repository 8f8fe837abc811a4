"""A heat dump that gravity feeds: how cool its water comes back, how large it must be, what it takes.

The loop is one of `calc.physics.gravity`, with water's true properties at its own two temperatures: hot water rises
from the stove, the dump cools it, and friction uses up the weight of the cool leg. The dump gives heat by its rating
and exponent, over the arithmetic mean of what comes and what goes back. Heat lost by the pipes is left out, which is
the careful side.
"""

from collections.abc import Callable
from math import pi
from typing import NamedTuple

from calc.law import (
    Exponent,
    Factor,
    Kelvin,
    KelvinDifference,
    Metre,
    NoSolution,
    Watt,
    WattPerMetre,
    find_root,
    law,
    method,
)
from calc.physics import gravity, pipes, water

RANGES = {
    "loop_height": "0.01 m to 100 m",
    "bore": "5 mm to 160 mm",
    "relative_roughness": "0 to 0.05",
    "length_in_bores": "1 to 1000000",
    "fittings_loss": "0 to 10000",
}
HEATS = "50 W to 10000 kW"
COLDEST, HOTTEST = 273.15, 423.15  # K; between them the properties of water hold
FASTEST = 9e6  # a Reynolds number up to which the friction factor holds
LEAST_DROP = 0.1  # K, the smallest with which a flow is reckoned


class _Loop(NamedTuple):
    """What a loop is made of: height between the middles, m; bore, m; and its losses without units."""

    loop_height: float
    bore: float
    relative_roughness: float
    length_in_bores: float
    fittings_loss: float


def _lacking(loop: _Loop, heat: float, supply: float, back: float) -> float:
    """Friction less driving pressure, Pa, of a loop that carries `heat` (W) between two temperatures (K)."""
    mean = (supply + back) / 2
    density, viscosity = water.density(mean), water.viscosity(mean)
    flow = pipes.flow(heat, density * water.specific_heat(mean), supply - back)
    velocity = pipes.velocity(flow, loop.bore)
    friction_factor = pipes.friction_factor(
        pipes.reynolds_number(density, velocity, loop.bore, viscosity), loop.relative_roughness
    )
    friction = (friction_factor * loop.length_in_bores + loop.fittings_loss) * density * velocity**2 / 2
    return friction - gravity.driving_pressure(water.density(back), water.density(supply), loop.loop_height)


def _least_drop(loop: _Loop, heat: float, hottest: float) -> float:
    """The drop in K at which so much would flow that friction has no formula any more; any real one is larger."""
    largest = FASTEST * pi * loop.bore * water.viscosity(hottest) * water.specific_heat(hottest) / 4
    return max(heat / largest, LEAST_DROP)


def _settled(lacking: Callable[[float], float], low: float, high: float, name: str) -> float:
    root = find_root(lacking, low, high) if low < high else None
    if root is None:
        raise NoSolution(name)
    return root


@method(
    "The return temperature at which the weight of the cool leg equals friction at the flow that carries this heat: "
    "density, heat capacity and viscosity of water at the loop's own temperatures, friction by Churchill's equation. "
    "The lines below prove it: driving pressure and friction come out equal.",
    source="thermosiphon",
    ranges={"heat": HEATS, "supply": "0 °C to 150 °C", **RANGES},
    safety=True,
)
def return_by_gravity(
    heat: Watt,
    supply: Kelvin,
    loop_height: Metre,
    bore: Metre,
    relative_roughness: Factor,
    length_in_bores: Factor,
    fittings_loss: Factor,
) -> Kelvin:
    """Water in K that comes back from a dump when the loop carries `heat` (W) away from an outlet at `supply` (K).

    Raises NoSolution where water at 0 °C would not fall hard enough: the loop cannot carry the heat.
    """
    loop = _Loop(loop_height, bore, relative_roughness, length_in_bores, fittings_loss)
    warmest = supply - _least_drop(loop, heat, supply)
    return _settled(lambda back: _lacking(loop, heat, supply, back), COLDEST, warmest, "return_by_gravity")


@method(
    "The supply temperature at which the same balance holds around the dump's mean water. A dump larger than its loop "
    "can feed cools the water to its surroundings and no further, so the return is never taken below them.",
    source="thermosiphon",
    ranges={"heat": HEATS, "surroundings": "0 °C to 150 °C", **RANGES},
    safety=True,
)
def supply_by_gravity(
    heat: Watt,
    mean_water: Kelvin,
    surroundings: Kelvin,
    loop_height: Metre,
    bore: Metre,
    relative_roughness: Factor,
    length_in_bores: Factor,
    fittings_loss: Factor,
) -> Kelvin:
    """Water in K that must come to a dump whose mean is `mean_water` (K) for it to take `heat` (W).

    Raises NoSolution where that would be over 150 °C.
    """
    loop = _Loop(loop_height, bore, relative_roughness, length_in_bores, fittings_loss)
    least, widest = _least_drop(loop, heat, HOTTEST), 2 * (mean_water - surroundings)

    def around_the_mean(drop: float) -> float:
        return _lacking(loop, heat, mean_water + drop / 2, mean_water - drop / 2)

    def above_the_surroundings(supply: float) -> float:
        return _lacking(loop, heat, supply, surroundings)

    hottest = min(widest, 2 * (HOTTEST - mean_water))
    drop = find_root(around_the_mean, least, hottest) if least < hottest else None
    if drop is not None:
        return mean_water + drop / 2
    if hottest < widest:
        raise NoSolution("supply_by_gravity")
    return _settled(above_the_surroundings, surroundings + least, HOTTEST, "supply_by_gravity")


@method(
    "The heat at which loop and dump agree: what the dump gives between this supply and its return is what the loop "
    "carries with that return, by the same balance.",
    source="thermosiphon",
    ranges={
        "supply": "0 °C to 150 °C",
        "rating": HEATS,
        "rated_excess": "1 K to 150 K",
        "exponent": "1 to 1.7",
        "surroundings": "0 °C to 150 °C",
        **RANGES,
    },
    safety=True,
)
def heat_by_gravity(
    supply: Kelvin,
    rating: Watt,
    rated_excess: KelvinDifference,
    exponent: Exponent,
    surroundings: Kelvin,
    loop_height: Metre,
    bore: Metre,
    relative_roughness: Factor,
    length_in_bores: Factor,
    fittings_loss: Factor,
) -> Watt:
    """Heat in W that a dump of this rating takes by gravity from an outlet at `supply` (K).

    What the loop can carry down to the surroundings is the most, however large the dump. Raises NoSolution for an
    outlet no warmer than the surroundings.
    """
    loop = _Loop(loop_height, bore, relative_roughness, length_in_bores, fittings_loss)
    if supply <= surroundings:
        raise NoSolution("heat_by_gravity")

    def given_off(back: float) -> float:
        return float(rating * (((supply + back) / 2 - surroundings) / rated_excess) ** exponent)

    def lacking(back: float) -> float:
        return _lacking(loop, given_off(back), supply, back)

    warmest = supply - _least_drop(loop, given_off(supply), supply)
    if surroundings < warmest and lacking(surroundings) < 0:
        return given_off(_settled(lacking, surroundings, warmest, "heat_by_gravity"))
    # The loop cannot carry what the dump would give, whatever comes back: the water cools to the surroundings.
    slowest = pi / 4 * loop.bore * water.viscosity(surroundings) * water.specific_heat(surroundings)
    low, high = (reynolds * slowest * (supply - surroundings) for reynolds in (2, FASTEST / 10))
    return _settled(lambda heat: _lacking(loop, heat, supply, surroundings), low, high, "heat_by_gravity")


@law("boiling - margin", source="boiling-caution")
def supply_under_boiling(boiling: Kelvin, margin: KelvinDifference) -> Kelvin:
    """Hottest water in K that is still `margin` (K) from boiling."""


@law(
    "heat / (((supply + return_water) / 2 - surroundings) / rated_excess) ** exponent",
    source="en-442-2",
    ranges={"rated_excess": "1 K to 150 K", "exponent": "1 to 1.7"},
    never="return_water <= surroundings",
    safety=True,
)
def rating_for_heat(
    heat: Watt,
    supply: Kelvin,
    return_water: Kelvin,
    surroundings: Kelvin,
    rated_excess: KelvinDifference,
    exponent: Exponent,
) -> Watt:
    """Rated output in W of a dump that takes `heat` (W) between these two temperatures (K), by the arithmetic mean.

    Raises NoSolution where the water would have to come back no warmer than the dump's surroundings: no dump is large
    enough.
    """


@law(
    "heat / ((supply - return_water) / log((supply - surroundings) / (return_water - surroundings)) / rated_excess)"
    " ** exponent",
    source="en-442-2",
    ranges={"rated_excess": "1 K to 150 K", "exponent": "1 to 1.7"},
    never="return_water <= surroundings",
)
def rating_by_log_mean(
    heat: Watt,
    supply: Kelvin,
    return_water: Kelvin,
    surroundings: Kelvin,
    rated_excess: KelvinDifference,
    exponent: Exponent,
) -> Watt:
    """The same rated output in W by the logarithmic mean: never smaller, and fairer where the drop is large."""


@law(
    "rating / rating_per_length",
    source="definition",
    ranges={"rating_per_length": "1 W/m to 100000 W/m"},
    safety=True,
)
def length_of_rating(rating: Watt, rating_per_length: WattPerMetre) -> Metre:
    """Length in m of finned pipe that has this rated output (W) in all."""
