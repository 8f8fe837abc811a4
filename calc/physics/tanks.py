"""Several tanks that serve as one store: heat, uneven flow, layers, and loss against one larger tank.

In series the water passes every tank, so a row of mixed tanks keeps its heat in order like the layers of one tall tank.
In parallel the pipes divide the flow: every branch loses the same pressure, so the shorter one carries more, and its
tank is empty first.
"""

from math import exp

from calc.law import (
    Count,
    CubicMetre,
    Density,
    Factor,
    Flow,
    Fraction,
    Kelvin,
    Metre,
    NoSolution,
    Velocity,
    Watt,
    find_root,
    law,
    method,
)
from calc.physics import gravity, pipes, store

MOST_TANKS = "1 to 20"

# --- all of them together, and one in their place ---


@law("tank_count * volume_of_each", source="definition")
def volume_of_all(tank_count: Count, volume_of_each: CubicMetre) -> CubicMetre:
    """Water in all the tanks, m³."""


@law("store_volume / tank_count", source="definition", ranges={"tank_count": MOST_TANKS})
def volume_of_one(store_volume: CubicMetre, tank_count: Count) -> CubicMetre:
    """Water in each of several like tanks that are one store, m³."""


@law("tank_count * loss_of_each", source="definition")
def loss_of_all(tank_count: Count, loss_of_each: Watt) -> Watt:
    """Heat that all the tanks lose, W."""


@law("loss_of_all / loss_of_one", source="definition", ranges={"loss_of_one": "0.001 W to 10000 kW"})
def loss_ratio(loss_of_all: Watt, loss_of_one: Watt) -> Factor:
    """How many times as much several tanks lose as one of the same water, shape and insulation."""


@law("loss_of_all - loss_of_one", source="definition")
def loss_saved(loss_of_all: Watt, loss_of_one: Watt) -> Watt:
    """Heat that one larger tank would keep, W."""


@law("tank_count ** (1 / 3)", source="definition", ranges={"tank_count": MOST_TANKS})
def surface_factor(tank_count: Count) -> Factor:
    """How many times the surface of one tank several of the same shape have that hold as much together."""


# --- pipes ---


@law("tank_count * length_of_each", source="definition")
def length_of_all(tank_count: Count, length_of_each: Metre) -> Metre:
    """Pipe of a row of tanks, m."""


@law("tank_count * loss_of_each", source="definition")
def fittings_of_all(tank_count: Count, loss_of_each: Factor) -> Factor:
    """Losses of fittings and tank ends along a row of tanks, in velocity heads."""


@law("share * flow", source="definition")
def part_of_flow(share: Fraction, flow: Flow) -> Flow:
    """A share of a flow, m³/s."""


def _shares(
    whole_reynolds: float,
    tank_count: float,
    near_bores: float,
    far_bores: float,
    relative_roughness: float,
    branch_losses: float,
) -> list[float]:
    """Share of the flow in each branch, the nearest first; from the nearest to the farthest they grow in even steps."""
    count = round(tank_count)
    lengths = [near_bores + (far_bores - near_bores) * place / max(count - 1, 1) for place in range(count)]
    losses = {"relative_roughness": relative_roughness, "fittings_loss": branch_losses}

    def pressure_number(reynolds_number: float) -> float:
        """What drives the nearest branch, without units, when so much flows in it."""
        factor = pipes.friction_factor(reynolds_number, relative_roughness)
        return (factor * min(lengths) + branch_losses) * reynolds_number**2

    def reynolds_numbers(number: float) -> list[float]:
        return [gravity.reynolds_between(driving_number=number, length_in_bores=length, **losses) for length in lengths]

    even, all_of_it = pressure_number(whole_reynolds / count), pressure_number(whole_reynolds)
    number = find_root(
        lambda number: sum(reynolds_numbers(number)) / whole_reynolds - 1, even * 0.999, all_of_it * 1.001
    )
    if number is None:
        raise NoSolution("branches")
    flows = reynolds_numbers(number)
    return [flow / sum(flows) for flow in flows]


_BRANCHES = {
    "whole_reynolds": "20 to 10000000",
    "tank_count": MOST_TANKS,
    "near_bores": "1 to 1000000",
    "far_bores": "1 to 1000000",
    "relative_roughness": "0 to 0.05",
    "branch_losses": "0 to 1000",
}


@method(
    "Every branch loses the same pressure, and together they carry the whole flow: solved with friction by Churchill's "
    "equation in each. Branches between the nearest and the farthest grow longer in even steps.",
    source="churchill",
    ranges=_BRANCHES,
)
def nearest_share(
    whole_reynolds: Factor,
    tank_count: Count,
    near_bores: Factor,
    far_bores: Factor,
    relative_roughness: Factor,
    branch_losses: Factor,
) -> Fraction:
    """Share of the flow that passes the tank with the shortest branch.

    `whole_reynolds` is the Reynolds number that the whole flow would have in one branch. Lengths are in bores.
    """
    return _shares(whole_reynolds, tank_count, near_bores, far_bores, relative_roughness, branch_losses)[0]


@method("The same balance, for the longest branch.", source="churchill", ranges=_BRANCHES)
def farthest_share(
    whole_reynolds: Factor,
    tank_count: Count,
    near_bores: Factor,
    far_bores: Factor,
    relative_roughness: Factor,
    branch_losses: Factor,
) -> Fraction:
    """Share of the flow that passes the tank with the longest branch."""
    return _shares(whole_reynolds, tank_count, near_bores, far_bores, relative_roughness, branch_losses)[-1]


# --- what comes out before it is too cool ---


@law("(lowest_useful - return_water) / (top - return_water)", source="definition", never="top <= return_water")
def end_share(lowest_useful: Kelvin, return_water: Kelvin, top: Kelvin) -> Fraction:
    """How far over the return the last useful water is, as a share of the hottest: what is drawn until then counts."""


@method(
    "The tanks as stirred layers in a row, drawn from until the last of them gives water that is too cool.",
    source="tanks-in-series",
    ranges={"tank_count": MOST_TANKS},
)
def series_delivered(tank_count: Count, end_share: Fraction) -> Fraction:
    """Heat that came out until then, as a share of all over the return: mixed tanks in series."""
    longest = 7.0  # tank volumes, up to which the series of the layers holds
    if end_share >= 1:
        return 0.0
    drawn = find_root(lambda drawn: store.outlet_share(tank_count, drawn) - end_share, 0.0, longest)
    return store.delivered_share(tank_count, longest if drawn is None else drawn)


@method(
    "Each tank mixed and drawn from by its share of the flow, until all together give water that is too cool.",
    source="first-law",
    ranges={"tank_count": MOST_TANKS, "nearest_share": "1 % to 100 %", "farthest_share": "0 % to 100 %"},
)
def parallel_delivered(
    tank_count: Count, nearest_share: Fraction, farthest_share: Fraction, end_share: Fraction
) -> Fraction:
    """Heat that came out until then, as a share of all over the return: mixed tanks in parallel.

    Shares between the nearest and the farthest are taken in even steps; with two tanks that is exact.
    """
    count = round(tank_count)
    plain = [nearest_share + (farthest_share - nearest_share) * place / max(count - 1, 1) for place in range(count)]
    shares = [share / sum(plain) for share in plain]

    def left(drawn: float) -> list[float]:
        return [exp(-count * share * drawn) for share in shares]

    def lacking(drawn: float) -> float:
        return sum(share * heat for share, heat in zip(shares, left(drawn), strict=True)) - end_share

    if end_share >= 1:
        return 0.0
    drawn = find_root(lacking, 0.0, 50.0)
    return 1 - sum(left(50.0 if drawn is None else drawn)) / count


@law(
    "1 / (tank_count * nearest_share)",
    source="definition",
    ranges={"tank_count": MOST_TANKS, "nearest_share": "1 % to 100 %"},
)
def layered_share(tank_count: Count, nearest_share: Fraction) -> Fraction:
    """Share of a layered store that has been drawn when the tank with the most flow gives its first cool water."""


# --- what the inlet stirs ---


@law("velocity / spread", source="definition", ranges={"spread": "1 to 1000"})
def inlet_velocity(velocity: Velocity, spread: Factor) -> Velocity:
    """Speed in m/s at which water enters a tank whose inlet is `spread` times as wide as the pipe."""


@law(
    "(cool_density - warm_density) * gravity * height / (cool_density * inlet_velocity ** 2)",
    constants={"gravity": pipes.GRAVITY},
    source="richardson",
    ranges={"inlet_velocity": "0.000001 m/s to 100 m/s"},
)
def richardson(cool_density: Density, warm_density: Density, height: Metre, inlet_velocity: Velocity) -> Factor:
    """Richardson number of an inlet: what keeps the layers apart over what stirs them. Large is calm."""
