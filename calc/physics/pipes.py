"""Pipes: flow for the heat, friction, pump, pressure at the places where water boils first, and heat lost underground.

Flow is the actual volume at the mean of supply and return; the heat it carries follows from the true density and
specific heat there, not from the "500" of the trade, which is right only near 60 °F. Friction is Darcy's with
Churchill's factor, one equation from laminar to turbulent. It stays within 3.5 % of Colebrook's from a Reynolds number
of 4000 on, and within 2.5 % from 10 000 on. Between 2100 and 4000 nobody can say which of the two the water does.
"""

from typing import NamedTuple

from calc.law import (
    AbsolutePascal,
    Conductivity,
    Constant,
    Count,
    CubicMetre,
    Density,
    ElectricWatt,
    Factor,
    Flow,
    Fraction,
    Joule,
    JoulePerCubicMetreKelvin,
    JoulePerKilogramKelvin,
    Kelvin,
    KelvinDifference,
    Kilogram,
    Metre,
    MetreKelvinPerWatt,
    NoSolution,
    PascalDifference,
    PascalPerMetre,
    PascalSecond,
    Second,
    Velocity,
    Watt,
    WattPerKelvin,
    WattPerMetre,
    WattPerMetreKelvin,
    law,
    method,
)
from calc.units import INCH

# --- sizes -----------------------------------------------------------------------------------------------------------


class Pipe(NamedTuple):
    """A pipe as it is sold: its family, trade size (text and inches), outside diameter and wall in inches."""

    family: str
    size: str
    nominal: float
    outside: float
    wall: float

    @property
    def bore(self) -> float:
        """Inside diameter in m."""
        return (self.outside - 2 * self.wall) * INCH


def _family(family: str, *rows: tuple[str, float, float, float]) -> tuple[Pipe, ...]:
    return tuple(Pipe(family, size, nominal, outside, wall) for size, nominal, outside, wall in rows)


# Dimensions are facts of the standards; the standards' tables are not copied. Copper: ASTM B88, nominal wall. PEX: ASTM
# F876, tube made to a ninth of its outside diameter: by minimum wall (the bore most catalogs print) and by the average
# wall that is really made, which holds back about 10 % more at 1/2 in. The tolerance behind the average is from memory,
# and so are the walls from 1-1/4 in on. Steel: ASME B36.10, schedule 40.
PIPES: tuple[Pipe, ...] = (
    *_family(
        "copper-l",
        ("1/2", 0.5, 0.625, 0.040), ("3/4", 0.75, 0.875, 0.045), ("1", 1.0, 1.125, 0.050),
        ("1-1/4", 1.25, 1.375, 0.055), ("1-1/2", 1.5, 1.625, 0.060), ("2", 2.0, 2.125, 0.070),
        ("2-1/2", 2.5, 2.625, 0.080), ("3", 3.0, 3.125, 0.090),
    ),
    *_family(
        "copper-m",
        ("1/2", 0.5, 0.625, 0.028), ("3/4", 0.75, 0.875, 0.032), ("1", 1.0, 1.125, 0.035),
        ("1-1/4", 1.25, 1.375, 0.042), ("1-1/2", 1.5, 1.625, 0.049), ("2", 2.0, 2.125, 0.058),
        ("2-1/2", 2.5, 2.625, 0.065), ("3", 3.0, 3.125, 0.072),
    ),
    *_family(
        "pex",
        ("1/2", 0.5, 0.625, 0.075), ("5/8", 0.625, 0.750, 0.088), ("3/4", 0.75, 0.875, 0.102),
        ("1", 1.0, 1.125, 0.1315), ("1-1/4", 1.25, 1.375, 0.1605), ("1-1/2", 1.5, 1.625, 0.1905),
        ("2", 2.0, 2.125, 0.248),
    ),
    *_family(
        "pex-minimum-wall",
        ("1/2", 0.5, 0.625, 0.070), ("5/8", 0.625, 0.750, 0.083), ("3/4", 0.75, 0.875, 0.097),
        ("1", 1.0, 1.125, 0.125), ("1-1/4", 1.25, 1.375, 0.153), ("1-1/2", 1.5, 1.625, 0.181),
        ("2", 2.0, 2.125, 0.236),
    ),
    *_family(
        "steel",
        ("1/2", 0.5, 0.840, 0.109), ("3/4", 0.75, 1.050, 0.113), ("1", 1.0, 1.315, 0.133),
        ("1-1/4", 1.25, 1.660, 0.140), ("1-1/2", 1.5, 1.900, 0.145), ("2", 2.0, 2.375, 0.154),
        ("2-1/2", 2.5, 2.875, 0.203), ("3", 3.0, 3.500, 0.216), ("4", 4.0, 4.500, 0.237),
    ),
    # EN 1057, in millimeters there; one or two usual walls of each.
    *_family(
        "copper-metric",
        *(
            (f"{outside}x{wall:g}", outside / 25.4, outside / 25.4, wall / 25.4)
            for outside, wall in (
                (15, 1.0), (18, 1.0), (22, 1.0), (28, 1.5), (28, 1.0), (35, 1.5), (42, 1.5), (54, 2.0),
            )
        ),
    ),
)  # fmt: skip

# Wall roughness in m, smooth tube and new steel; from memory. Old steel in a system that takes up air is rougher.
_SMOOTH = 1.5e-6
ROUGHNESS = {"copper-l": _SMOOTH, "copper-m": _SMOOTH, "copper-metric": _SMOOTH, "pex": _SMOOTH, "steel": 45e-6}


def _smallest(family: str, least_bore: float) -> float:
    for pipe in PIPES:
        if pipe.family == family and pipe.bore >= least_bore * (1 - 1e-9):
            return pipe.nominal * INCH
    raise NoSolution(family)


@method("The first trade size whose bore is at least this.", source="astm-b88")
def smallest_copper_l(least_bore: Metre) -> Metre:
    """Trade size (m, shown in inches) of the smallest type L copper tube of this bore or more. NoSolution past 3 in."""
    return _smallest("copper-l", least_bore)


@method("The first trade size whose bore is at least this.", source="astm-b88")
def smallest_copper_m(least_bore: Metre) -> Metre:
    """Trade size (m, shown in inches) of the smallest type M copper tube of this bore or more. NoSolution past 3 in."""
    return _smallest("copper-m", least_bore)


@method("The first size whose bore is at least this.", source="en-1057")
def smallest_copper_metric(least_bore: Metre) -> Metre:
    """Outside diameter (m) of the smallest metric copper tube of this bore or more. NoSolution past 54 mm."""
    return _smallest("copper-metric", least_bore)


@method("The first trade size whose bore, by its average wall, is at least this.", source="astm-f876")
def smallest_pex(least_bore: Metre) -> Metre:
    """Trade size (m, shown in inches) of the smallest PEX tube of this bore or more. NoSolution past 2 in."""
    return _smallest("pex", least_bore)


@method("The first trade size whose bore is at least this.", source="asme-b36-10")
def smallest_steel(least_bore: Metre) -> Metre:
    """Trade size (m, shown in inches) of the smallest steel pipe of this bore or more. NoSolution past 4 in."""
    return _smallest("steel", least_bore)


@law("store_volume + other_volume", source="definition")
def system_volume(store_volume: CubicMetre, other_volume: CubicMetre) -> CubicMetre:
    """All the water of a plant in m³: the store's and that of stove, pipes and emitters."""


# --- flow ------------------------------------------------------------------------------------------------------------


@law("density * specific_heat", source="definition")
def volume_heat_capacity(density: Density, specific_heat: JoulePerKilogramKelvin) -> JoulePerCubicMetreKelvin:
    """Heat that flowing water carries for each volume and degree, J/(m³·K): the true factor behind the trade's 500."""


@law(
    "heat / (volume_heat_capacity * water_drop)",
    source="first-law",
    ranges={"water_drop": "0.1 K to 150 K", "volume_heat_capacity": "0.1 Wh/(L·K) to 10 Wh/(L·K)"},
)
def flow(heat: Watt, volume_heat_capacity: JoulePerCubicMetreKelvin, water_drop: KelvinDifference) -> Flow:
    """Flow in m³/s that carries `heat` (W) while its water cools by `water_drop`, measured at the mean temperature."""


@law("flow * volume_heat_capacity * water_drop", source="first-law")
def heat_carried(flow: Flow, volume_heat_capacity: JoulePerCubicMetreKelvin, water_drop: KelvinDifference) -> Watt:
    """Heat in W that a flow carries while its water cools by `water_drop`."""


@law(
    "heat / (flow * volume_heat_capacity)",
    source="first-law",
    ranges={"flow": "0.001 L/min to 10000 L/min"},
    safety=True,
)
def rise(heat: Watt, flow: Flow, volume_heat_capacity: JoulePerCubicMetreKelvin) -> KelvinDifference:
    """Rise in K of a flow that takes up `heat` (W): how much hotter the stove's outlet is than its inlet.

    A safety law because the outlet, not the store, is where water boils first.
    """


@law("4 * flow / (pi * bore ** 2)", source="definition", ranges={"bore": "1 mm to 500 mm"})
def velocity(flow: Flow, bore: Metre) -> Velocity:
    """Mean speed in m/s of a flow through a round bore (m)."""


@law("sqrt(4 * flow / (pi * velocity_limit))", source="definition", ranges={"velocity_limit": "0.05 m/s to 10 m/s"})
def bore_for_velocity(flow: Flow, velocity_limit: Velocity) -> Metre:
    """Bore in m in which a flow just reaches a speed limit (m/s)."""


# --- friction --------------------------------------------------------------------------------------------------------


@law(
    "density * velocity * bore / viscosity",
    source="reynolds",
    ranges={"viscosity": "0.01 mPa·s to 10000 mPa·s"},
)
def reynolds_number(density: Density, velocity: Velocity, bore: Metre, viscosity: PascalSecond) -> Factor:
    """Reynolds number: laminar below 2100, turbulent above 4000, undecided between."""


@law("roughness / bore", source="definition", ranges={"bore": "1 mm to 500 mm"})
def relative_roughness(roughness: Metre, bore: Metre) -> Factor:
    """Wall roughness as a share of the bore."""


FRICTION_FACTOR = (
    "8 * ((8 / reynolds_number) ** 12"
    " + ((2.457 * log(1 / ((7 / reynolds_number) ** 0.9 + 0.27 * relative_roughness))) ** 16"
    " + (37530 / reynolds_number) ** 16) ** -1.5) ** (1 / 12)"
)


@law(
    FRICTION_FACTOR,
    source="churchill",
    ranges={"reynolds_number": "1 to 10000000", "relative_roughness": "0 to 0.05"},
)
def friction_factor(reynolds_number: Factor, relative_roughness: Factor) -> Factor:
    """Darcy friction factor by Churchill's equation, laminar and turbulent in one.

    Against Colebrook: within 3.5 % from a Reynolds number of 4000, 2.5 % from 10 000 (roughness up to 1 %).
    """


@law("friction_factor * density * velocity ** 2 / (2 * bore)", source="darcy", ranges={"bore": "1 mm to 500 mm"})
def friction(friction_factor: Factor, density: Density, velocity: Velocity, bore: Metre) -> PascalPerMetre:
    """Pressure lost in each length of straight pipe, Pa/m (Darcy and Weisbach)."""


@law(
    "elbow_loss * elbows + tee_loss * tees + valve_loss * valves + other_losses",
    constants={
        "elbow_loss": Constant(0.9, "1", source="hooper", note="each screwed or soldered 90° elbow, 3/4 to 1 in"),
        "tee_loss": Constant(1.6, "1", source="hooper", note="each tee in which the flow turns"),
        "valve_loss": Constant(0.3, "1", source="hooper", note="each open ball valve"),
    },
    source="hooper",
)
def fittings_loss(elbows: Count, tees: Count, valves: Count, other_losses: Factor) -> Factor:
    """Loss of all fittings in velocity heads: elbows, tees in which the flow turns, open ball valves, and others."""


@law(
    "friction * length + fittings_loss * density * velocity ** 2 / 2 + other_pressure",
    source="darcy",
)
def pressure_drop(
    friction: PascalPerMetre,
    length: Metre,
    fittings_loss: Factor,
    density: Density,
    velocity: Velocity,
    other_pressure: PascalDifference,
) -> PascalDifference:
    """Pressure lost around a loop, Pa: straight pipe there and back, fittings, and jacket or exchanger as typed."""


GRAVITY = Constant(9.80665, "m/s**2", source="definition", note="standard gravity")


@law("pressure_drop / (density * gravity)", constants={"gravity": GRAVITY}, source="definition")
def head(pressure_drop: PascalDifference, density: Density) -> Metre:
    """Pump head in m (shown in feet) of the water that flows, for a pressure drop (Pa)."""


@law("flow * pressure_drop / pump_efficiency", source="definition", ranges={"pump_efficiency": "1 % to 95 %"})
def pump_power(flow: Flow, pressure_drop: PascalDifference, pump_efficiency: Fraction) -> ElectricWatt:
    """Electric power in W that a pump draws, at the efficiency of motor and wheel together."""


@law("mixture_flow / water_flow - 1", source="definition")
def extra_flow(mixture_flow: Flow, water_flow: Flow) -> Fraction:
    """How much more must flow with antifreeze than with water, as a share."""


@law("mixture_pressure_drop / water_pressure_drop - 1", source="definition")
def extra_pressure_drop(mixture_pressure_drop: PascalDifference, water_pressure_drop: PascalDifference) -> Fraction:
    """How much more pressure the pump must give with antifreeze than with water, as a share."""


# --- pressure where water boils first --------------------------------------------------------------------------------

# A column of water parts before its pressure falls to nothing; under 1 kPa even cold water boils.
LEAST_PRESSURE = Constant(1000.0, "Pa", source="definition", note="even water of 7 °C boils under it")


@law(
    "max(absolute_pressure - density * gravity * height, least_pressure)",
    constants={"gravity": GRAVITY, "least_pressure": LEAST_PRESSURE},
    source="hydrostatics",
    safety=True,
)
def pressure_at_height(absolute_pressure: AbsolutePascal, density: Density, height: Metre) -> AbsolutePascal:
    """Absolute pressure in Pa at a height (m, negative below) over the place where it is `absolute_pressure`.

    Taken with the pump stopped, and as 1 kPa where the column would pull below that: there it has parted.
    """


@law(
    "max(absolute_pressure - density * gravity * height - pressure_lost, least_pressure)",
    constants={"gravity": GRAVITY, "least_pressure": LEAST_PRESSURE},
    source="hydrostatics",
    safety=True,
)
def pump_inlet_pressure(
    absolute_pressure: AbsolutePascal, density: Density, height: Metre, pressure_lost: PascalDifference
) -> AbsolutePascal:
    """Absolute pressure in Pa at a pump's inlet that lies `height` (m, negative below) over the store's top.

    `pressure_lost` (Pa) is the friction between store and inlet.
    """


@law(
    "(absolute_pressure - vapour_pressure) / (density * gravity)",
    constants={"gravity": GRAVITY},
    source="hydrostatics",
    safety=True,
)
def rise_before_boiling(absolute_pressure: AbsolutePascal, vapour_pressure: AbsolutePascal, density: Density) -> Metre:
    """How high in m a pipe may rise over the place of `absolute_pressure` before its water boils."""


@law(
    "(inlet_pressure - vapour_pressure) / (density * gravity)",
    constants={"gravity": GRAVITY},
    source="hydrostatics",
    safety=True,
)
def net_positive_suction_head(
    inlet_pressure: AbsolutePascal, vapour_pressure: AbsolutePascal, density: Density
) -> Metre:
    """Net positive suction head in m at a pump's inlet; the maker says how much the pump needs."""


# --- underground -----------------------------------------------------------------------------------------------------


@law(
    "log(outside / inside) / (2 * pi * conductivity)",
    source="cylinder",
    ranges={"conductivity": "0.001 W/(m·K) to 500 W/(m·K)", "inside": "1 mm to 2000 mm"},
)
def layer_resistance(inside: Metre, outside: Metre, conductivity: Conductivity) -> MetreKelvinPerWatt:
    """Resistance of a round layer such as pipe insulation, m·K/W, between two diameters (m)."""


@law(
    "log(4 * (depth + surface_resistance * soil_conductivity) / jacket) / (2 * pi * soil_conductivity)",
    constants={"surface_resistance": Constant(0.0685, "m**2*K/W", source="en-13941")},
    source="en-13941",
    ranges={"soil_conductivity": "0.05 W/(m·K) to 5 W/(m·K)", "jacket": "1 mm to 2000 mm"},
)
def soil_resistance(depth: Metre, jacket: Metre, soil_conductivity: Conductivity) -> MetreKelvinPerWatt:
    """Resistance of the soil around one buried pipe, m·K/W: `depth` to its center, `jacket` its outside diameter (m).

    Holds where the depth is at least the jacket's diameter.
    """


@law(
    "log(1 + (2 * (depth + surface_resistance * soil_conductivity) / pipe_distance) ** 2)"
    " / (4 * pi * soil_conductivity)",
    constants={"surface_resistance": Constant(0.0685, "m**2*K/W", source="en-13941")},
    source="en-13941",
    ranges={"soil_conductivity": "0.05 W/(m·K) to 5 W/(m·K)", "pipe_distance": "1 mm to 10000 mm"},
)
def neighbour_resistance(depth: Metre, pipe_distance: Metre, soil_conductivity: Conductivity) -> MetreKelvinPerWatt:
    """Resistance that stands for the neighboring pipe's warmth, m·K/W: `pipe_distance` between the two centers (m)."""


@law("2 / (insulation_resistance + soil_resistance + neighbour_resistance)", source="en-13941")
def pair_conductance(
    insulation_resistance: MetreKelvinPerWatt,
    soil_resistance: MetreKelvinPerWatt,
    neighbour_resistance: MetreKelvinPerWatt,
) -> WattPerMetreKelvin:
    """Heat lost by supply and return together in each meter of trench, W/(m·K), over the mean of both less the soil.

    For two equal pipes side by side; two in one jacket lose somewhat less.
    """


@law("pair_conductance * (mean_water - ground)", source="en-13941")
def trench_loss(pair_conductance: WattPerMetreKelvin, mean_water: Kelvin, ground: Kelvin) -> WattPerMetre:
    """Heat lost by both pipes in each meter of trench, W/m; `ground` is the undisturbed soil, K."""


@law("trench_loss * trench_length", source="first-law")
def buried_loss(trench_loss: WattPerMetre, trench_length: Metre) -> Watt:
    """Heat lost by the whole buried run, W, while its water is hot."""


@law("buried_loss / heat", source="definition", ranges={"heat": "1 W to 1000 kW"})
def share_lost(buried_loss: Watt, heat: Watt) -> Fraction:
    """Loss of a run as a share of the heat sent through it while it carries that much."""


@law(
    "ground + (entering - ground) * exp(-run_conductance / (flow * volume_heat_capacity))",
    source="first-law",
    ranges={"flow": "0.001 L/min to 10000 L/min"},
)
def leaving_temperature(
    entering: Kelvin,
    ground: Kelvin,
    run_conductance: WattPerKelvin,
    flow: Flow,
    volume_heat_capacity: JoulePerCubicMetreKelvin,
) -> Kelvin:
    """Temperature in K of water at the far end of a run that loses `run_conductance` (W/K) on its way."""


@law("conductance_per_length * length", source="definition")
def run_conductance(conductance_per_length: WattPerMetreKelvin, length: Metre) -> WattPerKelvin:
    """Heat that a whole run loses for each degree, W/K."""


@law(
    "1 / (insulation_resistance + 1 / (pi * jacket * outside_film))",
    constants={"outside_film": Constant(8.0, "W/m**2/K", source="outside-film", note="still air about a pipe")},
    source="cylinder",
    ranges={"jacket": "1 mm to 2000 mm"},
)
def conductance_in_air(insulation_resistance: MetreKelvinPerWatt, jacket: Metre) -> WattPerMetreKelvin:
    """Heat lost by one insulated pipe in still air, W/(m·K), as where it comes up through a crawl space."""


@law(
    "water * heat_of_freezing / (conductance * max(freezing_point - surroundings, 0))",
    constants={"heat_of_freezing": Constant(333.55e3, "J/kg", source="heat-of-freezing")},
    source="first-law",
    ranges={"conductance": "0.0001 W/K to 100000 W/K"},
)
def time_to_freeze_solid(
    water: Kilogram, conductance: WattPerKelvin, freezing_point: Kelvin, surroundings: Kelvin
) -> Second:
    """Time in s from the first ice until all of a pipe's water is ice; none where the surroundings are no colder.

    A pipe bursts long before: when ice has closed it and the water beyond is trapped.
    """


@law("buried_loss * hours_hot", source="first-law")
def heat_lost_in(buried_loss: Watt, hours_hot: Second) -> Joule:
    """Heat in J lost over a time in which the run is hot."""
