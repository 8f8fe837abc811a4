"""Loads of wood and lightings: the day's heat balance closes, and the counts agree with each other."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.law import NoSolution, OutOfRange
from calc.physics import firing, store
from calc.units import DAY, HOUR

POWER = st.floats(500, 1e5)
BURN = st.floats(0.5 * HOUR, 12 * HOUR)
HEAT = st.floats(1e6, 1e10)


@given(POWER, POWER, POWER, BURN)
def test_a_day_of_burns_makes_the_days_load(load: float, output: float, room: float, burn: float) -> None:
    counted = firing.room_heat_counted(room, room, load)
    burn_heat = firing.heat_per_burn(firing.heat_at_output(output, burn), counted, burn)
    assert firing.burns_per_day(load, burn_heat) * burn_heat == pytest.approx(load * DAY)


@given(POWER, POWER, HEAT, BURN)
def test_over_one_cycle_the_fire_makes_what_the_house_takes(
    load: float, output: float, usable: float, burn: float
) -> None:
    assume(output > 1.01 * load)
    charging = store.time_to_charge(usable, output, load)
    cold = store.hours_carried(usable, load, 0.0)
    cycle = firing.hours_between(charging, cold)
    assert output * charging == pytest.approx(load * cycle)
    # Loads a day, counted by the cycle, are the loads a day of the plain balance.
    loads = firing.loads_to_charge(charging, burn)
    assert loads / cycle * DAY == pytest.approx(firing.burns_per_day(load, output * burn))


@given(POWER, POWER, BURN)
def test_when_one_burn_just_fills_the_store_both_intervals_agree(load: float, output: float, burn: float) -> None:
    assume(output > 1.01 * load)
    usable = store.surplus_of_burn(output * burn, load, burn)
    cycle = firing.hours_between(store.time_to_charge(usable, output, load), store.hours_carried(usable, load, 0.0))
    assert cycle == pytest.approx(firing.hours_between_single(firing.burns_per_day(load, output * burn)))


@given(POWER, POWER, POWER)
def test_room_heat_counts_for_no_more_than_stove_room_or_house(output: float, room: float, load: float) -> None:
    assert firing.room_heat_counted(output, room, load) == min(output, room, load)


@given(HEAT, HEAT)
def test_a_burn_holds_no_more_than_its_wood(at_output: float, per_load: float) -> None:
    assert firing.water_heat_of_burn(at_output, per_load) <= per_load


@given(*[st.floats(300, 370)] * 5)
def test_what_a_tank_holds_and_what_it_still_takes_add_up(
    upper: float, middle: float, lower: float, first: float, other: float
) -> None:
    low, top = sorted((first, other))
    readings = [min(max(reading, low), top) for reading in (upper, middle, lower)]
    held = firing.heat_above(2.0, 4.1e6, *readings, low)
    left = firing.room_below(2.0, 4.1e6, *readings, top)
    assert held + left == pytest.approx(store.usable_heat(2.0, 4.1e6, top, low), rel=1e-9, abs=1.0)


@given(*[st.floats(300, 370)] * 3)
def test_a_tank_all_above_the_lowest_useful_counts_like_a_mixed_one(upper: float, middle: float, lower: float) -> None:
    mean = firing.mean_of_readings(upper, middle, lower)
    held = firing.heat_above(2.0, 4.1e6, upper, middle, lower, 299.0)
    assert held == pytest.approx(store.usable_heat(2.0, 4.1e6, mean, 299.0))


def test_a_burn_without_heat_is_refused() -> None:
    with pytest.raises(OutOfRange):
        firing.burns_per_day(1000.0, 0.0)


@given(HEAT, POWER)
def test_usable_heat_lasts_until_it_is_used_up(heat: float, load: float) -> None:
    assert firing.time_until_lighting(heat, load) * load == pytest.approx(heat)


@given(HEAT, HEAT, POWER)
def test_a_whole_load_fits_once_the_house_has_drawn_what_is_missing(burn: float, room: float, load: float) -> None:
    wait = firing.time_until_room(burn, room, load)
    assert wait >= 0
    assert room + wait * load >= burn * (1 - 1e-12)
    assert (wait == 0) == (firing.loads_that_fit(room, burn) >= 1)


def test_what_never_happens_is_said_so() -> None:
    with pytest.raises(NoSolution):
        firing.time_until_lighting(1e8, 0.0)
    with pytest.raises(NoSolution):
        firing.time_until_room(2e8, 1e8, 0.0)
    assert firing.time_until_room(1e8, 2e8, 0.0) == 0
    with pytest.raises(NoSolution):
        firing.loads_that_fit(1e8, -1.0)


@given(POWER, POWER, BURN, HEAT)
def test_a_load_short_of_wood_is_short_on_both_sides(output: float, room: float, burn: float, held: float) -> None:
    rated = firing.heat_at_output(output, burn)
    water_heat = firing.water_heat_of_burn(rated, held)
    room_of_load = firing.room_output_of_load(room, water_heat, rated)
    assert firing.share_to_water(output, room) == pytest.approx(water_heat / (water_heat + room_of_load * burn))
