"""Fifteen properties of a winter's run, each held against plans that are drawn anew: twenty cold days and a month.

The weather is turned by half a year, so that the month a run begins with is a cold one; what needs a whole year stands in
test_winter.py. A run whose balance does not close raises, so every property here is one of the balance, too.
"""

import functools
import math
import random
from typing import NamedTuple

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calc.physics.winter import FIRST_DAY, NEAR_BOILING, TOO_COLD, EnergyImbalance, Month, Winter
from calc.physics.winter_emitter import Curve, Emitter
from calc.physics.winter_fire import Burn, Habit
from calc.physics.winter_house import House, Slab
from calc.physics.winter_plan import Away, Charging, Store, StoveRoom, Taps, WinterPlan
from calc.tables.year import HOURS

WATER = 4.09e6
INDOOR = 293.15
DAYS = 31
often = settings(max_examples=15, suppress_health_check=[HealthCheck.too_slow])


@functools.cache
def cold_july() -> tuple[float, ...]:
    """A year in K whose coldest weeks are in July."""
    source = random.Random("turned")
    hours, spell = [], 0.0
    for hour in range(HOURS):
        spell += source.gauss(0, 0.25) - spell / 150
        season = 13 * math.cos(2 * math.pi * (hour / 24 - 200) / 365) + 4 * math.cos(2 * math.pi * (hour - 3) / 24)
        hours.append(279.0 - season + spell)
    return tuple(hours)


@st.composite
def plans(draw: st.DrawFn) -> WinterPlan:
    """A plan that somebody might have."""
    load = draw(st.floats(4_000, 20_000))
    conductance = load / 40
    slab = Slab(draw(st.floats(15e6, 60e6)), conductance * 4, draw(st.floats(0, 30)), 283.0)
    fixed = draw(st.sampled_from([None, 325.0, 340.0]))
    exponent = draw(st.sampled_from([1.0, 1.1, 1.3, 1.4]))
    layers = draw(st.sampled_from([1, 6, 12]))
    water, room = load * draw(st.floats(1, 3)), load * draw(st.floats(0, 0.6))
    first, last = draw(st.integers(0, 23)), draw(st.integers(0, 23))
    return WinterPlan(
        indoor=INDOOR,
        house=House(conductance, draw(st.floats(15e6, 90e6)), conductance * draw(st.floats(0, 5))),
        slab=slab if draw(st.booleans()) else None,
        emitter=Curve(load, draw(st.floats(12, 45)), exponent, load / 11, fixed),
        store=Store(draw(st.floats(0.3, 6)), 1.8, WATER, layers, 1.5, 3.0, 285.0, draw(st.booleans()), 355.0),
        charging=Charging(328.0, load * 3 / draw(st.floats(8, 20)), draw(st.floats(360, 375))),
        burn=Burn(draw(st.floats(1.5, 8)) * 3600, water, room, draw(st.floats(1, 3))),
        habit=Habit(first, last, draw(st.integers(1, 5)), draw(st.booleans())),
        taps=Taps(draw(st.floats(0, 60e6)), (0.0,) * 6 + (1 / 12,) * 12 + (0.0,) * 6, 283.0, 322.0, 5.0),
        room=StoveRoom(draw(st.floats(60, 300)), draw(st.floats(2e6, 10e6)), 299.0),
        away=Away(FIRST_DAY + draw(st.integers(0, 25)), draw(st.sampled_from([0, 0, 4])), 283.0),
        backup=draw(st.booleans()),
    )


class Ran(NamedTuple):
    run: Winter
    month: Month


def ran(plan: WinterPlan, warmer: float = 0.0) -> Ran:
    """One cold month of a plan."""
    run = Winter(plan, tuple(outdoor + warmer for outdoor in cold_july()) if warmer else cold_july())
    return Ran(run, next(run.months()))


@often
@given(plans())
def test_1_every_joule_is_accounted_for(plan: WinterPlan) -> None:
    run, _ = ran(plan)
    run._check_balance()
    run._sums["fire"] += 1e-8 * run._sums["fire"] + 1e5
    with pytest.raises(EnergyImbalance):
        run._check_balance()


@often
@given(plans())
def test_2_the_fires_of_the_calendar_add_up_and_each_gives_its_whole_load(plan: WinterPlan) -> None:
    run, month = ran(plan)
    assert len(run.lit) == month.loads
    load = (plan.burn.water + plan.burn.room) * plan.burn.time
    assert (month.loads - 1) * load - 1 <= month.fire_heat <= (month.loads + 1) * load + 1


@often
@given(plans())
def test_3_fires_keep_the_habit(plan: WinterPlan) -> None:
    run, _ = ran(plan)
    by_day = [hour // 24 for hour in run.lit]
    assert all(plan.habit.hours()[hour % 24] for hour in run.lit)
    assert all(by_day.count(day) <= plan.habit.loads_a_day for day in by_day)


@often
@given(plans())
def test_4_nobody_lights_a_fire_while_away(plan: WinterPlan) -> None:
    run, _ = ran(plan)
    away = range(plan.away.first_day, plan.away.first_day + plan.away.days)
    assert not [hour for hour in run.lit if hour // 24 in away]


@often
@given(plans())
def test_5_no_emitter_gives_more_than_its_curve(plan: WinterPlan) -> None:
    run, month = ran(plan)
    # The coolest that the emitter's water can meet: the rooms, or a slab no cooler than the ground and the rooms.
    coolest = min(*run.room, INDOOR, *((283.0,) if plan.slab else ())) - 1
    supply = Emitter(plan.emitter).supply(max(*run.top, month.hottest_outlet, INDOOR))
    assert month.rooms_heat <= Emitter(plan.emitter).full_output(supply - coolest) * DAYS * 86_400 * (1 + 1e-9) + 1


@often
@given(plans())
def test_6_no_store_is_near_boiling_without_being_counted(plan: WinterPlan) -> None:
    run, month = ran(plan)
    assert month.boiling_hours == sum(at > plan.charging.boiling - NEAR_BOILING for at in run.top)
    assert (month.hottest_outlet >= max(run.top) - 1e-6) or max(run.top) <= INDOOR + 60


@often
@given(plans())
def test_7_a_full_store_alone_turns_heat_away(plan: WinterPlan) -> None:
    run, month = ran(plan)
    if month.surplus > 0:
        assert max(run.mean) >= plan.store.full - 15  # the emitters may have drawn some of it in the same hour
    assert 0 <= month.surplus <= month.fire_heat


@often
@given(plans())
def test_8_the_mean_of_the_store_lies_below_its_top_and_above_what_cools_it(plan: WinterPlan) -> None:
    run, _ = ran(plan)
    coldest = min(plan.taps.cold + plan.taps.approach, plan.store.surroundings, *run.room, INDOOR)
    assert all(mean <= top + 1e-6 for mean, top in zip(run.mean, run.top, strict=True))
    assert min(run.mean) >= coldest - 1e-6


@often
@given(plans())
def test_9_other_heat_keeps_the_rooms_warm_and_is_nothing_where_there_is_none(plan: WinterPlan) -> None:
    _, month = ran(plan)
    if not plan.backup:
        assert month.backup_heat == 0
    elif not plan.away.days:
        assert month.coldest >= INDOOR - 1.01
        assert month.cold_hours == 0


@often
@given(plans())
def test_10_taps_get_what_they_ask_from_the_store_or_from_elsewhere(plan: WinterPlan) -> None:
    _, month = ran(plan)
    asked = plan.taps.heat * (DAYS - plan.away.days)
    assert month.taps_heat + month.taps_elsewhere == pytest.approx(asked, rel=1e-9, abs=1)
    assert min(month.taps_heat, month.taps_elsewhere) >= -1


@often
@given(plans())
def test_11_cold_hours_are_those_that_the_hours_show(plan: WinterPlan) -> None:
    run, month = ran(plan)
    if not plan.away.days:
        assert month.cold_hours == sum(room < INDOOR - TOO_COLD for room in run.room)
        assert month.coldest == min(run.room)


@often
@given(plans())
def test_12_the_same_plan_gives_the_same_winter(plan: WinterPlan) -> None:
    assert ran(plan).month == ran(plan).month


@often
@given(plans(), st.floats(1, 8))
def test_13_a_warmer_place_needs_less_heat(plan: WinterPlan, warmer: float) -> None:
    """With other heat and no fire, so that no load decides: what the rooms are given."""
    plan = plan._replace(backup=True, habit=plan.habit._replace(loads_a_day=0), away=plan.away._replace(days=0))
    cold, mild = ran(plan).month, ran(plan, warmer).month
    assert mild.backup_heat + mild.rooms_heat <= cold.backup_heat + cold.rooms_heat + 1e6


@often
@given(plans())
def test_14_no_fire_leaves_the_rooms_what_the_store_had(plan: WinterPlan) -> None:
    run, month = ran(plan._replace(habit=plan.habit._replace(loads_a_day=0)))
    assert month.loads == 0
    assert month.fire_heat == month.surplus == 0
    # All that the store gives away it had, as warm as the rooms at first, which windows keep within four degrees.
    had = plan.store.volume * WATER * (INDOOR + 5 - min(run.mean))
    assert month.rooms_heat + month.taps_heat + month.standby <= had


@often
@given(plans(), st.floats(0.3, 1.0))
def test_15_less_heat_from_elsewhere_never_makes_the_rooms_warmer(plan: WinterPlan, share: float) -> None:
    plan = plan._replace(habit=plan.habit._replace(loads_a_day=0), slab=None)
    less = plan._replace(house=plan.house._replace(gains=plan.house.gains * share), backup=False)
    assert ran(less).month.coldest <= ran(plan).month.coldest + 1e-6
