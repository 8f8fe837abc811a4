"""What a baseboard, radiator or convector gives at a water temperature, and the coolest water that still does the job.

An emitter's output follows its excess temperature (mean water above room air) raised to an exponent that its maker or a
test gives. The water flow is constant: when the load falls, the drop from supply to return falls with it.
"""

import math

from calc.law import (
    Bracket,
    Exponent,
    Factor,
    Flow,
    Fraction,
    JoulePerCubicMetreKelvin,
    Kelvin,
    KelvinDifference,
    Metre,
    Watt,
    WattPerKelvin,
    WattPerMetre,
    balance,
    law,
)

# Wide enough for every emitter here: a floor is near 1.1, baseboard and convectors near 1.4.
EXPONENTS = "1 to 1.7"


@law("design_load * share", source="definition", ranges={"share": "0 % to 100 %"})
def own_load(design_load: Watt, share: Fraction) -> Watt:
    """Load in W that one kind of emitter carries where others heat the rest of the house."""


@law("design_load - own_load + own_heat", source="first-law")
def heat_with_rest(design_load: Watt, own_load: Watt, own_heat: Watt) -> Watt:
    """Heat in W that a house takes from its store: what one kind of emitter takes, and the load of the other rooms."""


@law("length * rating_per_length", source="definition")
def rating_of_length(length: Metre, rating_per_length: WattPerMetre) -> Watt:
    """Rated output in W of `length` (m) of baseboard rated at so much heat a length (W/m); finned length, not cover."""


@law("printed_rating / (1 + allowance)", source="ashrae-heating-effect", ranges={"allowance": "0 % to 30 %"})
def rating_without_allowance(printed_rating: Watt, allowance: Fraction) -> Watt:
    """Tested output in W behind a printed rating (W) that was raised by `allowance` for the place the heat comes in at.

    0.15 where the rating says it includes the heating-effect allowance, 0 where it does not. Raises OutOfRange above
    30 %.
    """


@law("emitter_factor * rating", source="definition")
def scaled_rating(emitter_factor: Factor, rating: Watt) -> Watt:
    """Rated output in W of so many times the emitter."""


@law("(supply + return_water) / 2", source="definition")
def mean_of(supply: Kelvin, return_water: Kelvin) -> Kelvin:
    """Mean water temperature in K: halfway between `supply` and `return_water` (K)."""


@law("water - indoor", source="en-442-2")
def excess_of(water: Kelvin, indoor: Kelvin) -> KelvinDifference:
    """Excess temperature in K of mean, supply or return water above room air (K)."""


@law(
    "(supply_excess - return_excess) / log(supply_excess / return_excess)",
    source="en-442-2",
    ranges={"supply_excess": "0.01 K to 200 K", "return_excess": "0.01 K to 200 K"},
    body="equal differences are their own mean",
)
def log_mean_excess(supply_excess: KelvinDifference, return_excess: KelvinDifference) -> KelvinDifference:
    """Logarithmic excess temperature in K, the fairer mean where the drop is large.

    With equal ends (K) it is that excess, the limit of the formula. Raises OutOfRange unless both ends are warmer than
    the room.
    """
    drop = supply_excess - return_excess
    return drop / math.log1p(drop / return_excess) if drop else supply_excess


@law(
    "rated_output * (excess / rated_excess) ** exponent",
    source="en-442-2",
    ranges={"excess": "0 K to 150 K", "rated_excess": "5 K to 150 K", "exponent": EXPONENTS},
)
def output(rated_output: Watt, excess: KelvinDifference, rated_excess: KelvinDifference, exponent: Exponent) -> Watt:
    """Heat given in W at an excess temperature (K), from the rating (W at `rated_excess`, K) and the exponent.

    Both excesses by the same mean, arithmetic or logarithmic. Raises OutOfRange for water cooler than the room.
    """


@law(
    "rated_excess * (load / rated_output) ** (1 / exponent)",
    source="en-442-2",
    ranges={"rated_excess": "5 K to 150 K", "exponent": EXPONENTS},
)
def needed_excess(
    load: Watt, rated_output: Watt, rated_excess: KelvinDifference, exponent: Exponent
) -> KelvinDifference:
    """Excess temperature in K at which the emitter gives just `load` (W): the output law turned round."""


@law(
    "load / rated_output * (rated_excess / excess) ** exponent",
    source="en-442-2",
    ranges={"exponent": EXPONENTS},
    never="excess <= 0",
)
def emitter_times(
    load: Watt, rated_output: Watt, rated_excess: KelvinDifference, excess: KelvinDifference, exponent: Exponent
) -> Factor:
    """How many times the emitter gives `load` (W) at an `excess` (K); NoSolution where that is not above zero."""


@law("indoor + excess", source="definition")
def mean_water(indoor: Kelvin, excess: KelvinDifference) -> Kelvin:
    """Mean water temperature in K that stands `excess` (K) above the room's air (K)."""


@law("design_load / water_drop", source="first-law")
def flow_capacity(design_load: Watt, water_drop: KelvinDifference) -> WattPerKelvin:
    """Heat that the emitter's design flow carries, W/K of drop: `water_drop` (K) at `design_load` (W)."""


@law("flow * heat_capacity", source="first-law")
def capacity_of_flow(flow: Flow, heat_capacity: JoulePerCubicMetreKelvin) -> WattPerKelvin:
    """Heat that a measured `flow` (m³/s) carries, W/K of drop; `heat_capacity` (J/m³K) at the mean water."""


@law("flow_capacity / heat_capacity", source="first-law")
def design_flow(flow_capacity: WattPerKelvin, heat_capacity: JoulePerCubicMetreKelvin) -> Flow:
    """Flow in m³/s that carries `flow_capacity` (W/K), measured at the mean of supply and return."""


@law("load / flow_capacity", source="first-law")
def drop(load: Watt, flow_capacity: WattPerKelvin) -> KelvinDifference:
    """Drop in K from supply to return while the flow stays as designed and the emitter gives `load` (W)."""


@law("mean_water + drop / 2", source="definition")
def supply_water(mean_water: Kelvin, drop: KelvinDifference) -> Kelvin:
    """Supply temperature in K for a mean (K) and a drop (K), by the arithmetic mean."""


@law("supply - drop", source="definition")
def return_water(supply: Kelvin, drop: KelvinDifference) -> Kelvin:
    """Return temperature in K after a drop (K) from `supply` (K)."""


@law("indoor + drop / (1 - exp(-drop / excess))", source="en-442-2")
def supply_water_log_mean(indoor: Kelvin, drop: KelvinDifference, excess: KelvinDifference) -> Kelvin:
    """Supply temperature in K whose logarithmic excess is `excess` (K) at a drop (K) above zero.

    It is the logarithmic mean solved for its hot end; never below the arithmetic answer for the same excess.
    """


@law("supply + exchanger_approach", source="definition")
def lowest_useful(supply: Kelvin, exchanger_approach: KelvinDifference) -> Kelvin:
    """Coolest store water in K still worth drawing: the supply needed and an exchanger's approach (K, 0 without)."""


@law("(return_water - indoor) / (supply - indoor)", source="en-442-2")
def excess_ratio(return_water: Kelvin, supply: Kelvin, indoor: Kelvin) -> Fraction:
    """Return's excess as a share of the supply's; under 0.7 the arithmetic mean flatters the emitter."""


@law("design_load * max(indoor - outdoor, 0) / (indoor - design_outdoor)", source="first-law")
def part_load(design_load: Watt, indoor: Kelvin, outdoor: Kelvin, design_outdoor: Kelvin) -> Watt:
    """Load in W in milder weather: in proportion to indoor above outdoor, no gains; none once it is warmer outside."""


@balance(
    "output",
    "rated_output * (max(supply - output / flow_capacity / 2 - indoor, 0) / rated_excess) ** exponent",
    solves="output",
    source="en-442-2",
    ranges={"rated_excess": "5 K to 150 K", "exponent": EXPONENTS},
)
def output_at(
    supply: Kelvin,
    flow_capacity: WattPerKelvin,
    rated_output: Watt,
    rated_excess: KelvinDifference,
    exponent: Exponent,
    indoor: Kelvin,
) -> Bracket[Watt]:
    """Heat in W that the emitter gives from water at `supply` (K) at its design flow; 0 from water below `indoor`.

    The emitter's law and the water's drop hold at once. Raises NoSolution where the return would have to leave cooler
    than the room: an emitter far too large for its flow, for which the arithmetic mean means nothing.
    """
    return 0.0, flow_capacity * (supply - indoor)
