"""Water: what must always hold, and the verification points that IAPWS prints for the standard itself."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.law import OutOfRange
from calc.physics import water

LIQUID = st.floats(273.2, 423.1)  # 0 to 150 °C


@pytest.mark.parametrize(
    ("temperature", "pressure", "volume", "enthalpy", "heat_capacity"),
    [
        (300.0, 3e6, 0.100215168e-2, 0.115331273e6, 0.417301218e4),
        (300.0, 80e6, 0.971180894e-3, 0.184142828e6, 0.401008987e4),
        (500.0, 3e6, 0.120241800e-2, 0.975542239e6, 0.465580682e4),
    ],
)
def test_if97_table_5(
    temperature: float, pressure: float, volume: float, enthalpy: float, heat_capacity: float
) -> None:
    assert water.specific_volume(temperature, pressure) == pytest.approx(volume, rel=1e-8)
    assert water.specific_enthalpy(temperature, pressure) == pytest.approx(enthalpy, rel=1e-8)
    assert water.isobaric_heat_capacity(temperature, pressure) == pytest.approx(heat_capacity, rel=1e-8)


@given(LIQUID)
def test_density_is_a_fit_within_a_hundredth_of_a_percent(temperature: float) -> None:
    assert water.density(temperature) * water.specific_volume(temperature) == pytest.approx(1, abs=1e-4)


@given(LIQUID)
def test_heat_capacity_is_a_fit_within_half_a_tenth_of_a_percent(temperature: float) -> None:
    assert water.specific_heat(temperature) / water.isobaric_heat_capacity(temperature) == pytest.approx(1, abs=5e-4)


@given(LIQUID, st.floats(0.1, 2))
def test_heat_capacity_is_the_slope_of_enthalpy(temperature: float, step: float) -> None:
    # Over a step of 2 K the bend of the curve near freezing is worth less than 0.002 %.
    rise = water.specific_enthalpy(temperature + step) - water.specific_enthalpy(temperature)
    assert rise / step == pytest.approx(water.isobaric_heat_capacity(temperature + step / 2), rel=2e-5)


@given(LIQUID, LIQUID)
def test_mean_heat_content_is_the_same_both_ways_and_lies_between_the_ends(first: float, other: float) -> None:
    mean = water.mean_volume_heat_content(first, other)
    assert mean == pytest.approx(water.mean_volume_heat_content(other, first), rel=1e-12)
    ends = [water.isobaric_heat_capacity(at) / water.specific_volume(at) for at in (first, other)]
    # It falls with temperature except for a few degrees above freezing, where it rises by less than 0.01 %.
    assert min(ends) * (1 - 1e-4) <= mean <= max(ends) * (1 + 1e-4)


@given(LIQUID)
def test_mean_heat_content_at_one_temperature_is_the_value_there(temperature: float) -> None:
    there = water.isobaric_heat_capacity(temperature) / water.specific_volume(temperature)
    assert water.mean_volume_heat_content(temperature, temperature) == pytest.approx(there, rel=1e-12)


@given(st.floats(273.2, 423.1), st.floats(273.2, 423.1), st.floats(273.2, 423.1))
def test_heat_of_two_steps_is_the_heat_of_one(first: float, second: float, third: float) -> None:
    low, middle, top = sorted((first, second, third))
    whole = water.mean_volume_heat_content(low, top) * (top - low)
    parts = water.mean_volume_heat_content(low, middle) * (middle - low)
    parts += water.mean_volume_heat_content(middle, top) * (top - middle)
    # Five Gauss points are good to three millionths over the whole range.
    assert parts == pytest.approx(whole, rel=6e-6, abs=1.0)


@given(st.floats(280, 420), st.floats(0.5, 3))
def test_hot_water_is_lighter_and_thinner(temperature: float, step: float) -> None:
    assert water.density(temperature + step) < water.density(temperature)
    assert water.viscosity(temperature + step) < water.viscosity(temperature)


@given(st.floats(274, 640))
def test_boiling_temperature_undoes_vapour_pressure(temperature: float) -> None:
    # The standard allows 25 mK between equation 30 and its backward form; they agree far better.
    assert water.boiling_temperature(water.vapour_pressure(temperature)) == pytest.approx(temperature, abs=1e-6)


@given(st.floats(0, 11000), st.floats(0, 1e6), st.floats(1, 500))
def test_water_boils_cooler_higher_up_and_hotter_under_pressure(altitude: float, gauge: float, step: float) -> None:
    here = water.absolute_pressure(water.barometer(altitude), gauge)
    below = water.absolute_pressure(water.barometer(altitude - step), gauge)
    pressed = water.absolute_pressure(water.barometer(altitude), gauge + 100 * step)
    assert water.boiling_temperature(here) < water.boiling_temperature(below)
    assert water.boiling_temperature(here) < water.boiling_temperature(pressed)


def test_outside_its_range_it_refuses_and_says_which() -> None:
    with pytest.raises(OutOfRange) as refused:
        water.mean_volume_heat_content(300.0, 430.0)
    assert (refused.value.argument, refused.value.value) == ("top", 430.0)
    with pytest.raises(OutOfRange):
        water.barometer(12000.0)
    with pytest.raises(OutOfRange):
        water.vapour_pressure(270.0)
