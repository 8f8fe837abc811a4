"""A floor with pipe in it: how warm water and surface must be for a heat flux, and what goes down instead of up.

Upward heat follows EN 1264-2: the surface gives off 8.92 times its rise to the power 1.1, and between water and room a
wet floor (type A, pipe in the screed or slab) passes a flux in proportion to the excess of the water. The factors of
that proportion stand in three tables, read bilinearly between their nodes and refused outside them. Where pipes lie far
apart the tables promise a bare floor up to a tenth too much beside conduction (`conduction.slab_conductance`), which
holds them down there. The limits of the surface hold for its warmest spot, which conduction tells as well.
"""

from bisect import bisect_right

from calc.law import (
    Bracket,
    Conductivity,
    Constant,
    Factor,
    Fraction,
    Kelvin,
    KelvinDifference,
    Metre,
    SquareMetre,
    ThermalResistance,
    Watt,
    WattPerKelvin,
    WattPerSquareMetre,
    WattPerSquareMetreKelvin,
    balance,
    law,
    method,
)
from calc.physics.conduction import SURFACE_FILM

SURFACE_FACTOR = Constant(8.92, "W / m**2 / K**1.1", source="en-1264-2")
SURFACE_EXPONENT = Constant(1.1, "1", source="en-1264-2")

COVERINGS = "0 m²·K/W to 0.15 m²·K/W"
SPACINGS = "0.05 m to 0.375 m"
CONDUCTIVITIES = "0.3 W/(m·K) to 3 W/(m·K)"


@law("heated_area", source="definition")
def piped_area(heated_area: SquareMetre) -> SquareMetre:
    """Floor with pipe in it, m², of a house in which all of the area told (m²) has some."""


@law("load / floor_area", source="definition")
def needed_flux(load: Watt, floor_area: SquareMetre) -> WattPerSquareMetre:
    """Heat in W/m² that each part of the floor must give for `load` (W); `floor_area` (m²) is floor with pipe in it."""


@law(
    "surface_factor * surface_rise ** surface_exponent",
    source="en-1264-2",
    constants={"surface_factor": SURFACE_FACTOR, "surface_exponent": SURFACE_EXPONENT},
    ranges={"surface_rise": "0 K to 40 K"},
)
def surface_flux(surface_rise: KelvinDifference) -> WattPerSquareMetre:
    """Heat in W/m² that a floor gives with its surface `surface_rise` (K) over the room; OutOfRange if it is cooler."""


@law(
    "(heat_flux / surface_factor) ** (1 / surface_exponent)",
    source="en-1264-2",
    constants={"surface_factor": SURFACE_FACTOR, "surface_exponent": SURFACE_EXPONENT},
    ranges={"heat_flux": "0 W/m² to 1000000 W/m²"},
)
def surface_rise(heat_flux: WattPerSquareMetre) -> KelvinDifference:
    """How much warmer than the room the surface must be, in K, to give `heat_flux` (W/m²)."""


@law("indoor + surface_rise", source="definition")
def surface_temperature(indoor: Kelvin, surface_rise: KelvinDifference) -> Kelvin:
    """Temperature of the floor's surface in K, of its mean or of its warmest spot, by the rise given."""


# EN 1264-2 tables A.1, A.2 and A.3 (pages 29 and 30), as coded in the open Modelica library AixLib (BSD licence).
_COVERING_NODES = (0.0, 0.05, 0.10, 0.15)
_SPACING_NODES = (0.05, 0.075, 0.10, 0.15, 0.20, 0.225, 0.30, 0.375)
_SPACING_FACTORS = (1.23, 1.188, 1.156, 1.134)
_COVER_FACTORS = (
    (1.069, 1.056, 1.043, 1.037),
    (1.066, 1.053, 1.041, 1.035),
    (1.063, 1.05, 1.039, 1.0335),
    (1.057, 1.046, 1.035, 1.0305),
    (1.051, 1.041, 1.0315, 1.0275),
    (1.048, 1.038, 1.0295, 1.026),
    (1.0395, 1.031, 1.024, 1.021),
    (1.03, 1.0221, 1.0181, 1.015),
)
_PIPE_FACTORS = (
    (1.013, 1.013, 1.012, 1.011),
    (1.021, 1.019, 1.016, 1.014),
    (1.029, 1.025, 1.022, 1.018),
    (1.04, 1.034, 1.029, 1.024),
    (1.046, 1.04, 1.035, 1.03),
    (1.049, 1.043, 1.038, 1.033),
    (1.053, 1.049, 1.044, 1.039),
    (1.056, 1.051, 1.046, 1.042),
)


def _between(nodes: tuple[float, ...], values: tuple[float, ...], at: float) -> float:
    """Linear interpolation between table nodes."""
    right = min(bisect_right(nodes, at), len(nodes) - 1)
    share = (at - nodes[right - 1]) / (nodes[right] - nodes[right - 1])
    return values[right - 1] + share * (values[right] - values[right - 1])


def _between_both(table: tuple[tuple[float, ...], ...], spacing: float, covering: float) -> float:
    """Bilinear interpolation in a table with a row for each spacing and a column for each covering."""
    column = tuple(_between(_COVERING_NODES, row, covering) for row in table)
    return _between(_SPACING_NODES, column, spacing)


@method(
    "EN 1264-2, table A.1: factor of the pipe spacing at this floor covering, read linearly between the nodes.",
    source="en-1264-2",
    ranges={"covering": COVERINGS},
)
def spacing_factor(covering: ThermalResistance) -> Factor:
    """The standard's a_T for the resistance of the floor covering (m²K/W, 0 to 0.15; beyond it OutOfRange)."""
    return _between(_COVERING_NODES, _SPACING_FACTORS, covering)


@method(
    "EN 1264-2, table A.2: factor of the screed's thickness at this spacing and covering, bilinear between the nodes.",
    source="en-1264-2",
    ranges={"spacing": SPACINGS, "covering": COVERINGS},
)
def cover_factor(spacing: Metre, covering: ThermalResistance) -> Factor:
    """The standard's a_u for pipe spacing (m) and the covering's resistance (m²K/W); OutOfRange outside the table."""
    return _between_both(_COVER_FACTORS, spacing, covering)


@method(
    "EN 1264-2, table A.3: factor of the pipe's diameter at this spacing and covering, bilinear between the nodes.",
    source="en-1264-2",
    ranges={"spacing": SPACINGS, "covering": COVERINGS},
)
def pipe_factor(spacing: Metre, covering: ThermalResistance) -> Factor:
    """The standard's a_D for pipe spacing (m) and the covering's resistance (m²K/W); OutOfRange outside the table."""
    return _between_both(_PIPE_FACTORS, spacing, covering)


@law(
    "(1 / surface_film + standard_cover / standard_conductivity)"
    " / (1 / surface_film + standard_cover / screed_conductivity + covering)",
    source="en-1264-2",
    constants={
        "surface_film": SURFACE_FILM,
        "standard_cover": Constant(0.045, "m", source="en-1264-2"),
        "standard_conductivity": Constant(1.0, "W / m / K", source="en-1264-2"),
    },
    ranges={"screed_conductivity": CONDUCTIVITIES, "covering": COVERINGS},
)
def covering_factor(screed_conductivity: Conductivity, covering: ThermalResistance) -> Factor:
    """The standard's a_B: what screed (W/mK) and floor covering (m²K/W) make of the bare standard floor's flux."""


@law(
    "min(cover, max(thick_cover, spacing / 2))",
    source="en-1264-2",
    constants={"thick_cover": Constant(0.1, "m", source="en-1264-2")},
)
def counted_cover(cover: Metre, spacing: Metre) -> Metre:
    """The part of the concrete over the pipe (m) for which table A.2 counts; what is above it only conducts."""


@law(
    "system_coefficient * covering_factor * spacing_factor ** (1 - spacing / spacing_step)"
    " * cover_factor ** ((standard_cover - counted_cover) / cover_step)"
    " * pipe_factor ** ((pipe_diameter - standard_pipe) / pipe_step)",
    source="en-1264-2",
    constants={
        "system_coefficient": Constant(6.7, "W / m**2 / K", source="en-1264-2", note="plastic pipe, 2 mm wall"),
        "spacing_step": Constant(0.075, "m", source="en-1264-2"),
        "standard_cover": Constant(0.045, "m", source="en-1264-2"),
        "cover_step": Constant(0.01, "m", source="en-1264-2"),
        "standard_pipe": Constant(0.020, "m", source="en-1264-2"),
        "pipe_step": Constant(0.004, "m", source="en-1264-2"),
    },
    ranges={"spacing": SPACINGS, "counted_cover": "0.01 m to 0.1875 m", "pipe_diameter": "0.008 m to 0.03 m"},
)
def wet_floor_conductance(
    covering_factor: Factor,
    spacing_factor: Factor,
    cover_factor: Factor,
    pipe_factor: Factor,
    spacing: Metre,
    counted_cover: Metre,
    pipe_diameter: Metre,
) -> WattPerSquareMetreKelvin:
    """The standard's K_H: heat flux upward for each K of the water's excess over the room, W/m²K.

    `pipe_diameter` is the outside one. The coefficient is that of plastic pipe with a wall of 2 mm (0.35 W/mK).
    """


@law("1 / (1 / wet_floor_conductance + (cover - counted_cover) / screed_conductivity)", source="en-1264-2")
def standard_conductance(
    wet_floor_conductance: WattPerSquareMetreKelvin,
    cover: Metre,
    counted_cover: Metre,
    screed_conductivity: Conductivity,
) -> WattPerSquareMetreKelvin:
    """The standard's flux for each K of excess, W/m²K, with the concrete (m, W/mK) that the tables do not count."""


@law(
    "min(max((spacing - close_spacing) / (wide_spacing - close_spacing), 0), 1)",
    source="slab-conduction",
    constants={
        "close_spacing": Constant(0.15, "m", source="slab-conduction", kind="length"),
        "wide_spacing": Constant(0.30, "m", source="slab-conduction", kind="length"),
    },
    ranges={"spacing": SPACINGS},
)
def conduction_share(spacing: Metre) -> Fraction:
    """How far conduction holds the standard's tables down: not at all up to 0.15 m (spacing in m), wholly from 0.3.

    At 0.30 m under a bare floor the tables are 6 % above conduction with 45 mm of concrete, 11 % with 30 mm.
    """


@law(
    "standard_conductance - conduction_share * max(standard_conductance - slab_conductance, 0)",
    source="slab-conduction",
    ranges={"conduction_share": "0 % to 100 %"},
)
def floor_conductance(
    conduction_share: Fraction,
    standard_conductance: WattPerSquareMetreKelvin,
    slab_conductance: WattPerSquareMetreKelvin,
) -> WattPerSquareMetreKelvin:
    """Heat flux upward for each K of the water's excess over the room, W/m²K: the standard's where it is the lower."""


@law("warmest_factor * surface_rise", source="slab-conduction")
def warmest_rise(warmest_factor: Factor, surface_rise: KelvinDifference) -> KelvinDifference:
    """How much warmer than the room the warmest spot is, in K, while the surface's mean rise is `surface_rise` (K)."""


@law("max(surface_limit - indoor, 0) / warmest_factor", source="en-1264-limits")
def rise_at_limit(surface_limit: Kelvin, indoor: Kelvin, warmest_factor: Factor) -> KelvinDifference:
    """Mean rise of the surface over the room, K, while its warmest spot is at the limit (K); 0 in a room as warm."""


@balance(
    "heat_flux",
    "floor_conductance * log_mean(max(supply - indoor, 0), max(supply - indoor - floor_area * (heat_flux"
    " + (resistance_above * heat_flux + indoor - below) / resistance_below) / flow_capacity, 0))",
    solves="heat_flux",
    source="en-1264-2",
    ranges={"resistance_below": "0.05 m²·K/W to 20 m²·K/W"},
)
def flux_from_supply(
    supply: Kelvin,
    indoor: Kelvin,
    floor_conductance: WattPerSquareMetreKelvin,
    floor_area: SquareMetre,
    flow_capacity: WattPerKelvin,
    resistance_above: ThermalResistance,
    resistance_below: ThermalResistance,
    below: Kelvin,
) -> Bracket[WattPerSquareMetre]:
    """Heat in W/m² that the floor gives upward from water at `supply` (K) at its design flow (W/K).

    The water cools by what goes up and down; 0 from water no warmer than the room.
    """
    return 0.0, floor_conductance * max(supply - indoor, 0)


@law("heat_flux / floor_conductance", source="en-1264-2")
def needed_excess(heat_flux: WattPerSquareMetre, floor_conductance: WattPerSquareMetreKelvin) -> KelvinDifference:
    """Logarithmic excess of the water over the room, K, at which the floor gives `heat_flux` (W/m²)."""


@law("floor_conductance * excess", source="en-1264-2")
def flux_at(floor_conductance: WattPerSquareMetreKelvin, excess: KelvinDifference) -> WattPerSquareMetre:
    """Heat in W/m² that the floor gives upward at a logarithmic excess (K) of its water."""


@law(
    "1 / surface_film + covering + cover / screed_conductivity",
    source="en-1264-2",
    constants={"surface_film": SURFACE_FILM},
)
def resistance_above(covering: ThermalResistance, cover: Metre, screed_conductivity: Conductivity) -> ThermalResistance:
    """Resistance in m²K/W from the pipes up to the room's air: film, covering and concrete."""


@law(
    "(resistance_above * heat_flux + indoor - below) / resistance_below",
    source="en-1264-2",
    ranges={"resistance_below": "0.05 m²·K/W to 20 m²·K/W"},
)
def downward_flux(
    heat_flux: WattPerSquareMetre,
    resistance_above: ThermalResistance,
    resistance_below: ThermalResistance,
    indoor: Kelvin,
    below: Kelvin,
) -> WattPerSquareMetre:
    """Heat in W/m² that leaves the pipe layer downward, to ground or a room at `below` (K), while `heat_flux` goes up.

    Resistances in m²K/W above and below the pipes. Negative where the space below warms the floor.
    """


@law("heat_flux * floor_area", source="definition")
def heat_through(heat_flux: WattPerSquareMetre, floor_area: SquareMetre) -> Watt:
    """Heat in W that passes through the whole heated floor (m²), upward or downward."""


@law("load + downward_loss", source="first-law")
def heat_from_water(load: Watt, downward_loss: Watt) -> Watt:
    """Heat in W that the floor takes from its water: what goes up into the rooms and what goes down."""


@law("downward_loss / heat_from_water", source="definition")
def downward_share(downward_loss: Watt, heat_from_water: Watt) -> Fraction:
    """Share of the water's heat that goes down instead of up."""
