"""A heated slab as a store: what its concrete holds between two temperatures, and what it gives the room unheated.

The pipes are idle. Of a plate that gives off heat through one face alone, evenly from all its depth, the mean
temperature is that of a point a third of its thickness below that face.
"""

from calc.law import (
    Bracket,
    Conductivity,
    CubicMetre,
    Density,
    Joule,
    JoulePerCubicMetreKelvin,
    JoulePerKelvin,
    JoulePerKilogramKelvin,
    Kelvin,
    KelvinDifference,
    Metre,
    Second,
    SquareMetre,
    ThermalResistance,
    Watt,
    balance,
    law,
)
from calc.physics.floor import SURFACE_EXPONENT, SURFACE_FACTOR


@law("floor_area * slab_thickness * slab_density * slab_heat_capacity", source="first-law")
def heat_for_each_degree(
    floor_area: SquareMetre,
    slab_thickness: Metre,
    slab_density: Density,
    slab_heat_capacity: JoulePerKilogramKelvin,
) -> JoulePerKelvin:
    """Heat in J/K that a slab of this area (m²), thickness (m), density (kg/m³) and specific heat (J/kgK) holds."""


@law("heat_for_each_degree * max(warm - cool, 0)", source="first-law")
def slab_heat(heat_for_each_degree: JoulePerKelvin, warm: Kelvin, cool: Kelvin) -> Joule:
    """Heat in J that the slab gives up as its mean temperature falls from `warm` to `cool` (K); 0 if it does not."""


@law("covering + slab_thickness / (3 * slab_conductivity)", source="plate-mean")
def resistance_to_surface(
    covering: ThermalResistance, slab_thickness: Metre, slab_conductivity: Conductivity
) -> ThermalResistance:
    """Resistance in m²K/W between the slab's mean temperature and its surface: a third of the concrete (m, W/mK)."""


@balance(
    "(max(slab - indoor, 0) - surface_rise) / resistance_to_surface",
    "surface_factor * surface_rise ** surface_exponent",
    solves="surface_rise",
    source="en-1264-2",
    constants={"surface_factor": SURFACE_FACTOR, "surface_exponent": SURFACE_EXPONENT},
    ranges={"resistance_to_surface": "0.001 m²·K/W to 5 m²·K/W"},
)
def idle_rise(slab: Kelvin, resistance_to_surface: ThermalResistance, indoor: Kelvin) -> Bracket[KelvinDifference]:
    """How much warmer than the room, K, the surface is when as much heat reaches it from the slab as leaves it.

    The slab's mean temperature is `slab` (K), the room's `indoor` (K), `resistance_to_surface` in m²K/W. It is 0 over a
    slab that is no warmer than the room.
    """
    return 0.0, max(slab - indoor, 0)


@law("min(slab, indoor) + surface_rise", source="definition")
def idle_surface(slab: Kelvin, indoor: Kelvin, surface_rise: KelvinDifference) -> Kelvin:
    """Surface of an idle slab in K; a slab cooler than the room is taken to have a surface as cool as itself."""


@law("heat / (heat_content * fall)", source="first-law", ranges={"fall": "0.1 K to 150 K"})
def water_with_that_heat(heat: Joule, heat_content: JoulePerCubicMetreKelvin, fall: KelvinDifference) -> CubicMetre:
    """Water in m³ that gives up `heat` (J) as it cools by `fall` (K); `heat_content` in J/m³K."""


@law("max(water_output - load, 0) * burn_time / heat_for_each_degree", source="first-law")
def rise_from_a_burn(
    water_output: Watt, load: Watt, burn_time: Second, heat_for_each_degree: JoulePerKelvin
) -> KelvinDifference:
    """How much one burn warms the slab, K, when all that the rooms do not take meanwhile (W, s) stays in it (J/K)."""


@law("(warm + cool) / 2", source="definition")
def halfway(warm: Kelvin, cool: Kelvin) -> Kelvin:
    """Mean temperature in K of a slab that cools from `warm` to `cool`."""


@law("floor_area * max(slab - below, 0) / resistance_below", source="steady-conduction")
def ground_loss(floor_area: SquareMetre, slab: Kelvin, below: Kelvin, resistance_below: ThermalResistance) -> Watt:
    """Heat in W that a slab at `slab` (K) loses to what lies `below` (K), through `resistance_below` in m²K/W."""


@law("cool + burn_rise", source="definition")
def after_a_burn(cool: Kelvin, burn_rise: KelvinDifference) -> Kelvin:
    """Mean temperature in K of a slab that stood at `cool` (K) when a burn began that warms it by `burn_rise` (K)."""
