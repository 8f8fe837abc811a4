"""How a room with a stove warms: its air with what stands in it, and its walls, each at its own speed.

The doorway passes on more for each degree the warmer the room is, so there is no closed form. Both masses are stepped
through time together: in each step the doorway's heat is taken as a straight line in the temperature, for which the
solution is exact, and what the line misses is added as a correction that also tells how long the next step may be.
That is the exponential Rosenbrock method of third order of Hochbruck, Ostermann and Schweitzer (2009), exprb32.
"""

import math
from collections.abc import Callable, Iterator
from typing import NamedTuple

from calc.law import (
    AbsolutePascal,
    JoulePerKelvin,
    Kelvin,
    Metre,
    NoSolution,
    Second,
    Watt,
    WattPerKelvin,
    find_root,
    method,
)
from calc.physics.room import doorway_conductance, doorway_flow, steady_room

_STEP_ERROR = 0.005  # K, allowed in each step; the sum stays under it, since the room forgets
_FIRST_STEP = 60.0  # s
_LONGEST = 1e9  # s; whatever is not reached in thirty years is not reached
_HOW = (
    "Air and walls stepped through time together, the doorway passing on more the warmer the room is; each step is as "
    "long as an error of 0.005 K allows."
)


class _Room(NamedTuple):
    """What the two balances are made of, SI; `doorway` is in W for a difference of 1 K, and goes with its power 1.5."""

    heat: float
    conductance: float
    outdoor: float
    partition: float
    house: float
    doorway: float
    link: float
    air_capacity: float
    wall_capacity: float


class _State(NamedTuple):
    """Temperatures of air and walls, K."""

    air: float
    walls: float


class _Step(NamedTuple):
    """One accepted step: when it began and how long it took, s, and both masses before and after it."""

    began: float
    length: float
    before: _State
    after: _State


@method(_HOW, source="exponential-steps")
def room_after(
    heat: Watt,
    conductance: WattPerKelvin,
    outdoor: Kelvin,
    partition: WattPerKelvin,
    house: Kelvin,
    width: Metre,
    height: Metre,
    site_pressure: AbsolutePascal,
    link: WattPerKelvin,
    air_capacity: JoulePerKelvin,
    wall_capacity: JoulePerKelvin,
    air: Kelvin,
    walls: Kelvin,
    elapsed: Second,
) -> Kelvin:
    """Air of the room after a time of fire, K, from where `air` and `walls` (K) stand when it is lit.

    `heat` in W goes to the air; `conductance` leads outdoors, `partition` to the house, `link` from air to walls (W/K).
    `width` and `height` (m) are the doorway's, `site_pressure` (Pa) thins its air; capacities in J/K, `elapsed` in s.
    """
    room = _room(
        heat, conductance, outdoor, partition, house, width, height, site_pressure, link, air_capacity, wall_capacity
    )
    now = _State(air, walls)
    for step in _steps(room, now, elapsed):
        now = step.after
    return now.air


@method(_HOW, source="exponential-steps")
def time_to_limit(
    heat: Watt,
    conductance: WattPerKelvin,
    outdoor: Kelvin,
    partition: WattPerKelvin,
    house: Kelvin,
    width: Metre,
    height: Metre,
    site_pressure: AbsolutePascal,
    link: WattPerKelvin,
    air_capacity: JoulePerKelvin,
    wall_capacity: JoulePerKelvin,
    air: Kelvin,
    walls: Kelvin,
    limit: Kelvin,
) -> Second:
    """Time in which the air reaches `limit` (K), s; 0 when it starts there. The rest as for `room_after`.

    Raises NoSolution when the room settles at the limit or below it: it never gets there.
    """
    if air >= limit:
        return 0.0
    if steady_room(heat, conductance, outdoor, partition, house, width, height, site_pressure) <= limit:
        raise NoSolution("time_to_limit")
    room = _room(
        heat, conductance, outdoor, partition, house, width, height, site_pressure, link, air_capacity, wall_capacity
    )
    for step in _steps(room, _State(air, walls), _LONGEST):
        if step.after.air >= limit:
            return step.began + _until_limit(room, step.before, limit, step.length)
    raise NoSolution("time_to_limit")


def _until_limit(room: _Room, before: _State, limit: float, length: float) -> float:
    """When, within a step that ends above the limit, the air reaches it, s from the step's beginning."""
    part = find_root(lambda part: _stepped(room, before, part)[0].air - limit, 0.0, length)
    return length if part is None else part


def _room(
    heat: float,
    conductance: float,
    outdoor: float,
    partition: float,
    house: float,
    width: float,
    height: float,
    site_pressure: float,
    link: float,
    air_capacity: float,
    wall_capacity: float,
) -> _Room:
    doorway = doorway_conductance(doorway_flow(width, height, 1.0, house), site_pressure, house)
    return _Room(heat, conductance, outdoor, partition, house, doorway, link, air_capacity, wall_capacity)


def _steps(room: _Room, state: _State, until: float) -> Iterator[_Step]:
    """The accepted steps up to a time, s."""
    time, step = 0.0, _FIRST_STEP
    while time < until:
        step = min(step, until - time)
        after, error = _stepped(room, state, step)
        if error <= _STEP_ERROR:
            yield _Step(time, step, state, after)
            time, state = time + step, after
        # The error grows with the third power of the step; its length changes by no more than five times at once.
        step *= min(5.0, max(0.2, 0.9 * (_STEP_ERROR / error) ** (1 / 3))) if error else 5.0


def _stepped(room: _Room, state: _State, step: float) -> tuple[_State, float]:
    """Both masses after one step, s, and how far its correction moved the air, K."""
    over = state.air - room.house
    passed = _through_doorway(room, over)
    slope = 1.5 * room.doorway * math.sqrt(abs(over))
    to_walls = room.link * (state.air - state.walls)
    lost = room.conductance * (state.air - room.outdoor) + room.partition * over + passed + to_walls
    air_rate, wall_rate = (room.heat - lost) / room.air_capacity, to_walls / room.wall_capacity

    # The straight line: rates of change of both masses with the temperature of each, 1/s.
    own = -(room.conductance + room.partition + room.link + slope) / room.air_capacity
    across, back = room.link / room.air_capacity, room.link / room.wall_capacity
    matrix = _Matrix(own, across, back, -back)
    air_moved, walls_moved = matrix.applied(_first, step, air_rate, wall_rate)
    air, walls = state.air + step * air_moved, state.walls + step * walls_moved

    missed = (passed + slope * (air - state.air) - _through_doorway(room, air - room.house)) / room.air_capacity
    air_more, walls_more = matrix.applied(_third, step, missed, 0.0)
    correction = 2 * step * air_more
    return _State(air + correction, walls + 2 * step * walls_more), abs(correction)


def _through_doorway(room: _Room, over: float) -> float:
    return room.doorway * math.sqrt(abs(over)) * over


class _Matrix(NamedTuple):
    """Two by two, with two different negative eigenvalues, as that of a room whose walls take up heat is."""

    own: float
    across: float
    back: float
    other: float

    def applied(
        self, function: Callable[[float], float], step: float, first: float, second: float
    ) -> tuple[float, float]:
        """The function of step times this matrix, applied to a vector: a line through both eigenvalues is enough."""
        mean = (self.own + self.other) / 2
        half = math.sqrt(((self.own - self.other) / 2) ** 2 + self.across * self.back)
        slow, fast = mean + half, mean - half
        at_slow, at_fast = function(step * slow), function(step * fast)
        slope = (at_slow - at_fast) / (slow - fast)
        level = at_slow - slope * slow
        return (
            level * first + slope * (self.own * first + self.across * second),
            level * second + slope * (self.back * first + self.other * second),
        )


def _first(z: float) -> float:
    """(e^z - 1) / z."""
    return math.expm1(z) / z if z else 1.0


def _third(z: float) -> float:
    """(e^z - 1 - z - z²/2) / z³, which near 0 would be a quotient of roundings."""
    return (math.expm1(z) - z - z * z / 2) / z**3 if abs(z) > 1e-3 else 1 / 6 + z / 24
