"""What must always hold for exchangers, draws and scald times."""

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calc.expression import log_mean
from calc.law import NoSolution
from calc.physics import exchange

patient = settings(deadline=None)

streams = st.floats(20, 5000)
conductances = st.floats(50, 10_000)
stores = st.floats(315, 370)
colds = st.floats(274, 295)


@patient
@given(st.floats(0.001, 100), st.floats(0.001, 100))
def test_the_logarithmic_mean_lies_between_geometric_and_arithmetic(first: float, other: float) -> None:
    mean = log_mean(first, other)
    assert math.sqrt(first * other) * (1 - 1e-9) <= mean <= (first + other) / 2 * (1 + 1e-9)
    assert log_mean(other, first) == pytest.approx(mean)


def test_the_logarithmic_mean_at_its_limits() -> None:
    assert log_mean(20, 20) == 20
    assert log_mean(20, 20 * (1 + 1e-12)) == pytest.approx(20)
    assert log_mean(20, 0) == 0
    assert math.isnan(log_mean(20, -1))


@patient
@given(st.floats(1e-6, 50), st.floats(0, 1))
def test_effectiveness_stays_between_one_side_boiling_and_equal_streams(units: float, ratio: float) -> None:
    value = exchange.counterflow_effectiveness(units, ratio)
    assert units / (1 + units) * (1 - 1e-9) <= value <= -math.expm1(-units) * (1 + 1e-9) + 1e-15


@patient
@given(st.floats(0.01, 50), st.floats(1e-12, 1e-6))
def test_effectiveness_runs_into_its_limit_for_equal_streams(units: float, short: float) -> None:
    near = exchange.counterflow_effectiveness(units, 1 - short)
    assert near == pytest.approx(exchange.counterflow_effectiveness(units, 1), rel=1e-4)


@patient
@given(conductances, streams, streams, stores, colds)
def test_heat_taken_is_heat_given_and_agrees_with_the_log_mean(
    conductance: float, primary: float, tap_side: float, store: float, cold: float
) -> None:
    smaller = exchange.smaller_stream(primary, tap_side)
    units = exchange.number_of_transfer_units(conductance, smaller)
    assume(units < 30)
    share = exchange.counterflow_effectiveness(units, exchange.stream_ratio(primary, tap_side))
    heat = exchange.heat_passed(share, smaller, store, cold)
    tap = exchange.tap_temperature(cold, heat, tap_side)
    back = exchange.primary_return(store, heat, primary)
    assert cold <= tap <= store
    assert cold - 1e-9 <= back <= store
    assert primary * (store - back) == pytest.approx(tap_side * (tap - cold))
    assume(store - tap > 0.01 and back - cold > 0.01)
    assert exchange.rated_conductance(heat, store, back, cold, tap) == pytest.approx(conductance, rel=1e-6)
    assert exchange.store_needed(tap, cold, tap_side, share, smaller) == pytest.approx(store)


@patient
@given(conductances, streams, streams, streams, st.floats(325, 370), colds, st.floats(0, 0.7))
def test_the_largest_stream_is_warmed_just_enough(
    conductance: float, rated: float, rated_tap: float, primary: float, store: float, cold: float, exponent: float
) -> None:
    tap = 313.0
    stream = exchange.largest_tap_stream(store, cold, tap, primary, conductance, rated, rated_tap, exponent)
    here = exchange.conductance_at_flows(conductance, rated, primary, rated_tap, stream, exponent)
    smaller = exchange.smaller_stream(primary, stream)
    share = exchange.counterflow_effectiveness(here / smaller, exchange.stream_ratio(primary, stream))
    heat = exchange.heat_passed(share, smaller, store, cold)
    assert exchange.tap_temperature(cold, heat, stream) == pytest.approx(tap)


@patient
@given(conductances, streams, stores, stores, colds)
def test_a_hotter_store_never_warms_less(
    conductance: float, primary: float, first: float, other: float, cold: float
) -> None:
    cooler, hotter = sorted((first, other))
    less, more = (
        exchange.largest_tap_stream(store, cold, 313.0, primary, conductance, 1000.0, 1000.0, 0.663)
        for store in (cooler, hotter)
    )
    assert less <= more * (1 + 1e-9)


@pytest.mark.parametrize("store", [290.0, 300.0, 313.0])
def test_a_store_no_hotter_than_the_tap_water_wanted_gives_none(store: float) -> None:
    assert exchange.largest_tap_stream(store, 283.0, 313.0, 1000.0, 2000.0, 1000.0, 1000.0, 0.663) == 0
    assert exchange.coil_largest_stream(store, 283.0, 313.0, 500.0) == 0


@patient
@given(conductances, streams, stores, colds)
def test_coil_forwards_and_backwards(conductance: float, stream: float, store: float, cold: float) -> None:
    assume(0.01 < conductance / stream < 20)
    tap = exchange.coil_outlet(store, cold, conductance, stream)
    assert cold < tap <= store
    assert exchange.store_needed_by_coil(tap, cold, conductance, stream) == pytest.approx(store)
    assert exchange.coil_largest_stream(store, cold, tap, conductance) == pytest.approx(stream, rel=1e-6)


@patient
@given(streams, streams, conductances, st.floats(0, 1))
def test_a_plate_is_as_rated_at_its_rated_flows(
    first: float, other: float, conductance: float, exponent: float
) -> None:
    assert exchange.conductance_at_flows(conductance, first, first, other, other, exponent) == pytest.approx(
        conductance
    )
    more = exchange.conductance_at_flows(conductance, first, 2 * first, other, 2 * other, exponent)
    assert more == pytest.approx(conductance * 2**exponent)


_SHELL = {"heat_content": 4.1e6, "bore_area": 4e-4, "loss_coefficient": 15.0}


@patient
@given(st.floats(330, 365), st.floats(280, 325), st.floats(5, 300), st.floats(0.3, 2), st.floats(0, 2))
def test_a_sidearm_gives_no_more_than_its_shell_can(
    hot: float, tank: float, conductance: float, height: float, riser: float
) -> None:
    shell = {"hot": hot, "tank": tank, "conductance": conductance, "expansion": 5e-4, "sidearm_height": height} | _SHELL
    velocity = exchange.sidearm_velocity(riser_height=riser, **shell)
    heat = exchange.sidearm_heat(hot, tank, conductance, 4.1e6, 4e-4, velocity)
    assert 0 < heat < conductance * (hot - tank)
    stream = 4.1e6 * 4e-4 * velocity
    assert tank + heat / stream < hot
    assert exchange.sidearm_velocity(riser_height=riser + 1, **shell) > velocity


@pytest.mark.parametrize("hot", [313.0, 300.0])
def test_a_sidearm_no_hotter_than_its_tank_stands_still(hot: float) -> None:
    with pytest.raises(NoSolution):
        exchange.sidearm_velocity(
            hot=hot, tank=313.0, conductance=50.0, expansion=5e-4, sidearm_height=1.0, riser_height=0.3, **_SHELL
        )


@patient
@given(st.floats(1e4, 1e7), st.floats(280, 300), st.floats(0.5, 40), st.floats(0.5, 40), st.floats(10, 1000))
def test_time_to_warm_in_two_parts_is_the_whole(
    capacity: float, start: float, first: float, second: float, conductance: float
) -> None:
    hot, middle, target = start + first + second + 5, start + first, start + first + second
    whole = exchange.time_to_warm(capacity, start, target, hot, conductance)
    before = exchange.time_to_warm(capacity, start, middle, hot, conductance)
    after = exchange.time_to_warm(capacity, middle, target, hot, conductance)
    assert before + after == pytest.approx(whole)


@pytest.mark.parametrize("hot", [330.0, 320.0])
def test_water_no_hotter_than_the_target_never_gets_there(hot: float) -> None:
    with pytest.raises(ZeroDivisionError):
        exchange.time_to_warm(1e6, 290.0, 330.0, hot, 100.0)


def test_a_fire_that_gives_what_is_drawn_lasts() -> None:
    with pytest.raises(ZeroDivisionError):
        exchange.draw_time(1e6, 5000.0, 5000.0)


@patient
@given(st.floats(290, 420), st.floats(290, 420))
def test_hotter_water_never_scalds_slower(first: float, other: float) -> None:
    cooler, hotter = sorted((first, other))
    assert exchange.shortest_scald_time(hotter) <= exchange.shortest_scald_time(cooler)
    assert exchange.longest_scald_time(hotter) <= exchange.longest_scald_time(cooler)
    assert exchange.shortest_scald_time(first) <= exchange.longest_scald_time(first)


rated = st.fixed_dictionaries(
    {
        "rated_conductance": st.floats(50, 5000),
        "rated_tap": st.floats(100, 3000),
        "rated_store": st.floats(330, 370),
        "rated_mean": st.floats(285, 320),
    }
)


@patient
@given(rated, st.floats(290, 305), st.floats(320, 365), st.floats(50, 3000))
def test_rated_coil_forwards_and_backwards(point: dict[str, float], cold: float, store: float, stream: float) -> None:
    tap = exchange.water_from_coil(store, cold, stream, **point)
    assert cold < tap <= store
    if store - tap > 0.01:
        assert exchange.store_for_coil(tap, cold, stream, **point) == pytest.approx(store, rel=1e-6)
        assert exchange.stream_of_coil(store, cold, tap, **point) == pytest.approx(stream, rel=1e-4)


@patient
@given(rated, st.floats(280, 300))
def test_a_coil_at_its_rated_point_has_its_rated_conductance(point: dict[str, float], cold: float) -> None:
    here = exchange.coil_conductance(
        **point, tap_side=point["rated_tap"], store=point["rated_store"], tap_mean=point["rated_mean"]
    )
    assert here == pytest.approx(point["rated_conductance"])
    assert exchange.stream_of_coil(cold, cold, cold + 20, **point) == 0
