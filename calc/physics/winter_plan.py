"""What a winter's run is made of: house, emitter, store, fire, taps, and the habits of those who live there."""

from typing import NamedTuple

from calc.physics.winter_emitter import Curve
from calc.physics.winter_fire import Burn, Habit
from calc.physics.winter_house import House, Slab


class Store(NamedTuple):
    """The store: m³, height in m, J/(m³·K), layers, W/(m·K), loss in W/K, surroundings in K, its top.

    `full` (K) is how warm the lowest water may be before the fire has nowhere to give its heat; `inside` says that what
    it loses warms the house.
    """

    volume: float
    height: float
    heat_content: float
    layers: int
    conductivity: float
    loss: float
    surroundings: float
    inside: bool
    full: float


class Charging(NamedTuple):
    """The pipes between fire and store: least return in K, flow in W/K, and the water's boiling temperature, K."""

    least_return: float
    flow: float
    boiling: float


class Taps(NamedTuple):
    """Hot water: heat of a day in J and its share in each hour, cold and wanted water and exchanger's approach in K."""

    heat: float
    shares: tuple[float, ...]
    cold: float
    wanted: float
    approach: float


class StoveRoom(NamedTuple):
    """The room with the stove: what it passes to the house in W/K, what it holds in J/K, and its limit in K."""

    passes: float
    capacity: float
    limit: float


class Away(NamedTuple):
    """Days on which nobody is there, as a first day of the year and a number, and how warm the house is kept, K."""

    first_day: int
    days: int
    kept: float


class WinterPlan(NamedTuple):
    """All that a winter's run is made of. Without a `slab` the emitters heat the rooms at once."""

    indoor: float
    house: House
    slab: Slab | None
    emitter: Curve
    store: Store
    charging: Charging
    burn: Burn
    habit: Habit
    taps: Taps
    room: StoveRoom
    away: Away
    backup: bool
    steps_an_hour: int = 1
