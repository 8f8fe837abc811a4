"""What must always hold for coils and ducts."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.law import NoSolution, OutOfRange
from calc.physics import air, water

patient = settings(deadline=None)

units = st.floats(0.01, 20)
ratios = st.floats(0, 1)
capacities = st.floats(50, 3000)


@patient
@given(units, ratios)
def test_effectiveness_lies_between_nothing_and_counterflow(transfer: float, ratio: float) -> None:
    reached = air.effectiveness(transfer, ratio)
    if 1 - ratio < 1e-6:
        counterflow = transfer / (1 + transfer)
    else:
        decay = math.exp(-transfer * (1 - ratio))
        counterflow = (1 - decay) / (1 - ratio * decay)
    assert 0 < reached <= counterflow * (1 + 1e-6)


@patient
@given(units, units, ratios)
def test_a_larger_coil_reaches_more(first: float, other: float, ratio: float) -> None:
    small, large = sorted((first, other))
    assert air.effectiveness(small, ratio) <= air.effectiveness(large, ratio) + 1e-12


@patient
@given(units, ratios, ratios)
def test_a_second_stream_that_changes_more_helps_less(transfer: float, first: float, other: float) -> None:
    low, high = sorted((first, other))
    assert air.effectiveness(transfer, low) >= air.effectiveness(transfer, high) - 1e-12


@patient
@given(units)
def test_beside_an_endless_stream_it_is_one_minus_exp(transfer: float) -> None:
    limit = 1 - math.exp(-transfer)
    assert air.effectiveness(transfer, 0) == pytest.approx(limit)
    assert air.effectiveness(transfer, 1e-9) == pytest.approx(limit, rel=1e-7)


def test_no_coil_gives_nothing() -> None:
    assert air.effectiveness(0, 0.5) == 0
    assert air.effectiveness(1e-9, 0.5) == pytest.approx(1e-9)


@patient
@given(st.floats(0.01, 8), ratios)
def test_a_rated_point_gives_its_coil_back(transfer: float, ratio: float) -> None:
    assert air.transfer_units_for(air.effectiveness(transfer, ratio), ratio) == pytest.approx(transfer, rel=1e-6)


def test_a_rating_beyond_what_the_flows_allow_is_refused() -> None:
    with pytest.raises(NoSolution):
        air.transfer_units_for(0.99, 1.0)
    with pytest.raises(OutOfRange, match="rated_effectiveness"):
        air.transfer_units_for(1.2, 0.5)


@patient
@given(capacities, capacities, st.floats(50, 2400), st.floats(305, 370), st.floats(280, 300))
def test_the_coils_balance_closes_and_no_stream_passes_the_other(
    of_water: float, of_air: float, conductance: float, hot: float, cold: float
) -> None:
    least = air.least_capacity(of_water, of_air)
    reached = air.effectiveness(air.transfer_units(conductance, least), air.capacity_ratio(of_water, of_air))
    heat = air.coil_heat(reached, least, hot, cold)
    warmed, cooled = air.air_out(cold, heat, of_air), air.water_out(hot, heat, of_water)
    assert of_water * (hot - cooled) == pytest.approx(air.heat_to_air(of_air, warmed, cold))
    assert cold <= warmed <= hot + 1e-9
    assert cold - 1e-9 <= cooled <= hot
    assert air.entering_water(cold, heat, reached, least) == pytest.approx(hot)


@patient
@given(st.floats(0.1, 5), st.floats(0.1, 5), st.floats(0, 10))
def test_less_flow_makes_a_coil_smaller_but_not_in_proportion(by_air: float, by_water: float, side: float) -> None:
    conductance = air.conductance_at_flows(1000, by_air, by_water, side)
    slowest, fastest = min(by_air, by_water, 1), max(by_air, by_water, 1)
    assert 1000 * slowest * (1 - 1e-9) <= conductance <= 1000 * fastest * (1 + 1e-9)
    assert air.conductance_at_flows(1000, 1, 1, side) == pytest.approx(1000)


@patient
@given(st.floats(0, 4000))
def test_air_carries_in_proportion_to_pressure(altitude: float) -> None:
    pressure = water.barometer(altitude)
    here, at_sea = (air.air_capacity(0.5, entry, 294.0) for entry in (pressure, 101325.0))
    assert here / at_sea == pytest.approx(air.pressure_ratio(pressure))


@patient
@given(st.floats(0, 5), st.floats(1, 60), capacities, st.floats(305, 340), st.floats(250, 300))
def test_a_duct_cools_air_toward_its_surroundings_and_back(
    insulation: float, surface: float, capacity: float, hot: float, around: float
) -> None:
    kept = air.kept_share(air.duct_u_value(insulation), surface, capacity)
    end = air.delivered_air(around, hot, kept)
    assert around <= end <= hot
    if kept > 1e-3:
        assert air.needed_air_out(around, end, kept) == pytest.approx(hot)


@patient
@given(capacities, st.floats(0, 0.9), st.floats(290, 300), st.floats(500, 20_000))
def test_the_register_air_needed_for_a_load_delivers_it(
    capacity: float, leakage: float, indoor: float, load: float
) -> None:
    register = air.needed_delivered_air(indoor, load, capacity, leakage)
    assert air.delivered_heat(capacity, leakage, register, indoor) == pytest.approx(load)


@patient
@given(st.floats(500, 20_000), st.floats(0, 0.9))
def test_the_share_lost_comes_back(load: float, share: float) -> None:
    assert air.duct_loss(load, air.heat_before_ducts(load, share)) == pytest.approx(share, abs=1e-12)


def test_flows_far_from_the_rating_are_refused() -> None:
    with pytest.raises(OutOfRange, match="air_ratio"):
        air.conductance_at_flows(1000, 0.05, 1, 0.5)
