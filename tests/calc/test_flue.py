"""What must always hold for the fire and its flue."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.law import OutOfRange
from calc.physics import arithmetic, flue, water

patient = settings(deadline=None)

ratios = st.floats(1, 4)
moistures = st.floats(0, 0.6)
hot = st.floats(340, 900)
outdoor = st.floats(230, 310)
pressures = st.floats(60_000, 105_000)
LEAST = flue.least_air(0.5, 0.06, 0.44)


def _dew_point(moisture: float, ratio: float, humidity: float = 0.005, barometer: float = 101_325.0) -> float:
    steam = flue.steam(0.06, moisture, humidity, LEAST, ratio)
    dry = flue.dry_gas(0.5, LEAST, ratio)
    return water.boiling_temperature(flue.flue_vapour_pressure(steam, dry, barometer))


@patient
@given(st.floats(0.02, 0.5), ratios)
def test_wetter_wood_and_less_air_raise_the_dew_point(moisture: float, ratio: float) -> None:
    assert _dew_point(moisture + 0.05, ratio) > _dew_point(moisture, ratio)
    assert _dew_point(moisture, ratio + 0.2) < _dew_point(moisture, ratio)
    assert _dew_point(moisture, ratio, 0.01) > _dew_point(moisture, ratio, 0.0)
    assert _dew_point(moisture, ratio, barometer=80_000.0) < _dew_point(moisture, ratio)


@patient
@given(ratios)
def test_what_goes_in_comes_out(ratio: float) -> None:
    """Mass of a kilogram of dry wood and its dry air equals that of the dry gas and the steam."""
    steam, dry = flue.steam(0.06, 0.0, 0.0, LEAST, ratio), flue.dry_gas(0.5, LEAST, ratio)
    carbon_dioxide = 0.5 / 12.011
    oxygen = LEAST * 0.2314 / 31.998 * (ratio - 1)
    rest = dry - carbon_dioxide - oxygen
    # The rest of dry air, nitrogen with argon, weighs 28.157 kg/kmol.
    mass = steam * 18.015 + carbon_dioxide * 44.01 + oxygen * 31.998 + rest * 28.157
    assert mass == pytest.approx(1 + LEAST * ratio, rel=2e-3)


@patient
@given(st.floats(1.05, 4))
def test_the_oxygen_left_tells_the_air_ratio(ratio: float) -> None:
    oxygen = LEAST * 0.2314 / 31.998 * (ratio - 1)
    measured = oxygen / flue.dry_gas(0.5, LEAST, ratio)
    assert flue.air_ratio_from_oxygen(measured) == pytest.approx(ratio, rel=0.01)


def test_no_fire_burns_in_air_without_oxygen_used() -> None:
    with pytest.raises(OutOfRange):
        flue.air_ratio_from_oxygen(0.21)


@patient
@given(st.floats(1000, 60_000), st.floats(0, 20_000), st.floats(0.4, 0.95), st.floats(1, 60), st.floats(285, 300))
def test_fire_gives_water_room_and_gas_all_of_its_heat(
    to_water: float, to_room: float, efficiency: float, capacity: float, indoor: float
) -> None:
    fuel = flue.fuel_heat(to_water, to_room, efficiency)
    leaving = flue.gas_leaving(indoor, fuel, to_water, to_room, capacity)
    assert capacity * (leaving - indoor) + to_water + to_room == pytest.approx(fuel)
    assert leaving > indoor


@patient
@given(hot, outdoor, st.floats(1e-3, 20))
def test_gas_cools_towards_the_air_around_the_flue(entering: float, around: float, cooling: float) -> None:
    top, mean = flue.gas_at_top(entering, around, cooling), flue.mean_gas(entering, around, cooling)
    assert around - 1e-9 <= top <= mean + 1e-9 <= entering + 2e-9
    assert flue.gas_after_jacket(entering, around, cooling * 10, 10.0) == pytest.approx(top)


@patient
@given(st.floats(1, 20), outdoor, hot, pressures)
def test_draught_needs_a_difference_and_fades_with_altitude(
    height: float, outside: float, inside: float, pressure: float
) -> None:
    def draught(high: float, gas: float, air: float) -> float:
        return flue.stack_draught(high, flue.gas_density(air, outside), flue.gas_density(air, gas))

    assert draught(height, outside, pressure) == pytest.approx(0, abs=1e-9)
    assert draught(height, inside, pressure) > 0
    assert draught(2 * height, inside, pressure) == pytest.approx(2 * draught(height, inside, pressure))
    assert draught(height, inside, pressure * 0.8) == pytest.approx(0.8 * draught(height, inside, pressure))


@patient
@given(st.floats(0.001, 0.05), st.floats(0.08, 0.3), st.floats(0.3, 1.2))
def test_flue_loss_goes_with_the_square_of_the_flow(mass: float, diameter: float, density: float) -> None:
    area = arithmetic.circle_area(diameter)
    once, twice = (
        flue.flue_loss(0.04, 6.0, diameter, 2.5, density, flue.gas_velocity(flow, density, area))
        for flow in (mass, 2 * mass)
    )
    assert twice == pytest.approx(4 * once)
    assert flue.volume_flow(mass, density) == pytest.approx(flue.gas_velocity(mass, density, area) * area)


@patient
@given(st.floats(0.001, 0.5), st.floats(0.05, 3), st.floats(1, 20), st.floats(0.5, 1))
def test_with_the_air_let_in_the_house_is_drawn_down_to_the_limit_at_most(
    drawn: float, leak: float, limit: float, exponent: float
) -> None:
    let_in = flue.make_up_air(drawn, leak, limit, exponent)
    assert 0 <= let_in <= drawn
    left = flue.depressurization(drawn - let_in, leak, exponent)
    assert left <= limit * (1 + 1e-9)
    if let_in > 1e-9:
        assert left == pytest.approx(limit)


@patient
@given(st.floats(320, 360), st.floats(290, 340), st.floats(0, 20))
def test_the_return_is_never_below_any_of_its_three_floors(maker: float, dew: float, margin: float) -> None:
    least = flue.least_return(maker, dew, margin, 328.15)
    assert least >= max(maker, dew + margin, 328.15)
    assert least in (maker, dew + margin, 328.15)


@patient
@given(st.floats(0, 1), st.floats(280, 305), pressures)
def test_moister_air_carries_more(humidity: float, temperature: float, barometer: float) -> None:
    saturated = water.vapour_pressure(temperature)
    some, all_of_it = (
        flue.humidity_ratio(flue.vapour_in_air(share, saturated), barometer) for share in (humidity, 1.0)
    )
    assert 0 <= some <= all_of_it < 0.06
