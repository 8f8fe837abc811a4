"""Gravity circulation: the balance closes, and more height, heat or bore moves more."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.law import OutOfRange
from calc.physics import gravity, pipes, water

BORE, LOSSES = 0.0409, 12.0


def _reynolds(height: float, bore: float = BORE, losses: float = LOSSES, warm: float = 355.0) -> float:
    cool = 333.15
    mean = (cool + warm) / 2
    pressure = gravity.driving_pressure(water.density(cool), water.density(warm), height)
    number = gravity.driving_number(pressure, water.density(mean), bore, water.viscosity(mean))
    return gravity.reynolds_between(
        number, pipes.relative_roughness(46e-6, bore), gravity.length_in_bores(18.0, bore), losses
    )


@given(height=st.floats(0.3, 6), bore=st.floats(0.015, 0.08), losses=st.floats(0, 40))
def test_friction_uses_up_what_drives(height: float, bore: float, losses: float) -> None:
    cool, warm = 333.15, 355.0
    mean = (cool + warm) / 2
    density, viscosity = water.density(mean), water.viscosity(mean)
    flow = gravity.flow_at(_reynolds(height, bore, losses), bore, viscosity, density)
    speed = pipes.velocity(flow, bore)
    factor = pipes.friction_factor(
        pipes.reynolds_number(density, speed, bore, viscosity), pipes.relative_roughness(46e-6, bore)
    )
    lost = pipes.pressure_drop(pipes.friction(factor, density, speed, bore), 18.0, losses, density, speed, 0.0)
    driven = gravity.driving_pressure(water.density(cool), water.density(warm), height)
    assert lost == pytest.approx(driven, rel=1e-8)


@given(height=st.floats(0.3, 6))
def test_higher_wider_hotter_and_straighter_loops_move_more(height: float) -> None:
    here = _reynolds(height)
    assert _reynolds(height * 1.2) > here
    assert _reynolds(height, bore=BORE * 1.2) > here
    assert _reynolds(height, warm=360.0) > here
    assert _reynolds(height, losses=LOSSES + 5) < here


@given(heat=st.floats(2e3, 60e3), height=st.floats(0.5, 5), bore=st.floats(0.02, 0.06))
def test_the_loop_that_moves_a_known_heat_is_the_loop_between_its_own_temperatures(
    heat: float, height: float, bore: float
) -> None:
    density, viscosity, capacity, rate = 975.0, 3.9e-4, 4.09e6, 6e-4
    rough, bores = pipes.relative_roughness(46e-6, bore), gravity.length_in_bores(18.0, bore)
    number = gravity.heat_driving_number(density, rate, height, heat, bore, capacity, viscosity)
    reynolds = gravity.reynolds_for_heat(number, rough, bores, LOSSES)
    rise = pipes.rise(heat, gravity.flow_at(reynolds, bore, viscosity, density), capacity)
    pressure = gravity.driving_pressure(density * rate * rise, 0.0, height)
    again = gravity.reynolds_between(gravity.driving_number(pressure, density, bore, viscosity), rough, bores, LOSSES)
    assert again == pytest.approx(reynolds, rel=1e-7)


@given(heat=st.floats(2e3, 60e3))
def test_more_heat_flows_faster_and_rises_more(heat: float) -> None:
    def settled(heat: float) -> tuple[float, float]:
        number = gravity.heat_driving_number(975.0, 6e-4, 2.0, heat, BORE, 4.09e6, 3.9e-4)
        flow = gravity.flow_at(gravity.reynolds_for_heat(number, 0.001, 440.0, LOSSES), BORE, 3.9e-4, 975.0)
        return flow, pipes.rise(heat, flow, 4.09e6)

    flow, rise = settled(heat)
    more_flow, more_rise = settled(heat * 1.3)
    assert more_flow > flow
    assert more_rise > rise


def test_a_loop_that_is_pushed_the_wrong_way_is_refused() -> None:
    pressure = gravity.driving_pressure(960.0, 980.0, 3.0)
    number = gravity.driving_number(pressure, 970.0, BORE, 4e-4)
    with pytest.raises(OutOfRange):
        gravity.reynolds_between(number, 0.001, 440.0, LOSSES)


@given(cool=st.floats(290, 330), difference=st.floats(1, 40))
def test_the_expansion_rate_gives_the_difference_of_the_densities_back(cool: float, difference: float) -> None:
    low, high = water.density(cool), water.density(cool + difference)
    rate = gravity.expansion_rate(low, high, difference)
    assert rate * difference * (low + high) / 2 == pytest.approx(low - high, rel=1e-9)
