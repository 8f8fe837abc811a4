"""One year by the numbers that a reader has: they become a plan, the place's hours its weather, the run a record."""

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from calc.law import (
    Choice,
    Count,
    DegreeDays,
    Exponent,
    Factor,
    Fraction,
    Joule,
    JoulePerKelvin,
    Kelvin,
    KelvinByHour,
    KelvinDifference,
    NoSolution,
    Second,
    Watt,
    WattPerKelvin,
    run,
)
from calc.law import CubicMetre as Volume
from calc.physics import winter_weather as weather
from calc.physics.winter import FIRST_DAY, TOO_COLD, Month, Winter
from calc.physics.winter_emitter import Curve
from calc.physics.winter_fire import Burn, Habit
from calc.physics.winter_house import House, Slab
from calc.physics.winter_plan import Away, Charging, Store, StoveRoom, Taps, WinterPlan
from calc.tables.places import COLDER

HEAT_CONTENT = 4.09e6  # J/(m³·K), of water near 66 °C
_SLENDER = 1.5  # height of the store over its diameter
# How well a store keeps its layers: their number, and W/(m·K) of water, shell and what pumps stir up.
_LAYERING = {"layered": (12, 1.5), "blurred": (12, 6.0), "stirred": (1, 0.0)}
_WATER_AT_TAPS = 273.15 + 49  # K, 120 °F
_APPROACH_AT_TAPS = 5.0  # K
_SPELL = 14  # days that a chart shows hour by hour
_KEPT_WHILE_AWAY = 273.15 + 10
# Heat of hot water by the hour of the day, kWh of 5.845: the draw-offs of load profile M, added up.
_DRAWN = {7: 1.61, 8: 0.42, 9: 0.21, 10: 0.105, 11: 0.21, 12: 0.315, 14: 0.105, 15: 0.105, 16: 0.105, 18: 0.315}
_DRAWN |= {19: 0.105, 20: 0.735, 21: 1.505}
_TAP_SHARES = tuple(_DRAWN.get(hour, 0.0) / sum(_DRAWN.values()) for hour in range(24))


class Day(NamedTuple):
    """One day as the pictures show it: day of the year from 0, hours at which loads were lit, temperatures in K."""

    day: int
    lit: tuple[int, ...]
    coldest_room: float
    cold: bool
    hottest_stove_room: float
    store: float
    outdoor: float


class Year(NamedTuple):
    """What a year came to: amounts from July to June, and its days and hours in that order for pictures."""

    loads: Count
    days_lit: Count
    most_loads: Count
    fire_heat: Joule
    rooms_heat: Joule
    taps_heat: Joule
    taps_elsewhere: Joule
    backup_heat: Joule
    standby_heat: Joule
    surplus_heat: Joule
    cold_hours: Second
    coldest: Kelvin
    coldest_ever: Kelvin
    hot_hours: Second
    hottest: Kelvin
    boiling_hours: Second
    hottest_outlet: Kelvin
    lowest_store: Kelvin
    highest_store: Kelvin
    year_degree_days: DegreeDays
    shown_top: KelvinByHour
    shown_rooms: KelvinByHour
    shown_outdoor: KelvinByHour
    shown_a_day: Count
    months: tuple[Month, ...]
    days: tuple[Day, ...]


@run(
    "A year from July to June run hour by hour: house, emitters, a store in layers that move with the water, a fire by "
    "your habit. Its heat balance closes to a billionth.",
    source="winter-run",
)
@lru_cache(maxsize=64)  # a sweep runs some thirty years and asks for each of them again
def year(
    place: Choice,
    degree_days: DegreeDays,
    base_temperature: Kelvin,
    design_outdoor: Kelvin,
    indoor: Kelvin,
    conductance: WattPerKelvin,
    gains: Watt,
    house_capacity: JoulePerKelvin,
    slab_capacity: JoulePerKelvin,
    slab_up: WattPerKelvin,
    slab_down: WattPerKelvin,
    below_floor: Kelvin,
    design_load: Watt,
    supply_water: Kelvin,
    water_drop: KelvinDifference,
    exponent: Exponent,
    supply_control: Choice,
    store_volume: Volume,
    store_top: Kelvin,
    store_loss: WattPerKelvin,
    store_surroundings: Kelvin,
    store_inside: Choice,
    store_layers: Choice,
    boiling: Kelvin,
    least_return: Kelvin,
    charge_rise: KelvinDifference,
    water_output: Watt,
    burn_time: Second,
    room_output: Watt,
    peak_factor: Factor,
    first_hour: Count,
    last_hour: Count,
    loads_a_day: Count,
    summer_fires: Choice,
    tap_load: Watt,
    cold_water: Kelvin,
    room_passes: WattPerKelvin,
    room_share: Fraction,
    room_limit: Kelvin,
    backup: Choice,
    away_from: Count,
    away_days: Count,
    shown: Choice,
    shown_from: Count,
) -> Year:
    """A year's run. Without degree-days (0) the place's year is taken as it is, else stretched to them.

    `shown` says which hours stand in the record for a chart: the "coldest" two weeks, the two "from" the day
    `shown_from` of the year (1 is 1 January), or the whole "year" by the mean of each day.
    No `slab_capacity` means emitters that warm the rooms at once. Raises NoSolution where the emitter's water is no
    warmer than what it heats, no year has the degree-days, or no file of the reader's is open (`place` is then "file"),
    and NotHere before the place's weather was brought.
    """
    try:
        hours = weather.hours_of(place)
    except weather.NotHere:
        if place != weather.FILE:
            raise
        raise NoSolution("year") from None
    if degree_days:
        hours = weather.shaped(hours, base_temperature, degree_days, design_outdoor + COLDER)
    slab = Slab(slab_capacity, slab_up, slab_down, below_floor) if slab_capacity else None
    heated = indoor + design_load / slab_up if slab else indoor
    mean_excess = supply_water - water_drop / 2 - heated
    if mean_excess <= water_drop / 2:
        raise NoSolution("year")
    layers, conductivity = _LAYERING[store_layers]
    plan = WinterPlan(
        indoor=indoor,
        house=House(conductance, house_capacity, gains),
        slab=slab,
        emitter=Curve(
            design_load,
            mean_excess,
            exponent,
            design_load / water_drop,
            supply_water if supply_control == "fixed" else None,
        ),
        store=Store(
            store_volume,
            (4 / math.pi * _SLENDER**2 * store_volume) ** (1 / 3),
            HEAT_CONTENT,
            layers,
            conductivity,
            store_loss,
            store_surroundings,
            store_inside == "yes",
            store_top,
        ),
        charging=Charging(least_return, water_output * peak_factor / charge_rise, boiling),
        burn=Burn(burn_time, water_output, room_output, peak_factor),
        habit=Habit(round(first_hour), round(last_hour), round(loads_a_day), summer_fires == "yes"),
        taps=Taps(tap_load * 86_400, _TAP_SHARES, cold_water, _WATER_AT_TAPS, _APPROACH_AT_TAPS),
        room=StoveRoom(room_passes, room_share * house_capacity, room_limit),
        away=Away(round(away_from) - 1, round(away_days), min(_KEPT_WHILE_AWAY, indoor)),
        backup=backup == "yes",
    )
    ran = Winter(plan, hours)
    months = tuple(ran.months())
    first = None if shown == "coldest" else (round(shown_from) - 1 - FIRST_DAY) % 365
    return _told(ran, months, hours, weather.degree_days(hours, base_temperature), first, shown == "year")


def use_file(text: str) -> None:
    """Take the reader's own year, as the text in which a year travels, for the runs that ask for it; none if empty.

    Raises NoYear if it is none.
    """
    year.function.cache_clear()  # type: ignore[attr-defined]  # what ran with another file is not of this one
    weather.forget(weather.FILE)
    if text:
        weather.keep(weather.FILE, text)


def _told(
    ran: Winter,
    months: tuple[Month, ...],
    outdoor: tuple[float, ...],
    degree_days: float,
    first: int | None,
    whole: bool,
) -> Year:
    days = tuple(_days(ran, outdoor))
    loads = [len(day.lit) for day in days]
    order = outdoor[24 * FIRST_DAY :] + outdoor[: 24 * FIRST_DAY]
    if first is None:
        first = _coldest_spell(days)

    def chosen(hours: Sequence[float]) -> tuple[float, ...]:
        if whole:
            return tuple(sum(hours[at : at + 24]) / 24 for at in range(0, len(hours), 24))
        begins = min(first, len(days) - _SPELL)  # two weeks that begin late in June end with the run
        return tuple(hours[24 * begins : 24 * (begins + _SPELL)])

    def total(field: str) -> float:
        return float(sum(getattr(month, field) for month in months))

    return Year(
        loads=sum(loads),
        days_lit=sum(1 for lit in loads if lit),
        most_loads=max(loads),
        fire_heat=total("fire_heat"),
        rooms_heat=total("rooms_heat"),
        taps_heat=total("taps_heat"),
        taps_elsewhere=total("taps_elsewhere"),
        backup_heat=total("backup_heat"),
        standby_heat=total("standby"),
        surplus_heat=total("surplus"),
        cold_hours=3600 * total("cold_hours"),
        coldest=min(month.coldest for month in months),
        coldest_ever=min(ran.room),
        hot_hours=3600 * total("hot_hours"),
        hottest=max(month.hottest for month in months),
        boiling_hours=3600 * total("boiling_hours"),
        hottest_outlet=max(month.hottest_outlet for month in months),
        lowest_store=_lowest_while_heating(months),
        highest_store=max(month.highest_store for month in months),
        year_degree_days=degree_days,
        shown_top=chosen(ran.top),
        shown_rooms=chosen(ran.room),
        shown_outdoor=chosen(order),
        shown_a_day=1 if whole else 24,
        months=months,
        days=days,
    )


def _coldest_spell(days: tuple[Day, ...]) -> int:
    """The place, in the order of the run, of the first of the two weeks in a row that are coldest."""
    cold = [sum(day.outdoor for day in days[first : first + _SPELL]) for first in range(len(days) - _SPELL + 1)]
    return cold.index(min(cold))


def _lowest_while_heating(months: tuple[Month, ...]) -> float:
    """The store's lowest mean between the first month with a fire and the last one, their own ends left out."""
    with_fire = [place for place, month in enumerate(months) if month.loads]
    if not with_fire:
        return min(month.lowest_store for month in months)
    between = months[with_fire[0] + 1 : with_fire[-1]] or months[with_fire[0] : with_fire[-1] + 1]
    return min(month.lowest_store for month in between)


def _days(ran: Winter, outdoor: tuple[float, ...]) -> list[Day]:
    """The days in the order of the run."""
    lit: dict[int, list[int]] = {}
    for hour in ran.lit:
        lit.setdefault(hour // 24, []).append(hour % 24)
    days = []
    for place in range(365):
        day = (FIRST_DAY + place) % 365
        hours = slice(24 * place, 24 * place + 24)
        days.append(
            Day(
                day,
                tuple(lit.get(day, ())),
                min(ran.room[hours]),
                min(ran.room[hours]) < ran.plan.indoor - TOO_COLD,
                max(ran.stove_room[hours]),
                sum(ran.mean[hours]) / 24,
                sum(outdoor[24 * day : 24 * day + 24]) / 24,
            )
        )
    return days
