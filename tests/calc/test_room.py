"""What must always hold for the room with the stove."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.law import NoSolution
from calc.physics import room, warming

patient = settings(deadline=None)

losses = st.floats(5, 500)
colds = st.floats(240, 290)
heats = st.floats(0, 15_000)
widths = st.floats(0, 3)


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
    first: float, other: float, loss: float, outdoor: float, partition: float, width: float
) -> None:
    less, more = sorted((first, other))
    assert _steady(less, loss, outdoor, partition, width) <= _steady(more, loss, outdoor, partition, width) + 1e-9


@patient
@given(st.floats(3000, 15_000), st.floats(5, 40), colds, st.floats(5, 60), widths, widths)
def test_a_wider_doorway_cools_a_room_that_is_too_warm(
    heat: float, loss: float, outdoor: float, partition: float, first: float, other: float
) -> None:
    narrow, wide = sorted((first, other))
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


_ROOM = {
    "conductance": st.floats(5, 200),
    "outdoor": colds,
    "partition": st.floats(0, 100),
    "width": widths,
    "link": st.floats(50, 1000),
    "air_capacity": st.floats(5e4, 1e6),
    "wall_capacity": st.floats(1.5e6, 2e7),
}
_DOOR = {"house": 293.0, "height": 2.0, "site_pressure": 95_000.0}
_STEADY = ("conductance", "outdoor", "partition", "house", "width", "height", "site_pressure")
_START = {"air": 293.0, "walls": 293.0}


@patient
@given(heat=st.floats(2000, 15_000), hours=st.floats(0.1, 48), **_ROOM)
def test_a_fire_warms_the_room_towards_where_it_settles(heat: float, hours: float, **kitchen: float) -> None:
    settled = room.steady_room(heat, *((kitchen | _DOOR)[key] for key in _STEADY))
    after = warming.room_after(heat=heat, elapsed=hours * 3600, **kitchen, **_DOOR, **_START)
    later = warming.room_after(heat=heat, elapsed=2 * hours * 3600, **kitchen, **_DOOR, **_START)
    low, high = sorted((293.0, settled))
    assert low - 0.01 <= after <= high + 0.01
    assert abs(later - settled) <= abs(after - settled) + 0.01
    assert warming.room_after(heat=heat, elapsed=1e9, **kitchen, **_DOOR, **_START) == pytest.approx(settled, abs=1e-3)


@patient
@given(heat=st.floats(5000, 15_000), share=st.floats(0.05, 0.95), **_ROOM)
def test_the_limit_is_reached_in_the_time_said(heat: float, share: float, **kitchen: float) -> None:
    settled = room.steady_room(heat, *((kitchen | _DOOR)[key] for key in _STEADY))
    if settled < 293.5:
        return
    limit = 293.0 + share * (settled - 293.0)
    time = warming.time_to_limit(heat=heat, limit=limit, **kitchen, **_DOOR, **_START)
    assert warming.room_after(heat=heat, elapsed=time, **kitchen, **_DOOR, **_START) == pytest.approx(limit, abs=0.02)
    with pytest.raises(NoSolution):
        warming.time_to_limit(heat=heat, limit=settled + 0.01, **kitchen, **_DOOR, **_START)


@patient
@given(heat=st.floats(2000, 15_000), **_ROOM)
def test_air_takes_what_the_walls_do_not(heat: float, **kitchen: float) -> None:
    # In the first minute next to nothing is lost: the air warms by heat over capacity.
    kitchen |= {"conductance": 0.0, "partition": 0.0, "width": 0.0, "link": 1e-6}
    after = warming.room_after(heat=heat, elapsed=60.0, **kitchen, **_DOOR, **_START)
    assert after - 293.0 == pytest.approx(60 * heat / kitchen["air_capacity"], rel=1e-6)


def test_a_room_without_fire_or_losses_stays_as_it_is() -> None:
    still = {"conductance": 0.0, "outdoor": 263.0, "partition": 0.0, "width": 1.0, "link": 100.0}
    masses = {"air_capacity": 1e5, "wall_capacity": 1e7}
    assert warming.room_after(heat=0.0, elapsed=1e5, **still, **masses, **_DOOR, **_START) == 293.0


def test_classes_run_from_light_to_heavy() -> None:
    held = [heaviness.capacity_per_area for heaviness in room.HEAVINESS.values()]
    assert held == sorted(held)
    assert set(room.HEAVINESS) == {"light", "medium", "heavy"}
