"""A whole winter, hour by hour: a house, its emitters, a layered store, a fire by habit, taps, and what else heats.

A year runs from July to June, so that a winter stands in one piece. Within an hour the weather stands still; the house
moves by exact steps, and water moves in slugs: the fire heats the lowest slug and lays it on top, the emitters cool
the highest and lay it at the bottom. Every joule is counted, and a run whose balance does not close is refused.
"""

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from calc.physics.winter_emitter import Emitter
from calc.physics.winter_house import OnEmitters, OnSlab
from calc.physics.winter_plan import WinterPlan
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
    """One run. `months()` yields each month as it is over; then the lists hold what the charts show, hour by hour."""

    def __init__(self, plan: WinterPlan, outdoor: Sequence[float]) -> None:
        """`outdoor` holds 8760 hourly temperatures in K, from 1 January on."""
        if len(outdoor) != HOURS:
            raise ValueError(f"a year has {HOURS} hours, not {len(outdoor)}")
        self.plan, self._outdoor = plan, outdoor
        self._step = step = 3600.0 / plan.steps_an_hour
        self._house: OnEmitters | OnSlab = (
            OnSlab(plan.house, plan.slab, step, plan.indoor, outdoor[FIRST_DAY * 24])
            if plan.slab
            else OnEmitters(plan.house, step, plan.indoor)
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
        self._decay = math.exp(-step * store.loss / self._store.capacity)
        self._rise = 0.0  # K by which the stove's room is warmer than the house
        self._rise_decay = math.exp(-step * plan.room.passes / plan.room.capacity)
        self._burning = 0.0  # s of the load in the stove that are over; 0 without a fire
        self._alight = False
        self._loads_today = 0
        self._may_light = plan.habit.hours()
        self._draws = [plan.taps.heat * share / plan.steps_an_hour for share in plan.taps.shares]  # J of each step
        self._wanted_heat = 0.0  # W that the rooms need in the weather of the last day or so
        self._count_from_here()

    def _count_from_here(self) -> None:
        """Forget what was counted so far: the year begins."""
        self._sums = dict.fromkeys(("fire", "rooms", "taps", "elsewhere", "backup", "standby", "surplus", "gains"), 0.0)
        self._house.lost = self._house.to_ground = 0.0
        self._start_heat = self._held()
        self._hottest_outlet, self._cold_hours, self._coldest = 0.0, 0, math.inf
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
        self._hottest_outlet, self._cold_hours, self._coldest = 0.0, 0, math.inf
        for day in range(first_day, first_day + MONTH_DAYS[month]):
            self._day(day)
        sums = {key: self._sums[key] - before[key] for key in before}
        top, mean, stove_room = (hours[from_hour:] for hours in (self.top, self.mean, self.stove_room))
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
            hot_hours=self._count_hot(from_hour),
            hottest=max(stove_room),
            boiling_hours=sum(at > self.plan.charging.boiling - NEAR_BOILING for at in top),
            lowest_store=min(mean),
            highest_store=max(mean),
            hottest_outlet=self._hottest_outlet,
        )

    def _day(self, day: int) -> None:
        away = (day - self.plan.away.first_day) % 365 < self.plan.away.days
        store, house, stove_room = self._store, self._house, self.stove_room
        self._loads_today = 0
        for hour, outdoor in enumerate(self._outdoor[day * 24 : day * 24 + 24]):
            if self._may_light[hour] and not self._alight and not away:
                self._light_if_it_fits(day * 24 + hour)
            for _ in range(self.plan.steps_an_hour):
                self._go(outdoor, 0.0 if away else self._draws[hour], away)
            if hour % _CONDUCTS == 0:
                store.conduct(_CONDUCTS * 3600.0)
            self.room.append(house.room)
            stove_room.append(house.room + self._rise)
            self.top.append(store.top)
            self.mean.append(store.heat / store.capacity)
        if not away:
            self._count_cold(self.room[-24:])

    def _count_cold(self, rooms: list[float]) -> None:
        """Count the cold hours of a day on which somebody is there."""
        coldest, cold = min(rooms), self.plan.indoor - TOO_COLD
        self._coldest = min(self._coldest, coldest)
        if coldest < cold:
            self._cold_hours += sum(room < cold for room in rooms)

    def _count_hot(self, from_hour: int) -> int:
        """Hours since then in which the stove's room was too hot, and the fire's doing."""
        limit, room, stove_room = self.plan.room.limit, self.room[from_hour:], self.stove_room[from_hour:]
        if max(stove_room) <= limit:
            return 0
        return sum(hot > max(limit, at + _FELT) for hot, at in zip(stove_room, room, strict=True))

    # --- One hour ---

    def _light_if_it_fits(self, hour: int) -> None:
        """Light a load if the habit allows another one today, and the store and the rooms take all of it."""
        plan = self.plan
        if self._loads_today >= plan.habit.loads_a_day:
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

    def _go(self, outdoor: float, for_taps: float, away: bool) -> None:
        """One step: fire, stove's room, standby, emitters, taps, other heat, house, in this order."""
        plan, step, house, sums = self.plan, self._step, self._house, self._sums
        conductance, _, gains = plan.house
        wanted = plan.away.kept if away else plan.indoor
        other = gains + self._pass_on(self._burn() if self._alight else 0.0)
        if plan.store.inside:
            lost = self._store.stand(self._decay, house.room)
            other += lost / step
        else:
            lost = self._store.stand(self._decay, plan.store.surroundings)
        sums["standby"] += lost
        sums["gains"] += gains * step
        emitted = 0.0
        asked = house.demand(outdoor, wanted, other)
        if asked > 0:
            heat = self._emit(asked)
            sums["rooms"] += heat
            emitted = heat / step
        need = conductance * (wanted - outdoor) - gains
        self._wanted_heat += ((need if need > 0 else 0.0) - self._wanted_heat) * step / 86_400
        if for_taps:
            self._draw_taps(for_taps)
        if plan.backup:
            added = max(house.shortfall(outdoor, wanted - _BACKUP_WAITS, emitted, other), 0.0)
            sums["backup"] += added * step
            other += added
        house.go(outdoor, emitted, other, wanted + _WINDOWS)

    def _burn(self) -> float:
        """Let the load burn for a step: its heat goes to the water, and what it gives the room is returned, W.

        The return is mixed up to its least temperature inside the stove's own loop. When the lowest water is as warm as
        the store may be, the rest is surplus, which the dump or the relief valve must take.
        """
        burn, charging, step = self.plan.burn, self.plan.charging, self._step
        share = burn.burnt((self._burning + step) / burn.time) - burn.burnt(self._burning / burn.time)
        self._burning += step
        self._alight = self._burning < burn.time * (1 - 1e-9)
        water, room = share * burn.water * burn.time, share * burn.room * burn.time
        rise = water / step / charging.flow
        surplus, outlet = self._store.charge(water, rise, charging.least_return, self.plan.store.full)
        self._hottest_outlet = max(self._hottest_outlet, outlet)
        self._sums["surplus"] += surplus
        self._sums["fire"] += water + room
        return room / step

    def _pass_on(self, to_room: float) -> float:
        """What the stove's room passes on to the house in a step, W; the rest warms the room."""
        passes, capacity, _ = self.plan.room
        before, settled = self._rise, to_room / passes
        self._rise = settled + (before - settled) * self._rise_decay
        return to_room - capacity * (self._rise - before) / self._step

    def _emit(self, asked: float) -> float:
        """Heat in J that the emitters draw from the store in a step when the rooms ask for so many W."""
        store, emitter, heated = self._store, self._emitter, self._house.heated
        heat_content = self.plan.store.heat_content
        left, lacking = self._step, asked * self._step
        if emitter.follows_weather:
            # While the store is hot enough the valve sends just the supply that is needed, and one return comes back.
            back = heated + emitter.return_excess(asked)
            lacking -= store.draw(lacking, back, back + max(emitter.fall(asked), _LEAST_FALL))
            left = lacking / asked
        while lacking > _TINY and left > 1e-6:
            top = store.top
            supply = emitter.supply(top)
            output = emitter.full_output(supply - heated)
            back = supply - emitter.fall(output)
            if output * self._step < _TINY or top - back < _LEAST_FALL:
                break
            drawn = store.sink(min(lacking, output * left) / (heat_content * (top - back)), back)
            left -= drawn / output
            lacking -= drawn
        return asked * self._step - lacking

    def _draw_taps(self, heat: float) -> None:
        """Draw `heat` (J) for the taps; what the store is too cool for comes from elsewhere."""
        store, taps, heat_content = self._store, self.plan.taps, self.plan.store.heat_content
        back = taps.cold + taps.approach
        lacking, given = heat, 0.0
        while lacking > _TINY:
            top = store.top
            share = (min(top - taps.approach, taps.wanted) - taps.cold) / (taps.wanted - taps.cold)
            if share <= 0 or top - back < _LEAST_FALL:
                break
            drawn = store.sink(share * lacking / (heat_content * (top - back)), back)
            lacking -= drawn / share
            given += drawn
        self._sums["taps"] += given
        self._sums["elsewhere"] += heat - given

    # --- The balance ---

    def _held(self) -> float:
        """All heat that house, stove's room and store hold, J; the store's added up slug by slug."""
        return self._house.heat + self.plan.room.capacity * self._rise + self._store.counted_heat()

    def _check_balance(self) -> None:
        sums = self._sums
        came = sums["fire"] + sums["backup"] + sums["gains"]
        went = self._house.lost + self._house.to_ground + sums["taps"] + sums["surplus"]
        if not self.plan.store.inside:
            went += sums["standby"]
        missing = came - went - (self._held() - self._start_heat)
        throughput = sums["fire"] + sums["backup"] + abs(sums["gains"]) + abs(self._house.lost)
        if not abs(missing) <= _CLOSES * throughput:
            raise EnergyImbalance(f"{missing:.3g} J of {throughput:.3g} J are missing")
