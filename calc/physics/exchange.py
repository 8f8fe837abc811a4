"""Tap water warmed by the store: a plate in counterflow, a coil in the tank, a sidearm that circulates by itself.

Streams are told by their heat capacity, W/K: flow times the heat that each volume of water takes for each degree
(`emitters.capacity_of_flow`). The store's side is called primary, the side that runs to the taps tap. The first half
of the module sizes an exchanger; the second says how long the hot water lasts, and how fast it scalds.
"""

import math

from calc.expression import log_mean
from calc.law import (
    Bracket,
    Constant,
    Count,
    CubicMetre,
    Exponent,
    Factor,
    Flow,
    Fraction,
    Joule,
    JoulePerCubicMetreKelvin,
    JoulePerKelvin,
    Kelvin,
    Metre,
    PerKelvin,
    Second,
    SquareMetre,
    Velocity,
    Watt,
    WattPerKelvin,
    balance,
    law,
    method,
)
from calc.physics.pipes import GRAVITY
from calc.units import FAHRENHEIT_DEGREE

# How the film on one side of a plate grows with its flow: Nusselt number over Reynolds number, turbulent.
PLATE_EXPONENT = Constant(0.663, "1", source="plate-film")

# A coil's two films. Inside, Nusselt over Reynolds number in turbulent flow. Outside, water that rises by itself: the
# film over its drive, and over the water's absolute temperature, which makes it thinner and readier to expand.
COIL_FILMS = {
    "inside_share": Constant(0.3, "1", source="coil-films", note="of the resistance, at the rated point"),
    "flow_exponent": Constant(0.8, "1", source="coil-films"),
    "drive_exponent": Constant(0.293, "1", source="coil-films"),
    "warmth_exponent": Constant(4.0, "1", source="coil-films"),
    "least_drive": Constant(0.01, "K", source="definition"),
}


@law("rated_heat / log_mean(hot_in - cold_out, hot_out - cold_in)", source="log-mean")
def rated_conductance(
    rated_heat: Watt, hot_in: Kelvin, hot_out: Kelvin, cold_in: Kelvin, cold_out: Kelvin
) -> WattPerKelvin:
    """Conductance UA of a counterflow exchanger, W/K, from the heat and the four temperatures of one rated point.

    A coil in a tank of one temperature is the same with `hot_out` equal to `hot_in`. Infinite where a rating claims an
    end without any difference.
    """


@law("heat / (warm - cool)", source="first-law")
def stream_capacity(heat: Watt, warm: Kelvin, cool: Kelvin) -> WattPerKelvin:
    """Heat that a stream carries, W/K, from the heat and the two temperatures (K) at one rated point."""


@law(
    "2 * rated_conductance / ((rated_primary / primary) ** film_exponent + (rated_tap / tap_side) ** film_exponent)",
    source="plate-film",
    ranges={"film_exponent": "0 to 1", "primary": "0.001 W/K to 1000000 W/K", "tap_side": "0.001 W/K to 1000000 W/K"},
)
def conductance_at_flows(
    rated_conductance: WattPerKelvin,
    rated_primary: WattPerKelvin,
    primary: WattPerKelvin,
    rated_tap: WattPerKelvin,
    tap_side: WattPerKelvin,
    film_exponent: Exponent,
) -> WattPerKelvin:
    """Conductance at other flows than rated, W/K, when each side holds half of the resistance at the rated point.

    All streams as heat capacities, W/K. With `film_exponent` 0 it stays as rated, which flatters small flows.
    """


@law("min(primary, tap_side)", source="definition")
def smaller_stream(primary: WattPerKelvin, tap_side: WattPerKelvin) -> WattPerKelvin:
    """The smaller of the two streams' heat capacities, W/K: it sets the most heat that can pass."""


@law("min(primary, tap_side) / max(primary, tap_side)", source="definition")
def stream_ratio(primary: WattPerKelvin, tap_side: WattPerKelvin) -> Factor:
    """The smaller heat capacity over the larger, 0 to 1."""


@law("conductance / smaller_stream", source="definition")
def number_of_transfer_units(conductance: WattPerKelvin, smaller_stream: WattPerKelvin) -> Factor:
    """Number of transfer units (NTU): conductance over the smaller heat capacity, both W/K."""


@law(
    "(1 - exp(-transfer_units * (1 - ratio))) / (1 - ratio * exp(-transfer_units * (1 - ratio)))",
    source="counterflow",
    ranges={"transfer_units": "0 to 1000", "ratio": "0 to 1"},
    body="equal flows, where the formula is 0 over 0, and flows near them, where its digits cancel",
)
def counterflow_effectiveness(transfer_units: Factor, ratio: Factor) -> Fraction:
    """Share of the most heat that could pass which does pass in counterflow.

    With equal streams (ratio 1) the formula is 0/0 and its limit, NTU/(1 + NTU), stands in.
    """
    if ratio == 1:
        return transfer_units / (1 + transfer_units)
    fading = math.expm1(-transfer_units * (1 - ratio))
    return fading / (ratio * fading - (1 - ratio))


@law("effectiveness * smaller_stream * (store - cold)", source="counterflow")
def heat_passed(effectiveness: Fraction, smaller_stream: WattPerKelvin, store: Kelvin, cold: Kelvin) -> Watt:
    """Heat that passes from the store's water to the tap water, W."""


@law("cold + heat / tap_side", source="first-law")
def tap_temperature(cold: Kelvin, heat: Watt, tap_side: WattPerKelvin) -> Kelvin:
    """Temperature of the tap water as it leaves the exchanger, K."""


@law("store - heat / primary", source="first-law")
def primary_return(store: Kelvin, heat: Watt, primary: WattPerKelvin) -> Kelvin:
    """Temperature of the store's water as it leaves the exchanger, K: how cool the store's bottom is kept."""


@law("cold + (tap - cold) * tap_side / (effectiveness * smaller_stream)", source="counterflow")
def store_needed(
    tap: Kelvin, cold: Kelvin, tap_side: WattPerKelvin, effectiveness: Fraction, smaller_stream: WattPerKelvin
) -> Kelvin:
    """Coolest store, K, that still makes tap water of this temperature through the exchanger."""


@balance(
    "tap_side * (tap - cold)",
    "2 * rated_conductance * (tap_side / rated_tap) ** film_exponent"
    " / ((rated_primary / primary * tap_side / rated_tap) ** film_exponent + 1)"
    " * log_mean(max(store - tap, 0), max(store - tap_side * (tap - cold) / primary - cold, 0))",
    solves="tap_side",
    source="log-mean",
    ranges={"film_exponent": "0 to 1"},
)
def largest_tap_stream(
    store: Kelvin,
    cold: Kelvin,
    tap: Kelvin,
    primary: WattPerKelvin,
    rated_conductance: WattPerKelvin,
    rated_primary: WattPerKelvin,
    rated_tap: WattPerKelvin,
    film_exponent: Exponent,
) -> Bracket[WattPerKelvin]:
    """Largest tap stream, W/K, that a store of this temperature warms to `tap` with this primary stream.

    The heat that the tap water takes up equals conductance times log mean difference, with the conductance at those
    flows (`conductance_at_flows`). Nothing where the store is no hotter than the tap water wanted. Raises NoSolution
    where it is so little hotter that with weak films no flow is small enough.
    """
    most = primary * max(store - cold, 0) / (tap - cold)
    return most * 1e-9 if store > tap else 0.0, most


@law("max(for_emitters, for_taps)", source="definition")
def coolest_useful(for_emitters: Kelvin, for_taps: Kelvin) -> Kelvin:
    """Coolest store water worth drawing when it must serve both, K: the hotter of the two needs."""


# A coil in a tank of one temperature.


@law("store - (store - cold) * exp(-conductance / tap_side)", source="counterflow")
def coil_outlet(store: Kelvin, cold: Kelvin, conductance: WattPerKelvin, tap_side: WattPerKelvin) -> Kelvin:
    """Temperature of tap water that leaves a coil in a store of one temperature, K."""


@law("conductance * log_mean(store - cold, max(store - tap, 0)) / (tap - cold)", source="log-mean")
def coil_largest_stream(store: Kelvin, cold: Kelvin, tap: Kelvin, conductance: WattPerKelvin) -> WattPerKelvin:
    """Largest tap stream, W/K, that a coil in a store of this temperature warms to `tap`; none in a store no hotter."""


@law("cold + (tap - cold) / (1 - exp(-conductance / tap_side))", source="counterflow")
def store_needed_by_coil(tap: Kelvin, cold: Kelvin, conductance: WattPerKelvin, tap_side: WattPerKelvin) -> Kelvin:
    """Coolest store, K, in which a coil still warms this tap stream (W/K) to `tap`."""


# The same coil rated at one point, at other flows and in other stores: less of both makes both of its films poorer.

_OUTSIDE_FILM = (  # over what it is at the rated point; `mean` is halfway along the tap water
    "(max(store - {mean}, least_drive) / (rated_store - rated_mean)) ** drive_exponent"
    " * ((store + {mean}) / (rated_store + rated_mean)) ** warmth_exponent"
)
_COIL_HEAT = (
    "rated_conductance * tap_side ** flow_exponent * {film}"
    " / (inside_share * rated_tap ** flow_exponent * {film} + (1 - inside_share) * tap_side ** flow_exponent)"
)
_COIL_AT_WANTED = _COIL_HEAT.format(film=_OUTSIDE_FILM.format(mean="(cold + tap) / 2"))


@law(
    _COIL_HEAT.format(film=_OUTSIDE_FILM.format(mean="tap_mean")),
    source="coil-films",
    constants=COIL_FILMS,
)
def coil_conductance(
    rated_conductance: WattPerKelvin,
    rated_tap: WattPerKelvin,
    rated_store: Kelvin,
    rated_mean: Kelvin,
    tap_side: WattPerKelvin,
    store: Kelvin,
    tap_mean: Kelvin,
) -> WattPerKelvin:
    """Conductance of a coil in a store, W/K, at another tap stream (W/K) and store (K) than those it is rated at.

    `tap_mean` and `rated_mean` (K) are halfway between cold and hot tap water. Inside, the film follows the stream;
    outside, it follows what drives the store's water, which is store over tap water and how warm both are.
    """


@balance(
    "tap_side * (tap - cold)",
    f"{_COIL_AT_WANTED} * log_mean(store - cold, max(store - tap, 0))",
    solves="store",
    source="coil-films",
    constants=COIL_FILMS,
)
def store_for_coil(
    tap: Kelvin,
    cold: Kelvin,
    tap_side: WattPerKelvin,
    rated_conductance: WattPerKelvin,
    rated_tap: WattPerKelvin,
    rated_store: Kelvin,
    rated_mean: Kelvin,
) -> Bracket[Kelvin]:
    """Coolest store, K, in which a rated coil still warms this tap stream (W/K) to `tap`.

    Raises NoSolution where it would have to be over a thousand kelvin hotter.
    """
    return tap, tap + 1000


@balance(
    "tap_side * (tap - cold)",
    f"{_COIL_AT_WANTED} * log_mean(max(store - cold, 0), max(store - tap, 0))",
    solves="tap_side",
    source="coil-films",
    constants=COIL_FILMS,
)
def stream_of_coil(
    store: Kelvin,
    cold: Kelvin,
    tap: Kelvin,
    rated_conductance: WattPerKelvin,
    rated_tap: WattPerKelvin,
    rated_store: Kelvin,
    rated_mean: Kelvin,
) -> Bracket[WattPerKelvin]:
    """Largest tap stream, W/K, that a rated coil warms to `tap` in a store of this temperature; none in one no hotter.

    Were the film inside perfect, the film outside alone would let so much through: no stream can be larger.
    """
    outside = coil_conductance(rated_conductance, 1e-9, rated_store, rated_mean, 1e9, store, (cold + tap) / 2)
    most = outside * log_mean(max(store - cold, 0), max(store - tap, 0)) / (tap - cold)
    return most * 1e-9, most


@balance(
    "tap_side * (tap - cold)",
    f"{_COIL_AT_WANTED} * log_mean(max(store - cold, 0), max(store - tap, 0))",
    solves="tap",
    source="coil-films",
    constants=COIL_FILMS,
)
def water_from_coil(
    store: Kelvin,
    cold: Kelvin,
    tap_side: WattPerKelvin,
    rated_conductance: WattPerKelvin,
    rated_tap: WattPerKelvin,
    rated_store: Kelvin,
    rated_mean: Kelvin,
) -> Bracket[Kelvin]:
    """Temperature, K, at which a tap stream (W/K) leaves a rated coil in a store of this temperature."""
    return cold, max(store, cold)


# A sidearm: a shell beside the tap-water tank, through which that water rises by itself as it is warmed.


@balance(
    "gravity * expansion * (hot - tank) * ("
    "sidearm_height * (1 - heat_content * bore_area * velocity / conductance"
    " * (1 - exp(-conductance / (heat_content * bore_area * velocity))))"
    " + riser_height * (1 - exp(-conductance / (heat_content * bore_area * velocity))))",
    "loss_coefficient * velocity ** 2 / 2",
    solves="velocity",
    source="thermosiphon",
    constants={"gravity": GRAVITY},
)
def sidearm_velocity(
    hot: Kelvin,
    tank: Kelvin,
    conductance: WattPerKelvin,
    heat_content: JoulePerCubicMetreKelvin,
    expansion: PerKelvin,
    bore_area: SquareMetre,
    sidearm_height: Metre,
    riser_height: Metre,
    loss_coefficient: Factor,
) -> Bracket[Velocity]:
    """Speed of the tap water in a sidearm's pipes, m/s, at which its lift equals its friction.

    The shell is taken as heated by water of one temperature, `hot`; the tank's water enters at `tank` and warms on the
    way. It drives with its mean excess over the shell's height and with its last one over the riser above the shell;
    `gravity.expansion_rate` gives its growth for each degree. `loss_coefficient` counts bends, valves and pipe friction
    in velocity heads of this pipe. Raises NoSolution when the shell is no hotter than the tank: nothing moves.
    """
    lift = max(GRAVITY.value * expansion * (hot - tank) * (sidearm_height + riser_height), 0)
    most = max(math.sqrt(2 * lift / loss_coefficient), 1e-9)
    return most * 1e-6, most


@law(
    "heat_content * bore_area * velocity * (hot - tank)"
    " * (1 - exp(-conductance / (heat_content * bore_area * velocity)))",
    source="thermosiphon",
)
def sidearm_heat(
    hot: Kelvin,
    tank: Kelvin,
    conductance: WattPerKelvin,
    heat_content: JoulePerCubicMetreKelvin,
    bore_area: SquareMetre,
    velocity: Velocity,
) -> Watt:
    """Heat that a sidearm gives the tank, W, at the speed of its water."""


@law("heat / (hot - tank)", source="definition")
def whole_conductance(heat: Watt, hot: Kelvin, tank: Kelvin) -> WattPerKelvin:
    """Heat that a sidearm gives for each degree between its shell and the tank, W/K, at one state of the two."""


@law(
    "tank_capacity * (target - start) / (conductance * log_mean(hot - start, max(hot - target, 0)))",
    source="first-law",
)
def time_to_warm(
    tank_capacity: JoulePerKelvin, start: Kelvin, target: Kelvin, hot: Kelvin, conductance: WattPerKelvin
) -> Second:
    """Time in which water of one temperature, `hot`, warms a mixed tank from `start` to `target`, s.

    Raises ZeroDivisionError when `hot` is no hotter than `target`: it never gets there.
    """


# How long it lasts.


@law("tap_side * (tap - cold)", source="first-law")
def draw_heat(tap_side: WattPerKelvin, tap: Kelvin, cold: Kelvin) -> Watt:
    """Heat that tap water takes with it while it runs, W."""


@law("heat / max(draw - refill, 0)", source="first-law")
def draw_time(heat: Joule, draw: Watt, refill: Watt) -> Second:
    """Time for which stored `heat` feeds a draw while a fire may refill, s.

    Raises ZeroDivisionError when the fire gives at least as much as is drawn: it lasts as long as the fire burns.
    """


@law("delivered_share * tank_volume * max(tank - cold, 0) / ((tap - cold) * tap_flow)", source="first-law")
def tank_draw_time(
    delivered_share: Fraction, tank_volume: CubicMetre, tank: Kelvin, cold: Kelvin, tap: Kelvin, tap_flow: Flow
) -> Second:
    """Time for which a tank of hot tap water, mixed down to `tap`, feeds a flow, s.

    `delivered_share` is what comes out before the cold that follows has cooled it: about 70 % of the tank.
    """


@law("draws * time_each * draw", source="definition")
def heat_of_draws(draws: Count, time_each: Second, draw: Watt) -> Joule:
    """Heat of several showers or other draws of one kind, J."""


@law("start - heat / tank_capacity", source="first-law")
def temperature_after_draws(start: Kelvin, heat: Joule, tank_capacity: JoulePerKelvin) -> Kelvin:
    """Temperature of a mixed store after `heat` has been drawn from it, K."""


# Time to a full-thickness burn of adult skin: °F, shortest and longest time in seconds that is printed for that water.
# Where a source prints only "less than", that row is left out and the next hotter one stands in.
_SCALDS = (
    (120.0, 300.0, 600.0),
    (125.0, 90.0, 120.0),
    (130.0, 30.0, 30.0),
    (135.0, 10.0, 10.0),
    (140.0, 3.0, 6.0),
    (150.0, 0.5, 2.0),
)


def _scald_row(water: float) -> tuple[float, float, float]:
    """The row of the first temperature at or above that of the water; the last row beyond the table."""
    fahrenheit = water / FAHRENHEIT_DEGREE - 459.67
    return next((row for row in _SCALDS if fahrenheit <= row[0] + 1e-6), _SCALDS[-1])


@method(
    "Shortest printed time to a deep burn of adult skin, from the next hotter row of the table and never in between; "
    "children burn sooner.",
    source="scald-times",
    ranges={"water": "0 °C to 150 °C"},
    safety=True,
)
def shortest_scald_time(water: Kelvin) -> Second:
    """Shortest time, s, that any of the sources prints for a full-thickness burn of adult skin by running water.

    At or below 120 °F the row for 120 °F stands: at least that long. Above 150 °F it is at most that long.
    """
    return _scald_row(water)[1]


@method(
    "Longest printed time to a deep burn of adult skin, from the next hotter row of the table and never in between; "
    "children burn sooner.",
    source="scald-times",
    ranges={"water": "0 °C to 150 °C"},
    safety=True,
)
def longest_scald_time(water: Kelvin) -> Second:
    """Longest time, s, that any of the sources prints for a full-thickness burn; rows as in `shortest_scald_time`."""
    return _scald_row(water)[2]
