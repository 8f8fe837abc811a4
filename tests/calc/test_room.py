"""What must always hold for the room with the stove."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.law import NoSolution
from calc.physics import room

patient = settings(deadline=None)

losses = st.floats(5, 500)
colds = st.floats(240, 290)
heats = st.floats(0, 15_000)
widths = st.floats(0, 3)
capacities = st.floats(1e4, 1e8)


def _steady(heat: float, loss: float, outdoor: float, partition: float, width: float) -> float:
    return room.steady_room(heat, loss, outdoor, partition, 293.0, width, 2.0, 95_000.0)


@patient
@given(heats, losses, colds, losses, widths)
def test_the_room_settles_where_losses_make_up_the_heat(
    heat: float, loss: float, outdoor: float, partition: float, width: float
) -> None:
    at = _steady(heat, loss, outdoor, partition, width)
    flow = room.doorway_flow(width, 2.0, min(abs(at - 293.0), 60.0), 293.0)
    door = room.doorway_conductance(flow, 95_000.0, 293.0)
    if abs(at - 293.0) < 60:
        left = loss * (at - outdoor) + (partition + door) * (at - 293.0)
        assert left == pytest.approx(heat, rel=1e-6, abs=1e-3)


@patient
@given(heats, heats, losses, colds, losses, widths)
def test_more_heat_makes_a_warmer_room(
    one: float, other: float, loss: float, outdoor: float, partition: float, width: float
) -> None:
    less, more = sorted((one, other))
    assert _steady(less, loss, outdoor, partition, width) <= _steady(more, loss, outdoor, partition, width) + 1e-9


@patient
@given(st.floats(3000, 15_000), st.floats(5, 40), colds, st.floats(5, 60), widths, widths)
def test_a_wider_doorway_cools_a_room_that_is_too_warm(
    heat: float, loss: float, outdoor: float, partition: float, one: float, other: float
) -> None:
    narrow, wide = sorted((one, other))
    warm, cool = (_steady(heat, loss, outdoor, partition, width) for width in (narrow, wide))
    if warm > 293.0:
        assert cool <= warm + 1e-9
        assert cool >= 293.0 - 1e-9


@patient
@given(heats, losses, colds)
def test_without_house_or_doorway_the_rise_is_heat_over_loss(heat: float, loss: float, outdoor: float) -> None:
    alone = room.steady_room(heat, loss, outdoor, 0.0, 293.0, 0.0, 2.0, 95_000.0)
    without = room.steady_room(0.0, loss, outdoor, 0.0, 293.0, 0.0, 2.0, 95_000.0)
    assert room.rise_above(alone, without) == pytest.approx(heat / loss, abs=1e-9)


@patient
@given(st.floats(0.2, 3), st.floats(1.5, 3), st.floats(0.1, 15))
def test_four_times_the_difference_moves_twice_the_air(width: float, height: float, difference: float) -> None:
    once = room.doorway_flow(width, height, difference, 293.0)
    assert room.doorway_flow(width, height, 4 * difference, 293.0) == pytest.approx(2 * once)
    assert room.doorway_flow(width, 4 * height, difference, 293.0) == pytest.approx(8 * once)


@patient
@given(st.floats(250, 330), st.floats(250, 330), losses, capacities, st.floats(0, 1e6), st.floats(0, 1e6))
def test_one_mass_needs_no_memory(
    steady: float, start: float, loss: float, capacity: float, first: float, second: float
) -> None:
    halfway = room.temperature_after(steady, start, loss, capacity, first)
    there = room.temperature_after(steady, start, loss, capacity, first + second)
    assert room.temperature_after(steady, halfway, loss, capacity, second) == pytest.approx(there)


@patient
@given(st.floats(290, 330), st.floats(250, 285), losses, capacities, st.floats(0.01, 0.99))
def test_one_mass_gets_there_in_the_time_said(
    steady: float, start: float, loss: float, capacity: float, share: float
) -> None:
    target = start + share * (steady - start)
    for low, high in ((start, steady), (steady, start)):
        aim = low + share * (high - low)
        time = room.time_to_reach(high, low, loss, capacity, aim)
        assert room.temperature_after(high, low, loss, capacity, time) == pytest.approx(aim)
    assert room.time_to_reach(steady, start, loss, capacity, target) == pytest.approx(
        -math.log(1 - share) * capacity / loss, rel=1e-6
    )


def test_what_lies_beyond_the_steady_state_is_never_reached() -> None:
    with pytest.raises(NoSolution):
        room.time_to_reach(300.0, 290.0, 100.0, 1e6, 301.0)
    with pytest.raises(NoSolution):
        room.hours_to_limit(300.0, 290.0, 0.001, 600.0, 1e5, 301.0)


_ROOM = {"link": st.floats(50, 1000), "loss": losses, "air": st.floats(5e4, 1e6), "walls": st.floats(1.5e6, 2e7)}


def _times(link: float, loss: float, air: float, walls: float) -> tuple[float, float]:
    fast = room.fast_time(room.mean_rate(link, loss, air, walls), link, loss, air, walls)
    return fast, room.slow_time(link, loss, air, walls, fast)


@patient
@given(**_ROOM)
def test_two_time_constants_belong_to_the_two_masses(link: float, loss: float, air: float, walls: float) -> None:
    fast, slow = _times(link, loss, air, walls)
    assert 0 < fast < slow
    # The sum and the product of the two rates are those of the room's equations.
    assert 1 / fast + 1 / slow == pytest.approx(2 * room.mean_rate(link, loss, air, walls))
    assert 1 / (fast * slow) == pytest.approx(link * loss / (air * walls))
    # The walls cannot settle faster than through link and loss in series, nor the air slower than alone.
    assert fast <= air / (link + loss) * (1 + 1e-9)
    assert slow >= walls * (1 / link + 1 / loss) * (1 - 1e-9)


@patient
@given(steady=st.floats(285, 320), at=st.floats(275, 300), wall_at=st.floats(275, 300), **_ROOM)
def test_two_masses_start_where_they_are_and_settle(
    steady: float, at: float, wall_at: float, link: float, loss: float, air: float, walls: float
) -> None:
    fast, slow = _times(link, loss, air, walls)
    warming = room.air_warming(loss, steady, at, link, wall_at, air)
    wall_warming = room.wall_warming(link, at, wall_at, walls)
    for start, rate in ((at, warming), (wall_at, wall_warming)):
        assert room.two_mass_temperature(steady, start, rate, fast, slow, 0.0) == pytest.approx(start)
        assert room.two_mass_temperature(steady, start, rate, fast, slow, 60 * slow) == pytest.approx(steady)
        soon = room.two_mass_temperature(steady, start, rate, fast, slow, 1e-3)
        assert (soon - start) / 1e-3 == pytest.approx(rate, rel=0.02, abs=1e-7 + 0.01 * abs(rate))


@patient
@given(steady=st.floats(295, 330), start=st.floats(275, 294), share=st.floats(0.02, 0.95), **_ROOM)
def test_the_limit_is_reached_in_the_time_said(
    steady: float, start: float, share: float, link: float, loss: float, air: float, walls: float
) -> None:
    fast, slow = _times(link, loss, air, walls)
    warming = room.air_warming(loss, steady, start, link, start, air)
    limit = start + share * (steady - start)
    hours = room.hours_to_limit(steady, start, warming, fast, slow, limit)
    assert room.two_mass_temperature(steady, start, warming, fast, slow, hours) == pytest.approx(limit, abs=1e-6)


def test_classes_run_from_light_to_heavy() -> None:
    held = [one.capacity_per_area for one in room.HEAVINESS.values()]
    assert held == sorted(held)
    assert set(room.HEAVINESS) == {"light", "medium", "heavy"}
