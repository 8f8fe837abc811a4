"""The house in the winter's run: its mass, loss and gains, with or without a heated slab, by exact steps.

Within a step all heat flows and the outdoor temperature stand still. Then masses with linear links have a solution in
closed form, so a step is exact whatever its length, and so is the mean over it by which losses are counted.
"""

import math
from collections.abc import Callable
from typing import NamedTuple


class House(NamedTuple):
    """What a house is made of: conductance to outdoors in W/K, heat capacity in J/K, gains in W, all without a slab."""

    conductance: float
    capacity: float
    gains: float


class Slab(NamedTuple):
    """A heated slab: capacity in J/K, conductance up to the rooms and down to the ground in W/K, ground in K."""

    capacity: float
    up: float
    down: float
    ground: float


class OnEmitters:
    """A house of one mass whose emitters give their heat to the rooms at once."""

    def __init__(self, house: House, step: float, indoor: float) -> None:
        self._house, self._step = house, step
        self.room = self.heated = indoor  # K; `heated` is what the emitter's water is compared with
        pace = step * house.conductance / house.capacity
        self._decay = math.exp(-pace)
        self._answers = -math.expm1(-pace)  # share of the way to where it would settle that a step goes
        self._mean_share = self._answers / pace
        self.lost = self.to_ground = 0.0  # J

    @property
    def heat(self) -> float:
        """What the mass holds above 0 K, J."""
        return self._house.capacity * self.room

    def demand(self, outdoor: float, wanted: float, other: float) -> float:
        """Heat in W from the emitters with which the rooms end the step at `wanted` (K), `other` (W) coming anyway."""
        settled = self.room + (wanted - self.room) / self._answers
        return self._house.conductance * (settled - outdoor) - other

    def shortfall(self, outdoor: float, level: float, emitted: float, other: float) -> float:
        """Heat in W that the rooms lack to end the step at `level` (K)."""
        return self.demand(outdoor, level, other) - emitted

    def go(self, outdoor: float, emitted: float, other: float, windows: float) -> None:
        """One step with so much heat from the emitters and from elsewhere, W.

        What would end warmer than `windows` (K) is let out where it is cooler outdoors.
        """
        conductance, capacity, _ = self._house
        settled = outdoor + (emitted + other) / conductance
        excess = self.room - settled
        room = settled + excess * self._decay
        self.lost += conductance * (settled + excess * self._mean_share - outdoor) * self._step
        if room > windows:
            level = max(windows, min(room, outdoor))
            self.lost += capacity * (room - level)
            room = level
        self.room = self.heated = room


class OnSlab:
    """A house whose emitter is a slab: the water warms the slab, and the slab the rooms, hours later.

    The slab is asked to be as warm as the mean weather of the last day needs, and a little more when rooms are cool.
    """

    _LISTENS = 4.0  # K by which the slab is asked to be warmer for each K that the rooms lack

    def __init__(self, house: House, slab: Slab, step: float, indoor: float, outdoor: float) -> None:
        self._house, self._slab, self._step = house, slab, step
        self.room = indoor
        self._weather = outdoor  # K, mean of the last day or so
        self._listen = math.exp(-step / 86_400)
        lacking = house.conductance * (indoor - outdoor) - house.gains
        self.heated = indoor + max(lacking, 0.0) / slab.up
        own = -(slab.up + slab.down) / slab.capacity
        across, back = slab.up / slab.capacity, slab.up / house.capacity
        other = -(slab.up + house.conductance) / house.capacity
        self._end = _applied(math.exp, step, own, across, back, other)
        self._mean = _applied(_first, step, own, across, back, other)
        self._mean_of_mean = _applied(_second, step, own, across, back, other)
        self.lost = self.to_ground = 0.0

    @property
    def heat(self) -> float:
        """What slab and house hold above 0 K, J."""
        return self._slab.capacity * self.heated + self._house.capacity * self.room

    def demand(self, outdoor: float, wanted: float, other: float) -> float:
        """Heat in W into the slab with which it ends the step as warm as it is asked to be."""
        self._weather = outdoor + (self._weather - outdoor) * self._listen
        lacking = self._house.conductance * (wanted - self._weather) - other
        asked = wanted + max(lacking, 0.0) / self._slab.up + self._LISTENS * (wanted - self.room)
        slab_rate, room_rate = self._rates(outdoor, 0.0, other)
        idle = self.heated + self._step * (self._mean[0] * slab_rate + self._mean[1] * room_rate)
        return (asked - idle) * self._slab.capacity / (self._step * self._mean[0])

    def shortfall(self, outdoor: float, level: float, emitted: float, other: float) -> float:
        """Heat in W that the rooms themselves lack to end the step at `level` (K)."""
        slab_rate, room_rate = self._rates(outdoor, emitted, other)
        idle = self.room + self._step * (self._mean[2] * slab_rate + self._mean[3] * room_rate)
        return (level - idle) * self._house.capacity / (self._step * self._mean[3])

    def go(self, outdoor: float, emitted: float, other: float, windows: float) -> None:
        """One step with so much heat into the slab, and from elsewhere into the rooms, W.

        What would end warmer than `windows` (K) is let out of the rooms where it is cooler outdoors.
        """
        slab_rate, room_rate = self._rates(outdoor, emitted, other)
        near, far, back, own = self._mean_of_mean
        slab_mean = self.heated + self._step * (near * slab_rate + far * room_rate)
        room_mean = self.room + self._step * (back * slab_rate + own * room_rate)
        self.lost += self._house.conductance * (room_mean - outdoor) * self._step
        self.to_ground += self._slab.down * (slab_mean - self._slab.ground) * self._step
        near, far, back, own = self._mean
        self.heated += self._step * (near * slab_rate + far * room_rate)
        room = self.room + self._step * (back * slab_rate + own * room_rate)
        if room > windows:
            level = max(windows, min(room, outdoor))
            self.lost += self._house.capacity * (room - level)
            room = level
        self.room = room

    def _rates(self, outdoor: float, emitted: float, other: float) -> tuple[float, float]:
        """How fast slab and rooms warm as the step begins, K/s."""
        house, slab = self._house, self._slab
        up = slab.up * (self.heated - self.room)
        slab_rate = (emitted - up - slab.down * (self.heated - slab.ground)) / slab.capacity
        return slab_rate, (up + other - house.conductance * (self.room - outdoor)) / house.capacity


def _first(z: float) -> float:
    """(e^z - 1) / z: the part of its first rate that a mass keeps over a step."""
    return math.expm1(z) / z if z else 1.0


def _second(z: float) -> float:
    """(e^z - 1 - z) / z², the same for the mean over the step; near 0 a quotient of roundings."""
    return (math.expm1(z) - z) / z**2 if abs(z) > 1e-4 else 0.5 + z / 6


def _applied(
    function: Callable[[float], float], step: float, own: float, across: float, back: float, other: float
) -> tuple[float, float, float, float]:
    """The function of step times a two by two matrix with real eigenvalues: a line through both is enough."""
    mean, half = (own + other) / 2, math.sqrt(((own - other) / 2) ** 2 + across * back)
    slow, fast = mean + half, mean - half
    at_slow, at_fast = function(step * slow), function(step * fast)
    slope = (at_slow - at_fast) / (slow - fast)
    level = at_slow - slope * slow
    return level + slope * own, slope * across, slope * back, level + slope * other
