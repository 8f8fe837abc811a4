"""A whole winter, hour by hour: a house, its emitters, a layered store, a fire by habit, taps, and what else heats.

A year runs from July to June, so that a winter stands in one piece. Within an hour the weather stands still; the house
moves by exact steps, and water moves in slugs: the fire heats the lowest slug and lays it on top, the emitters cool
the highest and lay it at the bottom. Every joule is counted, and a run whose balance does not close is refused.
"""

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from calc.physics.winter_emitter import Curve, Emitter
from calc.physics.winter_fire import Burn, Habit
from calc.physics.winter_house import House, OnEmitters, OnSlab, Slab
from calc.physics.winter_store import LayeredStore
from calc.tables.year import HOURS, MONTH_DAYS

FIRST_DAY = sum(MONTH_DAYS[:6])  # 1 July, counted from 1 January as 0
TOO_COLD = 3 / 1.8  # K below what is wanted, 3 °F
NEAR_BOILING = 20 / 1.8  # K, 20 °F
_BEFORE = 20  # days that are run before the year begins
_WINDOWS = 4.0  # K above what is wanted, at which windows are opened
_FELT = 1.0  # K by which a fire must warm its room before a room too hot is its doing
_BACKUP_WAITS = 1.0  # K below what is wanted, at which other heat steps in
_CLOSES = 1e-9  # of all heat that came in: what the balance may miss by rounding
_CONDUCTS = 6  # h between two reckonings of the heat that creeps down the store
_TINY = 1.0  # J
_LEAST_FALL = 0.05  # K between what leaves the store and what comes back, below which nothing more is drawn
_SEASON = 1.0  # K below what needs no heat, as a mean of the last day, at which the heating season has begun


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


class Month(NamedTuple):
    """What one month came to. Heat in J, hours as they are, temperatures in K."""

    month: int
    loads: int
    fire_heat: float
    rooms_heat: float
    taps_heat: float
    taps_elsewhere: float
    backup_heat: float
    standby: float
    surplus: float
    cold_hours: float
    coldest: float
    hot_hours: float
    hottest: float
    boiling_hours: float
    lowest_store: float
    highest_store: float
    hottest_outlet: float


class EnergyImbalance(RuntimeError):
    """Heat appeared or vanished in a run: a mistake in the program, never in what a reader typed."""


class Winter:
    """One run. `months()` yields each month as it is over; then `hours` holds what the charts show."""

    def __init__(self, plan: WinterPlan, outdoor: Sequence[float]) -> None:
        """`outdoor` holds 8760 hourly temperatures in K, from 1 January on."""
        if len(outdoor) != HOURS:
            raise ValueError(f"a year has {HOURS} hours, not {len(outdoor)}")
        self.plan, self._outdoor = plan, outdoor
        self._step = 3600.0 / plan.steps_an_hour
        start = outdoor[FIRST_DAY * 24]
        self._house: OnEmitters | OnSlab = (
            OnSlab(plan.house, plan.slab, self._step, plan.indoor, start)
            if plan.slab
            else OnEmitters(plan.house, self._step, plan.indoor)
        )
        store = plan.store
        self._store = LayeredStore(
            store.volume,
            store.height,
            store.heat_content,
            plan.indoor,
            store.layers,
            store.conductivity,
        )
        self._emitter = Emitter(plan.emitter)
        self._decay = math.exp(-self._step * store.loss / self._store.capacity)
        self._rise = 0.0  # K by which the stove's room is warmer than the house
        self._rise_decay = math.exp(-self._step * plan.room.passes / plan.room.capacity)
        self._burning = 0.0  # s of the load in the stove that are over; 0 without a fire
        self._alight = False
        self._loads_today = 0
        self._may_light = plan.habit.hours()
        self._wanted_heat = 0.0  # W that the rooms need in the weather of the last day or so
        self._count_from_here()

    def _count_from_here(self) -> None:
        """Forget what was counted so far: the year begins."""
        self._sums = dict.fromkeys(("fire", "rooms", "taps", "elsewhere", "backup", "standby", "surplus"), 0.0)
        self._gains = self._house.lost = self._house.to_ground = 0.0
        self._start_heat = self._held()
        self._hottest_outlet, self._boiling_hours, self._hot_hours, self._cold_hours = 0.0, 0.0, 0.0, 0.0
        self._coldest = math.inf
        self.lit: list[int] = []  # hours of the year, from 1 January, at which a load was lit
        self.room: list[float] = []
        self.stove_room: list[float] = []
        self.top: list[float] = []
        self.mean: list[float] = []

    # --- The year ---

    def months(self) -> Iterator[Month]:
        """Run the year, July to June, after some days in which the store finds its level."""
        for day in range(FIRST_DAY - _BEFORE, FIRST_DAY):
            self._day(day)
        self._count_from_here()
        day = FIRST_DAY
        for place in range(12):
            month = (6 + place) % 12
            yield self._month(month, day)
            day = (day + MONTH_DAYS[month]) % 365
            self._check_balance()

    def _month(self, month: int, first_day: int) -> Month:
        before, lit_before, from_hour = dict(self._sums), len(self.lit), len(self.room)
        self._hottest_outlet, self._boiling_hours, self._hot_hours, self._cold_hours = 0.0, 0.0, 0.0, 0.0
        self._coldest = math.inf
        for day in range(first_day, first_day + MONTH_DAYS[month]):
            self._day(day)
        sums = {key: self._sums[key] - before[key] for key in before}
        return Month(
            month=month + 1,
            loads=len(self.lit) - lit_before,
            fire_heat=sums["fire"],
            rooms_heat=sums["rooms"],
            taps_heat=sums["taps"],
            taps_elsewhere=sums["elsewhere"],
            backup_heat=sums["backup"],
            standby=sums["standby"],
            surplus=sums["surplus"],
            cold_hours=self._cold_hours,
            coldest=self._coldest,
            hot_hours=self._hot_hours,
            hottest=max(self.stove_room[from_hour:]),
            boiling_hours=self._boiling_hours,
            lowest_store=min(self.mean[from_hour:]),
            highest_store=max(self.mean[from_hour:]),
            hottest_outlet=self._hottest_outlet,
        )

    def _day(self, day: int) -> None:
        away = (day - self.plan.away.first_day) % 365 < self.plan.away.days
        self._loads_today = 0
        for hour in range(24):
            if not away and self._may_light[hour]:
                self._light_if_it_fits(day * 24 + hour)
            for _ in range(self.plan.steps_an_hour):
                self._go(self._outdoor[day * 24 + hour], hour, away)
            if hour % _CONDUCTS == 0:
                self._store.conduct(_CONDUCTS * 3600.0)
            self._note(away)

    # --- One hour ---

    def _light_if_it_fits(self, hour: int) -> None:
        """Light a load if the last one is out, the habit allows another, and the store and the rooms take all of it."""
        plan = self.plan
        if self._alight or self._loads_today >= plan.habit.loads_a_day:
            return
        if not plan.habit.all_year and self._wanted_heat < _SEASON * plan.house.conductance:
            return
        room_left = self._store.capacity * (plan.store.full - self._store.mean)
        meanwhile = max(self._wanted_heat - plan.burn.room, 0.0)
        if room_left + meanwhile * plan.burn.time < plan.burn.water * plan.burn.time:
            return
        self._alight, self._burning = True, 0.0
        self._loads_today += 1
        self.lit.append(hour)

    def _go(self, outdoor: float, hour: int, away: bool) -> None:
        """One step: fire, standby, stove's room, emitters, taps, other heat, house, in this order."""
        plan, step, house, sums = self.plan, self._step, self._house, self._sums
        to_room = self._burn() if self._alight else 0.0
        other = plan.house.gains + self._pass_on(to_room)
        lost = self._store.stand(self._decay, house.room if plan.store.inside else plan.store.surroundings)
        sums["standby"] += lost
        if plan.store.inside:
            other += lost / step
        wanted = plan.away.kept if away else plan.indoor
        asked = house.demand(outdoor, wanted, other)
        emitted = 0.0
        if asked > 0:
            emitted = self._emit(asked) / step
            sums["rooms"] += emitted * step
        need = plan.house.conductance * (wanted - outdoor) - plan.house.gains
        self._wanted_heat += (max(need, 0.0) - self._wanted_heat) * step / 86_400
        if not away and plan.taps.heat:
            self._draw_taps(plan.taps.heat * plan.taps.shares[hour] / plan.steps_an_hour)
        if plan.backup:
            added = max(house.shortfall(outdoor, wanted - _BACKUP_WAITS, emitted, other), 0.0)
            sums["backup"] += added * step
            other += added
        house.go(outdoor, emitted, other)
        house.open_windows(wanted + _WINDOWS, outdoor)
        self._gains += plan.house.gains * step

    def _burn(self) -> float:
        """Let the load burn for a step: its heat goes to the water, and what it gives the room is returned, W."""
        burn, step = self.plan.burn, self._step
        share = burn.burnt((self._burning + step) / burn.time) - burn.burnt(self._burning / burn.time)
        self._burning += step
        self._alight = self._burning < burn.time * (1 - 1e-9)
        self._charge(share * burn.water * burn.time)
        room = share * burn.room * burn.time
        self._sums["fire"] += share * burn.water * burn.time + room
        return room / step

    def _charge(self, heat: float) -> None:
        """Give the water `heat` (J): the lowest slug goes through the stove and onto the top, slug after slug.

        The return is mixed up to its least temperature inside the stove's own loop. When the lowest water is as warm as
        the store may be, the rest is surplus, which the dump or the relief valve must take.
        """
        store, charging, full = self._store, self.plan.charging, self.plan.store.full
        rise = heat / self._step / charging.flow
        heat_content = self.plan.store.heat_content
        while heat > _TINY:
            lowest = store.temperatures[-1]
            if lowest >= full:
                self._sums["surplus"] += heat
                break
            outlet = max(lowest, charging.least_return) + rise
            self._hottest_outlet = max(self._hottest_outlet, outlet)
            volume = min(store.volumes[-1], store.layer, heat / (heat_content * (outlet - lowest)))
            heat -= store.lift(volume, outlet)

    def _pass_on(self, to_room: float) -> float:
        """What the stove's room passes on to the house in a step, W; the rest warms the room."""
        room = self.plan.room
        before, settled = self._rise, to_room / room.passes
        self._rise = settled + (before - settled) * self._rise_decay
        return to_room - room.capacity * (self._rise - before) / self._step

    def _emit(self, asked: float) -> float:
        """Heat in J that the emitters draw from the store in a step when the rooms ask for so many W."""
        store, emitter, heated = self._store, self._emitter, self._house.heated
        heat_content = self.plan.store.heat_content
        left, lacking = self._step, asked * self._step
        given = 0.0
        while lacking > _TINY and left > 1e-6:
            top = store.temperatures[0]
            supply = emitter.supply(top)
            output = emitter.full_output(supply - heated)
            if emitter.follows_weather and output > lacking / left:
                output = lacking / left
                back = heated + emitter.return_excess(output)
            else:
                back = supply - emitter.fall(output)
            if output * self._step < _TINY or top - back < _LEAST_FALL:
                break
            volume = min(store.volumes[0], store.layer, min(lacking, output * left) / (heat_content * (top - back)))
            drawn = store.sink(volume, back)
            left -= drawn / output
            lacking -= drawn
            given += drawn
        return given

    def _draw_taps(self, heat: float) -> None:
        """Draw `heat` (J) for the taps; what the store is too cool for comes from elsewhere."""
        store, taps = self._store, self.plan.taps
        heat_content, back = self.plan.store.heat_content, taps.cold + taps.approach
        lacking = heat
        while lacking > _TINY:
            top = store.temperatures[0]
            share = (min(top - taps.approach, taps.wanted) - taps.cold) / (taps.wanted - taps.cold)
            if share <= 0 or top - back < _LEAST_FALL:
                break
            drawn = store.sink(
                min(store.volumes[0], store.layer, share * lacking / (heat_content * (top - back))), back
            )
            lacking -= drawn / share
            self._sums["taps"] += drawn
            self._sums["elsewhere"] += drawn / share - drawn
        self._sums["elsewhere"] += max(lacking, 0.0)

    def _note(self, away: bool) -> None:
        """What the hour came to, as it ends."""
        plan, store, room = self.plan, self._store, self._house.room
        stove_room = room + self._rise
        self.room.append(room)
        self.stove_room.append(stove_room)
        self.top.append(store.temperatures[0])
        self.mean.append(store.mean)
        if not away:
            self._coldest = min(self._coldest, room)
            if room < plan.indoor - TOO_COLD:
                self._cold_hours += 1
        if stove_room > plan.room.limit and self._rise > _FELT:
            self._hot_hours += 1
        if store.temperatures[0] > plan.charging.boiling - NEAR_BOILING:
            self._boiling_hours += 1

    # --- The balance ---

    def _held(self) -> float:
        """All heat that house, stove's room and store hold, J; the store's added up slug by slug."""
        return self._house.heat + self.plan.room.capacity * self._rise + self._store.counted_heat()

    def _check_balance(self) -> None:
        sums = self._sums
        came = sums["fire"] + sums["backup"] + self._gains
        went = self._house.lost + self._house.to_ground + sums["taps"] + sums["surplus"]
        if not self.plan.store.inside:
            went += sums["standby"]
        missing = came - went - (self._held() - self._start_heat)
        throughput = sums["fire"] + sums["backup"] + abs(self._gains) + abs(self._house.lost)
        if not abs(missing) <= _CLOSES * throughput:
            raise EnergyImbalance(f"{missing:.3g} J of {throughput:.3g} J are missing")
