"""Gravity circulation: warm water is lighter, rises, and keeps a loop going with no pump.

The weight by which the cool leg outweighs the warm one is balanced against friction. That weight is first put in the
form in which friction is written, so that the balance has one unknown, the Reynolds number, and holds from laminar to
turbulent flow. Two questions are answered: what flows between two known temperatures, and how hot the outlet gets when
a known heat must be moved.

No formula here sees a spring check, an air lock or a dip in the pipe. Each of them stops a gravity loop.
"""

from math import sqrt

from calc.law import (
    Bracket,
    Density,
    Factor,
    Flow,
    JoulePerCubicMetreKelvin,
    Kelvin,
    KelvinDifference,
    Metre,
    PascalDifference,
    PascalSecond,
    PerKelvin,
    Watt,
    balance,
    law,
)
from calc.physics.pipes import FRICTION_FACTOR, GRAVITY

# Friction is nowhere less than this in any pipe, nor less than laminar's 64/Re: both together bracket the answer, with
# a little room for rounding.
LEAST_FRICTION = 0.004


@law(
    "(cool_density - warm_density) * gravity * loop_height",
    constants={"gravity": GRAVITY},
    source="hydrostatics",
    safety=True,
)
def driving_pressure(cool_density: Density, warm_density: Density, loop_height: Metre) -> PascalDifference:
    """Pressure in Pa that drives a gravity loop.

    `loop_height` (m) is from the middle of the fire's jacket up to the middle of what cools the water.
    """


@law("loop_supply - loop_return", source="definition")
def loop_drop(loop_supply: Kelvin, loop_return: Kelvin) -> KelvinDifference:
    """How much the water cools around a loop, K."""


@law("loop_return + loop_drop", source="definition")
def outlet(loop_return: Kelvin, loop_drop: KelvinDifference) -> Kelvin:
    """Water at the stove's outlet of a loop, K."""


@law("length / bore", source="definition", ranges={"bore": "1 mm to 500 mm"})
def length_in_bores(length: Metre, bore: Metre) -> Factor:
    """Length of the loop, there and back, counted in bores."""


@law(
    "2 * driving_pressure * density * bore ** 2 / viscosity ** 2",
    source="darcy",
    ranges={"viscosity": "0.01 mPa·s to 10000 mPa·s"},
)
def driving_number(
    driving_pressure: PascalDifference, density: Density, bore: Metre, viscosity: PascalSecond
) -> Factor:
    """The driving pressure without units: what friction times the Reynolds number squared must equal."""


@balance(
    "driving_number",
    f"({FRICTION_FACTOR} * length_in_bores + fittings_loss) * reynolds_number ** 2",
    solves="reynolds_number",
    source="churchill",
    ranges={
        "driving_number": "0 to 1000000000000000000",
        "relative_roughness": "0 to 0.05",
        "length_in_bores": "1 to 10000000",
    },
    safety=True,
)
def reynolds_between(
    driving_number: Factor, relative_roughness: Factor, length_in_bores: Factor, fittings_loss: Factor
) -> Bracket[Factor]:
    """Reynolds number at which friction uses up the driving pressure between two known temperatures.

    Safety, because dumps rely on it. OutOfRange where the driving pressure pushes the wrong way.
    """
    turbulent = sqrt(driving_number / (LEAST_FRICTION * length_in_bores + fittings_loss))
    most = min(driving_number / (64 * length_in_bores), turbulent)
    return most / 1000, most * 1.001


@law("pi * reynolds_number * bore * viscosity / (4 * density)", source="reynolds")
def flow_at(reynolds_number: Factor, bore: Metre, viscosity: PascalSecond, density: Density) -> Flow:
    """Flow in m³/s of a Reynolds number in a round bore."""


@law(
    "2 * (cool_density - warm_density) / ((cool_density + warm_density) * difference)",
    source="definition",
    ranges={"difference": "0.1 K to 150 K"},
)
def expansion_rate(cool_density: Density, warm_density: Density, difference: KelvinDifference) -> PerKelvin:
    """How much lighter water grows for each degree, as a share, between two temperatures `difference` apart, 1/K."""


@law(
    "8 * density ** 3 * expansion_rate * gravity * loop_height * heat * bore"
    " / (pi * volume_heat_capacity * viscosity ** 3)",
    constants={"gravity": GRAVITY},
    source="darcy",
    ranges={"viscosity": "0.01 mPa·s to 10000 mPa·s", "volume_heat_capacity": "0.1 Wh/(L·K) to 10 Wh/(L·K)"},
)
def heat_driving_number(
    density: Density,
    expansion_rate: PerKelvin,
    loop_height: Metre,
    heat: Watt,
    bore: Metre,
    volume_heat_capacity: JoulePerCubicMetreKelvin,
    viscosity: PascalSecond,
) -> Factor:
    """What drives a loop that must move a known heat, without units.

    The less flows, the hotter it gets and the harder it is driven, which is why this one meets the cube of the Reynolds
    number.
    """


@balance(
    "heat_driving_number",
    f"({FRICTION_FACTOR} * length_in_bores + fittings_loss) * reynolds_number ** 3",
    solves="reynolds_number",
    source="churchill",
    ranges={
        "heat_driving_number": "1 to 1000000000000000000000",
        "relative_roughness": "0 to 0.05",
        "length_in_bores": "1 to 10000000",
    },
    safety=True,
)
def reynolds_for_heat(
    heat_driving_number: Factor, relative_roughness: Factor, length_in_bores: Factor, fittings_loss: Factor
) -> Bracket[Factor]:
    """Reynolds number at which a loop moves a known heat and settles. Safety, because dumps rely on it."""
    turbulent = (heat_driving_number / (LEAST_FRICTION * length_in_bores + fittings_loss)) ** (1 / 3)
    most = min(sqrt(heat_driving_number / (64 * length_in_bores)), turbulent)
    return most / 1000, most * 1.001
